"""One browser for all tests that need one."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from typing import Any

import pytest


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    """Chromium; without one the test is skipped, or fails when FITOUT_BROWSER is `required`."""
    chromium = shutil.which("chromium")
    if chromium is None:
        if os.environ.get("FITOUT_BROWSER") == "required":
            pytest.fail("no chromium, and FITOUT_BROWSER=required")
        pytest.skip("no chromium: apt-get install chromium libatomic1")
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        made = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox", "--disable-dev-shm-usage"])
        yield made
        made.close()
