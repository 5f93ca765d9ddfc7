"""The sign of life: only on a terminal, only when it takes long, and gone afterwards."""

from __future__ import annotations

import io
import time

import pytest

from checker.commands import progress
from checker.commands.progress import Progress


class Terminal(io.StringIO):
    """A stream that says it is a terminal."""

    def isatty(self) -> bool:
        return True


class GoneTerminal(Terminal):
    """A terminal that was closed meanwhile."""

    def write(self, text: str) -> int:
        raise OSError("gone")


@pytest.fixture(autouse=True)
def _impatient(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(progress, "PATIENCE", 0.01)


def wait_for_sign(stream: io.StringIO) -> None:
    """Wait until something was written; the test's own timeout is generous."""
    for _ in range(1000):
        if stream.getvalue():
            return
        time.sleep(0.01)
    raise AssertionError("no sign of life in ten seconds")


def test_long_work_on_a_terminal_shows_and_then_wipes_a_line() -> None:
    stream = Terminal()
    with Progress("reviewing x", stream):
        wait_for_sign(stream)
    said = stream.getvalue()
    assert said.startswith("\rreviewing x: ")
    assert said.endswith(" \r")
    assert "\n" not in said


def test_nothing_is_shown_elsewhere() -> None:
    stream = io.StringIO()
    with Progress("reviewing x", stream):
        time.sleep(0.05)
    assert stream.getvalue() == ""


def test_short_work_shows_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(progress, "PATIENCE", 60)
    stream = Terminal()
    with Progress("reviewing x", stream):
        pass
    assert stream.getvalue() == ""


def test_a_terminal_that_goes_away_does_not_stop_the_work() -> None:
    with Progress("reviewing x", GoneTerminal()) as sign:
        time.sleep(0.05)
    assert not sign._thread.is_alive()


def test_an_error_in_the_work_comes_through_and_ends_the_sign() -> None:
    with pytest.raises(KeyError), Progress("reviewing x", Terminal()) as sign:
        raise KeyError
    assert not sign._thread.is_alive()
