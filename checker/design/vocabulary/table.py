"""All kinds together, by section and name."""

from __future__ import annotations

from checker.design.vocabulary.cables import CABLES
from checker.design.vocabulary.circuits import CIRCUITS
from checker.design.vocabulary.converters import CONVERTERS
from checker.design.vocabulary.key import Kind
from checker.design.vocabulary.loads import LOADS
from checker.design.vocabulary.mains import MAINS
from checker.design.vocabulary.modes import MODES
from checker.design.vocabulary.nodes import NODES
from checker.design.vocabulary.papers import PAPER_KINDS
from checker.design.vocabulary.places import PLACES
from checker.design.vocabulary.protection import PROTECTION
from checker.design.vocabulary.signals import SIGNALS
from checker.design.vocabulary.sources import SOURCES
from checker.design.vocabulary.switching import SWITCHING
from checker.design.vocabulary.vehicle import VEHICLE_KINDS

FAMILIES: tuple[tuple[str, tuple[Kind, ...]], ...] = (
    ("Sources", SOURCES),
    ("Converters", CONVERTERS),
    ("Protection", PROTECTION),
    ("Switching", SWITCHING),
    ("Where circuits meet", NODES),
    ("Loads", LOADS),
    ("Shore supply", MAINS),
    ("Signals", SIGNALS),
)
EQUIPMENT: tuple[Kind, ...] = tuple(kind for _, kinds in FAMILIES for kind in kinds)
OTHERS: tuple[Kind, ...] = (*VEHICLE_KINDS, *PLACES, *CABLES, *CIRCUITS, *MODES, *PAPER_KINDS)
KINDS: dict[tuple[str, str], Kind] = {
    (section, kind.name): kind for kind in (*EQUIPMENT, *OTHERS) for section in kind.sections
}
