"""When the inlet opens, and whether both valves of an end are ever open together.

Clearances of 0.45, 0.5 and 0.6 mm are used up 4.0909°, 4.5455° and 5.4545° from the foot; setting
± 0.1°, lag 0 to 0.1°.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import COMMON_PRACTICE
from speclint.handbook.tables import Reading
from speclint.rules import Grade
from speclint.testing import DesignFolder, expect_conforms, expect_finding, expect_not_applicable, found
from speclint_events.rules import leads
from tests.plugins.events.gear import checked, files, foot
from tests.plugins.known_metals import WITH_METALS

LEAD, ALIKE, OVERLAP = "events.lead", "events.lead-alike", "events.no-overlap"


@pytest.fixture
def folder(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path)


@pytest.mark.parametrize(
    ("holds", "fails"),
    [
        ("-7.7 °", "-7.6 °"),  # latest: 5.4545 + 0.1 + 0.1 after the foot; 2° of lead at −7.6545°
        ("-13.9 °", "-14.1 °"),  # earliest: 4.0909 − 0.1; 10° at −13.9909°
    ],
)
def test_lead_of_the_notch_run_at_speed(folder: DesignFolder, holds: str, fails: str) -> None:
    expect_conforms(checked(folder, LEAD, foot("35", "inlet_front", holds)))
    expect_finding(checked(folder, LEAD, foot("35", "inlet_front", fails)))


@pytest.mark.parametrize(
    ("speed", "fails"),
    [
        ('rotational_speed = "118 rev/min"', False),
        ('rotational_speed = "120 rev/min"', False),
        ('rotational_speed = "122 rev/min"', True),
        ('track_speed = "37.26 km/h"', False),  # on worn wheels of 1.675 m 118 rev/min
        ('track_speed = "38.52 km/h"', True),  # 122
    ],
)
def test_lead_is_wanted_above_a_speed(folder: DesignFolder, speed: str, fails: bool) -> None:
    """A foot at −6.7° leaves 1.05° of lead at the latest: enough to 120 rev/min."""
    turns = "duty.toml", 'rotational_speed = "180 rev/min"', speed
    (expect_finding if fails else expect_conforms)(
        checked(folder, LEAD, foot("35", "inlet_front", "-6.7 °"), turns)
    )


def test_another_notch_needs_no_lead_but_must_not_open_late(folder: DesignFolder) -> None:
    """−5.6 + 5.6545 = 0.05° late is graver than −5.7, which leaves 0.05° of lead."""
    expect_conforms(checked(folder, LEAD, foot("20", "inlet_front", "-5.7 °")))
    late = checked(folder, LEAD, foot("20", "inlet_front", "-5.6 °"))
    expect_finding(late, grade=Grade.NONCONFORMITY)


@pytest.mark.parametrize(("at", "grade"), [("-5.7 °", Grade.OBSERVATION), ("-5.6 °", Grade.NONCONFORMITY)])
def test_a_notch_run_at_speed_that_opens_late_is_graver_than_one_of_little_lead(
    folder: DesignFolder, at: str, grade: Grade
) -> None:
    """5.6545° after the foot at the latest: 0.0455° before dead centre, where 2° are wanted, and 0.0545° after it."""
    expect_finding(checked(folder, LEAD, foot("35", "inlet_front", at)), grade=grade)


def test_the_longest_notch_may_open_late(folder: DesignFolder) -> None:
    expect_conforms(
        checked(folder, LEAD, foot("65", "inlet_front", "-3 °"), foot("65", "inlet_back", "-3 °"))
    )


def test_the_longest_notch_needs_lead_too_where_it_is_run_at_speed(folder: DesignFolder) -> None:
    """A foot at −7.7° leaves 2.0455° at the latest, one at −7.6° 1.9455°."""
    run = ("duty.toml", '"180 rev/min"\nnotch = "35"', '"180 rev/min"\nnotch = "65"')
    for at, expect in (("-7.7 °", expect_conforms), ("-7.6 °", expect_finding)):
        expect(checked(folder, LEAD, foot("65", "inlet_front", at), run))


def test_without_a_notch_no_lead_at_speed_is_asked_for(folder: DesignFolder) -> None:
    """−5.7° leaves 0.05° of lead, −5.6° none."""
    unsaid = ("duty.toml", '"180 rev/min"\nnotch = "35"\n', '"180 rev/min"\n')
    expect_conforms(checked(folder, LEAD, foot("35", "inlet_front", "-5.7 °"), unsaid))
    late = checked(folder, LEAD, foot("35", "inlet_front", "-5.6 °"), unsaid)
    expect_finding(late, grade=Grade.NONCONFORMITY)


@pytest.mark.parametrize(("most", "holds"), [("0.72 mm", True), ("0.70 mm", False)])
def test_lift_at_dead_centre(folder: DesignFolder, most: str, holds: bool) -> None:
    """In the worked cases the tappet stands at 1.1561 mm at dead centre with a foot of −10.5°; the notch of 35 % rises
    less steeply than 20 %: 14 mm in 30° against 9.5 in 21°, a parabola of (0.5/21)² or (0.5/30)², both some 1.156.

    Less 0.45 mm worn that is 0.706 mm; the backs have the same feet.
    """
    settings = WITH_METALS + f'[limits."events.lead"]\nlift = "{most}"\n'
    check = folder.write(files(), settings=settings).only(LEAD)
    if holds:
        expect_conforms(check)
    else:
        expect_finding(check)
        assert found(check) == pytest.approx(0.706e-3, abs=0.005e-3)


@pytest.mark.parametrize(("lift", "holds"), [("5.99", True), ("6.01", False)])
def test_the_declared_lift_at_dead_centre(
    folder: DesignFolder, monkeypatch: pytest.MonkeyPatch, lift: str, holds: bool
) -> None:
    """6 mm, of every inlet alike."""

    def given() -> Reading:
        return Reading.exact("lift as given", float(lift) / 1e3, "m", COMMON_PRACTICE)

    monkeypatch.setattr(leads, "measured", lambda symbol, _table, _cam, sheet: sheet.look_up(symbol, given))
    check = checked(folder, LEAD)
    (expect_conforms if holds else expect_finding)(check)
    assert found(check) == pytest.approx(float(lift) / 1e3)


def test_leads_of_one_direction(folder: DesignFolder) -> None:
    """65 % has its foot at −9.5°; errors of setting 0.2° apart: 4° at −13.3°."""
    expect_conforms(checked(folder, ALIKE, foot("20", "inlet_front", "-13.2 °")))
    apart = checked(folder, ALIKE, foot("20", "inlet_front", "-13.4 °"))
    expect_finding(apart)
    assert apart.judgement is not None
    assert apart.judgement.of == "forward, front"
    assert {step.symbol for step in apart.steps if step.symbol.startswith("λ_")} == {"λ_f", "λ_b"}


def in_mid_gear(*notches: str) -> list[tuple[str, str, str]]:
    """Notches of the gear that are made some of mid gear, in which the engine does not run."""
    return [
        (
            "gear.toml",
            f'direction = "forward"\ncut_off = "{one} %"',
            f'direction = "mid"\ncut_off = "{one} %"',
        )
        for one in notches
    ]


def test_leads_are_compared_where_a_direction_has_two_notches(folder: DesignFolder) -> None:
    """65 and 35 % forward, at the front and at the back; the one notch backward has none to be compared with."""
    check = checked(folder, ALIKE, *in_mid_gear("20"))
    expect_conforms(check)
    assert len([step for step in check.steps if step.symbol == "Δλ"]) == 2


def test_one_notch_for_each_direction_has_no_other_lead(folder: DesignFolder) -> None:
    expect_not_applicable(checked(folder, ALIKE, *in_mid_gear("20", "35")), "more than one notch")


def test_exhaust_opens_after_the_inlet_has_shut(folder: DesignFolder) -> None:
    """The inlet of the back shuts at 94.509° more than its dwell, the exhaust opens at 143.9909°: 5° at 44.482°."""
    longer = [
        ("cam-inlet-back-65.toml", 'dwell_angle = "18 °"', f'dwell_angle = "{at} °"') for at in (44.4, 44.6)
    ]
    expect_conforms(checked(folder, OVERLAP, longer[0]))
    expect_finding(checked(folder, OVERLAP, longer[1]), grade=Grade.NONCONFORMITY)


def test_an_overlap_in_a_shorter_notch_is_no_hold(folder: DesignFolder) -> None:
    """With the inlet's foot at −10.5° nothing is left at 175.48°."""
    expect_finding(
        checked(folder, OVERLAP, foot("35", "exhaust_front", "176.6 °")), grade=Grade.NONCONFORMITY
    )


