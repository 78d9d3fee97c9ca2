"""How much of its limit each check uses, as a page, a table and data: of margins made here, each line by hand."""

from __future__ import annotations

import csv
import io
import math

import pytest

from speclint.checking import Assessment, Check, Margin, Margins, Sensitivity
from speclint.errors import Complaint, Location, replace
from speclint.reports import margins_csv, margins_data
from speclint.reports.margins_listing import margins_page
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.test_register_listing import lines
from tests.tubes import FILES

BORE = Sensitivity("bore", "tube", Location("tube.toml", 4, "bore"), "100 mm ±0.5", 0.59, 0.75, 0.157)
HEAT = Sensitivity(
    "temperature",
    "rack",
    Location("rack.toml", 2, "temperature"),
    "200 °C",
    0.5,
    0.7,
    0.2,
    0.04,
    temperature=True,
)
FIGURE = Sensitivity("expansion", "", Location(""), "12e-6", None, None, 0.0, why_not="it states no limits")


@pytest.fixture
def tube(workshop: DesignFolder) -> Assessment:
    workshop.loaded = tubes.tubes()
    text = FILES["tube.toml"].replace("30 bar", "45 bar") + 'drawing = "X-2"\n'
    return workshop.write({**FILES, "tube.toml": text}).assess()


def check(of: Assessment, rule: str) -> Check:
    (found,) = (one for one in of.checks if one.rule.name == rule)
    return found


def told(
    of: Assessment, *margins: Margin, component: str = "tube", without: int = 0, varied: int = 9
) -> list[str]:
    found = Margins(component, margins, without, varied)
    return lines(margins_page(of, found, 150).text())


def test_a_check_with_what_its_values_carry(tube: Assessment) -> None:
    stress = Margin(check(tube, "tube.stress"), 1.13, values=(HEAT, BORE, FIGURE))
    found = told(tube, stress)
    assert found[0].startswith("MARGINS  ")
    assert found[0].endswith("  tube (X-2)")
    assert found[1].startswith("Before each check the share of its limit that is used; before each value")
    start = next(
        number for number, line in enumerate(found) if line.startswith("The temperature that matters")
    )
    assert (
        " ".join(found[start:])
        .split("  ")[0]
        .startswith(
            "The temperature that matters most: temperature, 200 °C in every case (rack.toml:2), carries 0.20 of "
            "tube.stress on tube; 10 K hotter it is 0.04 more."
        )
    )
    assert "  1.13  tube.stress: hold" in found
    at = found.index("  1.13  tube.stress: hold")
    assert found[at - 1] == ""
    assert found[at + 1 : at + 4] == [
        "          0.20  temperature of rack: 200 °C; 10 K hotter it is 0.04 more",
        "          0.16  bore: 100 mm ±0.5",
        "",
    ]
    assert found[at + 4] == "Every check that compares numbers is listed."


@pytest.mark.parametrize(
    ("hotter", "said"),
    [
        (0.04, "; 10 K hotter it is 0.04 more"),
        (0.0, "; 10 K hotter it is 0.00 more"),
        (-0.04, "; 10 K hotter it is 0.04 less"),
        (math.inf, ""),
        (None, ""),
    ],
)
def test_what_ten_kelvins_more_do(tube: Assessment, hotter: float | None, said: str) -> None:
    one = Margin(check(tube, "tube.stress"), 0.5, values=(replace(BORE, hotter=hotter),))
    assert f"          0.16  bore: 100 mm ±0.5{said}" in told(tube, one)


def test_the_temperature_of_a_table_and_of_a_case_is_told_so(tube: Assessment) -> None:
    cased = replace(check(tube, "tube.case-stress"), case="starting")
    one = Margin(cased, 0.5, values=(replace(HEAT, where=Location(""), hotter=None),))
    found = " ".join(told(tube, one))
    assert "temperature, 200 °C in starting (a table), carries 0.20 of tube.case-stress on tube." in found
    cold = Margin(cased, 0.5, values=(replace(HEAT, carried=0.0),))
    assert "that matters most" not in " ".join(told(tube, cold))


def test_a_value_that_carries_next_to_nothing_is_not_told(tube: Assessment) -> None:
    stress = check(tube, "tube.stress")
    found = told(
        tube,
        Margin(stress, 0.5, values=(replace(BORE, carried=0.005), replace(BORE, name="d", carried=0.0049))),
    )
    assert "          0.01  bore: 100 mm ±0.5" in found or "          0.00  bore: 100 mm ±0.5" in found
    assert not any("  d:" in line for line in found)
    none = told(tube, Margin(stress, 0.5, values=(replace(BORE, carried=0.0049),)))
    assert "                no tolerance carries any of it" in none
    assert "                no tolerance carries any of it" in told(tube, Margin(stress, 0.5, values=()))
    unvaried = told(tube, Margin(stress, 0.5))
    assert "                no tolerance carries any of it" not in unvaried


def test_the_owner_of_a_value_is_told_where_it_is_another(tube: Assessment) -> None:
    stress = check(tube, "tube.stress")
    names = [("hole", "rack"), ("hole of rack", "rack"), ("bore", "tube"), ("figure", "")]
    values = tuple(replace(BORE, name=name, owner=owner) for name, owner in names)
    found = told(tube, Margin(stress, 0.5, values=values))
    for said in ("hole of rack: 100", "hole of rack: 100", "bore: 100", "figure: 100"):
        assert any(line.startswith(f"          0.16  {said}") for line in found)
    assert sum("hole of rack of rack" in line for line in found) == 0


