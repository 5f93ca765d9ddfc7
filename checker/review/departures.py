"""Recorded departures: which breach each sets aside, and which set aside nothing."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from checker.review.finding import About, Departure, Finding, Place

RULE = "departure-sets-aside-a-breach"
"""The id under which a departure that sets aside nothing is reported; it is no rule of a file."""

_NAMED = ("licence reference", "reason", "date")


class Departures:
    """The departures of a design, looked up by rule and subject."""

    def __init__(self, items: Iterable[Any], file: str) -> None:
        self.file = file
        self.items = list(items)
        self.used: set[int] = set()

    def of(self, finding: Finding) -> Finding:
        """The finding with its departure: a breach is set aside, a DANGER only with licence reference, reason, date."""
        for at, item in enumerate(self.items):
            if _text(item, "rule") != finding.rule or _text(item, "about") != finding.about.id:
                continue
            self.used.add(at)
            said = Departure(*(_text(item, key) for key in ("reason", "by", "reference", "date")))
            missing = missing_for(said, finding.signal)
            if finding.verdict != "breach":
                note = "a departure is recorded; it can set aside a breach, and this is undecided"
                return finding._replace(working=(*finding.working, note), departure=said)
            if missing:
                note = f"a departure is recorded, but without the {' and the '.join(missing)} it sets nothing aside"
                return finding._replace(working=(*finding.working, note), departure=said)
            return finding._replace(verdict="set aside", departure=said)
        return finding

    def unused(self, rules: Iterable[str]) -> list[Finding]:
        """A NOTICE for each departure that met no breach."""
        known = set(rules)
        found: list[Finding] = []
        for at, item in enumerate(self.items):
            if at in self.used:
                continue
            rule, about = _text(item, "rule"), _text(item, "about")
            if rule not in known:
                says = f"no rule is called {rule or 'so'}"
            else:
                says = f"the rule {rule} finds no breach on {about or 'such a subject'}"
            found.append(
                Finding(
                    RULE, "breach", "notice", About("departure", f"{rule} on {about}"),
                    Place(self.file, item.where.line, item.where.column),
                    "A recorded departure sets nothing aside",
                    f"Departure from {rule} for {about}: {says}.",
                    why="A departure that fits nothing is misspelt, or a leftover that would hide the next breach.",
                    mend="Correct the rule or the subject it names, or take it out of the file.",
                )
            )  # fmt: skip
        return found


def missing_for(said: Departure, signal: str) -> list[str]:
    """What a departure lacks to set aside a breach of that signal."""
    if signal != "danger":
        return [] if said.reason else ["reason"]
    return [name for name, text in zip(_NAMED, (said.reference, said.reason, said.date), strict=True) if not text]


def _text(item: Any, key: str) -> str:
    """What the departure says under a key; nothing for unknown, none and blank."""
    value = item.value(key)
    text = value.strip() if isinstance(value, str) else ""
    return "" if text.lower() in ("none", "unknown", "?", "-") else text