def test_an_end_of_which_one_valve_stays_shut_in_mid_gear_has_no_overlap(folder: DesignFolder) -> None:
    alone = (
        "gear.toml",
        'direction = "mid"\n',
        'direction = "mid"\n[notches.mid.inlet_front]\ncam = "cam-inlet-front-20"\nfoot = "-10 °"\n',
    )
    expect_conforms(checked(folder, OVERLAP, alone))


def test_exhaust_shut_before_the_inlet_opens(folder: DesignFolder) -> None:
    """The inlet opens at −10.5 + 4.0909 − 0.1, the exhaust shuts 182 − 4.0909 + 0.1 after its foot: 5° at 170.48°."""
    expect_conforms(checked(folder, OVERLAP, foot("35", "exhaust_front", "170.4 °")))
    expect_finding(checked(folder, OVERLAP, foot("35", "exhaust_front", "170.6 °")))


def test_an_overlap_in_the_longest_notch_is_a_hold(folder: DesignFolder) -> None:
    """There nothing is left at 176.48°: before it a nonconformity, after it a hold."""
    close = checked(folder, OVERLAP, foot("65", "exhaust_front", "176.4 °"))
    expect_finding(close, grade=Grade.NONCONFORMITY)
    expect_finding(checked(folder, OVERLAP, foot("65", "exhaust_front", "176.6 °")), grade=Grade.HOLD)


