"""the review pack: the document of a design review, one page of HTML to read and to print"""

from __future__ import annotations

import argparse
from pathlib import Path

from speclint.commands.loading import kept_folder, loaded_families
from speclint.commands.options import UNITS, add_afresh
from speclint.commands.output import write
from speclint.commands.progress import progress

EXAMPLE = "speclint review example_specs/liners --to review"


def add_options(parser: argparse.ArgumentParser) -> None:
    """What is reviewed, and where the pack goes."""
    parser.add_argument(
        "paths", nargs="*", type=Path, default=[Path()], metavar="PATH", help="specs or folders"
    )
    parser.add_argument("--to", type=Path, required=True, metavar="FOLDER", help="where review.html goes")
    add_afresh(parser)
    parser.add_argument(
        "--units", default="as written", choices=UNITS, help="as the spec wrote them where not given"
    )


def run(options: argparse.Namespace) -> int:
    """Make the pack; returns the exit code of the check behind it."""
    from speclint.checking import Processes, assess, find_remedies
    from speclint.errors import OutputError
    from speclint.reports import REVIEW_FILE, files_read, review_page, visible
    from speclint.repository import work_tree

    with progress("checking") as shown, Processes(on_part=shown.part) as processes:
        kept = None if options.afresh else kept_folder()
        assessment = assess(options.paths, loaded_families(), processes=processes, kept=kept)
        shown("looking for remedies")
        find_remedies(assessment, processes)
        revision = work_tree(assessment.root, files_read(assessment))
        page = review_page(assessment, options.units, shown, processes, revision)
    try:
        options.to.mkdir(parents=True, exist_ok=True)
    except OSError as problem:
        raise OutputError(f"{options.to}: cannot be made: {problem.strerror or problem}") from problem
    write(page, options.to / REVIEW_FILE)
    write(f"{visible(str(options.to / REVIEW_FILE))}\n")
    return assessment.exit_code
