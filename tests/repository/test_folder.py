"""Many files become one design: ids, links, duties, and every clear refusal."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.checking import Assessment
from speclint.errors import DesignError, FamilyError
from speclint.repository import find_root, load_settings, spec_files
from speclint.specs import Component, Duty
from speclint.testing import SETTINGS, DesignFolder
from tests.own_limits import own_limit
from tests.tubes import DUTY, FILES, RACK, TUBE, tubes


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path, tubes())


def said(assessment: Assessment) -> list[str]:
    return [str(complaint) for complaint in assessment.complaints]


def test_a_sound_design_has_no_complaints(shop: DesignFolder) -> None:
    assessment = shop.write(FILES).assess()
    assert said(assessment) == []
    assert len(assessment.checks) == 5


def test_files_in_folders_and_with_spaces_are_found(shop: DesignFolder) -> None:
    shop.write(
        {
            "a b/Rohr ä.toml": TUBE,
            "rack.toml": RACK,
            "duty.toml": DUTY,
            ".hidden/x.toml": "=",
            "other.txt": "=",
        }
    )
    assert said(shop.assess()) == []
    settings, _ = load_settings(shop.root)
    assert settings is not None
    assert sorted(spec_files(shop.root, settings)) == ["a b/Rohr ä.toml", "duty.toml", "rack.toml"]


def test_a_folder_that_is_a_repository_of_its_own_is_passed_over(shop: DesignFolder) -> None:
    shop.write({**FILES, "inner/speclint.toml": "", "inner/tube.toml": TUBE})
    assert said(shop.assess()) == []


def test_what_the_settings_leave_out_is_left_out(shop: DesignFolder) -> None:
    shop.write({**FILES, "old/x.toml": "="}, settings='leave_out = ["old/*"]\n' + SETTINGS)
    assert said(shop.assess()) == []


def test_two_files_with_one_id(shop: DesignFolder) -> None:
    shop.write({**FILES, "z.toml": TUBE + 'id = "tube"\n'})
    (complaint,) = shop.assess().complaints
    assert (complaint.where.file, complaint.where.key) == ("z.toml", "id")
    assert "tube.toml has the same id" in complaint.message


def test_a_link_to_nothing_names_the_nearest(shop: DesignFolder) -> None:
    shop.write(FILES).replace("tube.toml", 'held_in = "rack"', 'held_in = "rak"')
    (complaint,) = shop.assess().complaints
    assert str(complaint) == 'tube.toml:10 held_in: no spec has this id; read "rak"; write "rack"'


def test_a_link_to_the_wrong_kind_names_both_files(shop: DesignFolder) -> None:
    shop.write(FILES).replace("tube.toml", 'held_in = "rack"', 'held_in = "duty"')
    (complaint,) = shop.assess().complaints
    assert complaint.where.file == "tube.toml"
    assert "leads to a duty (duty.toml)" in complaint.message
    assert complaint.write == "the id of a rack"


def test_a_loop_of_links_is_said_once_with_its_way(shop: DesignFolder) -> None:
    shop.write({"a.toml": 'kind = "duty"\nlike = "b"\n', "b.toml": 'kind = "duty"\nlike = "a"\n'})
    (complaint,) = shop.assess().complaints
    assert "links run in a loop" in complaint.message
    assert "a.toml" in complaint.message
    assert "b.toml" in complaint.message


def test_a_spec_that_links_to_itself(shop: DesignFolder) -> None:
    shop.write({"a.toml": 'kind = "duty"\nlike = "a"\n'})
    (complaint,) = shop.assess().complaints
    assert "loop" in complaint.message


def test_two_loops_are_two_complaints(shop: DesignFolder) -> None:
    shop.write(
        {f"{one}.toml": f'kind = "duty"\nlike = "{other}"\n' for one, other in ("ab", "ba", "cd", "dc")}
    )
    assert len(shop.assess().complaints) == 2


def test_an_unreadable_spec_does_not_stop_the_others(shop: DesignFolder) -> None:
    """The tube is sound; what follows its link to the unreadable rack is not assessed, and says so."""
    assessment = shop.write({**FILES, "rack.toml": RACK + "x = 1\n", "other.toml": "kind ="}).assess()
    assert {complaint.where.file for complaint in assessment.complaints} == {"rack.toml", "other.toml"}
    outcomes = {check.rule.name: check.outcome for check in assessment.checks if check.component == "tube"}
    assert outcomes["tube.stress"] == "conforms"
    assert outcomes["tube.loose-hot"] == "not assessed"
    assert assessment.exit_code == 2


def test_five_mistakes_give_five_messages_in_one_run(shop: DesignFolder) -> None:
    """Bad unit, comma decimal, bare pressure, unknown key, and broken TOML in another file."""
    shop.write(
        {
            **FILES,
            "bad.toml": 'kind = "tube"\nbore = "3 kg"\noutside = "5,5 mm"\npressure = "17 bar"\nbora = 1\n',
            "broken.toml": 'kind = "tube\n',
        }
    )
    assessment = shop.assess()
    assert [(one.where.file, one.where.line) for one in assessment.complaints] == [
        ("bad.toml", 2),
        ("bad.toml", 3),
        ("bad.toml", 4),
        ("bad.toml", 5),
        ("broken.toml", 1),
    ]
    assert assessment.exit_code == 2
    assert {check.component for check in assessment.checks} == {"tube"}


def test_duties_are_inherited_through_links(shop: DesignFolder) -> None:
    shop.write(FILES).replace("tube.toml", 'duty = "duty"\n', "").write(
        {"rack.toml": RACK + 'duty = "duty"\n'}
    )
    design = shop.assess().design
    assert design is not None
    tube = design.specs["tube"]
    assert isinstance(tube, Component)
    assert design.duty_of(tube)[0] is design.specs["duty"]


def test_a_duty_takes_over_the_cases_of_another(shop: DesignFolder) -> None:
    shop.write(
        {
            **FILES,
            "more.toml": 'kind = "duty"\nlike = "duty"\n[cases.starting]\nlive_pressure = "1 bar gauge"\n',
        }
    )
    design = shop.assess().design
    assert design is not None
    more, base = design.specs["more"], design.specs["duty"]
    assert isinstance(more, Duty)
    assert isinstance(base, Duty)
    assert more.cases["running"].live_pressure == base.cases["running"].live_pressure
    assert more.cases["starting"].where.file == "more.toml"
    assert "water" not in more.cases


def test_paths_choose_what_is_checked_but_links_lead_anywhere(shop: DesignFolder) -> None:
    shop.write({**FILES, "second.toml": TUBE})
    assert {check.component for check in shop.assess("second.toml").checks} == {"second"}
    assert shop.assess("second.toml").checks[0].outcome != "not assessed"


def test_paths_that_lead_nowhere(tmp_path: Path) -> None:
    with pytest.raises(DesignError, match="no such file"):
        find_root([tmp_path / "none"])
    with pytest.raises(DesignError, match=r"no speclint\.toml here"):
        find_root([tmp_path])
    with pytest.raises(DesignError, match="no file and no folder is named"):
        find_root([])


def test_a_path_outside_the_repository(tmp_path: Path) -> None:
    for name in ("one", "two"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "speclint.toml").write_text("")
    with pytest.raises(DesignError, match="one repository at a time"):
        find_root([tmp_path / "one", tmp_path / "two"])


@pytest.mark.parametrize(
    ("settings", "said_of_it"),
    [
        ("[works]\nstge = 'draft'\n", '"stge" is no key of [works]'),
        ("[workz]\nstage = 'draft'\n", '"workz" is no key of the settings'),
        ("[works]\nstage = 'ready'\n", "not one of the words"),
        ("[works]\nsite_pressure = '1 bar gauge'\n", "is an absolute pressure"),
        ("works = 3\n", "a table is expected"),
        ("[works\n", "this is not TOML"),
        ("[families]\nrequired = 'x'\n", "an array is expected"),
        ("[railway]\ncant = '120 mm ± 5 mm'\n", "a setting has no tolerance of its own"),
        ("[railway]\nsteepest = '40'\n", "outside what parts of this trade have"),
        ("[drawings]\ngeneral_angles = 'fine'\n", "not one of the words"),
        ("[works]\nsite_pressure = '1e400 bar absolute'\n", "an exponent lies between"),
        ("[works]\nsite_pressure = '1e-9 bar absolute'\n", "outside what parts of this trade have"),
        (f"[concessions]\nending_soon = {'9' * 400}\n", "at most 15 digits"),
        ("[concessions]\nending_soon = 1_000_000_001\n", "a count lies between 0 and 1000000000"),
        (f"{'a.' * 400}a = 1\n", "more than 20 deep"),
    ],
)
def test_settings_that_cannot_be_used(shop: DesignFolder, settings: str, said_of_it: str) -> None:
    """Nothing is checked under unreadable settings, and the specs' own complaints are reported all the same."""
    assessment = shop.write({**FILES, "bad.toml": "kind ="}, settings=settings).assess()
    assert any(said_of_it in one for one in said(assessment))
    assert any(one.startswith("bad.toml") for one in said(assessment))
    assert assessment.exit_code == 2


