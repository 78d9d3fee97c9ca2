"""What boxes prove: the worst corner of each comparison, found among few runs, and all that fails listed."""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path
from random import Random

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.checking import Check, check
from speclint.checking.worst_corner import Effort
from speclint.equations import Metres, formula
from speclint.errors import Location, replace
from speclint.quantities import Measure, read
from speclint.specs import Component
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES, Tube

EVERY_CORNER = Effort(boxes=0, corners=2**17)
ONLY_SEARCHED = Effort(boxes=0, corners=1)
MM = 1e-3

Run = Callable[..., Check]
Links = list[tuple[float, float, float]]


@formula("L = L", cites=[FIRST_PRINCIPLES])
def length(L: Metres) -> Metres:
    """Length that is judged."""
    return L


@formula("b = b", cites=[FIRST_PRINCIPLES])
def bound(b: Metres) -> Metres:
    """Bound on a length."""
    return b


def link(name: str, low: float, high: float) -> Measure:
    """A toleranced length of no spec, known by its name."""
    plain, where = read("1 mm", "length"), Location("links.toml", 1, name)
    return replace(plain, text="", nominal=(low + high) / 2, low=low, high=high, where=where)


def total(sheet: Sheet, links: Links) -> float:
    """The sum of links in millimetres, each with its factor."""
    taken = (
        k * sheet.take(f"x{i}", link(f"x{i}", low * MM, high * MM)) for i, (k, low, high) in enumerate(links)
    )
    return sum(taken, start=0.0)


def at_least(sheet: Sheet, value: float, least: float, name: str = "") -> Judgement:
    shown, limit = sheet.work(f"L {name}", length, L=value), sheet.work(f"b {name}", bound, b=least * MM)
    return sheet.at_least(shown, limit)


@pytest.fixture
def run(tmp_path: Path) -> Run:
    """Checks a rule that only uses its sheet."""
    assessment = DesignFolder(tmp_path, tubes.tubes()).write(FILES).assess()
    assert assessment.design is not None
    tube, context = assessment.design.specs["tube"], assessment.context
    assert isinstance(tube, Component)
    assert context is not None

    def judge(function: Callable[[Sheet], Judgement], effort: Effort | None = None) -> Check:
        made = rule(
            "tube.links",
            title="t",
            on=Tube,
            grade=Grade.HOLD,
            cites=[FIRST_PRINCIPLES],
            why="w",
            leaves_out="l",
        )(lambda _, sheet: function(sheet))
        return check(made, tube, context, effort=effort or Effort())

    return judge


def both(run: Run, function: Callable[[Sheet], Judgement]) -> Check:
    """A check by boxes, after it was found the same at every corner and by search alone."""
    found, full, searched = run(function), run(function, EVERY_CORNER), run(function, ONLY_SEARCHED)
    for other in (full, searched):
        assert (found.outcome, found.utilisation) == (other.outcome, other.utilisation)
        assert [one.found for one in found.failing] == [one.found for one in other.failing]
    assert found.proofs[""].method in ("enclosed", "split", "nothing is toleranced")
    assert full.proofs[""].method == "enumerated"
    return found


SIXTEEN: Links = [(1.0 if i % 2 else -1.0, 10.0, 10.0 + (i + 1) / 100) for i in range(16)]


def test_a_chain_of_sixteen_links_is_one_box_and_two_runs(run: Run) -> None:
    """By hand: those that add low, those that take off high: 2 − (0.01 + 0.03 + … + 0.15) = 2 − 0.64 mm."""
    found = run(lambda sheet: at_least(sheet, total(sheet, SIXTEEN) + 2 * MM, 1.0))
    assert found.judgement is not None
    assert found.judgement.found is not None
    assert found.judgement.found.value == pytest.approx(1.36 * MM)
    assert found.outcome == "conforms"
    proof = found.proofs[""]
    assert (proof.method, proof.inside, proof.boxes) == ("enclosed", True, 1)
    assert proof.runs <= 3


