"""What a command reads: the design and the rulebook; every problem in them is told line by line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from checker.commands.refusal import Refused, why
from checker.shipped import shipped

if TYPE_CHECKING:
    from checker.design.model import Design
    from checker.reports.rule_list import Requirement
    from checker.review import Review
    from checker.rulebook import Limits, Rulebook


def load_design(file: str) -> Design:
    """Read the design file.

    Raises
    ------
    Refused: it cannot be read or is not a design; one line for each problem.
    """
    from checker.reading import ReadingErrors, read_design

    try:
        return read_design(file)
    except ReadingErrors as errors:
        raise Refused(*str(errors).splitlines()) from errors
    except OSError as error:
        raise Refused(f"{file}: {why(error)}; give the path of a design file, such as coach.fitout.yaml") from error


def load_rules(folders: Sequence[Path]) -> Rulebook:
    """Load the shipped rules and those in `folders`.

    Raises
    ------
    Refused: a folder or a rule cannot be read; one line for each problem.
    """
    from checker.rulebook import RuleErrors, load_rulebook

    for folder in folders:
        if not folder.is_dir():
            missing = "is a file, not a folder" if folder.exists() else "no such folder"
            raise Refused(f"{folder}: {missing}; --rules takes a folder of rule files")
    try:
        return load_rulebook(folders)
    except RuleErrors as errors:
        raise Refused(*str(errors).splitlines()) from errors
    except OSError as error:
        raise Refused(f"{error.filename or 'rules'}: {why(error)}") from error


def reviewed(design: Design, rulebook: Rulebook, code: str | None, everything: bool) -> Review:
    """Put the rules to the design.

    Raises
    ------
    Refused: there is no such code of practice.
    """
    from checker.review import review

    if code is not None:
        limits_under(rulebook, code)
    return review(design, rulebook, code, keep_all=everything)


def limits_under(rulebook: Rulebook, code: str) -> Limits:
    """The limits under a code of practice.

    Raises
    ------
    Refused: there is no such code.
    """
    try:
        return rulebook.limits_for(code)
    except ValueError as error:
        raise Refused(f"--code: {error}") from error


def load_requirements() -> tuple[Requirement, ...]:
    """The shipped catalogue of published requirements.

    Raises
    ------
    Refused: it cannot be read.
    """
    from checker.reports.rule_list import read_requirements

    file = Path(str(shipped("rules"))) / "requirements.csv"
    try:
        return read_requirements(file)
    except OSError as error:
        raise Refused(f"{file}: {why(error)}; this file comes with fitout: install it again") from error
    except ValueError as error:
        raise Refused(f"{file}: {error}; this file comes with fitout: install it again") from error


def input_files(file: str, folders: Sequence[Path]) -> Iterator[Path]:
    """Every file that no output may replace: the design and all files of the rule folders."""
    yield Path(file)
    yield from rule_files_of(folders)


def rule_files_of(folders: Sequence[Path]) -> Iterator[Path]:
    """All files of the rule folders, the shipped ones first."""
    for folder in (Path(str(shipped("rules"))), *folders):
        yield from sorted(path for path in folder.rglob("*") if path.is_file())
