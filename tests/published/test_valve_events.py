"""Valve events, areas, theoretical diagrams and turning moment against worked cases, printed examples and geometry."""

from __future__ import annotations

import math
from typing import Any

import pytest

from speclint.handbook.cams import CamProfile, Flank, cam_law
from speclint.handbook.valve_events import (
    Beat,
    Crank,
    End,
    Events,
    Positions,
    ValvePassage,
    ValveTrain,
    angle_area,
    crank_moment,
    diagram_factor,
    effective_area,
    events_of,
    mach_index,
    piston_force,
    positions_of,
    theoretical_mean_pressure,
    tractive_effort,
    tractive_effort_by_the_trade,
)
from speclint.handbook.valve_events.areas import coefficient_of_loss
from speclint.handbook.valve_events.diagrams import mean_forward_pressure
from tests.published.proof import proves
from tests.published.worked_cycles import SOURCE, case, crank_of, end_of, passage_of, train_of

SHARES = "Piston position"
EVENTS = "Events of the 35 % notch"
AREAS = "Lift, area and effective area"
THEORETICAL = "Theoretical mean effective pressure"
FULL = ("Full simulation, 65 % notch", "Full simulation, 20 % notch")
JOEL, ONKAR_SINGH = "Rayner Joel, Basic Engineering Thermodynamics", "Onkar Singh, Applied Thermodynamics"


@proves("valve_events.travel", library=SOURCE)
@pytest.mark.parametrize("end", End)
def test_travel_of_the_worked_case(end: End) -> None:
    worked = case(SHARES)
    crank = crank_of(worked["inputs"])
    travel = worked["outputs"][f"travel_pct_{end.value}"]
    assert len(travel) == 13
    for degrees, percent in travel.items():
        assert 100 * crank.share(end, math.radians(float(degrees))) == pytest.approx(percent, abs=1e-4)
    angles = worked["outputs"][f"angle_at_share_{end.value}"]
    assert len(angles) == 8
    for percent, degrees in angles.items():
        assert math.degrees(crank.angle(end, float(percent) / 100)) == pytest.approx(degrees, abs=1e-4)


@proves("valve_events.travel", library=SOURCE)
def test_greatest_speed_of_the_worked_case() -> None:
    outputs = case(SHARES)["outputs"]
    crank = crank_of(case(SHARES)["inputs"])
    slopes = [crank.slope(End.FRONT, math.radians(n / 100)) / crank.radius for n in range(18000)]
    assert max(slopes) == pytest.approx(outputs["greatest_piston_speed_per_omega_r"], abs=1e-5)
    at = slopes.index(max(slopes)) / 100
    assert at == pytest.approx(outputs["greatest_at_deg_front"], abs=0.02)


@proves("valve_events.travel", derived="circle and line intersected numerically")
@pytest.mark.parametrize("degrees", [10.0, 60.0, 90.0, 140.0, 179.0, 200.0, 350.0])
def test_travel_of_the_back_end_is_that_of_plane_geometry(degrees: float) -> None:
    """The crank pin stands at −r cos φ, −r sin φ from the axle; the crosshead's pin a rod's length from it."""
    from scipy.optimize import brentq

    crank, φ = Crank(0.33, 1.9), math.radians(degrees)
    x, y = -crank.radius * math.cos(φ), -crank.radius * math.sin(φ)
    place = brentq(lambda at: math.hypot(at - x, y) - crank.rod, x, x + 2 * crank.rod, xtol=1e-14)
    assert crank.travel(End.BACK, φ) == pytest.approx(place - (crank.rod - crank.radius), abs=1e-12)


