"""All rules of all folders: read, checked, and ready to be compiled."""

from __future__ import annotations

import json
from collections.abc import Callable, Collection, Iterable, Mapping
from hashlib import sha256
from pathlib import Path
from typing import Any

from checker.rulebook.cache import FORMAT, cache_file, keep, recall
from checker.rulebook.folders import CODES, RuleFile, published, rule_files
from checker.rulebook.keys import CODES as CODE_NAMES
from checker.rulebook.limits import Code, Limits, LimitSpec, LimitValue, read_code, read_limit_names
from checker.rulebook.problems import Problems, RuleErrors, RuleProblem, listed, meant
from checker.rulebook.read_rule import RuleReader
from checker.rulebook.rule import Rule, RuleText
from checker.rulebook.source import Place, load_tree
from checker.rulebook.source_entry import Source
from checker.rulebook.types import type_of
from checker.rulebook.values import read_value

LIMIT_NAMES = "limits"


class Rulebook:
    """All rules loaded, the limits they name, the codes that give those values, and a hash over all of it."""

    __slots__ = ("by_id", "codes", "limits", "rules", "sha256")

    def __init__(
        self, rules: Iterable[Rule], limits: Mapping[str, LimitSpec], codes: Mapping[str, Code], sha256: str
    ) -> None:
        self.rules = tuple(rules)
        self.by_id = {rule.text.id: rule for rule in self.rules}
        self.limits = limits
        self.codes = codes
        self.sha256 = sha256

    def limits_for(self, code: str) -> Limits:
        """The limits under a code of practice. Raises ValueError when there is no such code."""
        if code not in self.codes:
            raise ValueError(f"there is no code `{code}`; {meant(code, self.codes, f'there are {listed(self.codes)}')}")
        return Limits(code, self.limits, self.codes)


def load_rulebook(folders: Iterable[str | Path] = (), catalogue: Any = None, base: Path | None = None) -> Rulebook:
    """The shipped rules and those of further `folders` of the same layout.

    `catalogue` is that of the facts, `base` the folder of the shipped rules; both for tests. Raises RuleErrors, which
    holds every problem found.
    """
    if catalogue is None:
        from checker.facts.catalogue import CATALOGUE as catalogue
    if base is None:
        from checker.shipped import shipped

        base = Path(str(shipped("rules")))
    roots = [(base, "rules"), *((Path(folder), str(folder)) for folder in folders)]
    files = [file for root, label in roots for file in rule_files(root, label)]
    key = _key(files, catalogue)
    kept = cache_file(tuple(str(root.resolve()) for root, _ in roots))
    recalled = _recalled(recall(kept, key), files, catalogue)
    if recalled is not None:
        return recalled
    book = _Reader(files, catalogue, published(base)).book()
    keep(kept, key, _content(book))
    return book


def _key(files: list[RuleFile], catalogue: Any) -> str:
    """A hash over everything that reading the files depends on."""
    import checker

    digest = sha256(f"{FORMAT} {getattr(checker, '__version__', '')}\n".encode())
    for kind in catalogue.kinds:
        for spec in catalogue.facts(kind):
            digest.update(f"{kind}.{spec.name} {spec.type} {spec.unit} {spec.words} {spec.of}\n".encode())
    for file in files:
        digest.update(f"{file.label} {len(file.data)}\n".encode())
        digest.update(file.data)
    return digest.hexdigest()


def stamp(rules: Iterable[Rule], limits: Mapping[str, LimitSpec], codes: Mapping[str, Code]) -> str:
    """A hash over what the rules and limits say, whatever their files are called and however they are laid out."""
    said = {
        "rules": sorted([*rule.text._replace(file="", line=0, topic="")] for rule in rules),
        "limits": sorted([*spec] for spec in limits.values()),
        "codes": {
            name: {limit: [value.text, *value.source] for limit, value in sorted(code.limits.items())}
            for name, code in sorted(codes.items())
        },
    }
    return sha256(json.dumps(said, sort_keys=True, ensure_ascii=False).encode()).hexdigest()


