"""Devices that protect: fuses, breakers, residual-current devices, surge, voltage and insulation watchers."""

from __future__ import annotations

from checker.design.vocabulary.common import A_B, COMMON, DEVICE_VOLTAGE, IN_SIGHT, LINE_LOAD, PLAIN, PRECHARGED, SYSTEM
from checker.design.vocabulary.key import Key, Kind, Port
from checker.design.vocabulary.make import count, named, names, quantity, signal, word, yes
from checker.design.vocabulary.words import (
    AC_POLES,
    BREAKER_FAMILIES,
    DC_POLES,
    FUSE_FAMILIES,
    HOLDERS,
    RESIDUAL_TYPES,
)

RATING = quantity("rating", "A", "Rated current.")
# Few are; without the word of its maker a device ages at its full current.
FULL_DUTY = yes("full duty", "Its maker rates it for its full current for ever. Left out: false.", default="false")
BREAKING = quantity("breaking capacity", "A", "Greatest short-circuit current it can break at its voltage.")
CURVE = Key("curve", "curve", "Time to open by current, instead of the band of the family.", unit=("A", "s"))
# One pole unless the writer says more: the unfavourable side for isolating and for disconnecting both conductors.
POLES = count("poles", "Poles it opens together. Left out: 1.", default="1")

BACKED = (
    # Makers list such pairs by type; without their word each device stands alone.
    named("backed up.by", "equipment", "The device upstream that limits a short for it, as its maker lists."),
    quantity("backed up.to", "A", "Greatest short-circuit current that it stands behind that one."),
)
FUSE_KEYS = (
    word("family", FUSE_FAMILIES, "Family: gives the time-current band."),
    RATING,
    FULL_DUTY,
    DEVICE_VOLTAGE,
    BREAKING,
    *BACKED,
    word("holder", HOLDERS, "How it is held."),
    CURVE,
)

FUSE = Kind("fuse", "A fuse in its holder.", (*COMMON, *FUSE_KEYS), ports=A_B, sections=PLAIN, through=("a", "b"))

ISOLATES = yes("isolates", "It isolates when open.")
BREAKER_KEYS = (
    word("family", BREAKER_FAMILIES, "Family: gives the time-current band."),
    RATING,
    FULL_DUTY,
    DEVICE_VOLTAGE,
    BREAKING,
    *BACKED,
    POLES,
    word("reset", ("by hand", "by itself", "remote"), "How it is closed again."),
    yes("trip free", "It opens on a fault although the lever is held."),
    yes("polarised", "Its poles or its line and load sides must not be swapped."),
    ISOLATES,
    yes("lockable", "It can be locked open."),
    IN_SIGHT,
    CURVE,
    quantity("instant.above", "A", "Current from which it opens at once, by its maker. Left out: as its family."),
    quantity("instant.within", "s", "Longest time that it needs then, by its maker. Left out: as its family."),
)
RESIDUAL_KEYS = (
    quantity("trips at", "A", "Rated residual current, such as 30 mA."),
    word("type", RESIDUAL_TYPES, "Shapes of residual current it responds to."),
    quantity("time", "s", "Longest time to open at its rated residual current."),
    yes("works without supply", "It opens on a fault even when its own supply fails."),
    yes("surge proof", "A surge of 3 kA to earth does not trip it."),
)

BREAKER = Kind(
    "breaker",
    "A circuit breaker.",
    (*COMMON, *BREAKER_KEYS, PRECHARGED),
    ports=LINE_LOAD,
    sections=PLAIN,
    through=("line", "load"),
)
RCBO = Kind(
    "rcbo",
    "A breaker and a residual-current device in one.",
    (*COMMON, *BREAKER_KEYS, *RESIDUAL_KEYS),
    ports=LINE_LOAD,
    sections=PLAIN,
    through=("line", "load"),
)
RCD = Kind(
    "rcd",
    "A residual-current device without overcurrent protection.",
    (*COMMON, RATING, DEVICE_VOLTAGE, POLES, ISOLATES, *RESIDUAL_KEYS),
    ports=LINE_LOAD,
    sections=PLAIN,
    through=("line", "load"),
)
SURGE_DEVICE = Kind(
    "surge device",
    "A surge-protective device across the supply.",
    (
        *COMMON,
        DEVICE_VOLTAGE,
        word("class", ("1", "2", "3"), "Test class."),
        quantity("level", "V", "Voltage protection level."),
        word("fails to", ("open", "short"), "What it becomes at the end of its life."),
    ),
    ports=(Port("", AC_POLES),),
    sections=PLAIN,
)
GALVANIC_ISOLATOR = Kind(
    "galvanic isolator",
    "A device in the earth conductor of the shore that stops small direct currents.",
    (
        *COMMON,
        RATING,
        word("fails to", ("open", "short"), "What it becomes when it fails."),
        quantity("fault current", "A", "Earth-fault current that it carries until a device opens."),
    ),
    ports=A_B,
    sections=PLAIN,
    through=("a", "b"),
)
CLAMP = Kind(
    "clamp",
    "A device across a battery circuit that limits transients.",
    (*COMMON, quantity("level", "V", "Clamping voltage."), word("fails to", ("open", "short"), "What it becomes.")),
    ports=(Port("", DC_POLES),),
    sections=PLAIN,
)
VOLTAGE_MONITOR = Kind(
    "voltage monitor",
    "A device that disconnects when the voltage is too low or too high.",
    (
        *COMMON,
        RATING,
        DEVICE_VOLTAGE,
        POLES,
        quantity("trips below", "V", "Voltage below which it opens."),
        quantity("trips above", "V", "Voltage above which it opens."),
        quantity("time", "s", "How long it waits before it opens."),
    ),
    ports=LINE_LOAD,
    sections=PLAIN,
    through=("line", "load"),
)
INSULATION_MONITOR = Kind(
    "insulation monitor",
    "A device that watches the insulation of an isolated supply.",
    (
        *COMMON,
        SYSTEM,
        quantity("trips below", "Ω", "Insulation resistance at which it acts."),
        word("acts by", ("alarm", "disconnecting"), "What it does then."),
        signal("signals", "The signal it gives."),
    ),
    ports=(Port("", (*AC_POLES, *DC_POLES)),),
    sections=PLAIN,
)
POLARITY_INDICATOR = Kind(
    "polarity indicator",
    "A lamp or device that shows live and neutral of the shore swapped.",
    (
        *COMMON,
        word("acts by", ("alarm", "disconnecting"), "What it does."),
        names("watches", "equipment", "What it watches."),
    ),
    ports=(Port("", AC_POLES),),
    sections=PLAIN,
)

PROTECTION = (
    FUSE, BREAKER, RCBO, RCD, SURGE_DEVICE, GALVANIC_ISOLATOR, CLAMP, VOLTAGE_MONITOR, INSULATION_MONITOR,
    POLARITY_INDICATOR,
)  # fmt: skip
