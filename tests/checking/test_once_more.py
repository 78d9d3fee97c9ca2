"""What a check took, taken once more for a drawing: in the load case of the check, and without leaving a trace."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.checking import Assessment, once_more
from speclint.errors import replace
from speclint.rules import Sheet
from speclint.specs import Component, LoadCase
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES, Tube


@pytest.fixture
def found(tmp_path: Path) -> Assessment:
    """Tubes that start at 12 bar gauge and run at 10, of 100 mm ± 0.5 bore."""
    return DesignFolder(tmp_path, tubes.tubes()).write(FILES).assess()


def pressure_and_bore(part: Component, case: LoadCase, sheet: Sheet) -> tuple[float, float, float]:
    assert isinstance(part, Tube)
    nominal = sheet.take_nominal("d", part.bore)
    return sheet.take_nominal("p", case.live_pressure), nominal, sheet.take("d", part.bore)


def again(found: Assessment, rule: str, case: str) -> tuple[float, float, float] | None:
    assert found.context is not None
    (check,) = (one for one in found.checks if one.rule.name == rule)
    return once_more(replace(check, case=case), found.context, pressure_and_bore)


@pytest.mark.parametrize(
    ("case", "gauge"),
    [("starting", 12e5), ("running", 10e5), ("", 12e5)],  # where none governs, the first of the rule
)
def test_it_is_taken_in_the_load_case_of_the_check(found: Assessment, case: str, gauge: float) -> None:
    taken = again(found, "tube.case-stress", case)
    assert taken is not None
    assert taken[0] == pytest.approx(gauge)
    assert taken[1:] == pytest.approx((0.100, 0.0995))  # as drawn, and at the low side


def test_there_is_nothing_where_no_load_case_is_known_or_a_value_is_wanting(found: Assessment) -> None:
    assert again(found, "tube.stress", "") is None  # the rule has no load cases
    assert again(found, "tube.case-stress", "standing") is None  # the duty has no such case
    assert found.context is not None
    (check,) = (one for one in found.checks if one.rule.name == "tube.case-stress")

    def wanting(_part: Component, case: LoadCase, sheet: Sheet) -> float:
        return sheet.take_nominal("p", case.exhaust_pressure)

    assert once_more(check, found.context, wanting) is None


def test_nothing_is_left_of_it(found: Assessment) -> None:
    context = found.context
    assert context is not None
    (check,) = (one for one in found.checks if one.rule.name == "tube.case-stress")

    def looks_up(part: Component, _case: LoadCase, sheet: Sheet) -> int:
        sheet.look_up("α", tubes.expansion, of=part)
        return len(context._readings)

    context.enclosed["before"] = 1
    seen = once_more(check, context, lambda *_: len(context.enclosed))
    assert seen == 0
    assert once_more(check, context, looks_up) == 1
    assert not context._readings


def test_nothing_is_written_down(found: Assessment) -> None:
    context = found.context
    assert context is not None
    (check,) = (one for one in found.checks if one.rule.name == "tube.case-stress")

    def steps(part: Component, _case: LoadCase, sheet: Sheet) -> int:
        assert isinstance(part, Tube)
        sheet.take("d", part.bore)
        return len(sheet.record.steps)

    with pytest.raises(ValueError, match=r"^this sheet does not record$"):
        once_more(check, context, steps)
