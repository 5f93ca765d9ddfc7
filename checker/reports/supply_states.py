"""The supply states of the mains side as plain data: what `fitout states` prints and the HTML report shows."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypedDict

from checker.reports.caution import CAUTION, DEFERRAL

if TYPE_CHECKING:
    from checker.circuit.mains import Feed
    from checker.circuit.states import State, States, Truth
    from checker.design.model import Design
    from checker.facts.isolation import Left
    from checker.facts.subject import Facts


class Island(TypedDict):
    """Sources whose neutrals are joined, and where it meets earth; `perhaps` where the file leaves it open."""

    sources: list[str]
    links: list[str]
    perhaps: list[str]


class Residual(TypedDict):
    """What one source feeds through the same residual-current devices; `works` is yes, no or unknown."""

    source: str
    devices: list[str]
    protected: str
    works: str
    loads: list[str]


class StateData(TypedDict):
    """One supply state. `witness` is None when no sequence of operations from rest reaches it."""

    name: str
    certain: bool
    sources: list[str]
    perhaps: list[str]
    neutral: list[Island]
    residual: list[Residual]
    outlets: list[str]
    outlets_perhaps: list[str]
    pins: list[str]
    witness: list[str] | None


class Fed(TypedDict):
    """What some sources still feed; `perhaps` where it depends on other contacts, or on what the file leaves open."""

    sources: list[str]
    loads: list[str]
    perhaps: list[str]


class Opened(TypedDict):
    """What stays live with something opened; `live` is None when that is not known."""

    opened: str
    live: list[Fed] | None


class Lost(TypedDict):
    """Which essential loads go dark, away from the shore, when one piece of equipment fails alone."""

    failed: str
    dark: list[str]
    perhaps: list[str]


class SupplyStates(TypedDict):
    """The whole table."""

    caution: str
    file: str
    title: str
    sha256: str
    complete: bool
    merged: bool
    most: int
    states: list[StateData]
    isolation: list[Opened]
    losses: list[Lost]
    deferral: str


def supply_states(design: Design) -> SupplyStates | None:
    """The table for a design; None when it has no mains."""
    from checker.circuit.states import MOST_STATES
    from checker.facts.mains import states_of
    from checker.facts.subject import Facts

    facts = Facts(design)
    states = states_of(facts)
    if not states.mains.feeds:
        return None
    title = design.title.value
    return {
        "caution": CAUTION,
        "file": design.file,
        "title": title if isinstance(title, str) else "",
        "sha256": design.sha256,
        "complete": states.complete,
        "merged": states.merged,
        "most": MOST_STATES,
        "states": [_state(states, state) for state in states.states],
        "isolation": _isolation(facts),
        "losses": _losses(facts),
        "deferral": DEFERRAL,
    }


def _state(states: States, state: State) -> StateData:
    from checker.circuit.feeding import consumers, live_node

    outlets = [item for item in consumers(states.mains.network) if item.kind == "outlet"]
    live = {item.name: state.is_live(live_node(item)) for item in outlets}
    steps = states.witness(state)
    return {
        "name": state.name,
        "certain": state.certain and state.stable,
        "sources": [feed.name for feed, on in state.feeding.items() if on is True],
        "perhaps": [feed.name for feed, on in state.feeding.items() if on is not True],
        "neutral": _islands(state),
        "residual": _residual(states, state),
        "outlets": [name for name, on in live.items() if on is True],
        "outlets_perhaps": [name for name, on in live.items() if on is None],
        "pins": _pins(states, state),
        "witness": None if steps is None else list(steps),
    }


def _islands(state: State) -> list[Island]:
    from checker.circuit.feeding import places_of_links

    found: dict[str, list[Feed]] = {}
    for feed in state.feeding:
        found.setdefault(state.sure.find(feed.neutral), []).append(feed)
    islands: list[Island] = []
    for feeds in found.values():
        sure, may = places_of_links(state, feeds[0])
        islands.append({"sources": [feed.name for feed in feeds], "links": sure, "perhaps": may})
    return islands


def _residual(states: States, state: State) -> list[Residual]:
    from checker.circuit.feeding import consumers, live_node, residual_path, residual_works

    found: dict[tuple[str, tuple[str, ...], str, str], list[str]] = {}
    for load in consumers(states.mains.network):
        node = live_node(load)
        sure, may = state.feeds_of(node)
        for feed in (*sure, *may):
            path = residual_path(state, feed, node)
            works = residual_works(state, feed, f"{node[:-1]}N") if path.protected is not False else False
            devices = tuple(device.name for device in path.devices)
            found.setdefault((feed.name, devices, _word(path.protected), _word(works)), []).append(load.name)
    return [
        {"source": source, "devices": list(devices), "protected": protected, "works": works, "loads": loads}
        for (source, devices, protected, works), loads in found.items()
    ]


def _word(truth: Truth) -> str:
    return "unknown" if truth is None else "yes" if truth else "no"


def _pins(states: States, state: State) -> list[str]:
    """Inlets without their lead whose pins are live, and from where."""
    from checker.circuit.feeding import reaches_pins

    words = []
    for inlet in states.mains.feeds:
        for feed in states.mains.feeds if not inlet.aboard else ():
            if feed is inlet:
                continue
            reached = reaches_pins(state, feed, inlet)
            if reached is not False:
                words.append(f"{inlet.name} {'live' if reached else 'perhaps live'} from {feed.name}")
    return words


def _isolation(facts: Facts) -> list[Opened]:
    from checker.facts.isolation import bank_isolators, left_with_open, mains_left, mains_switches
    from checker.facts.mains import states_of
    from checker.quantities import Unknown

    found: list[Opened] = []
    states = states_of(facts)
    if not states.complete:
        return found
    if any(not feed.aboard for feed in states.mains.feeds):
        found.append({"opened": "the shore lead out", "live": _fed(mains_left(states, shore=False))})
    items = dict.fromkeys((*mains_switches(facts), *bank_isolators(facts)))
    for item in items:
        left = left_with_open(facts, item)
        found.append({"opened": f"{item.name} open", "live": None if isinstance(left, Unknown) else _fed(left)})
    return found


def _losses(facts: Facts) -> list[Lost]:
    """For loads named or marked essential, alarms, detectors and brakes; those with a cell of their own left out."""
    from checker.facts.loss import losses

    kinds = ("alarm", "detector", "brake")
    essential = [load for load in facts.subjects("load") if load.is_essential is True or load.item.kind in kinds]
    bare = [load.item for load in essential if load.own_cell is None]
    return [{"failed": one.failed, "dark": list(one.dark), "perhaps": list(one.perhaps)} for one in losses(facts, bare)]


def _fed(left: tuple[Left, ...]) -> list[Fed]:
    """Sources that feed the same things are told together."""
    found: dict[tuple[tuple[str, ...], tuple[str, ...]], list[str]] = {}
    for one in left:
        found.setdefault((one.sure, one.perhaps), []).append(one.source)
    return [{"sources": sources, "loads": list(sure), "perhaps": list(may)} for (sure, may), sources in found.items()]
