"""Made-up coaches of any size, as the text of a design file: the same text for the same arguments on every machine.

`coach(circuits)` writes exactly that many circuits. Ten of them are the backbone (start battery, converter, lithium
bank, inverter-charger, shore inlet, one board); the rest grow as branches hung on a tree of bars: boards for 12 V,
boards behind a converter of their own, mains boards, further banks with a solar array.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from itertools import cycle
from random import Random

SMALLEST = 10
WAYS = 10
"""Final circuits on one board."""

HEAD = """\
fitout: 1
title: Made-up coach of {circuits} circuits, number {seed}
code: {code}
vehicle:
  kind: motorhome
  sleeps: 4
  ambient: {{low: -5 °C, high: 45 °C}}
  supply: {{voltage: 230 V, frequency: 50 Hz, phases: 1, earthing: TN-S, polarised: true}}
  site outlet: 15 A
  chassis: {{negative: true, resistance: {{is: 1.5 mΩ, basis: assumed}}}}
usual: {{insulation: 90 °C, flame retardant: true, support spacing: 0.3 m}}
cables:
  red-70:   {{size: 70 mm2, cores: 1, strands: flexible, insulation: 105 °C, voltage: 600 V}}
  red-35:   {{size: 35 mm2, cores: 1, strands: flexible, insulation: 105 °C, voltage: 600 V}}
  red-16:   {{size: 16 mm2, cores: 1, strands: flexible, insulation: 105 °C, voltage: 600 V}}
  link-25:  {{size: 25 mm2, cores: 1, strands: flexible, insulation: 105 °C, voltage: 600 V}}
  twin-2.5: {{size: 2.5 mm2, cores: 2, strands: flexible, voltage: 300 V}}
  twin-4:   {{size: 4 mm2, cores: 2, strands: flexible, voltage: 300 V}}
  twin-6:   {{size: 6 mm2, cores: 2, strands: flexible, voltage: 300 V}}
  sun-4:    {{size: 4 mm2, cores: 1, strands: flexible, insulation: 120 °C, voltage: 1000 V}}
  flex-2.5: {{size: 2.5 mm2, cores: 3, strands: flexible, voltage: 450 V}}
  flex-4:   {{size: 4 mm2, cores: 3, strands: flexible, voltage: 450 V}}
parts:
  module: {{kind: battery, chemistry: lithium iron phosphate, nominal: 48 V, cells: 16, capacity: 50 Ah,
           internal resistance: 9 mΩ, short circuit current: 2.4 kA,
           window: {{charge: 0..45 °C, discharge: -10..50 °C}},
           bms: {{charge limit: 50 A, discharge limit: 100 A, over voltage: 58.4 V, under voltage: 42 V}},
           terminals: {{+: {{stud: M8, holds: 2, rated: 160 A, cover: true}}, -: {{stud: M8, holds: 2, rated: 160 A, cover: true}}}}}}
  strip:  {{kind: fuse, family: bolt-down strip, voltage: 58 V DC, breaking capacity: 5 kA}}
  high:   {{kind: fuse, family: bolt-down high voltage strip, voltage: 80 V DC, breaking capacity: 20 kA}}
  mcb:    {{kind: breaker, family: C curve, voltage: 230 V AC, breaking capacity: 6 kA, poles: 2, isolates: true}}
  socket: {{kind: outlet, voltage: 230 V AC, rating: 10 A, earth contact: true, switched poles: 2}}
  stop:   {{kind: switch, rating: 300 A, voltage: 80 V DC, poles: 1, breaks load: true, operated: by hand}}
places:
  engine-bay: {{kind: engine space, temperature: 20..70 °C}}
  bank-bay:   {{kind: battery locker, inside: outer skin, vents: {{low: 40 cm2, high: 40 cm2, rise: 0.25 m, to: outside}}}}
  locker:     {{inside: cabin, kind: locker}}
  duct:       {{kind: duct, material: plastic, combustible: false, temperature: 10..45 °C}}
  cabin:      {{kind: living space}}
  roof:       {{kind: outside, wet: rain}}
