"""Findings that another explains are folded under it; they stay in the list, with the key of the other."""

from __future__ import annotations

from collections.abc import Mapping

from checker.review.explain import Explanation
from checker.review.finding import SIGNALS, Finding

Told = tuple[Finding, Explanation | None]


def fold(told: list[Told], after: Mapping[str, tuple[str, ...]]) -> list[Finding]:
    """The findings in the order given, `under` filled in. `after` maps a rule to those whose breach explains it.

    Under the first: unproven findings that need exactly the same entries; breaches of one rule that rest on the same
    entries. Under the breach of a rule named in `after`: a breach or unproven finding on the same subject, or where
    the working of one speaks of the subject of the other. Nothing is folded under something less severe.
    """
    under: dict[str, str] = {}
    by_key = {finding.key: finding for finding, _ in told}
    _after(told, after, under, by_key)
    _groups(told, under)
    return [finding._replace(under=_top(finding.key, under)) for finding, _ in told]


def _top(key: str, under: Mapping[str, str]) -> str | None:
    """The finding at the head of the fold; None when it stands for itself."""
    top = under.get(key)
    while top is not None and top in under:
        top = under[top]
    return top


def _after(
    told: list[Told], after: Mapping[str, tuple[str, ...]], under: dict[str, str], by_key: Mapping[str, Finding]
) -> None:
    breaches: dict[str, list[Told]] = {}
    for finding, why in told:
        if finding.verdict == "breach":
            breaches.setdefault(finding.rule, []).append((finding, why))
    for finding, why in told:
        if finding.verdict not in ("breach", "unproven"):
            continue
        spoken = {finding.about, *(why.subjects if why is not None else ())}
        for rule in after.get(finding.rule, ()):
            head = next((one for one, its in breaches.get(rule, ()) if _same(finding, spoken, one, its)), None)
            if head is not None and _may(finding, by_key[_top(head.key, under) or head.key]):
                under[finding.key] = head.key
                break


def _same(finding: Finding, spoken: set[tuple[str, str]], head: Finding, why: Explanation | None) -> bool:
    if tuple(head.about) in spoken or (why is not None and tuple(finding.about) in why.subjects):
        return True
    # An approach is named after its conductor: `alarm-feed from house-bank`.
    return head.about.kind == "approach" and head.about.id.startswith(f"{finding.about.id} from ")


def _groups(told: list[Told], under: dict[str, str]) -> None:
    first: dict[object, Finding] = {}
    for finding, why in told:
        group: object = None
        if finding.verdict == "unproven" and finding.needs:
            group = ("needs", frozenset(need.path for need in finding.needs))
        elif finding.verdict == "breach" and why is not None and why.inputs:
            group = (finding.rule, finding.about.kind, why.inputs)
        if group is None:
            continue
        head = first.setdefault(group, finding)
        if head is not finding and finding.key not in under and _may(finding, head):
            under[finding.key] = head.key


def _may(finding: Finding, head: Finding) -> bool:
    """Whether one may hide behind the other."""
    return head.key != finding.key and SIGNALS.index(head.signal) <= SIGNALS.index(finding.signal)
