"""Whatever happens, a command ends with a status and in plain words."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

import checker.commands.schema
from checker import __version__
from checker.commands import run

ROOT = Path(__file__).parents[2]


def raising(error: BaseException, monkeypatch: pytest.MonkeyPatch) -> None:
    """Let `fitout schema` raise."""

    def command() -> int:
        raise error

    monkeypatch.setattr(checker.commands.schema, "command", command)


def test_an_unforeseen_error_is_one_line_that_says_what_broke_and_what_to_do(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.delenv("FITOUT_DEBUG", raising=False)
    raising(RuntimeError("the floor\ngave way"), monkeypatch)
    assert run(["schema"]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    assert "RuntimeError: the floor gave way" in said.err
    assert "report it" in said.err
    assert "Traceback" not in said.err


def test_the_traceback_is_there_for_who_asks_for_it(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("FITOUT_DEBUG", "1")
    raising(RuntimeError("the floor gave way"), monkeypatch)
    assert run(["schema"]) == 2
    assert "Traceback (most recent call last)" in capsys.readouterr().err


@pytest.mark.parametrize("error", [RecursionError("deep"), MemoryError(), ZeroDivisionError("zero"), AssertionError()])
def test_no_kind_of_error_gets_through(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], error: Exception
) -> None:
    raising(error, monkeypatch)
    assert run(["schema"]) == 2
    assert type(error).__name__ in capsys.readouterr().err


def test_an_error_of_the_system_is_told_in_the_same_words_in_every_locale(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    raising(OSError(errno.ENOSPC, "Auf dem Gerät ist kein Speicherplatz mehr verfügbar", "/tmp/x"), monkeypatch)
    assert run(["schema"]) == 2
    assert capsys.readouterr().err == "fitout: /tmp/x: no room left on the device\n"


def test_an_interruption_ends_quietly_with_130(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    raising(KeyboardInterrupt(), monkeypatch)
    assert run(["schema"]) == 130
    assert capsys.readouterr() == ("", "")


def test_ctrl_c_in_the_middle_of_the_work_leaves_no_traceback() -> None:
    script = (
        "import signal, sys, time, checker.commands.schema as schema\n"
        "signal.signal(signal.SIGINT, signal.default_int_handler)\n"  # a suite run in the background ignores it
        "def command() -> int:\n"
        "    print('working', file=sys.stderr, flush=True)\n"
        "    time.sleep(60)\n"
        "schema.command = command\n"
        "from checker.commands import main\n"
        "sys.argv = ['fitout', 'schema']\n"
        "main()\n"
    )
    with subprocess.Popen([sys.executable, "-c", script], cwd=ROOT, stdout=-1, stderr=-1) as process:
        assert process.stderr is not None
        assert process.stderr.readline() == b"working\n"
        process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=30)
    assert (process.returncode, out, err) == (130, b"", b"")


def test_a_reader_who_leaves_early_ends_it_quietly() -> None:
    script = (
        "from checker.commands import _finish_output\n"
        "from checker.commands.output import deliver\n"
        "deliver(f'line {i}\\n' for i in range(200000))\n"
        "_finish_output()"
    )
    with subprocess.Popen([sys.executable, "-c", script], cwd=ROOT, stdout=-1, stderr=-1) as process:
        assert process.stdout is not None
        assert process.stdout.readline() == b"line 0\n"
        process.stdout.close()
        assert process.stderr is not None
        assert process.stderr.read() == b""
        assert process.wait(timeout=30) == 0


@pytest.mark.parametrize("arguments", [["schema", "report"], ["rules"], ["--help"], ["--version"]])
def test_nobody_reading_is_no_fault(arguments: list[str], fitout) -> None:
    """The pipe is closed before the first byte."""
    reader, writer = os.pipe()
    os.close(reader)
    done = fitout(*arguments, stdout=writer, stderr=subprocess.PIPE, capture_output=False)
    os.close(writer)
    assert (done.returncode, done.stderr) == (0, b"")


@pytest.mark.parametrize("arguments", [["schema", "report"], ["rules"], ["--help"], ["--version"]])
def test_a_full_disk_behind_standard_output_is_told(arguments: list[str], fitout) -> None:
    with open("/dev/full", "wb") as full:
        done = fitout(*arguments, stdout=full, stderr=subprocess.PIPE, capture_output=False)
    assert done.returncode == 2
    assert done.stderr == b"fitout: standard output: no room left on the device; the report is not complete\n"


def test_a_closed_standard_output_is_told(fitout) -> None:
    command = f"exec {sys.executable} -m checker.commands schema report >&-"
    done = subprocess.run(["sh", "-c", command], cwd=ROOT, capture_output=True, check=False)
    assert done.returncode == 2
    assert done.stderr == b"fitout: standard output is closed; give --output FILE\n"


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["reveiw"], "there is no command 'reveiw'; did you mean review?"),
        (
            ["schema", "ruel"],
            "'ruel' is not one of design, rule, report, predict, prove, day, states, survey; did you mean rule?",
        ),
        (["review"], "Missing argument 'FILE'"),
        (["review", "x", "--format", "hmtl"], "did you mean html?"),
        (["review", "x", "--at-least", "dnager"], "did you mean danger?"),
        (["review", "x", "--colour"], "No such option: --colour"),
        (["rules", "--topic"], "requires an argument"),
    ],
)
def test_a_wrong_command_line_is_told_what_would_be_right(
    arguments: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(arguments) == 2
    assert said in capsys.readouterr().err


@pytest.mark.parametrize("arguments", [["--help"], ["-h"], ["review", "--help"], ["schema", "-h"], ["rules", "-h"]])
def test_help_is_status_0_and_no_wider_than_80_columns(
    arguments: list[str], capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "200")
    assert run(arguments) == 0
    said = capsys.readouterr().out
    assert said.startswith("Usage: fitout")
    assert max(map(len, said.splitlines())) <= 80


def test_the_help_carries_the_caution(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["--help"]) == 0
    said = " ".join(capsys.readouterr().out.split())
    for words in ["does not certify", "licensed electrician", "prove dead before touching"]:
        assert words in said


def test_the_version(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["--version"]) == 0
    assert capsys.readouterr().out == f"fitout {__version__}\n"


def test_without_a_command_the_help_is_shown(capsys: pytest.CaptureFixture[str]) -> None:
    assert run([]) == 2
    assert "Commands:" in capsys.readouterr().err + capsys.readouterr().out


def test_text_from_outside_cannot_move_the_cursor(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["rules", "--topic", "\x1b[2Jx\u202e"]) == 2
    said = capsys.readouterr().err
    assert "\x1b" not in said
    assert "\u202e" not in said
