"""The worst corner of a rule that scans, proved without a run at every corner."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given, strategies as st

from speclint import Judgement, Sheet
from speclint.rules.compared import Compared
from speclint.rules.comparisons import Judging
from tests.checking.test_proof import EVERY_CORNER, MM, Run, at_least, both, link, run  # noqa: F401


def taken(sheet: Sheet, *names: str) -> list[float]:
    """Lengths from 1.00 to 1.02 mm, as numbers."""
    return [sheet.take(name, link(name, 1.0 * MM, 1.02 * MM)) / MM for name in names]


def scanned(sheet: Sheet, function: Callable[[float], float], find: str = "greatest") -> float:
    return sheet.scan("x", "place of the worst", function, 0.0, 2.0, unit="rad", find=find)  # type: ignore[arg-type]


def test_the_greatest_along_a_way(run: Run) -> None:  # noqa: F811
    """(a + b) x (2c − x) is greatest at x = c: (a + b) c², least at 2.00, at 2.04 × 1.02² = 2.1224 the most."""

    def judged(sheet: Sheet) -> Judgement:
        a, b, c = taken(sheet, "a", "b", "c")

        def hill(x: float) -> float:
            return (a + b) * x * (2 * c - x)

        return at_least(sheet, (10.0 - hill(scanned(sheet, hill))) * MM, 7.0)

    found = both(run, judged)
    assert found.utilisation == pytest.approx(7.0 / (10.0 - 2.04 * 1.02**2), rel=1e-9)
    assert found.proofs[""].method == "enclosed"
    assert found.proofs[""].inside
    assert all(found.corner.values())


def test_the_place_where_something_is_reached(run: Run) -> None:  # noqa: F811
    """a x = c at x = c/a: what is left of 2 is least with c high and a low, 2 − 1.02."""

    def judged(sheet: Sheet) -> Judgement:
        a, c = taken(sheet, "a", "c")
        x = scanned(sheet, lambda x: abs(a * x - c), "least")
        return at_least(sheet, (2.0 - x) * MM, 0.9)

    found = both(run, judged)
    assert found.utilisation == pytest.approx(0.9 / (2.0 - 1.02), rel=1e-5)
    assert found.proofs[""].method == "enclosed"
    assert sorted(found.corner.values()) == [False, True]


def test_two_hills_of_which_either_may_be_the_higher(run: Run) -> None:  # noqa: F811
    def judged(sheet: Sheet) -> Judgement:
        a, b = taken(sheet, "a", "b")

        def hills(x: float) -> float:
            return max(a - 40.0 * (x - 0.5) ** 2, b - 40.0 * (x - 1.5) ** 2)

        return at_least(sheet, (3.0 - hills(scanned(sheet, hills))) * MM, 1.9)

    found = both(run, judged)
    assert found.utilisation == pytest.approx(1.9 / 1.98, rel=1e-9)


def test_a_scan_that_looks_for_another_worst_is_not_taken_for_that_of_the_comparison(run: Run) -> None:  # noqa: F811
    """The hill stands at x = c; what is judged falls with x, and would be worse at any place beyond."""

    def judged(sheet: Sheet) -> Judgement:
        a, c = taken(sheet, "a", "c")
        x = scanned(sheet, lambda x: a * x * (2 * c - x))
        return at_least(sheet, (2.0 - x * a) * MM, 0.9)

    found, full = run(judged), run(judged, EVERY_CORNER)
    assert found.utilisation == full.utilisation
    assert found.proofs[""].method == "enumerated"
    assert "looks for another worst" in found.proofs[""].why


def test_a_comparison_that_holds_and_cannot_govern_is_not_gone_through(run: Run) -> None:  # noqa: F811
    """Twelve inputs on which it hangs crosswise are left at one box: a tenth of its limit is used."""

    def judged(sheet: Sheet) -> Judgement:
        x = taken(sheet, *(f"x{i}" for i in range(12)))
        crosswise = sum(x[i] * x[(i + 5) % 12] - x[i] * x[(i + 7) % 12] for i in range(12)) + 10.0
        near = at_least(sheet, x[0] * MM, 0.95, "near")
        return sheet.worst(near, at_least(sheet, crosswise * MM, 1.0, "far"))

    found = run(judged)
    assert found.utilisation == pytest.approx(0.95)
    assert found.proofs[""].boxes == 1
    assert found.proofs[""].runs < 20


JUDGES = Judging()
JUDGES._record = None
NUMBERS = st.floats(-5.0, 5.0)


@given(value=NUMBERS, limit=NUMBERS, short=st.floats(0.0, 1.0))
def test_what_may_be_used_at_most_is_no_less_than_what_is(value: float, limit: float, short: float) -> None:
    """Of every comparison that holds with some margin, or more."""
    for judge, to_reach in ((JUDGES.at_most, False), (JUDGES.at_least, True)):
        judged = judge(value, limit)
        (margin,) = judged.margins
        used = Compared(judged.margins, to_reach=(to_reach,)).most_used(0, margin - short)
        assert judged.utilisation is not None
        assert judged.utilisation <= used * (1 + 1e-12) + 1e-12
