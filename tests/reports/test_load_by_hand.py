"""The load of the springs of a valve over its lift, and what a scan asks of them: where each line stands, by hand.

Two springs at 20 mm of lift: 1000 N ±100 and 40 N/mm ±2, 500 N and 10 N/mm: shut 1400 to 1600 N, open 900 + 760 +
500 + 200 = 2360 N to 1100 + 840 + 700 = 2640 N. The axis of loads goes to 1.12 × 2640 = 2956.8 N, that of the lift to
20.4 mm. The check is made here: recorded along its scan are the load of the springs, F_s, and the least, F_q; judged
are 100 N less and 100 N more.
"""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest

from speclint.checking import Assessment, Check, Processes, assess
from speclint.errors import Location, replace
from speclint.reports.pack.curves import alike, courses_of, shifted
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.spring_charts import _ends, load_at, spring_figures, together
from speclint.rules import Amount, Judgement, Series, Step
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.placed_marks import numbers

VALVE = 'kind = "poppet-valve"\nid = "valve"\nlift = "20 mm"\n'
OUTER = 'kind = "compression-spring"\nid = "outer"\ncloses = "valve"\nshut_load = "1000 N ±100"\nrate = "40 N/mm ±2"\n'
INNER = 'kind = "compression-spring"\nid = "inner"\ncloses = "valve"\nshut_load = "500 N"\nrate = "10 N/mm"\n'
FILES = {
    "valve.toml": VALVE,
    "outer.toml": OUTER,
    "inner.toml": INNER,
    "cold.toml": INNER.replace("inner", "cold"),
}
LIFTS = (None, 0.01, 0.02, 0.02, 0.02, 0.01, 0.0)
THERE = (1500.0, 2000.0, 2500.0, 2500.0, 2500.0, 2000.0, 1500.0)
NEEDED = (None, 800.0, 1200.0, 1200.0, 1200.0, 900.0, None)
LEFT = 44 + 4 * 13 * 0.62


def series(symbol: str, unit: str, values: tuple[float | None, ...], name: str = "") -> Series:
    return Series(symbol, name or symbol, unit, values)


def result(symbol: str, value: float, unit: str) -> Step:
    return Step("worked", symbol, symbol, value, unit)


def scan(*more: Series, lifts: tuple[float | None, ...] = LIFTS) -> Step:
    places = series("φ", "m", tuple(float(n) for n in range(len(lifts))))
    return Step("scanned", "n", "n", 1.0, series=(places, series("s", "m", lifts, "Lift"), *more))


SCAN = scan(
    series("a", "m/s²", (0.0,) * 7),
    series("F_s", "N", THERE, "Springs"),
    series("F_q", "N", NEEDED, "Least Load"),
)
STEPS = (SCAN, result("F_s", 2500.0, "N"), result("F_q", 1200.0, "N"), result("s", 0.015, "m"))
JUDGED = Judgement(
    holds=True, says="", found=Amount(2400.0, "N", "Load there"), limit=Amount(1300.0, "N"), compared="≥"
)


def check(*steps: Step, **other: object) -> Check:
    one = Check("valve", "poppet-valve", tubes.stress, "conforms", "", Location("valve.toml"), "")
    return replace(one, **{"judgement": JUDGED, "steps": steps or STEPS, **other})  # type: ignore[arg-type]


@pytest.fixture
def sprung(workshop: DesignFolder) -> Assessment:
    files = {
        name: text.replace('closes = "valve"\n', "") if name == "cold.toml" else text
        for name, text in FILES.items()
    }
    workshop.write(files)
    return assess([workshop.root], workshop.loaded, [], processes=Processes(0))


def drawn(of: Assessment, *checks: Check) -> Figure:
    (figure,) = spring_figures(replace(of, checks=checks))
    return figure


def marks(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]


def points(figure: Figure, tag: str, ink: str) -> list[list[tuple[float, float]]]:
    found = []
    for one in marks(figure, tag, ink):
        flat = [float(number) for number in one.get("points", "").replace(",", " ").split()]
        found.append(list(zip(flat[::2], flat[1::2], strict=True)))
    return found


def says(figure: Figure) -> dict[str, list[float]]:
    root = ElementTree.fromstring(figure.drawing)
    return {one.text or "": numbers(one, "x", "y") for one in root.iter() if one.tag.endswith("}text")}


