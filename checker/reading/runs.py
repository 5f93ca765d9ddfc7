"""The run of a circuit: what a hand meets along the conductor, in order from the source."""

from __future__ import annotations

from checker.design.given import STATED, Given
from checker.design.run import Gap, Hole, Length, Step, Through
from checker.design.shapes import ShapeError, parse_shape
from checker.design.vocabulary.key import Key, Kind
from checker.quantities import UNKNOWN
from checker.reading.context import Context, form, where
from checker.reading.references import find_equipment, ports_at
from checker.reading.values import with_basis
from checker.source.problems import article, shown
from checker.source.tree import Mapping, Node, Scalar, Sequence

_LENGTH = Key("length", "quantity", "Length of a stretch of cable.", unit="m")
_UNKNOWN = frozenset(("unknown", "?"))
_STARTS_A_NUMBER = frozenset("0123456789.+-±")
_HOW = "write a length (`1.1 m via PLACE`), a device, a pass, or `unknown`"
_SHARED = frozenset(("joint", "connector"))
"""Kinds in which the conductors of several circuits may meet a run side by side."""


class RunReader:
    """Reads the runs of one circuit. Devices written in place are named `<circuit>#<n>` over all its runs."""

    def __init__(self, ctx: Context, circuit: str, in_runs: dict[str, str]) -> None:
        self.ctx = ctx
        self.circuit = circuit
        self.in_runs = in_runs  # device to the circuit in whose run it stands
        self.in_place = 0

    def read(self, node: Node) -> tuple[Step, ...]:
        """The steps of a run, which is a list. Wrong steps are noted and left out."""
        if type(node) is Scalar and node.text in _UNKNOWN:
            return (Gap(where(node)),)
        if type(node) is not Sequence:
            self.ctx.problems.add(node, f"a run is a list, and this is {form(node)}", "write `[1.1 m via PLACE, F1]`")
            return ()
        if not node.items:
            self.ctx.problems.add(node, "the run is empty", "write its length, `0 m` if there is none, or `unknown`")
        steps: list[Step] = []
        for item in node.items:
            steps.extend(self._item(item))
        return tuple(steps)

    def _item(self, item: Node) -> tuple[Step, ...]:
        if type(item) is Scalar:
            return self._text(item, STATED)
        if type(item) is Mapping:
            if "is" in item.entries:
                value, basis = with_basis(self.ctx, item, STATED)
                if type(value) is Scalar:
                    return self._text(value, basis)
                self.ctx.problems.add(value, f"a step of a run is {form(value)}", _HOW)
                return ()
            self.in_place += 1
            name = f"{self.circuit}#{self.in_place}"
            return (Through(name, None, None, where(item)),) if name in self.ctx.equipment else ()
        self.ctx.problems.add(item, "a step of a run is a list", _HOW)
        return ()

    def _text(self, item: Scalar, basis: str) -> tuple[Step, ...]:
        text = item.text
        ctx = self.ctx
        length, via, place = text.partition(" via ")
        if via:
            return self._stretch(item, length, place.strip(), basis)
        if text in ctx.names["passes"]:
            return (Hole(text, where(item)),)
        if text in ctx.names["equipment"]:
            return self._through(item, text, "")
        if text in _UNKNOWN:
            return (Gap(where(item)),)
        name, dot, terminals = text.partition(".")
        if dot and name in ctx.names["equipment"]:
            return self._through(item, name, terminals)
        if text[:1] in _STARTS_A_NUMBER or text.startswith(("at least ", "at most ", "unknown ")):
            return self._stretch(item, text, None, basis)
        known = (*ctx.names["equipment"], *ctx.names["passes"])
        ctx.problems.add(item, f"{shown(text)} is nothing a run can pass", ctx.problems.meant(name, known, _HOW))
        return ()

    def _stretch(self, item: Scalar, length: str, place: str | None, basis: str) -> tuple[Step, ...]:
        at = where(item)
        if place in _UNKNOWN:
            place = None
        if place is not None:
            self.ctx.check_name("places", item, place)
        try:
            value = parse_shape(_LENGTH, length.strip())
        except ShapeError as error:
            self.ctx.problems.add(item, error.message, error.right)
            return ()
        if value is None:
            self.ctx.problems.add(item, "a stretch of cable cannot be `none`", _HOW)
            return ()
        stretch = Length(Given(value, at, basis, length.strip()), place, at)
        # Who does not know the length has not seen the stretch: it may hide a device too.
        return (stretch, Gap(at)) if value is UNKNOWN else (stretch,)

    def _through(self, item: Scalar, name: str, terminals: str) -> tuple[Step, ...]:
        equipment = find_equipment(self.ctx, item, name)
        if equipment is None:
            return ()
        through = equipment.vocabulary.through
        if through is None:
            self.ctx.problems.add(
                item,
                f"{shown(name)} is {article(equipment.kind)}, which no run passes",
                "end the circuit there, start another",
            )
            return ()
        self._note_use(item, name, equipment.kind)
        enter, _, leave = terminals.partition(">")
        ports = [port for port in ports_at(self.ctx, equipment) if port]
        for terminal in (enter, leave):
            if terminal and terminal not in ports:
                right = self.ctx.problems.meant(terminal, ports, f"it has {', '.join(ports)}")
                self.ctx.problems.add(item, f"{shown(name)} has no terminal {shown(terminal)}", right)
                return ()
        if enter and not leave:
            leave = _other_side(equipment.vocabulary, enter)
        if (not enter and not through[0]) or (enter and enter == leave):
            self.ctx.problems.add(
                item, f"the run does not say which terminals of {shown(name)} it passes", f"write `{name}.shore>common`"
            )
            return ()
        return (Through(name, enter or None, leave or None, where(item)),)

    def _note_use(self, item: Scalar, name: str, kind: str) -> None:
        if kind in _SHARED:
            return
        other = self.in_runs.setdefault(name, self.circuit)
        if other != self.circuit:
            self.ctx.problems.add(
                item, f"{shown(name)} stands in the run of {shown(other)} already", "one device stands in one run"
            )


def _other_side(vocabulary: Kind, enter: str) -> str:
    """The terminal by which a run leaves what it entered at `enter`: of a changeover its common."""
    first, second = vocabulary.through or ("", "")
    if not first:
        return vocabulary.ports[0].name
    return first if enter == second else second


def mappings_in(node: Node | None) -> list[Mapping]:
    """The devices written in place in a run, in order."""
    if type(node) is not Sequence:
        return []
    return [item for item in node.items if type(item) is Mapping and "is" not in item.entries]
