"""What a valve and its port pass at any lift: beats, throats, port, and their coefficients of discharge."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import COMMON_PRACTICE
from speclint.facts.throats import throat_of
from speclint.handbook.steam import throat_area
from speclint.handbook.tables import Reading
from speclint.handbook.valve_events import (
    PORT_COEFFICIENT,
    VALVE_COEFFICIENT,
    Beat,
    ValvePassage,
    coefficient_of_loss,
)
from speclint.rules import Sheet
from speclint.specs import PoppetValve

if TYPE_CHECKING:
    from speclint.specs import Beat as StatedBeat


def usual_coefficient(what: str) -> Reading:
    """Coefficient of discharge of a poppet valve or of its port, where neither it nor a loss is stated.

    >>> usual_coefficient("valve").nominal
    0.75
    """
    value = VALVE_COEFFICIENT if what == "valve" else PORT_COEFFICIENT
    return Reading.exact(f"coefficient of discharge of a {what}", value, "", COMMON_PRACTICE)


def passage_of(valve: PoppetValve, mark: str, sheet: Sheet) -> ValvePassage:
    """A valve with its port, sizes as the drawing aims at them."""
    count = sheet.count(f"z_{mark}", valve.beats)
    if count not in (1, 2):
        raise sheet.not_covered(f"a poppet valve of {count} beats: one or two are covered")
    beats = ((f"u{mark}", valve.upper_beat), (f"l{mark}", valve.lower_beat))[:count]
    C_v, C_p = _coefficients(valve, mark, sheet)
    return ValvePassage(
        beats=tuple(_beat(valve, beat, index, sheet) for index, beat in beats),
        port=sheet.take_nominal(f"A_p{mark}", valve.port_area),
        valve_coefficient=C_v,
        port_coefficient=C_p,
        common_throat=_common_throat(valve, count, mark, sheet),
    )


def _beat(valve: PoppetValve, beat: StatedBeat, index: str, sheet: Sheet) -> Beat:
    D = throat_of(valve, beat, index, sheet, sheet.take_nominal)
    A_o = sheet.take_nominal(f"A_o{index}", beat.blocked_area)
    return Beat(
        diameter=sheet.take_nominal(f"d_{index}", beat.seat_diameter),
        contact_width=sheet.take_nominal(f"w_{index}", beat.contact_width),
        seat_angle=sheet.take_nominal(f"β_{index}", beat.seat_angle),
        throat=sheet.work(f"T_{index}", throat_area, D=D, d=0.0, A_o=A_o),
    )


def _common_throat(valve: PoppetValve, count: int, mark: str, sheet: Sheet) -> float | None:
    """Area after the streams of two beats have met; None where they do not meet in the valve and none is stated."""
    if count == 1:
        return None
    apart = sheet.read("streams through the valve", valve.through_valve) == "neither"
    if apart and not sheet.is_stated("common throat", valve.common_throat):
        return None
    return sheet.take_nominal(f"T_c{mark}", valve.common_throat)


def _coefficients(valve: PoppetValve, mark: str, sheet: Sheet) -> tuple[float, float]:
    """Coefficients of valve and port: as stated; where only a loss is, that of the port by it; else the usual ones."""
    stated = valve.discharge_coefficient, valve.port_discharge_coefficient
    known = [sheet.is_stated("coefficient of discharge", one) for one in stated]
    if not any(known) and sheet.is_stated("loss of valve and port", valve.loss_coefficient):
        ζ = sheet.take_nominal(f"ζ_{mark}", valve.loss_coefficient)
        return 1.0, sheet.work(f"C_p{mark}", coefficient_of_loss, ζ=ζ)
    C_v, C_p = (
        sheet.take_nominal(f"{symbol}{mark}", one)
        if is_known
        else sheet.look_up(f"{symbol}{mark}", usual_coefficient, what=what)
        for symbol, one, is_known, what in zip(("C_v", "C_p"), stated, known, ("valve", "port"), strict=True)
    )
    return C_v, C_p
