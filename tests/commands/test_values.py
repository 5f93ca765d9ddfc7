"""Values of options are read without a library, and as Typer would."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest
import typer

from checker.commands.app import COMMANDS, single_command
from checker.commands.values import PlainFlag, PlainValue, lighten

ONE = SimpleNamespace(multiple=False, nargs=1, param_hint=None, get_error_hint=lambda: "'--x'")
MANY = SimpleNamespace(multiple=True, nargs=1)


def test_a_text_stays_as_it_is() -> None:
    assert PlainValue((), True).coerce(" Ω ", ONE, None) == " Ω "


def test_what_was_not_given_is_none_or_an_empty_list() -> None:
    assert PlainValue((), True).coerce(None, ONE, None) is None
    assert PlainValue((), True).coerce(None, MANY, None) == ()


def test_a_repeated_option_is_a_list() -> None:
    assert PlainValue((), True).coerce(("a", "b"), MANY, None) == ["a", "b"]


@pytest.mark.parametrize(("case_sensitive", "given"), [(False, "DANGER"), (False, "danger"), (True, "danger")])
def test_a_word_of_a_list_comes_in_its_own_letters(case_sensitive: bool, given: str) -> None:
    assert PlainValue(("danger", "notice"), case_sensitive).coerce(given, ONE, None) == "danger"


@pytest.mark.parametrize("given", ["DANGER", "dangr", ""])
def test_another_word_is_refused(given: str) -> None:
    with pytest.raises(typer.BadParameter, match="is not one of danger, notice"):
        PlainValue(("danger", "notice"), True).coerce(given, ONE, None)


def test_a_flag_is_yes_or_no() -> None:
    assert PlainFlag().coerce(True, ONE, None) is True
    assert PlainFlag().coerce(None, ONE, None) is None
    with pytest.raises(typer.BadParameter):
        PlainFlag().coerce("perhaps", ONE, None)


@pytest.mark.parametrize("name", COMMANDS)
def test_every_parameter_of_every_command_is_read_plainly(name: str) -> None:
    """Else a command would load pydantic; this also fails when Typer keeps its reader somewhere else."""
    context: Any = SimpleNamespace(help_option_names=["--help"])
    for param in single_command(name).get_params(context):
        assert isinstance(param.get_runtime_param(), PlainValue | PlainFlag), param.name


def test_other_types_keep_the_reader_of_typer() -> None:
    app = typer.Typer(add_completion=False)

    @app.command()
    def command(number: int = 1) -> None: ...

    (param,) = [each for each in typer.main.get_command(app).params if each.name == "number"]
    lighten(param)
    assert not isinstance(param.get_runtime_param(), PlainValue | PlainFlag)