def test_one_comparison_nearly_used_hides_no_other(run: Run) -> None:
    """Seating used to 0.98 at one corner; the hot load 0.5 % short at the opposite one, and 2 % and 5 %."""
    for short in (0.005, 0.02, 0.05):

        def judged(sheet: Sheet, short: float = short) -> Judgement:
            x = [sheet.take(f"x{i}", link(f"x{i}", 0.99 * MM, 1.01 * MM)) for i in range(12)]
            cold = sum(x) / 11.88  # 1 mm at the least
            hot = 2 * MM - sum(x) / 12.12  # 1 mm at the least, where all are high
            return sheet.worst(
                at_least(sheet, cold, 0.98, "seating"), at_least(sheet, hot, 1 / (1 - short), "hot")
            )

        found = run(judged)
        assert found.outcome == run(judged, ONLY_SEARCHED).outcome == "finding"
        assert found.grade is Grade.HOLD
        assert found.utilisation == pytest.approx(1 / (1 - short))
        assert len(found.failing) == 1


def test_of_comparisons_that_hold_the_most_used_is_reported(run: Run) -> None:
    def judged(sheet: Sheet) -> Judgement:
        x = sheet.take("x", link("x", 1 * MM, 2 * MM))
        grave = at_least(sheet, x, 0.5, "grave")
        light = at_least(sheet, x, 0.9, "light").graded(Grade.OBSERVATION)
        return sheet.worst(grave, light)

    found = both(run, judged)
    assert found.utilisation == pytest.approx(0.9)
    assert found.failing == ()


def test_every_comparison_that_fails_is_listed_the_gravest_first(run: Run) -> None:
    """By hand, x from 1 to 2 mm: at its low 1 < 1.5; at its high 2 > 1.8; both within is light and not listed."""

    def judged(sheet: Sheet) -> Judgement:
        x = sheet.work("x", length, L=sheet.take("x", link("x", 1 * MM, 2 * MM)))
        low, high = (sheet.work(name, bound, b=at * MM) for name, at in (("low", 1.5), ("high", 1.8)))
        return sheet.worst(
            sheet.at_least(x, low).graded(Grade.OBSERVATION),
            sheet.at_most(x, high),
            sheet.at_most(x, sheet.work("far", bound, b=9 * MM)),
        )

    found = both(run, judged)
    assert found.grade is Grade.HOLD
    assert [f"{one.found.value / MM:.3g}" for one in found.failing if one.found] == ["2", "1"]
    assert [one.says for one in found.also_failing] == [found.failing[1].says]


def test_a_band_is_worst_at_either_end(run: Run) -> None:
    def judged(sheet: Sheet) -> Judgement:
        x = sheet.work("x", length, L=total(sheet, SIXTEEN[:8]) + 1 * MM)
        return sheet.within(x, sheet.work("a", bound, b=0.9 * MM), sheet.work("b", bound, b=1.1 * MM))

    found = both(run, judged)
    assert found.outcome == "finding"
    assert len(found.failing) == 2  # 0.84 mm < 0.9 mm, and 1.2 mm > 1.1 mm


def test_the_size_of_a_gap_is_worst_at_either_end(run: Run) -> None:
    """|gap| of eight links: the corners of both pieces, where no slope has one sign. By hand −0.16 and +0.2 mm."""

    def judged(sheet: Sheet) -> Judgement:
        gap = sheet.work("g", length, L=abs(total(sheet, SIXTEEN[:8])))
        return sheet.at_most(gap, sheet.work("b", bound, b=0.25 * MM))

    found = both(run, judged)
    assert found.utilisation == pytest.approx(0.8)
    assert found.proofs[""].method == "enclosed"


