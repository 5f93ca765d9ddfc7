"""What closes by itself in one combination of positions: transfers, coils, bond relays, solved until they agree."""

from __future__ import annotations

from checker.circuit.elements import RETURN, Link
from checker.circuit.inside import throws_of
from checker.circuit.mains import Bond, Feed, Mains, word
from checker.circuit.state import MAYBE, State, Truth
from checker.design.model import Equipment
from checker.quantities import Unknown


class Free:
    """Something whose position is chosen: what it is, its positions, and whether they are all surely reachable."""

    __slots__ = ("certain", "item", "names", "positions")

    def __init__(self, item: Equipment, positions: tuple[str, ...], *, certain: bool = True, names: str = "") -> None:
        self.item = item
        self.positions = positions
        self.certain = certain
        self.names = names or item.name


class Law:
    """A changeover worked by a coil: the node that feeds the coil, its throw with it and without."""

    __slots__ = ("node", "rest", "worked")

    def __init__(self, node: str, rest: str, worked: str) -> None:
        self.node = node
        self.rest = rest
        self.worked = worked


def law_of(mains: Mains, item: Equipment) -> Law | None:
    """How a changeover acts by itself; None when a hand works it or the file does not say enough."""
    circuit = item.value("coil on")
    rest = item.value("rest")
    throws = [throw for throw in throws_of(item) if throw != "open"]
    if word(item, "operated") != "coil" or not isinstance(circuit, str) or not isinstance(rest, str):
        return None
    conductor = mains.network.conductor(circuit, "live")
    if conductor is None or rest not in throws or len(throws) != 2:
        return None
    return Law(conductor.start, rest, throws[1] if throws[0] == rest else throws[0])


