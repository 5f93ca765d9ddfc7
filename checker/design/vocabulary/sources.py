"""What electricity comes from: batteries, alternators, couplings, arrays, generators."""

from __future__ import annotations

from checker.design.vocabulary.common import (
    COMMON,
    ENABLE,
    LIVE_PAIR,
    PARTS_ON_LOSS,
    PLAIN,
    REVERSE,
    SETTINGS,
)
from checker.design.vocabulary.key import Key, Kind, Port
from checker.design.vocabulary.make import count, named, names, quantity, rated, signal, text, under, window, word, yes
from checker.design.vocabulary.protection import FUSE_KEYS
from checker.design.vocabulary.words import AC_POLES, BOND_WHEN, CHEMISTRIES, DC_POLES, EITHER_POLES, ISOLATION, WAKES

BMS = (
    yes("bms", "A battery management system is fitted; `none` when there is not."),
    quantity("bms.charge limit", "A", "Continuous charging current it allows."),
    quantity("bms.discharge limit", "A", "Continuous discharging current it allows."),
    quantity("bms.peak.current", "A", "Current it allows for a short time."),
    quantity("bms.peak.time", "s", "How long it allows that."),
    quantity("bms.over voltage", "V", "Voltage of the battery at which it stops charging."),
    quantity("bms.under voltage", "V", "Voltage of the battery at which it stops discharging."),
    word("bms.low temperature", ("inhibits charge", "heats first"), "What it does in the cold; `none` for nothing."),
    quantity("bms.high temperature", "°C", "Cell temperature at which it stops."),
    word("bms.ports", ("common", "separate"), "One port for both directions, or one each."),
    quantity("bms.short circuit.current", "A", "Current above which it opens at once."),
    quantity("bms.short circuit.time", "s", "How long that takes."),
    yes("bms.alarm", "It warns before it stops."),
    names("bms.alarm.heard in", "places", "Where that warning is heard or seen."),
    signal("bms.wakes by", "What starts it again after it shut down.", words=WAKES),
)

HOUSE_KEYS = (
    word("purpose", ("starting", "house", "traction", "device"), "What it is for."),
    quantity("reserve", "V", "Voltage below which it shall not be drawn by added equipment."),
)

MADE = Key("made", "date", "When it was made; `mixed` when the units of a bank differ in age.", words=("mixed",))

BATTERY = Kind(
    "battery",
    "One battery with its own two poles.",
    (
        *COMMON,
        word("chemistry", CHEMISTRIES, "What the cells are made of."),
        quantity("nominal", "V", "Nominal voltage."),
        count("cells", "Cells in series."),
        quantity("capacity", "Ah", "Rated capacity, of a lead-acid battery that over 20 hours."),
        MADE,
        quantity("cranking current", "A", "Current it gives cold for starting, as marked on it."),
        quantity("charge limit", "A", "Greatest charging current that the maker of the battery allows."),
        quantity("discharge limit", "A", "Greatest lasting current that the maker of the battery allows."),
        count("most in series", "How many of them the maker allows in series."),
        count("most in parallel", "How many of them the maker allows in parallel."),
        quantity("internal resistance", "mΩ", "Resistance of the battery, its terminals included."),
        quantity("short circuit current", "A", "Greatest current into a dead short at its terminals."),
        window("window.charge", "°C", "Cell temperatures at which it may be charged."),
        window("window.discharge", "°C", "Cell temperatures at which it may be discharged."),
        *BMS,
        *HOUSE_KEYS,
        yes("spill proof", "It tolerates the tilt of its use without spilling."),
        word("tilt", ("30 degrees", "45 degrees", "any"), "Tilt that it, with its box, endures without spilling."),
        *REVERSE,
    ),
    ports=(*LIVE_PAIR, Port("allow", ("",), "the management's leave to charge")),
    sections=PLAIN,
)

