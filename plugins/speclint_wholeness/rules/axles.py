"""The axle that each crank of an engine turns."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.specs import DrivingAxle, Engine


def _axles(engine: Engine, sheet: Sheet) -> Iterator[ToFill]:
    """For each crank the axles that say that they are driven by it; none where its shaft is geared to the axles."""
    if sheet.is_stated("gear ratio", engine.gear_ratio):
        return
    turned = [
        (axle, sheet.read(f"{axle.id} driven by", word))
        for axle in sheet.fillers(engine, DrivingAxle, by="engine")
        for word in axle.driven_by
    ]
    for name, crank in engine.cranks.items():
        found = tuple(axle for axle, by in turned if by == name)
        yield ToFill(f"crank {name}", DrivingAxle.called, found, where=crank.where)


one_axle: Rule = filled_once(
    "crank.one-axle",
    title="Each crank of an engine turns one driving axle",
    on=Engine,
    places=_axles,
    row=18,
    gravity="hold",
    why="load, hammer blow and crank pins are judged of the axles that are drawn, and of no other",
    leaves_out="coupled axles, whose loads make up the adhesive weight; cranks on a shaft that gears turn the axles by",
)

RULES = (one_axle,)
