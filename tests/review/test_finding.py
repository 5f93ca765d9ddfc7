"""A finding is plain values, with an identity that holds no line and no wording."""

from __future__ import annotations

import subprocess
import sys

from checker.review.finding import SIGNALS, VERDICTS, About, Finding, Place, reading_order


def finding(rule: str = "r", verdict: str = "breach", signal: str = "danger", line: int = 1, id: str = "a") -> Finding:
    return Finding(rule, verdict, signal, About("conductor", id), Place("x", line, 1), "t", "s")


def test_the_key_does_not_move_with_lines_or_words() -> None:
    one = finding(line=3)
    assert one.key == finding(line=9)._replace(says="other", title="other").key == "r:conductor:a"


def test_the_order_is_signal_verdict_line_rule_subject() -> None:
    wanted = [
        finding(), finding(id="b"), finding("s"), finding(line=2), finding(verdict="unproven"),
        finding(signal="notice"),
    ]  # fmt: skip
    shuffled = [wanted[at] for at in (3, 0, 5, 2, 4, 1)]
    assert sorted(shuffled, key=reading_order) == wanted


def test_every_signal_and_verdict_has_a_place_in_the_order() -> None:
    for signal in SIGNALS:
        for verdict in VERDICTS:
            assert reading_order(finding(signal=signal, verdict=verdict))


def test_reports_can_use_findings_without_the_rulebook() -> None:
    code = (
        "import sys; sys.modules['checker.review'] = type(sys)('checker.review'); "
        "sys.modules['checker.review'].__path__ = [sys.argv[1]]; import checker.review.finding; "
        "print([name for name in sys.modules if name.startswith(('checker.rulebook', 'checker.facts'))])"
    )
    import checker.review

    folder = checker.review.__path__[0]
    done = subprocess.run([sys.executable, "-c", code, folder], capture_output=True, text=True, check=False)
    assert done.stdout.strip() == "[]", done.stderr