def test_a_required_family_that_is_absent_stops_the_run(shop: DesignFolder) -> None:
    shop.write(FILES, settings='[families]\nrequired = ["tubes", "boilers"]\n')
    with pytest.raises(FamilyError, match="requires the family boilers; installed: tubes"):
        shop.assess()


def test_limits_of_the_repository_are_read_against_the_rules(shop: DesignFolder) -> None:
    shop.write(FILES, settings=own_limit("tube.stress", "tubes", allowable="70 MPa"))
    check = next(one for one in shop.assess().checks if one.rule.name == "tube.stress")
    assert check.judgement is not None
    assert check.judgement.limit is not None
    assert check.judgement.limit.value == 70e6
    said = "set to 70 MPa in speclint.toml; the rule's own is 100 MPa; accepted by T. Ester: the test asks for it"
    assert [step.note for step in check.steps if step.kind == "limit"] == [said]


@pytest.mark.parametrize(
    ("limits", "said_of_it"),
    [
        ('[limits."tube.stres"]\nallowable = "70 MPa"\n', "no rule is called tube.stres"),
        ('[limits."tube.stress"]\nalowable = "70 MPa"\n', "has no limit called alowable"),
        ('[limits."tube.stress"]\nallowable = "70 mm"\n', "no unit of stress"),
        ('[limits."tube.stress"]\nallowable = 70\n', "written as text"),
        ('[limits."tube.stress"]\nallowable = "70 MPa ±1"\n', "no tolerance"),
        ('[limits."tube.ends"]\nany = "1"\n', "has no limit"),
        ('[limits."tube.stress"]\nallowable = "1e400 MPa"\n', "an exponent lies between -30 and 30"),
        ('[limits."tube.stress"]\nallowable = "70 MPa**9**9**9"\n', "no unit of stress"),
        ('[limits."tube.stress"]\nallowable = "٧٠ MPa"\n', "digits are written 0 to 9"),
    ],
)
def test_limits_that_cannot_be_used(shop: DesignFolder, limits: str, said_of_it: str) -> None:
    assessment = shop.write(FILES, settings=limits).assess()
    assert [said_of_it in one and one.startswith("speclint.toml") for one in said(assessment)] == [True]
    assert assessment.exit_code == 2


