"""Writes README.md's spec and outputs anew from the real ones: ``python -m tests.readme``."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

from speclint.reports import terminal_page
from tests.example import assessed

ROOT = Path(__file__).parents[1]
README = ROOT / "README.md"
SHOWN = "example_specs/steamways/partition-drain-left.toml"
WIDTH = 100


def rewritten(text: str) -> str:
    """The page with the spec as the file has it and the outputs as the commands give them."""
    spec = (ROOT / SHOWN).read_text(encoding="utf-8")
    text = re.sub(r"```toml\n.*?```", lambda _: f"```toml\n{spec}```", text, count=1, flags=re.DOTALL)
    outputs = iter((output(), page_one()))
    return re.sub(
        r"```text\n.*?```", lambda _: f"```text\n{next(outputs)}```", text, count=2, flags=re.DOTALL
    )


def output() -> str:
    """What the command shown prints into a pipe."""
    command = [sys.executable, "-m", "speclint", "check", SHOWN, "--afresh"]  # as a first run prints it
    wide = {**os.environ, "COLUMNS": str(WIDTH)}
    done = subprocess.run(command, capture_output=True, cwd=ROOT, env=wide, check=False)
    return done.stdout.decode("utf-8").replace("\r\n", "\n")


def page_one() -> str:
    """What the same command prints of the whole example."""
    return terminal_page.write(assessed(), WIDTH, full=False).text()


if __name__ == "__main__":
    README.write_text(rewritten(README.read_text(encoding="utf-8")), encoding="utf-8", newline="\n")
