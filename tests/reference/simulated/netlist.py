"""A network of the form as a netlist of the circuit simulator, with the lines that print what is asked.

What is asked is printed in a fixed order, so that nothing depends on how the simulator names its vectors.
Sources of current and power are behavioural sources, written from the definition of the element, not from our code.
"""

from __future__ import annotations

from typing import Any

OPTIONS = ".options reltol=1e-9 abstol=1e-12 vntol=1e-10 gmin=1e-15 itl1=2000"
MOVING = ".options reltol=1e-6 abstol=1e-8 vntol=1e-8 gmin=1e-15 itl1=2000 method=gear chgtol=1e-14"
FLOOR_V = 4.0
Asked = list[tuple[tuple[Any, ...], str]]
"""Where an answer belongs in `expected`, and the expression that gives it."""


def node(name: str) -> str:
    return "0" if name == "gnd" else name


def volts(plus: str, minus: str = "gnd") -> str:
    return f"v({plus})" if minus == "gnd" else f"(v({plus})-v({minus}))" if plus != "gnd" else f"(-v({minus}))"


def across(entry: dict[str, Any], plus: str = "plus", minus: str = "minus") -> str:
    return f"V({node(entry[plus])},{node(entry.get(minus, 'gnd'))})"


def sensed(entry: dict[str, Any], law: str, plus: str = "plus", minus: str = "minus", of: str = "VA") -> list[str]:
    """A current into the plus terminal, with a source of 0 V in series that reads it."""
    name, high, low = entry["id"], node(entry[plus]), node(entry.get(minus, "gnd"))
    inside = f"{name}_{of.lower()}"
    return [f"{of}_{name} {high} {inside} DC 0", f"B{of}_{name} {inside} {low} I = {law}"]


def lines(network: dict[str, Any]) -> list[str]:
    """The elements, one or more lines each."""
    found: list[str] = []
    for one in network.get("batteries", ()):
        found += _battery(one)
    for one in network.get("branches", ()):
        found.append(f"R_{one['id']} {node(one['from'])} {node(one['to'])} {one['resistance_ohm']!r}")
    for one in network.get("loads", ()):
        found += sensed(one, _load(one))
    for one in network.get("converters", ()):
        found += _converter(one)
    for one in network.get("limited_sources", ()):
        found += sensed(one, _limited(one))
    for one in network.get("capacitors", ()):
        name, inside = one["id"], f"{one['id']}_va"
        found.append(f"VA_{name} {node(one['plus'])} {inside} DC 0")
        found.append(f"C_{name} {inside} {node(one['minus'])} {one['capacitance_F']!r} IC={one['initial_V']!r}")
    for one in network.get("inductors", ()):
        found.append(f"L_{one['id']} {node(one['from'])} {node(one['to'])} {one['inductance_H']!r} IC=0")
    return found


def _battery(one: dict[str, Any]) -> list[str]:
    emf, ohm = one["emf_V"], one["internal_resistance_ohm"]
    if "charge_resistance_ohm" in one:
        over = f"({across(one)} - {emf!r})"
        return sensed(one, f"{across(one)} > {emf!r} ? {over}/{one['charge_resistance_ohm']!r} : {over}/{ohm!r}")
    name, inside = one["id"], f"{one['id']}_va"
    return [f"VA_{name} {inside} {node(one['minus'])} DC {emf!r}", f"R_{name} {node(one['plus'])} {inside} {ohm!r}"]


def _load(one: dict[str, Any]) -> str:
    at = across(one)
    if "constant_power_W" in one:
        watts = one["constant_power_W"]
        return f"{at} > {FLOOR_V} ? {watts!r}/{at} : {watts / FLOOR_V**2!r}*{at}"
    if "constant_current_A" in one:
        return f"{one['constant_current_A']!r}"
    return f"{at}/{one['resistance_ohm']!r}"


def _limited(one: dict[str, Any]) -> str:
    at, ohm = across(one), one["regulation_resistance_ohm"]
    most = [f"{one['current_limit_A']!r}", f"({one['set_voltage_V']!r} - {at})/{ohm!r}"]
    if "greatest_power_W" in one:
        most.append(f"{one['greatest_power_W']!r}/max({FLOOR_V}, {at})")
    return f"-max(0, {least(most)})"


