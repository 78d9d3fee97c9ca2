"""crosshead.flange-takes-its-bolts: room for nuts on the flange of a piston rod."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, expect_not_assessed
from speclint_motion.formulae.rod_flanges import arc_of_each_bolt, ring_beside_fillet
from tests.plugins.motion.train import ROD, files

FLANGE = "crosshead.flange-takes-its-bolts"


def flanged(outside: str, fillet: str = "10 mm", bolts: int = 8, by: str = "flange bolts") -> dict[str, str]:
    """A rod of 90 mm with a flange, held in its crosshead by M24."""
    made = files("crosshead", add=f'[rod_held]\nby = "{by}"\nbolts = {bolts}\nthread = "M24"\n')
    rod = ROD.replace('larger_diameter = "110 mm"', f'larger_diameter = "{outside}"')
    made["rod.toml"] = rod.replace('fillet = "10 mm"', f'fillet = "{fillet}"')
    return made


@pytest.mark.parametrize(
    ("outside", "fillet", "outcome"),
    [
        ("182 mm", "10 mm", "conforms"),
        ("181.9 mm", "10 mm", "finding"),
        ("182 mm ±0.1", "10 mm", "finding"),
        ("182 mm", "10.1 mm", "finding"),
        ("190 mm", "14 mm", "conforms"),
    ],
)
def test_the_nuts_bear_beside_the_fillet(
    workshop: DesignFolder, outside: str, fillet: str, outcome: str
) -> None:
    """1.5 × 24 = 36 mm: 90 + 2 × (10 + 36) = 182 mm; 90 + 2 × (14 + 36) = 190 mm."""
    check = workshop.write(flanged(outside, fillet)).only(FLANGE)
    grade = Grade.NONCONFORMITY if outcome == "finding" else None
    assert (check.outcome, check.grade) == (outcome, grade)


@pytest.mark.parametrize(("bolts", "outcome"), [(9, "conforms"), (10, "finding")])
def test_the_bolts_find_room_round_the_flange(workshop: DesignFolder, bolts: int, outcome: str) -> None:
    """π (182 − 36) = 458.67 mm: 50.96 mm for each of nine, 45.87 mm for each of ten; 2 × 24 = 48 mm are wanted."""
    assert workshop.write(flanged("182 mm", bolts=bolts)).only(FLANGE).outcome == outcome


@pytest.mark.parametrize(
    ("step", "outcome"),
    [("92 mm", "conforms"), ("181 mm", "conforms"), ("185 mm", "conforms"), ("182.5 mm", "finding")],
)
def test_a_step_beside_the_flange_is_none(workshop: DesignFolder, step: str, outcome: str) -> None:
    """The flange is the widest shoulder, 182 mm; a step round 90 mm with 1 mm of fillet counts only where it is wider.

    Of 185 mm: (185 − 90)/2 − 1 = 46.5 mm; of 182.5 mm with 12 mm of fillet: 34.25 mm, and 36 mm are wanted.
    """
    fillet = "12 mm" if step == "182.5 mm" else "1 mm"
    made = flanged("182 mm")
    made["rod.toml"] += (
        f'[sections.step]\nform = "shoulder"\nat = "crosshead end"\ndiameter = "90 mm"\n'
        f'larger_diameter = "{step}"\nfillet = "{fillet}"\n'
    )
    assert workshop.write(made).only(FLANGE).outcome == outcome


def test_a_rod_held_otherwise_has_no_flange(workshop: DesignFolder) -> None:
    assert workshop.write(flanged("110 mm", by="nut")).only(FLANGE).outcome == "not applicable"


def test_a_flange_that_is_not_drawn_is_not_assessed(workshop: DesignFolder) -> None:
    made = flanged("182 mm")
    elsewhere = made["rod.toml"].replace('at = "crosshead end"', 'at = "between the ends"')
    expect_not_assessed(workshop.write({**made, "rod.toml": elsewhere}).only(FLANGE), "no shoulder of rod")
    expect_not_assessed(workshop.write(files()).only(FLANGE), "rod_held")


@given(D=st.floats(0.1, 0.4), r=st.floats(0.001, 0.03))
def test_a_wider_flange_has_more_room(D: float, r: float) -> None:
    assert ring_beside_fillet(D=D + 0.02, d=0.09, r=r) == pytest.approx(
        ring_beside_fillet(D=D, d=0.09, r=r) + 0.01
    )
    with pytest.raises(OutOfRange, match="no bolt"):
        arc_of_each_bolt(D=D, s=0.036, n=0)
