"""Named engineering quantities of a fit-out, each computed when first asked.

Importing this package fills the catalogue.
"""

from __future__ import annotations

from checker.facts import (
    approach,
    circuit,
    conductor,
    conductor_given,
    device,
    switch,
)

__all__ = [
    "approach",
    "circuit",
    "conductor",
    "conductor_given",
    "device",
    "switch",
]
