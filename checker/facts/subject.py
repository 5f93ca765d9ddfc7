"""A subject answers for its facts, each computed once and when first asked; with a recorder, it shows its work."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, NamedTuple

from checker.design.fitted import fitted_now
from checker.design.given import NOWHERE, Given, Where
from checker.design.item import Item
from checker.facts.catalogue import CATALOGUE, FactSpec
from checker.quantities import Unknown

if TYPE_CHECKING:
    from checker.circuit.network import Network
    from checker.design.model import Design


class Input(NamedTuple):
    """One value read from the design file: dotted path, value, unit it is shown in, basis, place, text as written."""

    path: str
    value: Any
    unit: str
    basis: str
    where: Where
    text: str


class Step(NamedTuple):
    """How one fact came about: its value, notes (formulas with their numbers), inputs read, facts it rests on."""

    spec: FactSpec
    subject_kind: str
    subject_id: str
    value: Any
    notes: tuple[str, ...]
    inputs: tuple[Input, ...]
    steps: tuple[Step, ...]

    @property
    def name(self) -> str:
        """`kind.fact`."""
        return f"{self.spec.kind}.{self.spec.name}"

    def leaves(self) -> tuple[Input, ...]:
        """Every input it rests on, each once, in the order read."""
        found: dict[str, Input] = {}
        seen: set[int] = set()  # facts rest on the same facts by many ways
        todo = [self]
        while todo:
            step = todo.pop()
            if id(step) in seen:
                continue
            seen.add(id(step))
            for given in step.inputs:
                if given.path not in found:
                    found[given.path] = given
            todo.extend(reversed(step.steps))
        return tuple(found.values())


class Subject:
    """Something rules speak of. Facts are attributes; `item` is what it stands for in the design or the graph."""

    def __init__(self, kind: str, id: str, where: Where, item: Any, facts: Facts) -> None:
        self.kind = kind
        self.id = id
        self.where = where
        self.item = item
        self.facts = facts

    def __getattr__(self, name: str) -> Any:
        # Reached only for what is not stored yet; an exact, cached fact is a plain attribute.
        spec = CATALOGUE.find(self.__dict__["kind"], name)
        if spec is None:
            raise AttributeError(f"{self.__dict__['kind']} has no fact {name}")
        return self.facts.compute(self, spec)

    def read(self, item: Item, key: str) -> Any:
        """The value of a key of the design, noted as an input."""
        given = item.get(key)
        recorder = self.facts.recorder
        if recorder is not None:
            unit = item.vocabulary.keys[key].unit if key in item.vocabulary.keys else ""
            recorder.read(f"{item.path}.{key}", given, unit if isinstance(unit, str) else "")
        return given.value

    def use(self, path: str, given: Given, unit: str = "") -> Any:
        """The value of something given that is no key of an item (a length in a run), noted as an input."""
        if self.facts.recorder is not None:
            self.facts.recorder.read(path, given, unit)
        return given.value

    def note(self, words: Callable[[], str]) -> None:
        """Add a line of working; the words are made only when somebody wants to see them."""
        if self.facts.recorder is not None:
            self.facts.recorder.frames[-1][0].append(words())

    def __repr__(self) -> str:
        return f"<{self.kind} {self.id}>"


Frame = tuple[list[str], list[Input], list[Step]]


class Recorder:
    """Collects notes, inputs and steps while facts are computed with nothing cached on the subjects."""

    __slots__ = ("frames", "memo")

    def __init__(self) -> None:
        self.frames: list[Frame] = [([], [], [])]
        self.memo: dict[tuple[str, str, str], Step] = {}

    def read(self, path: str, given: Given, unit: str) -> None:
        """Note an input of the fact being computed."""
        self.frames[-1][1].append(Input(path, given.value, unit, given.basis, given.where, given.text))


class Facts:
    """All subjects of one design, listed when first asked for.

    With a `recorder` nothing is stored on the subjects, so that every use of a fact is seen; results are kept in the
    recorder instead. Both ways use the same graph and the same `shared` results.
    """

    def __init__(
        self,
        design: Design,
        network: Network | None = None,
        recorder: Recorder | None = None,
        shared: dict[str, Any] | None = None,
    ) -> None:
        self.whole = design  # with what is planned for later
        self.design = fitted_now(design)
        self.recorder = recorder
        self._network = network
        self._subjects: dict[str, tuple[Subject, ...]] = {}
        self._by_id: dict[str, dict[str, Subject]] = {}
        self._by_item: dict[str, dict[int, Subject]] = {}
        self._computing: set[tuple[str, str, str]] = set()
        self.store: dict[str, Any] = {}  # results over the whole design that several facts share
        # Such results that hold no subject and come from graph and design alone; the recording twin takes them over.
        self.shared: dict[str, Any] = {} if shared is None else shared
        self._recording: Facts | None = None

    @property
    def network(self) -> Network:
        """The one graph."""
        if self._network is None:
            from checker.circuit.build import build

            self._network = build(self.design)
        return self._network

    def subjects(self, kind: str) -> tuple[Subject, ...]:
        """The subjects of a kind, in file order."""
        found = self._subjects.get(kind)
        if found is None:
            made = [Subject(kind, id, where, item, self) for id, where, item in CATALOGUE.listers[kind](self)]
            found = self._subjects[kind] = tuple(made)
            self._by_id[kind] = {subject.id: subject for subject in made}
            self._by_item[kind] = {id(subject.item): subject for subject in made}
        return found

    def subject(self, kind: str, id: str) -> Subject | None:
        """The subject of that kind and id."""
        self.subjects(kind)
        return self._by_id[kind].get(id)

    def of(self, kind: str, item: Any) -> Subject | None:
        """The subject of that kind that stands for `item` (the same object)."""
        self.subjects(kind)
        return self._by_item[kind].get(id(item))

    def compute(self, subject: Subject, spec: FactSpec) -> Any:
        """Compute a fact of a subject, once. Raises RuntimeError when a fact rests on itself."""
        key = (subject.kind, subject.id, spec.name)
        recorder = self.recorder
        if recorder is not None:
            return self._record(subject, spec, key, recorder)
        if key in self._computing:
            raise RuntimeError(f"the fact {spec.kind}.{spec.name} of {subject.id} rests on itself")
        self._computing.add(key)
        try:
            value = settle(spec.function(subject))
        finally:
            self._computing.discard(key)
        subject.__dict__[spec.name] = value
        return value

    def _record(self, subject: Subject, spec: FactSpec, key: tuple[str, str, str], recorder: Recorder) -> Any:
        step = recorder.memo.get(key)
        if step is None:
            if key in self._computing:
                raise RuntimeError(f"the fact {spec.kind}.{spec.name} of {subject.id} rests on itself")
            self._computing.add(key)
            frame: Frame = ([], [], [])
            recorder.frames.append(frame)
            try:
                value = settle(spec.function(subject))
            finally:
                recorder.frames.pop()
                self._computing.discard(key)
            step = Step(spec, subject.kind, subject.id, value, tuple(frame[0]), tuple(frame[1]), tuple(frame[2]))
            recorder.memo[key] = step
        recorder.frames[-1][2].append(step)
        return step.value

    def recording(self) -> Facts:
        """The same facts over the same graph, with a recorder; made once."""
        if self._recording is None:
            self._recording = Facts(self.whole, self.network, Recorder(), self.shared)
        return self._recording


def settle(value: Any) -> Any:
    """A computed number with twelve significant digits, so that the last bit of a processor decides nothing."""
    if type(value) is float:
        return float(f"{value:.12g}")
    if type(value) is int:
        return float(value)
    return value


def trace(subject: Subject, name: str) -> Step:
    """How the fact `name` of `subject` came about, down to the lines of the file.

    Raises AttributeError when there is no such fact.
    """
    facts = subject.facts.recording()
    twin = facts.subject(subject.kind, subject.id)
    if twin is None or facts.recorder is None:
        raise AttributeError(f"{subject.kind} {subject.id} cannot be found again")
    getattr(twin, name)
    return facts.recorder.memo[(subject.kind, subject.id, name)]


def unknown(reason: str) -> Unknown:
    """An unknown value with the reason in plain words."""
    return Unknown(reason)


__all__ = ["NOWHERE", "Facts", "Input", "Recorder", "Step", "Subject", "trace", "unknown"]
