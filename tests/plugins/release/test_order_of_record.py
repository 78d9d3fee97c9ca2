"""What was looked at before the last weld or furnace says nothing, nor does a document issued after a part went in."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, changed, expect_not_assessed

ORDER = "made.examined-as-finished"
WELD = '[welds.all]\ndate = "2026-03-12"\n'
FURNACE = '[heat_treatments.furnace]\ntreatment = "stress relieve"\ndate = "2026-03-28"\n'
EXAMINED = '[examinations.finished]\nresult = "passed"\ndate = "2026-03-30"\n'
SIZE = (
    '[measured."bores.main.diameter"]\nvalues = ["578.02 mm"]\nuncertainty = "6 µm"\n'
    'date = "2026-07-02"\ninspector = "R. Fell"\n'
)
MADE = f'kind = "made-part"\nid = "made"\nof = "block"\n{WELD}{FURNACE}{EXAMINED}{SIZE}'
BORES = '[bores.main]\ndiameter = "578 mm H7"\n[bores.other]\ndiameter = "578 mm H7"\n'
BLOCK = f'kind = "cylinder-block"\nid = "block"\n{BORES}'


def made(workshop: DesignFolder, *changes: tuple[str, str]) -> Check:
    return workshop.write({"block.toml": BLOCK, "made.toml": changed(MADE, *changes)}).only(ORDER, "made")


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("2026-03-12", "2026-03-30", ""),  # examined on the day of the weld
        ("2026-03-12", "2026-03-31", "weld all: later than the last examination"),
        ("2026-03-28", "2026-03-30", ""),  # and on that of the stress relief
        ("2026-03-28", "2026-03-31", "furnace: later than the last examination"),
        ("2026-07-02", "2026-03-28", ""),
        ("2026-07-02", "2026-03-27", "furnace: later than bores.main.diameter was measured"),
        ("2026-07-02", "2026-03-11", "weld all, furnace: later than bores.main.diameter was measured"),
    ],
)
def test_what_was_looked_at_is_the_finished_part(
    workshop: DesignFolder, old: str, new: str, says: str
) -> None:
    check = made(workshop, (f'"{old}"', f'"{new}"'))
    assert (check.outcome, check.grade) == (("finding", Grade.NONCONFORMITY) if says else ("conforms", None))
    assert says in check.says


@pytest.mark.parametrize(
    ("treatment", "day", "says"),
    [
        ("normalize", "2026-07-02", ""),  # after the examination, and measured on its day
        ("normalize", "2026-07-03", "furnace: later than bores.main.diameter was measured"),
        ("PWHT", "2026-06-30", "furnace: later than the last examination"),
        ("", "2026-06-30", ""),  # a record that is called by no treatment
    ],
)
def test_of_heat_treatments_a_stress_relief_comes_before_the_examination(
    workshop: DesignFolder, treatment: str, day: str, says: str
) -> None:
    words = f'treatment = "{treatment}"\n' if treatment else ""
    check = made(workshop, ('treatment = "stress relieve"\n', words), ('"2026-03-28"', f'"{day}"'))
    assert (check.outcome, check.grade) == (("finding", Grade.NONCONFORMITY) if says else ("conforms", None))
    assert says in check.says


def test_a_stress_relief_is_known_by_the_name_of_its_record(workshop: DesignFolder) -> None:
    check = made(
        workshop,
        ('[heat_treatments.furnace]\ntreatment = "stress relieve"', '[heat_treatments."stress relief"]'),
        ('"2026-03-28"', '"2026-04-01"'),
    )
    assert "stress relief: later than the last examination" in check.says


@pytest.mark.parametrize(
    ("treatment", "day", "grade"),
    [
        ("heated through", "2026-03-30", None),  # on the day of the examination
        ("heated through", "2026-03-31", Grade.QUERY),
        ("Spannungsarmgeglüht", "2026-03-30", None),
        ("Spannungsarmgeglüht", "2026-03-31", Grade.NONCONFORMITY),
        ("spannungsarm geglueht", "2026-03-31", Grade.NONCONFORMITY),
        ("normalgeglüht", "2026-03-31", None),
        ("vergütet", "2026-03-31", None),
        ("not stress relieved", "2026-03-31", None),
    ],
)
def test_words_of_a_furnace_that_are_not_understood_are_asked_about(
    workshop: DesignFolder, treatment: str, day: str, grade: Grade | None
) -> None:
    """Examined on 30 March."""
    check = made(workshop, ("stress relieve", treatment), ('"2026-03-28"', f'"{day}"'))
    assert check.grade == grade
    if grade is Grade.QUERY:
        assert 'furnace ("heated through"): later than the last examination' in check.says


@pytest.mark.parametrize(
    ("asked", "days", "says"),
    [
        ("UT after stress relief", ("2026-03-28", "2026-04-02"), ""),  # looked at on the day of the furnace
        (
            "UT after stress relief",
            ("2026-03-27", "2026-04-02"),
            "ultrasound of 2026-03-27: after stress relief is",
        ),
        (
            "UT after stress relief",
            ("2026-03-27", "2026-04-02", "2026-03-29"),
            "",
        ),  # and again after the furnace
        ("UT nach dem Spannungsarmglühen", ("2026-03-27", "2026-04-02"), "which was on 2026-03-28"),
        ("UT after PWHT", ("2026-03-27", "2026-04-02"), "ultrasound of 2026-03-27: after PWHT is asked for"),
        ("UT after heat treatment", ("2026-03-27", "2026-04-02"), "after heat treatment is asked for"),
        ("UT before stress relief", ("2026-03-28", "2026-04-02"), ""),
        ("UT before stress relief", ("2026-03-29", "2026-04-02"), "before stress relief is asked for"),
        ("UT vor der Wärmebehandlung", ("2026-03-29", "2026-04-02"), "vor der Wärmebehandlung is asked for"),
        ("UT before stress relief", ("2026-03-29", "2026-04-02", "2026-03-20"), ""),
        ("UT after welding", ("2026-03-12", "2026-04-02"), ""),
        (
            "UT after welding",
            ("2026-03-11", "2026-04-02"),
            "after welding is asked for, which was on 2026-03-12",
        ),
        ("UT", ("2026-03-11", "2026-04-02"), ""),
        ("UT after machining", ("2026-03-11", "2026-04-02"), ""),
        ("MT after stress relief", ("2026-03-11", "2026-04-02"), ""),
        ("MT after stress relief, UT", ("2026-03-11", "2026-03-27"), "magnetic particle of 2026-03-27"),
        ("UT or MT after stress relief", ("2026-03-11", "2026-03-28"), ""),
        ("PT after stress relief", ("2026-03-11", "2026-04-02"), ""),  # none is on record: made.examined
        ("none", ("2026-03-11", "2026-04-02"), ""),
        ("NDT after stress relief", ("2026-03-11", "2026-03-28"), ""),
        ("NDT after stress relief", ("2026-03-11", "2026-03-27"), "non-destructive testing of 2026-03-27"),
    ],
)
def test_an_examination_is_made_when_it_is_asked_for(
    workshop: DesignFolder, asked: str, days: tuple[str, ...], says: str
) -> None:
    """Welded on 12 March, relieved on the 28th; ultrasound on the first and the third day, MT on the second."""
    methods = [("UT", days[0]), ("MT", days[1]), *(("UT", day) for day in days[2:])]
    records = "".join(
        f'[examinations.e{at}]\nmethod = "{method}"\nresult = "passed"\ndate = "{day}"\n'
        for at, (method, day) in enumerate(methods)
    )
    last = '[examinations.last]\nmethod = "VT"\nresult = "passed"\ndate = "2026-04-05"\n'
    block = BLOCK.replace('id = "block"\n', f'id = "block"\nexamination = "{asked}"\n')
    files = {"block.toml": block, "made.toml": changed(MADE, (EXAMINED, records + last))}
    check = workshop.write(files).only(ORDER, "made")
    assert (check.outcome, check.grade) == (("finding", Grade.NONCONFORMITY) if says else ("conforms", None))
    assert says in check.says


def test_an_examination_in_time_says_so(workshop: DesignFolder) -> None:
    block = BLOCK.replace('id = "block"\n', 'id = "block"\nexamination = "UT after stress relief"\n')
    record = f'{MADE[: MADE.index(WELD)]}{FURNACE}{EXAMINED}method = "UT"\n'
    check = workshop.write({"block.toml": block, "made.toml": record}).only(ORDER, "made")
    assert (check.outcome, check.says) == ("conforms", "ultrasound after stress relief, as asked for")


def test_an_examination_after_stress_relief_may_be_before_another_furnace(workshop: DesignFolder) -> None:
    """After any heat treatment is asked for otherwise; a failed one is none, and none on record proves nothing."""
    other = '[heat_treatments.other]\ntreatment = "normalized"\ndate = "2026-03-31"\n'
    exam = EXAMINED.replace("]\n", ']\nmethod = "UT"\n', 1)
    for asked, record, outcome in (
        ("UT after stress relief", exam + other, "conforms"),
        ("UT after heat treatment", exam + other, "finding"),
        ("UT after stress relief", exam.replace("passed", "failed"), "conforms"),
        ("UT before welding", exam, "finding"),
    ):
        block = BLOCK.replace('id = "block"\n', f'id = "block"\nexamination = "{asked}"\n')
        files = {"block.toml": block, "made.toml": changed(MADE, (EXAMINED, record))}
        assert workshop.write(files).only(ORDER, "made").outcome == outcome


@pytest.mark.parametrize(
    ("again", "outcome"), [("2026-03-28", "conforms"), ("2026-03-27", "finding"), ("2026-01-31", "finding")]
)
def test_the_last_measurement_of_a_size_counts(workshop: DesignFolder, again: str, outcome: str) -> None:
    """The bore of February, before weld and furnace; it was measured again on the day of the furnace, 28 March."""
    second = SIZE.replace('"bores.main.diameter"', "again").replace("2026-07-02", again)
    second += 'dimension = "bores.main.diameter"\n'
    assert made(workshop, ("2026-07-02", "2026-02-02"), (EXAMINED, EXAMINED + second)).outcome == outcome


def test_two_sizes_are_two(workshop: DesignFolder) -> None:
    """Another bore measured in July says nothing of that measured in February."""
    other = SIZE.replace("main", "other")
    check = made(workshop, ("2026-07-02", "2026-02-02"), (EXAMINED, EXAMINED + other))
    assert (check.outcome, "later than bores.main.diameter was measured" in check.says) == ("finding", True)


def test_a_failed_examination_is_none(workshop: DesignFolder) -> None:
    """The weld of 5 April was examined on the 6th, and failed: the last that was passed is of 30 March."""
    again = '[examinations.repair]\nresult = "{}"\ndate = "2026-04-06"\n'
    weld = ('"2026-03-12"', '"2026-04-05"')
    assert made(workshop, weld, (EXAMINED, EXAMINED + again.format("failed"))).outcome == "finding"
    assert made(workshop, weld, (EXAMINED, EXAMINED + again.format("passed"))).outcome == "conforms"


@pytest.mark.parametrize(
    ("gone", "outcome"),
    [
        ((WELD, FURNACE), "not applicable"),
        ((EXAMINED, SIZE), "not applicable"),
        ((WELD, SIZE), "not applicable"),  # an examination before a furnace is of the same welds
        ((WELD, EXAMINED), "conforms"),
        ((FURNACE, SIZE), "conforms"),
    ],
)
def test_records_that_are_not_there(workshop: DesignFolder, gone: tuple[str, ...], outcome: str) -> None:
    assert made(workshop, *((text, "") for text in gone)).outcome == outcome


def test_a_record_without_a_day_is_not_assessed(workshop: DesignFolder) -> None:
    expect_not_assessed(made(workshop, ('date = "2026-03-12"\n', 'record = "W-1"\n')), "date")


CERTIFIED = "made.certified-before-fitted"
STUDS = (
    'kind = "made-part"\nid = "made"\nof = "block"\n[certificate]\ntype = "3.1"\ndate = "2026-05-04"\n'
    '[entries.in]\ndate = "2026-06-10"\n[tightenings.cold]\ndate = "2026-09-14"\n'
    '[steamings.first]\ndate = "2026-10-01"\ncase = "running"\nvalue = "180 °C"\nuncertainty = "2 K"\n'
    '[heat_treatments.furnace]\ndate = "2026-04-21"\n'
    '[welds.repair]\ndate = "2026-04-20"\n[hydraulic_tests.shop]\ndate = "2026-04-30"\n'
)


def studs(workshop: DesignFolder, *changes: tuple[str, str]) -> Check:
    files = {"block.toml": BLOCK, "made.toml": changed(STUDS, *changes)}
    return workshop.write(files).only(CERTIFIED, "made")


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        # a foundry heats, mends and tests before it certifies
        ("2026-05-04", "2026-05-04", ""),
        ("2026-05-04", "2026-06-10", ""),
        ("2026-05-04", "2026-06-11", "entry in: earlier than its inspection document of 2026-06-11"),
        ("2026-09-14", "2026-05-04", ""),
        ("2026-09-14", "2026-05-03", "tightening cold: earlier than its inspection document of 2026-05-04"),
        ("2026-10-01", "2026-05-03", "steaming first: earlier than its inspection document of 2026-05-04"),
        ("2026-05-04", "2026-10-02", "entry in, tightening cold, steaming first: earlier than"),
    ],
)
def test_a_part_is_fitted_after_its_metal_was_certified(
    workshop: DesignFolder, old: str, new: str, says: str
) -> None:
    check = studs(workshop, (f'"{old}"', f'"{new}"'))
    assert (check.outcome, check.grade) == (("finding", Grade.NONCONFORMITY) if says else ("conforms", None))
    assert says in check.says


@pytest.mark.parametrize("written", ["2026-9-30", "30 September 2026", "30.09.2026"])
def test_a_day_written_otherwise_is_asked_for(workshop: DesignFolder, written: str) -> None:
    made = changed(STUDS, ('"2026-09-14"', f'"{written}"'))
    design = workshop.write({"block.toml": BLOCK, "made.toml": made})
    check = design.only(CERTIFIED, "made", readable=False)
    expect_not_assessed(check, f"day of tightening cold is '{written}': write it as 2027-05-31")


@pytest.mark.parametrize("fitted", [True, False])
def test_a_document_with_a_number_is_asked_for_its_day(workshop: DesignFolder, fitted: bool) -> None:
    """Without it nothing is compared, and a document of another piece passes."""
    gone = ('date = "2026-05-04"\n', 'number = "C-1"\n'), *(() if fitted else ((one, "") for one in FITTED))
    check = studs(workshop, *gone)
    if fitted:
        expect_not_assessed(check, "certificate.date")
    else:
        assert check.outcome == "not applicable"


FITTED = (
    '[entries.in]\ndate = "2026-06-10"\n',
    '[tightenings.cold]\ndate = "2026-09-14"\n',
    '[steamings.first]\ndate = "2026-10-01"\ncase = "running"\nvalue = "180 °C"\nuncertainty = "2 K"\n',
)


@pytest.mark.parametrize(
    ("gone", "outcome"),
    [
        ((), "conforms"),
        (FITTED[:2], "conforms"),
        (FITTED[1:], "conforms"),
        ((FITTED[0], FITTED[2]), "conforms"),
        (FITTED, "not applicable"),
        (('date = "2026-05-04"\n',), "not applicable"),
        (('date = "2026-09-14"\n',), "not assessed"),
    ],
)
def test_days_of_fitting_that_are_not_there(
    workshop: DesignFolder, gone: tuple[str, ...], outcome: str
) -> None:
    assert studs(workshop, *((text, "") for text in gone)).outcome == outcome


BUILT = {
    "block.toml": f'kind = "cylinder-block"\nid = "block"\nconstruction = "fabricated"\n{BORES}',
    "made.toml": (
        'kind = "made-part"\nid = "made"\nof = "block"\n[certificate]\ntype = "3.1"\ndate = "2026-02-16"\n'
        '[welds.all]\ndate = "2026-03-12"\n'
        '[heat_treatments.furnace]\ntreatment = "stress relieve"\ndate = "2026-03-28"\n'
    ),
}


@pytest.mark.parametrize(
    ("certified", "says"),
    [
        ("2026-03-12", ""),
        ("2026-03-13", "weld all: earlier than its inspection document of 2026-03-13"),
        ("2026-03-28", "weld all: earlier than its inspection document of 2026-03-28"),
        ("2026-03-29", "weld all, furnace: earlier than its inspection document of 2026-03-29"),
    ],
)
def test_plates_are_certified_before_they_are_welded(
    workshop: DesignFolder, certified: str, says: str
) -> None:
    files = {**BUILT, "made.toml": BUILT["made.toml"].replace("2026-02-16", certified)}
    check = workshop.write(files).only(CERTIFIED, "made")
    assert (check.outcome, check.grade) == (("finding", Grade.NONCONFORMITY) if says else ("conforms", None))
    assert says in check.says


@pytest.mark.parametrize(
    ("drawn", "outcome"),
    [
        ('kind = "cylinder-block"\nid = "block"\nconstruction = "fabricated"\n', "finding"),
        ('kind = "cylinder-block"\nid = "block"\nconstruction = "cast"\n', "not applicable"),
        ('kind = "cylinder-block"\nid = "block"\n', "not applicable"),
        ('kind = "weldment"\nid = "block"\n', "finding"),
        ('kind = "steam-pipe"\nid = "block"\n', "finding"),
        ('kind = "casting"\nid = "block"\n', "not applicable"),
        ('kind = "piston-rod"\nid = "block"\nwelding.welded = true\n', "not applicable"),
    ],
)
def test_what_is_cast_or_forged_may_be_mended_before_it_is_certified(
    workshop: DesignFolder, drawn: str, outcome: str
) -> None:
    made = BUILT["made.toml"].replace("2026-02-16", "2026-05-04")
    check = workshop.write({"block.toml": drawn, "made.toml": made}).only(CERTIFIED, "made")
    assert check.outcome == outcome


def test_another_heat_treatment_than_a_relief_may_be_the_mills(workshop: DesignFolder) -> None:
    made = BUILT["made.toml"].replace("stress relieve", "normalize").replace("2026-02-16", "2026-05-04")
    made = made.replace('[welds.all]\ndate = "2026-03-12"\n', "")
    assert workshop.write({**BUILT, "made.toml": made}).only(CERTIFIED, "made").outcome == "not applicable"


@pytest.mark.parametrize(
    ("method", "extent", "result", "certified", "ends"),
    [
        ("MT after turning", "all", "passed", "2026-06-10", ("conforms", None)),
        ("MT after turning", "all", "passed", "2026-06-11", ("finding", Grade.QUERY)),
        ("MT", "all, when ground", "passed", "2026-06-11", ("finding", Grade.QUERY)),
        ("MT, finish machined", "all", "passed", "2026-06-11", ("finding", Grade.QUERY)),
        ("UT, rough turned", "all", "passed", "2026-06-11", ("not applicable", None)),
        ("MT after turning", "all", "failed", "2026-06-11", ("not applicable", None)),
        ("UT in the rough", "all", "passed", "2026-06-11", ("not applicable", None)),
        ("UT before turning", "all", "passed", "2026-06-11", ("not applicable", None)),
        ("UT after rough turning", "all", "passed", "2026-06-11", ("not applicable", None)),
        ("MT", "all", "passed", "2026-06-11", ("not applicable", None)),
    ],
)
def test_what_is_examined_when_machined_was_certified_before(
    workshop: DesignFolder,
    method: str,
    extent: str,
    result: str,
    certified: str,
    ends: tuple[str, Grade | None],
) -> None:
    """A forge examines in the rough before it certifies; what it machines itself is asked about."""
    made = (
        f'kind = "made-part"\nid = "made"\nof = "rod"\n[certificate]\ndate = "{certified}"\n[examinations.one]\n'
        f'method = "{method}"\nextent = "{extent}"\nresult = "{result}"\ndate = "2026-06-10"\n'
    )
    files = {"rod.toml": 'kind = "piston-rod"\nid = "rod"\n', "made.toml": made}
    check = workshop.write(files).only(CERTIFIED, "made")
    assert (check.outcome, check.grade) == ends
    if check.grade:
        assert check.says == "examination one: earlier than its inspection document of 2026-06-11"


@pytest.mark.parametrize(
    ("days", "certified", "ends"),
    [
        (("2026-06-15",), "2026-06-15", ("conforms", None)),
        (("2026-06-15",), "2026-06-16", ("finding", Grade.QUERY)),
        (
            ("2026-06-15", "2026-06-16"),
            "2026-06-16",
            ("conforms", None),
        ),  # measured again, when it was finished
        (("2026-06-15", "2026-06-14"), "2026-06-16", ("finding", Grade.QUERY)),
        (("",), "2026-06-16", ("not applicable", None)),  # made.sizes-traced asks for its day
    ],
)
def test_a_size_is_measured_after_its_metal_was_certified(
    workshop: DesignFolder, days: tuple[str, ...], certified: str, ends: tuple[str, Grade | None]
) -> None:
    """Of a size that was measured several times the last counts; a forge may have measured it: a query."""
    made = f'kind = "made-part"\nid = "made"\nof = "rod"\n[certificate]\ndate = "{certified}"\n'
    for number, day in enumerate(days):
        made += f'[measured.m{number}]\ndimension = "diameter"\nvalues = ["90 mm"]\n'
        made += f'date = "{day}"\n' if day else ""
    files = {"rod.toml": 'kind = "piston-rod"\nid = "rod"\ndiameter = "90 mm"\n', "made.toml": made}
    check = workshop.write(files).only(CERTIFIED, "made", readable=False)
    assert (check.outcome, check.grade) == ends
    if check.grade:
        assert check.says == "measurement of diameter: earlier than its inspection document of 2026-06-16"
