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
    "date",  # YYYY-MM-DD or YYYY-MM, kept as text
    "name",  # the name of something in `section`: kept as text, checked
    "names",  # a list of such names: value is a tuple
    "port",  # equipment or equipment.port
    "signal",  # the name of a signal, or a port
    "box",  # design.Box
    "point",  # three lengths
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
    them, and a mapping written there counts as yes for the key itself.
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
    """A place on equipment where circuits end: its name ('' when the only one) and its poles, live first."""

    __slots__ = ("name", "poles", "says")

    def __init__(self, name: str, poles: tuple[str, ...], says: str = "") -> None:
        self.name = name
        self.poles = poles
        self.says = says


class Kind:
    """A kind of thing: which section it may stand in, its ports, its keys, and one sentence."""

    __slots__ = ("keys", "name", "ports", "says", "sections")

    def __init__(
        self,
        name: str,
        says: str,
        keys: tuple[Key, ...],
        *,
        ports: tuple[Port, ...] = (),
        sections: tuple[str, ...] = ("equipment",),
    ) -> None:
        self.name = name
        self.says = says
        self.keys: dict[str, Key] = {key.name: key for key in keys}
        self.ports = ports
        self.sections = sections
        if len(self.keys) != len(keys):
            raise ValueError(f"{name}: a key stands twice")
