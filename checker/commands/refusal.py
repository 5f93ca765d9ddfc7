"""Input or output that cannot be used: said in one line each, exit status 2."""

from __future__ import annotations

import errno
from collections.abc import Iterable


class Refused(Exception):
    """Stops a command; `lines` go to standard error."""

    def __init__(self, *lines: str) -> None:
        super().__init__("; ".join(lines))
        self.lines = lines


_CAUSES = {
    errno.ENOENT: "no such file or folder",
    errno.EACCES: "permission denied",
    errno.EPERM: "permission denied",
    errno.EISDIR: "is a folder, not a file",
    errno.ENOTDIR: "a part of the path is not a folder",
    errno.ENOSPC: "no room left on the device",
    errno.EDQUOT: "no room left (quota)",
    errno.EROFS: "the file system is read-only",
    errno.ENAMETOOLONG: "the name is too long",
    errno.ELOOP: "symbolic links go in a circle",
}


def why(error: OSError) -> str:
    """What the operating system objects to, in plain words and in every locale the same."""
    return _CAUSES.get(error.errno or 0) or error.strerror or type(error).__name__


def nearest(word: str, known: Iterable[str]) -> str:
    """`; did you mean a, b?` for a misspelt name, or nothing."""
    from difflib import get_close_matches

    matches = get_close_matches(word, list(known), n=3, cutoff=0.6)
    return f"; did you mean {' or '.join(matches)}?" if matches else ""
