"""Text outputs kept word for word in ``golden/``: written anew by ``python -m tests.reports.golden``, then read."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from pathlib import Path

from speclint.checking import Assessment
from speclint.reports import (
    csv_report as table,
    json_report as jsoned,
    markdown_report as markdown,
    sarif_report as sarif,
    sheet_markdown,
    sheet_page as working,
    terminal_page as terminal,
)
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES

FOLDER = Path(__file__).parent / "golden"

WRITERS: dict[str, Callable[[Assessment], str]] = {
    "check.txt": lambda found: terminal.write(found, 100).text(),
    "check-narrow.txt": lambda found: terminal.write(found, 60).text(),
    "check.md": markdown.write,
    "check.csv": table.write,
    "check.json": jsoned.write,
    "check.sarif": sarif.write,
    "sheet.txt": lambda found: working.write(found, found.checks, 100).text(),
    "sheet-imperial.txt": lambda found: working.write(found, found.checks, 100, "imperial").text(),
    "sheet.md": lambda found: sheet_markdown.write(found, found.checks),
}


def assessed(folder: Path) -> Assessment:
    """A tube with a hold, an observation and a query, one that states nothing, and a file that cannot be read."""
    shop = DesignFolder(folder, tubes.tubes()).write(FILES)
    shop.replace("tube.toml", "30 bar", "45 bar").replace("tube.toml", "hoops = 4", "hoops = 3")
    shop.replace("tube.toml", '"open"', '"closed"')
    return shop.write(
        {"bare.toml": 'kind = "tube"\n', "bad.toml": 'kind = "tube"\nbore = "5,5 mm"\n'}
    ).assess()


def outputs() -> dict[str, str]:
    """Every output by the name of its file."""
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder) / "design"
        root.mkdir()
        found = assessed(root)
        return {name: write(found) for name, write in WRITERS.items()}


if __name__ == "__main__":
    FOLDER.mkdir(exist_ok=True)
    for name, text in outputs().items():
        (FOLDER / name).write_text(text, encoding="utf-8", newline="")
