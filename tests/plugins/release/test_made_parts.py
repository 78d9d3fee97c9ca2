"""The records of parts as made: each limit from both sides, and what is missing."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check, assess, made_to_old_revision
from speclint.testing import DesignFolder, changed, expect_not_applicable, on_sheet
from tests.plugins.release.made import DRAWN, MADE, STUDS, TIGHTENED, recorded
from tests.plugins.release.part import RING, files, settings


def made(workshop: DesignFolder, rule: str, *changes: tuple[str, str], stage: str = "for-review") -> Check:
    text = {**files(DRAWN), "cover-7.toml": changed(MADE, *changes)}
    return workshop.write(text, settings=settings(stage)).only(rule, "cover-7")


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


def test_certified_strengths_from_both_sides(workshop: DesignFolder) -> None:
    """EN 10028-2 table 4, P265GH of the greatest thickness, 150 to 250 mm: R_m is at least 390 MPa."""
    assert on_sheet(made(workshop, "made.strength"), "R_m_min") == 390e6
    for certified, outcome in (("390 MPa", "conforms"), ("389 MPa", "finding")):
        change = ('tensile_strength = "447 MPa"', f'tensile_strength = "{certified}"')
        assert made(workshop, "made.strength", change).outcome == outcome


def test_a_strength_that_no_certificate_states_is_held_against_nothing(workshop: DesignFolder) -> None:
    none = ('proof_stress = "281 MPa"\n', ""), ('tensile_strength = "447 MPa"\n', "")
    for one in none:
        assert made(workshop, "made.strength", one).outcome == "conforms"
    expect_not_applicable(made(workshop, "made.strength", *none), "its certificate states no strength")


def test_a_certified_elongation_from_both_sides(workshop: DesignFolder) -> None:
    """EN 10028-2 table 3, P265GH up to 100 mm: at least 22 %; it is told beside strengths that suffice."""
    for certified, outcome in (("22 %", "conforms"), ("21.9 %", "finding"), ("3 %", "finding")):
        change = ('tensile_strength = "447 MPa"', f'tensile_strength = "447 MPa"\nelongation = "{certified}"')
        assert made(workshop, "made.strength", change).outcome == outcome
    alone = ('proof_stress = "281 MPa"\n', ""), ('tensile_strength = "447 MPa"', 'elongation = "21 %"')
    assert made(workshop, "made.strength", *alone).outcome == "finding"


def test_the_carbon_equivalent_of_the_analysis(workshop: DesignFolder) -> None:
    """0.16 + 1.2/6 + (0.08 + 0.02 + 0.005)/5 + (0.15 + 0.15)/15 = 0.16 + 0.2 + 0.021 + 0.02 = 0.401 %."""
    check = made(workshop, "made.carbon-equivalent")
    assert on_sheet(check, "CE") == pytest.approx(0.00401)
    for stated, outcome in (
        ("0.4209 %", "conforms"),
        ("0.4211 %", "finding"),
        ("0.3811 %", "conforms"),
        ("0.3809 %", "finding"),
    ):
        change = ('carbon_equivalent = "0.41 %"', f'carbon_equivalent = "{stated}"')
        assert made(workshop, "made.carbon-equivalent", change).outcome == outcome
    left = made(workshop, "made.carbon-equivalent", ('V = "0.005 %"\n', ""))
    assert (left.outcome, left.says) == ("not assessed", "the analysis does not state V")


@pytest.mark.parametrize(
    ("record", "grade"),
    [
        (TIGHTENED, None),
        (TIGHTENED.replace("385..405", "379..405"), Grade.HOLD),
        (TIGHTENED.replace("385..405", "385..420"), None),
        (TIGHTENED.replace("385..405", "385..421"), Grade.HOLD),
        (TIGHTENED + 'result = "passed"\n', None),
        (TIGHTENED + 'result = "failed"\n', Grade.HOLD),
        (TIGHTENED[: TIGHTENED.index("[tight")], Grade.QUERY),
    ],
)
def test_tightening_from_both_sides(workshop: DesignFolder, record: str, grade: Grade | None) -> None:
    """The spec allows 400 − 20 = 380 to 400 + 20 = 420 N·m."""
    workshop.write({**files(DRAWN), "studs.toml": STUDS, "studs-1.toml": record}, settings=settings())
    assert workshop.only("made.tightening").grade is grade


def test_a_joint_that_asks_for_no_figure_may_be_tightened_by_any(workshop: DesignFolder) -> None:
    asked = STUDS.replace('torque = "400 N·m ±20"\n', "")
    design = {**files(DRAWN), "studs.toml": asked, "studs-1.toml": TIGHTENED}
    check = workshop.write(design, settings=settings()).only("made.tightening")
    assert (check.outcome, check.says) == ("conforms", "first: its spec asks for no figure")


@pytest.mark.parametrize(
    ("asked", "least", "most"),
    [("torque", "400 N·m", "420 N·m"), ("angle", "30 °", "31.5 °"), ("preload", "80 kN", "84 kN")],
)
def test_each_figure_that_is_asked_for_is_reached_and_not_passed(
    workshop: DesignFolder, asked: str, least: str, most: str
) -> None:
    """Without a tolerance from the figure itself to 1.05 of it: 420 N·m, 31.5° and 84 kN."""
    drawn = STUDS.replace('torque = "400 N·m ±20"', f'{asked} = "{least}"')
    for found, outcome in ((least, "conforms"), (most, "conforms"), ("less", "finding"), ("more", "finding")):
        number, unit = (most if found in (most, "more") else least).split()
        times = {"less": 0.999, "more": 1.001}.get(found, 1.0)
        record = TIGHTENED.replace(
            'torque = "385..405 N·m"', f'{asked} = "{float(number) * times:.6g} {unit}"'
        )
        design = {**files(DRAWN), "studs.toml": drawn, "studs-1.toml": record}
        check = workshop.write(design, settings=settings()).only("made.tightening")
        assert check.outcome == outcome, (found, check.says)
        if outcome == "finding":
            assert f"first: {asked} " in check.actual


@pytest.mark.parametrize(
    ("method", "outcome"),
    [
        *(("ultrasonic", "conforms"), ("ultrasound, all edges", "conforms"), ("dye penetrant", "finding")),
        *(("ultrasonic thickness", "finding"), ("UT to follow", "finding")),
    ],
)
def test_what_was_examined_by_another_method_was_not(
    workshop: DesignFolder, method: str, outcome: str
) -> None:
    """The spec says: ultrasonic, plate edges."""
    check = made(workshop, "made.examined", ('method = "ultrasonic"', f'method = "{method}"'))
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("extent", "ends"),
    [
        *(("all edges", ("conforms", None)), ("99 %", ("conforms", None))),
        *(("98.9 %", ("finding", Grade.HOLD)), ("one in ten", ("finding", Grade.HOLD))),
        ("random samples", ("finding", Grade.HOLD)),
    ],
)
def test_an_examination_of_a_part_of_what_is_asked_is_a_hold(
    workshop: DesignFolder, extent: str, ends: tuple[str, Grade | None]
) -> None:
    """The spec says: ultrasonic, plate edges."""
    check = made(
        workshop, "made.examined", ('method = "ultrasonic"', f'method = "ultrasonic"\nextent = "{extent}"')
    )
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(
    ("asked", "record", "ends", "says"),
    [
        (
            "MT after turning",
            'method = "MT before turning"',
            ("finding", Grade.NONCONFORMITY),
            "not when it is asked",
        ),
        ("MT after turning", 'method = "MT after turning"', ("conforms", None), ""),
        (
            "MT when ground",
            'method = "MT after turning"',
            ("finding", Grade.QUERY),
            "when ground is asked for",
        ),
        ("MT of faces", 'method = "MT"\nextent = "faces"', ("conforms", None), ""),
        (
            "MT of faces and edges",
            'method = "MT"\nextent = "faces"',
            ("finding", Grade.QUERY),
            "edge by magnetic",
        ),
        (
            "MT",
            'method = "MT"\nextent = "the crown"',
            ("finding", Grade.QUERY),
            'in "MT, the crown" the word "crown" is not understood: nobody can tell how much was examined. Write all, ',
        ),
        ("MT", 'method = "MT"\nextent = "not possible"', ("finding", Grade.HOLD), "or a part: not possible"),
        ("MT", 'method = "MT"\nextent = "whole cylinder cover"', ("conforms", None), ""),
    ],
)
def test_when_and_where_it_was_examined(
    workshop: DesignFolder, asked: str, record: str, ends: tuple[str, Grade | None], says: str
) -> None:
    text = changed(MADE, ('method = "ultrasonic"', record))
    drawn = files(DRAWN, ('"ultrasonic, plate edges"', f'"{asked}"'))
    check = workshop.write({**drawn, "cover-7.toml": text}, settings=settings()).only(
        "made.examined", "cover-7"
    )
    assert (check.outcome, check.grade) == ends
    assert says in check.says


@pytest.mark.parametrize(
    ("treatment", "outcome"),
    [
        *(("", "finding"), ("stress relieved", "conforms"), ("PWHT", "conforms"), ("normalize", "finding")),
        *(("stress relief waived", "finding"), ("baked", "finding")),
    ],
)
def test_what_was_treated_otherwise_was_not(workshop: DesignFolder, treatment: str, outcome: str) -> None:
    stated = f'treatment = "{treatment}"\n' if treatment else ""
    text = recorded()
    cast = changed(text["casting-1.toml"], ('treatment = "stress relieved"\n', stated))
    workshop.write({**text, "casting-1.toml": cast}, settings=settings())
    assert workshop.only("made.examined", "casting-1").outcome == outcome


def test_no_metal_yields_above_its_tensile_strength(workshop: DesignFolder) -> None:
    for proof, told in (("447 MPa", 0), ("448 MPa", 1)):
        text = changed(MADE, ('proof_stress = "281 MPa"', f'proof_stress = "{proof}"'))
        workshop.write({**files(DRAWN), "cover-7.toml": text}, settings=settings())
        found = assess([workshop.root], workshop.loaded, []).complaints
        assert len(found) == told
        assert all("no more than 447 MPa" in str(one) for one in found)


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


def test_a_bar_of_iron_tells_nothing_of_its_part(workshop: DesignFolder) -> None:
    record = 'kind = "made-part"\nid = "ring-1"\nof = "ring"\n[certificate]\ntensile_strength = "90 MPa"\n'
    workshop.write({**files(), "ring-1.toml": record}, settings=settings())
    expect_not_applicable(workshop.only("made.strength", "ring-1"), "tells little of its walls")


def test_only_a_bolted_joint_is_tightened(workshop: DesignFolder) -> None:
    workshop.write({**files(DRAWN), "made.toml": MADE}, settings=settings())
    expect_not_applicable(workshop.only("made.tightening"), "no bolted joint")


@pytest.mark.parametrize("spec", [RING, 'kind = "cylinder-cover"\nid = "ring"\n'])
def test_a_hardness_that_no_spec_asks_for_is_not_judged(workshop: DesignFolder, spec: str) -> None:
    """Of a kind that may state one and does not, and of a kind that states none."""
    record = 'kind = "made-part"\nid = "ring-1"\nof = "ring"\n[certificate]\nhardness = "200 HB"\n'
    workshop.write({**files(), "ring.toml": spec, "ring-1.toml": record}, settings=settings())
    expect_not_applicable(workshop.only("made.hardness", "ring-1"), "asks for no hardness")


#: The record of a ring.
OF_RING = 'kind = "made-part"\nid = "ring-1"\nof = "ring"\n'


@pytest.mark.parametrize(
    ("certified", "outcome"),
    [("200 HB", "conforms"), ("220 HB", "conforms"), ("199 HB", "finding"), ("215..221 HB", "finding")],
)
def test_certified_hardness_from_both_sides(workshop: DesignFolder, certified: str, outcome: str) -> None:
    ring = f'{RING}hardness = "210 HB ±10"\n'
    record = f'{OF_RING}[certificate]\ntype = "3.1"\nhardness = "{certified}"\n'
    workshop.write({**files(), "ring.toml": ring, "ring-1.toml": record})
    assert workshop.only("made.hardness", "ring-1").outcome == outcome


_MEASURED = (
    '[measured.hardness]\nvalues = ["212 HB"]\nuncertainty = "2 HB"\ninstrument = "tester 4"\n'
    'date = "2026-03-02"\ninspector = "K. Ashby"\n'
)


@pytest.mark.parametrize(
    ("document", "more", "says"),
    [
        ('type = "2.1"\n', "", "inspection document 2.1 rests on no test"),
        ('type = "2.2"\n', "", "inspection document 2.2 rests on no test"),
        ("", "", "a document of no type"),
        ('type = "3.1"\n', "", None),
        ('type = "3.2"\n', "", None),
        ('type = "2.2"\n', _MEASURED, None),
    ],
)
def test_a_hardness_is_certified_by_a_test_of_its_metal(
    workshop: DesignFolder, document: str, more: str, says: str | None
) -> None:
    """EN 10204: 2.1 and 2.2 tell of no test of what is delivered; the works may have measured it instead."""
    ring = f'{RING}hardness = "210 HB ±10"\n'
    record = f'{OF_RING}[certificate]\n{document}hardness = "212 HB"\n{more}'
    workshop.write({**files(), "ring.toml": ring, "ring-1.toml": record}, settings=settings())
    check = workshop.only("made.hardness", "ring-1")
    assert (check.outcome == "conforms") == (says is None)
    assert says is None or says in check.says


@pytest.mark.parametrize("table", ["welds", "heat_treatments", "entries"])
def test_a_process_that_failed_is_a_hold(workshop: DesignFolder, table: str) -> None:
    more = ("[certificate]\n", f'[{table}.first]\nresult = "failed"\n[certificate]\n')
    check = made(workshop, "made.examined", more)
    assert (check.grade, check.says) == (Grade.HOLD, "failed: first")


AGAIN = """
[examinations.again]
method = "{method}"
extent = "{extent}"
date = "2026-04-09"
result = "passed"
[welds."{weld}"]
procedure = "WPQR 38"
welder = "mark 7"
date = "{repaired}"
result = "passed"
[certificate]
"""


@pytest.mark.parametrize(
    ("says", "holds"),
    [
        ({}, False),
        ({"failed": "2026-04-07"}, False),  # mended on the day on which it was found
        ({"failed": "2026-04-08"}, True),  # the repair is earlier than the examination that failed
        ({"failed": "2026-04-09", "repaired": "2026-04-09"}, True),  # nobody can tell which was the last
        ({"repaired": "2026-04-09"}, False),  # mended on the day on which it was looked at again
        ({"repaired": "2026-04-10"}, True),  # mended after it was looked at again
        ({"repaired": ""}, True),
        ({"failed": ""}, True),
        ({"weld": "second seam"}, True),  # a weld that is not called a repair
        ({"weld": "second seam", "extent": "the place ground out"}, False),
        ({"weld": "second seam", "extent": "edges, no repairs"}, True),
        ({"weld": "second seam", "method": "UT after repair"}, False),
        ({"weld": "no repair"}, True),
        ({"weld": "edge_repair"}, False),
        ({"weld": "Nachgeschweißt"}, False),
        ({"method": "MT"}, True),
        ({"method": "UT and MT"}, False),
        ({"method": "looked over"}, True),
        ({"of": "weld 3", "extent": "weld 3"}, False),
        ({"of": "weld 3", "extent": "weld 4"}, True),
        ({"of": "weld 3", "extent": "welds 1 to 3"}, False),
        ({"of": "weld 3", "extent": "repaired weld 3"}, False),
        ({"of": "weld 3", "extent": "repaired weld 4"}, True),
        ({"of": "welds 1 to 3", "extent": "repaired weld 2"}, False),
        ({"of": "welds 1 to 3", "extent": "weld 2"}, True),
        ({"of": "front edge", "extent": "rear edge"}, True),
        ({"of": "front edge", "extent": "front and rear edges"}, False),
        ({"of": "front edge", "extent": "repaired bore"}, True),
        ({"of": "front edge", "extent": "all edges"}, False),
        ({"of": "the whole front edge", "extent": "front edge"}, False),
        ({"of": "front edge to EN ISO 5817", "extent": "front edge"}, False),
        ({"of": "front edge to DIN 25435", "extent": "front edge"}, False),
        ({"of": "front edge to ASTM 1", "extent": "front edge"}, False),
        ({"of": "front edge to BS 1", "extent": "front edge"}, False),
        ({"of": "weld 501", "extent": "welds 1 to 600"}, False),
        ({"of": "weld 502", "extent": "welds 1 to 600"}, True),  # no part has so many
        ({"of": "", "extent": "front edge"}, True),
        ({"of": "", "extent": "repaired edge"}, False),
        ({"of": "all edges", "extent": "repaired edge"}, False),
        ({"extent": ""}, False),
    ],
)
def test_an_examination_that_failed_is_settled_by_repair_and_a_later_one(
    workshop: DesignFolder, says: dict[str, str], holds: bool
) -> None:
    """It failed on 6 April, is mended on the 7th, and passed on the 9th."""
    said = {
        "failed": "2026-04-06",
        "repaired": "2026-04-07",
        "weld": "repair",
        "method": "UT",
        "of": "",
        "extent": "",
    }
    changes = failed_and_again({**said, **says})
    check = made(workshop, "made.examined", *changes)
    assert (check.says.startswith("failed: edges"), check.grade is Grade.HOLD) == (holds, holds)


def failed_and_again(said: dict[str, str]) -> list[tuple[str, str]]:
    """The examination of a record that failed, a weld, and a second examination; what is "" is not stated."""
    first = f'date = "{said["failed"]}"\nextent = "{said["of"]}"\nresult = "failed"\n'
    again = AGAIN.format(**{key: said[key] for key in ("method", "extent", "weld", "repaired")})
    stated = [
        "".join(line for line in text.splitlines(keepends=True) if not line.endswith('= ""\n'))
        for text in (first, again)
    ]
    old = 'method = "ultrasonic"\nresult = "passed"\n'
    return [(old, f'method = "ultrasonic"\n{stated[0]}'), ("[certificate]\n", stated[1])]


SETTLED = {
    "failed": "2026-04-06",
    "of": "all",
    "method": "UT",
    "extent": "all",
    "weld": "repair",
    "repaired": "2026-04-07",
}


def test_a_weld_by_no_welder_makes_nothing_good(workshop: DesignFolder) -> None:
    """Of a part that is welded by its record alone, too, a weld names its procedure and its welder."""
    check = made(workshop, "made.examined", *failed_and_again(SETTLED), ('welder = "mark 7"\n', ""))
    assert check.outcome == "finding"
    assert "welds, each with its procedure and its welder" in check.says


def test_what_failed_and_was_made_good_is_said(workshop: DesignFolder) -> None:
    check = made(workshop, "made.examined", *failed_and_again(SETTLED))
    assert check.outcome == "conforms"
    assert check.says.endswith("; edges failed, weld repair, then again passed")
    by_hand = failed_and_again({**SETTLED, "weld": "seam", "extent": "all, ground out"})
    assert made(workshop, "made.examined", *by_hand).says.endswith(
        "; edges failed, repaired, then again passed"
    )


@pytest.mark.parametrize("table", ["examinations.again", "welds.repair"])
@pytest.mark.parametrize("result", ['result = "failed"\n', ""])
def test_what_was_not_passed_settles_nothing(workshop: DesignFolder, table: str, result: str) -> None:
    first, (old, again) = failed_and_again(SETTLED)
    head, at, rest = again.replace('[welds."repair"]', "[welds.repair]").partition(f"[{table}]")
    assert at
    record = head + at + rest.replace('result = "passed"\n', result, 1)
    check = made(workshop, "made.examined", first, (old, record))
    assert (check.grade, "edges" in check.says.removeprefix("failed: ").split(", ")) == (Grade.HOLD, True)


def test_a_weld_that_failed_is_not_settled_with_an_examination_of_its_name(workshop: DesignFolder) -> None:
    first, (old, again) = failed_and_again(SETTLED)
    weld = again.replace("[certificate]", '[welds.edges]\nresult = "failed"\n[certificate]')
    assert made(workshop, "made.examined", first, (old, weld)).says == "failed: edges"


BLOCK = """
kind = "cylinder-block"
id = "block"
drawing = "X-104"
construction = "fabricated"
[welding]
heat_treatment = "stress relieved"
"""
WELDED = """
kind = "made-part"
id = "block-1"
of = "block"
[welds.all]
procedure = "WPS-12"
welder = "mark 7"
result = "passed"
[heat_treatments.relief]
treatment = "stress relieve"
chart = "F-97"
result = "passed"
"""


@pytest.mark.parametrize(
    ("left", "outcome"), [("", "conforms"), ("procedure", "finding"), ("welder", "finding")]
)
def test_each_weld_has_both_its_procedure_and_its_welder(
    workshop: DesignFolder, left: str, outcome: str
) -> None:
    weld = 'result = "passed"\n' + "".join(
        f'{key} = "{value}"\n' for key, value in (("procedure", "WPS-1"), ("welder", "mark 7")) if key != left
    )
    design = {
        **files(DRAWN, add="[welding]\nwelded = true\n"),
        "cover-7.toml": f"{MADE}[welds.all]\n{weld}",
    }
    check = workshop.write(design, settings=settings()).only("made.examined", "cover-7")
    assert check.outcome == outcome
    if outcome == "finding":
        assert "welds, each with its procedure and its welder" in check.says


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (("[welds.all]", "[entries.all]"), "welds, each with its procedure and its welder"),
        (("stress relieve", "normalize"), "stress relieve, with its chart"),
        (('chart = "F-97"\n', ""), "stress relieve, with its chart"),
    ],
)
def test_a_fabricated_block_has_its_welds_and_its_relief_on_record(
    workshop: DesignFolder, change: tuple[str, str], said: str
) -> None:
    """It is welded by its construction, whether it says so under welding or not."""
    text = (
        WELDED
        if change[0] != "[welds.all]"
        else changed(WELDED, ('procedure = "WPS-12"\nwelder = "mark 7"\n', ""))
    )
    design = {**files(), "block.toml": BLOCK}
    whole = workshop.write({**design, "block-1.toml": WELDED}, settings=settings()).only(
        "made.examined", "block-1"
    )
    assert whole.outcome == "conforms"
    check = workshop.write({**design, "block-1.toml": changed(text, change)}, settings=settings()).only(
        "made.examined", "block-1"
    )
    assert (check.outcome, check.says) == ("finding", f"not on record: {said}")


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ("WPS-12", "to follow", "finding"),
        ("mark 7", "whoever was on shift", "finding"),
        ("mark 7", "W. Dunn", "conforms"),
        ('result = "passed"\n[heat', "[heat", "finding"),  # the weld has no result
        ('chart = "F-97"\nresult = "passed"\n', 'chart = "F-97"\n', "finding"),
        ('treatment = "stress relieve"\n', "", "finding"),
        ('relief]\ntreatment = "stress relieve"\n', '"stress relief"]\n', "conforms"),  # called by it
    ],
)
def test_a_record_says_what_was_done_and_how_it_came_out(
    workshop: DesignFolder, old: str, new: str, outcome: str
) -> None:
    design = {**files(), "block.toml": BLOCK, "block-1.toml": changed(WELDED, (old, new))}
    check = workshop.write(design, settings=settings()).only("made.examined", "block-1")
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("treatment", "outcome"),
    [
        ("local stress relief of the chest", "finding"),
        ("stress relief of the chest", "finding"),
        ("stress relieved locally, ring burner", "finding"),
        ("PWHT by heating mats", "finding"),
        ("stress relief of repaired areas", "finding"),
        ("örtlich spannungsarmgeglüht, stress relieved", "finding"),
        ("stress relief of seams 1 to 4", "finding"),
        ("stress relief of all but the branch", "finding"),
        ("stress relief of the block except its feet", "finding"),
        ("stress relief of the right half", "finding"),
        ("stress relieved at 580 to 620 °C, 2 h, furnace cooled, no exceptions", "conforms"),
        ("PWHT per ASME VIII UCS-56, complete weldment", "conforms"),
        ("furnace stress relief of the whole block, not local", "conforms"),
        ("stress relief of the welds", "conforms"),
        ("PWHT of the cylinder block", "conforms"),
    ],
)
def test_the_relief_is_of_the_whole_piece(workshop: DesignFolder, treatment: str, outcome: str) -> None:
    record = changed(WELDED, ('treatment = "stress relieve"', f'treatment = "{treatment}"'))
    check = workshop.write(
        {**files(), "block.toml": BLOCK, "block-1.toml": record}, settings=settings()
    ).only("made.examined", "block-1")
    assert check.outcome == outcome
    said = f"not on record: stress relieve, with its chart, on record is {treatment}"
    assert outcome == "conforms" or check.says == said


@pytest.mark.parametrize(
    ("treatment", "says"),
    [
        ("spannungsarmgeglüht", ""),
        ("spannungsarmgegluht", ""),
        ("Spannungsfrei geglueht bei 580 °C", ""),
        ("weichgeglüht", ""),
        ("SAG 580 °C", ""),
        ("P.W.H.T. 600 °C", ""),
        ("no P.W.H.T.", "not on record: stress relieve, with its chart"),
        ("N+T", "not on record: stress relieve, with its chart"),
        ("+N", "not on record: stress relieve, with its chart"),
        ("normalgeglüht", "not on record: stress relieve, with its chart"),
        ("vergütet", "not on record: stress relieve, with its chart"),
        ("nicht spannungsarmgeglüht", "not on record: stress relieve, with its chart"),
        (
            "heated through",
            "not on record: stress relieve, with its chart, on record is heated through, which is not understood",
        ),
    ],
)
def test_heat_treatments_in_german_and_in_words_that_nobody_knows(
    workshop: DesignFolder, treatment: str, says: str
) -> None:
    record = changed(WELDED, ('treatment = "stress relieve"', f'treatment = "{treatment}"'))
    design = {**files(), "block.toml": BLOCK, "block-1.toml": record}
    check = workshop.write(design, settings=settings()).only("made.examined", "block-1")
    assert check.outcome == ("finding" if says else "conforms")
    assert check.says == says or not says


@pytest.mark.parametrize(
    ("asked", "treatment", "outcome"),
    [
        ("normalized", "normalgeglueht", "conforms"),
        ("normalized", "+N", "conforms"),
        ("normalized", "N+T", "conforms"),
        ("normalized", "H&T", "finding"),
        ("quenched and tempered", "H&T", "conforms"),
        ("quenched and tempered", "Q/T", "conforms"),
        ("quenched and tempered", "OQT", "conforms"),
        ("quenched and tempered", "N+T", "finding"),
        ("normalized", "Normalglühen", "conforms"),
        ("normalized", "normal geglüht", "conforms"),
        ("normalized", "geglüht", "finding"),
        ("quenched and tempered", "vergütet", "conforms"),
        ("quenched and tempered", "verguetet", "conforms"),
        ("quenched and tempered", "vergutet", "conforms"),
        ("quenched and tempered", "gehärtet und angelassen", "conforms"),
        ("quenched and tempered", "gehärtet", "finding"),
        ("quenched and tempered", "abgeschreckt und angelassen", "conforms"),
    ],
)
def test_german_words_of_what_is_asked_for(
    workshop: DesignFolder, asked: str, treatment: str, outcome: str
) -> None:
    block = changed(BLOCK, ("stress relieved", asked))
    record = changed(WELDED, ("stress relieve", treatment))
    design = {**files(), "block.toml": block, "block-1.toml": record}
    check = workshop.write(design, settings=settings()).only("made.examined", "block-1")
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("surface", "treatment"),
    [
        ("nitrided", "gasnitriert"),
        ("case hardened", "einsatzgehärtet"),
        ("case hardened", "aufgekohlt und gehaertet"),
        ("induction hardened", "induktionsgehärtet"),
        ("induction hardened", "induktiv gehärtet"),
    ],
)
def test_german_words_of_the_heat_treatment_of_a_surface(
    workshop: DesignFolder, surface: str, treatment: str
) -> None:
    record = f'[heat_treatments.a]\ntreatment = "{treatment}"\nchart = "F-1"\nresult = "passed"\n'
    design = {
        "pin.toml": f'kind = "tappet"\nid = "tappet"\nsurface = "{surface}"\n',
        "pin-1.toml": f'kind = "made-part"\nid = "tappet-1"\nof = "tappet"\n{record}',
    }
    assert workshop.write(design, settings=settings()).only("made.examined").outcome == "conforms"


def test_the_whole_relieved_beside_a_part_of_it_is_the_whole(workshop: DesignFolder) -> None:
    local = '[heat_treatments.repair]\ntreatment = "local PWHT"\nchart = "F-98"\nresult = "passed"\n'
    design = {**files(), "block.toml": BLOCK, "block-1.toml": WELDED + local}
    assert workshop.write(design, settings=settings()).only("made.examined", "block-1").outcome == "conforms"


def test_the_welds_of_a_pipe_are_relieved_where_they_are(workshop: DesignFolder) -> None:
    pipe = changed(BLOCK, ("cylinder-block", "steam-pipe"), ('construction = "fabricated"\n', ""))
    record = changed(WELDED, ('treatment = "stress relieve"', 'treatment = "local PWHT of each weld"'))
    design = {**files(), "block.toml": pipe, "block-1.toml": record}
    assert workshop.write(design, settings=settings()).only("made.examined", "block-1").outcome == "conforms"


@pytest.mark.parametrize(
    ("surface", "treatment", "outcome"),
    [
        ("nitrided", "gas nitriding", "conforms"),
        ("nitrided", "tempered", "finding"),
        ("case hardened", "carburised and quenched", "conforms"),
        ("case hardened", "flame hardened", "finding"),
        ("induction hardened", "induction hardening", "conforms"),
        ("induction hardened", "nitriding", "finding"),
        ("hard chromium plated", "", "not applicable"),
    ],
)
def test_the_heat_treatment_of_a_surface_is_on_record(
    workshop: DesignFolder, surface: str, treatment: str, outcome: str
) -> None:
    """Chromium is plated on without heat: no record of a furnace is asked for."""
    record = f'[heat_treatments.a]\ntreatment = "{treatment}"\nchart = "F-1"\nresult = "passed"\n'
    design = {
        "pin.toml": f'kind = "tappet"\nid = "tappet"\nsurface = "{surface}"\n',
        "pin-1.toml": f'kind = "made-part"\nid = "tappet-1"\nof = "tappet"\n{record if treatment else ""}',
    }
    assert workshop.write(design, settings=settings()).only("made.examined").outcome == outcome


@pytest.mark.parametrize(
    ("method", "outcome"), [("", "finding"), ('method = "UT"\n', "conforms"), ('method = "VT"\n', "finding")]
)
def test_an_examination_on_record_names_its_method(workshop: DesignFolder, method: str, outcome: str) -> None:
    check = made(workshop, "made.examined", ('method = "ultrasonic"\n', method))
    assert check.outcome == outcome


@pytest.mark.parametrize("asked", ["not required", "UT not required", "UT if required"])
def test_a_spec_that_denies_an_examination_asks_for_no_record(workshop: DesignFolder, asked: str) -> None:
    design = {
        "ring.toml": f'kind = "piston-ring"\nid = "ring"\nexamination = "{asked}"\n',
        "ring-1.toml": 'kind = "made-part"\nid = "ring-1"\nof = "ring"\n',
    }
    check = workshop.write(design, settings=settings()).only("made.examined")
    expect_not_applicable(check, "no examination")


FIRST = 'held = "1800 s"\nresult = "passed"\n'


@pytest.mark.parametrize(
    ("day", "result", "pressure", "outcome"),
    [
        ("2026-05-31", "failed", "28 bar gauge", "conforms"),  # mended, and passed a day later
        ("2026-06-02", "failed", "28 bar gauge", "finding"),  # failed when it was tested again
        ("2026-06-01", "failed", "28 bar gauge", "finding"),  # nobody can tell which was the last
        ("", "failed", "28 bar gauge", "finding"),
        (
            "2026-05-31",
            "passed",
            "20 bar gauge",
            "conforms",
        ),  # a lower test, and a day later one that is enough
        (
            "2026-06-02",
            "passed",
            "20 bar gauge",
            "finding",
        ),  # why it was tested again, and lower, nobody says
    ],
)
def test_what_passed_after_the_last_that_fell_short_counts(
    workshop: DesignFolder, day: str, result: str, pressure: str, outcome: str
) -> None:
    other = f'[hydraulic_tests.other]\npressure = "{pressure}"\nheld = "1800 s"\nresult = "{result}"\n'
    other += f'date = "{day}"\n' if day else ""
    check = made(workshop, "made.hydraulic-test", (FIRST, f'{FIRST}date = "2026-06-01"\n{other}'))
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("recorded_torque", "outcome"),
    [
        ("400..420 N·m", "conforms"),
        ("400..421 N·m", "finding"),
        ("399..410 N·m", "finding"),
        ("600 N·m", "finding"),
    ],
)
def test_a_torque_without_tolerance_is_passed_by_a_twentieth_at_most(
    workshop: DesignFolder, recorded_torque: str, outcome: str
) -> None:
    """400 N·m: from 400 to 1.05 × 400 = 420 N·m."""
    design = {
        **files(DRAWN),
        "studs.toml": changed(STUDS, ("400 N·m ±20", "400 N·m")),
        "studs-1.toml": changed(TIGHTENED, ("385..405 N·m", recorded_torque)),
    }
    assert workshop.write(design, settings=settings()).only("made.tightening").outcome == outcome


def test_a_part_whose_spec_asks_for_no_test_needs_none_on_record(workshop: DesignFolder) -> None:
    """Nor does a test on record beside it make it asked for."""
    for record in (MADE, MADE[: MADE.index("[hydraulic_tests")]):
        text = {**files(DRAWN), "cover-7.toml": record}
        lines = text["cover.toml"].splitlines(keepends=True)
        text["cover.toml"] = "".join(line for line in lines if not line.startswith("test_pressure"))
        assert text["cover.toml"] != files(DRAWN)["cover.toml"]
        check = workshop.write(text, settings=settings("released")).only("made.hydraulic-test", "cover-7")
        expect_not_applicable(check, "asks for no hydraulic test")


def test_each_heat_treatment_on_record_has_its_chart(workshop: DesignFolder) -> None:
    files = recorded()
    second = '[heat_treatments.second]\ntreatment = "stress relieved"\nresult = "passed"\n'
    made = files["casting-1.toml"]
    check = workshop.write({**files, "casting-1.toml": made + second}).only("made.examined", "casting-1")
    assert check.says == "not on record: stress relieve, with its chart"
    charted = {**files, "casting-1.toml": f'{made}{second}chart = "F-2"\n'}
    assert workshop.write(charted).only("made.examined", "casting-1").outcome == "conforms"


def test_an_examination_of_which_nothing_is_on_record_is_asked_for_as_it_is_drawn(
    workshop: DesignFolder,
) -> None:
    files = recorded()
    none = changed(
        files["made.toml"], ('[examinations.edges]\nmethod = "ultrasonic"\nresult = "passed"\n', "")
    )
    check = workshop.write({**files, "made.toml": none}).only("made.examined", "cover-7")
    assert check.says == "not on record: examination (ultrasonic, plate edges)"
