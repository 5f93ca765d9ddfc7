"""Text from a design file made harmless for a terminal, an XML file or a page: what cannot be seen is shown."""

from __future__ import annotations

import re

# Control characters could move a terminal's cursor; the bidirectional ones could make a line read as another.
_UNSEEN = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]")


def plain(text: str) -> str:
    """`text` with every control, direction-changing or unpaired character written as an escape such as `\\x1b`."""
    return _UNSEEN.sub(_escape, text)


def one_line(text: str) -> str:
    """`plain` text with every run of white space, line ends included, as one blank."""
    return " ".join(plain(text).split())


def _escape(found: re.Match[str]) -> str:
    code = ord(found.group())
    return f"\\x{code:02x}" if code < 0x100 else f"\\u{code:04x}"
