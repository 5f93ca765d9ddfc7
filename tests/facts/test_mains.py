"""Doubts never turn into answers: whatever is decided with a value unknown stays so for every value it may have."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import checker.facts  # noqa: F401 - fills the catalogue
from checker.circuit.states import States
from checker.facts.mains import Count, answer, ever, worst
from checker.facts.subject import Facts, trace
from checker.quantities import Range, Unknown, greatest, least
from tests.circuit.mains_designs import changed_at, states_of

CHOICES = {
    "equipment.inverter.bond.when": ("inverting", "always", "never", "shore present", "shore absent"),
    "equipment.inverter.transfer.when": ("shore present", "always", "never"),
    "equipment.inverter.transfer.poles": ("1", "2"),
    "equipment.inverter.transfer.backfeed": ("blocked", "possible"),
    "equipment.K2.poles": ("1", "2"),
    "equipment.K2.break before make": ("true", "false"),
    "equipment.board.neutral bar": ("insulated", "bonded"),
    "equipment.R1.trips at": ("30 mA", "100 mA"),
    "equipment.Q1.poles": ("1", "2"),
    "equipment.Q1.isolates": ("true", "false"),
    "vehicle.supply.earthing": ("TN-S", "TT", "IT"),
    "circuits.heating.earth": ("in cable", "none"),
}
VAN_CHOICES = {
    "equipment.inverter.bond.when": ("inverting", "always", "never"),
    "equipment.genset.bond.when": ("running", "always", "never"),
    "equipment.KG.poles": ("1", "2"),
    "equipment.KG.operated": ("by hand", "remote"),
    "equipment.charger.enabled by": ("hooked-up", "none"),
    "equipment.hooked-up.means": ("shore present", "fault"),
    "equipment.Q2.isolates": ("true", "false"),
    "vehicle.supply.earthing": ("TN-S", "IT"),
    "circuits.generator.shock protection": ("separated", "disconnection"),
    "circuits.sockets.earth": ("in cable", "none"),
}
ASKED = {
    "ac_source": (
        "least_links", "most_links", "is_joined_with_another", "shares_neutral", "reaches_inlet_pins",
        "feeds_own_charger", "has_main_switch", "is_separated",
    ),
    "bond": ("most_links", "is_closed_on_shore", "is_there"),
    "changeover": ("poles", "breaks_before_make", "is_between_sources"),
    "circuit": ("residual_current", "earth_runs_with_it"),
    "outlet": ("residual_current",),
    "inlet": ("is_safe_either_way", "has_surge_device"),
}  # fmt: skip


def answers(base: str, edits: dict[str, str]) -> dict[tuple[str, str, str], Any]:
    facts = Facts(changed_at(base, edits))
    return {
        (kind, subject.id, name): getattr(subject, name)
        for kind, names in ASKED.items()
        for subject in facts.subjects(kind)
        for name in names
    }


def allows(doubted: Any, exact: Any) -> bool:
    """Whether an answer under doubt leaves room for the exact one."""
    if isinstance(doubted, Unknown):
        return True
    if isinstance(doubted, Range):
        return exact is None or isinstance(exact, Unknown | Range) or doubted.low <= exact <= doubted.high
    return repr(doubted) == repr(exact)


def chosen(choices: dict[str, tuple[str, ...]]) -> Any:
    exact = st.fixed_dictionaries({path: st.sampled_from(values) for path, values in choices.items()})
    return st.tuples(exact, st.sets(st.sampled_from(sorted(choices)), min_size=1, max_size=5))


def holds(base: str, exact: dict[str, str], doubted: set[str]) -> None:
    """Compare every answer under doubt with the answer for the exact values."""
    open_ = answers(base, {path: "unknown" if path in doubted else value for path, value in exact.items()})
    settled = answers(base, exact)
    assert open_.keys() & settled.keys()
    for key in open_.keys() & settled.keys():
        assert allows(open_[key], settled[key]), (key, open_[key], settled[key])


@settings(max_examples=80)
@given(drawn=chosen(CHOICES))
def test_what_is_decided_under_doubt_holds_for_every_value_of_a_coach(drawn: tuple[dict[str, str], set[str]]) -> None:
    holds("mains-coach", *drawn)


@settings(max_examples=60)
@given(drawn=chosen(VAN_CHOICES))
def test_what_is_decided_under_doubt_holds_for_every_value_of_a_van(drawn: tuple[dict[str, str], set[str]]) -> None:
    holds("generator-van", *drawn)


def test_an_answer_that_is_left_open_says_why() -> None:
    assert answer(None, "nobody looked") == Unknown("nobody looked")
    assert answer(True, "nobody looked") is True


def states(certain: bool) -> States:
    return states_of("mains-coach", {} if certain else {"equipment.K2.operated": "unknown"})


def test_a_state_that_is_perhaps_not_reached_shows_only_a_doubt() -> None:
    assert ever(states(True).states, lambda state: True)[0] is True
    assert ever(states(False).states, lambda state: True)[0] is None
    assert ever(states(False).states, lambda state: False) == (False, "")


@pytest.mark.parametrize(("pick", "expected"), [(least, Range(0.0, 1.0)), (greatest, Range(1.0, 3.0))])
def test_states_that_are_perhaps_not_reached_widen_a_worst_count(pick: Any, expected: Range) -> None:
    counts = [Count("a", True, 1, 1), Count("b", False, 0, 0), Count("c", False, 3, 3)]
    assert worst(counts, pick) == (expected, "a")


def test_the_worst_over_no_state_is_none() -> None:
    assert worst([], least) == (None, "")


def test_a_finding_on_the_states_rests_on_the_values_that_decide_them() -> None:
    facts = Facts(changed_at("mains-coach", {"equipment.inverter.bond.when": "unknown"}))
    source = facts.subject("ac_source", "inverter")
    assert source is not None
    paths = {given.path for given in trace(source, "least_links").leaves()}
    assert {"equipment.inverter.bond.when", "equipment.inverter.transfer.when", "equipment.K2.poles"} <= paths
