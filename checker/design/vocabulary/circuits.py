"""Circuits, what is said of their ends, the bundles they run in, and what is usual on this vehicle."""

from __future__ import annotations

from checker.design.vocabulary.cables import CABLE
from checker.design.vocabulary.key import Key, Kind
from checker.design.vocabulary.make import count, named, names, quantity, text, word, yes
from checker.design.vocabulary.words import CLAMPS, FITTED, MEASURES, OWNERS, SURFACES

DUTIES = ("load", "charge", "safety", "control", "sense", "bonding", "arc free")
COVERINGS = ("split tube", "conduit", "gas-tight conduit", "metal conduit", "duct", "sleeve")

SHARED = (
    # Left out, the rules for living quarters apply, which ask more than those for the road vehicle.
    word(
        "scope", ("habitation", "automotive"), "Which rules it falls under. Left out: habitation.", default="habitation"
    ),
    word("own", OWNERS, "Whose work it is. Left out: fitter.", default="fitter"),
    word("covering", COVERINGS, "What covers it. Left out: none.", default="none"),
    yes("covering flame retardant", "What covers it does not carry a flame along."),
    word("fixed to", SURFACES, "What it is fixed to."),
    quantity("support spacing", "m", "Greatest distance of its supports."),
    # A level run hangs through between its supports and asks for more of them.
    yes("upright", "It runs upright all along. Left out: false.", default="false"),
    quantity("apart", "m", "Least distance to cables of the other voltage band, mains or extra-low."),
    word("meets mains", ("crossing", "alongside"), "How it lies to mains cables where both pass one place."),
    quantity("marked every", "m", "Interval at which it is marked along its length."),
    quantity("out of sheath", "m", "Greatest length of a core outside the sheath of its cable."),
    quantity("from hot parts", "m", "Least distance to exhaust, heater, flue or cooker; `none` where there are none."),
    yes("heat shield", "A shield stands between it and what is hot there."),
)

CIRCUIT = Kind(
    "circuit",
    "One walked run from a source to what it feeds.",
    (
        # The common case. What a safety or bonding circuit is excused from must be written.
        word("duty", DUTIES, "What it is for. Left out: load.", default="load"),
        *SHARED,
        count("in parallel", "Like cables side by side. Left out: 1.", default="1"),
        quantity("above cylinder base", "m", "In a gas locker: height above the base of the cylinders."),
        named("loom", "looms", "The loom it runs in."),
        word("shock protection", MEASURES, "Protective measure against shock, IEC 60364-4-41."),
        yes("overload alarm", "An overload gives an alarm in place of opening the circuit."),
        word("fitted", FITTED, "`later`: planned, rules pass it by. Left out: now.", default="now"),
        text("doubt", "A doubt of the writer, shown with every finding on it."),
    ),
    sections=("circuits",),
)

TERMINATION = Kind(
    "termination",
    "How one end of a circuit was made.",
    (
        text("lug", "Conductor size and stud of the lug: 70-8, or 2/0 AWG-8."),
        word(
            "crimp",
            ("die", "lever tool", "hammer", "soldered", "clamp", "screw", "bootlace", "push-on"),
            "How it is joined.",
        ),
        quantity("torqued", "N m", "Torque it was tightened to."),
        yes("marked", "The end carries the name of the circuit."),
        yes("sleeved", "The barrel is insulated."),
        yes("sealed", "Water cannot enter."),
    ),
    sections=("ends",),
)

TERMINAL = Kind(
    "terminal",
    "One terminal of a piece of equipment.",
    (
        Key("stud", "text", "Size of the stud or screw: M8."),
        count("holds", "Lugs it may hold."),
        quantity("rated", "A", "Current it may carry."),
        quantity("torque", "N m", "Torque it asks for."),
        quantity("torqued", "N m", "Torque it was tightened to, where no end of a circuit tells it."),
        yes("cover", "It is covered."),
        quantity("limit", "°C", "Temperature it may reach."),
        word("clamp", CLAMPS, "How a conductor is held."),
        yes("marked", "It is marked with its pole or name."),
    ),
    sections=("terminals",),
)

LOOM = Kind(
    "loom",
    "Circuits that run together, or that share one multi-core cable.",
    (
        names("carries", "circuits", "The circuits."),
        named("place", "places", "Where they run together."),
        word("chamber", ("elv", "mains"), "Chamber of the duct."),
        text("divider", "Part of the divided place."),
        count("bunched", "Loaded circuits side by side."),
        named("cable", "cables", "The multi-core cable they share."),
    ),
    sections=("looms",),
)

USUAL = Kind(
    "usual",
    "What holds of every cable and circuit that does not say otherwise. It counts as written by the writer.",
    (
        *SHARED,
        *(
            CABLE.keys[name]
            for name in ("strands", "material", "insulation", "voltage", "sheath", "flame retardant", "standard")
        ),
    ),
    sections=("usual",),
)

CIRCUITS = (CIRCUIT, TERMINATION, TERMINAL, LOOM, USUAL)
