"""The report as SARIF 2.1.0 (OASIS, Static Analysis Results Interchange Format), for code hosts and editors.

A breach is of kind `fail`, with the level `error` for DANGER and WARNING, `warning` for CAUTION and `note` for
NOTICE; unproven is of kind `open` (too little information to decide), met of kind `pass`, not applicable of kind
`notApplicable`, each with the level `none` that SARIF asks for there. What is set aside is a `fail` with a
suppression that holds the record. Fingerprints hold rule and subject, no line, so that a result stays the same
when a comment is added above it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from checker.reports.caution import CAUTION
from checker.reports.plain import plain
from checker.reports.wording import few, need, record, subject
from checker.reports.words import BREACH, MET, NOT_APPLICABLE, SET_ASIDE, SIGNAL_MEANS, UNPROVEN

if TYPE_CHECKING:
    from checker.reports.document import Document, FindingData

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
LEVEL = {"DANGER": "error", "WARNING": "error", "CAUTION": "warning", "NOTICE": "note"}
KIND = {BREACH: "fail", SET_ASIDE: "fail", UNPROVEN: "open", MET: "pass", NOT_APPLICABLE: "notApplicable"}
FINGERPRINT = "ruleAndSubject/v1"


def sarif(document: Document) -> Iterator[str]:
    """The report as one SARIF log with one run."""
    from json import JSONEncoder

    log = {"$schema": SCHEMA, "version": "2.1.0", "runs": [_run(document)]}
    yield from JSONEncoder(ensure_ascii=False, indent=2, allow_nan=False).iterencode(log)
    yield "\n"


def _run(document: Document) -> dict[str, Any]:
    rules = _first_of_each_rule(document)
    index = {rule: number for number, rule in enumerate(rules)}
    return {
        "tool": {
            "driver": {
                "name": "fitout",
                "version": document["version"],
                "semanticVersion": document["version"],
                "rules": [_rule(finding) for finding in rules.values()],
                "notifications": [
                    {
                        "id": "caution",
                        "shortDescription": {"text": "What this report is and is not"},
                        "fullDescription": {"text": CAUTION},
                    }
                ],
            }
        },
        "invocations": [_invocation(document)],
        "artifacts": [
            {
                "location": {"uri": _uri(document["design"]["file"])},
                "hashes": {"sha-256": document["design"]["sha256"]},
            }
        ],
        "columnKind": "unicodeCodePoints",
        "results": [_result(finding, index) for finding in document["findings"]],
        "properties": {
            "caution": document["caution"],
            "deferral": document["deferral"],
            "design": document["design"],
            "rulebook": document["rulebook"],
            "counts": document["counts"],
            "notChecked": document["not_checked"],
            "levels": "DANGER and WARNING: error; CAUTION: warning; NOTICE: note; unproven: kind open",
        },
    }


def _invocation(document: Document) -> dict[str, Any]:
    """The caution and the deferral stand where a viewer shows what the tool itself has to say."""
    return {
        "executionSuccessful": True,
        "toolExecutionNotifications": [
            {"level": "note", "message": {"text": document[key]}, "descriptor": {"id": "caution", "index": 0}}
            for key in ("caution", "deferral")
        ],
    }


def _first_of_each_rule(document: Document) -> dict[str, FindingData]:
    found: dict[str, FindingData] = {}
    for finding in sorted(document["findings"], key=lambda each: each["rule"]):
        found.setdefault(finding["rule"], finding)
    return found


def _rule(finding: FindingData) -> dict[str, Any]:
    described: dict[str, Any] = {
        "id": finding["rule"],
        "shortDescription": {"text": finding["title"]},
        "fullDescription": {"text": finding["why"] or finding["title"]},
        "help": {"text": " ".join([finding["why"] or finding["title"], CAUTION])},
        "defaultConfiguration": {"level": LEVEL[finding["signal"]]},
        "properties": {
            "signal": finding["signal"],
            "signalMeans": SIGNAL_MEANS[finding["signal"]],
            "sources": finding["sources"],
            "covers": finding["covers"],
        },
    }
    return described


def _result(finding: FindingData, index: dict[str, int]) -> dict[str, Any]:
    verdict = finding["verdict"]
    result: dict[str, Any] = {
        "ruleId": finding["rule"],
        "ruleIndex": index[finding["rule"]],
        "kind": KIND[verdict],
        "level": LEVEL[finding["signal"]] if KIND[verdict] == "fail" else "none",
        "message": {"text": _message(finding)},
        "locations": [_location(finding)],
        "partialFingerprints": {FINGERPRINT: fingerprint(finding)},
        "properties": {
            "verdict": verdict,
            "signal": finding["signal"],
            "working": finding["working"],
            "mend": finding["mend"],
            "needs": finding["needs"],
            "assumes": finding["assumes"],
            "under": finding["under"],
        },
    }
    departure = finding["departure"]
    if verdict == SET_ASIDE:
        why = "" if departure is None else f"{departure['reason']} ({record(departure)})"
        result["suppressions"] = [{"kind": "external", "status": "accepted", "justification": plain(why)}]
    return result


def _message(finding: FindingData) -> str:
    """Plain text; SARIF reads `[words](1)` and `{0}` as links and placeholders, so these are escaped."""
    said = finding["says"] or finding["title"]
    needs = "; ".join(few([need(each) for each in finding["needs"]])) or "see the working"
    words = {
        BREACH: f"{finding['signal']}: {said}",
        UNPROVEN: f"Unproven ({finding['signal']} if broken): {said} To settle it: {needs}",
        SET_ASIDE: f"{finding['signal']}, set aside: {said}",
        MET: f"This rule found nothing against it: {finding['title']}",
        NOT_APPLICABLE: f"Not applicable: {finding['title']}",
    }[finding["verdict"]]
    text = f"{subject(finding)}: {plain(words)}"
    for letter in "\\[]":
        text = text.replace(letter, "\\" + letter)
    return text.replace("{", "{{").replace("}", "}}")


def _location(finding: FindingData) -> dict[str, Any]:
    where, about = finding["where"], finding["about"]
    return {
        "physicalLocation": {
            "artifactLocation": {"uri": _uri(where["file"])},
            "region": {"startLine": where["line"], "startColumn": where["column"]},
        },
        "logicalLocations": [
            {"name": about["id"], "fullyQualifiedName": f"{about['kind']} {about['id']}", "kind": about["kind"]}
        ],
    }


def fingerprint(finding: FindingData) -> str:
    """SHA-256 of rule, kind and subject."""
    from hashlib import sha256

    about = finding["about"]
    identity = "\n".join((finding["rule"], about["kind"], about["id"]))
    return sha256(identity.encode("utf-8", "backslashreplace")).hexdigest()


def _uri(file: str) -> str:
    """A file name as the user gave it, as a relative or absolute URI reference."""
    from urllib.parse import quote

    path = file.replace("\\", "/")
    return quote(path.encode("utf-8", "surrogateescape"), safe="/")
