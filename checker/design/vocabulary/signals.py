"""Signals that enable, inhibit or warn."""

from __future__ import annotations

from checker.design.vocabulary.common import COMMON, PLAIN
from checker.design.vocabulary.key import Kind, Port
from checker.design.vocabulary.make import signal, word

MEANS = (
    "engine running", "ignition on", "charge allowed", "discharge allowed", "shore present", "generator running",
    "parking brake set", "parking brake released", "moving part stowed", "battery low", "air flowing", "stop all",
    "fault", "temperature",
)  # fmt: skip

SIGNAL = Kind(
    "signal",
    "One signal: what it means, where it comes from, what it does when its wire breaks.",
    (
        *(key for key in COMMON if key.name in ("place", "doubt", "own", "standard", "labels", "marked", "fitted")),
        word("means", MEANS, "What it means when it is given."),
        signal("from", "The port it comes from."),
        word("fails", ("released", "given"), "What its receiver takes it for when the wire breaks."),
    ),
    ports=(Port("out", ("",)),),
    sections=PLAIN,
)

SIGNALS = (SIGNAL,)
