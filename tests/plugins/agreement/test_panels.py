"""The panel of a flat wall and the passage that it bounds."""

from __future__ import annotations

import pytest

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, found, limit
from speclint_agreement.formulae.panels import panel_across, shortest_leg

RULE = "wall.panel-of-its-passage"
HOLD, FINE, NONE = ("finding", Grade.HOLD), ("conforms", None), ("not applicable", None)
#: 18 000 mm² of 50 mm are 360 mm wide, in three panels of 120 mm between two bridges, of which 90 % are 108 mm.
FILES = {
    "weldment.toml": """kind = "weldment"
[walls.side]
short = "108 mm"
long = "400 mm"
ribbed = false
bridges = 2
one_passage = "port"
one_depth = "50 mm"
""",
    "port.toml": """kind = "steam-passage"
id = "port"
area = "18000 mm²"
length = "400 mm"
""",
}


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("weldment.toml", "108 mm", "107 mm", HOLD),
        ("weldment.toml", "108 mm", "60 mm", HOLD),
        ("weldment.toml", "108 mm", "107..109 mm", FINE),
        ("weldment.toml", "bridges = 2", "bridges = 1", HOLD),
        ("weldment.toml", "bridges = 2", "bridges = 3", FINE),
        ("weldment.toml", "bridges = 2\n", "", HOLD),
        ("weldment.toml", "50 mm", "49 mm", HOLD),
        ("weldment.toml", "one_", "other_", FINE),
        ("weldment.toml", "ribbed = false", "ribbed = true", NONE),
        ("weldment.toml", "ribbed = false\n", "", FINE),
        ("port.toml", "18000 mm²", "18200 mm²", HOLD),
        # 90 % of 119 mm are 107.1 mm, of half of 238 mm and of a quarter of 476 mm too
        ("port.toml", "400 mm", "100 mm", FINE),
    ],
)
def test_a_panel_is_no_narrower_than_its_passage(
    workshop: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    design = workshop.write(FILES)
    text = FILES[file].replace(old, new)
    assert text != FILES[file]
    check = design.write({file: text}).only(RULE, "weldment")
    assert (check.outcome, check.grade) == ends, check.says


@pytest.mark.parametrize(
    ("passage", "ends"),
    [
        ('length = "118 mm"', FINE),
        ('length = "119 mm"', HOLD),
        ('length = "119 mm"\nbends = 0\nmitres = 0', HOLD),
        ('length = "472 mm"\nbends = 1', FINE),
        ('length = "476 mm"\nbends = 1', HOLD),
        ('length = "708 mm"\nbends = 1\nmitres = 1', FINE),
        ('length = "714 mm"\nmitres = 2', HOLD),
    ],
)
def test_a_short_leg_bounds_its_wall(
    workshop: DesignFolder, passage: str, ends: tuple[str, Grade | None]
) -> None:
    """A wall of 107 mm: 90 % of 118 mm are 106.2, of 119 mm 107.1. A bend makes two legs, half of their mean 472/4."""
    files = {
        "weldment.toml": FILES["weldment.toml"].replace("108 mm", "107 mm"),
        "port.toml": FILES["port.toml"].replace('length = "400 mm"', passage),
    }
    check = workshop.write(files).only(RULE, "weldment")
    assert (check.outcome, check.grade) == ends, check.says


def test_half_a_panel_by_hand(workshop: DesignFolder) -> None:
    check = workshop.write({**FILES, "weldment.toml": FILES["weldment.toml"].replace("108", "60")}).only(
        RULE, "weldment"
    )
    assert (found(check), limit(check)) == (pytest.approx(0.060), pytest.approx(0.108))
    assert "port" in check.says


def test_both_sides_of_a_wall_bound_it(workshop: DesignFolder) -> None:
    """A chest of 45 000 mm² that is 120 mm deep: 375 mm, a third of it 125, of which 90 % are 112.5."""
    chest = 'other_passage = "chest"\nother_depth = "120 mm"\n'
    files = {
        **FILES,
        "weldment.toml": FILES["weldment.toml"] + chest,
        "chest.toml": 'kind = "steam-passage"\nid = "chest"\narea = "45000 mm²"\nlength = "400 mm"\n',
    }
    check = workshop.write(files).only(RULE, "weldment")
    assert (check.outcome, limit(check)) == ("finding", pytest.approx(0.1125))


def test_a_deeper_passage_is_narrower_and_more_bends_make_shorter_legs() -> None:
    assert panel_across(A=0.018, h=0.1, n=0) == pytest.approx(0.180)
    assert shortest_leg(k=0.5, L=0.9, n=2) == pytest.approx(0.150)


@pytest.mark.parametrize(("h", "n"), [(0.0, 1.0), (-0.04, 1.0), (0.04, -0.5)])
def test_a_passage_has_a_depth_and_no_fewer_bridges_than_none(h: float, n: float) -> None:
    with pytest.raises(OutOfRange, match="depth"):
        panel_across(A=0.02, h=h, n=n)


def test_a_passage_has_no_fewer_bends_than_none() -> None:
    with pytest.raises(OutOfRange, match="bends"):
        shortest_leg(k=1.0, L=0.4, n=-0.5)
