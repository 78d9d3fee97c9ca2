"""release.identity, release.local-code and release.independent-check."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings as trials, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.release.part import files, settings

IDENTITY, CODE, CHECKED = "release.identity", "release.local-code", "release.independent-check"
_LINES = {
    "drawing": 'drawing = "X-101"',
    "revision": 'revision = "A"',
    "title": 'title = "Front cover"',
    "material": 'material = "plate-P265GH"',
    "prepared_by": 'prepared_by = "A. Render"',
}


def test_identity_of_every_kind_of_component_conforms(workshop: DesignFolder) -> None:
    checks = workshop.write(files()).check(IDENTITY)
    assert [(check.component, check.outcome) for check in checks] == [
        ("cover", "conforms"),
        ("ring", "conforms"),
    ]


@pytest.mark.parametrize("name", sorted(_LINES))
def test_each_missing_particular_is_a_finding_that_names_it(workshop: DesignFolder, name: str) -> None:
    check = workshop.write(files((_LINES[name], ""))).only(IDENTITY, "cover")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert check.says == f"not stated: {name}"
    assert check.where.key == name


@pytest.mark.parametrize(
    ("name", "says", "fails"),
    [
        ("revision", "?", True),
        ("revision", "-", False),
        ("revision", "0", False),
        ("revision", "to be decided", True),
        ("prepared_by", "somebody", True),
        ("prepared_by", "the drawing office", True),
        ("prepared_by", "M. Coyle", False),
        ("prepared_by", "x", True),
        ("prepared_by", "17", True),
        ("prepared_by", "N. N.", True),
        ("prepared_by", "J.O.", False),
        ("title", "x", True),
        ("title", "12", True),
        ("title", "Untitled", True),
        ("title", "Öl", False),
        ("title", "Part 3", False),
        ("drawing", "1", True),
        ("drawing", "12", False),
        ("drawing", "XXX", True),
        ("drawing", "draft", True),
        ("revision", "xx", True),
        ("revision", "latest", True),
        ("revision", "P1", False),
        ("revision", "as drawing", True),
        ("revision", "x?", True),
        ("prepared_by", "A.N. Other", True),
        ("prepared_by", "chief draughtsman", True),
        ("prepared_by", "O", False),
        ("prepared_by", "J. Li", False),
        ("prepared_by", "van der Berg", False),
        ("title", "ohne Titel", True),
        ("title", "Steam pipe tbc", True),
        ("title", "Frischdampfleitung, links", False),
        ("drawing", "CN-C-XXXX", True),
        ("drawing", "CN-C-????", True),
        ("drawing", "CN-C-nnnn", True),
        ("drawing", "CN-C-tbc", True),
        ("drawing", "CN-", True),
        ("drawing", "XX-X-0000", True),
        ("drawing", "drawing number", True),
        ("drawing", "1-204", False),
        ("drawing", "XX-1204", False),
        ("drawing", "CN-C-0000-1", False),
        ("drawing", "Lp 36.01", False),
    ],
)
def test_a_mark_or_a_role_states_nothing(workshop: DesignFolder, name: str, says: str, fails: bool) -> None:
    made = files((_LINES[name], f'{name} = "{says}"'))
    check = workshop.write(made, settings=settings(stage="for-review"))
    if not fails:
        assert check.only(IDENTITY, "cover").outcome == "conforms"
        return
    assert check.only(IDENTITY, "cover").says == f'not stated: {name}, but "{says}"'


@pytest.mark.parametrize(
    ("stage", "outcome"), [("draft", "conforms"), ("for-review", "finding"), ("released", "finding")]
)
def test_a_draft_may_be_marked_as_one_until_it_goes_for_review(
    workshop: DesignFolder, stage: str, outcome: str
) -> None:
    made = files((_LINES["revision"], 'revision = "Draft"'))
    assert workshop.write(made, settings=settings(stage=stage)).only(IDENTITY, "cover").outcome == outcome


@pytest.mark.parametrize(("checker", "outcome"), [("x", "finding"), ("MC", "conforms"), ("M.", "finding")])
def test_who_checked_is_named_by_two_letters_at_least(
    workshop: DesignFolder, checker: str, outcome: str
) -> None:
    made = files(("M. Coyle", checker))
    check = workshop.write(made, settings=settings(stage="for-review")).only(CHECKED, "cover")
    assert check.outcome == outcome, check.says
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


DUTY_CHECKED = "release.duty-checked"
GAUGE = 'kind = "gauge-outline"\nid = "gauge"\n'
ENVELOPE = 'kind = "envelope"\nid = "envelope"\ngauge = "gauge"\n'


@pytest.mark.parametrize(
    ("prepared", "checked", "outcome"),
    [
        ("J. Ostler", "M. Coyle", "conforms"),
        ("x", "M. Coyle", "finding"),
        ("J. Ostler", "x", "finding"),
        ("J. Ostler", "J. Ostler", "finding"),
        ("J. Ostler", "", "finding"),
        ("", "M. Coyle", "finding"),
    ],
)
def test_the_gauge_of_an_envelope_is_checked_by_another(
    workshop: DesignFolder, prepared: str, checked: str, outcome: str
) -> None:
    signed = f'prepared_by = "{prepared}"\n' * bool(prepared) + f'checked_by = "{checked}"\n' * bool(checked)
    made = {"gauge.toml": GAUGE + signed, "envelope.toml": ENVELOPE}
    check = workshop.write(made, settings=settings(stage="for-review")).only(DUTY_CHECKED, "envelope")
    assert check.outcome == outcome, check.says
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("prepared", "checked", "outcome"),
    [
        ("A. Render", "M. Coyle", "conforms"),
        ("A. Render", "A. Render", "finding"),
        ("Arthur Render", "A. Render", "finding"),
        ("A. Render", "the checker", "finding"),
        ("A. Render", "", "finding"),
        ("", "M. Coyle", "finding"),
        ("x", "M. Coyle", "finding"),
        ("A. Render", "x", "finding"),
    ],
)
def test_a_duty_is_checked_by_another(
    workshop: DesignFolder, prepared: str, checked: str, outcome: str
) -> None:
    signed = f'prepared_by = "{prepared}"\n' * bool(prepared) + f'checked_by = "{checked}"\n' * bool(checked)
    made = files()
    made["duty.toml"] = made["duty.toml"].replace('id = "duty"\n', f'id = "duty"\n{signed}')
    check = workshop.write(made, settings=settings(stage="for-review")).only(DUTY_CHECKED, "cover")
    assert check.outcome == outcome, check.says
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_duty_is_checked_from_the_review_stage_on(workshop: DesignFolder) -> None:
    draft = workshop.write(files(), settings=settings(stage="draft")).only(DUTY_CHECKED, "cover")
    assert draft.outcome == "not applicable"
    own = workshop.write(files(('duty = "duty"\n', "")), settings=settings(stage="for-review"))
    assert own.only(DUTY_CHECKED, "cover").outcome == "not applicable"


@pytest.mark.parametrize(
    ("own", "outcome"),
    [
        ("", "conforms"),
        ('[cases.running]\nlive_pressure = "18 bar gauge"\n', "finding"),
        ('prepared_by = "A. Render"\n[cases.running]\nlive_pressure = "18 bar gauge"\n', "finding"),
        (
            'prepared_by = "A. Render"\nchecked_by = "M. Coyle"\n[cases.drifting]\ntrack_speed = "90 km/h"\n',
            "conforms",
        ),
    ],
)
def test_who_checked_a_duty_did_not_check_another_case_of_one_that_is_like_it(
    workshop: DesignFolder, own: str, outcome: str
) -> None:
    made = files(('duty = "duty"\n', 'duty = "second"\n'))
    signed = 'prepared_by = "A. Render"\nchecked_by = "M. Coyle"\n'
    made["duty.toml"] = made["duty.toml"].replace('id = "duty"\n', f'id = "duty"\n{signed}')
    made["second.toml"] = f'kind = "duty"\nid = "second"\nlike = "duty"\n{own}'
    check = workshop.write(made, settings=settings(stage="for-review")).only(DUTY_CHECKED, "cover")
    assert check.outcome == outcome, check.says


def test_what_is_of_no_one_metal_needs_no_material(workshop: DesignFolder) -> None:
    """An engine is of many parts, each with its own."""
    engine = 'kind = "engine"\nid = "engine"\n' + "\n".join(
        line for name, line in _LINES.items() if name != "material"
    )
    check = workshop.write({**files(), "engine.toml": engine + "\n"}).only(IDENTITY, "engine")
    assert check.outcome == "conforms"
    untitled = engine.replace(_LINES["title"], "")
    check = workshop.write({**files(), "engine.toml": untitled + "\n"}).only(IDENTITY, "engine")
    assert check.says == "not stated: title"


@trials(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=12, deadline=None)
@given(absent=st.sets(st.sampled_from(sorted(_LINES)), min_size=1))
def test_the_finding_names_exactly_what_is_missing(workshop: DesignFolder, absent: set[str]) -> None:
    check = workshop.write(files(*((_LINES[name], "") for name in absent))).only(IDENTITY, "cover")
    assert set(check.says.removeprefix("not stated: ").split(", ")) == absent


def test_codes_that_are_named_conform_for_any_part(workshop: DesignFolder) -> None:
    checks = workshop.write(files(), settings=settings()).check(CODE)
    assert [check.outcome for check in checks] == ["conforms", "conforms"]


@pytest.mark.parametrize(
    ("pressure", "railway", "says"),
    [
        ("[]", '["R"]', "speclint.toml names no local code for pressure"),
        ('["P"]', "[]", "speclint.toml names no local code for railway running"),
        ('[""]', '["R"]', "speclint.toml names no local code for pressure"),
        ('["none"]', '["R"]', "speclint.toml names no local code for pressure"),
        ('["P, part 2"]', '["to be agreed", "-"]', "speclint.toml names no local code for railway running"),
        ("[]", "[]", "speclint.toml names no local code for pressure nor for railway running"),
    ],
)
def test_a_code_not_named_is_a_hold_on_a_pressure_part(
    workshop: DesignFolder, pressure: str, railway: str, says: str
) -> None:
    workshop.write(files(), settings=settings(pressure=pressure, railway=railway))
    cover, ring = workshop.check(CODE)
    assert (cover.outcome, cover.grade, cover.says) == ("finding", Grade.HOLD, says)
    assert ring.outcome == "not applicable"


def test_a_code_not_named_is_a_hold_on_a_safety_part_that_holds_no_pressure(workshop: DesignFolder) -> None:
    found = files(("pressure_part = true", "pressure_part = false"))
    check = workshop.write(found, settings=settings(railway="[]")).only(CODE, "cover")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def test_a_record_of_a_part_hurts_nobody_its_drawing_is_asked(workshop: DesignFolder) -> None:
    made = {"cover-7.toml": 'kind = "made-part"\nid = "cover-7"\nof = "cover"\nserial = "7"\n'}
    workshop.write({**files(), **made}, settings=settings(pressure="[]"))
    outcomes = {one.component: one.outcome for one in workshop.check(CODE)}
    assert outcomes == {"cover": "finding", "cover-7": "not applicable", "ring": "not applicable"}


@pytest.mark.parametrize("instead", ["", "pressure_part = false"])
def test_a_cover_holds_pressure_whatever_it_says(workshop: DesignFolder, instead: str) -> None:
    found = files(("pressure_part = true", instead))
    check = workshop.write(found, settings=settings(pressure="[]")).only(CODE, "cover")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@pytest.mark.parametrize(
    ("checked", "outcome"),
    [
        ('checked_by = "M. Coyle"', "conforms"),
        ('checked_by = "A. Render"', "finding"),
        ('checked_by = "a render"', "finding"),
        ('checked_by = "Render, A."', "finding"),
        ('checked_by = "Render, B."', "conforms"),
        ('checked_by = "Anne Render"', "finding"),  # the A. Render who prepared it
        ('checked_by = "the drawing office"', "finding"),  # names nobody
        ('checked_by = "himself"', "finding"),
        ('checked_by = "A. Render and the checker"', "finding"),
        ('checked_by = "A. Render and M. Coyle"', "conforms"),  # another checked it too
        ('checked_by = "A. Render, M. Coyle"', "conforms"),
        ('checked_by = "A. Render & A Render"', "finding"),
        ("", "finding"),
    ],
)
def test_two_persons_from_review_on(workshop: DesignFolder, checked: str, outcome: str) -> None:
    found = files(('checked_by = "M. Coyle"', checked))
    check = workshop.write(found, settings=settings("for-review")).only(CHECKED, "cover")
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)
    check = workshop.write(found, settings=settings("released")).only(CHECKED, "cover")
    assert check.outcome == outcome
    check = workshop.write(found, settings=settings("draft")).only(CHECKED, "cover")
    assert check.outcome == "not applicable"


@pytest.mark.parametrize(
    ("prepared", "outcome"),
    [
        ("A. Render and M. Coyle", "finding"),
        ("M. Coyle / A. Render", "finding"),
        ("A. Render, J. Ostler", "conforms"),
    ],
)
def test_of_two_who_prepared_it_neither_checks_it(
    workshop: DesignFolder, prepared: str, outcome: str
) -> None:
    found = files(('prepared_by = "A. Render"', f'prepared_by = "{prepared}"'))
    check = workshop.write(found, settings=settings("for-review")).only(CHECKED, "cover")
    assert check.outcome == outcome


def test_a_part_that_can_hurt_nobody_needs_no_second_name(workshop: DesignFolder) -> None:
    assert workshop.write(files(), settings=settings()).only(CHECKED, "ring").outcome == "not applicable"


def test_a_cage_is_a_safety_part_without_the_word(workshop: DesignFolder) -> None:
    """It holds back what is left of a broken valve."""
    cage = 'kind = "valve-cage"\nid = "cage"\nprepared_by = "A. Render"\nchecked_by = "A. Render"\n'
    check = workshop.write({**files(), "cage.toml": cage}, settings=settings()).only(CHECKED, "cage")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ('prepared_by = "A. Render"', "prepared_by is not stated in cover.toml"),
    ],
)
def test_the_check_is_not_assessed_without(workshop: DesignFolder, line: str, says: str) -> None:
    check = workshop.write(files((line, "")), settings=settings()).only(CHECKED, "cover")
    assert (check.outcome, check.grade, check.says) == ("not assessed", Grade.HOLD, says)


def test_a_part_that_does_not_say_whether_it_can_hurt_is_not_assessed(workshop: DesignFolder) -> None:
    workshop.write(files(), settings=settings()).replace("ring.toml", "safety_part = false", "")
    assert workshop.only(CHECKED, "ring").says == "safety_part is not stated in ring.toml"
