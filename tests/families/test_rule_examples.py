"""The file of examples that a family may bring: read where it is asked for, one line for each fault."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from speclint.errors import FamilyError
from speclint.families import Family, rule_examples
from speclint.families.rule_examples import RuleExample
from speclint.repository import Change
from speclint.testing import made_family

EXAMPLE = '''
["drain.bore"]
component = "drain"
holds = """
# drain, a drain cock
bore = "12 mm"
"""
result = "bore 12 mm ≥ 10 mm"
finding = "the bore is 9 mm, 10 mm wanted"

[["drain.bore".breaks]]
component = "drain"
key = "bore"
value = "9 mm"
'''


@pytest.fixture
def package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """The folder ``data`` of a package on the path of imports."""
    folder = tmp_path / "speclint_drains" / "data"
    folder.mkdir(parents=True)
    (folder.parent / "__init__.py").write_text("", encoding="utf-8")
    monkeypatch.syspath_prepend(str(tmp_path))
    yield folder
    sys.modules.pop("speclint_drains", None)


FAMILY = Family("drains", "speclint_drains", None)


def fault_of(package: Path, text: str) -> str:
    """The one line that is said of a file."""
    (package / "examples.toml").write_text(text, encoding="utf-8")
    with pytest.raises(FamilyError) as refused:
        rule_examples([FAMILY])
    assert "\n" not in str(refused.value)
    return str(refused.value)


def test_an_example_is_read(package: Path) -> None:
    (package / "examples.toml").write_text(EXAMPLE, encoding="utf-8")
    (one,) = rule_examples([FAMILY]).values()
    assert (one.rule, one.component) == ("drain.bore", "drain")
    assert one.holds == '# drain, a drain cock\nbore = "12 mm"\n'
    assert (one.result, one.finding) == ("bore 12 mm ≥ 10 mm", "the bore is 9 mm, 10 mm wanted")
    assert one.changes == (Change("drain", "bore", "9 mm"),)
    assert (one.given, one.alone) == ((), False)
    assert one.breaks == '# drain\nbore = "9 mm"\n'


def test_what_breaks_is_shown_as_specs_write_it(package: Path) -> None:
    """Keys under their tables, what is left out as a comment, and a whole spec as its text."""
    more = """
[["drain.bore".breaks]]
component = "drain"
key = "ports.front.seat[1].width"
value = { value = "3 mm", note = "worn" }

[["drain.bore".breaks]]
component = "drain"
key = "locked"
absent = true

[["drain.bore".breaks]]
component = "drain-again"
spec = '''
kind = "drain"
'''

