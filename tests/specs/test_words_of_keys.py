"""What is said of a key, and in which unit a range is shown: by sentences and numbers written here."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.quantities import read
from speclint.specs import Catalogue, CylinderBlock, CylinderCover
from speclint.specs.key_descriptions import said_of
from speclint.specs.measured_sizes import _in_unit
from speclint.specs.taking_over import OwnPlace
from speclint.specs.template import template_of
from speclint.testing import DesignFolder


@pytest.mark.parametrize(
    ("si", "dimension", "like", "shown"),
    [
        (293.15, "temperature", "15 °C", "20"),
        (293.15, "temperature", "300 K", "293.15"),
        (293.15, "temperature", "100 °F", "68"),
        (10.0, "temperature difference", "1 K", "10"),
        (0.0254, "length", "1 in", "1"),
        (250000.0, "fluid pressure", "1 bar gauge", "2.5"),
    ],
)
def test_a_number_is_shown_in_the_unit_of_another(si: float, dimension: str, like: str, shown: str) -> None:
    """20 °C is 293.15 K and 68 °F; a difference has no zero to count from."""
    assert _in_unit(si, read(like, dimension, "any"), 12) == shown


def test_a_key_of_which_each_part_states_its_own_says_so() -> None:
    found = [
        field
        for kind in Catalogue().values()
        for field in kind.model_fields.values()
        if any(isinstance(mark, OwnPlace) for mark in field.metadata)
    ]
    assert found
    assert all(said_of(field).endswith("each part states its own") for field in found)


@pytest.mark.parametrize("word", ["cylinder-block", "piston", "duty", "weldment"])
def test_what_a_template_says_of_a_key_begins_with_words(word: str) -> None:
    remarks = [line for line in template_of(Catalogue()[word]).splitlines() if line.startswith("# ")]
    assert remarks
    assert [line for line in remarks if line.startswith("# ;")] == []


_BORE = f'kind = "{CylinderBlock.kind}"\n[bores.main]\ndiameter = "{{}}"\nrecess_diameter = "{{}}"\n'
_COVER = f'kind = "{CylinderCover.kind}"\ncircle = "{{}}"\noutside_diameter = "{{}}"\n'


@pytest.mark.parametrize(
    ("text", "less", "more"),
    [(_BORE, "diameter", "recess_diameter"), (_COVER, "circle", "outside_diameter")],
    ids=["bore and its recess", "bolt circle and cover"],
)
@pytest.mark.parametrize(("first", "refused"), [("499 mm", False), ("500 mm", True), ("501 mm", True)])
def test_of_two_diameters_the_inner_is_the_less(
    tmp_path: Path, text: str, less: str, more: str, first: str, refused: bool
) -> None:
    shop = DesignFolder(tmp_path).write({"part.toml": text.format(first, "500 mm")})
    complaints = [str(one) for one in shop.assess().complaints]
    assert any(f"{less} must be less than {more}" in one for one in complaints) == refused
    assert bool(complaints) == refused
