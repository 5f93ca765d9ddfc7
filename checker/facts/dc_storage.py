"""Batteries of a design as electromotive forces behind resistances: by chemistry, state of charge and size."""

from __future__ import annotations

from checker.circuit.dc_elements import Element, Storage
from checker.circuit.elements import Source
from checker.design.model import Equipment
from checker.facts.dc_amounts import Amount, Case, exactly, number, possible, stated
from checker.facts.dc_plan import Heat, Plan
from checker.outofrange import OutOfRange
from checker.physics.battery import lfp_cell_voltage
from checker.physics.charging import cells_for
from checker.physics.storage import CHARGE_CELL_V, lead_acid_acceptance, lead_acid_cell_voltage
from checker.quantities import Window

LITHIUM = "lithium iron phosphate"
HOUSE_CHARGE = (0.2, 0.7, 0.95)
STARTING_CHARGE = (0.6, 0.9, 1.0)
# Rise of a charging lithium cell above rest at a fifth of its capacity an hour, V: low, likely, high.
LITHIUM_RISE_V = (0.0, 0.03, 0.08)
# Internal resistance of 12 V and 100 Ah, ohm, from usual data of makers [from memory].
USUAL_OHM = {"lithium": (6e-3, 12e-3, 20e-3), "lead": (4e-3, 6e-3, 10e-3)}
WARM_SHARE = 1.5  # resistance that a load of minutes sees over that of the data sheet, at most
COUPLING_OHM = (0.01, 0.03, 0.08)
PRACTICE = "common practice, no source"


def add_storage(plan: Plan) -> None:
    """Every battery, string of a bank, and the plug to a towing vehicle."""
    network = plan.facts.network
    for bank, strings in network.units.items():
        plan.units[bank] = strings
    for source in network.sources:
        if not source.storage or source.system != "dc":
            continue
        if source.equipment.kind in ("battery", "bank"):
            _add_battery(plan, source)
        else:
            _add_coupling(plan, source)


def _add_battery(plan: Plan, source: Source) -> None:
    item = source.equipment
    series, parallel = _arrangement(plan, item)
    one = item.base if item.kind == "bank" and item.base is not None else item
    chemistry = plan.read(one, "chemistry")
    cells = _cells(plan, one, chemistry)
    capacity = possible(number(plan.read(one, "capacity")), 0.0)
    charge = _charge(plan, item)
    if cells is None or not isinstance(chemistry, str):
        nominal = stated(number(plan.read(one, "nominal"))) or exactly(12.0)
        plan.book.lack(f"rested voltage of {item.name} (chemistry, nominal voltage or cells)")
        emf = Amount(nominal.likely, 0.85 * nominal.low, 1.2 * nominal.high, False)
        rise = exactly(0.0)
    elif chemistry == LITHIUM:
        emf = _settled(plan, item, _lithium(charge).times(cells))
        rise = _lithium_rise(plan, cells, capacity)
    elif "lead" in chemistry:
        emf = _settled(plan, item, _lead(charge).times(cells))
        rise = _lead_rise(plan, item, cells, capacity, charge)
    else:
        plan.book.lack(f"rested voltage of {chemistry} by state of charge ({item.name})")
        nominal = stated(number(plan.read(one, "nominal"))) or exactly(12.0)
        emf, rise = Amount(nominal.likely, 0.85 * nominal.low, 1.2 * nominal.high, False), exactly(0.0)
    ohm = _ohm(plan, one, item, capacity, chemistry)
    name = plan.name(item.name)
    plan.sources.append(name)

    def make(case: Case, heat: Heat) -> Element:
        inner = ohm.of(case, raises=False) * series / parallel
        up = rise.of(case, raises=True) * series / parallel
        return Storage(name, source.live, source.returns, emf.of(case, raises=True) * series, inner, inner + up)

    plan.add(make)


def _settled(plan: Plan, item: Equipment, emf: Amount) -> Amount:
    """The one rested voltage of all units of a bank: units that stay joined settle to the same."""
    bank = item.name.rsplit(".unit-", 1)[0]
    if bank == item.name:
        return emf
    plan.book.assume(f"the units of {bank}, which stay joined, have settled to one rested voltage; {PRACTICE}")
    return plan.settled.setdefault(bank, emf)


def _arrangement(plan: Plan, item: Equipment) -> tuple[float, float]:
    """Units in series and strings in parallel behind one pair of terminals; a unit written out is a string."""
    bank = item if item.kind == "bank" else item.base if item.base is not None and item.base.kind == "bank" else None
    owner = plan.facts.design.equipment.get(item.name.rsplit(".unit-", 1)[0]) if bank is None else bank
    if owner is None or owner.kind != "bank":
        return 1.0, 1.0
    arrangement = plan.read(owner, "arrangement")
    if not isinstance(arrangement, tuple):
        return 1.0, 1.0
    series, parallel = float(arrangement[0]), float(arrangement[1])
    return (series, parallel) if item.kind == "bank" else (series, 1.0)


