"""What one supply state means: neutral-earth links, joined sources, live inlet pins, residual-current protection.

Answers are True, False or MAYBE; counts are pairs, the least and the most.
"""

from __future__ import annotations

from typing import NamedTuple

from checker.circuit.elements import LIVE, Conductor, Link, Wire
from checker.circuit.groups import Groups
from checker.circuit.mains import Bond, Feed, Mains, word
from checker.circuit.network import Network
from checker.circuit.sources import LOADS
from checker.circuit.state import MAYBE, State, Truth
from checker.design.model import Equipment

NEVER_ASHORE, ALWAYS_ASHORE, PERHAPS_ASHORE = (0, 0), (1, 1), (0, 1)


def ashore(mains: Mains) -> tuple[int, int]:
    """Neutral-earth links the site brings with it: one, except where it is insulated (IT) or not known."""
    earthing = word(mains.network.design.vehicle, "supply.earthing")
    if earthing is None:
        return PERHAPS_ASHORE
    return NEVER_ASHORE if earthing == "IT" else ALWAYS_ASHORE


def neutral_links(state: State, feed: Feed) -> tuple[int, int]:
    """Least and most neutral-earth links on the neutral of a feed, the one ashore included."""
    least = most = 0
    for bond, closed in state.bonds.items():
        if closed is True and state.sure.joined(bond.neutral, feed.neutral):
            least += 1
        if closed is not False and state.may.joined(bond.neutral, feed.neutral):
            most += 1
    low, high = ashore(state.mains)
    for other in state.feeding:
        if not other.aboard:
            least += low * state.sure.joined(other.neutral, feed.neutral)
            most += high * state.may.joined(other.neutral, feed.neutral)
    return least, most


def places_of_links(state: State, feed: Feed) -> tuple[list[str], list[str]]:
    """Where neutral meets earth on the neutral of a feed: for sure, and perhaps as well; `ashore` for the site."""
    sure, may = [], []
    for bond, closed in state.bonds.items():
        if closed is True and state.sure.joined(bond.neutral, feed.neutral):
            sure.append(bond.name)
        elif closed is not False and state.may.joined(bond.neutral, feed.neutral):
            may.append(bond.name)
    low, high = ashore(state.mains)
    for other in state.feeding:
        if not other.aboard and state.may.joined(other.neutral, feed.neutral):
            certain = low and state.sure.joined(other.neutral, feed.neutral)
            if high:
                (sure if certain else may).append("ashore")
    return sure, may


def links_with(state: State, bond: Bond) -> tuple[int, int]:
    """Least and most neutral-earth links on the neutral at a bond, itself included; none while nothing feeds it."""
    least, most = 0, 0
    for feed, on in state.feeding.items():
        low, high = neutral_links(state, feed)
        if on is True and state.sure.joined(bond.neutral, feed.neutral):
            least = max(least, low)
        if state.may.joined(bond.neutral, feed.neutral):
            most = max(most, high)
    return least, most


def bonded_on_shore(state: State, bond: Bond) -> Truth:
    """Whether a bond is closed on a neutral that the shore feeds."""
    closed = state.bonds.get(bond, False)
    if closed is False:
        return False
    for feed in state.feeding:
        if feed.aboard:
            continue
        if closed is True and state.sure.joined(feed.neutral, bond.neutral):
            return True
        if state.may.joined(feed.neutral, bond.neutral):
            return MAYBE
    return False


def joined_with(state: State, feed: Feed, pole: str) -> tuple[list[Feed], list[Feed]]:
    """Other feeds whose live (or neutral) is joined to that of `feed`: for sure, and perhaps as well."""
    sure, may = [], []
    for other, on in state.feeding.items():
        if other is feed:
            continue
        a, b = (feed.live, other.live) if pole == LIVE else (feed.neutral, other.neutral)
        if on is True and state.feeding[feed] is True and state.sure.joined(a, b):
            sure.append(other)
        elif state.may.joined(a, b):
            may.append(other)
    return sure, may


def reaches_pins(state: State, feed: Feed, inlet: Feed) -> Truth:
    """Whether a feed aboard makes the pins of an inlet without its lead live.

    An inverter-charger that may feed back counts as reaching its own input.
    """
    if inlet in state.feeding or feed not in state.feeding:
        return False
    surely = state.feeding[feed] is True
    if surely and state.sure.joined(feed.live, inlet.live):
        return True
    item = feed.equipment
    answer: Truth = MAYBE if state.may.joined(feed.live, inlet.live) else False
    if item.kind == "inverter-charger":
        back = f"{item.name}:ac-inL"
        feedback = word(item, "transfer.backfeed")
        if feedback == "possible" and surely and state.sure.joined(back, inlet.live):
            return True
        if feedback != "blocked" and state.may.joined(back, inlet.live):
            return MAYBE
    return answer


