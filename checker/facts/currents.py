"""The greatest lasting current of each conductor, over all modes.

In a mode every live edge can be asked for at most what the loads on one side draw, and given at most what the sources
on the other side can push; the smaller of the two flows at most, in either direction. No flow inside a fit-out can be
larger, whatever the resistances, so the answer errs only upwards. A load that no mode runs still counts alone.
"""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, Edge, Link
from checker.circuit.limits import ENDLESS, NOTHING, live_forest
from checker.circuit.ports import CONTACTS
from checker.circuit.sweep import Arrivals, Forest, Rules
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.levels import level_at
from checker.facts.loads import rated_current, running_current
from checker.facts.subject import Facts
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Unknown,
    Window,
    add,
    between,
    divide,
    greatest,
    least,
    multiply,
    same,
    subtract,
)

ANY = "any one load alone"
SHORE_CHARGERS = ("charger", "inverter-charger")
Found = dict[str, tuple[Number, str]]


def design_currents(facts: Facts) -> Found:
    """Id of a live conductor -> (greatest current A, the mode it comes from)."""
    found: Found | None = facts.shared.get("design currents")
    if found is None:
        found = facts.shared["design currents"] = _all_modes(facts)
    return found


def _all_modes(facts: Facts) -> Found:
    found: Found = {}
    for name, mode in facts.design.modes.items():
        found_here = flows(facts, draws_in(facts, mode), gives_in(facts, mode), add, positions(facts, mode))
        doubts = doubtful(facts, mode)
        if doubts:
            _widen(found_here, _without(facts, mode, doubts))
        _merge(found, found_here, name)
    alone = flows(facts, draws_alone(facts), gives_always(facts), greatest, None)
    _merge(found, alone, ANY)
    return found


def doubtful(facts: Facts, mode: Item) -> frozenset[str]:
    """What nobody knows the position or the direction of in a mode, because an entry says so."""
    set_by = dict(mode.value("set")) if isinstance(mode.value("set"), tuple) else {}
    found = set()
    for item in facts.network.equipment.values():
        if item.name in set_by:
            open_question = isinstance(set_by[item.name].value, Unknown)
        elif item.kind in ("changeover", *CONTACTS):
            open_question = any(_says_unknown(item, key) for key in ("rest", "operated", "driven by"))
            driver = facts.network.equipment.get(str(item.value("driven by"))) if item.allows("driven by") else None
            open_question = open_question or (driver is not None and _says_unknown(driver, "means"))
        elif item.kind in SHORE_CHARGERS:
            open_question = mode.has("shore") and isinstance(mode.value("shore"), Unknown)
        else:
            open_question = item.kind == "dc converter" and _says_unknown(item, "both ways")
        if open_question:
            found.add(item.name)
    return frozenset(found)


def _says_unknown(item: Item, key: str) -> bool:
    """Whether a key is written as unknown; one that is left out leaves what is usual."""
    return item.allows(key) and item.has(key) and isinstance(item.value(key), Unknown)


def _without(facts: Facts, mode: Item, doubts: frozenset[str]) -> dict[str, Number]:
    """The currents of a mode with everything open or resting of which nobody knows whether it is."""
    shut = [name for name in sorted(doubts) if facts.network.equipment[name].kind not in SHORE_CHARGERS]
    nowhere = {**positions(facts, mode), **dict.fromkeys(shut, "open")}
    idle = {f"{name}:{side}+" for name in doubts for side in ("low", "high", "dc")}
    draws = {node: current for node, current in draws_in(facts, mode).items() if node not in idle}
    gives = {node: current for node, current in gives_in(facts, mode).items() if node not in idle}
    return flows(facts, draws, gives, add, nowhere)


def _widen(flows: dict[str, Number], least_flows: dict[str, Number]) -> None:
    """Let each current begin at the lesser one: how much of it flows depends on what is not known."""
    for conductor, most in flows.items():
        few = least_flows[conductor]
        if isinstance(most, Unknown) or same(most, few):
            continue
        high = most.high if isinstance(most, Range) else most
        low = few.low if isinstance(few, Range) else few if isinstance(few, float) else 0.0
        flows[conductor] = UNKNOWN if high is None else between(min(low, high), high)


def _merge(found: Found, flows: dict[str, Number], name: str) -> None:
    for conductor, current in flows.items():
        before = found.get(conductor)
        if before is None:
            found[conductor] = (current, name)
        else:
            most = _most(before[0], current)
            found[conductor] = (most, before[1] if same(most, before[0]) else name)


def _most(a: Number, b: Number) -> Number:
    if isinstance(a, Unknown):
        return a
    return b if isinstance(b, Unknown) else greatest(a, b)


