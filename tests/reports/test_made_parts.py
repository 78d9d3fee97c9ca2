"""Parts as made in words and as data: of parts judged here, each line by hand."""

from __future__ import annotations

import math
from datetime import date

import pytest

from speclint import Grade
from speclint.checking import Assessment, Check
from speclint.errors import Complaint, Location, replace
from speclint.facts import WEARING, Worn
from speclint.handbook.inspection import Trend
from speclint.made import Change, Judged, PartMade, Rework
from speclint.made.dimensions import DimensionMade
from speclint.made.in_steam import InSteam
from speclint.made.judgement import Pair
from speclint.quantities import read
from speclint.reports.made_parts import made_data, made_exit_code, made_markdown, made_page
from speclint.specs import MadePart
from speclint.specs.measured_sizes import MeasuredSize, PlacedValue
from speclint.specs.steamings import Steaming
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.test_register_listing import lines
from tests.tubes import FILES

MADE = 'kind = "made-part"\nof = "tube"\nserial = "7"\nmade_to = "B"\n'


@pytest.fixture
def tube(workshop: DesignFolder) -> Assessment:
    """A tube at 45 bar and a piece made to it; another of which nothing is recorded."""
    workshop.loaded = tubes.tubes()
    text = FILES["tube.toml"].replace("30 bar", "45 bar")
    found = workshop.write(
        {**FILES, "tube.toml": text, "tube-7.toml": MADE, "bare.toml": 'kind = "made-part"\n'}
    )
    return replace(found.assess(), complaints=())


def check(of: Assessment, rule: str) -> Check:
    (found,) = (one for one in of.checks if one.rule.name == rule)
    return found


def using(one: Check, share: float | None, **changed: object) -> Check:
    assert one.judgement is not None
    return replace(one, judgement=replace(one.judgement, utilisation=share), **changed)  # type: ignore[arg-type]


def part(of: Assessment, name: str = "tube-7", **told: object) -> PartMade:
    assert of.design is not None
    made = of.design.specs[name]
    assert isinstance(made, MadePart)
    return PartMade(made, None, **told)  # type: ignore[arg-type]


def said(of: Assessment, *parts: PartMade) -> list[str]:
    return lines(made_page(of, Judged(parts, "both limits guarded", False), 200).text())


