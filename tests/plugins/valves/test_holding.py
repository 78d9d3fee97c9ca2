"""Key of a cam, nut of a valve, stem of a tappet, by hand.

The train of these tests in running: springs 1100 N, steam 6002 N on 156 and 140 mm, the widest and the narrowest of
both contacts, inertia 7.1 kg × 90.2 m/s² = 640 N as the clearance is taken up, friction and weight 68.8 N: 7811 N at
the valve and at the tappet. Its greatest torque is that of test_shafts.
"""

from __future__ import annotations

import math
import re
from pathlib import Path

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, changed, expect_not_assessed, on_sheet, without_key
from speclint_valves.formulae.holding import moment_at_guide, pressure_of_key, shear_of_key
from speclint_valves.formulae.set_screws import holding_power
from tests.own_limits import own_limit
from tests.plugins.known_metals import WITH_METALS
from tests.plugins.valves.gear import train_files
from tests.plugins.valves.test_cam_shape import roller
from tests.plugins.valves.test_shafts import BLOW, RUNNING, STIFF
from tests.plugins.valves.test_tracks import track

CAM, VALVE, TAPPET = "cam.stays-on-its-shaft", "valve.stays-on-its-spindle", "tappet.bears-its-load"
#: As the clearance of 0.4 mm is taken up on the harmonic law of 20 mm in 70°: cos u = 1 − 0.399/10.
_ROOT = (math.pi / math.radians(70)) ** 2
HOLDS = math.pi / 4 * ((0.156**2 - 0.140**2) * 1.485e6 + 0.020**2 * 1.52e6)
F = 1100 + HOLDS + 7.1 * 0.010 * _ROOT * (1 - 0.0399) * (12 * math.pi) ** 2 + 10 + 6 * 9.80665
#: Greatest reach of the cam on its foot, mm; and where the valve is 0.4 mm open, to which steam holds it: 1 − 0.799/10.
REACH = 10 * math.pi / math.radians(70)
CRACKED = REACH * math.sqrt(1 - 0.9201**2)
F_CRACKED = 1100 + 16 + HOLDS + 7.1 * 0.010 * _ROOT * 0.9201 * (12 * math.pi) ** 2 + 10 + 6 * 9.80665


LOCKED = 'locked_by = "tab washer"\n'


def keyed(length: float, depth: str, along: str = "clamped set", lock: str = LOCKED) -> dict[str, str]:
    made = train_files()
    made["cam.toml"] += (
        f'bore = "60 mm"\nkeyway_width = "6 mm"\nkeyway_depth = "{depth}"\nkey_length = "{length:.3f} mm"\n'
        f'held_along = "{along}"\n{lock}'
    )
    return made


@pytest.mark.parametrize("spindles", [0, 2])
def test_a_valve_is_held_on_one_spindle(workshop: DesignFolder, spindles: int) -> None:
    made = train_files()
    moving = made["spindle.toml"]
    if spindles == 0:
        made["spindle.toml"] = without_key(moving, "moves")
    else:
        made["spare.toml"] = moving.replace('id = "spindle"', 'id = "spare"')
    expect_not_assessed(
        workshop.write(made).only(VALVE), f"{spindles} spindles of valve are stated; one is needed"
    )


@pytest.mark.parametrize(
    ("depth", "times", "outcome"),
    [
        ("10 mm", 1.005, "conforms"),
        ("10 mm", 0.995, "finding"),
        ("3 mm", 1.21, "conforms"),
        ("3 mm", 1.19, "finding"),
    ],
)
def test_the_key_of_a_cam(workshop: DesignFolder, depth: str, times: float, outcome: str) -> None:
    """2 T/(60 × 6 × L) is 60 MPa at 5.27 mm; 3 mm deep it bears with 100 MPa at 1.2 times that."""
    length = 2 * RUNNING * 1e3 / (60 * 6 * 60)
    check = workshop.write(keyed(length * times, depth)).only(CAM)
    assert check.outcome == outcome
    assert on_sheet(check, "T") == pytest.approx(RUNNING, rel=2e-3)


