"""What a check must say: that it conforms, finds, asks, or does not apply, and at which numbers."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from speclint.checking import Check
from speclint.rules import Grade, Judgement
from speclint.testing.design import SETTINGS, DesignFolder

#: How near to its limit each side of a limit must be tried: within one in a hundred.
NEAR = 0.01


def found(check: Check) -> float:
    """The value that was judged, in SI units."""
    judged = _judgement(check).found
    if judged is None:
        raise AssertionError(f"{_of(check)} judged no number: {check.says}")
    return judged.value


def limit(check: Check) -> float:
    """The limit that the value was held against, in SI units."""
    held = _judgement(check).limit
    if held is None:
        raise AssertionError(f"{_of(check)} held nothing against a limit: {check.says}")
    return held.value


def on_sheet(check: Check, symbol: str) -> float:
    """The last number that the sheet gives a symbol, in SI units."""
    values = [step.value for step in check.steps if step.symbol == symbol]
    if not values or not isinstance(values[-1], float):
        symbols = ", ".join(dict.fromkeys(step.symbol for step in check.steps if step.symbol))
        raise AssertionError(f"no number {symbol} on the sheet of {_of(check)}; there is {symbols or 'none'}")
    return values[-1]


def expect_conforms(check: Check, *, used: float | None = None, case: str | None = None) -> None:
    """The rule holds; with ``used``, that share of the limit is used, to one in a thousand.

    :raises AssertionError: where it came out otherwise.
    """
    _expect(check, "conforms")
    _expect_numbers(check, used, case)


def expect_finding(
    check: Check,
    *,
    grade: Grade | None = None,
    used: float | None = None,
    case: str | None = None,
    says: str = "",
) -> None:
    """The rule is broken: of its own grade or the one given, with a text that contains ``says``.

    :raises AssertionError: where it came out otherwise, or the rule could not be run.
    """
    _expect(check, "finding")
    if check.could_not_run:
        raise AssertionError(f"{_of(check)} could not be run: {check.could_not_run}")
    wanted = grade or check.rule.grade
    if check.grade is not wanted:
        raise AssertionError(
            f"{_of(check)} is of grade {check.grade and check.grade.word}, not {wanted.word}"
        )
    _expect_words(check, check.says, says)
    _expect_numbers(check, used, case)


def expect_query(check: Check, says: str = "") -> None:
    """The check is a query: no source covers the case, or the spec does not say enough.

    :raises AssertionError: where it came out otherwise.
    """
    expect_finding(check, grade=Grade.QUERY, says=says)


def expect_not_assessed(check: Check, missing: str) -> None:
    """The check is not assessed, and ``missing``, such as a key, stands in what it says is missing.

    :raises AssertionError: where it came out otherwise.
    """
    _expect(check, "not assessed")
    _expect_words(check, "; ".join(check.missing) or check.says, missing)


def expect_not_applicable(check: Check, says: str = "") -> None:
    """The rule does not apply to the component, and says why.

    :raises AssertionError: where it came out otherwise.
    """
    _expect(check, "not applicable")
    _expect_words(check, check.says, says)


def expect_limit(
    folder: DesignFolder,
    rule: str,
    files_with: Callable[[str], Mapping[str, str]],
    *,
    holds: str,
    fails: str,
    component: str = "",
    near: float = NEAR,
    settings: str = SETTINGS,
) -> tuple[Check, Check]:
    """A limit from both sides: with one value in the files the rule holds, with the other it is a finding.

    ``files_with`` makes the files of the design from a value. Where the rule judges a number, both values must come
    within ``near`` of the limit, so that the test pins the limit down. Returns both checks.

    :raises AssertionError: where one comes out otherwise, or tries the limit too far away.
    """
    inside = folder.write(files_with(holds), settings=settings).only(rule, component)
    expect_conforms(inside)
    outside = folder.write(files_with(fails), settings=settings).only(rule, component)
    expect_finding(outside, grade=outside.grade)
    for check, value in ((inside, holds), (outside, fails)):
        used = check.utilisation
        if used is not None and abs(used - 1) > near:
            raise AssertionError(f"{value} uses {used:.4g} of the limit: not within {near:g} of it")
    return inside, outside


def _judgement(check: Check) -> Judgement:
    if check.judgement is None:
        raise AssertionError(f"{_of(check)} is {check.outcome}: {check.says}")
    return check.judgement


def _of(check: Check) -> str:
    return f"{check.rule.name} on {check.component}"


def _expect(check: Check, outcome: str) -> None:
    if check.outcome != outcome:
        raise AssertionError(f"{_of(check)}: {check.outcome}, not {outcome}: {check.says}")


def _expect_words(check: Check, said: str, wanted: str) -> None:
    if wanted not in said:
        raise AssertionError(f"{_of(check)} does not say {wanted!r} but {said!r}")


def _expect_numbers(check: Check, used: float | None, case: str | None) -> None:
    share = check.utilisation
    if used is not None and (share is None or abs(share - used) > 1e-3 * abs(used)):
        raise AssertionError(f"{_of(check)} uses {share} of the limit, not {used}")
    if case is not None and check.case != case:
        raise AssertionError(f"{_of(check)} is governed by the case {check.case or 'none'}, not {case}")
