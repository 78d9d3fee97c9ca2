"""What the record of a part holds: its pieces, its sheets and what is open, by hand on a tube that is a safety part."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Rule, Sheet, rule
from speclint.made import dossier
from speclint.made.dossier import PartInDossier
from speclint.testing import DesignFolder, changed
from tests import tubes


@rule(
    "tube.of-none",
    title="does not apply",
    on=tubes.Tube,
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def of_none(_tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """Of hold grade, but of no tube."""
    raise sheet.not_applicable("for tests")


def measured(key: str, value: str) -> str:
    return f'[measured.{key}]\nvalues = ["{value} mm"]\nuncertainty = "10 µm"\ndate = "2026-05-31"\n'


def recorded(
    folder: Path,
    *changes: tuple[str, str],
    rules: tuple[Rule, ...] = (),
    made: str = "",
    more: dict[str, str] | None = None,
) -> PartInDossier:
    """The tube, a safety part; beside it stand a rack that is none, and a piece that is made to nothing."""
    safe = ('ends = "open"\n', 'ends = "open"\nsafety_part = true\n')
    files = {
        **tubes.FILES,
        "tube.toml": changed(tubes.TUBE, safe, *changes),
        "tube-1.toml": f'kind = "made-part"\nid = "tube-1"\nof = "tube"\nserial = "1"\n{made}',
        "stray.toml": 'kind = "made-part"\nid = "stray"\nserial = "2"\n',
        **(more or {}),
    }
    drawn = DesignFolder(folder, tubes.tubes(*rules)).write(files).assess()
    [found] = dossier(drawn)
    assert found.part.id == "tube"
    return found


def test_the_sheets_are_those_of_hold_grade_that_apply(tmp_path: Path) -> None:
    found = recorded(tmp_path, rules=(*tubes.RULES, of_none))
    assert found.why == ("safety part",)
    assert {one.rule.name for one in found.sheets} == {"tube.stress", "tube.loose-hot"}


def test_a_piece_tells_the_sizes_that_are_out_and_those_that_prove_nothing(tmp_path: Path) -> None:
    """Drawn 99.5 to 100.5 mm and 104.5 to 105.5 mm, U = 0.01 mm: 100.6 mm is out, 105.495 mm undecided, 105 mm in."""
    both = measured("bore", "100.6") + measured("outside", "105.495")
    [piece] = recorded(tmp_path, made=both).pieces
    assert [(one.key, one.verdict) for one in piece.departures] == [("bore", "out"), ("outside", "undecided")]
    [piece] = recorded(tmp_path, made=measured("outside", "105.0")).pieces
    assert piece.departures == ()


def test_what_is_open_is_a_nonconformity_or_graver(tmp_path: Path) -> None:
    """The wall of (101.4 − 100.5) mm bears 30 × 100.5/0.9 bar = 335 MPa and in steam 134 MPa, of 100; three hoops in
    place of four are an observation.
    """
    found = recorded(tmp_path, ("105 mm ±0.5", "101.5 mm ±0.1"), ("hoops = 4", "hoops = 3"))
    assert {one.rule.name for one in found.open} == {"tube.stress", "tube.case-stress"}


def test_no_record_is_made_of_what_could_not_be_read(tmp_path: Path) -> None:
    drawn = DesignFolder(tmp_path, tubes.tubes()).write({}, settings="[works\n").assess()
    with pytest.raises(ValueError, match="nothing could be read to make the record of"):
        dossier(drawn)


@pytest.mark.parametrize(
    ("second", "wanted"),
    [("", ["tube-1", "tube-2"]), ("fitted = true\n", ["tube-2"]), ("fitted = false\n", ["tube-1"])],
)
def test_the_pieces_are_those_fitted_or_all_that_were_not_scrapped(
    tmp_path: Path, second: str, wanted: list[str]
) -> None:
    other = f'kind = "made-part"\nid = "tube-2"\nof = "tube"\nserial = "3"\n{second}'
    found = recorded(tmp_path, more={"tube-2.toml": other})
    assert [one.made.id for one in found.pieces] == wanted
    assert [one.fitted for one in found.pieces] == [second == "fitted = true\n"] * len(wanted)
