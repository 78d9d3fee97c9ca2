"""``speclint check --set`` and ``--solve``: what if a value were another, and the value at which a rule just holds."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.loading import design_at, kept_folder
from speclint.commands.output import show, write_data
from speclint.commands.progress import progress
from speclint.errors import SettingsError, replace

if TYPE_CHECKING:
    from speclint.checking import Assessment, Question, Solved
    from speclint.families import Loaded
    from speclint.rules import Rule

_UNKNOWN = "?"


def check_what_if(options: argparse.Namespace, loaded: Loaded, rules: Sequence[Rule] | None) -> int:
    """Check the design as it is and with the values, and print what moves; returns the exit code with them.

    :raises SettingsError: for options that do not go together, and values that cannot be asked about.
    """
    from speclint.checking import Processes, assess, checked_with, question, solved, what_if
    from speclint.reports import what_if_data, what_if_page
    from speclint.repository import InFolder, find_root

    _refuse_beside(options)
    root = find_root(options.paths)
    within = [_within(path, root) for path in options.paths]
    kept = kept_folder(options.afresh)
    design = design_at(options.paths, loaded, kept)
    asked = [question(said, design) for said in options.set]
    unknown = _unknown(options.solve, asked)
    with progress("checking as it is") as shown, Processes(on_part=shown.part) as processes:

        def checked(folder: Path) -> Assessment:
            paths = [folder / path for path in within]
            return assess(paths, loaded, rules, processes=processes, kept=kept, drawing_files=InFolder(root))

        before = checked(root)
        found: Solved | None = None
        if unknown is not None:
            asked.remove(unknown)
            shown("looking for the value that just holds")
            found = solved(checked_with(before, asked, checked) if asked else before, unknown, options.solve)
            if (answer := found.answer) is not None:
                asked.append(replace(unknown, written=answer.written))
        shown("checking with the values")
        result = what_if(before, asked, checked)
    if options.form:
        write_data(what_if_data(result, found), options.to)
    else:
        show(lambda width: what_if_page(result, width, found), options.to)
    return result.after.exit_code


def _within(path: Path, root: Path) -> Path:
    """A path as it is in the repository, or all of that."""
    place = path.resolve()
    return place.relative_to(root) if place.is_relative_to(root) else Path()


def _unknown(rule: str, asked: Sequence[Question]) -> Question | None:
    """The value that is to be found, where a rule is named that is to hold just so; None where none is."""
    unknown = [one for one in asked if one.written == _UNKNOWN]
    if not rule and unknown:
        raise SettingsError("--set with ? asks for the value at which a rule just holds: add --solve RULE")
    if rule and len(unknown) != 1:
        raise SettingsError(
            f"--solve {rule}: say which one value is to be found, as --set liner-left.outside_diameter=?"
        )
    return unknown[0] if rule else None


def _refuse_beside(options: argparse.Namespace) -> None:
    """Refuse options that say something else is to be checked, or how it is written.

    :raises SettingsError: for one of them.
    """
    name = "--set" if options.set else "--solve"
    for other in ("staged", "against", "made", "on"):
        if getattr(options, other):
            raise SettingsError(f"{name} asks about the design as it stands here: leave out --{other}")
    if options.form not in ("", "json"):
        raise SettingsError(f"{name} is printed, or written with --as json; there is no {options.form} of it")
