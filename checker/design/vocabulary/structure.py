"""Keys that are not values but make up the shape of equipment and circuits. The reader handles each by itself."""

from __future__ import annotations


class Structural:
    """One such key: what it says and how it is written."""

    __slots__ = ("example", "name", "required", "says")

    def __init__(self, name: str, says: str, example: str, *, required: bool = False) -> None:
        self.name = name
        self.says = says
        self.example = example
        self.required = required


EQUIPMENT_STRUCTURE = (
    Structural("kind", "What it is; needed unless a part says it.", "fuse"),
    Structural("part", "A part whose values it takes; what is written here comes first, key by key.", "strip-80"),
    Structural("terminals", "What is known of its terminals, by name.", "{+: {stud: M8, holds: 3, torque: 12 N m}}"),
)
BANK_STRUCTURE = (Structural("of", "The battery or part that each unit is.", "lithium-module", required=True),)
BOARD_STRUCTURE = (
    Structural(
        "ways",
        "Its ways by name: the rating of the device, `unknown`, or a device.",
        "{lights: 10 A, slide: {part: mains-mcb, rating: 10 A}}",
    ),
)
CIRCUIT_STRUCTURE = (
    Structural("from", "Where it starts: equipment, or one port of it.", "bar-48", required=True),
    Structural("to", "Where it ends; a list is a string of outlets on one circuit.", "converter.high", required=True),
    Structural(
        "run", "What a hand meets along it, in order from the start.", "[0.3 m via locker, F1, P1]", required=True
    ),
    Structural("cable", "A cable by name or written in place; left out: unknown.", "red-35"),
    Structural("cores", "The cores of a shared multi-core cable that it uses; left out: all.", "[1, 2]"),
    Structural("return", "How the current comes back, where the cable has one core.", "same"),
    Structural("earth", "How its earth goes, where it is not a core of the cable.", "{run: [0.5 m], size: 6 mm2}"),
    Structural("ends", "How its two ends were made.", "{from: {lug: 70-8, crimp: die}, to: {torqued: 12 N m}}"),
)

RETURNS = ("same", "chassis", "in cable", "none")
EARTHS = ("in cable", "same", "chassis", "none")


def structure_of(kind: str, section: str) -> tuple[Structural, ...]:
    """The structural keys of a kind in a section, in the order they are explained."""
    if section == "circuits":
        return CIRCUIT_STRUCTURE
    if section not in ("equipment", "joints", "parts"):
        return ()
    own = {"bank": BANK_STRUCTURE, "board": BOARD_STRUCTURE}.get(kind, ())
    return EQUIPMENT_STRUCTURE + own
