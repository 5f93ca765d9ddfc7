"""Loads, inverters and converters of a design in its direct-current network in one mode."""

from __future__ import annotations

from checker.circuit.dc_elements import Branch, Converter, CurrentLoad, Element, PowerLoad, Side
from checker.circuit.sources import LOADS
from checker.circuit.supply import joined
from checker.design.given import DEFAULT
from checker.design.model import Equipment
from checker.facts.contacts import contacts, engine_runs, is_word, signal_item, signal_state
from checker.facts.dc_amounts import (
    EXTREMES,
    SETTING_SHARE,
    SETTINGS_SAY,
    Amount,
    Case,
    about,
    exactly,
    number,
    possible,
    smaller,
    stated,
)
from checker.facts.dc_plan import Heat, Maker, Plan
from checker.quantities import Truth, Unknown, Window

INVERTERS = ("inverter", "inverter-charger")
UNTOLD_W = 100.0
HOLD_OHM = 2e-4  # how sharply a converter is held back by its input voltage
PRACTICE = "common practice, no source"
EFFICIENCY_SPREAD = 0.02
DEFAULT_EFFICIENCY = (0.78, 0.85, 0.95)


def add_loads(plan: Plan) -> None:
    """Everything that draws in the mode."""
    network = plan.facts.network
    entries = _entries(plan)
    for item in network.equipment.values():
        if item.kind in LOADS and item.name in entries and f"{item.name}:+" in network.near:
            _load(plan, item, entries[item.name])
        elif item.kind in INVERTERS and f"{item.name}:dc+" in network.near:
            _inverter(plan, item)
        elif item.kind == "dc converter":
            _converter(plan, item)


def _entries(plan: Plan) -> dict[str, tuple[Amount, bool]]:
    """Name of what runs -> how much, and whether that is power (else current)."""
    running = plan.mode.value("running")
    found: dict[str, tuple[Amount, bool]] = {}
    for name, given in dict(running).items() if isinstance(running, tuple) else ():
        power = given.text.rstrip().endswith("W")
        value = number(plan.s.use(f"{plan.mode.path}.running.{name}", given, "W" if power else "A"))
        most = UNTOLD_W if power else UNTOLD_W / 12.0
        found[name] = plan.book.amount(value, f"what {name} draws in {plan.mode.name}", 0.0, most), power
    return found


def _load(plan: Plan, item: Equipment, entry: tuple[Amount, bool]) -> None:
    much, power = entry
    name = plan.name(item.name)
    plan.loads.append(name)
    plus, minus = f"{item.name}:+", f"{item.name}:-"

    def make(case: Case, heat: Heat) -> Element:
        drawn = much.of(case, raises=False)
        return PowerLoad(name, plus, minus, drawn) if power else CurrentLoad(name, plus, minus, drawn)

    plan.add(make)


def mains_watts(plan: Plan, inverter: Equipment | None) -> Amount:
    """Power of the mains loads that run (W): of those an inverter feeds, or of all."""
    network = plan.facts.network
    reach: dict[str, None] | None = None
    if inverter is not None:
        out = "ac-outL" if inverter.kind == "inverter-charger" else "acL"
        reach = joined(network, [f"{inverter.name}:{out}"], contacts(plan.facts, plan.mode).perhaps)
    volts = stated(number(plan.read(plan.facts.design.vehicle, "supply.voltage"))) or exactly(230.0)
    total = exactly(0.0)
    for name, (much, power) in _entries(plan).items():
        node = f"{name}:L"
        if node not in network.near or (reach is not None and node not in reach):
            continue
        watts = much if power else much.times(volts.likely)
        total = Amount(
            total.likely + watts.likely, total.low + watts.low, total.high + watts.high, total.known and watts.known
        )
    return total


def _inverter(plan: Plan, item: Equipment) -> None:
    works = is_word(plan.read(plan.mode, "inverter"), "inverting")
    if works is False:
        return
    if works is not True:
        plan.book.lack(f"whether {item.name} is inverting in {plan.mode.name}")
    loads = mains_watts(plan, item)
    efficiency = _efficiency(plan, item)
    rating = possible(number(plan.read(item, "power")), 0.0)
    idle = 0.006 * (rating.likely if rating is not None else 2000.0)
    told = plan.read(item, "no load")
    words = f"an inverter draws 0.6 % of its rating with nothing connected (half to twice that); {PRACTICE}"
    waiting = stated(number(told)) or Amount(idle, 0.5 * idle, 2.0 * idle)
    if stated(number(told)) is None:
        plan.book.assume(words)
    name = plan.name(item.name)
    plan.loads.append(name)
    lowest = _lowest(plan, item)

    def make(case: Case, heat: Heat) -> Element | None:
        if works is not True and case == EXTREMES[0]:
            return None
        watts = loads.of(case, raises=False) / efficiency.of(case, raises=True) + waiting.of(case, raises=False)
        return PowerLoad(name, f"{item.name}:dc+", f"{item.name}:dc-", watts, lowest_v=lowest)

    plan.add(make)


def _lowest(plan: Plan, item: Equipment) -> float | None:
    """Voltage below which an inverter stops."""
    window = plan.read(item, "dc.voltage")
    found = [window.low] if isinstance(window, Window) and isinstance(window.low, float) else []
    stop = stated(number(plan.read(item, "settings.low stop")))
    if stop is not None:
        found.append(stop.likely)
    return max(found) if found else None


