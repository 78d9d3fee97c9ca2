"""lagging.touch and lagging.loss, on the handbook's examples, which were solved apart with ht and CoolProp's air."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.cylinders import outside_of_wall
from speclint.testing import DesignFolder, changed, changed_files, on_sheet
from speclint_steamways.formulae.heat import loss_of_area, loss_of_length
from tests.plugins.steamways.test_paths import limited
from tests.plugins.steamways.way import files as ways

TOUCH, LOSS = "lagging.touch", "lagging.loss"

#: On metal of 300 °C in air of 20 °C: 54 °C outside and 181 W/m.
ROUND = """
kind = "lagging"
id = "lagging"
material = "known-steel"
covers = "pipe"
form = "round"
inside_diameter = "150 mm"
thickness = "50 mm"
conductivity = "0.06 W/(m·K)"
emissivity = "0.3"
reach = "in reach"
length = "2.5 m"
"""
#: On the same: 61 °C outside and 290 W/m².
FLAT = (
    ("round", "flat"),
    ('inside_diameter = "150 mm"', 'height = "0.8 m"'),
    ('length = "2.5 m"', 'area = "0.5 m²"'),
)


def files(*changes: tuple[str, str]) -> dict[str, str]:
    """The ways with a lagged pipe whose metal is at 300 °C in running."""
    found = ways(lagging=changed(ROUND, *changes))
    pipe = ("pipe.toml", 'outside_diameter = "168.3 mm"', 'outside_diameter = "150 mm"')
    return changed_files(found, ("duty.toml", 'pipe = "380 °C"', 'pipe = "300 °C"'), pipe)


@pytest.mark.parametrize(("limit", "outcome"), [("55 °C", "conforms"), ("53 °C", "finding")])
def test_round_lagging_from_both_sides(workshop: DesignFolder, limit: str, outcome: str) -> None:
    own = limited(TOUCH, touch=limit)
    check = workshop.write({**files(), "speclint.toml": own}).only(TOUCH)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    assert on_sheet(check, "T_s") - 273.15 == pytest.approx(54, abs=0.5)


@pytest.mark.parametrize(("limit", "outcome"), [("62 °C", "conforms"), ("60 °C", "finding")])
def test_flat_lagging_from_both_sides(workshop: DesignFolder, limit: str, outcome: str) -> None:
    own = limited(TOUCH, touch=limit)
    check = workshop.write({**files(*FLAT), "speclint.toml": own}).only(TOUCH)
    assert check.outcome == outcome


def test_where_a_hand_must_go_it_is_a_hold(workshop: DesignFolder) -> None:
    check = workshop.write(files(*FLAT, ("in reach", "a hand must go there"))).only(TOUCH)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def test_out_of_reach_it_burns_nobody(workshop: DesignFolder) -> None:
    assert workshop.write(files(("in reach", "out of reach"))).only(TOUCH).outcome == "not applicable"


def in_envelope(height: str, cylinders: str = "outside", of: str = 'of = "pipe"') -> dict[str, str]:
    """The pipe, said to be out of reach, as a point of the envelope of its block."""
    around = f'kind = "envelope"\naround = "block"\ncylinders = "{cylinders}"\n'
    envelope = f'{around}[points.pipe]\nheight = "{height}"\n{of}\n'
    return {**files(("in reach", "out of reach")), "envelope.toml": envelope}


@pytest.mark.parametrize(
    ("height", "outcome"), [("2510 mm", "conforms"), ("2500 mm", "conforms"), ("2490 mm", "finding")]
)
def test_what_a_hand_on_the_ground_reaches_is_not_out_of_reach(
    workshop: DesignFolder, height: str, outcome: str
) -> None:
    """2.5 m above the rail by ISO 13857."""
    check = workshop.write(in_envelope(height)).only(TOUCH)
    assert (check.outcome, check.grade) == (outcome, Grade.QUERY if outcome == "finding" else None)


def test_between_the_frames_and_at_a_drain_cock_nothing_is_said_of_reach(workshop: DesignFolder) -> None:
    assert workshop.write(in_envelope("900 mm", "inside")).only(TOUCH).outcome == "not applicable"
    assert (
        workshop.write(in_envelope("900 mm", of='cock_of = "front"')).only(TOUCH).outcome == "not applicable"
    )


def test_the_hotter_case_governs(workshop: DesignFolder) -> None:
    """The pipe is at 300 °C running and 180 °C standing."""
    assert workshop.write(files()).only(TOUCH).case == "running"


def in_air(stated: str, *changes: tuple[str, str]) -> dict[str, str]:
    """With another hottest air, or none, in every case; the ordinary air stays at 20 °C."""
    line = f'hottest_ambient = "{stated}"\n' if stated else ""
    found = files(*changes)
    return {**found, "duty.toml": found["duty.toml"].replace('hottest_ambient = "20 °C"\n', line)}


@pytest.mark.parametrize(("stated", "air"), [("", 35), ("35 °C", 35), ("28 °C", 28)])
def test_the_hottest_air_counts_and_35_degrees_where_none_is_stated(
    workshop: DesignFolder, stated: str, air: float
) -> None:
    """The surface passes 60 °C where the air is hotter than some 27 °C: it is hotter than the air by 33 to 34 K."""
    check = workshop.write(in_air(stated)).only(TOUCH)
    assert check.outcome == "finding"
    assert on_sheet(check, "T_a") - 273.15 == pytest.approx(air)
    assert on_sheet(check, "T_s") - 273.15 == pytest.approx(air + 33, abs=1.5)


def test_the_hottest_air_is_never_cooler_than_the_ordinary(workshop: DesignFolder) -> None:
    """Air of 40 °C on an ordinary day, where 35 °C is taken for the hottest: 40 °C counts, and some 32 K above it."""
    made = in_air("")
    duty = made["duty.toml"].replace('ambient_temperature = "20 °C"', 'ambient_temperature = "40 °C"')
    check = workshop.write({**made, "duty.toml": duty}).only(TOUCH)
    assert on_sheet(check, "T_s") - 273.15 == pytest.approx(40 + 32, abs=1.5)


def test_the_hottest_air_may_be_cooler_than_usual(workshop: DesignFolder) -> None:
    assert workshop.write(in_air("25 °C")).only(TOUCH).outcome == "conforms"


@pytest.mark.parametrize("key", ["covers", "form", "thickness", "conductivity", "emissivity", "reach"])
def test_touch_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    (line,) = {one for one in ROUND.splitlines() if one.startswith(f"{key} =")}
    added = 'duty = "duty"\n' if key == "covers" else ""
    check = workshop.write(files((line + "\n", added))).only(TOUCH)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_the_inside_is_that_of_the_pipe_unless_neither_is_stated(workshop: DesignFolder) -> None:
    made = workshop.write(files(('inside_diameter = "150 mm"\n', "")))
    assert on_sheet(made.only(TOUCH), "T_s") - 273.15 == pytest.approx(54, abs=0.5)
    made.replace("pipe.toml", 'outside_diameter = "150 mm"\n', "")
    assert made.only(TOUCH).outcome == "not assessed"


def test_the_loss_is_reported(workshop: DesignFolder) -> None:
    """181 W/m × 2.5 m = 452.5 W; 290 W/m² × 0.5 m² = 145 W."""
    pipe = workshop.write(files()).only(LOSS)
    assert pipe.outcome == "conforms"
    assert on_sheet(pipe, "Q") == pytest.approx(452.5, abs=1.3)
    assert "heat lost" in pipe.says
    wall = workshop.write(files(*FLAT)).only(LOSS)
    assert on_sheet(wall, "Q") == pytest.approx(145, abs=2.5)


def test_the_loss_is_not_assessed_without_its_length(workshop: DesignFolder) -> None:
    assert workshop.write(files(('length = "2.5 m"\n', ""))).only(LOSS).outcome == "not assessed"


@given(d=st.floats(0.05, 0.6), t=st.floats(0.01, 0.2))
def test_lagging_lies_on_both_sides(d: float, t: float) -> None:
    assert outside_of_wall(outside_of_wall(d, t), t) == pytest.approx(outside_of_wall(d, 2 * t))


@given(q=st.floats(1, 1e3), size=st.floats(0.1, 10))
def test_loss_grows_with_what_is_covered(q: float, size: float) -> None:
    assert loss_of_length(q, 2 * size) == pytest.approx(2 * loss_of_length(q, size))
    assert loss_of_area(q, 2 * size) == pytest.approx(2 * loss_of_area(q, size))