def flows(
    facts: Facts,
    draws: dict[str, Number],
    gives: dict[str, Number],
    join: Any,
    at: dict[str, str] | None,
    role: str = LIVE,
    forest: Forest | None = None,
) -> dict[str, Number]:
    """Currents with contacts `at` their positions; None: all closed, one load at a time, no battery charged.

    Of the live conductors; of the returns with the forest of these and with draws and gives at their nodes.
    """
    network = facts.network
    forest = live_forest(network, at) if forest is None else forest

    def joined(a: Number, b: Number) -> Number:
        if isinstance(a, float) and a == 0.0:
            return b
        if isinstance(b, float) and b == 0.0:
            return a
        if ENDLESS in (a if isinstance(a, float) else 0.0, b if isinstance(b, float) else 0.0):
            return ENDLESS
        return join(a, b)  # type: ignore[no-any-return]

    def given(edge: Edge, node: str, flow: Number) -> Number:
        return NOTHING if isinstance(edge, Link) and edge.one_way and node == edge.b else flow

    def drawn(edge: Edge, node: str, flow: Number) -> Number:
        return NOTHING if isinstance(edge, Link) and edge.one_way and node == edge.a else flow

    banks = [source for source in network.sources if source.equipment.kind in ("battery", "bank")]
    stores = {source.live for source in banks}
    if role != LIVE:
        stores = {source.returns for source in banks if source.returns in gives}  # those of one island of voltage

    def swept(values: dict[str, Number], through: Any) -> Arrivals[Number]:
        """Modes have much in common: what gives or draws the same through the same contacts is swept once."""
        key = (tuple(values.items()), join, through is given)
        if key not in forest.memo:
            forest.memo[key] = forest.sweep(
                Rules[Number](NOTHING, lambda node: values.get(node, NOTHING), joined, through)
            )
        return forest.memo[key]  # type: ignore[no-any-return]

    supply = swept(gives, given)
    charging = swept({node: limit for node, limit in gives.items() if node not in stores}, given)
    demand = swept(draws, drawn)
    storing = swept(dict.fromkeys(sorted(stores), ENDLESS), drawn)
    found: dict[str, Number] = {}
    for conductor in network.conductors:
        if conductor.role != role:
            continue
        most: Number = 0.0
        for wire in conductor.wires:
            a, b = (id(wire), wire.a), (id(wire), wire.b)
            if a in supply:
                for into, out in ((a, b), (b, a)):
                    # Loads take from anything; a battery is charged by what is no battery.
                    stored = _lesser(charging[into], storing[out]) if at is not None else 0.0
                    upper = _lesser(supply[into], joined(demand[out], stored))
                    lower = _most(stored, _beyond(demand[out], supply[out]))
                    if role != LIVE and id(wire) in forest.ring_edges:
                        lower = 0.0  # returns beside each other share as their resistances say
                    most = _most(most, _span(lower, upper))
        found[conductor.id] = most
    return found


def _beyond(asked: Number, there: Number) -> Number:
    """What loads ask for beyond what the sources on their own side can give: that much must come through."""
    if isinstance(there, float) and there == ENDLESS:
        return 0.0
    if isinstance(asked, Unknown) or isinstance(there, Unknown) or (isinstance(asked, float) and asked == ENDLESS):
        return 0.0
    return greatest(subtract(asked, there), 0.0)


def _span(lower: Number, upper: Number) -> Number:
    """From the least of the one to the most of the other; where sources share a load, nobody knows how."""
    if isinstance(upper, Unknown):
        return upper
    low = lower.low if isinstance(lower, Range) else lower if isinstance(lower, float) else 0.0
    high = upper.high if isinstance(upper, Range) else upper if isinstance(upper, float) else ENDLESS
    return between(min(low, high), high)


def _lesser(a: Number, b: Number) -> Number:
    if isinstance(a, float) and a in (0.0, ENDLESS):
        return 0.0 if a == 0.0 else UNKNOWN if isinstance(b, float) and b == ENDLESS else b
    if isinstance(b, float) and b in (0.0, ENDLESS):
        return 0.0 if b == 0.0 else a
    if isinstance(a, Unknown) or isinstance(b, Unknown):
        known = b if isinstance(a, Unknown) else a
        if isinstance(known, float | Range):
            top = known.high if isinstance(known, Range) else known
            return Range(0.0, top) if top > 0 else 0.0
        return UNKNOWN
    return least(a, b)


