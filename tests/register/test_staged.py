"""The check of a commit: what is staged, only what it can have changed, and nothing in the work tree touched."""

from __future__ import annotations

import datetime as dt

import pytest

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.errors import DesignError, FamilyError
from speclint.families import load_families
from speclint.register import StagedAssessment, assess_staged
from speclint.reports import staged_page
from speclint.reports.accepted import standings_of
from speclint.repository import FILE_NAME
from tests import tubes
from tests.register.office import OVERLOADED, SETTINGS, TODAY, Office, days, git
from tests.tubes import RACK

SOUND = OVERLOADED.replace("45 bar", "30 bar")
OTHER = SOUND.replace('held_in = "rack"', 'held_in = "other-rack"')


@rule(
    "rack.full",
    title="the rack holds a tube",
    on=tubes.Rack,
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="for tests",
    leaves_out="nothing",
)
def full(rack: tubes.Rack, sheet: Sheet) -> Judgement:
    """A rule that looks at what is linked to its component."""
    return sheet.states(bool(sheet.belonging_to(rack, tubes.Tube)), "it holds a tube")


@pytest.fixture
def office(office: Office) -> Office:
    """Two tubes in racks of their own, one duty for both, all committed and sound."""
    root = office.shop.root
    office.shop.write({"tube.toml": SOUND, "other.toml": OTHER, "other-rack.toml": RACK}, settings=SETTINGS)
    git(root, "init", "--quiet", "--initial-branch=main")
    git(root, "add", ".")
    git(root, "commit", "--quiet", "-m", "first")
    return office


def checked(office: Office, *paths: str, today: dt.date = TODAY) -> StagedAssessment:
    return assess_staged(
        [office.shop.root / path for path in paths] or [office.shop.root], office.shop.loaded, today
    )


def looked_at(found: StagedAssessment) -> set[str]:
    return {check.component for check in found.assessment.checks}


def stage(office: Office, *files: str) -> None:
    git(office.shop.root, "add", *files or ["."])


def test_nothing_staged_is_nothing_looked_at(office: Office) -> None:
    found = checked(office)
    assert (looked_at(found), found.files, found.assessment.exit_code) == (set(), (), 0)


def test_what_is_staged_is_checked_and_not_what_lies_in_the_work_tree(office: Office) -> None:
    office.shop.replace("tube.toml", "30 bar", "45 bar")
    stage(office)
    office.shop.replace("tube.toml", "45 bar", "30 bar")
    found = checked(office)
    assert looked_at(found) == {"tube"}
    assert found.assessment.exit_code == 1
    stage(office)
    office.shop.replace("tube.toml", "30 bar", "45 bar")
    assert checked(office).assessment.exit_code == 0


def test_families_are_left_out_as_staged_and_not_as_in_the_work_tree(office: Office) -> None:
    office.shop.loaded = load_families(
        [tubes.entry_point("tubes"), tubes.entry_point("own", kinds=(), rules=(full,))]
    )
    left_out = SETTINGS + '[families]\nleave_out = ["own"]\n'
    office.shop.write({}, settings=left_out)
    office.shop.replace("rack.toml", "106 mm", "107 mm")
    stage(office, "rack.toml")
    assert "rack.full" in {check.rule.name for check in checked(office).assessment.checks}
    stage(office, "speclint.toml")
    found = checked(office).assessment
    assert "rack.full" not in {check.rule.name for check in found.checks}
    assert found.loaded.left_out == ("own",)


@pytest.mark.parametrize(
    ("file", "components"),
    [
        ("tube.toml", {"tube"}),
        ("rack.toml", {"tube"}),
        ("other-rack.toml", {"other"}),
        ("duty.toml", {"tube", "other"}),
        (FILE_NAME, {"tube", "other"}),
    ],
)
def test_what_is_touched_and_what_depends_on_it_and_no_more(
    office: Office, file: str, components: set[str]
) -> None:
    path = office.shop.root / file
    path.write_text(path.read_text(encoding="utf-8") + "\n# a note\n", encoding="utf-8")
    stage(office)
    assert looked_at(checked(office)) == components


def test_settings_staged_with_something_else_concern_every_component(office: Office) -> None:
    """A rack of one tube and the settings of all in one commit."""
    for file in (FILE_NAME, "other-rack.toml"):
        path = office.shop.root / file
        path.write_text(path.read_text(encoding="utf-8") + "\n# a note\n", encoding="utf-8")
    stage(office)
    assert looked_at(checked(office)) == {"tube", "other"}


