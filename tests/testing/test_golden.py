"""Golden results: a number moves only with the edition of its rule, or with what it rests on."""

from __future__ import annotations

import json
import math
from pathlib import Path

import pytest

from speclint import Grade, Judgement, Rule, Sheet
from speclint.checking import Assessment
from speclint.errors import replace
from speclint.testing import DesignFolder, expect_golden, write_golden
from tests import tubes
from tests.tubes import FILES, Tube


@pytest.fixture
def golden(tmp_path: Path) -> Path:
    """The golden results of a tube with its own rule of stress."""
    file = tmp_path / "golden.json"
    write_golden(assessed(tmp_path / "design"), file)
    return file


def assessed(folder: Path, rule: Rule = tubes.stress, files: dict[str, str] = FILES) -> Assessment:
    return DesignFolder(folder, tubes.tubes(rule)).write(files).assess()


def stricter(tube: Tube, sheet: Sheet) -> Judgement:
    """The same inputs, another result: the wall counts only half."""
    bore = sheet.take("d", tube.bore)
    outside = sheet.take("D", tube.outside)
    pressure = sheet.take("p", tube.pressure)
    stress = sheet.work("σ", tubes.mean_hoop_stress, p=2 * pressure, d=bore, D=outside)
    return sheet.at_most(stress, sheet.limit("allowable", "σ_all"))


def test_the_same_results_are_golden(tmp_path: Path, golden: Path) -> None:
    text = golden.read_text(encoding="utf-8")
    assert '"tube tube.stress": {"edition": 1, "outcome": "conforms", "grade": null, "used": 0.75375' in text
    expect_golden(assessed(tmp_path / "again"), golden)
    write_golden(assessed(tmp_path / "again"), golden)
    assert golden.read_text(encoding="utf-8") == text


def test_a_result_has_what_is_found_and_what_is_used(golden: Path) -> None:
    """By hand: 3 MPa × 100.5/(104.5 − 100.5) = 75.375 MPa of 100 MPa."""
    result = json.loads(golden.read_text(encoding="utf-8"))["tube tube.stress"]
    assert len(result.pop("rests_on")) == 12
    assert result == {
        "edition": 1,
        "outcome": "conforms",
        "grade": None,
        "used": 0.75375,
        "found": pytest.approx(75.375e6, rel=1e-9),
    }


def test_a_number_that_moves_wants_a_new_edition(tmp_path: Path, golden: Path) -> None:
    """2 × 0.75375 = 1.5075."""
    found = assessed(tmp_path / "again", replace(tubes.stress, function=stricter))
    said = r"conforms at 0\.75375 of the limit became finding at 1\.5075 of the limit: raise the edition of the rule"
    with pytest.raises(AssertionError, match=said):
        expect_golden(found, golden)
    before = golden.read_bytes()
    with pytest.raises(AssertionError, match=said):
        write_golden(found, golden)
    assert golden.read_bytes() == before


def test_with_a_new_edition_the_file_is_written_anew(tmp_path: Path, golden: Path) -> None:
    found = assessed(tmp_path / "again", replace(tubes.stress, function=stricter, edition=2))
    with pytest.raises(AssertionError, match=r"write the file anew$"):
        expect_golden(found, golden)
    write_golden(found, golden)
    expect_golden(found, golden)


def test_an_input_that_moves_needs_no_new_edition(tmp_path: Path, golden: Path) -> None:
    files = {**FILES, "tube.toml": FILES["tube.toml"].replace("30 bar", "31 bar")}
    found = assessed(tmp_path / "again", files=files)
    with pytest.raises(AssertionError, match="or rests on other values; write the file anew"):
        expect_golden(found, golden)
    write_golden(found, golden)
    expect_golden(found, golden)


def test_a_check_that_is_new_or_gone(tmp_path: Path, golden: Path) -> None:
    with pytest.raises(
        AssertionError, match=r"tube tube\.hoops: a new check; write the file anew\n.*no longer"
    ):
        expect_golden(assessed(tmp_path / "again", tubes.hoops), golden)


def test_rounding_of_another_machine_moves_nothing(tmp_path: Path, golden: Path) -> None:
    def rounded(tube: Tube, sheet: Sheet) -> Judgement:
        found: Judgement = tubes.stress.function(tube, sheet)
        assert found.utilisation is not None
        return replace(found, utilisation=found.utilisation * (1 + 1e-12))

    expect_golden(assessed(tmp_path / "again", replace(tubes.stress, function=rounded)), golden)


