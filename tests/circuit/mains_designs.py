"""The two base designs of the mains side with changes, for tests of supply states."""

from __future__ import annotations

from pathlib import Path

from checker.circuit.build import build
from checker.circuit.mains import Feed
from checker.circuit.state import State
from checker.circuit.states import States
from checker.design.model import Design
from checker.reading import read_text
from checker.shipped import shipped

DESIGNS = Path(str(shipped("rules"))) / "designs"


def changed_at(base: str, edits: dict[str, str]) -> Design:
    """A base design with entries written anew, by their dotted paths."""
    text = (DESIGNS / f"{base}.fitout.yaml").read_text("utf-8")
    return read_text(text, edits=tuple(edits.items()))


def states_of(base: str, edits: dict[str, str] | None = None) -> States:
    """The supply states of a base design with changes."""
    return States(build(changed_at(base, edits or {})))


def named(states: States, name: str) -> State:
    """The state of that name."""
    return next(state for state in states.states if state.name == name)


def feed(states: States, name: str) -> Feed:
    """The feed of that name."""
    return next(feed for feed in states.mains.feeds if feed.name == name)
