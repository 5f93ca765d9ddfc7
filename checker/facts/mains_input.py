"""Whether what takes mains and is no load is built for the voltage that reaches it: inlets, chargers, transformers."""

from __future__ import annotations

from typing import Any

from checker.circuit.mains import Feed
from checker.design.given import RatedVoltage
from checker.facts.catalogue import fact
from checker.facts.mains import TOO_MANY, states_of
from checker.facts.mains_voltage import given_voltage, site_voltage, tapped
from checker.facts.state import METHOD
from checker.facts.subject import Subject
from checker.quantities import Number, Unknown, divide, greatest, least

INPUTS = {"charger": ("ac.voltage", "acL"), "transformer": ("primary.voltage", "primaryL")}
"""Kind -> key of the voltage it is built for, and the node at which it takes its supply."""


@fact("inlet", "site_line_voltage", unit="V", says="Voltage of the sites between line and neutral, or two legs.",
      method="of three lines that between them over the square root of three")  # fmt: skip
def site_line_voltage(s: Subject) -> Number:
    return site_voltage(s, 1.0)


@fact("equipment", "input_voltage", unit="V",
      says="Mains voltage that a charger or transformer is built for; none for others.")  # fmt: skip
def input_voltage(s: Subject) -> Any:
    entry = INPUTS.get(s.item.kind)
    if entry is None or f"{s.id}:{entry[1]}" not in s.facts.network.near:
        return None
    rated = s.read(s.item, entry[0])
    return rated.volts if isinstance(rated, RatedVoltage) else rated


@fact(
    "equipment",
    "lowest_input",
    unit="ratio",
    says="Lowest mains voltage that reaches a charger or transformer, over what it is built for; none without either.",
    method=METHOD,
)
def lowest_input(s: Subject) -> Number:
    return _over(s, least)


@fact(
    "equipment",
    "highest_input",
    unit="ratio",
    says="Highest mains voltage that reaches a charger or transformer, over what it is built for; none without either.",
    method=METHOD,
)
def highest_input(s: Subject) -> Number:
    return _over(s, greatest)


def _over(s: Subject, pick: Any) -> Number:
    built_for = s.input_voltage
    if built_for is None:
        return None
    reaching = _reaching(s)
    return divide(pick(reaching), built_for) if reaching else None


def _reaching(s: Subject) -> list[Number]:
    """The voltages of the sources that surely reach it, and an unknown for each other one that may."""
    if not states_of(s.facts).complete:
        return [TOO_MANY]
    tap = tapped(s, but=s.id)
    if tap is not None:
        return [tap]
    node = f"{s.id}:{INPUTS[s.item.kind][1]}"
    sure: dict[str, Feed] = {}
    perhaps: dict[str, Feed] = {}
    for state in states_of(s.facts).states:
        here, maybe = state.feeds_of(node, but=s.id)
        if state.certain:
            sure.update({feed.name: feed for feed in here})
        perhaps.update({feed.name: feed for feed in (*here, *maybe)})
    found: list[Number] = [given_voltage(s, feed) for feed in sure.values()]
    doubts = [Unknown(f"whether {name} reaches {s.id} is not known") for name in perhaps if name not in sure]
    return [*found, *doubts]
