"""Old keys: read as before, told once with file, line, key and what is written now."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import ClassVar

import pytest

from speclint.repository.reading import load_specs
from speclint.specs import (
    NOT_STATED,
    Component,
    Length,
    LinkTo,
    Spec,
    SpecTable,
    Word,
    inner_table,
    old_keys_in,
    old_keys_of,
    schema_of,
    template_of,
)
from speclint.testing import installed_families

KINDS = {**installed_families().kinds}


class Hole(SpecTable):
    """A hole."""

    old_keys: ClassVar[Mapping[str, str]] = {"tapped": "thread"}

    tapped: Word[bool] = NOT_STATED
    thread: Word[str] = NOT_STATED


class Bracket(Component):
    """A bracket.

    Fields:
        size: of its plate
    """

    kind: ClassVar[str] = "bracket"
    called: ClassVar[str] = "bracket"
    old_keys: ClassVar[Mapping[str, str]] = {"size": "thickness", "grade": "material"}

    size: Length = NOT_STATED
    grade: Word[str] = NOT_STATED
    holes: dict[str, Hole] = {}


class Hanger(Bracket):
    """A bracket that hangs."""

    kind: ClassVar[str] = "hanger"
    old_keys: ClassVar[Mapping[str, str]] = {"size": "depth", "hook": "eye", "hangs_on": "held_by"}

    hook: Word[int] = NOT_STATED
    hangs_on: LinkTo[Bracket] = NOT_STATED


def notes(folder: Path, text: str) -> list[str]:
    path = folder / "part.toml"
    path.write_text(text, encoding="utf-8")
    (loaded,) = load_specs(path, "part.toml", {"bracket": Bracket, "hanger": Hanger})
    spec = loaded.spec
    assert spec is not None
    return [str(note) for note in old_keys_in(spec)]


def test_an_old_key_is_told_with_its_place_and_what_is_written_now(tmp_path: Path) -> None:
    text = 'kind = "bracket"\nsize = "8 mm ±0.1"\n[holes.left]\nthread = "M8"\n[holes.right]\ntapped = true\n'
    assert notes(tmp_path, text) == [
        'part.toml:2 size: an old key, read for one more edition; read "8 mm ±0.1"; write thickness',
        "part.toml:6 holes.right.tapped: an old key, read for one more edition; read true; write thread",
    ]


def test_a_kind_has_the_old_keys_of_what_it_is_built_on(tmp_path: Path) -> None:
    said = notes(tmp_path, 'kind = "hanger"\nsize = "8 mm"\ngrade = "S355"\nhook = 2\n')
    assert [line.rpartition("; write ")[2] for line in said] == ["depth", "material", "eye"]


def test_a_link_a_count_and_a_refusal_are_told_as_they_were_read(tmp_path: Path) -> None:
    text = 'kind = "hanger"\nhook = 2\nhangs_on = "bracket-left"\n[holes.left]\ntapped = false\n'
    said = [line.partition("; read ")[2] for line in notes(tmp_path, text)]
    assert sorted(said) == ['"bracket-left"; write held_by', "2; write eye", "false; write thread"]


def test_a_spec_without_old_keys_is_told_nothing(tmp_path: Path) -> None:
    assert notes(tmp_path, 'kind = "bracket"\ntitle = "size"\n') == []


def test_old_keys_are_described_as_old_and_left_out_of_templates() -> None:
    about = schema_of(Bracket)["properties"]
    assert about["size"]["deprecated"] is True
    assert "(an old key, read for one more edition: write thickness)" in about["size"]["description"]
    assert "deprecated" not in about["holes"]
    assert "size" not in template_of(Bracket)
    assert "#thread" in template_of(Bracket)


def tables(table: type[SpecTable]) -> Iterator[type[SpecTable]]:
    yield table
    for field in table.model_fields.values():
        inner, _ = inner_table(field.annotation)
        if inner is not None:
            yield from tables(inner)


@pytest.mark.parametrize("kind", KINDS)
def test_every_old_key_is_a_key_that_is_not_told_to_be_written_again(kind: str) -> None:
    found: type[Spec] = KINDS[kind]
    for table in tables(found):
        for key, now in old_keys_of(table).items():
            assert key in table.model_fields
            assert now.split()[0].rstrip(",:") not in old_keys_of(table)
