"""Recipes: batteries, alternators, solar, capacitors, energy."""

# ruff: noqa: E741 - the symbols are those of the sources
from __future__ import annotations

import re

from checker.physics import ac, adiabatic, alternator, battery, capacitor, conductor_resistance, energy, motor, solar
from checker.physics import voltage_drop as drop
from tests.reference.worked.example import Example
from tests.reference.worked.recipe import free_recipe, recipe


@recipe("battery_capacity_energy", "I: A; t: h", "Q: Ah", by_dimension=True)
def capacity(I: float, t: float) -> dict[str, float]:
    return {"Q": energy.charge_moved(I, t)}


@recipe("battery_capacity_energy", "V: V; Q: Ah; P: W", "t: h", by_dimension=True)
def run_time(V: float, Q: float, P: float) -> dict[str, float]:
    return {"t": energy.autonomy(energy.battery_energy(Q, V), P)}


@recipe("battery_capacity_energy", "V: V; Q: Ah", "E: kWh", by_dimension=True)
def energy_held(V: float, Q: float) -> dict[str, float]:
    return {"E": energy.battery_energy(Q, V)}


@recipe("battery_charge_efficiency", "Id: A; td: h; Vd: V; Ic: A; tc: h; Vc: V", "eAh: %; eWh: %")
def efficiency(Id: float, td: float, Vd: float, Ic: float, tc: float, Vc: float) -> dict[str, float]:
    out, back = energy.charge_moved(Id, td), energy.charge_moved(Ic, tc)
    return {
        "eAh": energy.charge_efficiency(out, back),
        "eWh": energy.charge_efficiency(energy.battery_energy(out, Vd), energy.battery_energy(back, Vc)),
    }


@recipe(
    "battery_internal_resistance_fault",
    "E: V; r: ohm; Ra: ohm; Rb: ohm; r2: ohm",
    "Va: V; Ib: A; Vb: V; Pb: W; Ic: A; Vc: V; Pc: W",
)
def light_and_heavy_load(E: float, r: float, Ra: float, Rb: float, r2: float) -> dict[str, float]:
    light, heavy, aged = (battery.load_current(E, inner, load) for inner, load in ((r, Ra), (r, Rb), (r2, Rb)))
    return {
        "Va": battery.terminal_voltage(E, r, light),
        "Ib": heavy,
        "Vb": battery.terminal_voltage(E, r, heavy),
        "Pb": drop.loss_in(Rb, heavy),
        "Ic": aged,
        "Vc": battery.terminal_voltage(E, r2, aged),
        "Pc": drop.loss_in(Rb, aged),
    }


@recipe(
    "battery_internal_resistance_fault", "E: V; r: ohm; Rm: ohm; Rx: ohm", "I1: A; V1: V; P1: W; I2: A; V2: V; P2: W"
)
def corroded_starter(E: float, r: float, Rm: float, Rx: float) -> dict[str, float]:
    sound, corroded = battery.load_current(E, r, Rm), battery.load_current(E, r + Rx, Rm)
    return {
        "I1": sound,
        "V1": drop.drop_over(Rm, sound),
        "P1": drop.loss_in(Rm, sound),
        "I2": corroded,
        "V2": drop.drop_over(Rm, corroded),
        "P2": drop.loss_in(Rm, corroded),
    }


@recipe("battery_internal_resistance_fault", "E: V; V: V; I: A", "r: ohm")
def resistance_from_charging(E: float, V: float, I: float) -> dict[str, float]:
    charging = -I if V > E else I
    return {"r": battery.internal_resistance(E, V, charging)}


@recipe("battery_internal_resistance_fault", "dV: V; dI: A", "r: ohm", by_dimension=True)
def resistance_from_step(dV: float, dI: float) -> dict[str, float]:
    return {"r": battery.internal_resistance(dV, 0.0, dI)}


@recipe(
    "battery_internal_resistance_fault", "e: V; r: ohm; I1: A; I2: A; E2: V; V2: V; I3: A", "V1: V; V50: V; r2: ohm"
)
def cell_at_two_currents(e: float, r: float, I1: float, I2: float, E2: float, V2: float, I3: float) -> dict[str, float]:
    return {
        "V1": battery.terminal_voltage(e, r, I1),
        f"V{I2:g}": battery.terminal_voltage(e, r, I2),
        "r2": battery.internal_resistance(E2, V2, I3),
    }


@free_recipe("battery_internal_resistance_fault")
def short_circuits(example: Example) -> dict[str, float] | None:
    given = example.values()
    letters = [name[1:] for name in given if re.fullmatch(r"E[a-z]", name)]
    if not letters or set(given) != {*("E" + letter for letter in letters), *("r" + letter for letter in letters)}:
        return None
    return {"Isc" + letter: battery.fault_current(given["E" + letter], given["r" + letter]) for letter in letters}