def _cells(plan: Plan, one: Equipment, chemistry: object) -> float | None:
    told = possible(number(plan.read(one, "cells")), 0.0, 1000.0)
    if told is not None:
        return told.likely
    nominal = possible(number(plan.read(one, "nominal")), 0.0)
    if nominal is None or not isinstance(chemistry, str):
        return None
    try:
        fewest, most = cells_for(chemistry, nominal.likely)
    except OutOfRange:
        return None
    return float(most if chemistry == LITHIUM else fewest)


def _charge(plan: Plan, item: Equipment) -> Amount:
    """State of charge: of a house battery as the mode says, of a starting battery nearly full."""
    owner = plan.facts.design.equipment.get(item.name.rsplit(".unit-", 1)[0], item)
    purpose = plan.read(owner, "purpose")
    starting = isinstance(purpose, str) and purpose == "starting"
    if not starting:
        told = possible(number(plan.read(plan.mode, "charge")), -1e-9, 1.0)
        if told is not None:
            return told
    low, likely, high = STARTING_CHARGE if starting else HOUSE_CHARGE
    whose = "a starting battery" if starting else "a house battery"
    plan.book.assume(f"{whose} is taken as {likely:.0%} charged ({low:.0%} to {high:.0%}): the mode does not say")
    return Amount(likely, low, high)


def _lithium(charge: Amount) -> Amount:
    low, likely, high = (lfp_cell_voltage(one) for one in (charge.low, charge.likely, charge.high))
    return Amount(0.5 * (likely[0] + likely[1]), low[0], high[1])


def _lead(charge: Amount) -> Amount:
    low, likely, high = (lead_acid_cell_voltage(one) for one in (charge.low, charge.likely, charge.high))
    return Amount(0.5 * (likely[0] + likely[1]), low[0], high[1])


def _lithium_rise(plan: Plan, cells: float, capacity: Amount | None) -> Amount:
    if capacity is None:
        return exactly(0.0)
    plan.book.assume(
        "a lithium cell that is charged stands 30 mV (0 to 80 mV) above rest for each fifth of its capacity an hour; "
        "common practice, no source"
    )
    per_amp = cells / (0.2 * capacity.likely / 3600.0)
    low, likely, high = LITHIUM_RISE_V
    return Amount(likely * per_amp, low * per_amp, high * per_amp)


def _lead_rise(plan: Plan, item: Equipment, cells: float, capacity: Amount | None, charge: Amount) -> Amount:
    """Resistance against charging (ohm): a full battery takes next to nothing."""
    if capacity is None:
        plan.book.lack(f"capacity of {item.name}")
        return Amount(0.1, 0.02, 2.0, False)
    plan.book.assume(
        "a lead-acid battery at 2.4 V a cell takes a hundredth of its capacity an hour when full, "
        "a quarter of what is missing besides; common practice, no source"
    )

    def ohm(soc: float, factor: float) -> float:
        taken = factor * lead_acid_acceptance(capacity.likely, soc)
        low, high = lead_acid_cell_voltage(soc)
        return cells * (CHARGE_CELL_V - 0.5 * (low + high)) / taken

    return Amount(ohm(charge.likely, 1.0), ohm(charge.low, 2.0), ohm(charge.high, 0.5))


def _ohm(plan: Plan, one: Equipment, item: Equipment, capacity: Amount | None, chemistry: object) -> Amount:
    told = possible(number(plan.read(one, "internal resistance")), 0.0)
    if told is not None:
        plan.book.assume(
            "under a lasting load a battery drops up to one and a half times what its stated resistance tells; "
            "common practice, no source"
        )
        return Amount(told.likely, told.low, told.high * WARM_SHARE, told.known)
    nominal = possible(number(plan.read(one, "nominal")), 0.0)
    family = "lead" if isinstance(chemistry, str) and "lead" in chemistry else "lithium"
    low, likely, high = USUAL_OHM[family]
    if capacity is None or nominal is None:
        plan.book.lack(f"internal resistance of {item.name}")
        return Amount(likely, 0.2 * low, 5.0 * high, False)
    plan.book.assume(
        f"a {family} battery of 12 V and 100 Ah is taken as {likely * 1e3:.0f} mΩ "
        f"({low * 1e3:.0f} to {high * 1e3:.0f} mΩ), others in proportion [from memory]"
    )
    factor = nominal.likely / 12.0 * (360_000.0 / capacity.likely)
    return Amount(likely * factor, low * factor, high * factor)


def _add_coupling(plan: Plan, source: Source) -> None:
    window = plan.read(source.equipment, "source end.voltage")
    low = window.low if isinstance(window, Window) else None
    high = window.high if isinstance(window, Window) else None
    if isinstance(low, float) and isinstance(high, float):
        emf = Amount(0.5 * (low + high), low, high)
    else:
        plan.book.lack(f"voltage at the towing vehicle ({source.equipment.name})")
        emf = Amount(13.0, 11.0, 15.0, False)
    plan.book.assume("the towing vehicle is taken as 30 mΩ (10 to 80 mΩ) up to its plug; common practice, no source")
    name = plan.name(source.name)
    plan.sources.append(name)
    ohm = Amount(COUPLING_OHM[1], COUPLING_OHM[0], COUPLING_OHM[2])

    def make(case: Case, heat: Heat) -> Element:
        inner = ohm.of(case, raises=False)
        return Storage(name, source.live, source.returns, emf.of(case, raises=True), inner, inner)

    plan.add(make)