[["drain.bore".breaks]]
component = "block"
absent = true
"""
    (package / "examples.toml").write_text(EXAMPLE + more, encoding="utf-8")
    assert rule_examples([FAMILY])["drain.bore"].breaks == (
        '# drain\nbore = "9 mm"\n# locked left out\n\n'
        '[[ports.front.seat]]  # number 2\nwidth = { value = "3 mm", note = "worn" }\n\n'
        '# drain-again beside the others\nkind = "drain"\n\n'
        "# block left out\n"
    )


def test_a_family_without_the_file_has_no_example(package: Path) -> None:
    assert not rule_examples([FAMILY])
    point = made_family("valves-of-drains")
    assert not rule_examples([Family(point.name, point.value, None)])
    assert package.is_dir()


@pytest.mark.parametrize(
    ("old", "new", "fault"),
    [
        ("bore 12 mm ≥", 'bore" 12 mm ≥', "data/examples.toml:8: this is not TOML"),
        (
            'component = "drain"\nholds',
            "holds",
            'data/examples.toml:2 "drain.bore".component: a text is expected',
        ),
        (
            'result = "bore 12 mm ≥ 10 mm"',
            "result = 12",
            '"drain.bore".result: a text is expected here; read 12',
        ),
        ("finding =", "findings =", '"drain.bore".findings: "findings" is no key here; write "finding"'),
        ('result = "', 'alone = "yes"\nresult = "', 'alone: this is true or false; read "yes"'),
        (
            'value = "9 mm"',
            "",
            '"drain.bore".breaks.0: it does not say what is changed; write key and value;',
        ),
        ('value = "9 mm"', "absent = false", "it does not say what is changed"),
        ('value = "9 mm"', 'value = "9 mm"\nabsent = true', "it does not say what is changed"),
        ('value = "9 mm"', 'values = "9 mm"', '"values" is no key here; write "value"'),
        ('key = "bore"', "key = 3", '"drain.bore".breaks.0.key: a text is expected here; read 3'),
        ('[["drain.bore".breaks]]', '["drain.bore".breaks]', "a list of changes is expected here"),
        (
            'result = "',
            'given = [3]\nresult = "',
            '"drain.bore".given.0: a change is a table; read 3; write { ',
        ),
        ('["drain.bore"]\n', "['drain.bore'.so]\n", "is no key here"),
        (
            '["drain.bore"]\n',
            '"drain.height" = 3\n["drain.bore"]\n',
            "a table is expected for each rule; read 3",
        ),
    ],
)
def test_a_broken_file_draws_one_line(package: Path, old: str, new: str, fault: str) -> None:
    assert EXAMPLE.count(old) == 1
    said = fault_of(package, EXAMPLE.replace(old, new))
    assert said.startswith("family drains: data/examples.toml")
    assert fault in said


def test_an_example_without_a_change_is_refused(package: Path) -> None:
    said = fault_of(package, EXAMPLE.partition("[[")[0])
    assert 'data/examples.toml:2 "drain.bore": it does not say what breaks the rule' in said


def test_bytes_that_are_no_text_are_refused(package: Path) -> None:
    (package / "examples.toml").write_bytes(b"\xff\xfe")
    with pytest.raises(FamilyError, match=r"family drains: data/examples\.toml: the file is not UTF-8 text"):
        rule_examples([FAMILY])


@pytest.mark.parametrize(
    ("raised", "why"),
    [
        (PermissionError(13, "Permission denied"), "Permission denied"),
        (OSError("the disk is gone"), "the disk is gone"),
    ],
)
def test_a_file_that_cannot_be_read_is_told(
    package: Path, monkeypatch: pytest.MonkeyPatch, raised: OSError, why: str
) -> None:
    def refuses(*_: object, **__: object) -> str:
        raise raised

    (package / "examples.toml").write_text(EXAMPLE, encoding="utf-8")
    monkeypatch.setattr(Path, "read_text", refuses)
    with pytest.raises(FamilyError) as refused:
        rule_examples([FAMILY])
    assert str(refused.value) == f"family drains: data/examples.toml: the file cannot be read: {why}"


def test_a_family_that_is_no_package_has_no_example(package: Path) -> None:
    """A module has no folder of its own: what stands beside it is not its data. Another may not be found at all."""
    (package / "examples.toml").write_text(EXAMPLE, encoding="utf-8")
    package.rename(package.parent.parent / "data")
    (package.parent.parent / "drains_alone.py").write_text("", encoding="utf-8")
    assert not rule_examples([Family("drains", "drains_alone", None), Family("lost", "no_such_module", None)])


def test_the_lines_of_a_file_from_windows_are_counted_and_read_as_any(package: Path) -> None:
    (package / "examples.toml").write_bytes(EXAMPLE.replace("\n", "\r\n").encode())
    assert rule_examples([FAMILY])["drain.bore"].holds == '# drain, a drain cock\nbore = "12 mm"\n'


def test_an_example_is_of_the_common_specs_unless_it_says_otherwise() -> None:
    assert not RuleExample("drain.bore", "drain", "", "", "", ()).alone


def test_two_families_with_an_example_of_one_rule_are_told(package: Path) -> None:
    (package / "examples.toml").write_text(EXAMPLE, encoding="utf-8")
    other = Family("cocks", "speclint_drains", None)
    with pytest.raises(
        FamilyError, match=r"family cocks: .*example of drain\.bore, and so has the family drains"
    ):
        rule_examples([FAMILY, other])