@pytest.mark.parametrize(("times", "outcome"), [(1.005, "conforms"), (0.995, "finding")])
def test_the_key_takes_the_blow(workshop: DesignFolder, times: float, outcome: str) -> None:
    """2 T/(60 × 6 × L) is 60 MPa, of the torque as a train of 90 kN/mm is struck."""
    made = keyed(2 * BLOW * 1e3 / (60 * 6 * 60) * times, "10 mm")
    made["spindle.toml"] = changed(made["spindle.toml"], STIFF, of="spindle")
    check = workshop.write(made).only(CAM)
    assert check.outcome == outcome
    assert on_sheet(check, "T") == pytest.approx(BLOW, rel=1e-4)


@pytest.mark.parametrize(
    ("depth", "height", "times", "outcome"),
    [
        ("3 mm", "13 mm", 1.21, "conforms"),
        ("3 mm", "13 mm", 1.19, "finding"),
        ("20 mm", "30 mm", 1.005, "conforms"),
        ("", "13 mm", 1.005, "conforms"),
        ("20 mm", "23 mm", 1.21, "conforms"),
        ("20 mm", "23 mm", 1.19, "finding"),
        ("3 mm", "", 1.21, "conforms"),
        ("3 mm", "", 1.19, "finding"),
    ],
)
def test_the_key_bears_in_the_shallower_of_two_keyways(
    workshop: DesignFolder, depth: str, height: str, times: float, outcome: str
) -> None:
    """A keyway of 10 mm in the cam and of 3 mm in its shaft: 100 MPa at 1.2 times the length of 60 MPa in shear.

    The same where 3 mm of the key stand out of the shaft: 23 mm high and 20 mm deep, or 6 mm, as a width of 6 mm has.
    """
    made = keyed(2 * RUNNING * 1e3 / (60 * 6 * 60) * times, "10 mm")
    made["cam.toml"] += 'turns_on = "shaft"\n' + (f'key_height = "{height}"\n' if height else "")
    made["shaft.toml"] = 'kind = "shaft"\nid = "shaft"\n' + (f'keyway_depth = "{depth}"\n' if depth else "")
    assert workshop.write(made).only(CAM).outcome == outcome


@pytest.mark.parametrize(("times", "outcome"), [(1.005, "conforms"), (0.995, "finding")])
def test_a_key_turns_no_cam_beside_it(workshop: DesignFolder, times: float, outcome: str) -> None:
    """A key of 40 mm in a hub of 5.27 mm, more or less: 60 MPa of shear at the length of the hub."""
    made = keyed(40, "10 mm")
    made["cam.toml"] += f'hub_length = "{2 * RUNNING * 1e3 / (60 * 6 * 60) * times:.3f} mm"\n'
    assert workshop.write(made).only(CAM).outcome == outcome


@pytest.mark.parametrize(
    ("along", "outcome"), [("nothing", "finding"), ("forged on", "finding"), ("fork of the gear", "finding")]
)
def test_a_cam_is_held_along_its_shaft(workshop: DesignFolder, along: str, outcome: str) -> None:
    """A fork of which nothing but the word is stated holds no cam."""
    assert workshop.write(keyed(40, "3 mm", along)).only(CAM).outcome == outcome


def forked(fork: str, more: str = "") -> dict[str, str]:
    """The cam in a fork of a valve gear."""
    made = keyed(40, "3 mm", "fork of the gear", "")
    made["fork.toml"] = f'kind = "valve-gear"\nid = "forks"\n{more}[forks.inlet]\n{fork}'
    return made


