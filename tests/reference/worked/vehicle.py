"""Recipes: mains, converters, motors, air, mechanics."""

# ruff: noqa: E741 - the symbols are those of the sources
from __future__ import annotations

import math
import re

from checker.physics import ac, battery, converter, energy, mechanics, motor, rcd, shore, ventilation
from tests.reference.worked.example import Example
from tests.reference.worked.recipe import free_recipe, recipe


@recipe("ac_single_phase_pf", "R: ohm; L: H; U: V; f: Hz", "I: A; pf: -; P: W")
def coil(R: float, L: float, U: float, f: float) -> dict[str, float]:
    current = ac.current_through(U, ac.impedance(R, ac.reactance(L, f)))
    power = current**2 * R
    return {"I": current, "pf": ac.power_factor(power, ac.apparent_power(U, current)), "P": power}


@recipe("ac_single_phase_pf", "R: ohm; X: ohm; U: V", "Z: ohm; I: A; pf: -; P: W")
def resistance_and_reactance(R: float, X: float, U: float) -> dict[str, float]:
    whole = ac.impedance(R, X)
    current = ac.current_through(U, whole)
    power = current**2 * R
    return {"Z": whole, "I": current, "pf": ac.power_factor(power, ac.apparent_power(U, current)), "P": power}


@recipe("ac_single_phase_pf", "S: VA; U: V; P: W", "Iw: A; Im: A; pf: -")
def no_load(S: float, U: float, P: float) -> dict[str, float]:
    active = ac.active_current(P, U)
    return {"Iw": active, "Im": ac.reactive_current(ac.active_current(S, U), active), "pf": ac.power_factor(P, S)}


@recipe("ac_single_phase_pf", "U: V; P: W", "Upk: V; Ppk: W")
def peaks(U: float, P: float) -> dict[str, float]:
    peak_current = ac.peak_from_rms(ac.active_current(P, U))
    return {"Upk": ac.peak_from_rms(U), "Ppk": ac.peak_from_rms(U) * peak_current}


@recipe("ac_single_phase_pf", "U: V; I: A; P: W", "pf: -; S: VA", by_dimension=True)
def factor_of_load(U: float, I: float, P: float) -> dict[str, float]:
    apparent = ac.apparent_power(U, I)
    return {"pf": ac.power_factor(P, apparent), "S": apparent}


@recipe("ac_single_phase_pf", "P: W; U: V; pf: -", "I: A", by_dimension=True)
def current_of_load(P: float, U: float, pf: float) -> dict[str, float]:
    return {"I": shore.supply_current(P, U, pf)}


@recipe("dcdc_converter", "Vi: V; Vo: V; R: ohm", "duty: -; Iavg: A; Irms: A; Iin: A; Rin: ohm")
def chopper(Vi: float, Vo: float, R: float) -> dict[str, float]:
    duty = converter.chopper_duty(Vi, Vo)
    mean = converter.chopper_mean(Vi, duty) / R
    # with a resistive load and no filter the input carries the very current of the load
    return {"duty": duty, "Iavg": mean, "Irms": converter.chopper_rms(Vi, duty) / R, "Iin": mean, "Rin": Vi / mean}


@recipe("dcdc_converter", "V: V; R: ohm; Vt: V; d: -", "Vav: V; Vrms: V; eff: %; Rin: ohm")
def chopper_with_switch(V: float, R: float, Vt: float, d: float) -> dict[str, float]:
    mean, rms = converter.chopper_mean(V, d, Vt), converter.chopper_rms(V, d, Vt)
    # the source sees its own voltage over the mean input current, the drop of the switch left out of it
    return {"Vav": mean, "Vrms": rms, "eff": rms**2 / R / (V * mean / R), "Rin": V / (converter.chopper_mean(V, d) / R)}


@recipe("dcdc_converter", "U: V; eta: -; m: kg; v: m/s; ta: s; h: m; th: s; F: N; g: m/s2", "Ia: A; Ib: A; Ic: A")
def electric_car(
    U: float, eta: float, m: float, v: float, ta: float, h: float, th: float, F: float, g: float
) -> dict[str, float]:
    accelerate = mechanics.motion_energy(m, v) / ta
    climb = mechanics.lifting_energy(m, h, g) / th
    # the climb is driven against the same resistance as the cruise, which it adds to its own power
    return {
        "Ia": converter.dc_input_current(accelerate, U, eta),
        "Ib": converter.dc_input_current(climb + F * v, U, eta),
        "Ic": converter.dc_input_current(F * v, U, eta),
    }


@recipe("motor_start_current", "P: W; U: V; eta: -; Ra: ohm; k: -", "Rst: ohm; Eb: V")
def start_resistance(P: float, U: float, eta: float, Ra: float, k: float) -> dict[str, float]:
    full = motor.running_current(P, U, eta)
    added = motor.starting_resistance(U, k * full, Ra)
    # at the first step the current has fallen back to full load
    return {"Rst": added, "Eb": motor.back_emf(U, full, added + Ra)}


