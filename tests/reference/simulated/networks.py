"""The networks that the simulator is asked about. Invented; each is there for something a simple checker gets wrong."""

from __future__ import annotations

from random import Random
from typing import Any

Network = dict[str, Any]


def battery(name: str, plus: str, emf: float, ohm: float, **more: float) -> Network:
    return {"id": name, "plus": plus, "minus": "gnd", "emf_V": emf, "internal_resistance_ohm": ohm, **more}


def branch(name: str, start: str, end: str, ohm: float) -> Network:
    return {"id": name, "from": start, "to": end, "resistance_ohm": ohm}


def load(name: str, plus: str, minus: str = "gnd", **what: float) -> Network:
    return {"id": name, "plus": plus, "minus": minus, **what}


def converter(name: str, into: tuple[str, str], out: tuple[str, str], **more: float) -> Network:
    ends = {"in_plus": into[0], "in_minus": into[1], "out_plus": out[0], "out_minus": out[1]}
    return {"id": name, **ends, "efficiency": 0.93, **more}


def limited(name: str, plus: str, volts: float, ohm: float, amps: float, **more: float) -> Network:
    set_point = {"set_voltage_V": volts, "regulation_resistance_ohm": ohm, "current_limit_A": amps}
    return {"id": name, "plus": plus, "minus": "gnd", **set_point, **more}


def meshed() -> Network:
    """Two batteries that differ, two rings that share a side, every kind of load, a floating return."""
    ways = [
        ("starter_lead", "start_p", "bar", 0.0011), ("house_lead", "house_p", "bar", 0.0017),
        ("left", "bar", "a", 0.0048), ("middle", "bar", "b", 0.0071), ("right", "bar", "c", 0.0093),
        ("a_to_b", "a", "b", 0.0062), ("b_to_c", "b", "c", 0.0055), ("tail", "c", "d", 0.019),
        ("return_d", "d_n", "c_n", 0.019), ("return_c", "c_n", "gnd", 0.0044), ("return_link", "d_n", "gnd", 0.031),
    ]  # fmt: skip
    return {
        "id": "steady-07-two-rings-12v",
        "title": "12 V: two unequal batteries, two rings with a common side, returns of their own",
        "why": "two batteries drive current into each other while both feed; no walk over a tree finds the shares",
        "network": {
            "batteries": [battery("start", "start_p", 12.5, 0.006), battery("house", "house_p", 12.95, 0.004)],
            "branches": [branch(*way) for way in ways],
            "loads": [
                load("pump", "a", constant_power_W=84.0),
                load("lamps", "b", constant_current_A=6.5),
                load("heater", "c", "c_n", resistance_ohm=0.65),
                load("fridge", "d", "d_n", constant_power_W=72.0),
            ],
        },
    }


def constant_power_transfer() -> Network:
    """48 V to 12 V by a converter of constant power beside a 12 V battery, negative conductors counted."""
    ways = [
        ("bank_lead", "bank_p", "bar_48", 0.0021), ("con_in", "bar_48", "con_in_p", 0.0068),
        ("con_in_return", "con_in_n", "gnd", 0.0068), ("con_out", "con_out_p", "bar_12", 0.0013),
        ("con_out_return", "bar_12_n", "con_out_n", 0.0013), ("bond", "bar_12_n", "gnd", 0.0009),
        ("battery_lead", "small_p", "bar_12", 0.0052), ("board", "bar_12", "board_12", 0.0087),
    ]  # fmt: skip
    return {
        "id": "steady-08-converter-of-constant-power",
        "title": "48 V bank, converter of 1,100 W into a 12 V bar with a battery",
        "why": "the converter is a load of constant power on one side and a source of constant power on the other",
        "network": {
            "batteries": [battery("bank", "bank_p", 52.3, 0.0085), battery("small", "small_p", 12.7, 0.011)],
            "branches": [branch(*way) for way in ways],
            "converters": [
                converter("con", ("con_in_p", "con_in_n"), ("con_out_p", "con_out_n"), output_power_W=1100.0)
            ],
            "loads": [
                load("inverter", "bar_48", constant_power_W=1450.0),
                load("blower", "board_12", "bar_12_n", constant_power_W=190.0),
                load("lamps", "board_12", "bar_12_n", resistance_ohm=1.4),
            ],
        },
    }


