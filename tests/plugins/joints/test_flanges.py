"""A flange under the studs of the bench, by hand: 760 on 500 mm with 20 holes of 26 mm on 700; 160 MPa."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, changed, expect_not_assessed, found, limit, on_sheet
from speclint_joints.formulae.flanges import limit_moment_of_ring, moment_of_flange, pressure_of_collar
from tests.plugins.joints import hand
from tests.plugins.joints.bench import METALS, bench, figure_of, in_every_case

RULE = "pipe-flange.strength"
PIPE = 'kind = "steam-pipe"\nid = "pipe"\ncarries = "live steam"\noutside_diameter = "508 mm"\n'
FLANGE = """
kind = "pipe-flange"
id = "flange"
material = "test-cover"
duty = "duty"
of = "pipe"
outside_diameter = "760 mm"
bore = "500 mm"
thickness = "{t:.3f} mm"
held = "welded on"
weld_throat = "{a}"
"""
#: Width of the ring that the holes leave, mm: 260 − 2 × 26 √(26 × 20/(700 π)).
LEFT = 260 - 2 * 26 * math.sqrt(26 * 20 / (700 * math.pi))
#: N·mm: hot, 20 (128.1 + 0.359 × 24.3) kN on (700 − G)/2, and the steam on 508 mm of pipe.
LEVER = (700 - hand.G) / 2
MOMENT = (
    20 * (hand.heated(130e3) + hand.share() * hand.lift(1.6)) * LEVER
    + math.pi * hand.G**2 * 1.6 * (hand.G - 500) / 8
)
#: The thickness at which that moment gives 160 MPa over the whole ring.
THICK = math.sqrt(4 * MOMENT / (math.pi * 160 * LEFT))


def flanged(folder: DesignFolder, t: float, throat: str = "12 mm", pipe: str = PIPE) -> DesignFolder:
    bench(
        folder,
        ("studs", 'holds = "cover"', 'holds = "flange"'),
        ("studs", 'pressure = "cylinder"', 'pressure = "live"'),
    )
    (folder.root / "cover.toml").unlink()
    files = {"flange.toml": FLANGE.format(t=t, a=throat), "pipe.toml": pipe}
    for name, text in files.items():
        (folder.root / name).write_text(text, encoding="utf-8", newline="\n")
    return folder


@pytest.mark.parametrize(("times", "outcome"), [(1.0, "conforms"), (0.995, "finding")])
def test_the_ring_from_both_sides(workshop: DesignFolder, times: float, outcome: str) -> None:
    """√(4 × 136.6 kN·m/(π × 160 × 234.7)) = 68.1 mm; by its own stiffness it eases the studs by 0.4 %."""
    assert pytest.approx(68.1, abs=0.1) == THICK
    check = flanged(workshop, THICK * times).only(RULE, "flange")
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)
    assert on_sheet(check, "M_h") / 1e3 == pytest.approx(136.6, rel=6e-3)


@pytest.mark.parametrize(("throat", "outcome"), [("2.6 mm", "conforms"), ("2.58 mm", "finding")])
def test_the_weld_from_both_sides(workshop: DesignFolder, throat: str, outcome: str) -> None:
    """1.6 × 508/(4 × 0.49 × 160) = 2.592 mm."""
    assert flanged(workshop, 90, throat).only(RULE, "flange").outcome == outcome


@pytest.mark.parametrize(("wall", "outcome"), [("7.1 mm", "conforms"), ("7 mm", "finding")])
def test_a_throat_that_the_wall_of_the_pipe_has_room_for(
    workshop: DesignFolder, wall: str, outcome: str
) -> None:
    """A leg outside of 1.4 walls and one inside of a wall: (1.4 + 1)/√2 = 1.7; 12/1.7 = 7.06 mm."""
    check = flanged(workshop, 90, pipe=PIPE + f'wall = "{wall}"\n').only(RULE, "flange")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_thin_ring_is_burst(workshop: DesignFolder) -> None:
    """1.6 (760² + 500²)/(760² − 500²) = 4.04 MPa at the bore, beside 1.6 alone in a plate."""
    check = flanged(workshop, 90).only(RULE, "flange")
    assert on_sheet(check, "σ_p") / 1e6 == pytest.approx(4.042, abs=1e-3)


@pytest.mark.parametrize(("collar", "outcome"), [("660 mm", "conforms"), ("600 mm", "finding")])
def test_a_loose_flange_bears_on_its_collar(workshop: DesignFolder, collar: str, outcome: str) -> None:
    """(660 + 500)/2 = 580 and 550 mm, 60 and 75 mm inside the studs: 2736 kN turn it with 164 and 205 kN·m."""
    turned = 20 * (hand.heated(130e3) + hand.share() * hand.lift(1.6)) * 65
    thick = math.sqrt(4 * turned / (math.pi * 160 * LEFT))
    flanged(workshop, thick, pipe=PIPE.replace("508", "500") + f'collar_diameter = "{collar}"\n')
    workshop.replace("flange.toml", "welded on", "loose behind a collar")
    assert workshop.only(RULE, "flange").outcome == outcome


def test_a_loose_flange_has_neither_weld_nor_steam_in_it(workshop: DesignFolder) -> None:
    """Its pipe goes through it: no throat is asked for, and no stress of its bore is worked."""
    flanged(workshop, 90, pipe=PIPE + 'collar_diameter = "660 mm"\n')
    workshop.replace("flange.toml", "welded on", "loose behind a collar")
    workshop.replace("flange.toml", 'weld_throat = "12 mm"\n', "")
    check = workshop.only(RULE, "flange")
    assert check.outcome == "conforms", check.says
    assert "σ_p" not in {step.symbol for step in check.steps}


def test_a_flange_of_a_block_is_welded_round_its_bore(workshop: DesignFolder) -> None:
    """1.6 × 500/(4 × 12) = 16.67 MPa; round a pipe of 508 mm 16.93."""
    assert on_sheet(flanged(workshop, 90).only(RULE, "flange"), "τ") / 1e6 == pytest.approx(16.93, abs=5e-3)
    workshop.replace("flange.toml", 'of = "pipe"', 'of = "block"')
    assert on_sheet(workshop.only(RULE, "flange"), "τ") / 1e6 == pytest.approx(16.67, abs=5e-3)


#: Width of a ring of 760 on 560 mm that the holes leave, mm.
WIDER = 200 - 2 * 26 * math.sqrt(26 * 20 / (700 * math.pi))


@pytest.mark.parametrize(
    ("wall", "bore"), [("4 mm", 500), ("5 mm", 500), ("4 mm ±0.2", 500.4), ("1 mm", 506)]
)
def test_a_ring_is_no_narrower_than_the_way_through_its_pipe(
    workshop: DesignFolder, wall: str, bore: float
) -> None:
    """508 mm less two walls of 1 mm: 506, though 500 is stated; π × 160 × (760 − bore − 25.3) × 90²/4."""
    check = flanged(workshop, 90, pipe=PIPE + f'wall = "{wall}"\n').only(RULE, "flange")
    left = 760 - bore - 2 * 26 * math.sqrt(26 * 20 / (700 * math.pi))
    assert on_sheet(check, "M_lh") / 1e3 == pytest.approx(math.pi * 160 * left * 90**2 / 4 / 1e6, rel=1e-6)


@pytest.mark.parametrize(("times", "outcome"), [(1.005, "conforms"), (0.995, "finding")])
def test_a_loose_ring_is_no_narrower_than_its_pipe_from_both_sides(
    workshop: DesignFolder, times: float, outcome: str
) -> None:
    """A pipe of 560 mm in a collar of 660: 610 mm, 45 inside the studs; 174.7 mm of ring bear 123 kN·m, not 234.7."""
    turned = 20 * (hand.heated(130e3) + hand.share() * hand.lift(1.6)) * 45
    thick = math.sqrt(4 * turned / (math.pi * 160 * WIDER)) * times
    flanged(workshop, thick, pipe=PIPE.replace("508", "560") + 'collar_diameter = "660 mm"\n')
    workshop.replace("flange.toml", "welded on", "loose behind a collar")
    assert workshop.only(RULE, "flange").outcome == outcome


def test_a_ring_of_a_block_is_no_narrower_than_its_opening(workshop: DesignFolder) -> None:
    """520 mm, to which the pipe of the flange beyond leads: π × 160 × (760 − 520 − 25.3) × 90²/4; and of no other."""
    flanged(workshop, 90, pipe=PIPE + '[ends_at]\npart = "block"\nopening = "chest"\n')
    workshop.replace("flange.toml", 'of = "pipe"', 'of = "block"')
    workshop.replace("studs.toml", 'holds = "flange"', 'holds = "flange"\nbolted_to = "beyond"')
    beyond = FLANGE.format(t=90, a="12 mm").replace('id = "flange"', 'id = "beyond"')
    (workshop.root / "beyond.toml").write_text(beyond, encoding="utf-8", newline="\n")
    with (workshop.root / "block.toml").open("a", encoding="utf-8", newline="\n") as block:
        block.write('\n[openings.chest]\nbore = "520 mm"\n[openings.exhaust]\nbore = "540 mm"\n')
    left = 760 - 520 - 2 * 26 * math.sqrt(26 * 20 / (700 * math.pi))
    check = workshop.only(RULE, "flange")
    assert on_sheet(check, "M_lh") / 1e3 == pytest.approx(math.pi * 160 * left * 90**2 / 4 / 1e6, rel=1e-6)


def test_what_is_not_drawn(workshop: DesignFolder) -> None:
    expect_not_assessed(
        flanged(workshop, 90).replace("flange.toml", 'weld_throat = "12 mm"\n', "").only(RULE, "flange"),
        "weld_throat",
    )
    alone = flanged(workshop, 90).replace("studs.toml", 'holds = "flange"', 'holds = "pipe"')
    expect_not_assessed(alone.only(RULE, "flange"), "0 bolted joints")


@given(t=st.floats(0.01, 0.1), n=st.floats(4, 20))
def test_what_a_ring_bears_grows_with_its_square_and_falls_with_its_holes(t: float, n: float) -> None:
    ring = {"f": 200e6, "A": 0.76, "B": 0.5, "d": 0.026, "D_b": 0.7}
    bears = limit_moment_of_ring(t=t, n=n, **ring)
    assert limit_moment_of_ring(t=2 * t, n=n, **ring) == pytest.approx(4 * bears)
    assert limit_moment_of_ring(t=t, n=n + 1, **ring) < bears


@given(W=st.floats(1e3, 1e6), G=st.floats(0.15, 0.29))
def test_the_moment_falls_towards_the_studs(W: float, G: float) -> None:
    at = {"W": W, "D_b": 0.3, "p": 0.0}
    assert moment_of_flange(G=G, B=G, **at) > moment_of_flange(G=G + 0.005, B=G, **at)


#: N·mm: as tightened, 20 × 130 kN on the same arm, cold and without steam.
TIGHTENED = 20 * 130e3 * LEVER


def test_as_tightened_a_ring_bears_half_as_much_again(workshop: DesignFolder) -> None:
    """1.5 × 160 MPa over the whole ring of 90 mm: π × 240 × 234.7 × 90²/4 = 358 kN·m, which 20 × 130 kN turn."""
    check = flanged(workshop, 90).only(RULE, "flange")
    assert on_sheet(check, "M_0") / 1e3 == pytest.approx(TIGHTENED / 1e6, rel=1e-3)
    assert on_sheet(check, "M_l0") / 1e3 == pytest.approx(math.pi * 240 * LEFT * 90**2 / 4 / 1e6, rel=1e-6)


@pytest.mark.parametrize(("times", "outcome"), [(1.005, "conforms"), (0.995, "finding")])
def test_the_ring_as_tightened_from_both_sides(workshop: DesignFolder, times: float, outcome: str) -> None:
    """With a limit of its own low enough to govern: the share of 160 MPa at which 90 mm just bear that moment."""
    share = TIGHTENED / (math.pi * 160 * LEFT * 90**2 / 4)
    flanged(workshop, 90)
    with (workshop.root / "speclint.toml").open("a", encoding="utf-8") as settings:
        settings.write(f'\n[limits."{RULE}"]\ntightened = "{share * times:.6f}"\n')
    assert workshop.only(RULE, "flange").outcome == outcome


BEARS = "pipe-flange.collar-bears"
#: N: all bolts on test, cold, 20 (130 + 0.359 × 24.3) kN; and the collar on which they press with 1.5 × 160 MPa, mm.
ON_TEST = 20 * (130e3 + hand.share() * hand.lift(1.6))
PRESSED = math.sqrt(500**2 + 4 * ON_TEST / (math.pi * 240))
HELD = (("conforms", None), ("finding", Grade.HOLD))


def collared(
    folder: DesignFolder, collar: str, *, pipe: str = "490 mm", bore: str = "500 mm"
) -> DesignFolder:
    """The flange of the bench, 50 mm thick, loose behind a collar."""
    text = (
        PIPE.replace("508 mm", pipe)
        + f'material = "test-cover"\nwall = "10 mm"\ncollar_diameter = "{collar}"\n'
    )
    flanged(folder, 50, pipe=text)
    folder.replace("flange.toml", "welded on", "loose behind a collar")
    folder.replace("flange.toml", 'bore = "500 mm"', f'bore = "{bore}"')
    heated = 'pipe-flange = "{0} °C"\nsteam-pipe = "{0} °C"'.format
    in_every_case(folder, 'pipe-flange = "20 °C"', heated(20))
    return in_every_case(folder, 'pipe-flange = "200 °C"', heated(200))


@pytest.mark.parametrize(
    ("collar", "bore", "held"),
    [
        ("516.04 mm", "500 mm", True),
        ("515.96 mm", "500 mm", False),
        ("516.04 mm", "500 mm ±0.04", False),
        ("516.04 mm ±0.1", "500 mm", False),
        ("499 mm", "500 mm", False),
        ("600 mm", "541 mm", True),
        ("600 mm", "544 mm", False),
    ],
)
def test_a_collar_bears_all_round_from_both_sides(
    workshop: DesignFolder, collar: str, bore: str, held: bool
) -> None:
    """(D + 490)/2 − bore against 3 mm: 516 mm in 500, 600 mm in 542."""
    check = collared(workshop, collar, bore=bore).only(BEARS, "flange")
    assert (check.outcome, check.grade) == HELD[not held], check.says


@pytest.mark.parametrize(
    ("collar", "pipe", "bore", "held"),
    [
        ("663.9 mm", "490 mm", "500 mm", True),
        ("664.1 mm", "490 mm", "500 mm", False),
        ("671.9 mm", "498 mm", "500 mm", True),
        ("672.1 mm", "498 mm", "500 mm", False),
        ("673.9 mm", "498 mm", "450 mm", True),
        ("674.1 mm", "498 mm", "450 mm", False),
    ],
)
def test_a_collar_stays_inside_the_bolts_from_both_sides(
    workshop: DesignFolder, collar: str, pipe: str, bore: str, held: bool
) -> None:
    """Holes of 26 mm on 700: 674 mm inside them, less what the bore lets the pipe to one side: 10, 2 or none."""
    check = collared(workshop, collar, pipe=pipe, bore=bore).only(BEARS, "flange")
    assert (check.outcome, check.grade) == HELD[not held], check.says
    if not held:
        assert limit(check) == pytest.approx(0.674)


def test_what_a_collar_bears_on_at_the_least(workshop: DesignFolder) -> None:
    """(510 + 490)/2 − 500 = 0 mm."""
    check = collared(workshop, "510 mm").only(BEARS, "flange")
    assert (found(check), limit(check)) == (pytest.approx(0, abs=1e-9), pytest.approx(3e-3))


@pytest.mark.parametrize(("more", "held"), [(0.06, True), (-0.06, False)])
def test_bolts_press_a_collar_from_both_sides(workshop: DesignFolder, more: float, held: bool) -> None:
    """2774 kN over 240 MPa: 11 560 mm², 514.5 mm on 500; with a pipe of 498 mm the ring is 6 mm wide at the least."""
    assert pytest.approx(514.5, abs=0.1) == PRESSED
    check = collared(workshop, f"{PRESSED + more:.3f} mm", pipe="498 mm").only(BEARS, "flange")
    assert (check.outcome, check.grade) == HELD[not held], check.says


@pytest.mark.parametrize(("more", "held"), [(0.06, True), (-0.06, False)])
def test_a_loose_flange_is_no_narrower_than_its_pipe(workshop: DesignFolder, more: float, held: bool) -> None:
    """A bore of 450 mm on a pipe of 498 mm: the bolts press the ring outside of 498 mm with 240 MPa."""
    pressed = math.sqrt(498**2 + 4 * ON_TEST / (math.pi * 240)) + more
    check = collared(workshop, f"{pressed:.3f} mm", pipe="498 mm", bore="450 mm").only(BEARS, "flange")
    assert (check.outcome, check.grade) == HELD[not held], check.says


def test_a_collar_as_tightened_and_on_test(workshop: DesignFolder) -> None:
    """20 × 130 kN and 2774 kN on π/4 (517² − 500²) = 13 579 mm²."""
    check = collared(workshop, "517 mm", pipe="498 mm").only(BEARS, "flange")
    area = math.pi / 4 * (517**2 - 500**2)
    assert on_sheet(check, "q_0") / 1e6 == pytest.approx(20 * 130e3 / area, rel=1e-3)
    assert on_sheet(check, "q_h") / 1e6 == pytest.approx(ON_TEST / area, rel=1e-3)


@pytest.mark.parametrize("soft", ["flange.toml", "pipe.toml"])
def test_the_weaker_metal_bears_the_collar(workshop: DesignFolder, soft: str) -> None:
    """Of half the proof stress: 1.5 × 120/1.5 = 120 MPa, whichever of the two it is."""
    collared(workshop, "540 mm").replace(soft, "test-cover", "test-soft")
    metal = METALS[METALS.index("[test-cover]") : METALS.index("[test-block]")].replace(
        "test-cover", "test-soft"
    )
    weak = changed(metal, ("value = 240", "value = 120"))
    with (workshop.root / "metals.toml").open("a", encoding="utf-8", newline="\n") as metals:
        metals.write(weak)
    check = workshop.only(BEARS, "flange")
    assert on_sheet(check, "q_ah") / 1e6 == pytest.approx(120)
    assert on_sheet(check, "q_a0") / 1e6 == pytest.approx(120)


def test_metals_count_cold_as_tightened_and_hot_in_work(workshop: DesignFolder) -> None:
    """Proof stress 240 MPa at 20 °C and 120 at 220, so 132 at 200: 1.5 × 160 cold, 1.5 × 88 hot."""
    collared(workshop, "560 mm")
    figure_of(workshop, "test-cover", "proof-stress", "degC = [20, 220]\nvalue = [240, 120]")
    check = workshop.only(BEARS, "flange")
    assert on_sheet(check, "q_a0") / 1e6 == pytest.approx(240)
    assert on_sheet(check, "q_ah") / 1e6 == pytest.approx(132)


def test_a_collar_too_small_is_told_though_no_joint_is_drawn(workshop: DesignFolder) -> None:
    collared(workshop, "510 mm").replace("studs.toml", 'holds = "flange"', 'holds = "pipe"')
    assert workshop.only(BEARS, "flange").outcome == "finding"
    workshop.replace("pipe.toml", "510 mm", "560 mm")
    expect_not_assessed(workshop.only(BEARS, "flange"), "0 bolted joints")


def test_a_flange_without_a_collar(workshop: DesignFolder) -> None:
    assert flanged(workshop, 90).only(BEARS, "flange").outcome == "not applicable"
    collared(workshop, "560 mm").replace("flange.toml", 'of = "pipe"', 'of = "block"')
    expect_not_assessed(workshop.only(BEARS, "flange"), "no pipe with a collar")


@given(W=st.floats(1e3, 1e6), D_c=st.floats(0.21, 0.4))
def test_a_collar_of_twice_the_size_is_pressed_a_quarter_as_hard(W: float, D_c: float) -> None:
    pressed = pressure_of_collar(W=W, D_c=D_c, B=0.2)
    assert pressure_of_collar(W=W, D_c=2 * D_c, B=0.4) == pytest.approx(pressed / 4)
    assert pressure_of_collar(W=W, D_c=D_c + 0.01, B=0.2) < pressed
