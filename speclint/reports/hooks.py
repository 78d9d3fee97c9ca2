"""The report writers and drawings of speclint itself, handed over by the same hooks as those of any family."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from importlib import import_module
from typing import TYPE_CHECKING

from speclint.families import FigureMaker, ReportWriter, family

if TYPE_CHECKING:
    from speclint.checking import Assessment
    from speclint.reports.pack.figures import Figure


@family
def speclint_reports() -> Sequence[ReportWriter]:
    """Each is imported when it writes."""
    return (
        ReportWriter(
            "json", "one document for machines, schema speclint.result/1", _in("json_report"), remedies=True
        ),
        ReportWriter(
            "sarif", "findings in SARIF 2.1.0, for editors and forges", _in("sarif_report"), remedies=True
        ),
        ReportWriter("markdown", "a summary for a change request", _in("markdown_report"), remedies=True),
        ReportWriter("csv", "every check, one row each, for a spreadsheet", _in("csv_report")),
    )


def _in(module: str) -> Callable[[Assessment], str]:
    def write(assessment: Assessment) -> str:
        writer: Callable[[Assessment], str] = import_module(f"speclint.reports.{module}").write
        return writer(assessment)

    return write


#: Each figure of speclint itself: its name, what it shows, and what makes it. Those of the whole design come first.
_FIGURES = (
    ("overview", "every limit used, and the speeds of the steam", "overview_charts.overview_figures"),
    ("cylinders", "block, liner, covers and studs in section", "cylinder_drawing.liner_figures"),
    ("cylinder-ends", "an end of a cylinder put together", "end_drawing.end_figures"),
    ("chambers", "seats, passages and walls of a block", "chambers_drawing.chamber_figures"),
    ("fits", "zones of hole and shaft, and what is left hot", "fit_charts.fit_figures"),
    ("joints", "circles of studs", "joint_drawing.joint_figures"),
    ("steam-path", "the way of the steam, place by place", "path_drawing.path_figures"),
    ("valves", "double-beat valves in half section", "valve_drawing.valve_figures"),
    ("springs", "springs of a valve against what is asked of them", "spring_charts.spring_figures"),
    ("valve-loads", "loads of a valve over its lift", "valve_loads.valve_load_figures"),
    (
        "spring-positions",
        "springs free, shut, open and solid, and their endurance",
        "spring_drawing.spring_views",
    ),
    ("lagging", "lagging with the temperatures through it", "lagging_drawing.lagging_figures"),
    ("covers", "flat covers in half section", "cover_drawing.cover_figures"),
    ("pipes", "walls of steam pipes", "pipe_drawing.pipe_figures"),
    ("rods", "piston rods and their sections", "rod_drawing.rod_figures"),
    ("chains", "dimension chains and their gaps", "chain_charts.chain_figures"),
    ("links", "the parts that a part with a hold is linked to", "links_drawing.links_figures"),
)


@family
def speclint_drawings() -> Sequence[FigureMaker]:
    """Those of the whole design first, then part by part; each is imported when it draws."""
    return tuple(
        FigureMaker(name, shows, _drawn(place), in_chosen_units=True) for name, shows, place in _FIGURES
    )


def _drawn(place: str) -> Callable[[Assessment], Iterable[Figure]]:
    def make(assessment: Assessment) -> Iterable[Figure]:
        module, _, name = place.partition(".")
        maker: Callable[[Assessment], Iterable[Figure]] = getattr(
            import_module(f"speclint.reports.pack.{module}"), name
        )
        return maker(assessment)

    return make
