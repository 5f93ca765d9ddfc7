"""Options of the whole test suite."""

from __future__ import annotations

import pytest
from hypothesis import settings

# The same cases on every machine and every run, however slow it is.
settings.register_profile("fitout", deadline=None, derandomize=True, print_blob=False)
settings.load_profile("fitout")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--worked-examples",
        metavar="FILE",
        default=None,
        help="run the published worked examples of FILE through the formulas, "
        "instead of tests/reference/worked-examples.yaml (same form)",
    )
    parser.addoption(
        "--networks",
        metavar="FOLDER",
        default=None,
        help="solve the published networks (*.yaml) of FOLDER, instead of tests/reference/networks (same form)",
    )