BANK = Kind(
    "bank",
    "Several like batteries joined; `of` names the battery or the part they are.",
    (
        *COMMON,
        count("units", "How many batteries."),
        Key("arrangement", "arrangement", "Series and parallel: 1s3p."),
        MADE,
        named(
            "joined by", "equipment", "The bar that joins the units, or `chain` from one to the next.", words=("chain",)
        ),
        named("unit leads.cable", "cables", "The cable from a unit to the bar or to the next unit."),
        Key("unit leads.length", "quantities", "Length of each pair of leads: one for all, or a list.", unit="m"),
        text("unit leads.lugs", "Lugs of the leads, size and stud: 25-8."),
        yes("unit fuses", "Each unit has a fuse of its own; `none` when not."),
        named("unit fuses.part", "parts", "The fuse as a part."),
        word("unit fuses.at", ("battery", "bar"), "At which end of the lead the fuse sits."),
        *under("unit fuses", FUSE_KEYS),
        count("take-off.+", "The unit from which the positive leaves a chain, counted from 1."),
        count("take-off.-", "The unit from which the negative leaves a chain."),
        *BMS,
        *HOUSE_KEYS,
    ),
    ports=(*LIVE_PAIR, Port("allow", ("",), "the management's leave to charge")),
    sections=PLAIN,
)

REGULATED = ("settings.temperature compensation", "settings.temperature sensed")
"""Settings that the regulator of an alternator may have as a charger has."""

ALTERNATOR = Kind(
    "alternator",
    "The generator on the engine.",
    (
        *COMMON,
        quantity("nominal", "V", "Nominal voltage."),
        quantity("rating", "A", "Rated output current, cold."),
        window("set voltage", "V", "Voltages its regulator holds; a smart one moves over all of them."),
        yes("smart", "The vehicle changes the set voltage while driving."),
        Key("hot output", "curve", "Output current by speed, hot.", unit=("rpm", "A")),
        # Read at engine speed, a curve given for the shaft promises too little: the unfavourable side.
        word("rpm", ("engine", "shaft"), "Which speed the curve is given for. Left out: engine.", default="engine"),
        quantity("load dump.level", "V", "Voltage that follows when its battery is lost."),
        yes("load dump.clamped", "The alternator clamps it itself."),
        quantity("short circuit current", "A", "Greatest current into a short circuit."),
        quantity("temperature limit", "°C", "Case temperature it may reach."),
        yes("limits itself", "It lowers its output when hot."),
        quantity("base load", "A", "What the vehicle itself asks of it on the road, beyond what the modes name."),
        quantity("belt power", "W", "Shaft power that its belt, pulley and bracket are made for."),
        signal("charge stop.by", "The signal that makes its regulator stop before the battery goes."),
        *(key for key in SETTINGS if key.name in REGULATED),
    ),
    ports=(
        Port("b", DC_POLES, "output and case"),
        Port("d", ("+",), "running signal"),
    ),
    sections=PLAIN,
)


def _supply(name: str) -> tuple[Key, ...]:
    return (
        quantity(f"supplies.{name}.nominal", "V", f"Nominal voltage of the {name} contact."),
        quantity(f"supplies.{name}.current", "A", f"Current the {name} contact may give."),
        quantity(f"supplies.{name}.fuse", "A", f"Fuse of the {name} contact at the towing vehicle."),
    )


VEHICLE_COUPLING = Kind(
    "vehicle coupling",
    "The plug to a towing vehicle: a source as far as this vehicle is concerned.",
    (
        *COMMON,
        count("pins", "Contacts."),
        yes("recessed contacts", "The live half cannot be touched."),
        *_supply("charge"),
        *_supply("brakes"),
        *_supply("lamps"),
        *_supply("fridge"),
        window("source end.voltage", "V", "Voltages at the towing vehicle."),
        yes("source end.smart", "The towing vehicle changes its charging voltage."),
        yes("source end.switched", "The towing vehicle parts its charge and fridge contacts when its engine stops."),
        word("source end.chemistry", CHEMISTRIES, "What the cells of the battery over there are made of."),
        quantity("source end.length", "m", "Cable within the towing vehicle."),
        quantity("source end.size", "mm2", "Conductor within the towing vehicle."),
        quantity("source end.load dump", "V", "Voltage at the plug when the alternator over there loses its battery."),
        window("source end.fault current", "A", "Short-circuit currents at the plug, from the least to the greatest."),
    ),
    ports=(
        Port("charge", DC_POLES),
        Port("brakes", DC_POLES),
        Port("lamps", DC_POLES),
        Port("fridge", DC_POLES),
        Port("chassis", ("",)),
    ),
    sections=PLAIN,
)

