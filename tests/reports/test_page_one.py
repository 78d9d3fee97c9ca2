"""Page one of a check: forty lines whatever the design, the gravest hold first, and the sum that the gate gives too."""

from __future__ import annotations

import datetime as dt
import re

import pytest
from hypothesis import given, strategies as st

from speclint.checking import Alike, Assessment
from speclint.register import judge
from speclint.reports import gate_page, page_one, terminal_page
from speclint.reports.arithmetic import Arithmetic
from speclint.reports.page_one import LINES
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES

MANY = 70


@pytest.fixture
def crowded(workshop: DesignFolder) -> DesignFolder:
    """Seventy tubes with a hold each, and seventy that lack a value at the stage of a review."""
    workshop.loaded = tubes.tubes()
    files = dict(FILES)
    tube = FILES["tube.toml"].replace("hoops = 4", "hoops = 3")
    for number in range(MANY):
        over = tube.replace("30 bar", f"{45 + number} bar")
        files[f"over-{number:02}.toml"] = f'{over}drawing = "T-{number}"\nrevision = "B"\n'
        files[f"bare-{number:02}.toml"] = tube.replace('pressure = "30 bar gauge"\n', "")
    return workshop.write(files, settings='[works]\nstage = "for-review"\n')


def page(found: Assessment, width: int) -> list[str]:
    return terminal_page.write(found, width, full=False).text().splitlines()


@pytest.mark.parametrize("width", [60, 80, 100, 140])
def test_it_takes_forty_lines_at_most(crowded: DesignFolder, width: int) -> None:
    lines = page(crowded.assess(), width)
    assert 20 < len(lines) <= LINES == 40
    assert max(map(len, lines)) <= width


def test_the_gravest_hold_is_first_with_its_drawing_and_numbers(crowded: DesignFolder) -> None:
    """The stress of a tube grows with its pressure, and the last has the most."""
    lines = page(crowded.assess(), 100)
    first = lines.index(next(line for line in lines if "the gravest first" in line)) + 1
    assert "over-69 (T-69 B): tube.stress" in lines[first]
    used = [float(line.split()[0]) for line in lines[first : first + 3]]
    assert used == sorted(used, reverse=True)


def test_what_is_left_out_is_counted(crowded: DesignFolder) -> None:
    text = "\n".join(page(crowded.assess(), 100))
    shown = len(re.findall(r"over-\d\d \(", text))
    (more,) = re.findall(r"and (\d+) more: speclint check --full", text)
    assert shown + int(more) == MANY


def test_check_and_gate_give_one_sum(crowded: DesignFolder) -> None:
    crowded.write({"bad.toml": 'kind = "tube"\nbore = "5,5 mm"\n'})
    found = crowded.assess()
    decision = judge([crowded.root], lambda: crowded.loaded, dt.date(2027, 1, 1))
    (checked,) = _sums("\n".join(page(found, 200)))
    (gated,) = _sums(gate_page(decision, 200).text())
    assert checked == gated
    assert checked.startswith(
        f"{MANY} holds not conceded + {MANY} safety checks not assessed + 1 line not read"
    )
    assert f"= {len(decision.reasons)} reasons" in checked


def _sums(text: str) -> list[str]:
    return [line for line in text.splitlines() if "to withhold release." in line]


@given(*[st.integers(0, 50)] * 5)
def test_the_parts_make_the_sum(
    holds: int, not_assessed: int, unread: int, not_run: int, others: int
) -> None:
    sums = Arithmetic(holds, 3, not_assessed, unread, not_run, others)
    numbers = [int(one) for one in re.findall(r"\d+", sums.says)]
    *parts, whole = numbers or [0]
    assert sum(parts) == whole == sums.reasons


def test_nothing_in_the_way_says_so(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    text = " ".join(page(workshop.write(FILES).assess(), 100))
    assert "IN ORDER as far as these rules go." in text
    assert "No reason to withhold release." in text
    assert "hold," not in text


@pytest.mark.parametrize(("pressure", "shown"), [("31.8 bar", False), ("32 bar", True)])
def test_what_uses_four_fifths_of_its_limit_is_near_it(
    workshop: DesignFolder, pressure: str, shown: bool
) -> None:
    """At 45 bar 113.1 of 100 MPa by hand elsewhere, and stress goes with pressure: 79.9 and 80.4 MPa."""
    workshop.loaded = tubes.tubes()
    workshop.write(FILES).replace("tube.toml", "30 bar", pressure)
    text = "\n".join(page(workshop.assess(), 100))
    assert ("0.804 tube tube.stress" in text) is shown


def test_the_first_three_of_many_are_named(crowded: DesignFolder) -> None:
    lines = page(crowded.assess(), 100)
    assert sum(line.strip().startswith("bare-") for line in lines) == 3


def test_findings_of_parts_alike_are_counted_each_beside_their_lines(crowded: DesignFolder) -> None:
    """The sum at the top counts every finding: the heading below it says how many lines hold as many."""
    one, other, third = [check for check in crowded.assess().checks if check.outcome == "finding"][:3]
    assert page_one._in_lines([Alike((one, other)), Alike((third,))], "hold") == "3 holds in 2 lines"
    assert page_one._in_lines([Alike((one,)), Alike((third,))], "query") == "2 queries"
