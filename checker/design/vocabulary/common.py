"""Keys that every piece of equipment may have, and small groups that several families share."""

from __future__ import annotations

from checker.design.vocabulary.key import Key, Port
from checker.design.vocabulary.make import (
    named,
    names,
    quantity,
    rated,
    ratio,
    signal,
    texts,
    under,
    window,
    word,
    words,
    yes,
)
from checker.design.vocabulary.make import text as text_key
from checker.design.vocabulary.words import (
    ACCESS,
    AT_FAULT,
    DC_POLES,
    FITTED,
    LABELS,
    OWNERS,
    SHAPES,
    SURFACES,
    SYSTEMS,
    TRAVEL_AXES,
    WAKES,
)

PLAIN = ("equipment", "parts")
NODE = ("equipment", "joints", "parts")

LIVE_PAIR = (Port("", DC_POLES),)
A_B = (Port("a", ("",), "entered first in a run"), Port("b", ("",), "left by a run"))
LINE_LOAD = (Port("line", ("",), "the side meant for the supply"), Port("load", ("",), "the side meant for the load"))

RESTRAINT = (
    yes("restraint", "It is held against a crash and rough roads."),
    text_key("restraint.hold-down", "What holds it."),
    quantity("restraint.movement", "m", "How far it can still move."),
    quantity("restraint.for", "kg", "The mass that the hold is made for."),
    quantity("restraint.acceleration", "m/s2", "The acceleration that the hold is made for, such as 20 g."),
    word("restraint.fixed to", SURFACES, "What the hold is fastened to."),
)

SERVICE = tuple(
    quantity(f"service.{side}", "m", f"Free space that must stay at the {side} for air and hands.")
    for side in ("front", "back", "left", "right", "top", "bottom")
)

COMMON: tuple[Key, ...] = (
    named("place", "places", "Where it stands."),
    Key("box", "box", "Its box in vehicle axes: least corner and size."),
    Key("at", "point", "The point where it stands, when the box is not known."),
    word("front towards", TRAVEL_AXES, "The way its front faces, along the vehicle axes."),
    *SERVICE,
    quantity("mass", "kg", "Its mass; of one when there are several."),
    quantity("height", "m", "Height above the ground; for gear inside, above the floor."),
    quantity("height added", "m", "How much it adds to the height of the vehicle."),
    Key("degree", "degree", "Degree of protection of the enclosure, IEC 60529."),
    word("access", ACCESS, "How a hand gets to it."),
    quantity("reach", "m", "Distance to the door or seat from which it is reached."),
    words("labels", LABELS, "What the labels on it or beside it say."),
    yes("marked", "Marked with its function."),
    yes("corrosion proof", "Its case and terminals stand salt and wet for years."),
    texts("standard", "Product standards it is said to meet."),
    texts("approval", "Approval marks, such as that of vehicle electromagnetic compatibility."),
    word("fitted", FITTED, "`later`: a place is kept for it, rules pass it by. Left out: now.", default="now"),
    # The rules ask more of new work than of what the vehicle left the factory with.
    word("own", OWNERS, "Whose work it is. Left out: fitter.", default="fitter"),
    text_key("doubt", "A doubt of the writer, shown with every finding on it."),
    *RESTRAINT,
    yes("ignition protected", "It cannot light a gas mixture around it."),
    quantity("heat", "W", "Heat it gives off in use, when nothing else tells."),
    quantity("allows", "A", "The current its maker, or the vehicle maker, permits to be taken from it."),
)

SYSTEM = word("system", SYSTEMS, "dc or mains. Left out: as the circuits that reach it.")

DERATES = (
    quantity("derates.above", "°C", "Air temperature up to which it gives its full output."),
    quantity("derates.to zero at", "°C", "Air temperature at which it gives nothing."),
)
AT_FAULT_KEY = word("at fault", AT_FAULT, "What it does into a short circuit.")
ENABLE = (
    signal("enabled by", "The signal without which it does not run."),
    signal("wakes by", "What starts it again after all went dark.", words=WAKES),
)
TRANSIENTS = (
    quantity("transient level", "V", "Highest transient its battery side endures."),
    quantity("jump start", "V", "Voltage of a jump start that its battery side endures for a minute."),
)
REVERSE = (
    yes("keyed", "Its connection cannot be made the wrong way round."),
    yes("reverse protection", "It survives a battery connected the wrong way round."),
)
# Low for a converter of any make: what is lost becomes heat and extra input current. Common practice, no source.
EFFICIENCY = ratio("efficiency", "Output over input at rated power. Left out: 0.85.", default="0.85")
IDLE = quantity("idle", "W", "What it draws while it waits.")
PARTS_ON_LOSS = yes("parts on loss", "It parts by itself when a source it runs in parallel with is lost.")
START = (
    quantity("start.current", "A", "Greatest current at the start."),
    quantity("start.time", "s", "How long the start lasts."),
    # Loads start when somebody or something asks them to, and at worst all at once.
    yes("start.alone", "It never starts together with another on its bus. Left out: false.", default="false"),
)
VOLTAGE_WINDOW = window("voltage", "V", "The voltages it works at.")
DEVICE_VOLTAGE = rated("voltage", "Rated voltage with its system, such as 80 V DC.")
IN_SIGHT = names("in sight of", "equipment", "What it is seen from: near, and with nothing in between.")
PRECHARGED = word(
    "precharge", ("built in", "by hand", "separate"), "How capacitors behind it are charged first; `none` for not."
)
PLUG_SHAPE = word("shape", SHAPES, "The shape of the plug or socket.")

SETTINGS = under(
    "settings",
    (
        quantity("charge voltage", "V", "Absorption voltage."),
        quantity("charge current", "A", "Charging current it is set to."),
        quantity("charge time", "s", "Longest time at the absorption voltage."),
        quantity("float", "V", "Float voltage; none when it stops."),
        quantity("equalise", "V", "Equalising voltage; none when it is off."),
        yes("desulphate", "It sends desulphating pulses."),
        quantity("temperature compensation", "mV/K", "Change of the charge voltage with battery temperature."),
        word("temperature sensed", ("at the battery", "at itself"), "Where it measures the temperature it follows."),
        quantity("low stop", "V", "Battery voltage at which it stops."),
        quantity("restarts at", "V", "Battery voltage at which it starts again."),
        quantity("holds low above", "V", "It stops drawing from its low side below this voltage."),
        quantity("feed voltage", "V", "Voltage it holds on its low side when it feeds it."),
        quantity("shore limit", "A", "Greatest current it takes from the shore."),
    ),
)
