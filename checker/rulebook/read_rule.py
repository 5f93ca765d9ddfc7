"""From the tree of a rule file to a checked rule; every problem with its place."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Mapping
from typing import Any

from checker.rulebook.check import check_expression
from checker.rulebook.examples import read_examples
from checker.rulebook.keys import NAME, ORDER, REQUIRED, SIGNALS
from checker.rulebook.nodes import Node as Tree
from checker.rulebook.problems import Problems, listed, meant
from checker.rulebook.rule import Rule, RuleText
from checker.rulebook.source import Items, Map, Node, Place, Text, place_in
from checker.rulebook.source_entry import read_source
from checker.rulebook.syntax import ExpressionError
from checker.rulebook.template import loops_in, read_template

LONGEST_TEXT = 2_000
LONGEST_LINE = 160


class RuleReader:
    """Reads one rule file; `stem` and `topic` are the names of the file and its folder."""

    def __init__(
        self, tree: Map, file: str, stem: str, topic: str, catalogue: Any, limits: Mapping[str, Any], problems: Problems
    ) -> None:
        self.tree = tree
        self.file = file
        self.stem = stem
        self.topic = topic
        self.catalogue = catalogue
        self.limits = limits
        self.problems = problems

    def read(self, data: Callable[[], bytes]) -> Rule | None:
        """The rule, or None when it is not worth looking further; its problems are noted."""
        self.keys()
        text = self.text()
        if any(key not in self.tree.entries for key in REQUIRED) or text.about not in self.catalogue.kinds:
            return None
        rule = Rule(text, self.catalogue, self.limits, data)
        if self.expressions(rule):
            read_examples(self.tree.get("examples"), rule, self.problems)
        return rule

    # --- keys

    def keys(self) -> None:
        """Refuse unknown keys, missing ones and another order than the usual one."""
        last, at_last = -1, ""
        for name, (key, _) in self.tree.entries.items():
            if name not in ORDER:
                self.problems.add(key, f"a rule has no key `{name}`", meant(name, ORDER, f"it has {listed(ORDER)}"))
                continue
            if ORDER.index(name) < last:
                self.problems.add(key, f"`{name}` stands after `{at_last}`", f"the order is {', '.join(ORDER)}")
            last, at_last = max(last, ORDER.index(name)), name if ORDER.index(name) > last else at_last
        for name in REQUIRED:
            if name not in self.tree.entries:
                self.problems.add(Place(1, 1), f"the rule has no `{name}`", f"write `{name}:`")

    # --- texts

    def line(self, key: str) -> str:
        """The text under a key on one line; empty when there is none."""
        node = self.tree.get(key)
        if node is None:
            return ""
        if not isinstance(node, Text):
            self.problems.add(node, f"`{key}` is not a text", "write one text; quote it when it holds `: ` or `{`")
            return ""
        text = " ".join(node.text.split())
        longest = LONGEST_LINE if key in ("id", "title", "signal", "about") else LONGEST_TEXT
        if not text or len(text) > longest:
            what = f"`{key}` has {len(text)} characters, more than {longest}" if text else f"`{key}` is empty"
            self.problems.add(node, what, "write a short text")
        return text

    def names(self, key: str, pattern: str = NAME) -> tuple[str, ...]:
        """The list of names under a key."""
        node = self.tree.get(key)
        if node is None:
            return ()
        if not isinstance(node, Items):
            self.problems.add(node, f"`{key}` is not a list", f"write `{key}: [one, two]`")
            return ()
        found: list[str] = []
        for item in node.items:
            name = item.text if isinstance(item, Text) else ""
            if not re.fullmatch(pattern, name):
                self.problems.add(item, f"`{name}` is no name for `{key}`", "write small letters")
            elif name in found:
                self.problems.add(item, f"`{name}` stands twice", "keep one")
            found.append(name)
        return tuple(found)

    def covers_of(self, requirements: Collection[str]) -> None:
        """Refuse under `covers` what the catalogue of published requirements does not hold."""
        node = self.tree.get("covers")
        for item in node.items if isinstance(node, Items) else ():
            if isinstance(item, Text) and item.text not in requirements:
                right = meant(item.text, requirements, "`docs/coverage.md` lists them; write `[]` where none is meant")
                self.problems.add(item, f"there is no published requirement `{item.text}`", right)

    def kind_meant(self, name: str) -> str:
        """The kind of subject that `name` is a sort of (a relay is a switch), or one spelt much like it."""
        kinds = sorted(self.catalogue.kinds)
        facts = [fact for kind in kinds for fact in self.catalogue.facts(kind) if name in fact.words]
        for start in ("type_of_", "kind_of_"):  # the narrower kind first: a relay is a switch before it is equipment
            for fact in facts:
                if fact.name.startswith(start):
                    return f"write `{fact.kind}`, and `given: {fact.kind}.{fact.name} == '{name}'`"
        return meant(name, kinds, f"there are {listed(kinds, len(kinds))}")

    def text(self) -> RuleText:
        """Everything but the examples, as text."""
        id_, about, signal = self.line("id"), self.line("about"), self.line("signal")
        at = {key: self.tree.get(key) or Place(1, 1) for key in ("id", "about", "signal", "title")}
        if id_ and not re.fullmatch(NAME, id_):
            self.problems.add(at["id"], f"`{id_}` is no id", "write small letters, digits and hyphens")
        elif id_ and id_ != self.stem:
            self.problems.add(at["id"], f"the rule `{id_}` stands in `{self.stem}.yaml`", "give both one name")
        if about and about not in self.catalogue.kinds:
            self.problems.add(at["about"], f"there is no kind `{about}`", self.kind_meant(about))
        if signal and signal not in SIGNALS:
            self.problems.add(at["signal"], f"`{signal}` is no signal", f"there are {listed(SIGNALS)}")
        title = self.line("title")
        if title.endswith("."):
            self.problems.add(at["title"], "the title ends with a full stop", "drop it")
        sources = self.tree.get("sources")
        entries = sources.items if isinstance(sources, Items) else []
        if sources is not None and not entries:
            self.problems.add(sources, "there is no source", "write `[{title: …, basis: memory}]`")
        return RuleText(
            id_, title, signal, self.names("after"), about,
            self.line("given") or "true", self.line("require"), self.line("says"), self.line("why"), self.line("mend"),
            self.names("change", r"[a-z][a-z _-]*(\.[a-z][a-z0-9 _-]*)+"), self.names("covers"),
            tuple(read_source(entry, self.problems) for entry in entries), self.topic, self.file, 1,
        )  # fmt: skip

    # --- expressions

    def expressions(self, rule: Rule) -> bool:
        """Check `given`, `require` and the placeholders; whether the conditions can be used."""
        trees = {key: self.condition(key, rule.text.about) for key in ("given", "require")}
        given, require = trees["given"], trees["require"]
        if given is None or require is None:
            return False
        loops = {**loops_in(given), **loops_in(require)}
        for key in ("says", "mend"):
            node = self.tree.get(key)
            if isinstance(node, Text):
                self.at(node, lambda text: read_template(text, rule.text.about, self.catalogue, self.limits, loops))
        return True

    def condition(self, key: str, about: str) -> Tree | None:
        node: Node | None = self.tree.get(key)
        if node is None and key == "given":
            return check_expression("true", about, self.catalogue, self.limits)
        if not isinstance(node, Text):
            return None
        found: Tree | None = self.at(node, lambda text: check_expression(text, about, self.catalogue, self.limits))
        return found

    def at(self, node: Text, work: Callable[[str], Any]) -> Any:
        """What `work` makes of the text; its complaint becomes a problem at the right place of the file."""
        try:
            return work(node.text)
        except ExpressionError as error:
            self.problems.add(place_in(node, error.offset), error.what, error.right)
            return None
