"""release.pressure-part, release.inspection-points and release.warming-procedure."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, changed
from speclint_release.formulae.records import temperature_margin
from tests.own_limits import own_limit
from tests.plugins.release.part import files

PART, POINTS, WARMING = "release.pressure-part", "release.inspection-points", "release.warming-procedure"

_RECORD = {
    "design_pressure": 'design_pressure = "17 bar gauge"',
    "design_temperature": 'design_temperature = "370 °C"',
    "test_pressure": 'test_pressure = "28 bar gauge"',
    "inspection_document": 'inspection_document = "3.1"',
    "examination": 'examination = "ultrasonic, plate edges"',
    "competent_body": 'competent_body = "the inspecting engineer"',
}


def test_a_whole_record_conforms(workshop: DesignFolder) -> None:
    """Boiler 16.5 of 17 bar: 0.9706; test 1.43 × 17 = 24.31 of 28 bar; steam of at most 360 of 370 °C: 0.973."""
    check = workshop.write(files()).only(PART, "cover")
    assert check.outcome == "conforms"
    assert check.utilisation == pytest.approx(360 / 370)


@pytest.mark.parametrize("name", sorted(_RECORD))
def test_each_particular_that_is_missing_is_a_hold_and_named(workshop: DesignFolder, name: str) -> None:
    check = workshop.write(files((_RECORD[name], ""))).only(PART, "cover")
    assert (check.outcome, check.grade, check.says) == ("finding", Grade.HOLD, f"not stated: {name}")


@pytest.mark.parametrize(("pressure", "outcome"), [("16.51", "conforms"), ("16.49", "finding")])
def test_design_pressure_from_both_sides(workshop: DesignFolder, pressure: str, outcome: str) -> None:
    found = files(('design_pressure = "17 bar gauge"', f'design_pressure = "{pressure} bar gauge"'))
    assert workshop.write(found).only(PART, "cover").outcome == outcome


@pytest.mark.parametrize(("temperature", "outcome"), [("380.1 °C", "conforms"), ("379.9 °C", "finding")])
def test_metal_as_hot_as_its_steam_wants_a_margin(
    workshop: DesignFolder, temperature: str, outcome: str
) -> None:
    """The metal's 360 °C in running and 20 K of swing: 380 °C."""
    workshop.write(files(('"370 °C"', f'"{temperature}"')))
    check = workshop.replace("duty.toml", "230..260 °C", "330..360 °C").only(PART, "cover")
    assert (check.outcome, check.case) == (outcome, "running")


@pytest.mark.parametrize(("temperature", "outcome"), [("360 °C", "conforms"), ("359.9 °C", "finding")])
def test_steam_may_not_be_hotter_however_cool_the_metal_is_said_to_be(
    workshop: DesignFolder, temperature: str, outcome: str
) -> None:
    """Steam of at most 360 °C beside metal of 260."""
    check = workshop.write(files(('"370 °C"', f'"{temperature}"'))).only(PART, "cover")
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("document", "outcome"),
    [("2.1", "finding"), ("2.2", "finding"), ("3.1", "conforms"), ("3.2", "conforms")],
)
def test_its_document_rests_on_tests_of_its_metal(
    workshop: DesignFolder, document: str, outcome: str
) -> None:
    found = files(('inspection_document = "3.1"', f'inspection_document = "{document}"'))
    check = workshop.write(found).only(PART, "cover")
    assert check.outcome == outcome
    assert ("rests on no test of the metal delivered" in check.says) is (outcome == "finding")


