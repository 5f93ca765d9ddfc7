"""Whether what is to run on the battery side has a source in each of its modes: walks over the graph alone."""

from __future__ import annotations

from typing import Any

from checker.facts.bank import loose_bank
from checker.facts.catalogue import fact
from checker.facts.currents import doubtful, gives_in
from checker.facts.load_voltage import parts_of
from checker.facts.subject import Subject
from checker.quantities import Unknown, same
from checker.quantities.values import between


@fact(
    "load",
    "modes_without_supply",
    unit="each",
    says="Modes in which it is to run although no source is joined to it, whatever the contacts of which nobody knows.",
    method="walk over live conductors and contacts that may be closed; a converter counts as a source where it gives",
)
def modes_without_supply(s: Subject) -> Any:
    node = f"{s.id}:+"
    if node not in s.facts.network.near:
        return Unknown(f"{s.id} is connected to no battery-side circuit")
    count, doubts = 0, 0
    for mode in s.facts.design.modes.values():
        running = mode.value("running")
        if not isinstance(running, tuple) or s.id not in dict(running):
            continue
        s.use(f"{mode.path}.running.{s.id}", dict(running)[s.id], "")
        groups, _ = parts_of(s.facts, mode)
        giving = [source for source, amps in gives_in(s.facts, mode).items() if not same(amps, 0.0)]
        unsure = doubtful(s.facts, mode)
        if groups.find(node) in {groups.find(source) for source in giving}:
            sure = [source for source in giving if source.partition(":")[0] not in unsure]
            doubts += groups.find(node) not in {groups.find(source) for source in sure}
        else:
            count += 1
            s.note(f"mode {mode.name}: no source is joined to {s.id}".__str__)
    loose = loose_bank(s.facts) if count else None
    if loose is not None:
        return loose
    return between(float(count), float(count + doubts)) if doubts else float(count)
