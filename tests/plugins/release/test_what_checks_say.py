"""What checks of release write down and point at, and by which decision a measured size is judged."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, changed, expect_conforms, expect_not_applicable
from tests.plugins.release.made import DRAWN, MADE, STUDS, TIGHTENED
from tests.plugins.release.part import COVER, RING, files, settings
from tests.plugins.release.test_known_faults import ACCEPTED, FAULT, PASSED, PROVED, TESTS
from tests.plugins.release.test_made_certificates import FIRST, LINER
from tests.plugins.release.test_made_witnesses import MADE as WITNESSED, RULE as INDEPENDENT, SOUND

#: One issuer, named in full and in short.
SHORTER = ("Harl Foundry Ltd", "Harl Foundry")


def written(check: Check) -> list[tuple[str, object]]:
    return [(step.name, step.value) for step in check.steps]


@pytest.mark.parametrize(
    ("size", "grade"),
    [("50.05 mm", None), ("50.0501 mm", Grade.NONCONFORMITY), ("49.9499 mm", Grade.NONCONFORMITY)],
)
def test_by_simple_acceptance_the_limits_alone_decide(
    workshop: DesignFolder, size: str, grade: Grade | None
) -> None:
    """Limits 49.95 and 50.05 mm: of the uncertainty of 4 µm nothing is taken off."""
    made = {**files(DRAWN), "made.toml": changed(MADE, ("50.02 mm", size))}
    own = f'{settings()}[made]\ndecision = "simple acceptance"\n'
    assert workshop.write(made, settings=own).only("made.within-limits").grade is grade


def test_what_identifies_a_part_is_written_down(workshop: DesignFolder) -> None:
    check = workshop.write(files(), settings=settings()).only("release.identity", "cover")
    stated = {
        "drawing": "X-101",
        "revision": "A",
        "title": "Front cover",
        "material": "plate-P265GH",
        "prepared_by": "A. Render",
    }
    assert all(f'{key} = "{word}"' in COVER for key, word in stated.items())
    assert {key: value for key, value in written(check) if key in stated} == stated


def test_the_issuer_of_each_of_two_documents_is_written_beside_its_own(workshop: DesignFolder) -> None:
    second = changed(FIRST, ('id = "first"', 'id = "second"'), SHORTER)
    workshop.write({"liner.toml": LINER, "first.toml": FIRST, "second.toml": second})
    steps = written(workshop.only("made.certificates-agree", "first"))
    assert ("issuer", SHORTER[0]) in steps
    assert ("issuer of second", SHORTER[1]) in steps


def test_an_assumed_figure_that_a_hold_took_is_pointed_at(workshop: DesignFolder) -> None:
    stated = 'design_pressure = "17 bar gauge"'
    assumed = 'design_pressure = { value = "17 bar gauge", from = "assumed" }'
    workshop.write(files((stated, assumed)), settings=settings())
    where = workshop.only("release.assumed", "cover").where
    assert (where.key, where.file) == ("design_pressure", "cover.toml")


def test_an_extent_that_is_not_understood_is_told_with_what_is(workshop: DesignFolder) -> None:
    made = changed(MADE, ('method = "ultrasonic"', 'method = "ultrasonic"\nextent = "where accessible"'))
    asked = ('"ultrasonic, plate edges"', '"ultrasonic"')
    check = workshop.write({**files(DRAWN, asked), "made.toml": made}, settings=settings()).only(
        "made.examined"
    )
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert check.says.startswith(
        '"ultrasonic, where accessible" may leave some out: nobody can tell how much was examined. Write '
    )
    assert check.says.endswith(", welds 1 to 3, after turning, or the words of the drawing")


def test_a_document_that_states_no_type_is_none(workshop: DesignFolder) -> None:
    made = changed(MADE, ('type = "3.1"\n', ""))
    check = workshop.write({**files(DRAWN), "made.toml": made}, settings=settings()).only("made.certificate")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert check.says == "no inspection document, 3.1 is asked for"


def test_a_part_that_is_fitted_alone_says_so(workshop: DesignFolder) -> None:
    made = changed(MADE, ('serial = "7"\n', 'serial = "7"\nfitted = true\n'))
    workshop.write({**files(DRAWN), "made.toml": made}, settings=settings())
    assert workshop.only("made.fitted-once").says == "it alone is fitted as cover"


@pytest.mark.parametrize(
    ("stage", "grade"),
    [("draft", Grade.QUERY), ("for-review", Grade.QUERY), ("released", Grade.NONCONFORMITY)],
)
def test_a_hardness_that_is_asked_for_and_on_no_record_is_told(
    workshop: DesignFolder, stage: str, grade: Grade
) -> None:
    ring = f'{RING}hardness = "210 HB ±10"\n'
    record = 'kind = "made-part"\nid = "ring-1"\nof = "ring"\n[certificate]\ntype = "3.1"\n'
    workshop.write({**files(), "ring.toml": ring, "ring-1.toml": record}, settings=settings(stage=stage))
    check = workshop.only("made.hardness", "ring-1")
    assert (check.outcome, check.grade) == ("finding", grade)
    assert check.says == "its spec asks for a hardness, and none is on record: neither certified nor measured"


@pytest.mark.parametrize("name", ["[measured.hardness]\n", '[measured.rim]\ndimension = "hardness"\n'])
def test_a_hardness_that_was_measured_is_judged_as_a_size(workshop: DesignFolder, name: str) -> None:
    ring = f'{RING}hardness = "210 HB ±10"\n'
    record = (
        f'kind = "made-part"\nid = "ring-1"\nof = "ring"\n{name}values = ["225 HB"]\nuncertainty = "2 HB"\n'
    )
    workshop.write({**files(), "ring.toml": ring, "ring-1.toml": record}, settings=settings())
    expect_conforms(workshop.only("made.hardness", "ring-1"))
    assert workshop.only("made.within-limits", "ring-1").grade is Grade.NONCONFORMITY
    other = record.replace("hardness", "width").replace("225 HB", "8 mm").replace("2 HB", "1 µm")
    workshop.write({**files(), "ring.toml": ring, "ring-1.toml": other}, settings=settings())
    assert workshop.only("made.hardness", "ring-1").outcome == "finding"


def test_what_was_tested_of_a_fault_is_written_down(workshop: DesignFolder) -> None:
    fault = FAULT.partition("[by_checks")[0] + PASSED
    steps = written(workshop.write({**files(), "lifting.toml": fault}, settings=settings()).only(TESTS))
    assert ("what water is", "28 bar") in steps


def test_a_test_that_failed_before_is_made_good_by_a_later_one(workshop: DesignFolder) -> None:
    tests = MADE.index("[hydraulic_tests.first]")
    failed = f'{MADE[tests:].replace("passed", "failed")}date = "2026-05-01"\n'
    later = f'{MADE[tests:].replace(".first]", ".second]")}date = "2026-05-20"\n'
    for records, outcome in ((failed + later, "conforms"), (later + failed, "conforms"), (failed, "finding")):
        made = {**files(DRAWN), "made.toml": MADE[:tests] + records}
        check = workshop.write(made, settings=settings()).only("made.hydraulic-test")
        assert check.outcome == outcome, records
        assert outcome == "conforms" or check.says == "first: failed"


@pytest.mark.parametrize("kept", ["examinations", "hydraulic_tests"])
def test_who_looked_is_asked_of_examinations_alone_and_of_tests_alone(
    workshop: DesignFolder, kept: str
) -> None:
    """Of neither nothing is asked."""
    examination, test = "[examinations.boss]", "[hydraulic_tests.shop]"
    head, _, rest = WITNESSED.partition(examination)
    examined, _, tested = rest.partition(test)
    records = {"examinations": examination + examined, "hydraulic_tests": test + tested}
    check = workshop.write({**files(), "made.toml": head + records[kept]}).only(INDEPENDENT, "cover-7")
    assert (check.outcome, check.says) == ("conforms", SOUND)
    none = workshop.write({**files(), "made.toml": head}).only(INDEPENDENT, "cover-7")
    expect_not_applicable(none, "no hydraulic test and no examination is on record")


@pytest.mark.parametrize(
    ("codes", "outcome"), [('["none", "P"]', "conforms"), ('["none", "none"]', "finding")]
)
def test_one_code_that_is_named_is_enough(workshop: DesignFolder, codes: str, outcome: str) -> None:
    check = workshop.write(files(), settings=settings(pressure=codes)).only("release.local-code", "cover")
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("checker", "who"), [("A. Render", "the same person"), ("the checker", "nobody by name")]
)
def test_whoever_checked_is_told_as_the_same_or_as_nobody(
    workshop: DesignFolder, checker: str, who: str
) -> None:
    change = ('checked_by = "M. Coyle"', f'checked_by = "{checker}"')
    check = workshop.write(files(change), settings=settings()).only("release.independent-check", "cover")
    assert (check.outcome, check.says) == ("finding", f"prepared by A. Render, checked by {checker}: {who}")


def test_an_acceptance_that_is_no_proof_is_told_with_its_name(workshop: DesignFolder) -> None:
    fault = FAULT.partition("[by_checks")[0] + ACCEPTED
    check = workshop.write({**files(), "lifting.toml": fault}, settings=settings()).only(PROVED)
    assert "the acceptance by M. Coyle is not enough" in check.says


def test_a_size_with_limits_says_so(workshop: DesignFolder) -> None:
    tappet = 'kind = "tappet"\nid = "tappet"\nstem_diameter = "30 mm f7"\n'
    check = workshop.write({"tappet.toml": tappet}).only("release.limits-stated")
    assert (check.outcome, check.says) == ("conforms", "stem diameter states limits")


def test_a_certificate_without_an_analysis_has_none_to_compare(workshop: DesignFolder) -> None:
    """Nor is a carbon equivalent worked from it: that which is certified stands alone."""
    analysis = MADE[MADE.index("[certificate.analysis]") : MADE.index("[examinations")]
    welded = files(DRAWN, add='[welding]\nwelded = true\ncarbon_equivalent = "0.41 %"\n')
    workshop.write({**welded, "made.toml": changed(MADE, (analysis, ""))}, settings=settings())
    expect_not_applicable(workshop.only("made.analysis"), "its certificate states no analysis")
    check = workshop.only("made.carbon-as-asked")
    assert check.outcome == "conforms"
    assert "CE" not in {step.symbol for step in check.steps}


@pytest.mark.parametrize(
    ("holds", "pressure", "grade"),
    [
        ("cover", "true", Grade.HOLD),
        ("cover", "false", Grade.HOLD),
        ("bracket", "false", Grade.NONCONFORMITY),
    ],
)
def test_a_joint_that_holds_no_pressure_and_is_loose_is_no_hold(
    workshop: DesignFolder, holds: str, pressure: str, grade: Grade
) -> None:
    """400 N·m ±20 are asked for, 370 are on record; whatever holds the cover holds pressure."""
    of = ("pressure_part = true", f"pressure_part = {pressure}"), ('holds = "cover"', f'holds = "{holds}"')
    studs, bracket = changed(STUDS, *of), {"bracket.toml": 'kind = "bracket"\nid = "bracket"\n'}
    loose = changed(TIGHTENED, ("385..405 N·m", "370 N·m"))
    workshop.write({**files(), **bracket, "studs.toml": studs, "studs-1.toml": loose}, settings=settings())
    check = workshop.only("made.tightening", "studs-1")
    assert (check.outcome, check.grade) == ("finding", grade)


def test_an_assumed_figure_of_another_spec_is_told_at_the_part_that_took_it(workshop: DesignFolder) -> None:
    stated = 'safety_valve_pressure = "16.5 bar gauge"'
    assumed = 'safety_valve_pressure = { value = "16.5 bar gauge", from = "assumed" }'
    duty = {"duty.toml": files()["duty.toml"].replace(stated, assumed)}
    check = workshop.write({**files(), **duty}, settings=settings()).only("release.assumed", "cover")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert check.says.startswith("assumed: values taken from other specs; used by ")
    assert check.where.file == "cover.toml"
