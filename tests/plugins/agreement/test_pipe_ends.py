"""Force and moment of a pipe at its ends, and its weight.

π/4 × (0.1² − 0.08²) × 4 m × 7850 kg/m³ = 88.78 kg, of which a quarter weighs 217.66 N.
"""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, limit
from speclint_agreement.formulae.pipes import share_of_moment, share_of_weight
from tests.plugins.known_metals import METALS, WITH_METALS
from tests.plugins.motion.train import FORGING

RULE = "pipe.end-force-by-weight"
FINE, ASKS, NONE = ("conforms", None), ("finding", Grade.QUERY), ("not applicable", None)
PIPE = """kind = "steam-pipe"
id = "pipe"
material = "known-forging"
outside_diameter = "100 mm"
wall = "10 mm"
length = "4 m"
starts_at.force = "218 N"
ends_at.force = "2 kN"
"""
FILES = {"metals.toml": METALS + FORGING, "pipe.toml": PIPE}


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ("218 N", "217 N", ASKS),
        ("2 kN", "0.218 kN", FINE),
        ("2 kN", "0.217 kN", ASKS),
        ("2 kN", "0.02 kN", ASKS),
        ("218 N", "217..219 N", ASKS),
        ("10 mm", "10.1 mm", ASKS),
        ('starts_at.force = "218 N"\n', "", FINE),
        ('wall = "10 mm"\n', "", NONE),
        ('material = "known-forging"\n', "", NONE),
    ],
)
def test_an_end_carries_a_quarter_of_its_pipe(
    workshop: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    workshop.write(FILES, settings=WITH_METALS)
    check = workshop.replace("pipe.toml", old, new).only(RULE, "pipe")
    assert (check.outcome, check.grade) == ends, check.says


def test_a_quarter_of_the_weight_by_hand(workshop: DesignFolder) -> None:
    workshop.write(FILES, settings=WITH_METALS)
    check = workshop.replace("pipe.toml", "2 kN", "0.02 kN").only(RULE, "pipe")
    assert limit(check) == pytest.approx(217.66, rel=1e-4)


def test_a_pipe_that_states_no_force_has_none_to_agree(workshop: DesignFolder) -> None:
    bare = "".join(line for line in PIPE.splitlines(keepends=True) if "force" not in line)
    workshop.write({**FILES, "pipe.toml": bare}, settings=WITH_METALS)
    check = workshop.only(RULE, "pipe")
    assert (check.outcome, check.grade) == NONE
    assert check.says == "nothing to compare; not stated: pipe starts_at.force, pipe ends_at.force"


def test_a_kilogram_weighs_what_the_conference_agreed() -> None:
    """9.80665 N, by definition of the standard acceleration (CGPM 3, 1901); of 60 kg a quarter 147.09975 N."""
    assert share_of_weight(k=1.0, M=1.0) == pytest.approx(9.80665)
    assert share_of_weight(k=0.25, M=60.0) == pytest.approx(147.09975)


MOMENT = "pipe.end-moment-by-weight"
BENT = {**FILES, "pipe.toml": PIPE + 'ends_at.moment = "90 N·m"\n'}


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ("90 N", "89.5 N", FINE),
        ("90 N", "88.5 N", ASKS),
        ('"90 N·m"', '"88..92 N·m"', ASKS),
        ('"4 m"', '"4.04 m"', ASKS),
        ('ends_at.moment = "90 N·m"\n', "", NONE),
        ('wall = "10 mm"\n', "", NONE),
        ('ends_at.moment = "90', 'starts_at.moment = "88', ASKS),
    ],
)
def test_an_end_takes_a_quarter_of_the_moment_of_its_pipe(
    workshop: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """22.1954 kg/m, and π/4 × 0.08² × 1000 = 5.0265 kg/m of water: 266.956 N/m × 4²/12/4 = 88.985 N·m."""
    workshop.write(BENT, settings=WITH_METALS)
    check = workshop.replace("pipe.toml", old, new).only(MOMENT, "pipe")
    assert (check.outcome, check.grade) == ends, check.says


def test_the_moment_of_the_weight_by_hand(workshop: DesignFolder) -> None:
    workshop.write(BENT, settings=WITH_METALS)
    check = workshop.replace("pipe.toml", "90 N", "7 N").only(MOMENT, "pipe")
    assert limit(check) == pytest.approx(88.985, rel=1e-4)
    assert share_of_moment(k=1.0, M=12.0, L=1.0, d=0.0, n=0.0) == pytest.approx(9.80665)


@pytest.mark.parametrize(("brackets", "least"), [(1, 88.985 / 4), (2, 88.985 / 9)])
def test_brackets_shorten_what_an_end_holds(workshop: DesignFolder, brackets: int, least: float) -> None:
    """The pipe hangs in halves, or in thirds: the moment goes with the square of the length between."""
    hung = {
        f"bracket-{number}.toml": f'kind = "bracket"\nid = "bracket-{number}"\n[carries.pipe]\nof = "pipe"\n'
        for number in range(brackets)
    }
    workshop.write({**BENT, **hung}, settings=WITH_METALS)
    check = workshop.replace("pipe.toml", "90 N", "7 N").only(MOMENT, "pipe")
    assert limit(check) == pytest.approx(least, rel=1e-4)
