"""Where things are: places, holes between them, parts that move, lines of gas and water."""

from __future__ import annotations

from checker.design.vocabulary.common import RESTRAINT
from checker.design.vocabulary.key import Key, Kind
from checker.design.vocabulary.make import count, named, names, quantity, signal, text, texts, window, word, yes
from checker.design.vocabulary.words import MATERIALS, SURFACES, TRAVEL_AXES

PLACE_KINDS = (
    "living space", "locker", "battery locker", "battery box", "engine space", "gas locker", "duct", "cavity",
    "under body", "outside", "wet room", "bed", "seat", "exit", "fuel", "flexible loop",
)  # fmt: skip

PLACE = Kind(
    "place",
    "A space in or on the vehicle.",
    (
        # Where people breathe and sleep the rules ask most.
        word("kind", PLACE_KINDS, "What it is. Left out: living space.", default="living space"),
        named("inside", "places", "The place it is part of.", words=("outer skin",)),
        named("carried by", "moving", "The moving part that carries it."),
        named("across", "moving", "The moving part it bridges."),
        Key("box", "box", "Its box in vehicle axes."),
        # A closed box until openings are told: hottest, and nothing leads gas away. No place is aired by silence.
        quantity("vents.low", "cm2", "Free area of the low openings. Left out: none.", default="none"),
        quantity("vents.high", "cm2", "Free area of the high openings. Left out: none.", default="none"),
        quantity("vents.rise", "m", "Height between them."),
        quantity("vents.low above floor", "m", "Height of the low openings above the floor of the place."),
        quantity("vents.high below top", "m", "Distance of the high openings below the top of the place."),
        named("vents.to", "places", "Where they lead.", words=("outside",)),
        yes("vents.fixed", "They cannot be closed."),
        named("vents.fan", "equipment", "The fan that drives the air."),
        named("sealed from", "places", "The place its air cannot reach; `none` when it is sealed from nothing."),
        word("opens", ("outside", "inside"), "Where its door opens."),
        word("door", TRAVEL_AXES, "The side its door or lid is at, along the vehicle axes."),
        word("lining.material", MATERIALS, "What it is lined with."),
        yes("lining.combustible", "The lining burns."),
        word("material", MATERIALS, "What its walls are made of."),
        yes("combustible", "Its walls burn."),
        quantity("wall thickness", "m", "Thickness of its walls, for the heat they let through."),
        quantity("wall conductance", "W/K", "Heat that all its walls let through. Left out: from box and walls."),
        word("surface", SURFACES, "What cables in it are fixed to."),
        word("detector", ("smoke", "heat", "gas"), "The detector in it; `none` when there is not."),
        names("detector heard in", "places", "Where the alarm of that detector is heard or seen."),
        *RESTRAINT,
        texts("dividers", "Names of the parts it is divided into."),
        count("chambers.elv", "Chambers for extra-low voltage."),
        count("chambers.mains", "Chambers for mains."),
        quantity("inner.width", "m", "A duct or guide: clear width, of one chamber when it has several."),
        quantity("inner.height", "m", "A duct or guide: clear height, of one chamber when it has several."),
        quantity("inner.diameter", "m", "A round duct or tube: clear diameter."),
        window("temperature", "°C", "Air temperatures in it."),
        word(
            "thermal insulation",
            ("one side", "both sides"),
            "Thermal insulation along cables in it and in places within it, cavities left out; `none` for not.",
        ),
        word("wet", ("dry", "damp", "splash", "rain", "jets"), "Water it sees."),
        quantity("ground clearance", "m", "Height of its underside above the ground."),
        yes("shield", "Under the body: a shield keeps stones and water off what is in it."),
        quantity("free length", "m", "A flexible loop: length of cable between its clamps."),
        quantity("span in", "m", "A flexible loop: distance of the clamps, part retracted."),
        quantity("span out", "m", "A flexible loop: distance of the clamps, part extended."),
        quantity("span widest", "m", "A flexible loop: widest distance of the clamps, where it is at no end."),
        Key("clamps", "points", "A flexible loop: its two clamps, part retracted; the second one moves."),
        yes("clamped", "A flexible loop: its cables are held at both ends, so that no pull reaches a terminal."),
        yes("separators", "A flexible loop: separators keep its cables side by side."),
        quantity("bend radius", "m", "A flexible loop: smallest radius it is guided to."),
        word("guide", ("chain", "tray", "tube", "hanging"), "A flexible loop: what guides it."),
        count("cylinders", "A gas locker: cylinders it holds."),
        names("serves", "equipment", "A gas locker: gear that belongs to the gas."),
        Key("tray", "box", "A wet room: the shower tray."),
        yes("walled off", "A wet room: walls all round and a door, no curtain, part it from what is beside it."),
        Key("sinks", "points", "Its sinks and wash basins, the middle of each; `none` when it has not any."),
        count("counters", "Counters of 0.3 m and more along its walls."),
        Key("wall", "points", "Points along its wall, for the distances of outlets."),
        word("fuel", ("diesel", "petrol", "gas"), "A fuel place: what it holds. In a boat also what an engine burns."),
        yes("insulated", "A fuel place: insulation covers its metal, so that no tool bridges it to a battery."),
        text("doubt", "A doubt of the writer, shown with every finding on it."),
    ),
    sections=("places",),
)