def converters_at_each_limit() -> Network:
    """Four converters on one bank: at set voltage, at the output limit, at the input limit, and back up to 48 V."""
    ways = [
        ("lead", "bank_p", "bar", 0.0019), ("in_1", "bar", "in_1", 0.009), ("in_2", "bar", "in_2", 0.007),
        ("in_3", "bar", "in_3", 0.012), ("out_2", "out_2", "cell_2", 0.004), ("out_3", "out_3", "cell_3", 0.003),
        ("in_4", "cell_3", "in_4", 0.002), ("out_4", "out_4", "bar", 0.008),
    ]  # fmt: skip
    own = {"regulation_resistance_ohm": 0.001, "idle_W": 7.0}
    return {
        "id": "steady-09-converters-at-each-limit",
        "title": "Four converters, each held by another of its limits, one of them upwards",
        "why": "which limit holds follows from the voltages that the limits themselves bring about",
        "network": {
            "batteries": [
                battery("bank", "bank_p", 51.6, 0.007),
                battery("cell_b", "cell_2", 12.4, 0.006),
                battery("cell_c", "cell_3", 12.6, 0.005),
            ],
            "branches": [branch(*way) for way in ways],
            "converters": [
                converter("holds", ("in_1", "gnd"), ("out_1", "gnd"), set_voltage_V=13.4, output_limit_A=90.0, **own),
                converter("full", ("in_2", "gnd"), ("out_2", "gnd"), set_voltage_V=14.2, output_limit_A=60.0, **own),
                converter("choked", ("in_3", "gnd"), ("out_3", "gnd"), set_voltage_V=14.4, input_limit_A=9.0, **own),
                converter("upwards", ("in_4", "gnd"), ("out_4", "gnd"), set_voltage_V=56.0, output_limit_A=11.0, **own),
            ],
            "loads": [load("board", "out_1", constant_power_W=540.0), load("fans", "bar", constant_power_W=310.0)],
        },
        "start_voltages_V": {"out_1": 13.4, "out_2": 12.8, "out_3": 12.8, "out_4": 52.0, "in_4": 12.6},
    }


def alternator_limited() -> Network:
    """An alternator at its limit, a solar controller at its greatest power, another resistance for charging."""
    ways = [
        ("b_plus", "alt_p", "start_p", 0.0024), ("split", "start_p", "house_p", 0.0041),
        ("sun_lead", "sun_p", "house_p", 0.013), ("feed", "house_p", "board", 0.0066),
    ]  # fmt: skip
    return {
        "id": "steady-10-alternator-limit-and-sun",
        "title": "Alternator at its current limit beside a solar controller at its greatest power",
        "why": "neither source holds its voltage; one battery charges with another resistance than it discharges with",
        "network": {
            "limited_sources": [
                limited("alternator", "alt_p", 14.5, 0.003, 85.0),
                limited("sun", "sun_p", 14.3, 0.002, 30.0, greatest_power_W=210.0),
            ],
            "batteries": [
                battery("start", "start_p", 12.6, 0.007, charge_resistance_ohm=0.021),
                battery("house", "house_p", 12.9, 0.004, charge_resistance_ohm=0.009),
            ],
            "branches": [branch(*way) for way in ways],
            "loads": [load("fridge", "board", constant_power_W=310.0), load("fan", "house_p", constant_current_A=14.0)],
        },
    }


def near_the_limit() -> Network:
    """Constant power at 99.9 % of what its feed can bring, and two loads that together reach 99 % of theirs."""
    return {
        "id": "steady-11-power-near-the-limit",
        "title": "Loads of constant power just within the reach of their sources",
        "why": "the equations are nearly singular there, and a second, false solution lies close by",
        "network": {
            "batteries": [battery("one", "one_p", 12.6, 0.012), battery("two", "two_p", 51.2, 0.02)],
            "branches": [
                branch("thin", "one_p", "far", 0.088),
                branch("trunk", "two_p", "near", 0.1),
                branch("twig", "near", "end", 0.15),
            ],
            "loads": [
                # 12.6^2 / (4 x 0.1 ohm) = 396.9 W
                load("winch", "far", constant_power_W=396.5031),
                load("oven", "near", constant_power_W=2700.0),
                load("kettle", "end", constant_power_W=1200.0),
            ],
        },
        "start_voltages_V": {"one_p": 12.0, "far": 7.0, "two_p": 46.0, "near": 40.0, "end": 38.0},
    }


