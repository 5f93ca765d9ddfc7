"""A review that leaves very much open, in short."""

from __future__ import annotations

from checker.reports import render
from checker.reports.document import FindingData
from checker.reports.overview import FIRST, MANY, asked, overview
from checker.reports.sections import sections
from tests.reports.sample import THIN, finding, nothing_found


def need(path: str, line: int = 7) -> dict:
    return {"path": path, "what": "unknown", "line": line, "column": 3}


def many(number: int) -> list[FindingData]:
    """One DANGER and else CAUTION, each with an entry of its own, and a height that the last three share."""
    return [
        finding(
            "far-from-source" if index == 5 else "height-of-box",
            "unproven",
            "DANGER" if index == 5 else "CAUTION",
            "equipment",
            f"E{index}",
            index + 10,
            needs=[need(f"equipment.E{index}.box"), *([need("vehicle.height")] if index >= number - 3 else [])],
        )
        for index in range(number)
    ]


def document(findings: list[FindingData]) -> dict:
    counts = {**nothing_found()["counts"], "unproven": sum(each["verdict"] == "unproven" for each in findings)}
    return {**nothing_found(), "findings": findings, "counts": counts}


def short(findings: list[FindingData]):
    return overview(sections(document(findings)).questions)


def test_few_questions_are_read_one_by_one() -> None:
    assert short(many(MANY)) is None
    assert short(many(MANY + 1)) is not None


def test_what_most_findings_speak_of_comes_first_then_the_worse() -> None:
    told = short(many(40))
    assert [(entry.need["path"], entry.findings) for entry in told.first[:2]] == [
        ("vehicle.height", 3),
        ("equipment.E5.box", 1),
    ]
    assert told.first[1].worst == "DANGER"
    assert len(told.first) == FIRST


def test_dangers_are_named_and_the_others_counted() -> None:
    told = short(many(40))
    assert [[each["about"]["id"] for each in alike] for alike in told.dangers] == [["E5"]]
    assert told.others == "CAUTION 39"


def test_what_stands_under_a_breach_is_told_apart() -> None:
    folded = {**many(31)[30], "rule": "folded", "under": THIN["key"]}
    parts = sections(document([THIN, folded, *many(30)]))
    assert asked(parts.questions, 31) == "31 findings are unproven, 1 of them under the breaches that explain them."
    assert asked(parts.questions, 30) == "30 findings are unproven."


def test_text_and_markdown_are_short_and_whole_on_demand() -> None:
    for form in ("text", "markdown"):
        said = "".join(render(document(many(40)), form)).replace("\\", "")
        assert "equipment.E20.box" not in said
        assert "vehicle.height" in said and "E5" in said and "CAUTION 39" in said and "fitout survey" in said
        whole = "".join(render(document(many(40)), form, whole=True)).replace("\\", "")
        assert all(f"equipment.E{index}.box" in whole for index in range(40))


def test_the_page_has_both() -> None:
    page = "".join(render(document(many(40)), "html"))
    assert page.index("vehicle.height") < page.index("<summary>Every question") < page.index("equipment.E20.box")