@pytest.mark.parametrize(("test", "outcome"), [("24.32", "conforms"), ("24.30", "finding"), ("2", "finding")])
def test_the_test_pressure_proves_something(workshop: DesignFolder, test: str, outcome: str) -> None:
    """EN 13445-5, 10.2.3.3: 1.43 × 17 = 24.31 bar."""
    check = workshop.write(files(('"28 bar gauge"', f'"{test} bar gauge"'))).only(PART, "cover")
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("old", "new", "key"),
    [
        ('"17 bar gauge"', '"16 bar gauge"', "design_pressure"),
        ('"28 bar gauge"', '"20 bar gauge"', "test_pressure"),
        ('"370 °C"', '"350 °C"', "design_temperature"),
        ('"370 °C"', '"270 °C"', "design_temperature"),
    ],
)
def test_a_finding_points_at_the_figure_that_is_short(
    workshop: DesignFolder, old: str, new: str, key: str
) -> None:
    """16.5 bar beside 16; 24.31 beside 20; steam of 360 °C beside 350; of 240 to 260 °C with 10 K to spare."""
    workshop.write(files((old, new)))
    if new == '"270 °C"':
        workshop.replace("duty.toml", "350 °C ±10", "250 °C ±10")
    check = workshop.only(PART, "cover")
    assert (check.outcome, check.where.key) == ("finding", key)


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("none", "finding"),
        ("to be agreed", "finding"),
        ("dye penetrant, none by film", "conforms"),
        ("looked over", "finding"),
        ("by eye", "finding"),
        ("not radiographed", "finding"),
        ("radiography not required", "finding"),
        ("to be examined by ultrasound", "conforms"),
        ("plate to EN 10160, S1 E1", "conforms"),
        ("100 % RT", "conforms"),
        ("faces lapped to a gauge and blued", "conforms"),
        ("hydraulic test and visual, every year", "conforms"),
        ("hydraulic test", "finding"),
        ("UT 0 %", "finding"),
        ("RT by agreement", "finding"),
        ("UT; RT not required", "conforms"),
    ],
)
def test_a_word_is_no_examination(workshop: DesignFolder, words: str, outcome: str) -> None:
    check = workshop.write(files(('"ultrasonic, plate edges"', f'"{words}"'))).only(PART, "cover")
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("body", "outcome"),
    [
        ("not required", "finding"),
        ("a notified body to be chosen", "finding"),
        ("see contract", "finding"),
        ("inspecting engineer of the railway", "conforms"),
    ],
)
def test_a_competent_body_is_named(workshop: DesignFolder, body: str, outcome: str) -> None:
    check = workshop.write(files(("the inspecting engineer", body))).only(PART, "cover")
    assert check.outcome == outcome
    if outcome == "finding":
        assert check.says == f'competent body "{body}" names nobody'


def test_no_test_is_borrowed_from_what_a_pipe_is_joined_to(workshop: DesignFolder) -> None:
    pipe = (
        'kind = "steam-pipe"\nid = "pipe"\npressure_part = true\nduty = "duty"\ncarries = "live steam"\n'
        'joined_to = "cover"\ninspection_document = "3.1"\nexamination = "VT"\n'
        'design_pressure = "17 bar gauge"\ndesign_temperature = "400 °C"\ncompetent_body = "b"\n'
    )
    check = workshop.write({**files(), "pipe.toml": pipe}).only(PART, "pipe")
    assert (check.outcome, check.says) == ("finding", "not stated: test_pressure")


@pytest.mark.parametrize(
    ("kind", "outcome"),
    [
        ("gland", "finding"),
        ("stuffing-box", "finding"),
        ("weldment", "not assessed"),
        ("bolted-joint", "not assessed"),
    ],
)
def test_what_holds_pressure_is_asked_for_its_record(workshop: DesignFolder, kind: str, outcome: str) -> None:
    """By its kind; a weldment that makes nothing, and a joint that holds nothing, must say."""
    check = workshop.write({**files(), "part.toml": f'kind = "{kind}"\nid = "part"\nduty = "duty"\n'})
    assert check.only(PART, "part").outcome == outcome


@pytest.mark.parametrize("kind", ["gland", "stuffing-box", "cylinder-cover", "steam-pipe"])
def test_a_word_clears_no_part_that_holds_pressure(workshop: DesignFolder, kind: str) -> None:
    part = f'kind = "{kind}"\nid = "part"\nduty = "duty"\npressure_part = false\n'
    check = workshop.write({**files(), "part.toml": part}).only(PART, "part")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@pytest.mark.parametrize(("temperature", "outcome"), [("380.1 °C", "conforms"), ("379.9 °C", "finding")])
