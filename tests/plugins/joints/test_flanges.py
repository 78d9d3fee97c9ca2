"""A flange under the studs of the bench, by hand: 760 on 500 mm with 20 holes of 26 mm on 700; 160 MPa."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_assessed, on_sheet
from speclint_joints.formulae.flanges import limit_moment_of_ring, moment_of_flange
from tests.plugins.joints import hand
from tests.plugins.joints.bench import bench

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


def test_a_thin_ring_is_burst(workshop: DesignFolder) -> None:
    """1.6 (760² + 500²)/(760² − 500²) = 4.04 MPa at the bore, beside 1.6 alone in a plate."""
    check = flanged(workshop, 90).only(RULE, "flange")
    assert on_sheet(check, "σ_p") / 1e6 == pytest.approx(4.042, abs=1e-3)


@pytest.mark.parametrize(("collar", "outcome"), [("660 mm", "conforms"), ("600 mm", "finding")])
def test_a_loose_flange_bears_on_its_collar(workshop: DesignFolder, collar: str, outcome: str) -> None:
    """(660 + 500)/2 = 580 and 550 mm, 60 and 75 mm inside the studs: 2736 kN turn it with 164 and 205 kN·m."""
    turned = 20 * (hand.heated(130e3) + hand.share() * hand.lift(1.6)) * 65
    thick = math.sqrt(4 * turned / (math.pi * 160 * LEFT))
    flanged(workshop, thick, pipe=PIPE + f'collar_diameter = "{collar}"\n')
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
