"""What turns one supply into another: converters, chargers, inverters, controllers, transformers."""

from __future__ import annotations

from checker.design.vocabulary.common import (
    AT_FAULT_KEY,
    COMMON,
    DERATES,
    EFFICIENCY,
    ENABLE,
    IDLE,
    PARTS_ON_LOSS,
    PLAIN,
    REVERSE,
    SETTINGS,
    TRANSIENTS,
)
from checker.design.vocabulary.key import Key, Kind, Port
from checker.design.vocabulary.make import names, quantity, rated, signal, text, window, word, yes
from checker.design.vocabulary.words import (
    AC_POLES,
    BOND_WHEN,
    CONNECTED,
    DC_POLES,
    ISOLATION,
    LEAKAGE,
    TRANSFER_WHEN,
    WAVEFORMS,
)

CASE = Port("case", ("",), "metal case")
ENABLE_PORT = Port("enable", ("",), "signal input")
REVERSE_DRAIN = quantity("reverse drain", "A", "Current it draws back from the battery when it is off.")
ISOLATION_KEY = word("isolation", ISOLATION, "Isolation between its sides; `none` when they are joined.")
OFF_BY = word("off by", CONNECTED, "How it is switched off.")


def _side(name: str) -> tuple[Key, ...]:
    side = f"sides.{name}"
    return (
        quantity(f"{side}.nominal", "V", f"Nominal voltage of the {name} side."),
        quantity(f"{side}.current", "A", f"Greatest continuous current of the {name} side."),
        window(f"{side}.voltage", "V", f"Voltages the {name} side works at."),
        quantity(f"{side}.peak.current", "A", f"Current the {name} side gives for a short time."),
        quantity(f"{side}.peak.time", "s", "How long it gives that."),
        quantity(f"{side}.trips over", "V", f"Voltage at which the {name} side shuts down."),
        quantity(f"{side}.input capacitance", "F", f"Capacitors behind the {name} terminals."),
    )


DC_CONVERTER = Kind(
    "dc converter",
    "Direct current to direct current, one way or both.",
    (
        *COMMON,
        yes("both ways", "It can pass power in either direction."),
        yes("isolated", "Its sides are isolated from each other."),
        ISOLATION_KEY,
        *_side("low"),
        *_side("high"),
        EFFICIENCY,
        IDLE,
        AT_FAULT_KEY,
        *DERATES,
        *ENABLE,
        signal("charge stop.by", "The signal that stops it charging."),
        REVERSE_DRAIN,
        OFF_BY,
        *TRANSIENTS,
        *REVERSE,
        *SETTINGS,
    ),
    ports=(Port("low", DC_POLES), Port("high", DC_POLES), ENABLE_PORT),
    sections=PLAIN,
)

CHARGER = Kind(
    "charger",
    "Mains to battery.",
    (
        *COMMON,
        quantity("ac.voltage", "V", "Mains voltage."),
        quantity("ac.current", "A", "Greatest mains current."),
        quantity("dc.nominal", "V", "Nominal battery voltage."),
        quantity("dc.current", "A", "Greatest charging current."),
        quantity("dc.peak.current", "A", "Current it gives for a short time to a bus without a battery."),
        quantity("dc.peak.time", "s", "How long it gives that."),
        ISOLATION_KEY,
        word("case", ("earthed", "insulated"), "How its case is kept from shock."),
        quantity("ripple", "V", "Ripple voltage at its output."),
        REVERSE_DRAIN,
        EFFICIENCY,
        AT_FAULT_KEY,
        *DERATES,
        *ENABLE,
        signal("charge stop.by", "The signal that stops it charging."),
        word("leakage waveform", LEAKAGE, "Shape of the residual current of a fault in it."),
        OFF_BY,
        *TRANSIENTS,
        *REVERSE,
        *SETTINGS,
    ),
    ports=(Port("ac", AC_POLES), Port("dc", DC_POLES), CASE),
    sections=PLAIN,
)

