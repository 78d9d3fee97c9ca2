"""The floor for a cold start: imports the same libraries, parses and validates the same file, and nothing else."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

import pluggy
import pydantic
import tomli


class Spring(pydantic.BaseModel):
    """The fields that the generated spring states, as plain text."""

    model_config = pydantic.ConfigDict(extra="forbid", frozen=True)

    kind: str
    id: str
    title: str
    drawing: str
    revision: str
    prepared_by: str
    checked_by: str
    material: str
    duty: str
    wire: str
    wire_grade: str
    mean_diameter: str
    working_coils: str
    total_coils: str
    process: str
    ends: str
    loading: str
    free_length: str
    open_length: str


def main() -> None:
    """Parse and validate the file named on the command line."""
    parser = argparse.ArgumentParser()
    parser.add_argument("path", type=Path)
    path = parser.parse_args().path
    pluggy.PluginManager("floor")
    print(Spring.model_validate(tomli.loads(path.read_text(encoding="utf-8"))).id, file=sys.stderr)


if __name__ == "__main__":
    main()
