"""The pages made from the program say what the program says."""

from __future__ import annotations

import re
import sys
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path
from types import ModuleType

import pytest

DOCS = Path(__file__).resolve().parents[1] / "docs"


@pytest.fixture(scope="module")
def generate() -> ModuleType:
    spec = spec_from_file_location("docs_generate", DOCS / "generate.py")
    assert spec is not None and spec.loader is not None
    before = list(sys.path)
    module = module_from_spec(spec)
    spec.loader.exec_module(module)
    sys.path[:] = before
    return module


def test_no_page_is_stale(generate: ModuleType) -> None:
    assert generate.stale() == [], "regenerate with: python docs/generate.py"


def test_every_rule_and_every_fact_has_its_place(generate: ModuleType) -> None:
    from checker.facts.catalogue import CATALOGUE
    from checker.rulebook import load_rulebook

    pages = generate.pages()
    for rule in load_rulebook().rules:
        assert f"\n## {rule.id}\n" in pages[f"rules/{rule.topic}.md"]
    for kind in CATALOGUE.kinds:
        assert f"\n## {kind}\n" in pages["facts.md"]
        for spec in CATALOGUE.facts(kind):
            assert f"| `{spec.name}` |" in pages["facts.md"]


def test_every_link_between_the_pages_leads_somewhere(generate: ModuleType) -> None:
    pages = generate.pages()
    anchors = {name: set(re.findall(r"^###? (\S+)$", text, re.MULTILINE)) for name, text in pages.items()}
    for name, text in pages.items():
        for target, anchor in re.findall(r"\]\(([\w./-]*\.md)?(?:#([\w-]+))?\)", text):
            path = (Path(name).parent / target).as_posix() if target else name
            path = re.sub(r"^rules/\.\./", "", path)
            assert path in pages or (DOCS / path).exists(), (name, target)
            assert not anchor or anchor in anchors[path], (name, target, anchor)


def test_a_page_that_differs_is_told(generate: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    real = generate.pages()
    monkeypatch.setattr(generate, "pages", lambda: {**real, "facts.md": "something else\n"})
    assert "facts.md" in generate.stale()
