"""Rules of wheels and axles: two kinds, a table for shafts, four rules, a material, a drawing and a report."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from speclint import FigureMaker, ReportWriter, RulesIn, family, rules_in

if TYPE_CHECKING:
    from speclint import Assessment
    from speclint.handbook.materials import Material
    from speclint.reports import Figure
    from speclint.specs import ExtraTable, Spec

#: The interface between the core and families for which this one is written.
speclint_api = "1"


@family
def speclint_kinds() -> Sequence[type[Spec]]:
    """The wheel, and the crank axle, which is a shaft."""
    from speclint_wheelsets.kinds import CrankAxle, Wheel

    return [CrankAxle, Wheel]


@family
def speclint_tables() -> Sequence[ExtraTable]:
    """What a shaft states that carries wheels."""
    from speclint.specs import ExtraTable, Shaft
    from speclint_wheelsets.kinds import Seats

    return [ExtraTable(Shaft, Seats)]


@family
def speclint_rules() -> Sequence[RulesIn]:
    """Those of wheels, and those of shafts that carry wheels."""
    return [
        rules_in("speclint_wheelsets.rules.wheels", "wheel"),
        rules_in("speclint_wheelsets.rules.axles", "shaft", "crank-axle"),
    ]


@family
def speclint_materials() -> Sequence[Material]:
    """Axle steel."""
    from importlib.resources import files

    from speclint.handbook.materials import read_materials

    name = "axle-steel-en-13261-2009.toml"
    return read_materials((files("speclint_wheelsets") / "data" / name).read_text("utf-8"), name)


@family
def speclint_reports() -> Sequence[ReportWriter]:
    """A list for the wheel shop."""
    from speclint_wheelsets import report

    return [ReportWriter("wheel-list", "wheels and how much of each limit they use", report.write)]


@family
def speclint_drawings() -> Sequence[FigureMaker]:
    """The axle with its seats."""
    return [FigureMaker("axles", "axles with their wheel seats, to scale", _axles)]


def _axles(assessment: Assessment) -> Iterable[Figure]:
    from speclint_wheelsets.drawings import axle_figures

    return axle_figures(assessment)
