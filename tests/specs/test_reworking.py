"""Which way a size goes when metal comes off: as a sign, by which machining is reckoned, and by its tolerance class."""

from __future__ import annotations

import pytest

from speclint.repository.reading import load_specs
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.testing import DesignFolder


def test_machining_makes_a_bore_greater_and_a_journal_less() -> None:
    assert (OPENED.way, CUT_DOWN.way) == (1, -1)


@pytest.mark.parametrize(
    ("kind", "line", "told"),
    [
        ("cylinder-liner", 'outside_diameter = "578 mm t6"', ""),
        ("cylinder-liner", 'outside_diameter = "578 mm +0.1/0"', ""),
        (
            "cylinder-liner",
            'outside_diameter = "578 mm H7"',
            'H7 is a tolerance class of a hole, and this is an outside; read "578 mm H7"; write h7, or the limits',
        ),
        ("cylinder-liner", 'bore = "500 mm H8"', ""),
        (
            "cylinder-liner",
            'bore = "500 mm h8"',
            'h8 is a tolerance class of a shaft, and this is a hole; read "500 mm h8"; write H8, or the limits',
        ),
        ("valve-seat", 'outside_diameter = "170 mm JS6"', "JS6 is a tolerance class of a hole"),
        ("piston-rod", 'diameter = "90 mm F7"', "F7 is a tolerance class of a hole"),
        ("cylinder-block", 'bores.main.diameter = "578 mm k7"', "k7 is a tolerance class of a shaft"),
    ],
)
def test_the_class_of_a_size_is_of_its_own_sort(
    workshop: DesignFolder, kind: str, line: str, told: str
) -> None:
    root = workshop.write({"part.toml": f'kind = "{kind}"\nid = "part"\n{line}\n'}).root
    (loaded,) = load_specs(root / "part.toml", "part.toml", workshop.loaded.kinds)
    says = "\n".join(str(one) for one in loaded.complaints)
    assert (told in says) if told else not says