OWN_IRON = """
[sources]
CERT = { work = "founder's certificate 1207", edition = "2026" }
[own-iron]
title = "own iron"
family = "grey-iron"
standard = "works specification 12"
allowable = "grey-iron"
like = "grey-iron-250"
hardness = { value = 215, low = 205, high = 225, unit = "HB", source = "CERT" }
"""


def test_materials_of_the_repository_are_read_from_the_files_the_settings_name(shop: DesignFolder) -> None:
    """A works' own iron stands beside the built-in ones."""
    with_own = 'materials = ["materials/own.toml"]\n' + SETTINGS
    assessment = shop.write({**FILES, "materials/own.toml": OWN_IRON}, settings=with_own).assess()
    assert said(assessment) == []
    assert assessment.context is not None
    assert assessment.context.material("own-iron").hardness().nominal == 215


def test_an_own_material_without_a_source_is_a_complaint_with_its_line(shop: DesignFolder) -> None:
    with_own = 'materials = ["materials/own.toml"]\n' + SETTINGS
    unsourced = OWN_IRON.replace(', source = "CERT" }', " }")
    (complaint,) = (
        shop.write({**FILES, "materials/own.toml": unsourced}, settings=with_own).assess().complaints
    )
    assert (complaint.where.file, complaint.where.line) == ("materials/own.toml", 10)
    assert "source" in complaint.message + complaint.write


