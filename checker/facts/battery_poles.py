"""The poles of a battery: whether they are marked, and what holds the leads on them."""

from __future__ import annotations

from typing import Any

from checker.design.given import MISSING, Given
from checker.facts.bank import unit
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, equal, every, negate

POLES = ("+", "-")


def _told(s: Subject, pole: str, key: str) -> Any:
    """What the file says of a pole; where it says nothing, the entry that would settle it is named."""
    one = unit(s.item)
    if pole in one.terminals:
        return s.read(one.terminals[pole], key)
    missing = Unknown(f"the terminal {pole} of {s.id} is not described")
    s.use(f"{one.path}.terminals.{pole}.{key}", Given(missing, one.where, MISSING))
    return missing


@fact("bank", "poles_marked", type="yes/no", says="Plus and minus are marked at its poles.")
def poles_marked(s: Subject) -> Truth:
    found = [_told(s, pole, "marked") for pole in POLES]
    return every(False if one is None else one for one in found)


@fact("bank", "leads_held", type="yes/no", says="Its leads are bolted or clamped, not held by spring clips.")
def leads_held(s: Subject) -> Truth:
    found = [_told(s, pole, "clamp") for pole in POLES]
    return every(False if one is None else negate(equal(one, "spring clip")) for one in found)
