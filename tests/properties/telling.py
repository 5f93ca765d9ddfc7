"""What an entry that nobody knows may turn out to say: other amounts, the other answer, other words of its list.

A rule that is met, or does not apply, while an entry is not known must not break by what the entry turns out to say:
else something stood in for it. Where a pair of rule and subject is there only for some answers, nothing is compared.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache

from checker.design.vocabulary import KINDS
from tests.properties.forgetting import Contradiction
from tests.properties.verdicts import Leaf, Pair

TIMES = (0.4, 0.85, 1.15, 2.5)
VOLTAGES = (0.95, 1.05)  # a voltage of another system is another design
MOST_WORDS = 5
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
STANDS_IN = {
    r"code": "no fact of the vehicle but the measure it is held against",
    r"vehicle\.ambient\..*": "stated temperatures of places stand until the heat in them is known to make more",
    r"places\.[^.]+\.temperature": "where none is known, the one that the heat in it makes stands",
    r".*\.efficiency": "stated temperatures of places stand until the heat in them is known to make more",
    r".*\.cells": "a nominal voltage stands for some numbers of cells alone; others contradict it",
    r".*\.peak\.current": "a peak is never below what lasts",
    r".*\.(reset|trip free)": "the curve of an installation breaker says by its standard how it is reset",
    r"equipment\.[^.]+\.box\..*": "a body that is not wholly told is held against no other",
    r"circuits\.[^.]+\.run\.\d+": "an unknown piece of a run is another run",
}
"""Entries (patterns) in whose place something else stands knowingly, and why."""
OPPOSITE = {"true": "false", "false": "true", "yes": "no", "no": "yes"}


@cache
def words_by_key() -> dict[str, tuple[str, ...]]:
    """Last step of a key to all words that stand in its list, of whatever kind of thing."""
    found: dict[str, dict[str, None]] = {}
    for kind in KINDS.values():
        for key in kind.keys.values():
            if key.shape == "word":
                found.setdefault(key.name.rpartition(".")[2], {}).update(dict.fromkeys(key.words))
    return {name: tuple(words) for name, words in found.items()}


def excused(leaf: Leaf) -> bool:
    """Whether something knowingly stands in for an entry; a bonding conductor that is none is another design."""
    return leaf.text == "bonding" or any(re.fullmatch(pattern, leaf.path) for pattern in STANDS_IN)


def other_answers(leaf: Leaf) -> Iterator[str]:
    """Texts that may stand in the place of a value; some of them the file may refuse."""
    last = leaf.path.rpartition(".")[2]
    if leaf.text in OPPOSITE:
        yield OPPOSITE[leaf.text]
        return
    words = words_by_key().get(last, ())
    if leaf.text in words:
        if last != "kind":
            yield from [word for word in words if word not in (leaf.text, "bonding", "traction")][:MOST_WORDS]
        return
    if leaf.text[:1].isdigit() or leaf.text[:1] == "-":
        for times in VOLTAGES if leaf.text.endswith(" V") else TIMES:
            yield NUMBER.sub(lambda found, times=times: f"{float(found.group()) * times:.6g}", leaf.text, count=2)


def stood_in(before: Mapping[Pair, str], told: Mapping[Pair, str]) -> list[Contradiction]:
    """Pairs that passed while the entry was not known, and break by what it turns out to say."""
    return [
        Contradiction(pair, was, "breach")
        for pair, was in before.items()
        if was in ("met", "not applicable") and told.get(pair) == "breach"
    ]
