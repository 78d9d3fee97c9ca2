"""The floor for a repository: imports the same libraries, parses every file of specs, and validates what all state."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

import pluggy
import pydantic
import tomli


class Spec(pydantic.BaseModel):
    """What every spec states, as plain text."""

    model_config = pydantic.ConfigDict(extra="allow", frozen=True)

    kind: str
    id: str = ""
    title: str = ""
    drawing: str = ""
    revision: str = ""


def main() -> None:
    """Parse and validate the specs of the folder, or the one spec, that is named on the command line."""
    parser = argparse.ArgumentParser()
    parser.add_argument("path", type=Path)
    path = parser.parse_args().path
    pluggy.PluginManager("floor")
    files = [path] if path.is_file() else [*path.rglob("*.toml")]
    specs = [
        Spec.model_validate(tomli.loads(file.read_text(encoding="utf-8")))
        for file in files
        if file.name not in ("speclint.toml", "register.toml")
    ]
    print(len(specs), file=sys.stderr)


if __name__ == "__main__":
    main()
