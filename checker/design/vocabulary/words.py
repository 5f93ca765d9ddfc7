"""Closed lists of words that more than one table uses."""

from __future__ import annotations

CHEMISTRIES = (
    "lithium iron phosphate", "lithium nickel manganese cobalt", "lithium titanate", "flooded lead acid",
    "AGM lead acid", "gel lead acid", "lead carbon", "sodium ion",
)  # fmt: skip
SYSTEMS = ("dc", "mains")
CURRENTS = ("dc", "ac")
SIDES = ("inside", "outside")
FUSE_FAMILIES = (
    "blade", "micro blade", "large blade", "bolt-down strip", "bolt-down high voltage strip", "class T",
    "cylindrical 10x38", "cartridge gG", "rewirable", "factory link",
)  # fmt: skip
BREAKER_FAMILIES = ("B curve", "C curve", "D curve", "dc hydraulic-magnetic", "thermal", "electronic")
HOLDERS = ("bolted", "push-in", "screw cap", "clip", "din rail", "panel")
OPERATED = ("by hand", "remote", "coil", "signal", "breakaway pin", "pressure", "float", "thermostat", "timer")
AT_FAULT = ("limits", "hiccup", "latches off", "stays closed", "goes open")
ISOLATION = ("basic", "double", "reinforced")
BOND_WHEN = ("inverting", "running", "always", "never", "shore present", "shore absent")
TRANSFER_WHEN = ("shore present", "generator present", "always", "never", "by hand")
WAVEFORMS = ("sine", "modified", "square")
LEAKAGE = ("ac", "pulsating", "smooth dc", "high frequency")
RESIDUAL_TYPES = ("AC", "A", "F", "B")
OWNERS = ("factory", "fitter", "owner")
CLAMPS = ("bolted", "clamped", "spring clip", "screw", "push-in")
MEASURES = (
    "disconnection", "separated", "extra-low voltage", "insulated",
    "obstacles", "out of reach", "non-conducting place", "earth-free bonding",
)  # fmt: skip
FITTED = ("now", "later")
CLASSES = ("I", "II", "III")
SURFACES = ("metal", "wood", "plastic", "composite", "insulating board", "free")
MATERIALS = ("steel", "aluminium", "composite", "plywood", "plastic", "timber", "mineral board", "foam")
CONNECTED = ("own switch", "remote switch", "signal", "breaker", "unplugging")
WAKES = ("by itself", "by hand", "charge voltage", "load")
SHAPES = (
    "national 10 A", "national 15 A", "national 16 A", "national 20 A", "national 30 A", "national 50 A",
    "round blue 16 A", "round blue 32 A", "twist lock 30 A", "twist lock 50 A", "12 V socket", "24 V socket", "USB",
    "two-pole 48 V", "hard wired",
)  # fmt: skip
LABELS = (
    "type", "rating", "replacement", "competent person", "gas and spark", "circuit", "function", "state", "voltage",
    "frequency", "current", "phases", "earthing", "greatest power", "instructions", "more than one source",
    "live in daylight", "lead fully unwound", "polarity", "emergency", "battery space reserved",
    "supplies",
)  # fmt: skip
ACCESS = ("in the open", "from inside", "from outside", "behind a panel", "with a tool")
TRAVEL_AXES = ("x", "y", "z", "-x", "-y", "-z")

DC_POLES = ("+", "-")
AC_POLES = ("L", "N", "PE")
EITHER_POLES = DC_POLES + AC_POLES
"""Poles of equipment that stands in either system; the circuits that reach it say which are used."""
