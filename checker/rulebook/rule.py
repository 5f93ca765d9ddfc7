"""One rule: what its file says, and its conditions, checked when first needed and compiled when first used."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cached_property
from typing import TYPE_CHECKING, Any, NamedTuple

from checker.rulebook.check import check_expression
from checker.rulebook.nodes import Node
from checker.rulebook.problems import RuleErrors, RuleProblem
from checker.rulebook.source_entry import Source
from checker.rulebook.syntax import ExpressionError
from checker.rulebook.template import Template, loops_in, read_template

if TYPE_CHECKING:
    from checker.rulebook.emit import Batch
    from checker.rulebook.examples import Example


class RuleText(NamedTuple):
    """What stands in a rule file, all of it text; this and nothing else is ever kept in the cache."""

    id: str
    title: str
    signal: str
    after: tuple[str, ...]
    about: str
    given: str
    require: str
    says: str
    why: str
    mend: str
    change: tuple[str, ...]
    covers: tuple[str, ...]
    sources: tuple[Source, ...]
    topic: str
    file: str
    line: int


class Rule:
    """A rule with its text (`rule.text.why`, also as `rule.why`) and its checked, compiled conditions."""

    def __init__(self, text: RuleText, catalogue: Any, limits: Mapping[str, Any], data: Callable[[], bytes]) -> None:
        self.text = text
        self.catalogue = catalogue
        self.limits = limits
        self.data = data  # the bytes of the file, read again for the examples

    id = property(lambda self: self.text.id)
    title = property(lambda self: self.text.title)
    signal = property(lambda self: self.text.signal)
    after = property(lambda self: self.text.after)
    about = property(lambda self: self.text.about)
    given = property(lambda self: self.text.given)
    require = property(lambda self: self.text.require)
    says = property(lambda self: self.text.says)
    why = property(lambda self: self.text.why)
    mend = property(lambda self: self.text.mend)
    change = property(lambda self: self.text.change)
    covers = property(lambda self: self.text.covers)
    sources = property(lambda self: self.text.sources)
    topic = property(lambda self: self.text.topic)
    file = property(lambda self: self.text.file)
    line = property(lambda self: self.text.line)

    @cached_property
    def given_tree(self) -> Node:
        """The checked condition for the rule to apply."""
        return self._checked("given", self.text.given)

    @cached_property
    def require_tree(self) -> Node:
        """The checked requirement."""
        return self._checked("require", self.text.require)

    @cached_property
    def loops(self) -> dict[str, Any]:
        """The loops of both conditions by the kind they run over, those of the requirement first."""
        return {**loops_in(self.given_tree), **loops_in(self.require_tree)}

    @cached_property
    def says_parts(self) -> Template:
        """The sentence of a finding, its placeholders checked; empty when it is to be made from the requirement."""
        return self._template("says", self.text.says)

    @cached_property
    def mend_parts(self) -> Template:
        """The mend, its placeholders checked."""
        return self._template("mend", self.text.mend)

    @cached_property
    def quick(self) -> Batch:
        """The compiled form for exact values, see `emit.quick_batch`."""
        from checker.rulebook.emit import quick_batch

        return quick_batch(self.given_tree, self.require_tree, self.text.id)

    @cached_property
    def careful(self) -> Batch:
        """The compiled form for values of any kind, see `emit.careful_batch`."""
        from checker.rulebook.emit import careful_batch

        return careful_batch(self.given_tree, self.require_tree, self.text.id)

    @cached_property
    def examples(self) -> tuple[Example, ...]:
        """The examples of its file, read when asked for. Raises RuleErrors."""
        from checker.rulebook.examples import read_examples_of

        return read_examples_of(self)

    def _checked(self, key: str, text: str) -> Node:
        try:
            return check_expression(text, self.text.about, self.catalogue, self.limits)
        except ExpressionError as error:
            raise self._error(key, error) from None

    def _template(self, key: str, text: str) -> Template:
        try:
            return read_template(text, self.text.about, self.catalogue, self.limits, self.loops)
        except ExpressionError as error:
            raise self._error(key, error) from None

    def _error(self, key: str, error: ExpressionError) -> RuleErrors:
        what = f"`{key}`, character {error.offset + 1}: {error.what}"
        return RuleErrors([RuleProblem(self.text.file, self.text.line, 1, what, error.right)])

    def __repr__(self) -> str:
        return f"<rule {self.text.id}>"
