"""The command line: which commands there are, and nothing of what they do until one is called."""

from __future__ import annotations

from importlib import import_module
from typing import Any

import typer
from typer.core import TyperGroup
from typer.exceptions import TyperException as CommandLineError

from checker import __version__
from checker.commands.values import LightCommand, lightened

__all__ = ["COMMANDS", "CommandLineError", "command_line"]

COMMANDS = {
    "review": "Review one design file against the rulebook.",
    "explain": "Show the whole working of one rule on one subject.",
    "survey": "List what has to be looked at, asked or measured.",
    "answer": "Write the answers to a survey into the design.",
    "draw": "Draw the vehicle from above or from the side, with its breaches.",
    "day": "Take the house battery through one day.",
    "predict": "Say what the instruments should read, mode by mode.",
    "prove": "Compare recorded readings with the prediction, and say what may explain them.",
    "states": "List the supply states of the mains side and how each is reached.",
    "rules": "List the rules and what they cover.",
    "schema": "Print the JSON Schema of a design, a rule or a report.",
}
"""Command (module `checker.commands.<name>`, function `command`) to its line in the help."""


class LazyCommands(TyperGroup):
    """Imports a command's module when that command is called, so that `--help` pays for none of them."""

    def get_params(self, ctx: Any) -> Any:
        """The parameters of `fitout` itself, read plainly."""
        return lightened(super().get_params(ctx))

    def list_commands(self, ctx: Any) -> list[str]:
        """The names, in the order of the help."""
        return list(COMMANDS)

    def get_command(self, ctx: Any, cmd_name: str) -> Any:
        """The command of that name, or None."""
        if cmd_name not in COMMANDS:
            return None
        return single_command(cmd_name)

    def resolve_command(self, ctx: Any, args: list[str]) -> Any:
        """Find the command; a misspelt name is told the nearest ones."""
        if args and not args[0].startswith("-") and args[0] not in COMMANDS:
            from checker.commands.refusal import nearest

            ctx.fail(f"there is no command {args[0]!r}{nearest(args[0], COMMANDS)}")
        return super().resolve_command(ctx, args)

    def format_commands(self, ctx: Any, formatter: Any) -> None:
        """List the commands from the table above instead of loading each."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


def single_command(name: str) -> Any:
    """Build the command `name` from its module."""
    app = typer.Typer(add_completion=False, rich_markup_mode=None, pretty_exceptions_enable=False)
    app.command(name, cls=LightCommand, context_settings=_SETTINGS)(import_module(f"checker.commands.{name}").command)
    return typer.main.get_command(app)


_SETTINGS = {"help_option_names": ["-h", "--help"], "max_content_width": 80, "terminal_width": 80}


def _version(wanted: bool) -> None:
    if wanted:
        typer.echo(f"fitout {__version__}")
        raise typer.Exit


def _group(
    version: bool = typer.Option(False, "--version", callback=_version, is_eager=True, help="Print the version."),
) -> None:
    """Review the electrical design of a motorhome, caravan or van against a rulebook.

    A second pair of eyes on a design file. It does not certify: local codes, the equipment
    maker's instructions and a licensed electrician decide. Mains and high-current DC kill and
    burn: isolate and prove dead before touching.
    """


def command_line() -> Any:
    """The whole command line as one callable group."""
    app = typer.Typer(
        cls=LazyCommands,
        add_completion=False,
        rich_markup_mode=None,
        pretty_exceptions_enable=False,
        no_args_is_help=True,
        context_settings=_SETTINGS,
    )
    app.callback()(_group)
    return typer.main.get_command(app)