@proves("valve_events.travel", seen="J. Rose, Modern Machine-Shop Practice")
def test_cut_off_comes_later_on_the_stroke_from_the_cover_end() -> None:
    """J. Rose, vol. II, at fig. 3296: ordinary rods are six cranks, and cut-off is later from the cover towards the
    crank.

    By hand at 90°: 1 − (√(36 − 1) − 5)/2 = 0.54196 of the stroke from the front, the rest of 1 from the back.
    """
    crank = Crank(1.0, 6.0)
    assert crank.share(End.FRONT, math.pi / 2) == pytest.approx(0.54196, abs=1e-5)
    assert crank.share(End.BACK, math.pi / 2) == pytest.approx(0.45804, abs=1e-5)


def angles_in_degrees(events: Events) -> dict[str, float]:
    names = {
        "admission_deg": events.admission,
        "cut_off_deg": events.cut_off,
        "release_deg": events.release,
        "compression_deg": events.compression,
        "lead_angle_deg": events.lead_angle,
        "exhaust_open_deg": events.exhaust_open,
        "inlet_open_deg": events.inlet_open,
        "overlap_deg": events.overlap,
    }
    return {name: math.degrees(angle) for name, angle in names.items()}


def in_percent(places: Positions) -> dict[str, float]:
    return {
        "admission_pct": 100 * places.admission,
        "cut_off_pct": 100 * places.cut_off,
        "release_pct": 100 * places.release,
        "compression_pct_left": 100 * places.compression,
    }


@proves("valve_events.events", "valve_events.trains", library=SOURCE)
@pytest.mark.parametrize("direction", ["forward", "backward"])
@pytest.mark.parametrize("end", End)
def test_events_of_the_worked_case(direction: str, end: End) -> None:
    """A tenth of the case's own tolerances of 0.3°, 0.25 % of the stroke and 0.03 mm."""
    worked = case(EVENTS)
    inlet, exhaust = (train_of(worked["inputs"][name]) for name in ("inlet", "exhaust"))
    if direction == "backward":
        inlet, exhaust = inlet.backward(), exhaust.backward()
    events = events_of(inlet, exhaust)
    expected = worked["outputs"][direction][end.value]
    for name, degrees in angles_in_degrees(events).items():
        assert degrees == pytest.approx(expected[name], abs=0.03), name
    places = positions_of(events, crank_of(worked["inputs"]), end)
    for name, percent in in_percent(places).items():
        assert percent == pytest.approx(expected[name], abs=0.025), name
    assert inlet.lift(0.0) * 1e3 == pytest.approx(expected["lead_lift_mm"], abs=0.003)
    assert events.in_order is (direction == "forward")


@proves("valve_events.events", "valve_events.trains", library=SOURCE)
@pytest.mark.parametrize("title", FULL)
@pytest.mark.parametrize("end", ["front", "back"])
def test_events_of_the_simulated_cases(title: str, end: str) -> None:
    given, expected = case(title)["inputs"][end], case(title)["outputs"]["events"][end]
    events = events_of(train_of(given["inlet_train"]), train_of(given["exhaust_train"]))
    for name, degrees in angles_in_degrees(events).items():
        assert degrees == pytest.approx(expected[name], abs=0.03), name
    for name, percent in in_percent(positions_of(events, crank_of(given), end_of(end))).items():
        assert percent == pytest.approx(expected[name], abs=0.025), name


def slide_valve(half_travel: float, lap: float, advance: float) -> ValveTrain:
    """The steam edge of a slide valve on an eccentric: a harmonic cam round the whole shaft, open beyond the lap.

    The valve stands at e sin(φ + advance) from mid-travel; the cam lifts e (1 − cos a), a = φ + advance + 90°.
    """
    half = Flank(cam_law("harmonic"), 2 * half_travel, math.pi)
    cam = CamProfile(half, 0.0, half)
    return ValveTrain(cam, -(advance + math.pi / 2), half_travel + lap)


