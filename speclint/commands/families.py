"""the families loaded, with versions"""

from __future__ import annotations

import argparse

from speclint.commands.loading import loaded_families
from speclint.commands.output import show

EXAMPLE = "speclint families"


def add_options(_: argparse.ArgumentParser) -> None:
    """None but those of every command."""


def run(_: argparse.Namespace) -> int:
    """Print the families; returns the exit code."""
    from speclint.reports import listings

    loaded = loaded_families()
    show(lambda width: listings.families_page(loaded, width), None)
    return 0