def test_a_result_without_margin_is_kept_too(tmp_path: Path) -> None:
    def hopeless(tube: Tube, sheet: Sheet) -> Judgement:
        judged: Judgement = tubes.stress.function(tube, sheet)
        return replace(judged, holds=False, utilisation=math.inf)

    found = assessed(tmp_path / "design", replace(tubes.stress, function=hopeless))
    write_golden(found, tmp_path / "golden.json")
    assert (
        json.loads((tmp_path / "golden.json").read_text(encoding="utf-8"))["tube tube.stress"]["used"]
        == "inf"
    )
    expect_golden(found, tmp_path / "golden.json")
    with pytest.raises(AssertionError, match=r"finding at inf of the limit became conforms at 0\.75375"):
        expect_golden(assessed(tmp_path / "again"), tmp_path / "golden.json")


def test_without_a_file_it_fails(tmp_path: Path) -> None:
    with pytest.raises(AssertionError, match=r"there is no golden\.json: write it with write_golden"):
        expect_golden(assessed(tmp_path / "design"), tmp_path / "golden.json")


def using(share: float, tmp_path: Path, edition: int = 1) -> Assessment:
    """The tube with so many times of the limit used, and all else as it was."""

    def judged(tube: Tube, sheet: Sheet) -> Judgement:
        found: Judgement = tubes.stress.function(tube, sheet)
        assert found.utilisation is not None
        return replace(found, utilisation=found.utilisation * share)

    return assessed(tmp_path / "again", replace(tubes.stress, function=judged, edition=edition))


@pytest.mark.parametrize(("share", "same"), [(1 + 0.99e-6, True), (1 + 1.01e-6, False), (1 - 1.01e-6, False)])
def test_two_results_are_one_to_a_part_in_a_million(
    tmp_path: Path, golden: Path, share: float, same: bool
) -> None:
    if same:
        expect_golden(using(share, tmp_path), golden)
    else:
        with pytest.raises(AssertionError, match=r"raise the edition of the rule, now 1$"):
            expect_golden(using(share, tmp_path), golden)


def test_what_is_used_alone_may_move_and_wants_a_new_edition(tmp_path: Path, golden: Path) -> None:
    """What was found is the same: 1.1 × 0.75375 = 0.829125 of the limit is used."""
    write_golden(using(1.0, tmp_path, 2), golden)
    for edition, said in ((2, "raise the edition"), (1, "raise the edition"), (3, "write the file anew")):
        with pytest.raises(
            AssertionError, match=rf"at 0\.75375 of the limit became conforms at 0\.829125 .*{said}"
        ):
            expect_golden(using(1.1, tmp_path, edition), golden)


def test_an_edition_alone_that_moves_is_written_anew(tmp_path: Path, golden: Path) -> None:
    write_golden(using(1.0, tmp_path, 2), golden)
    for edition in (1, 3):
        with pytest.raises(AssertionError, match=r"or rests on other values; write the file anew$"):
            expect_golden(using(1.0, tmp_path, edition), golden)
    write_golden(using(1.0, tmp_path, 3), golden)
    expect_golden(using(1.0, tmp_path, 3), golden)


def test_a_grade_that_moves_alone_wants_a_new_edition(tmp_path: Path) -> None:
    files = {**FILES, "tube.toml": FILES["tube.toml"].replace("30 bar", "45 bar")}
    file = tmp_path / "golden.json"
    write_golden(assessed(tmp_path / "a", files=files), file)
    lighter = replace(tubes.stress, grade=Grade.QUERY, gravest=Grade.QUERY)
    with pytest.raises(AssertionError, match="raise the edition of the rule"):
        expect_golden(assessed(tmp_path / "b", lighter, files), file)


def test_a_check_that_conforms_by_no_number_is_golden_too(tmp_path: Path) -> None:
    found = assessed(tmp_path / "a", tubes.ends)
    write_golden(found, tmp_path / "golden.json")
    result = json.loads((tmp_path / "golden.json").read_text(encoding="utf-8"))["tube tube.ends"]
    assert (result["used"], result["found"]) == (None, None)
    expect_golden(found, tmp_path / "golden.json")
    closed = {**FILES, "tube.toml": FILES["tube.toml"].replace('"open"', '"closed"')}
    with pytest.raises(
        AssertionError, match=r"tube tube\.ends: conforms became finding or rests on other values"
    ):
        expect_golden(assessed(tmp_path / "b", tubes.ends, closed), tmp_path / "golden.json")


def test_a_check_that_was_not_assessed_is_golden_too(tmp_path: Path) -> None:
    files = {**FILES, "tube.toml": FILES["tube.toml"].replace('pressure = "30 bar gauge"\n', "")}
    found = assessed(tmp_path / "a", files=files)
    write_golden(found, tmp_path / "golden.json")
    result = json.loads((tmp_path / "golden.json").read_text(encoding="utf-8"))["tube tube.stress"]
    assert (result["outcome"], result["used"], result["found"]) == ("not assessed", None, None)
    expect_golden(found, tmp_path / "golden.json")
