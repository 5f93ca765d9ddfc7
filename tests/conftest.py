"""Options of the whole test suite."""
from __future__ import annotations

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--worked-examples", metavar="FILE", default=None,
        help="run the published worked examples of FILE through the formulas, "
             "instead of tests/reference/worked-examples.yaml (same form)",
    )
