"""heat.chamber-temperature: what cools a chamber is no more than its outside.

A box of 500 × 400 × 300 mm has 2 (0.2 + 0.15 + 0.12) = 0.94 m², with bosses 1.034. A drum of 300 mm, as high as a
stool of 120 mm and a spring of 100 mm, has 0.070686 + 0.942478 × 0.22 = 0.278031 m², with bosses 0.305834.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.members import outside_of_box
from speclint.testing import DesignFolder, on_sheet
from speclint_steamways.formulae.chambers import outside_of_drum
from tests.plugins.steamways.test_conducted import BOX, CHAMBER, COVER, SPINDLE, SPRING, TAPPET, files

SIZES = 'length = "500 mm"\nwidth = "400 mm"\nheight = "300 mm"\n'
FINE, TOLD = ("conforms", None), ("finding", Grade.NONCONFORMITY)
AREA = '"0.25 m²"'


def _box(text: str = BOX + SIZES) -> dict[str, str]:
    found = files(box=text, tappet=TAPPET, spindle=SPINDLE)
    return {name: text for name, text in found.items() if name != "spring.toml"}


def _fitted(area: str, more: str = "") -> str:
    """The sizes of the box before its tables, and its cooled area."""
    return BOX.replace("path = ", SIZES + "path = ").replace(AREA, f'"{area}"{more}')


@pytest.mark.parametrize(
    ("area", "more", "wanted"),
    [
        ("1.033 m²", "", FINE),
        ("1.035 m²", "", TOLD),
        ("3 m²", "", TOLD),
        ("3 m²", ", finned = false", TOLD),
        ("3 m²", ", finned = true", FINE),
    ],
)
def test_a_box_is_cooled_by_no_more_than_its_outside(
    workshop: DesignFolder, area: str, more: str, wanted: tuple[str, Grade | None]
) -> None:
    check = workshop.write(_box(_fitted(area, more))).only(CHAMBER, "box")
    assert (check.outcome, check.grade) == wanted


def test_more_than_its_outside_cools_no_more(workshop: DesignFolder) -> None:
    """1/(15 × 1.034) K/W running, 1/(8 × 1.034) standing."""
    check = workshop.write(_box(_fitted("3 m²"))).only(CHAMBER, "box")
    h = {"running": 15, "standing-hot": 8}[str(check.case)]
    assert on_sheet(check, "R_a") == pytest.approx(1 / (h * 1.034))


@pytest.mark.parametrize("missing", SIZES.splitlines())
def test_a_box_without_its_sizes_is_taken_as_stated(workshop: DesignFolder, missing: str) -> None:
    text = _fitted("3 m²").replace(f"{missing}\n", "")
    assert workshop.write(_box(text)).only(CHAMBER, "box").outcome == "conforms"


@pytest.mark.parametrize(("area", "wanted"), [("0.3055 m²", FINE), ("0.3061 m²", TOLD), ("1 m²", TOLD)])
def test_a_cover_is_cooled_by_a_drum_round_its_springs(
    workshop: DesignFolder, area: str, wanted: tuple[str, Grade | None]
) -> None:
    cover = COVER.replace("path = ", 'outside_diameter = "300 mm"\npath = ').replace(AREA, f'"{area}"')
    made = files(cover=cover, spring=SPRING + 'free_length = "100 mm"\n')
    check = workshop.write(made).only(CHAMBER, "cover")
    assert (check.outcome, check.grade) == wanted


@pytest.mark.parametrize(
    ("width", "length"), [('outside_diameter = "300 mm"\n', ""), ("", 'free_length = "100 mm"\n')]
)
def test_a_cover_without_width_or_spring_length_is_taken_as_stated(
    workshop: DesignFolder, width: str, length: str
) -> None:
    cover = COVER.replace("path = ", f"{width}path = ").replace(AREA, '"1 m²"')
    made = files(cover=cover, spring=SPRING + length)
    assert workshop.write(made).only(CHAMBER, "cover").outcome == "conforms"


@given(st.floats(0.05, 2.0), st.floats(0.05, 2.0), st.floats(0.05, 2.0))
def test_the_outside_grows_with_each_size_and_is_the_same_on_any_side(a: float, b: float, c: float) -> None:
    assert outside_of_box(a, b, c) == pytest.approx(outside_of_box(c, a, b))
    assert outside_of_box(a * 1.01, b, c) > outside_of_box(a, b, c)
    assert outside_of_drum(a, b, c) == pytest.approx(outside_of_drum(a, c, b))