def test_a_worst_value_beyond_nothing_is_the_worst(run: Run) -> None:
    """The utilisation is without bound all the way from nothing down to the worst, which all the same is found."""

    def judged(sheet: Sheet) -> Judgement:
        left = total(sheet, [(1.0, 0.1, 0.2), *((-1.0, 0.0, 0.03) for _ in range(11))])
        return at_least(sheet, left, 0.05)

    for effort in (Effort(), ONLY_SEARCHED):
        found = run(judged, effort)
        assert found.judgement is not None
        assert found.judgement.found is not None
        assert found.judgement.found.value == pytest.approx((0.1 - 0.33) * MM)
        assert found.utilisation == math.inf


@pytest.mark.parametrize("seed", range(40))
def test_chains_whose_links_work_in_pairs(run: Run, seed: int) -> None:
    """Products of links about nothing: the worse side of one depends on the other. Ten links, against every corner."""
    chance = Random(seed)
    factors = [chance.uniform(-1, 1) for _ in range(15)]

    def judged(sheet: Sheet) -> Judgement:
        x = [sheet.take(f"x{i}", link(f"x{i}", -1 * MM, 1 * MM)) for i in range(10)]
        left = sum(k * one for k, one in zip(factors, x, strict=False))
        left = left + sum(factors[10 + i] * x[2 * i] * x[2 * i + 1] / MM for i in range(5))
        return sheet.worst(at_least(sheet, left, -4.0), at_least(sheet, left + x[0] / 2, -3.5))

    found, full = run(judged), run(judged, EVERY_CORNER)
    assert (found.outcome, found.utilisation) == (full.outcome, full.utilisation)
    assert found.proofs[""].method in ("enclosed", "split")


def test_a_branch_is_followed_on_both_sides(run: Run) -> None:
    """A rule that asks for more where a length is great: the corners on both sides of the branch are met."""

    def judged(sheet: Sheet) -> Judgement:
        x, y = (sheet.take(name, link(name, 1 * MM, 2 * MM)) for name in "xy")
        needed = 1.9 if x > 1.5 * MM else 0.5
        return at_least(sheet, y, needed)

    found = both(run, judged)
    assert found.utilisation == pytest.approx(1.9)
    assert not found.proofs[""].inside


def test_a_judgement_that_decides_what_comes_next(run: Run) -> None:
    def judged(sheet: Sheet) -> Judgement:
        x, y = (sheet.take(name, link(name, 1 * MM, 2 * MM)) for name in "xy")
        first = at_least(sheet, x, 1.5, "first")
        return first.graded(Grade.QUERY) if first.holds else at_least(sheet, y, 1.2, "second")

    assert both(run, judged).utilisation == pytest.approx(1.2)


def test_what_cannot_be_enclosed_says_why(run: Run) -> None:
    def judged(sheet: Sheet) -> Judgement:
        x = sheet.take("x", link("x", 1 * MM, 2 * MM))
        return at_least(sheet, math.gamma(1 + x / MM) * MM, 0.5)

    found = run(judged)
    assert found.outcome == "conforms"
    proof = found.proofs[""]
    assert (proof.method, proof.inside) == ("enumerated", False)
    assert proof.why == "a library function asks for one number"


def test_an_input_that_does_not_matter_stays_low(run: Run) -> None:
    def judged(sheet: Sheet) -> Judgement:
        x, idle = (sheet.take(name, link(name, 1 * MM, 2 * MM)) for name in ("x", "idle"))
        return at_least(sheet, x - 0.0 * idle, 0.5)

    found = both(run, judged)
    assert not any(found.corner.values())
    assert found.governing == ("x of links.toml low",)


def test_a_rule_that_takes_nothing_toleranced_runs_once(run: Run) -> None:
    seen = []

    def judged(sheet: Sheet) -> Judgement:
        seen.append(sheet)
        return at_least(sheet, 1 * MM, 0.5)

    assert run(judged).proofs[""].method == "nothing is toleranced"
    assert len(seen) == 1