def test_steam_temperature_where_no_metal_temperature_is_stated(
    workshop: DesignFolder, temperature: str, outcome: str
) -> None:
    """Steam of at most 360 °C and 20 K: 380 °C."""
    workshop.write(files(('"370 °C"', f'"{temperature}"')))
    workshop.replace("duty.toml", 'cylinder-cover = "230..260 °C"\n', "")
    check = workshop.only(PART, "cover")
    assert check.outcome == outcome


def test_the_swing_may_be_set(workshop: DesignFolder) -> None:
    """370 − 260 = 110 K are there: 111 K are not."""
    own = own_limit(PART, "release", swing="111 K")
    assert workshop.write(files(), settings=own).only(PART, "cover").outcome == "finding"


def test_studs_take_the_vessels_figures_and_need_no_examination(workshop: DesignFolder) -> None:
    studs = (
        'kind = "bolted-joint"\nid = "studs"\npressure_part = true\nholds = "cover"\n'
        'pressure = "cylinder"\ninspection_document = "3.1"\n'
    )
    check = workshop.write({**files(), "studs.toml": studs}).only(PART, "studs")
    assert check.outcome == "conforms"


def test_studs_of_the_exhaust_see_its_pressure(workshop: DesignFolder) -> None:
    """0.4 bar of 0.5."""
    studs = (
        'kind = "bolted-joint"\nid = "studs"\npressure_part = true\nduty = "duty"\npressure = "exhaust"\n'
        'inspection_document = "3.1"\ndesign_pressure = "0.5 bar gauge"\ndesign_temperature = "400 °C"\n'
        'test_pressure = "1 bar gauge"\ncompetent_body = "b"\n'
    )
    check = workshop.write({**files(), "studs.toml": studs}).only(PART, "studs")
    assert (check.outcome, check.utilisation) == ("conforms", pytest.approx(0.8))


@pytest.mark.parametrize(("carries", "outcome"), [("exhaust steam", "conforms"), ("live steam", "finding")])
def test_a_pipe_sees_the_steam_that_it_carries(workshop: DesignFolder, carries: str, outcome: str) -> None:
    """0.4 bar of exhaust against 16.5 bar of the boiler, for a design pressure of 0.5 bar."""
    pipe = (
        f'kind = "steam-pipe"\nid = "pipe"\npressure_part = true\nduty = "duty"\ncarries = "{carries}"\n'
        'inspection_document = "3.1"\nexamination = "VT"\ndesign_pressure = "0.5 bar gauge"\n'
        'design_temperature = "400 °C"\ntest_pressure = "1 bar gauge"\ncompetent_body = "b"\n'
    )
    assert workshop.write({**files(), "pipe.toml": pipe}).only(PART, "pipe").outcome == outcome


@pytest.mark.parametrize(("carries", "outcome"), [("exhaust steam", "conforms"), ("live steam", "finding")])
def test_a_flange_sees_the_steam_of_its_pipe(workshop: DesignFolder, carries: str, outcome: str) -> None:
    """0.4 bar of exhaust against 16.5 bar of the boiler, for a design pressure of 0.5 bar."""
    pipe = f'kind = "steam-pipe"\nid = "pipe"\nduty = "duty"\ncarries = "{carries}"\n'
    flange = (
        'kind = "pipe-flange"\nid = "flange"\npressure_part = true\nof = "pipe"\n'
        'inspection_document = "3.1"\nexamination = "VT"\ndesign_pressure = "0.5 bar gauge"\n'
        'design_temperature = "400 °C"\ntest_pressure = "1 bar gauge"\ncompetent_body = "b"\n'
    )
    workshop.write({**files(), "pipe.toml": pipe, "flange.toml": flange})
    assert workshop.only(PART, "flange").outcome == outcome


def test_a_part_that_holds_no_pressure(workshop: DesignFolder) -> None:
    assert workshop.write(files()).only(PART, "ring").outcome == "not applicable"