SOLAR_ARRAY = Kind(
    "solar array",
    "Modules on one controller input; every figure is of one module.",
    (
        *COMMON,
        count("modules", "How many modules."),
        Key("arrangement", "arrangement", "Series and parallel: 4s1p."),
        quantity("power", "W", "Rated power of one module."),
        quantity("open voltage", "V", "Open-circuit voltage of one module at 25 °C."),
        quantity("short current", "A", "Short-circuit current of one module."),
        quantity("best voltage", "V", "Voltage of one module at its best power."),
        quantity("best current", "A", "Current of one module at its best power."),
        # Crystalline silicon stays above this; the lowest raises the cold voltage most. Common practice, no source.
        quantity("voltage coefficient", "%/K", "Change of the open voltage with temperature. Left out: -0.4 %/K.",
                 default="-0.4 %/K"),
        quantity("series fuse", "A", "Largest fuse a string may have."),
        quantity("string fuse", "A", "The fuse that each string has; `none` when strings are joined without one."),
        yes("frame bonded", "The frames are bonded."),
    ),
    ports=LIVE_PAIR,
    sections=PLAIN,
)  # fmt: skip

GENERATOR = Kind(
    "generator",
    "A generator of mains voltage, built in or carried along.",
    (
        *COMMON,
        quantity("power", "W", "Continuous power."),
        rated("voltage", "Rated voltage with its system."),
        quantity("frequency", "Hz", "Frequency."),
        # Those that fit a vehicle give one line.
        count("phases", "Lines that it gives. Left out: 1.", default="1"),
        quantity("fault current", "A", "Greatest current into a short circuit."),
        quantity("fault time", "s", "How long it can keep that up."),
        yes("bond", "Its neutral can be joined to its earth inside it; `none` when it cannot."),
        word("bond.when", BOND_WHEN, "When its neutral is joined to its earth."),
        word("bond.by", ("relay", "link"), "What makes the join."),
        yes("frame bond", "Its frame is bonded to the vehicle."),
        word("fuel", ("petrol", "diesel", "gas"), "Fuel."),
        names("synchronises with", "equipment", "Sources it may run in parallel with, by design."),
        PARTS_ON_LOSS,
        *ENABLE,
    ),
    ports=(Port("", AC_POLES),),
    sections=PLAIN,
)

TRACTION_OUTLET = Kind(
    "traction outlet",
    "An outlet by which the maker of an electric vehicle lets power be taken from its traction battery.",
    (
        *COMMON,
        rated("voltage", "Rated voltage with its system."),
        quantity("rating", "A", "Rated current."),
        quantity("power", "W", "Greatest power."),
        quantity("fault current", "A", "Greatest current into a short circuit."),
        word("isolation", ISOLATION, "Isolation from the traction battery."),
        yes("maker permits", "The maker of the vehicle permits this use."),
        yes("isolation monitored", "The vehicle goes on watching its isolation."),
        rated("traction voltage", "Highest voltage of the traction side behind it, with its system."),
        quantity("isolation resistance", "Ω", "Resistance of the traction side to the body, with what was added."),
    ),
    ports=(Port("", EITHER_POLES),),
    sections=PLAIN,
)

SOURCES = (BATTERY, BANK, ALTERNATOR, VEHICLE_COUPLING, SOLAR_ARRAY, GENERATOR, TRACTION_OUTLET)
