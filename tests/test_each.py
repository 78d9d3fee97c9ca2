"""What fails is named, each by itself."""

from __future__ import annotations

import pytest

from tests.each import each


def small(number: int) -> None:
    assert number < 3, "too large"


def test_every_thing_that_fails_is_named() -> None:
    with pytest.raises(AssertionError) as told:
        each([1, 5, 2, 4])(small)()
    lines = str(told.value).splitlines()
    assert [line for line in lines if "large" in line] == [
        "5: AssertionError: too large",
        "4: AssertionError: too large",
    ]


def test_nothing_to_try_is_no_success() -> None:
    with pytest.raises(AssertionError, match="nothing to try"):
        each(list[int]())(small)()


def test_what_holds_of_all_passes() -> None:
    each([1, 2])(small)()


def test_what_breaks_down_hides_no_other() -> None:
    def inverse(number: int) -> None:
        assert 1 / number > 0, "negative"

    with pytest.raises(AssertionError, match=r"0: ZeroDivisionError[^!]*-1: AssertionError: negative"):
        each([0, -1])(inverse)()
