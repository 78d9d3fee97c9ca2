"""The gate withholds unless everything was seen to be in order, and a change cannot loosen the gate that judges it."""

from __future__ import annotations

import sys

import pytest

from speclint import family
from speclint.errors import FamilyError, replace
from speclint.families import Loaded, load_families
from tests import tubes
from tests.register.office import FILES, SETTINGS, SIGNED, TODAY, Office, committed, days, decide, git, said
from tests.tubes import RACK


def signed(office: Office) -> Office:
    """The hold accepted and signed, where holds must be, all of it committed."""
    office.shop.write({}, settings=SIGNED)
    office.concede(key=office.key_of("m.coyle"))
    return committed(office)


def test_a_sound_design_is_released(office: Office) -> None:
    office.shop.replace("tube.toml", "45 bar", "30 bar")
    decision = decide(office)
    assert (decision.released, decision.exit_code, said(decision)) == (True, 0, "")


def test_a_hold_is_withheld_until_it_is_accepted(office: Office) -> None:
    decision = decide(office)
    assert decision.exit_code == 1
    assert "hold: tube tube.stress: mean hoop stress" in said(decision)
    assert "no concession is entered for it" in said(decision)
    office.concede()
    decision = decide(office)
    assert (decision.exit_code, said(decision)) == (0, "")
    assert [one.concession.number for one in decision.accepted] == ["C-001"]


def test_a_safety_check_not_assessed_is_a_hold(office: Office) -> None:
    office.shop.replace("tube.toml", 'pressure = "45 bar gauge"\n', "")
    assert "hold, not assessed: tube tube.stress: pressure is not stated" in said(decide(office))


def test_findings_below_hold_do_not_withhold(office: Office) -> None:
    office.concede()
    office.shop.replace("tube.toml", 'ends = "open"', 'ends = "closed"').replace(
        "tube.toml", "hoops = 4", "hoops = 3"
    )
    assert decide(office).exit_code == 0


def test_a_concession_that_ends_soon_is_named(office: Office) -> None:
    office.concede(until=days(5))
    decision = decide(office)
    assert decision.released
    assert [one.reasons for one in decision.ending] == [(f"it ends in 5 days, on {days(5)}",)]
    assert "C-001 is expired: it ended on" in said(decide(office, today=days(6)))


def test_an_entry_without_effect_is_named_though_no_hold_depends_on_it(office: Office) -> None:
    office.shop.replace("tube.toml", 'ends = "open"', 'ends = "closed"')
    office.concede()
    office.concede(rule="tube.ends")
    office.shop.replace("tube.toml", 'ends = "closed"', 'ends = "open"')
    decision = decide(office)
    assert decision.released
    assert [(one.concession.number, one.state) for one in decision.ended] == [("C-002", "unmatched")]


@pytest.mark.parametrize(
    ("file", "text", "code", "reason"),
    [
        ("other.toml", "kind =", 2, "could not be read: other.toml:1: this is not TOML"),
        ("other.toml", 'kind = "tube"\nbore = "5,5 mm"\n', 2, "could not be read: other.toml:2 bore"),
        ("speclint.toml", "[works\n", 2, "could not be read: speclint.toml:1"),
        ("register.toml", "[[concession]]\n", 2, "could not be read: register.toml"),
        ("register.toml", "[[concession]\n", 2, "could not be read: register.toml"),
        ("speclint.toml", '[families]\nrequired = ["boilers"]\n', 3, "requires the family boilers"),
        ("speclint.toml", '[limits."tube.strain"]\nx = "1"\n', 2, "no rule is called tube.strain"),
    ],
)
def test_whatever_cannot_be_read_withholds(
    office: Office, file: str, text: str, code: int, reason: str
) -> None:
    office.concede()
    assert decide(office).released
    (office.shop.root / file).write_text(text, encoding="utf-8")
    decision = decide(office)
    assert decision.exit_code == code
    assert reason in said(decision)


