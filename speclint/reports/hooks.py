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


@family
def speclint_drawings() -> Sequence[FigureMaker]:
    """Those of the whole design first, then part by part; each is imported when it draws."""
    return (
        FigureMaker(
            "overview",
            "every limit used, and the speeds of the steam",
            _drawn("overview_charts.overview_figures"),
        ),
        FigureMaker(
            "cylinders", "block, liner, covers and studs in section", _drawn("cylinder_drawing.liner_figures")
        ),
        FigureMaker("cylinder-ends", "an end of a cylinder put together", _drawn("end_drawing.end_figures")),
        FigureMaker(
            "chambers", "seats, passages and walls of a block", _drawn("chambers_drawing.chamber_figures")
        ),
        FigureMaker(
            "fits", "zones of hole and shaft, and what is left hot", _drawn("fit_charts.fit_figures")
        ),
        FigureMaker("joints", "circles of studs", _drawn("joint_drawing.joint_figures")),
        FigureMaker(
            "steam-path", "the way of the steam, place by place", _drawn("path_drawing.path_figures")
        ),
        FigureMaker("valves", "double-beat valves in half section", _drawn("valve_drawing.valve_figures")),
        FigureMaker(
            "springs",
            "springs of a valve against what is asked of them",
            _drawn("spring_charts.spring_figures"),
        ),
        FigureMaker(
            "valve-loads", "loads of a valve over its lift", _drawn("valve_loads.valve_load_figures")
        ),
        FigureMaker(
            "spring-positions",
            "springs free, shut, open and solid, and their endurance",
            _drawn("spring_drawing.spring_views"),
        ),
        FigureMaker(
            "lagging", "lagging with the temperatures through it", _drawn("lagging_drawing.lagging_figures")
        ),
        FigureMaker("covers", "flat covers in half section", _drawn("cover_drawing.cover_figures")),
        FigureMaker("pipes", "walls of steam pipes", _drawn("pipe_drawing.pipe_figures")),
        FigureMaker("rods", "piston rods and their sections", _drawn("rod_drawing.rod_figures")),
        FigureMaker("chains", "dimension chains and their gaps", _drawn("chain_charts.chain_figures")),
        FigureMaker(
            "links", "the parts that a part with a hold is linked to", _drawn("links_drawing.links_figures")
        ),
    )


def _drawn(place: str) -> Callable[[Assessment], Iterable[Figure]]:
    def make(assessment: Assessment) -> Iterable[Figure]:
        module, _, name = place.partition(".")
        maker: Callable[[Assessment], Iterable[Figure]] = getattr(
            import_module(f"speclint.reports.pack.{module}"), name
        )
        return maker(assessment)

    return make