def positions(facts: Facts, mode: Item) -> dict[str, str]:
    """Switching equipment -> its position in a mode: as set, else at rest; coils by what drives them.

    Changeovers and inverters have positions of their own; of switches and relays only those known to be `open` stand
    here, so that one of which nothing is known counts as closed.
    """
    found: dict[str, str] = {}
    set_by = dict(mode.value("set")) if isinstance(mode.value("set"), tuple) else {}
    for item in facts.network.equipment.values():
        if item.kind == "changeover":
            chosen = set_by[item.name].value if item.name in set_by else _rest(item, mode)
            if isinstance(chosen, str):
                found[item.name] = chosen
        elif item.kind in CONTACTS and _is_open(facts, item, mode, set_by):
            found[item.name] = "open"
        elif item.kind == "inverter-charger":
            found[item.name] = "invert" if mode.says("inverter", "inverting") else "pass"
    return found


def _is_open(facts: Facts, item: Equipment, mode: Item, set_by: dict[str, Any]) -> bool:
    if item.name in set_by:
        return bool(same(set_by[item.name].value, "open"))
    if item.kind == "switch":
        return item.says("rest", "open") and item.says("operated", "by hand")
    driver = facts.network.equipment.get(str(item.value("driven by")))
    if driver is None or driver.kind != "signal" or not driver.says("means", "engine running"):
        return False
    return mode.says("engine", "stopped") and (item.says("rest", "open") or not item.has("rest"))


def _rest(item: Equipment, mode: Item) -> Any:
    if item.says("operated", "coil") and not mode.says("shore", "absent"):
        throws = item.value("throws")
        rest = item.value("rest")
        if not isinstance(rest, str) or not isinstance(throws, tuple):
            return rest
        others = [throw for throw in throws if throw not in (rest, "open")]
        return others[0] if len(others) == 1 else rest
    rest = item.value("rest")
    if isinstance(rest, str) or item.has("rest"):
        return rest
    throws = item.value("throws")
    return throws[-1] if isinstance(throws, tuple) and throws else rest


def _volts(facts: Facts, node: str) -> Number:
    level = level_at(facts, node)
    return UNKNOWN if level is None else level.nominal


def _load_nodes(facts: Facts) -> list[tuple[str, Equipment]]:
    from checker.circuit.sources import LOADS

    return [(node, item) for node, items in facts.network.sinks.items() for item in items if item.kind in LOADS]


def draws_alone(facts: Facts) -> dict[str, Number]:
    """Live node of a load -> what it asks by itself, whether a mode runs it or not (A)."""
    draws: dict[str, Number] = {}
    mains: Number = 0.0
    told = _used_in_modes(facts)
    for node, item in _load_nodes(facts):
        plugged = item.kind == "outlet" and item.name in told
        draws[node] = told[item.name] if plugged else rated_current(item, _volts(facts, node))
        if node.endswith("L"):
            mains = _most(mains, multiply(draws[node], _volts(facts, node)))
    for node, items in facts.network.sinks.items():
        for item in items:
            current = _standing(facts, item, node, None, mains)
            if current is not None:
                draws[node] = current
    return draws


def _used_in_modes(facts: Facts) -> dict[str, Number]:
    """The greatest current that the modes ask of each load they name, A.

    What hangs on an outlet is what the file says of its use; its rating counts where the file says nothing, since an
    outlet may be rated above the device before it.
    """
    nodes = {item.name: node for node, item in _load_nodes(facts)}
    found: dict[str, Number] = {}
    for mode in facts.design.modes.values():
        running = mode.value("running")
        for name, entry in dict(running).items() if isinstance(running, tuple) else ():
            if name in nodes:
                unit = "W" if entry.text.rstrip().endswith("W") else "A"
                asked = running_current(entry, unit, _volts(facts, nodes[name]))
                found[name] = _most(found.get(name, 0.0), asked)
    return found


def draws_in(facts: Facts, mode: Item) -> dict[str, Number]:
    """Live node of a load -> what it asks there in a mode (A), of what passes power on too."""
    draws: dict[str, Number] = {}
    running = mode.value("running")
    entries = dict(running) if isinstance(running, tuple) else {}
    mains: Number = 0.0
    for node, item in _load_nodes(facts):
        entry = entries.get(item.name)
        if entry is None:
            continue
        volts = _volts(facts, node)
        unit = "W" if entry.text.rstrip().endswith("W") else "A"
        draws[node] = running_current(entry, unit, volts)
        if node.endswith("L"):
            mains = add(mains, multiply(draws[node], volts))
    for node, items in facts.network.sinks.items():
        for item in items:
            current = _standing(facts, item, node, mode, mains)
            if current is not None:
                draws[node] = current
    return draws


