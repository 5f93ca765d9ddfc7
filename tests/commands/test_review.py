"""`fitout review` as a user meets it."""

from __future__ import annotations

import json
import os
import shutil
import stat
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from lxml import etree

from checker.commands import run
from checker.reports import FORMATS

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
VAN = HERE / "gravel-van.fitout.yaml"
HOUSE = HERE / "house"

Fitout = Callable[..., "subprocess.CompletedProcess[bytes]"]

pytestmark = pytest.mark.usefixtures("no_shipped_rules")


@pytest.fixture
def van(tmp_path: Path) -> Path:
    """A copy of the design that may be spoilt."""
    return Path(shutil.copy(VAN, tmp_path / "van.fitout.yaml"))


def review(*arguments: Any) -> int:
    return run(["review", *map(str, arguments), "--rules", str(HOUSE)])


def report(capsys: pytest.CaptureFixture[str], *arguments: Any) -> Any:
    review(VAN, "--format", "json", *arguments)
    return json.loads(capsys.readouterr().out)


def found(document: Any, rule: str) -> dict[str, str]:
    return {each["about"]["id"]: each["verdict"] for each in document["findings"] if each["rule"] == rule}


def test_it_finds_the_breach_the_question_and_the_departure_in_their_places(capsys: pytest.CaptureFixture[str]) -> None:
    document = report(capsys)
    assert found(document, "house-rating") == {"F1": "breach", "F3": "unproven"}
    assert found(document, "house-thinnest") == {"lamp-feed": "set aside", "heat-feed": "unproven"}
    (breach,) = [each for each in document["findings"] if each["key"] == "house-rating:device:F1"]
    lines = VAN.read_text("utf-8").splitlines()
    where = breach["where"]
    assert where["file"] == str(VAN)
    assert lines[where["line"] - 1][where["column"] - 1 :].startswith("F1:")
    assert breach["mend"] == "Fit a device of at most 100 A instead of 150 A."


def test_what_another_finding_explains_is_folded_under_it(capsys: pytest.CaptureFixture[str]) -> None:
    document = report(capsys)
    (folded,) = [each for each in document["findings"] if each["key"] == "house-capacity:device:F1"]
    assert (folded["verdict"], folded["under"]) == ("breach", "house-rating:device:F1")
    review(VAN)
    text = capsys.readouterr().out
    assert "With it, from the same cause:\n           WARNING A fuse is larger than the conductor behind it" in text


def test_with_all_what_is_met_is_listed_too_and_the_count_is_the_same(capsys: pytest.CaptureFixture[str]) -> None:
    short, long = report(capsys), report(capsys, "--all")
    assert found(long, "house-rating") == {"F1": "breach", "F2": "met", "F3": "unproven"}
    assert "not applicable" in {each["verdict"] for each in long["findings"]}
    assert short["counts"] == long["counts"]


def test_every_pair_is_counted_once(capsys: pytest.CaptureFixture[str]) -> None:
    document = report(capsys, "--all")
    counts = document["counts"]
    for verdict, key in (("unproven", "unproven"), ("set aside", "set_aside"), ("met", "met")):
        assert sum(each["verdict"] == verdict for each in document["findings"]) == counts[key]
    assert sum(each["verdict"] == "breach" for each in document["findings"]) == sum(counts["breach"].values())


def test_the_report_says_what_was_not_checked(capsys: pytest.CaptureFixture[str]) -> None:
    said = report(capsys)["not_checked"]
    assert said[0].startswith("Not checked: what only the vehicle can show")
    assert "published requirements that a design file can decide" in said[1]
    assert "Unproven is not met." in said[2]