@proves("valve_events.trains", "valve_events.events", derived="circular diagram of a slide valve, by hand")
@pytest.mark.parametrize(
    ("e", "lap", "lead", "cut_off", "release", "share"), [(0.040, 0.028, 0.003, 84.768, 129.195, 0.4928)]
)
def test_a_slide_valve_on_its_eccentric(
    e: float, lap: float, lead: float, cut_off: float, release: float, share: float
) -> None:
    """Half travel 40, lap 28, lead 3 mm, no exhaust lap: the sine of the advance is 31/40, so 50.805°.

    The port opens and shuts where the sine of φ + 50.805° is 28/40: at 44.427° and 135.573°. It frees at 180°.
    """
    advance = math.asin((lap + lead) / e)
    steam = slide_valve(e, lap, advance)
    exhaust = slide_valve(e, 0.0, advance - math.pi)
    events = events_of(steam, exhaust)
    assert math.degrees(events.cut_off) == pytest.approx(cut_off, abs=2e-3)
    assert math.degrees(events.release) == pytest.approx(release, abs=2e-3)
    assert steam.lift(0.0) == pytest.approx(lead, rel=1e-9)
    assert positions_of(events, Crank(1.0, 6.5), End.FRONT).cut_off == pytest.approx(share, abs=1e-4)


@proves("valve_events.trains", seen="J. Bourne, A Catechism of the Steam Engine")
def test_bournes_express_engine() -> None:
    """Bourne, answer 661: travel 4 1/8 in, lap 1 in, lead 1/4 in. By hand: arcsin(1.25/2.0625) is 37.31° and
    arcsin(1/2.0625) 29.00°, so the port opens 8.31° before dead centre.
    """
    inch = 0.0254
    advance = math.asin(1.25 / 2.0625)
    steam = slide_valve(2.0625 * inch, 1.0 * inch, advance)
    assert math.degrees(-steam.opening) == pytest.approx(8.31, abs=0.01)
    assert steam.lift(0.0) == pytest.approx(0.25 * inch, rel=1e-9)


@proves("valve_events.areas", "valve_events.trains", library=SOURCE)
@pytest.mark.parametrize("name", ["inlet", "exhaust"])
def test_lift_and_areas_of_the_worked_case(name: str) -> None:
    worked = case(AREAS)
    train, passage = train_of(worked["inputs"][name]), passage_of(worked["inputs"][f"{name}_valve"])
    rows = worked["outputs"][name]
    assert len(rows) > 10
    for row in rows:
        φ = math.radians(row["phi_deg"])
        assert train.tappet(φ).lift * 1e3 == pytest.approx(row["tappet_mm"], abs=1e-3)
        assert train.lift(φ) * 1e3 == pytest.approx(row["lift_mm"], abs=1e-3)
        lift = train.lift(φ)
        assert passage.area(lift) * 1e6 == pytest.approx(row["area_mm2"], rel=1e-3, abs=1)
        assert passage.effective_area(lift) * 1e6 == pytest.approx(row["effective_mm2"], rel=1e-3, abs=1)


@proves("valve_events.areas", library=SOURCE)
@pytest.mark.parametrize("name", ["inlet", "exhaust"])
def test_integrals_of_area_of_the_worked_case(name: str) -> None:
    worked = case(AREAS)
    train, passage = train_of(worked["inputs"][name]), passage_of(worked["inputs"][f"{name}_valve"])
    expected = worked["outputs"][f"{name}_integral"]
    to = 1e6 * 180 / math.pi
    assert angle_area(train, passage.area) * to == pytest.approx(expected["area_angle_mm2_deg"], rel=5e-4)
    effective = angle_area(train, passage.effective_area) * to
    assert effective == pytest.approx(expected["effective_angle_mm2_deg"], rel=5e-4)