"""

BACKBONE = """\
alternator: {kind: alternator, nominal: 12 V, rating: 180 A, set voltage: 13.8..14.4 V, place: engine-bay, rpm: engine, hot output: {750 rpm: 70 A, 2000 rpm: 150 A}}
start-battery: {kind: battery, chemistry: flooded lead acid, nominal: 12 V, capacity: 110 Ah, internal resistance: 8 mΩ, place: engine-bay, purpose: starting, restraint: true}
FL1: {kind: fuse, family: factory link, rating: 200 A, voltage: 32 V DC, breaking capacity: 5 kA, place: engine-bay}
F2: {part: strip, rating: 150 A, place: engine-bay}
F3: {part: strip, rating: 150 A, place: locker}
bar-12: {kind: bar, poles: [+, -], rating: 300 A, studs: 8, voltage: 48 V DC, place: locker, cover: true}
converter: {kind: dc converter, both ways: true, isolated: false, place: locker, efficiency: 0.94, idle: 6 W, at fault: hiccup, sides: {low: {nominal: 12 V, current: 200 A, voltage: 10.5..15.5 V}, high: {nominal: 48 V, current: 55 A, voltage: 40..58 V}}, settings: {charge voltage: 56 V, charge current: 20 A, feed voltage: 13.4 V}}
F7: {part: high, rating: 70 A, place: locker}
F4: {part: strip, rating: 100 A, place: locker}
bar-48: {kind: bar, poles: [+, -], rating: 300 A, studs: 8, voltage: 60 V DC, place: locker, cover: true}
F6: {part: high, rating: 125 A, place: locker}
inverter: {kind: inverter-charger, power: 3 kVA, waveform: sine, efficiency: 0.92, no load: 18 W, place: locker, dc: {nominal: 48 V, voltage: 42..60 V}, ac: {voltage: 230 V, frequency: 50 Hz, fault current: 32 A, fault time: 0.5 s}, transfer: {rating: 16 A, poles: 2, when: shore present, time: 20 ms, backfeed: blocked}, bond: {when: inverting, by: relay}, charger: {current: 35 A, when: shore present}, settings: {charge voltage: 56 V, float: 54 V, shore limit: 13 A}}
inlet: {kind: shore inlet, voltage: 230 V AC, rating: 15 A, poles: 2}
Q1: {part: mcb, rating: 13 A, place: locker}
S1: {kind: switch, rating: 32 A, voltage: 230 V AC, poles: 2, isolates: true, breaks load: true, operated: by hand, place: locker}
mains: {kind: terminal block, system: mains, place: locker, holds: 8}
"""

BACKBONE_CIRCUITS = """\
alternator-cable: {from: alternator.b+, to: start-battery, run: [1.1 m via engine-bay, FL1, 0.15 m via engine-bay], cable: red-70, return: chassis, duty: charge, own: factory}
start-neg: {from: start-battery.-, to: chassis, run: [0.4 m via engine-bay], cable: red-70, duty: bonding, own: factory}
link-12: {from: start-battery, to: bar-12, run: [0.2 m via engine-bay, F2, 3 m via cabin, F3, 0.2 m via locker], cable: red-70, return: chassis, duty: charge}
neg-12: {from: bar-12.-, to: chassis, run: [0.7 m via cabin], cable: red-70, duty: bonding}
converter-low: {from: bar-12, to: converter.low, run: [0.4 m via locker], cable: red-70, return: same, duty: charge}
converter-high: {from: bar-48, to: converter.high, run: [0.1 m via locker, F7, 3.1 m via duct], cable: red-35, return: same, duty: charge}
bank-main-1: {from: bar-bank-1, to: bar-48, run: [0.15 m via bank-bay, F1-1, 0.3 m via bank-bay, isolator-1, 0.9 m via locker], cable: red-70, return: same}
inverter-feed: {from: bar-48, to: inverter.dc, run: [0.1 m via locker, F6, 0.8 m via locker], cable: red-35, return: same}
shore-in: {from: inlet, to: inverter.ac-in, run: [1.2 m via locker, Q1], cable: flex-4}
inverter-out: {from: inverter.ac-out, to: mains, run: [0.5 m via locker, S1], cable: flex-4}
"""


class _Coach:
    """Equipment and circuits while they grow; loads that may run in a mode."""

    def __init__(self, circuits: int, random: Random) -> None:
        self.wanted = circuits
        self.random = random
        self.equipment: list[str] = BACKBONE.splitlines()
        self.circuits: list[str] = BACKBONE_CIRCUITS.splitlines()
        self.running: list[str] = []
        self.looms: list[str] = []
        self.free = {"12": deque(["bar-12"] * 5), "48": deque(["bar-48"] * 5), "mains": deque(["mains"] * 5)}
        self.numbers: dict[str, int] = {}
        self._bank()

    def number(self, what: str) -> int:
        """The next number of a kind of thing, from 1."""
        self.numbers[what] = self.numbers.get(what, 0) + 1
        return self.numbers[what]

    def add(self, *lines: str) -> None:
        """Equipment."""
        self.equipment.extend(lines)

    def lay(self, line: str) -> None:
        """A circuit, unless there are enough."""
        if len(self.circuits) < self.wanted:
            self.circuits.append(line)

    def length(self, low: float, high: float) -> str:
        """A length of cable between two bounds, m, to the centimetre."""
        return f"{self.random.uniform(low, high):.2f} m"

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
            self.add(f"{name}: {{kind: terminal block, system: mains, place: locker, holds: 8}}")
            self.lay(f"to-{name}: {{from: {home}, to: {name}, run: [{self.length(0.2, 2)} via locker], cable: flex-4}}")
        else:
            volts = "48 V DC" if system == "12" else "60 V DC"
            self.add(
                f"{name}: {{kind: bar, poles: [+, -], rating: 300 A, studs: 8, voltage: {volts}, place: locker}}",
                f"FB-{name}: {{part: {'strip' if system == '12' else 'high'}, rating: 150 A, place: locker}}",
            )
            run = f"[0.1 m via locker, FB-{name}, {self.length(0.3, 2)} via locker]"
            self.lay(f"to-{name}: {{from: {home}, to: {name}, run: {run}, cable: red-70, return: same}}")
        self.free[system].extend([name] * 6)

    def _bank(self) -> None:
        number = self.number("bank")
        bar = f"bar-bank-{number}"
        self.add(
            f"house-bank-{number}: {{kind: bank, units: 3, of: module, arrangement: 1s3p, joined by: {bar}, place: bank-bay, "
            "unit leads: {cable: link-25, length: 0.35 m each}, unit fuses: {part: high, rating: 100 A}}",
            f"{bar}: {{kind: bar, poles: [+, -], rating: 400 A, studs: 5, voltage: 60 V DC, place: bank-bay}}",
            f"F1-{number}: {{kind: fuse, family: class T, rating: 200 A, voltage: 125 V DC, breaking capacity: 20 kA, place: bank-bay}}",
            f"isolator-{number}: {{part: stop, place: bank-bay}}",
        )

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
        self._bank()
        number = self.numbers["bank"]
        home = self.stud("48")
        self.lay(
            f"bank-main-{number}: {{from: bar-bank-{number}, to: {home}, run: [0.15 m via bank-bay, F1-{number}, "
            f"0.3 m via bank-bay, isolator-{number}, {self.length(0.5, 2)} via locker], cable: red-70, return: same}}"
        )
        self.add(
            f"panels-{number}: {{kind: solar array, modules: 4, arrangement: 4s1p, power: 200 W each, open voltage: 24.3 V each, "
            "short current: 10.4 A, best voltage: 20.2 V each, best current: 9.9 A, voltage coefficient: -0.28 %/K, place: roof}",
            f"sun-control-{number}: {{kind: solar controller, input: {{voltage: 150 V, short current: 25 A}}, "
            "output: {nominal: 48 V, current: 20 A}, place: locker, efficiency: 0.97, settings: {charge voltage: 56 V, float: 54 V}}",
            f"FS-{number}: {{part: high, rating: 40 A, place: locker}}",
        )
        home = self.stud("48")
        self.lay(
            f"sun-in-{number}: {{from: panels-{number}, to: sun-control-{number}.pv, run: [{self.length(2, 5)} via roof], "
            "cable: sun-4, return: same, duty: charge}"
        )
        self.lay(
            f"sun-out-{number}: {{from: sun-control-{number}.battery, to: {home}, run: [0.9 m via locker, FS-{number}, "
            "0.1 m via locker], cable: red-16, return: same, duty: charge}"
        )

    def board_12(self) -> None:
        """A board on the 12 V bars."""
        number = self.number("board")
        self.add(f"F-feed-{number}: {{part: strip, rating: {self.random.choice((80, 100, 125))} A, place: locker}}")
        run = f"[0.1 m via locker, F-feed-{number}, {self.length(1, 5)} via duct]"
        self.lay(f"feed-{number}: {{from: {self.stud('12')}, to: board-{number}, run: {run}, cable: red-35, return: same}}")
        self._finals_12(number)

    def board_behind_converter(self) -> None:
        """A 12 V board fed by a converter of its own from the 48 V bars."""
        number = self.number("board")
        self.add(
            f"con-{number}: {{kind: dc converter, both ways: false, isolated: true, place: locker, efficiency: 0.92, at fault: limits, "
            "sides: {high: {nominal: 48 V, current: 16 A, voltage: 36..60 V}, low: {nominal: 12 V, current: 50 A, voltage: 12..14 V}}, "
            "settings: {feed voltage: 13.2 V}}",
            f"F-con-{number}: {{part: high, rating: 30 A, place: locker}}",
            f"F-feed-{number}: {{part: strip, rating: 60 A, place: locker}}",
        )
        run = f"[0.1 m via locker, F-con-{number}, {self.length(0.5, 2)} via locker]"
        self.lay(f"con-{number}: {{from: {self.stud('48')}, to: con-{number}.high, run: {run}, cable: red-16, return: same}}")
        run = f"[0.1 m via locker, F-feed-{number}, {self.length(0.5, 3)} via duct]"
        self.lay(f"feed-{number}: {{from: con-{number}.low, to: board-{number}, run: {run}, cable: red-16, return: same}}")
        self._finals_12(number)

    def _finals_12(self, number: int) -> None:
        ways = ", ".join(f"w{way}: {self.random.choice((5, 10, 15, 20))} A" for way in range(1, WAYS + 1))
        self.add(
            f"board-{number}: {{kind: board, place: cabin, family: blade, voltage: 32 V DC, breaking capacity: 2 kA, "
            f"rating: 150 A, ways: {{{ways}}}}}"
        )
        laid = []
        for way in range(1, WAYS + 1):
            name = f"n{number}-{way}"
            self.add(f"{name}: {self.load()}")
            cable = self.random.choice(("twin-2.5", "twin-4", "twin-6"))
            run = f"[{self.length(0.5, 2)} via duct, {self.length(0.5, 6)} via cabin]"
            self.lay(f"c{number}-{way}: {{from: board-{number}.w{way}, to: {name}, run: {run}, cable: {cable}}}")
            laid.append(f"c{number}-{way}")
        if self.circuits[-1].startswith(f"{laid[-1]}:"):
            self.looms.append(f"loom-{number}: {{carries: [{', '.join(laid[:4])}], place: duct, bunched: 4}}")
        if self.circuits[-1].startswith(f"c{number}-"):
            self.running.append(f"n{number}-1")

    def load(self) -> str:
        """Something that draws at 12 V."""
        power = self.random.choice((3, 8, 24, 40, 60, 90))
        return self.random.choice(
            (
                f"{{kind: lamp, power: {power} W, voltage: 10..15 V, place: cabin}}",
                f"{{kind: load, power: {power} W, voltage: 10..15 V, place: cabin}}",
                f"{{kind: motor, running: {power / 12:.1f} A, start: {{current: {power / 4:.1f} A, time: 0.3 s}}, voltage: 10..15 V, place: cabin}}",
                f"{{kind: fan, power: {power} W, voltage: 10..16 V, place: cabin}}",
            )
        )

    def bar_loads(self) -> None:
        """Motors and heaters, each on a bar of its own voltage behind its own fuse."""
        for _ in range(4):
            number = self.number("heavy")
            power = self.random.choice((250, 600, 1000))
            self.add(
                f"heavy-{number}: {{kind: load, power: {power} W, voltage: 40..60 V, place: cabin}}",
                f"FH-{number}: {{part: high, rating: {self.random.choice((20, 40, 60))} A, place: locker}}",
            )
            run = f"[0.1 m via locker, FH-{number}, {self.length(1, 6)} via duct]"
            self.lay(f"heavy-{number}: {{from: {self.stud('48')}, to: heavy-{number}, run: {run}, cable: red-16, return: same}}")

    def board_mains(self) -> None:
        """A mains board behind a residual-current device, with outlets and loads."""
        number = self.number("mains board")
        ways = ", ".join(f"w{way}: {{part: mcb, rating: {self.random.choice((6, 10))} A}}" for way in range(1, 7))
        self.add(
            f"R-{number}: {{kind: rcd, rating: 25 A, trips at: 30 mA, type: A, poles: 2, time: 40 ms, place: locker}}",
            f"mains-{number}: {{kind: board, place: locker, enclosure: insulating, rating: 32 A, system: mains, ways: {{{ways}}}}}",
        )
        run = f"[{self.length(0.3, 1)} via locker, R-{number}]"
        self.lay(f"mains-feed-{number}: {{from: {self.stud('mains')}, to: mains-{number}, run: {run}, cable: flex-4}}")
        for way in range(1, 7):
            name = f"m{number}-{way}"
            if way % 3:
                self.add(f"{name}: {{part: socket, count: 2, place: cabin}}")
            else:
                self.add(f"{name}: {{kind: load, power: {self.random.choice((140, 400, 800))} W, voltage: 207..253 V, class: I, place: cabin}}")
            run = f"[{self.length(2, 8)} via cabin]"
            self.lay(f"mc{number}-{way}: {{from: mains-{number}.w{way}, to: {name}, run: {run}, cable: flex-2.5}}")

    def text(self, code: str, seed: int) -> Iterator[str]:
        """The file."""
        yield HEAD.format(circuits=self.wanted, seed=seed, code=code)
        for section, lines in (("equipment", self.equipment), ("circuits", self.circuits), ("looms", self.looms)):
            if lines:
                yield f"{section}:\n" + "".join(f"  {line}\n" for line in lines)
        running = ", ".join(f"{name}: 3 A" for name in self.running[:6])
        for line in (
            f"  driving: {{engine: 2000 rpm, shore: absent, inverter: inverting, running: {{{running}}}}}\n",
            f"  camping: {{engine: stopped, shore: absent, inverter: inverting, sun: 600 W/m2, running: {{{running}}}}}\n",
            f"  shore: {{engine: stopped, shore: 15 A, inverter: passing, running: {{{running}}}}}\n",
        ):
            yield ("modes:\n" if "driving" in line else "") + line


def coach(circuits: int, seed: int = 0, code: str = "au-nz") -> str:
    """The text of a design with exactly `circuits` circuits (ten or more, else ValueError).

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
