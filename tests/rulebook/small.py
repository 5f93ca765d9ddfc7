"""A small catalogue of facts, subjects made by hand and rule files made of keys, for the tests of the rulebook."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Any

from checker.facts.catalogue import Catalogue, FactSpec
from checker.quantities import UNKNOWN, Unknown

FAMILIES = ("blade", "strip", "class t")
COVERINGS = ("none", "split tube", "conduit")


def small_catalogue() -> Catalogue:
    """Conductors protected by devices, in a design."""
    catalogue = Catalogue()

    def add(kind: str, name: str, type: str = "number", **more: Any) -> None:
        unit, words, of = more.get("unit", ""), more.get("words", ()), more.get("of", "")
        catalogue.add(FactSpec(kind, name, type, unit, words, of, f"{name} of it", "", "", lambda subject: UNKNOWN))

    for kind in ("conductor", "device", "design"):
        catalogue.listers[kind] = lambda facts: ()
    add("conductor", "is_live", "yes/no")
    add("conductor", "capacity", unit="A")
    add("conductor", "current", unit="A")
    add("conductor", "length", unit="m")
    add("conductor", "voltage", unit="V")
    add("conductor", "window", "window", unit="V")
    add("conductor", "covering", "word", words=COVERINGS)
    add("conductor", "coverings", "words", words=COVERINGS)
    add("conductor", "protected_by", "list", of="device")
    add("conductor", "main_device", "subject", of="device")
    add("conductor", "note", "text")
    add("conductor", "reason", "word", words=("heat", "cold"))
    add("device", "rating", unit="A")
    add("device", "family", "word", words=FAMILIES)
    add("device", "trip_free", "yes/no")
    add("device", "protects", "list", of="conductor")
    add("device", "reason", "word", words=("heat", "cold"))
    add("design", "ambient", unit="°C")
    add("design", "drop", unit="%")
    return catalogue


class Thing:
    """A subject with the facts it is given; every other is unknown."""

    def __init__(self, kind: str, id: str = "one", **facts: Any) -> None:
        self.kind = kind
        self.id = id
        self.__dict__.update(facts)

    def __getattr__(self, name: str) -> Unknown:
        if name.startswith("__"):
            raise AttributeError(name)
        return UNKNOWN

    def __repr__(self) -> str:
        return f"<{self.kind} {self.id}>"


LIMIT_NAMES = """\
drop: {unit: '%', says: Share of the supply voltage that is lost on the way}
reach: {unit: mm, says: Length of conductor before its device}
bare_allowed: {type: yes/no, says: Whether a covering may be missing}
"""
INTL = """\
code: intl
title: International practice
says: What stands where no other code says anything
limits:
  drop: {value: 5 %, source: {title: A standard, clause: '1', edition: '2020', basis: memory}}
"""
EU = """\
code: eu
title: European practice
says: Rules of the European standards
limits:
  reach: {value: 300 mm, source: {title: Another standard, clause: '2', edition: '2021', basis: seen}}
"""

RULE = {
    "id": "device-protects-conductor",
    "title": "The device lets through more than the conductor can carry",
    "signal": "danger",
    "about": "conductor",
    "given": "conductor.is_live",
    "require": "some(device.rating <= conductor.capacity for device in conductor.protected_by)",
    "why": "The conductor becomes the fuse.",
    "mend": "Fit a device of at most {{ conductor.capacity }} in place of {{ device.rating }}.",
    "change": "[device.rating]",
    "covers": "[overload]",
    "sources": "[{title: A standard, clause: '433', edition: '2008', basis: memory}]",
    "examples": """
  met:
    - name: equal
      facts: {conductor.is_live: true, conductor.capacity: 30 A, conductor.protected_by: [{device.rating: 30 A}]}
  breach:
    - name: above
      facts: {conductor.is_live: true, conductor.capacity: 30 A, conductor.protected_by: [{device.rating: 40 A}]}
  unproven:
    - {name: no-capacity, facts: {conductor.is_live: true, conductor.protected_by: [{device.rating: 40 A}]}}
  not applicable:
    - {name: return-core, facts: {conductor.is_live: false}}""",
}


def rule_text(*, drop: Iterable[str] = (), order: Iterable[str] = (), **changes: str) -> str:
    """The text of a good rule file with some keys changed, dropped or put first in another order."""
    keys = {**RULE, **changes}
    names = [*order, *(name for name in keys if name not in set(order))]
    return "\n".join(f"{name}: {keys[name]}" for name in names if name not in set(drop)) + "\n"


def write_rules(root: Path, *texts: str, codes: bool = True) -> Path:
    """A folder of rules with the given files, each under its own id, and two codes."""
    if codes:
        (root / "codes").mkdir(parents=True)
        for name, text in (("limits", LIMIT_NAMES), ("intl", INTL), ("eu", EU)):
            (root / "codes" / f"{name}.yaml").write_text(text, "utf-8")
    topic = root / "overcurrent"
    topic.mkdir(parents=True, exist_ok=True)
    for text in texts:
        stem = text.split("\n", 1)[0].removeprefix("id: ")
        (topic / f"{stem}.yaml").write_text(text, "utf-8")
    return root
