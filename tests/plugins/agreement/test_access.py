"""An access plan and what it reaches, from both sides.

The stud: 36 + 5 + 45 + 1.2 + 24 = 111.2 mm to the end of its nut; 10 mm more at most. The liner: 900 + 25.1 = 925.1 mm.
"""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

JOINTS, CHAMBERS = "access.of-its-joints", "access.chambers-of-block"
FINE, LESS = ("conforms", None), ("finding", Grade.NONCONFORMITY)
FILES = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\n',
    "cover.toml": 'kind = "cylinder-cover"\nid = "cover"\ncloses = "block"\nflange_thickness = "45 mm"\n',
    "studs.toml": """
kind = "bolted-joint"
id = "studs"
holds = "cover"
screwed_into = "block"
fastener = "stud"
set_in = "5 mm"
gasket.thickness = "1.2 mm"
tapped.engagement = "36 mm"
nut.engagement = "24 mm"
nut.across_flats = "36 mm"
""",
    "liner.toml": """
kind = "cylinder-liner"
id = "liner"
housed_in = "block"
length = "900 mm"
collar.thickness = "25.1 mm"
""",
    "chest.toml": 'kind = "steam-passage"\nid = "chest"\nin_block = "block"\nplace = "chest"\n',
    "port.toml": 'kind = "steam-passage"\nid = "port"\nin_block = "block"\nplace = "port"\n',
    "plan.toml": """
kind = "access-plan"
id = "plan"
serves = "block"
chambers_complete = true
[chambers.chest]
of = "chest"
[spanners.studs]
across_flats = "36 mm"
[withdrawals.studs]
size = "118 mm"
[withdrawals.liner]
size = "926 mm"
[withdrawals.cage]
size = "200 mm"
""",
}


def test_a_spanner_is_held_against_the_flats_of_its_joint_where_those_are_stated(
    workshop: DesignFolder,
) -> None:
    """No flats of the nut: what is drawn out is compared alone, 118 mm of the stud and 926 mm of the liner."""
    studs = FILES["studs.toml"].replace('nut.across_flats = "36 mm"\n', "")
    found = workshop.write({**FILES, "studs.toml": studs}).only(JOINTS)
    assert (found.outcome, found.grade) == FINE
    found = workshop.replace("plan.toml", "118 mm", "111.1 mm").only(JOINTS)
    assert (found.outcome, found.grade) == LESS


def test_a_spanner_for_a_nut_of_another_joint_is_held_against_nothing(workshop: DesignFolder) -> None:
    """The joint of no part of this block: its flats are no matter of the plan."""
    plan = FILES["plan.toml"].replace("[spanners.studs]", "[spanners.others]").replace("36 mm", "41 mm")
    others = 'kind = "bolted-joint"\nid = "others"\nnut.across_flats = "50 mm"\n'
    found = workshop.write({**FILES, "plan.toml": plan, "others.toml": others}).only(JOINTS)
    assert (found.outcome, found.grade) == FINE


@pytest.mark.parametrize(
    ("rule", "file", "old", "new", "wanted"),
    [
        (JOINTS, "plan.toml", "36 mm", "36.1 mm", FINE),
        (JOINTS, "plan.toml", "36 mm", "35 mm", LESS),
        (JOINTS, "studs.toml", 'across_flats = "36 mm"', 'across_flats = "41 mm"', LESS),
        (JOINTS, "plan.toml", "118 mm", "111.2 mm", FINE),
        (JOINTS, "plan.toml", "118 mm", "111.1 mm", LESS),
        (JOINTS, "plan.toml", "118 mm", "121.2 mm", FINE),
        (JOINTS, "plan.toml", "118 mm", "121.3 mm", LESS),
        (JOINTS, "cover.toml", "45 mm", "52 mm", LESS),
        (JOINTS, "studs.toml", '"stud"', '"bolt"', FINE),
        (JOINTS, "plan.toml", "926 mm", "925.1 mm", FINE),
        (JOINTS, "plan.toml", "926 mm", "900 mm", LESS),
        (CHAMBERS, "plan.toml", 'of = "chest"', "", LESS),
        (CHAMBERS, "port.toml", '"port"\n', '"port"\ncarries = "live steam"\n', FINE),
        (CHAMBERS, "port.toml", 'place = "port"', 'place = "belt"', LESS),
        (CHAMBERS, "plan.toml", "chambers_complete = true\n", "", ("not applicable", None)),
    ],
)
def test_the_plan_is_of_its_block(
    workshop: DesignFolder, rule: str, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    text = FILES[file].replace(old, new, 1)
    assert text != FILES[file]
    found = workshop.write({**FILES, file: text}).only(rule)
    assert (found.outcome, found.grade) == wanted
