"""A record that leads to the wrong spec: another drawing, side or issue; and welds by a procedure not drawn."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, changed

OF_SPEC, WELDED = "made.of-its-spec", "made.welded-as-drawn"
BAD, ASKED, FINE = ("finding", Grade.NONCONFORMITY), ("finding", Grade.QUERY), ("conforms", None)
RIGHT = ["RH", "R.H.", "r.h.", "R/H", "offside", "off side", "off-side", "rechts"]
LEFT = ["LH", "L.H.", "LHS", "nearside", "near side", "near-side", "links"]
BLOCK = """
kind = "cylinder-block"
id = "block"
title = "Cylinder block, left"
drawing = "CN-C-1203"
revision = "B"
issued = [
  { to = "shop", on = 2026-01-10, revision = "A" },
  { to = "shop", on = 2026-03-10, revision = "B" },
  { to = "foundry", on = 2026-03-08, revision = "B" },
]
[bores.main]
diameter = "500 mm"
"""
MADE = """
kind = "made-part"
id = "made"
of = "block"
title = "Cylinder block, left, as made"
made_to = "B"
[welds.all]
date = "2026-03-01"
[heat_treatments.relief]
date = "2026-03-08"
"""


def made(workshop: DesignFolder, record: str = MADE, block: str = BLOCK) -> Check:
    return workshop.write({"block.toml": block, "made.toml": record}).only(OF_SPEC, "made")


@pytest.mark.parametrize(
    ("stated", "ends"),
    [
        ("", FINE),
        ('drawing = "CN-C-1203"\n', FINE),
        ('drawing = "cn-c- 1203"\n', FINE),
        ('drawing = "CN-C-1204"\n', BAD),
    ],
)
def test_a_record_names_the_drawing_of_its_spec(
    workshop: DesignFolder, stated: str, ends: tuple[str, Grade | None]
) -> None:
    found = made(workshop, changed(MADE, ('made_to = "B"\n', f'made_to = "B"\n{stated}')))
    assert (found.outcome, found.grade) == ends
    assert ends is FINE or found.says == "its record names drawing CN-C-1204, and its spec is on CN-C-1203"


def test_a_spec_without_a_number_is_compared_with_none(workshop: DesignFolder) -> None:
    record = changed(MADE, ('made_to = "B"\n', 'made_to = "B"\ndrawing = "CN-C-1204"\n'))
    assert made(workshop, record, changed(BLOCK, ('drawing = "CN-C-1203"\n', ""))).outcome == "conforms"


@pytest.mark.parametrize(
    ("own", "theirs", "says"),
    [
        ("Block, left", "Block, left", ""),
        ("Block, LEFT", "Left block", ""),
        ("Block, right", "Block, left", "its title says right, and that of block says left"),
        ("Block, middle", "Block, centre", ""),
        ("Block, center", "Block, left", "its title says center (middle), and that of block says left"),
        ("Block, middle", "Block, middle, made to the hand of the left", ""),
        (
            "Block, right",
            "Block, middle, made to the hand of the left",
            "its title says right, and that of block says middle",
        ),
        ("Cover, front", "Cover, back", "its title says front, and that of block says back"),
        ("Cover, rear", "Cover, back", ""),
        ("Seat, upper", "Seat, lower", "its title says upper, and that of block says lower"),
        ("Inlet seat", "Exhaust seat", "its title says inlet, and that of block says exhaust"),
        ("Admission seat", "Inlet seat", ""),
        ("Spare", "Block, left", ""),
        ("Block, left", "Block", ""),
        ("Aleft", "Block, right", ""),
        ("Block, left front", "Block, left back", "its title says front, and that of block says back"),
        *((f"Block {word}", "Block, left", f"says {word} (right), and that") for word in RIGHT),
        *((f"Block {word}", "Block, right", "") for word in RIGHT),
        *((f"Block, {word}", "Block, right", f"says {word} (left), and that") for word in LEFT),
        *((f"Block, {word}", "Block, left", "") for word in LEFT),
        ("Block (R)", "Block, left", "its title says R (right), and that of block says left"),
        ("Block, L.", "Block, right", "its title says L (left), and that of block says right"),
        ("Block, rev R", "Block, left", "its title says revision R, and it is of revision B"),
        ("Block on the driver's side", "Block, right", ""),
        ("Valve links, spare", "Block, right", ""),
        ("Spindle with left-hand thread", "Spindle, right", ""),
        ("Block, opposite hand to the right", "Block, right", ""),
        ("Block, right, opposite hand to left", "Block, left", "its title says right, and"),
        ("Cover, head end", "Cover, back", "its title says head end (front), and"),
        ("Cover, crank end", "Cover, back", ""),
        ("Seat, bottom", "Seat, upper", "its title says bottom (lower), and that of block says upper"),
        ("Spring, inner", "Spring, outer", "its title says inner, and that of block says outer"),
        ("LP piston", "High-pressure piston", "says LP (low-pressure), and that of block says high-pressure"),
        ("H.P. piston", "High pressure piston", ""),
    ],
)
def test_the_titles_name_one_side(workshop: DesignFolder, own: str, theirs: str, says: str) -> None:
    record = changed(MADE, ("Cylinder block, left, as made", own))
    found = made(workshop, record, changed(BLOCK, ("Cylinder block, left", theirs)))
    assert (found.outcome, found.grade) == (ASKED if says else FINE)
    assert says in found.says


@pytest.mark.parametrize(
    ("hand", "of_spec", "title", "ends"),
    [
        ("left", "left", "Block", FINE),
        ("left", "right", "Block", BAD),
        ("left", "", "Block", FINE),
        ("", "right", "Block", FINE),
        ("", "right", "Block, left", ASKED),
        ("", "left", "Block, left", FINE),
    ],
)
def test_the_hand_is_that_of_the_spec(
    workshop: DesignFolder, hand: str, of_spec: str, title: str, ends: tuple[str, Grade | None]
) -> None:
    own, theirs = (f'hand = "{one}"\n' if one else "" for one in (hand, of_spec))
    record = changed(MADE, ('title = "Cylinder block, left, as made"\n', f'title = "{title}"\n{own}'))
    block = changed(BLOCK, ('title = "Cylinder block, left"\n', f'title = "Block"\n{theirs}'))
    found = made(workshop, record, block)
    assert (found.outcome, found.grade) == ends
    assert ends is not BAD or found.says == "its record is of the left hand, and block is of the right"


@pytest.mark.parametrize(
    ("stated", "says"),
    [
        ('revision = "B"\n', ""),
        ('revision = "A"\n', "its record states revision A, and it is of revision B"),
        ('revision = "A"\nmade_to = "C"\n', "its record states revision A, and it is of revision C and B"),
        ('revision = "C"\nmade_to = "C"\n', ""),
        ('revision = "B"\nmade_to = "C"\n', ""),
    ],
)
def test_a_record_states_no_third_revision(workshop: DesignFolder, stated: str, says: str) -> None:
    """Another revision that it was made to than the drawing has is told by made.revision."""
    old = 'made_to = "B"\n'
    found = made(workshop, changed(MADE, (old, stated if "made_to" in stated else f"{old}{stated}")))
    assert (found.outcome, found.grade) == (ASKED if says else FINE)
    assert says in found.says


@pytest.mark.parametrize(
    ("title", "says"),
    [
        ("Block, revision B, as made", ""),
        ("Block, rev. B", ""),
        ("Block, revision A, as made", "its title says revision A, and it is of revision B"),
        ("Block, rev. C, as made", "its title says revision C, and it is of revision B"),
        ("Block, Rev 2", "its title says revision 2, and it is of revision B"),
        ("Block, reversed", ""),
        ("Block for 250 rev/min", ""),
    ],
)
def test_a_title_names_no_third_revision(workshop: DesignFolder, title: str, says: str) -> None:
    found = made(workshop, changed(MADE, ("Cylinder block, left, as made", title)))
    assert (found.outcome, found.grade) == (ASKED if says else FINE)
    assert says in found.says


def test_a_revision_beside_none_is_no_other(workshop: DesignFolder) -> None:
    block = changed(BLOCK, ('revision = "B"\nissued', "issued"))
    record = changed(MADE, ('made_to = "B"\n', 'revision = "A"\n'))
    assert made(workshop, record, block).outcome == "conforms"


ROD = 'kind = "piston-rod"\nid = "rod-left"\ntitle = "Piston rod, left"\ndrawing = "CN-C-1250"\n'
PLAN = 'kind = "lifting-plan"\nid = "lift"\ntitle = "Lifting of the block"\n'


@pytest.mark.parametrize(
    ("title", "says"),
    [
        ("Block to CN-C-1204", "its title names drawing CN-C-1204, and block is on CN-C-1203"),
        ("Block to cn-c-1204, left", "its title names drawing cn-c-1204"),
        ("Block to CN-C-1203 rev B", ""),
        ("Block to CN-C-1203-2 and CN-C-1204", ""),
        ("Block, replaces CN-C-1204", ""),
        ("Block CN-C-7777, left", ""),
        ("Block CN-C-8888, left", ""),
        ("Block H-7, left", ""),
        ("Bush CN-C-1250", "its title names drawing CN-C-1250"),
        ("Piston rod, left, as made", "its title is that of rod-left, and its record is of block"),
        ("Left piston rod, serial no. 4", "its title is that of rod-left, and its record is of block"),
        ("Left piston rod, K-12", "its title is that of rod-left"),
        ("Piston rod, left", "its title is that of rod-left"),
        ("Record of rod-left", "its title is that of rod-left"),
        ("Block for rod-left", ""),
        ("Block, left, with piston rod", ""),
        ("Lifting of the block", ""),
        ("Spare", ""),
        ("Made", ""),
        ("Weldment, left", ""),
    ],
)
def test_a_title_names_no_other_drawing_or_part(workshop: DesignFolder, title: str, says: str) -> None:
    """Its serial number and its heat are written as a drawing number here, and are none."""
    record = changed(
        MADE,
        ("Cylinder block, left, as made", title),
        ('made_to = "B"', 'made_to = "B"\nserial = "CN-C-7777"'),
    )
    files = {
        "block.toml": BLOCK,
        "made.toml": f'{record}[certificate]\nheat = "CN-C-8888"\n',
        "rod.toml": ROD,
        "lift.toml": PLAN,
        "weldment.toml": 'kind = "weldment"\nid = "w"\ntitle = "Weldment, left"\nmakes = "block"\n',
    }
    found = workshop.write(files).only(OF_SPEC, "made")
    assert (found.outcome, found.grade) == (ASKED if says else FINE)
    assert says in found.says


def test_a_number_of_another_series_is_that_of_a_part_that_is_on_it(workshop: DesignFolder) -> None:
    files = {"block.toml": BLOCK, "made.toml": changed(MADE, ("Cylinder block, left, as made", "Rod X-7"))}
    assert workshop.write(files).only(OF_SPEC, "made").outcome == "conforms"
    files["rod.toml"] = changed(ROD, ("CN-C-1250", "x-7"))
    found = workshop.write(files).only(OF_SPEC, "made")
    assert found.says == "its title is that of rod-left, and its record is of block"


def test_a_title_that_two_specs_have_is_that_of_either(workshop: DesignFolder) -> None:
    files = {"block.toml": changed(BLOCK, ("Cylinder block, left", "Piston rod, left")), "rod.toml": ROD}
    files["made.toml"] = changed(MADE, ("Cylinder block, left, as made", "Piston rod, left"))
    assert workshop.write(files).only(OF_SPEC, "made").outcome == "conforms"


@pytest.mark.parametrize("link", ["like", "mirror_of"])
def test_a_title_taken_over_is_that_of_another_side(workshop: DesignFolder, link: str) -> None:
    other = f'kind = "cylinder-block"\nid = "other"\n{link} = "block"\ndrawing = "CN-C-1204"\n'
    record = changed(MADE, ('of = "block"', 'of = "other"'), ("left, as made", "right"))
    files = {"block.toml": BLOCK, "other.toml": other, "made.toml": record}
    assert workshop.write(files).only(OF_SPEC, "made").outcome == "conforms"
    files["other.toml"] = other.replace("drawing", 'title = "Cylinder block, left"\ndrawing')
    assert workshop.write(files).only(OF_SPEC, "made").grade == Grade.QUERY


@pytest.mark.parametrize("gone", ["made", "block"])
def test_a_part_without_a_title_says_no_side(workshop: DesignFolder, gone: str) -> None:
    record = changed(MADE, ("left, as made", "right"))
    block = BLOCK
    if gone == "made":
        record = changed(record, ('title = "Cylinder block, right"\n', ""))
    else:
        block = changed(BLOCK, ('title = "Cylinder block, left"\n', ""))
    assert made(workshop, record, block).outcome == "conforms"


@pytest.mark.parametrize(
    ("changes", "ends"),
    [
        ([], FINE),
        ([("2026-03-08", "2026-03-07")], ASKED),
        ([("2026-03-08", "2026-03-07"), ('made_to = "B"', 'made_to = "A"')], FINE),
        ([("2026-03-08", "2026-03-07"), ('made_to = "B"', 'made_to = "C"')], FINE),
        ([("2026-03-08", "2026-03-07"), ('made_to = "B"\n', "")], FINE),
        ([('[heat_treatments.relief]\ndate = "2026-03-08"\n', "")], ASKED),
        ([("[heat_treatments.relief]\n", "[examinations.all]\n")], FINE),
        ([("[heat_treatments.relief]\n", "[hydraulic_tests.shop]\n")], FINE),
        (
            [
                (
                    "[heat_treatments.relief]\n",
                    '[measured."bores.main.diameter"]\nvalues = ["500 mm"]\nuncertainty = "6 µm"\n',
                )
            ],
            FINE,
        ),
        ([('date = "2026-03-01"\n', ""), ('date = "2026-03-08"\n', "")], FINE),
    ],
)
def test_something_was_done_after_the_first_issue(
    workshop: DesignFolder, changes: list[tuple[str, str]], ends: tuple[str, Grade | None]
) -> None:
    """Revision B was first issued on 8 March; what was begun before that may have been finished to it."""
    found = made(workshop, changed(MADE, *changes))
    assert (found.outcome, found.grade) == ends


def test_the_last_day_and_the_first_issue_are_named(workshop: DesignFolder) -> None:
    says = made(workshop, changed(MADE, ("2026-03-08", "2026-03-07"))).says
    assert says == (
        "heat treatment relief of 2026-03-07 is the last that was done to it, "
        "and revision B was first issued on 2026-03-08"
    )


WELDMENT = """
kind = "weldment"
id = "weldment"
makes = "block"
[joints.seam]
procedure = "{seam}"
[joints.corner]
procedure = "WPQR 41"
[joints.lug]
weld = "fillet"
"""
RECORD = """
kind = "made-part"
id = "made"
of = "{of}"
[welds.all]
procedure = "{procedure}"
[welds.other]
welder = "mark 7"
"""


@pytest.mark.parametrize("of", ["block", "weldment"])
@pytest.mark.parametrize(
    ("seam", "procedure", "ends"),
    [
        ("WPQR 38", "WPQR 38", FINE),
        ("WPQR 38", "WPQR 41", FINE),
        ("WPQR 38", "wpqr-038", FINE),
        ("WPQR 38", "WPQR 40", BAD),
        ("WPQR 38", "WPQR 38 and 41", FINE),
        ("WPQR 38", "WPQR 38 and 40", BAD),
        ("WPQR Nos. 36, 37 or 38", "WPQR 37", FINE),
        ("WPQR 38 of 2024-05-01", "WPQR 38 of 2025-05-01", FINE),
        ("WPQR 38 rev 2", "WPQR 38 rev 1", BAD),
        ("WPQR 38 rev 2", "WPQR 38", FINE),
        ("WPQR 38", "WPS-12", ASKED),
        ("WPQR 38", "WPS-12, by WPQR 41", FINE),
        ("WPS 12", "WPS-12", FINE),
        ("open", "WPS-12, by WPQR 41", FINE),
        ("WPQR 38", "WPS-12, by WPQR 40", BAD),
        ("WPQR 38", "to follow", ASKED),
        ("WPQR 38", "WPQR38/41", FINE),
        ("WPQR 38", "WPQR 38/041", FINE),
        ("WPQR 38", "WPQR 38/44", BAD),
        ("WPQR 38/44", "WPQR 44", FINE),
        ("WPQR 38/44", "WPQR 38/44", FINE),
        ("WPQR 38", "WPQR 38/2024", FINE),
        ("WPQR 38/2024", "WPQR 38", FINE),
        ("WPQR 38/2024", "WPQR 38/2019", BAD),
        ("WPQR 2024/017", "WPQR 2024/017", FINE),
        ("WPQR 2024/017", "WPQR 2024/018", BAD),
        ("WPQR 38", "WPQR 38 to 41", BAD),
        ("WPQR 38 to 40", "WPQR 38 to 41", FINE),
        ("WPQR 38 to 40", "WPQR 39", FINE),
        ("WPQR 38 to 40", "WPQR 37", BAD),
        ("WPQR 38 - 40", "WPQR 38 bis 41", FINE),
        ("WPQR 38–40", "WPQR 38 through WPQR 41", FINE),
        ("WPQR 38 to 40", "WPQR 38-41", FINE),
        ("WPQR 38-40", "WPQR 39", FINE),
        ("WPQR 38-40", "WPQR 38-40", FINE),
        ("WPQR 38-40", "WPQR 37", BAD),
        ("WPQR 38-39", "WPQR 39", FINE),
        ("WPQR 12-3", "WPQR 12-3", FINE),
        ("WPQR 12-3", "WPQR 12-4", BAD),
        ("WPQR 1 to 51", "WPQR 50", FINE),
        ("WPQR 1 to 52", "WPQR 50", BAD),
        ("WPQR 38 to EN ISO 15614-1", "WPQR 38", FINE),
        ("WPQR 38 to follow", "WPQR 41", FINE),
        ("WPQR 38", "WPQR 38 u. 41", FINE),
        ("WPQR 38", "WPQR 38 u. 44", BAD),
        ("WPQR 38", "WPQR Nr. 38 sowie 44", BAD),
        ("WPQR 38", "WPQR 38 plus 44", BAD),
        ("WPQR 38", "WPQR 38 dated 1.5.2024", FINE),
        ("WPQR 38", "WPQRs 38, 41", FINE),
        ("WPQR 38", "WPQR's 38 and 41", FINE),
        ("WPQR 38", "WPQRS 38, 41", FINE),
        ("WPQR 38", "WPQRs 38, 44", BAD),
        ("WPQRs 38, 39", "WPQR 39", FINE),
        ("WPQR 38", "W.P.Q.R. 38", FINE),
        ("WPQR 38", "W.P.Q.R. 44", BAD),
        ("WPQR 38", "WPQR 38 (not 44)", FINE),
        ("WPQR 38", "WPQR 38 in place of 44", FINE),
        ("WPQR 38", "WPQR 44 in place of 38", BAD),
        ("WPQR 38", "WPQR 38 (not yet valid)", ASKED),
        ("WPQR 38", "WPQR 38 (not approved before 2027)", ASKED),
        ("WPQR 38", "WPQR 38 (withdrawn)", ASKED),
        ("WPQR 38", "WPQR 38 (41 not used)", ASKED),
        ("WPQR 38", "WPQR 38 as well as 44", BAD),
        ("WPQR 38", "WPQR 38 with 44", BAD),
        ("WPQR 38", "WPQR 38 bzw. 44", BAD),
        ("WPQR 38", "WPQR 38 ff.", ASKED),
        ("WPQR 38", "neither WPQR 38 nor 41", ASKED),
        ("WPQR 38", "weder WPQR 38 noch 41", ASKED),
        ("WPQR 38", "neither by WPQR 41 nor by WPQR 44, by WPQR 38", FINE),
        ("WPQR 38", "WPQR 38 et seq.", ASKED),
        ("WPQR 38 to 40/2024", "WPQR 39", FINE),
        ("WPQR 38 to 40/2024", "WPQR 37", BAD),
        ("WPQR 38/2024 to 40/2024", "WPQR 39/2024", FINE),
        ("WPQR 38-40/2024", "WPQR 39", FINE),
        ("WPQR 38-40/2024", "WPQR 38 to 40/2024", FINE),
        ("WPQR 38-40/2024", "WPQR 38-40/2023", BAD),
        ("WPQR 38 of 2024", "WPQR 38/2024", FINE),
        ("WPQR 38 of 2024", "WPQR 38 of 2019", BAD),
        ("WPQR 38", "WPQR 38/24", FINE),
        ("WPQR 38/2024", "WPQR 38/24", FINE),
        ("WPQR 38/2024", "WPQR 38/19", BAD),
        ("WPQR 38", "WPQR 38/38", FINE),
        ("WPQR 38", "WPQR 41/38", FINE),
        ("WPQR 38", "WPQR 38, 12 mm", FINE),
        ("WPQR 38", "WPQR 38, 3 passes", FINE),
        ("WPQR 38", "WPQR 38, 3 Lagen", FINE),
        ("WPQR 38", "WPQR 38, 111", FINE),
        ("WPQR 38", "WPQR 38 (141/111)", FINE),
        ("WPQR 38", "WPQR 38, 112", BAD),
        ("WPQR 38", "WPQR 111", BAD),
        ("WPQR 38", "WPQR 38, 111 to 135", BAD),
        ("WPQR 38", "WPQR 38...41", BAD),
        ("WPQR 38 to 40", "WPQR 38..41", FINE),
    ],
)
def test_a_weld_is_made_by_a_procedure_that_is_drawn(
    workshop: DesignFolder, of: str, seam: str, procedure: str, ends: tuple[str, Grade | None]
) -> None:
    files = {
        "block.toml": BLOCK,
        "weldment.toml": WELDMENT.format(seam=seam),
        "made.toml": RECORD.format(of=of, procedure=procedure),
    }
    found = workshop.write(files).only(WELDED, "made")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(
    ("procedure", "says"),
    [
        ("WPQR 40", 'weld "all" by WPQR 40: the drawing names WPQR 38, WPQR 41'),
        ("WPS-12", 'weld "all" by WPS-12: that does not say by which of WPQR 38, WPQR 41'),
        ("not WPQR 38", 'weld "all" by not WPQR 38: that does not say by which of WPQR 38, WPQR 41'),
        ("manual arc", 'weld "all" by manual arc: that does not say by which of WPQR 38, WPQR 41'),
        ("WPQR no. 38", "welded by WPQR 38"),
        ("WPQR 38 to 41", 'weld "all" by WPQR 39, WPQR 40: the drawing names WPQR 38, WPQR 41'),
        ("WPQR 38-42", 'weld "all" by WPQR 38-42: the drawing names WPQR 38, WPQR 41'),
        ("WPQR 38 and 41", "welded by WPQR 38, WPQR 41"),
    ],
)
def test_procedures_are_named_as_they_are_drawn(workshop: DesignFolder, procedure: str, says: str) -> None:
    files = {"block.toml": BLOCK, "weldment.toml": WELDMENT.format(seam="WPQR 38")}
    files["made.toml"] = RECORD.format(of="block", procedure=procedure)
    assert workshop.write(files).only(WELDED, "made").says == says


@pytest.mark.parametrize(
    ("seam", "procedure", "says"),
    [
        ("WPQR 38", "WPQR 38 and 41", "welded by WPQR 38, WPQR 41"),
        ("WPQR 38", "WPQR 38", "no weld on record is by WPQR 41, as corner is drawn"),
        ("WPQR 38", "WPQR 41", "no weld on record is by WPQR 38, as seam is drawn"),
        ("WPQR 41", "WPQR 41", "welded by WPQR 41"),
        ("open", "WPQR 41", "welded by WPQR 41"),
        ("WPQR 38 or 41", "WPQR 41", "welded by WPQR 41"),
        ("WPQR 38 and/or 41", "WPQR 41", "welded by WPQR 41"),
        ("WPQR 38, 41", "WPQR 41", "welded by WPQR 41"),
        ("WPQR 38/41", "WPQR 41", "welded by WPQR 41"),
        ("WPQR 39 to 41", "WPQR 41", "welded by WPQR 41"),
        ("WPQR 38 and 41", "WPQR 41", "no weld on record is by WPQR 38, as seam is drawn"),
        ("WPQR 38 und 41", "WPQR 41", "no weld on record is by WPQR 38, as seam is drawn"),
        ("WPQR 41 + 38", "WPQR 41", "no weld on record is by WPQR 38, as seam is drawn"),
        ("WPQR 41 and WPQR 43", "WPQR 41", "no weld on record is by WPQR 43, as seam is drawn"),
        ("WPQR 43 and WPQR 44", "WPQR 41", "no weld on record is by WPQR 43, as seam is drawn, nor WPQR 44"),
        ("WPQR 41 and EN ISO 15614-1", "WPQR 41", "welded by WPQR 41"),
        ("WPQR 41 rev 2 and REV 3", "WPQR 41", "welded by WPQR 41"),
        ("WPS 12 by WPQR 41", "WPQR 41", "welded by WPQR 41"),
        ("WPQR 38", "WPQR 38 (not 41)", "no weld on record is by WPQR 41, as corner is drawn"),
        ("WPQR 38", "WPQR 38, not WPQR 41", "no weld on record is by WPQR 41, as corner is drawn"),
        ("WPQR 38", "WPQR 41 instead of 38", "no weld on record is by WPQR 38, as seam is drawn"),
        ("WPQR 38", "WPQR 41 rather than WPQR 38 or 39", "no weld on record is by WPQR 38, as seam is drawn"),
        ("WPQR 38", "WPQR 41 statt 38", "no weld on record is by WPQR 38, as seam is drawn"),
        ("WPQR 38 as well as 43", "WPQR 38 and 41", "no weld on record is by WPQR 43, as seam is drawn"),
        ("WPQR 38", "WPQRs 38, 41", "welded by WPQR 38, WPQR 41"),
        ("WPQR 38 and 135", "WPQR 38 and 41", "welded by WPQR 38, WPQR 41"),
    ],
)
def test_all_procedures_that_are_drawn_are_on_record(
    workshop: DesignFolder, seam: str, procedure: str, says: str
) -> None:
    """The corner is drawn by WPQR 41; each weld on record names its procedures."""
    record = changed(RECORD, ('[welds.other]\nwelder = "mark 7"\n', ""))
    files = {
        "block.toml": BLOCK,
        "weldment.toml": WELDMENT.format(seam=seam),
        "made.toml": record.format(of="block", procedure=procedure),
    }
    found = workshop.write(files).only(WELDED, "made")
    assert found.says.startswith(says)
    assert (found.outcome, found.grade) == (ASKED if says.startswith("no weld") else FINE)


def test_a_weld_by_neither_procedure_is_by_none_of_both(workshop: DesignFolder) -> None:
    record = changed(RECORD, ('[welds.other]\nwelder = "mark 7"\n', ""))
    files = {
        "block.toml": BLOCK,
        "weldment.toml": WELDMENT.format(seam="WPQR 38"),
        "made.toml": record.format(of="block", procedure="neither WPQR 38 nor 41"),
    }
    found = workshop.write(files).only(WELDED, "made")
    assert (found.outcome, found.grade) == ASKED
    assert found.says.endswith("by neither WPQR 38 nor 41: that does not say by which of WPQR 38, WPQR 41")


def test_joints_of_one_procedure_that_is_not_on_record_are_named_together(workshop: DesignFolder) -> None:
    record = changed(RECORD, ('[welds.other]\nwelder = "mark 7"\n', '[welds.lug]\nprocedure = "WPQR 38"\n'))
    weldment = WELDMENT.format(seam="WPQR 41").replace("[joints.lug]", '[joints.lug]\nprocedure = "WPQR 38"')
    files = {"block.toml": BLOCK, "weldment.toml": weldment}
    files["made.toml"] = record.format(of="block", procedure="WPQR 38")
    found = workshop.write(files).only(WELDED, "made")
    assert found.says == "no weld on record is by WPQR 41, as seam and corner are drawn"
    files["made.toml"] = record.format(of="block", procedure="WPQR 41")
    assert workshop.write(files).only(WELDED, "made").outcome == "conforms"


def test_a_joint_without_a_number_names_no_procedure(workshop: DesignFolder) -> None:
    weldment = 'kind = "weldment"\nmakes = "block"\n[joints.a]\nprocedure = "open"\n'
    files = {"block.toml": BLOCK, "weldment.toml": weldment}
    files["made.toml"] = RECORD.format(of="block", procedure="WPS-12")
    assert workshop.write(files).only(WELDED, "made").outcome == "not applicable"


@pytest.mark.parametrize("kind", ["cylinder-block", "steam-pipe"])
def test_a_part_without_a_weldment_names_no_procedure(workshop: DesignFolder, kind: str) -> None:
    files = {
        "block.toml": f'kind = "{kind}"\nid = "block"\n',
        "made.toml": RECORD.format(of="block", procedure="W 1"),
    }
    assert workshop.write(files).only(WELDED, "made").outcome == "not applicable"
