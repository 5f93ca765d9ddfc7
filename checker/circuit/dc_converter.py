"""A converter in a direct-current network: power taken at one side, less its loss, given at the other.

Voltages V, currents A, powers W, slopes S.
"""

from __future__ import annotations

from typing import NamedTuple

FLOOR_V = 4.0
"""Below this a constant-power element is treated as a resistance, so that its current stays finite at no voltage."""
LEAK_S = 1e-6
"""What a source at rest, or a diode, lets back: small beside anything that is read, and enough to tell the voltage of
what it alone holds up."""
HOLD_OHM = 1e-3
"""Slope of a regulated voltage where none is given: it sags by 1 mV for each ampere."""


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
        "droop_ohm", "efficiency", "ends", "floor_v", "highest_v", "hold_ohm", "hold_v", "idle_w", "into", "limit_in_a",
        "limit_out_a", "lowest_v", "name", "out", "set_v", "watts",
    )  # fmt: skip
    conducts = False

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
        self.ends = (*into, *out)
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
    def nominal_v(self) -> float:
        """The voltage it holds at its output, 0 when it holds none."""
        return self.set_v or 0.0

    @property
    def gives(self) -> bool:
        """Whether it holds a voltage at its output."""
        return self.set_v is not None

    def transfer(self, volts_in: float, volts_out: float, share: float) -> Transfer:
        """Currents and slopes at both voltages: the smallest of what each limit allows at the output."""
        floored_out = max(volts_out, self.floor_v)
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
        if self.watts is not None and state == "at its set power":
            watts, by_volts_in, by_volts_out = self.watts * share, 0.0, 0.0
        else:
            given = max(volts_out, 0.0)
            watts, by_volts_in = amps * given, by_in * given
            by_volts_out = by_out * given + (amps if volts_out > 0.0 else 0.0)
        asked = watts / self.efficiency + self.idle_w
        if volts_in > self.floor_v:
            per_volt, bend = 1.0 / volts_in, -asked / (volts_in * volts_in)
        else:  # as a resistance, so that it draws nothing at no voltage
            bend = asked / (self.floor_v * self.floor_v)
            per_volt = volts_in / (self.floor_v * self.floor_v)
        in_by_in = by_volts_in / self.efficiency * per_volt + bend
        in_by_out = by_volts_out / self.efficiency * per_volt
        if self.set_v is not None and volts_out > self.set_v:  # it rests; what it alone holds up sinks to its voltage
            amps -= LEAK_S * (volts_out - self.set_v)
            by_out -= LEAK_S
        return Transfer(asked * per_volt, amps, in_by_in, in_by_out, by_in, by_out, state)

    def _input_limits(self, volts_in: float) -> list[tuple[float, float, str]]:
        """Power that the input lets through (W), its slope with the input voltage, and the words for it."""
        found = []
        if self.limit_in_a < float("inf"):
            watts = volts_in * self.limit_in_a - self.idle_w
            found.append((watts, self.limit_in_a, "at its input current limit"))
        if self.hold_v is not None:
            amps = (volts_in - self.hold_v) / self.hold_ohm
            watts, slope = volts_in * amps, amps + volts_in / self.hold_ohm
            if amps < 0.0:
                watts = slope = 0.0
            found.append((watts, slope, "held back so that its input keeps its voltage"))
        return found
