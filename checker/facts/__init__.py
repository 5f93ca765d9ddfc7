"""Named engineering quantities of a fit-out, each computed when first asked.

Importing this package fills the catalogue.
"""

from __future__ import annotations

from checker.facts import (
    approach,
    bank,
    bank_isolation,
    bank_limits,
    bank_management,
    circuit,
    conductor,
    conductor_given,
    design,
    device,
    switch,
)

__all__ = [
    "approach",
    "bank",
    "bank_isolation",
    "bank_limits",
    "bank_management",
    "circuit",
    "conductor",
    "conductor_given",
    "design",
    "device",
    "switch",
]
