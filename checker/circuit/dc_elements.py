"""Elements of a direct-current network, each the current it takes as a function of the voltage across it.

Voltages V, currents A, powers W, resistances ohm. A current counts positive *into* the plus terminal and out of the
minus terminal, so what a source delivers is negative. `share` (0 to 1) scales what constant-power elements ask for:
the solver raises it by steps when it cannot start at 1.
"""

from __future__ import annotations

from typing import NamedTuple

FLOOR_V = 4.0
"""Below this a constant-power element is treated as a resistance, so that its current stays finite at no voltage."""
HOLD_OHM = 1e-3
"""Slope of a regulated voltage where none is given: it sags by 1 mV for each ampere."""

Flow = tuple[float, float]
"""Current (A) and its slope with voltage (S)."""


class Branch:
    """A resistance between two nodes; its current counts from `a` to `b`. None at all joins the nodes."""

    __slots__ = ("a", "b", "name", "ohm")

    def __init__(self, name: str, a: str, b: str, ohm: float) -> None:
        """Raises ValueError for a negative or infinite resistance (leave an open branch out)."""
        if not 0.0 <= ohm < float("inf"):
            raise ValueError(f"resistance of {name}, ohm, is {ohm:g}; expected 0 or more, and finite")
        self.name = name
        self.a = a
        self.b = b
        self.ohm = ohm


class TwoPole:
    """What is connected by a plus and a minus terminal."""

    __slots__ = ("minus", "name", "plus")
    gives = False  # holds a voltage, so that a part of the network with nothing else is still alive

    def __init__(self, name: str, plus: str, minus: str) -> None:
        self.name = name
        self.plus = plus
        self.minus = minus

    def flow(self, volts: float, share: float) -> Flow:
        """Current into the plus terminal at a voltage, and its slope."""
        raise NotImplementedError

    def state(self, volts: float) -> str:
        """How it works at that voltage, in words; empty when there is only one way."""
        return ""


class Emf(TwoPole):
    """A battery: an electromotive force behind a resistance. Without resistance it is an ideal source."""

    __slots__ = ("emf_v", "ohm")
    gives = True

    def __init__(self, name: str, plus: str, minus: str, emf_v: float, ohm: float) -> None:
        """Raises ValueError for a negative resistance."""
        super().__init__(name, plus, minus)
        if not 0.0 <= ohm < float("inf"):
            raise ValueError(f"internal resistance of {name}, ohm, is {ohm:g}; expected 0 or more, and finite")
        self.emf_v = emf_v
        self.ohm = ohm

    def flow(self, volts: float, share: float) -> Flow:
        return (volts - self.emf_v) / self.ohm, 1.0 / self.ohm

    def state(self, volts: float) -> str:
        return "charging" if volts > self.emf_v else "discharging" if volts < self.emf_v else "resting"


class ResistanceLoad(TwoPole):
    """A load of constant resistance."""

    __slots__ = ("ohm",)

    def __init__(self, name: str, plus: str, minus: str, ohm: float) -> None:
        """Raises ValueError unless the resistance is above 0."""
        super().__init__(name, plus, minus)
        if not ohm > 0.0:
            raise ValueError(f"resistance of the load {name}, ohm, is {ohm:g}; expected more than 0")
        self.ohm = ohm

    def flow(self, volts: float, share: float) -> Flow:
        return volts / self.ohm, 1.0 / self.ohm


class CurrentLoad(TwoPole):
    """A load (or, negative, a source) of constant current."""

    __slots__ = ("amps",)

    def __init__(self, name: str, plus: str, minus: str, amps: float) -> None:
        super().__init__(name, plus, minus)
        self.amps = amps

    def flow(self, volts: float, share: float) -> Flow:
        return self.amps * share, 0.0


class PowerLoad(TwoPole):
    """A load of constant power; it draws more as the voltage falls.

    `lowest_v` and `highest_v` are the voltages beyond which it switches itself off (None: it does not).
    """

    __slots__ = ("floor_v", "highest_v", "lowest_v", "watts")

    def __init__(
        self,
        name: str,
        plus: str,
        minus: str,
        watts: float,
        *,
        lowest_v: float | None = None,
        highest_v: float | None = None,
        floor_v: float = FLOOR_V,
    ) -> None:
        """Raises ValueError for a negative power (that is a `Supply`)."""
        super().__init__(name, plus, minus)
        if not 0.0 <= watts < float("inf"):
            raise ValueError(f"power of the load {name}, W, is {watts:g}; expected 0 or more, and finite")
        self.watts = watts
        self.lowest_v = lowest_v
        self.highest_v = highest_v
        self.floor_v = floor_v

    def flow(self, volts: float, share: float) -> Flow:
        watts = self.watts * share
        if volts > self.floor_v:
            amps = watts / volts
            return amps, -amps / volts
        slope = watts / (self.floor_v * self.floor_v)
        return slope * volts, slope


