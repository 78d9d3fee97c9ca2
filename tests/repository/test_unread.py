"""What a file tells that could not be read, and that nothing false is said for want of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.repository.all_specs import all_read
from speclint.repository.unread import ids_in, unread_files
from speclint.specs import CylinderBlock, CylinderLiner, PistonRing, Spec
from speclint.testing import SETTINGS, DesignFolder, expect_conforms, expect_finding, expect_not_assessed

KINDS = {kind.kind: kind for kind in (CylinderBlock, CylinderLiner)}


@pytest.mark.parametrize(
    ("text", "kind", "names", "not_named"),
    [
        ('kind = "cylinder-liner"\nhoused_in = "block"\nwrong = 1\n', CylinderLiner, "block", "other"),
        ("kind = 'cylinder-liner'\nhoused_in = 'block\n in_bore = 'left'", CylinderLiner, "left", "right"),
        ('housed_in = "block-{each}"\n', None, "block-left", "left"),
        ('kind = "cylinder-lining"\n', None, "cylinder-lining", ""),
        ("", None, None, "block"),
    ],
)
def test_kind_and_words_by_the_text(
    tmp_path: Path, text: str, kind: type | None, names: str | None, not_named: str
) -> None:
    (tmp_path / "one.toml").write_text(text, encoding="utf-8")
    (found,) = unread_files(tmp_path, ["one.toml"], KINDS)
    assert (found.file, found.kind) == ("one.toml", kind)
    assert found.may_be(CylinderLiner)
    assert found.may_be(PistonRing) is (kind is None)
    assert names is None or found.may_name(names)
    assert not found.may_name(not_named)
    assert names is None or not found.may_name(names, not_named)


def test_what_a_file_tells_that_could_not_be_read(tmp_path: Path) -> None:
    text = '"kind" = "cylinder-liner"\nhoused_in = "block-{each}"\n'
    (tmp_path / "one.toml").write_text(text, encoding="utf-8")
    (tmp_path / "two.toml").write_bytes(b'kind = "piston"\xff\n')
    one, three, two = unread_files(tmp_path, ["two.toml", "one.toml", "three.toml", "one.toml"], KINDS)
    assert one.told == ("one.toml", "cylinder-liner", ("block-{each}", "cylinder-liner", "kind"))
    assert three.told == ("three.toml", "", ())
    assert (two.file, two.kind, two.words) == ("two.toml", None, frozenset({"piston"}))
    assert one.may_name("block-left", "kind")
    assert not one.may_name("block-left", "block")
    assert not one.may_name("block-")
    assert one.may_name()


def test_a_file_that_cannot_be_opened_may_be_anything(tmp_path: Path) -> None:
    (found,) = unread_files(tmp_path, ["none.toml"], KINDS)
    assert found.may_be(CylinderBlock)
    assert found.may_name("block")


BLOCK = 'kind = "cylinder-block"\n[bores.left]\n[bores.right]\n'
LINER = 'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "{}"\n'
FOR_REVIEW = SETTINGS.replace("draft", "for-review")


def block(folder: Path, **more: str) -> Check:
    files = {"block.toml": BLOCK, **{f"{name}.toml": text for name, text in more.items()}}
    return (
        DesignFolder(folder).write(files, settings=FOR_REVIEW).only("bore.one-liner", "block", readable=False)
    )


def test_an_empty_place_is_not_judged_where_its_part_may_be_unread(tmp_path: Path) -> None:
    left, right = LINER.format("left"), LINER.format("right")
    expect_conforms(block(tmp_path, left=left, right=right))
    expect_finding(block(tmp_path, left=left, right="kind = 'shaft'\nwrong = 1\n"))
    beside = block(tmp_path, left=left, right=right + "wrong = 1\n")
    assert beside.outcome != "finding"
    assert any("not judged: right.toml could not be read" in one for one in beside.missing)
    neither = block(tmp_path, left=left + "bore = 480 mm\n", right=right + "wrong = 1\n")
    expect_not_assessed(neither, "not judged: left.toml and right.toml could not be read")


@pytest.mark.parametrize("broken", ["wrong = 1\n", "bore = \n", 'bore = "480 kg"\n'])
def test_a_part_whose_chain_may_lead_on_by_an_unread_file_is_no_orphan(tmp_path: Path, broken: str) -> None:
    ring = 'kind = "piston-ring"\nruns_in = "liner"\n'
    shaft = 'kind = "shaft"\n'
    files = {"block.toml": BLOCK, "liner.toml": LINER.format("left"), "ring.toml": ring, "shaft.toml": shaft}
    folder = DesignFolder(tmp_path)
    rule = "release.belongs-somewhere"
    expect_conforms(folder.write(files).only(rule, "ring"))
    folder.write({**files, "liner.toml": files["liner.toml"] + broken})
    expect_not_assessed(folder.only(rule, "ring", readable=False), "not judged: liner.toml could not be read")
    expect_finding(folder.only(rule, "shaft", readable=False), grade=Grade.OBSERVATION)  # nothing names it


def test_a_duty_that_an_unread_file_may_use_is_not_left_over(tmp_path: Path) -> None:
    files = {
        "engine.toml": 'kind = "engine"\n[cranks.one]\nblock = "block"\n',
        "block.toml": 'kind = "cylinder-block"\nduty = "duty"\n',
        "duty.toml": 'kind = "duty"\n',
    }
    rule, folder = "release.belongs-somewhere", DesignFolder(tmp_path)
    expect_conforms(folder.write(files).only(rule, "engine"))
    folder.write({**files, "block.toml": 'duty = "duty"\nwrong = 1\n'})
    expect_not_assessed(folder.only(rule, "engine", readable=False), "block.toml could not be read")


def test_a_number_that_an_unread_file_may_state_is_not_said_to_be_alone(tmp_path: Path) -> None:
    number = 'drawing = "D-1"\n'
    liner = LINER.format("left") + number
    files = {"block.toml": 'kind = "cylinder-block"\n' + number, "liner.toml": liner + "wrong = 1\n"}
    check = DesignFolder(tmp_path).write(files).only("release.one-drawing-one-part", "block", readable=False)
    expect_not_assessed(check, "not judged: liner.toml could not be read")


def test_a_spec_whose_id_another_has_is_unread_too(tmp_path: Path) -> None:
    """The second of an id is in no design: the bore that it would fill is not judged."""
    left = LINER.format("left") + 'id = "liner"\n'
    right = LINER.format("right") + 'id = "liner"\n'
    check = block(tmp_path, a=left, b=right)
    assert any("not judged: b.toml could not be read" in one for one in check.missing)


def test_a_mark_of_any_list_stands_for_a_name() -> None:
    from speclint.repository.unread import _stands_for

    assert _stands_for("seat-{cylinder}-{end}", "seat-left-back")
    assert not _stands_for("seat-{cylinder}-{end}", "seat-left")
    assert not _stands_for("seat-left", "seat-leftmost")


@pytest.mark.parametrize(
    ("text", "ids"),
    [
        ('kind = "cover\nid = "front"\n', ("front",)),
        ("  'id' = 'front'\n", ("front",)),
        ('"id"="front"', ("front",)),
        ('bid = "back"\nof.id = "front"\n', ("covers",)),
        ('kind = "cover\n', ("covers",)),
        ("", ("covers",)),
        ('id = "c-{each}"\neach = [\n  "left", # first\n  \'right\',\n]\n', ("c-left", "c-right")),
        (
            'id = "c-{side}-{end}"\n[each]\nend = ["f", "b"]\n side = ["l", "r"]\nother = ["x", "y"]\n',
            ("c-l-f", "c-l-b", "c-r-f", "c-r-b"),
        ),
        ('id = "c-{side}-{end}"\n[each]\nside = ["l", "r"]\nend = [f, b]\n', ("c-l-{end}", "c-r-{end}")),
        ('id = "c-{side}-{end}"\n[each]\nside = ["l", "r"]\n', ("c-l-{end}", "c-r-{end}")),
    ],
)
def test_ids_by_the_text(text: str, ids: tuple[str, ...]) -> None:
    assert ids_in(text, "covers") == ids


def test_links_to_what_could_not_be_read_are_not_said_to_lead_nowhere(tmp_path: Path) -> None:
    """Two rings in liners of a file that lacks a quotation mark; a third in a liner that no file states."""
    ring = 'kind = "piston-ring"\nruns_in = "liner-{each}"\nid = "ring-{each}"\neach = ["left", "right", "other"]\n'
    liner = 'kind = "cylinder-liner\nid = "liner-{each}"\neach = ["left", "right"]\n'
    (tmp_path / "ring.toml").write_text(ring, encoding="utf-8")
    kinds: dict[str, type[Spec]] = {kind.kind: kind for kind in (CylinderLiner, PistonRing)}
    for content in (liner, liner.replace("liner\n", 'lining"\n')):
        (tmp_path / "of.toml").write_text(content, encoding="utf-8")
        found = all_read(tmp_path, ["of.toml", "ring.toml"], kinds)
        assert [
            (one.where.file, one.where.line, one.read)
            for one in found.complaints
            if one.where.key == "runs_in"
        ] == [("ring.toml", 2, '"liner-other"')]
        assert [one.where.line for one in found.complaints if one.where.file == "of.toml"] == [1]
        assert set(found.missing) == {"of.toml"}