@pytest.mark.parametrize("form", FORMATS)
def test_every_format_names_the_breach_the_question_and_the_departure(
    form: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert review(VAN, "--format", form) == 1
    said = capsys.readouterr().out
    for words in ["house-rating", "A fuse is larger than our workshop uses in a van", "note 7", "DANGER"]:
        assert words in said
    assert "equipment.F3.rating" in said.replace("\\", "")


def test_the_machine_formats_keep_to_their_published_schemas(capsys: pytest.CaptureFixture[str]) -> None:
    schemas = ROOT / "tests" / "vendored"
    jsonschema.validate(
        report(capsys, "--all"), json.loads((ROOT / "schemas" / "report.schema.json").read_text("utf-8"))
    )
    review(VAN, "--format", "sarif", "--all")
    sarif = json.loads((schemas / "sarif-2.1.0.json").read_text("utf-8"))
    jsonschema.Draft4Validator(sarif).validate(json.loads(capsys.readouterr().out))
    review(VAN, "--format", "junit", "--all")
    etree.XMLSchema(etree.parse(schemas / "junit.xsd")).assertValid(etree.fromstring(capsys.readouterr().out.encode()))


# --- exit status


def one_rule(folder: Path, signal: str, limit: str) -> Path:
    """A folder of one rule of that signal, which F1 breaks when the limit is below 150 A."""
    text = (HOUSE / "house-habits" / "house-rating.yaml").read_text("utf-8")
    (folder / "one" / "only").mkdir(parents=True)
    text = text.replace("signal: danger", f"signal: {signal}").replace("<= '100 A'", f"<= '{limit}'")
    text = text.replace("rating: 150 A}", "rating: 900 A}").replace("rating: 80 A}", "rating: 1 A}")
    (folder / "one" / "only" / "house-rating.yaml").write_text(text)
    return folder / "one"


@pytest.mark.parametrize(
    ("signal", "at_least", "status"),
    [
        ("danger", None, 1), ("warning", None, 1), ("caution", None, 0), ("notice", None, 0),
        ("danger", "danger", 1), ("warning", "danger", 0), ("caution", "caution", 1), ("notice", "caution", 0),
        ("notice", "notice", 1), ("notice", "NOTICE", 1),
    ],
)  # fmt: skip
def test_the_status_is_1_when_a_breach_is_at_least_as_bad_as_asked(
    tmp_path: Path, signal: str, at_least: str | None, status: int
) -> None:
    folder = one_rule(tmp_path, signal, "100 A")
    chosen = [] if at_least is None else ["--at-least", at_least]
    assert run(["review", str(VAN), "--rules", str(folder), *chosen]) == status


def test_what_is_unproven_leaves_the_status_at_0_and_is_counted(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = one_rule(tmp_path, "danger", "500 A")
    assert run(["review", str(VAN), "--rules", str(folder), "--at-least", "caution", "--format", "json"]) == 0
    counts = json.loads(capsys.readouterr().out)["counts"]
    assert (counts["breach"]["DANGER"], counts["unproven"]) == (0, 1)


# --- what cannot be used


@pytest.mark.parametrize(
    ("spoil", "said"),
    [
        (lambda text: text.replace("rating: 150 A", "rating: 150"), "van.fitout.yaml:13:58: "),
        (lambda text: text.replace("kind: lamp", "kind: lmap"), "did you mean `lamp`?"),
        (lambda text: text.replace("equipment:", "equipment"), "van.fitout.yaml:"),
        (lambda text: text.replace("F2, 3 m", "F9, 3 m"), "F9"),
        (lambda text: "\0" + text, "van.fitout.yaml:"),
        (lambda _: "", "van.fitout.yaml:"),
    ],
    ids=["no unit", "misspelt kind", "broken YAML", "missing device", "no text", "empty"],
)
def test_a_wrong_design_is_told_by_line_with_what_would_be_right(
    van: Path, spoil: Callable[[str], str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    van.write_text(spoil(van.read_text("utf-8")), "utf-8")
    assert review(van) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert said in err
    assert "Traceback" not in err
    assert "should not have happened" not in err


@pytest.mark.parametrize(("name", "said"), [("missing.fitout.yaml", "there is no such file"), (".", "folder")])
def test_a_design_that_is_not_there_is_told(
    tmp_path: Path, name: str, said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert review(tmp_path / name) == 2
    assert said in capsys.readouterr().err


def test_a_design_that_cannot_be_read_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    """Reading a process's own memory from the start is refused even to root."""
    assert review("/proc/self/mem") == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert err.startswith("/proc/self/mem")
    assert "should not have happened" not in err


def test_bytes_that_are_no_text_are_told(van: Path, capsys: pytest.CaptureFixture[str]) -> None:
    van.write_bytes(b"fitout: 1\ntitle: \xff\xfe\n")
    assert review(van) == 2
    err = capsys.readouterr().err
    assert "van.fitout.yaml:" in err
    assert "should not have happened" not in err


def test_an_unknown_code_of_practice_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert review(VAN, "--code", "au-nx") == 2
    assert "there is no code `au-nx`; did you mean `au-nz`?" in capsys.readouterr().err


def test_another_code_is_used_when_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    assert report(capsys, "--code", "eu")["rulebook"]["code"] == "eu"
    assert report(capsys)["rulebook"]["code"] == "au-nz"


# --- output


@pytest.mark.parametrize("form", FORMATS)
def test_a_report_in_a_file_is_the_same_as_on_the_terminal(
    tmp_path: Path, form: str, capsysbinary: pytest.CaptureFixture[bytes]
) -> None:
    status = review(VAN, "--format", form)
    printed = capsysbinary.readouterr().out
    assert review(VAN, "--format", form, "--output", tmp_path / "report") == status
    assert (tmp_path / "report").read_bytes() == printed
    assert capsysbinary.readouterr().out == b""


@pytest.mark.parametrize("form", FORMATS)
def test_the_design_is_never_replaced(van: Path, form: str, capsys: pytest.CaptureFixture[str]) -> None:
    before = van.read_bytes()
    assert review(van, "--format", form, "--output", van) == 2
    assert van.read_bytes() == before
    assert "is an input of this review" in capsys.readouterr().err


def test_a_rule_is_never_replaced(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    house = Path(shutil.copytree(HOUSE, tmp_path / "house"))
    rule = house / "house-habits" / "house-rating.yaml"
    before = rule.read_bytes()
    assert run(["review", str(VAN), "--rules", str(house), "--output", str(rule)]) == 2
    assert rule.read_bytes() == before


def test_a_shipped_rule_is_never_replaced(no_shipped_rules: Path) -> None:
    shipped = no_shipped_rules / "codes" / "limits.yaml"
    before = shipped.read_bytes()
    assert review(VAN, "--output", shipped) == 2
    assert shipped.read_bytes() == before


def test_a_missing_folder_for_the_output_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert review(VAN, "--output", tmp_path / "missing" / "report.txt") == 2
    assert "no such file or folder; nothing was changed" in capsys.readouterr().err


def test_a_full_device_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert review(VAN, "--output", "/dev/full") == 2
    assert "no room left on the device" in capsys.readouterr().err


def test_a_report_is_readable_by_whom_any_new_file_is(tmp_path: Path) -> None:
    mask = os.umask(0)
    os.umask(mask)
    review(VAN, "--output", tmp_path / "report.txt")
    assert stat.S_IMODE((tmp_path / "report.txt").stat().st_mode) == 0o666 & ~mask


def test_a_reader_who_leaves_early_does_not_change_the_status() -> None:
    command = [sys.executable, "-m", "checker.commands", "review", str(VAN), "--rules", str(HOUSE), "--all"]
    reader, writer = os.pipe()
    os.close(reader)
    done = subprocess.run(command, cwd=ROOT, stdout=writer, stderr=subprocess.PIPE, check=False)
    os.close(writer)
    assert (done.returncode, done.stderr) == (1, b"")


def test_nothing_is_said_on_standard_error_when_all_is_well(fitout: Fitout) -> None:
    assert fitout("review", VAN, "--rules", HOUSE).stderr == b""


def test_colour_is_not_written_into_a_pipe(fitout: Fitout) -> None:
    done = fitout("review", VAN, "--rules", HOUSE, env={"FORCE_COLOR": "1", "TERM": "xterm-256color"})
    assert b"\x1b" not in done.stdout


# --- the same bytes


@pytest.mark.parametrize("form", FORMATS)
def test_neither_hash_order_nor_locale_nor_folder_changes_a_byte(tmp_path: Path, form: str, fitout: Fitout) -> None:
    reports = set()
    for number, env in enumerate(
        [
            {"PYTHONHASHSEED": "0"},
            {"PYTHONHASHSEED": "1", "LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0", "TZ": "Asia/Tokyo"},
            {"PYTHONHASHSEED": "2", "LC_ALL": "de_DE.ISO-8859-1", "PYTHONIOENCODING": "latin-1", "COLUMNS": "40"},
        ]
    ):
        folder = tmp_path / f"folder-{number}"
        folder.mkdir()
        shutil.copy(VAN, folder / "van.fitout.yaml")
        done = fitout("review", "van.fitout.yaml", "--rules", HOUSE, "--format", form, "--all", cwd=folder, env=env)
        assert done.returncode == 1, done.stderr
        reports.add(done.stdout)
    assert len(reports) == 1
    assert str(tmp_path).encode() not in reports.pop()


# --- what is loaded


HEAVY = ("pydantic", "rich", "jinja2", "jsonschema", "numpy", "scipy", "networkx")
SCRIPT = """
import sys
from checker.commands import run
status = run(sys.argv[1:])
print("loaded:", *sorted({name.partition(".")[0] for name in sys.modules}), file=sys.stderr)
"""


@pytest.mark.parametrize("arguments", ["review VAN --format text", "review VAN --format json", "rules", "--help",
                                       "explain VAN house-rating F1", "schema report"])  # fmt: skip
def test_no_heavy_library_is_loaded(arguments: str) -> None:
    words = [str(VAN) if word == "VAN" else word for word in arguments.split()]
    extra = ["--rules", str(HOUSE)] if "VAN" in arguments else []
    done = subprocess.run(
        [sys.executable, "-c", SCRIPT, *words, *extra], cwd=ROOT, capture_output=True, text=True, check=True
    )
    loaded = done.stderr.splitlines()[-1].split()
    assert loaded[0] == "loaded:"
    assert "checker" in loaded
    assert not set(loaded) & set(HEAVY)


def test_the_page_does_load_its_template_library() -> None:
    """So that the test above can fail."""
    done = subprocess.run(
        [sys.executable, "-c", SCRIPT, "review", str(VAN), "--format", "html"],
        cwd=ROOT, capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert "jinja2" in done.stderr.splitlines()[-1].split()
