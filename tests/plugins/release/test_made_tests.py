"""Tightening and hydraulic tests of parts as made: each limit from both sides, and which of several counts."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, expect_not_applicable
from tests.plugins.release.made import DRAWN, MADE, STUDS, TIGHTENED, made
from tests.plugins.release.part import files, settings


@pytest.mark.parametrize(
    ("record", "grade"),
    [
        (TIGHTENED, None),
        (TIGHTENED.replace("385..405", "379..405"), Grade.HOLD),
        (TIGHTENED.replace("385..405", "385..420"), None),
        (TIGHTENED.replace("385..405", "385..421"), Grade.HOLD),
        (TIGHTENED + 'result = "passed"\n', None),
        (TIGHTENED + 'result = "failed"\n', Grade.HOLD),
        (TIGHTENED[: TIGHTENED.index("[tight")], Grade.QUERY),
    ],
)
def test_tightening_from_both_sides(workshop: DesignFolder, record: str, grade: Grade | None) -> None:
    """The spec allows 400 − 20 = 380 to 400 + 20 = 420 N·m."""
    workshop.write({**files(DRAWN), "studs.toml": STUDS, "studs-1.toml": record}, settings=settings())
    assert workshop.only("made.tightening").grade is grade


def test_a_joint_that_asks_for_no_figure_may_be_tightened_by_any(workshop: DesignFolder) -> None:
    asked = STUDS.replace('torque = "400 N·m ±20"\n', "")
    design = {**files(DRAWN), "studs.toml": asked, "studs-1.toml": TIGHTENED}
    check = workshop.write(design, settings=settings()).only("made.tightening")
    assert (check.outcome, check.says) == ("conforms", "first: its spec asks for no figure")


@pytest.mark.parametrize(
    ("asked", "least", "most"),
    [("torque", "400 N·m", "420 N·m"), ("angle", "30 °", "31.5 °"), ("preload", "80 kN", "84 kN")],
)
def test_each_figure_that_is_asked_for_is_reached_and_not_passed(
    workshop: DesignFolder, asked: str, least: str, most: str
) -> None:
    """Without a tolerance from the figure itself to 1.05 of it: 420 N·m, 31.5° and 84 kN."""
    drawn = STUDS.replace('torque = "400 N·m ±20"', f'{asked} = "{least}"')
    for found, outcome in ((least, "conforms"), (most, "conforms"), ("less", "finding"), ("more", "finding")):
        number, unit = (most if found in (most, "more") else least).split()
        times = {"less": 0.999, "more": 1.001}.get(found, 1.0)
        record = TIGHTENED.replace(
            'torque = "385..405 N·m"', f'{asked} = "{float(number) * times:.6g} {unit}"'
        )
        design = {**files(DRAWN), "studs.toml": drawn, "studs-1.toml": record}
        check = workshop.write(design, settings=settings()).only("made.tightening")
        assert check.outcome == outcome, (found, check.says)
        if outcome == "finding":
            assert f"first: {asked} " in check.actual


def test_only_a_bolted_joint_is_tightened(workshop: DesignFolder) -> None:
    workshop.write({**files(DRAWN), "made.toml": MADE}, settings=settings())
    expect_not_applicable(workshop.only("made.tightening"), "no bolted joint")


FIRST = 'held = "1800 s"\nresult = "passed"\n'


@pytest.mark.parametrize(
    ("day", "result", "pressure", "outcome"),
    [
        ("2026-05-31", "failed", "28 bar gauge", "conforms"),  # mended, and passed a day later
        ("2026-06-02", "failed", "28 bar gauge", "finding"),  # failed when it was tested again
        ("2026-06-01", "failed", "28 bar gauge", "finding"),  # nobody can tell which was the last
        ("", "failed", "28 bar gauge", "finding"),
        (
            "2026-05-31",
            "passed",
            "20 bar gauge",
            "conforms",
        ),  # a lower test, and a day later one that is enough
        (
            "2026-06-02",
            "passed",
            "20 bar gauge",
            "finding",
        ),  # why it was tested again, and lower, nobody says
    ],
)
def test_what_passed_after_the_last_that_fell_short_counts(
    workshop: DesignFolder, day: str, result: str, pressure: str, outcome: str
) -> None:
    other = f'[hydraulic_tests.other]\npressure = "{pressure}"\nheld = "1800 s"\nresult = "{result}"\n'
    other += f'date = "{day}"\n' if day else ""
    check = made(workshop, "made.hydraulic-test", (FIRST, f'{FIRST}date = "2026-06-01"\n{other}'))
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("recorded_torque", "outcome"),
    [
        ("400..420 N·m", "conforms"),
        ("400..421 N·m", "finding"),
        ("399..410 N·m", "finding"),
        ("600 N·m", "finding"),
    ],
)
def test_a_torque_without_tolerance_is_passed_by_a_twentieth_at_most(
    workshop: DesignFolder, recorded_torque: str, outcome: str
) -> None:
    """400 N·m: from 400 to 1.05 × 400 = 420 N·m."""
    design = {
        **files(DRAWN),
        "studs.toml": changed(STUDS, ("400 N·m ±20", "400 N·m")),
        "studs-1.toml": changed(TIGHTENED, ("385..405 N·m", recorded_torque)),
    }
    assert workshop.write(design, settings=settings()).only("made.tightening").outcome == outcome


def test_a_part_whose_spec_asks_for_no_test_needs_none_on_record(workshop: DesignFolder) -> None:
    """Nor does a test on record beside it make it asked for."""
    for record in (MADE, MADE[: MADE.index("[hydraulic_tests")]):
        text = {**files(DRAWN), "cover-7.toml": record}
        lines = text["cover.toml"].splitlines(keepends=True)
        text["cover.toml"] = "".join(line for line in lines if not line.startswith("test_pressure"))
        assert text["cover.toml"] != files(DRAWN)["cover.toml"]
        check = workshop.write(text, settings=settings("released")).only("made.hydraulic-test", "cover-7")
        expect_not_applicable(check, "asks for no hydraulic test")
