"""Designs made from text: what is written, changed and checked, and what a test is told when it goes wrong."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.testing import DesignFolder, changed, changed_files, without_key
from tests.tubes import FILES, TUBE, raises, tubes


@pytest.fixture
def folder(tmp_path: Path) -> DesignFolder:
    """A tube in its rack, with its duty."""
    return DesignFolder(tmp_path, tubes()).write(FILES)


def test_a_design_is_checked_as_it_was_written(folder: DesignFolder) -> None:
    assert folder.assess().counted()["conforms"] == 5
    assert folder.only("tube.stress").component == "tube"
    assert folder.replace("tube.toml", "30 bar", "45 bar").only("tube.stress").outcome == "finding"


def test_some_paths_are_assessed_alone(folder: DesignFolder) -> None:
    folder.write({"more/second.toml": TUBE})
    assert {check.component for check in folder.assess("more").checks} == {"second"}


def test_settings_are_written_beside_the_specs(folder: DesignFolder) -> None:
    assert 'stage = "draft"' in (folder.root / "speclint.toml").read_text(encoding="utf-8")
    folder.write({}, settings='[works]\nstage = "for-review"\n')
    assert (folder.root / "speclint.toml").read_text(encoding="utf-8") == '[works]\nstage = "for-review"\n'


def test_a_spec_that_cannot_be_read_fails_unless_it_is_meant(folder: DesignFolder) -> None:
    folder.replace("tube.toml", "100 mm", "100,5 mm")
    with pytest.raises(AssertionError, match=r"100\.5 mm"):
        folder.check("tube.stress")
    assert folder.check("tube.stress", readable=False) == []


def test_a_rule_that_could_not_be_run_fails_unless_it_is_meant(tmp_path: Path) -> None:
    """Its outcome is a finding, by which a test that looks for one would pass."""
    folder = DesignFolder(tmp_path, tubes(raises)).write(FILES)
    with pytest.raises(
        AssertionError, match=r"tube\.raises could not be run on tube: ZeroDivisionError: a fault"
    ):
        folder.check("tube.raises")
    with pytest.raises(AssertionError, match="could not be run"):
        folder.only("tube.raises", "tube")
    assert folder.only("tube.raises", "tube", runs=False).outcome == "finding"


def test_a_rule_or_a_component_that_is_not_there(folder: DesignFolder) -> None:
    with pytest.raises(AssertionError, match=r"no rule is called tube\.stres$"):
        folder.check("tube.stres")
    with pytest.raises(AssertionError, match=r"0 checks of tube\.stress on tub$"):
        folder.only("tube.stress", "tub")
    with pytest.raises(AssertionError, match=r"2 checks of tube\.stress on all"):
        folder.write({"second.toml": TUBE}).only("tube.stress")


def test_a_passage_stands_exactly_once(folder: DesignFolder) -> None:
    assert changed("a b", ("a", "c"), add=" d") == "c b d"
    with pytest.raises(AssertionError, match=r"'a' stands 2 times in the text"):
        changed("a a", ("a", "b"))
    with pytest.raises(AssertionError, match=r"'200 mm' stands 0 times in tube\.toml"):
        folder.replace("tube.toml", "200 mm", "100 mm")


def test_passages_of_files() -> None:
    found = changed_files(FILES, ("tube.toml", "hoops = 4", "hoops = 3"), ("rack.toml", "106 mm", "107 mm"))
    assert "hoops = 3" in found["tube.toml"]
    assert "107 mm" in found["rack.toml"]
    assert "hoops = 4" in FILES["tube.toml"]
    with pytest.raises(AssertionError, match=r"'hoops = 5' stands 0 times in tube\.toml"):
        changed_files(FILES, ("tube.toml", "hoops = 5", "hoops = 3"))


def test_a_passage_that_stands_in_many_places() -> None:
    found = changed_files({"a.toml": "x x"}, ("a.toml", "x", "y"), everywhere=True)
    assert found == {"a.toml": "y y"}
    with pytest.raises(AssertionError, match=r"'z' stands 0 times in a\.toml"):
        changed_files({"a.toml": "x x"}, ("a.toml", "z", "y"), everywhere=True)


def test_a_key_left_out() -> None:
    assert "hoops" not in without_key(TUBE, "hoops")
    with pytest.raises(AssertionError, match="hoop is stated 0 times"):
        without_key(TUBE, "hoop")
