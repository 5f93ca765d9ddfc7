"""Reviews under test read rule files, not what was kept of them."""

from __future__ import annotations

import pytest


@pytest.fixture(autouse=True)
def _no_cache(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("FITOUT_CACHE", "none")
