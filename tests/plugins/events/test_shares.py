"""Where on the stroke the valves act, by shares and angles of the worked cases of the handbook.

At a third of a degree from 67.9687° and 77.4888°, 35 % of the stroke at front and back, the share grows by
(sin φ ± λ sin 2φ/2)/2 a radian: 0.00862 a degree at the front and 0.00821 at the back.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import GearAtWork
from speclint.handbook.valve_events import End
from speclint.testing import DesignFolder, expect_conforms, expect_finding, expect_not_assessed, found
from tests.plugins.events.gear import checked, foot

AS_ASKED, EQUAL, RELEASE, COMPRESSION = (
    "events.cut-off-as-asked",
    "events.equal-ends",
    "events.release",
    "events.compression",
)


@pytest.fixture
def folder(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path)


def asked(cut_off: str) -> tuple[str, str, str]:
    return "gear.toml", 'cut_off = "35 %"', f'cut_off = "{cut_off}"'


def dwell(cam: str, was: str, now: str) -> tuple[str, str, str]:
    return f"cam-{cam}.toml", f'dwell_angle = "{was} °"', f'dwell_angle = "{now} °"'


def test_cut_off_against_what_is_asked(folder: DesignFolder) -> None:
    """The latest shutting is at −10.5 + 83 − 4.0909 + 0.2 = 68.609° and −10.5 + 92.5 − 4.0909 + 0.2 = 78.109°.

    0.35 + 0.640 × 0.00862 = 0.35552 and 0.35 + 0.620 × 0.00821 = 0.35509: 0.3553, 2 % above 33.53 %.
    """
    expect_conforms(checked(folder, AS_ASKED, asked("33.55 %")))
    late = checked(folder, AS_ASKED, asked("33.51 %"))
    expect_finding(late)
    assert found(late) == pytest.approx(0.3553, abs=2e-4), "the cams, against what is asked"


def test_a_lengthened_dwell_draws_its_finding(folder: DesignFolder) -> None:
    """10° more of dwell on both ends of 35 % cut off some 8 % later."""
    longer = dwell("inlet-front-35", "3", "13"), dwell("inlet-back-35", "12.5", "22.5")
    expect_finding(checked(folder, AS_ASKED, *longer), says="notches 35")
    expect_conforms(checked(folder, EQUAL, *longer))


def test_a_cut_off_that_is_not_asked_for_is_told(folder: DesignFolder) -> None:
    check = checked(folder, AS_ASKED, ("gear.toml", 'cut_off = "35 %"\n', ""))
    assert any("notches.35.cut_off" in one for one in check.missing)


def test_the_sheet_lists_what_a_fitter_checks(folder: DesignFolder) -> None:
    """Cut-off hot at 67.955°: 34.99 % of 660 mm is 230.9 mm; the clearance cold 0.6 mm."""
    lines = {step.name: step.value for step in checked(folder, AS_ASKED).steps}
    assert lines["notch 35, front: piston from its end at cut-off"] == "230.9 mm, clearance hot"
    assert lines["notch 35, back: clearance at the tappet of the exhaust valve"] == "0.60 mm, cold"


def test_ends_that_cut_off_apart(folder: DesignFolder) -> None:
    """Front latest at 68.509°, 35.47 %; 32.47 % at the back is 74.36°, 63.9455° more than the dwell: 10.42°."""
    expect_conforms(checked(folder, EQUAL, dwell("inlet-back-35", "12.5", "10.47")))
    expect_finding(checked(folder, EQUAL, dwell("inlet-back-35", "12.5", "10.37")))


def test_ends_of_a_late_cut_off_may_be_further_apart(folder: DesignFolder) -> None:
    """3° more of dwell are 2.6 % more than the 0.4 % of errors: beyond 3 %, within 6 %; 7° are not."""
    expect_conforms(checked(folder, EQUAL, dwell("inlet-back-65", "18", "21")))
    expect_finding(checked(folder, EQUAL, dwell("inlet-back-65", "18", "25")))


def test_ends_of_a_late_cut_off_at_the_limit(folder: DesignFolder) -> None:
    """Front at the earliest −9.5 + 116.5 − 5.5545 = 101.446°, exactly 64.12 %; the back's 70.12 % is at 118.07°.

    At the latest the back shuts at −9.5 + 108 − 3.9909 = 94.509° more than its dwell: 23.56°.
    """
    expect_conforms(checked(folder, EQUAL, dwell("inlet-back-65", "18", "23.4")))
    expect_finding(checked(folder, EQUAL, dwell("inlet-back-65", "18", "23.7")))


@pytest.mark.parametrize(("more", "fails"), [(5, False), (2, True)])
def test_a_cut_off_is_late_above_forty_percent(folder: DesignFolder, more: float, fails: bool) -> None:
    """The notch of 35 % with 5.5° more at its back than drawn: 4.5 % of the stroke between its ends.

    With 5° more at both 39.3 and 43.8 %, 41.6 % in the mean and 40.7 at the earliest; with 2° more 39.0 % in the mean.
    """
    longer = dwell("inlet-front-35", "3", f"{3 + more}"), dwell("inlet-back-35", "12.5", f"{18 + more}")
    (expect_finding if fails else expect_conforms)(checked(folder, EQUAL, *longer))


@pytest.mark.parametrize(("front", "back", "fails"), [(0.38, 0.42, True), (0.381, 0.421, False)])
def test_a_mean_cut_off_of_forty_percent_is_not_late_yet(
    folder: DesignFolder, monkeypatch: pytest.MonkeyPatch, front: float, back: float, fails: bool
) -> None:
    """4 % between the ends: more than 3, less than 6."""
    monkeypatch.setattr(
        GearAtWork,
        "share",
        lambda _, cam, *, opens: front if cam.at.side is End.FRONT else back,  # noqa: ARG005
    )
    (expect_finding if fails else expect_conforms)(checked(folder, EQUAL))


def test_swapped_ends_draw_their_finding(folder: DesignFolder) -> None:
    swapped = dwell("inlet-front-35", "3", "12.5"), dwell("inlet-back-35", "12.5", "3")
    expect_finding(checked(folder, EQUAL, *swapped))


def test_release_at_its_earliest(folder: DesignFolder) -> None:
    """75 % at the front: D = 2230 − 495 = 1735 mm; cos φ = (−165 × 3635 + 330²)/(2 × 1735 × 330) = −0.42867, 115.384°;
    less 3.9909°: a foot of 111.393°."""
    expect_conforms(checked(folder, RELEASE, foot("35", "exhaust_front", "111.5 °")))
    expect_finding(checked(folder, RELEASE, foot("35", "exhaust_front", "111.3 °")))


def test_release_at_its_latest(folder: DesignFolder) -> None:
    """95 % at the front: D = 330 + 1900 − 627 = 1603 mm; cos φ = (−297 × 3503 + 330²)/(2 × 1603 × 330) = −0.88044,
    151.69°; less 5.4545° and 0.2°: a foot of 146.04°."""
    expect_conforms(checked(folder, RELEASE, foot("35", "exhaust_front", "146.0 °")))
    expect_finding(checked(folder, RELEASE, foot("35", "exhaust_front", "146.1 °")))


def test_release_soon_after_cut_off(folder: DesignFolder) -> None:
    """The exhaust opens at 140 + 4.0909 − 0.1, the inlet shuts at 94.509° more than its dwell: 15° at 34.48°."""
    expect_conforms(checked(folder, RELEASE, dwell("inlet-back-65", "18", "34.4")))
    expect_finding(checked(folder, RELEASE, dwell("inlet-back-65", "18", "34.6")))


def test_compression_with_little_left(folder: DesignFolder) -> None:
    """5 % at the back are 28.3042° before dead centre, 331.696°; it shuts 182 − 4.0909 + 0.2 after its
    foot: 153.59°."""
    expect_conforms(checked(folder, COMPRESSION, foot("35", "exhaust_back", "153.5 °")))
    expect_finding(checked(folder, COMPRESSION, foot("35", "exhaust_back", "153.7 °")))


def test_compression_with_much_left(folder: DesignFolder) -> None:
    """30 % at the back: D = 1570 + 198 = 1768 mm; cos θ = (−132 × 3668 + 330²)/(2 × 1768 × 330) = −0.32161, 108.760°
    from the front, 71.240° before dead centre; it shuts 182 − 5.5545 after its foot: 112.31°."""
    expect_conforms(checked(folder, COMPRESSION, foot("35", "exhaust_back", "112.4 °")))
    expect_finding(checked(folder, COMPRESSION, foot("35", "exhaust_back", "112.2 °")))


def test_a_gear_without_a_cam_is_not_assessed(folder: DesignFolder) -> None:
    check = checked(
        folder,
        COMPRESSION,
        ("gear.toml", '[notches.35.inlet_back]\ncam = "cam-inlet-back-35"\n', "[notches.35.inlet_back]\n"),
    )
    expect_not_assessed(check, "notches.35.inlet_back.cam")
