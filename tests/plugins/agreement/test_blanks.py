"""Castings and weldments and the parts that they become: each agreement from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

LESS, FINE = ("finding", Grade.NONCONFORMITY), ("conforms", None)
FILES = {
    "liner.toml": """
kind = "cylinder-liner"
id = "liner"
material = "grey-iron-300-stress-relieved"
outside_diameter = "578 mm s6"
""",
    "casting.toml": """
kind = "casting"
id = "casting"
becomes = "liner"
material = "grey-iron-300-stress-relieved"
[faces.outside]
dimension = "578 mm"
of_key = "outside_diameter"
[faces.end]
dimension = "925 mm"
""",
    "block.toml": 'kind = "cylinder-block"\nid = "block"\n[bores.main]\naxis_from_frame = "350 mm"\n',
    "weldment.toml": """
kind = "weldment"
id = "weldment"
makes = "block"
[faces.pads]
dimension = "350 mm"
of_key = "bores.main.axis_from_frame"
""",
}


@pytest.mark.parametrize(
    ("rule", "file", "old", "new", "wanted"),
    [
        ("blank.faces-of-part", "casting.toml", "578 mm", "578.5 mm", FINE),
        ("blank.faces-of-part", "casting.toml", "578 mm", "578.6 mm", LESS),
        ("blank.faces-of-part", "casting.toml", "925 mm", "800 mm", FINE),  # names no key
        ("blank.faces-of-part", "weldment.toml", "350 mm", "349.5 mm", FINE),
        ("blank.faces-of-part", "weldment.toml", "350 mm", "800 mm", LESS),
        (
            "blank.faces-of-part",
            "weldment.toml",
            "axis_from_frame",
            "axis",
            ("not assessed", None),
        ),
        ("blank.of-its-part", "casting.toml", "578 mm", "570 mm", FINE),
        ("blank.of-its-part", "casting.toml", "grey-iron-300-stress-relieved", "grey-iron-200", LESS),
    ],
)
def test_a_blank_is_of_its_part(
    workshop: DesignFolder, rule: str, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    workshop.write(FILES).replace(file, old, new)
    found = workshop.only(rule, file.removesuffix(".toml"))
    assert (found.outcome, found.grade) == wanted


def test_a_blank_that_states_no_metal_is_of_that_of_its_part(workshop: DesignFolder) -> None:
    casting = 'becomes = "liner"\nmaterial = "grey-iron-300-stress-relieved"'
    workshop.write(FILES).replace("casting.toml", casting, 'becomes = "liner"')
    assert workshop.only("blank.of-its-part", "casting").outcome == "not applicable"


LINER = """
kind = "cylinder-liner"
id = "liner"
bore = "500 mm"
outside_diameter = "578 mm"
collar.thickness = "25 mm"
"""
CASTING = """
kind = "casting"
id = "casting"
becomes = "liner"
[faces.outside]
dimension = "578 mm"
of_key = "outside_diameter"
allowance = "8 mm"
[faces.bore]
dimension = "500 mm"
of_key = "bore"
allowance = "6 mm"
[faces.collar]
dimension = "25 mm"
of_key = "collar.thickness"
allowance = "7 mm"
both_sides = true
[meetings.collar]
thick = "53 mm"
thick_of = "barrel"
thin = "39 mm"
thin_of = "collar"
"""


@pytest.mark.parametrize(
    ("old", "new", "wanted"),
    [
        ("53 mm", "53.5 mm", FINE),
        ("53 mm", "53.6 mm", LESS),
        ("39 mm", "38.5 mm", FINE),
        ("39 mm", "38.4 mm", LESS),
        ('"8 mm"', '"9 mm"', LESS),
        ("both_sides = true", "both_sides = false", LESS),
        ('thick_of = "barrel"\n', "", FINE),
        ('"barrel"', '"plate"', ("not assessed", None)),
    ],
)
def test_walls_that_meet_are_those_of_the_part_with_their_allowances(
    workshop: DesignFolder, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    """(578 − 500)/2 + 8 + 6 = 53 mm; 25 + 7 + 7 = 39 mm."""
    workshop.write({"liner.toml": LINER, "casting.toml": CASTING}).replace("casting.toml", old, new)
    found = workshop.only("blank.faces-of-part", "casting")
    assert (found.outcome, found.grade) == wanted


#: The same liner with its length, 900 mm from the seat of the collar and 25 mm of collar, and a face for its free end.
LONG = {
    "liner.toml": LINER.replace('bore = "500 mm"\n', 'bore = "500 mm"\nlength = "900 mm"\n'),
    "casting.toml": f"""{CASTING}
[faces.free-end]
dimension = "925 mm"
of_key = "length over collar"
""",
}
ASKED = ("not assessed", None)


@pytest.mark.parametrize(
    ("file", "old", "new", "wanted"),
    [
        ("casting.toml", '"925 mm"', '"925.5 mm"', FINE),
        ("casting.toml", '"925 mm"', '"925.6 mm"', LESS),
        ("casting.toml", '"925 mm"', '"924.5 mm"', FINE),
        ("casting.toml", '"925 mm"', '"924.4 mm"', LESS),
        ("casting.toml", '"925 mm"', '"901 mm"', LESS),
        ("liner.toml", '"900 mm"', '"880 mm"', LESS),
        ("liner.toml", 'length = "900 mm"\n', "", ASKED),
        ("casting.toml", '"925 mm"\nof_key = "length over collar"', '"900 mm"\nof_key = "length"', FINE),
        ("casting.toml", 'of_key = "length over collar"\n', "", ASKED),
        (
            "casting.toml",
            'of_key = "outside_diameter"\n',
            "",
            LESS,
        ),  # without the allowance the barrel is 45 mm
        ("casting.toml", 'dimension = "925 mm"\nof_key = "length over collar"\n', "", FINE),
    ],
)
def test_the_ends_of_a_liner_are_as_far_apart_as_its_length_and_collar(
    workshop: DesignFolder, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    workshop.write(LONG).replace(file, old, new)
    found = workshop.only("blank.faces-of-part", "casting")
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("stated", "wanted"), [("", FINE), ('bore = "500 mm"\n', ASKED), ('length = "900 mm"\n', ASKED)]
)
def test_a_boss_names_no_key_where_other_faces_name_what_the_liner_states(
    workshop: DesignFolder, stated: str, wanted: tuple[str, Grade | None]
) -> None:
    """The outside alone is named: once the liner states more, the other face may be that."""
    files = {**FILES, "liner.toml": FILES["liner.toml"] + stated}
    found = workshop.write(files).only("blank.faces-of-part", "casting")
    assert (found.outcome, found.grade) == wanted


def test_a_boss_beside_all_sizes_of_a_liner_names_no_key(workshop: DesignFolder) -> None:
    boss = '[faces.boss]\ndimension = "610 mm"\n'
    found = workshop.write({**LONG, "casting.toml": LONG["casting.toml"] + boss}).only(
        "blank.faces-of-part", "casting"
    )
    assert found.outcome == "conforms"


def test_only_a_liner_has_a_length_over_its_collar(workshop: DesignFolder) -> None:
    files = {
        **FILES,
        "weldment.toml": FILES["weldment.toml"].replace("bores.main.axis_from_frame", "length over collar"),
    }
    check = workshop.write(files).only("blank.faces-of-part", "weldment")
    assert check.outcome == "not assessed"
    assert 'block has no dimension "length over collar"' in check.says
