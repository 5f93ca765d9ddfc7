"""The examples of a rule: facts made up for it, or a small design, and the verdict that must come out."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from checker.quantities import UNKNOWN, Unknown
from checker.rulebook.keys import CODES, NAME, SHOWN_BY_EXAMPLES
from checker.rulebook.problems import Problems, fact_meant, listed, meant
from checker.rulebook.source import Items, Map, Node, Text, load_tree
from checker.rulebook.types import LIST, SUBJECT, type_of
from checker.rulebook.values import read_value

if TYPE_CHECKING:
    from checker.rulebook.rule import Rule

_FACT_KEYS = ("name", "facts", "code")
_DESIGN_KEYS = ("name", "design", "with", "about", "code")
DEEPEST = 4
"""Subjects in lists in subjects: so deep may the facts of an example go."""


class Stub:
    """A subject of an example: the facts that were given; every other is unknown."""

    def __init__(self, kind: str, id: str, values: dict[str, Any]) -> None:
        self.kind = kind
        self.id = id
        self.__dict__.update(values)

    def __getattr__(self, name: str) -> Unknown:
        if name.startswith("__"):
            raise AttributeError(name)
        return UNKNOWN

    def __repr__(self) -> str:
        return f"<example {self.kind} {self.id}>"


class Example:
    """One example and the verdict it shows; `code` is empty where it names none.

    With facts: `subject`, `design_subject` and `limits` hold them. With a design: `design` names the base file,
    `edits` are the changes to it (dotted path, YAML text) and `about` is the id of the subject it is about.
    """

    __slots__ = (
        "about", "code", "design", "design_subject", "edits", "file", "limits", "line", "name", "subject", "verdict",
    )  # fmt: skip

    def __init__(self, verdict: str, name: str, code: str, file: str, line: int) -> None:
        self.verdict = verdict
        self.name = name
        self.code = code
        self.file = file
        self.line = line
        self.design = ""
        self.edits: tuple[tuple[str, str], ...] = ()
        self.about = ""
        self.subject: Stub | None = None
        self.design_subject: Stub | None = None
        self.limits: dict[str, Any] = {}

    def __repr__(self) -> str:
        return f"<example {self.verdict}: {self.name}>"


def read_examples_of(rule: Rule) -> tuple[Example, ...]:
    """The examples of a rule, read from its file. Raises RuleErrors."""
    problems = Problems(rule.text.file)
    tree = load_tree(rule.data(), problems)
    found = read_examples(tree.get("examples") if tree is not None else None, rule, problems)
    problems.raise_any()
    return found


def read_examples(node: Node | None, rule: Rule, problems: Problems) -> tuple[Example, ...]:
    """The examples that stand at `node`; what is wrong with them goes to `problems`."""
    if not isinstance(node, Map):
        if node is not None:
            problems.add(node, "these are no examples", "write `met:`, `breach:` and `unproven:`, a list under each")
        return ()
    found: list[Example] = []
    names: dict[str, int] = {}
    for verdict, (key, entries) in node.entries.items():
        if verdict not in SHOWN_BY_EXAMPLES:
            problems.add(key, f"`{verdict}` is no verdict to be shown", f"there are {listed(SHOWN_BY_EXAMPLES)}")
        elif not isinstance(entries, Items) or not entries.items:
            problems.add(entries, f"there is no example of `{verdict}`", "write a list of examples")
        else:
            for entry in entries.items:
                example = _Reader(rule, problems).read(entry, verdict)
                if example is not None:
                    _once(example, names, entry, problems)
                    found.append(example)
    for verdict in SHOWN_BY_EXAMPLES[:3]:
        if verdict not in node.entries:
            problems.add(node, f"no example shows `{verdict}`", f"add one under `{verdict}:`")
    return tuple(found)


def _once(example: Example, names: dict[str, int], entry: Node, problems: Problems) -> None:
    if example.name in names:
        first = names[example.name]
        problems.add(entry, f"the example `{example.name}` stands twice, first in line {first}", "give it another name")
    names.setdefault(example.name, entry.line)


class _Reader:
    def __init__(self, rule: Rule, problems: Problems) -> None:
        self.rule = rule
        self.problems = problems

    def read(self, node: Node, verdict: str) -> Example | None:
        if not isinstance(node, Map):
            self.problems.add(node, "this is no example", "write `{name: …, facts: {…}}`")
            return None
        allowed = _DESIGN_KEYS if "design" in node.entries else _FACT_KEYS
        for key, (at, _) in node.entries.items():
            if key not in allowed:
                right = meant(key, allowed, f"it has {listed(allowed)}")
                self.problems.add(at, f"such an example has no key `{key}`", right)
        code = self.line(node, "code")
        if code and code not in CODES:
            self.problems.add(node.get("code") or node, f"there is no code `{code}`", f"there are {listed(CODES)}")
        example = Example(verdict, self.line(node, "name"), code, self.rule.text.file, node.line)
        if not re.fullmatch(NAME, example.name):
            self.problems.add(node, "the example has no name of small letters and hyphens", "write `name: just-over`")
        (self.read_design if "design" in node.entries else self.read_facts)(node, example)
        return example

    def line(self, node: Map, key: str) -> str:
        value = node.get(key)
        return value.text.strip() if isinstance(value, Text) else ""

    def read_design(self, node: Map, example: Example) -> None:
        example.design, example.about = self.line(node, "design"), self.line(node, "about")
        if not re.fullmatch(NAME, example.design):
            self.problems.add(node, "`design` names no base design", "write the name of a file in `rules/designs/`")
        if not example.about:
            self.problems.add(node, "the example does not say which subject it is about", "write `about:` and its id")
        edits = node.get("with")
        if edits is None:
            return
        if not isinstance(edits, Map):
            self.problems.add(edits, "these are no changes", "write `with: {circuits.feed.cable: red-35}`")
            return
        example.edits = tuple(
            (path, value.text if isinstance(value, Text) else written(value))  # a text is itself a piece of YAML
            for path, (_, value) in edits.entries.items()
        )

    def read_facts(self, node: Map, example: Example) -> None:
        facts = node.get("facts")
        if not isinstance(facts, Map):
            self.problems.add(node, "the example gives no facts", "write `facts: {…}`, or `design:` and `about:`")
            return
        kinds: dict[str, dict[str, Any]] = {self.rule.text.about: {}, "design": {}}
        for path, (key, value) in facts.entries.items():
            head, _, name = path.partition(".")
            if head == "limits":
                self.limit(name, key, value, example)
            elif head in kinds:
                kinds[head][name] = self.fact(head, name, key, value, 0)
            else:
                self.problems.add(
                    key, f"`{path}` is about neither a {self.rule.text.about}, the design nor a limit",
                    f"write `{self.rule.text.about}.…`, `design.…` or `limits.…`",
                )  # fmt: skip
        about = self.rule.text.about
        example.subject = Stub(about, example.name, kinds[about])
        example.design_subject = example.subject if about == "design" else Stub("design", "design", kinds["design"])

    def limit(self, name: str, key: Text, value: Node, example: Example) -> None:
        spec = self.rule.limits.get(name)
        if spec is None:
            self.problems.add(key, f"there is no limit `{name}`", meant(name, self.rule.limits, "declare it first"))
        else:
            example.limits[name] = read_value(value, type_of(spec), self.problems)

    def fact(self, kind: str, name: str, key: Text, value: Node, depth: int) -> Any:
        spec = self.rule.catalogue.find(kind, name)
        if spec is None:
            names = self.rule.catalogue.names(kind)
            near = fact_meant(name, names)
            self.problems.add(key, f"a {kind} has no fact `{name}`", near)
            return UNKNOWN
        type_ = type_of(spec)
        if type_.name not in (LIST, SUBJECT):
            return read_value(value, type_, self.problems)
        if isinstance(value, Text) and value.text.strip() in ("none", "unknown"):
            return None if value.text.strip() == "none" else UNKNOWN
        if type_.name == SUBJECT:
            return self.stub(type_.of, value, f"{type_.of}-1", depth)
        if not isinstance(value, Items):
            self.problems.add(value, f"`{name}` is {type_}", f"write `[{{{type_.of}.…: …}}]`, `[]` or `unknown`")
            return UNKNOWN
        return tuple(self.stub(type_.of, item, f"{type_.of}-{at}", depth) for at, item in enumerate(value.items, 1))

    def stub(self, kind: str, node: Node, id: str, depth: int) -> Any:
        if not isinstance(node, Map) or depth >= DEEPEST:
            self.problems.add(node, f"this is no {kind}", f"write its facts: `{{{kind}.…: …}}`")
            return UNKNOWN
        values: dict[str, Any] = {}
        for path, (key, value) in node.entries.items():
            head, _, name = path.partition(".")
            if head != kind:
                self.problems.add(key, f"`{path}` is not about a {kind}", f"write `{kind}.{name or head}`")
            else:
                values[name] = self.fact(kind, name, key, value, depth + 1)
        return Stub(kind, id, values)


def written(node: Node) -> str:
    """The node as YAML on one line, every text in quotes where it needs them."""
    if isinstance(node, Text):
        return node.text if node.plain else "'" + node.text.replace("'", "''") + "'"
    if isinstance(node, Items):
        return "[" + ", ".join(written(item) for item in node.items) + "]"
    assert isinstance(node, Map)  # there is no fourth sort of node
    return "{" + ", ".join(f"{key}: {written(value)}" for key, (_, value) in node.entries.items()) + "}"
