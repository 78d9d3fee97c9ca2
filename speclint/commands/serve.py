"""findings, completions and meanings in an editor while a spec is written, by the Language Server Protocol"""

from __future__ import annotations

import argparse
import gc
from pathlib import Path

from speclint.commands.loading import families_for
from speclint.errors import SettingsError

EXAMPLE = "speclint serve --ready"


def add_options(parser: argparse.ArgumentParser) -> None:
    """An editor starts it and speaks to it over standard input and output."""
    parser.add_argument(
        "--ready", action="store_true", help="say whether all that it needs is installed, and end"
    )


def run(options: argparse.Namespace) -> int:
    """Answer an editor until it ends; returns the exit code."""
    loaded = families_for([Path()])
    try:
        import lsprotocol  # noqa: F401
        import pygls  # noqa: F401
    except ImportError as problem:
        raise SettingsError(f"{problem.name} is not installed: pip install speclint[editor]") from problem
    if options.ready:
        from speclint.commands.output import write

        write(f"ready: an editor starts speclint serve; {len(loaded.kinds)} kinds are known\n")
        return 0
    from speclint.editing import serve

    gc.enable()  # it goes on for hours
    serve(loaded)
    return 0