FORK = 'moves = "cam"\ngroove = "20.2 mm"\nwidth = "19.5 mm"\nheld_by = "detent"\n'


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ("19.5 mm", "19.21 mm", "conforms"),
        ("19.5 mm", "19.19 mm", "finding"),
        ("19.5 mm", "19.25 mm +0/-0.05", "conforms"),
        ("19.5 mm", "19.25 mm +0/-0.06", "finding"),
        ("detent", "nothing", "finding"),
        ('moves = "cam"\n', "", "finding"),
        ('moves = "cam"', 'moves = "other"', "finding"),
        ('held_by = "detent"\n', "", "not assessed"),
        ('groove = "20.2 mm"\n', "", "not assessed"),
    ],
)
def test_a_fork_that_is_drawn_holds_a_cam(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    """20.2 mm of groove less 19.2 mm are 1 mm of play."""
    made = forked(changed(FORK, (old, new)))
    made["other.toml"] = 'kind = "cam"\nid = "other"\n'
    assert workshop.write(made).only(CAM, "cam").outcome == outcome


@pytest.mark.parametrize("along", ["clamped set", "shoulder and nut"])
@pytest.mark.parametrize("lock", ["nothing", "second screw on each"])
def test_what_holds_a_cam_along_is_locked(workshop: DesignFolder, along: str, lock: str) -> None:
    assert workshop.write(keyed(40, "3 mm", along)).only(CAM).outcome == "conforms"
    loose = keyed(40, "3 mm", along, f'locked_by = "{lock}"\n')
    assert workshop.write(loose).only(CAM).outcome == "finding"
    expect_not_assessed(workshop.write(keyed(40, "3 mm", along, "")).only(CAM), "locked_by")


def screwed(thread: str = "M8", count: int = 2, lock: str = "locking wire") -> dict[str, str]:
    """The lines after the key: set screws of that thread."""
    screws = f'locked_by = "{lock}"\nset_screws = {{ count = {count}, thread = "{thread}" }}\n'
    return keyed(40, "3 mm", "set screw", screws)


@pytest.mark.parametrize(("factor", "outcome"), [("8.5", "conforms"), ("8.6", "finding")])
def test_a_set_screw_holds_the_friction_of_its_tappet(
    workshop: DesignFolder, factor: str, outcome: str
) -> None:
    """0.1 × 7811 N. M8 holds as 5/16 in does, 1500 lbf = 6672.3 N: 8.54 times as much, and 8 wanted."""
    settings = WITH_METALS + f'[limits."{CAM}"]\ndynamic = "{factor}"\n'
    check = workshop.write({**screwed(), "speclint.toml": settings}).only(CAM)
    assert check.outcome == outcome
    assert on_sheet(check, "P") == pytest.approx(1500 * 4.4482216, rel=1e-7)
    assert on_sheet(check, "F_a") == pytest.approx(0.1 * F, rel=2e-3)


@pytest.mark.parametrize(
    ("thread", "count", "lock", "outcome"),
    [
        ("M8", 2, "locking wire", "conforms"),
        ("M8", 1, "locking wire", "finding"),
        ("M8", 2, "second screw on each", "conforms"),
        ("M8", 2, "lock nut", "conforms"),
        ("M8", 2, "locking plate", "conforms"),
        ("M8", 2, "split pin", "finding"),
        ("M8", 2, "tab washer", "finding"),
        ("M8", 2, "nothing", "finding"),
        ("1/4-20 UNC", 2, "second screw on each", "finding"),
        ("M6", 2, "locking wire", "not assessed"),
    ],
)
def test_two_locked_set_screws(
    workshop: DesignFolder, thread: str, count: int, lock: str, outcome: str
) -> None:
    """1/4 in holds 1000 lbf, 556 N of them at a factor of 8, for 781 N; M6 is smaller than any that is listed."""
    assert workshop.write(screwed(thread, count, lock)).only(CAM).outcome == outcome


@pytest.mark.parametrize("key", ["count", "thread"])
def test_set_screws_are_stated(workshop: DesignFolder, key: str) -> None:
    made = screwed()
    kept = 'thread = "M8"' if key == "count" else "count = 2"
    made["cam.toml"] = made["cam.toml"].replace('count = 2, thread = "M8"', kept)
    expect_not_assessed(workshop.write(made).only(CAM), f"set_screws.{key} is not stated")


def test_a_set_screw_holds_no_less_than_the_size_before() -> None:
    """Of 5/16, 3/8, 7/16, 1/2, 5/8, 3/4, 7/8 and 1 in: 7.94, 9.53, 11.11, 12.7, 15.88, 19.05, 22.23 and 25.4 mm."""
    listed = {
        "M8": 1500,
        "M10": 2000,
        "M12": 2500,
        "M14": 3000,
        "M16": 4000,
        "M20": 5000,
        "M24": 6000,
        "M30": 7000,
    }
    found = {thread: holding_power(thread).nominal / 4.4482216 for thread in listed}
    assert found == pytest.approx(listed, rel=1e-7)


def test_a_cam_that_says_nothing_is_not_assessed(workshop: DesignFolder) -> None:
    expect_not_assessed(workshop.write(train_files()).only(CAM), "held_along")


def forged(metal: str = "known-steel", cam: str = "", shaft: str = "") -> dict[str, str]:
    """A cam that is said to be forged on a shaft of known steel."""
    made = train_files()
    plain = re.sub(r'\nmaterial = ".*"', "", made["cam.toml"])
    made["cam.toml"] = f'{plain}held_along = "forged on"\nturns_on = "shaft"\nmaterial = "{metal}"\n{cam}'
    made["shaft.toml"] = f'kind = "shaft"\nid = "shaft"\nmaterial = "known-steel"\n{shaft}'
    return made


@pytest.mark.parametrize(
    ("made", "says"),
    [
        (forged(), None),
        (forged("known-forging"), "it is of known-forging, shaft of known-steel"),
        (forged(cam='keyway_width = "6 mm"\n'), "and has a keyway"),
        (forged(cam='bore = "60 mm"\n'), "and has a bore for it"),
        (forged(cam='drawing = "V-1"\n', shaft='drawing = "V-2"\n'), "on drawing V-1, shaft on V-2"),
        (forged(cam='drawing = "V-1"\n', shaft='drawing = "v 1"\n'), None),
        (forged(cam='drawing = "V-1"\n'), None),
    ],
)
def test_a_cam_that_is_forged_on_is_of_one_piece_with_its_shaft(
    workshop: DesignFolder, made: dict[str, str], says: str | None
) -> None:
    check = workshop.write(made).only(CAM)
    assert check.outcome == ("finding" if says else "conforms")
    assert (says or "the cam is said to be of one piece with its shaft") in check.says


def test_a_cam_forged_on_names_its_shaft(workshop: DesignFolder) -> None:
    made = train_files()
    made["cam.toml"] += 'held_along = "forged on"\n'
    expect_not_assessed(workshop.write(made).only(CAM), "turns_on")


@pytest.mark.parametrize(("bore", "outcome"), [("16 mm", "conforms"), ("15.9 mm", "finding")])
def test_the_thread_of_a_valve_passes_its_bore(workshop: DesignFolder, bore: str, outcome: str) -> None:
    assert workshop.write(nutted("20 kN", bore=bore)).only(VALVE).outcome == outcome


def nutted(preload: str, lock: str = "split pin", bore: str = "16 mm") -> dict[str, str]:
    made = train_files(valve=(('lift = "20 mm"', f'lift = "20 mm"\nspindle_bore = "{bore}"'),))
    held = f'by = "nut"\nthread = "M16"\npreload = "{preload}"\nlocked_by = "{lock}"\n'
    made["spindle.toml"] += f"[valve_held]\n{held}"
    return made


@pytest.mark.parametrize(
    ("preload", "lock", "outcome"),
    [
        ("15.66 kN", "split pin", "conforms"),
        ("15.58 kN", "split pin", "finding"),
        ("26.3 kN", "split pin", "conforms"),
        ("26.4 kN", "split pin", "finding"),
        ("20 kN", "nothing", "finding"),
        ("15.66..27 kN", "split pin", "finding"),
    ],
)
def test_the_nut_of_a_valve(workshop: DesignFolder, preload: str, lock: str, outcome: str) -> None:
    """2 × 7811 N = 15.62 kN; 0.7 × 240 MPa × 156.7 mm² = 26.32 kN."""
    assert pytest.approx(7811, abs=5) == F
    check = workshop.write(nutted(preload, lock)).only(VALVE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_a_valve_of_one_piece_and_one_of_which_nothing_is_said(workshop: DesignFolder) -> None:
    made = train_files()
    made["spindle.toml"] += '[valve_held]\nby = "forged in one"\n'
    assert workshop.write(made).only(VALVE).outcome == "conforms"
    expect_not_assessed(workshop.write(train_files()).only(VALVE), "valve_held")


@pytest.mark.parametrize(("metal", "outcome"), [("", "conforms"), ("known-iron", "finding")])
def test_a_valve_of_one_piece_is_of_the_metal_of_its_spindle(
    workshop: DesignFolder, metal: str, outcome: str
) -> None:
    made = train_files(spindle=(('material = "known-steel"', f'material = "{metal}"'),) if metal else ())
    made["spindle.toml"] += '[valve_held]\nby = "forged in one"\n'
    check = workshop.write(made).only(VALVE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if metal else None)
    assert not metal or f"it is of known-steel, spindle of {metal}" in check.says


@pytest.mark.parametrize(("drawing", "outcome"), [("V-7", "conforms"), ("V-8", "finding")])
def test_a_valve_of_one_piece_is_on_the_drawing_of_its_spindle(
    workshop: DesignFolder, drawing: str, outcome: str
) -> None:
    made = train_files()
    made["spindle.toml"] += 'drawing = "V-7"\n[valve_held]\nby = "forged in one"\n'
    made["valve.toml"] = f'drawing = "{drawing}"\n{made["valve.toml"]}'
    assert workshop.write(made).only(VALVE).outcome == outcome


def footed(stem: str, guide: str, lock: str = "lock nut", follower: str = "") -> dict[str, str]:
    sizes = f'stem_diameter = "{stem}"\nguide_length = "{guide}"\noverhang = "20 mm"\nlocked_by = "{lock}"\n'
    change = (('follower = "flat foot"', follower),) if follower else ()
    made = train_files(tappet=change)
    made["tappet.toml"] += sizes
    return made


@pytest.mark.parametrize(
    ("stem", "guide", "lock", "outcome"),
    [
        ("24.8 mm", "100 mm", "lock nut", "conforms"),
        ("24.5 mm", "100 mm", "lock nut", "finding"),
        ("36 mm", "44.4 mm", "lock nut", "conforms"),
        ("36 mm", "44.0 mm", "lock nut", "finding"),
        ("36 mm", "100 mm", "nothing", "finding"),
    ],
)
def test_a_tappet_on_its_foot(workshop: DesignFolder, stem: str, guide: str, lock: str, outcome: str) -> None:
    """Worst as steam lets go, 0.4 mm open: 780 N of rubbing at 20 mm and 7800 N at 10.07 mm are 94.15 N·m.

    80 MPa in 24.69 mm: 16.29 + 63.71. At the greatest reach, 25.71 mm, no steam is left: 1553 N, 43 N·m.
    36 mm in a guide of 44.2 mm: 0.490 + 6 × (94.15 + 17.24) N·m/(36 × 44.2²) = 9.99 MPa.
    """
    check = workshop.write(footed(stem, guide, lock)).only(TAPPET)
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)
    if lock != "nothing":
        assert on_sheet(check, "M_ts") == pytest.approx(F_CRACKED * (0.1 * 0.020 + CRACKED / 1e3), rel=2e-3)


def test_a_roller_pushes_its_tappet_aside(workshop: DesignFolder) -> None:
    """Q = F tan α of one angle, tan α = s′/(base + 30 mm + s), and no reach beside the line."""
    check = workshop.write(footed("36 mm", "100 mm", follower=roller("30 mm"))).only(TAPPET)
    assert check.outcome == "conforms"
    base = on_sheet(check, "R_b") * 1e3
    aside = F_CRACKED * CRACKED / (base + 30 + 0.799)
    assert on_sheet(check, "Q_ts") == pytest.approx(aside, rel=2e-3)
    assert on_sheet(check, "M_ts") == pytest.approx(aside * 0.020, rel=2e-3)
    at_rest = 1100 + HOLDS + 10 + 6 * 9.80665  # as it is struck the train is not yet accelerated
    struck = at_rest * REACH * math.sqrt(1 - 0.9601**2) / (base + 30 + 0.399)
    assert on_sheet(check, "Q_tb") == pytest.approx(struck, rel=2e-3)


@given(T=st.floats(1, 500), L=st.floats(0.005, 0.1))
def test_a_longer_key_bears_less(T: float, L: float) -> None:
    at = {"T": T, "d": 0.06}
    assert shear_of_key(b=0.018, L=2 * L, **at) == pytest.approx(shear_of_key(b=0.018, L=L, **at) / 2)
    assert pressure_of_key(h=0.009, L=L, **at) == pytest.approx(2 * shear_of_key(b=0.018, L=L, **at))
    assert moment_at_guide(Q=T, a=L, F=0.0, b=1.0) == pytest.approx(T * L)


@pytest.mark.parametrize(("lock", "outcome"), [("lock nut", "conforms"), ("nothing", "finding")])
def test_screw_and_pin_of_a_tappet_that_rocks_are_locked_too(
    workshop: DesignFolder, lock: str, outcome: str
) -> None:
    """It has no guide, of which nothing is asked; its roller's pin falls out like any other."""
    made = footed("36 mm", "100 mm", lock, 'follower = "roller"\nfollower_radius = "20 mm"')
    made["tappet.toml"] += (
        'rocks = { arm = "80 mm", from_cam = "120 mm", track_runs = "towards the pivot" }\n'
    )
    for key in ("stem_diameter", "guide_length", "overhang"):
        made["tappet.toml"] = without_key(made["tappet.toml"], key)
    assert workshop.write(made).only(TAPPET).outcome == outcome


@pytest.mark.parametrize("left", ["stem_diameter", "guide_length", "overhang"])
def test_a_tappet_that_rocks_has_no_stem_in_a_guide(workshop: DesignFolder, left: str) -> None:
    """An arm and a guide: with the word of the arm alone, nothing of what it pushes aside would be judged."""
    made = footed("36 mm", "100 mm", "lock nut", 'follower = "roller"\nfollower_radius = "20 mm"')
    made["tappet.toml"] += (
        'rocks = { arm = "80 mm", from_cam = "120 mm", track_runs = "towards the pivot" }\n'
    )
    for key in {"stem_diameter", "guide_length", "overhang"} - {left}:
        made["tappet.toml"] = without_key(made["tappet.toml"], key)
    check = workshop.write(made).only(TAPPET)
    assert check.outcome == "finding"
    assert "rocks on an arm" in check.says


def test_a_roller_is_pushed_aside_most_where_load_and_slant_together_are_greatest(
    workshop: DesignFolder,
) -> None:
    """Once the valve is open: F tan α at 20 000 places of the flank, with the springs, the inertia and the weights."""
    check = workshop.write(footed("36 mm", "100 mm", follower=roller("30 mm"))).only(TAPPET)
    base = on_sheet(check, "R_b") * 1e3

    def aside(u: float) -> float:
        s = 10 * (1 - math.cos(math.pi * u))
        F = 1100 + 40 * (s - 0.4) + 7.1 * 0.010 * _ROOT * math.cos(math.pi * u) * (12 * math.pi) ** 2
        return (F + 10 + 6 * 9.80665) * REACH * math.sin(math.pi * u) / (base + 30 + s)

    most = max(aside(i / 20_000) for i in range(2000, 20_000))
    assert on_sheet(check, "Q_to") == pytest.approx(most, rel=1e-4)


@pytest.mark.parametrize("kind", ["crowned foot", "flat foot"])
def test_a_foot_is_rubbed_and_touched_beside_its_line(workshop: DesignFolder, kind: str) -> None:
    """A crown of 300 mm is touched 300 sin α beside it, tan α = s′/(base + 300 + s); a flat foot at s′."""
    follower = f'follower = "{kind}"' + ('\nfollower_radius = "300 mm"' if kind == "crowned foot" else "")
    check = workshop.write(footed("36 mm", "100 mm", follower=follower)).only(TAPPET)
    reach = CRACKED
    if kind == "crowned foot":
        reach = 300 * math.sin(math.atan(CRACKED / (on_sheet(check, "R_b") * 1e3 + 300 + 0.799)))
    assert on_sheet(check, "M_ts") == pytest.approx(F_CRACKED * (0.1 * 0.020 + reach / 1e3), rel=2e-3)


def test_a_crowned_foot_is_bent_most_where_rubbing_and_reach_together_are_greatest(
    workshop: DesignFolder,
) -> None:
    """Once the valve is open: F (0.1 × 20 mm + 300 sin α) at 20 000 places of the flank."""
    follower = 'follower = "crowned foot"\nfollower_radius = "300 mm"'
    check = workshop.write(footed("36 mm", "100 mm", follower=follower)).only(TAPPET)
    base = on_sheet(check, "R_b") * 1e3

    def bent(u: float) -> float:
        s = 10 * (1 - math.cos(math.pi * u))
        F = 1100 + 40 * (s - 0.4) + 7.1 * 0.010 * _ROOT * math.cos(math.pi * u) * (12 * math.pi) ** 2
        α = math.atan(REACH * math.sin(math.pi * u) / (base + 300 + s))
        return (F + 10 + 6 * 9.80665) * (0.1 * 20 + 300 * math.sin(α)) / 1e3

    most = max(bent(i / 20_000) for i in range(2000, 20_000))
    assert on_sheet(check, "M_to") == pytest.approx(most, rel=1e-4)


#: A track that takes the clearance up on its flank, and one that does so on a ramp of 0.5 mm and is steep above it.
_STRUCK = track("struck", "70")
_STEEP = {"45": track("steep", "45"), "30": track("steep", "30")}
for _one in _STEEP.values():
    _one["steep.toml"] = _one["steep.toml"].replace('ramp_height = "0.001 mm"', 'ramp_height = "0.5 mm"')
_IDLE = track("idle", "60", "2 mm")


def _on(folder: Path, *tracks: dict[str, str], clearance: str = "0.4 mm") -> float:
    """The greatest bending of the stem on a cam with some tracks, in a train so stiff that a blow counts."""
    made = footed("36 mm", "100 mm")
    made["tappet.toml"] = made["tappet.toml"].replace('clearance = "0.4 mm"', f'clearance = "{clearance}"')
    del made["cam.toml"]
    for one in tracks:
        made |= one
    stiff = 'train_stiffness = "90000 N/mm"'
    made["spindle.toml"] = made["spindle.toml"].replace('train_stiffness = "0.001 N/mm"', stiff)
    check = DesignFolder(folder).write(made).only(TAPPET)
    assert check.utilisation is not None, check.says
    return check.utilisation


@pytest.mark.parametrize(("steep", "governs"), [("45", "struck"), ("30", "steep")])
def test_of_several_tracks_that_of_the_blow_and_that_of_the_torque_count(
    tmp_path: Path, steep: str, governs: str
) -> None:
    """Whichever of both is worse alone is so together."""
    struck, other = _on(tmp_path / "1", _STRUCK), _on(tmp_path / "2", _STEEP[steep])
    worse = max(struck, other)
    assert (struck == worse) is (governs == "struck")
    assert min(struck, other) < 0.95 * worse
    assert _on(tmp_path / "3", _STRUCK, _STEEP[steep]) == pytest.approx(worse)


def test_a_track_that_never_takes_up_the_clearance_pushes_nothing(tmp_path: Path) -> None:
    """2 mm of lift under 3 mm of clearance."""
    alone = _on(tmp_path / "1", _STRUCK, clearance="3 mm")
    assert _on(tmp_path / "2", _STRUCK, _IDLE, clearance="3 mm") == pytest.approx(alone)


@pytest.mark.parametrize("lock", ["riveted end", "welded tab"])
@pytest.mark.parametrize(("share", "outcome"), [(1.005, "conforms"), (0.995, "finding")])
def test_hard_steel_is_neither_riveted_nor_welded(
    workshop: DesignFolder, lock: str, share: float, outcome: str
) -> None:
    """The limit stands just above and just below the tensile strength of the known steel."""
    strength = on_sheet(workshop.write(nutted("20 kN", lock)).only(VALVE), "R_m") / 1e6
    limits = own_limit(VALVE, "valves", soft=f"{strength * share:.3f} MPa")
    settings = workshop.root / "speclint.toml"
    settings.write_text(settings.read_text(encoding="utf-8") + limits, encoding="utf-8")
    check = workshop.only(VALVE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("stated", "taken"), [("0.20 kg", 0.4262), ("0.42 kg", 0.4262), ("0.43 kg", 0.43)])
def test_a_spindle_weighs_no_less_than_its_sizes_let_it(
    workshop: DesignFolder, stated: str, taken: float
) -> None:
    """A bar of 16 mm over 300 mm of 7850 kg/m³ is 0.4735 kg, 0.9 of it 0.4262 kg."""
    made = nutted("20 kN")
    as_stated = on_sheet(workshop.write(made).only(VALVE), "m")
    made["spindle.toml"] = made["spindle.toml"].replace('mass = "1.5 kg"', f'mass = "{stated}"')
    assert on_sheet(workshop.write(made).only(VALVE), "m") == pytest.approx(as_stated - 1.5 + taken, abs=1e-4)


@pytest.mark.parametrize(("stated", "taken"), [("3 kg", 3.0), ("4 kg", 3.581), ("9 kg", 3.581)])
def test_a_spindle_helps_to_shut_with_no_more_than_its_sizes_let_it_weigh(
    workshop: DesignFolder, stated: str, taken: float
) -> None:
    """A bar of 22 mm over 400 mm of 7850 kg/m³ is 1.1936 kg, three of it 3.581 kg; with the valve of 4.5 kg."""
    made = train_files(spindle=(('mass = "1.5 kg"', f'mass = "{stated}"'),))
    check = workshop.write(made).only("valve.closes")
    assert on_sheet(check, "W") == pytest.approx(9.80665 * (4.5 + taken), rel=1e-4)
