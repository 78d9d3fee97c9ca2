"""envelope.loading-gauge and envelope.motion-clearance by hand.

4.5 m of wheelbase, a point 4 m ahead, a curve of 120 m: (16 − 5.0625)/240 = 45.573 mm of throw. Beyond the axles the
side play is 8/4.5 = 1.77778 times 15 mm = 26.667. The block at 220 °C grows 500 × 12.5e-6 × 200 = 1.25 mm (12.5e-6/K is
the mean of 11.5 at 20 and 13.5 at 420 °C, ± 0.3: 12.8 at most, 1.28 mm). 1287 + 26.667 + 45.573 + 1.28 = 1360.520 mm.
Height 600 − 40 − 30 − 1.28 = 528.7 to 600 + 20 + 1.28 = 621.3 mm.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, found, limit, on_sheet
from speclint_clearances.formulae.room import curve_throw, overhang_of_side_play
from speclint_clearances.formulae.tables import gauge_half_width
from tests.plugins.clearances.bench import write

GAUGE, MOTION = "envelope.loading-gauge", "envelope.motion-clearance"
OUTLINE = """
kind = "gauge-outline"
id = "gauge"
issued_by = "the invented railway, sheet 1"
corners = [
  { height = "200 mm", half_width = "1000 mm" },
  { height = "400 mm", half_width = "1000 mm" },
  { height = "400 mm", half_width = "1361 mm" },
  { height = "3000 mm", half_width = "1361 mm" },
]
"""
DUTY = """
kind = "duty"
id = "duty"
[cases.running]
temperatures = { cylinder-block = "220 °C" }
[cases.drifting]
temperatures = { cylinder-block = "120 °C" }
"""
BLOCK = 'kind = "cylinder-block"\nid = "block"\nmaterial = "known-steel"\nduty = "duty"\n'
ENVELOPE = """
kind = "envelope"
id = "envelope"
around = "block"
gauge = "gauge"
rigid_wheelbase = "4.5 m"
least_curve = "120 m"
side_play = "15 mm"
tyre_wear = "40 mm"
spring_drop = "30 mm"
spring_rise = "20 mm"
[points.corner]
height = "600 mm"
from_centre = "1287 mm"
along = "4 m"
growth_length = "500 mm"
[gaps.rod]
moving = "connecting rod"
size = "20 mm"
side_play = "4 mm"
wear = "2 mm"
growth_length = "700 mm"
[gaps.crosshead]
moving = "crosshead"
size = "60 mm"
side_play = "4 mm"
wear = "3 mm"
growth_length = "600 mm"
[gaps.wheel]
moving = "wheel"
size = "60 mm"
side_play = "4 mm"
wear = "3 mm"
growth_length = "600 mm"
"""
#: What stands out of the block: a cover, a cam box, a pipe and the drain cock of an end; each needs a point.
OUTSIDE = {
    "cover.toml": 'kind = "cylinder-cover"\nid = "cover"\ncloses = "block"\n',
    "box.toml": 'kind = "cam-box"\nid = "box"\nmounted_on = "block"\n',
    "pipe.toml": 'kind = "steam-pipe"\nid = "pipe"\njoined_to = "block"\n',
    "block.toml": BLOCK + "[ends.front]\ndrain_cock = true\n[ends.back]\ndrain_cock = false\n",
}
FILES = {"gauge.toml": OUTLINE, "duty.toml": DUTY, "block.toml": BLOCK, "envelope.toml": ENVELOPE}


def changed(old: str, new: str) -> tuple[str, str, str]:
    return "envelope.toml", old, new


def test_the_width_on_the_curve_by_hand(workshop: DesignFolder) -> None:
    check = write(workshop, FILES).only(GAUGE)
    assert check.outcome == "conforms"
    assert (found(check), limit(check)) == (pytest.approx(1.360520, abs=1e-6), 1.361)
    assert on_sheet(check, "v corner") == pytest.approx(45.573e-3, abs=1e-6)
    assert (on_sheet(check, "h_1"), on_sheet(check, "w_4")) == (0.2, 1.361)
    assert on_sheet(check, "w at 529 mm") == 1.361


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('"1287 mm"', '"1287.5 mm"'),
        ('growth_length = "500 mm"', 'growth_length = "800 mm"'),  # 2.048 for 1.28 mm
        ('growth_length = "500 mm"', ""),  # all of 1287 mm grows: 3.29 mm
        ('side_play = "15 mm"', 'side_play = "16 mm"'),
        ('"120 m"', '"118 m"'),
        ('"4.5 m"', '"4.4 m"'),
        ('height = "600 mm"', 'height = "460 mm"'),  # down to 390 mm, where 1000 mm are allowed
        ('height = "600 mm"', 'height = "3001 mm"'),  # above the outline, of which nothing is known there
        ('height = "600 mm"', 'height = "271 mm"'),  # down to 199.7 mm, below the outline
    ],
)
def test_out_of_gauge_is_a_hold(workshop: DesignFolder, old: str, new: str) -> None:
    check = write(workshop, FILES, changed(old, new)).only(GAUGE)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def _with_axles(apart: str) -> dict[str, str]:
    """The block named by a crank of an engine, which has two driven axles so far apart."""
    axles = {
        f"axle-{name}.toml": f'kind = "driving-axle"\nid = "axle-{name}"\nengine = "engine"\nat = "{at}"\n'
        for name, at in (("leading", apart), ("trailing", "0 mm"))
    }
    return {**FILES, **axles, "engine.toml": 'kind = "engine"\nid = "engine"\ncranks.left.block = "block"\n'}


@pytest.mark.parametrize(("axles", "width"), [("4.5 m", 1.360520), ("6 m", 1.337447), ("6.001 m", 1.337447)])
def test_the_worse_of_wheelbase_stated_and_drawn_counts(
    workshop: DesignFolder, axles: str, width: float
) -> None:
    """Stated 6 m: play 8/6 = 1.3333 times 15 = 20, throw (16 − 9)/240 = 29.167: in all 1337.447 mm.

    Axles 4.5 m apart make it 1360.520; within 2 mm of what is stated they stand for it.
    """
    stated = changed('rigid_wheelbase = "4.5 m"', 'rigid_wheelbase = "6 m"')
    assert found(write(workshop, _with_axles(axles), stated).only(GAUGE)) == pytest.approx(width, abs=1e-6)


def test_a_wheelbase_stated_worse_than_drawn_counts(workshop: DesignFolder) -> None:
    """4.5 m stated for axles 6 m apart: 1360.520 by what is stated, 1337.447 by the axles."""
    assert found(write(workshop, _with_axles("6 m")).only(GAUGE)) == pytest.approx(1.360520, abs=1e-6)


@pytest.mark.parametrize(
    ("play", "outcome"), [("4 mm", "conforms"), ("3.95 mm", "finding"), ("0 mm", "finding")]
)
def test_wheels_have_play_between_the_rails(workshop: DesignFolder, play: str, outcome: str) -> None:
    """Half of 1435 − 1426 mm is 4.5 mm, rails and flanges new: 4 mm are asked."""
    check = write(workshop, FILES, changed('side_play = "15 mm"', f'side_play = "{play}"')).only(GAUGE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("out", "grade"), [("1307 mm", Grade.NONCONFORMITY), ("1307.1 mm", Grade.HOLD)])
def test_play_that_is_left_out_is_counted_at_its_least(
    workshop: DesignFolder, out: str, grade: Grade
) -> None:
    """Said to be 1 mm, counted as 4: 1361 − 1.77778 × 4 − 45.573 − 1.28 = 1307.036 mm; with 1 mm it were 1312.37."""
    changes = [changed('side_play = "15 mm"', 'side_play = "1 mm"'), changed('"1287 mm"', f'"{out}"')]
    check = write(workshop, FILES, *changes).only(GAUGE)
    assert (check.outcome, check.grade) == ("finding", grade)


@pytest.mark.parametrize(("notch", "outcome"), [("1360.6 mm", "conforms"), ("1360.4 mm", "finding")])
def test_an_outline_may_be_narrower_between_both_ends(
    workshop: DesignFolder, notch: str, outcome: str
) -> None:
    """The point takes 1360.52 mm from 528.7 to 621.3 mm above the rail; the notch stands at 560 to 580 mm."""
    corners = "".join(
        f'  {{ height = "{height} mm", half_width = "{width}" }},\n'
        for height, width in ((560, "1361 mm"), (560, notch), (580, notch), (580, "1361 mm"))
    )
    last = '  { height = "3000 mm"'
    gauge = OUTLINE.replace(last, corners + last)
    assert write(workshop, {**FILES, "gauge.toml": gauge}).only(GAUGE).outcome == outcome


def test_a_point_beyond_the_axles_swings_by_more_than_the_side_play(workshop: DesignFolder) -> None:
    """k = 2 × 4/4.5; 1 at the axles and between them."""
    check = write(workshop, FILES).only(GAUGE)
    assert on_sheet(check, "k corner") == pytest.approx(1.777778, abs=1e-6)
    assert on_sheet(check, "g corner") == pytest.approx(1.28e-3)
    between = write(workshop, FILES, changed('along = "4 m"', 'along = "-2.25 m"')).only(GAUGE)
    assert on_sheet(between, "k corner") == 1.0


@pytest.mark.parametrize(("frame", "outcome"), [("787 mm", "conforms"), ("487 mm", "finding")])
def test_a_point_grows_from_the_frame_whatever_length_is_stated(
    workshop: DesignFolder, frame: str, outcome: str
) -> None:
    """1287 − 787 is the stated 500 mm; 1287 − 487 = 800 mm grow 2.048 mm: 1361.288 of 1361."""
    held = changed('around = "block"', f'around = "block"\nframe_from_centre = "{frame}"')
    check = write(workshop, FILES, held).only(GAUGE)
    assert check.outcome == outcome
    assert on_sheet(check, "g corner") == pytest.approx(1.28e-3 if outcome == "conforms" else 2.048e-3)


@pytest.mark.parametrize(("worn", "outcome"), [("1720 mm", "conforms"), ("1710 mm", "finding")])
def test_tyres_wear_as_those_of_the_wheels_that_the_block_drives(
    workshop: DesignFolder, worn: str, outcome: str
) -> None:
    """475 − 40 − 30 − 1.28 = 403.7 mm, where 1361 mm are allowed; 45 mm of wear 398.7 mm, where 1000 mm are."""
    drive = f'[drive]\ndriving_wheel_diameter = "1800 mm"\nleast_wheel_diameter = "{worn}"\n'
    files = {**FILES, "block.toml": BLOCK + drive}
    check = write(workshop, files, changed('height = "600 mm"', 'height = "475 mm"')).only(GAUGE)
    assert check.outcome == outcome


@pytest.mark.parametrize(("wear", "outcome"), [("43.7 mm", "conforms"), ("43.8 mm", "finding")])
def test_tyres_beside_a_part_that_drives_no_wheels_wear_as_stated(
    workshop: DesignFolder, wear: str, outcome: str
) -> None:
    """A cover at 20 °C does not grow: 475 − 43.7 − 30 = 401.3 mm; the outline is 1361 mm wide from 400 mm.

    In the case at 220 °C it grows by 1.28 mm: 475 − 43.7 − 30 − 1.28 = 400.02 mm.
    """
    cover = 'kind = "cylinder-cover"\nid = "cover"\nmaterial = "known-steel"\nduty = "duty"\n'
    files = {**FILES, "cover.toml": cover, "duty.toml": DUTY.replace("cylinder-block", "cylinder-cover")}
    changes = (
        changed('around = "block"', 'around = "cover"'),
        changed('height = "600 mm"', 'height = "475 mm"'),
    )
    check = write(workshop, files, *changes, changed('"40 mm"', f'"{wear}"')).only(GAUGE)
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("wear", "grade"), [("39.01 mm", None), ("38.99 mm", Grade.NONCONFORMITY), ("4 mm", Grade.NONCONFORMITY)]
)
def test_tyres_said_to_wear_less_than_those_of_the_engine_are_told(
    workshop: DesignFolder, wear: str, grade: Grade | None
) -> None:
    """Wheels of 1800 and 1720 mm: 40 mm of radius, less 1 mm of rounding."""
    drive = '[drive]\ndriving_wheel_diameter = "1800 mm"\nleast_wheel_diameter = "1720 mm"\n'
    files = {**FILES, "block.toml": BLOCK + drive}
    check = write(workshop, files, changed('"40 mm"', f'"{wear}"')).only(GAUGE)
    assert (check.outcome, check.grade) == ("conforms" if grade is None else "finding", grade)


@pytest.mark.parametrize(("frame", "grade"), [("731.5 mm", None), ("731.3 mm", Grade.NONCONFORMITY)])
def test_a_point_said_to_grow_over_less_than_from_the_frame_is_told(
    workshop: DesignFolder, frame: str, grade: Grade | None
) -> None:
    """500 mm are stated, 0.9 × (1287 − 731.444) mm. It grows by 555.6 × 2.56e-3 = 1.42 mm: 1360.66 of 1361."""
    held = changed('around = "block"', f'around = "block"\nframe_from_centre = "{frame}"')
    check = write(workshop, FILES, held).only(GAUGE)
    assert (check.outcome, check.grade) == ("conforms" if grade is None else "finding", grade)


def test_a_point_that_states_no_length_is_told_nothing(workshop: DesignFolder) -> None:
    """Held 487 mm out, it counts all of 1100 mm, more than the 613 mm from the frame."""
    held = changed('around = "block"', 'around = "block"\nframe_from_centre = "487 mm"')
    inner = changed('"1287 mm"', '"1100 mm"')
    check = write(workshop, FILES, held, inner, changed('growth_length = "500 mm"', "")).only(GAUGE)
    assert check.outcome == "conforms"
    assert on_sheet(check, "g corner") == pytest.approx(2.816e-3)


def test_a_part_as_cold_as_its_drawing_does_not_grow(workshop: DesignFolder) -> None:
    cold = DUTY.replace("220", "20").replace("120", "20")
    check = write(workshop, {**FILES, "duty.toml": cold}).only(GAUGE)
    assert found(check) == pytest.approx(1.287 + 0.026667 + 0.045573, abs=1e-6)


def test_a_point_between_the_axles_is_thrown_inwards(workshop: DesignFolder) -> None:
    """4.5²/(8 × 120) = 21.094 mm in the middle."""
    check = write(workshop, FILES, changed('"4 m"', '"0 m"')).only(GAUGE)
    assert on_sheet(check, "v corner") == pytest.approx(21.094e-3, abs=1e-6)


@pytest.mark.parametrize(
    "missing",
    ['gauge = "gauge"', 'around = "block"', 'least_curve = "120 m"', 'tyre_wear = "40 mm"', 'along = "4 m"'],
)
def test_the_gauge_needs_all_that_moves_the_point(workshop: DesignFolder, missing: str) -> None:
    check = write(workshop, FILES, changed(missing, "")).only(GAUGE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_an_envelope_or_an_outline_without_points_is_not_assessed(workshop: DesignFolder) -> None:
    bare = ENVELOPE.split("[points")[0]
    for rule in (GAUGE, MOTION):
        assert write(workshop, {**FILES, "envelope.toml": bare}).only(rule).outcome == "not assessed"
    empty = OUTLINE.split("corners")[0]
    assert write(workshop, {**FILES, "gauge.toml": empty}).only(GAUGE).outcome == "not assessed"


def test_the_gap_to_the_rod_by_hand(workshop: DesignFolder) -> None:
    """20 − 4 − 2 − 700 × 12.8e-6 × 200 = 12.208 mm, running."""
    check = write(workshop, FILES).only(MOTION)
    assert (check.outcome, check.case) == ("conforms", "running")
    assert found(check) == pytest.approx(12.208e-3)


@pytest.mark.parametrize(("gap", "outcome"), [("17.8 mm", "conforms"), ("17.7 mm", "finding")])
def test_the_motion_passes_ten_millimetres_clear(workshop: DesignFolder, gap: str, outcome: str) -> None:
    check = write(workshop, FILES, changed('size = "20 mm"', f'size = "{gap}"')).only(MOTION)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(
    "missing", ['wear = "2 mm"', 'growth_length = "700 mm"', 'size = "20 mm"', 'around = "block"']
)
def test_the_motion_needs_all_that_narrows_the_gap(workshop: DesignFolder, missing: str) -> None:
    assert write(workshop, FILES, changed(f"\n{missing}", "")).only(MOTION).outcome == "not assessed"


def test_an_outline_slopes_from_corner_to_corner() -> None:
    """Half way up a side from 1.0 to 1.2 m it is 1.1 m wide."""
    slope = ((0.2, 1.0), (0.6, 1.2))
    read = gauge_half_width(slope, 0.4, "x")
    assert read.nominal == pytest.approx(1.1)
    assert read.what == "half width of the outline at 400 mm"
    with pytest.raises(OutOfRange, match="does not reach"):
        gauge_half_width(slope, 0.61, "x")
    with pytest.raises(OutOfRange, match="lowest first"):
        gauge_half_width(((0.6, 1.2), (0.2, 1.0)), 0.4, "x")
    with pytest.raises(OutOfRange, match="too sharp"):
        curve_throw(4.5, 0.0, 44.9)
    with pytest.raises(OutOfRange, match="wheelbase must be above 0"):
        overhang_of_side_play(0.0, 1.0)
    # ten times the wheelbase, or the overhang, is wide enough: 4.5²/8/45 and (16 − 4)/80 m
    assert curve_throw(4.5, 0.0, 45.0) == pytest.approx(0.05625)
    assert curve_throw(4.0, 4.0, 40.0) == pytest.approx(0.15)


@given(a=st.floats(2.0, 6.0), x=st.floats(0.0, 8.0), R=st.floats(100.0, 2000.0))
def test_a_sharper_curve_throws_further_and_either_end_alike(a: float, x: float, R: float) -> None:
    assert curve_throw(a, x, R) == curve_throw(a, -x, R)
    assert overhang_of_side_play(a, x) == overhang_of_side_play(a, -x) >= 1.0
    assert overhang_of_side_play(a, a / 2 + x) == pytest.approx(1 + 2 * x / a)
    assert curve_throw(a, x, 2 * R) == pytest.approx(curve_throw(a, x, R) / 2)


def with_points(*points: str) -> str:
    """The envelope with points of its own beside the corner, each well inside."""
    rest = 'height = "600 mm"\nfrom_centre = "1100 mm"\nalong = "3 m"\ngrowth_length = "500 mm"\n'
    more = "".join(f"[points.p{n}]\n{point}\n{rest}" for n, point in enumerate(points))
    return ENVELOPE.replace("[gaps.rod]", more + "[gaps.rod]")


POINTS = {
    'of = "cover"': "cover",
    'of = "box"': "box",
    'of = "pipe"': "pipe",
    'cock_of = "front"': "end front",
}


def test_whatever_stands_out_has_a_point(workshop: DesignFolder) -> None:
    files = {**FILES, **OUTSIDE, "envelope.toml": with_points(*POINTS)}
    assert write(workshop, files).only(GAUGE).outcome == "conforms"


@pytest.mark.parametrize("point", POINTS)
def test_a_part_without_a_point_is_a_hold(workshop: DesignFolder, point: str) -> None:
    others = [one for one in POINTS if one != point]
    check = write(workshop, {**FILES, **OUTSIDE, "envelope.toml": with_points(*others)}).only(GAUGE)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert POINTS[point] in check.says


@pytest.mark.parametrize("moving", ["connecting rod", "crosshead", "wheel"])
def test_what_moves_beside_the_block_has_a_gap(workshop: DesignFolder, moving: str) -> None:
    check = write(workshop, FILES, changed(f'moving = "{moving}"', 'moving = "brake gear"')).only(MOTION)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert f"the {moving}" in check.says


TRAIN = {
    "block.toml": BLOCK + '[bores.main]\ndiameter = "500 mm"\n',
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\nin_bore = "main"\n',
    "piston.toml": 'kind = "piston"\nid = "piston"\nruns_in = "liner"\n',
    "rod.toml": 'kind = "piston-rod"\nid = "rod"\ncarries = "piston"\n',
    "crosshead.toml": 'kind = "crosshead"\nid = "crosshead"\non_rod = "rod"\n',
}


@pytest.mark.parametrize(
    ("gap", "outcome"), [('to = "crosshead"', "conforms"), ('moving = "crosshead"', "finding")]
)
def test_each_crosshead_that_is_drawn_has_a_gap(workshop: DesignFolder, gap: str, outcome: str) -> None:
    check = write(workshop, {**FILES, **TRAIN}, changed('moving = "crosshead"', gap)).only(MOTION)
    assert check.outcome == outcome


@pytest.mark.parametrize(("drawn", "outcome"), [("17.8 mm", "conforms"), ("17.7 mm", "finding")])
def test_a_stated_gap_eases_nothing_of_that_by_its_chain(
    workshop: DesignFolder, drawn: str, outcome: str
) -> None:
    """20 mm are stated. 17.8 − 4 − 2 − 700 × 12.8e-6 × 200 = 10.008 mm; the limit is 10 mm."""
    chain = f'kind = "dimension-chain"\nid = "chain"\n[chain.all]\nsize = "{drawn}"\ndirection = "widens"\n'
    named = changed('moving = "connecting rod"', 'moving = "connecting rod"\nchain = "chain"')
    check = write(workshop, {**FILES, "chain.toml": chain}, named).only(MOTION)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize("ledge", [((0.4, 1.3), (0.4, 1.0)), ((0.4, 1.0), (0.4, 1.3))])
def test_an_outline_that_ends_in_a_ledge_is_as_narrow_as_the_ledge(
    ledge: tuple[tuple[float, float], tuple[float, float]],
) -> None:
    """At its top and at its bottom: the lesser of the two half widths, 1.0 m."""
    assert gauge_half_width(((0.2, ledge[0][1]), *ledge), 0.4, "x").nominal == 1.0
    assert gauge_half_width((*ledge, (3.0, ledge[1][1])), 0.4, "x").nominal == 1.0


@pytest.mark.parametrize(("issued_by", "work"), [("sheet 1", "sheet 1"), ("", "the railway's gauge")])
def test_a_half_width_names_who_issued_the_outline(issued_by: str, work: str) -> None:
    read = gauge_half_width(((0.2, 1.0), (3.0, 1.0)), 0.4, issued_by)
    assert work in str(read.source)


@pytest.mark.parametrize(("height", "outcome"), [("271.3 mm", "conforms"), ("271.2 mm", "finding")])
def test_a_point_hangs_no_lower_than_the_outline_begins(
    workshop: DesignFolder, height: str, outcome: str
) -> None:
    """271.28 − 40 − 30 − 1.28 = 200 mm; 900 + 26.667 + 45.573 + 1.28 = 973.5 mm of the 1000 mm there."""
    low = changed('height = "600 mm"', f'height = "{height}"'), changed('"1287 mm"', '"900 mm"')
    check = write(workshop, FILES, *low).only(GAUGE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)
    assert ("hangs down to" in check.actual) == (outcome == "finding")


@pytest.mark.parametrize("key", ["driving_wheel_diameter", "least_wheel_diameter"])
def test_of_one_wheel_alone_no_wear_is_known(workshop: DesignFolder, key: str) -> None:
    """475 − 40 − 30 − 1.28 = 403.7 mm, where 1361 mm are allowed, as stated."""
    files = {**FILES, "block.toml": BLOCK + f'[drive]\n{key} = "1700 mm"\n'}
    check = write(workshop, files, changed('height = "600 mm"', 'height = "475 mm"')).only(GAUGE)
    assert check.outcome == "conforms"


def test_what_is_complete_is_said_so(workshop: DesignFolder) -> None:
    """Both words stand among what was judged, though a number governs."""
    folder = write(workshop, FILES)
    for rule, says in (
        (GAUGE, "every part that stands out has a point"),
        (MOTION, "what moves beside the block has a gap"),
    ):
        judged = folder.only(rule).judgement
        assert judged is not None
        assert says in [one.says for one in judged.every]


@pytest.mark.parametrize(("around", "outcome"), [("block", "finding"), ("cover", "conforms")])
def test_only_a_block_has_the_motion_beside_it(workshop: DesignFolder, around: str, outcome: str) -> None:
    """Of the three gaps one is left, which a block is not content with."""
    rest = ENVELOPE.split("[gaps.crosshead]")[0].replace('around = "block"', f'around = "{around}"')
    cover = 'kind = "cylinder-cover"\nid = "cover"\nmaterial = "known-steel"\nduty = "duty"\n'
    duty = DUTY.replace("cylinder-block", "cylinder-cover") if around == "cover" else DUTY
    files = {**FILES, "cover.toml": cover, "duty.toml": duty, "envelope.toml": rest}
    check = write(workshop, files).only(MOTION)
    assert (check.outcome, "the crosshead, the wheel" in check.says) == (outcome, outcome == "finding")


@pytest.mark.parametrize(
    ("gap", "outcome"), [('to = "crosshead"', "conforms"), ('moving = "brake gear"', "finding")]
)
def test_a_crosshead_that_is_no_part_of_the_train_has_the_gap_of_the_word(
    workshop: DesignFolder, gap: str, outcome: str
) -> None:
    """Of no crosshead is known that it belongs to the block: a gap to any will do, and none will not."""
    files = {**FILES, "crosshead.toml": 'kind = "crosshead"\nid = "crosshead"\n'}
    check = write(workshop, files, changed('moving = "crosshead"', gap)).only(MOTION)
    assert (check.outcome, "no gap to the crosshead" in check.says) == (outcome, outcome == "finding")


def test_a_crosshead_that_is_drawn_is_told_once(workshop: DesignFolder) -> None:
    """By its id, and not by the word beside it."""
    check = write(
        workshop, {**FILES, **TRAIN}, changed('moving = "crosshead"', 'moving = "brake gear"')
    ).only(MOTION)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "no gap to crosshead" in check.says
    assert "the crosshead" not in check.says
