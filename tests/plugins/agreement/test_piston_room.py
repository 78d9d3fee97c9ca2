"""Room between a valve and the piston, worked from where its seat lies and which way it lifts."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, on_sheet
from tests.plugins.valves.gear import BLOCK, gear_files

FOUL, AGREES = "valve.foul-clearance", "valve.room-to-piston"
HOLD, FINE, SILENT = ("finding", Grade.HOLD), ("conforms", None), ("not applicable", None)
#: The valve stands 120 mm above its seat and lifts 20 mm; the cylinder's face is 150 mm beyond the seat.
BORE = """[seat_bores.upper]
serves = "inlet"
end = "front"
opens_into = "cylinder"
lifts = "{lifts}"
to_cylinder = "{x}"
"""
END = '[ends.front]\nof_bore = "main"\nside = "front"\nclearance = "8 mm"\n[bores.main]\nlined = true\n'


def drawn(folder: Path, lifts: str, x: str = "150 mm", said: str = "") -> DesignFolder:
    """A valve over a cylinder; ``said`` is what its own spec says of the piston."""
    files = gear_files()
    block = changed(BLOCK, ("[seat_bores.upper]\n", BORE.format(lifts=lifts, x=x)))
    files["block.toml"] = block + END
    files["valve.toml"] = changed(files["valve.toml"], ("meets_piston = false\n", said))
    return DesignFolder(folder).write(files)


def outcome(design: DesignFolder, rule: str) -> tuple[str, Grade | None]:
    check = design.only(rule)
    return check.outcome, check.grade


@pytest.mark.parametrize(("x", "ends"), [("136.438 mm", FINE), ("136.436 mm", HOLD), ("100 mm", HOLD)])
def test_along_the_cylinder_to_the_piston(tmp_path: Path, x: str, ends: tuple[str, Grade | None]) -> None:
    """x + 8 − 120 − 20 ≥ 4.4376 mm: 0.5 of overtravel, 1 of wear, 0.3222 and 0.6154 of stretch, 2 asked for."""
    design = drawn(tmp_path, "along the cylinder", x)
    assert outcome(design, FOUL) == ends


@pytest.mark.parametrize(("x", "ends"), [("142.5 mm", FINE), ("142.49 mm", HOLD)])
def test_across_the_cylinder_to_its_bore(tmp_path: Path, x: str, ends: tuple[str, Grade | None]) -> None:
    """x − 120 − 20 ≥ 2 mm and 0.5 mm of overtravel: the piston keeps to its bore, whatever wears."""
    design = drawn(tmp_path, "across the cylinder", x)
    assert outcome(design, FOUL) == ends


@pytest.mark.parametrize("said", ['clearance_piston = "60 mm"\n', "meets_piston = false\n", ""])
def test_no_word_eases_the_room(tmp_path: Path, said: str) -> None:
    """130 + 8 − 140 = −2 mm: they meet, whatever the spec of the valve says."""
    design = drawn(tmp_path, "along the cylinder", "130 mm", said)
    assert outcome(design, FOUL) == HOLD
    assert on_sheet(design.only(FOUL), "c_p") == pytest.approx(-0.002, abs=1e-9)


def test_a_valve_towards_the_piston_is_not_cleared_by_a_word(tmp_path: Path) -> None:
    design = drawn(tmp_path, "along the cylinder", said="meets_piston = false\n")
    design.replace("block.toml", 'to_cylinder = "150 mm"\n', "")
    check = design.only(FOUL)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "to_cylinder" in check.says


def test_a_valve_that_lifts_away_cannot_meet_it(tmp_path: Path) -> None:
    design = drawn(tmp_path, "away from the cylinder")
    assert outcome(design, FOUL) == FINE
    assert outcome(design, AGREES) == SILENT
    design.replace("valve.toml", 'lift_stop = "21 mm"\n', 'lift_stop = "21 mm"\nmeets_piston = true\n')
    assert outcome(design, AGREES) == HOLD


@pytest.mark.parametrize(
    ("lifts", "said", "ends"),
    [
        ("along the cylinder", "18 mm", FINE),
        ("along the cylinder", "18.1 mm", FINE),
        ("along the cylinder", "18.2 mm", HOLD),
        ("along the cylinder", "17.8 mm", HOLD),
        ("across the cylinder", "10 mm", FINE),
        ("across the cylinder", "10.2 mm", HOLD),
    ],
)
def test_a_stated_room_is_that_of_the_drawings(
    tmp_path: Path, lifts: str, said: str, ends: tuple[str, Grade | None]
) -> None:
    """150 + 8 − 120 − 20 = 18 mm to the piston, 150 − 120 − 20 = 10 mm to the bore."""
    design = drawn(tmp_path, lifts, said=f'clearance_piston = "{said}"\n')
    assert outcome(design, AGREES) == ends
