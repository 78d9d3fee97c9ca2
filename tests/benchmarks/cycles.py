"""How long the cycle of one end takes: over four cut-offs, four speeds and both ends, in processor time."""

from __future__ import annotations

import time
from statistics import median

from speclint.handbook.steam_cycle import cycle_of
from speclint.handbook.valve_events import End
from tests.handbook.steam_cycle.engine import cylinder_end, running

DWELLS, SPEEDS = (0.0, 7.5, 20.0, 40.0), (1.0, 2.0, 3.0, 5.0)


def milliseconds() -> list[float]:
    """Of each solution, the valves' events and areas worked anew; the first, which loads the steam tables, left out."""
    cycle_of(cylinder_end(), running())
    found = []
    for dwell in DWELLS:
        for speed in SPEEDS:
            for end in End:
                before = time.process_time()
                cycle_of(cylinder_end(end=end, dwell=dwell), running(speed))
                found.append((time.process_time() - before) * 1e3)
    return found


def quick_enough(asked: float, most: float) -> bool:
    """Whether the median is not beyond ``most`` [ms]; prints it beside what was asked."""
    found = milliseconds()
    middle = median(found)
    print(
        f"steam cycle of an end: {middle:.1f} ms in the middle of {len(found)}, {max(found):.1f} ms at most "
        f"(asked for: {asked:g} ms)"
    )
    return middle <= most
