"""Boards of mains and of the battery side in one place: does each have a box of its own?"""

from __future__ import annotations

from itertools import product

from checker.facts.catalogue import fact
from checker.facts.space import is_kind
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, either, equal, every, negate

ROOMS = ("living space", "wet room", "bed", "seat", "outside", "under body", "engine space", "exit")
"""Kinds of place in which two boards are no one panel."""


def _boards(s: Subject, system: str) -> list[tuple[Subject, Truth]]:
    """The boards that stand in the place and are, or may be, of a system, each with whether it surely is both."""
    found: list[tuple[Subject, Truth]] = []
    for body in s.facts.subjects("equipment"):
        if body.item.kind != "board":
            continue
        here = both(equal(s.read(body.item, "place"), s.id), equal(body.system, system))
        if here is not False:
            found.append((body, here))
    return found


@fact("place", "holds_both_boards", type="yes/no",
      says="A small place, such as a cupboard or a panel, holds a board of mains and one of the battery side.",
      method="boards that stand in it, by what they carry; rooms left out")  # fmt: skip
def holds_both_boards(s: Subject) -> Truth:
    sides = [_boards(s, system) for system in ("ac", "dc")]
    pairs = [both(a, b) for (one, a), (other, b) in product(*sides) if one.id != other.id]
    held: Truth = False
    for pair in pairs:
        held = either(held, pair)
    return both(held, negate(is_kind(s, s.item, *ROOMS))) if pairs else False


@fact("place", "boards_parted", type="yes/no",
      says="Of each two boards of different voltage in it one has a box of its own around it.",
      method="enclosure of the boards; bare ones in a divided place are left to whoever looks")  # fmt: skip
def boards_parted(s: Subject) -> Truth:
    mains, battery = _boards(s, "ac"), _boards(s, "dc")
    return every([_parted(s, a, b) for (a, _), (b, _) in product(mains, battery) if a.id != b.id])


def _parted(s: Subject, a: Subject, b: Subject) -> Truth:
    answer: Truth = False
    for board in (a, b):
        box = s.read(board.item, "enclosure")
        answer = either(answer, box if isinstance(box, Unknown) else box is not None)
    if answer is False and s.item.has("dividers"):
        return Unknown(f"whether the dividers of {s.id} part {a.id} from {b.id} is not told")
    return answer
