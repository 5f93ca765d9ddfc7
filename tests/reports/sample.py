"""A small report written by hand, with every kind of finding and text that tries to break out of each format."""

from __future__ import annotations

import copy
from typing import Any

from checker.reports.caution import CAUTION, DEFERRAL
from checker.reports.document import Document, FindingData, Need

FILE = "examples/gravel-van.fitout.yaml"


def finding(rule: str, verdict: str, signal: str, kind: str, name: str, line: int, **more: Any) -> FindingData:
    """A finding with everything left out that `more` does not give."""
    base: FindingData = {
        "key": f"{rule}:{kind}:{name}",
        "rule": rule,
        "verdict": verdict,
        "signal": signal,
        "about": {"kind": kind, "id": name},
        "where": {"file": FILE, "line": line, "column": 3},
        "title": f"Title of {rule}",
        "says": "",
        "working": [],
        "why": "",
        "mend": "",
        "sources": [],
        "covers": [],
        "needs": [],
        "assumes": [],
        "under": None,
        "departure": None,
    }
    return {**base, **more}  # type: ignore[typeddict-item]


THIN = finding(
    "device-protects-conductor", "breach", "DANGER", "conductor", "galley-feed", 41,
    title="The protective device lets through more than the conductor can carry",
    says="F7 lets through 80 A where galley-feed carries 61 A.",
    working=[
        "require: device.rating <= conductor.carrying_capacity (no)",
        "  device.rating (80 A) <= conductor.carrying_capacity (61 A): no",
        "limit for device share of capacity = 100 % (au-nz; a source)",
        "rating of F7 = 80 A (given in the design file)",
        "  equipment.F7.rating: 80 A (line 31)",
        "carrying capacity of galley-feed = 61 A (lower of table and heat balance)",
        "  table 98 A × 0.62 (ambient) = 61 A",
        "  area of galley-feed = 10 mm2 (given in the design file)",
        "    cables.red-10.size: 10 mm2 (line 12)",
    ],
    why="A conductor without a device below its carrying capacity becomes the fuse, inside the furniture.",
    mend="Fit a device of at most 61 A, or a conductor that carries 80 A.",
    sources=[
        "IEC 60364-4-43, 433.1, 2008 (from memory)",
        "33 CFR 183.455, (c), current",
    ],
    covers=["device-rating-not-above-conductor-capacity"],
    assumes=["cables.red-10.insulation", *(f"circuits.c{number}.in parallel" for number in range(1, 9))],
)  # fmt: skip

DROP = finding(
    "drop-within-limit", "breach", "NOTICE", "conductor", "galley-feed", 41,
    title="The conductor loses more voltage than the limit",
    says="galley-feed loses 3.05 % at 30 A; the limit used is 3 %.",
    under="device-protects-conductor:conductor:galley-feed",
)  # fmt: skip

NASTY = finding(
    "terminal-covered", "breach", "CAUTION", "terminal", "bar-48.+", 77,
    title="A live terminal of more than 30 V stands open <script>alert(1)</script> | *bold* `tick` \x1b[31mred\u202e",
    says="bar-48 + is at 58.4 V & has no cover; a `tool` dropped on it [link](http://x) ends \"badly\" ]]> --> 'so'.",
    mend="Cover it.",
    sources=["Workshop habit (common practice, no source)"],
)  # fmt: skip

LENGTH: Need = {"path": "circuits.heater-feed.run", "what": "holds `unknown`", "line": 53, "column": 10}
SIZE: Need = {"path": "cables.old-red.size", "what": "not written", "line": 14, "column": 3}

HEATER_DROP = finding(
    "drop-within-limit", "unproven", "NOTICE", "conductor", "heater-feed", 52,
    title="The conductor loses more voltage than the limit", needs=[SIZE],
    working=["require: conductor.drop <= limits.voltage_drop (undecided)"],
)  # fmt: skip
HEATER_THIN = finding(
    "device-protects-conductor", "unproven", "DANGER", "conductor", "heater-feed", 52,
    title="The protective device lets through more than the conductor can carry", needs=[SIZE],
    working=["require: device.rating <= conductor.carrying_capacity (undecided)"],
)  # fmt: skip
HEATER_FAR = finding(
    "fuse-near-source", "unproven", "WARNING", "approach", "bank>heater-feed", 52,
    title="The first device stands too far from its source", needs=[LENGTH],
)  # fmt: skip
BROKEN = finding(
    "enclosure-heat", "unproven", "CAUTION", "place", "seat-base", 20,
    title="The closed place gets too hot",
    says="Could not be judged, because a computation broke: ZeroDivisionError: division by zero",
)  # fmt: skip
ASIDE = finding(
    "protection-accessible", "set aside", "DANGER", "device", "F1", 30,
    title="A protective device cannot be reached",
    says="F1 lies behind a panel fixed by 8 screws.",
    departure={
        "reason": "the seat base is riveted; the isolator before it is within reach",
        "by": "workshop",
        "reference": "licence AB-1234, note 4",
        "date": "2026-11-02",
    },
)  # fmt: skip
MET = finding("device-protects-conductor", "met", "DANGER", "conductor", "bank-main", 35)
ELSEWHERE = finding("inverter-bond", "not applicable", "DANGER", "equipment", "F1", 30)


def sample(*, everything: bool = False) -> Document:
    """The report; with what is met and not applicable when `everything`."""
    listed = [THIN, DROP, NASTY, HEATER_THIN, HEATER_FAR, HEATER_DROP, BROKEN, ASIDE]
    return {
        "report": 1,
        "caution": CAUTION,
        "design": {"file": FILE, "title": "Gravel van, 12 V & <48 V>", "sha256": "a" * 64},
        "rulebook": {"rules": 7, "code": "au-nz", "sha256": "b" * 64},
        "version": "0.1.0",
        "counts": {
            "breach": {"DANGER": 1, "WARNING": 0, "CAUTION": 1, "NOTICE": 1},
            "unproven": 4,
            "set_aside": 1,
            "met": 1,
            "not_applicable": 1,
        },
        "not_checked": ["Not checked: what only the vehicle can show, such as workmanship, tightness and damage."],
        "findings": copy.deepcopy([*listed, MET, ELSEWHERE] if everything else listed),
        "deferral": DEFERRAL,
    }


def nothing_found() -> Document:
    """A report without a finding."""
    empty = sample()
    empty["findings"] = []
    empty["counts"] = {
        "breach": {"DANGER": 0, "WARNING": 0, "CAUTION": 0, "NOTICE": 0},
        "unproven": 0,
        "set_aside": 0,
        "met": 9,
        "not_applicable": 4,
    }
    return empty