def _efficiency(plan: Plan, item: Equipment) -> Amount:
    given = item.get("efficiency")
    told = possible(number(plan.read(item, "efficiency")), 0.0, 1.0)
    if told is None or given.basis == DEFAULT:
        low, likely, high = DEFAULT_EFFICIENCY
        plan.book.assume(f"efficiency of {item.name} is taken as {likely:.0%} ({low:.0%} to {high:.0%}); {PRACTICE}")
        return Amount(likely, low, high)
    plan.book.assume(f"a stated efficiency holds within 2 % of the power; {PRACTICE}")
    return Amount(told.likely, max(0.01, told.low - EFFICIENCY_SPREAD), min(1.0, told.high + EFFICIENCY_SPREAD))


def _converter(plan: Plan, item: Equipment) -> None:
    near = plan.facts.network.near
    if f"{item.name}:low+" not in near or f"{item.name}:high+" not in near:
        return
    into, out = _direction(plan, item)
    if plan.read(item, "isolated") is False:
        _joined_negatives(plan, item)
    if into == "":
        return
    perhaps = plan.read(item, "both ways") is not True and _is_let(plan, item) is not True
    if perhaps:
        plan.book.lack(f"whether {item.name} works in {plan.mode.name}")
    set_v = _set_voltage(plan, item, into, out)
    limit_in = _current(plan, item, into)
    limit_out = _current(plan, item, out)
    told = stated(number(plan.read(item, "settings.charge current")))
    if out == "high" and told is not None:
        limit_out = smaller(limit_out, told)
    held = stated(number(plan.read(item, "settings.holds low above"))) if into == "low" else None
    idle = stated(number(plan.read(item, "idle")))
    if idle is None:
        plan.book.assume(f"a converter draws 5 W (0 to 15 W) for itself; {PRACTICE}")
        idle = Amount(5.0, 0.0, 15.0)
    window = plan.read(item, f"sides.{into}.voltage")
    lowest = window.low if isinstance(window, Window) and isinstance(window.low, float) else None
    efficiency = _efficiency(plan, item)
    name = plan.name(item.name)
    plan.sources.append(name)
    plan.gives_at[name] = out
    waiting = idle

    def make(case: Case, heat: Heat) -> Element | None:
        if perhaps and case == EXTREMES[0]:
            return None
        return Converter(
            name,
            Side(f"{item.name}:{into}+", f"{item.name}:{into}-"),
            Side(f"{item.name}:{out}+", f"{item.name}:{out}-"),
            efficiency.of(case, raises=True),
            set_v=set_v.of(case, raises=True),
            limit_in_a=limit_in.of(case, raises=True),
            limit_out_a=limit_out.of(case, raises=True),
            hold_v=None if held is None else held.of(case, raises=True),
            hold_ohm=HOLD_OHM,
            idle_w=waiting.of(case, raises=False),
            droop_ohm=0.1 / max(limit_out.likely, 1.0),
            lowest_v=lowest,
        )

    plan.add(make)


def _direction(plan: Plan, item: Equipment) -> tuple[str, str]:
    """Input and output side in the mode, empty when it rests; one for both ways charges while the engine runs."""
    if plan.read(item, "both ways") is True:
        plan.read(plan.mode, "engine")
        return ("low", "high") if engine_runs(plan.mode) is True else ("high", "low")
    gives = {source.port for source in plan.facts.network.sources if source.equipment is item}
    if len(gives) != 1:
        plan.book.lack(f"which way {item.name} works")
        return "", ""
    (out,) = gives
    if _is_let(plan, item) is False:
        return "", ""
    return ("high", "low") if out == "low" else ("low", "high")


def _is_let(plan: Plan, item: Equipment) -> Truth:
    """Whether its signals let a converter work; what a signal that is told does not decide is taken as given."""
    doubt: Unknown | None = None
    for key in ("enabled by", "wakes by"):
        signal = plan.read(item, key)
        if isinstance(signal, str):
            if signal_state(plan.facts, signal, plan.mode) is False:
                return False
            source = signal_item(plan.facts, signal)
            if source is not None and source.has("means") and isinstance(source.value("means"), Unknown):
                doubt = Unknown(f"what {signal} means is not told")
        elif isinstance(signal, Unknown) and item.allows(key) and item.has(key):
            doubt = signal
    return True if doubt is None else doubt


def _set_voltage(plan: Plan, item: Equipment, into: str, out: str) -> Amount:
    both = plan.read(item, "both ways") is True
    keys = ("settings.feed voltage", "settings.charge voltage") if out == "low" else ("settings.charge voltage",)
    for key in keys[:1] if both else keys:
        told = stated(number(plan.read(item, key)))
        if told is not None:
            plan.book.assume(SETTINGS_SAY)
            return about(told, SETTING_SHARE)
    nominal = stated(number(plan.read(item, f"sides.{out}.nominal")))
    if nominal is None:
        plan.book.lack(f"voltage that {item.name} holds")
        return Amount(13.0, 11.0, 15.0, False)
    plan.book.assume(
        f"{item.name}, whose setting is not told, holds 8 % (0 to 15 %) above the nominal voltage of its output; "
        f"{PRACTICE}"
    )
    return Amount(1.08 * nominal.likely, nominal.low, 1.15 * nominal.high)


def _current(plan: Plan, item: Equipment, side: str) -> Amount:
    told = number(plan.read(item, f"sides.{side}.current"))
    return plan.book.amount(told, f"greatest current of {item.name} at its {side} side", 1.0, 300.0)


def _joined_negatives(plan: Plan, item: Equipment) -> None:
    plan.book.assume(f"the negatives of a converter that does not isolate are joined by 1 mΩ (0.2 to 5 mΩ); {PRACTICE}")
    name = plan.name(f"{item.name} negatives")
    ohm = Amount(1e-3, 2e-4, 5e-3)
    plan.add(_join(name, f"{item.name}:low-", f"{item.name}:high-", ohm))


def _join(name: str, a: str, b: str, ohm: Amount) -> Maker:
    return lambda case, heat: Branch(name, a, b, ohm.of(case, raises=False))
