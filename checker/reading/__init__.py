"""From a design file to the model: every error with its line and column."""

from __future__ import annotations

from checker.reading.problems import Problem, ReadingErrors
from checker.reading.reader import read_design, read_text

__all__ = ["Problem", "ReadingErrors", "read_design", "read_text"]
