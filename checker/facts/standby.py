"""What a converter that waits is kept awake for."""

from __future__ import annotations

from checker.circuit.supply import joined
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Truth, some

ALARMS = ("alarm", "detector")


@fact("converter", "keeps_watch", type="yes/no",
      says="An alarm, or another load that people depend on, hangs on what it feeds, so that nobody may switch it off.",
      method="graph, every contact closed")  # fmt: skip
def keeps_watch(s: Subject) -> Truth:
    network = s.facts.network
    near = joined(network, [one.live for one in network.sources if one.equipment is s.item])
    answers: list[Truth] = []
    for item in (item for node in near for item in network.sinks.get(node, ())):
        if item.kind in ALARMS:
            return True
        load = s.facts.subject("load", item.name)
        if load is not None:
            answers.append(load.is_essential)
    return some(answers)