def at(lift: float, load: float, most: float = 2956.8, end: float = 20.4) -> tuple[float, float]:
    return LEFT + lift / end * (736 - LEFT), 302 - load / most * 280


def near(*places: tuple[float, float]) -> list[object]:
    return [pytest.approx(one, abs=0.02) for one in places]


def test_the_band_of_the_springs_by_their_drawings(sprung: Assessment) -> None:
    figure = drawn(sprung)
    assert points(figure, "polygon", "band") == [near(at(0, 1400), at(20, 2360), at(20, 2640), at(0, 1600))]
    assert [(one.axis, one.unit, one.at) for one in figure.held.placed] == [
        *(("y", "N", pytest.approx(at(0, load)[1])) for load in (1400, 2360, 1600, 2640)),
        ("x", "mm", pytest.approx(at(20, 0)[0])),
    ]
    assert figure.rows == (
        ("lift", "20 mm"),
        ("inner, load shut", "500 N"),
        ("its rate", "10 N/mm"),
        ("its load at full lift, as stated", "not stated"),
        ("outer, load shut", "1000 N ±100"),
        ("its rate", "40 N/mm ±2"),
        ("its load at full lift, as stated", "not stated"),
        ("all springs at full lift, by their drawings", "2360 N to 2640 N"),
    )
    assert figure.component == "valve"
    assert figure.heading == "valve: load of inner, outer over the lift, and the load needed"
    assert figure.says == "No check of this valve was scanned over its lift: the load needed is not drawn."
    assert not points(figure, "polyline", "edge")


def test_the_name_of_the_band_stands_beside_its_lower_line(sprung: Assessment) -> None:
    """At 0.4 of the lift: 1400 + 0.4 × 960 = 1784 N. To the right the lines, which rise, cross it; below that, 9 off
    by 45°, nothing does: 51 letters of 7.2 units."""
    text = "springs by their drawings, cold, least and greatest"
    x, y = says(drawn(sprung))[text]
    middle, line = at(8, 1784)
    slant = 9 * math.sqrt(0.5)
    wanted = middle + slant + 51 * 7.2 / 2, line + slant + 10
    assert (x, y) == pytest.approx(wanted, abs=0.1)


def test_a_valve_is_drawn_with_the_springs_that_close_it_where_all_are_stated(workshop: DesignFolder) -> None:
    def count(**changed: str) -> int:
        workshop.write({**FILES, **{f"{name}.toml": text for name, text in changed.items()}})
        return len(list(spring_figures(assess([workshop.root], workshop.loaded, [], processes=Processes(0)))))

    assert count() == 1
    assert count(valve=VALVE.replace('lift = "20 mm"\n', "")) == 0
    assert count(inner=INNER.replace('shut_load = "500 N"\n', "")) == 0
    assert count(inner=INNER.replace('rate = "10 N/mm"\n', "")) == 0
    free = {
        name: FILES[f"{name}.toml"].replace('closes = "valve"\n', "") for name in ("inner", "outer", "cold")
    }
    assert count(**free) == 0


def test_what_is_there_and_what_is_needed_is_moved_to_what_is_judged(sprung: Assessment) -> None:
    """The opening ends in the middle of the dwell, the fourth of seven places; the shutting flank begins there."""
    figure = drawn(sprung, check())
    assert points(figure, "polyline", "edge") == [near(at(0, 1400), at(10, 1900), at(20, 2400), at(20, 2400))]
    assert points(figure, "polyline", "asked") == [near(at(10, 900), at(20, 1300), at(20, 1300))]
    assert points(figure, "polyline", "asked shutting") == [near(at(20, 1300), at(20, 1300), at(10, 1000))]
    assert figure.says.endswith("Broken line: as the valve shuts.")
    assert figure.says.startswith("From the sheet of tube.stress, at its governing corner")
    assert figure.rows[-5:] == (
        ("worked for", "the part as drawn"),
        ("Lift, where the margin is least", "15.000 mm"),
        ("load there, where the margin is least", "2400.0 N"),
        ("least load, where the margin is least", "1300.0 N"),
        ("judged", "2400.0 N ≥ 1300.0 N: conforms"),
    )