class Supply(TwoPole):
    """A source that holds a set voltage up to a current limit and, where given, up to a power; it takes nothing back.

    An alternator, a charger, a solar controller. `droop_ohm` is the slope of its regulation.
    """

    __slots__ = ("droop_ohm", "floor_v", "limit_a", "set_v", "watts")
    gives = True

    def __init__(
        self,
        name: str,
        plus: str,
        minus: str,
        set_v: float,
        limit_a: float,
        *,
        droop_ohm: float = HOLD_OHM,
        watts: float = float("inf"),
        floor_v: float = FLOOR_V,
    ) -> None:
        """Raises ValueError for a negative limit or power, or a slope that is not above 0."""
        super().__init__(name, plus, minus)
        if not (limit_a >= 0.0 and watts >= 0.0 and droop_ohm > 0.0):
            raise ValueError(f"limits of the source {name} are {limit_a:g} A, {watts:g} W, slope {droop_ohm:g} ohm")
        self.set_v = set_v
        self.limit_a = limit_a
        self.droop_ohm = droop_ohm
        self.watts = watts
        self.floor_v = floor_v

    def flow(self, volts: float, share: float) -> Flow:
        amps, slope, _ = self._given(volts)
        return -amps, -slope

    def state(self, volts: float) -> str:
        return self._given(volts)[2]

    def _given(self, volts: float) -> tuple[float, float, str]:
        amps, slope, word = (self.set_v - volts) / self.droop_ohm, -1.0 / self.droop_ohm, "at its set voltage"
        if amps < 0.0:
            return 0.0, 0.0, "resting: the voltage is above its set voltage"
        if amps > self.limit_a:
            amps, slope, word = self.limit_a, 0.0, "at its current limit"
        if amps * volts > self.watts and volts > self.floor_v:
            amps = self.watts / volts
            slope, word = -amps / volts, "at its greatest power"
        return amps, slope, word


class Side(NamedTuple):
    """One side of a converter: its terminals."""

    plus: str
    minus: str


class Transfer(NamedTuple):
    """What a converter does at two voltages: currents in and out (A), their slopes (S), and how it works.

    `in_by_out` is the slope of the current in with the voltage at the output, and so on.
    """

    amps_in: float
    amps_out: float
    in_by_in: float
    in_by_out: float
    out_by_in: float
    out_by_out: float
    state: str


