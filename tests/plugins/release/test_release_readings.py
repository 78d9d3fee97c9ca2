"""What words of a drawing, a record or a title are read as, where another reading lies close by."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.rules import NotAssessed
from speclint.testing import DesignFolder, changed, expect_not_assessed
from speclint_release.inputs.clauses import Wording
from speclint_release.inputs.extents import extents, share_of
from speclint_release.inputs.procedures import procedures_named
from speclint_release.inputs.recorded_extents import not_shown, recorded, too_little
from speclint_release.inputs.stages import stages
from speclint_release.inputs.titles import is_number, names_called
from speclint_release.rules.drawings import drawing_read
from tests.facts.bench import opened
from tests.made.test_judging import DRAWN
from tests.made.test_wear import MADE as WORN_MADE, WORN, measured
from tests.plugins.liners.bench import bench
from tests.plugins.release.made import DRAWN as DRAWN_COVER, MADE as CAST
from tests.plugins.release.part import COVER, files, settings
from tests.plugins.release.test_steamings import BAND, STEAMED, steamed

METHODS = Wording({"RT": r"\bRT\b", "UT": r"\bUT\b"}, "test")


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("where the inspector asks, RT", []),
        ("where the inspector asks RT", []),
        (
            "where the inspector asks RT, UT",
            [["UT"]],
        ),  # the condition has its thing: the next stands by itself
        ("if required RT; UT and RT of butts", [["UT"], ["RT"]]),
        ("UT, if required", []),
        ("UT, RT if required", [["UT"]]),
    ],
)
def test_a_condition_is_of_the_thing_beside_it_alone(text: str, asked: list[list[str]]) -> None:
    assert list(METHODS.asked(text)) == asked


@pytest.mark.parametrize(
    "words",
    [
        "100 mm of each m",
        "10 cm of each metre",
        "1 inch of every 254 mm",
        "2 inches of each 508 mm",
        "1 in of each 254 mm",
        "1 ft of each 3.048 m",
        "2 feet of every 6.096 m",
        "0.1 m of each meter",
    ],
)
def test_a_tenth_of_each_length(words: str) -> None:
    """An inch is 25.4 mm, a foot 304.8 mm, by definition."""
    assert share_of(words) == pytest.approx(0.1)


@pytest.mark.parametrize(
    ("asked", "records", "missing"),
    [
        ("butts by RT or UT", [("UT", "fillets")], ["butt by ultrasound or radiographs"]),
        ("butts by RT or UT", [("UT", "butts")], []),
        (
            "butts by RT or UT",
            [("MT", "fillets")],
            [],
        ),  # no record of either: that is told as missing elsewhere
    ],
)
def test_of_two_methods_one_on_record_names_its_places(
    asked: str, records: list[tuple[str, str]], missing: list[str]
) -> None:
    assert not_shown(asked, recorded(asked, records)) == missing


def test_one_record_of_the_whole_names_every_place() -> None:
    asked = "PT of faces and fillets"
    assert not_shown(asked, recorded(asked, [("PT of the faces", "all over"), ("PT", "faces")])) == []
    assert not_shown(asked, recorded(asked, [("PT", "the faces"), ("PT", "faces")])) == [
        "fillet by penetrant"
    ]


@pytest.mark.parametrize(
    ("records", "short"),
    [
        ([("RT", "welds 1 to 3"), ("RT", "10 %")], []),
        ([("RT", "spot"), ("RT", "10 %")], []),
        ([("RT", "spot")], ["radiographs of samples or a part: spot"]),
        ([("RT", "10 %")], ["radiographs of 10%"]),
    ],
)
def test_records_of_a_part_and_of_a_share_may_together_be_of_all(
    records: list[tuple[str, str]], short: list[str]
) -> None:
    """Nobody says that they are: what is not surely too little is no finding."""
    asked = "all welds by RT"
    assert too_little(asked, recorded(asked, records)) == short


@pytest.mark.parametrize(
    ("code", "own"),
    [
        ("CN-C-120", True),
        ("CN-C-120A", True),
        ("CN-C-120A3", True),
        ("CN-C-1203", False),
        ("CN-C-1203A", False),
    ],
)
def test_a_longer_number_is_another_drawing(code: str, own: bool) -> None:
    assert is_number(code, "CN-C-120") is own


def test_the_file_of_a_drawing_is_written_down(workshop: DesignFolder) -> None:
    named = files(add='drawing_file = "drawings/cover.svg"\n')
    check = workshop.write({**named, "drawings/cover.svg": "<svg/>"}, settings=settings()).only(
        "release.drawing-read", "cover"
    )
    assert ("drawing file", "drawings/cover.svg") in [(step.name, step.value) for step in check.steps]


def test_each_issue_is_written_down_by_its_number(workshop: DesignFolder) -> None:
    issues = "".join(
        f'[[issued]]\nto = "{to}"\non = 2026-05-{day}\nrevision = "A"\n'
        for to, day in (("shop", "01"), ("stores", "02"))
    )
    check = workshop.write(files(add=issues), settings=settings()).only("release.drawing-issued", "cover")
    written = {step.name: step.value for step in check.steps}
    assert (written["issue 1 to"], written["issue 2 to"]) == ("shop", "stores")


def test_a_file_that_was_not_looked_at_is_not_assessed(tmp_path: Path) -> None:
    text = COVER.replace('duty = "duty"\n', "") + 'drawing_file = "cover.svg"\n'
    on = opened(tmp_path, {"cover.toml": text, "speclint.toml": settings()}, "cover", by=drawing_read)
    with pytest.raises(NotAssessed, match=r"^the file of the drawing was not looked at$") as ended:
        drawing_read.function(on["cover"], on.sheet)
    assert ended.value.where.key == "drawing_file"


@pytest.mark.parametrize(
    ("second", "says"),
    [
        ("500.59", "is not proved within its limit of wear"),
        ("500.58", "is past its limit of wear"),
    ],
)
def test_wear_that_is_past_its_limit_is_told_from_what_may_be(
    workshop: DesignFolder, second: str, says: str
) -> None:
    """0.41 − 0.0141 and 0.42 − 0.0141 mm of 0.4: test_worn_parts."""
    days = measured("2020-01-01", "500.00", "500.00"), measured("2022-09-27", "501.00", second)
    workshop.write({**bench(WORN), "liner-7.toml": WORN_MADE + "".join(days)})
    check = workshop.only("made.worn", "liner-7")
    assert says in check.actual


def test_a_temperature_in_steam_is_held_against_the_duty(workshop: DesignFolder) -> None:
    check = steamed(workshop, "208 °C")
    names = [step.name for step in check.steps]
    assert any("as the duty assumes" in name for name in names)
    assert not any("as the drawing states" in name for name in names)


def test_a_size_in_steam_that_the_drawing_does_not_state(workshop: DesignFolder) -> None:
    size = ('value = "VALUE"', 'dimension = "run_out"\nvalue = "40 µm"'), ('"2 K"', '"5 µm"')
    made = changed(STEAMED, *size)
    check = workshop.write({**bench(DRAWN, BAND), "liner-7.toml": made}).only("made.in-steam")
    expect_not_assessed(check, "the drawing states no run_out running, or has it worked")


@pytest.mark.parametrize(
    ("words", "named"),
    [
        ("before and after turning", ["before turning", "after turning"]),
        ("prior to turning", ["prior to turning"]),
        ("once turned", ["once turned"]),
    ],
)
def test_a_stage_is_told_as_it_is_written_or_of_two_each(words: str, named: list[str]) -> None:
    assert [one.words for one in stages(words)] == named


def test_a_range_of_procedures_goes_on_from_the_number_and_not_from_its_year() -> None:
    year = ("WPQR of the year", "2024")
    named = [("WPQR", "38"), year, ("WPQR", "39"), ("WPQR", "40")]
    assert list(procedures_named("WPQR 38/2024 to 40")) == named


@pytest.mark.parametrize(
    ("text", "shares"),
    [
        ("RT, all butts; RT of the fillets, one in ten", [1.0, 0.1]),
        ("RT, RT one film in four", [0.25]),
    ],
)
def test_a_method_that_is_named_again_of_other_welds_has_an_extent_of_its_own(
    text: str, shares: list[float]
) -> None:
    assert [one.share for one in extents(text)] == pytest.approx(shares)


@pytest.mark.parametrize(("title", "names"), [("12, as made", ["12,"]), ("Cover 7", ["Cover 7", "Cover "])])
def test_figures_alone_leave_no_name(title: str, names: list[str]) -> None:
    assert names_called(title) == names


@pytest.mark.parametrize(
    ("weld", "says"), [("2026-05-01", ""), ("2026-05-02", "weld boss: later than the last test")]
)
def test_a_later_test_that_failed_proves_no_weld(workshop: DesignFolder, weld: str, says: str) -> None:
    """Passed on the first of May; the second test, on the tenth, failed."""
    tests = CAST[CAST.index("[hydraulic_tests.first]") :]
    failed = tests.replace(".first]", ".second]").replace("passed", "failed")
    made = f'{CAST}date = "2026-05-01"\n{failed}date = "2026-05-10"\n[welds.boss]\nwelder = "mark 7"\ndate = "{weld}"\n'
    check = workshop.write({**files(DRAWN_COVER), "made.toml": made}, settings=settings()).only(
        "made.tested-as-finished"
    )
    assert check.outcome == ("finding" if says else "conforms")
    assert says in check.says
