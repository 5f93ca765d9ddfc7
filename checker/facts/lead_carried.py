"""Shore leads as they are carried: one for each inlet, its plugs, the side at which it enters."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.mains_circuit import earth_for
from checker.facts.subject import Subject
from checker.quantities import Number, Unknown, corners, equal, less_equal, some

AT_REAR_M = 0.3
"""An inlet that near the rear is reached from behind: common practice, no source."""


@fact("lead", "plugs_as_made", type="yes/no", says="Neither plug nor connector was filed, bent or rewired to fit.")
def plugs_as_made(s: Subject) -> Any:
    return s.read(s.item, "plugs as made")


@fact("lead", "enters_at_rear", type="yes/no", says="The inlet it is put into faces the rear of the vehicle.",
      method="the inlet nearest to the rear lies within 0.3 m of it", source="common practice, no source")  # fmt: skip
def enters_at_rear(s: Subject) -> Any:
    found = [less_equal(inlet.distance_from_rear, AT_REAR_M) for inlet in s.facts.subjects("inlet")]
    return some(found) if found else Unknown("there is no shore inlet")


@fact("lead", "fits_an_inlet", type="yes/no", says="Its socket has the shape of a shore inlet of the vehicle.",
      method="shape of the lead and of each inlet; with no inlet there is nothing to fit")  # fmt: skip
def fits_an_inlet(s: Subject) -> Any:
    shape = s.read(s.item, "shape")
    inlets = [s.read(inlet.item, "shape") for inlet in s.facts.subjects("inlet")]
    return some(equal(shape, one) for one in inlets) if inlets else True


@fact("lead", "earth_area", unit="mm2", says="Cross-section of its earth core.",
      method="the size that its cable tells for the earth, else that of its cores")  # fmt: skip
def earth_area(s: Subject) -> Any:
    name = s.read(s.item, "cable")
    cable = s.facts.design.cables.get(name) if isinstance(name, str) else None
    return s.area if cable is None or not cable.has("earth size") else s.read(cable, "earth size")


@fact("lead", "earth_area_needed", unit="mm2", says="Least cross-section of an earth core for its line.",
      method="as circuit.earth_area_needed", source="IEC 60364-5-54, Table 54.2, 2011 (from memory)")  # fmt: skip
def earth_area_needed(s: Subject) -> Number:
    return corners(earth_for, s.area)


@fact("design", "leads_missing", unit="count", says="Shore inlets for which no shore lead is carried.",
      method="inlets less leads, of several inlets shape by shape; a survey may have missed a lead")  # fmt: skip
def leads_missing(s: Subject) -> Any:
    leads, inlets = s.facts.subjects("lead"), s.facts.subjects("inlet")
    missing: Any = float(max(0, len(inlets) - len(leads)))
    if len(inlets) > 1 and len(leads) >= len(inlets):
        missing = _by_shape(s, [one.item for one in inlets], [one.item for one in leads])
    none_missing = isinstance(missing, float) and missing == 0.0
    if not none_missing and equal(s.item.purpose.value, "survey") is not False:
        return Unknown("a shore lead was perhaps not seen")
    return missing


def _by_shape(s: Subject, inlets: list[Any], leads: list[Any]) -> Any:
    """How many inlets have no lead of their shape among as many leads; unknown while a shape is."""
    wanted, carried = [s.read(one, "shape") for one in inlets], [s.read(one, "shape") for one in leads]
    if not all(isinstance(one, str) for one in (*wanted, *carried)):
        return Unknown("which lead fits which inlet is not told")
    return float(sum(max(0, wanted.count(shape) - carried.count(shape)) for shape in dict.fromkeys(wanted)))
