"""Options that several commands share."""

from __future__ import annotations

import argparse
import datetime as dt
from pathlib import Path
from typing import Any

#: The repository, where a command is about one as a whole.
FOLDER: dict[str, Any] = {
    "dest": "folder",
    "type": Path,
    "default": Path(),
    "metavar": "FOLDER",
    "help": "the repository",
}
UNITS = ("metric", "imperial")


def day(text: str) -> dt.date:
    """A date on the command line; argparse reports a wrong one in one line."""
    try:
        return dt.date.fromisoformat(text)
    except ValueError as problem:
        raise argparse.ArgumentTypeError(f"{text} is not a date; write it as 2027-05-31") from problem


def add_afresh(parser: argparse.ArgumentParser) -> None:
    """Whether results of earlier runs may be used."""
    parser.add_argument(
        "--afresh", action="store_true", help="make every check anew; results of earlier runs are not used"
    )


def add_schema(parser: argparse.ArgumentParser) -> None:
    """Whether the schema of the data is asked for."""
    parser.add_argument(
        "--schema",
        action="store_true",
        help="the JSON Schema of what --as json writes; nothing is checked",
    )