def test_a_rule_that_raises_withholds_though_it_is_conceded_elsewhere(office: Office) -> None:
    office.concede()
    office.shop.loaded = tubes.tubes(*tubes.RULES, tubes.raises)
    decision = decide(office)
    assert decision.exit_code == 3
    (reason,) = decision.reasons
    assert "tube tube.raises: could not be run (family tubes): ZeroDivisionError" in reason.says


def with_a_broken_family() -> Loaded:
    """The tubes, and a family whose rules cannot be asked for."""

    def _raising() -> None:
        raise OSError("its table is gone")

    _raising.__name__ = "speclint_rules"
    point = tubes.entry_point("broken", kinds=(), rules=())
    vars(sys.modules[point.value])["speclint_rules"] = family(_raising)
    return load_families([tubes.entry_point("tubes"), point])


def test_a_family_that_raises_withholds(office: Office) -> None:
    office.concede()
    decision = decide(office, load=with_a_broken_family)
    assert decision.exit_code == 3
    assert "family broken: speclint_rules raised OSError: its table is gone" in said(decision)


@pytest.mark.parametrize("limit", ["100 MPa", "120 MPa"])
def test_a_family_that_raises_withholds_a_change_on_either_design_basis(office: Office, limit: str) -> None:
    """Nothing could be judged, neither on the basis of before nor on that of the change."""
    committed(office)
    office.shop.replace("speclint.toml", '"100 MPa"', f'"{limit}"')
    decision = decide(office, load=with_a_broken_family, against="main")
    assert decision.exit_code == 3
    assert "family broken: speclint_rules raised OSError: its table is gone" in said(decision)


def test_a_family_that_cannot_be_imported_withholds(office: Office) -> None:
    def absent() -> Loaded:
        raise FamilyError("family tubes cannot be imported")

    assert decide(office, load=absent).exit_code == 3


def test_no_family_and_no_spec_withhold(office: Office) -> None:
    assert "no family of rules is installed" in said(decide(office, load=lambda: load_families([])))
    for file in FILES:
        (office.shop.root / file).unlink()
    decision = decide(office)
    assert decision.exit_code == 1
    assert "nothing was checked" in said(decision)


def test_a_path_that_leads_nowhere_withholds(office: Office) -> None:
    assert decide(office, "none").exit_code == 2


# Tampering with a signed concession


@pytest.mark.parametrize(
    ("file", "old", "new", "reasons"),
    [
        ("tube.toml", "105 mm", "104 mm", ["is lapsed", "tube outside was 105 mm ±0.5, is 104 mm ±0.5"]),
        ("register.toml", "113 MPa in service", "118 MPa in service", ["is not signed", "as it stands"]),
        ("register.toml", f"until = {days(200)}", f"until = {days(400)}", ["is not signed", "as it stands"]),
        ("register.toml", f"date = {TODAY}", f"date = {days(-1)}", ["is not signed", "as it stands"]),
        ("register.toml", "M. Coyle", "B. Thorne", ["is not accepted", "B. Thorne is not competent"]),
        ("speclint.toml", '"100 MPa"', '"99 MPa"', ["is lapsed", "limit allowable was 100 MPa, is 99 MPa"]),
    ],
)
def test_each_tampering_is_withheld_with_its_reason(
    office: Office, file: str, old: str, new: str, reasons: list[str]
) -> None:
    assert decide(signed(office)).released
    office.shop.replace(file, old, new)
    decision = decide(office)
    assert decision.exit_code == 1
    for reason in reasons:
        assert reason in said(decision), said(decision)


def test_a_concession_copied_to_another_component_is_withheld(office: Office) -> None:
    signed(office)
    office.shop.write({"other.toml": FILES["tube.toml"]}, settings=SIGNED)
    entry = office.text()[office.text().index("[[concession]]") :]
    copy = entry.replace('component = "tube"', 'component = "other"').replace("C-001", "C-002")
    (office.shop.root / "register.toml").write_text(office.text() + "\n" + copy, encoding="utf-8")
    decision = decide(office)
    assert decision.exit_code == 1
    assert [reason.hold.component for reason in decision.reasons if reason.hold] == ["other"]
    assert "C-002 is lapsed" in said(decision)
    assert "the signature is not m.coyle's of this entry as it stands" in said(decision)