@recipe("battery_internal_resistance_fault", "E: V; r: ohm; R: ohm", "I: A; V: V; P: W")
def loaded(E: float, r: float, R: float) -> dict[str, float]:
    current = battery.load_current(E, r, R)
    return {"I": current, "V": battery.terminal_voltage(E, r, current), "P": drop.loss_in(R, current)}


def _charging(example: Example) -> bool:
    return example.says("charg") and not example.says("discharg")


@recipe(
    "battery_internal_resistance_fault",
    "E: V; r: ohm; I: A",
    "V: V",
    by_dimension=True,
    when=lambda example: not _charging(example),
)
def terminals_under_load(E: float, r: float, I: float) -> dict[str, float]:
    return {"V": battery.terminal_voltage(E, r, I)}


@recipe("battery_internal_resistance_fault", "E: V; r: ohm; I: A", "V: V", by_dimension=True, when=_charging)
def terminals_on_charge(E: float, r: float, I: float) -> dict[str, float]:
    return {"V": battery.terminal_voltage(E, r, -I)}


@recipe("battery_internal_resistance_fault", "E: V; r: ohm", "I: A", by_dimension=True)
def bolted_short(E: float, r: float) -> dict[str, float]:
    return {"I": battery.fault_current(E, r)}


@recipe("battery_internal_resistance_fault", "V: V; I: A; Q: C; t: s", "R: ohm; Is: A")
def starter(V: float, I: float, Q: float, t: float) -> dict[str, float]:
    return {"R": drop.resistance_for_loss_share(V, I, 1.0), "Is": energy.autonomy(Q, t)}


@recipe("battery_internal_resistance_fault", "tp: ms; n: -; m: -", "res: -")
def residue(tp: float, n: float, m: float) -> dict[str, float]:
    # the residue after m time constants; the time constant itself is a plain division by n
    return {"res": capacitor.remaining_share(m * tp / n, tp / n)}


@recipe("battery_recharge", "P: W; h: h; V: V; dod: -; f: -; H: h; Istand: A", "Ah: Ah; Cbat: Ah; Ichg: A")
def daily_recharge(P: float, h: float, V: float, dod: float, f: float, H: float, Istand: float) -> dict[str, float]:
    charge = energy.energy_used([(P, h)]) / V
    return {
        "Ah": charge,
        "Cbat": energy.capacity_needed(charge, dod),
        "Ichg": energy.recharge_current(charge, f, H, Istand),
    }


@recipe("battery_recharge", "C: Ah; I: A; tabs: h", "t80: h; t100: h")
def bulk_and_absorption(C: float, I: float, tabs: float) -> dict[str, float]:
    return {"t80": energy.recharge_time(C, I), "t100": energy.recharge_time(C, I, tabs)}


@recipe("battery_recharge", "C: Ah; I: A", "t: h", by_dimension=True)
def time_to_recharge(C: float, I: float) -> dict[str, float]:
    return {"t": energy.recharge_time(C, I)}


@recipe("battery_recharge", "C: Ah; k: -", "I: A")
def current_by_capacity(C: float, k: float) -> dict[str, float]:
    # a share k of the capacity each hour
    return {"I": energy.recharge_current(energy.usable(C, k), 1.0, battery.HOUR_S)}


@recipe(
    "depth_of_discharge_budget",
    "C: Ah; k: -; I1: A; t1: min; I2: A; t2: min; I3: A",
    "cap: A min; q1: A min; q2: A min; t3: min; total: min",
)
def shedding(C: float, k: float, I1: float, t1: float, I2: float, t2: float, I3: float) -> dict[str, float]:
    held, q1, q2 = energy.usable(C, k), energy.charge_moved(I1, t1), energy.charge_moved(I2, t2)
    left = energy.time_left(held, (q1, q2), I3)
    return {"cap": held, "q1": q1, "q2": q2, "t3": left, "total": left + t1 + t2}


@recipe(
    "energy_budget",
    "n1: lamps; P1: W; n2: heaters; P2: W; used1: lamps; h1: h/day; h2: h/day; days: day; Pmax: W",
    "Pcon: W; E: kWh; LF: -",
)
def small_consumer(
    n1: float, P1: float, n2: float, P2: float, used1: float, h1: float, h2: float, days: float, Pmax: float
) -> dict[str, float]:
    # hours a day come as a share of the day, so a share of the days in SI
    used = energy.energy_used([(used1 * P1, h1 * days), (n2 * P2, h2 * days)])
    return {"Pcon": n1 * P1 + n2 * P2, "E": used, "LF": energy.load_factor(used, Pmax, days)}


