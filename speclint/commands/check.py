"""check specs and print the findings"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Sequence
from contextlib import AbstractContextManager
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.loading import families_for, kept_folder, loaded_families
from speclint.commands.options import add_afresh
from speclint.commands.output import kept_of, show, show_again, write
from speclint.commands.progress import Progress, progress

if TYPE_CHECKING:
    from speclint.checking import Assessment, Check, KeptFolder, KeptRun, Processes
    from speclint.families import Loaded, ReportWriter
    from speclint.reports import Page
    from speclint.rules import Rule

EXAMPLE = "speclint check example_specs/liners"

#: The options by which a run rests on more than the files of one repository, or writes elsewhere.
_ON_MORE = ("to", "family", "rule", "staged", "against", "on")
#: What is no option that says what is written: the paths, which count by where they lead, and the function to be run.
_NO_WORDS = frozenset({"paths", "command", *_ON_MORE})


def add_options(parser: argparse.ArgumentParser) -> None:
    """What is checked, by which rules, and how the findings are written."""
    parser.add_argument(
        "paths", nargs="*", type=Path, default=[Path()], metavar="PATH", help="specs or folders"
    )
    parser.add_argument("--as", dest="form", default="", metavar="FORM", help="a report writer, such as json")
    parser.add_argument("--to", type=Path, metavar="FILE", help="write the report to a file")
    parser.add_argument(
        "--family", action="append", default=[], metavar="NAME", help="only this family's rules"
    )
    parser.add_argument("--rule", action="append", default=[], metavar="RULE", help="only this rule")
    parser.add_argument(
        "--staged", action="store_true", help="what is staged in git, and only what it can have changed"
    )
    parser.add_argument(
        "--against", metavar="REV", default="", help="say what changed since this git revision"
    )
    parser.add_argument(
        "--full", action="store_true", help="every finding in detail, as for one spec or one rule"
    )
    parser.add_argument(
        "--on", metavar="ADDRESS", default="", help="work on a cluster: the address of its scheduler"
    )
    parser.add_argument(
        "--made", action="store_true", help="judge the parts as made, by what was measured on them"
    )
    parser.add_argument(
        "--set",
        action="append",
        default=[],
        metavar="COMPONENT.KEY=VALUE",
        help="what if this value were another: every margin that moves; no file is touched",
    )
    parser.add_argument(
        "--solve",
        default="",
        metavar="RULE",
        help="the value at which this rule just holds, of the one that --set gives as ?",
    )
    add_afresh(parser)
    parser.add_argument(
        "--schema", action="store_true", help="the JSON Schema of what --as json writes; nothing is checked"
    )


def run(options: argparse.Namespace) -> int:
    """Check, and print the findings; returns the exit code. What still holds is printed again."""
    if options.schema:
        write(_schema(options), options.to)
        return 0
    if options.set or options.solve or options.made:
        return _as_otherwise(options)
    kept = kept_folder(options.afresh)
    whole = _kept_whole(options, kept)
    before = whole.written() if whole is not None else None
    if before is None:
        return _checked(options, kept, whole)
    exit_code, shown = before
    (write if options.form else show_again)(shown)
    return exit_code


def _as_otherwise(options: argparse.Namespace) -> int:
    """Check with other values than those that the specs state: those asked about, or those measured."""
    loaded, some = _rules(options)
    if options.made and not (options.set or options.solve):
        from speclint.commands.as_made import check_as_made

        return check_as_made(options, loaded, some)
    from speclint.commands.what_if import check_what_if

    return check_what_if(options, loaded, some)


def _rules(options: argparse.Namespace) -> tuple[Loaded, tuple[Rule, ...] | None]:
    """What is loaded, and the rules that are asked for, where not all are."""
    from speclint.checking import rules_asked_for

    loaded = families_for(options.paths) if options.family or options.rule else loaded_families()
    return loaded, rules_asked_for(loaded, options.family, options.rule)


def _kept_whole(options: argparse.Namespace, kept: KeptFolder | None) -> KeptRun | None:
    """Where the output of this run is kept; None for one that rests on more than the files of one repository."""
    if kept is None or any(getattr(options, name) for name in _ON_MORE):
        return None
    from speclint.checking import KeptRun

    return KeptRun.of(kept, options.paths, partial(_words, options))


def _words(options: argparse.Namespace) -> list[object]:
    """What says, beside the paths, what is written: every option, and the place that it is written to."""
    from speclint.reports import takes_styles, width_of

    stated = sorted((name, str(value)) for name, value in vars(options).items() if name not in _NO_WORDS)
    return ["check", *stated, width_of(sys.stdout), takes_styles(sys.stdout)]


def _checked(options: argparse.Namespace, kept: KeptFolder | None, whole: KeptRun | None) -> int:
    from speclint.checking import assess, findings_once

    loaded, some = _rules(options)
    writer = _writer(options.form, loaded, options.paths)
    if options.staged:
        return _check_staged(options, loaded, some, writer, kept)
    with progress("checking") as shown, _workers(options.on, shown) as processes:
        assessment = assess(options.paths, loaded, some, processes=processes, kept=kept)
        if options.against:
            shown(f"checking what there was at {options.against}")
            assessment = _with_changes(options, assessment, loaded, some, partial(_workers, "", shown))
        full = _in_full(options, assessment)
        if full and (writer is None or writer.remedies):
            found = findings_once(assessment.checks)
            against = assessment
            if some is not None and found:
                shown("checking what else rests on the same values")
                against = assess(options.paths, loaded, processes=processes, kept=kept)
            shown("looking for remedies")
            _seek(found, assessment, against, processes)
    written = _written(options, assessment, writer, full=full)
    if whole is not None and (writer is None or _is_own(writer)):
        _keep(whole, written, assessment)
    return assessment.exit_code


def _written(
    options: argparse.Namespace, assessment: Assessment, writer: ReportWriter | None, *, full: bool
) -> str | Page:
    """Write the findings; returns what was written."""
    if writer is not None:
        text = writer.write(assessment)
        write(text, options.to)
        return text
    from speclint.reports import terminal_page

    return show(lambda width: terminal_page.write(assessment, width, full=full), options.to)


def _is_own(writer: ReportWriter) -> bool:
    """Whether a report is one of speclint: that of a family may say what it likes, such as the hour."""
    return writer.write.__module__.partition(".")[0] == "speclint"


def _keep(whole: KeptRun, written: str | Page, assessment: Assessment) -> None:
    """Keep what was written; not where something could not be read or run, which may be otherwise another time.

    Nor where an entry of the register is signed: whether a signature counts rests on the file of signers, on the hour
    until which a key is valid, and on the ssh-keygen that is found.
    """
    design, settings, register = assessment.design, assessment.settings, assessment.register
    if assessment.exit_code > 1 or assessment.kept is None or design is None or settings is None:
        return
    if any(one.signature for one in register.concessions) or any(one.signature for one in register.readings):
        return
    from speclint.checking import RestedOn, packages_of

    named = settings.register_file, *settings.materials
    rested_on = RestedOn(design.drawing_files.read, named, packages_of(assessment.loaded))
    text = written if isinstance(written, str) else kept_of(written)
    whole.keep(assessment.exit_code, text, rested_on)


def _schema(options: argparse.Namespace) -> str:
    """The schema of what the options would write."""
    from speclint.reports import made_schema, schema, what_if_schema

    if options.set or options.solve:
        return what_if_schema()
    return made_schema() if options.made else schema()


def _writer(form: str, loaded: Loaded, paths: Sequence[Path]) -> ReportWriter | None:
    """The report writer of a name, of a family that the settings do not leave out; None for the terminal.

    :raises SettingsError: where there is none of that name.
    """
    if not form:
        return None
    from speclint.errors import SettingsError, one_of
    from speclint.repository import families_left_out

    writers = loaded.without(families_left_out(paths)).writers
    if form not in writers:
        raise SettingsError(f"no report is called {form}; write {one_of(form, writers)}")
    return writers[form]


def _seek(found: Sequence[Check], assessment: Assessment, against: Assessment, processes: Processes) -> None:
    """Find the remedies of some findings; where only some rules were run, held against all, so that all are named."""
    from speclint.checking import find_remedies

    orders = {one.order for one in found}
    sought = [one for one in against.checks if one.order in orders]
    find_remedies(against, processes, sought)
    assessment.keep({one.order: against.search(one) for one in sought})


def _with_changes(
    options: argparse.Namespace,
    now: Assessment,
    loaded: Loaded,
    rules: Sequence[Rule] | None,
    workers: Callable[[], AbstractContextManager[Processes]],
) -> Assessment:
    """The assessment with what changed since a revision of git, by the same rules."""
    from speclint.errors import replace
    from speclint.register import before_at
    from speclint.repository import scratch_folder

    with scratch_folder() as folder:
        before = before_at(options.paths, options.against, loaded, folder, workers, rules)
        return replace(now, changes=before.changes(now))


def _in_full(options: argparse.Namespace, assessment: Assessment) -> bool:
    """Whether the details are shown: where they are asked for, or where one spec or one rule is asked about."""
    selected = assessment.design.selected if assessment.design else ()
    return bool(options.full or options.rule or len(selected) == 1)


def _workers(address: str, shown: Progress) -> AbstractContextManager[Processes]:
    """Helper processes of this machine, or the workers of a cluster at an address."""
    if address:
        from speclint.checking import cluster

        return cluster(address, shown.part)
    from speclint.checking import Processes

    return Processes(on_part=shown.part)


def _check_staged(
    options: argparse.Namespace,
    loaded: Loaded,
    rules: Sequence[Rule] | None,
    writer: ReportWriter | None,
    kept: KeptFolder | None,
) -> int:
    from datetime import date

    from speclint.checking import Processes, find_remedies, findings_once
    from speclint.errors import SettingsError
    from speclint.register import assess_staged

    if options.on:
        raise SettingsError("what is staged is checked on this machine: leave out --on")
    if options.against:
        raise SettingsError("what is staged is a change of the last commit: leave out --against")
    with progress("checking") as shown:
        workers = partial(Processes, on_part=shown.part)
        found = assess_staged(options.paths, loaded, date.today(), rules, kept, workers)
        full = _in_full(options, found.assessment)
        if full and (writer is None or writer.remedies):
            shown("looking for remedies")
            with workers() as processes:
                find_remedies(found.assessment, processes, findings_once(found.assessment.checks))
    if writer is not None:
        write(writer.write(found.assessment), options.to)
    else:
        from speclint.reports import staged_page

        show(lambda width: staged_page(found, width, full=full), options.to)
    return found.assessment.exit_code
