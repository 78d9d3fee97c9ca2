"""One file for several parts by more than one list of names, and what differs between them."""

from __future__ import annotations

from pathlib import Path

import jsonschema
import pytest
import tomli

from speclint.checking import Assessment
from speclint.specs import Link, Piston, Spec, schema_of
from speclint.testing import DesignFolder, installed_families

RINGS = """kind = "piston-ring"
id = "ring-{cylinder}-{groove}"
title = "Ring, {cylinder} cylinder, {groove}"
drawing = "A-12"
runs_in = "liner-{cylinder}"

[each]
cylinder = ["left", "right"]
groove = ["front", "back"]
"""
LINERS = 'kind = "cylinder-liner"\nid = "liner-{each}"\neach = ["left", "right"]\nbore = "482 mm"\n'
WORD = 'kind = "piston"\nid = "p-{side}"\nhand = "{side}"\n[each]\nside = ["left", "right"]\n'


def assessed(folder: Path, rings: str) -> Assessment:
    return DesignFolder(folder).write({"r.toml": rings, "l.toml": LINERS}).assess()


def specs(folder: Path, rings: str) -> dict[str, Spec]:
    assessment = assessed(folder, rings)
    assert not assessment.complaints, [str(one) for one in assessment.complaints]
    assert assessment.design is not None
    return {name: spec for name, spec in assessment.design.specs.items() if spec.kind == "piston-ring"}


def drawn(found: dict[str, Spec]) -> dict[str, str]:
    return {name: getattr(spec.drawing, "value", "") for name, spec in found.items()}


def test_every_combination_of_names_is_one_part(tmp_path: Path) -> None:
    found = specs(tmp_path, RINGS)
    assert set(found) == {f"ring-{side}-{end}" for side in ("left", "right") for end in ("front", "back")}
    ring = found["ring-right-back"]
    assert getattr(ring.title, "value", "") == "Ring, right cylinder, back"
    assert getattr(ring, "runs_in", None) is not None
    assert isinstance(ring.runs_in, Link)  # type: ignore[attr-defined]
    assert ring.runs_in.id == "liner-right"  # type: ignore[attr-defined]


def test_what_differs_goes_before_what_all_state_and_more_names_before_fewer(tmp_path: Path) -> None:
    differing = """[for.right]\ndrawing = "B-12"\n[for."back, right"]\ndrawing = "C-12"\n"""
    assert drawn(specs(tmp_path, RINGS + differing)) == {
        "ring-left-front": "A-12",
        "ring-left-back": "A-12",
        "ring-right-front": "B-12",
        "ring-right-back": "C-12",
    }


def test_a_key_that_differs_is_found_where_it_is_written(tmp_path: Path) -> None:
    differing = '[for.right]\nwidth = "8 mm"\n'
    found = specs(tmp_path, RINGS + differing)
    where = found["ring-right-back"].width.where  # type: ignore[attr-defined]
    assert (where.line, where.key, where.part) == (11, "width", "ring-right-back")


def test_a_value_is_replaced_whole_and_a_table_key_by_key(tmp_path: Path) -> None:
    common = RINGS + '[for.left]\nnotes.why = "other"\nwidth = "9 mm"\n'
    common = common.replace(
        "\n[each]",
        'width = { value = "8 mm", from = "measured" }\nnotes.of = "all"\nnotes.why = "one"\n\n[each]',
    )
    found = specs(tmp_path, common)
    assert found["ring-left-back"].notes == {"of": "all", "why": "other"}
    assert found["ring-right-back"].notes == {"of": "all", "why": "one"}
    sizes = {name: ring.width for name, ring in found.items()}  # type: ignore[attr-defined]
    assert sizes["ring-left-back"].provenance == "drawing"
    assert sizes["ring-right-back"].provenance == "measured"


@pytest.mark.parametrize(
    ("change", "complaint"),
    [
        (
            ("ring-{cylinder}-{groove}", "ring-{cylinder}"),
            "r.toml:2 id: the file states several parts, and an id without {groove} would be that of all",
        ),
        (
            ("{cylinder} cylinder", "{cylindre} cylinder"),
            "r.toml:3 title: {cylindre} stands for nothing here",
        ),
        (("{cylinder} cylinder", "{each} cylinder"), "r.toml:3 title: {each} stands for nothing here"),
        (('["front", "back"]', "[]"), "r.toml:9 each.groove: each lists the names of the parts"),
        (('["front", "back"]', '["front", "front"]'), "r.toml:9 each.groove[1]: each lists this name twice"),
        (
            ("groove = [", '"the groove" = ["o"]\ngroove = ['),
            "r.toml:9 each.the groove: the name of a list is one",
        ),
        (("]\n", ']\n[for.frnt]\ndrawing = "B"\n'), "r.toml:9 for.frnt: no list under each has this name"),
    ],
)
def test_lists_that_cannot_be_used(tmp_path: Path, change: tuple[str, str], complaint: str) -> None:
    spoiled = RINGS.replace(*change) if "for." not in change[1] else RINGS + change[1].removeprefix("]\n")
    lines = [str(one) for one in assessed(tmp_path, spoiled).complaints]
    assert any(line.startswith(complaint.replace(":9 for", ":10 for")) for line in lines), lines


