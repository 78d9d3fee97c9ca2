"""What no remedy moves: a load that is given, and what no designer makes less, such as a pin or a test pressure."""

from __future__ import annotations

import pytest

from speclint.checking import Remedy
from speclint.errors import replace
from speclint.repository import Change
from tests.remedies import remedies
from tests.rule_examples.designs import bench


def found(rule: str, component: str, *changes: tuple[str, object]) -> dict[str, Remedy]:
    on = bench()
    design = on.design.changed([Change(component, key, value) for key, value in changes])
    made = on.made(on.rules[rule], component, design)
    assert made.outcome == "finding"
    return {one.where.key: one for one in remedies(made, (), on.context(design))}


def test_no_remedy_lowers_the_torque_that_a_shaft_is_given() -> None:
    """48 mm under 1600 N·m twist by more than 1° a metre: its diameter is free to grow, its torque is not to fall."""
    keys = found(
        "shaft.torsion", "shaft-cam-left-back", ("torque", "1600 N·m"), ("greatest_diameter", "80 mm")
    )
    assert keys["diameter"].then > keys["diameter"].now  # type: ignore[operator]
    assert "torque" not in keys


def test_no_remedy_raises_the_strength_on_a_certificate() -> None:
    assert not found("coil-spring.tensile", "spring-inlet-left-front", ("wire_tensile_strength", "1650 MPa"))


def test_no_remedy_lowers_a_test_pressure_or_a_corrosion_allowance() -> None:
    """A wall of 2.6 mm, where 1.35 mm for the steam and 1.5 mm for rust make 2.85 mm."""
    keys = found("pipe.wall", "pipe-live-right", ("wall", "2.6 mm"))
    assert "wall" in keys
    assert "corrosion_allowance" not in keys


def test_no_remedy_alters_what_is_on_record_of_a_part_as_made() -> None:
    """Carbon and manganese make 0.22 + 1.68/6 = 0.50 %, where 0.44 % is asked."""
    analysis = {"C": "0.22 %", "Mn": "1.68 %"}
    assert not found("made.carbon-as-asked", "block-right-1", ("certificate.analysis", analysis))


def test_a_new_clearance_is_widened_and_the_pin_is_not_made_thinner() -> None:
    """A pin of 185 mm wants 0.0003 of its diameter, 0.055 mm: 0.05 mm would do for one of 167 mm."""
    keys = found("wear.new-can-run", "pin-crank-left", ("wear.new", "0.07 mm ±0.02"))
    assert set(keys) == {"wear.new"}


@pytest.mark.parametrize(("then", "offered"), [(0.9901, True), (0.9899, False), (1.2, True)])
def test_a_pin_is_made_thinner_only_for_its_fit(
    monkeypatch: pytest.MonkeyPatch, then: float, offered: bool
) -> None:
    """One per cent of 1 m is 10 mm."""
    on = bench()
    design = on.design.changed([Change("pin-crank-left", "wear.new", "0.07 mm ±0.02")])
    made = on.made(on.rules["wear.new-can-run"], "pin-crank-left", design)
    where = next(step.where for step in made.steps if step.where.key == "diameter")
    widened = remedies(made, (), on.context(design))[0]
    thinner = replace(widened, where=where, now=1.0, then=then)
    monkeypatch.setattr("speclint.checking.remedy_search._proved", lambda _: [thinner])
    assert bool(remedies(made, (), on.context(design))) is offered
