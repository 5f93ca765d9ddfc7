"""Named engineering quantities of a fit-out, each computed when first asked.

Importing this package fills the catalogue.
"""

from __future__ import annotations

from checker.facts import (
    alternator,
    approach,
    array,
    bank,
    bank_isolation,
    bank_limits,
    bank_management,
    chamber,
    circuit,
    conductor,
    conductor_given,
    converter,
    converter_bus,
    design,
    device,
    energy,
    equipment,
    essential,
    inverter,
    loop,
    moving,
    pass_,
    place,
    switch,
)

__all__ = [
    "alternator",
    "approach",
    "array",
    "bank",
    "bank_isolation",
    "bank_limits",
    "bank_management",
    "chamber",
    "circuit",
    "conductor",
    "conductor_given",
    "converter",
    "converter_bus",
    "design",
    "device",
    "energy",
    "equipment",
    "essential",
    "inverter",
    "loop",
    "moving",
    "pass_",
    "place",
    "switch",
]
