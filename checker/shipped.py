"""Where the files lie that come along with the package: rules, schemas and examples."""

from __future__ import annotations

from pathlib import Path

FOLDERS = ("rules", "schemas", "examples")

# Path rather than importlib.resources: a wheel is always unpacked on installing, and that import alone costs 9 ms.
_PACKAGE = Path(__file__).resolve().parent


def shipped(folder: str) -> Path:
    """The shipped folder of that name, wherever the package is installed.

    In a wheel it lies inside the package, in a checkout beside it.

    Raises
    ------
    ValueError: no folder of that name is shipped.
    FileNotFoundError: it should be there and is not, so the installation is broken.
    """
    if folder not in FOLDERS:
        raise ValueError(f"no folder {folder!r} is shipped; there are {', '.join(FOLDERS)}")
    places = (_PACKAGE / "_data" / folder, _PACKAGE.parent / folder)
    for place in places:
        if place.is_dir():
            return place
    looked = " and ".join(str(place) for place in places)
    raise FileNotFoundError(f"the shipped folder {folder!r} is missing, looked at {looked}; install the package again")