@recipe("energy_budget", "V: m3/day; H: m; em: -; ei: -", "eff: -; Epv: kWh/day")
def pump(V: float, H: float, em: float, ei: float) -> dict[str, float]:
    return {"eff": em * ei, "Epv": motor.hydraulic_energy(V, H) / (em * ei)}


@recipe("alternator_loading", "I: A; R: A", "d: %")
def duty(I: float, R: float) -> dict[str, float]:
    return {"d": alternator.duty(I, R)}


@recipe("alternator_loading", "I: A; Ra: A; Rb: A", "da: %; db: %")
def duties(I: float, Ra: float, Rb: float) -> dict[str, float]:
    return {"da": alternator.duty(I, Ra), "db": alternator.duty(I, Rb)}


@recipe("peukert", "Cp: A^k h; I: A; k: -", "t: h", by_dimension=True)
def peukert_one_ampere(Cp: float, I: float, k: float) -> dict[str, float]:
    return {"t": battery.peukert_time_one_ampere(Cp, I, k)}


@recipe("peukert", "C: Ah; H: h; I: A; k: -", "t: h; Q: Ah", by_dimension=True)
def peukert_rated(C: float, H: float, I: float, k: float) -> dict[str, float]:
    time = battery.peukert_time(C, H, I, k)
    return {"t": time, "Q": battery.delivered_capacity(time, I)}


@recipe("capacitor_energy_inrush", "E: J; V: V", "C: F", by_dimension=True)
def capacitance(E: float, V: float) -> dict[str, float]:
    return {"C": capacitor.capacitance_for_energy(E, V)}


@recipe("capacitor_energy_inrush", "C: F; V: V", "E: J; Q: C", by_dimension=True)
def energy_and_charge(C: float, V: float) -> dict[str, float]:
    return {"E": capacitor.stored_energy(C, V), "Q": capacitor.stored_charge(C, V)}


@recipe("capacitor_energy_inrush", "C: F; E: J", "V: V; Q: C", by_dimension=True)
def voltage_and_charge(C: float, E: float) -> dict[str, float]:
    voltage = capacitor.voltage_for_energy(C, E)
    return {"V": voltage, "Q": capacitor.stored_charge(C, voltage)}


@recipe("capacitor_energy_inrush", "U: V; I: A; Rc: ohm", "R: ohm; Ph: W; Pc: W; Ic: A")
def lamp_from_cold(U: float, I: float, Rc: float) -> dict[str, float]:
    hot = drop.resistance_for_loss_share(U, I, 1.0)
    cold = motor.cold_current(I, hot, Rc)
    return {"R": hot, "Ph": drop.loss_in(hot, I), "Pc": drop.loss_in(Rc, cold), "Ic": cold}


@recipe("capacitor_energy_inrush", "P: W; U: V; a0: 1/degC; t1: degC; t2: degC", "In: A; Ion: A")
def lamp_by_temperature(P: float, U: float, a0: float, t1: float, t2: float) -> dict[str, float]:
    running = ac.active_current(P, U)
    cold, hot = (conductor_resistance.resistance_at_temperature(1.0, 0.0, t, a0) for t in (t1, t2))
    return {"In": running, "Ion": motor.cold_current(running, hot, cold)}


@recipe("rc_precharge", "C: F; R: ohm; E: V; t: s", "tau: s; I0: A; vC: V; vR: V")
def precharge(C: float, R: float, E: float, t: float) -> dict[str, float]:
    tau = capacitor.time_constant(R, C)
    return {
        "tau": tau,
        "I0": capacitor.first_current(E, R),
        "vC": capacitor.charged_voltage(E, t, tau),
        "vR": E * capacitor.remaining_share(t, tau),
    }


@recipe("rc_precharge", "C: F; R1: ohm; R2: ohm; E: V", "tau_c: s; I0: A; tau_d: s; VR2: V")
def charge_then_discharge(C: float, R1: float, R2: float, E: float) -> dict[str, float]:
    discharge = capacitor.time_constant(R1 + R2, C)
    # the second resistor takes its share of the voltage after one time constant of the discharge
    left = E * capacitor.remaining_share(discharge, discharge)
    return {
        "tau_c": capacitor.time_constant(R1, C),
        "I0": capacitor.first_current(E, R1),
        "tau_d": discharge,
        "VR2": drop.drop_over(R2, capacitor.first_current(left, R1 + R2)),
    }


@recipe("rc_precharge", "C: F; R: ohm; V: V", "tau: s; I0: A; E: J; Q: C")
def precharge_start(C: float, R: float, V: float) -> dict[str, float]:
    return {
        "tau": capacitor.time_constant(R, C),
        "I0": capacitor.first_current(V, R),
        "E": capacitor.stored_energy(C, V),
        "Q": capacitor.stored_charge(C, V),
    }