@recipe("motor_start_current", "P: W; U: V; eta: -; Ra: ohm; Rf: ohm; k: -", "Rext: ohm")
def shunt_start(P: float, U: float, eta: float, Ra: float, Rf: float, k: float) -> dict[str, float]:
    armature = motor.running_current(P, U, eta) - motor.locked_current(U, Rf)
    return {"Rext": motor.starting_resistance(U, k * armature, Ra)}


@recipe("motor_start_current", "V: V; Eb: V; Ra: ohm", "I: A")
def running(V: float, Eb: float, Ra: float) -> dict[str, float]:
    return {"I": motor.locked_current(V - Eb, Ra)}


@recipe("motor_start_current", "U: V; R: ohm", "I: A", by_dimension=True)
def standstill(U: float, R: float) -> dict[str, float]:
    return {"I": motor.locked_current(U, R)}


@recipe("rcd_touch_voltage", "UL: V; RA: ohm", "In: A", by_dimension=True)
def electrode(UL: float, RA: float) -> dict[str, float]:
    return {"In": rcd.greatest_rating(RA, UL)}


@recipe("rcd_touch_voltage", "I: A; R: ohm", "U: V", by_dimension=True)
def touch_voltage(I: float, R: float) -> dict[str, float]:
    return {"U": ac.touch_voltage(I, R)}


@recipe("earth_fault_touch_voltage", "t: s; rho: ohm m", "touch50: V; step50: V; metal50: V; metal70: V")
def bearable(t: float, rho: float) -> dict[str, float]:
    answers = {}
    for body in (50, 70):
        answers[f"touch{body}"] = ac.tolerable_touch_voltage(t, rho, body)
        answers[f"step{body}"] = ac.tolerable_step_voltage(t, rho, body)
        answers[f"metal{body}"] = ac.tolerable_touch_voltage(t, 0.0, body)
    return answers


@recipe("earth_fault_touch_voltage", "U: V; Z: ohm", "I: A", by_dimension=True)
def loop_fault(U: float, Z: float) -> dict[str, float]:
    return {"I": ac.earth_fault_current(U, Z)}


@recipe("shore_load_diversity", "n: -; P: kW; df: -; Fd: -", "Dg: kW")
def houses(n: float, P: float, df: float, Fd: float) -> dict[str, float]:
    return {"Dg": shore.group_demand([shore.demand(P, df)] * int(n), Fd)}


@recipe("shore_load_diversity", "P1: kW; P2: kW; D: kW", "Fd: -; LD: kW; Fc: -")
def two_peaks(P1: float, P2: float, D: float) -> dict[str, float]:
    return {"Fd": shore.diversity_factor((P1, P2), D), "LD": P1 + P2 - D, "Fc": shore.coincidence_factor((P1, P2), D)}


@free_recipe("shore_load_diversity")
def substations(example: Example) -> dict[str, float] | None:
    given = example.values()
    members = [value for name, value in given.items() if re.fullmatch(r"[a-e]", name)]
    if not members or not {"P"} <= set(given) or len(members) + 1 + ("lf" in given) != len(given):
        return None
    answers = {"DF": shore.diversity_factor(members, given["P"])}
    if "lf" in given and "yearly" in example.problem:
        # 8760 h; the load factor brings the peak to the mean
        answers["E"] = energy.energy_used([(given["lf"] * given["P"], 8760 * battery.HOUR_S)])
    return answers


@recipe("shore_load_diversity", "n: -; P: kW; F: -", "D: kW")
def load_centres(n: float, P: float, F: float) -> dict[str, float]:
    return {"D": shore.group_demand([P] * int(n), F)}


@recipe("hydrogen_ventilation", "n: -; I: A; k: ft3/h/A/cell; w: ft; l: ft; h: ft; pc: -", "H: ft3/h; RV: ft3; CV: ft3")
def hydrogen_made(n: float, I: float, k: float, w: float, l: float, h: float, pc: float) -> dict[str, float]:
    return {"H": ventilation.hydrogen_evolved(int(n), I, k), "RV": w * l * h, "CV": pc * w * l * h}


@recipe("hydrogen_ventilation", "v: -; q: m3/Ah; s: -", "k: m3/h/A/cell")
def flow_constant(v: float, q: float, s: float) -> dict[str, float]:
    return {"k": ventilation.hydrogen_flow_constant(v, q, s)}


@recipe("hydrogen_ventilation", "q: l/Ah; dil: -; s: -", "k: l/s/A/cell")
def flow_constant_in_litres(q: float, dil: float, s: float) -> dict[str, float]:
    return {"k": ventilation.hydrogen_flow_constant(dil, q, s)}