def test_an_overlap_in_mid_gear_is_a_hold(folder: DesignFolder) -> None:
    open_at_once = (
        "gear.toml",
        'direction = "mid"\n',
        'direction = "mid"\n[notches.mid.inlet_front]\ncam = "cam-inlet-front-20"\nfoot = "-10 °"\n'
        '[notches.mid.exhaust_front]\ncam = "cam-exhaust-front"\nfoot = "-10 °"\n',
    )
    expect_finding(checked(folder, OVERLAP, open_at_once), grade=Grade.HOLD)
    expect_conforms(checked(folder, OVERLAP))


@pytest.mark.parametrize(("valve", "foot_at"), [("exhaust_front", "-220 °"), ("inlet_front", "349.5 °")])
def test_a_foot_a_turn_away_is_the_same_foot(folder: DesignFolder, valve: str, foot_at: str) -> None:
    """140° and −10.5°: the same angles lie between the valves."""

    def between(*changes: tuple[str, str, str]) -> list[float]:
        check = checked(folder, OVERLAP, *changes)
        expect_conforms(check)
        gaps = [step for step in check.steps if step.symbol in ("β_af", "β_rf", "β_ab", "β_rb")]
        return [step.value for step in gaps if isinstance(step.value, float)]

    angles = between()
    assert len(angles) == 2 * 2 * 4  # before admission and before release, of both ends in four notches
    assert between(foot("35", valve, foot_at)) == pytest.approx(angles)
