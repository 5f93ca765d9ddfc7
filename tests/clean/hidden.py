"""The clean designs with values hidden, clean and with each fault put in; takes minutes, so it is run by hand.

`python -m tests.clean.hidden [first seed..last seed] [part of a design's name ...]`
"""

from __future__ import annotations

import random
import sys
from functools import cache

from checker.reading import ReadingErrors, read_text
from tests.clean.designs import NAMES, Edits, faults, text_of
from tests.properties.forgetting import contradictions
from tests.properties.verdicts import Leaf, Pair, leaves, verdicts

SEEDS = range(3)
HIDDEN = 24
"""Values tried to be hidden at once; a few may not be unknown."""


@cache
def values(name: str) -> list[Leaf]:
    return leaves(text_of(name))


@cache
def found(name: str, edits: Edits = ()) -> dict[Pair, str]:
    return verdicts(read_text(text_of(name), edits=edits))


def hidden(name: str, seed: int, made: Edits = ()) -> Edits:
    """Edits that make random values unknown, wherever the file may say that; `made` were made before."""
    chance = random.Random(f"{name} {seed} {made}")
    chosen: list[tuple[str, str]] = []
    for leaf in chance.sample(values(name), HIDDEN):
        edit = (leaf.path, "unknown")
        if not any(f"{leaf.path}.".startswith(f"{path}.") for path, _ in made) and may_be(name, (*made, edit)):
            chosen.append(edit)
    while not may_be(name, (*made, *chosen)):
        chosen.pop()
    return tuple(chosen)


def may_be(name: str, edits: Edits) -> bool:
    try:
        read_text(text_of(name), edits=edits)
    except ReadingErrors:
        return False
    return True


def main(wanted: list[str]) -> int:
    """Status 1 when something became met, vanished or broke because less is known."""
    bad = 0
    seeds = [range(int(low), int(high) + 1) for word in wanted for low, dots, high in [word.partition("..")] if dots]
    wanted = [word for word in wanted if ".." not in word]
    if astray := [word for word in wanted if not any(word in name for name in NAMES)]:
        sys.stdout.write(f"no clean design is called {', '.join(astray)}; seeds are written 51..56\n")
        return 2
    for name in NAMES:
        if wanted and not any(part in name for part in wanted):
            continue
        for made in ((), *(fault.edits for fault in faults() if fault.design == name)):
            for seed in seeds[0] if seeds else SEEDS:
                edits = hidden(name, seed, made)
                try:
                    after = found(name, (*made, *edits))
                    wrong = [str(one) for one in contradictions([path for path, _ in edits], found(name, made), after)]
                except AssertionError as broken:
                    wrong = [str(broken).splitlines()[0]]
                bad += len(wrong)
                for line in wrong:
                    sys.stdout.write(f"{name}, {made}, {[path for path, _ in edits]}: {line}\n")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
