"""The ribs of a flat wall and the panel between them."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "wall.ribs-of-its-panel"
HOLD, FINE = ("finding", Grade.HOLD), ("conforms", None)


def ended(root: Path, spacing: str, span: str) -> tuple[str, Grade | None]:
    """How the rule ends for a panel of 200 by 400 mm."""
    weldment = f"""kind = "weldment"
[walls.side]
short = "200 mm"
long = "400 mm"
ribbed = true
[walls.side.ribs]
spacing = "{spacing}"
span = "{span}"
[walls.plain]
short = "100 mm"
long = "300 mm"
"""
    found = DesignFolder(root).write({"weldment.toml": weldment}).only(RULE)
    return found.outcome, found.grade


@pytest.mark.parametrize(
    ("spacing", "span", "ends"),
    [
        ("190 mm", "380 mm", FINE),
        ("189.9 mm", "380 mm", HOLD),
        ("190 mm", "379.9 mm", HOLD),
        ("260 mm", "600 mm", FINE),
        ("379.9 mm", "200 mm", HOLD),
        ("380 mm", "190 mm", FINE),
        ("380 mm", "189.9 mm", HOLD),
        ("180..220 mm", "400 mm ±20", FINE),
    ],
)
def test_ribs_along_and_across_the_panel(
    tmp_path: Path, spacing: str, span: str, ends: tuple[str, Grade | None]
) -> None:
    """95 % of 200 and 400 mm are 190 and 380 mm; ribs 380 mm apart or more lie across it; sizes as aimed at."""
    assert ended(tmp_path, spacing, span) == ends


def test_a_wall_without_ribs_has_none_to_agree_with(tmp_path: Path) -> None:
    weldment = 'kind = "weldment"\n[walls.plain]\nshort = "100 mm"\nlong = "300 mm"\n'
    found = DesignFolder(tmp_path).write({"weldment.toml": weldment}).only(RULE)
    assert found.outcome == "not applicable"


@pytest.mark.parametrize(
    ("short", "ribs", "ends"),
    [
        ("171 mm", 'spacing = "200 mm"\nspan = "400 mm"\nthickness = "20 mm"', FINE),
        ("170.9 mm", 'spacing = "200 mm"\nspan = "400 mm"\nthickness = "20 mm"', HOLD),
        ("100 mm", 'spacing = "200 mm"\nspan = "400 mm"\nthickness = "20 mm"', HOLD),
        ("100 mm", 'spacing = "200 mm"\nspan = "400 mm"', FINE),
        ("100 mm", 'spacing = "441 mm"\nspan = "200 mm"\nthickness = "20 mm"', FINE),
        ("100 mm", 'spacing = "442 mm"\nspan = "200 mm"\nthickness = "20 mm"', HOLD),
    ],
)
def test_the_panel_is_as_wide_as_the_room_between_its_ribs(
    tmp_path: Path, short: str, ribs: str, ends: tuple[str, Grade | None]
) -> None:
    """95 % of 200 − 20 are 171 mm. Ribs across the panel leave its length: 400/0.95 + 20 = 441.05 mm."""
    weldment = (
        f'kind = "weldment"\n[walls.side]\nshort = "{short}"\nlong = "400 mm"\n[walls.side.ribs]\n{ribs}\n'
    )
    found = DesignFolder(tmp_path).write({"weldment.toml": weldment}).only(RULE)
    assert (found.outcome, found.grade) == ends, found.says
