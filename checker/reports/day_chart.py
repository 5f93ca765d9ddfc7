"""The chart of a day: state of charge over 24 hours, and the powers behind it."""

from __future__ import annotations

from checker.facts.day import HOUR, SOURCES, DayRun
from checker.physics.day import DAY_S, Step
from checker.reports.chart import Axis, Chart, Line, chart

HOURS = Axis("time of day", marks=tuple(float(hour) for hour in range(0, 25, 3)), clock=True)


def charge_chart(run: DayRun, name: str = "day-charge") -> Chart:
    """State of charge at the end of each step; two lines where the design leaves a range, one for what is kept."""
    places = _ends(run.worse)
    lines = [Line("charge", tuple(100.0 * step.charge for step in run.worse))]
    if run.worse != run.better:
        lines = [
            Line("at worst", lines[0].values),
            Line("at best", tuple(100.0 * step.charge for step in run.better)),
        ]
    keep = run.inputs.keep
    if isinstance(keep, float):
        lines.append(Line("to be kept", (100.0 * keep,) * len(places)))
    lowest = min(run.worse, key=lambda step: step.charge)
    at = places[run.worse.index(lowest)]
    says = (
        f"The battery is lowest at {int(at):02d}:{round(at % 1 * 60):02d} with {lowest.charge:.0%}, and at the end of "
        f"the day {run.worse[-1].charge:.0%} full."
    )
    return chart(name, "State of charge through the day", says, HOURS, Axis("charge, %"), places, lines)


def power_chart(run: DayRun, name: str = "day-power") -> Chart:
    """Power of the loads and of each source, W."""
    lines = [Line("use", tuple(step.load for step in run.worse))]
    brought = []
    for n, source in enumerate(SOURCES):
        values = tuple(step.given[n] for step in run.worse)
        if any(values):
            lines.append(Line(source, values))
            energy = sum(values) * DAY_S / len(values) / HOUR
            brought.append(f"{source} {energy:.0f} Wh")
    used = sum(lines[0].values) * DAY_S / len(run.worse) / HOUR
    says = f"{used:.0f} Wh are used; brought in: {', '.join(brought) or 'nothing'}."
    return chart(name, "Power through the day", says, HOURS, Axis("power, W"), _ends(run.worse), lines)


def _ends(steps: tuple[Step, ...]) -> tuple[float, ...]:
    """The hour at which each step ends."""
    return tuple((step.start_s + DAY_S / len(steps)) / HOUR for step in steps)
