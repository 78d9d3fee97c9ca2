"""Limits that a repository sets for itself: what is read, and one line for each that cannot be."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint import COMMON_PRACTICE, Limit
from speclint.errors import replace
from speclint.repository import Settings, load_settings
from speclint.rules.judgement import Amount, Judgement
from speclint.rules.limit_settings import read_limits
from speclint.rules.no_result import divides_by_zero, has_no_root, name_of
from tests import tubes
from tests.own_limits import own_limit

#: The rules of the tubes, known to belong to their family. Of them tube.stress is of hold grade, at 100 MPa.
RULES = tubes.tubes().rules
#: One who is competent for them, and one who is not.
REVIEWERS = """
[reviewers."T. Ester"]
competent_for = ["tubes"]
[reviewers."B. Oiler"]
competent_for = ["boilers"]
"""


def settings(folder: Path, text: str) -> Settings:
    (folder / "speclint.toml").write_text(text, encoding="utf-8")
    found, complaints = load_settings(folder)
    assert found is not None, complaints
    return found


def test_a_limit_is_read_by_rule_and_name(tmp_path: Path) -> None:
    text = '[limits."tube.hoops"]\nleast = "5"\n' + own_limit("tube.stress", "tubes", allowable="90 MPa")
    limits, complaints = read_limits(settings(tmp_path, text), RULES)
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
    limits, (complaint,) = read_limits(settings(tmp_path, text), RULES)
    assert limits == {}
    assert complaint.where.file == "speclint.toml"
    assert complaint.where.line == 2
    assert line in str(complaint)


def test_sound_limits_are_kept_beside_wrong_ones(tmp_path: Path) -> None:
    text = own_limit("tube.stress", "tubes", allowable="90 MPa", allowabel="90 MPa")
    limits, complaints = read_limits(settings(tmp_path, text), RULES)
    assert (len(limits), len(complaints)) == (1, 1)


@pytest.mark.parametrize(
    ("stated", "line"),
    [
        (
            '"1000 MPa"',
            "tube.stress can hold a part back: another limit of it states its grounds and who accepted it",
        ),
        ('"99 MPa"', "states its grounds"),  # which limit is the kinder one only the rule knows
        ('{ value = "99 MPa" }', "states its grounds"),
        ('{ value = "99 MPa", grounds = "none", accepted_by = "T. Ester" }', "states its grounds"),
        ('{ value = "99 MPa", grounds = 3, accepted_by = "T. Ester" }', "states its grounds"),
        ('{ value = "99 MPa", grounds = "proved" }', "accepted by one of the reviewers of these settings"),
        ('{ value = "99 MPa", grounds = "proved", accepted_by = "N. Obody" }', "one of the reviewers"),
        (
            '{ value = "99 MPa", grounds = "proved", accepted_by = "B. Oiler" }',
            "B. Oiler is not competent for the fam",
        ),
        (
            '{ value = "99 MPa", because = "proved" }',
            "because is no key of a limit",
        ),
        ('{ value = "99 mm", grounds = "proved", accepted_by = "T. Ester" }', '"mm" is no unit of stress'),
        ('{ grounds = "proved", accepted_by = "T. Ester" }', "a limit is written as text with its unit"),
    ],
)
def test_a_limit_of_a_rule_of_hold_grade_has_grounds_and_a_competent_reviewer(
    tmp_path: Path, stated: str, line: str
) -> None:
    text = f'[limits."tube.stress"]\nallowable = {stated}\n' + REVIEWERS
    limits, (complaint,) = read_limits(settings(tmp_path, text), RULES)
    assert limits == {}
    assert (complaint.where.file, complaint.where.line) == ("speclint.toml", 2)
    assert line in str(complaint)


def test_where_no_reviewer_is_named_a_limit_says_so(tmp_path: Path) -> None:
    text = '[limits."tube.stress"]\nallowable = { value = "99 MPa", grounds = "proved", accepted_by = "T. Ester" }\n'
    _, (complaint,) = read_limits(settings(tmp_path, text), RULES)
    assert complaint.message.endswith("of these settings (none is named under [reviewers])")


def test_a_complaint_of_a_limit_without_grounds_says_what_to_write(tmp_path: Path) -> None:
    _, (complaint,) = read_limits(
        settings(tmp_path, '[limits."tube.stress"]\nallowable = "1000 MPa"\n'), RULES
    )
    assert complaint.read == '"1000 MPa"'
    assert complaint.write == '{ value = "1000 MPa", grounds = "…", accepted_by = "…" }, or "100 MPa"'


@pytest.mark.parametrize(
    ("rule", "name", "stated"),
    [
        ("tube.stress", "allowable", '"100 MPa"'),  # as the rule has it
        ("tube.stress", "allowable", '"1000 bar"'),
        ("tube.hoops", "least", '"2"'),  # an observation
    ],
)
def test_other_limits_need_no_grounds(tmp_path: Path, rule: str, name: str, stated: str) -> None:
    limits, complaints = read_limits(settings(tmp_path, f'[limits."{rule}"]\n{name} = {stated}\n'), RULES)
    assert complaints == []
    assert list(limits) == [(rule, name)]
    assert [one.note for one in limits.values()] == [""]


@pytest.mark.parametrize(
    ("by", "line"),
    [
        (
            "N. Obody",
            "another limit of tube.hoops is accepted by one of the reviewers of these settings (B. Oiler, T. Ester)",
        ),
        ("B. Oiler", "B. Oiler is not competent for the family tubes, to which tube.hoops belongs"),
        ("T. Ester", ""),
    ],
)
@pytest.mark.parametrize("grounds", ['grounds = "proved", ', ""])
def test_who_is_said_to_accept_a_limit_of_any_grade_is_a_competent_reviewer(
    tmp_path: Path, by: str, line: str, grounds: str
) -> None:
    """Of an observation nobody needs to; where a name is written, reports print it."""
    text = f'[limits."tube.hoops"]\nleast = {{ value = "5", {grounds}accepted_by = "{by}" }}\n' + REVIEWERS
    limits, complaints = read_limits(settings(tmp_path, text), RULES)
    assert [one.message for one in complaints] == ([line] if line else [])
    assert len(limits) == (0 if line else 1)


def test_a_fact_of_the_line_needs_no_grounds(tmp_path: Path) -> None:
    (stress,) = (one for one in RULES if one.name == "tube.stress")
    cant = Limit("cant", "150 mm", "length", COMMON_PRACTICE, setting="cant")
    text = '[limits."tube.stress"]\ncant = "120 mm"\n'
    limits, complaints = read_limits(settings(tmp_path, text), [replace(stress, limits=(cant,))])
    assert (complaints, [one.nominal for one in limits.values()]) == ([], [0.12])


def test_who_accepted_a_limit_and_why_stay_with_it(tmp_path: Path) -> None:
    text = own_limit("tube.stress", "tubes", allowable="90 MPa")
    limits, complaints = read_limits(settings(tmp_path, text), RULES)
    assert complaints == []
    assert [one.note for one in limits.values()] == ["accepted by T. Ester: the test asks for it"]


@pytest.mark.parametrize(
    ("more", "note"),
    [
        ('grounds = "proved"', "proved"),
        ('accepted_by = "T. Ester"', "accepted by T. Ester"),
        ('grounds = "proved", accepted_by = "T. Ester"', "accepted by T. Ester: proved"),
    ],
)
def test_whatever_is_said_of_an_observation_stays_with_its_limit(
    tmp_path: Path, more: str, note: str
) -> None:
    text = f'[limits."tube.hoops"]\nleast = {{ value = "5", {more} }}\n' + REVIEWERS
    limits, complaints = read_limits(settings(tmp_path, text), RULES)
    assert (complaints, [one.note for one in limits.values()]) == ([], [note])


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
