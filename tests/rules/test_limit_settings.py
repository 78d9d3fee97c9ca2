"""Limits that a repository sets for itself: what is read, and one line for each that cannot be."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from speclint.repository import Settings, load_settings
from speclint.rules.judgement import Amount, Judgement
from speclint.rules.limit_settings import read_limits
from speclint.rules.no_result import divides_by_zero, has_no_root, name_of
from tests import tubes


def settings(folder: Path, text: str) -> Settings:
    (folder / "speclint.toml").write_text(text, encoding="utf-8")
    found, complaints = load_settings(folder)
    assert found is not None, complaints
    return found


def test_a_limit_is_read_by_rule_and_name(tmp_path: Path) -> None:
    text = '[limits."tube.stress"]\nallowable = "90 MPa"\n[limits."tube.hoops"]\nleast = "5"\n'
    limits, complaints = read_limits(settings(tmp_path, text), tubes.RULES)
    assert complaints == []
    assert {key: one.nominal for key, one in limits.items()} == {
        ("tube.stress", "allowable"): 90e6,
        ("tube.hoops", "least"): 5.0,
    }


@pytest.mark.parametrize(
    ("text", "line"),
    [
        (
            '[limits."tube.stres"]\nallowable = "90 MPa"\n',
            'no rule is called tube.stres; write "tube.stress"',
        ),
        (
            '[limits."tube.stress"]\nallowabel = "90 MPa"\n',
            'tube.stress has no limit called allowabel; write "allowable"',
        ),
        (
            '[limits."tube.ends"]\nmost = "90 MPa"\n',
            "tube.ends has no limit called most; write nothing: this rule has no limit to set",
        ),
        (
            '[limits."tube.stress"]\nallowable = 90\n',
            'a limit is written as text with its unit; read 90; write "100 MPa"',
        ),
        (
            '[limits."tube.stress"]\nallowable = "90 mm"\n',
            '"mm" is no unit of stress; read "90 mm"; write one of: Pa',
        ),
        (
            '[limits."tube.stress"]\nallowable = "90 MPa ±1"\n',
            'a limit has no tolerance of its own; read "90 MPa ±1"; write "100 MPa"',
        ),
    ],
)
def test_what_is_wrong_is_one_line_at_its_key(tmp_path: Path, text: str, line: str) -> None:
    limits, (complaint,) = read_limits(settings(tmp_path, text), tubes.RULES)
    assert limits == {}
    assert complaint.where.file == "speclint.toml"
    assert complaint.where.line == 2
    assert line in str(complaint)


def test_sound_limits_are_kept_beside_wrong_ones(tmp_path: Path) -> None:
    text = '[limits."tube.stress"]\nallowable = "90 MPa"\nallowabel = "90 MPa"\n'
    limits, complaints = read_limits(settings(tmp_path, text), tubes.RULES)
    assert (len(limits), len(complaints)) == (1, 1)


STRESS = Judgement(True, "", 0.9, Amount(90e6, "Pa", "stress"), Amount(100e6, "Pa", "allowed", "MPa"), "≤")


@pytest.mark.parametrize(
    ("changes", "numbers"),
    [
        ({}, "90 MPa ≤ 100 MPa"),
        ({"holds": False, "found": Amount(110e6, "Pa", "stress")}, "110 MPa > 100 MPa"),
        ({"found": Amount(90e6, "Pa", "stress", "N/mm²")}, "90 N/mm² ≤ 100 MPa"),
        (
            {"found": Amount(90e6, "Pa", "stress", "N/mm²"), "limit": Amount(100e6, "Pa", "allowed")},
            "90 N/mm² ≤ 100 N/mm²",
        ),
        ({"found": None}, ""),
        ({"limit": None}, ""),
        ({"compared": "reported"}, ""),
    ],
)
def test_what_was_found_and_its_limit_without_their_names(changes: dict[str, Any], numbers: str) -> None:
    assert replace(STRESS, **changes).numbers == numbers


def test_a_judgement_that_is_accepted_holds_in_its_words() -> None:
    failing = Judgement(False, "too much", 1.2, parts=(Judgement(False, "one"), Judgement(False, "two")))
    accepted = failing.accepted("C-1 accepts it")
    assert (accepted.holds, accepted.says, accepted.parts) == (True, "C-1 accepts it", ())
    assert accepted.utilisation == 1.2


class Table:
    """A table that is an object."""

    def __call__(self) -> float:
        return 1.0


def test_why_there_is_no_result() -> None:
    assert divides_by_zero("size_of").says == "size of cannot be worked here: it would divide by 0"
    assert divides_by_zero("f", {"a": 0.0, "b": 1.0}).says.endswith("divide by 0: a is 0")
    assert divides_by_zero("f", {"a": 0.0, "b": 0}).says.endswith("divide by 0: a and b are 0")
    assert has_no_root("f").says == "f cannot be worked here: it would take a root of a number below 0"
    assert (name_of(test_why_there_is_no_result), name_of(Table())) == (
        "test_why_there_is_no_result",
        "Table",
    )