def test_the_two_points_stand_where_the_sheet_judges(sprung: Assessment) -> None:
    figure = drawn(sprung, check(case="running"))
    circles = [tuple(numbers(one, "cx", "cy")) for one in marks(figure, "circle", "point")]
    assert circles == near(at(15, 2400), at(15, 1300))
    (thin,) = [numbers(one, "x1", "y1", "x2", "y2") for one in marks(figure, "line", "thin")]
    assert thin == pytest.approx([*at(15, 2400), *at(15, 1300)], abs=0.02)
    placed = [(one.axis, one.unit, pytest.approx(one.at)) for one in figure.held.placed][5:]
    assert placed == [
        ("y", "N", at(0, 1400)[1]),  # the first place of the scan: what is needed there is not known
        ("x", "mm", at(15, 0)[0]),
        ("y", "N", at(0, 2400)[1]),
        ("y", "N", at(0, 1300)[1]),
    ]
    assert {"2400 N", "1300 N", "load there", "least load"} <= says(figure).keys()
    assert figure.rows[-5] == ("worked for", "running")
    assert figure.says.startswith("From the sheet of tube.stress, running, at")
    bad = drawn(sprung, check(outcome="finding"))
    assert len(marks(bad, "circle", "point bad")) == 2
    assert not marks(bad, "circle", "point")


def test_flanks_that_are_alike_are_one_line(sprung: Assessment) -> None:
    same = replace(SCAN, series=(*SCAN.series[:-1], series("F_q", "N", (*NEEDED[:5], 800.0, None))))
    figure = drawn(sprung, check(same, *STEPS[1:]))
    assert not points(figure, "polyline", "asked shutting")
    assert "Broken" not in figure.says


def test_the_axes_hold_what_is_drawn(sprung: Assessment) -> None:
    """3100 N of the scan, less 100: 1.12 × 3000 = 3360 N; a lift of the scan of 25 mm: 25.5 mm."""
    lifts = (0.0, 0.01, 0.025, 0.025, 0.025, 0.01, 0.0)
    there = (1500.0, 2000.0, 3100.0, 2500.0, 2500.0, 2000.0, 1500.0)
    high = scan(series("F_s", "N", there), series("F_q", "N", NEEDED), lifts=lifts)
    figure = drawn(sprung, check(high, *STEPS[1:]))
    wanted = near(
        *(at(lift, load, 3360, 25.5) for lift, load in ((0, 1400), (10, 1900), (25, 3000), (25, 2400)))
    )
    assert points(figure, "polyline", "edge") == [wanted]


def test_the_axis_of_loads_has_a_little_room_beyond_both_ends() -> None:
    """From −100 to 900 N: 0.12 × 1000 below and 0.12 × 900 above; nothing below zero where no load is."""
    assert _ends([-100.0, 500.0], 900.0) == (pytest.approx(-220), pytest.approx(1008))
    assert _ends([-100.0, 1000.0], 900.0) == (pytest.approx(-232), pytest.approx(1120))
    assert _ends([5.0], 10.0) == (0.0, pytest.approx(11.2))
    assert _ends([], 10.0) == (0.0, pytest.approx(11.2))


def test_loads_by_hand() -> None:
    assert load_at(1000.0, 40e3, 0.02) == pytest.approx(1800)
    assert together(a=3.0, b=4.0) == 7
    assert shifted(2000.0, 2400.0, 2500.0) == 1900


# What is scanned


def test_what_is_not_judged_or_not_recorded_is_not_moved(sprung: Assessment) -> None:
    (bare,) = courses_of([check(judgement=None)])
    assert [up for _, up in bare.curves[0]] == list(THERE)
    assert bare.judged is None
    assert bare.names == ("springs", "least load")
    assert not list(bare.held(1))
    figure = drawn(sprung, check(judgement=None))
    assert not marks(figure, "circle", "point")
    assert [row[0] for row in figure.rows][-2:] == ["worked for", "Lift, where the margin is least"]
    (unsaid,) = courses_of([check(SCAN)])
    assert [up for _, up in unsaid.curves[1]] == list(NEEDED)
    assert unsaid.at is None
    assert not list(unsaid.held(1))
    figure = drawn(sprung, check(SCAN))
    assert not marks(figure, "circle", "point")
    assert [row[0] for row in figure.rows][-4:-2] == ["worked for", "load there, where the margin is least"]