class _Reader:
    """Reads every file and collects every problem."""

    def __init__(self, files: list[RuleFile], catalogue: Any, requirements: Collection[str] | None) -> None:
        self.files = files
        self.requirements = requirements
        self.catalogue = catalogue
        self.problems: list[RuleProblem] = []

    def book(self) -> Rulebook:
        limits = self.limit_names()
        codes = self.code_files(limits)
        rules = self.rule_files(limits)
        if self.problems:
            raise RuleErrors(self.problems)
        return Rulebook(rules, limits, codes, stamp(rules, limits, codes))

    def trees(self, wanted: Callable[[RuleFile], bool]) -> Iterable[tuple[RuleFile, Any, Problems]]:
        for file in self.files:
            if wanted(file):
                problems = Problems(file.label)
                tree = load_tree(file.data, problems)
                if tree is not None:
                    yield file, tree, problems
                self.problems.extend(problems.found)

    def limit_names(self) -> dict[str, LimitSpec]:
        found: dict[str, LimitSpec] = {}
        for _, tree, problems in self.trees(lambda file: file.folder == CODES and file.stem == LIMIT_NAMES):
            found.update(read_limit_names(tree, found, problems))
        return found

    def code_files(self, limits: Mapping[str, LimitSpec]) -> dict[str, Code]:
        found: dict[str, Code] = {}
        for file, tree, problems in self.trees(lambda file: file.folder == CODES and file.stem != LIMIT_NAMES):
            if file.stem not in CODE_NAMES:
                right = meant(file.stem, CODE_NAMES, f"there are {listed(CODE_NAMES)}")
                problems.add(tree, f"there is no code `{file.stem}`", right)
            code = read_code(tree, file.stem, limits, problems)
            before = found.get(code.name)
            # A later folder overrides single limits of a code that stands already.
            found[code.name] = code if before is None else before._replace(limits={**before.limits, **code.limits})
        return found

    def rule_files(self, limits: Mapping[str, LimitSpec]) -> list[Rule]:
        found: dict[str, Rule] = {}
        after: list[tuple[RuleFile, Any, Rule]] = []
        for file, tree, problems in self.trees(lambda file: file.folder != CODES):
            reader = RuleReader(tree, file.label, file.stem, file.folder, self.catalogue, limits, problems)
            if self.requirements is not None:
                reader.covers_of(self.requirements)
            rule = reader.read(lambda data=file.data: data)  # type: ignore[misc]
            if rule is None:
                continue
            first = found.setdefault(rule.text.id, rule)
            if first is not rule:
                at = tree.get("id") or Place(1, 1)
                problems.add(at, f"the rule `{rule.text.id}` stands in {first.text.file} already", "give it another id")
            elif rule.text.after:
                after.append((file, tree, rule))
        for file, tree, rule in after:
            for name in rule.text.after:
                if name not in found or name == rule.text.id:
                    at = tree.get("after")
                    right = meant(name, found, "name another rule")
                    problem = RuleProblem(file.label, at.line, at.column, f"`after` names no rule: `{name}`", right)
                    self.problems.append(problem)
        return list(found.values())


# --- to the cache and back


def _content(book: Rulebook) -> dict[str, Any]:
    return {
        "sha256": book.sha256,
        "limits": [[*spec] for spec in book.limits.values()],
        "codes": [
            [code.name, code.title, code.says, {name: [one.text, *one.source] for name, one in code.limits.items()}]
            for code in book.codes.values()
        ],
        "rules": [[*rule.text] for rule in book.rules],
    }


def _recalled(content: Any, files: list[RuleFile], catalogue: Any) -> Rulebook | None:
    """The rulebook from what was kept, or None when that does not look right."""
    if content is None:
        return None
    try:
        limits = {one[0]: LimitSpec(one[0], one[1], one[2], tuple(one[3]), *one[4:]) for one in content["limits"]}
        codes = {
            name: Code(name, title, says, {limit: _limit_value(limits[limit], one) for limit, one in values.items()})
            for name, title, says, values in content["codes"]
        }
        data = {file.label: file.data for file in files}
        rules = [_rule(entry, catalogue, limits, data) for entry in content["rules"]]
        return Rulebook(rules, limits, codes, str(content["sha256"]))
    except (LookupError, TypeError, ValueError, AttributeError):
        return None


def _limit_value(spec: LimitSpec, entry: list[str]) -> LimitValue:
    text, *source = entry
    problems = Problems("cache")
    value = read_value(_plain(text, spec), type_of(spec), problems)
    if problems.found:
        raise ValueError(problems.found[0].what)
    return LimitValue(value, text, Source(*source))


def _plain(text: str, spec: LimitSpec) -> Any:
    from checker.rulebook.source import Items, Text

    if spec.type != "words":
        return Text(text, 1, 1)
    items = Items(1, 1)
    items.items = [Text(word, 1, 1) for word in text.split(", ") if word]
    return items


def _rule(entry: list[Any], catalogue: Any, limits: Mapping[str, LimitSpec], data: Mapping[str, bytes]) -> Rule:
    text = RuleText._make(tuple(part) if isinstance(part, list) else part for part in entry)
    text = text._replace(sources=tuple(Source(*source) for source in text.sources))
    if not all(isinstance(part, (str, int, tuple)) for part in text):
        raise TypeError("a part of a rule is no text")
    return Rule(text, catalogue, limits, lambda: data[text.file])