def test_not_assessed_without_the_boilers_pressure(workshop: DesignFolder) -> None:
    workshop.write(files())
    text = (workshop.root / "duty.toml").read_text(encoding="utf-8")
    without = text.replace('safety_valve_pressure = "16.5 bar gauge"\n', "")
    check = workshop.write({**files(), "duty.toml": without}).only(PART, "cover")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "safety_valve_pressure is not stated" in check.says


@given(T=st.floats(300, 700), margin=st.floats(0, 100))
def test_margin_is_what_was_added(T: float, margin: float) -> None:
    assert temperature_margin(T_d=T + margin, T=T) == pytest.approx(margin, abs=1e-9)


BLOCK = """
kind = "cylinder-block"
id = "block"
construction = "fabricated"
pressure_part = true
[inspection_points]
welding = "hold"
pressure_test = "witness"
lift_in = "hold"
[procedures]
first_steaming = "CN-P-1"
hot_retightening = "CN-P-2"
drain_order = "CN-P-3"
"""


def block(*changes: tuple[str, str]) -> dict[str, str]:
    return {"block.toml": changed(BLOCK, *changes)}


def test_a_plan_with_all_its_points_conforms(workshop: DesignFolder) -> None:
    check = workshop.write(block()).only(POINTS)
    assert check.outcome == "conforms"
    assert check.says == "points of the inspection plan: welding, lift_in, pressure_test"


@pytest.mark.parametrize("line", ['welding = "hold"', 'pressure_test = "witness"', 'lift_in = "hold"'])
@pytest.mark.parametrize("instead", ["", "none"])
def test_a_point_left_out_is_a_finding(workshop: DesignFolder, line: str, instead: str) -> None:
    name = line.split()[0]
    check = workshop.write(block((line, f'{name} = "none"' if instead else ""))).only(POINTS)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert check.says == f"not a point of the inspection plan: {name}"


def test_a_cast_block_is_tested_and_lifted_in(workshop: DesignFolder) -> None:
    cast = ("fabricated", "cast"), ("pressure_part = true", "pressure_part = false")
    said = workshop.write(block(*cast, ('welding = "hold"\n', ""))).only(POINTS).says
    assert said == "points of the inspection plan: lift_in, pressure_test"
    repaired = workshop.write(block(*cast)).only(POINTS).says  # a point of welding says that it is welded
    assert repaired == "points of the inspection plan: welding, lift_in, pressure_test"


@pytest.mark.parametrize("kind", ["cylinder-liner", "valve-seat"])
def test_pressing_is_a_point(workshop: DesignFolder, kind: str) -> None:
    text = f'kind = "{kind}"\nid = "part"\n[inspection_points]\npressing = "witness"\n'
    assert workshop.write({"part.toml": text}).only(POINTS).outcome == "conforms"
    assert workshop.replace("part.toml", "witness", "none").only(POINTS).outcome == "finding"


def test_any_part_that_is_welded_has_its_welding_as_a_point(workshop: DesignFolder) -> None:
    text = 'kind = "valve-seat"\nid = "seat"\n[inspection_points]\npressing = "witness"\n[welding]\nwelded = true\n'
    check = workshop.write({"seat.toml": text}).only(POINTS)
    assert (check.outcome, check.says) == ("finding", "not a point of the inspection plan: welding")
    assert workshop.replace("seat.toml", "true", "false").only(POINTS).outcome == "conforms"


@pytest.mark.parametrize(
    ("held", "says"),
    [
        ("welded on", "not a point of the inspection plan: welding"),
        ("loose behind a collar", "points of the inspection plan: pressure_test"),
    ],
)
def test_a_pipe_with_a_flange_welded_on_has_its_welding_as_a_point(
    workshop: DesignFolder, held: str, says: str
) -> None:
    pipe = 'kind = "steam-pipe"\nid = "pipe"\n[inspection_points]\npressure_test = "witness"\n'
    flange = f'kind = "pipe-flange"\nid = "flange"\nof = "pipe"\nheld = "{held}"\n'
    check = workshop.write({"pipe.toml": pipe, "flange.toml": flange}).only(POINTS, "pipe")
    assert (check.outcome, check.says) == ("finding" if held == "welded on" else "conforms", says)


