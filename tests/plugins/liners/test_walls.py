"""liner.handbook-wall and liner.reboring-allowance."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, found, limit, on_sheet
from speclint_liners.formulae.walls import bourne_wall, kent_wall, whole_reborings
from tests.plugins.liners.bench import bench, in_liner, in_ring

HANDBOOK, REBORING = "liner.handbook-wall", "liner.reboring-allowance"


def test_the_wall_is_set_beside_the_handbooks(workshop: DesignFolder) -> None:
    """Liner 30.15 and backing 40 mm over 500/16 = 31.25 mm; 19.685 in × 232.06 psi/5000 + 0.5 = 1.41363 in."""
    check = workshop.write(bench()).only(HANDBOOK)
    assert found(check) == pytest.approx(70.15 / 31.25)
    assert check.outcome == "conforms"
    assert check.utilisation is None
    for words in ("70.2 mm", "31.2 mm", "35.9 mm", "0.060 of the bore"):
        assert words in check.says


def test_a_thin_wall_is_reported_and_not_judged(workshop: DesignFolder) -> None:
    thin = bench(
        in_liner('\nbore = "500 mm"', '\nbore = "550 mm"'), in_liner('"509 mm"\nreb', '"555 mm"\nreb')
    )
    assert workshop.write(thin).only(HANDBOOK).outcome == "conforms"


def test_the_handbooks_need_the_bore(workshop: DesignFolder) -> None:
    assert workshop.write(bench(in_liner('\nbore = "500 mm"', ""))).only(HANDBOOK).outcome == "not assessed"


@pytest.mark.parametrize(("last", "outcome"), [("508.9", "conforms"), ("508.8", "finding")])
def test_three_steps_are_wanted(workshop: DesignFolder, last: str, outcome: str) -> None:
    check = workshop.write(bench(in_liner('last_bore = "509 mm"', f'last_bore = "{last} mm"'))).only(REBORING)
    assert check.outcome == outcome
    assert check.grade is (Grade.OBSERVATION if outcome == "finding" else None)
    assert limit(check) == 3


@pytest.mark.parametrize(("step", "steps"), [("3 mm", 3), ("4.5 mm", 2)])
def test_the_liner_is_rebored_by_its_own_step(workshop: DesignFolder, step: str, steps: int) -> None:
    """9 mm: three steps of 3 mm or two of 4.5."""
    check = workshop.write(bench(in_liner('reboring_step = "3 mm"', f'reboring_step = "{step}"'))).only(
        REBORING
    )
    assert on_sheet(check, "n") == steps
    assert check.outcome == ("conforms" if steps == 3 else "finding")


@pytest.mark.parametrize(("size", "outcome"), [("501.515 mm", "conforms"), ("501.485 mm", "finding")])
def test_a_piston_serves_a_bore_within_half_a_step(workshop: DesignFolder, size: str, outcome: str) -> None:
    """503 mm less 1.5: the ring for 500 or 503 mm serves either piston."""
    check = workshop.write(bench(in_liner('pistons_for = ["503 mm"', f'pistons_for = ["{size}"'))).only(
        REBORING
    )
    assert check.outcome == outcome
    assert ("piston: none for 503.0 mm" in check.says) is (outcome == "finding")


def test_the_works_step_stands_in_for_one_not_stated(workshop: DesignFolder) -> None:
    assert workshop.write(bench(in_liner('reboring_step = "3 mm"', ""))).only(REBORING).outcome == "conforms"


@pytest.mark.parametrize(("last", "outcome"), [("508.9", "conforms"), ("508.8", "finding")])
def test_the_works_step_is_of_three_millimetres(workshop: DesignFolder, last: str, outcome: str) -> None:
    """As where it is stated, above: a step of 2.91 mm would go three times into 8.8 mm."""
    unsaid = in_liner('reboring_step = "3 mm"', "")
    files = bench(unsaid, in_liner('last_bore = "509 mm"', f'last_bore = "{last} mm"'))
    assert workshop.write(files).only(REBORING).outcome == outcome


def test_every_size_has_its_ring_and_its_piston(workshop: DesignFolder) -> None:
    check = workshop.write(bench(in_ring('"506 mm", ', ""))).only(REBORING)
    assert check.outcome == "finding"
    assert "ring: none for 506.0 mm" in check.says
    check = workshop.write(bench(in_liner('"503 mm", ', ""))).only(REBORING)
    assert "piston: none for 503.0 mm" in check.says


def test_a_ring_is_had_for_the_new_bore_and_for_every_piston(workshop: DesignFolder) -> None:
    check = workshop.write(bench(in_ring('["500 mm", ', "["))).only(REBORING)
    assert (check.outcome, check.grade) == ("finding", Grade.OBSERVATION)
    assert "ring: none for 500.0 mm" in check.says
    check = workshop.write(bench(in_liner('"509 mm"]', '"509 mm", "512 mm"]'))).only(REBORING)
    assert "ring: none for 512.0 mm" in check.says
    assert "piston" not in check.says


def test_reboring_needs_rings_and_the_last_bore(workshop: DesignFolder) -> None:
    assert (
        workshop.write(bench(in_liner('last_bore = "509 mm"', ""))).only(REBORING).outcome == "not assessed"
    )
    assert workshop.write(bench(in_ring('runs_in = "liner"', ""))).only(REBORING).outcome == "not assessed"


@given(steps=st.integers(0, 12), step=st.floats(1e-3, 6e-3), wear=st.floats(0.0, 0.04))
def test_whole_steps_are_counted_and_a_bore_within_its_limits_loses_none(
    steps: int, step: float, wear: float
) -> None:
    last = 0.5 + (steps + 1e-9) * step
    assert whole_reborings(last, 0.5 + wear * step if steps else 0.5, step) == steps


@given(d=st.floats(0.2, 0.8), p=st.floats(5e5, 3e6))
def test_the_period_rules_grow_with_the_bore_and_kents_with_the_pressure(d: float, p: float) -> None:
    assert bourne_wall(2 * d) == pytest.approx(2 * bourne_wall(d))
    assert kent_wall(d, 2 * p) - 0.0127 == pytest.approx(2 * (kent_wall(d, p) - 0.0127))


def test_more_than_a_thousand_steps_are_outside_its_range() -> None:
    """10 mm of reboring: steps of 10 µm are 1000, steps of 9.9 µm more."""
    assert whole_reborings(0.51, 0.5, 1.0001e-5) == 999
    with pytest.raises(OutOfRange, match="a thousandth of the whole reboring"):
        whole_reborings(0.51, 0.5, 9.9e-6)


@pytest.mark.parametrize(("share", "steps"), [(0.9495, 0), (0.9505, 1), (1.9495, 1), (1.9505, 2)])
def test_a_twentieth_of_a_step_may_be_missing(share: float, steps: int) -> None:
    """Steps of 4 mm: 0.0505 of one is more than a twentieth, 0.0495 less."""
    assert whole_reborings(0.5 + share * 0.004, 0.5, 0.004) == steps
