"""Space, heat, gas and mass of a crowded vehicle: 300 pieces of equipment with boxes, 1,000 stretches of cable."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median
from time import process_time

from checker.facts.catalogue import CATALOGUE
from checker.facts.subject import Facts
from checker.reading import read_text
from checker.reports.document import document
from checker.reports.plan_drawing import plan_drawing
from checker.review import review
from checker.rulebook import load_rulebook
from tests.benchmarks.timing import Row, table

PIECES, CIRCUITS, STRETCHES = 300, 100, 10
MODULES = (
    "axles", "bodies", "chamber", "conductor_laid", "crash", "distances", "equipment", "fill", "gassing", "loop",
    "loop_way", "masses", "moving", "pass_", "place", "place_heat", "run_way", "scope", "service_room", "services",
    "space", "sweep",
)  # fmt: skip
"""Modules of facts about space, heat, gas and mass."""
HEAD = """
fitout: 1
title: Crowded vehicle
code: au-nz
vehicle:
  kind: motorhome
  envelope: {at: [-1 m, -1.2 m, 0 m], size: [12 m, 2.4 m, 3.2 m]}
  axes: {origin: front axle centre at ground, x: rearward, y: to the right, z: up}
  masses: {gross: 7500 kg, front limit: 2700 kg, rear limit: 5200 kg, wheelbase: 4.6 m, before: {front: 2310 kg, rear: 3980 kg}, payload kept: 600 kg}
cables: {wire: {size: 6 mm2, cores: 2, outer: 9 mm}}
services: {pipe: {carries: gas, along: [[0 m, 1 m, 0.3 m], [5 m, 1 m, 0.3 m], [5 m, -1 m, 0.3 m]], outer: 10 mm}}
moving:
  slide: {box: {at: [3 m, 0.2 m, 0.9 m], size: [2 m, 0.9 m, 1.9 m]}, travel: {along: y, distance: 0.9 m}, clearance: 20 mm}
  bed-lift: {box: {at: [7 m, -1 m, 1.8 m], size: [2 m, 2 m, 0.3 m]}, travel: {along: -z, distance: 0.9 m}, clearance: 20 mm}
  door: {box: {at: [9 m, 1.1 m, 0.5 m], size: [0.7 m, 0.05 m, 1.9 m]}, hinge: {at: [9 m, 1.1 m, 0.5 m], along: z}, clearance: 10 mm}
"""  # noqa: E501


def crowded() -> str:
    """The text of a design with `PIECES` boxes in 31 places and `CIRCUITS` runs of `STRETCHES` stretches."""
    return "\n".join([HEAD.strip(), *_places(), *_equipment(), *_circuits(), "modes: {parked: {engine: stopped}}", ""])


def _places() -> Iterator[str]:
    yield "places:\n  cabin: {kind: living space}"
    for index in range(30):
        x, y = -0.9 + 0.38 * index, -1.1 if index % 2 else 0.7
        yield (
            f"  bay-{index}: {{kind: locker, inside: cabin, box: {{at: [{x:.2f} m, {y} m, 0.4 m], "
            "size: [0.36 m, 0.4 m, 0.6 m]}, vents: {low: 60 cm2, high: 60 cm2, rise: 0.4 m, to: outside}}"
        )


def _equipment() -> Iterator[str]:
    yield "equipment:"
    yield "  house: {kind: battery, chemistry: lithium iron phosphate, nominal: 12 V, capacity: 100 Ah, place: bay-0}"
    for index in range(PIECES - 1):
        bay, slot = index % 30, index // 30
        x, y = -0.9 + 0.38 * bay, -1.1 if bay % 2 else 0.7
        at = f"[{x + 0.03:.2f} m, {y + 0.03:.2f} m, {0.4 + 0.05 * slot:.2f} m]"
        box = f"box: {{at: {at}, size: [0.2 m, 0.2 m, 0.04 m]}}, mass: 1 kg, place: bay-{bay}"
        if slot == 0:
            dc = "dc: {nominal: 12 V, current: 10 A}, service: {top: 0.01 m}"
            yield f"  item-{index}: {{kind: charger, {dc}, {box}}}"
        else:
            yield f"  item-{index}: {{kind: lamp, power: 10 W, {box}}}"


def _circuits() -> Iterator[str]:
    yield "circuits:"
    for index in range(CIRCUITS):
        run = ", ".join(f"0.{1 + (index + step) % 9} m via bay-{(index + step) % 30}" for step in range(STRETCHES))
        yield f"  run-{index}: {{from: house, to: item-{30 + index}, run: [{run}], cable: wire}}"


def every_fact(text: str) -> int:
    """Every fact of those modules for every subject; how many there were."""
    facts = Facts(read_text(text))
    done = 0
    for kind in CATALOGUE.kinds:
        wanted = [spec.name for spec in CATALOGUE.facts(kind) if spec.function.__module__.rpartition(".")[2] in MODULES]
        for subject in facts.subjects(kind) if wanted else ():
            for name in wanted:
                getattr(subject, name)
                done += 1
    return done


def rows(rounds: int = 3) -> list[Row]:
    """Seconds of the processor, so that other work on the machine does not count, for the facts and for a review."""
    text = crowded()
    count = every_fact(text)
    found = []
    for _ in range(rounds):
        start = process_time()
        every_fact(text)
        found.append(process_time() - start)
    design, rulebook = read_text(text), load_rulebook()
    start = process_time()
    report = document(review(design, rulebook))
    reviewed = process_time()
    sum(len(piece) for piece in plan_drawing(design, report, "plan"))
    return [
        Row("space, heat, gas, mass: 300 boxes, 1,000 stretches", median(found), "s", 1.0, f"{count} facts"),
        Row("review of that vehicle against all rules", reviewed - start, "s", None, ""),
        Row("drawing of that vehicle", process_time() - reviewed, "s", 1.0, ""),
    ]


if __name__ == "__main__":
    print(table(rows()))
