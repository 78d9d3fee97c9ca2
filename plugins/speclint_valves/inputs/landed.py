"""The speed at which a valve is set down on its seat."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import MetresPerSecond
from speclint.facts import ValvesTrain, motion, ratio_of_train, speed_of_gear, valve_speed
from speclint.specs import LoadCase
from speclint_valves.inputs.train import SCAN, clearances


def speed_of_landing(train: ValvesTrain, case: LoadCase, sheet: Sheet) -> MetresPerSecond:
    """That with which one track of the cam sets the valve down: where the falling tappet has its clearance left."""
    i, cam, (_, c) = ratio_of_train(train, sheet), motion(train.cam, sheet), clearances(train, sheet)

    def apart(angle: float) -> float:
        return abs(cam.at(angle).lift - c)

    angle = sheet.scan(
        "φ", "cam angle of landing", apart, cam.top, cam.duration, unit="rad", find="least", steps=SCAN
    )
    ω = speed_of_gear(train.valve, case, sheet)
    return sheet.work("v", valve_speed, i=i, s_prime=cam.at(angle).slope, ω=ω)
