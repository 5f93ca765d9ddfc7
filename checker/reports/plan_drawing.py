"""The vehicle seen from above or from its left side, to scale: one SVG, A4 across, by drawing rules of our own.

Bands of voltage differ by the kind of line, moving parts by hatching, findings by flags with signal word and number;
nothing is told by colour alone. Lists on the following sheets say the same in words.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING

from checker.reports.plan_key import BANDS, OPEN_KINDS, box, key
from checker.reports.plan_lists import list_sheets
from checker.reports.plan_scene import scene, travels
from checker.reports.plan_sheet import (
    FLAG_TYPE,
    MARGIN,
    ROW,
    TALL,
    WIDE,
    Flag,
    Frame,
    Sheet,
    beside,
    flags,
    rows_needed,
    settle,
    sheet,
)
from checker.reports.svg import element, escaped, group, lines, number, path, shortened, text

if TYPE_CHECKING:
    from checker.design.model import Design
    from checker.reports.document import Document
    from checker.reports.plan_boxes import Line
    from checker.reports.plan_marks import Mark
    from checker.reports.plan_scene import Scene, Sweep

STYLE = Path(__file__).parent / "templates" / "plan.css"
VIEWS = ("plan", "side")
SEEN = {"plan": "Plan, seen from above", "side": "Side view, seen from the left"}
APART = {"low": -0.9, "high": 0.0, "mains": 0.9, "earth": 1.8, "unknown": -1.8}
"""Lines of different bands that take one way lie beside each other, mm."""
HEADER, KEY, FOOT = 24.0, 28.0, 8.0
PLACE_TYPE, BODY_TYPE = 2.5, 2.3


def plan_drawing(design: Design, report: Document, view: str, style: str | None = None) -> Iterator[str]:
    """The drawing as pieces of one SVG document; `style` stands in for its own style sheet.

    Raises
    ------
    ValueError: there is no such view.
    """
    if view not in VIEWS:
        raise ValueError(f"no view {view!r}; there are {', '.join(VIEWS)}")
    found = scene(design, report)
    area, placed = _fit(found, view)
    flown = flags(_pointed(found), _feet(found, placed), area) if placed is not None else []
    further = list_sheets(found, report)
    tall = TALL * (1 + len(further))
    title = f"{SEEN[view]}: {report['design']['title']}"
    yield '<?xml version="1.0" encoding="UTF-8"?>\n'
    yield (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{number(WIDE)}mm" height="{number(tall)}mm" '
        f'viewBox="0 0 {number(WIDE)} {number(tall)}" role="document" lang="en" aria-labelledby="title desc">\n'
    )
    yield element("title", escaped(title), id="title") + "\n"
    yield element("desc", escaped(_described(found, report, placed)), id="desc") + "\n"
    yield element("style", plan_style() if style is None else style) + "\n"
    yield _patterns() + "\n"
    yield element("rect", None, class_="sheet", width=WIDE, height=tall) + "\n"
    yield from _first_sheet(found, report, view, title, area, placed, flown, 1 + len(further))
    for index, further_sheet in enumerate(further, 1):
        yield group([further_sheet, _footer(report, index + 1, len(further) + 1)],
                    transform=f"translate(0 {number(TALL * index)})") + "\n"  # fmt: skip
    yield "</svg>\n"


def plan_style() -> str:
    """The style sheet of the drawing, light and dark."""
    return STYLE.read_text(encoding="utf-8")


def _fit(found: Scene, view: str) -> tuple[Frame, Sheet | None]:
    """The area of the drawing between its rows of flags, and the scale at which it fits."""
    rows = (0, 0)
    marks = _pointed(found)
    while True:
        top = HEADER + MARGIN + rows[0] * ROW + 6.0
        end = TALL - FOOT - KEY - rows[1] * ROW - 7.0
        area = Frame(MARGIN + 8.0, top, WIDE - 2.0 * MARGIN - 8.0, max(30.0, end - top))
        placed = sheet(found, view, area)
        if placed is None:
            return area, None
        needed = rows_needed(marks, _feet(found, placed), area.middle[1], area.wide)
        if needed[0] <= rows[0] and needed[1] <= rows[1]:
            return area, placed
        rows = (max(rows[0], needed[0]), max(rows[1], needed[1]))


def _pointed(found: Scene) -> list[Mark]:
    return [mark for mark in found.marks if mark.point is not None]


def _feet(found: Scene, placed: Sheet) -> list[tuple[float, float]]:
    return [placed.flat(mark.point) for mark in found.marks if mark.point is not None]


def _described(found: Scene, report: Document, placed: Sheet | None) -> str:
    counts = report["counts"]
    scale = f" Scale 1:{placed.scale}." if placed is not None else ""
    return (
        f"{len(found.places)} places, {len(found.equipment)} pieces of equipment with a box or point of their own, "
        f"{len(found.moving)} moving parts, {len({line.name for line in found.routes})} circuits; "
        f"{sum(counts['breach'].values())} breaches, {counts['unproven']} unproven.{scale} "
        f"The lists after the drawing say in words what it shows. {report['caution']}"
    )


def _patterns() -> str:
    line = element("path", None, d="M0,3 L3,0", class_="hatch")
    return element("defs", element("pattern", line, id="sweep", width=3, height=3, patternUnits="userSpaceOnUse"))


# --- the first sheet


def _first_sheet(
    found: Scene,
    report: Document,
    view: str,
    title: str,
    area: Frame,
    placed: Sheet | None,
    flown: list[Flag],
    sheets: int,
) -> Iterator[str]:
    yield _header(report, title, found, placed, view)
    if placed is None:
        words = "Nothing to draw: the file gives no place or equipment a box. Lists follow."
        yield text(MARGIN, area.y + 10.0, words, "head")
    else:
        yield "".join((
            '<g role="img" aria-labelledby="title desc">', *_ruler(found, placed, area), *_vehicle(found, placed),
            *_places(found, placed), *_services(found, placed), *_moving(found, placed), *_routes(found, placed),
            *_equipment(found, placed), *_names(found, placed, area, flown), *_flags(flown), "</g>\n",
        ))  # fmt: skip
        yield key(found, TALL - FOOT - KEY + 4.0) + "\n"
    yield _footer(report, 1, sheets) + "\n"


def _header(report: Document, title: str, found: Scene, placed: Sheet | None, view: str) -> str:
    scale = f"1:{placed.scale}" if placed is not None else "no scale"
    nose = "The nose points to the left" + (", the right side is above." if view == "plan" else ".")
    notes = [f"Scale {scale} on A4. {nose}"]
    notes.append("Lengths in metres, along the axes of the design file.")
    if found.envelope is None:
        notes.append("The file gives no envelope, so the outline of the vehicle is not drawn.")
    if not found.axes_told:
        notes.append("The file does not say where its axes point: x is taken rearward, y to the right.")
    pieces = [text(MARGIN, MARGIN + 4.0, shortened(title, 4.4, WIDE - 2 * MARGIN, bold=True), "title")]
    pieces.append(text(MARGIN, MARGIN + 8.5, " ".join(notes), "small quiet"))
    box = Frame(MARGIN, MARGIN + 11.0, WIDE - 2 * MARGIN, 10.5)
    pieces.append(element("rect", None, class_="frame", x=box.x, y=box.y, width=box.wide, height=box.tall))
    limits = (
        "Routes join places in the order of the run; they do not show where a cable is fixed. "
        "What has no box is not drawn. A part without a flag is not thereby in order."
    )
    told = [(line, "small strong") for line in lines(report["caution"], 2.3, box.wide - 4.0, bold=True)]
    told += [(line, "small") for line in lines(limits, 2.3, box.wide - 4.0)]
    for index, (line, class_) in enumerate(told):
        pieces.append(text(box.x + 2.0, box.y + 3.2 + 2.9 * index, line, class_))
    return group(pieces) + "\n"


def _footer(report: Document, sheet_number: int, of: int) -> str:
    stamp = (
        f"{report['design']['file'].rpartition('/')[2]}  sha256 {report['design']['sha256'][:16]}   "
        f"rules {report['rulebook']['sha256'][:16]}, code {report['rulebook']['code']}   fitout {report['version']}"
    )
    y = TALL - 5.0
    return group([
        text(MARGIN, y, shortened(stamp, 2.3, 230.0), "small quiet"),
        text(WIDE - MARGIN, y, f"sheet {sheet_number} of {of}", "small quiet", text_anchor="end"),
    ])  # fmt: skip


def _ruler(found: Scene, placed: Sheet, area: Frame) -> Iterator[str]:
    """Metres along the vehicle, and across it or up, as the file counts them."""
    step = 1000.0 / placed.scale
    every = 1 if step >= 12 else 2 if step >= 6 else 5
    across = "y" if placed.view == "plan" else "z"
    right, low = area.x + area.wide, area.y + area.tall
    for metre in range(-60, 61, every):
        x = placed.flat((float(metre), 0.0, 0.0))[0]
        if area.x - 0.1 <= x <= right + 0.1:
            yield path([(x, low + 0.8), (x, low + 2.0)], class_="hair")
            yield text(x, low + 4.4, f"x = {metre}" if metre == 0 else str(metre), "small quiet", text_anchor="middle")
        y = placed.flat((0.0, float(metre), float(metre)))[1]
        if area.y - 0.1 <= y <= low + 0.1:
            yield path([(area.x - 3.0, y), (area.x - 1.8, y)], class_="hair")
            words = f"{across} = {metre}" if metre == 0 else str(metre)
            yield text(area.x - 3.5, y + 0.8, words, "small quiet", text_anchor="end")


def _vehicle(found: Scene, placed: Sheet) -> Iterator[str]:
    if found.envelope is None:
        return
    frame = placed.frame(found.envelope)
    yield box(frame, "envelope", "the vehicle", round_=1.5)
    for x in found.axles:
        at = placed.flat((x, 0.0, 0.0))[0]
        yield path([(at, frame.y - 1.0), (at, frame.y + frame.tall + 1.0)], class_="axle")
        yield text(at + 0.6, frame.y + frame.tall - 0.8, "axle", "small quiet name")


def _places(found: Scene, placed: Sheet) -> Iterator[str]:
    """Large ones first, so that the small ones lie on top."""
    for shape in sorted(found.places, key=lambda one: -placed.frame(one).wide * placed.frame(one).tall):
        class_ = "skin" if shape.kind in OPEN_KINDS else "place"
        yield box(placed.frame(shape), class_ + (" doubt" if shape.doubtful else ""), f"{shape.name}: {shape.kind}")


def _services(found: Scene, placed: Sheet) -> Iterator[str]:
    for line in found.services:
        points = [placed.flat(point) for point in line.points]
        yield group([element("title", escaped(f"{line.name}: {line.band}")), path(points, class_="service")])


def _moving(found: Scene, placed: Sheet) -> Iterator[str]:
    for part in found.moving:
        way, stowed = placed.frame(part.way), placed.frame(part.stowed)
        words = f"{part.name}: {travels(part, found)}"
        yield element("rect", element("title", escaped(words)), class_="way", fill="url(#sweep)", x=way.x, y=way.y,
                      width=way.wide, height=way.tall)  # fmt: skip
        yield box(stowed, "stowed", f"{part.name}, stowed")
        yield from _arrow(part, placed)


def _arrow(part: Sweep, placed: Sheet) -> Iterator[str]:
    """From the middle of the stowed part as far as it travels; nothing where it moves towards the eye."""
    if not part.along:
        return
    axis, sense = "xyz".index(part.along[-1]), -1.0 if part.along.startswith("-") else 1.0
    far = list(part.stowed.middle)
    grows = part.way.high[axis] - part.stowed.high[axis] if sense > 0 else part.stowed.low[axis] - part.way.low[axis]
    far[axis] += sense * grows
    (x1, y1), (x2, y2) = placed.flat(part.stowed.middle), placed.flat((far[0], far[1], far[2]))
    reach = ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5
    if reach < 2.0:
        return
    ux, uy = (x2 - x1) / reach, (y2 - y1) / reach
    yield path([(x1, y1), (x2 - 1.6 * ux, y2 - 1.6 * uy)], class_="arrow")
    tip = ((x2, y2), (x2 - 2.4 * ux - uy, y2 - 2.4 * uy + ux), (x2 - 2.4 * ux + uy, y2 - 2.4 * uy - ux))
    yield element("polygon", None, class_="tip", points=" ".join(f"{number(x)},{number(y)}" for x, y in tip))


def _routes(found: Scene, placed: Sheet) -> Iterator[str]:
    """Each stretch once for each band of voltage, however many circuits take it."""
    hops: dict[tuple[str, tuple[float, float], tuple[float, float]], list[str]] = {}
    for line in found.routes:
        band = BANDS[line.band][0]
        spots = [_shifted(placed.flat(point), APART[band]) for point in line.points]
        for a, b in pairwise(spots):
            hops.setdefault((band, min(a, b), max(a, b)), []).append(line.name)
    for (band, a, b), names in hops.items():
        points = [a, (b[0], a[1]), b] if abs(a[0] - b[0]) > 0.3 and abs(a[1] - b[1]) > 0.3 else [a, b]
        words = element("title", escaped(", ".join(dict.fromkeys(names))))
        core = [path(points, class_="core")] if band == "high" else []
        yield group([words, path(points, class_=f"route {band}"), *core])


def _shifted(spot: tuple[float, float], by: float) -> tuple[float, float]:
    return round(spot[0] + by, 2), round(spot[1] + by, 2)


def _equipment(found: Scene, placed: Sheet) -> Iterator[str]:
    for shape in found.equipment:
        frame = placed.frame(shape)
        words = f"{shape.name}: {shape.kind}"
        if frame.wide < 0.8 and frame.tall < 0.8:
            x, y = frame.middle
            yield element("circle", element("title", escaped(words)), class_="body", cx=x, cy=y, r=0.9)
        else:
            yield box(frame, "body doubt" if shape.doubtful else "body", words)


def _names(found: Scene, placed: Sheet, area: Frame, flown: list[Flag]) -> Iterator[str]:
    """Equipment is named before places, small before large: what has least choice chooses first."""
    bodies = [(shape.name, BODY_TYPE, placed.frame(shape), "small") for shape in found.equipment]
    bodies += [(line.name, BODY_TYPE, _first(placed, line), "small") for line in found.services]
    sweeps = [(f"{part.name} {travels(part, found)}", BODY_TYPE, placed.frame(part.way), "small strong")
              for part in found.moving]  # fmt: skip
    rooms = [(shape.name, PLACE_TYPE, placed.frame(shape), "quiet") for shape in found.places]
    every = sorted(bodies + sweeps, key=_area) + sorted(rooms, key=_area)
    soft = [frame for _, _, frame, _ in bodies]
    taken = [flag.frame for flag in flown] + [Frame(f.foot[0] - 0.6, f.foot[1] - 0.6, 1.2, 1.2) for f in flown]
    for words, size, around, class_ in every:
        frame = settle(beside(words, size, around, bold="strong" in class_), taken, soft, area)
        taken.append(frame)
        yield text(frame.x, frame.y + size * 0.9, words, f"name {class_}")


def _first(placed: Sheet, line: Line) -> Frame:
    x, y = placed.flat(line.points[0])
    return Frame(x, y, 0.1, 0.1)


def _area(named: tuple[str, float, Frame, str]) -> tuple[float, str]:
    return named[2].wide * named[2].tall, named[0]


def _flags(flown: list[Flag]) -> Iterator[str]:
    for flag in flown:
        frame, (x, y) = flag.frame, flag.foot
        edge = frame.y + frame.tall if frame.y < y else frame.y
        yield path([(frame.middle[0], edge), (x, y)], class_="leader")
        yield element("circle", None, class_="dot", cx=x, cy=y, r=0.6)
    for flag in flown:
        frame, word = flag.frame, flag.mark.signal.lower()
        yield box(frame, f"flag {word}", f"{flag.number} {flag.mark.signal}: {flag.mark.name}", 0.6)
        yield text(frame.middle[0], frame.y + 3.2, f"{flag.number} {flag.mark.signal}", f"word on-{word}",
                   text_anchor="middle", font_size=FLAG_TYPE)  # fmt: skip
