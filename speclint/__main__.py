"""``python -m speclint``, and the command ``speclint``."""

from __future__ import annotations

import gc
import sys

from speclint.commands import main


def run() -> int:
    """Run one command in a process of its own; returns the exit code.

    What is loaded lives as long as the process, so the collector of cycles is kept from walking through it, now
    and when the process ends: a tenth of a short check.
    """
    gc.freeze()
    code = main()
    gc.freeze()
    return code


if __name__ == "__main__":
    sys.exit(run())