def tree(nodes: int = 300) -> Network:
    """A tree of 300 nodes: 48 V trunk, three ways from each node, loads of three kinds at its leaves."""
    random = Random(11)
    branches, loads = [branch("w0", "bank_p", "n0", 0.0006)], []
    for i in range(1, nodes):
        branches.append(branch(f"w{i}", f"n{(i - 1) // 3}", f"n{i}", round(random.uniform(0.002, 0.02), 6)))
        if 3 * i + 1 >= nodes:
            kind = ("constant_power_W", "constant_current_A", "resistance_ohm")[i % 3]
            size = round(random.uniform(4.0, 22.0) / (1.0 if i % 3 == 0 else 48.0), 5)
            loads.append(load(f"l{i}", f"n{i}", **{kind: round(1.0 / size * 12.0, 4) if i % 3 == 2 else size}))
    return {
        "id": "steady-12-tree-of-300-nodes",
        "title": "A 48 V tree of 300 nodes",
        "why": "size: order of elimination, many small drops in a row",
        "network": {"batteries": [battery("bank", "bank_p", 51.9, 0.004)], "branches": branches, "loads": loads},
        "ask": {"groups": ["node_voltages_V", "source_currents_A"]},
    }


def closing_contactor() -> Network:
    """The contactor closes on capacitors that are pre-charged to 42 V: the current swings through the inductance."""
    return {
        "id": "transient-13-contactor-closes",
        "title": "In-rush through the inductance of the leads after pre-charge to 42 V",
        "why": "resistance alone gives 460 A; the inductance of the loop limits and lets the voltage overshoot",
        "network": {
            "batteries": [battery("bank", "bank_p", 51.2, 0.006)],
            "branches": [branch("leads", "bank_p", "lead_end", 0.005), branch("esr", "cap_p", "core", 0.009)],
            "inductors": [{"id": "loop", "from": "lead_end", "to": "cap_p", "inductance_H": 3e-06}],
            "capacitors": [{"id": "caps", "plus": "core", "minus": "gnd", "capacitance_F": 0.012, "initial_V": 42.0}],
        },
        "course": {"end_s": 0.003, "step_s": 5e-8},
        "ask": {
            "samples": [0.00005, 0.0001, 0.0002, 0.0004, 0.0008, 0.0016, 0.0025],
            "columns": ["caps_V", "loop_A", "cap_p_V"],
            "maxima": ["caps_V", "loop_A"],
        },
    }


def starting_motor() -> Network:
    """A motor held still on a weak 12 V bus: current through its inductance, and the dip seen by the lamps."""
    return {
        "id": "transient-14-motor-from-rest",
        "title": "A motor at rest is switched on beside lamps",
        "why": "a start through inductance and resistance, with the bus sagging under it",
        "network": {
            "batteries": [battery("bank", "bank_p", 12.7, 0.018)],
            "branches": [branch("lead", "bank_p", "board", 0.007), branch("winding", "board", "inside", 0.11)],
            "inductors": [{"id": "coil", "from": "inside", "to": "gnd", "inductance_H": 0.00021}],
            "loads": [load("lamps", "board", resistance_ohm=2.2)],
        },
        "course": {"end_s": 0.012, "step_s": 5e-7},
        "ask": {
            "samples": [0.0002, 0.0005, 0.001, 0.002, 0.004, 0.008],
            "columns": ["coil_A", "board_V", "bank_A"],
            "maxima": ["coil_A", "bank_A"],
        },
    }


def two_stores_with_limits() -> Network:
    """A current-limited source lifts a bus with capacitors at two places, a constant-power load on the second."""
    return {
        "id": "transient-15-limited-source-lifts-a-bus",
        "title": "A source with a current limit charges two capacitors through a lead, one under constant power",
        "why": "no closed form: a limit that ends on the way, two stores and a load that draws more at less voltage",
        "network": {
            "limited_sources": [limited("source", "out", 13.6, 0.004, 40.0)],
            "branches": [branch("lead", "out", "mid", 0.006), branch("tail", "mid", "end", 0.015)],
            "inductors": [{"id": "choke", "from": "end", "to": "board", "inductance_H": 2e-05}],
            "capacitors": [
                {"id": "first", "plus": "mid", "minus": "gnd", "capacitance_F": 0.05, "initial_V": 9.0},
                {"id": "second", "plus": "board", "minus": "gnd", "capacitance_F": 0.02, "initial_V": 9.0},
            ],
            "loads": [load("radio", "board", constant_power_W=120.0)],
        },
        "course": {"end_s": 0.05, "step_s": 1e-6},
        "ask": {
            "samples": [0.0005, 0.001, 0.002, 0.004, 0.006, 0.008, 0.01, 0.012, 0.015, 0.02, 0.03, 0.045],
            "columns": ["first_V", "second_V", "choke_A", "source_A"],
            "maxima": ["second_V", "choke_A"],
        },
    }


NETWORKS = (
    meshed, constant_power_transfer, converters_at_each_limit, alternator_limited, near_the_limit, tree,
    closing_contactor, starting_motor, two_stores_with_limits,
)  # fmt: skip
