"""One mutant checked: what must hold of the run, whatever the files say."""

from __future__ import annotations

import contextlib
import io
import time
import traceback
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

from speclint.checking import Assessment, assess
from speclint.commands import main
from speclint.commands.loading import loaded_families
from speclint.reports import terminal_page
from speclint.rules import Grade

#: Commands that a mutant is given to beside the check itself; the design's folder follows each.
COMMANDS = (("gate",), ("gate", "--as", "json"), ("register", "--in"), ("check",), ("check", "--as", "sarif"))
_LONGEST = 20.0  # seconds of the processor
_CODES = frozenset({0, 1, 2, 3})


def holds_of(assessment: Assessment) -> dict[tuple[str, str], frozenset[str]]:
    """The holds of an assessment, by component and rule, each with the files that it came from."""
    files = assessment.design.files if assessment.design else {}
    return {
        (check.component, check.rule.name): frozenset(
            files.get(name, name) for name in check.consulted.ids | {check.component}
        )
        for check in assessment.checks
        if check.grade is Grade.HOLD and check.stands_in_the_way is not None
    }


def assessed(folder: Path, checked: str) -> Assessment:
    """A design assessed in this process."""
    file = folder / checked
    return assess([file if file.is_file() else folder], loaded_families())


def faults(
    folder: Path,
    checked: str,
    command: tuple[str, ...],
    mutated: str,
    holds: Mapping[tuple[str, str], frozenset[str]],
) -> list[str]:
    """Everything that is wrong with how a mutant was received; an empty list is in order.

    ``mutated`` is the file that was changed, ``holds`` what ``holds_of`` gave before.
    """
    began = time.process_time()
    try:
        found = list(_faults(folder, checked, command, mutated, holds))
    except Exception:  # whatever escapes is what is looked for
        found = [traceback.format_exc()]
    spent = time.process_time() - began
    return found + ([f"it took {spent:.0f} s"] if spent > _LONGEST else [])


def _faults(
    folder: Path,
    checked: str,
    command: tuple[str, ...],
    mutated: str,
    holds: Mapping[tuple[str, str], frozenset[str]],
) -> Iterator[str]:
    with contextlib.suppress(_known_errors()):
        assessment = assessed(folder, checked)
        yield from (
            f"{one.rule.name} on {one.component}: {one.could_not_run}"
            for one in assessment.checks
            if one.could_not_run
        )
        if assessment.exit_code not in _CODES or (assessment.complaints and assessment.exit_code < 2):
            yield f"exit code {assessment.exit_code} with {len(assessment.complaints)} complaints"
        yield from _unclear(assessment)
        yield from _vanished(assessment, mutated, holds)
        for writer in assessment.loaded.writers.values():
            writer.write(assessment)
        terminal_page.write(assessment, 100)
    if command:
        yield from _command(folder, command)


@cache
def _known_errors() -> type[Exception]:
    from speclint.errors import SpeclintError

    return SpeclintError


def _unclear(assessment: Assessment) -> Iterator[str]:
    """Complaints that are no clear line."""
    for one in assessment.complaints:
        if len(str(one)) > 3000 or "\n" in str(one) or not one.message:
            yield f"no clear line: {str(one)[:200]}"


def _vanished(
    assessment: Assessment, mutated: str, holds: Mapping[tuple[str, str], frozenset[str]]
) -> Iterator[str]:
    """Holds of before that are gone though the file changed is none of those that they came from."""
    if assessment.complaints or assessment.design is None or mutated == "speclint.toml":
        return
    after = holds_of(assessment)
    for key, came_from in holds.items():
        if key not in after and mutated not in came_from:
            yield f"the hold of {key[1]} on {key[0]} vanished: {mutated} is none of {sorted(came_from)}"


def _command(folder: Path, command: tuple[str, ...]) -> Iterator[str]:
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        try:
            code = main([*command, str(folder)])
        except SystemExit as ended:
            yield f"{' '.join(command)} ended the program: {ended}"
            return
    if code not in _CODES:
        yield f"{' '.join(command)}: exit code {code}"
    if code == 3:
        yield f"{' '.join(command)}: exit code 3, {out.getvalue()[-300:]}{err.getvalue()[-300:]}"
    if "Traceback" in err.getvalue() + out.getvalue():
        yield f"{' '.join(command)}: {err.getvalue()}"