def test_a_signature_taken_away_where_one_is_demanded(office: Office) -> None:
    signed(office)
    text = office.text()
    start, end = text.index('signature = """'), text.index('SIGNATURE-----\n"""') + len('SIGNATURE-----\n"""')
    (office.shop.root / "register.toml").write_text(text[:start] + text[end:], encoding="utf-8")
    assert "asks for a signature on a hold, and it has none" in said(decide(office))


# Against a revision


def test_a_limit_loosened_within_the_change_does_not_release_it(office: Office) -> None:
    committed(office)
    office.shop.replace("speclint.toml", '"100 MPa"', '"120 MPa"')
    assert decide(office).released
    decision = decide(office, against="main")
    assert decision.exit_code == 1
    assert "hold: tube tube.stress" in said(decision)
    changed = 'speclint.toml limits."tube.stress".allowable.value was 100 MPa, is 120 MPa'
    assert decision.to_review == (changed,)


def test_a_required_family_struck_out_within_the_change(office: Office) -> None:
    office.shop.write({}, settings=SETTINGS + '[families]\nrequired = ["tubes", "boilers"]\n')
    office.shop.replace("tube.toml", "45 bar", "30 bar")
    committed(office)
    office.shop.replace("speclint.toml", ', "boilers"', "")
    assert decide(office).released
    decision = decide(office, against="main")
    assert decision.exit_code == 3
    assert "requires the family boilers; installed: tubes" in said(decision)
    assert decision.to_review == ("speclint.toml families.required was tubes, boilers, is tubes",)


def test_a_family_left_out_within_the_change(office: Office) -> None:
    """Of two families the change leaves one out: judged against the revision before, it is applied all the same."""
    own = tubes.entry_point("own", kinds=(), rules=(replace(tubes.hoops, name="tube.more-hoops"),))
    office.shop.loaded = load_families([tubes.entry_point("tubes"), own])
    committed(office)
    office.shop.write({}, settings=SETTINGS + '[families]\nleave_out = ["own"]\n')
    decision = decide(office, against="main")
    assert decision.assessment is not None
    assert "tube.more-hoops" in {check.rule.name for check in decision.assessment.checks}
    assert decision.to_review == ("speclint.toml families.leave_out was not stated, is own",)
    plain = decide(office).assessment
    assert plain is not None
    assert "tube.more-hoops" not in {check.rule.name for check in plain.checks}


def test_a_reviewer_made_competent_within_the_change(office: Office) -> None:
    committed(office)
    office.shop.replace("speclint.toml", '["boilers"]', '["boilers", "tubes"]')
    office.concede(accepted_by="B. Thorne")
    assert decide(office).released
    decision = decide(office, against="main")
    assert "C-001 is not accepted: B. Thorne is not competent for the family tubes" in said(decision)
    assert any("competent_for was boilers, is boilers, tubes" in line for line in decision.to_review)


def test_a_signer_added_within_the_change(office: Office) -> None:
    office.shop.write({}, settings=SIGNED)
    committed(office)
    office.concede(key=office.key_of("m.coyle"))
    assert decide(office).released
    decision = decide(office, against="main")
    assert "the file of signers, allowed_signers, is not there" in said(decision)
    assert decision.to_review == ("allowed_signers is new",)


def test_a_key_exchanged_within_the_change(office: Office) -> None:
    signed(office)
    (office.shop.root / "allowed_signers").unlink()
    (office.keys / "key of m.coyle").unlink()
    (office.keys / "key of m.coyle.pub").unlink()
    office.sign("C-001", office.key_of("m.coyle"))
    assert decide(office).released
    decision = decide(office, against="main")
    assert "C-001 is not signed" in said(decision)
    assert decision.to_review == ("allowed_signers is changed",)


def test_the_demand_for_signatures_dropped_within_the_change(office: Office) -> None:
    office.shop.write({}, settings=SIGNED)
    committed(office)
    office.concede()
    office.shop.replace("speclint.toml", '["hold"]', "[]")
    assert decide(office).released
    assert "asks for a signature on a hold" in said(decide(office, against="main"))


