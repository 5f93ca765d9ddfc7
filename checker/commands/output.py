"""Where a command's text or picture goes: standard output, or a file that is the old one or the new one, never half."""

from __future__ import annotations

import os
import stat
import sys
from collections.abc import Iterable
from pathlib import Path

from checker.commands import silence_stdout
from checker.commands.refusal import Refused, why

_BLOCK = 1 << 16


def deliver(pieces: Iterable[str | bytes], output: Path | None = None, protected: Iterable[Path] = ()) -> None:
    """Write the pieces to standard output, or atomically to `output`.

    Raises
    ------
    Refused: `output` cannot be written, or is one of the `protected` files under any name.
    """
    if output is None:
        _print(pieces)
    else:
        save(pieces, output, protected)


def _print(pieces: Iterable[str | bytes]) -> None:
    """Long lists go out as they are made; a reader who has seen enough ends it quietly."""
    if sys.stdout is None:
        raise Refused("fitout: standard output is closed; give --output FILE")
    try:
        for piece in pieces:
            if isinstance(piece, bytes):
                sys.stdout.buffer.write(piece)
            else:
                sys.stdout.write(piece)
        sys.stdout.flush()
    except BrokenPipeError:
        silence_stdout()
    except OSError as error:
        silence_stdout()
        raise Refused(f"fitout: standard output: {why(error)}; the report is not complete") from error


def save(pieces: Iterable[str | bytes], output: Path, protected: Iterable[Path] = ()) -> None:
    """Write to a temporary file beside `output`, then put it in its place.

    Raises
    ------
    Refused: with the reason; whatever stood at `output` before stands there still.
    """
    _refuse_protected(output, protected)
    try:
        target = Path(os.path.realpath(output))  # a link stays a link, its target is replaced
        if target.exists() and not target.is_file():
            _fill(pieces, target, output)
        else:
            _replace(pieces, target)
    except OSError as error:
        raise Refused(f"{output}: cannot be written: {why(error)}; nothing was changed") from error


def _refuse_protected(output: Path, protected: Iterable[Path]) -> None:
    for path in protected:
        if _same(output, path):
            raise Refused(f"{output}: is an input of this review ({path}); give another name to --output")


def _same(one: Path, other: Path) -> bool:
    """Whether two names lead to one file, through links, hard links and `..` too."""
    if os.path.realpath(one) == os.path.realpath(other):
        return True
    try:
        return os.path.samefile(one, other)
    except OSError:
        return False  # one of them does not exist, so nothing can be lost


def _fill(pieces: Iterable[str | bytes], target: Path, output: Path) -> None:
    """A device or a pipe takes the text as it comes: it cannot be replaced."""
    if target.is_dir():
        raise Refused(f"{output}: is a folder; give the name of a file to --output")
    with open(target, "wb", buffering=_BLOCK) as file:
        for piece in pieces:
            file.write(encoded(piece))


def _replace(pieces: Iterable[str | bytes], target: Path) -> None:
    from tempfile import mkstemp

    handle, name = mkstemp(prefix=f".{target.name[:60]}.", suffix=".part", dir=target.parent)
    try:
        with open(handle, "wb", buffering=_BLOCK) as file:
            for piece in pieces:
                file.write(encoded(piece))
            file.flush()
            os.fsync(file.fileno())
        os.chmod(name, _mode(target))
        os.replace(name, target)
    except BaseException:
        _remove(name)
        raise


def _remove(name: str) -> None:
    try:
        os.unlink(name)
    except FileNotFoundError:
        return


def _mode(target: Path) -> int:
    """The permissions of the file that is replaced, or those that any new file would get."""
    try:
        return stat.S_IMODE(os.stat(target).st_mode)
    except FileNotFoundError:
        mask = os.umask(0)
        os.umask(mask)
        return 0o666 & ~mask


def encoded(piece: str | bytes) -> bytes:
    """Bytes as they are, text as UTF-8; half a surrogate pair, as in a file name that is no text, as an escape."""
    return piece if isinstance(piece, bytes) else piece.encode("utf-8", "backslashreplace")


def wants_colour() -> bool:
    """Colour only on a terminal, and not when NO_COLOR is set to anything."""
    if os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb":
        return False
    return sys.stdout is not None and sys.stdout.isatty()