def _converter(one: dict[str, Any]) -> list[str]:
    into, out = across(one, "in_plus", "in_minus"), across(one, "out_plus", "out_minus")
    share, idle = one["efficiency"], one.get("idle_W", 0.0)
    if "output_power_W" in one:
        amps = f"{one['output_power_W']!r}/max({FLOOR_V}, {out})"
    else:
        most = [f"({one['set_voltage_V']!r} - {out})/{one['regulation_resistance_ohm']!r}"]
        if "output_limit_A" in one:
            most.append(f"{one['output_limit_A']!r}")
        if "input_limit_A" in one:
            most.append(f"({into}*{one['input_limit_A']!r} - {idle!r})*{share!r}/max({FLOOR_V}, {out})")
        amps = f"max(0, {least(most)})"
    drawn = f"({out}*({amps})/{share!r} + {idle!r})/max({FLOOR_V}, {into})"
    return [
        *sensed(one, drawn, "in_plus", "in_minus", "VI"),
        *sensed(one, f"-({amps})", "out_plus", "out_minus", "VO"),
    ]


def least(expressions: list[str]) -> str:
    first, *rest = expressions
    return f"min({first}, {least(rest)})" if rest else first


def steady(network: dict[str, Any]) -> Asked:
    """Every voltage and current of a steady network."""
    names: dict[str, None] = {}
    asked: Asked = []
    for section in network.values():
        for one in section:
            for key in ("plus", "minus", "from", "to", "in_plus", "in_minus", "out_plus", "out_minus"):
                if one.get(key, "gnd") != "gnd":
                    names.setdefault(one[key])
    asked += [(("node_voltages_V", name), volts(name)) for name in names]
    for section, group, sign in (
        ("batteries", "source_currents_A", "-"), ("limited_sources", "source_currents_A", "-"),
        ("loads", "load_currents_A", ""),
    ):  # fmt: skip
        for one in network.get(section, ()):
            turned = "" if section == "batteries" and "charge_resistance_ohm" not in one else sign
            asked.append(((group, one["id"]), _amps(one, turned)))
    for one in network.get("branches", ()):
        drop = volts(one["from"], one["to"])
        asked.append((("branch_currents_A", one["id"]), f"{drop}/{one['resistance_ohm']!r}"))
    for one in network.get("converters", ()):
        asked.append((("converter_input_currents_A", one["id"]), f"i(VI_{one['id']})"))
        asked.append((("converter_output_currents_A", one["id"]), f"-i(VO_{one['id']})"))
    return asked


def _amps(one: dict[str, Any], sign: str) -> str:
    """A battery with one resistance has its reading source turned round: its current counts out of the plus."""
    told = f"i(VA_{one['id']})"
    if "emf_V" in one and "charge_resistance_ohm" not in one:
        return f"-{told}"
    return f"{sign}{told}"


def column(network: dict[str, Any], name: str) -> str:
    """The expression of a column of a transient: `<element>_V`, `<element>_A`, `<node>_V`."""
    who, unit = name[:-2], name[-1]
    for section, entries in network.items():
        for one in entries:
            if one["id"] != who:
                continue
            if unit == "V":
                return volts(one["plus"], one.get("minus", "gnd"))
            if section == "inductors":
                return f"i(L_{who})"
            return _amps(one, "-" if section == "limited_sources" else "")
    return volts(who)


def netlist(entry: dict[str, Any]) -> tuple[str, list[tuple[Any, ...]]]:
    """The whole netlist, and for each value that it prints, in order, where it belongs in `expected`."""
    network = entry["network"]
    head = [f"* {entry['title']}", *lines(network)]
    for name, start in entry.get("start_voltages_V", {}).items():
        head.append(f".nodeset v({name})={start!r}")
    if "course" in entry:
        course = entry["course"]
        head += [MOVING, f".tran {course['step_s']!r} {course['end_s']!r} 0 {course['step_s']!r} uic"]
        places, control = moving(network, entry["ask"])
    else:
        wanted = entry.get("ask", {}).get("groups")
        asked = [one for one in steady(network) if wanted is None or one[0][0] in wanted]
        head.append(OPTIONS)
        places, control = [where for where, _ in asked], ["op", *(f"print {how}" for _, how in asked)]
    text = "\n".join([*head, ".control", "set numdgt=12", *control, "quit", ".endc", ".end", ""])
    return text, places


def moving(network: dict[str, Any], ask: dict[str, Any]) -> tuple[list[tuple[Any, ...]], list[str]]:
    """Samples and greatest values of a course: where each belongs, and the lines that print them."""
    columns = {name: f"c{at}" for at, name in enumerate(ask["columns"])}
    control = ["run", *(f"let {told} = {column(network, name)}" for name, told in columns.items())]
    places: list[tuple[Any, ...]] = []
    for at, time in enumerate(ask["samples"]):
        for name, told in columns.items():
            control.append(f"meas tran q{len(places)} find {told} at={time!r}")
            places.append(("samples", at, name))
    for name in ask["maxima"]:
        control.append(f"meas tran q{len(places)} max {columns[name]}")
        places.append(("maxima", name))
    return places, control
