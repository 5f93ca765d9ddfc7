"""What uses electricity: lamps, outlets, appliances, motors, alarms."""

from __future__ import annotations

from checker.design.vocabulary.common import (
    COMMON,
    ENABLE,
    PLAIN,
    PLUG_SHAPE,
    REVERSE,
    START,
    SYSTEM,
    TRANSIENTS,
    VOLTAGE_WINDOW,
)
from checker.design.vocabulary.key import Key, Kind, Port
from checker.design.vocabulary.make import count, names, quantity, rated, ratio, word, words, yes
from checker.design.vocabulary.words import CLASSES, EITHER_POLES, LEAKAGE

TWO_OR_THREE = (Port("", EITHER_POLES),)
POWER = quantity("power", "W", "Power at nominal voltage.")
CURRENT = quantity("current", "A", "Current at nominal voltage.")

APPLIANCE: tuple[Key, ...] = (
    *COMMON,
    SYSTEM,
    POWER,
    CURRENT,
    VOLTAGE_WINDOW,
    *TRANSIENTS,
    *START,
    # On all the time: the most it can ask of cables and batteries.
    ratio("duty", "Share of the time it draws while it is on. Left out: 1.", default="1"),
    quantity("run time", "s", "Longest time it stays on at a stretch."),
    # Household appliances hang on one line and neutral.
    count("phases", "Lines that it needs. Left out: 1.", default="1"),
    word("class", CLASSES, "Class of protection against shock, IEC 61140."),
    yes("essential", "People depend on it."),
    quantity("own cell", "s", "How long it works from a cell of its own; none when it has no cell."),
    yes("own switch", "It has a switch of its own."),
    count("switched poles", "Poles that its own switch opens."),
    quantity("hot surface", "°C", "Temperature of its hottest surface."),
    # What household appliances of the mains are built to (their supply is rectified at most).
    word(
        "leakage waveform",
        LEAKAGE,
        "Shape of the residual current of a fault in it. Left out: pulsating.",
        default="pulsating",
    ),
    *ENABLE,
    *REVERSE,
)
PURPOSE_WORDS = (
    "road lamps", "gas system", "breakaway", "steering", "service brake", "heating", "water", "ventilation",
    "communication", "medical", "moving part", "cooking", "cooling", "navigation", "way out", "bilge",
    "engine",
)  # fmt: skip
PURPOSE = word("purpose", PURPOSE_WORDS, "What it is for.")
GAS_SAFE = word(
    "gas safe",
    ("closes on loss", "stays as it is"),
    "What its gas valve does when the supply is lost; `none` when it burns no gas.",
)
MOTOR_KEYS = (
    quantity("running", "A", "Current when running at its load."),
    quantity("stall", "A", "Current when held still."),
    yes("thermal cut-out", "It has a thermal cut-out of its own."),
)

COMPRESSOR_KEYS = (
    quantity("stall", "A", "Current when its compressor is held still."),
    # What compressors of appliances are built to: IEC 60335-2-34, motor-compressors (from memory).
    yes("thermal cut-out", "Its compressor has a thermal cut-out of its own. Left out: true.", default="true"),
)

