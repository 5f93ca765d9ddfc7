"""A design of made-up facts, with where each was read, and rules about it: all that a review needs."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from types import SimpleNamespace
from typing import Any

from checker.design.given import Where
from checker.facts.subject import Input, Step
from checker.quantities import UNKNOWN
from checker.review import Finding, Review, review
from checker.rulebook import Rulebook, load_rulebook
from tests.rulebook.small import rule_text, small_catalogue, write_rules

CATALOGUE = small_catalogue()

CAPACITY = rule_text()
CURRENT = rule_text(
    id="current-within-capacity",
    title="More current than the conductor carries",
    signal="warning",
    given="conductor.is_live",
    require="conductor.current <= conductor.capacity",
    mend="Use a thicker conductor.",
    examples="{met: [{name: a, facts: {}}], breach: [{name: b, facts: {}}], unproven: [{name: c, facts: {}}]}",
)


def other(base: str, **changes: str) -> str:
    """A rule file with some lines changed; `after` is put behind the signal."""
    lines = []
    for line in base.splitlines():
        key = line.split(":")[0]
        lines.append(f"{key}: {changes[key]}" if key in changes else line)
        if key == "signal" and "after" in changes:
            lines.append(f"after: {changes['after']}")
    return "\n".join(lines) + "\n"


class Made:
    """A subject whose facts are given, each with the entries of the file it was read from.

    `read` maps a fact to paths; an entry is as doubtful as the fact itself unless said otherwise.
    """

    def __init__(self, kind: str, id: str, line: int = 1, read: Mapping[str, Any] | None = None, **values: Any) -> None:
        self.kind = kind
        self.id = id
        self.where = Where(line, 3)
        self.reads = dict(read or {})
        self.values = values
        self.facts: Any = None

    def __getattr__(self, name: str) -> Any:
        if name.startswith("__"):
            raise AttributeError(name)
        value = self.values.get(name, UNKNOWN)
        if isinstance(value, Exception):
            raise value
        return value


class _Memo(dict[Any, Any]):
    def __init__(self, facts: MadeFacts) -> None:
        super().__init__()
        self.facts = facts

    def __missing__(self, key: tuple[str, str, str]) -> Step:
        kind, id, name = key
        subject = self.facts.subject(kind, id)
        value = getattr(subject, name)
        inputs = []
        for entry in subject.reads.get(name, (f"{id}.{name}",)):
            path, basis = (entry, "stated") if isinstance(entry, str) else entry
            said = "" if basis in ("missing", "default") else "as written"
            given = value if isinstance(value, (str, bool)) or not isinstance(value, tuple) else None
            inputs.append(Input(path, given, "", basis, subject.where, said))
        return Step(CATALOGUE.find(kind, name), kind, id, value, (f"how {name} came",), tuple(inputs), ())  # type: ignore[arg-type]


class MadeFacts:
    """The facts of a made-up design."""

    def __init__(self, *made: Made) -> None:
        self.made: dict[str, list[Made]] = {"conductor": [], "device": [], "design": []}
        for one in (*made, Made("design", "design")):
            self.made[one.kind].append(one)
            one.facts = self
        self.recorder = SimpleNamespace(memo=_Memo(self))
        self.refuse = ""

    def subjects(self, kind: str) -> tuple[Made, ...]:
        if kind == self.refuse:
            raise RuntimeError("the graph broke")
        return tuple(self.made[kind])

    def subject(self, kind: str, id: str) -> Made:
        return next(one for one in self.made[kind] if one.id == id)

    def recording(self) -> MadeFacts:
        return self


class DepartureItem:
    """A recorded departure as it stands in a design."""

    def __init__(self, line: int = 90, **said: str) -> None:
        self.where = Where(line, 5)
        self.said = {"rule": "", "about": "", "reason": "", "by": "fitter", "reference": "", "date": "", **said}

    def value(self, key: str) -> str:
        return self.said[key]


def made_design(*departures: DepartureItem, code: Any = "intl") -> Any:
    """A design without anything but what a review prints of it."""
    return SimpleNamespace(
        file="van.fitout.yaml", sha256="d" * 64, departures=departures,
        title=SimpleNamespace(value="A van"), code=SimpleNamespace(value=code),
        under=lambda other: made_design(*departures, code=code if other is None else other),
    )  # fmt: skip


def book(root: Path, *texts: str) -> Rulebook:
    """A rulebook of the given files."""
    return load_rulebook(catalogue=CATALOGUE, base=write_rules(root, *texts))


def put(
    root: Path, texts: list[str], made: list[Made], *departures: DepartureItem, **options: Any
) -> tuple[Review, dict[str, Finding]]:
    """A review of the subjects, and its findings by key."""
    facts = options.pop("facts", None) or MadeFacts(*made)
    done = review(made_design(*departures), book(root, *texts), facts=facts, **options)
    return done, {finding.key: finding for finding in done.findings}


def device(id: str, rating: Any, line: int = 50, **values: Any) -> Made:
    """A device of that rating."""
    return Made("device", id, line, {"rating": (f"equipment.{id}.rating",)}, rating=rating, **values)


def conductor(id: str, line: int, *devices: Made, **values: Any) -> Made:
    """A live conductor with those devices."""
    reads = {"capacity": (f"cables.{id}.size",), "protected_by": (f"circuits.{id}.run",)}
    return Made("conductor", id, line, reads, is_live=True, protected_by=tuple(devices), **values)
