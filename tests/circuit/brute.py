"""Supply states by brute force, from a plain description: an oracle that shares no code with the checker.

Where the checker groups nodes and lets coils settle, this walks from node to node and tries every position of every
coil, keeping those that agree with what is live.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from typing import NamedTuple


class Changeover(NamedTuple):
    """A changeover with throws a and b; by hand it can also rest between them. `coil` is the point that works it."""

    name: str
    poles: int
    coil: str | None


class Plan(NamedTuple):
    """Sources (name to whether their neutral is earthed in them), points that are wired, and what joins them.

    A point is a source, a block, `C1.common`, `C1.a`, `C1.b`. `wires` join two points with live and neutral. At each of
    `earthed` blocks neutral meets earth. The source `inlet` brings its own link from ashore.
    """

    sources: dict[str, bool]
    blocks: tuple[str, ...]
    changeovers: tuple[Changeover, ...]
    wires: tuple[tuple[str, str], ...]
    earthed: tuple[str, ...]


class Seen(NamedTuple):
    """What one state means: live blocks, and for each source that feeds its links and those joined with it by live."""

    live: frozenset[str]
    links: tuple[tuple[str, int], ...]
    joined: frozenset[tuple[str, str]]


Positions = tuple[tuple[str, str], ...]


def enumerate_states(plan: Plan) -> dict[Positions, list[Seen]]:
    """Chosen positions -> what each self-consistent setting of the coils means; an empty list when there is none."""
    by_hand = [one for one in plan.changeovers if one.coil is None]
    by_coil = [one for one in plan.changeovers if one.coil is not None]
    choices = [[(name, on) for on in ("on", "off")] for name in plan.sources]
    choices += [[(one.name, throw) for throw in ("a", "b", "open")] for one in by_hand]
    found: dict[Positions, list[Seen]] = {}
    for chosen in product(*choices):
        settings = []
        for throws in product("ab", repeat=len(by_coil)):
            at = dict(chosen) | {one.name: throw for one, throw in zip(by_coil, throws, strict=True)}
            feeding = [name for name in plan.sources if at[name] == "on"]
            live = _reached(plan, at, feeding, live=True)
            # At rest on a; the coil pulls over to b.
            if all((one.coil in live) == (at[one.name] == "b") for one in by_coil):
                settings.append(_seen(plan, at, feeding, live))
        found[chosen] = settings
    return found


def _seen(plan: Plan, at: dict[str, str], feeding: list[str], live: set[str]) -> Seen:
    links: list[tuple[str, int]] = []
    joined: set[tuple[str, str]] = set()
    for name in feeding:
        neutral = _reached(plan, at, [name], live=False)
        # The link of a generator is a wire and stays when it stops; that of an inverter is a relay that lets go.
        bonded = [other for other, earthed in plan.sources.items() if earthed and other in neutral]
        own = sum(1 for other in bonded if other == "genset" or at[other] == "on")
        ashore = int("inlet" in neutral and at.get("inlet") == "on")
        links.append((name, own + ashore + sum(1 for block in plan.earthed if block in neutral)))
        reached = _reached(plan, at, [name], live=True)
        joined.update((name, other) for other in feeding if other != name and other in reached)
    return Seen(frozenset(live & set(plan.blocks)), tuple(links), frozenset(joined))


def _reached(plan: Plan, at: dict[str, str], starts: list[str], *, live: bool) -> set[str]:
    found, todo = set(starts), list(starts)
    while todo:
        here = todo.pop()
        for one, other in _joins(plan, at, live=live):
            far = other if here == one else one if here == other else None
            if far is not None and far not in found:
                found.add(far)
                todo.append(far)
    return found


def _joins(plan: Plan, at: dict[str, str], *, live: bool) -> Iterator[tuple[str, str]]:
    yield from plan.wires
    for one in plan.changeovers:
        for throw in "ab":
            if at[one.name] == throw or (not live and one.poles == 1):
                yield f"{one.name}.common", f"{one.name}.{throw}"


HEAD = """
fitout: 1
title: Random mains
code: intl
vehicle: {kind: motorhome, supply: {voltage: 230 V, earthing: TN-S}}
cables: {flex: {size: 2.5 mm2, cores: 3}, green: {size: 6 mm2, cores: 1}}
places: {cabin: {kind: living space}}
modes: {rest: {engine: stopped}}
"""


def design_text(plan: Plan) -> str:
    """The plan as a design file."""
    items = ["  earth: {kind: earth bar, place: cabin}"]
    circuits = []
    for name, earthed in plan.sources.items():
        when = ("inverting" if name == "inverter" else "always") if earthed else "never"
        bond = f"{{when: {when}}}"
        kinds = {
            "inlet": "{kind: shore inlet, rating: 16 A, place: cabin}",
            "genset": f"{{kind: generator, power: 2 kW, bond: {bond}, place: cabin}}",
            "inverter": f"{{kind: inverter, power: 1 kW, bond: {bond}, place: cabin}}",
        }
        items.append(f"  {name}: {kinds[name]}")
    for block in plan.blocks:
        items.append(f"  {block}: {{kind: terminal block, system: mains, place: cabin}}")
        items.append(f"  O{block}: {{kind: outlet, voltage: 230 V AC, rating: 10 A, place: cabin}}")
        circuits.append(_circuit(f"out-{block}", block, f"O{block}"))
        circuits.append(f"  pe-{block}: {{from: {block}.PE, to: earth, run: [1 m], cable: green, duty: bonding}}")
    for one in plan.changeovers:
        how = "by hand"
        if one.coil is not None:
            number = next(n for n, (start, _) in enumerate(plan.wires) if start == one.coil)
            how = f"coil, coil on: wire-{number}, rest: a"
        throws = "[a, b, open]" if one.coil is None else "[a, b]"
        items.append(
            f"  {one.name}: {{kind: changeover, poles: {one.poles}, throws: {throws}, operated: {how}, place: cabin}}"
        )
    for number, (start, end) in enumerate(plan.wires):
        circuits.append(_circuit(f"wire-{number}", _port(start), _port(end)))
    for block in plan.earthed:
        circuits.append(f"  bond-{block}: {{from: {block}.N, to: earth, run: [1 m], cable: green, duty: bonding}}")
    return f"{HEAD}equipment:\n" + "\n".join(items) + "\ncircuits:\n" + "\n".join(circuits) + "\n"


def _circuit(name: str, start: str, end: str) -> str:
    return f"  {name}: {{from: {start}, to: {end}, run: [1 m], cable: flex}}"


def _port(point: str) -> str:
    name, _, terminal = point.partition(".")
    if name == "inverter":
        return "inverter.ac"
    return name if terminal in ("", "common") else point