@recipe("hydrogen_ventilation", "n: -; Igas: mA/Ah; C: Ah", "Q: m3/h; A: cm2; V: m3", by_dimension=True)
def airflow(n: float, Igas: float, C: float) -> dict[str, float]:
    flow = ventilation.hydrogen_airflow(int(n), Igas * C)
    return {"Q": flow, "A": ventilation.hydrogen_vent_area(flow), "V": ventilation.hydrogen_free_volume(flow)}


@recipe("hydrogen_ventilation", "Q: m3/h; v: m/s", "A: cm2", by_dimension=True)
def opening(Q: float, v: float) -> dict[str, float]:
    return {"A": ventilation.opening_for_flow(Q, v)}


@recipe("lead_acid_gassing", "F: C/mol; Vm: l/mol", "litres: l/Ah; ft3: ft3/Ah")
def faraday(F: float, Vm: float) -> dict[str, float]:
    volume = ventilation.hydrogen_per_ampere_hour(F, Vm) / battery.HOUR_S
    return {"litres": volume, "ft3": volume}


@recipe("moment_balance_axle_load", "m1: kg; r1: m; m2: kg; ms: kg; rs: m; g: m/s2", "r2: m; F: N; r2b: m; Fb: N")
def seesaw(m1: float, r1: float, m2: float, ms: float, rs: float, g: float) -> dict[str, float]:
    return {
        "r2": mechanics.balance_distance(m1 * r1, m2),
        "F": mechanics.weight(m1 + m2, g),
        "r2b": mechanics.balance_distance(m1 * r1 + ms * rs, m2),
        "Fb": mechanics.weight(m1 + m2 + ms, g),
    }


@recipe("moment_balance_axle_load", "m: kg; L: m; x: m; g: m/s2", "FR: N; FL: N")
def two_supports(m: float, L: float, x: float, g: float) -> dict[str, float]:
    left, right = mechanics.support_shares(x, L)
    return {"FL": mechanics.weight(left * m, g), "FR": mechanics.weight(right * m, g)}


@recipe("moment_balance_axle_load", "F: lb; L: in; W: lb", "cg: in")
def nosewheel(F: float, L: float, W: float) -> dict[str, float]:
    return {"cg": mechanics.balance_distance(F * L, W)}


@recipe("belt_pulley_speed", "N1: rpm; d1: mm; d2: mm; d3: mm; d4: mm; s: %", "N_noslip: rpm; N_slip: rpm")
def two_stages(N1: float, d1: float, d2: float, d3: float, d4: float, s: float) -> dict[str, float]:
    def both(slip: float) -> float:
        return mechanics.driven_speed(mechanics.driven_speed(N1, d1, d2, slip), d3, d4, slip)

    return {"N_noslip": both(0.0), "N_slip": both(s)}


@recipe("belt_pulley_speed", "N1: rpm; d1: mm; d2: mm", "N2: rpm")
def one_stage(N1: float, d1: float, d2: float) -> dict[str, float]:
    return {"N2": mechanics.driven_speed(N1, d1, d2)}


@recipe(
    "stack_and_heat_ventilation", "P: W; Pf: W; T1: K; T2: K; v: m/s; p: Pa; Rg: J/molK; M: kg/mol; cp: J/kgK", "D: cm"
)
def box_with_fan(
    P: float, Pf: float, T1: float, T2: float, v: float, p: float, Rg: float, M: float, cp: float
) -> dict[str, float]:
    # the smallest inlet counts: the air at its inlet temperature
    flow = ventilation.airflow_for_rise(P + Pf, T2 - T1, p * M / (Rg * T1), cp)
    return {"D": math.sqrt(4 * ventilation.opening_for_flow(flow, v) / math.pi)}


@recipe(
    "stack_and_heat_ventilation", "pb: cmHg; dHg: kg/cm3; d: mm; Cd: -; T: K; h: cmHg; R: kJ/kgK; g: m/s2", "Q: m3/min"
)
def orifice(pb: float, dHg: float, d: float, Cd: float, T: float, h: float, R: float, g: float) -> dict[str, float]:
    # a centimetre of mercury is a hundredth of a metre of a liquid of density dHg
    def pascal(column_cm: float) -> float:
        return column_cm * 1e-2 * dHg * g

    return {"Q": ventilation.orifice_flow(math.pi * d**2 / 4, Cd, pascal(h), pascal(pb) / (R * T))}


@recipe("stack_and_heat_ventilation", "k: -; v: m/s; A: m2; V: m3", "ACH: 1/h; Q: l/s")
def ward(k: float, v: float, A: float, V: float) -> dict[str, float]:
    flow = ventilation.wind_flow(A, v, k)
    return {"ACH": ventilation.air_changes(flow, V) / battery.HOUR_S, "Q": flow}
