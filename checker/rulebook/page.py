"""The pages of the rules, `docs/rules/`, made from the rule files and the codes of practice."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from checker.quantities import Number, Window, show
from checker.rulebook.limits import Code, LimitSpec, LimitValue
from checker.rulebook.load import Rulebook
from checker.rulebook.nodes import Fact, Limit, Node, walk
from checker.rulebook.rule import Rule
from checker.rulebook.source_entry import Source
from checker.rulebook.words import in_words, spoken
from checker.source.problems import article

MADE = "Made from the rule files by `python docs/generate.py`; do not edit."
SIGNALS = ("danger", "warning", "caution", "notice")
CAUTION = (
    "A rule is a second pair of eyes on a design file. Local codes, the equipment maker's instructions and a licensed "
    "electrician decide."
)
MARKS = {"seen": "seen", "memory": "from memory, to be checked", "practice": "common practice, no source"}


def topics(rulebook: Rulebook) -> dict[str, list[Rule]]:
    """The rules by topic, both in alphabetical order."""
    found: dict[str, list[Rule]] = {}
    for rule in sorted(rulebook.rules, key=lambda one: (one.topic, one.id)):
        found.setdefault(rule.topic, []).append(rule)
    return found


def index_page(rulebook: Rulebook, covered: str) -> str:
    """The list of topics and codes with counts; `covered` is the sentence on the requirements that have a rule."""
    by_topic = topics(rulebook)
    columns = ["topic", "rules", *SIGNALS]
    rows = [[f"[{topic}]({topic}.md)", *_counts(rules)] for topic, rules in by_topic.items()]
    rows.append(["all", *_counts(rulebook.rules)])
    codes = [[f"`{code.name}`", code.title, str(len(code.limits)), code.says] for code in rulebook.codes.values()]
    parts = [
        "# Rules",
        MADE,
        CAUTION,
        covered,
        table(columns, rows),
        "## Codes of practice",
        "A design names its code; a limit that a code does not give is that of `intl`, and unknown where that gives "
        "none. [Limits](limits.md) shows all values with their sources.",
        table(["code", "title", "limits of its own", "what it stands for"], codes),
    ]
    return "\n\n".join(parts) + "\n"


def _counts(rules: Iterable[Rule]) -> list[str]:
    held = list(rules)
    return [str(len(held)), *(str(sum(rule.signal == signal for rule in held) or "") for signal in SIGNALS)]


def limits_page(rulebook: Rulebook) -> str:
    """Every limit with its value under each code and the source of each."""
    parts = ["# Limits", MADE]
    for name, spec in sorted(rulebook.limits.items()):
        parts += [f"## {name}", f"{spec.says}.".replace("..", "."), limit_table(spec, rulebook.codes)]
    return "\n\n".join(parts) + "\n"


def limit_table(spec: LimitSpec, codes: Mapping[str, Code]) -> str:
    """The values of one limit, one row for each code that gives one."""
    rows = [
        [f"`{code.name}`", shown(spec, code.limits[spec.name]), cited(code.limits[spec.name].source)]
        for code in codes.values()
        if spec.name in code.limits
    ]
    return table(["code", "value", "source"], rows) if rows else "No code gives a value yet."


def shown(spec: LimitSpec, value: LimitValue) -> str:
    """The value of a limit as people write it."""
    if spec.type == "number":
        number: Number = value.value
        return show(number, spec.unit)
    if isinstance(value.value, Window):
        return f"{show(value.value.low, spec.unit)} to {show(value.value.high, spec.unit)}"
    if isinstance(value.value, bool):
        return "yes" if value.value else "no"
    return value.text


def topic_page(topic: str, rules: Iterable[Rule], rulebook: Rulebook) -> str:
    """All rules of one topic."""
    parts = [f"# {spoken(topic).replace('-', ' ').capitalize()}", MADE, CAUTION]
    for rule in rules:
        parts += _rule(rule, rulebook)
    return "\n\n".join(parts) + "\n"


def _rule(rule: Rule, rulebook: Rulebook) -> list[str]:
    parts = [f"## {rule.id}", f"**{rule.signal.upper()}**: {rule.title}."]
    always = isinstance(getattr(rule.given_tree, "value", None), bool)
    if always:
        parts.append(f"Holds for every {spoken(rule.about)}.")
    else:
        parts.append(f"Holds for {article(spoken(rule.about))} of which this is so: {in_words(rule.given_tree)}.")
        parts.append(f"`{rule.given}`")
    parts += [f"Requires: {in_words(rule.require_tree)}.", f"`{rule.require}`"]
    parts.append(_facts(rule))
    for name in _limits((rule.given_tree, rule.require_tree)):
        parts += [f"Limit [{spoken(name)}](limits.md#{name}):", limit_table(rulebook.limits[name], rulebook.codes)]
    parts += [f"Why: {rule.why}", f"Mend: {rule.mend}"]
    if rule.after:
        parts.append("Told under: " + ", ".join(f"`{one}`" for one in rule.after) + ".")
    parts.append("Covers: " + (", ".join(f"`{one}`" for one in rule.covers) or "no published requirement") + ".")
    parts.append("Sources:\n\n" + "\n".join(f"- {cited(source)}" for source in rule.sources))
    return [part for part in parts if part]


def cited(source: Source) -> str:
    """A source with its mark."""
    where = ", ".join(part for part in (source.title, source.clause, source.edition) if part)
    return f"{where} ({MARKS[source.basis]})"


def _facts(rule: Rule) -> str:
    """The facts that the conditions name, each with its sentence."""
    found: dict[str, None] = {}
    for node in (*walk(rule.given_tree), *walk(rule.require_tree)):
        if isinstance(node, Fact):
            kind = node.base.type.of
            spec = rule.catalogue.find(kind, node.name)
            found[f"- [`{kind}.{node.name}`](../facts.md#{kind}): {spec.says}"] = None
    return "In it:\n\n" + "\n".join(found) if found else ""


def _limits(trees: Iterable[Node]) -> list[str]:
    return list(dict.fromkeys(node.name for tree in trees for node in walk(tree) if isinstance(node, Limit)))


def table(columns: list[str], rows: Iterable[list[str]]) -> str:
    """A Markdown table."""
    lines = [columns, ["---"] * len(columns), *([cell.replace("|", "\\|") for cell in row] for row in rows)]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)