def test_a_spec_left_out_within_the_change(office: Office) -> None:
    committed(office)
    office.shop.write({"other.toml": FILES["tube.toml"].replace("45", "30")}, settings=SETTINGS)
    office.shop.write({}, settings='leave_out = ["tube.toml"]\n' + SETTINGS)
    assert decide(office).released
    decision = decide(office, against="main")
    assert "hold: tube tube.stress" in said(decision)
    assert "speclint.toml leave_out was not stated, is tube.toml" in decision.to_review


def test_stricter_settings_within_the_change_count_as_well(office: Office) -> None:
    office.shop.replace("tube.toml", "45 bar", "35 bar")
    committed(office)
    assert decide(office, against="main").released
    office.shop.replace("speclint.toml", '"100 MPa"', '"80 MPa"')
    decision = decide(office, against="main")
    assert decision.exit_code == 1
    assert "on the change's own design basis: hold: tube tube.stress" in said(decision)


def test_a_change_may_bring_a_concession_under_the_old_rules(office: Office) -> None:
    office.shop.write({}, settings=SIGNED)
    office.key_of("m.coyle")
    committed(office)
    office.concede(key=office.key_of("m.coyle"))
    decision = decide(office, against="main")
    assert (decision.released, decision.to_review) == (True, ())


def test_settings_that_cannot_be_read_in_the_change(office: Office) -> None:
    office.concede()
    committed(office)
    (office.shop.root / "speclint.toml").write_text("[works\n", encoding="utf-8")
    decision = decide(office, against="main")
    assert decision.exit_code == 2
    (line,) = (line for line in decision.to_review if line.startswith("speclint.toml as a whole"))
    assert "this is not TOML" in line


@pytest.mark.parametrize(
    ("against", "reason"),
    [
        ("nowhere", "git has no such revision"),
        ("", "git has no such revision"),
        ("--all", "no such revision"),
    ],
)
def test_a_revision_that_is_not_there_withholds(office: Office, against: str, reason: str) -> None:
    office.concede()
    committed(office)
    decision = decide(office, against=against)
    assert decision.exit_code == 2
    assert reason in said(decision)


def test_a_revision_without_settings_withholds(office: Office) -> None:
    root = office.shop.root
    office.concede()
    git(root, "init", "--quiet", "--initial-branch=main")
    git(root, "add", "tube.toml")
    git(root, "commit", "--quiet", "-m", "no settings")
    decision = decide(office, against="main")
    assert decision.exit_code == 2
    assert "speclint.toml does not exist at main" in said(decision)


def test_a_repository_without_git_or_without_a_commit_withholds(
    office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(office.shop.root.parent))
    office.concede()
    assert "this is not a git repository" in said(decide(office, against="main"))
    git(office.shop.root, "init", "--quiet", "--initial-branch=main")
    assert "git has no such revision" in said(decide(office, against="main"))


def test_a_design_in_a_folder_of_a_larger_repository(office: Office) -> None:
    office.concede()
    top = office.shop.root.parent
    git(top, "init", "--quiet", "--initial-branch=main")
    git(top, "add", ".")
    git(top, "commit", "--quiet", "-m", "first")
    assert decide(office, against="main").released


def test_own_materials_may_be_added_and_are_for_a_reviewer_to_see(office: Office) -> None:
    """The file is no spec, also under the settings that did not name it yet."""
    office.concede()
    committed(office)
    office.shop.write({"metals.toml": ""}, settings='materials = ["metals.toml"]\n' + SETTINGS)
    decision = decide(office, against="main")
    assert "metals.toml is new" in decision.to_review
    assert not any("metals.toml:1 kind" in reason.says for reason in decision.reasons)


def test_an_unrelated_rack_does_not_matter(office: Office) -> None:
    signed(office)
    office.shop.write({"other-rack.toml": RACK}, settings=SIGNED)
    assert decide(office, against="main").released
