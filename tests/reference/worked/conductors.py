"""Recipes: drop, resistance, carrying capacity, adiabatic heating, fuses."""

# ruff: noqa: E741 - the symbols are those of the sources
from __future__ import annotations

import math
import re

from checker.physics import (
    adiabatic,
    carrying_capacity,
    conductor_resistance,
    converter,
    fuse_curves,
    heat_balance,
    solar,
    voltage_drop,
)
from checker.physics.ac import earth_fault_current
from tests.reference.worked.example import Example, Input
from tests.reference.worked.recipe import free_recipe, recipe
from tests.reference.worked.units import dimension


def _whole_run(example: Example) -> bool:
    """The length counts both wires; where the words leave it open, no recipe fits."""
    return example.says("total") or example.says("go and return") or example.says("loop")


def _one_way(example: Example) -> bool:
    return not _whole_run(example) and any(example.says(words) for words in ("one way", "one-way", "two-wire"))


@recipe("dc_voltage_drop", "r: ohm/m; L: m; I: A", "Vd: V", when=_whole_run, by_dimension=True)
def drop_over_whole_run(r: float, L: float, I: float) -> dict[str, float]:
    return {"Vd": voltage_drop.single_wire_drop(I, L, r)}


@recipe("dc_voltage_drop", "r: ohm/m; L: m; I: A", "Vd: V", when=_one_way, by_dimension=True)
def drop_of_two_wires(r: float, L: float, I: float) -> dict[str, float]:
    return {"Vd": voltage_drop.dc_voltage_drop(I, L, r)}


@recipe("dc_voltage_drop", "r: ohm/m; L: m; I: A; U: V", "Vd: V; pct: %", when=_one_way, by_dimension=True)
def drop_of_two_wires_in_percent(r: float, L: float, I: float, U: float) -> dict[str, float]:
    drop = voltage_drop.dc_voltage_drop(I, L, r)
    return {"Vd": drop, "pct": voltage_drop.drop_share(drop, U)}


@recipe("dc_voltage_drop", "I: A; R: ohm", "V: V; P: W", by_dimension=True)
def drop_and_loss(I: float, R: float) -> dict[str, float]:
    return {"V": voltage_drop.drop_over(R, I), "P": voltage_drop.loss_in(R, I)}


@recipe("dc_voltage_drop", "rho: ohm m; L: m; I: A; A: mm2", "Vd: V", when=_one_way, by_dimension=True)
def drop_of_two_wires_by_area(rho: float, L: float, I: float, A: float) -> dict[str, float]:
    return {"Vd": voltage_drop.dc_voltage_drop(I, L, conductor_resistance.resistance_of(rho, 1.0, A))}


@recipe("dc_voltage_drop", "L: m; q: A/m; r1: ohm/m", "drop_one_end: V; drop_both_ends: V")
def evenly_loaded(L: float, q: float, r1: float) -> dict[str, float]:
    # resistance stands for one conductor: the loop has two
    return {
        "drop_one_end": voltage_drop.uniform_load_drop(q, L, 2 * r1, fed_at_both_ends=False),
        "drop_both_ends": voltage_drop.uniform_load_drop(q, L, 2 * r1, fed_at_both_ends=True),
    }


@free_recipe("dc_voltage_drop")
def tapped_feeder(example: Example) -> dict[str, float] | None:
    given = example.values()
    letters = sorted(name[1:] for name in given if re.fullmatch(r"I[a-z]", name) and "x" + name[1:] in given)
    if not letters or not {"U", "rloop", "L"} <= set(given):
        return None
    taps = [(given["x" + letter], given["I" + letter]) for letter in letters]
    load, length, loop, supply = given.get("q", 0.0), given["L"], given["rloop"], given["U"]
    answers = {"V_end": supply - voltage_drop.tapped_feeder_drop(taps, load, length, loop, length)}
    for letter in letters:
        drop = voltage_drop.tapped_feeder_drop(taps, load, length, loop, given["x" + letter])
        answers[f"V_{letter.upper()}"] = supply - drop
    return answers


