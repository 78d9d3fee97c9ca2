"""The records of parts as made: whole, identified, within limits, fitted once; and what is missing."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check, assess, made_to_old_revision
from speclint.testing import DesignFolder, changed, expect_not_applicable
from tests.plugins.release.made import DRAWN, MADE, STUDS, made
from tests.plugins.release.part import files, settings

RULES = (
    "made.identified",
    "made.revision",
    "made.certificate",
    "made.strength",
    "made.carbon-equivalent",
    "made.within-limits",
    "made.hydraulic-test",
    "made.examined",
)


def test_a_record_that_is_whole_conforms(workshop: DesignFolder) -> None:
    text = {**files(DRAWN), "cover-7.toml": MADE}
    workshop.write(text, settings=settings("released"))
    chosen = [one for one in workshop.loaded.rules if one.name in RULES]
    found = assess([workshop.root], workshop.loaded, chosen).checks
    outcomes = {one.rule.name: one.outcome for one in found if one.component == "cover-7"}
    assert outcomes == dict.fromkeys(RULES, "conforms")


#: A rule, what is changed in the record, the grade that comes of it, and words that are said.
WRONG = [
    ("made.identified", ('serial = "7"\n', ""), Grade.NONCONFORMITY, "not stated: serial"),
    (
        "made.revision",
        ('made_to = "A"', 'made_to = "0"'),
        Grade.NONCONFORMITY,
        "made to revision 0, the drawing is at A",
    ),
    (
        "made.certificate",
        ('type = "3.1"', 'type = "2.2"'),
        Grade.HOLD,
        "inspection document 2.2, 3.1 is asked for",
    ),
    ("made.certificate", ('heat = "H-3312"\n', ""), Grade.HOLD, "it names no heat"),
    (
        "made.certificate",
        ('material = "plate-P265GH"', 'material = "plate-P355GH"'),
        Grade.HOLD,
        "it certifies plate-P355GH, plate-P265GH is asked for",
    ),
    (
        "made.certificate",
        ('material = "plate-P265GH"\n', ""),
        Grade.HOLD,
        "it names no material, plate-P265GH is asked for",
    ),
    ("made.hydraulic-test", ('pressure = "28 bar', 'pressure = "27.9 bar'), Grade.HOLD, "28 bar"),
    ("made.hydraulic-test", ('held = "1800 s"\n', ""), Grade.HOLD, "the time for which it was held"),
    ("made.hydraulic-test", ('held = "1800 s"', 'held = "1799 s"'), Grade.HOLD, "held for"),
    (
        "made.hydraulic-test",
        ('held = "1800 s"\nresult = "passed"', 'held = "1800 s"\nresult = "failed"'),
        Grade.HOLD,
        "first: failed",
    ),
    (
        "made.examined",
        ('method = "ultrasonic"\nresult = "passed"', 'method = "ultrasonic"\nresult = "failed"'),
        Grade.HOLD,
        "failed: edges",
    ),
    ("made.within-limits", ("50.02 mm", "50.047 mm"), Grade.QUERY, "is not proved in"),
    ("made.within-limits", ("50.02 mm", "50.055 mm"), Grade.NONCONFORMITY, "is out"),
    ("made.within-limits", ("50.02 mm", "49.945 mm"), Grade.NONCONFORMITY, "is out"),
]


@pytest.mark.parametrize(("rule", "change", "grade", "said"), WRONG)
def test_what_is_wrong_is_a_finding_of_its_grade(
    workshop: DesignFolder, rule: str, change: tuple[str, str], grade: Grade, said: str
) -> None:
    check = made(workshop, rule, change)
    assert (check.outcome, check.grade) == ("finding", grade)
    assert said in check.says or said in check.actual


@pytest.mark.parametrize(
    ("rule", "section"),
    [
        ("made.hydraulic-test", MADE[MADE.index("[hydraulic_tests") :]),
        ("made.examined", MADE[MADE.index("[examinations") : MADE.index("[hydraulic_tests")]),
    ],
)
def test_a_record_that_is_missing_is_a_query_until_the_drawings_are_released(
    workshop: DesignFolder, rule: str, section: str
) -> None:
    assert made(workshop, rule, (section, "")).grade is Grade.QUERY
    released = made(workshop, rule, (section, ""), stage="released").grade
    assert released is (Grade.HOLD if rule == "made.hydraulic-test" else Grade.NONCONFORMITY)


@pytest.mark.parametrize("kind", ["shaft", "rocker", "lagging", "fit"])
def test_what_holds_no_pressure_and_hurts_nobody_needs_no_record(workshop: DesignFolder, kind: str) -> None:
    """Of metal or not; a cover that holds pressure needs one in the same design."""
    made = {f"{one}.toml": f'kind = "{one}"\nid = "{one}"\n' for one in (kind, "cylinder-cover")}
    workshop.write(made, settings=settings("released"))
    expect_not_applicable(
        workshop.only("release.made-parts", kind), "neither a pressure part nor a safety part"
    )
    assert workshop.only("release.made-parts", "cylinder-cover").outcome == "finding"


def test_the_zones_of_the_decision(workshop: DesignFolder) -> None:
    """Limits 49.95 and 50.05, U = 0.004: in to 50.046, undecided to 50.054."""
    for size, grade in (
        ("50.046", None),
        ("50.0461", Grade.QUERY),
        ("50.054", Grade.QUERY),
        ("50.0541", Grade.NONCONFORMITY),
    ):
        assert made(workshop, "made.within-limits", ("50.02 mm", f"{size} mm")).grade is grade, size


def of_cover(workshop: DesignFolder, *records: str, stage: str = "released") -> Check:
    more = {f"made-{number}.toml": text for number, text in enumerate(records)}
    return workshop.write({**files(DRAWN), **more}, settings=settings(stage)).only(
        "release.made-parts", "cover"
    )


def test_released_drawings_ask_for_parts_as_made(workshop: DesignFolder) -> None:
    second = changed(MADE, ('id = "cover-7"', 'id = "cover-8"'))
    assert of_cover(workshop, stage="for-review").outcome == "not applicable"
    none = of_cover(workshop)
    assert (none.grade, none.says) == (Grade.NONCONFORMITY, "no part as made is on record")
    assert of_cover(workshop, MADE).outcome == "conforms"
    scrapped = changed(MADE, ('serial = "7"', 'serial = "7"\nfitted = false'))
    assert of_cover(workshop, scrapped).says == "none of 1 parts is fitted"
    assert of_cover(workshop, MADE, second).says == "none of 2 parts is fitted"
    fitted = changed(MADE, ('serial = "7"', 'serial = "7"\nfitted = true'))
    assert of_cover(workshop, fitted, second).says == "cover-7 is on record"


@pytest.mark.parametrize(
    ("number", "of", "outcome"),
    [
        ("8", "cover", "conforms"),
        ("7", "cover", "finding"),
        ("7", "ring", "conforms"),
        ("a 7", "cover", "finding"),
        ("a 8", "cover", "conforms"),
    ],
)
def test_a_serial_number_is_that_of_one_part(
    workshop: DesignFolder, number: str, of: str, outcome: str
) -> None:
    """Of one spec: another part may have the same number."""
    second = changed(
        MADE,
        ('id = "cover-7"', 'id = "other"'),
        ('serial = "7"', f'serial = "{number}"'),
        ('of = "cover"', f'of = "{of}"'),
    )
    text = second if of == "cover" else second[: second.index("[measured")]
    first = changed(MADE, ('serial = "7"', 'serial = "A7"')) if number.startswith("a") else MADE
    workshop.write({**files(DRAWN), "cover-7.toml": first, "other.toml": text}, settings=settings())
    assert workshop.only("made.identified", "cover-7").outcome == outcome


@pytest.mark.parametrize(
    ("number", "outcome"),
    [
        ("L-03", "finding"),
        ("L–03", "finding"),
        ("l − 03", "finding"),
        ("L‑03", "finding"),
        ("L03", "conforms"),
    ],
)
def test_a_serial_number_is_the_same_with_any_dash(workshop: DesignFolder, number: str, outcome: str) -> None:
    """A hyphen, a dash and a minus are stamped alike; a number without one is another."""
    first = changed(MADE, ('serial = "7"', 'serial = "L-03"'))
    second = changed(MADE, ('id = "cover-7"', 'id = "other"'), ('serial = "7"', f'serial = "{number}"'))
    workshop.write({**files(DRAWN), "cover-7.toml": first, "other.toml": second}, settings=settings())
    assert workshop.only("made.identified", "cover-7").outcome == outcome


@pytest.mark.parametrize(
    ("drawing", "serial", "outcome"),
    [
        ("X-101", "7", "finding"),
        ("X-101", "8", "conforms"),
        ("X-999", "7", "conforms"),  # numbers run by the drawing
    ],
)
def test_a_serial_number_is_that_of_one_piece_of_a_drawing(
    workshop: DesignFolder, drawing: str, serial: str, outcome: str
) -> None:
    """Two places of one drawing, as a front and a back one, each with a piece of its own."""
    second = f'kind = "cylinder-cover"\nid = "second"\ndrawing = "{drawing}"\n'
    of_second = f'kind = "made-part"\nid = "other"\nof = "second"\nserial = "{serial}"\n'
    text = {**files(DRAWN), "cover-7.toml": MADE, "second.toml": second, "other.toml": of_second}
    check = workshop.write(text, settings=settings()).only("made.identified", "cover-7")
    assert (check.outcome, "that of other too" in check.says) == (outcome, outcome == "finding")


FITTED = "made.fitted-once"


@pytest.mark.parametrize(
    ("first", "second", "of", "outcome"),
    [
        ("true", "true", "cover", "finding"),
        ("true", "false", "cover", "conforms"),
        ("true", "", "cover", "conforms"),
        ("true", "true", "studs", "conforms"),
        ("false", "true", "cover", "not applicable"),
        ("", "true", "cover", "not applicable"),
    ],
)
def test_one_part_is_fitted_in_a_place(
    workshop: DesignFolder, first: str, second: str, of: str, outcome: str
) -> None:
    text = {
        **files(DRAWN),
        "studs.toml": STUDS,
        "cover-7.toml": _piece("cover-7", "cover", first),
        "other.toml": _piece("other", of, second),
    }
    check = workshop.write(text, settings=settings()).only(FITTED, "cover-7")
    grade = Grade.NONCONFORMITY if outcome == "finding" else None
    assert (check.outcome, check.grade, "other is fitted" in check.says) == (
        outcome,
        grade,
        grade is not None,
    )


def test_studs_of_one_spec_are_all_fitted(workshop: DesignFolder) -> None:
    pieces = {f"{name}.toml": _piece(name, "studs", "true") for name in ("studs-1", "studs-2")}
    workshop.write({**files(DRAWN), "studs.toml": STUDS, **pieces}, settings=settings())
    expect_not_applicable(workshop.only(FITTED, "studs-1"), "stands for several pieces")


def _piece(name: str, of: str, fitted: str) -> str:
    said = f"fitted = {fitted}\n" if fitted else ""
    return f'kind = "made-part"\nid = "{name}"\nof = "{of}"\n{said}'


def test_a_record_does_not_disturb_the_check_of_its_drawing(workshop: DesignFolder) -> None:
    workshop.write(files(DRAWN), settings=settings())
    before = {one.order: one.fingerprint for one in workshop.assess().checks if one.component == "cover"}
    after = workshop.write({**files(DRAWN), "made.toml": MADE}, settings=settings()).assess()
    found = {one.order: one.fingerprint for one in after.checks if one.component == "cover"}
    for of_records in (
        "material.weldability",
        "release.inspection-points",
    ):  # ask whether a record names welds
        assert found.pop(("cover", of_records)) != before.pop(("cover", of_records))
    assert found == before


def test_parts_made_to_an_old_revision_are_counted(workshop: DesignFolder) -> None:
    old = changed(MADE, ('made_to = "A"', 'made_to = "0"'))
    found = workshop.write({**files(DRAWN), "made.toml": old}, settings=settings()).assess()
    assert made_to_old_revision(found) == ("cover-7",)
