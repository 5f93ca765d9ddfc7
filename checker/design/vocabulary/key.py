"""What the closed table of kinds and keys is made of."""

from __future__ import annotations

from typing import Any

SHAPES = (
    "quantity",  # one number with a unit: `unit`; may be a range, unknown, none
    "quantities",  # one number for `each`, or a list of numbers: value is a tuple
    "count",  # a bare whole number
    "ratio",  # a bare number or a percentage
    "window",  # a true interval: quantities.Window in `unit`
    "rated voltage",  # design.RatedVoltage
    "word",  # one of `words`
    "words",  # a list of `words`: value is a tuple
    "yes/no",  # true or false
    "text",  # any text
    "texts",  # a list of texts: value is a tuple
    "date",  # YYYY-MM-DD, YYYY-MM or YYYY, or two of them as a..b; kept as text
    "name",  # the name of something in `section`: kept as text, checked
    "names",  # a list of such names: value is a tuple
    "port",  # equipment or equipment.port
    "signal",  # the name of a signal, or a port
    "box",  # design.Box
    "point",  # three lengths
    "points",  # a list of points: value is a tuple of tuples of three lengths
    "curve",  # pairs of quantities, `unit` is (x unit, y unit): value is a tuple of pairs in rising x
    "map",  # name of something in `section` to a quantity of one of the units in `unit`: tuple of (name, Given)
    "choices",  # name of something in `section` to a word or text: tuple of (name, Given)
    "arrangement",  # 1s3p: value is (series, parallel)
    "degree",  # degree of protection, IP44: kept as text
    "records",  # a list of small mappings: value is a tuple of tuples of (key, Given); `fields` says which
)


class Key:
    """One key of a kind. Nested keys are written with dots: `bms.charge limit`.

    A key that has nested keys below it may also be written as a scalar: `unknown` or `none` then stands for all of
    them, and a mapping written there counts as yes for the key itself when that is a yes/no (`restraint`). Another
    key may have a scalar and a mapping form (`degree: IP44`, `degree: {open: IP44, mated: IP44}`): a mapping then
    writes the nested keys alone.

    `words` on a shape other than `word` and `words` are words that may stand there instead (`engine: idle` beside
    `engine: 2000 rpm`); the value is then the word. Shapes that hold a list take a single one as a list of one.
    `section` says where a name is looked up: a section of the file, `throws` (the throws of the same changeover),
    or `anything` (equipment, a port, a joint, a circuit, a place or a moving part).
    """

    __slots__ = ("default", "fields", "name", "required", "says", "section", "shape", "unit", "words")

    def __init__(
        self,
        name: str,
        shape: str,
        says: str,
        *,
        unit: Any = "",
        words: tuple[str, ...] = (),
        section: str = "",
        default: str | None = None,
        required: bool = False,
        fields: tuple[Key, ...] = (),
    ) -> None:
        if shape not in SHAPES:
            raise ValueError(f"{name}: no such shape as {shape}")
        self.name = name
        self.shape = shape
        self.says = says
        self.unit = unit
        self.words = words
        self.section = section
        self.default = default  # text as one would write it; a finding that rests on it calls it assumed
        self.required = required
        self.fields = fields


class Port:
    """A place on equipment where circuits end: its name ('' when the only one) and its poles, live first.

    A single-pole port has the one pole ''. The name of a terminal is port and pole: `+`, `dc+`, `a`, `ac-inL`.
    """

    __slots__ = ("name", "poles", "says")

    def __init__(self, name: str, poles: tuple[str, ...], says: str = "") -> None:
        self.name = name
        self.poles = poles
        self.says = says

    def terminals(self) -> tuple[str, ...]:
        """The names of its terminals, live first."""
        return tuple(self.name + pole for pole in self.poles)


class Kind:
    """A kind of thing: which section it may stand in, its ports, its keys, and one sentence.

    `more_ports` says where further ports come from: `ways` or `throws` (the names written there), `any` (every
    name), or '' (there are none). `through` is the pair of terminals between which a run passes it, ('', '') when
    the run must name both (`K3.shore>common`), or None when it cannot stand in a run.
    `names` is the closed list of names its entries may have, empty when they are free.
    """

    __slots__ = ("keys", "more_ports", "name", "names", "ports", "says", "sections", "through")

    def __init__(
        self,
        name: str,
        says: str,
        keys: tuple[Key, ...],
        *,
        ports: tuple[Port, ...] = (),
        sections: tuple[str, ...] = ("equipment",),
        more_ports: str = "",
        through: tuple[str, str] | None = None,
        names: tuple[str, ...] = (),
    ) -> None:
        self.name = name
        self.says = says
        self.keys: dict[str, Key] = {key.name: key for key in keys}
        self.ports = ports
        self.sections = sections
        self.more_ports = more_ports
        self.through = through
        self.names = names
        if len(self.keys) != len(keys):
            raise ValueError(f"{name}: a key stands twice")

    def terminals(self) -> tuple[str, ...]:
        """Every terminal its own ports have (ways and throws come on top), port by port."""
        return tuple(terminal for port in self.ports for terminal in port.terminals())


class Section:
    """A part of the file at its top level.

    `holds` is `value` (one key of the kind `fit-out`), `item` (one mapping), `items` (names, each with a mapping)
    or `list`. `kind` is the one kind that stands there, '' where entries say their own kind.
    """

    __slots__ = ("holds", "kind", "name", "required", "says")

    def __init__(self, name: str, holds: str, says: str, *, kind: str = "", required: bool = False) -> None:
        self.name = name
        self.holds = holds
        self.says = says
        self.kind = kind
        self.required = required