@free_recipe("dc_voltage_drop")
def leads_at_one_current(example: Example) -> dict[str, float] | None:
    given = example.values()
    letters = sorted(name[1:] for name in given if re.fullmatch(r"R[a-z]", name))
    if not letters or set(given) != {"I", *("R" + letter for letter in letters)}:
        return None
    answers = {}
    for letter in letters:
        answers["V" + letter] = voltage_drop.drop_over(given["R" + letter], given["I"])
        answers["P" + letter] = voltage_drop.loss_in(given["R" + letter], given["I"])
    return answers


@recipe("dc_voltage_drop", "vmp: V; imp: A; pct: %", "Rw: ohm; loss: W")
def array_wiring(vmp: float, imp: float, pct: float) -> dict[str, float]:
    resistance = voltage_drop.resistance_for_loss_share(vmp, imp, pct)
    return {"Rw": resistance, "loss": voltage_drop.loss_in(resistance, imp)}


@free_recipe("conductor_resistance_temperature")
def straight_line_in_temperature(example: Example) -> dict[str, float] | None:
    """One coefficient 'at T0', one known resistance, and either the other resistance or its temperature.

    The temperature of a resistance is written in its name (R0, R20) or is the one temperature given.
    """
    coefficients = [given for given in example.inputs.values() if given.dimension == dimension("1/K")]
    resistances = {name: given for name, given in example.inputs.items() if given.dimension == dimension("ohm")}
    temperatures = [given.value for given in example.inputs.values() if given.dimension == dimension("degC")]
    others = len(example.inputs) - len(coefficients) - len(resistances) - len(temperatures)
    if len(coefficients) != 1 or others or len(example.answers) != 1 or len(temperatures) > 1:
        return None
    at = re.search(r"at (-?\d+)", coefficients[0].remark)
    if not at:
        return None
    reference_c, per_k = float(at[1]), coefficients[0].value
    answer = example.answers[0]
    known = _resistance_at(resistances, reference_c)
    if known is not None and len(resistances) == 1 and len(temperatures) == 1:
        return {answer.name: conductor_resistance.resistance_at_temperature(known, reference_c, temperatures[0], per_k)}
    if known is not None and len(resistances) == 2 and not temperatures and answer.dimension == dimension("degC"):
        other = next(given.value for name, given in resistances.items() if not name.endswith(at[1]))
        return {answer.name: conductor_resistance.temperature_from_resistance(other, known, reference_c, per_k)}
    if known is None and len(resistances) == 1 and len(temperatures) == 1 and answer.name == f"R{at[1]}":
        per_ohm = conductor_resistance.resistance_at_temperature(1.0, reference_c, temperatures[0], per_k)
        return {answer.name: next(iter(resistances.values())).value / per_ohm}
    return None


def _resistance_at(resistances: dict[str, Input], reference_c: float) -> float | None:
    given = resistances.get(f"R{reference_c:g}")
    return None if given is None else given.value


@recipe("conductor_resistance_temperature", "R1: ohm; t1: degC; R2: ohm; a0: 1/degC", "rise: K")
def winding_rise(R1: float, t1: float, R2: float, a0: float) -> dict[str, float]:
    at_zero = R1 / conductor_resistance.resistance_at_temperature(1.0, 0.0, t1, a0)
    return {"rise": conductor_resistance.temperature_from_resistance(R2, at_zero, 0.0, a0) - t1}


@recipe("conductor_resistance_temperature", "R0: ohm; a: 1/degC; dT: K", "R: ohm")
def filament_hot(R0: float, a: float, dT: float) -> dict[str, float]:
    return {"R": conductor_resistance.resistance_at_temperature(R0, 0.0, dT, a)}


@recipe("conductor_resistance_temperature", "L: m; d: mm; rho: ohm m", "R: ohm")
def round_wire(L: float, d: float, rho: float) -> dict[str, float]:
    return {"R": conductor_resistance.resistance_of(rho, L, math.pi * d**2 / 4)}


@recipe("conductor_resistance_temperature", "L: m; A: mm2; rho: ohm m", "R: ohm", by_dimension=True)
def wire_of_area(L: float, A: float, rho: float) -> dict[str, float]:
    return {"R": conductor_resistance.resistance_of(rho, L, A)}


