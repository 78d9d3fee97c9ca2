"""Coefficients of discharge, against those that are usual."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Ratio
from speclint.facts import usual_coefficient
from speclint.handbook.valve_events import coefficient_of_loss
from speclint.specs import BlastNozzle, PoppetValve, SteamPassage
from speclint_steamways.sources import ISO_5167_3

if TYPE_CHECKING:
    from speclint.specs import Fraction


@rule(
    "steamway.flows-as-usual",
    title="A coefficient of discharge of a valve, its port, a breather or a nozzle is at most the usual 0.75, 0.90, "
    "0.75 and 0.98, or says that it was measured or calculated",
    on=(PoppetValve, BlastNozzle, SteamPassage),
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE, ISO_5167_3],
    why="the whole cycle, the pressure behind the piston and the draught rest on a figure that is easily written as 1",
    leaves_out="whether a measurement was made on a valve like this one, and at the pressures of the engine; a figure "
    "that is too small",
    against=(),
    limits=[
        Limit("nozzle", "0.98", "ratio", ISO_5167_3, "greatest coefficient of a smooth nozzle, rounded"),
    ],
)
def flows_as_usual(part: PoppetValve | BlastNozzle | SteamPassage, sheet: Sheet) -> Judgement:
    """Each coefficient that is stated, a loss of valve and port as that of the port, against the usual one."""
    explained = {*sheet.stated_from("measured", part), *sheet.stated_from("calculated", part)}
    found = [
        sheet.at_most(C, usual).else_says(
            "passes {found} of the ideal flow, {limit} usual, and no test is named"
        )
        for C, usual, stated in _coefficients(part, sheet)
        if stated.where not in explained
    ]
    if not found:
        raise sheet.not_applicable("no coefficient is stated, or each was measured or calculated")
    return sheet.worst(*found)


def _coefficients(
    part: PoppetValve | BlastNozzle | SteamPassage, sheet: Sheet
) -> Iterator[tuple[Ratio, Ratio, Fraction]]:
    """Of each that is stated the coefficient, the usual one, and what is stated."""
    own = part.discharge_coefficient
    if sheet.is_stated("coefficient of discharge", own):
        nozzle = isinstance(part, BlastNozzle)
        usual = sheet.limit("nozzle") if nozzle else sheet.look_up("C_u", usual_coefficient, what="valve")
        yield sheet.take("C", own), usual, own
    if not isinstance(part, PoppetValve):
        return
    port, loss = part.port_discharge_coefficient, part.loss_coefficient
    if sheet.is_stated("coefficient of its port", port):
        yield sheet.take("C_p", port), sheet.look_up("C_pu", usual_coefficient, what="port"), port
    if sheet.is_stated("loss of valve and port", loss):
        of_loss = sheet.work("C_ζ", coefficient_of_loss, ζ=sheet.take("ζ", loss))
        yield of_loss, sheet.look_up("C_pu", usual_coefficient, what="port"), loss


RULES = (flows_as_usual,)
