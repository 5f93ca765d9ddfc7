"""An example of each shape, as one would write it: for the schema and for the page of keys."""

from __future__ import annotations

from checker.design.vocabulary.key import Key
from checker.quantities.units import kind_of

BY_SHAPE = {
    "ratio": "0.9",
    "rated voltage": "80 V DC",
    "yes/no": "true",
    "date": "2026-10-30",
    "port": "alternator.d+",
    "box": "{at: [1 m, 0 m, 0.5 m], size: [0.4 m, 0.3 m, 0.2 m]}",
    "point": "[1 m, 0 m, 0.5 m]",
    "points": "[[1 m, 0 m, 0.5 m], [2 m, 0 m, 0.5 m]]",
    "arrangement": "1s3p",
    "degree": "IP44",
}
BY_NAME = {
    "size": "70 mm2", "standard": "[IEC 62619]", "fitout": "1", "unit leads.length": "0.35 m each",
    "throws": "[shore, open, inverter]", "dividers": "[elv side, mains side]", "acceleration": "20 g",
    "built": "2019-06", "editions": "[AS/NZS 3001.2:2022]", "transfer.time": "20 ms", "gap": "10 ms",
    "trips at": "30 mA", "torque": "12 N m", "torqued": "12 N m", "outer": "15.5 mm", "bend": "60 mm",
    "bend moving": "80 mm", "capacity": "100 Ah", "internal resistance": "4 mΩ", "count": "2", "units": "3",
    "own cell": "24 h", "run time": "1 h", "breaking capacity": "20 kA", "mass": "6 kg",
}  # fmt: skip
TEXTS = {
    "title": "Estuary coach", "stud": "M8", "lug": "70-8", "lugs": "25-8", "language": "en", "hold-down": "two straps",
    "sold in": "ie",
    "doubt": "owner says so", "origin": "front axle centre at ground", "licence": "EW-00000", "class": "electrician",
    "by": "fitter", "divider": "elv side", "says": "a night without shore", "electrical": "CoC-000000",
    "gas": "GC-000000", "vehicle": "VC-000000", "risk assessment": "RA-1", "meter": "M2", "about": "F1",
    "rule": "breaking-capacity-at-point", "reason": "the maker gives no figure", "reference": "note 4",
    "screen": "joined to the case", "done": "[bank, solar]", "kept": "[factory 12 V circuits]",
    "excluded": "[gas]", "adaptors": "[15 A to 10 A]", "approval": "[E24]",
}  # fmt: skip
MAPPINGS = {
    "hot output": "{750 rpm: 70 A, 2000 rpm: 150 A}", "curve": "{200 A: 100..1000 s, 1000 A: 0.1..0.3 s}",
    "running": "{fridge: 45 W}", "uses": "{fridge: 24 h, kitchen-outlets: 0.4 kWh}", "set": "{K2: shore}",
}  # fmt: skip
WINDOWS = {"V": "10.5..15 V", "°C": "0..45 °C", "A": "150..500 A"}
SECTION_NAMES = {
    "places": "engine-bay", "equipment": "bar-48", "circuits": "bank-main", "cables": "red-70", "parts": "strip-80",
    "moving": "slide", "looms": "duct-elv", "modes": "driving", "throws": "inverter", "anything": "bar-48",
}  # fmt: skip


def sample(key: Key) -> str:
    """A text that `key` takes."""
    last = key.name.rpartition(".")[2]
    if key.shape in ("text", "texts") and last in TEXTS:
        return TEXTS[last]
    if key.shape in ("curve", "map", "choices"):
        return MAPPINGS[last]
    if key.shape == "word":
        return key.words[0]
    if key.name in BY_NAME or last in BY_NAME:
        return BY_NAME.get(key.name) or BY_NAME[last]
    if key.shape == "words":
        return f"[{', '.join(key.words[:2])}]"
    if key.shape in ("name", "names"):
        name = SECTION_NAMES[key.section]
        return name if key.shape == "name" else f"[{name}]"
    if key.shape == "signal":
        return "engine-run"
    if key.shape == "window":
        return WINDOWS[key.unit]
    if key.shape == "count":
        return "1"
    if key.shape in ("quantity", "quantities"):
        return kind_of(key.unit).example
    return BY_SHAPE[key.shape]
