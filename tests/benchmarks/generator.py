"""Made-up coaches of any size, as the text of a design file: the same text for the same arguments on every machine.

`coach(circuits)` writes exactly that many circuits. Nineteen of them are the backbone (start battery, converter,
lithium bank, inverter-charger, shore inlet, earths), told as fully as a finished job; the rest grow as branches hung
on a tree of bars: boards for 12 V, boards behind a converter of their own, mains boards, further banks with the sun.
Up to some hundred circuits a coach has no finding, as a finished job has none: findings cost time.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from itertools import cycle
from pathlib import Path
from random import Random

SMALLEST = 19
WAYS = 10
"""Final circuits on one board."""

FULL = 60
"""Circuits up to which loads draw what their kind draws; in a larger coach each draws less, so that one alternator,
one converter and one bank still feed it, and it stays as free of findings as a small one."""

MODES = {
    "driving": "engine: 2000 rpm, shore: absent, inverter: inverting",
    "camping": "engine: stopped, shore: absent, inverter: inverting, sun: 600 W/m2",
    "shore": "engine: stopped, shore: 15 A, inverter: passing",
}

SOUND = "reverse protection: true, place: cabin"
"""What every load on the battery side says of itself."""

BACKBONE = Path(__file__).with_name("backbone.yaml")


def sections() -> dict[str, list[str]]:
    """The lines of the backbone by section, `head` for all before the equipment."""
    found: dict[str, list[str]] = {"head": []}
    section = "head"
    for line in BACKBONE.read_text("utf-8").splitlines():
        if line in ("equipment:", "circuits:", "readings:", "modes:"):
            section = line[:-1]
            found[section] = []
        else:
            found[section].append(line.removeprefix("  ") if section != "head" else line)
    return found


def fitting(power: float) -> int:
    """The fuse (A) for a load of some power (W) at 12 V."""
    return next(rating for rating in (5, 10, 15) if power / 12 * 1.5 <= rating)


class _Coach:
    """Equipment and circuits while they grow; loads that may run in a mode."""

    def __init__(self, circuits: int, random: Random) -> None:
        self.wanted = circuits
        self.random = random
        self.share = min(1.0, FULL / circuits)
        backbone = sections()
        self.head = backbone["head"]
        self.equipment = backbone["equipment"]
        self.circuits = backbone["circuits"]
        self.readings = backbone["readings"]
        self.running: list[str] = []
        self.looms: list[str] = []
        self.shut_down = ["Q1", "isolator-1"]
        self.free = {"12": deque(["bar-12"] * 5), "48": deque(["bar-48"] * 5), "mains": deque(["mains"] * 5)}
        self.numbers: dict[str, int] = {"bank": 1}

    def number(self, what: str) -> int:
        """The next number of a kind of thing, from 1."""
        self.numbers[what] = self.numbers.get(what, 0) + 1
        return self.numbers[what]

    def add(self, name: str, says: str) -> None:
        """Equipment."""
        self.equipment.append(f"{name}: {{{says}}}")

    def lay(self, name: str, start: str, end: str, run: str, more: str) -> bool:
        """A circuit, unless there are enough."""
        if len(self.circuits) >= self.wanted:
            return False
        self.circuits.append(f"{name}: {{from: {start}, to: {end}, run: [{run}], {more}}}")
        return True

    def via(self, low: float, high: float, place: str) -> str:
        """A stretch of cable between two lengths, m, to the centimetre."""
        return f"{self.random.uniform(low, high):.2f} m via {place}"

    def stud(self, system: str) -> str:
        """Where to join next: a bar with a place left, nearest to the source first; the last place grows a bar."""
        free = self.free[system]
        if len(free) == 1:
            self._bar(system)
        return free.popleft()

    def _bar(self, system: str) -> None:
        home = self.free[system].popleft()
        name = f"bar-{system}-{self.number('bar ' + system)}"
        if system == "mains":
            self.add(name, "kind: terminal block, system: mains, place: locker, enclosure: insulating, holds: 8")
            self.lay(f"to-{name}", home, name, self.via(0.2, 2, "locker"), "cable: flex-4")
        else:
            volts, part = ("48 V DC", "strip") if system == "12" else ("60 V DC", "high")
            says = f"rating: 300 A, studs: 8, voltage: {volts}, place: locker, cover: true"
            self.add(name, f"kind: bar, poles: [+, -], {says}")
            self.add(f"FB-{name}", f"part: {part}, rating: 150 A, place: locker")
            run = f"0.1 m via locker, FB-{name}, {self.via(0.3, 2, 'locker')}"
            self.lay(f"to-{name}", home, name, run, "cable: red-70, return: same")
        self.free[system].extend([name] * 6)

    def grow(self) -> None:
        """Branches in turn until there are enough circuits."""
        branches = cycle((self.board_12, self.board_mains, self.board_behind_converter, self.bar_loads, self.board_12))
        for count, branch in enumerate(branches):
            if len(self.circuits) >= self.wanted:
                return
            if count % 30 == 29:
                self.further_bank()
            branch()

    def further_bank(self) -> None:
        """Three more batteries, and the sun that charges them."""
        one = self.number("bank")
        first = next(line for line in self.equipment if line.startswith("house-bank-1:"))
        height = f"{0.57 + 0.25 * (one - 1):.2f} m"  # one above the other
        self.equipment.append(first.replace("bank-1", f"bank-{one}").replace("0.57 m", height))
        self.add(f"bar-bank-{one}", "part: bank-bar")
        self.add(f"F1-{one}", "part: main")
        self.add(f"isolator-{one}", "part: stop")
        self.add(f"sun-isolator-{one}", f"part: sun-off, in sight of: sun-{one}")
        self.shut_down += [f"isolator-{one}", f"sun-isolator-{one}"]
        run = f"0.15 m via bank-bay, F1-{one}, 0.3 m via bank-bay, isolator-{one}, P1, {self.via(0.5, 1, 'locker')}"
        self.lay(f"bank-main-{one}", f"bar-bank-{one}", "bar-48", run, "cable: red-70, return: same")
        self.add(f"panels-{one}", "part: panels")
        self.add(f"sun-{one}", f"part: sun, output: {{nominal: 48 V, current: {self.share * 20:.3g} A}}")
        self.add(f"FS-{one}", "part: high, rating: 40 A, place: locker")
        more = "return: same, duty: charge"
        run = f"{self.via(2, 5, 'roof')}, P3, 0.5 m via locker, sun-isolator-{one}, 0.5 m via locker"
        self.lay(f"sun-in-{one}", f"panels-{one}", f"sun-{one}.pv", run, f"cable: sun-4, marked every: 2 m, {more}")
        run = f"0.9 m via locker, FS-{one}, 0.1 m via locker"
        self.lay(f"sun-out-{one}", f"sun-{one}.battery", self.stud("48"), run, f"cable: red-16, {more}")

    def board_12(self) -> None:
        """A board on the 12 V bars."""
        one = self.number("board")
        self.add(f"F-feed-{one}", f"part: strip, rating: {self.random.choice((80, 100))} A, place: locker")
        run = f"0.1 m via locker, F-feed-{one}, {self.via(1, 5, 'cabin')}"
        self.lay(f"feed-{one}", self.stud("12"), f"board-{one}", run, "cable: red-35, return: same")
        self._finals_12(one)

    def board_behind_converter(self) -> None:
        """A 12 V board fed by a converter of its own from the 48 V bars."""
        one = self.number("board")
        high = f"nominal: 48 V, current: {self.share * 16:.3g} A, voltage: 36..60 V"
        peak = f"peak: {{current: {self.share * 90:.3g} A, time: 1 s}}, trips over: 15 V"
        low = f"nominal: 12 V, current: {self.share * 50:.3g} A, voltage: 12..14 V, {peak}"
        self.add(f"con-{one}", f"part: con, sides: {{high: {{{high}}}, low: {{{low}}}}}")
        self.add(f"F-con-{one}", "part: high, rating: 30 A, place: locker")
        self.add(f"F-feed-{one}", "part: strip, rating: 60 A, place: locker")
        run = f"0.1 m via locker, F-con-{one}, {self.via(0.5, 2, 'locker')}"
        self.lay(f"con-{one}", self.stud("48"), f"con-{one}.high", run, "cable: red-16, return: same")
        run = f"0.1 m via locker, F-feed-{one}, {self.via(0.5, 3, 'cabin')}"
        self.lay(f"feed-{one}", f"con-{one}.low", f"board-{one}", run, "cable: red-16, return: same")
        self._finals_12(one)

    def _finals_12(self, board: int) -> None:
        powers = [self.share * self.random.choice((3, 8, 24, 40, 60, 75)) for _ in range(WAYS)]
        laid: dict[str, str] = {}
        for way, power in enumerate(powers, 1):
            load, name = f"n{board}-{way}", f"c{board}-{way}"
            cable = "twin-6" if fitting(power) > 5 else self.random.choice(("twin-2.5", "twin-4"))
            run = f"{self.via(0.5, 2, 'duct')}, {self.via(0.5, 6, 'cabin')}"
            if self.lay(name, f"board-{board}.w{way}", load, run, f"cable: {cable}"):
                self.add(load, self.load(power))
                laid[name] = f"w{way}: {fitting(power)} A"
        ways = ", ".join(laid.values()) or "w1: 5 A"
        self.add(f"board-{board}", f"part: box, ways: {{{ways}}}")
        if laid:
            self.running.append(f"n{board}-1: {powers[0] / 12:.3g} A")
        for start in range(0, len(laid), 4):
            together = list(laid)[start : start + 4]
            carries = f"carries: [{', '.join(together)}], place: duct, bunched: {len(together)}"
            self.looms.append(f"loom-{board}-{start // 4 + 1}: {{{carries}}}")

    def load(self, power: float) -> str:
        """Something that draws that power (W) at 12 V."""
        start = f"start: {{current: {power / 6:.3g} A, time: 0.3 s}}, stall: {power / 5:.3g} A, thermal cut-out: true"
        motor = f"running: {power / 12:.3g} A, {start}"
        says = self.random.choice(
            (
                f"kind: lamp, power: {power:.3g} W",
                f"kind: load, power: {power:.3g} W",
                f"kind: motor, purpose: water, {motor}",
            )
        )
        return f"{says}, voltage: 10..15 V, transient level: 60 V, jump start: 24 V, {SOUND}"

    def bar_loads(self) -> None:
        """Heaters and the like, each on a bar of its own voltage behind its own fuse."""
        for _ in range(4):
            one = self.number("heavy")
            power, rating = self.random.choice(((250, 30), (600, 30), (1000, 40)))
            run = f"0.1 m via locker, FH-{one}, {self.via(1, 6, 'cabin')}"
            if self.lay(f"heavy-{one}", self.stud("48"), f"heavy-{one}", run, "cable: red-16, return: same"):
                self.add(f"heavy-{one}", f"kind: load, power: {self.share * power:.3g} W, voltage: 36..60 V, {SOUND}")
                self.add(f"FH-{one}", f"part: high, rating: {rating} A, place: locker")

    def board_mains(self) -> None:
        """A mains board behind a residual-current device, with outlets and loads."""
        one = self.number("mains board")
        self.add(f"R-{one}", "part: rcd")
        self.readings.append(f"- {{test: rcd trip, at: R-{one}, time: 24 ms, current: 30 mA}}")
        self.readings.append(f"- {{test: test button, at: R-{one}, result: right}}")
        run = f"{self.via(0.3, 1, 'locker')}, R-{one}"
        self.lay(f"mains-feed-{one}", self.stud("mains"), f"mains-{one}", run, "cable: flex-4")
        breaker = "{part: mcb, rating: 10 A}"
        ways: list[str] = []
        for way in range(1, 7):
            load = f"m{one}-{way}"
            power = self.random.choice((140, 400, 800))
            switch = "own switch: true, switched poles: 2"
            heating = f"kind: load, power: {self.share * power:.3g} W, voltage: 207..253 V, class: I, {switch}"
            if self.lay(f"mc{one}-{way}", f"mains-{one}.w{way}", load, self.via(2, 8, "cabin"), "cable: flex-2.5"):
                ways.append(f"w{way}: {breaker}")
                self.add(load, f"{heating if way % 3 == 0 else 'part: socket, count: 2'}, place: cabin")
                if way % 3:
                    self.readings.append(f"- {{test: polarity, at: {load}, result: right}}")
        self.add(f"mains-{one}", f"part: mains, ways: {{{', '.join(ways) or f'w1: {breaker}'}}}")

    def in_locker(self) -> Iterator[str]:
        """The looms of the locker: its circuits of each band, clipped a diameter apart on their side of the divider."""
        inside = [line for line in self.circuits if "via locker" in line]
        for side, mains in (("elv", False), ("mains", True)):
            names = [line.partition(":")[0] for line in inside if ("cable: flex" in line) is mains]
            yield f"locker-{side}: {{carries: [{', '.join(names)}], place: locker, divider: {side} side, bunched: 1}}"

    def text(self, code: str, seed: int) -> Iterator[str]:
        """The file, piece by piece."""
        said = {
            "title": f"title: Made-up coach of {self.wanted} circuits, number {seed}",
            "code": f"code: {code}",
            "  shut down": f"  shut down: [{', '.join(self.shut_down)}]",
        }
        for line in self.head:
            yield said.get(line.partition(":")[0], line) + "\n"
        told = {
            "equipment": self.equipment,
            "circuits": self.circuits,
            "looms": [*self.in_locker(), *self.looms],
            "readings": self.readings,
        }
        for section, lines in told.items():
            yield f"{section}:\n" + "".join(f"  {line}\n" for line in lines)
        running = ", ".join(self.running[:6])
        yield "modes:\n"
        for name, state in MODES.items():
            yield f"  {name}: {{{state}, running: {{{running}}}}}\n"


def coach(circuits: int, seed: int = 0, code: str = "au-nz") -> str:
    """The text of a design with exactly `circuits` circuits (`SMALLEST` or more, else ValueError).

    `seed` varies lengths, sizes, ratings and loads; the shape depends on the number of circuits alone.
    """
    if circuits < SMALLEST:
        raise ValueError(f"a coach has at least {SMALLEST} circuits")
    growing = _Coach(circuits, Random(seed))
    growing.grow()
    return "".join(growing.text(code, seed))


if __name__ == "__main__":
    import sys

    sys.stdout.write(coach(int(sys.argv[1]) if len(sys.argv) > 1 else 300))
