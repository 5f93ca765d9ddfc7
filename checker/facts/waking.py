"""How a battery whose management shut down comes back."""

from __future__ import annotations

from typing import Any

from checker.facts.bank import loose_bank, of_unit
from checker.facts.catalogue import fact
from checker.facts.charging import outputs_to
from checker.facts.contacts import signal_means
from checker.facts.subject import Facts, Subject
from checker.quantities import Truth, Unknown, some


@fact(
    "bank",
    "charged_while_asleep",
    type="yes/no",
    says="A charger starts without it and brings the charging voltage that wakes its management.",
    method="an alternator on its bus, or a charger that wakes by itself, by hand, or by engine, shore or generator",
)
def charged_while_asleep(s: Subject) -> Truth:
    answers: list[Truth] = []
    for output in outputs_to(s.facts, s.item):
        item = output.source.equipment
        if not item.allows("wakes by"):
            answers.append(item.kind == "alternator")
            continue
        by = s.read(item, "wakes by")
        answers.append(_starts_alone(s.facts, by))
    loose = loose_bank(s.facts)  # a bank of untold joint may hang on a charger that no walk finds
    return some(answers if loose is None else [*answers, loose])


@fact(
    "bank",
    "woken_from_elsewhere",
    type="yes/no",
    says="The signal that wakes its management comes from the engine, the shore or a generator, not from a battery "
    "that sleeps; none where no signal wakes it.",
    method="what the signal means",
)
def woken_from_elsewhere(s: Subject) -> Any:
    wakes = s.wakes
    if isinstance(wakes, Unknown):
        return wakes
    if wakes != "signal":
        return None
    return _starts_alone(s.facts, of_unit(s, s.item, "bms.wakes by"))


ALIVE = ("engine running", "ignition on", "shore present", "generator running")
"""Signals that come from elsewhere than a battery which sleeps."""


def _starts_alone(facts: Facts, by: Any) -> Truth:
    if isinstance(by, Unknown) or by is None:
        return False if by is None else by
    if by in ("by itself", "by hand"):
        return True
    if by in ("charge voltage", "load"):
        return False
    means = signal_means(facts, by)
    return means if isinstance(means, Unknown) else means in ALIVE
