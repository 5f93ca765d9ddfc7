"""Elements of a direct-current network, each the current it takes as a function of the voltage across it.

Voltages V, currents A, powers W, resistances ohm. A current counts positive *into* the plus terminal and out of the
minus terminal, so what a source delivers is negative. `share` (0 to 1) scales what constant-power elements ask for:
the solver raises it by steps when it cannot start at 1.
"""

from __future__ import annotations

from checker.circuit.dc_converter import FLOOR_V, HOLD_OHM, LEAK_S, Converter, Side, Transfer

Flow = tuple[float, float]
"""Current (A) and its slope with voltage (S)."""


class Branch:
    """A resistance between two nodes; its current counts from `a` to `b`. None at all joins the nodes."""

    __slots__ = ("a", "b", "ends", "name", "ohm")
    conducts = True  # joins its terminals, so that what lies beyond it is alive
    gives = False
    nominal_v = 0.0

    def __init__(self, name: str, a: str, b: str, ohm: float) -> None:
        """Raises ValueError for a negative or infinite resistance (leave an open branch out)."""
        if not 0.0 <= ohm < float("inf"):
            raise ValueError(f"resistance of {name}, ohm, is {ohm:g}; expected 0 or more, and finite")
        self.name = name
        self.a = a
        self.b = b
        self.ends = (a, b)
        self.ohm = ohm


class TwoPole:
    """What is connected by a plus and a minus terminal."""

    __slots__ = ("ends", "minus", "name", "plus")
    gives = False  # holds a voltage, so that a part of the network with nothing else is still alive
    conducts = False

    @property
    def nominal_v(self) -> float:
        """The voltage it names, 0 when it names none."""
        return 0.0

    def __init__(self, name: str, plus: str, minus: str) -> None:
        self.name = name
        self.plus = plus
        self.minus = minus
        self.ends = (plus, minus)

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

    @property
    def nominal_v(self) -> float:
        return self.emf_v

    def flow(self, volts: float, share: float) -> Flow:
        return (volts - self.emf_v) / self.ohm, 1.0 / self.ohm

    def state(self, volts: float) -> str:
        return "charging" if volts > self.emf_v else "discharging" if volts < self.emf_v else "resting"


class Storage(TwoPole):
    """A battery that takes charge otherwise than it gives it: one electromotive force, a resistance for each way."""

    __slots__ = ("charge_ohm", "emf_v", "ohm")
    gives = True

    def __init__(self, name: str, plus: str, minus: str, emf_v: float, ohm: float, charge_ohm: float) -> None:
        """Raises ValueError unless both resistances are above 0."""
        super().__init__(name, plus, minus)
        if not (0.0 < ohm < float("inf") and 0.0 < charge_ohm < float("inf")):
            raise ValueError(f"resistances of {name}, ohm, are {ohm:g} and {charge_ohm:g}; expected more than 0")
        self.emf_v = emf_v
        self.ohm = ohm
        self.charge_ohm = charge_ohm

    @property
    def nominal_v(self) -> float:
        return self.emf_v

    def flow(self, volts: float, share: float) -> Flow:
        ohm = self.charge_ohm if volts > self.emf_v else self.ohm
        return (volts - self.emf_v) / ohm, 1.0 / ohm

    def state(self, volts: float) -> str:
        return "charging" if volts > self.emf_v else "discharging" if volts < self.emf_v else "resting"


class Diode(TwoPole):
    """A diode from plus to minus: a forward voltage and a resistance; it lets next to nothing back."""

    __slots__ = ("drop_v", "ohm")
    conducts = True

    def __init__(self, name: str, plus: str, minus: str, drop_v: float, ohm: float) -> None:
        """Raises ValueError unless the resistance is above 0."""
        super().__init__(name, plus, minus)
        if not ohm > 0.0:
            raise ValueError(f"resistance of the diode {name}, ohm, is {ohm:g}; expected more than 0")
        self.drop_v = drop_v
        self.ohm = ohm

    def flow(self, volts: float, share: float) -> Flow:
        if volts > self.drop_v:
            return (volts - self.drop_v) / self.ohm + self.drop_v * LEAK_S, 1.0 / self.ohm
        return volts * LEAK_S, LEAK_S


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
    """A source that holds a set voltage up to a current limit and, where given, up to a power; it takes
    no more than a leak back.

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

    @property
    def nominal_v(self) -> float:
        return self.set_v

    def flow(self, volts: float, share: float) -> Flow:
        amps, slope, _ = self._given(volts)
        return -amps, -slope

    def state(self, volts: float) -> str:
        return self._given(volts)[2]

    def _given(self, volts: float) -> tuple[float, float, str]:
        amps, slope, word = (self.set_v - volts) / self.droop_ohm, -1.0 / self.droop_ohm, "at its set voltage"
        if amps < 0.0:
            leak = (self.set_v - volts) * LEAK_S
            return leak, -LEAK_S, "resting: the voltage is above its set voltage"
        if amps > self.limit_a:
            amps, slope, word = self.limit_a, 0.0, "at its current limit"
        if amps * volts > self.watts and volts > self.floor_v:
            amps = self.watts / volts
            slope, word = -amps / volts, "at its greatest power"
        return amps, slope, word


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

    @property
    def nominal_v(self) -> float:
        return self.initial_v

    def flow(self, volts: float, share: float) -> Flow:
        return 0.0, 0.0


class Inductor(TwoPole):
    """An inductance (H). In a steady network it is a plain join; a transient starts at `initial_a`."""

    __slots__ = ("henries", "initial_a")
    conducts = True

    def __init__(self, name: str, plus: str, minus: str, henries: float, initial_a: float) -> None:
        """Raises ValueError unless the inductance is above 0."""
        super().__init__(name, plus, minus)
        if not henries > 0.0:
            raise ValueError(f"inductance of {name}, H, is {henries:g}; expected more than 0")
        self.henries = henries
        self.initial_a = initial_a


Element = Branch | TwoPole | Converter

__all__ = [
    "FLOOR_V",
    "HOLD_OHM",
    "Branch",
    "Capacitor",
    "Converter",
    "CurrentLoad",
    "Diode",
    "Element",
    "Emf",
    "Flow",
    "Inductor",
    "PowerLoad",
    "ResistanceLoad",
    "Side",
    "Storage",
    "Supply",
    "Transfer",
    "TwoPole",
]
