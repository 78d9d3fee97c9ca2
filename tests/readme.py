"""Writes README.md's spec and output anew from the real ones: ``python -m tests.readme``."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
README = ROOT / "README.md"
SHOWN = "example_specs/seats/seat-exhaust.toml"


def rewritten(text: str) -> str:
    """The page with the spec as the file has it and the output as the command gives it."""
    spec = (ROOT / SHOWN).read_text(encoding="utf-8")
    text = re.sub(r"```toml\n.*?```", lambda _: f"```toml\n{spec}```", text, count=1, flags=re.DOTALL)
    return re.sub(r"```text\n.*?```", lambda _: f"```text\n{output()}```", text, count=1, flags=re.DOTALL)


def output() -> str:
    """What the command shown prints into a pipe."""
    command = [sys.executable, "-m", "speclint", "check", SHOWN]
    done = subprocess.run(command, capture_output=True, cwd=ROOT, check=False)
    return done.stdout.decode("utf-8").replace("\r\n", "\n")


if __name__ == "__main__":
    README.write_text(rewritten(README.read_text(encoding="utf-8")), encoding="utf-8", newline="\n")
