"""A rule that never ends, and one that ends its process: named, exit 3, and everything else is checked."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from speclint import Rule
from speclint.checking import Assessment, Processes, assess, time_limit
from speclint.checking.shared_work import SharedWork
from speclint.errors import replace
from speclint.families import load_families
from speclint.testing import SETTINGS, DesignFolder
from tests.tubes import FILES, RULES, TUBE, entry_point, stress

SHORT = SETTINGS + "[families]\nseconds_per_rule = 1\n"
NEVER = "it did not end within 1 s of the processor, or 5 s by the clock (seconds_per_rule in speclint.toml)"
ENDED = "it ended the process that it ran in"


def rule_that(does: Callable[[], Any]) -> Rule:
    """A rule that does something on the one tube whose id is "bad"; on others it conforms."""

    def function(tube: Any, sheet: Any) -> Any:
        """Made for one test."""
        if tube.id == "bad":
            does()
        return sheet.states(True, "this is no bad tube")

    return replace(stress, name="tube.bad", function=function)


def for_ever() -> None:
    while True:
        pass


def for_ever_all_the_same() -> None:
    while True:
        try:
            for_ever()
        except BaseException:
            continue


def ends_its_process() -> None:
    os.kill(os.getpid(), signal.SIGTERM)
    time.sleep(60)


def holds(assessment: Assessment) -> dict[tuple[str, str], str]:
    return {check.order: check.could_not_run for check in assessment.checks if check.could_not_run}


def design(folder: Path, does: Callable[[], Any], monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    point = entry_point("tubes", rules=[*RULES, rule_that(does)])
    monkeypatch.setattr("speclint.families.loading.installed", lambda: [point])
    return DesignFolder(folder, load_families([point])).write({**FILES, "bad.toml": TUBE}, settings=SHORT)


def test_a_rule_that_never_ends_is_stopped_and_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    found = design(tmp_path, for_ever, monkeypatch).assess()
    assert holds(found) == {("bad", "tube.bad"): NEVER}
    assert found.exit_code == 3
    assert len([check for check in found.checks if check.outcome == "conforms"]) > len(RULES)


@pytest.mark.skipif(
    sys.platform != "linux", reason="only a copy of this process knows the family of this test"
)
@pytest.mark.filterwarnings("ignore:.*multi-threaded:DeprecationWarning")
@pytest.mark.parametrize(
    ("does", "said"), [(for_ever, NEVER), (for_ever_all_the_same, NEVER), (ends_its_process, ENDED)]
)
def test_a_helper_that_is_lost_leaves_the_name_of_the_rule(
    does: Callable[[], Any], said: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The helper is given the bad tube first; the rule never runs in this process, which it would end."""
    monkeypatch.setattr(time_limit, "GRACE", 0.25)
    shop = design(tmp_path, does, monkeypatch)
    take_last = SharedWork.take_last

    def after_the_helper(work: SharedWork) -> int | None:
        time.sleep(0.01)
        return take_last(work) if work.given or work.results else None

    monkeypatch.setattr(SharedWork, "take_last", after_the_helper)
    with Processes(helpers=1, enough=2, start="copy") as processes:
        found = assess([shop.root], shop.loaded, processes=processes)
    assert holds(found) == {("bad", "tube.bad"): said}
    assert len(found.checks) == 2 * (len(RULES) + 1)


def test_a_rule_that_cannot_be_stopped_ends_the_program_with_3() -> None:
    program = (
        "import time\n"
        "from speclint.checking.time_limit import TimeLimit\n"
        "with TimeLimit('tube.bad', 'bad', 0.1):\n"
        "    time.sleep(60)\n"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, check=False)
    assert done.returncode == 3
    assert done.stderr.decode() == (
        "speclint: rule tube.bad on bad did not end in its time, and cannot be stopped" + os.linesep
    )
