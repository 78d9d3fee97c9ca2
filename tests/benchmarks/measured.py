"""Assesses one repository and prints seconds and peak memory in MB."""

from __future__ import annotations

import sys
import time
from pathlib import Path

from speclint.checking import assess
from speclint.families import load_families


def main() -> None:
    """Assess the folder named on the command line."""
    loaded = load_families()
    started = time.perf_counter()
    assessment = assess([Path(sys.argv[1])], loaded)
    seconds = time.perf_counter() - started
    if assessment.complaints:
        raise SystemExit(str(assessment.complaints[0]))
    print(f"{seconds:.3f} {_peak():.1f}")


def _peak() -> float:
    """Peak resident memory in MB; nan where the system does not tell."""
    try:
        import resource
    except ImportError:  # Windows has no such module
        return float("nan")
    used = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return used / 2**20 if sys.platform == "darwin" else used / 2**10  # bytes there, kibibytes elsewhere


if __name__ == "__main__":
    main()