LOAD = Kind(
    "load", "Any load that no other kind fits.", (*APPLIANCE, PURPOSE, GAS_SAFE), ports=TWO_OR_THREE, sections=PLAIN
)
LAMP = Kind(
    "lamp",
    "Lamps on one circuit.",
    (
        *APPLIANCE,
        PURPOSE,
        yes("dual voltage", "It runs from the mains and from extra-low voltage."),
        word("lampholders", ("separate", "shared"), "Lampholders and drivers of a dual-voltage lamp."),
        yes(
            "keyed lamps", "A dual-voltage lamp: none made for the other voltage fits its holders, or none is changed."
        ),
    ),
    ports=TWO_OR_THREE,
    sections=PLAIN,
)
OUTLET = Kind(
    "outlet",
    "A socket outlet, or several alike on one circuit.",
    (
        *COMMON,
        SYSTEM,
        rated("voltage", "Rated voltage with its system."),
        quantity("rating", "A", "Rated current."),
        yes("earth contact", "It has an earth contact."),
        yes("polarised", "Its plug fits one way only."),
        yes("polarity marked", "Plus and minus are shown at it, by mark or colour."),
        count("switched poles", "Poles its switch opens."),
        count("count", "How many. Left out: 1.", default="1"),
        PLUG_SHAPE,
        word("use", ("inside", "outside", "counter", "wet room", "bay"), "Where its plugs are used."),
        Key("degree.open", "degree", "Degree of protection with nothing plugged in."),
        Key("degree.mated", "degree", "Degree of protection with a plug in."),
        word("lid", ("self closing", "by hand"), "Its lid; `none` when there is not."),
        # Ordinary outlets have none, and without one they are protected less.
        quantity("own rcd", "A", "Residual current at which a device within it trips. Left out: none.", default="none"),
        quantity("projects", "m", "How far it stands out from the body."),
        yes("essential", "People depend on it."),
    ),
    ports=TWO_OR_THREE,
    sections=PLAIN,
)
FRIDGE = Kind(
    "fridge",
    "A refrigerator.",
    (
        *APPLIANCE,
        *COMPRESSOR_KEYS,
        word("works by", ("compressor", "absorption", "thermoelectric"), "How it cools."),
        yes("driven only", "Its low-voltage element works only while the engine runs."),
        GAS_SAFE,
    ),
    ports=TWO_OR_THREE,
    sections=PLAIN,
)
AIR_CONDITIONER = Kind(
    "air conditioner", "An air conditioner.", (*APPLIANCE, *COMPRESSOR_KEYS), ports=TWO_OR_THREE, sections=PLAIN
)
MOTOR = Kind(
    "motor", "A motor or what it drives.", (*APPLIANCE, *MOTOR_KEYS, PURPOSE), ports=TWO_OR_THREE, sections=PLAIN
)
FAN = Kind(
    "fan",
    "A fan that ventilates a place.",
    (
        *APPLIANCE,
        *MOTOR_KEYS,
        quantity("flow", "m3/h", "Air it moves."),
        yes("flow sensed", "The flow is sensed, not only the fan switched."),
        names("stops charging of", "equipment", "The chargers that stop when the flow fails."),
    ),
    ports=TWO_OR_THREE,
    sections=PLAIN,
)
VALVE = Kind(
    "valve",
    "A valve worked by electricity.",
    (*APPLIANCE, PURPOSE, word("rest", ("closed", "open", "stays"), "What it does without supply.")),
    ports=TWO_OR_THREE,
    sections=PLAIN,
)
BRAKE = Kind("brake", "Electric brakes.", (*APPLIANCE, PURPOSE), ports=TWO_OR_THREE, sections=PLAIN)
DETECTS = words("detects", ("gas", "carbon monoxide", "smoke", "heat", "hydrogen", "water"), "What it detects.")
HEARD = names("heard in", "places", "Where its alarm is heard or seen, when not only where it stands.")
ALARM = Kind("alarm", "An alarm for people.", (*APPLIANCE, DETECTS, HEARD), ports=TWO_OR_THREE, sections=PLAIN)
DETECTOR = Kind(
    "detector", "A detector that gives a signal.", (*APPLIANCE, DETECTS, HEARD),
    ports=(*TWO_OR_THREE, Port("out", ("",))), sections=PLAIN,
)  # fmt: skip

JOINED_UNIT = Kind(
    "joined unit",
    "Another unit or vehicle that a lead joins to this one; what it asks is a load here.",
    (*APPLIANCE,),
    ports=(*TWO_OR_THREE, Port("case", ("",), "its metal frame")),
    sections=PLAIN,
)

LOADS = (LOAD, LAMP, OUTLET, FRIDGE, AIR_CONDITIONER, MOTOR, FAN, VALVE, BRAKE, ALARM, DETECTOR, JOINED_UNIT)
