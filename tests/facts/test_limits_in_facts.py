"""A share or a size that a fact works with, and that a rule has as a limit, is one number in both places."""

from __future__ import annotations

from importlib import import_module

import pytest

from speclint.families import load_families
from speclint.quantities import read

#: Each constant of a fact, and the limit of a rule that has the same number.
ALIKE = [
    ("cylinders", "_LEAST_OF_FACE", "cover.of-its-face", "least"),
    ("lifted_masses", "_WALL_OF_BOX", "mass.by-sizes", "wall of a box"),
    ("moving_masses", "_LEAST_SHARE", "mass.by-sizes", "least share"),
    ("moving_masses", "_GREATEST_SHARE", "mass.by-sizes", "greatest share"),
    ("pipe_movement", "_LEAST_OF_FACES", "pipe.anchors-at-its-ends", "share"),
    ("springs", "_RATES_AGREE", "coil-spring.rate", "rate-agreement"),
    ("gear", "_LENGTHS_AGREE", "tappet.lengths-close", "difference"),
]


@pytest.mark.parametrize(("module", "name", "rule", "limit"), ALIKE, ids=str)
def test_a_fact_and_a_rule_have_one_number(module: str, name: str, rule: str, limit: str) -> None:
    (stated,) = (
        declared
        for one in load_families().rules
        if one.name == rule
        for declared in one.limits
        if declared.name == limit
    )
    worked = getattr(import_module(f"speclint.facts.{module}"), name)
    assert worked == pytest.approx(read(stated.default, stated.dimension).nominal, rel=1e-12)
