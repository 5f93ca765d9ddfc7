"""The properties tried on every value of the designs, one after the other; takes minutes, so it is run by hand.

`python -m tests.properties.every_value [unknown|forgotten|left-out|none|range|blocks|told] [part of a name]`
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Callable, Iterator
from typing import NamedTuple

from checker.reading import ReadingErrors
from checker.reading.edits import REMOVE
from tests.properties.blocks import blocks_of
from tests.properties.designs import design_with, everything, leaves_of, verdicts_of
from tests.properties.forgetting import contradictions
from tests.properties.telling import excused, other_answers, stood_in
from tests.properties.test_ranges import overturned, quantities, widened
from tests.properties.test_unknown import names_equipment, newly_met
from tests.properties.verdicts import Leaf, Pair, verdicts


class Change(NamedTuple):
    """What is written otherwise, and how that is told."""

    says: str
    edits: tuple[tuple[str, str], ...]


Failure = tuple[Pair, str]
Judge = Callable[[Change, dict[Pair, str], dict[Pair, str]], list[Failure]]


KINDS = ("unknown", "forgotten", "left-out", "none", "range", "blocks", "told")


def say(line: str) -> None:
    """A line for whoever waits."""
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


def unknowns(name: str) -> Iterator[Change]:
    """Each value that may be made unknown."""
    return (
        Change(f"{leaf.path}: {leaf.text}", ((leaf.path, "unknown"),))
        for leaf in leaves_of(name)
        if not names_equipment(leaf)
    )


def entries(name: str) -> Iterator[Change]:
    """Each value, the names of devices in a run among them."""
    return (Change(f"{leaf.path}: {leaf.text}", ((leaf.path, "unknown"),)) for leaf in leaves_of(name))


def removed(name: str) -> Iterator[Change]:
    """Each entry of a mapping taken away; an item of a list that goes says that it is not there."""
    return (
        Change(f"{leaf.path}: {leaf.text}", ((leaf.path, REMOVE),))
        for leaf in leaves_of(name)
        if not leaf.path.rpartition(".")[2].isdigit()
    )


def nones(name: str) -> Iterator[Change]:
    """Each value said not to be there."""
    return (Change(f"{leaf.path}: {leaf.text} -> none", ((leaf.path, "none"),)) for leaf in leaves_of(name))


def ranges(name: str) -> Iterator[Change]:
    """Each quantity a tenth wider."""
    for leaf in quantities(name):
        text = widened(leaf, 0.1)[0]
        yield Change(f"{leaf.path}: {leaf.text} -> {text}", ((leaf.path, text),))


def blocks(name: str) -> Iterator[Change]:
    """All that is said of one thing, or in one section."""
    return (Change(f"all of {block}", edits) for block, edits in blocks_of(name))


def met_now(_change: Change, before: dict[Pair, str], after: dict[Pair, str]) -> list[Failure]:
    """Met although it was not."""
    return [(pair, f"{before[pair]} became met") for pair in newly_met(before, after)]


def nothing(_change: Change, _before: dict[Pair, str], _after: dict[Pair, str]) -> list[Failure]:
    """Nothing is asked of the verdicts but that no computation breaks."""
    return []


def contradicted(change: Change, before: dict[Pair, str], after: dict[Pair, str]) -> list[Failure]:
    """Passed, vanished or broken because less is known."""
    paths = [path for path, _ in change.edits]
    return [(pair, f"{was} became {now}") for pair, was, now in contradictions(paths, before, after)]


def changed(_change: Change, before: dict[Pair, str], after: dict[Pair, str]) -> list[Failure]:
    """Decided otherwise than it was."""
    return [(pair, f"{was} became {now}") for pair, was, now in overturned(before, after)]


PROPERTIES: dict[str, tuple[Callable[[str], Iterator[Change]], Judge]] = {
    "unknown": (unknowns, met_now),
    "forgotten": (entries, contradicted),
    "left-out": (removed, contradicted),
    "none": (nones, nothing),
    "range": (ranges, changed),
    "blocks": (blocks, contradicted),
}


def tried(kind: str, name: str) -> Counter[str]:
    """Try one property on one design; each failure is printed, what was counted is given back."""
    changes, failures = PROPERTIES[kind]
    count: Counter[str] = Counter()
    for change in changes(name):
        try:
            design = design_with(name, change.edits)
        except ReadingErrors:
            count["may not be"] += 1
            continue
        count["tried"] += 1
        try:
            found = failures(change, verdicts_of(name), verdicts(design))
        except AssertionError as broken:
            count["broke"] += 1
            say(f"  {change.says}: {str(broken).splitlines()[0]}")
            continue
        for pair, what in found:
            count["failed"] += 1
            say(f"  {change.says}: {' '.join(pair)}: {what}")
    return count


def told(name: str) -> Counter[str]:
    """Each value unknown, and then told otherwise; what only the unknown let pass is printed."""
    count: Counter[str] = Counter()
    for leaf in leaves_of(name):
        if excused(leaf):
            continue
        found = {text: verdicts_with(name, leaf, text) for text in other_answers(leaf)}
        answers = {text: after for text, after in found.items() if after is not None}
        before = verdicts_with(name, leaf, "unknown") if answers else None
        if before is None:
            continue
        count["tried"] += len(answers)
        broken: dict[tuple[str, str], list[str]] = {}
        for text, after in answers.items():
            for rule, was in dict.fromkeys((one.pair[0], one.was) for one in stood_in(before, after)):
                broken.setdefault((rule, was), []).append(text)
        count["failed"] += len(broken)
        for (rule, was), texts in broken.items():
            say(f"  {leaf.path}: unknown, then {' or '.join(texts)}: {rule}: {was} became breach")
    return count


def verdicts_with(name: str, leaf: Leaf, text: str) -> dict[Pair, str] | None:
    """The verdicts with another text in the place of a value; None where the file may not say that."""
    try:
        return verdicts(design_with(name, [(leaf.path, text)]))
    except (ReadingErrors, ValueError, AssertionError):
        return None


def main(wanted: list[str]) -> int:
    """Status 1 when a property failed."""
    kinds = [kind for kind in KINDS if kind in wanted] or list(KINDS)
    parts = [word for word in wanted if word not in KINDS]
    bad = 0
    for kind in kinds:
        for name in everything():
            if not parts or name in parts or any(part in name for part in parts if part not in everything()):
                say(f"{kind}, {name}")
                count = told(name) if kind == "told" else tried(kind, name)
                bad += count["failed"] + count["broke"]
                say(f"  {', '.join(f'{number} {what}' for what, number in count.items())}")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
