"""All rules against all subjects of one design."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from checker import __version__
from checker.facts.subject import Facts
from checker.quantities import Unknown
from checker.review.caution import CAUTION
from checker.review.departures import Departures
from checker.review.explain import Explanation, explain
from checker.review.fill import advise, fill, sentence
from checker.review.finding import VERDICTS, About, Finding, Place, reading_order
from checker.review.fold import Told, fold
from checker.rulebook import Broken, Limits, Rule, Rulebook, judge
from checker.rulebook.judge import cause_of
from checker.rulebook.keys import FALLBACK
from checker.rulebook.walk import Scene

EVERYTHING = "(all)"
"""The id of a finding about subjects that could not even be listed."""
MOST_REASONS = 3
OVERLAP = "the numbers overlap; narrower values behind them, or a measurement, would part them"


class Review(NamedTuple):
    """What a rulebook says of a design. `counts` covers every pair of rule and subject; `broken` what crashed."""

    findings: tuple[Finding, ...]
    counts: Mapping[str, int]
    design: Mapping[str, str]
    rulebook: Mapping[str, Any]
    version: str
    caution: str
    broken: tuple[Broken, ...]


def review(
    design: Any, rulebook: Rulebook, code: str | None = None, keep_all: bool = False, facts: Facts | None = None
) -> Review:
    """Put every rule to every subject it is about.

    `code` is the code of practice whose limits apply, else that of the design, else the international one. With
    `keep_all` findings are kept and explained that are met, and listed where a rule does not apply. `facts` are those
    of the design under that code where they exist already. Raises ValueError for a code the rulebook does not have.
    """
    design = design.under(code)
    limits = rulebook.limits_for(code_of(design))
    work = _Work(design, facts or Facts(design), limits, keep_all)
    for rule in rulebook.rules:
        work.put(rule)
    return work.result(rulebook)


def code_of(design: Any) -> str:
    """The code the design names, else the international one."""
    value = design.code.value
    return value if isinstance(value, str) else FALLBACK


class _Work:
    """One review while it is going on."""

    def __init__(self, design: Any, facts: Facts, limits: Limits, keep_all: bool) -> None:
        self.design = design
        self.facts = facts
        self.limits = limits
        self.values = dict(limits)
        self.shown = set(VERDICTS) if keep_all else {"breach", "unproven"}
        self.departures = Departures(design.departures, design.file)
        self.counts = dict.fromkeys(VERDICTS, 0)
        self.broken: list[Broken] = []
        self.told: list[Told] = []
        self.lists: dict[str, tuple[Any, ...]] = {}
        self.whole = self.subjects("design", "the design")

    def subjects(self, kind: str, rule: str) -> tuple[Any, ...] | None:
        """The subjects of a kind; None when listing them broke, which is told once for each rule."""
        if kind not in self.lists:
            try:
                self.lists[kind] = self.facts.subjects(kind)
            except Exception as error:  # noqa: BLE001 - what cannot be listed cannot be judged, and the review says so
                self.broken.append(Broken(rule, kind, EVERYTHING, cause_of(error)))
                return None
        return self.lists[kind]

    def put(self, rule: Rule) -> None:
        """Put one rule to its subjects."""
        subjects = self.subjects(rule.about, rule.id)
        if subjects is None:
            self.counts["unproven"] += 1
            self.told.append((self.crashed(rule, About(rule.about, EVERYTHING), (1, 1), self.broken[-1].cause), None))
            return
        if not subjects:
            return
        design = self.whole[0] if self.whole else Unknown("the design could not be listed")
        before = len(self.broken)
        verdicts = judge(rule, subjects, design, self.values, self.broken)
        causes = {one.id: one.cause for one in self.broken[before:]}
        for subject, verdict in zip(subjects, verdicts, strict=True):
            if verdict not in self.shown:
                self.counts[verdict] += 1
            else:
                told = self.tell(rule, subject, design, verdict, causes.get(subject.id))
                self.counts[told[0].verdict] += 1
                self.told.append(told)

    def tell(self, rule: Rule, subject: Any, design: Any, verdict: str, cause: str | None) -> Told:
        """The finding for one pair."""
        about = About(subject.kind, subject.id)
        if cause is not None:
            return self.departures.of(self.crashed(rule, about, subject.where, cause)), None
        try:
            finding, why = self.explained(rule, subject, design, verdict, about)
        except Exception as error:  # noqa: BLE001 - what cannot be explained still stands, and the review says so
            self.broken.append(Broken(rule.id, about.kind, about.id, cause_of(error)))
            crashed = self.crashed(rule, about, subject.where, cause_of(error))
            says = f"{rule.title}. The working could not be made: {cause_of(error)}"
            return self.departures.of(crashed._replace(verdict=verdict, says=says, mend=rule.mend)), None
        return (self.departures.of(finding) if verdict in ("breach", "unproven") else finding), why

    def explained(
        self, rule: Rule, subject: Any, design: Any, verdict: str, about: About
    ) -> tuple[Finding, Explanation]:
        """The finding with its working."""
        scene = Scene((subject, design), self.values)
        why = explain(rule, scene, self.limits)
        finding = Finding(
            rule.id, verdict, rule.signal, about,
            Place(self.design.file, subject.where[0], subject.where[1]), rule.title,
            self.says(rule, scene, verdict, why), why.working, rule.why, self.mend(rule, scene, verdict, why),
            self.sources(rule, why), rule.covers, why.needs if verdict == "unproven" else (), why.assumes,
        )  # fmt: skip
        return finding, why

    def says(self, rule: Rule, scene: Scene, verdict: str, why: Explanation) -> str:
        """The sentence of the finding."""
        if verdict == "breach" and rule.says:
            return fill(rule.says_parts, scene)
        made = sentence(why.found) or rule.title
        if verdict == "unproven":
            reasons = why.reasons or (() if why.needs else (OVERLAP,))
            because = f" Not known because: {'; '.join(reasons[:MOST_REASONS])}." if reasons else ""
            return f"Cannot be decided: {made}.{because}"
        return made[:1].upper() + made[1:] + "."

    def mend(self, rule: Rule, scene: Scene, verdict: str, why: Explanation) -> str:
        """What would put it right; of something undecided, what to find out."""
        if verdict != "unproven":
            return advise(rule.mend_parts, scene) if verdict == "breach" else ""
        if not why.needs:
            return "The file cannot say more; have it judged by somebody who can look and measure."
        names = [need.path for need in why.needs]
        more = f" and {len(names) - 6} more" if len(names) > 6 else ""
        return f"Find out and write down: {', '.join(names[:6])}{more}."

    def sources(self, rule: Rule, why: Explanation) -> tuple[str, ...]:
        """Those of the rule, then those of the limits it used."""
        used = [self.limits.taken[name][1].source for name in why.limits if name in self.limits.taken]
        return tuple(dict.fromkeys(str(source) for source in (*rule.sources, *used)))

    def crashed(self, rule: Rule, about: About, where: tuple[int, int], cause: str) -> Finding:
        """The finding for a pair that could not be judged because something broke."""
        return Finding(
            rule.id, "unproven", rule.signal, about, Place(self.design.file, where[0], where[1]), rule.title,
            f"Could not be judged, because a computation broke: {cause}", (f"broke: {cause}",), rule.why,
            "Report this with the design file; until then have it judged by somebody who can look and measure.",
            tuple(str(source) for source in rule.sources), rule.covers,
        )  # fmt: skip

    def result(self, rulebook: Rulebook) -> Review:
        """The review, findings folded and in order."""
        unused = self.departures.unused(rule.id for rule in rulebook.rules)
        self.counts["breach"] += len(unused)
        told = sorted((*self.told, *((finding, None) for finding in unused)), key=lambda one: reading_order(one[0]))
        title = self.design.title.value
        return Review(
            tuple(fold(told, {rule.id: rule.after for rule in rulebook.rules if rule.after})),
            self.counts,
            {"file": self.design.file, "title": title if isinstance(title, str) else "", "sha256": self.design.sha256},
            {"rules": len(rulebook.rules), "code": self.limits.code, "sha256": rulebook.sha256},
            __version__,
            CAUTION,
            tuple(self.broken),
        )
