"""The review pack: one self-contained HTML document for a design review, with drawings and typeset sheets."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import TYPE_CHECKING

from speclint.checking import Assessment, Check, Processes
from speclint.errors import SettingsError, replace
from speclint.made import InspectionList
from speclint.quantities import System
from speclint.register import Comparison
from speclint.repository import WorkTree

if TYPE_CHECKING:
    from speclint.reports.pack.figures import Figure

#: What gives the figures of a pack, once they are drawn.
Drawing = Callable[[], "list[Figure]"]
REVIEW_FILE = "review.html"
_SHARE = 100  # formulae given to a helper at a time: some hundredths of a second of work


def _need_the_extra() -> None:
    try:
        import jinja2  # noqa: F401
        import latex2mathml  # noqa: F401
        import svg  # noqa: F401
    except ImportError as problem:
        raise SettingsError('this needs the extra "pack": pip install "speclint[pack]"') from problem


def review_page(
    assessment: Assessment,
    system: System = "as written",
    on_progress: Callable[[str], None] = lambda _: None,
    processes: Processes | None = None,
    revision: WorkTree | None = None,
    compared: Comparison | None = None,
    drawing: Drawing | None = None,
) -> str:
    """The review pack as HTML; ``on_progress`` is called with each stage, ``processes`` help to make it.

    ``revision`` is the commit of the design and how its files differ from it, for the title page; ``compared`` holds
    the design against another state of it, for a section on what changed. ``drawing`` gives the figures where
    :func:`begin_drawing` has begun them.

    :raises SettingsError: where the extra that brings its libraries is not installed.
    """
    _need_the_extra()
    from speclint.reports.pack.document import document
    from speclint.reports.pack.kept_formulae import keep_new, take_kept
    from speclint.reports.pack.page import page_of

    taken = take_kept(assessment.kept)
    if processes is not None:
        on_progress("formulae")
        _typeset(assessment, processes)
    page = page_of(document(assessment, system, on_progress, revision, compared, drawing))
    keep_new(assessment.kept, taken)
    return page


def begin_drawing(assessment: Assessment, processes: Processes, system: System = "as written") -> Drawing:
    """Begin the figures of a review pack, beside other work where a processor is free for them.

    :raises SettingsError: where the extra that brings its libraries is not installed.
    """
    _need_the_extra()
    return processes.meanwhile(partial(_drawn, assessment, system))


def _drawn(assessment: Assessment, system: System) -> list[Figure]:
    from speclint.reports.pack.drawings import figures

    return list(figures(assessment, system))


def _typeset(assessment: Assessment, processes: Processes) -> None:
    from speclint.reports.pack import mathematics

    shown = (check for check in assessment.checks if check.outcome != "not applicable")
    known = mathematics.known()
    wanted = [
        one for one in mathematics.pieces(step for check in shown for step in check.steps) if one not in known
    ]
    shares = [wanted[start : start + _SHARE] for start in range(0, len(wanted), _SHARE)]
    for found in processes.spread(mathematics.typeset, shares):
        mathematics.learn(found)


def sheet_document(assessment: Assessment, checks: Sequence[Check], system: System = "as written") -> str:
    """The sheets of some checks as HTML.

    :raises SettingsError: where the extra that brings its libraries is not installed.
    """
    _need_the_extra()
    from speclint.reports.pack.document import document
    from speclint.reports.pack.page import sheets_page

    return sheets_page(document(replace(assessment, checks=tuple(checks)), system))


def dossier_html(assessment: Assessment) -> str:
    """The record for whoever certifies the engine as one page of HTML, to be printed and signed.

    :raises SettingsError: where the extra that brings its libraries is not installed.
    """
    _need_the_extra()
    from speclint.reports.dossier import HEADING, dossier_said
    from speclint.reports.pack.page import dossier_page

    return dossier_page(HEADING, dossier_said(assessment))


def inspection_document(assessment: Assessment, found: InspectionList, values: int = 1) -> str:
    """The inspection sheet of a part as HTML, with so many empty rows for each dimension.

    :raises SettingsError: where the extra that brings its libraries is not installed.
    """
    _need_the_extra()
    from speclint.reports.pack.inspection_page import inspection_page

    return inspection_page(assessment, found, values)
