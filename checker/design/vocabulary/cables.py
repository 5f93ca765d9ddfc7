"""Cables: the reels on the van, or one written in place."""

from __future__ import annotations

from checker.design.vocabulary.key import Kind
from checker.design.vocabulary.make import count, quantity, texts, word, words, yes

COLOURS = (
    "red", "black", "brown", "blue", "white", "grey", "green", "green-yellow", "yellow", "orange", "violet", "pink",
    "bare",
)  # fmt: skip

CABLE = Kind(
    "cable",
    "One type of cable.",
    (
        quantity("size", "mm2", "Conductor: 70 mm2, 2/0 AWG, 0 B&S, or 6 mm auto, which is the trade size, not 6 mm2."),
        count("cores", "Cores in it. Left out: 1.", default="1"),
        # Copper, flexible: what is sold for vehicles. 70 °C: the lowest grade in common use.
        word("strands", ("solid", "stranded", "flexible", "extra flexible"), "Fineness. Left out: flexible.",
             default="flexible"),
        word("material", ("copper", "tinned copper", "aluminium"), "Metal. Left out: copper.", default="copper"),
        quantity("insulation", "°C", "Temperature its insulation endures. Left out: 70 °C.", default="70 °C"),
        quantity("voltage", "V", "Rated voltage."),
        quantity("outer", "m", "Outer diameter, such as 15.5 mm."),
        word("sheath", ("plastic", "rubber", "heavy rubber", "silicone", "metal"), "Sheath; `none` for plain wire."),
        word("colour", COLOURS, "Colour of a single core."),
        words("core colours", COLOURS, "Colours of the cores in order."),
        quantity("earth size", "mm2", "Size of the earth core, when it is another."),
        quantity("bend", "m", "Smallest radius when it lies still."),
        quantity("bend moving", "m", "Smallest radius when it moves."),
        # A screen that nobody told is not counted on.
        yes("screen", "An earthed metal screen lies around its cores. Left out: false.", default="false"),
        yes("ultraviolet", "It endures sunlight."),
        yes("flame retardant", "It does not carry a flame along."),
        texts("standard", "Product standards it is said to meet."),
    ),
    sections=("cables",),
)  # fmt: skip

CABLES = (CABLE,)
