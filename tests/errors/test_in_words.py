"""What was raised, and in whose code."""

from __future__ import annotations

from fractions import Fraction

import pytest

from speclint.errors import in_words, raised_at


class Unreadable(Exception):
    """Its text cannot be had: asking for it raises something else."""

    def __init__(self, raised: BaseException) -> None:
        super().__init__()
        self.raised = raised

    def __str__(self) -> str:
        raise self.raised


def test_an_exception_without_a_text_is_told_by_its_kind_and_an_interrupt_goes_on() -> None:
    said = "Unreadable: its text cannot be read, since reading it raises SystemExit"
    assert in_words(Unreadable(SystemExit(0))) == said
    with pytest.raises(KeyboardInterrupt):
        in_words(Unreadable(KeyboardInterrupt()))


def raising() -> None:
    Fraction("no number")  # goes on into code of Python's own


def caught() -> Exception:
    try:
        raising()
    except ValueError as problem:
        return problem
    raise AssertionError("nothing was raised")


def test_the_last_place_in_a_package_is_told_with_its_line() -> None:
    """The first line of the function is its head, the second raises."""
    line = raising.__code__.co_firstlineno + 1
    assert raised_at(caught(), __name__) == f"{__name__}, line {line}"
    assert raised_at(caught(), __name__.partition(".")[0]) == f"{__name__}, line {line}"


def test_what_came_through_no_code_of_a_package_has_no_place() -> None:
    assert raised_at(caught(), "speclint_liners.rules.bores") == ""
    assert raised_at(ValueError("never raised"), __name__) == ""
