"""What rule files say, kept between runs: text only, never code, and only for the very bytes it was made from.

The key covers every byte of every file, the catalogue of facts and this package, so a stale entry is never read. The
file may be deleted at any time. `FITOUT_CACHE=none` turns it off, `FITOUT_CACHE=FOLDER` puts it elsewhere. Whatever
stands in it goes through the same checks as a rule file before anything is compiled from it.
"""

from __future__ import annotations

import json
import os
from contextlib import suppress
from hashlib import sha256
from pathlib import Path
from typing import Any

FORMAT = 1


def cache_folder() -> Path | None:
    """Where it is kept, or None when it is turned off or the user has no home."""
    wanted = os.environ.get("FITOUT_CACHE", "")
    if wanted == "none":
        return None
    if wanted:
        return Path(wanted)
    base = os.environ.get("XDG_CACHE_HOME", "")
    if base:
        return Path(base) / "fitout"
    home = os.environ.get("HOME") or os.environ.get("USERPROFILE")
    return Path(home) / ".cache" / "fitout" if home else None


def cache_file(labels: tuple[str, ...]) -> Path | None:
    """The file for one set of rule folders."""
    folder = cache_folder()
    return None if folder is None else folder / f"rules-{sha256('|'.join(labels).encode()).hexdigest()[:16]}.json"


def recall(file: Path | None, key: str) -> Any:
    """What was kept under `key`, or None."""
    if file is None:
        return None
    try:
        kept = json.loads(file.read_bytes())
    except (OSError, ValueError, RecursionError):
        return None  # not there or damaged: the files themselves are read
    if isinstance(kept, dict) and kept.get("key") == key:
        return kept.get("content")
    return None


def keep(file: Path | None, key: str, content: Any) -> None:
    """Keep `content` under `key`. A folder that cannot be written to is no hindrance."""
    if file is None:
        return
    part = file.with_name(f"{file.name}.{os.getpid()}.part")
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        part.write_text(json.dumps({"key": key, "content": content}, ensure_ascii=False), encoding="utf-8")
        part.replace(file)
    except OSError:
        with suppress(OSError):
            part.unlink()
