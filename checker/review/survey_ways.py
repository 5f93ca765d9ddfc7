"""How an entry is found out: what to look at, with which instrument, what to make dead first, how to write the answer.

The instruments and the order of work are common trade practice, no source.
"""

from __future__ import annotations

from typing import NamedTuple

from checker.design.keys_page import takes
from checker.design.model import Circuit, Equipment
from checker.design.samples import sample
from checker.facts.inspected import ASKED
from checker.review.survey_entries import INSTRUMENTS, PAPERS, RUN, Entry, is_storage

LOOK_CARE = "Look only: nothing is opened or touched for it."
PAPER_CARE = "Nothing to isolate."
MAINS_CARE = (
    "Mains: pull the shore lead, stop the generator, switch the inverter off and open its battery switch, and prove "
    "every pole dead before a cover comes off. Work behind covers is for a licensed electrician."
)
BATTERY_CARE = (
    "A battery cannot be switched off at its posts: rings and watch off, insulated tools, the other pole covered; open "
    "the isolator and prove dead what lies behind it before touching."
)
DC_CARE = "Open the isolator of the battery and prove dead before touching bare metal; rings and watch off."
LIVE_CARE = "Taken while live: only by a licensed electrician, with fused leads; covers off no longer than it takes."
DEAD_TEST_CARE = (
    "Taken on the dead installation: pull the shore lead, stop every source aboard, prove dead on every pole first. "
    "For a licensed electrician."
)


class Way(NamedTuple):
    """How one entry is found out; `write` is what to put into the file."""

    look: str
    instrument: str
    care: str
    write: str


SHEET = frozenset(
    (
        "curve", "breaking capacity", "fault current", "fault time", "short circuit current", "internal resistance",
        "transient level", "isolation", "standard", "approval", "reverse drain", "ripple", "at fault", "efficiency",
        "leakage waveform", "voltage coefficient", "hot output", "set voltage", "smart", "limits itself", "waveform",
        "stall", "insulation", "flame retardant", "series fuse", "unloaded battery harm", "idle", "no load", "allows",
        "own cell", "family", "cells", "chemistry", "case", "heat at full", "input capacitance", "polarised",
        "breaks load", "isolates", "trip free", "thermal cut-out", "rated", "torque", "limit", "type", "degree",
        "terminal limit",
        "power",
        "current", "nominal", "capacity", "rating", "voltage", "running", "frequency", "trips at", "drop", "level",
        "open voltage", "best voltage", "short current", "best current", "efficiency", "above", "to zero at", "time",
    )
)  # fmt: skip
SHEET_GROUPS = (
    "bms",
    "window",
    "derates",
    "load dump",
    "start",
    "input",
    "output",
    "surge",
    "dc",
    "ac",
    "sides",
    "bond",
)
HANDS_ON = frozenset(
    ("cable", "torqued", "stud", "holds", "cover", "insulated", "size", "return.size", "earth size", "strands")
)

