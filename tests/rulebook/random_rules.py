"""Strategies: random well-typed conditions about a conductor, and subjects with exact or doubtful facts."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from checker.quantities import UNKNOWN, Range, Window
from tests.rulebook.small import COVERINGS, FAMILIES, Thing

NUMBERS = [0.0, 1.0, 2.0, 3.0, 0.1, 0.2, 0.3]
"""Few values, so that equal ones meet; 0.1 + 0.2 tells whether both forms round alike."""

CURRENTS = ("conductor.capacity", "conductor.current", "'1 A'", "'2 A'", "'300 mA'")
ORDER = ("<", "<=", ">", ">=", "==", "!=")

currents = st.recursive(
    st.sampled_from(CURRENTS),
    lambda inner: st.one_of(
        st.builds("({} {} {})".format, inner, st.sampled_from(("+", "-")), inner),
        st.builds("(-{})".format, inner),
        st.builds("({} * {})".format, inner, st.sampled_from(("2", "design.drop", "0.5"))),
        st.builds("({} / {})".format, inner, st.sampled_from(("2", "design.drop"))),
        st.builds(
            "{}(device.rating for device in conductor.protected_by{})".format,
            st.sampled_from(("sum", "min", "max")),
            st.sampled_from(("", " if device.trip_free", " if device.rating > '1 A'")),
        ),
    ),
    max_leaves=3,
)
device_truths = st.one_of(
    st.builds("device.rating {} conductor.capacity".format, st.sampled_from(ORDER)),
    st.just("device.trip_free"),
    st.just("not device.trip_free"),
    st.builds("device.family {} 'blade'".format, st.sampled_from(("==", "!="))),
    st.just("device.family not in ('blade', 'strip')"),
    st.just("device.reason == conductor.reason"),
    st.just("device == conductor.main_device"),
    st.just("some(conductor.is_live for conductor in device.protects)"),
)
leaves = st.one_of(
    st.sampled_from((
        "conductor.is_live", "true", "false", "conductor.main_device == none", "conductor.main_device.trip_free",
        "conductor.main_device.family == 'strip'", "conductor.covering in ('conduit',)",
        "'conduit' in conductor.coverings", "conductor.covering in conductor.coverings",
        "conductor.voltage in conductor.window", "conductor.voltage in '1..2 V'", "conductor.note == 'x'",
        "conductor.voltage not in conductor.window", "conductor.main_device in conductor.protected_by",
        "count(conductor.protected_by) >= 2", "conductor.main_device.reason == 'heat'", "limits.bare_allowed",
        "conductor.length <= limits.reach", "count(conductor.coverings) == 1", "conductor.capacity == none",
    )),
    st.builds("{} {} {}".format, currents, st.sampled_from(ORDER), currents).filter(
        lambda text: any(name in text for name in ("conductor", "design"))
    ),
    st.builds("'1 A' <= {} < '3 A'".format, st.just("conductor.current")),
    st.builds(
        "{}({} for device in conductor.protected_by{})".format,
        st.sampled_from(("every", "some", "none")), device_truths,
        st.one_of(st.just(""), st.builds(" if {}".format, device_truths)),
    ),
    st.builds(
        "count({} for device in conductor.protected_by if {}) {} {}".format,
        st.one_of(st.just("device"), device_truths), device_truths, st.sampled_from(ORDER), st.integers(0, 2),
    ),
)  # fmt: skip
conditions = st.recursive(
    leaves,
    lambda inner: st.one_of(
        st.builds("({} and {})".format, inner, inner),
        st.builds("({} or {})".format, inner, inner),
        st.builds("(not {})".format, inner),
    ),
    max_leaves=4,
)

exact_numbers = st.sampled_from(NUMBERS)
ranges = st.tuples(exact_numbers, exact_numbers).filter(lambda ends: ends[0] < ends[1]).map(lambda ends: Range(*ends))
truths = st.booleans()


def facts_of(numbers: Any, yes: Any, absent: bool, doubtful: bool) -> Any:
    """A conductor with up to two devices, a design and limits."""
    none = st.just(None) if absent else st.nothing()
    unknown = st.just(UNKNOWN) if doubtful else st.nothing()
    number = st.one_of(numbers, none)
    word = lambda words: st.one_of(st.sampled_from(words), none, unknown)  # noqa: E731
    inner = st.builds(lambda live: Thing("conductor", is_live=live), yes)
    device = st.builds(
        lambda **facts: Thing("device", **facts),
        rating=number, family=word(FAMILIES), trip_free=st.one_of(yes, none), reason=word(("heat", "cold")),
        protects=st.one_of(st.lists(inner, max_size=2).map(tuple), unknown),
    )  # fmt: skip
    window = st.tuples(exact_numbers, exact_numbers).map(lambda ends: Window(min(ends), max(ends)))
    conductor = st.builds(
        lambda devices, main, **facts: Thing(
            "conductor", protected_by=devices, main_device=devices[0] if main == "first" and devices else None, **facts
        ),
        devices=st.lists(device, max_size=2).map(tuple), main=st.sampled_from(("first", "none")),
        is_live=yes, capacity=number, current=number, length=number, voltage=number, window=st.one_of(window, none),
        covering=word(COVERINGS), reason=word(("heat", "cold")), note=st.sampled_from(("x", "y")),
        coverings=st.one_of(st.lists(st.sampled_from(COVERINGS), max_size=2).map(tuple), none, unknown),
    )  # fmt: skip
    design = st.builds(lambda drop: Thing("design", drop=drop), numbers)
    limits = st.fixed_dictionaries({"drop": numbers, "reach": numbers, "bare_allowed": yes})
    return st.tuples(conductor, design, limits)


exact_scenes = facts_of(exact_numbers, truths, absent=False, doubtful=False)
scenes_with_absence = facts_of(exact_numbers, truths, absent=True, doubtful=False)
doubtful_scenes = facts_of(
    st.one_of(exact_numbers, ranges, st.just(UNKNOWN)), st.one_of(truths, st.just(UNKNOWN)), absent=True, doubtful=True
)


def choices(draw: Any, value: Any, options: Any) -> Any:
    """One value that something doubtful may turn out to be."""
    if type(value) is Range:
        return draw(st.sampled_from([value.low, value.high, (value.low + value.high) / 2]))
    if value is UNKNOWN:
        return draw(options)
    return value


FACT_OPTIONS = {
    "is_live": truths, "trip_free": truths, "bare_allowed": truths, "covering": st.sampled_from(COVERINGS),
    "family": st.sampled_from(FAMILIES), "reason": st.sampled_from(("heat", "cold")),
    "coverings": st.just(()), "protects": st.just(()),
}  # fmt: skip


@st.composite
def inside(draw: Any, scene: Any) -> Any:
    """The scene with every range replaced by a number within it and every unknown by some value."""
    conductor, design, limits = scene
    made: dict[int, Thing] = {}

    def settle(thing: Thing) -> Thing:
        if id(thing) not in made:
            facts: dict[str, Any] = {}
            for name, value in vars(thing).items():
                if name in ("kind", "id"):
                    continue
                found = choices(draw, value, FACT_OPTIONS.get(name, exact_numbers))
                if isinstance(found, Thing):
                    found = settle(found)
                elif isinstance(found, tuple):
                    found = tuple(settle(item) if isinstance(item, Thing) else item for item in found)
                facts[name] = found
            made[id(thing)] = Thing(thing.kind, thing.id, **facts)
        return made[id(thing)]

    settled = {name: choices(draw, value, FACT_OPTIONS.get(name, exact_numbers)) for name, value in limits.items()}
    return settle(conductor), settle(design), settled