def _standing(facts: Facts, item: Equipment, node: str, mode: Item | None, mains: Number) -> Number | None:
    """What equipment that passes power on asks of its input side."""
    if item.kind == "dc converter":
        side = node.split(":", 1)[1].rstrip("+")
        return 0.0 if _idle_side(item, side, mode, drawing=True) else converter_current(item, side)
    if item.kind in ("inverter", "inverter-charger") and node.endswith("dc+"):
        if mode is not None and not mode.says("inverter", "inverting"):
            return 0.0
        volts = _lowest(item.value("dc.voltage"), item.value("dc.nominal"))
        power = mains if mode is not None else _lesser(mains, item.value("power"))
        return divide(divide(power, volts), item.value("efficiency"))
    if item.kind in ("inverter-charger", "charger") and node.endswith("L"):
        return _mains_input(facts, item, mode, mains)
    if item.kind == "solar controller":
        return ENDLESS
    return None


def _mains_input(facts: Facts, item: Equipment, mode: Item | None, mains: Number) -> Number:
    if item.kind == "charger":
        stated = item.value("ac.current")
        return stated if isinstance(stated, float | Range) else UNKNOWN
    if mode is not None and mode.says("shore", "absent"):
        return 0.0
    volts = facts.design.vehicle.value("supply.voltage")
    charger = multiply(item.value("charger.current"), item.value("settings.charge voltage"))
    asked = divide(divide(charger, item.value("efficiency")), volts)
    limit = item.value("settings.shore limit")
    if not isinstance(limit, float | Range):
        return _lesser(UNKNOWN, asked) if _says_unknown(item, "settings.shore limit") else asked
    # What its loads take through it, the charger gives up.
    return _lesser(asked, greatest(subtract(limit, divide(mains, volts)), 0.0))


def _idle_side(item: Equipment, side: str, mode: Item | None, *, drawing: bool) -> bool:
    """Whether a converter that works both ways is busy in the other direction: it charges while the engine runs."""
    if mode is None or item.value("both ways") is not True:
        return False
    charges = not mode.says("engine", "stopped")
    return charges == ((side == "high") == drawing)


def _none(value: Any) -> bool:
    return isinstance(value, float) and value == 0.0


def _lowest(window: Any, nominal: Any) -> Number:
    if isinstance(window, Window) and isinstance(window.low, float):
        return window.low
    return nominal if isinstance(nominal, float | Range) else UNKNOWN


def converter_current(item: Equipment, side: str) -> Number:
    """Greatest lasting current that a converter draws at one side (A).

    Its rating; at its low side no more than its charging settings ask for, since it charges what is at its high side.
    """
    rated: Number = item.value(f"sides.{side}.current")
    charge, volts = item.value("settings.charge current"), item.value("settings.charge voltage")
    if side == "low" and _says_unknown(item, "settings.charge current"):
        return _lesser(UNKNOWN, rated)
    if side == "high" or not isinstance(charge, float | Range):
        return rated
    low = item.value("sides.low.nominal")
    asked = divide(divide(multiply(charge, volts), low), item.value("efficiency"))
    if isinstance(rated, Unknown) and not _says_unknown(item, "sides.low.current"):
        return asked
    return _lesser(rated, asked)


def gives_in(facts: Facts, mode: Item) -> dict[str, Number]:
    """Live node of a source -> what it can give there in a mode (A), nothing where it surely rests."""
    gives: dict[str, Number] = {}
    shore = mode.value("shore")
    inverting = mode.says("inverter", "inverting")
    for source in facts.network.sources:
        item = source.equipment
        limit: Number = ENDLESS if source.storage else source.limit  # type: ignore[assignment]
        from_shore = item.kind in ("shore inlet", "charger") or source.port == "dc"
        resting = (
            (item.kind == "alternator" and mode.says("engine", "stopped"))
            or (from_shore and mode.says("shore", "absent"))
            or (source.port in ("ac", "ac-out") and not inverting)
            or (item.kind in ("solar array", "solar controller") and _none(mode.value("sun")))
        )
        if resting or (item.kind == "dc converter" and _idle_side(item, source.port, mode, drawing=False)):
            limit = 0.0
        elif item.kind == "dc converter" and source.port == "high":
            charge = item.value("settings.charge current")
            limit = _lesser(limit, charge) if isinstance(charge, float | Range) else limit
        elif item.kind == "shore inlet" and isinstance(shore, float | Range):
            limit = _lesser(limit, shore)
        _give(gives, source.live, limit)
    return gives


def gives_always(facts: Facts) -> dict[str, Number]:
    """Live node of a source -> the most it can give, in no particular mode (A)."""
    gives: dict[str, Number] = {}
    for source in facts.network.sources:
        _give(gives, source.live, ENDLESS if source.storage else source.limit)  # type: ignore[arg-type]
    return gives


def _give(gives: dict[str, Number], node: str, limit: Number) -> None:
    before = gives.get(node, 0.0)
    if ENDLESS in (before if isinstance(before, float) else 0.0, limit if isinstance(limit, float) else 0.0):
        gives[node] = ENDLESS
    else:
        gives[node] = add(before, limit)