class Solver:
    """Finds what closes by itself in one combination of free positions."""

    def __init__(
        self, mains: Mains, free: list[Free], choice: tuple[str, ...], coils: dict[str, Law], *, doubtful: bool = False
    ) -> None:
        self.mains = mains
        self.doubtful = doubtful
        self.free = free
        self.choice = choice
        self.coils = coils
        self.chosen: dict[str, list[str]] = {}
        for one, position in zip(free, choice, strict=True):
            self.chosen.setdefault(one.item.name, []).append(position)
        inlets = [feed.name for feed in mains.feeds if not feed.aboard]
        self.inlets = {name: "present" in self.chosen[name] for name in inlets}
        self.sensors = self._sensors()
        self.live: dict[str, Truth] = {}

    @property
    def remembers(self) -> bool:
        """Whether what is closed could depend on what was closed before."""
        return len(self.sensors) > 0

    def _sensors(self) -> dict[str, tuple[str, str]]:
        """Name of what senses -> the node it watches, and the feed that does not count (its own output)."""
        found: dict[str, tuple[str, str]] = {}
        for feed in self.mains.feeds:
            if feed.equipment.kind == "inverter-charger":
                found[feed.name] = (f"{feed.name}:ac-inL", feed.name)
            elif feed.equipment.kind == "transformer":
                found[feed.name] = (f"{feed.name}:primaryL", feed.name)
        for name, law in self.coils.items():
            found[name] = (law.node, "")
        for link in self.mains.switching:
            if link.when == "coil":
                node = self._drive(link.equipment)
                if node is not None:
                    found[link.equipment.name] = (node, "")
        return found

    def _drive(self, relay: Equipment) -> str | None:
        """The mains node that works a relay."""
        by = relay.value("driven by")
        if not isinstance(by, str):
            return None
        name, _, port = by.partition(".")
        node = f"{name}:{port}" if port.endswith("L") else f"{name}:{port}L"
        return node if node in self.mains.nodes else None

    def solve(self, start: bool | dict[str, Truth]) -> State:
        """The state that agrees with itself, found from all sensors dead or all live, or from what they saw before."""
        self.live = dict(start) if isinstance(start, dict) else dict.fromkeys(self.sensors, start)
        passes = 2 * len(self.sensors) + 2
        stable = False
        state = self._state(True)
        for _ in range(passes):
            now = {name: state.is_live(node, but) for name, (node, but) in self.sensors.items()}
            if now == self.live:
                stable = True
                break
            self.live = now
            state = self._state(True)
        if not stable:
            self.live = dict.fromkeys(self.sensors, MAYBE)
            state = self._state(False)
        return state

    def _state(self, stable: bool) -> State:
        closed, perhaps = [], []
        bonds: dict[Bond, Truth] = {}
        by_link = {id(bond.link): bond for bond in self.mains.bonds if bond.link is not None}
        for link in self.mains.switching:
            is_closed = self._closed(link)
            bond = by_link.get(id(link))
            if bond is not None:
                bonds[bond] = is_closed
            elif is_closed is True:
                closed.append(link)
            elif is_closed is MAYBE:
                perhaps.append(link)
        for bond in self.mains.bonds:
            if bond.link is None:
                bonds[bond] = MAYBE if bond.doubtful else True
        certain = not self.doubtful and all(one.certain for one in self.free)
        state = State(self.mains, self._name(), closed, perhaps, certain=certain, stable=stable)
        state.bonds = bonds
        state.choice, state.live, state.coiled = self.choice, dict(self.live), frozenset(self.coils)
        state.present = dict(self.inlets)
        state.positions = {name: self._position(name) for name in self.coils} | {
            one.item.name: position
            for one, position in zip(self.free, self.choice, strict=True)
            if one.item.kind == "changeover"
        }
        for feed in self.mains.feeds:
            on = self._feeding(feed)
            if on is not False:
                state.feeding[feed] = on
        return state

    def _name(self) -> str:
        words = []
        for one, position in zip(self.free, self.choice, strict=True):
            if one.item.kind in ("inverter", "inverter-charger") and position in ("on", "off"):
                words.append(f"{one.item.name} {self.inverter_word(one.item)}")
            else:
                words.append(f"{one.names} {position}")
        return ", ".join(words)

    def inverter_word(self, item: Equipment) -> str:
        """Inverting, passing or resting; `inverting or passing` where the file does not tell."""
        inverting, passing = self._inverting(item), self._passing(item)
        if inverting is False and passing is False:
            return "resting"
        if inverting is not False and passing is not False and passing is MAYBE:
            return "inverting or passing"
        return "inverting" if inverting is True else "passing"

    def _on(self, item: Equipment) -> bool:
        return "on" in self.chosen[item.name]

    def _passing(self, item: Equipment) -> Truth:
        if item.kind != "inverter-charger":
            return False
        when = item.value("transfer.when")
        if isinstance(when, Unknown):
            return MAYBE
        if when == "by hand":
            return "transfer closed" in self.chosen[item.name]
        if when in (None, "never"):
            return False
        if when == "always":
            return True
        if not self._on(item):
            return False
        return self.live[item.name]

    def _inverting(self, item: Equipment) -> Truth:
        if not self._on(item):
            return False
        if item.kind == "inverter":
            return True
        live, passing = self.live[item.name], self._passing(item)
        if live is False or passing is False:
            return True
        return False if live is True and passing is True else MAYBE

    def _feeding(self, feed: Feed) -> Truth:
        item = feed.equipment
        if item.kind == "shore inlet":
            return self.inlets[item.name]
        if item.kind == "generator":
            return "running" in self.chosen[item.name]
        if item.kind == "transformer":
            live = self.live[item.name]
            return live if word(item, "windings") == "separate" or live is False else MAYBE
        return self._inverting(item)

    def _position(self, name: str) -> str | None:
        law = self.coils.get(name)
        if law is None:
            position = self.chosen.get(name, ["unknown"])[0]
            return None if position == "unknown" else position
        live = self.live[name]
        return None if live is MAYBE else law.worked if live else law.rest

    def _closed(self, link: Link) -> Truth:
        item = link.equipment
        if link.when == "throw":
            position = self._position(item.name)
            if position is None or position == link.throw:
                return MAYBE if position is None else True
            return MAYBE if link.pole == RETURN and isinstance(item.value("poles"), Unknown) else False
        if link.when == "transfer":
            passing = self._passing(item)
            doubt = link.pole == RETURN and isinstance(item.value("transfer.poles"), Unknown)
            return MAYBE if doubt and passing is False else passing
        if link.when == "bond":
            return self._bonded(item)
        if link.when == "coil":
            return self._relay(item)
        if link.when == "hand":
            return "closed" in self.chosen[item.name]
        return MAYBE

    def _bonded(self, item: Equipment) -> Truth:
        when = item.value("bond.when")
        if isinstance(when, Unknown):
            return MAYBE
        if when in ("inverting", "running"):
            return self._inverting(item) if item.kind != "generator" else "running" in self.chosen[item.name]
        if when in ("shore present", "shore absent"):
            shore = any(self.inlets.values())
            return shore if when == "shore present" else not shore
        return bool(when == "always")

    def _relay(self, item: Equipment) -> Truth:
        drive = self._driven(item)
        rest = word(item, "rest")
        form = word(item, "form") if item.allows("form") else None
        if form == "break" or rest == "closed":
            return MAYBE if drive is MAYBE else not drive
        if form == "make" or rest == "open":
            return drive
        return MAYBE

    def _driven(self, item: Equipment) -> Truth:
        if item.name in self.live:
            return self.live[item.name]
        by = item.value("driven by")
        signal = self.mains.network.equipment.get(by) if isinstance(by, str) else None
        means = word(signal, "means") if signal is not None else None
        if means == "shore present":
            return any(self.inlets.values())
        if means == "generator running":
            running = [
                "running" in self.chosen[feed.name] for feed in self.mains.feeds if feed.equipment.kind == "generator"
            ]
            return any(running) if running else MAYBE
        return MAYBE
