"""What runs when: modes, and one day."""

from __future__ import annotations

from checker.design.vocabulary.key import Key, Kind
from checker.design.vocabulary.make import count, quantity, ratio, text, word

MODE = Kind(
    "mode",
    "One state of use. What is not named under `running` is connected but draws nothing.",
    (
        # A supply that is not named is not there.
        quantity(
            "engine", "rpm", "Speed of the engine. Left out: stopped.", words=("stopped", "idle"), default="stopped"
        ),
        quantity("shore", "A", "Current the shore may give. Left out: absent.", words=("absent",), default="absent"),
        word("generator", ("stopped", "running"), "The generator. Left out: stopped.", default="stopped"),
        word("inverter", ("inverting", "passing", "resting"), "The inverter. Left out: resting.", default="resting"),
        quantity("sun", "W/m2", "Sunshine on the array. Left out: 0 W/m2.", default="0 W/m2"),
        Key("running", "map", "What draws, and how much.", section="equipment", unit=("W", "A")),
        Key("set", "choices", "Positions of switches that are not at rest.", section="equipment"),
        ratio("charge", "State of charge of the house battery."),
        text("says", "What the mode stands for."),
    ),
    sections=("modes",),
)

DAY = Kind(
    "day",
    "One day of sun, driving, shore and use.",
    (
        quantity("sun hours", "h", "Hours of full sun that give the same energy."),
        quantity("shore", "h", "Hours on the shore."),
        quantity("driving", "h", "Hours of driving."),
        Key("uses", "map", "What is used, and how long or how much.", section="equipment", unit=("h", "Wh")),
        count("nights wanted", "Nights to last without another source."),
        ratio("keep", "State of charge that shall be left."),
        ratio("capacity left", "Share of the rated capacity that age and cold leave."),
    ),
    sections=("day",),
)

MODES = (MODE, DAY)