TESTS = {
    "neutral-earth link": Way(
        "whether neutral and earth of an outlet are joined, in every mode and with the shore lead out",
        "a low-resistance ohmmeter with the sources off; live confirmation by a licensed electrician", DEAD_TEST_CARE,
        "readings: {test: neutral-earth link, mode: {mode}, result: one}  # or none, several",
    ),
    "insulation resistance": Way(
        "live conductors together against earth, at the distribution board, electronics unplugged",
        "an insulation tester of 500 V direct current", DEAD_TEST_CARE,
        "readings: {test: insulation resistance, at: …, resistance: 40 MΩ, voltage: 500 V}",
    ),
    "polarity in": Way(
        "live, neutral and earth at an outlet, in that mode", "an installation tester or a proved outlet tester",
        LIVE_CARE, "readings: {test: polarity, mode: {mode}, result: right}  # or wrong",
    ),
    "mode change": Way(
        "polarity, the link of neutral and earth and the bare inlet pins while the vehicle is changed into that mode",
        "a proved two-pole voltage tester and an installation tester", LIVE_CARE,
        "readings: {test: mode change, mode: {mode}, result: right}  # or wrong",
    ),
    "loop impedance": Way(
        "the earth-fault loop at the outlet farthest from the board", "a loop tester", LIVE_CARE,
        "readings: {test: loop impedance, at: …, resistance: 0.6 Ω}",
    ),
    "polarity": Way(
        "live, neutral and earth at the inlet and at each outlet", "an installation tester or a proved outlet tester",
        LIVE_CARE, "readings: {test: polarity, at: {at}, result: right}  # or wrong",
    ),
    "rcd trip": Way(
        "the time to trip at its rated residual current",
        "a residual-current tester; the test button is no measurement", LIVE_CARE,
        "readings: {test: rcd trip, at: {at}, time: 24 ms, current: 30 mA}",
    ),
    "test button": Way(
        "whether the device opens when its test button is pressed", "a finger; a lamp behind the device", LIVE_CARE,
        "readings: {test: test button, at: {at}, result: right}  # or wrong",
    ),
    "earth continuity": Way(
        "the earth pin of the inlet against the earth of each outlet and against touchable metal",
        "a low-resistance ohmmeter, its leads subtracted", DEAD_TEST_CARE,
        "readings: {test: earth continuity, at: …, resistance: 0.12 Ω}",
    ),
    "function": Way(
        "whether the management warns, stops charging, stops discharging, and stops charging when cold",
        "its own display and a clamp meter", BATTERY_CARE,
        "readings: {test: function, at: …, result: right, tried: [alarm, charge stop, discharge stop, cold stop]}"
        "  # or wrong",
    ),
    "dielectric strength": Way(
        "live parts together against the frame, 900 V for 1 min or 1080 V for 1 s, electronics disconnected",
        "a high-voltage tester with limited current", DEAD_TEST_CARE,
        "readings: {test: dielectric strength, result: right, voltage: 900 V, time: 60 s}  # or wrong",
    ),
    "inlet pins": Way(
        "the bare pins of the shore inlet, lead out, against each other and against the chassis, in that mode",
        "a proved two-pole voltage tester", LIVE_CARE,
        "readings: {test: inlet pins, mode: {mode}, result: right}  # or wrong",
    ),
    "any": Way(
        "voltages and currents in a mode the file knows, as `fitout predict` lists them",
        "a multimeter and a clamp meter", LIVE_CARE, "readings: {mode: …, at: …, voltage: 13.3 V}",
    ),
    "temperature or voltage drop under load": Way(
        "each high-current joint after half an hour near full current",
        "a contact or infrared thermometer, or a millivoltmeter across the joint", LIVE_CARE,
        "readings: {mode: …, at: …, temperature: 41 °C}",
    ),
}  # fmt: skip
ANY_TEST = Way(
    "what the design predicts at this point", "a multimeter and a clamp meter", LIVE_CARE,
    "readings: {mode: …, at: …, voltage: 13.3 V}",
)  # fmt: skip
BY_UNIT = {
    "m": ("the distance itself, along the cable where a cable is meant", "a tape measure", "measured"),
    "kg": ("the thing itself, or its plate", "scales, wheel by wheel for the vehicle", "measured"),
    "°C": ("the air there in the hottest hours of use", "a thermometer that keeps its highest reading", "measured"),
    "cm2": ("the free opening, mesh and louvres taken off", "a rule", "measured"),
    "Ω": ("from stud to stud", "a low-resistance ohmmeter or a millivoltmeter at a known current", "measured"),
    "mΩ": ("from stud to stud", "a low-resistance ohmmeter or a millivoltmeter at a known current", "measured"),
    "N m": ("the joint", "a torque wrench set to what the maker asks", "measured"),
}  # fmt: skip
RUNNING = "running."
# Entries that are read before the keys are, so that no key of the vocabulary stands behind them.
STRUCTURE = {
    "cable": ("a name from cables", "red-70", "cables"),
    "size": ("quantity in mm2", "{is: 70 mm2, basis: read off}", ""),
}
"""Last word of the entry to what it takes, an example, and the section whose names it takes."""


def way_for(
    entry: Entry, mains: bool, looks: tuple[str, ...] = (), named: tuple[str, ...] = (), known: tuple[str, ...] = ()
) -> Way:
    """How to find out `entry`.

    `mains` says that the thing carries mains; `looks` are words of the list of looks, `named` those that rules look for
    in a list, `known` the names in the design that the entry may take.
    """
    if entry.place == INSTRUMENTS:
        return _test(entry.name)
    if looks:
        said = "; ".join(text for _, word, text in ASKED if word in looks)
        write = f"add `{', '.join(looks)}` to papers.inspected, or to papers.found wrong"
        return Way(said, "a lamp and a mirror", LOOK_CARE, write)
    if entry.place == PAPERS:
        return Way(_says(entry), "ask for it, read it", PAPER_CARE, _write(entry, "stated", named, known))
    look, instrument, basis = _by_key(entry)
    return Way(look, instrument, _care(entry, mains), _write(entry, basis, named, known))


