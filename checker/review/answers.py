"""Answers to a survey, written into the text of the design they were asked of.

An answers file has `answers` (entry of the design: value), `looks` (word: right or wrong) and `readings` (a list).
What is still `unknown` there changes nothing. A plain value is written with the basis that its question names.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from checker.facts.inspected import ASKED
from checker.reading import ReadingErrors, read_text
from checker.review.survey_entries import RUN, resolve
from checker.review.survey_ways import way_for
from checker.source.problems import Problems, listed, shown
from checker.source.rewrite import MORE, Put, rewrite
from checker.source.tree import Manner, Mapping, Node, Scalar, Sequence, parse_tree

if TYPE_CHECKING:
    from checker.design.model import Design

ANSWERS = Manner(
    starts="make one with `fitout survey FILE --format answers`",
    one_file="one file answers for one vehicle",
)
LISTS = {"right": "inspected", "wrong": "found wrong"}
YES = ("true", "{is: true, basis: read off}")
SECTIONS = ("answers", "looks", "readings")
_SAFE = re.compile(r"(?:-?\d|[^\s,\[\]{}#&*!|>'\"%@`:?-])(?:[^,\[\]{}#:\n]|:(?! )|(?<! )#)*")
_BASIS = re.compile(r", basis: ([a-z ]+)\}$")


class Answered(NamedTuple):
    """The text of the design with the answers in it, how many were written and how many are still unknown."""

    text: str
    written: int
    left: int


class _Answer(NamedTuple):
    at: Node
    puts: tuple[Put, ...]


def answered(text: str, design: Design, answers: str, file: str) -> Answered:
    """`text` is that of `design`, `answers` the text of the answers file and `file` its name, for problems.

    Raises `SourceErrors` with the line of each answer that cannot be written or that the design cannot be read with.
    """
    problems = Problems(file)
    tree = parse_tree(answers, problems, ANSWERS)
    asked = _Asked(design, parse_tree(text.removeprefix("\ufeff"), Problems(design.file)), problems)
    found = list(asked.all_of(tree)) if tree is not None else []
    problems.raise_any()
    made = _apart([one for one in found if one.puts], problems)
    try:
        new = rewrite(text, [put for one in made for put in one.puts])
        read_text(new, design.file)
    except (ReadingErrors, ValueError) as errors:
        _blame(text, design.file, made, problems)
        problems.add(Node(1, 1), f"these answers do not go together: {errors}", "take some of them out")
        problems.raise_any()
    return Answered(new, len(made), len(found) - len(made))


def _apart(made: list[_Answer], problems: Problems) -> list[_Answer]:
    """Answers that do not stand in each other's way: a plain yes is dropped where an entry below it says more.

    Raises `SourceErrors` for an entry that is answered as a whole and in its parts.
    """
    steps = {put.steps for one in made for put in one.puts}
    beneath = {each[:count] for each in steps for count in range(1, len(each))}
    for one in made:
        if any(put.steps in beneath and put.text not in YES for put in one.puts):
            problems.add(one.at, "an entry below this one is answered too", "keep the one or the other")
    problems.raise_any()
    return [one._replace(puts=tuple(put for put in one.puts if put.steps not in beneath)) for one in made]


def _blame(text: str, file: str, made: list[_Answer], problems: Problems) -> None:
    """Try the answers one by one, so that each that cannot be read is told at its own line. Raises `SourceErrors`."""
    for one in made:
        try:
            read_text(rewrite(text, one.puts), file)
        except ReadingErrors as errors:
            for each in errors.problems[:3]:
                problems.add(one.at, f"with this answer {each.what}", each.right)
        except ValueError as error:
            problems.add(one.at, str(error), "write this one into the design by hand")
    problems.raise_any()


class _Asked:
    """Turns the entries of an answers file into what is to be put where."""

    def __init__(self, design: Design, tree: Mapping | None, problems: Problems) -> None:
        self.design = design
        self.tree = tree
        self.problems = problems

    def all_of(self, tree: Mapping) -> Iterator[_Answer]:
        """Every answer, those without anything to put too."""
        for name, (key, node) in tree.entries.items():
            if name not in SECTIONS:
                right = self.problems.meant(name, SECTIONS, f"it holds {listed(SECTIONS)}")
                self.problems.add(key, f"an answers file has no {shown(name)}", right)
            elif name == "readings":
                yield from self._readings(node)
            elif isinstance(node, Mapping):
                make = self._answer if name == "answers" else self._look
                for entry, (at, value) in node.entries.items():
                    yield _Answer(at, () if _is_unknown(value) else tuple(make(entry, at, value)))
            elif not _is_empty(node):
                self.problems.add(node, f"{shown(name)} is no mapping", "write `entry: value`, one to a line")

    def _answer(self, entry: str, at: Node, value: Node) -> Iterator[Put]:
        name = resolve(self.design, entry).name
        if name.startswith(RUN):
            yield from self._stretch(entry, at, value)
            return
        steps = tuple(entry.split("."))
        if isinstance(value, Mapping) and "is" not in value.entries:
            yield from _each(steps, value)
        else:
            yield Put(steps, self._with_basis(entry, value))

    def _with_basis(self, entry: str, value: Node) -> str:
        text = flow(value)
        found = resolve(self.design, entry)
        basis = _BASIS.search(way_for(found, False).write) if found.key is not None else None
        if basis is None or not isinstance(value, Scalar) or value.text == "none":
            return text
        return f"{{is: {text}, basis: {basis[1]}}}"

    def _stretch(self, entry: str, at: Node, value: Node) -> Iterator[Put]:
        """A length within a run: the one stretch through that place."""
        owner, _, place = entry.rpartition(f".{RUN}")
        steps = (*owner.split("."), "run")
        run = _node_at(self.tree, steps)
        here = [
            number
            for number, step in enumerate(run.items if isinstance(run, Sequence) else ())
            if isinstance(step, Scalar) and step.text.endswith(f" via {place}")
        ]
        if len(here) != 1 or not isinstance(value, Scalar):
            what = f"the run of {shown(owner)} has {len(here)} stretches via {shown(place)}"
            self.problems.add(at, what, "write this length into the design by hand")
            return
        yield Put((*steps, str(here[0])), flow(Scalar(f"{value.text} via {place}", at.line, at.column)))

    def _look(self, word: str, at: Node, value: Node) -> Iterator[Put]:
        words = tuple(each for _, each, _ in ASKED)
        said = value.text if isinstance(value, Scalar) else ""
        if word not in words:
            right = self.problems.meant(word, words, f"the looks are {listed(words)}")
            self.problems.add(at, f"{shown(word)} is no look", right)
        elif said not in LISTS:
            self.problems.add(value, f"{shown(said)} is no answer to a look", "write right, wrong or unknown")
        elif word in self._listed(LISTS["wrong" if said == "right" else "right"]):
            other = LISTS["wrong" if said == "right" else "right"]
            self.problems.add(at, f"{shown(word)} stands in papers.{other} already", "take it off there first")
        elif word not in self._listed(LISTS[said]):
            yield Put(("papers", LISTS[said], MORE), flow(Scalar(word, at.line, at.column)))

    def _listed(self, name: str) -> tuple[str, ...]:
        node = _node_at(self.tree, ("papers", name))
        items = node.items if isinstance(node, Sequence) else [node]
        return tuple(item.text for item in items if isinstance(item, Scalar))

    def _readings(self, node: Node) -> Iterator[_Answer]:
        if not isinstance(node, Sequence):
            if not _is_empty(node):
                self.problems.add(node, "`readings` is no list", "write `- {test: …, at: …, result: right}`")
            return
        for item in node.items:
            yield _Answer(item, (Put(("readings", MORE), flow(item)),))


def _each(steps: tuple[str, ...], node: Mapping) -> Iterator[Put]:
    """Every entry of a mapping by itself, so that those which stand in the design beside it stay."""
    for name, (_, value) in node.entries.items():
        if isinstance(value, Mapping) and "is" not in value.entries:
            yield from _each((*steps, name), value)
        else:
            yield Put((*steps, name), flow(value))


def _node_at(tree: Node | None, steps: tuple[str, ...]) -> Node | None:
    for step in steps:
        tree = tree.get(step) if isinstance(tree, Mapping) else None
    return tree


def _is_unknown(node: Node) -> bool:
    return isinstance(node, Scalar) and node.text == "unknown"


def _is_empty(node: Node) -> bool:
    return (isinstance(node, Mapping) and not node.entries) or (isinstance(node, Sequence) and not node.items)


def flow(node: Node) -> str:
    """A value on one line, as it may stand between brackets."""
    if isinstance(node, Scalar):
        return node.text if node.plain and _SAFE.fullmatch(node.text) else json.dumps(node.text, ensure_ascii=False)
    if isinstance(node, Sequence):
        return f"[{', '.join(map(flow, node.items))}]"
    assert isinstance(node, Mapping)
    return f"{{{', '.join(f'{flow(key)}: {flow(value)}' for key, value in node.entries.values())}}}"
