"""The fit of a liner in its block cold, hot and over the temperature, worked by hand.

Block 560 mm +0.05/0, liner 560.3 ±0.02 mm, both at 200 °C in running. On the diameter, µm: hole 0 to 50, shaft 280 to
320, between them 230 to 320 of interference. At the corner that governs the block grows 560 mm × 180 K × 12.0e-6 =
1209.6 and the liner 560 × 180 × 12.4e-6 at the least, or 11.4 and 13.0e-6 where that is worse.
"""

from __future__ import annotations

import pytest

from speclint.checking import Assessment, Check, Processes, assess
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.fit_charts import fit_figures, more
from speclint.reports.pack.hot_fits import grown, guide_grown, less, strained, turned
from speclint.reports.pack.warmed_fits import loose_at, spread
from speclint.testing import DesignFolder
from tests.plugins.liners.bench import bench, in_block, in_liner

HOT = "liner.fit-hot"
LIMITS = (in_block('"560 mm"', '"560 mm +0.05/0"'), in_liner('"560.3 mm"', '"560.3 mm ±0.02"'))


def made(workshop: DesignFolder, *changes: tuple[str, str, str], rules: bool = True) -> Assessment:
    workshop.write(bench(*LIMITS, *changes))
    chosen = [one for one in workshop.loaded.rules if one.name == HOT] if rules else []
    return assess([workshop.root], workshop.loaded, chosen, processes=Processes(0))


def figures(workshop: DesignFolder, *changes: tuple[str, str, str], rules: bool = True) -> list[Figure]:
    return list(fit_figures(made(workshop, *changes, rules=rules)))


def pairs(figure: Figure) -> dict[str, str]:
    return {row[0]: row[1] for row in figure.rows}


def checked(of: Assessment) -> Check:
    (found,) = (one for one in of.checks if one.rule.name == HOT)
    return found


def test_the_zones_cold_by_hand(workshop: DesignFolder) -> None:
    (figure,) = figures(workshop, rules=False)
    assert figure.heading == "liner: zones of the fit, cold and hot"
    assert figure.rows == (
        ("hole 560 mm +0.05/0", "0 to +50 µm"),
        ("shaft 560.3 mm ±0.02", "+280 to +320 µm"),
        ("between them, cold", "interference 230 to 320 µm"),
    )
    assert figure.says.endswith("No check of this part calculates the fit hot.")


@pytest.mark.parametrize(
    ("liner", "says"),
    [
        ("560.05 mm +0.02/0", "interference 0 to 70 µm"),
        ("560.04 mm +0.02/0", "clearance 10 to interference 60 µm"),
        ("560 mm 0/-0.02", "clearance 0 to 70 µm"),
        ("560 mm -0.01/-0.02", "clearance 10 to 70 µm"),
    ],
)
def test_a_fit_is_an_interference_a_clearance_or_either(
    workshop: DesignFolder, liner: str, says: str
) -> None:
    """An interference of nothing is one, and so is a clearance of nothing."""
    workshop.write(bench(LIMITS[0], in_liner('"560.3 mm"', f'"{liner}"')))
    (figure,) = fit_figures(assess([workshop.root], workshop.loaded, (), processes=Processes(0)))
    assert figure.rows[2] == ("between them, cold", says)


def test_the_zones_hot_have_grown_as_the_sheet_has_it(workshop: DesignFolder) -> None:
    """The least interference hot is 230 less 8 for the faces and less 161.28 by warming, 60.72 µm."""
    of = made(workshop)
    figure, warmed = fit_figures(of)
    check = checked(of)
    assert [label for label, _ in figure.rows] == [
        "hole 560 mm +0.05/0",
        "shaft 560.3 mm ±0.02",
        "between them, cold",
        "hole at 200 °C",
        "shaft at 200 °C",
        f"between them, {check.case}",
        f"on the sheet, {HOT}",
    ]
    rows = pairs(figure)
    assert rows["between them, cold"] == "interference 230 to 320 µm"
    assert rows[f"between them, {check.case}"] == "interference 69 to 159 µm"
    assert rows[f"on the sheet, {HOT}"] == "interference 61 µm"
    assert f"#sheet.liner.{HOT}" in figure.drawing
    assert "Hot, each part has grown" in figure.says
    assert warmed.heading == "liner: interference over the temperature"
    of_warmed = pairs(warmed)
    assert of_warmed["interference that is sure, cold"] == "222.0 µm"
    assert of_warmed["temperature of the outer part"] == "200 °C"
    assert of_warmed["temperature of the inner part"] == "200 °C"
    assert of_warmed["interference left"] == "60.7 µm"
    assert of_warmed["lost by warming"] == "161 µm"
    assert "none is left with the outer part at" not in of_warmed
    assert f"From the sheet of {HOT}, {check.case}" in warmed.says


def test_a_fit_that_comes_loose_says_at_which_temperature(workshop: DesignFolder) -> None:
    """560.15 mm: 80 − 8 = 72 µm sure when cold, 161.28 lost by 180 K: none is left at 20 + 180 × 72/161.28 = 100 °C."""
    of = made(workshop)
    assert checked(of).outcome == "conforms"
    workshop.write(bench(LIMITS[0], in_liner('"560.3 mm"', '"560.15 mm ±0.02"')))
    rules = [one for one in workshop.loaded.rules if one.name == HOT]
    figure, warmed = fit_figures(assess([workshop.root], workshop.loaded, rules, processes=Processes(0)))
    rows = pairs(warmed)
    assert rows["interference left"] == "−89.3 µm"
    assert rows["none is left with the outer part at"] == "100 °C"
    assert pairs(figure)[f"on the sheet, {HOT}"] == "clearance 89 µm"
    assert "loose at 100 °C" in warmed.drawing
    assert 'class="bad"' in figure.drawing


def test_the_line_over_the_temperature_stands_between_its_ends(workshop: DesignFolder) -> None:
    """From 20 °C and 222 µm to 200 °C and 60.72; the limits may add 320 − 230 = 90. The axis goes from 15 to 221.6 °C
    and from 0 to 312 + 12 % of it."""
    of = made(workshop)
    _, warmed = fit_figures(of)
    by_axis = {axis: [one.at for one in warmed.held.placed if one.axis == axis] for axis in "xy"}
    left = 44 + 3 * 13 * 0.62
    wide, most = 736 - left, 312 * 1.12
    assert by_axis["x"] == pytest.approx([left + wide * 5 / 206.6, left + wide * 185 / 206.6], abs=0.1)
    assert by_axis["y"] == pytest.approx([242 - 222 / most * 220, 242 - 60.72 / most * 220], abs=0.1)


def test_the_formulae_by_hand() -> None:
    assert more(1.0, 2.0) == 3
    assert less(5.0, 2.0) == 3
    assert turned(2.0) == -2
    assert grown(0.56, 12e-6, 473.15, 293.15) == pytest.approx(0.0012096)
    assert strained(0.5, 0.001) == pytest.approx(0.0005)
    assert guide_grown(0.5, 0.001, 0.0002) == pytest.approx(0.0003)
    assert spread(560.0, 560.05, 560.28, 560.32) == pytest.approx(0.09)
    assert loose_at(72.0, -89.28, 200.0, 20.0) == pytest.approx(20 + 180 * 72 / 161.28)
