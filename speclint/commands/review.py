"""the review pack: the document of a design review, one page of HTML to read and to print"""

from __future__ import annotations

import argparse
from datetime import date
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.loading import kept_folder, loaded_families
from speclint.commands.options import UNITS, add_afresh
from speclint.commands.output import write
from speclint.commands.progress import progress

if TYPE_CHECKING:
    from speclint.checking import Assessment
    from speclint.register import Checking, Comparison

EXAMPLE = "speclint review example_specs/liners --to review"


def add_options(parser: argparse.ArgumentParser) -> None:
    """What is reviewed, and where the pack goes."""
    parser.add_argument(
        "paths", nargs="*", type=Path, default=[Path()], metavar="PATH", help="specs or folders"
    )
    parser.add_argument("--to", type=Path, required=True, metavar="FOLDER", help="where review.html goes")
    parser.add_argument(
        "--against",
        default="",
        metavar="OLD",
        help="with a section on what changed since this git revision, folder, or report of check --as json",
    )
    add_afresh(parser)
    parser.add_argument(
        "--units", default="as written", choices=UNITS, help="those of the settings where not given"
    )


def run(options: argparse.Namespace) -> int:
    """Make the pack; returns the exit code of the check behind it.

    :raises SettingsError: for several paths with ``--against``, as it is not said of which the other state is.
    """
    from speclint.checking import Processes, assess, find_remedies
    from speclint.errors import OutputError, SettingsError
    from speclint.register import Checking
    from speclint.reports import REVIEW_FILE, begin_drawing, files_read, review_page, visible
    from speclint.repository import work_tree

    if options.against and len(options.paths) > 1:
        raise SettingsError("--against holds one design against another: name one folder")
    loaded = loaded_families()
    kept = kept_folder(options.afresh)
    with progress("checking") as shown, Processes(on_part=shown.part) as processes:
        assessment = assess(options.paths, loaded, processes=processes, kept=kept)
        drawing = begin_drawing(assessment, processes, options.units)
        if options.against:
            shown(f"checking {options.against}")
        how = Checking(loaded, date.today(), partial(Processes, on_part=shown.part), None, kept)
        compared = _compared(options, assessment, how) if options.against else None
        shown("looking for remedies")
        find_remedies(assessment, processes)
        revision = work_tree(assessment.root, files_read(assessment))
        page = review_page(assessment, options.units, shown, processes, revision, compared, drawing)
    try:
        options.to.mkdir(parents=True, exist_ok=True)
    except OSError as problem:
        raise OutputError(f"{options.to}: cannot be made: {problem.strerror or problem}") from problem
    write(page, options.to / REVIEW_FILE)
    write(f"{visible(str(options.to / REVIEW_FILE))}\n")
    return assessment.exit_code


def _compared(options: argparse.Namespace, assessment: Assessment, how: Checking) -> Comparison:
    """The design held against the state that ``--against`` names."""
    from speclint.register import compare, state_called, state_of
    from speclint.repository import scratch_folder

    (folder,) = options.paths
    with scratch_folder() as scratch:
        old = state_called(options.against, folder, scratch, how)
        new = state_of(f"the folder {folder}", assessment, assessment.root, how.today)
        return compare(old, new)