@recipe("conductor_resistance_temperature", "T1: degC; TR: degC; I2: A; Imax: A; L1: m", "T2: degC; L2: m")
def loaded_conductor(T1: float, TR: float, I2: float, Imax: float, L1: float) -> dict[str, float]:
    hot = heat_balance.estimated_conductor_temperature(T1, TR, I2, Imax)
    return {"T2": hot, "L2": L1 / conductor_resistance.copper_temperature_factor(hot)}


@recipe("ampacity_derating", "I0: A; k_alt: -; k_bundle: -", "I_alt: A; I_max: A")
def altitude_and_bundle(I0: float, k_alt: float, k_bundle: float) -> dict[str, float]:
    return {
        "I_alt": carrying_capacity.derated_capacity(I0, k_alt),
        "I_max": carrying_capacity.derated_capacity(I0, k_alt, k_bundle),
    }


@recipe("ampacity_derating", "I22: A; I20: A; kb: -; ka: -; n22: -; n20: -; load: -", "i22: A; i20: A; harness: A")
def harness(I22: float, I20: float, kb: float, ka: float, n22: float, n20: float, load: float) -> dict[str, float]:
    # the handbook rounds each step to a tenth of an ampere
    def step(free_air: float) -> float:
        bundled = round(carrying_capacity.derated_capacity(free_air, kb), 1)
        return math.floor(carrying_capacity.derated_capacity(bundled, ka) * 10) / 10

    i22, i20 = step(I22), step(I20)
    return {"i22": i22, "i20": i20, "harness": carrying_capacity.derated_capacity(n22 * i22 + n20 * i20, load)}


@recipe("ampacity_derating", "I: A; k: -", "I30: A")
def table_current_needed(I: float, k: float) -> dict[str, float]:
    return {"I30": carrying_capacity.required_table_current(I, k)}


@free_recipe("ampacity_derating")
def product_of_factors(example: Example) -> dict[str, float] | None:
    """One tabulated current, named I0, It or Iz, and factors k...: the derated current."""
    tabulated = [name for name in example.inputs if name in ("I0", "It", "Iz")]
    factors = [given.value for name, given in example.inputs.items() if name.startswith("k") and not given.dimension]
    if len(tabulated) != 1 or not factors or len(factors) + 1 != len(example.inputs) or len(example.answers) != 1:
        return None
    table_a = example.inputs[tabulated[0]].value
    return {example.answers[0].name: carrying_capacity.derated_capacity(table_a, *factors)}


@recipe("ampacity_derating", "Tm: degC; Tb: degC; a: degC; b: degC; c: degC; d: degC", "k20: -; k30: -; k50: -; k10: -")
def ambient_factors(Tm: float, Tb: float, a: float, b: float, c: float, d: float) -> dict[str, float]:
    return {f"k{ambient:g}": carrying_capacity.square_root_factor(Tm, ambient, Tb) for ambient in (a, b, c, d)}


@free_recipe("ampacity_derating")
def ambient_factors_by_rating(example: Example) -> dict[str, float] | None:
    given = example.values()
    ratings = [name[1:] for name in given if re.fullmatch(r"T\d+", name)]
    if not ratings or set(given) != {"Tb", *(letter + rating for rating in ratings for letter in ("T", "Ta"))}:
        return None
    return {
        "k" + rating: carrying_capacity.square_root_factor(given["T" + rating], given["Ta" + rating], given["Tb"])
        for rating in ratings
    }


@recipe("ampacity_derating", "d: mm; t: mm; h: W/m2K; kp: W/mK; Ti: degC; To: degC; rho: ohm m", "I: A")
def covered_wire(d: float, t: float, h: float, kp: float, Ti: float, To: float, rho: float) -> dict[str, float]:
    per_metre = conductor_resistance.resistance_of(rho, 1.0, math.pi * d**2 / 4)
    return {"I": heat_balance.wire_current(heat_balance.Cable(d, d + 2 * t), kp, h, Ti - To, per_metre)}