@pytest.mark.parametrize(
    ("differing", "complaint"),
    [
        ('for.left = "B"', "r.toml:10 for.left: what differs for a name is a table of keys"),
        ('[for."left, right"]\ndrawing = "B"', "r.toml:10 for.left, right: no part is both left and right"),
        ('[for.left]\nid = "ring"', "r.toml:11 for.left.id: id is stated once for all parts of the file"),
        (
            '[for.left]\nlike = "ring"',
            "r.toml:11 for.left.like: like is stated once for all parts of the file",
        ),
        (
            '[for.left]\ndrawing = "B"\n[for.back]\ndrawing = "C"',
            "r.toml:13 drawing: for.left states this key too, and for the part of both neither goes before the other",
        ),
    ],
)
def test_differences_that_cannot_be_read(tmp_path: Path, differing: str, complaint: str) -> None:
    text = RINGS + f"{differing}\n"
    if differing.startswith("for."):
        text = f"{RINGS}[for]\n{differing.removeprefix('for.')}\n"
        complaint = complaint.replace(":10", ":11")
    (line,) = [str(one) for one in assessed(tmp_path, text).complaints]
    assert line.startswith(complaint)


def test_the_part_of_two_tables_may_be_told_by_one_of_its_own(tmp_path: Path) -> None:
    differing = '[for.left]\ndrawing = "B"\n[for.back]\ndrawing = "C"\n[for."left, back"]\ndrawing = "D"\n'
    assert drawn(specs(tmp_path, RINGS + differing))["ring-left-back"] == "D"


def test_a_name_of_two_lists_is_told_apart_by_the_word_of_its_list(tmp_path: Path) -> None:
    text = RINGS.replace('"back"]', '"left"]')
    found = specs(tmp_path, text + '[for."groove left"]\ndrawing = "B"\n')
    assert [name for name, number in drawn(found).items() if number == "B"] == [
        "ring-left-left",
        "ring-right-left",
    ]
    (line,) = [str(one) for one in assessed(tmp_path, text + '[for.left]\ndrawing = "B"\n').complaints]
    assert line.startswith("r.toml:10 for.left: the lists cylinder and groove both have this name")
    assert line.endswith('write "cylinder left" or "groove left"')


def test_what_differs_by_name_wants_a_list_of_names(tmp_path: Path) -> None:
    text = 'kind = "piston"\n[for.left]\ndiameter = "480 mm"\n'
    lines = [str(one) for one in DesignFolder(tmp_path).write({"p.toml": text}).assess().complaints]
    (line,) = [one for one in lines if " for" in one]
    assert line.startswith("p.toml:2 for: what differs between the parts of a file stands here")


@pytest.mark.parametrize("text", [RINGS, WORD, LINERS, RINGS + '[for."left, back"]\ndrawing = "D"\n'])
def test_the_schema_accepts_what_the_loader_reads(text: str) -> None:
    """A mark may stand where a word is one of a list: it is the word that is put in that must be in it."""
    raw = tomli.loads(text)
    kinds = installed_families().kinds
    jsonschema.validate(raw, schema_of(kinds[raw["kind"]]), jsonschema.Draft202012Validator)


def test_a_word_put_in_is_refused_where_it_is_not_in_the_list(tmp_path: Path) -> None:
    spoiled = WORD.replace('"right"', '"rihgt"')
    lines = [str(one) for one in DesignFolder(tmp_path).write({"c.toml": spoiled}).assess().complaints]
    assert any("c.toml:3 hand:" in line and '"rihgt"' in line for line in lines), lines


def test_the_schema_refuses_an_unknown_key_among_what_differs() -> None:
    raw = tomli.loads(RINGS + '[for.left]\ndrawng = "D"\n')
    with pytest.raises(jsonschema.ValidationError, match="drawng"):
        jsonschema.validate(raw, schema_of(installed_families().kinds["piston-ring"]))


def test_pistons_are_still_stated_by_one_list(tmp_path: Path) -> None:
    text = (
        'kind = "piston"\nid = "piston-{each}"\neach = ["left", "right"]\n[for.right]\ndiameter = "481 mm"\n'
    )
    design = DesignFolder(tmp_path).write({"p.toml": text}).assess().design
    assert design is not None
    right = design.specs["piston-right"]
    assert isinstance(right, Piston)
    assert getattr(right.diameter, "nominal", None) == pytest.approx(0.481)