@proves("valve_events.areas", derived="drops of pressure of two openings in series, by bisection")
@pytest.mark.parametrize(("valve", "port"), [(2e-3, 16e-3), (12e-3, 16e-3), (24e-3, 16e-3)])
def test_valve_and_port_in_series_pass_one_flow(valve: float, port: float) -> None:
    """An incompressible fluid, 5 kg/m³ and 1 bar in all: the pressure between is where both pass alike."""
    from scipy.optimize import brentq

    def flow(C: float, A: float, drop: float) -> float:
        return C * A * math.sqrt(2 * 5.0 * drop)

    between = brentq(lambda drop: flow(0.75, valve, drop) - flow(0.9, port, 1e5 - drop), 0.0, 1e5)
    together = flow(1.0, effective_area(0.75, valve, 0.9, port), 1e5)
    assert together == pytest.approx(flow(0.75, valve, between), rel=1e-9)


@proves("valve_events.areas", derived="hand working")
def test_a_flat_beat_stops_at_its_throat() -> None:
    """A flat seat of 100 mm: π · 100 · 10 = 3141.6 mm² at 10 mm; at 40 mm its throat of 6000 mm²."""
    valve = ValvePassage((Beat(0.1, 0.002, 0.0, 6e-3),) * 2, 1.0, 1.0, 1.0, common_throat=10e-3)
    assert valve.area(0.010) == pytest.approx(2 * 3141.593e-6, rel=1e-6)
    assert valve.area(0.040) == pytest.approx(10e-3)
    assert coefficient_of_loss(3.0) == 0.5


@proves("valve_events.diagrams", library=SOURCE)
def test_mean_forward_pressures_of_the_worked_table() -> None:
    table = case(THEORETICAL)["outputs"]["table"]
    assert len(table) == 28
    for row in table:
        found = mean_forward_pressure(1.0, 0.0, row["cut_off"], row["clearance"], 1.0)
        assert found == pytest.approx(row["mean_forward_over_p1"], abs=1e-5)


def example(number: int) -> tuple[dict[str, Any], float]:
    worked = case(THEORETICAL)
    return worked["inputs"]["examples"][number], worked["outputs"]["examples_mep_bar"][number]


@proves("valve_events.diagrams", library=SOURCE)
@pytest.mark.parametrize("number", [0, 1, 3])
def test_theoretical_mean_pressures_of_the_worked_examples(number: int) -> None:
    given, expected = example(number)
    found = theoretical_mean_pressure(
        given["p1_bar_abs"] * 1e5,
        given["p_b_bar_abs"] * 1e5,
        given["cut_off"],
        given["clearance"],
        given.get("release", 1.0),
        given["compression_left"],
    )
    assert found == pytest.approx(expected * 1e5, rel=1e-4)


@proves("valve_events.diagrams", library=SOURCE)
def test_theoretical_mean_pressure_without_clearance() -> None:
    given, expected = example(2)
    forward = mean_forward_pressure(given["p1_bar_abs"], given["p_b_bar_abs"], given["cut_off"], 0.0, 1.0)
    assert forward - given["p_b_bar_abs"] == pytest.approx(expected, rel=1e-4)


@proves("valve_events.diagrams", seen=[JOEL, ONKAR_SINGH])
@pytest.mark.parametrize(
    ("p_1", "p_b", "x_c", "swept", "strokes", "watts", "factor"),
    [
        # Joel 11.3, p. 330: 250 × 375 mm, 3.5 revolutions in a second, 45 kW: 0.85
        (1.0e6, 55e3, 1 / 6, math.pi / 4 * 0.25**2 * 0.375, 7.0, 45e3, 0.85),
        # Onkar Singh 12.3, p. 538: 0.3 × 0.6 m, 180 rev/min, 86.25 kW by a factor of 0.6
        (0.75e6, 0.01e6, 0.4, math.pi / 4 * 0.3**2 * 0.6, 6.0, 86.25e3, 0.6),
    ],
)
def test_diagram_factors_in_print(
    p_1: float, p_b: float, x_c: float, swept: float, strokes: float, watts: float, factor: float
) -> None:
    theoretical = mean_forward_pressure(p_1, p_b, x_c, 0.0, 1.0) - p_b
    assert diagram_factor(watts / (swept * strokes), theoretical) == pytest.approx(factor, rel=1e-2)


