"""What the commands that predict and compare share: the facts of a design, its modes, the names that can be read."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from checker.commands.refusal import Refused, nearest

if TYPE_CHECKING:
    from checker.design.model import Design
    from checker.facts.subject import Facts


def solved_facts(design: Design) -> Facts:
    """The facts of a design with the whole catalogue loaded."""
    import checker.facts  # fills the catalogue
    from checker.facts.subject import Facts

    assert checker.facts is not None
    return Facts(design)


def known_modes(design: Design, file: str, wanted: Sequence[str]) -> list[str]:
    """The modes asked for, or all.

    Raises
    ------
    Refused: the design has no mode of that name.
    """
    for name in wanted:
        if name not in design.modes:
            hint = nearest(name, design.modes) or f"; there are {', '.join(design.modes)}"
            raise Refused(f"--mode: {file} has no mode {name!r}{hint}")
    return list(dict.fromkeys(wanted)) or list(design.modes)


def known_places(facts: Facts, modes: Sequence[str], file: str, wanted: Sequence[str]) -> list[str]:
    """The names asked for.

    Raises
    ------
    Refused: one of them cannot be read on the direct-current side in any of the modes.
    """
    from checker.facts.instruments import names_on, spots_at
    from checker.facts.operating_point import operating_point

    subjects = [subject for mode in modes if (subject := facts.subject("mode", mode)) is not None]
    points = [operating_point(subject, subject.item) for subject in subjects]
    for name in wanted:
        if not any(spots_at(point, name) for point in points):
            known = list(dict.fromkeys(one for point in points for one in names_on(point)))
            hint = nearest(name, known) or "; name equipment, a side such as converter.low, or a circuit"
            raise Refused(f"--at: {name!r} is not on the direct-current side of {file}{hint}")
    return list(dict.fromkeys(wanted))