def test_the_names_are_those_of_the_judgement_or_of_what_was_recorded() -> None:
    named = replace(JUDGED, limit=Amount(1300.0, "N", "Held at Least"), found=None)
    (found,) = courses_of([check(judgement=named)])
    assert found.names == ("springs", "held at least")


def test_a_place_of_the_scan_is_held_where_its_load_is_known() -> None:
    """2000 N are 1900 of what is judged, 800 are 900; at the first place nothing is needed."""
    (found,) = courses_of([check()])
    assert [one.value for one in found.held(1)] == [1900.0, 900.0]
    assert [one.value for one in found.held(0)] == [1400.0]


@pytest.mark.parametrize(
    ("lifts", "top"),
    [
        ((0.0, 1.0, 0.0), 1),
        ((0.0, 1.0, 1.0, 0.0), 1),
        ((0.0, None, 1.0, 1.0, 1.0, 0.0), 3),
        ((0.0, 1.0, 0.999, 1.0), 2),
        ((1.0, 0.5, 0.2), 0),
        ((0.0, 1.0, 1.0 - 1e-10, 0.5), 1),
    ],
)
def test_the_top_is_the_middle_of_the_dwell(lifts: tuple[float | None, ...], top: int) -> None:
    loads = [series(name, "N", (1.0,) * len(lifts)) for name in ("F", "F_n")]
    (found,) = courses_of([check(scan(*loads, lifts=lifts))])
    assert found.top == top
    curve = found.curves[0]
    assert found.opening(curve) == curve[: top + 1]
    assert found.closing(curve) == curve[top:]


def test_the_last_scan_of_a_check_that_has_a_lift_and_two_loads_counts() -> None:
    """Its places are no lift; of three loads the first is there and the last is needed."""
    loads = [series(name, "N", (1.0,) * 7, name) for name in ("F", "F_k", "F_n")]
    later = scan(*loads)
    steps = [SCAN, later, scan(loads[0]), scan(), result("s", 0.01, "m"), Step("scanned", "n", "n", 1.0)]
    (found,) = courses_of([check(*steps)])
    assert (found.travel.symbol, found.there.symbol, found.needed.symbol) == ("s", "F", "F_n")
    without_lift = replace(later, series=(later.series[0], *loads))
    forces = replace(later, series=(series("F_0", "N", (1.0,) * 7), later.series[1], loads[0]))
    assert not list(courses_of([check(without_lift), check(forces), check(scan(loads[0]))]))
    assert len(list(courses_of([check(), check()]))) == 2


def test_of_several_checks_of_a_valve_the_first_is_drawn(sprung: Assessment) -> None:
    other = check(case="second")
    assert drawn(sprung, check(case="first"), other).rows[-5] == ("worked for", "first")
    assert drawn(sprung, replace(other, component="elsewhere"), check()).rows[-5][1] == "the part as drawn"


@pytest.mark.parametrize(
    ("closing", "same"),
    [
        ([(10.0, 100.0), (0.0, 3.0)], True),
        ([(10.0, 100.0), (0.0, 3.01)], False),
        ([(10.0, 98.0), (0.0, 2.0)], False),
        ([(10.0, 100.0), (0.01, 2.0)], True),
        ([(10.0, 100.0), (0.02, 2.0)], False),
        ([(9.98, 100.0), (0.0, 2.0)], False),
        ([(0.0, 2.0), (10.0, 100.0)], False),
        ([(10.0, None), (0.0, 2.0)], False),
        ([(0.0, 2.0)], False),
    ],
)
def test_flanks_lie_on_one_another_within_a_hundredth(
    closing: list[tuple[float, float | None]], same: bool
) -> None:
    """Of the greatest load, 100 N, and of a millimetre; the shutting flank is read backwards."""
    assert alike([(0.0, 2.0), (10.0, 100.0)], closing) is same


def test_flanks_of_loads_below_nothing_or_of_none() -> None:
    """A hundredth of 5 N, whichever sign it has."""
    assert alike([(0.0, -5.0), (1.0, None)], [(1.0, None), (0.0, -4.96)])
    assert not alike([(0.0, -5.0), (1.0, None)], [(1.0, None), (0.0, -4.94)])
    assert alike([(0.0, None)], [(0.0, None)])
    assert alike([], [])
