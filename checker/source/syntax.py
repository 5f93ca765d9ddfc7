"""What a broken line of YAML most likely is, in words a fitter can use."""

from __future__ import annotations

import yaml

from checker.source.problems import Problems, shown
from checker.source.tree import Node, refuse_depth, refuse_question

_RESERVED = "@`%"


def note_syntax_error(
    error: yaml.YAMLError, lines: list[str], problems: Problems, opened: Node | None, deepest: int
) -> None:
    """Turn the parser's error into a problem at the place that needs mending.

    `opened` is the bracket or indent that was open last.
    """
    if not isinstance(error, yaml.MarkedYAMLError):
        problems.add(Node(1, 1), f"this is not YAML: {shown(str(error))}", "save the file as UTF-8 text")
        return
    mark = error.problem_mark or error.context_mark
    line, column = (mark.line + 1, mark.column + 1) if mark is not None else (1, 1)
    line, column = _inside(line, column, lines)
    here = lines[line - 1][column - 1 : column] if line <= len(lines) else ""
    problem, context = error.problem or "", error.context or ""
    if here == "?":
        refuse_question(problems, line, column)
    elif _tab_in_indent(lines[line - 1], column):
        tab = lines[line - 1].index("\t") + 1
        problems.add(Node(line, tab), "a tab stands in the indent", "indent with blanks")
    elif "flow level" in context:
        refuse_depth(problems, line, column, deepest)
    elif "escape" in problem:
        problems.add(
            Node(line, column), "a backslash in double quotes starts an escape", "use single quotes, or no backslash"
        )
    elif "quoted scalar" in context:
        problems.add(_context(error, line, column), "this quote is never closed", "close it, or drop the opening quote")
    elif "flow" in context and _at_end(mark, lines):
        opened = opened or _context(error, line, column)
        problems.add(opened, f"the bracket {shown(_char(lines, opened))} is never closed", "close it")
    elif "flow" in context:
        opened = opened or _context(error, line, column)
        problems.add(
            Node(line, column),
            f"a comma or the closing bracket is missing (opened at {opened.line}:{opened.column})",
            "put a comma between two entries and close the bracket; a value with `: ` inside needs quotes",
        )
    elif "mapping values are not allowed" in problem:
        problems.add(
            Node(line, column), "a second `: ` stands in one line", "indent the line under its key, or quote the text"
        )
    elif here and here in _RESERVED:
        problems.add(Node(line, column), f"a value cannot start with {shown(here)}", "put the text in quotes")
    elif "block scalar" in context:
        problems.add(
            _context(error, line, column), "`>` or `|` starts a block of text", "write `at least 300 A`, or use quotes"
        )
    elif "document" in problem or "directive" in context:
        problems.add(Node(line, column), "a second document or a directive stands here", "one file holds one design")
    elif "block" in context or "simple key" in context:
        problems.add(
            Node(line, column),
            "this line does not fit the lines above",
            "indent it as its neighbours, as `key: value`, with all of a text in quotes or none",
        )
    else:
        problems.add(Node(line, column), f"this is not YAML: {problem or context}", "write `key: value`")


def _inside(line: int, column: int, lines: list[str]) -> tuple[int, int]:
    """A place in the file: the end of the last line where the parser points behind it."""
    if line > len(lines):
        return len(lines), len(lines[-1]) + 1
    return line, min(column, len(lines[line - 1]) + 1)


def _at_end(mark: yaml.error.Mark | None, lines: list[str]) -> bool:
    """Whether nothing but blank lines follows the mark."""
    if mark is None or mark.line >= len(lines):
        return True
    rest = [lines[mark.line][mark.column :], *lines[mark.line + 1 :]]
    return not any(line.strip() for line in rest)


def _tab_in_indent(line: str, column: int) -> bool:
    indent = line[: len(line) - len(line.lstrip())]
    return "\t" in indent and column <= len(indent) + 1


def _context(error: yaml.MarkedYAMLError, line: int, column: int) -> Node:
    mark = error.context_mark
    return Node(line, column) if mark is None else Node(mark.line + 1, mark.column + 1)


def _char(lines: list[str], at: Node) -> str:
    return lines[at.line - 1][at.column - 1 : at.column] if at.line <= len(lines) else ""
