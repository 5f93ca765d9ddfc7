"""What the country gives and asks: voltage and frequency of its sites, and sources aboard that are like them."""

from __future__ import annotations

from typing import Any

from checker.design.vocabulary.vehicle import CODES
from checker.facts.catalogue import fact
from checker.facts.mains_voltage import generator_voltage, site_voltage
from checker.facts.subject import Subject
from checker.quantities import Unknown, divide

LIKE_THE_SITES = ("generator", "inverter", "inverter-charger")
"""Sources aboard on which the same appliances run as on the shore; a transformer may be there to differ."""


@fact("inlet", "site_frequency", unit="Hz", says="Mains frequency of the sites.")
def site_frequency(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "supply.frequency")


def _has_inlet(s: Subject) -> bool:
    return any(item.kind == "shore inlet" for item in s.facts.network.equipment.values())


@fact("ac_source", "stands_in_for_shore", type="yes/no", says="It feeds aboard what an inlet feeds at other times.",
      method="a generator or inverter, in a vehicle with a shore inlet")  # fmt: skip
def stands_in_for_shore(s: Subject) -> bool:
    return s.item.equipment.kind in LIKE_THE_SITES and _has_inlet(s)


@fact("ac_source", "output_voltage", unit="V", says="Voltage it gives; none for what is no generator and no inverter.")
def output_voltage(s: Subject) -> Any:
    item = s.item.equipment
    if item.kind not in LIKE_THE_SITES:
        return None
    if item.kind != "generator":
        return s.read(item, "ac.voltage")
    return generator_voltage(s, item, 1.0)


@fact("ac_source", "voltage_over_site", unit="ratio", says="Voltage it gives over that of the sites.")
def voltage_over_site(s: Subject) -> Any:
    given = s.output_voltage
    return None if given is None else divide(given, site_voltage(s, 1.0))


@fact("ac_source", "frequency", unit="Hz", says="Frequency it gives; none for what is no generator and no inverter.")
def frequency(s: Subject) -> Any:
    item = s.item.equipment
    if item.kind not in LIKE_THE_SITES:
        return None
    return s.read(item, "frequency" if item.kind == "generator" else "ac.frequency")


@fact("ac_source", "site_frequency", unit="Hz", says="Mains frequency of the sites.")
def source_site_frequency(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "supply.frequency")


@fact("ac_source", "code", words=CODES, says="The code of practice whose limits apply.")
def code(s: Subject) -> Any:
    return s.use("code", s.facts.design.code)


OF_VEHICLES = ("recreational vehicle", "vehicle generator")


@fact("ac_source", "listed_for_vehicles", type="yes/no",
      says="A standard or approval is told that is made for generators of vehicles; none for other sources.",
      method="`EGS-1`, recreational vehicle or vehicle generator among its standards and approvals; another that names "
      "a vehicle is open",
      source="ANSI/RVIA EGS-1, engine generator sets of recreational vehicles (from memory)")  # fmt: skip
def listed_for_vehicles(s: Subject) -> Any:
    item = s.item.equipment
    if item.kind != "generator":
        return None
    told = [s.read(item, key) for key in ("standard", "approval")]
    texts = [text for one in told if isinstance(one, tuple) for text in one if isinstance(text, str)]
    if any("EGS-1" in text or any(words in text.casefold() for words in OF_VEHICLES) for text in texts):
        return True
    named = next((text for text in texts if "vehicle" in text.casefold()), None)
    if named is not None:
        return Unknown(f"whether `{named}` is about generators built into vehicles is not known")
    return next((one for one in told if isinstance(one, Unknown)), False)
