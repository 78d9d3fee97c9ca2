"""Parts and the parts that they go into: from both sides, and nothing said where something is not stated."""

from __future__ import annotations

from pathlib import Path
from typing import ClassVar

import pytest

from speclint.repository.misfits import misfits
from speclint.repository.reading import load_specs
from speclint.specs import NOT_STATED, Component, FitsIn, Length, LinkTo, Spec, Word, schema_of
from speclint.testing import installed_families
from tests.tubes import Rack


class Peg(Component):
    """A peg in a rack."""

    kind: ClassVar[str] = "peg"
    called: ClassVar[str] = "peg"
    hosts: ClassVar[tuple[FitsIn, ...]] = (
        FitsIn("diameter", "in_rack", "slots.{in_slot}.width", times=1.02),
        FitsIn("length", "in_rack", "hole"),
    )

    in_rack: LinkTo[Rack] = NOT_STATED
    in_slot: Word[str] = NOT_STATED
    diameter: Length = NOT_STATED
    length: Length = NOT_STATED


KINDS: dict[str, type[Spec]] = {"rack": Rack, "peg": Peg}
RACK = (
    'kind = "rack"\nhole = "106 mm +0.1/0"\n[slots.left]\nwidth = "20 mm"\n[slots."a.b"]\nwidth = "20 mm"\n'
)
LEFT = 'kind = "peg"\nin_rack = "rack"\nin_slot = "left"\n'


def said(folder: Path, peg: str) -> list[str]:
    texts = {"rack": RACK, "peg": peg}
    for name, text in texts.items():
        (folder / f"{name}.toml").write_text(text, encoding="utf-8")
    loaded = {name: load_specs(folder / f"{name}.toml", f"{name}.toml", KINDS)[0].spec for name in texts}
    return [str(one) for one in misfits({name: spec for name, spec in loaded.items() if spec})]


@pytest.mark.parametrize(
    "peg",
    [
        LEFT + 'diameter = "20.4 mm"',
        LEFT + 'diameter = "20.5 mm ±0.1"',
        LEFT + 'length = "106.1 mm"',
        LEFT.replace("left", "right") + 'diameter = "90 mm"',
        LEFT.replace("left", "a.b") + 'diameter = "90 mm"',
        LEFT.replace('in_slot = "left"', "") + 'diameter = "90 mm"',
        LEFT.replace("rack", "rakc") + 'diameter = "90 mm"',
        LEFT,
    ],
)
def test_what_fits_or_cannot_be_compared_passes(tmp_path: Path, peg: str) -> None:
    assert said(tmp_path, peg) == []


@pytest.mark.parametrize(
    ("peg", "line"),
    [
        (
            LEFT + 'diameter = "20.41 mm"',
            "peg.toml:4 diameter: diameter does not go into that of rack.toml:4 slots.left.width, which is 20 mm; "
            'read "20.41 mm"; write no more than 20.4 mm, or the other dimension as it is',
        ),
        (
            LEFT + 'length = "4.2 in"',
            "peg.toml:4 length: length does not go into that of rack.toml:2 hole, which is 106 mm +0.1/0; "
            'read "4.2 in"; write no more than 106.1 mm, or the other dimension as it is',
        ),
    ],
)
def test_what_does_not_fit_names_both_places(tmp_path: Path, peg: str, line: str) -> None:
    assert said(tmp_path, peg) == [line]


def test_it_is_printed() -> None:
    assert schema_of(Peg)["description"].endswith(
        "It must fit: diameter is no more than 1.02 × slots.{in_slot}.width of in_rack; "
        "length is no more than hole of in_rack."
    )


@pytest.mark.parametrize("kind", sorted(installed_families().kinds))
def test_every_link_and_key_that_a_kind_names_is_there(kind: str) -> None:
    """A misspelt key would make a condition that nothing can break."""
    model = installed_families().kinds[kind]
    for fit in model.hosts:
        assert {fit.key, fit.link} <= set(model.model_fields)
        target = model.model_fields[fit.link].metadata[0]
        assert type(target).__name__ == "_Links"
