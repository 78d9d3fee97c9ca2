"""What a family declares of how its rules must go: read from its package, one line for each fault."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from speclint.errors import FamilyError
from speclint.families import Family
from speclint.testing import Declared, declared_properties

FAMILY = Family("drains", "speclint_drains", None)
DECLARED = """
[never_better_with]
pressure = ["drain.wall"]
temperature = ["drain.wall", "drain.hot"]

[[with_size]]
power = -1
why = "the least wanted is a length that stays"
rules = ["drain.hot"]

[exempt."drain.bore"]
tightening = "the tolerance itself is judged"
"""


@pytest.fixture
def package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """The folder ``data`` of a package on the path of imports."""
    folder = tmp_path / "speclint_drains" / "data"
    folder.mkdir(parents=True)
    (folder.parent / "__init__.py").write_text("", encoding="utf-8")
    monkeypatch.syspath_prepend(str(tmp_path))
    yield folder
    sys.modules.pop("speclint_drains", None)


def test_what_is_declared_is_read(package: Path) -> None:
    (package / "properties.toml").write_text(DECLARED, encoding="utf-8")
    assert declared_properties([FAMILY]) == {
        "drain.wall": Declared(never_better_with=("pressure", "temperature")),
        "drain.hot": Declared(never_better_with=("temperature",), power=-1),
        "drain.bore": Declared(exempt={"tightening": "the tolerance itself is judged"}),
    }


def test_a_family_without_the_file_declares_nothing(package: Path) -> None:
    assert package.is_dir()
    assert declared_properties([FAMILY, Family("made", "made.in.memory", None)]) == {}


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("[never_better_with]", "[never_better_with", "cannot be read"),
        ("never_better_with", "never_worse_with", '"never_worse_with" is no key here'),
        ("temperature = [", "heat = [", '"heat" is no key here'),
        ('["drain.hot"]', '"drain.hot"', "rules is a list of names of rules"),
        ("power = -1", 'power = "-1"', "with_size wants a whole number as power"),
        ('why = "the least wanted is a length that stays"\n', "", "and the physics in why"),
        (
            '["drain.hot"]\n\n[exempt',
            '["drain.hot", "drain.hot"]\n\n[exempt',
            "with_size lists drain.hot twice",
        ),
        ("tightening =", "tolerances =", '"tolerances" is no key here'),
        ('"the tolerance itself is judged"', '""', "says of a property why it does not hold"),
        ('[exempt."drain.bore"]\ntightening = ', "exempt = ", "exempt is a table"),
    ],
)
def test_a_fault_is_one_line(package: Path, old: str, new: str, said: str) -> None:
    assert old in DECLARED
    text = DECLARED.replace(old, new)
    if new.startswith("exempt ="):  # a key at the top stands before all tables
        head, _, tail = text.partition("exempt =")
        text = f"exempt ={tail}{head}"
    (package / "properties.toml").write_text(text, encoding="utf-8")
    with pytest.raises(FamilyError) as refused:
        declared_properties([FAMILY])
    assert str(refused.value).startswith("family drains: data/properties.toml: ")
    assert said in str(refused.value)
    assert "\n" not in str(refused.value)


def test_a_file_that_is_no_text_is_one_line(package: Path) -> None:
    (package / "properties.toml").write_bytes(b"\xff\xfe")
    with pytest.raises(FamilyError, match="cannot be read"):
        declared_properties([FAMILY])
