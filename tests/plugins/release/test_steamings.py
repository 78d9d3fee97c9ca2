"""What was measured in steam, beside what the duty assumes: from both sides of each limit, and what cannot be told."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check, assess
from speclint.repository import open_repository
from speclint.testing import DesignFolder, changed, expect_not_assessed
from tests.made.test_judging import DRAWN, MADE
from tests.plugins.liners.bench import bench, in_duty, in_liner

STEAMED = (
    MADE.replace('"560.3 mm"', '"560.310 mm"')
    + """
[steamings.first]
case = "running"
value = "VALUE"
uncertainty = "2 K"
date = "2026-06-20"
"""
)
#: The liner may be from 190 °C to 210 °C while the engine is running.
BAND = in_duty(
    '\n[cases.running.temperatures]\ncylinder-block = "200 °C"\ncylinder-liner = "200 °C"',
    '\n[cases.running.temperatures]\ncylinder-block = "200 °C"\ncylinder-liner = "190..210 °C"',
)
TIED = in_duty(BAND[1], BAND[2].replace("190..210 °C", "cylinder-block - 10 K ±20"))


def steamed(
    workshop: DesignFolder, value: str, *more: tuple[str, str], band: tuple[str, str, str] = BAND
) -> Check:
    made = changed(STEAMED, ("VALUE", value), *more)
    return workshop.write({**bench(DRAWN, band), "liner-7.toml": made}).only("made.in-steam")


@pytest.mark.parametrize(
    ("value", "grade"),
    [
        ("208 °C", None),
        ("208.1 °C", Grade.QUERY),
        ("212 °C", Grade.QUERY),
        ("212.1 °C", Grade.NONCONFORMITY),
        ("192 °C", None),
        ("191.9 °C", Grade.QUERY),
        ("187.9 °C", Grade.NONCONFORMITY),
    ],
)
def test_a_temperature_from_both_sides_of_each_limit(
    workshop: DesignFolder, value: str, grade: Grade | None
) -> None:
    """190..210 °C with U = 2 K: proved in from 192 to 208, proved out below 188 and above 212."""
    assert steamed(workshop, value).grade == grade


def test_what_the_duty_does_not_state_has_nothing_to_be_held_against(workshop: DesignFolder) -> None:
    """A duty whose running case has the temperature of the block alone."""
    alone = in_duty(BAND[1], '\n[cases.running.temperatures]\ncylinder-block = "200 °C"')
    found = steamed(workshop, "200 °C", band=alone)
    expect_not_assessed(found, "the duty states no")


def test_a_temperature_tied_to_another_may_be_all_that_the_tie_allows(workshop: DesignFolder) -> None:
    """200 − 10 ± 20 °C is from 170 to 210 °C."""
    assert steamed(workshop, "172 °C", band=TIED).outcome == "conforms"
    assert steamed(workshop, "167.9 °C", band=TIED).grade == Grade.NONCONFORMITY


def test_a_pressure_is_held_against_that_of_the_case(workshop: DesignFolder) -> None:
    """16 bar is assumed as it stands, without limits: 16.3 ± 0.1 bar is proved to be more."""
    pressure = ('value = "16.3', 'quantity = "live_pressure"\nvalue = "16.3'), ('"2 K"', '"0.1 bar"')
    found = steamed(workshop, "16.3 bar gauge", *pressure)
    assert found.grade == Grade.NONCONFORMITY
    assert "live_pressure running is outside the duty" in found.actual


def test_a_part_that_sees_no_duty_is_held_against_none(workshop: DesignFolder) -> None:
    drawn = bench(DRAWN, in_liner('housed_in = "block"\n', ""))
    made = changed(STEAMED, ("VALUE", "200 °C"))
    found = workshop.write({**drawn, "liner-7.toml": made}).only("made.in-steam")
    expect_not_assessed(found, "it was measured in steam, and sees no duty")


def test_what_was_not_measured_in_steam_and_a_case_that_the_duty_has_not(workshop: DesignFolder) -> None:
    none = workshop.write({**bench(DRAWN), "liner-7.toml": MADE}).only("made.in-steam")
    assert none.outcome == "not applicable"
    case = 'kind = "duty"\nid = "duty"\n'
    without = {**bench(DRAWN), "duty.toml": case, "liner-7.toml": changed(STEAMED, ("VALUE", "200 °C"))}
    assert workshop.write(without).only("made.in-steam").outcome == "not assessed"


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (('case = "running"\n', ""), "names its load case"),
        (('uncertainty = "2 K"\ndate', "date"), "no uncertainty is recorded for what was measured in steam"),
        (('value = "VALUE"\n', ""), "nothing was measured"),
        (("VALUE", "200 mm"), "200 mm"),
        (('value = "VALUE"', 'quantity = "live_presure"\nvalue = "16 bar gauge"'), "live_pressure"),
        (("2026-06-20", "20.6.2026"), "not a date"),
    ],
)
def test_a_record_that_is_not_whole_is_told(
    workshop: DesignFolder, change: tuple[str, str], said: str
) -> None:
    made = changed(STEAMED, change).replace("VALUE", "200 °C")
    workshop.write({**bench(DRAWN), "liner-7.toml": made})
    found = open_repository([workshop.root], workshop.loaded.kinds)
    assert any(said in str(one) for one in found.complaints)


#: A size of the part measured in steam: 560.3 mm ±0.02 is drawn.
SIZE = ('case = "running"', 'case = "running"\ndimension = "outside_diameter"'), ('"2 K"', '"4 µm"')


@pytest.mark.parametrize(
    ("value", "says"),
    [
        (
            "560.33 mm",
            "outside_diameter running is outside the drawing: up to 560.334 mm, to 560.32 mm assumed",
        ),
        ("560.318 mm", "outside_diameter running is not proved within the drawing: up to 560.322 mm"),
        (
            "560.27 mm",
            "outside_diameter running is outside the drawing: down to 560.266 mm, from 560.28 mm assumed",
        ),
    ],
)
def test_a_size_in_steam_is_held_against_its_drawing(workshop: DesignFolder, value: str, says: str) -> None:
    found = steamed(workshop, value, *SIZE)
    assert found.grade is (Grade.QUERY if "not proved" in says else Grade.NONCONFORMITY)
    assert says in found.actual


def test_a_temperature_that_is_not_proved_says_so(workshop: DesignFolder) -> None:
    assert "is not proved within the duty: up to 211 °C" in steamed(workshop, "209 °C").actual
    assert "is outside the duty: up to 215 °C" in steamed(workshop, "213 °C").actual


def test_it_is_written_down_against_what_a_value_is_held(workshop: DesignFolder) -> None:
    assert any("as the duty assumes" in step.name for step in steamed(workshop, "200 °C").steps)
    of_size = steamed(workshop, "560.3 mm", *SIZE).steps
    assert any("as the drawing states" in step.name for step in of_size)
    assert not any("as the duty assumes" in step.name for step in of_size)


def test_a_size_that_the_drawing_does_not_state(workshop: DesignFolder) -> None:
    unstated = SIZE[0][0], SIZE[0][1].replace("outside_diameter", "free_end_diameter")
    expect_not_assessed(
        steamed(workshop, "559 mm", unstated, SIZE[1]), "the drawing states no free_end_diameter"
    )


def test_a_value_without_uncertainty_proves_nothing(workshop: DesignFolder) -> None:
    """The record is complained of, and judged all the same."""
    made = changed(STEAMED, ("VALUE", "200 °C"), ('uncertainty = "2 K"\ndate', "date"))
    workshop.write({**bench(DRAWN, BAND), "liner-7.toml": made})
    rules = [one for one in workshop.loaded.rules if one.name == "made.in-steam"]
    [found] = assess([workshop.root], workshop.loaded, rules).checks
    expect_not_assessed(found, "no uncertainty is recorded for temperatures.liner running")


def test_a_temperature_beside_a_size_needs_a_duty(workshop: DesignFolder) -> None:
    size = changed(STEAMED[STEAMED.index("[steamings.first]") :], ("VALUE", "560.3 mm"), *SIZE).replace(
        "first", "size"
    )
    drawn = bench(DRAWN, in_liner('housed_in = "block"\n', ""))
    both = f"{changed(STEAMED, ('VALUE', '200 °C'))}{size}"
    found = workshop.write({**drawn, "liner-7.toml": both}).only("made.in-steam")
    expect_not_assessed(found, "it was measured in steam, and sees no duty")
    alone = STEAMED[: STEAMED.index("[steamings.first]")] + size
    assert workshop.write({**drawn, "liner-7.toml": alone}).only("made.in-steam").outcome == "conforms"


def test_in_steam_too_the_decision_of_the_settings_is_followed(workshop: DesignFolder) -> None:
    """By simple acceptance nothing of the uncertainty of 2 K is taken off 210 °C."""
    made = {**bench(DRAWN, BAND), "liner-7.toml": changed(STEAMED, ("VALUE", "210.1 °C"))}
    workshop.write(made)
    assert workshop.only("made.in-steam").grade is Grade.QUERY
    settings = workshop.root / "speclint.toml"
    simple = f'{settings.read_text(encoding="utf-8")}\n[made]\ndecision = "simple acceptance"\n'
    workshop.write(made, settings=simple)
    assert workshop.only("made.in-steam").grade is Grade.NONCONFORMITY