@proves("valve_events.diagrams", seen="J. Bourne, A Catechism of the Steam Engine")
def test_bournes_squares() -> None:
    """Bourne, answers 180 and 181: cut off at a quarter, expansion adds 69 squares to the 50 before it."""
    mean = mean_forward_pressure(1.0, 0.0, 0.25, 0.0, 1.0)
    assert (mean - 0.25) / 0.25 * 50 == pytest.approx(69, abs=0.5)


@proves("valve_events.turning", seen="B. K. Sarkar, Theory of Machines")
def test_sarkars_turning_moment() -> None:
    """Illustration 5.3, p. 161: 0.3 m bore, 1.0 MPa against 35 kPa, 68 212 N; with 60 458 N at 45°, 12 607 N m."""
    area = math.pi / 4 * 0.3**2
    force = piston_force(1.0e6, 35e3, 0.0, area, area)
    assert force == pytest.approx(68_212, rel=1e-4)
    assert crank_moment(60_458, 0.25, 1.0, math.radians(45)) == pytest.approx(12_607, rel=1e-3)


@proves("valve_events.turning", seen="R. S. Khurmi and J. K. Gupta, Theory of Machines")
def test_khurmis_turning_moment() -> None:
    """Example 15.7, p. 533: 0.35 N/mm² on 0.5 m, 250 kg at 250 rev/min, crank at 60°, rod of four cranks: 14.491 kN m.

    By hand: 68.72 kN of steam less 250 · 26.18² · 0.3 (cos 60° + cos 120°/4) = 19.28 kN; 49.44 kN left.
    """
    steam = piston_force(0.35e6, 0.0, 0.0, math.pi / 4 * 0.5**2, math.pi / 4 * 0.5**2)
    assert crank_moment(steam - 19.28e3, 0.3, 1.2, math.radians(60)) == pytest.approx(14.491e3, rel=3e-3)


@proves("valve_events.turning", library=SOURCE)
@pytest.mark.parametrize("title", FULL)
def test_tractive_effort_of_the_simulated_cases(title: str) -> None:
    """Two cylinders of both ends, from the mean pressures of the case."""
    worked = case(title)
    wheel, found = worked["inputs"]["driving_wheel_mm"] / 1e3, 0.0
    for name in ("front", "back"):
        given = worked["inputs"][name]
        area = math.pi / 4e6 * (given["bore_mm"] ** 2 - given["piston_rod_mm"] ** 2)
        p_m = worked["outputs"][name]["mep_bar"] * 1e5
        found += worked["inputs"]["cylinders"] * tractive_effort(p_m, area, given["stroke_mm"] / 1e3, wheel)
    assert found / 1e3 == pytest.approx(worked["outputs"]["engine"]["tractive_effort_kN"], rel=1e-4)


@proves("valve_events.turning", seen="Baldwin Locomotive Works, Record of Recent Construction")
def test_tractive_effort_by_baldwin() -> None:
    """Record no. 13, p. 10: 0.85 p d² S/D for two cylinders. By hand, 200 psi, 20 × 26 in, 60 in: 29 467 lb."""
    inch, psi, pound = 0.0254, 6894.757, 4.4482216
    found = tractive_effort_by_the_trade(200 * psi, 20 * inch, 26 * inch, 2.0, 60 * inch)
    assert found / pound == pytest.approx(29_467, rel=1e-4)


@proves("valve_events.turning", seen="JSME Mechanical Engineering Dictionary")
def test_mach_index_by_its_definition() -> None:
    """c_m F_p/(a_0 mean(μ F_s)). By hand: a piston of 500 mm at 3.96 m/s, 2939 mm² and 690 m/s: 0.3834."""
    area = math.pi / 4 * 0.5**2
    assert mach_index(3.96, area, 690.0, 2939e-6) == pytest.approx(0.3834, rel=1e-3)