def taken(entry: Entry) -> str:
    """What may be written for an entry, in words; empty where only `Way.write` can say it."""
    if entry.key is not None:
        return takes(entry.key).replace("`", "")
    return STRUCTURE.get(entry.name.rpartition(".")[2], ("", "", ""))[0]


def _test(name: str) -> Way:
    for test, way in TESTS.items():
        if name.startswith(test):
            at = name.removeprefix(f"{test} at ") if name.startswith(f"{test} at ") else "…"
            head = test if test.endswith(" in") else f"{test} in"
            mode = name.removeprefix(f"{head} ") if name.startswith(f"{head} ") else "…"
            return way._replace(write=way.write.replace("{at}", at).replace("{mode}", mode))
    return ANY_TEST


def _by_key(entry: Entry) -> tuple[str, str, str]:
    """What to look at, the instrument, and the basis that the answer then has."""
    last = entry.name.rpartition(".")[2]
    group = entry.name.partition(".")[0]
    unit = "m" if entry.name.startswith(RUN) else entry.key.unit if entry.key is not None else ""
    if last in ("size", "earth size", "cable"):
        look = "the print along the sheath; where there is none, the bare strands, never the outside of the insulation"
        return look, "a wire gauge or calliper, a lamp", "read off"
    if group == "settings":
        look = f"the display, the app or the switches of {_thing(entry)}: {_says(entry)}"
        return look, "nothing but the eyes", "read off"
    if last in SHEET or group in SHEET_GROUPS:
        return (
            f"the marking on {_thing(entry)}, then its maker's sheet: {_says(entry)}",
            "a lamp and a camera",
            "datasheet",
        )
    if isinstance(unit, str) and unit in BY_UNIT:
        look, instrument, basis = BY_UNIT[unit]
        return f"{_says(entry)} {look[:1].upper()}{look[1:]}.", instrument, basis
    if entry.key is not None and entry.key.shape in ("box", "point", "points"):
        return (
            f"{_says(entry)} Its least corner and its size, in the axes of the vehicle.",
            "a tape measure",
            "measured",
        )
    return _says(entry), "a lamp and a mirror", "read off"


def _says(entry: Entry) -> str:
    if entry.key is not None:
        return entry.key.says.partition(" Left out:")[0]
    if entry.name.startswith(RUN):
        return f"How long this stretch of {_thing(entry)} is."
    if entry.name.startswith(RUNNING):
        return f"What {entry.name.removeprefix(RUNNING)} draws in the mode {_thing(entry)}."
    return f"{entry.name or entry.path} of {_thing(entry)}."


def _thing(entry: Entry) -> str:
    return entry.item.name if entry.item is not None else entry.path


def _care(entry: Entry, mains: bool) -> str:
    """What to make dead first; in doubt the stricter."""
    if not isinstance(entry.item, Equipment | Circuit) and entry.name.rpartition(".")[2] not in HANDS_ON:
        return LOOK_CARE
    if entry.name.startswith("settings."):
        return LOOK_CARE
    if mains:
        return MAINS_CARE
    return BATTERY_CARE if is_storage(entry.item) else DC_CARE


def section_named(entry: Entry) -> str:
    """The section of the design whose names an entry takes; empty when it takes none."""
    if entry.key is None:
        return STRUCTURE.get(entry.name.rpartition(".")[2], ("", "", ""))[2]
    return entry.key.section if entry.key.shape in ("name", "names") else ""


def _write(entry: Entry, basis: str, named: tuple[str, ...], known: tuple[str, ...]) -> str:
    if entry.name.startswith(RUN):
        place = entry.name.removeprefix(RUN)
        return f"in the run of {_thing(entry)}: 1.2 m via {place}"
    if entry.key is None:
        last = entry.name.rpartition(".")[2]
        return f"{entry.path}: {known[0] if known else STRUCTURE[last][1] if last in STRUCTURE else '…'}"
    example = f"[{', '.join(named)}]" if named and entry.key.shape == "words" else sample(entry.key)
    if known:
        example = known[0] if entry.key.shape == "name" else f"[{known[0]}]"
    if example.startswith(("[", "{")) or basis == "stated":
        return f"{entry.path}: {example}"
    return f"{entry.path}: {{is: {example}, basis: {basis}}}"
