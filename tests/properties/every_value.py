"""The properties tried on every value of the designs, one after the other; takes minutes, so it is run by hand.

`python -m tests.properties.every_value [unknown | forgotten | range] [part of a design's name ...]`
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Callable, Iterator

from checker.reading import ReadingErrors
from tests.properties.designs import design_with, everything, leaves_of, verdicts_of
from tests.properties.forgetting import contradictions
from tests.properties.test_ranges import overturned, quantities, widened
from tests.properties.test_unknown import names_equipment, newly_met
from tests.properties.verdicts import Leaf, Pair, verdicts

Failure = tuple[Pair, str]
Judge = Callable[[str, Leaf, dict[Pair, str], dict[Pair, str]], list[Failure]]


def say(line: str) -> None:
    """A line for whoever waits."""
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


def unknowns(name: str) -> Iterator[tuple[Leaf, str]]:
    """Each value that may be made unknown."""
    return ((leaf, "unknown") for leaf in leaves_of(name) if not names_equipment(leaf))


def entries(name: str) -> Iterator[tuple[Leaf, str]]:
    """Each value, the names of devices in a run among them."""
    return ((leaf, "unknown") for leaf in leaves_of(name))


def ranges(name: str) -> Iterator[tuple[Leaf, str]]:
    """Each quantity a tenth wider."""
    return ((leaf, widened(leaf, 0.1)[0]) for leaf in quantities(name))


def met_now(_name: str, _leaf: Leaf, before: dict[Pair, str], after: dict[Pair, str]) -> list[Failure]:
    """Met although it was not."""
    return [(pair, f"{before[pair]} became met") for pair in newly_met(before, after)]


def contradicted(_name: str, leaf: Leaf, before: dict[Pair, str], after: dict[Pair, str]) -> list[Failure]:
    """Passed, vanished or broken because less is known."""
    return [(pair, f"{was} became {now}") for pair, was, now in contradictions(leaf, before, after)]


def changed(_name: str, _leaf: Leaf, before: dict[Pair, str], after: dict[Pair, str]) -> list[Failure]:
    """Decided otherwise than it was."""
    return [(pair, f"{was} became {now}") for pair, was, now in overturned(before, after)]


PROPERTIES: dict[str, tuple[Callable[[str], Iterator[tuple[Leaf, str]]], Judge]] = {
    "unknown": (unknowns, met_now),
    "forgotten": (entries, contradicted),
    "range": (ranges, changed),
}


def tried(kind: str, name: str) -> Counter[str]:
    """Try one property on one design; each failure is printed, what was counted is given back."""
    changes, failures = PROPERTIES[kind]
    count: Counter[str] = Counter()
    for leaf, text in changes(name):
        try:
            design = design_with(name, [(leaf.path, text)])
        except ReadingErrors:
            count["may not be"] += 1
            continue
        count["tried"] += 1
        try:
            found = failures(name, leaf, verdicts_of(name), verdicts(design))
        except AssertionError as broken:
            count["broke"] += 1
            say(f"  {leaf.path}: {leaf.text} -> {text}: {str(broken).splitlines()[0]}")
            continue
        for pair, what in found:
            count["failed"] += 1
            say(f"  {leaf.path}: {leaf.text} -> {text}: {' '.join(pair)}: {what}")
    return count


def main(wanted: list[str]) -> int:
    """Status 1 when a property failed."""
    kinds = [kind for kind in PROPERTIES if kind in wanted] or list(PROPERTIES)
    parts = [word for word in wanted if word not in PROPERTIES]
    bad = 0
    for kind in kinds:
        for name in everything():
            if not parts or any(part in name for part in parts):
                say(f"{kind}, {name}")
                count = tried(kind, name)
                bad += count["failed"] + count["broke"]
                say(f"  {', '.join(f'{number} {what}' for what, number in count.items())}")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
