"""Where circuits meet: bars, boards, terminal blocks, joints, connectors, metal parts, the chassis."""

from __future__ import annotations

from checker.design.vocabulary.common import A_B, COMMON, DEVICE_VOLTAGE, LIVE_PAIR, NODE, PLAIN, PLUG_SHAPE, SYSTEM
from checker.design.vocabulary.key import Kind, Port
from checker.design.vocabulary.make import count, named, quantity, word, words, yes
from checker.design.vocabulary.protection import BREAKING, RATING
from checker.design.vocabulary.words import BREAKER_FAMILIES, EITHER_POLES, FUSE_FAMILIES, HOLDERS

ENCLOSURE = word("enclosure", ("insulating", "metal"), "The box around it; `none` when it is bare.")
STUDS = count("studs", "Studs or screws.")
HOLDS = count("holds", "Conductors it may hold.")
BOX_EARTHED = yes("box earthed", "Its metal box is joined to the earth of what runs through it.")
COVER = yes("cover", "Live parts are covered.")

BAR = Kind(
    "bar",
    "A bus bar.",
    (*COMMON, words("poles", ("+", "-"), "Which poles it has."), RATING, DEVICE_VOLTAGE, STUDS, COVER, ENCLOSURE),
    ports=LIVE_PAIR,
    sections=NODE,
)
BOARD = Kind(
    "board",
    "A fuse box or distribution board; each way is a port with its device.",
    (
        *COMMON,
        SYSTEM,
        word("family", FUSE_FAMILIES + BREAKER_FAMILIES, "Family of the devices in its ways."),
        RATING,
        DEVICE_VOLTAGE,
        BREAKING,
        word("holder", HOLDERS, "How the devices are held."),
        word("neutral bar", ("insulated", "bonded"), "Its neutral bar."),
        named("main", "equipment", "The switch or breaker that makes it dead."),
        word("opens with", ("hand", "tool", "key"), "What opens its cover."),
        quantity("working space.width", "m", "Width of the free space in front of it."),
        quantity("working space.depth", "m", "Depth of the free space in front of it."),
        ENCLOSURE,
        BOX_EARTHED,
        COVER,
    ),
    ports=(Port("", EITHER_POLES),),
    sections=PLAIN,
    more_ports="ways",
)
EARTH_BAR = Kind(
    "earth bar", "The bar where earths meet.", (*COMMON, STUDS, HOLDS), ports=(Port("", ("PE",)),), sections=NODE
)
TERMINAL_BLOCK = Kind(
    "terminal block",
    "A block where circuits divide.",
    (*COMMON, SYSTEM, RATING, DEVICE_VOLTAGE, HOLDS, ENCLOSURE, BOX_EARTHED, COVER),
    ports=(Port("", EITHER_POLES),),
    sections=NODE,
)
JOINT = Kind(
    "joint",
    "A splice or tee without a body of its own.",
    (
        *COMMON,
        SYSTEM,
        word("method", ("crimped", "soldered", "clamped", "bolted", "lever", "twisted", "tap"), "How it is made."),
        yes("insulated", "It is insulated."),
        HOLDS,
        ENCLOSURE,
        BOX_EARTHED,
    ),
    ports=A_B,
    sections=NODE,
    through=("a", "b"),
)
CONNECTOR = Kind(
    "connector",
    "A plug and socket in a run.",
    (
        *COMMON,
        SYSTEM,
        RATING,
        DEVICE_VOLTAGE,
        PLUG_SHAPE,
        word("live side", ("socket", "plug"), "The half that stays live when it is parted."),
        yes("recessed contacts", "The live half cannot be touched."),
        yes("keyed", "It cannot be joined the wrong way round."),
        yes("breaks load", "It may be parted under load."),
    ),
    ports=A_B,
    sections=NODE,
    through=("a", "b"),
)
SHUNT = Kind(
    "shunt",
    "A current-measuring resistor.",
    (*COMMON, RATING, quantity("resistance", "mΩ", "Its resistance.")),
    ports=A_B,
    sections=NODE,
    through=("a", "b"),
)
METAL_PART = Kind(
    "metal part",
    "A part that is bonded: pipes, frames, skins.",
    (*COMMON, yes("exposed", "It can be touched.")),
    ports=(Port("", ("PE",)),),
    sections=NODE,
)
CHASSIS = Kind(
    "chassis", "The metal of the vehicle; any point name, never declared.", (), sections=("built in",), more_ports="any"
)

NODES = (BAR, BOARD, EARTH_BAR, TERMINAL_BLOCK, JOINT, CONNECTOR, SHUNT, METAL_PART, CHASSIS)
