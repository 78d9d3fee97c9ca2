"""Whether a concession holds: every way in which it ends, each with the reason a person needs."""

from __future__ import annotations

import pytest

from speclint.errors import replace
from speclint.rules import Grade
from tests import tubes
from tests.register.office import SETTINGS, SIGNED, TODAY, Office, days


def test_an_accepted_finding_stands_until_its_last_day(office: Office) -> None:
    office.concede()
    assert office.only().state == "valid"
    assert office.only(today=days(169)).state == "valid"
    soon = office.only(today=days(170))
    assert (soon.state, soon.reasons) == ("ending soon", (f"it ends in 30 days, on {days(200)}",))
    assert office.only(today=days(199)).reasons == (f"it ends in 1 day, on {days(200)}",)
    assert office.only(today=days(200)).reasons == (f"it ends today, on {days(200)}",)
    assert office.only(today=days(200)).holds
    ended = office.only(today=days(201))
    assert (ended.state, ended.holds, ended.reasons) == ("expired", False, (f"it ended on {days(200)}",))


def test_the_settings_say_when_an_end_is_soon(office: Office) -> None:
    office.concede()
    office.shop.write({}, settings=SETTINGS.replace("signed = []", "ending_soon = 199"))
    assert office.only().state == "valid"
    office.shop.write({}, settings=SETTINGS.replace("signed = []", "ending_soon = 200"))
    assert office.only().state == "ending soon"


def test_an_end_that_was_moved_beyond_all_bounds_no_longer_counts(office: Office) -> None:
    """30 years are at most 30 × 365.25 + 1 days and at least 30 × 365 + 7; the settings may say otherwise."""
    office.concede(until=days(30 * 365 + 7))
    assert office.only().state == "valid"
    text, later = office.text(), days(30 * 365 + 9)
    moved = text.replace(str(days(30 * 365 + 7)), str(later))
    office.shop.write({"register.toml": moved}, settings=SETTINGS)
    assert (office.only().state, office.only().holds) == ("not accepted", False)
    assert office.only().reasons == (f"it runs from {days(0)} to {later}, longer than 30 years",)
    office.shop.write({}, settings=SETTINGS.replace("signed = []", "longest = 31"))
    assert office.only().state == "valid"


def test_a_concession_of_tomorrow_does_not_count_today(office: Office) -> None:
    office.concede(today=days(1))
    assert office.only().state == "not yet in force"
    assert office.only(today=days(1)).state == "valid"


@pytest.mark.parametrize(
    ("file", "old", "new", "reason"),
    [
        ("tube.toml", "105 mm ±0.5", "105 mm ±0.4", "tube outside was 105 mm ±0.5, is 105 mm ±0.4"),
        ("tube.toml", "45 bar gauge", "45.1 bar gauge", "tube pressure was 45 bar gauge, is 45.1 bar gauge"),
        ("tube.toml", "100 mm ±0.5", "100 mm H7", "is 100 mm H7 (100 mm to 100.035 mm)"),
        ("speclint.toml", "100 MPa", "95 MPa", "limit allowable was 100 MPa, is 95 MPa"),
        ("tube.toml", 'outside = "105 mm ±0.5"\n', "", "tube outside was 105 mm ±0.5, is not stated"),
    ],
)
def test_it_lapses_when_what_it_rests_on_changes_and_says_what_from_what_to_what(
    office: Office, file: str, old: str, new: str, reason: str
) -> None:
    office.concede()
    office.shop.replace(file, old, new)
    standing = office.only()
    assert standing.state == "lapsed"
    assert any(reason in one for one in standing.reasons), standing.reasons


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("100 mm ±0.5", "10 cm ±0.05"),
        ("hoops = 4", "hoops = 5"),
        ('kind = "tube"', '# a comment\nkind = "tube"\ntitle = "read by no rule"'),
    ],
)
def test_it_does_not_lapse_for_anything_else(office: Office, old: str, new: str) -> None:
    office.concede()
    office.shop.replace("tube.toml", old, new)
    assert office.only().state == "valid"


def test_it_lapses_with_the_edition_of_the_rule(office: Office) -> None:
    office.concede()
    office.shop.loaded = tubes.tubes(replace(tubes.stress, edition=2), *tubes.RULES[1:])
    assert office.only().reasons[0] == "edition of the rule was 1, is 2"
    assert office.only().state == "lapsed"


def test_it_lapses_when_the_same_values_are_judged_more_gravely(office: Office) -> None:
    milder = replace(tubes.stress, grade=Grade.NONCONFORMITY)
    office.shop.loaded = tubes.tubes(milder, *tubes.RULES[1:])
    office.concede()
    assert office.only().state == "valid"
    office.shop.loaded = tubes.tubes()
    assert "the finding was of grade nonconformity, is of grade hold" in office.only().reasons
    assert office.only().state == "lapsed"


def test_it_lapses_when_a_formula_is_corrected_without_a_new_edition(office: Office) -> None:
    """The same values, another result: the reviewer accepted 1.131 of the limit and not 1.2."""
    office.concede()
    text = office.text().replace('used = "1.131"', 'used = "1.03"')
    (office.shop.root / "register.toml").write_text(text, encoding="utf-8")
    assert office.only().reasons == ("used of the limit was 1.03, is 1.131",)


def test_what_can_no_longer_be_found_is_unmatched_with_the_reason(office: Office) -> None:
    office.concede()
    register = office.text()
    for old, new, reason in (
        ('component = "tube"', 'component = "tubes"', 'no component is called tubes; write "tube"'),
        ('rule = "tube.stress"', 'rule = "tube.strain"', "no rule on a tube is called tube.strain"),
        ('rule = "tube.stress"', 'rule = "tube.hoops"', "nothing to accept any longer: the check conforms"),
    ):
        office.shop.write({"register.toml": register.replace(old, new)}, settings=SETTINGS)
        assert office.only().state == "unmatched"
        assert reason in office.only().reasons[0]


