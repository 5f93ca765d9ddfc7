"""The batteries that are joined with one another, in parallel or in series: how many, and whether they are alike."""

from __future__ import annotations

from typing import Any

from checker.design.model import Equipment
from checker.facts.bank import KINDS, of_unit, parallel, series_parallel
from checker.facts.catalogue import fact
from checker.facts.papers import months
from checker.facts.stacked import below
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Truth, Unknown, either, equal, every, less_equal, negate, total
from checker.quantities.values import between, perhaps

LIMITS = ("bms.charge limit", "bms.discharge limit", "bms.over voltage", "bms.under voltage")
"""What tells one management from another, where both are told."""


def _stack(s: Subject) -> list[tuple[Equipment, Truth]]:
    """The other batteries in series with one, written out: those it stands on, and those that stand on it."""
    network = s.facts.network
    found = {item.name: (item, surely) for item, surely in below(network, s.item)}
    for other in s.facts.design.equipment.values():
        if other.kind in KINDS and other is not s.item:
            for item, surely in below(network, other):
                if item is s.item:
                    found[other.name] = (other, surely)
    return list(found.values())


@fact("bank", "in_series", unit="each", says="Batteries in series in one string, those written out together.",
      method="arrangement, and that of each battery that circuits join plus to minus with it")  # fmt: skip
def in_series(s: Subject) -> Any:
    found: list[Number] = [series_parallel(s, s.item)[0]]
    for item, surely in _stack(s):
        one = series_parallel(s, item)[0]
        found.append(one if surely is True else perhaps(one))
    return total(found)


@fact(
    "bank",
    "members_alike",
    type="yes/no",
    says="The batteries always in parallel or in series with it have its voltage, chemistry, capacity, management and "
    "age.",
    method="each of a string of each; made within a year of another; limits of the managements where both are told; "
    "units of one bank differ in age alone, if `mixed`",
    source="a year: common practice, no source",
)
def members_alike(s: Subject) -> Truth:
    made = of_unit(s, s.item, "made")
    answers: list[Truth] = [made if isinstance(made, Unknown) else not is_mixed(made)]
    answers += [_alike(s, made, item) for item in parallel(s.facts, s.item) if item is not s.item]
    answers += [either(negate(surely), _alike(s, made, item)) for item, surely in _stack(s)]
    return every(answers)


def _alike(s: Subject, made: Any, item: Equipment) -> Truth:
    """Whether another battery is of the kind of this one."""
    other = s.facts.of("bank", item)
    if other is None:
        return True
    return every(
        [
            equal(s.chemistry, other.chemistry),
            equal(s.nominal_voltage, other.nominal_voltage),
            equal(of_unit(s, s.item, "capacity"), of_unit(s, item, "capacity")),
            equal(s.has_management, other.has_management),
            *(_same_limit(of_unit(s, s.item, key), of_unit(s, item, key)) for key in LIMITS),
            _of_one_age(made, of_unit(s, item, "made")),
        ]
    )


def _same_limit(mine: Any, theirs: Any) -> Truth:
    """Whether two limits of managements agree, as far as both are told: nobody is asked for them here."""
    told = isinstance(mine, float | Range) and isinstance(theirs, float | Range)
    return equal(mine, theirs) if told else True


def is_mixed(made: Any) -> bool:
    """Whether the units of a bank are said to differ in age."""
    return isinstance(made, str) and made == "mixed"


def _of_one_age(one: Any, other: Any) -> Truth:
    """Whether two dates, as far as they are told, lie within a year of each other."""
    if is_mixed(one) or is_mixed(other):
        return False
    first, second = months(one), months(other)
    if first is None or second is None:
        return Unknown("when the batteries were made is not told")
    apart = between(max(0, second[0] - first[1], first[0] - second[1]), max(second[1] - first[0], first[1] - second[0]))
    return less_equal(apart, 12.0)
