"""The words for supply states that the text and the page share."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from checker.reports.supply_states import Fed, Island, Lost, Opened, Residual, StateData, SupplyStates

NO_MAINS: Final = "The design has no source of mains: there are no supply states."
FROM_REST: Final = "from shore absent and everything at rest"
ONE_LINK: Final = "Each source that feeds should have one link of neutral and earth, no more and no less."
NUMBERS: Final = ("none", "one", "two", "three", "four", "five", "six")


def listed(names: list[str], none: str = "none") -> str:
    """Names with commas; `none` for an empty list."""
    return ", ".join(names) or none


def summary(table: SupplyStates) -> list[str]:
    """What the table shows, and what it does not."""
    most = table["most"]
    if not table["complete"]:
        return [
            f"The mains side has more than {most} combinations of positions, even with changeovers that feed loads "
            "alone varied one at a time. They are not worked through: whatever rests on them is unproven."
        ]
    said = [f"{len(table['states'])} supply states. {ONE_LINK}"]
    if table["merged"]:
        said.append(
            f"All positions together would be more than {most} states: changeovers behind which only loads stand are "
            "varied one at a time, since what one of them feeds does not depend on another."
        )
    return said


def sources(state: StateData) -> str:
    """What feeds."""
    return listed([*state["sources"], *(f"perhaps {name}" for name in state["perhaps"])], "nothing feeds")


def links(island: Island) -> str:
    """How many links of neutral and earth, and where."""
    sure, may = island["links"], island["perhaps"]
    count = _count(len(sure)) if not may else f"{_count(len(sure))} to {_count(len(sure) + len(may))}"
    where = listed([*sure, *(f"perhaps {name}" for name in may)], "")
    return f"{' + '.join(island['sources'])}: {count}{f' ({where})' if where else ''}"


def _count(number: int) -> str:
    return NUMBERS[number] if number < len(NUMBERS) else str(number)


def residual(path: Residual) -> str:
    """The residual-current devices on the way from a source to some loads, and whether they respond."""
    devices = " and ".join(path["devices"])
    if path["protected"] == "no":
        way = "no residual-current device"
    elif path["protected"] == "unknown":
        way = "a residual-current device perhaps"
    else:
        way = {"yes": devices, "no": f"{devices}, blind to a fault to earth"}.get(
            path["works"], f"{devices}, perhaps blind to a fault to earth"
        )
    return f"{path['source']} to {listed(path['loads'])}: {way}"


def outlets(state: StateData) -> str:
    """Live outlets."""
    return listed([*state["outlets"], *(f"perhaps {name}" for name in state["outlets_perhaps"])])


def pins(state: StateData) -> str:
    """Live pins of inlets."""
    return listed(state["pins"], "dead")


def reached(state: StateData) -> str:
    """The shortest sequence of operations."""
    if state["witness"] is None:
        return "no sequence of operations from rest"
    return "; ".join(state["witness"]) or "nothing: everything at rest"


def certain(state: StateData) -> str:
    """A doubt about the state itself, or nothing."""
    return "" if state["certain"] else "whether these positions are reached is not known"


def left(opened: Opened) -> list[str]:
    """What stays live with something opened, source by source."""
    if opened["live"] is None:
        return ["not known: more combinations than are worked through"]
    return [_left(fed) for fed in opened["live"]] or ["nothing"]


def lost(loss: Lost) -> str:
    """Which essential loads go dark with one failure."""
    return listed([*loss["dark"], *(f"perhaps {name}" for name in loss["perhaps"])])


def _left(fed: Fed) -> str:
    loads = [*fed["loads"], *(f"perhaps {name}" for name in fed["perhaps"])]
    if not fed["loads"]:
        loads = [f"perhaps {', '.join(fed['perhaps'])}"]
    return f"from {', '.join(fed['sources'])}: {', '.join(loads)}"