PASS = Kind(
    "pass",
    "A hole through which cables go from one place to another.",
    (
        names("between", "places", "The two places."),
        word("panel", MATERIALS, "What it goes through."),
        yes("grommet", "Its edge is covered."),
        yes("gland", "A gland holds the cable."),
        yes("sealed", "Air and water do not pass."),
        quantity("hole", "m", "Its width."),
        text("doubt", "A doubt of the writer, shown with every finding on it."),
    ),
    sections=("passes",),
)

MOVING_PART = Kind(
    "moving part",
    "A part of the vehicle that moves: slide-out, lifting bed, lifting roof.",
    (
        names("carries", "places", "Places it carries."),
        Key("box", "box", "Its box, retracted."),
        word("travel.along", TRAVEL_AXES, "Axis it moves along when it opens, with a minus when against it."),
        quantity("travel.distance", "m", "How far."),
        Key("hinge.at", "point", "A point of the hinge it turns about, instead of a travel."),
        word("hinge.along", ("x", "y", "z"), "Axis along which the hinge lies."),
        Key("sweeps", "box", "A box around all the space it turns through. Left out: any turn about its hinge."),
        named("moved by", "equipment", "The motor."),
        quantity("clearance", "m", "Clearance around it."),
        yes("interlock", "It cannot move while it must not; `none` when nothing stops it."),
        word("interlock.inhibits when", ("engine running", "ignition on", "parking brake released", "road speed"),
             "When it is stopped."),
        word("interlock.acts on", ("power", "logic"), "What the interlock cuts: the motor's power or a control input."),
        signal("interlock.signal", "The signal it uses."),
        yes("hand drive", "It can be moved by hand."),
        yes("backup drive", "A drive with a supply of its own brings it in when the main supply is lost."),
        # Seldom fitted: what is not told is not counted on.
        yes("drive-away alarm", "An alarm sounds when it is out and the vehicle starts off. Left out: false.",
            default="false"),
        text("doubt", "A doubt of the writer, shown with every finding on it."),
    ),
    sections=("moving",),
)  # fmt: skip

SERVICE_LINE = Kind(
    "service",
    "A line of gas, fuel, water, hot air or exhaust, for distances.",
    (
        word("carries", ("gas", "diesel", "petrol", "water", "hot air", "exhaust"), "What it carries.", required=True),
        Key("along", "points", "Points along it."),
        quantity("outer", "m", "Its outer diameter."),
        yes("insulated", "A line of fuel: it is a hose without metal, or insulation covers its metal."),
    ),
    sections=("services",),
)

PLACES = (PLACE, PASS, MOVING_PART, SERVICE_LINE)
