"""The keys of a rule file, in the order in which they stand. Reader, schema and documents are made from this list."""

from __future__ import annotations

from typing import NamedTuple

SIGNALS = ("danger", "warning", "caution", "notice")
"""Worst first; the words of ANSI Z535.6 and ISO 3864-2."""

VERDICTS = ("met", "breach", "unproven", "set aside", "not applicable")

SHOWN_BY_EXAMPLES = ("met", "breach", "unproven", "not applicable")
"""Verdicts that examples are written for; the first three are in every rule."""

BASES = ("seen", "memory", "practice")
"""What a source or a limit rests on: read by us, recalled, or common trade practice without a source."""

CODES = ("intl", "eu", "uk", "au-nz", "us-rv", "us-boat", "intl-boat", "ca")
FALLBACK = "intl"

NAME = r"[a-z][a-z0-9]*(-[a-z0-9]+)*"
"""Ids of rules, examples and codes, and names of topics."""
FACT_NAME = r"[a-z][a-z0-9]*(_[a-z0-9]+)*"
"""Kinds, facts and limits."""


class Key(NamedTuple):
    """One key: its `shape` (line, text, expression, names, sources, examples), whether it must stand, one sentence."""

    name: str
    shape: str
    required: bool
    says: str


KEYS = (
    Key("id", "name", True, "The duty in lower case with hyphens, the same as the file name; it follows a verdict: "
        "`met: drop-within-limit`. No number, no signal, no clause."),
    Key("title", "line", True, "What is wrong when the duty is breached, one sentence without a full stop."),
    Key("signal", "signal", True, "How bad a breach is: danger, warning, caution or notice."),
    Key("after", "names", False, "Rules whose breach on the same subject, or on one this rule looks at, explains this "
        "one: the finding is then folded under theirs."),
    Key("about", "kind", True, "The kind of subject it is put to, a heading of `docs/facts.md`."),
    Key("given", "expression", False, "Where it applies; `true` when left out."),
    Key("require", "expression", True, "What must hold."),
    Key("says", "text", False, "The sentence of a finding, with `{{ fact }}` and `{{ limits.x }}` filled in; made from "
        "`require` when left out."),
    Key("why", "text", True, "What happens otherwise, for the person who has to be convinced."),
    Key("mend", "text", True, "What would put it right, with `{{ fact }}` filled in."),
    Key("change", "names", False, "Which entries of the design a mend may change: `device.rating`."),
    Key("covers", "names", True, "Entries of the requirements catalogue that it decides; `[]` for none."),
    Key("sources", "sources", True, "What it rests on: `title`, `clause`, `edition`, and the `basis`, which is `seen`, "
        "`memory`, or `practice` for a house rule or custom that no text publishes; that one needs a title alone."),
    Key("examples", "examples", True, "At least one each of met, breach and unproven; the tests are made from them."),
)  # fmt: skip

ORDER = tuple(key.name for key in KEYS)
REQUIRED = tuple(key.name for key in KEYS if key.required)
SOURCE_KEYS = ("title", "clause", "edition", "basis")
