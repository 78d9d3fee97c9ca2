"""How a value hangs on its inputs, by hand: the order in which it is gone through, and choices taken piece by piece."""

from __future__ import annotations

import pytest

from speclint.rules.enclosure import Enclosure, Input, greater, lesser
from speclint.rules.slopes import alternatives, ordered, slope_against, slopes


def three() -> tuple[Input, Input, Input]:
    """Three inputs, of which none is surely the greatest or the least."""
    return Input("x", 1.0, 2.0), Input("y", 1.5, 3.0), Input("z", 0.5, 2.5)


def enclosed(value: Enclosure | float) -> Enclosure:
    assert isinstance(value, Enclosure)
    return value


def test_a_sum_hangs_on_each_of_its_terms_by_one_exactly() -> None:
    """Nothing is rounded where nothing is worked: one times one is one."""
    x, y, z = three()
    assert slopes(x + y + z) == {"x": (1.0, 1.0), "y": (1.0, 1.0), "z": (1.0, 1.0)}
    assert slopes(x + 3.0) == {"x": (1.0, 1.0)}
    assert slopes(x - y)["y"] == pytest.approx((-1.0, -1.0), rel=1e-12)


def test_what_is_taken_no_times_hangs_on_nothing() -> None:
    x, y, _ = three()
    assert slopes(x * 0.0) == {}
    assert slopes(x * 0.0 + y) == {"y": (1.0, 1.0)}


def test_what_is_reached_by_two_ways_hangs_on_it_by_both() -> None:
    """3 x + x²: 3 + 2 x, from 5 to 7."""
    x, _, _ = three()
    assert slopes(3.0 * x + x * x)["x"] == pytest.approx((5.0, 7.0), rel=1e-12)


def test_a_value_is_gone_through_before_what_it_was_worked_from() -> None:
    x, y, z = three()
    total = x + y
    least = lesser(total, z)
    result = enclosed(least) * total
    assert [one.serial for one in ordered(result)] == sorted(
        (one.serial for one in (x, y, z, total, enclosed(least), result)), reverse=True
    )


def test_nothing_from_before_a_place_is_gone_through() -> None:
    """On the first, on the second and on a further way: x is there before the place, each result after it."""
    x, place, after = three()
    for result in (x + place, place + x, enclosed(greater(x, place)), x * 2.0 + place + after):
        found = ordered(result, place.serial)
        assert found[0] is result
        assert any(one is place for one in found)
        assert all(one.serial >= place.serial for one in found)
        assert len({one.serial for one in found}) == len(found)
    last = x + place
    assert [one.serial for one in ordered(last, place.serial)] == [last.serial, place.serial]
    assert [one.serial for one in ordered(last, place.serial + 1)] == [last.serial]


@pytest.mark.parametrize("first", [True, False])
def test_the_slope_against_a_place_is_that_of_every_way_to_it(first: bool) -> None:
    """By hand: x p + p is 2 to 3 times p, of x from 1 to 2; the greater of p and 2 hangs on p by 0 to 1."""
    x = Input("x", 1.0, 2.0)
    place = Input("p", 1.0, 3.0)
    product = x * place if first else place * x
    assert slope_against(product + place, place) == pytest.approx((2.0, 3.0), rel=1e-12)
    assert slope_against(enclosed(greater(place, 2.0)), place) == pytest.approx((0.0, 1.0))
    assert slope_against(x + 1.0, place) == (0.0, 0.0)


def test_a_choice_is_taken_piece_by_piece_where_it_works_towards_a_greater_result() -> None:
    """The greatest of x + max(y, z) is the greater of those of x + y and x + z; that of x + min(y, z) is of neither."""
    x, y, z = three()
    one, more, less = (1.0, 1.0), pytest.approx((0.0, 1.0)), pytest.approx((-1.0, 0.0))
    assert list(alternatives(enclosed(x + greater(y, z)))) == [{"x": one, "z": more}, {"x": one, "y": more}]
    assert list(alternatives(enclosed(x + lesser(y, z)))) == [{"x": one, "y": more, "z": more}]
    assert list(alternatives(enclosed(x - lesser(y, z)))) == [{"x": one, "z": less}, {"x": one, "y": less}]
    assert list(alternatives(enclosed(x - greater(y, z)))) == [{"x": one, "y": less, "z": less}]


def test_a_choice_within_a_choice_that_may_have_no_part_is_taken_piece_by_piece() -> None:
    """min(max(x, y), z) hangs on the inner one by 0 to 1: either it rises with it or it does not hang on it."""
    x, y, z = three()
    within = lesser(greater(x, y), z)
    assert [set(one) for one in alternatives(enclosed(within))] == [{"y", "z"}, {"x", "z"}]
    x, y, z = three()
    within = greater(lesser(x, y), z)
    assert [set(one) for one in alternatives(-enclosed(within))] == [{"y", "z"}, {"x", "z"}]


def test_a_choice_that_both_raises_and_lowers_a_result_is_left_whole() -> None:
    """(y − 2) times the greater of x and z: the factor is from −0.5 to 1."""
    x, y, z = three()
    (found,) = alternatives((y - 2.0) * enclosed(greater(x, z)))
    assert set(found) == {"x", "y", "z"}


@pytest.mark.parametrize(("most", "given"), [(0, 1), (1, 2), (2, 3), (5, 6), (100, 64)])
def test_choices_are_taken_piece_by_piece_as_long_as_they_are_few(most: int, given: int) -> None:
    """Six choices of two have 64; beyond so many the rest are left whole, so that each one asked for adds one."""
    every = [Input(index, -1.0, 1.0) for index in range(6)]
    total = sum((abs(one) for one in every[1:]), start=abs(every[0]))
    assert len(list(alternatives(total, most))) == given
    assert len(list(alternatives(total))) == 17
    assert len(list(alternatives(sum((abs(one) for one in every[1:4]), start=abs(every[0]))))) == 16