class Path(NamedTuple):
    """Residual-current protection between a feed and a load: whether there is any, and the devices on the way."""

    protected: Truth
    devices: tuple[Equipment, ...]


def residual_path(state: State, feed: Feed, node: str) -> Path:
    """The residual-current devices through which the live conductor from a feed must pass to reach a node."""
    if state.groups("seen", perhaps=False).joined(feed.live, node):
        return Path(False, ())
    level = state.groups("open_residual", perhaps=True)
    if level.joined(feed.live, node):
        return Path(MAYBE, ())
    return Path(True, _devices(state.residual_ways(), level, feed.live, node))


def _devices(near: dict[str, list[tuple[Link, str]]], level: Groups, start: str, end: str) -> tuple[Equipment, ...]:
    """The devices on the shortest way, from the start to the end; searched from the end, where ways are few."""
    home, goal = level.find(end), level.find(start)
    ways: list[tuple[str, tuple[Equipment, ...]]] = [(home, ())]
    seen = {home}
    for node, devices in ways:
        if node == goal:
            return devices
        for link, far in near.get(node, ()):
            if far not in seen:
                seen.add(far)
                ways.append((far, (link.equipment, *devices)))
    return ()


def residual_works(state: State, feed: Feed, neutral: str) -> Truth:
    """Whether a fault to earth at a load unbalances its residual-current device: the bond is on the supply side."""
    sure, may = state.groups("open_residual", perhaps=False), state.groups("open_residual", perhaps=True)
    seen = state.groups("seen", perhaps=False)
    before: Truth = False
    behind: Truth = False
    for bond, closed in state.bonds.items():
        if closed is False or not state.may.joined(bond.neutral, feed.neutral):
            continue
        if may.joined(bond.neutral, feed.neutral):
            certain = closed is True and seen.joined(bond.neutral, feed.neutral)
            before = True if certain or before is True else MAYBE
            hidden = sure.joined(bond.neutral, feed.neutral) and not seen.joined(bond.neutral, feed.neutral)
            if hidden and behind is False:  # a device may hide between them, and the bond stand behind it
                behind = MAYBE
        elif may.joined(bond.neutral, neutral):
            certain = closed is True and state.sure.joined(bond.neutral, feed.neutral)
            behind = True if certain or behind is True else MAYBE
    for other in state.feeding:
        if not other.aboard and may.joined(other.neutral, feed.neutral):
            low, high = ashore(state.mains)
            if low and sure.joined(other.neutral, feed.neutral):
                before = True
            elif high and before is False:
                before = MAYBE
    if before is False or behind is True:
        return False
    return True if before is True and behind is False else MAYBE


def earth_path(mains: Mains, feed: Feed, earth: str) -> Truth:
    """Whether the earth of a load is joined to the earth of a feed by earth conductors."""
    if mains.earths.joined(earth, feed.earth):
        return True
    return MAYBE if mains.earths_perhaps.joined(earth, feed.earth) else False


def consumers(network: Network) -> list[Equipment]:
    """What draws from the mains: loads, outlets, chargers; in file order."""
    found = []
    for item in network.equipment.values():
        pole = "acL" if item.kind == "charger" else "L" if item.kind in LOADS else ""
        if pole and f"{item.name}:{pole}" in network.near:
            found.append(item)
    return found


def live_node(item: Equipment) -> str:
    """The node at which a consumer takes its supply."""
    return f"{item.name}:acL" if item.kind == "charger" else f"{item.name}:L"


def battery_side(network: Network) -> Groups:
    """Live nodes of the direct-current side, joined through wires, devices and contacts, not through converters."""
    groups = Groups()
    for conductor in network.conductors:
        if conductor.role == LIVE and network.systems[conductor.circuit.name] == "dc":
            _join_all(groups, conductor)
    for link in network.links:
        if link.pole == LIVE and link.when not in ("transfer", "bond"):
            groups.join(link.a, link.b)
    return groups


def _join_all(groups: Groups, conductor: Conductor) -> None:
    for part in conductor.parts:
        if isinstance(part, Wire | Link):
            groups.join(part.a, part.b)
