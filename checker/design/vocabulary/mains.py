"""How the shore supply comes aboard."""

from __future__ import annotations

from checker.design.vocabulary.common import COMMON, PLAIN, PLUG_SHAPE
from checker.design.vocabulary.key import Key, Kind, Port
from checker.design.vocabulary.make import count, named, names, quantity, rated, texts, word, yes
from checker.design.vocabulary.words import AC_POLES, SIDES

SHORE_INLET = Kind(
    "shore inlet",
    "The inlet for the shore lead.",
    (
        *COMMON,
        rated("voltage", "Rated voltage with its system."),
        quantity("rating", "A", "Rated current."),
        PLUG_SHAPE,
        count("poles", "Live poles, the earth not counted."),
        word("faces", SIDES, "Where it faces."),
        word("housing", ("insulating", "metal"), "What its housing is made of."),
        Key("degree.open", "degree", "Degree of protection with nothing plugged in."),
        Key("degree.mated", "degree", "Degree of protection with the lead in."),
        word("lid", ("self closing", "by hand"), "Its lid; `none` when there is not."),
        quantity("projects", "m", "How far it stands out from the body."),
        word("lead in when driving", ("alarm", "interlock"), "What keeps the vehicle from leaving with the lead in; "
             "`none` for nothing."),
        names("interlocked with", "equipment", "Inlets that cannot be joined together with it."),
    ),
    ports=(Port("", AC_POLES),),
    sections=PLAIN,
)  # fmt: skip
SUPPLY_LEAD = Kind(
    "supply lead",
    "The lead to the shore, carried along.",
    (
        *COMMON,
        quantity("length", "m", "Its length."),
        named("cable", "cables", "Its cable."),
        quantity("rating", "A", "Rated current of its plug and connector."),
        PLUG_SHAPE,
        yes("one piece", "It is one piece, not several joined."),
        yes("plugs as made", "Neither its plug nor its connector was filed, bent or rewired to fit."),
        word("reel", ("rated coiled", "marked to unwind", "plain"), "Its reel; `none` when there is not."),
        texts("adaptors", "Adaptors carried with it."),
    ),
    sections=PLAIN,
)

MAINS = (SHORE_INLET, SUPPLY_LEAD)
