"""Checks the frozen example on a local cluster of two workers, then again while one of them is ended.

Needs the extra speclint[cluster]; without it nothing is tried, which is said.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from importlib.util import find_spec
from pathlib import Path

from tests.benchmarks.replicated import EXAMPLE

_AFTER = 6.0  # seconds: the workers are at work then


def main() -> int:
    """0 where both checks on the cluster are the same to the byte as one on this machine alone, or none was tried."""
    if find_spec("distributed") is None:
        print("not tried: the extra speclint[cluster] is not installed")
        return 0
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        alone = _check(folder / "alone.json").wait() and (folder / "alone.json").read_bytes()
        return int(not (_tried(folder, alone, lose=False) and _tried(folder, alone, lose=True)))


def _tried(folder: Path, alone: object, *, lose: bool) -> bool:
    """Whether a check on a new cluster of two workers is the same, one of them lost meanwhile or not."""
    from distributed import LocalCluster

    with LocalCluster(
        n_workers=2, threads_per_worker=1, processes=True, dashboard_address=None, silence_logs=50
    ) as cluster:
        check = _check(folder / "cluster.json", "--on", cluster.scheduler_address)
        if lose:
            time.sleep(_AFTER)
            nanny = next(iter(cluster.workers.values()))
            cluster.loop.add_callback(nanny.kill)
        check.wait()
        same = (folder / "cluster.json").read_bytes() == alone
    print(f"two workers{', one of them lost' if lose else ''}: {'the same' if same else 'ANOTHER RESULT'}")
    return same


def _check(file: Path, *more: str) -> subprocess.Popen[bytes]:
    command = ["check", str(EXAMPLE), "--afresh", "--as", "json", "--to", str(file)]
    return subprocess.Popen([sys.executable, "-m", "speclint", *command, *more])


if __name__ == "__main__":
    sys.exit(main())
