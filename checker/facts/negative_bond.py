"""Whether the negative of a battery is joined to the chassis where something comes back that way."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import CHASSIS, LIVE, Wire
from checker.circuit.supply import is_live, joined
from checker.facts.bank import home, loose_bank, some_gap
from checker.facts.catalogue import fact
from checker.facts.joining import batteries_behind, bonded_negative
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, greatest, some


@fact(
    "bank",
    "negative_meets_chassis",
    type="yes/no",
    says="A conductor joins its negative to the chassis.",
    method="graph: bonds and returns with a run of their own met from its negative along returns, bars and links, "
    "converters left out",
)
def negative_meets_chassis(s: Subject) -> Truth:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    seen = [home(s.facts, s.item).removesuffix("+") + "-"]
    for node in seen:
        for edge, far in s.facts.network.near.get(node, ()):
            if far == CHASSIS and isinstance(edge, Wire) and edge.lengths:
                return True
            if far != CHASSIS and far not in seen and not is_live(edge):
                seen.append(far)
    if some_gap(s.facts) or any(circuit.returns.how == "unknown" for circuit in s.facts.network.circuits):
        return Unknown("part of some run, or how some circuit returns, was not seen and may join it to the chassis")
    return False


@fact(
    "bank",
    "returns_by_chassis",
    type="yes/no",
    says="What it feeds without a converter between comes back by the chassis in some circuit.",
    method="circuits of its live side with a chassis return",
)
def returns_by_chassis(s: Subject) -> Truth:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    network = s.facts.network
    fed = joined(network, [home(s.facts, s.item)])
    answers: list[Truth] = []
    for circuit in network.circuits:
        live, how = network.conductor(circuit.name, LIVE), circuit.returns.how
        if live is not None and (live.start in fed or live.end in fed) and how in ("chassis", "unknown"):
            answers.append(True if how == "chassis" else Unknown(f"how {circuit.name} returns is not known"))
    return some(answers)


@fact("bank", "negatives_on_chassis", type="yes/no", says="The file says that negatives are on the chassis.",
      method="`chassis.negative` of the vehicle")  # fmt: skip
def negatives_on_chassis(s: Subject) -> Truth:
    said: Truth = s.read(s.facts.design.vehicle, "chassis.negative")
    return said


@fact(
    "circuit",
    "fault_device_rating",
    unit="A",
    says="Largest first device of the batteries that a fault to the chassis draws on through it; none for others.",
    method="first devices of each battery on the live side of the equipment whose negative it bonds, a lead "
    "without a device left out; what carries the rating of a device outlasts a short until that device opens",
    source="IEC 60364-4-43, 435.1, 2008 (from memory)",
)
def fault_device_rating(s: Subject) -> Any:
    name = bonded_negative(s)
    if name is None:
        return None
    fed = joined(s.facts.network, [f"{name}:+", *batteries_behind(s, f"{name}:-")])
    found: list[Number] = [0.0]
    for approach in s.facts.subjects("approach"):
        if any(one.storage and one.live in fed for one in approach.item.sources):
            devices = approach.devices
            if isinstance(devices, Unknown) or isinstance(approach.has_device, Unknown):
                found.append(Unknown(f"the first device of {approach.id} is not known"))
            elif approach.has_device is True:
                found.extend(device.rating for device in devices)
    return greatest(found)
