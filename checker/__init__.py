"""fitout: a rule-based checker for the electrical design of vehicle fit-outs."""

from __future__ import annotations

__version__ = "0.1.0"
