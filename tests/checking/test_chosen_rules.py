"""The rules that are asked for: of families, by names, and one line where there is no such thing."""

from __future__ import annotations

from dataclasses import replace

import pytest

from speclint.checking import chosen_rules
from speclint.checking.processes import _of
from speclint.errors import FamilyError, SettingsError
from tests import tubes

LOADED = tubes.tubes()


@pytest.mark.parametrize(
    ("families", "rules", "names"),
    [
        ((), (), {"tube.stress", "tube.case-stress", "tube.loose-hot", "tube.hoops", "tube.ends"}),
        (("tubes",), ("tube.hoops",), {"tube.hoops"}),
        ((), ("tube.ends", "tube.stress"), {"tube.ends", "tube.stress"}),
    ],
)
def test_the_rules_that_are_asked_for(
    families: tuple[str, ...], rules: tuple[str, ...], names: set[str]
) -> None:
    assert {one.name for one in chosen_rules(LOADED, families, rules)} == names


@pytest.mark.parametrize(
    ("families", "rules", "said"),
    [
        (("drums",), (), "the family drums is left out by speclint.toml"),
        (("tubs",), (), 'no family is called tubs; write "tubes"'),
        (
            ("tubes",),
            ("tube.stres",),
            'no rule is called tube.stres while speclint.toml leaves out the family drums; write "tube.stress"',
        ),
    ],
)
def test_what_is_not_there_is_one_line(families: tuple[str, ...], rules: tuple[str, ...], said: str) -> None:
    with pytest.raises(SettingsError) as problem:
        chosen_rules(replace(LOADED, left_out=("drums",)), families, rules)
    assert str(problem.value) == said


def test_what_a_helper_says_is_its_result_or_its_error() -> None:
    """Whose fault it is: an error of a family is told as such, any other is a defect of the program."""
    assert _of(("done", [1])) == [1]
    fault = FamilyError("family tubes: it cannot be loaded")
    with pytest.raises(FamilyError, match=r"^family tubes: it cannot be loaded$"):
        _of(("failed", fault))
    with pytest.raises(RuntimeError, match=r"^in a helper process: KeyError: 'a'$"):
        _of(("failed", "KeyError: 'a'"))