def test_a_finding_that_is_put_right_leaves_its_concession_unmatched(office: Office) -> None:
    office.concede()
    office.shop.replace("tube.toml", "45 bar", "30 bar")
    assert office.only().state == "unmatched"


def test_a_spec_that_cannot_be_read_leaves_its_concession_unmatched(office: Office) -> None:
    office.concede()
    office.shop.replace("tube.toml", "45 bar", "45,5 bar")
    assert office.only().state == "unmatched"
    assert "could not be read" in office.only().reasons[0]


def test_two_entries_of_one_number_count_neither(office: Office) -> None:
    office.concede()
    office.shop.replace("tube.toml", 'ends = "open"', 'ends = "closed"')
    office.concede(rule="tube.ends")
    office.shop.replace("register.toml", '"C-002"', '"C-001"')
    assert [one.state for one in office.stands()] == ["duplicate", "duplicate"]
    assert not any(one.holds for one in office.stands())


def test_an_entry_copied_as_it_is_adds_nothing(office: Office) -> None:
    office.concede()
    copy = office.text()[office.text().index("[[concession]]") :].replace("C-001", "C-002")
    (office.shop.root / "register.toml").write_text(office.text() + copy, encoding="utf-8")
    assert [one.state for one in office.stands()] == ["valid", "duplicate"]
    assert office.stands()[1].reasons == (f"C-001 already accepts the same finding until {days(200)}",)


def test_an_entry_whose_time_is_over_is_history_where_another_holds(office: Office) -> None:
    office.concede(until=days(10))
    office.concede(today=days(11), until=days(300))
    assert [one.state for one in office.stands(today=days(11))] == ["replaced", "valid"]
    assert all(one.in_order for one in office.stands(today=days(11)))


def test_a_reviewer_who_is_struck_off_no_longer_counts(office: Office) -> None:
    office.concede()
    office.shop.write({}, settings=SETTINGS.replace('competent_for = ["tubes"]', "competent_for = []", 1))
    assert office.only().state == "not accepted"
    assert "not competent for the family tubes: speclint.toml has no family" in office.only().reasons[0]


def test_who_later_is_named_as_preparer_no_longer_counts(office: Office) -> None:
    office.concede()
    office.shop.replace("tube.toml", "A. Render", "M.COYLE")
    assert "M. Coyle prepared tube" in office.only().reasons[0]


def test_a_copy_for_another_component_does_not_count(office: Office) -> None:
    office.shop.write(
        {"other.toml": (office.shop.root / "tube.toml").read_text(encoding="utf-8")}, settings=SETTINGS
    )
    office.concede()
    office.shop.replace("register.toml", 'component = "tube"', 'component = "other"')
    standing = office.only()
    assert standing.state == "lapsed"
    assert "other bore was not used, is 100 mm ±0.5" in standing.reasons


def test_a_fingerprint_changed_by_hand_is_seen(office: Office) -> None:
    made = office.concede()
    office.shop.replace("register.toml", made.fingerprint, "0" * 24)
    assert "though every value reads the same" in office.only().reasons[0]


@pytest.mark.parametrize("settings", [SETTINGS, SIGNED])
def test_an_entry_signed_at_once_or_later_holds(office: Office, settings: str) -> None:
    office.shop.write({}, settings=settings)
    office.concede(key=office.key_of("m.coyle"))
    assert office.only().state == "valid"
    text = office.text()
    (office.shop.root / "register.toml").unlink()
    office.concede()
    assert office.only().state == ("not signed" if settings == SIGNED else "valid")
    office.sign("C-001", office.key_of("m.coyle"))
    assert office.only().state == "valid"
    assert office.text() == text


def test_a_signature_that_is_demanded_and_absent(office: Office) -> None:
    office.shop.write({}, settings=SIGNED)
    office.concede()
    assert office.only().reasons == ("speclint.toml asks for a signature on a hold, and it has none",)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("until = {until}", "until = {later}"),
        ("date = {today}", "date = {yesterday}"),
        ("carried at 113 MPa", "carried at 118 MPa"),
        ('accepted_by = "M. Coyle"', 'accepted_by = "M Coyle"'),
        ('role = "chief draughtsman"', 'role = "chief engineer"'),
        ('number = "C-001"', 'number = "C-002"'),
        ('found = "mean', 'found = "Mean'),
        ('"tube pressure" = "45 bar gauge"', '"tube pressure" = "46 bar gauge"'),
        ('grade = "hold"', 'grade = "query"'),
    ],
)
def test_any_word_changed_after_signing_is_found(office: Office, old: str, new: str) -> None:
    office.concede(key=office.key_of("m.coyle"))
    facts = {"until": days(200), "later": days(201), "today": TODAY, "yesterday": days(-1)}
    office.shop.replace("register.toml", old.format(**facts), new.format(**facts))
    standing = office.only()
    assert not standing.holds
    assert any("the signature is not m.coyle's of this entry as it stands" in one for one in standing.reasons)


def test_layout_and_comments_are_not_signed(office: Office) -> None:
    office.concede(key=office.key_of("m.coyle"))
    office.shop.replace("register.toml", 'role = "chief', 'role   =    "chief')
    office.shop.replace("register.toml", "[[concession]]", "# checked again in May\n[[concession]]")
    text = office.text().replace("\n", "\r\n")
    (office.shop.root / "register.toml").write_bytes(text.encode("utf-8"))
    assert office.only().state == "valid"
