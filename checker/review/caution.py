"""The standing caution, the same words on every report and page."""

from __future__ import annotations

CAUTION = (
    "Mains and high-current direct current kill and burn. This is a second pair of eyes on a design file: it does not "
    "certify anything, and it sees only what the file says. Local codes, the instructions of the equipment makers and "
    "a licensed electrician decide. Isolate, lock off and prove dead before touching."
)
