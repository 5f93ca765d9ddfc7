"""The JSON report as pydantic models: the source of `schemas/report.schema.json`, and what the tests validate with.

Imported for making the schema alone; a review does not load pydantic.
"""

from __future__ import annotations

from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

Sha256 = str
Verdict = Literal["breach", "unproven", "set aside", "met", "not applicable"]
Signal = Literal["DANGER", "WARNING", "CAUTION", "NOTICE"]


class _Closed(BaseModel):
    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)


class About(_Closed):
    """The subject of a finding."""

    kind: str = Field(description="Kind of subject, such as conductor, device, approach or supply.")
    id: str = Field(description="Its name in the design, unique within its kind.")


class Place(_Closed):
    """Where to look in the design file."""

    file: str = Field(description="The design file as it was named on the command line.")
    line: int = Field(ge=1, description="Line, counted from 1.")
    column: int = Field(ge=1, description="Column in characters, counted from 1.")


class Need(_Closed):
    """An entry of the design file that would decide an unproven verdict."""

    path: str = Field(description="Dotted path of the entry.")
    what: str = Field(description="What it says now, or that it is missing.")
    line: int = Field(ge=1, description="Line where it stands or would stand, counted from 1.")
    column: int = Field(ge=1, description="Column in characters, counted from 1.")


class Departure(_Closed):
    """The record in the design file that sets a breach aside."""

    reason: str = Field(description="Why the rule is not followed.")
    by: str = Field(description="Who decided it.")
    reference: str = Field(description="Licence, note or approval it rests on.")
    date: str = Field(description="When it was decided, as written.")


class Finding(_Closed):
    """What one rule says of one subject."""

    key: str = Field(description="Names this finding from run to run: rule, kind and id, no line and no wording.")
    rule: str = Field(description="Id of the rule.")
    verdict: Verdict = Field(
        description="breach: the design breaks the rule; unproven: the file does not say enough; set aside: broken, "
        "with a recorded departure; met: this rule found nothing against it; not applicable: the rule does not "
        "concern this subject."
    )
    signal: Signal = Field(
        description="How bad a breach is, in the words of ANSI Z535.6 and ISO 3864-2. DANGER: will kill or maim if "
        "not avoided; WARNING: could; CAUTION: minor or moderate injury; NOTICE: damage or malfunction."
    )
    about: About
    where: Place
    title: str = Field(description="The rule's title: the fault in one sentence.")
    says: str = Field(description="The finding in one sentence with its numbers; may be empty.")
    working: list[str] = Field(description="The expression with its numbers, line by line; blanks in front: detail.")
    why: str = Field(description="What the fault leads to.")
    mend: str = Field(description="What would put it right; may be empty.")
    sources: list[str] = Field(
        description="Where the rule and its limits come from; what was recalled and not held against the text says so."
    )
    covers: list[str] = Field(description="Ids in the requirements catalogue that the rule decides.")
    needs: list[Need] = Field(description="For an unproven verdict: what to look at, measure or look up.")
    assumes: list[str] = Field(description="Values that nobody stated and that the verdict rests on.")
    under: str | None = Field(description="Key of the finding that explains this one, or null.")
    departure: Departure | None = Field(description="The record that sets it aside, or null.")


class DesignStamp(_Closed):
    """Which design was reviewed."""

    file: str = Field(description="The design file as it was named on the command line.")
    title: str = Field(description="Title of the design.")
    sha256: Sha256 = Field(pattern="^[0-9a-f]{64}$", description="SHA-256 of the design file.")


class RulebookStamp(_Closed):
    """Against which rules it was reviewed."""

    rules: int = Field(ge=0, description="Number of rules.")
    code: str = Field(description="Code of practice whose limits were used.")
    sha256: Sha256 = Field(pattern="^[0-9a-f]{64}$", description="SHA-256 over all rules and limits.")


class BySignal(_Closed):
    """Breaches by signal word."""

    DANGER: int = Field(ge=0)
    WARNING: int = Field(ge=0)
    CAUTION: int = Field(ge=0)
    NOTICE: int = Field(ge=0)


class Counts(_Closed):
    """How many verdicts of each kind there are, whether they are listed or not."""

    breach: BySignal
    unproven: int = Field(ge=0)
    set_aside: int = Field(ge=0)
    met: int = Field(ge=0)
    not_applicable: int = Field(ge=0)


class Report(_Closed):
    """What `fitout review --format json` prints."""

    report: Literal[1] = Field(description="Number of this format.")
    caution: str = Field(description="The standing caution: to be shown wherever the report is shown.")
    design: DesignStamp
    rulebook: RulebookStamp
    version: str = Field(description="Version of fitout.")
    counts: Counts
    not_checked: list[str] = Field(description="What this review did not look at, in sentences.")
    findings: list[Finding] = Field(description="Worst first. What is met or not applicable is listed only with --all.")
    deferral: str = Field(description="Who decides instead of this report: to be shown with it.")