INVERTER_KEYS = (
    *COMMON,
    quantity("power", "W", "Continuous power."),
    quantity("surge.power", "W", "Power for a short time."),
    quantity("surge.time", "s", "How long it gives that."),
    word("waveform", WAVEFORMS, "Shape of its voltage."),
    EFFICIENCY,
    quantity("no load", "W", "What it draws from the battery with nothing connected."),
    quantity("dc.nominal", "V", "Nominal battery voltage."),
    window("dc.voltage", "V", "Battery voltages it works at."),
    quantity("dc.input capacitance", "F", "Capacitors behind its battery terminals."),
    yes("dc.soft start", "It charges these capacitors gently by itself. Left out: no.", default="false"),
    quantity("dc.cable length", "m", "Longest battery cable that its maker allows, one way."),
    quantity("ac.voltage", "V", "Output voltage."),
    quantity("ac.frequency", "Hz", "Output frequency."),
    quantity("ac.fault current", "A", "Greatest current into a short circuit."),
    quantity("ac.fault time", "s", "How long it can keep that up."),
    yes("bond", "Its neutral can be joined to earth inside it; `none` when it cannot."),
    word("bond.when", BOND_WHEN, "When its neutral is joined to earth."),
    word("bond.by", ("relay", "link"), "What makes the join."),
    ISOLATION_KEY,
    word("case bond", ("required", "not required"), "Whether the maker asks for a bond of the case."),
    quantity("heat at full", "W", "Heat at full power."),
    *DERATES,
    *ENABLE,
    OFF_BY,
    word("leakage waveform", LEAKAGE, "Shape of the residual current of a fault in it."),
    names("synchronises with", "equipment", "Sources it may run in parallel with, by design."),
    PARTS_ON_LOSS,
    *TRANSIENTS,
    *REVERSE,
    *SETTINGS,
)

INVERTER = Kind(
    "inverter",
    "Battery to mains voltage.",
    (
        *INVERTER_KEYS,
        word("made for", ("fixed wiring", "own outlets"), "What its maker made its mains output for."),
    ),
    ports=(Port("dc", DC_POLES), Port("ac", AC_POLES), CASE, ENABLE_PORT),
    sections=PLAIN,
)

INVERTER_CHARGER = Kind(
    "inverter-charger",
    "Battery to mains voltage, shore to battery, and the transfer between them in one box.",
    (
        *INVERTER_KEYS,
        quantity("transfer.rating", "A", "Rated current of the transfer contacts."),
        Key("transfer.poles", "count", "Poles the transfer switches."),
        word("transfer.when", TRANSFER_WHEN, "When it passes the shore through."),
        quantity("transfer.withstand", "A", "Short-circuit current it stands, with the device that guards it."),
        quantity("transfer.time", "s", "How long the change takes."),
        word("transfer.backfeed", ("blocked", "possible"), "Whether its output can reach the input terminals."),
        quantity("charger.current", "A", "Greatest charging current."),
        word("charger.when", TRANSFER_WHEN, "When it charges."),
        signal("charge stop.by", "The signal that stops it charging."),
        quantity("ripple", "V", "Ripple voltage while it charges."),
        REVERSE_DRAIN,
    ),
    ports=(Port("dc", DC_POLES), Port("ac-out", AC_POLES), Port("ac-in", AC_POLES), CASE, ENABLE_PORT),
    sections=PLAIN,
)

SOLAR_CONTROLLER = Kind(
    "solar controller",
    "Array to battery.",
    (
        *COMMON,
        quantity("input.voltage", "V", "Highest input voltage it survives."),
        quantity("input.short current", "A", "Greatest short-circuit current of an array it accepts."),
        quantity("output.nominal", "V", "Nominal battery voltage."),
        quantity("output.current", "A", "Greatest charging current."),
        yes("limits itself", "It limits its output current whatever the array could give."),
        signal("charge stop.by", "The signal that stops it charging."),
        yes("unloaded battery harm", "It is harmed when the battery goes while the sun shines."),
        EFFICIENCY,
        IDLE,
        *DERATES,
        *ENABLE,
        REVERSE_DRAIN,
        *TRANSIENTS,
        *REVERSE,
        *SETTINGS,
    ),
    ports=(Port("battery", DC_POLES), Port("pv", DC_POLES), Port("load", DC_POLES), Port("allow", ("",))),
    sections=PLAIN,
)

TRANSFORMER = Kind(
    "transformer",
    "Mains to mains or to extra-low voltage, isolating or not.",
    (
        *COMMON,
        rated("primary.voltage", "Primary voltage."),
        quantity("primary.current", "A", "Rated primary current."),
        quantity("primary.inrush", "A", "Greatest current when switched on."),
        rated("secondary.voltage", "Secondary voltage."),
        quantity("secondary.current", "A", "Rated secondary current."),
        quantity("secondary.fault current", "A", "Current that its secondary gives into a short circuit."),
        quantity("power", "W", "Rated power."),
        word("windings", ("separate", "auto"), "Separate windings, or one with a tap."),
        ISOLATION_KEY,
        text("screen", "The screen between its windings and where it goes."),
    ),
    ports=(Port("primary", AC_POLES), Port("secondary", AC_POLES), CASE),
    sections=PLAIN,
)

CONVERTERS = (DC_CONVERTER, CHARGER, INVERTER, INVERTER_CHARGER, SOLAR_CONTROLLER, TRANSFORMER)