@pytest.mark.parametrize("also", [(), ("notes.txt",)])
def test_settings_after_which_no_rule_applies_are_told_as_nothing_checked(
    office: Office, also: tuple[str, ...]
) -> None:
    """The settings leave the only rules out, alone and with a file that is no spec."""
    left_out = SETTINGS + '[families]\nleave_out = ["tubes"]\n'
    office.shop.loaded = load_families(
        [tubes.entry_point("tubes"), tubes.entry_point("own", kinds=(), rules=(full,))]
    )
    office.shop.write(dict.fromkeys(also, ""), settings=left_out)
    stage(office)
    found = checked(office).assessment
    assert found.nothing_checked


def test_a_fault_in_what_all_are_judged_by_concerns_every_commit(office: Office) -> None:
    """A file of materials that was committed with a fault."""
    office.shop.write({"metals.toml": "[[["}, settings='materials = ["metals.toml"]\n' + SETTINGS)
    stage(office)
    git(office.shop.root, "commit", "--quiet", "-m", "a fault")
    office.shop.replace("tube.toml", "30 bar", "31 bar")
    stage(office)
    assert {one.where.file for one in checked(office).assessment.complaints} == {"metals.toml"}


def test_a_component_that_consults_what_is_linked_to_it_is_looked_at(office: Office) -> None:
    """A rack whose rule looks at its tubes: a change of a tube concerns its own rack and no other."""
    office.shop.loaded = tubes.tubes(full, *tubes.RULES)
    office.shop.replace("tube.toml", "30 bar", "31 bar")
    stage(office)
    found = checked(office)
    assert {check.order for check in found.assessment.checks if check.component != "tube"} == {
        ("rack", "rack.full")
    }
    git(office.shop.root, "rm", "--quiet", "-f", "tube.toml")
    found = checked(office)
    assert [check.order for check in found.assessment.checks] == [("rack", "rack.full")]
    assert found.assessment.exit_code == 1


def test_another_component_on_the_same_part_is_left_alone_unless_it_consults_what_changed(
    office: Office,
) -> None:
    """Two tubes in one rack: a change of one is no business of the other."""
    office.shop.write({"neighbour.toml": SOUND}, settings=SETTINGS)
    stage(office)
    git(office.shop.root, "commit", "--quiet", "-m", "a neighbour")
    office.shop.replace("tube.toml", "30 bar", "31 bar")
    stage(office)
    assert looked_at(checked(office)) == {"tube"}


def test_a_tube_moved_to_another_rack_concerns_both(office: Office) -> None:
    office.shop.loaded = tubes.tubes(full, *tubes.RULES)
    office.shop.replace("tube.toml", 'held_in = "rack"', 'held_in = "other-rack"')
    stage(office)
    outcomes = {check.component: check.outcome for check in checked(office).assessment.checks}
    assert outcomes["rack"] == "finding"
    assert outcomes["other-rack"] == "conforms"


def test_a_spec_deleted_in_the_index_leaves_the_link_to_it_broken(office: Office) -> None:
    git(office.shop.root, "rm", "--quiet", "--cached", "rack.toml")
    found = checked(office)
    assert [str(one) for one in found.assessment.complaints] == [
        'tube.toml:10 held_in: no spec has this id; read "rack"; write "other-rack"'
    ]
    assert found.assessment.exit_code == 2
    assert (office.shop.root / "rack.toml").exists()


def test_a_spec_renamed_in_the_index(office: Office) -> None:
    git(office.shop.root, "mv", "tube.toml", "röhre 1.toml")
    found = checked(office)
    assert found.files == ("röhre 1.toml", "tube.toml")
    assert looked_at(found) == {"röhre 1"}


def test_faults_of_files_that_are_not_touched_are_no_business_of_the_commit(office: Office) -> None:
    office.shop.replace("other.toml", "100 mm", "100,5 mm")
    stage(office)
    git(office.shop.root, "commit", "--quiet", "-m", "a fault")
    office.shop.replace("tube.toml", "30 bar", "31 bar")
    stage(office)
    assert checked(office).assessment.exit_code == 0
    office.shop.replace("other.toml", "hoops = 4", "hoops = 5")
    stage(office)
    assert checked(office).assessment.exit_code == 2


