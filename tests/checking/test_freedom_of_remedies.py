"""What no remedy moves: a load that is given, and a pin that would be made thinner for the sake of a clearance."""

from __future__ import annotations

from dataclasses import replace

import pytest

from speclint.checking import Remedy
from speclint.checking.remedy_search import remedies
from speclint.repository import Change
from tests.rule_examples.designs import bench


def found(rule: str, component: str, *changes: tuple[str, str]) -> dict[str, Remedy]:
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
