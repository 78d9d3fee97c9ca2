"""Every figure of the pack, in the order in which a reviewer looks at them."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.checking import Assessment
from speclint.reports.pack.chain_charts import chain_figures
from speclint.reports.pack.chambers_drawing import chamber_figures
from speclint.reports.pack.cylinder_drawing import liner_figures
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.fit_charts import fit_figures
from speclint.reports.pack.joint_drawing import joint_figures
from speclint.reports.pack.overview_charts import overview_figures
from speclint.reports.pack.path_drawing import path_figures
from speclint.reports.pack.spring_charts import spring_figures
from speclint.reports.pack.valve_drawing import valve_figures
from speclint.reports.pack.valve_loads import valve_load_figures

_MAKERS = (
    overview_figures,
    liner_figures,
    chamber_figures,
    fit_figures,
    joint_figures,
    path_figures,
    valve_figures,
    spring_figures,
    valve_load_figures,
    chain_figures,
)


def figures(assessment: Assessment) -> Iterator[Figure]:
    """The figures, those of the whole design first."""
    for maker in _MAKERS:
        yield from maker(assessment)