def test_only_what_the_paths_choose(office: Office) -> None:
    office.shop.replace("duty.toml", "12 bar", "12.5 bar")
    stage(office)
    assert looked_at(checked(office, "tube.toml")) == {"tube"}


def test_before_the_first_commit(office: Office) -> None:
    git(office.shop.root, "update-ref", "-d", "HEAD")
    git(office.shop.root, "rm", "--quiet", "--cached", "other.toml")
    assert looked_at(checked(office)) == {"tube"}


def test_an_accepted_finding_does_not_stop_a_commit_and_a_lapsed_one_does(office: Office) -> None:
    office.shop.replace("tube.toml", "30 bar", "45 bar")
    office.concede()
    stage(office, "tube.toml")
    assert checked(office).assessment.exit_code == 1  # the entry is not staged
    stage(office, "register.toml")
    found = checked(office)
    assert found.assessment.exit_code == 0
    assert [one.concession.number for one in found.accepted] == ["C-001"]
    assert checked(office, today=days(201)).assessment.exit_code == 1
    office.shop.replace("tube.toml", "45 bar", "45.5 bar")
    stage(office)
    assert checked(office).assessment.exit_code == 1


def test_the_signers_are_those_that_are_staged(office: Office) -> None:
    office.shop.replace("tube.toml", "30 bar", "45 bar")
    office.concede(key=office.key_of("m.coyle"))
    stage(office, "tube.toml", "register.toml")
    assert checked(office).assessment.exit_code == 1
    stage(office, "allowed_signers")
    assert checked(office).assessment.exit_code == 0


def test_settings_that_are_not_in_git(office: Office) -> None:
    git(office.shop.root, "rm", "--quiet", "--cached", FILE_NAME)
    with pytest.raises(DesignError, match=r"git does not have speclint\.toml in what is staged"):
        checked(office)


def test_settings_staged_with_a_fault(office: Office) -> None:
    office.shop.replace(FILE_NAME, "for-review", "revieW")
    stage(office)
    office.shop.replace(FILE_NAME, "revieW", "for-review")
    assert checked(office).assessment.exit_code == 2


def test_a_family_that_the_staged_settings_require(office: Office) -> None:
    office.shop.write({}, settings=SETTINGS + '[families]\nrequired = ["boilers"]\n')
    stage(office)
    with pytest.raises(FamilyError, match="requires the family boilers"):
        checked(office)


def test_nothing_of_the_repository_is_changed(office: Office) -> None:
    office.shop.replace("tube.toml", "30 bar", "45 bar")
    stage(office)
    office.shop.replace("tube.toml", "45 bar", "46 bar")
    office.shop.write({"untracked.toml": "x"}, settings=SETTINGS)
    status = git(office.shop.root, "status", "--porcelain")
    before = {path: path.stat().st_mtime_ns for path in sorted(office.shop.root.rglob("*"))}
    checked(office)
    after = {path: path.stat().st_mtime_ns for path in sorted(office.shop.root.rglob("*"))}

    assert after == before
    assert git(office.shop.root, "status", "--porcelain") == status


def test_a_report_of_what_is_staged_knows_the_register_that_is_staged(office: Office) -> None:
    """Staged with its concession, which the work tree has already lost."""
    office.shop.replace("tube.toml", "30 bar", "45 bar")
    entered = office.concede()
    stage(office)
    (office.shop.root / "register.toml").unlink()
    standing = standings_of(checked(office).assessment, TODAY)["tube", "tube.stress"]
    assert standing.concession.number == entered.number


@pytest.mark.parametrize(("tubes_more", "said"), [(11, "tube-8, tube-9."), (12, "tube-8, and 1 more.")])
def test_of_many_components_the_first_twelve_are_named(office: Office, tubes_more: int, said: str) -> None:
    """Twelve in full; of a first commit of hundreds no page of names."""
    files = {f"tube-{number}.toml": SOUND for number in range(2, 2 + tubes_more)}
    office.shop.write({"tube.toml": SOUND.replace("30 bar", "31 bar"), **files}, settings=SETTINGS)
    stage(office, "tube.toml", *files)
    lines = staged_page(checked(office), 200).lines
    assert said in " ".join(map(str, lines))
