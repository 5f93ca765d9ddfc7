"""Writes the pages that are made from the program: facts, rules, limits, coverage, conditions, keys of the design file.

`python docs/generate.py` writes them; with `--check` it only says which differ, and ends with 1 when one does.
"""

from __future__ import annotations

import csv
import sys
from collections import Counter
from pathlib import Path

DOCS = Path(__file__).resolve().parent
sys.path.insert(0, str(DOCS.parent))

from checker.design.keys_page import keys_page  # noqa: E402
from checker.facts.catalogue import CATALOGUE  # noqa: E402
from checker.facts.page import facts_page  # noqa: E402
from checker.reports.rule_list import coverage_of, read_requirements  # noqa: E402
from checker.rulebook import Rulebook, load_rulebook  # noqa: E402
from checker.rulebook.conditions import conditions_page, read_conditions  # noqa: E402
from checker.rulebook.coverage_page import Asked, Left, coverage_page  # noqa: E402
from checker.rulebook.page import index_page, limits_page, topic_page, topics  # noqa: E402
from checker.shipped import shipped  # noqa: E402


def pages() -> dict[str, str]:
    """Path below `docs` -> the text that belongs there."""
    rulebook = load_rulebook()
    conditions = read_conditions(Path(str(shipped("rules"))) / "conditions")
    found = {
        "conditions.md": conditions_page(rulebook, conditions),
        "coverage.md": coverage_page(rulebook, asked(), left(), Counter(one.requirement for one in conditions)),
        "design-file-keys.md": keys_page(),
        "facts.md": facts_page(CATALOGUE),
        "rules/README.md": index_page(rulebook, covered(rulebook)),
        "rules/limits.md": limits_page(rulebook),
    }
    for topic, rules in topics(rulebook).items():
        found[f"rules/{topic}.md"] = topic_page(topic, rules, rulebook)
    return found


def covered(rulebook: Rulebook) -> str:
    """The sentence on coverage."""
    count = coverage_of(rulebook.rules, read_requirements(Path(str(shipped("rules"))) / "requirements.csv"))
    return (
        f"{len(rulebook.rules)} rules cover {count['decidable_covered']} of the {count['decidable']} published "
        f"requirements that a design file can decide, and {count['covered']} of {count['total']} in all."
    )


def asked() -> list[Asked]:
    """The catalogue of published requirements."""
    with (Path(str(shipped("rules"))) / "requirements.csv").open(encoding="utf-8", newline="") as lines:
        return [Asked(row["id"], row["topic"], row["decidable"], row["severity"]) for row in csv.DictReader(lines)]


def left() -> dict[str, Left]:
    """What no rule decides yet of a requirement, or why it has no rule."""
    with (Path(str(shipped("rules"))) / "not-decided.csv").open(encoding="utf-8", newline="") as lines:
        return {row["id"]: Left(row["of"], row["left"]) for row in csv.DictReader(lines)}


def stale() -> list[str]:
    """Pages that differ from what belongs there, are missing, or belong to no rule any more."""
    found = pages()
    there = {f"rules/{path.name}" for path in (DOCS / "rules").glob("*.md")}
    differ = [name for name, text in found.items() if _read(DOCS / name) != text]
    return sorted({*differ, *(there - found.keys())})


def _read(path: Path) -> str | None:
    return path.read_text("utf-8") if path.exists() else None


def write() -> None:
    """Write all pages and take away those of topics that are gone."""
    (DOCS / "rules").mkdir(exist_ok=True)
    found = pages()
    for path in (DOCS / "rules").glob("*.md"):
        if f"rules/{path.name}" not in found:
            path.unlink()
    for name, text in found.items():
        (DOCS / name).write_text(text, "utf-8", newline="\n")


def main(arguments: list[str]) -> int:
    """Write or check."""
    if arguments == ["--check"]:
        names = stale()
        sys.stdout.writelines(f"{name} is not what the program says\n" for name in names)
        return 1 if names else 0
    write()
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