class Converter:
    """Power in times efficiency is power out, one way, within the limits given.

    It gives a fixed `watts`, or holds `set_v` at its output; up to `limit_out_a` and `limit_in_a`. With `hold_v` it
    draws less as soon as its own input sags to that voltage. `idle_w` is drawn at the input besides. Below `lowest_v`
    or above `highest_v` at its input it switches itself off.
    """

    __slots__ = (
        "droop_ohm", "efficiency", "floor_v", "highest_v", "hold_ohm", "hold_v", "idle_w", "into", "limit_in_a",
        "limit_out_a", "lowest_v", "name", "out", "set_v", "watts",
    )  # fmt: skip

    def __init__(
        self,
        name: str,
        into: Side,
        out: Side,
        efficiency: float,
        *,
        watts: float | None = None,
        set_v: float | None = None,
        limit_in_a: float = float("inf"),
        limit_out_a: float = float("inf"),
        hold_v: float | None = None,
        idle_w: float = 0.0,
        droop_ohm: float = HOLD_OHM,
        hold_ohm: float = HOLD_OHM,
        lowest_v: float | None = None,
        highest_v: float | None = None,
        floor_v: float = FLOOR_V,
    ) -> None:
        """Raises ValueError for an efficiency outside 0 to 1, or when neither power nor voltage is set."""
        if not 0.0 < efficiency <= 1.0:
            raise ValueError(f"efficiency of {name} is {efficiency:g}; expected above 0, up to 1")
        if watts is None and set_v is None:
            raise ValueError(f"the converter {name} needs a power or a voltage to give")
        self.name = name
        self.into = into
        self.out = out
        self.efficiency = efficiency
        self.watts = watts
        self.set_v = set_v
        self.limit_in_a = limit_in_a
        self.limit_out_a = limit_out_a
        self.hold_v = hold_v
        self.idle_w = idle_w
        self.droop_ohm = droop_ohm
        self.hold_ohm = hold_ohm
        self.lowest_v = lowest_v
        self.highest_v = highest_v
        self.floor_v = floor_v

    @property
    def gives(self) -> bool:
        """Whether it holds a voltage at its output."""
        return self.set_v is not None

    def transfer(self, volts_in: float, volts_out: float, share: float) -> Transfer:
        """Currents and slopes at both voltages: the smallest of what each limit allows at the output."""
        floored_in, floored_out = max(volts_in, self.floor_v), max(volts_out, self.floor_v)
        amps, by_in, by_out, state = self.limit_out_a, 0.0, 0.0, "at its output current limit"
        if self.watts is not None:
            fixed = self.watts * share / floored_out
            if fixed < amps:
                amps, state = fixed, "at its set power"
                by_out = -fixed / volts_out if volts_out > self.floor_v else 0.0
        if self.set_v is not None:
            held = (self.set_v - volts_out) / self.droop_ohm
            if held < amps:
                amps, by_in, by_out, state = held, 0.0, -1.0 / self.droop_ohm, "at its set voltage"
        for watts, slope, words in self._input_limits(volts_in):
            allowed = watts * self.efficiency / floored_out
            if allowed < amps:
                amps, by_in, state = allowed, slope * self.efficiency / floored_out, words
                by_out = -allowed / volts_out if volts_out > self.floor_v else 0.0
        if amps < 0.0:
            amps, by_in, by_out, state = 0.0, 0.0, 0.0, "resting"
        given = max(volts_out, 0.0)
        watts_in = amps * given / self.efficiency + self.idle_w
        if self.watts is not None and state == "at its set power":
            watts_in, given = self.watts * share / self.efficiency + self.idle_w, 0.0
            taken_by_out = 0.0
        else:
            taken_by_out = (by_out * given + (amps if volts_out > 0.0 else 0.0)) / self.efficiency
        amps_in = watts_in / floored_in
        in_by_in = by_in * given / self.efficiency / floored_in
        if volts_in > self.floor_v:
            in_by_in -= amps_in / volts_in
        else:  # as a resistance, so that it draws nothing at no voltage
            in_by_in = watts_in / (self.floor_v * self.floor_v)
            amps_in = in_by_in * volts_in
        return Transfer(amps_in, amps, in_by_in, taken_by_out / floored_in, by_in, by_out, state)

    def _input_limits(self, volts_in: float) -> list[tuple[float, float, str]]:
        """Power that the input lets through (W), its slope with the input voltage, and the words for it."""
        found = []
        if self.limit_in_a < float("inf"):
            watts = volts_in * self.limit_in_a - self.idle_w
            found.append((watts, self.limit_in_a, "at its input current limit"))
        if self.hold_v is not None:
            amps = (volts_in - self.hold_v) / self.hold_ohm
            watts = volts_in * amps - self.idle_w
            slope = amps + volts_in / self.hold_ohm
            found.append((watts if amps > 0.0 else 0.0, slope, "held back so that its input keeps its voltage"))
        return found


class Capacitor(TwoPole):
    """A capacitance (F). In a steady network it takes no current; a transient starts at `initial_v`."""

    __slots__ = ("farads", "initial_v")

    def __init__(self, name: str, plus: str, minus: str, farads: float, initial_v: float) -> None:
        """Raises ValueError unless the capacitance is above 0."""
        super().__init__(name, plus, minus)
        if not farads > 0.0:
            raise ValueError(f"capacitance of {name}, F, is {farads:g}; expected more than 0")
        self.farads = farads
        self.initial_v = initial_v

    def flow(self, volts: float, share: float) -> Flow:
        return 0.0, 0.0


class Inductor(TwoPole):
    """An inductance (H). In a steady network it is a plain join; a transient starts at `initial_a`."""

    __slots__ = ("henries", "initial_a")

    def __init__(self, name: str, plus: str, minus: str, henries: float, initial_a: float) -> None:
        """Raises ValueError unless the inductance is above 0."""
        super().__init__(name, plus, minus)
        if not henries > 0.0:
            raise ValueError(f"inductance of {name}, H, is {henries:g}; expected more than 0")
        self.henries = henries
        self.initial_a = initial_a


Element = Branch | TwoPole | Converter
