"""The report as JUnit XML, for build servers.

A breach, whatever its signal, is a failure of the type of that signal; unproven, set aside and not applicable are
skipped, with the reason as the message; met, listed with `--all`, is a test case without a mark. The first test case
says only that the review was carried out, so that a server that refuses an empty suite takes a report without
findings. No times: the same review gives the same bytes.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING
from xml.sax.saxutils import escape, quoteattr

from checker.reports.caution import MET_MEANS
from checker.reports.plain import plain
from checker.reports.wording import few, need, place, record, subject
from checker.reports.words import BREACH, MET, NOT_APPLICABLE, SET_ASIDE, UNPROVEN

if TYPE_CHECKING:
    from checker.reports.document import Document, FindingData


def junit(document: Document) -> Iterator[str]:
    """One test suite, one test case a finding."""
    findings = document["findings"]
    failures = sum(finding["verdict"] == BREACH for finding in findings)
    skipped = sum(finding["verdict"] in (UNPROVEN, SET_ASIDE, NOT_APPLICABLE) for finding in findings)
    name = _attribute(f"fitout review of {document['design']['file']}")
    counts = f'tests="{len(findings) + 1}" failures="{failures}" errors="0"'
    yield '<?xml version="1.0" encoding="UTF-8"?>\n'
    yield f"<!-- {_comment(document['caution'])} -->\n"
    yield f"<testsuites name={name} {counts}>\n"
    yield f'  <testsuite name={name} {counts} skipped="{skipped}">\n'
    yield "    <properties>\n"
    for key, value in _properties(document):
        yield f"      <property name={_attribute(key)} value={_attribute(value)}/>\n"
    yield "    </properties>\n"
    yield '    <testcase classname="fitout" name="the review was carried out"/>\n'
    for finding in findings:
        yield from _case(finding)
    yield f"    <system-out>{_text(document['caution'])}\n{_text(document['deferral'])}</system-out>\n"
    yield "  </testsuite>\n"
    yield "</testsuites>\n"


def _properties(document: Document) -> Iterator[tuple[str, str]]:
    yield "caution", document["caution"]
    yield "design", document["design"]["title"]
    yield "design sha256", document["design"]["sha256"]
    yield "rules", str(document["rulebook"]["rules"])
    yield "rules sha256", document["rulebook"]["sha256"]
    yield "code", document["rulebook"]["code"]
    yield "version", document["version"]
    counts = document["counts"]
    for signal, number in counts["breach"].items():
        yield f"breach {signal}", str(number)
    yield "unproven", str(counts["unproven"])
    yield "set aside", str(counts["set_aside"])
    yield "met", f"{counts['met']} ({MET_MEANS})"
    yield "not applicable", str(counts["not_applicable"])
    for sentence in document["not_checked"]:
        yield "not checked", sentence


def _case(finding: FindingData) -> Iterator[str]:
    opening = f"    <testcase classname={_attribute(finding['rule'])} name={_attribute(subject(finding))}"
    if finding["verdict"] == MET:
        yield f"{opening}/>\n"
        return
    yield f"{opening}>\n"
    if finding["verdict"] == BREACH:
        message = _attribute(f"{finding['signal']}: {finding['says'] or finding['title']}")
        yield f"      <failure type={_attribute(finding['signal'])} message={message}>"
        yield f"{_text(_body(finding))}</failure>\n"
    else:
        yield f"      <skipped message={_attribute(_skipped(finding))}/>\n"
    yield "    </testcase>\n"


def _skipped(finding: FindingData) -> str:
    departure, needs = finding["departure"], "; ".join(few([need(each) for each in finding["needs"]]))
    return {
        UNPROVEN: f"unproven, {finding['signal']} if broken: {finding['title']}; {needs}",
        SET_ASIDE: f"set aside, {finding['signal']}: {finding['title']}; "
        + ("" if departure is None else f"{departure['reason']}, {record(departure)}"),
        NOT_APPLICABLE: f"not applicable: {finding['title']}",
    }[finding["verdict"]]


def _body(finding: FindingData) -> str:
    lines = [place(finding), finding["title"], *finding["working"], finding["why"]]
    lines.append(f"Mend: {finding['mend']}" if finding["mend"] else "")
    lines.extend(f"Assumed: {each}" for each in few(finding["assumes"]))
    lines.extend(f"Source: {each}" for each in finding["sources"])
    return "\n".join(line for line in lines if line)


def _attribute(text: str) -> str:
    return quoteattr(plain(text))


def _text(text: str) -> str:
    return escape(plain(text))


def _comment(text: str) -> str:
    return plain(text).replace("--", "- -")
