"""What a changeover has to stand at a short circuit, and sources that run side by side."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE
from checker.circuit.feeding import joined_with
from checker.circuit.states import State, Truth
from checker.facts.ac_source import beside_within, partners_of, settled
from checker.facts.catalogue import fact
from checker.facts.changeover import current_of, sources_behind
from checker.facts.state import METHOD
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Unknown, greatest, multiply

MOST, MOST_OTHER = {"transformer": 50.0}, 10.0
"""Highest credible short-circuit over rated current; of a transformer at 2 % impedance; common practice, no source."""
FAULT_KEYS = {"generator": "fault current", "inverter": "ac.fault current", "inverter-charger": "ac.fault current"}


@fact("changeover", "withstand", unit="A", says="Short-circuit current it stands, with the device that guards it.",
      method="as stated; of one that is built in, with its inverter-charger")  # fmt: skip
@fact("switch", "withstand", unit="A", says="Short-circuit current it stands, with the device that guards it.",
      method="as stated")  # fmt: skip
def withstand(s: Subject) -> Any:
    return s.read(s.item, "withstand" if s.item.allows("withstand") else "transfer.withstand")


@fact(
    "changeover",
    "fault_current",
    unit="A",
    says="Greatest short-circuit current of a source behind it.",
    method="of the site, of a generator or inverter as stated; of others once to ten times their rated current, "
    "of a transformer to fifty times",
    source="bounds of what is not stated: common practice, no source",
)
@fact(
    "switch",
    "fault_current",
    unit="A",
    says="Greatest short-circuit current of a source behind it.",
    method="of the site, of a generator or inverter as stated; of others once to ten times their rated current, "
    "of a transformer to fifty times",
    source="bounds of what is not stated: common practice, no source",
)
def fault_current(s: Subject) -> Any:
    most: Number = 0.0
    for item in sources_behind(s):
        if item.kind == "shore inlet":
            one = s.read(s.facts.design.vehicle, "supply.fault current")
        else:
            key = FAULT_KEYS.get(item.kind)
            one = Unknown("not stated") if key is None else s.read(item, key)
            if isinstance(one, Unknown):
                one = _credible(item.kind, current_of(s, item))
        most = greatest(most, one)
    return most


def _credible(kind: str, rated: Number) -> Number:
    """What a source that does not state it may bring into a short: its rated current at least, and up to so much."""
    return multiply(Range(1.0, MOST.get(kind, MOST_OTHER)), rated)


@fact(
    "ac_source",
    "runs_beside_another",
    type="yes/no",
    says="In some state it feeds beside another source that it is made to run with.",
    method=f"{METHOD}; or such a source stands on the mains input of an inverter-charger made to run with it",
)
def runs_beside_another(s: Subject) -> Any:
    partners = partners_of(s, s.item)

    def beside(state: State) -> Truth:
        here, perhaps = beside_within(s, state, s.item)
        if here:
            return True
        if s.item not in state.feeding:
            return None if perhaps else False
        sure, may = joined_with(state, s.item, LIVE)
        if any(other.name in partners or s.item.name in partners_of(s, other) for other in sure):
            return True
        return None if perhaps or any(other.name in partners for other in may) else False

    return settled(s, beside, "whether another source feeds beside it is not known")


@fact("ac_source", "parts_on_loss", type="yes/no",
      says="It parts by itself when the source it runs beside is lost; none for the shore.")  # fmt: skip
def parts_on_loss(s: Subject) -> Any:
    item = s.item.equipment
    return s.read(item, "parts on loss") if item.allows("parts on loss") else None
