"""Remedies of a rule that rests on a long calculation: sought in what that calculation does not hang on."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.handbook.tables.reading import Reading
from speclint.testing import DesignFolder, functions_replaced
from tests import tubes
from tests.remedies import remedies
from tests.tubes import FILES

_COMMON: dict[str, Any] = {
    "on": tubes.Tube,
    "grade": Grade.OBSERVATION,
    "cites": [FIRST_PRINCIPLES],
    "why": "for tests",
    "leaves_out": "nothing",
    "limits": [Limit("allowable", "100 MPa", "stress", COMMON_PRACTICE, "allowable stress")],
}
#: The bores for which the pressure was worked.
worked: list[float] = []


@pytest.fixture(autouse=True)
def _copies_of_its_own() -> Iterator[None]:
    worked.clear()
    with functions_replaced():
        yield


class Given:
    """What the pressure is worked from: the bore alone."""

    def __init__(self, bore: float) -> None:
        self.bore = bore

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Given) and other.bore == self.bore

    def __hash__(self) -> int:
        return hash(self.bore)


def pressure_by(given: Given) -> Reading:
    """45 bar in a bore of 100 mm, and more in a wider one."""
    worked.append(given.bore)
    p = 45e5 * given.bore / 0.100
    return Reading("pressure, calculated", p, p, p, "Pa", FIRST_PRINCIPLES, worked=True)


def given_by(tube: tubes.Tube, sheet: Sheet) -> Given:
    """It looks at the outside too, which changes nothing."""
    sheet.take_nominal("D", tube.outside)
    return Given(sheet.take_nominal("d", tube.bore))


def _held(tube: tubes.Tube, given: Given, sheet: Sheet) -> Judgement:
    p = sheet.look_up("p", pressure_by, given=given)
    d, D = sheet.take("d", tube.bore), sheet.take("D", tube.outside)
    return sheet.at_most(
        sheet.work("σ", tubes.mean_hoop_stress, p=p, d=d, D=D), sheet.limit("allowable", "σ_all")
    )


@rule("tube.aside", title="the tube carries a pressure that is worked aside", **_COMMON)
def aside(tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """What the pressure is worked from is taken aside."""
    return _held(tube, sheet.aside("what is given", given_by, tube), sheet)


@rule("tube.beside", title="the tube carries a pressure that is worked on its sheet", **_COMMON)
def beside(tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """It is taken on the sheet itself."""
    return _held(tube, given_by(tube, sheet), sheet)


@rule("tube.either", title="the tube carries its pressure, which is worked of a closed one", **_COMMON)
def either(tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """The pressure of an open tube is stated."""
    if sheet.read("ends", tube.ends) == "closed":
        return aside.function(tube, sheet)
    p, d = sheet.take("p", tube.pressure), sheet.take("d", tube.bore)
    σ = sheet.work("σ", tubes.mean_hoop_stress, p=p, d=d, D=sheet.take("D", tube.outside))
    return sheet.at_most(σ, sheet.limit("allowable", "σ_all"))


def hooped_by(tube: tubes.Tube, sheet: Sheet) -> Given:
    """Each hoop bears a quarter of what is worked."""
    return Given(sheet.take_nominal("d", tube.bore) * 4 / sheet.count("z", tube.hoops, "hoops"))


@rule("tube.hooped", title="the tube carries a pressure that is worked aside for its hoops", **_COMMON)
def hooped(tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """The count of hoops is written down here too."""
    sheet.count("z", tube.hoops, "hoops")
    return _held(tube, sheet.aside("what is given", hooped_by, tube), sheet)


def _found(folder: Path, of: Rule) -> list[str]:
    assessment = DesignFolder(folder, tubes.tubes(of)).write(FILES).assess()
    assert assessment.context is not None
    (check,) = assessment.checks
    assert (check.outcome, worked) == ("finding", [0.1])
    worked.clear()
    return [str(one) for one in remedies(check, assessment.checks, assessment.context)]


def test_what_changes_the_result_is_not_tried(tmp_path: Path) -> None:
    """45 bar on 100 mm: o = 101 + 4.5 × 100.5/100 = 105.5225 mm (test_remedy). A narrower bore would do, too.

    The pressure is worked for the bore as it is, once more for each proof, and for a bore a little wider and narrower.
    """
    assert _found(tmp_path, aside) == ["outside from 105 mm ±0.5 to 105.6 mm ±0.5, all else equal"]
    assert sorted(set(worked)) == pytest.approx([0.0999, 0.1, 0.1001])
    assert len(worked) <= 5


def test_a_count_that_it_took_is_not_tried(tmp_path: Path) -> None:
    """A fifth hoop would do, as 4/5 of 45 bar do."""
    assert _found(tmp_path, hooped) == ["outside from 105 mm ±0.5 to 105.6 mm ±0.5, all else equal"]
    assert sorted(set(worked)) == pytest.approx([0.0999, 0.1, 0.1001])


def test_a_long_calculation_that_is_not_worked_aside_is_never_repeated(tmp_path: Path) -> None:
    assert _found(tmp_path, beside) == []
    assert worked == [0.1]


def test_no_value_is_tried_that_repeats_it_for_another_part_of_the_line(tmp_path: Path) -> None:
    """Both at 45 bar and of one bore: that of the open tube changes the pressure that is worked of the closed one."""
    heading = 'each = ["open", "closed"]\nid = "tube-{each}"\n'
    lines = "".join(
        line for line in FILES["tube.toml"].splitlines(keepends=True) if not line.startswith(("id", "ends"))
    ).replace("30 bar", "45 bar")
    both = f'{heading}{lines}ends = "open"\n[for.closed]\nends = "closed"\n'
    assessment = DesignFolder(tmp_path, tubes.tubes(either)).write({**FILES, "tube.toml": both}).assess()
    assert assessment.context is not None
    (found,) = (one for one in assessment.checks if one.component == "tube-open")
    assert [one.outcome for one in assessment.checks] == ["finding", "finding"]
    worked.clear()
    said = {str(one) for one in remedies(found, assessment.checks, assessment.context)}
    assert said == {
        "outside from 105 mm ±0.5 to 105.6 mm ±0.5, all else equal",
        "pressure from 45 bar gauge to 39.8 bar gauge, all else equal",
    }
    assert sorted(set(worked)) == pytest.approx([0.0999, 0.1, 0.1001])