@recipe("ampacity_derating", "Isc: A; k: -; n: -", "Icont: A; I80: A; Isub: A")
def module_conductor(Isc: float, k: float, n: float) -> dict[str, float]:
    continuous = carrying_capacity.derated_capacity(Isc, k)
    return {
        "Icont": continuous,
        "I80": carrying_capacity.derated_capacity(continuous, k),
        "Isub": solar.array_current(continuous, int(n)),
    }


@recipe("adiabatic_conductor", "I: A; t: s; k: A s^0.5/mm2", "S: mm2", by_dimension=True)
def area_for_fault(I: float, t: float, k: float) -> dict[str, float]:
    return {"S": adiabatic.least_area(I, t, k)}


@recipe("adiabatic_conductor", "U: V; Zs: ohm; t: s; k: A s^0.5/mm2", "If: A; S: mm2", by_dimension=True)
def area_for_loop(U: float, Zs: float, t: float, k: float) -> dict[str, float]:
    fault = earth_fault_current(U, Zs)
    return {"If": fault, "S": adiabatic.least_area(fault, t, k)}


@recipe("adiabatic_conductor", "I: A; S: mm2; k: A s^0.5/mm2", "t: s", by_dimension=True)
def time_for_area(I: float, S: float, k: float) -> dict[str, float]:
    return {"t": adiabatic.withstand_time(S, k, I)}


@recipe("adiabatic_conductor", "U: V; R: ohm; t: s; m: g; c: cal/gK; J: J/cal", "dT: K")
def heated_matter(U: float, R: float, t: float, m: float, c: float, J: float) -> dict[str, float]:
    energy = voltage_drop.loss_in(R, earth_fault_current(U, R)) * t
    return {"dT": adiabatic.adiabatic_rise(energy, m, c * J)}


@recipe("fuse_i2t_selectivity", "I: A; t: s", "I2t: A2s", by_dimension=True)
def surge(I: float, t: float) -> dict[str, float]:
    return {"I2t": fuse_curves.surge_energy(I, t)}


@recipe("fuse_i2t_selectivity", "E: A2s; I: A", "t: s", by_dimension=True)
def time_of_energy(E: float, I: float) -> dict[str, float]:
    return {"t": fuse_curves.time_for_energy(E, I)}


@recipe("fuse_i2t_selectivity", "r1: mm; I1: A; I2: A", "r2: mm")
def wire_radius(r1: float, I1: float, I2: float) -> dict[str, float]:
    return {"r2": r1 * fuse_curves.fusing_diameter_ratio(I2 / I1)}


@recipe("fuse_i2t_selectivity", "I2: A; ratio: -", "I1: A")
def wire_of_other_diameter(I2: float, ratio: float) -> dict[str, float]:
    return {"I1": fuse_curves.fusing_current(ratio, I2)}


@free_recipe("fuse_i2t_selectivity")
def fine_wires(example: Example) -> dict[str, float] | None:
    given = example.values()
    metals = [name[1:] for name in given if re.fullmatch(r"K[a-z]+", name)]
    if not metals or set(given) != {"d", *("K" + metal for metal in metals)}:
        return None
    return {"I" + metal: fuse_curves.fusing_current(given["d"], given["K" + metal]) for metal in metals}


@recipe("inverter_dc_input", "P: W; eta: -; V: V; k: -", "I: A; Icable: A")
def inverter_current_and_cable(P: float, eta: float, V: float, k: float) -> dict[str, float]:
    current = converter.dc_input_current(P, V, eta)
    return {"I": current, "Icable": carrying_capacity.derated_capacity(current, k)}


@recipe("inverter_dc_input", "P: W; V: V; eta: -", "I: A", by_dimension=True)
def inverter_current(P: float, V: float, eta: float) -> dict[str, float]:
    return {"I": converter.dc_input_current(P, V, eta)}


@recipe("inverter_dc_input", "pdc: W; pdc0: W; eta_nom: -; eta_ref: -", "pac: W")
def inverter_curve(pdc: float, pdc0: float, eta_nom: float, eta_ref: float) -> dict[str, float]:
    return {"pac": converter.part_load_output(pdc, pdc0, eta_nom, eta_ref)}
