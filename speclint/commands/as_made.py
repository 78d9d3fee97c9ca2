"""Checking parts as made: what ``speclint check --made`` does."""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.loading import kept_folder
from speclint.commands.output import show, write, write_data
from speclint.commands.progress import progress
from speclint.errors import SettingsError

if TYPE_CHECKING:
    from speclint.checking import Assessment
    from speclint.families import Loaded
    from speclint.rules import Rule

_FORMS = ("json", "markdown")


def check_as_made(options: argparse.Namespace, loaded: Loaded, rules: Sequence[Rule] | None) -> int:
    """Judge the parts as made that lie at some paths, or were made to specs that do; returns the exit code.

    :raises SettingsError: for an option that does not go with ``--made``.
    """
    from speclint.checking import Processes, assess
    from speclint.made import judge
    from speclint.reports import made_data, made_exit_code, made_markdown, made_page
    from speclint.repository import find_root

    _refuse_what_does_not_go(options)
    root = find_root(options.paths)
    kept = kept_folder(options.afresh)
    with progress("checking the drawings") as shown, Processes(on_part=shown.part) as processes:
        drawn = assess([root], loaded, rules, processes=processes, kept=kept)
        if drawn.design is None:
            raise SettingsError("; ".join(str(one) for one in drawn.complaints))
        judged = judge(drawn, set(_names(drawn, root, options.paths)), lambda name: shown(f"judging {name}"))
    if options.form == "json":
        write_data(made_data(drawn, judged), options.to)
    elif options.form == "markdown":
        write(made_markdown(drawn, judged), options.to)
    else:
        show(lambda width: made_page(drawn, judged, width), options.to)
    return made_exit_code(drawn, judged)


def _refuse_what_does_not_go(options: argparse.Namespace) -> None:
    for name, given in (("--staged", options.staged), ("--against", options.against), ("--on", options.on)):
        if given:
            raise SettingsError(f"parts as made are judged on the design as it lies here: leave out {name}")
    if options.form and options.form not in _FORMS:
        raise SettingsError(f"parts as made are written as {' or '.join(_FORMS)}, not as {options.form}")


def _names(drawn: Assessment, root: Path, paths: Sequence[Path]) -> Iterator[str]:
    """The parts as made whose record, or whose spec, lies at one of some paths."""
    from speclint.made import made_parts, made_to

    assert drawn.design is not None  # as the caller has seen
    files, places = drawn.design.files, [path.resolve() for path in paths]
    for made in made_parts(drawn.design):
        spec = made_to(made, drawn.design)
        own = [files[one] for one in (made.id, spec.id if spec is not None else made.id)]
        if any((root / file).resolve().is_relative_to(place) for file in own for place in places):
            yield made.id