@recipe("rc_precharge", "C: F; R: ohm", "t90: s; f2: %; tau: s")
def ninety_percent(C: float, R: float) -> dict[str, float]:
    tau = capacitor.time_constant(R, C)
    return {"t90": capacitor.time_to_charge(0.9, tau), "f2": capacitor.charged_share(2 * tau, tau), "tau": tau}


@recipe("rc_precharge", "C: F; U: V; R: ohm; m: g; c: J/kgK", "tau: s; dT: K")
def resistor_heat(C: float, U: float, R: float, m: float, c: float) -> dict[str, float]:
    return {"tau": capacitor.time_constant(R, C), "dT": adiabatic.adiabatic_rise(capacitor.stored_energy(C, U), m, c)}


@recipe("rc_precharge", "R: ohm; V: V; V1: V; tau: s", "C: F; t: s; i05: A; v1: V")
def discharge_design(R: float, V: float, V1: float, tau: float) -> dict[str, float]:
    return {
        "C": capacitor.capacitance_for_time_constant(tau, R),
        "t": capacitor.time_to_discharge(V, V1, tau),
        "i05": capacitor.first_current(V, R) * capacitor.remaining_share(0.5, tau),
        "v1": V * capacitor.remaining_share(1.0, tau),
    }


@recipe("rc_precharge", "R: ohm; C: F; U: V; v: V", "tau: s; t: s")
def time_to_voltage(R: float, C: float, U: float, v: float) -> dict[str, float]:
    tau = capacitor.time_constant(R, C)
    return {"tau": tau, "t": capacitor.time_to_charge(v / U, tau)}


@recipe(
    "solar_array_series_parallel",
    "Isc: A; Imp: A; Voc: V; Vmp: V; Pmp: W; ns: -; np: -",
    "ISC: A; IMP: A; VOC: V; VMP: V; PMP: W",
)
def array(Isc: float, Imp: float, Voc: float, Vmp: float, Pmp: float, ns: float, np: float) -> dict[str, float]:
    return {
        "ISC": solar.array_current(Isc, int(np)),
        "IMP": solar.array_current(Imp, int(np)),
        "VOC": solar.string_voltage(Voc, int(ns)),
        "VMP": solar.string_voltage(Vmp, int(ns)),
        "PMP": solar.array_current(solar.string_voltage(Pmp, int(ns)), int(np)),
    }


@recipe("solar_cell_temperature", "G: W/m2; Ta: degC; v: m/s; noct: degC; eta: -", "Tc: degC")
def cell_in_wind(G: float, Ta: float, v: float, noct: float, eta: float) -> dict[str, float]:
    return {"Tc": solar.cell_temperature_in_wind(G, Ta, v, noct, eta)}


@recipe("solar_cell_temperature", "G: W/m2; Ta: degC; noct: degC", "Tc: degC")
def cell(G: float, Ta: float, noct: float) -> dict[str, float]:
    return {"Tc": solar.cell_temperature(G, Ta, noct)}


@free_recipe("solar_circuit_current")
def design_current(example: Example) -> dict[str, float] | None:
    given = example.values()
    if set(given) != {"Isc", "k"} or given["k"] != solar.CONTINUOUS or "two" not in example.problem:
        return None
    return {"I": solar.conductor_current(given["Isc"])}


@recipe("solar_open_voltage_cold", "Voc: V; b: 1/K; T: degC", "V: V", by_dimension=True)
def cold_open_voltage(Voc: float, b: float, T: float) -> dict[str, float]:
    return {"V": solar.voltage_at(Voc, b, T)}


@recipe("solar_mppt", "G: W/m2; Tc: degC; P0: W; g: 1/K; Ta: degC; v: m/s; u0: W/m2K; u1: W s/m3K", "P: W; Tm: degC")
def power_and_module(
    G: float, Tc: float, P0: float, g: float, Ta: float, v: float, u0: float, u1: float
) -> dict[str, float]:
    return {"P": solar.module_power(P0, G, Tc, g), "Tm": solar.module_temperature_in_wind(G, Ta, v, u0, u1)}


@free_recipe("solar_system_losses")
def losses(example: Example) -> dict[str, float] | None:
    given = example.values()
    single = [value for name, value in given.items() if re.fullmatch(r"[a-h]", name)]
    listed = [value for name, value in given.items() if re.fullmatch(r"l\d+", name)]
    if len(single) + len(listed) != len(given):
        return None
    return {"comb": solar.combined_loss(single), "default": solar.combined_loss(listed)}
