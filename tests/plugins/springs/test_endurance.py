"""coil-spring.fatigue, coil-spring.surge and coil-spring.temperature."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.errors import OutOfRange
from speclint.handbook.springs.fatigue import stroke_factor
from speclint.testing import DesignFolder, found, on_sheet
from speclint_springs.formulae.helical import open_load_from_shut, surge_ratio
from tests.plugins.springs.spring import spring

FATIGUE, SURGE, TEMPERATURE = "coil-spring.fatigue", "coil-spring.surge", "coil-spring.temperature"
CAUGHT = "broken_half_caught = true\n"


def duty(speed: str = "360 rev/min", at: str = "20 °C") -> str:
    """A duty with the spring at one temperature in every case that the rules name."""
    cases = ("starting", "running", "drifting", "standing-hot")
    text = 'kind = "duty"\nid = "duty"\n'
    for name in cases:
        text += f'[cases.{name}]\nrotational_speed = "{speed}"\n'
        text += f'[cases.{name}.temperatures]\ncompression-spring = "{at}"\n'
    return text


def with_duty(duty_text: str, *changes: tuple[str, str], add: str = "") -> dict[str, str]:
    """The spring under a duty."""
    return {**spring(*changes, add='duty = "duty"\n' + add), "duty.toml": duty_text}


@pytest.mark.parametrize(("strength", "outcome"), [("391.2 MPa", "conforms"), ("391.0 MPa", "finding")])
def test_fatigue_limit_from_both_sides(workshop: DesignFolder, strength: str, outcome: str) -> None:
    """k = 6.5/5.25 = 1.238095; τ = 1.238095 × 8 × 48/(π × 512) = 0.295573 MPa for each N.

    R = 46.92708 N/mm: 1032.396 N shut and 844.687 N of stroke, 305.149 and 249.667 MPa; slope 0.70 at least.
    1.2 × 249.667 + 0.30 × 305.149 = 391.145 MPa.
    """
    check = workshop.write(spring(add=CAUGHT + f'stroke_strength = "{strength}"\n')).only(FATIGUE)
    assert check.outcome == outcome


@pytest.mark.parametrize(("strength", "outcome"), [("441.2 MPa", "conforms"), ("441.0 MPa", "finding")])
def test_the_stroke_is_that_of_the_valve_it_closes(
    workshop: DesignFolder, strength: str, outcome: str
) -> None:
    """A lift of 20 mm and 1 mm beyond: 46.92708 × 21 × 0.295573 = 291.278 MPa in place of the stated 18 mm.

    1.2 × 291.278 + 0.30 × 305.149 = 441.078 MPa.
    """
    add = CAUGHT + f'stroke_strength = "{strength}"\ncloses = "valve"\n'
    valve = 'kind = "poppet-valve"\nid = "valve"\nlift = "20 mm"\novertravel = "1 mm"\n'
    check = workshop.write({**spring(add=add), "valve.toml": valve}).only(FATIGUE)
    assert check.outcome == outcome


@pytest.mark.parametrize(("strength", "outcome"), [("957 MPa", "conforms"), ("958 MPa", "finding")])
def test_no_maker_guarantees_more_than_the_wire_bears_when_solid(
    workshop: DesignFolder, strength: str, outcome: str
) -> None:
    """0.56 × 1710 = 957.6 MPa."""
    files = spring(add=f'{CAUGHT}guide_pin = "39 mm"\nstroke_strength = "{strength}"\n')
    check = workshop.write(files).only(FATIGUE)
    assert check.outcome == outcome
    assert outcome == "conforms" or "pressed solid" in check.actual


def test_peening_makes_the_difference(workshop: DesignFolder) -> None:
    """VDSiCr of 8 mm in the diagrams (from memory): 434 MPa peened, (434 − 91.545)/249.667 = 1.3717; 340 MPa not."""
    peened = workshop.write(spring(add=CAUGHT)).only(FATIGUE)
    assert peened.outcome == "conforms"
    assert found(peened) == pytest.approx(1.3717, rel=1e-3)
    caught = CAUGHT + 'guide_pin = "39 mm"\n'
    plain = workshop.write(spring(("shot_peened = true", "shot_peened = false"), add=caught)).only(FATIGUE)
    assert (plain.outcome, plain.grade) == ("finding", Grade.NONCONFORMITY)


def test_a_half_that_is_not_caught_makes_it_a_hold(workshop: DesignFolder) -> None:
    loose = CAUGHT.replace("true", "false")
    check = workshop.write(spring(("shot_peened = true", "shot_peened = false"), add=loose)).only(FATIGUE)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@pytest.mark.parametrize("catch", ["", 'guide_pin = "39 mm"\n', 'housing = "60 mm"\n'])
def test_a_word_catches_no_broken_half(workshop: DesignFolder, catch: str) -> None:
    """A pin within the coils or a housing round them must stand behind it."""
    unpeened = ("shot_peened = true", "shot_peened = false")
    check = workshop.write(spring(unpeened, add=CAUGHT + catch)).only(FATIGUE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY if catch else Grade.HOLD)


@pytest.mark.parametrize("catch", ['guide_pin = "39 mm"\n', 'housing = "60 mm"\n'])
def test_a_pin_that_is_said_to_catch_nothing_eases_no_hold(workshop: DesignFolder, catch: str) -> None:
    unpeened = ("shot_peened = true", "shot_peened = false")
    loose = CAUGHT.replace("true", "false")
    check = workshop.write(spring(unpeened, add=loose + catch)).only(FATIGUE)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@pytest.mark.parametrize(("load", "taken"), [("500 N", 1032.396), ("1012 N", 1012.0), ("1500 N", 1500.0)])
def test_a_spring_is_tired_by_the_greater_of_two_loads_that_differ(
    workshop: DesignFolder, load: str, taken: float
) -> None:
    """By its sizes, with G 2 % high, 46.92708 × 22 = 1032.396 N. At an index of 6 k = 6.5/5.25; τ = k 8 D F/(π d³)."""
    check = workshop.write(spring(add=f'{CAUGHT}shut_load = "{load}"\nquality_grade = "2"\n')).only(FATIGUE)
    stress = 6.5 / 5.25 * 8 * 48 * taken / (math.pi * 8**3) * 1e6
    assert on_sheet(check, "τ_U") == pytest.approx(stress, rel=1e-5)


def test_a_wire_of_no_grade_is_held_to_its_material(workshop: DesignFolder) -> None:
    """Rated to 200 °C."""
    files = with_duty(duty(at="201 °C"), ('wire_grade = "VDSiCr"', ""), add='relaxation = "5 %"\n')
    assert workshop.write(files).only(TEMPERATURE).outcome == "finding"


STEADY = ('"alternating"', '"steady"')


def test_steady_load_is_not_applicable(workshop: DesignFolder) -> None:
    still = spring(STEADY, ('open_length = "100 mm"', 'open_length = "118 mm"'))
    assert workshop.write(still).only(FATIGUE).outcome == "not applicable"


def test_a_steady_spring_with_one_length_does_not_move(workshop: DesignFolder) -> None:
    still = spring(STEADY, ('open_length = "100 mm"', ""))
    assert workshop.write(still).only(FATIGUE).outcome == "not applicable"


def test_a_spring_that_moves_is_not_steady(workshop: DesignFolder) -> None:
    """118 mm shut and 100 mm open: (340 − 91.545)/249.667 = 0.995 without peening, whatever its loading is called."""
    unpeened = ("shot_peened = true", "shot_peened = false")
    check = workshop.write(spring(STEADY, unpeened, add=CAUGHT)).only(FATIGUE)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert found(check) == pytest.approx(0.995, abs=2e-3)


@pytest.mark.parametrize("line", ['shut_length = "118 mm"', "shot_peened = true", 'wire_grade = "VDSiCr"'])
def test_fatigue_not_assessed_is_itself_a_hold(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(spring((line, ""), add=CAUGHT)).only(FATIGUE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert line.split()[0] in check.says


def test_a_wire_without_a_diagram_is_not_assessed(workshop: DesignFolder) -> None:
    check = workshop.write(spring(('"VDSiCr"', '"piano"'), add=CAUGHT)).only(FATIGUE)
    assert check.outcome == "not assessed"
    assert "piano" in check.says


@pytest.mark.parametrize(
    ("speed", "outcome", "grade"),
    [
        ("461 rev/min", "conforms", None),
        ("462 rev/min", "finding", Grade.OBSERVATION),
        ("710 rev/min", "finding", Grade.OBSERVATION),
        ("711 rev/min", "finding", Grade.NONCONFORMITY),
    ],
)
def test_surge_limits_from_both_sides(
    workshop: DesignFolder, speed: str, outcome: str, grade: Grade | None
) -> None:
    """√(77.91e9/15700) = 2227.65 m/s; 0.008/(2 π 8 × 0.048²) × 2227.65 = 153.881 per second.

    60 × 153.881/20 = 461.64 and 60 × 153.881/13 = 710.22 rev/min.
    """
    check = workshop.write(with_duty(duty(speed))).only(SURGE)
    assert (check.outcome, check.grade) == (outcome, grade)


@pytest.mark.parametrize(
    ("speed", "case"), [("359 rev/min", "running"), ("461 rev/min", "drifting"), ("462 rev/min", "drifting")]
)
def test_a_spring_surges_at_the_speed_of_drifting_too(workshop: DesignFolder, speed: str, case: str) -> None:
    """At 360 rev/min in running: an engine that rolls faster than it may steam turns its cams faster."""
    drifting = '[cases.drifting]\nrotational_speed = "'
    text = duty().replace(f"{drifting}360 rev/min", f"{drifting}{speed}")
    check = workshop.write(with_duty(text)).only(SURGE)
    outcome = "finding" if speed == "462 rev/min" else "conforms"
    assert (check.outcome, check.case) == (outcome, case)


def test_surge_is_not_assessed_without_speed(workshop: DesignFolder) -> None:
    text = duty().replace('rotational_speed = "360 rev/min"\n', "")
    assert workshop.write(with_duty(text)).only(SURGE).outcome == "not assessed"


@pytest.mark.parametrize(("at", "outcome"), [("199.5 °C", "conforms"), ("200.5 °C", "finding")])
def test_temperature_limit_of_the_wire_from_both_sides(workshop: DesignFolder, at: str, outcome: str) -> None:
    """The wire of the tests is rated to 200 °C."""
    check = workshop.write(with_duty(duty(at=at), add='relaxation = "5 %"\n')).only(TEMPERATURE)
    assert check.outcome == outcome


@pytest.mark.parametrize(("at", "outcome"), [("120 °C", "conforms"), ("122 °C", "finding")])
def test_temperature_limit_of_the_grade_from_both_sides(
    workshop: DesignFolder, at: str, outcome: str
) -> None:
    """Music wire, DH of the table, is used up to 121 °C (250 °F), where its material says 200 °C."""
    grade = ('"VDSiCr"', '"DH"')
    check = workshop.write(with_duty(duty(at=at), grade, add='relaxation = "5 %"\n')).only(TEMPERATURE)
    assert check.outcome == outcome


@pytest.mark.parametrize(("loss", "outcome"), [("9.9 %", "conforms"), ("10.1 %", "finding")])
def test_loss_limit_from_both_sides(workshop: DesignFolder, loss: str, outcome: str) -> None:
    check = workshop.write(with_duty(duty(), add=f'relaxation = "{loss}"\n')).only(TEMPERATURE)
    assert check.outcome == outcome


def test_loss_by_wire_and_stress(workshop: DesignFolder) -> None:
    """VDSiCr at 160 °C loses 6 % at 800 MPa (from memory): at 448.12 MPa and the high side 1.5 × 3.361 = 5.041 %."""
    check = workshop.write(with_duty(duty(at="160 °C"))).only(TEMPERATURE)
    loss = next(step.value for step in check.steps if step.symbol == "r")
    assert loss == pytest.approx(0.05041, rel=1e-3)


def test_temperature_is_not_assessed_without_it(workshop: DesignFolder) -> None:
    text = duty().replace('compression-spring = "20 °C"\n', "")
    assert workshop.write(with_duty(text)).only(TEMPERATURE).outcome == "not assessed"


@given(tau=st.floats(0.0, 4e8), stroke=st.floats(1e7, 4e8), scale=st.floats(0.5, 3.0))
def test_all_stresses_scaled_alike_leave_the_factor(tau: float, stroke: float, scale: float) -> None:
    def S(x: float) -> float:
        return stroke_factor(tau_U=x * tau, tau_O=x * (tau + stroke), tau_H0=x * 5e8, m=0.75)

    assert S(scale) == pytest.approx(S(1.0))


@given(f=st.floats(50.0, 500.0), turns=st.floats(0.5, 20.0))
def test_surge_ratio_counts_swings_in_a_turn(f: float, turns: float) -> None:
    assert surge_ratio(f=f, omega=2 * math.pi * turns) == pytest.approx(f / turns)


def test_refusals() -> None:
    with pytest.raises(OutOfRange, match="turn"):
        surge_ratio(f=100.0, omega=0.0)
    with pytest.raises(OutOfRange, match="open length 100 mm is not less than the shut length 100 mm"):
        open_load_from_shut(F_U=800.0, R=4e4, L_U=0.1, L_O=0.1)
