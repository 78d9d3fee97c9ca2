"""``python -m speclint``, and the command ``speclint``."""

from __future__ import annotations

import gc
import sys


def run() -> int:
    """Run one command in a process of its own; returns the exit code.

    Nearly all that is made lives as long as the process, so the collector of cycles is switched off: it would take a
    fifth of the time of a check whose results are kept, to find next to nothing. A command that goes on for hours
    switches it on.
    """
    gc.disable()
    try:
        from speclint.commands import main, occupy

        occupy()
        code = main()
        gc.freeze()
    except KeyboardInterrupt:  # before or after main could see it
        return 130
    return code


if __name__ == "__main__":
    sys.exit(run())
