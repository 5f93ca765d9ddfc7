"""A sign of life for long work: only on a terminal, only after half a second, and gone afterwards."""

from __future__ import annotations

import sys
from types import TracebackType
from typing import TextIO

PATIENCE = 0.5
"""Seconds of silence before anything is shown, and between two signs."""


class Progress:
    """Context manager: shows `what` and the seconds gone by on standard error while the work lasts."""

    def __init__(self, what: str, stream: TextIO | None = None) -> None:
        self._what = what
        self._stream: TextIO = sys.stderr if stream is None else stream
        self._running = False

    def __enter__(self) -> Progress:
        if self._stream is None or not self._stream.isatty():
            return self
        from threading import Event, Thread

        self._event = Event()
        self._thread = Thread(target=self._show, daemon=True)
        self._running = True
        self._thread.start()
        return self

    def _show(self) -> None:
        ticks = 0
        while not self._event.wait(PATIENCE):
            ticks += 1
            self._write(f"\r{self._what}: {ticks * PATIENCE:.1f} s")
        if ticks:
            self._write("\r" + " " * (len(self._what) + 12) + "\r")

    def _write(self, text: str) -> None:
        try:
            self._stream.write(text)
            self._stream.flush()
        except OSError:
            self._event.set()  # the terminal went away: the work goes on without a sign of life

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, tb: TracebackType | None) -> None:
        if self._running:
            self._event.set()
            self._thread.join()
