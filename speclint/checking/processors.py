"""How many processors this process may use, which may be fewer than there are."""

from __future__ import annotations

import math
import os
from pathlib import Path

#: Where Linux says how much processor time the processes of a container may use: in the present form, and the former.
_NOW = Path("/sys/fs/cgroup/cpu.max")
_BEFORE = (Path("/sys/fs/cgroup/cpu/cpu.cfs_quota_us"), Path("/sys/fs/cgroup/cpu/cpu.cfs_period_us"))


def usable_processors() -> int:
    """Those that the system lets the process run on, no more than the time that a container grants; at least one."""
    return max(1, min(_allowed(), _granted()))


def _allowed() -> int:
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def _granted() -> int:
    """Whole processors' worth of time that a container may use, rounded up; many where it has no limit."""
    try:
        quota, period = _NOW.read_text(encoding="ascii").split()
    except (OSError, ValueError):
        try:
            quota, period = (place.read_text(encoding="ascii").strip() for place in _BEFORE)
        except (OSError, ValueError):
            return _allowed()
    try:
        share = int(quota) / int(period)
    except (ValueError, ZeroDivisionError):  # "max": no limit
        return _allowed()
    return math.ceil(share) if share > 0 else _allowed()