@pytest.mark.parametrize("name", ["grey-iron-250", "Grey-Iron-250", "grey iron 250", "gr\u0435y-iron-250"])
def test_an_own_material_never_takes_the_name_of_one_of_the_handbook(shop: DesignFolder, name: str) -> None:
    """The last one has a Cyrillic letter in it, U+0435, that reads as a Latin e."""
    own = OWN_IRON.replace("[own-iron]", f'["{name}"]')
    with_own = 'materials = ["own.toml"]\n' + SETTINGS
    assessment = shop.write({**FILES, "own.toml": own}, settings=with_own).assess()
    (complaint,) = assessment.complaints
    assert (complaint.where.file, complaint.where.line) == ("own.toml", own[: own.index("title")].count("\n"))
    assert "a material of the handbook, of a family or of an earlier file has this name" in complaint.message
    assert complaint.write == 'a name of its own, not "grey-iron-250"'
    assert assessment.context is not None
    hardness = assessment.context.material("grey-iron-250").hardness()
    assert (hardness.low, hardness.high) != (205, 225)
    assert assessment.exit_code == 2


def test_an_own_material_stands_in_one_file(shop: DesignFolder) -> None:
    with_own = 'materials = ["own.toml", "more.toml"]\n' + SETTINGS
    other = OWN_IRON.replace("value = 215, low = 205", "value = 220, low = 210")
    assessment = shop.write({**FILES, "own.toml": OWN_IRON, "more.toml": other}, settings=with_own).assess()
    (complaint,) = assessment.complaints
    assert (complaint.where.file, complaint.write) == ("more.toml", 'a name of its own, not "own-iron"')
    assert assessment.context is not None
    assert assessment.context.material("own-iron").hardness().nominal == 215


@pytest.mark.parametrize(
    ("file", "said"),
    [
        ("../outside.toml", "this lies outside the repository"),
        ("materials", "this is a folder, which is not read"),
        ("materials/none.toml", "the file of materials cannot be read: No such file or directory"),
    ],
)
def test_a_file_of_materials_that_cannot_be_had(shop: DesignFolder, file: str, said: str) -> None:
    """The settings name it on their second line; the path on this machine is no part of the message."""
    own = {**FILES, "materials/own.toml": OWN_IRON}
    shop.write(own, settings=f'materials = ["materials/own.toml",\n"{file}"]\n' + SETTINGS)
    (complaint,) = shop.assess().complaints
    assert (complaint.message, complaint.read) == (said, f'"{file}"')
    assert str(complaint.where) == "speclint.toml:2 materials"


def test_a_file_of_materials_in_another_encoding_is_told_with_its_line(shop: DesignFolder) -> None:
    shop.write({**FILES, "own.toml": ""}, settings='materials = ["own.toml"]\n' + SETTINGS)
    (shop.root / "own.toml").write_bytes("# Eisen\n# für Büchsen\n".encode("latin-1"))
    (complaint,) = shop.assess().complaints
    assert (str(complaint.where), complaint.message) == ("own.toml:2", "the file is not UTF-8 text")
