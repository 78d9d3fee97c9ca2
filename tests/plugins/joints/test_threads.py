"""Threads of stud, hole and nut, and how they are rolled."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.threads import thread
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.joints.bench import bench
from tests.plugins.joints.test_frames import fastened

ROLLING = "joint.thread-rolling"
_STUD = ('thread = "M24"\nthread_made', 'thread = "{}"\nthread_made')
_HOLE = ('thread = "M24"\nengagement = "36 mm"', 'thread = "{}"\nengagement = "36 mm"')
_NUT = ('thread = "M24"\nmaterial', 'thread = "{}"\nmaterial')


def _threads(workshop: DesignFolder, stud: str, hole: str, nut: str) -> DesignFolder:
    pairs = ((_STUD, stud), (_HOLE, hole), (_NUT, nut))
    return bench(workshop, *(("studs", old, new.format(name)) for (old, new), name in pairs))


@pytest.mark.parametrize(
    ("stud", "hole", "nut", "outcome", "says"),
    [
        ("M24", "M24", "M24", "conforms", ""),
        ("M24x2", "M24x2", "M24x2", "conforms", ""),
        ("7/8 BSW", "7/8 BSW", "7/8 BSW", "conforms", ""),
        ("M24", "M24x3", "M24", "conforms", ""),  # coarse pitch written out
        ("M24x2", "M24", "M24x2", "finding", "pitch 2 mm against 3 mm"),
        ("M24", "M24", "M22", "finding", "24 mm against 22 mm in diameter"),
        # 9 to the inch both, 22.225 mm both: only the angle differs
        ("7/8 BSW", "7/8 BSW", "7/8-9 UNC", "finding", "flanks at 55° against flanks at 60°"),
        ("7/8 BSF", "7/8 BSW", "7/8 BSF", "finding", "pitch 2.309 mm against 2.822 mm"),  # 25.4/11, 25.4/9
        ("M25", "M25", "M25", "finding", "not a standard thread"),
    ],
)
def test_what_runs_together(
    workshop: DesignFolder, stud: str, hole: str, nut: str, outcome: str, says: str
) -> None:
    check = _threads(workshop, stud, hole, nut).only("joint.same-thread", "studs")
    assert check.outcome == outcome, check.says
    assert says in check.says


@pytest.mark.parametrize(("nut", "outcome"), [("M24", "conforms"), ("M27", "finding")])
def test_the_nut_of_a_frame_bolt_runs_on_it(workshop: DesignFolder, nut: str, outcome: str) -> None:
    fastened(workshop, ('[nut]\nthread = "M24"', f'[nut]\nthread = "{nut}"'))
    assert workshop.only("joint.same-thread", "fastening").outcome == outcome


def test_the_stress_area_is_that_of_the_standard(workshop: DesignFolder) -> None:
    """ISO 898-1 (from memory): 353 mm² for M24; by π/4 (24 - 0.938194 × 3)² = 352.50."""
    check = bench(workshop).only("joint.same-thread", "studs")
    assert on_sheet(check, "A_s") * 1e6 == pytest.approx(352.50, abs=0.01)


def test_a_bolt_has_no_tapped_hole_to_agree_with(workshop: DesignFolder) -> None:
    bench(
        workshop,
        ("studs", 'fastener = "stud"', 'fastener = "bolt"'),
        ("studs", '[tapped]\nthread = "M24"', '[tapped]\nthread = "M20"'),
    )
    assert workshop.only("joint.same-thread", "studs").outcome == "conforms"


@pytest.mark.parametrize("key", ['thread = "M24"\nthread_made', 'thread = "M24"\nmaterial'])
def test_a_thread_not_stated_is_not_assessed(workshop: DesignFolder, key: str) -> None:
    bench(workshop, ("studs", key, key.split("\n")[1]))
    assert workshop.only("joint.same-thread", "studs").outcome == "not assessed"


@given(st.sampled_from(("M12", "M16", "M20", "M24", "M30", "3/4-10 UNC", "7/8 BSF", "1 BSW", "M20x1.5")))
def test_the_stress_area_lies_between_core_and_nominal_circle(name: str) -> None:
    one = thread(name)
    assert one.root_diameter**2 < one.stress_area * 4 / 3.141592653589793 < one.nominal**2


@pytest.mark.parametrize(
    ("made", "outcome"),
    [
        ("rolled after treatment", "finding"),
        ("rolled before treatment", "not applicable"),
        ("cut", "not applicable"),
    ],
)
def test_a_thread_rolled_last_names_its_procedure(workshop: DesignFolder, made: str, outcome: str) -> None:
    """The word alone raises the endurance limit by up to 2 − F_m/F_02, VDI 2230 eq. R10/2."""
    line = f'thread_made = "{made}"\n'
    check = bench(workshop, ("studs", 'thread_made = "cut"\n', line)).only(ROLLING, "studs")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    workshop.replace("studs.toml", line, f'{line}rolled_by = "procedure 44"\n')
    wanted = "conforms" if outcome == "finding" else outcome
    assert workshop.only(ROLLING, "studs").outcome == wanted


@pytest.mark.parametrize("by", ["as usual", "maker's procedure", "see drawing"])
def test_words_without_a_number_name_no_procedure(workshop: DesignFolder, by: str) -> None:
    line = f'thread_made = "rolled after treatment"\nrolled_by = "{by}"\n'
    check = bench(workshop, ("studs", 'thread_made = "cut"\n', line)).only(ROLLING, "studs")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert check.says.startswith(f'"{by}" gives no number of a procedure of rolling')


def test_the_bolts_of_a_pad_name_theirs_too(workshop: DesignFolder) -> None:
    fastened(workshop, ("count = 30", 'thread_made = "rolled after treatment"\ncount = 30'))
    assert workshop.only(ROLLING, "fastening").outcome == "finding"
    workshop.replace("fastening.toml", "count = 30", 'rolled_by = "procedure 44"\ncount = 30')
    assert workshop.only(ROLLING, "fastening").outcome == "conforms"


def test_a_thread_of_which_nothing_is_said_is_not_judged(workshop: DesignFolder) -> None:
    bench(workshop, ("studs", 'thread_made = "cut"\n', ""))
    assert workshop.only(ROLLING, "studs").outcome == "not applicable"
