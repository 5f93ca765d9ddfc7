"""What facts about the mains side share: the reachable states, worst cases over them, doubts as unknowns."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import NamedTuple

from checker.circuit.groups import Groups
from checker.circuit.mains import Feed
from checker.circuit.states import MOST_STATES, State, States, Truth
from checker.design.item import Item
from checker.facts.subject import Facts, Subject
from checker.quantities import Number, Range, Unknown, between, greatest, least

TOO_MANY = Unknown(f"the mains side has more than {MOST_STATES} combinations of switch positions")


def states_of(facts: Facts) -> States:
    """The reachable supply states, found once."""
    found: States | None = facts.shared.get("supply states")
    if found is None:
        found = facts.shared["supply states"] = States(facts.network)
    return found


def shown_states(s: Subject) -> tuple[State, ...]:
    """The states; for a working, those first that the fewest operations reach, so that the first to show a thing is
    the nearest."""
    states = states_of(s.facts)
    return states.states if s.facts.recorder is None else states.nearest


def battery_side_of(facts: Facts) -> Groups:
    """The direct-current side joined into groups, found once."""
    from checker.circuit.feeding import battery_side

    found: Groups | None = facts.store.get("battery side")
    if found is None:
        found = facts.store["battery side"] = battery_side(facts.network)
    return found


def answer(truth: Truth, reason: str) -> bool | Unknown:
    """A truth of the graph as the value of a yes/no fact."""
    return Unknown(reason) if truth is None else truth


def ever(states: Iterable[State], asks: Callable[[State], Truth]) -> tuple[Truth, str]:
    """Whether something is ever so: True with the name of the first state that surely shows it, else MAYBE, else False.

    A state that is not surely reachable can only show that it may be so.
    """
    doubt = ""
    for state in states:
        found = asks(state)
        if found is True and state.certain:
            return True, state.name
        if found is not False:
            doubt = doubt or state.name
    return (None, doubt) if doubt else (False, "")


class Count(NamedTuple):
    """Least and most of a count in one state; `certain` when that state, and what is counted in it, is surely so."""

    state: str
    certain: bool
    least: int
    most: int


def worst(counted: Iterable[Count], pick: Callable[..., Number]) -> tuple[Number, str]:
    """The least or greatest count over states (`pick` is `least` or `greatest`), with the state that shows it.

    None when there is no state. What is not surely so widens the answer only.
    """
    found = [(one, between(float(one.least), float(one.most))) for one in counted]
    counts = [(count, one.state) for one, count in found if one.certain]
    doubtful = [count for one, count in found if not one.certain]
    if not counts and not doubtful:
        return None, ""
    if not counts:
        return Unknown("whether these positions are reached is not known"), ""
    value = counts[0][0]
    for count, _ in counts[1:]:
        value = pick(value, count)
    shown = next((name for count, name in counts if repr(count) == repr(value)), counts[0][1])
    for count in doubtful:
        other = pick(value, count)
        value = between(min(_low(value), _low(other)), max(_high(value), _high(other)))
    return value, shown


def _low(value: Number) -> float:
    return value.low if isinstance(value, Range) else value if isinstance(value, float) else 0.0


def _high(value: Number) -> float:
    return value.high if isinstance(value, Range) else value if isinstance(value, float) else float("inf")


def tell(s: Subject, words: str) -> None:
    """Add a line of working that is made already."""
    s.note(lambda: words)


def tell_state(s: Subject, name: str) -> None:
    """Name the state that shows something, and the shortest sequence of operations that reaches it."""
    if s.facts.recorder is not None and name:
        tell(s, f"in the state: {name}")
        tell(s, f"reached by: {witness_words(states_of(s.facts), name)}")


def witness_words(states: States, name: str) -> str:
    """The shortest sequence of operations to the state of that name, from shore absent and everything at rest."""
    state = states.named(name)
    steps = None if state is None else states.witness(state)
    if steps is None:
        return "no sequence of operations from rest; it stays so only if contacts already stand so"
    return "; ".join(steps) or "nothing: everything at rest"


def read_switching(s: Subject) -> None:
    """Note as inputs what the states rest on, so that a finding can say which answers would settle it."""
    if s.facts.recorder is None:
        return
    for item, key in _switching(s.facts):
        s.read(item, key)


def _switching(facts: Facts) -> Iterator[tuple[Item, str]]:
    mains = states_of(facts).mains
    for feed in mains.feeds:
        item = feed.equipment
        if item.kind == "shore inlet":
            yield facts.design.vehicle, "supply.earthing"
        if item.kind == "inverter-charger":
            yield item, "transfer.when"
            yield item, "transfer.poles"
    for bond in mains.bonds:
        if bond.link is not None:
            yield bond.item, "bond.when"
        elif bond.item.kind == "board":
            yield bond.item, "neutral bar"
    for item in dict.fromkeys(link.equipment for link in mains.switching):
        if item.kind == "changeover":
            yield item, "poles"
            yield item, "operated"
            if item.value("operated") in ("coil", None) or isinstance(item.value("operated"), Unknown):
                yield item, "coil on"
                yield item, "rest"
        elif item.kind == "relay":
            yield item, "driven by"
            yield item, "form"


def feed_named(facts: Facts, name: str) -> Feed | None:
    """The feed of that name."""
    return next((feed for feed in states_of(facts).mains.feeds if feed.name == name), None)


__all__ = [
    "TOO_MANY", "Count", "answer", "battery_side_of", "ever", "feed_named", "greatest", "least", "read_switching",
    "shown_states", "states_of", "tell", "tell_state", "witness_words", "worst",
]  # fmt: skip
