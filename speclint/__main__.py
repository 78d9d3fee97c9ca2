"""``python -m speclint``, and the command ``speclint``."""

from __future__ import annotations

import gc
import sys

#: Objects made since the last collection before the next begins: common practice, a few megabytes.
_MANY = 50_000


def run() -> int:
    """Run one command in a process of its own; returns the exit code.

    What is loaded lives as long as the process, so the collector of cycles is kept from walking through it, while it
    loads and when the process ends: a tenth of a short check.
    """
    gc.set_threshold(_MANY, 20, 20)
    try:
        from speclint.commands import main, occupy

        occupy()
        gc.freeze()
        code = main()
        gc.freeze()
    except KeyboardInterrupt:  # before or after main could see it
        return 130
    return code


if __name__ == "__main__":
    sys.exit(run())
