"""The key of a drawing: what its lines and signs mean."""

from __future__ import annotations

from typing import TYPE_CHECKING

from checker.reports.plan_sheet import MARGIN, WIDE, Frame
from checker.reports.svg import element, escaped, group, number, path, text

if TYPE_CHECKING:
    from checker.reports.plan_scene import Scene

BANDS = {
    "elv up to 30 V": ("low", "extra-low voltage up to 30 V: thin line"),
    "elv above 30 V": ("high", "extra-low voltage above 30 V: double line"),
    "mains": ("mains", "mains: long dash and dot"),
    "earth": ("earth", "earth and bonding: short dashes"),
    "unknown": ("unknown", "voltage not known: dots"),
}
"""Band of voltage to its class of line and what the key says of it."""
OPEN_KINDS = ("outside", "under body")


def box(frame: Frame, class_: str, words: str, round_: float = 0.0) -> str:
    """An outline that says its name when pointed at."""
    return element("rect", element("title", escaped(words)), class_=class_, x=frame.x, y=frame.y, width=frame.wide,
                   height=frame.tall, rx=round_)  # fmt: skip


def key(found: Scene, top: float) -> str:
    """What the lines and signs mean, those alone that are there."""
    entries: list[tuple[str, str]] = []
    present = {line.band for line in found.routes}
    for band, (class_, words) in BANDS.items():
        if band in present:
            sample = [(0.0, 1.4), (13.0, 1.4)]
            core = path(sample, class_="core") if class_ == "high" else ""
            entries.append((path(sample, class_=f"route {class_}") + core, words))
    if found.services:
        entries.append((path([(0.0, 1.4), (13.0, 1.4)], class_="service"), "line of gas, fuel, water, air or exhaust"))
    if any(shape.kind not in OPEN_KINDS for shape in found.places):
        entries.append((box(Frame(0, 0, 13, 2.8), "place", ""), "place with a box"))
    if any(shape.kind in OPEN_KINDS for shape in found.places):
        entries.append((box(Frame(0, 0, 13, 2.8), "skin", ""), "place outside or under the body"))
    if found.equipment:
        entries.append((box(Frame(0, 0, 13, 2.8), "body", ""), "equipment with a box; a ring: a point alone"))
    if found.moving:
        hatch = element("rect", None, class_="way", fill="url(#sweep)", width=13, height=2.8)
        entries.append((hatch, "all the space a part moves through; arrow: its way"))
    if any(mark.point is not None for mark in found.marks):
        number_sign = text(6.5, 2.2, "n", "small strong", text_anchor="middle")
        sample_flag = box(Frame(0, 0, 13, 2.8), "stowed", "") + number_sign
        entries.append((sample_flag, "breach: number n in the list, worst signal word"))
    pieces: list[str] = []
    for index, (sample_, words) in enumerate(entries):
        column, row = divmod(index, 4)
        x, y = MARGIN + column * 92.0, top + 4.0 + row * 4.8
        pieces.append(group([sample_], transform=f"translate({number(x)} {number(y)})"))
        pieces.append(text(x + 15.5, y + 2.2, words, "small"))
    rule = path([(MARGIN, top - 1.0), (WIDE - MARGIN, top - 1.0)], class_="hair")
    return group([rule, text(MARGIN, top + 2.2, "Key", "strong"), *pieces])
