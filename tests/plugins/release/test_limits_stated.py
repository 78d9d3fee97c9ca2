"""Sizes that decide are not taken as exact."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import check
from speclint.errors import Location, replace
from speclint.quantities import read
from speclint.specs import CompressionSpring, restated
from speclint.testing import DesignFolder
from tests.plugins.release.part import settings

RULE = "release.limits-stated"
#: Of each kind a spec with every size that wants limits, each with limits in another form.
SOUND = {
    "bolted-joint": '[gasket]\nmodulus = "1..2 GPa"\n',
    "compression-spring": 'wire = "8 mm ±0.04"\nmean_diameter = "50 mm ±0.4"\n',
    "cylinder-block": '[bores.main]\ndiameter = "550 mm H7"\n[seat_bores.inlet]\ndiameter = "170 mm H7"\n',
    "cylinder-liner": 'outside_diameter = "550 mm +0.40/+0.36"\nbore = "500 mm H8"\n',
    "piston": 'diameter = "498.5 mm 0/-0.1"\n',
    "piston-rod": 'diameter = "80 mm h8"\n',
    "poppet-valve": 'wall = "6 mm ±0.5"\n',
    "tappet": 'stem_diameter = "30 mm f7"\n',
    "valve-seat": 'outside_diameter = "170 mm +0.12/+0.10"\n',
}
SIZES = [
    ("bolted-joint", '"1..2 GPa"', '"1.5 GPa"', "modulus of the gasket"),
    ("compression-spring", '"8 mm ±0.04"', '"8 mm"', "wire"),
    ("compression-spring", '"50 mm ±0.4"', '"50 mm"', "mean diameter"),
    ("cylinder-block", '"550 mm H7"', '"550 mm"', "diameter of bore main"),
    ("cylinder-block", '"170 mm H7"', '"170 mm"', "diameter of seat bore inlet"),
    ("cylinder-liner", '"550 mm +0.40/+0.36"', '"550.38 mm"', "outside diameter"),
    ("cylinder-liner", '"500 mm H8"', '"500 mm"', "bore"),
    ("piston", '"498.5 mm 0/-0.1"', '"498.5 mm"', "diameter"),
    ("piston-rod", '"80 mm h8"', '"80 mm"', "diameter"),
    ("poppet-valve", '"6 mm ±0.5"', '"6 mm"', "wall"),
    ("tappet", '"30 mm f7"', '"30 mm"', "stem diameter"),
    ("valve-seat", '"170 mm +0.12/+0.10"', '"170.11 mm"', "outside diameter"),
]


def part(kind: str) -> dict[str, str]:
    return {"part.toml": f'kind = "{kind}"\nid = "part"\n{SOUND[kind]}'}


@pytest.mark.parametrize("kind", SOUND)
def test_sizes_with_limits_conform(workshop: DesignFolder, kind: str) -> None:
    assert workshop.write(part(kind), settings=settings()).only(RULE).outcome == "conforms"


@pytest.mark.parametrize(("kind", "old", "new", "name"), SIZES)
def test_each_size_without_limits_is_told(
    workshop: DesignFolder, kind: str, old: str, new: str, name: str
) -> None:
    workshop.write(part(kind), settings=settings()).replace("part.toml", old, new)
    check = workshop.only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert f"{name} states no limits" in check.says


@pytest.mark.parametrize(
    ("stage", "grade"),
    [("draft", Grade.QUERY), ("for-review", Grade.NONCONFORMITY), ("released", Grade.NONCONFORMITY)],
)
def test_a_draft_is_asked(workshop: DesignFolder, stage: str, grade: Grade) -> None:
    workshop.write(part("poppet-valve"), settings=settings(stage)).replace("part.toml", " ±0.5", "")
    assert workshop.only(RULE).grade is grade


def test_what_was_measured_on_a_part_as_made_has_no_limits_to_state(workshop: DesignFolder) -> None:
    """One value beside the drawn wall; the diameter of another record is drawn without limits, and is told."""
    design = workshop.write(part("compression-spring"), settings=settings()).replace("part.toml", " ±0.4", "")
    found = design.assess()
    assert found.context is not None
    spring = found.context.design.specs["part"]
    assert isinstance(spring, CompressionSpring)
    rule = next(one for one in workshop.loaded.rules if one.name == RULE)
    measured = read("8.01 mm", "length", where=Location("part.toml", 3, "wire", "part"))
    made = restated(spring, {"wire": replace(measured, provenance="as made")})
    says = check(rule, made, found.context).says
    assert "mean diameter states no limits" in says
    assert "wire" not in says


def test_a_size_that_is_not_stated_is_left_to_the_rules_that_take_it(workshop: DesignFolder) -> None:
    workshop.write({"part.toml": 'kind = "poppet-valve"\nid = "part"\n'}, settings=settings())
    assert workshop.only(RULE).outcome == "not applicable"
