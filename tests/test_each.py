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
    assert [line for line in lines if "large" in line] == ["5: too large", "4: too large"]


def test_nothing_to_try_is_no_success() -> None:
    with pytest.raises(AssertionError, match="nothing to try"):
        each(list[int]())(small)()


def test_what_holds_of_all_passes() -> None:
    each([1, 2])(small)()
