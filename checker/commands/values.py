"""Option values read without pydantic: words, texts and lists of them need no library that takes 50 ms to load.

Typer turns every value into its type through pydantic when it is first used. The parameters of our commands are
texts, lists of texts and words of closed lists, so `lighten` gives those a plain reader. Should a later Typer look
for its reader elsewhere, it uses its own, which is slower and accepts the same.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, get_args, get_origin

import typer
from typer.core import TyperCommand


class PlainValue:
    """Reads one parameter: a text, or one of `choices` in large or small letters."""

    def __init__(self, choices: Sequence[str], case_sensitive: bool) -> None:
        self._choices = choices
        self._case_sensitive = case_sensitive

    def coerce(self, value: Any, param: Any, ctx: Any) -> Any:
        """The value as the command gets it.

        Raises
        ------
        typer.BadParameter: it is none of the choices.
        """
        if value is None:
            return () if param.multiple or param.nargs == -1 else None
        if isinstance(value, list | tuple):
            return [self._one(item, param, ctx) for item in value]
        return self._one(value, param, ctx)

    def _one(self, value: str, param: Any, ctx: Any) -> str:
        if not self._choices:
            return value
        for choice in self._choices:
            if value == choice or (not self._case_sensitive and value.lower() == choice.lower()):
                return choice
        from checker.commands.refusal import nearest

        known = ", ".join(self._choices)
        raise typer.BadParameter(
            f"{value!r} is not one of {known}{nearest(value.lower(), self._choices)}", ctx=ctx, param=param
        )


class PlainFlag:
    """Reads a flag, which the command line gives as yes or no already."""

    def coerce(self, value: Any, param: Any, ctx: Any) -> Any:
        """The flag, or None when it was not given.

        Raises
        ------
        typer.BadParameter: it is neither yes nor no.
        """
        if value is None or isinstance(value, bool):
            return value
        raise typer.BadParameter(f"{value!r} is neither true nor false", ctx=ctx, param=param)


def lighten(param: Any) -> None:
    """Give a parameter of texts, words or a flag the plain reader; others keep Typer's own."""
    kind = param.type_descriptor
    annotation = kind.annotation
    if get_origin(annotation) is list:
        annotation = get_args(annotation)[0]
    if annotation is bool:
        param._runtime_param = PlainFlag()
    elif annotation is str or (kind.choices and all(isinstance(choice, str) for choice in kind.choices)):
        param._runtime_param = PlainValue(kind.choices or (), kind.case_sensitive)


class LightCommand(TyperCommand):
    """A command whose parameters are read plainly."""

    def get_params(self, ctx: Any) -> Any:
        """The parameters, the one for help included."""
        return lightened(super().get_params(ctx))


def lightened(params: Any) -> Any:
    """The same parameters, each with the plain reader where it fits."""
    for param in params:
        lighten(param)
    return params
