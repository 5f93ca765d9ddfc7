"""The terminal: `fitout`, one module a command, loaded when it is called."""

from __future__ import annotations

import gc
import os
import sys
from collections.abc import Sequence

INTERRUPTED = 130
FOUND = 1
REFUSED = 2
RINGS = 1_000_000
"""New containers after which the collector looks for rings among them. A command is short and makes next to none, but
at the usual 700 the looking takes a tenth of a review; so many fit into some hundred megabytes."""


def main() -> None:
    """The console script: run what the command line asks for and leave with its status."""
    gc.set_threshold(RINGS)
    status = run(sys.argv[1:])
    gc.freeze()  # else the interpreter, on leaving, looks for rings among all that is about to vanish anyway
    sys.exit(status)


def run(arguments: Sequence[str]) -> int:
    """Run one command line and return its exit status; no exception leaves this function.

    0: nothing at or above the chosen signal; 1: something is; 2: input, options or output could not be used;
    130: interrupted. With `FITOUT_DEBUG=1` in the environment an unforeseen error shows where it came from.
    """
    try:
        _speak_utf8()
        status = _dispatch(arguments)
        _finish_output()
        return status
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as error:  # noqa: BLE001 - the last resort: nobody at the terminal gets a traceback
        return _report(error)


def _dispatch(arguments: Sequence[str]) -> int:
    from checker.commands.app import CommandLineError, command_line
    from checker.commands.refusal import Refused

    try:
        status = command_line().main(list(arguments), prog_name="fitout", standalone_mode=False)
    except CommandLineError as error:
        show = getattr(error, "show", None)  # Typer's own errors know the usage of their command
        if show is None:
            _complain(f"fitout: {error}")
        else:
            show()
        return REFUSED
    except Refused as refusal:
        _complain(*refusal.lines)
        return REFUSED
    except SystemExit:  # so Typer leaves when the reader of its help has gone, with a status that would say `found`
        silence_stdout()
        return 0
    return status if isinstance(status, int) else 0


def _speak_utf8() -> None:
    """Reports are the same bytes under every locale, so the streams speak UTF-8 whatever the terminal says."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(encoding="utf-8", errors="backslashreplace", newline="\n")


def _finish_output() -> None:
    """Flush now, while a full disk can still be reported and a reader who left can be forgiven."""
    if sys.stdout is None:
        return
    try:
        sys.stdout.flush()
    except BrokenPipeError:
        silence_stdout()
    except OSError as error:
        silence_stdout()
        from checker.commands.refusal import why

        raise OutputLost(f"fitout: standard output: {why(error)}; the report is not complete") from error


class OutputLost(Exception):
    """What was printed last did not arrive."""


def silence_stdout() -> None:
    """Point standard output at nothing, so that the interpreter has no reason to complain when it closes."""
    try:
        nothing = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nothing, sys.stdout.fileno())
        os.close(nothing)
    except (OSError, ValueError):
        return  # no descriptor behind it (a test's buffer): nothing will be flushed into a closed pipe


def _report(error: Exception) -> int:
    from checker.commands.refusal import why

    if os.environ.get("FITOUT_DEBUG") == "1":
        import traceback

        traceback.print_exception(error)
    if isinstance(error, BrokenPipeError):
        silence_stdout()
    elif isinstance(error, OutputLost):
        _complain(str(error))
    elif isinstance(error, OSError) and error.filename is None:
        silence_stdout()
        _complain(f"fitout: standard output: {why(error)}; the report is not complete")
    elif isinstance(error, OSError):
        _complain(f"fitout: {error.filename}: {why(error)}")
    else:
        _complain(
            f"fitout: this should not have happened: {type(error).__name__}: {_one_line(str(error))}; "
            "nothing was concluded about the design; please report it with the command line "
            "to whoever maintains your copy (FITOUT_DEBUG=1 shows where it broke)"
        )
    return REFUSED


def _one_line(text: str) -> str:
    return " ".join(text.split())[:300]


def _complain(*lines: str) -> None:
    if sys.stderr is None:
        return
    from checker.reports.plain import plain

    try:
        for line in lines:
            print(plain(line), file=sys.stderr)
        sys.stderr.flush()
    except OSError:
        return  # nobody reads standard error either: the status still tells