@pytest.mark.parametrize(
    ("line", "outcome"),
    [("", "not applicable"), ('test_pressure = "28 bar gauge"', "not assessed")],
)
def test_a_flange_is_tested_with_its_pipe_unless_it_states_a_test(
    workshop: DesignFolder, line: str, outcome: str
) -> None:
    text = f'kind = "pipe-flange"\nid = "flange"\npressure_part = true\n{line}\n'
    assert workshop.write({"flange.toml": text}).only(POINTS).outcome == outcome


def test_studs_are_tested_with_what_they_hold(workshop: DesignFolder) -> None:
    text = 'kind = "bolted-joint"\nid = "studs"\npressure_part = true\ntest_pressure = "28 bar gauge"\n'
    assert workshop.write({"studs.toml": text}).only(POINTS).outcome == "not applicable"


@pytest.mark.parametrize("said", ["", "[welding]\nwelded = false\n"])
def test_a_weldment_is_welded(workshop: DesignFolder, said: str) -> None:
    text = 'kind = "weldment"\nid = "made"\npressure_part = false\n[inspection_points]\nlift_in = "none"\n'
    check = workshop.write({"made.toml": text + said}).only(POINTS)
    assert (check.outcome, check.says) == ("finding", "not a point of the inspection plan: welding")


def test_a_fabricated_block_is_welded_whatever_it_says(workshop: DesignFolder) -> None:
    denied = changed(BLOCK, ('welding = "hold"\n', "")) + "[welding]\nwelded = false\n"
    assert workshop.write({"block.toml": denied}).only(POINTS).outcome == "finding"


def test_no_plan_at_all_is_not_assessed(workshop: DesignFolder) -> None:
    text = 'kind = "valve-seat"\nid = "seat"\n'
    check = workshop.write({"seat.toml": text}).only(POINTS)
    assert (check.outcome, check.says) == ("not assessed", "inspection_points is not stated: pressing")


def test_a_ring_has_no_point(workshop: DesignFolder) -> None:
    assert workshop.write(files()).only(POINTS, "ring").outcome == "not applicable"


def test_instructions_all_written_conform(workshop: DesignFolder) -> None:
    assert workshop.write(block()).only(WARMING).outcome == "conforms"


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ('first_steaming = "CN-P-1"', "first steaming"),
        ('hot_retightening = "CN-P-2"', "hot retightening"),
        ('drain_order = "CN-P-3"', "drain order"),
    ],
)
def test_an_instruction_not_written_is_an_observation(workshop: DesignFolder, line: str, name: str) -> None:
    check = workshop.write(block((line, ""))).only(WARMING)
    assert (check.outcome, check.grade) == ("finding", Grade.OBSERVATION)
    assert check.says == f"no written procedure: {name}"


@pytest.mark.parametrize(
    ("part", "welded"),
    [
        ('kind = "bracket"\nid = "part"\n', False),
        ('kind = "bracket"\nid = "part"\n[welds.foot]\nthroat = "6 mm"\n', True),
        ('kind = "valve-cage"\nid = "part"\nfastened_by = "welds"\n', True),
        ('kind = "valve-cage"\nid = "part"\nfastened_by = "cover over it"\n', False),
        ('kind = "retaining-ring"\nid = "part"\nfastened = "welded in"\n', True),
        ('kind = "bracket"\nid = "part"\nexamination = "magnetic particle of the welds"\n', True),
        ('kind = "bracket"\nid = "part"\nexamination = "magnetic particle, no weld repairs"\n', False),
        ('kind = "bracket"\nid = "part"\nwelding.preheat = "120 °C"\n', True),
    ],
)
def test_a_part_is_welded_by_all_that_it_states(workshop: DesignFolder, part: str, welded: bool) -> None:
    """What other rules read as welded has its weld in the inspection plan, too."""
    check = workshop.write({"part.toml": part}).only(POINTS, "part")
    assert (check.outcome == "not assessed" and check.says.endswith(": welding")) is welded
    assert welded or check.outcome == "not applicable"
