"""From a design file to the model: every error with its line and column."""

from __future__ import annotations

from checker.reading.reader import read_design, read_text
from checker.source.problems import Problem
from checker.source.problems import SourceErrors as ReadingErrors

__all__ = ["Problem", "ReadingErrors", "read_design", "read_text"]
