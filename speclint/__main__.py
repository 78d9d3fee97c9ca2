"""``python -m speclint``."""

from __future__ import annotations

import sys

from speclint.cli import main

if __name__ == "__main__":
    sys.exit(main())