def test_of_all_components_each_check_names_its_own(tube: Assessment) -> None:
    stress, hoops = check(tube, "tube.stress"), check(tube, "tube.hoops")
    case = replace(hoops, case="starting")
    undecided = replace(hoops, grade=None, outcome="not assessed")
    found = told(
        tube,
        Margin(stress, math.inf, alike=("tube-b", "tube-c")),
        Margin(case, 1.0),
        Margin(undecided, 0.25),
        component="",
    )
    assert found[0].endswith("  all components")
    assert "   all  tube tube.stress and 2 more alike: hold" in found
    assert "  1.00  tube tube.hoops, starting" in found
    assert "  0.25  tube tube.hoops: not assessed" in found
    at = found.index("   all  tube tube.stress and 2 more alike: hold")
    assert found[at + 1] == "  1.00  tube tube.hoops, starting"


@pytest.mark.parametrize(
    ("varied", "without", "said"),
    [
        (2, 0, "Every check that compares numbers is listed."),
        (3, 0, "Every check that compares numbers is listed."),
        (2, 1, "1 check compares no numbers."),
        (2, 2, "2 checks compare no numbers."),
        (1, 0, "The values of the first 1 check were varied, not of the other 1: --vary N varies more."),
        (
            0,
            2,
            "The values of the first 0 checks were varied, not of the other 2: --vary N varies more; 2 checks "
            "compare no numbers.",
        ),
    ],
)
def test_what_is_not_listed_is_counted(tube: Assessment, varied: int, without: int, said: str) -> None:
    both = (Margin(check(tube, "tube.stress"), 1.13), Margin(check(tube, "tube.hoops"), 1.0))
    assert said in " ".join(told(tube, *both, varied=varied, without=without))


def test_what_could_not_be_read_is_counted(tube: Assessment) -> None:
    broken = replace(tube, complaints=(Complaint(Location("odd.toml", 4), "broken"),))
    assert "1 line could not be read: speclint check says which." in told(broken)
    assert margins_data(broken, Margins("", (), 0, 0))["not_read"] == ["odd.toml:4: broken"]
    assert not any("could not be read" in line for line in told(tube))


def test_the_table_has_a_row_for_each_value_and_for_a_check_without(tube: Assessment) -> None:
    stress, hoops = check(tube, "tube.stress"), check(tube, "tube.hoops")
    margins = (
        Margin(stress, 1.1306254, alike=("b", "c"), values=(HEAT, FIGURE)),
        Margin(replace(hoops, grade=None, case="starting"), math.inf),
    )
    rows = list(csv.reader(io.StringIO(margins_csv(Margins("", margins, 0, 2)), newline="")))
    head = ["tube", "tube.stress", "tubes", "finding", "hold", "", "1.13063", "b; c"]
    assert rows[1:] == [
        [
            *head,
            "temperature",
            "rack",
            "200 °C",
            "rack.toml",
            "2",
            "temperature",
            "0.5",
            "0.7",
            "0.2",
            "0.04",
            "",
        ],
        [*head, "expansion", "", "12e-6", "", "", "", "", "", "0", "", "it states no limits"],
        ["tube", "tube.hoops", "tubes", "conforms", "", "starting", "no margin left", "", *[""] * 11],
    ]
    assert rows[0][:3] == ["component", "rule", "family"]


def test_margins_as_data(tube: Assessment) -> None:
    stress = check(tube, "tube.stress")
    margins = (
        Margin(stress, math.inf, alike=("b",), values=(HEAT, FIGURE)),
        Margin(replace(stress, grade=None, case="starting"), 0.5),
    )
    found = margins_data(tube, Margins("tube", margins, 3, 1))
    assert (found["component"], found["without_numbers"], found["varied"], found["not_read"]) == (
        "tube",
        3,
        1,
        [],
    )
    assert margins_data(tube, Margins("", (), 0, 0))["component"] is None
    assert margins_data(tube, Margins("", (), 0, 0))["hottest"] is None
    first, second = found["margins"]
    values = first.pop("values")
    assert first == {
        "component": "tube",
        "alike": ["b"],
        "rule": "tube.stress",
        "family": "tubes",
        "outcome": "finding",
        "grade": "hold",
        "case": None,
        "used": "no margin left",
    }
    assert (second["grade"], second["case"], second["used"], second["values"]) == (
        None,
        "starting",
        0.5,
        None,
    )
    heat = {
        "value": "temperature",
        "of": "rack",
        "written": "200 °C",
        "file": "rack.toml",
        "line": 2,
        "key": "temperature",
        "used_at_low": 0.5,
        "used_at_high": 0.7,
        "carried": 0.2,
        "temperature": True,
        "used_more_by_10_K": 0.04,
        "why_not": None,
    }
    assert values[0] == heat
    assert found["hottest"] == {"component": "tube", "rule": "tube.stress", **heat}
    assert {key: value for key, value in values[1].items() if value is None} == dict.fromkeys(
        ("of", "file", "line", "key", "used_at_low", "used_at_high", "used_more_by_10_K")
    )
    assert values[1]["why_not"] == "it states no limits"
