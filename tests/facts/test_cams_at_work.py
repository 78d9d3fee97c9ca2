"""A cam as a notch brings it into work: read forwards or backwards, and the estimates that rest on its cycle."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.errors import replace
from speclint.facts import (
    CamAtWork,
    WorkingClearances,
    cam_at_work,
    cycles_as_drawn,
    estimated_temperature,
    set_cam,
)
from speclint.facts.cylinder_cycles import cylinder_given
from speclint.facts.gear_at_work import GearAtWork
from speclint.handbook.valve_events import End
from speclint.handbook.valve_events.trains import ReversedCam
from speclint.quantities import Measure
from tests.facts.bench import opened
from tests.plugins.events.gear import files
from tests.plugins.known_metals import WITH_METALS

CLEARANCES = WorkingClearances(0.6e-3, 0.5e-3, 0.45e-3, 0.4e-3, 0.7e-3)


@pytest.mark.parametrize("backward", [False, True])
def test_a_cam_runs_backwards_in_a_notch_for_that(tmp_path: Path, backward: bool) -> None:
    on = opened(tmp_path, {**files(), "speclint.toml": WITH_METALS}, "gear")
    found = set_cam(on["gear"], "35", "inlet", End.FRONT, on.sheet)
    assert found is not None
    at_work: CamAtWork = cam_at_work(replace(found, backward=backward), CLEARANCES, on.sheet)
    assert isinstance(at_work.cam, ReversedCam) is backward
    assert at_work.ratio == 1.0
    assert at_work.clearances is CLEARANCES


@pytest.mark.parametrize(
    ("kind", "part", "low", "high"),
    [("cylinder-block", "block", -15.0, 15.0), ("piston", "piston", 20.0, 70.0)],
)
def test_metal_about_the_steam_of_a_cylinder_is_estimated_from_its_cycle(
    tmp_path: Path, kind: str, part: str, low: float, high: float
) -> None:
    """The block within 15 K of the mean of the steam, a piston 20 to 70 K above it."""
    texts = {**files(), "piston.toml": 'kind = "piston"\nid = "piston"\nruns_in = "liner"\n'}
    before, header, after = texts["duty.toml"].partition("[cases.running.temperatures]\n")
    others = "".join(line for line in after.splitlines(keepends=True) if not line.startswith(f"{kind} ="))
    texts["duty.toml"] = f'{before}{header}{kind} = "estimate"\n{others}'
    on = opened(tmp_path, {**texts, "speclint.toml": WITH_METALS}, part)
    case = on["duty"].cases["running"]
    found = estimated_temperature(case.temperatures[kind], on[part], on[part], case, on.sheet)
    assert isinstance(found, Measure)
    at_work = GearAtWork(on["gear"], case, on.sheet, cold=True)
    cycles = cycles_as_drawn(cylinder_given(at_work, case.notch.value, case, on.sheet))
    mean = cycles.mean_temperature
    assert (found.low, found.high) == pytest.approx((mean + low, mean + high))
    assert found.nominal == pytest.approx(mean + (low + high) / 2)
