"""What the cylinders give: the declared shares of the work, and the live steam as it is drawn."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace

import pytest
from iapws import IAPWS97

from speclint import COMMON_PRACTICE, Sheet
from speclint.handbook.tables import Reading
from speclint.rules import Grade
from speclint.testing import DesignFolder, found, on_sheet
from speclint_events.rules import output
from tests.plugins.events.worked_engine import judged, worked_engine
from tests.plugins.known_metals import WITH_METALS


def test_the_diagram_begins_with_the_live_steam_as_drawn(tmp_path: Path) -> None:
    """16.2 bar and 390 °C, whatever the pressure may rise or fall to."""
    files = worked_engine()
    files["duty.toml"] = files["duty.toml"].replace("16.2 bar absolute", "16.2 bar absolute ±0.8")
    check = DesignFolder(tmp_path).write(files, settings=WITH_METALS).only("cycle.steam-rate")
    assert on_sheet(check, "h_1") == pytest.approx(IAPWS97(P=1.62, T=663.15).h * 1e3, rel=1e-6)


@pytest.mark.parametrize(
    ("front", "back", "grade"),
    [
        (455, 500, None),  # 0.91
        (445, 500, Grade.OBSERVATION),  # 0.89
        (405, 500, Grade.OBSERVATION),  # 0.81
        (400, 500, Grade.OBSERVATION),
        (395, 500, Grade.NONCONFORMITY),  # 0.79
        (545, 500, None),  # 1.09
        (555, 500, Grade.OBSERVATION),  # 1.11
        (620, 500, Grade.OBSERVATION),  # 1.24
        (625, 500, Grade.OBSERVATION),
        (630, 500, Grade.NONCONFORMITY),  # 1.26
    ],
)
def test_each_declared_share_from_both_sides(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, front: int, back: int, grade: Grade | None
) -> None:
    """Work of the front over that of the back where mean pressures in kPa act on like areas: 0.8, 0.9, 1.1 and 1.25."""

    def given() -> Reading:
        return Reading.exact("work of the front over that of the back", front / back, "", COMMON_PRACTICE)

    def steam_of(_gear: object, _case: object, sheet: Sheet) -> SimpleNamespace:
        return SimpleNamespace(of_both=lambda symbol, _name: sheet.look_up(symbol, given))

    monkeypatch.setattr(output, "steam_of", steam_of)
    check = judged(tmp_path, "events.equal-work")
    assert found(check) == pytest.approx(front / back)
    assert check.grade is grade