def size(*values: str, U: str = "4 µm") -> MeasuredSize:
    placed = tuple(
        PlacedValue(read(one, "length"), 0.1 * (1 + number // 2), None) for number, one in enumerate(values)
    )
    where = Location("tube-7.toml", 5, "measured.bore")
    return MeasuredSize("bore", "bore", placed, 4e-6 if U else None, U, "2027-05-31" if U else "", where)


DRAWN = read("50 mm ±0.05", "length")
WITHIN = DimensionMade("bore", size("50.02 mm", "50.04 mm"), DRAWN, 4e-6, "in")


def test_a_part_as_drawn(tube: Assessment) -> None:
    found = said(tube, part(tube, dimensions=(WITHIN,)))
    assert found[0] == found[3] == "═" * 200
    assert found[1].startswith("PARTS AS MADE  ")
    assert found[1].endswith("  1 part")
    assert found[2] == "1 as drawn. Decision by ISO 14253-1: both limits guarded."
    assert found[5].startswith("tube-7, serial number 7, made to tube revision B  ")
    assert found[5].endswith("  as drawn")
    assert found[6:8] == [
        "    as drawn.",
        "    bore: measured 50.02..50.04 mm, U = 4 µm, drawn 50 mm ±0.05, ovality 0.02 mm: in",
    ]
    assert made_exit_code(tube, Judged((part(tube, dimensions=(WITHIN,)),), "both", False)) == 0


def test_a_part_that_says_little_of_itself(tube: Assessment) -> None:
    assert any(line.startswith("bare, made to nothing  ") for line in said(tube, part(tube, "bare")))
    assert said(tube)[2] == "no part as made. Decision by ISO 14253-1: both limits guarded."
    certified = made_page(tube, Judged((), "both limits guarded", True), 200).text()
    assert "both limits guarded. Strengths as certified." in certified


@pytest.mark.parametrize(
    ("one", "line"),
    [
        (
            replace(WITHIN, size=size("50.02 mm", U=""), verdict="undecided", why_not="no uncertainty"),
            "bore: measured 50.02 mm, drawn 50 mm ±0.05: undecided (no uncertainty)",
        ),
        (
            replace(WITHIN, drawn=None, verdict="out"),
            "bore: measured 50.02..50.04 mm, U = 4 µm, drawn not stated, ovality 0.02 mm: out",
        ),
        (
            replace(WITHIN, size=size("50.01 mm", "50.03 mm", "50.04 mm")),
            "bore: measured 50.01..50.04 mm, U = 4 µm, drawn 50 mm ±0.05, ovality 0.02 mm, taper 0.02 mm: in",
        ),
    ],
)
def test_a_dimension_as_measured(tube: Assessment, one: DimensionMade, line: str) -> None:
    assert f"    {line}" in said(tube, part(tube, dimensions=(one,)))


HOT = Steaming(
    "first",
    "running",
    "temperatures.tube",
    read("208 °C", "temperature"),
    read("200 °C", "temperature"),
    True,
)


@pytest.mark.parametrize(
    ("steaming", "verdict", "why", "line"),
    [
        (HOT, "out", "", "measured 208 °C, duty assumes 200 °C: outside the duty"),
        (HOT, "in", "", "measured 208 °C, duty assumes 200 °C: within the duty"),
        (replace(HOT, of_part=True), "out", "", "measured 208 °C, duty states 200 °C: outside its drawing"),
        (replace(HOT, of_part=True), "in", "", "measured 208 °C, duty states 200 °C: within its drawing"),
        (
            replace(HOT, assumed=None),
            "undecided",
            "nothing is assumed",
            "measured 208 °C, duty assumes not stated: undecided (nothing is assumed)",
        ),
    ],
)
def test_what_was_measured_in_steam(
    tube: Assessment, steaming: Steaming, verdict: str, why: str, line: str
) -> None:
    one = InSteam(steaming, "duty", verdict, why)  # type: ignore[arg-type]  # words of verdicts
    assert f"    in steam, temperatures.tube running: {line}" in said(tube, part(tube, in_steam=(one,)))


#: By 1 µm a day, 0.36525 mm a year; a tenth of that is what it is known to.
TREND = Trend(0.0, 0.5, 1e-6, 1e-5, 1e-7)
WORN = Worn(
    WEARING["cylinder-liner"][0],
    "mm",
    (date(2027, 1, 2), date(2028, 1, 2)),
    (0.5001, 0.5002),
    read("501 mm", "length"),
    TREND,
    (float(date(2029, 5, 6).toordinal()), 72.4),
    False,
    read("500.2 mm", "length"),
    None,
)
_WEARS = "    wear of bore, to the last: 500.2 mm on 2028-01-02, limit 501 mm; "


@pytest.mark.parametrize(
    ("one", "end"),
    [
        (WORN, "by a straight line the limit is met on 2029-05-06, give or take 72 days"),
        (replace(WORN, past=True), "the limit is passed"),
        (replace(WORN, meets=None), "no day is known on which the limit is met"),
        (replace(WORN, meets=(0.0, 1.0)), "no day is known on which the limit is met"),
    ],
)
def test_wear_with_its_day(tube: Assessment, one: Worn, end: str) -> None:
    made = part(tube)
    made.__dict__["worn"] = (one,)  # in place of what the record would tell
    (line,) = (line for line in said(tube, made) if line.startswith(_WEARS))
    assert " a year, U = " in line
    assert ", from 2 measurements; " in line
    assert line.endswith(f"; {end}")
    assert "0.365" in line  # mm a year: 1 µm a day
    assert "0.0365" in line


MACHINED = (Change("tube-7", "bore", "50.02 mm", "50.03 mm"), Change("t", "d", "1 mm", "2 mm"))


def test_what_fails_and_what_is_left(tube: Assessment) -> None:
    stress, hoops, ends = (check(tube, name) for name in ("tube.stress", "tube.hoops", "tube.ends"))
    sound = using(stress, 0.75, outcome="conforms", grade=None)
    by_mates = Pair(
        replace(ends, outcome="conforms", grade=None), replace(ends, outcome="finding", grade=Grade.QUERY)
    )
    by_mates = replace(by_mates, beside=by_mates.made)
    open_too = replace(hoops, outcome="finding", grade=Grade.HOLD)
    found = said(
        tube,
        part(
            tube,
            beside=("rack-1", "rack-2"),
            pairs=(Pair(sound, stress), by_mates, Pair(open_too, open_too)),
            reworks=(
                Rework(
                    "machine until it conforms",
                    MACHINED,
                ),
            ),
        ),
    )
    assert any(line.startswith("tube-7, ") and line.endswith("  rework") for line in found)
    at = found.index("    out, and a rule fails; a rework that clears it is known.")
    assert found[at + 1] == "    beside it as made: rack-1, rack-2"
    assert found[at + 2].startswith("    fails: tube.stress on tube (hold): ")
    assert found[at + 3].startswith("    fails by its mates as made: tube.ends on tube (query): ")
    assert found[at + 4 : at + 6] == [
        "    rework: machine until it conforms: bore of tube-7 from 50.02 mm to 50.03 mm; d of t from 1 mm to 2 mm; "
        "proved by running the rules again",
        "    open on the drawing too: tube.hoops",
    ]


def test_margins_of_what_is_out_the_least_first(tube: Assessment) -> None:
    """Six checks took the size that is out: five are written, with what they use of their limits as drawn."""
    stress = check(tube, "tube.stress")
    place = Location("tube-7.toml", 5, "bore")
    step = replace(next(one for one in stress.steps if one.where.file), where=place)
    pairs = tuple(
        Pair(
            using(stress, None if number == 3 else 0.5, outcome="conforms", grade=None),
            using(
                stress,
                0.6 + number / 100,
                outcome="conforms",
                grade=None,
                component=f"t{number}",
                steps=(step,),
            ),
        )
        for number in range(6)
    )
    out = replace(WITHIN, verdict="undecided")
    found = said(tube, part(tube, dimensions=(out,), pairs=pairs))
    margins = [line for line in found if line.startswith("    margin: ")]
    assert margins == [
        f"    margin: tube.stress on t{number} uses 0.6{number} of its limit, "
        f"{'nothing' if number == 3 else '0.50'} as drawn"
        for number in (5, 4, 3, 2, 1)
    ]
    assert "    and 1 check with more left" in found
    few = said(tube, part(tube, dimensions=(out,), pairs=pairs[:5]))
    assert not any("with more left" in line for line in few)


def test_the_exit_code_tells_the_worst(tube: Assessment) -> None:
    fine, out = part(tube), part(tube, dimensions=(replace(WITHIN, verdict="out"),))
    broken = replace(tube, complaints=(Complaint(Location("odd.toml", 4), "broken"),))
    failed = part(
        tube, pairs=(Pair(check(tube, "tube.ends"), replace(check(tube, "tube.ends"), could_not_run="x")),)
    )
    for of, parts, code in (
        (tube, (fine,), 0),
        (tube, (fine, out), 1),
        (tube, (), 1),
        (broken, (fine,), 2),
        (broken, (fine, failed), 3),
    ):
        assert made_exit_code(of, Judged(parts, "both", False)) == code
    page = said(broken, fine)
    assert page[4:6] == [
        "1 line could not be read, and what rests there is not judged:",
        "    odd.toml:4: broken",
    ]


def test_parts_as_data(tube: Assessment) -> None:
    stress = check(tube, "tube.stress")
    sound = using(stress, math.inf, outcome="conforms", grade=None)
    one = part(
        tube,
        dimensions=(WITHIN, replace(WITHIN, size=size("50.02 mm", U=""), drawn=None, why_not="no limit")),
        in_steam=(InSteam(replace(HOT, assumed=None), "duty", "undecided", "nothing is assumed"),),
        pairs=(Pair(sound, stress),),
        reworks=(Rework("machine to the drawing", (Change("tube-7", "bore", "1 mm", "2 mm"),)),),
    )
    one.__dict__["worn"] = (WORN, replace(WORN, meets=None))
    data = made_data(tube, Judged((one,), "both", True))
    assert (data["decision"], data["certificate_strengths"], data["not_read"], data["exit"]) == (
        "both",
        True,
        [],
        1,
    )
    (found,) = data["parts"]
    assert (found["part"], found["made_to"], found["outcome"], found["beside"]) == (
        "tube-7",
        None,
        "rework",
        [],
    )
    first, second = found["dimensions"]
    assert first == {
        "key": "bore",
        "measured": "50.02..50.04 mm",
        "uncertainty": "4 µm",
        "band": "50.016..50.044 mm",
        "drawn": "50 mm ±0.05",
        "verdict": "in",
        "why_not": None,
        "ovality_m": pytest.approx(2e-5),
        "taper_m": None,
        "date": "2027-05-31",
        "where": "tube-7.toml:5 measured.bore",
    }
    assert {key for key, value in second.items() if value is None} == {
        "uncertainty",
        "band",
        "drawn",
        "ovality_m",
        "taper_m",
        "date",
    }
    (steam,) = found["in_steam"]
    assert (steam["measured"], steam["assumed"], steam["why_not"]) == ("208 °C", None, "nothing is assumed")
    worn, unknown = found["wear"]
    assert (worn["met"], worn["met_uncertainty_days"], worn["days"]) == (
        "2029-05-06",
        72.4,
        ["2027-01-02", "2028-01-02"],
    )
    assert (unknown["met"], unknown["met_uncertainty_days"]) == (None, None)
    (failing,) = found["failing"]
    assert (failing["component"], failing["rule"], failing["grade"]) == ("tube", "tube.stress", "hold")
    assert failing["used"] == pytest.approx(1.130625)
    assert found["reworks"] == [
        {
            "how": "machine to the drawing",
            "changes": [{"component": "tube-7", "key": "bore", "from": "1 mm", "to": "2 mm"}],
        }
    ]


def test_the_same_as_markdown(tube: Assessment) -> None:
    broken = replace(tube, complaints=(Complaint(Location("odd.toml", 4), "broken"),))
    one = part(tube, dimensions=(WITHIN, replace(WITHIN, key="length", why_not="so")), beside=("rack-1",))
    text = made_markdown(broken, Judged((one,), "both", False)).replace("\\", "")
    assert text.startswith("## 1 as drawn\n\nDecision by ISO 14253-1: both.\n\n- odd.toml:4: broken\n")
    assert "| tube-7, serial number 7, made to tube revision B | as drawn |" in text
    assert "### tube-7" in text
    assert "| bore | 50.02..50.04 mm, U = 4 µm, ovality 0.02 mm | 50 mm ±0.05 | in |" in text
    assert "| length | 50.02..50.04 mm, U = 4 µm | 50 mm ±0.05 | in (so) |" in text  # it has no ovality
    assert "- beside it as made: rack-1" in text
    assert "- bore: measured" not in text
