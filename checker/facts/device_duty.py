"""What a device is rated for beyond its current, and what it alone feeds."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, every


@fact("device", "full_duty", type="yes/no", says="Its maker rates it for its full current for ever.")
def full_duty(s: Subject) -> Any:
    return s.read(s.item, "full duty") if s.item.allows("full duty") else False


@fact("device", "guards_cut_out_motors", type="yes/no",
      says="It feeds motors with a thermal cut-out of their own, and nothing else.",
      method="loads at the end of the circuits in whose run it stands")  # fmt: skip
def guards_cut_out_motors(s: Subject) -> Truth:
    lines = s.protects
    if isinstance(lines, Unknown):
        return lines
    circuits = {one.id: one for line in lines if not isinstance(one := line.circuit, Unknown)}
    answers: list[Truth] = [bool(circuits)]
    for circuit in circuits.values():
        feeds = circuit.feeds
        answers.append(circuit.is_final)
        if isinstance(feeds, Unknown):
            answers.append(feeds)
        else:
            answers += [both(load.is_motor, load.thermal_cut_out) for load in feeds]
            answers.append(bool(feeds))
    return every(answers)
