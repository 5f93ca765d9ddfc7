"""The closed table of what a design file may say: kinds, their keys and ports, and the sections they stand in.

Reading, the JSON schema and the pages on the file format are all made from it. The tables load when first asked for:
`kind(name, section)`, `KINDS` (section and name to kind) and `SECTIONS`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from checker.design.vocabulary.key import Kind, Section

    KINDS: dict[tuple[str, str], Kind]
    SECTIONS: tuple[Section, ...]

__all__ = ["KINDS", "SECTIONS", "kind"]


def kind(name: str, section: str) -> Kind | None:
    """The kind called `name` that may stand in `section`, or None. In a section of one kind see `Section.kind`.

    Beside the sections of the file there are `terminals` and `ends` (below equipment and circuits), `` (the values at
    the top) and `built in` (the chassis).
    """
    from checker.design.vocabulary.table import KINDS as kinds

    return kinds.get((section, name))


def __getattr__(name: str) -> Any:
    if name == "KINDS":
        from checker.design.vocabulary.table import KINDS as found

        return found
    if name == "SECTIONS":
        from checker.design.vocabulary.sections import SECTIONS as sections

        return sections
    raise AttributeError(name)
