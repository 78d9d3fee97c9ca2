"""What all tests share."""

from __future__ import annotations

import gc
import itertools
import os
from collections.abc import Generator, Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings

from speclint.checking import usual_folder
from speclint.testing import DesignFolder
from tests.example import LENT, SHARED, STAY
from tests.shares import share_of

# Times differ between machines, so none is set; CI repeats the same examples, a desk meets new ones each time, and
# ``.ci/long properties`` tries ten times as many.
_FEW = 30
settings.register_profile("desk", deadline=None, max_examples=_FEW)
settings.register_profile("ci", deadline=None, max_examples=_FEW, derandomize=True)
settings.register_profile("many", deadline=None, max_examples=10 * _FEW)
# The tests hold much for long and make few rings of objects, so that rings are looked for seldom.
gc.set_threshold(50_000, 20, 20)
settings.load_profile("ci" if os.environ.get("CI") else "desk")


#: What looks at the whole example or at every rule, starts many processes or is slow: half of all time. README's
#: command leaves it out, unless it is named; ``--wide`` takes it alone.
WIDE = (
    "browser",
    "checking/test_consequences.py",
    "checking/test_corners.py",
    "checking/test_kept_results.py",
    "checking/test_kept_state.py",
    "checking/test_opposed_limits.py",
    "checking/test_processes.py",
    "checking/test_proof.py",
    "checking/test_time_limit.py",
    "checking/test_worked_once_in_example.py",
    "commands/test_begin.py",
    "commands/test_command_line.py",
    "commands/test_examples.py",
    "commands/test_new_family.py",
    "commands/test_pair.py",
    "commands/test_streams.py",
    "commands/test_ten_tasks.py",
    "contracts",
    "editing/test_server.py",
    "families/test_stranger.py",
    "fuzzing",
    "handbook/steam_cycle/test_cycles.py",
    "made/test_example_pairs.py",
    "made/test_finish.py",
    "made/test_in_steam.py",
    "made/test_judging.py",
    "made/test_trial.py",
    "mutation",
    "planted",
    "plugins/agreement/test_catalogue.py",
    "plugins/clearances/test_examples.py",
    "plugins/events/test_areas.py",
    "plugins/events/test_figures.py",
    "plugins/events/test_leads.py",
    "plugins/events/test_notches.py",
    "plugins/events/test_shares.py",
    "plugins/events/test_steam.py",
    "plugins/fabrication/test_examples.py",
    "plugins/fits/test_examples.py",
    "plugins/making/test_order.py",
    "plugins/pairings/test_expansion.py",
    "plugins/test_planted.py",
    "plugins/wholeness/test_example_places.py",
    "plugins/wholeness/test_places.py",
    "published/test_steam_cycle.py",
    "register/test_entering.py",
    "register/test_example.py",
    "register/test_gate.py",
    "register/test_lock.py",
    "register/test_loosening.py",
    "register/test_road.py",
    "register/test_staged.py",
    "register/test_withdrawals.py",
    "reports/test_held_drawings.py",
    "reports/test_pack.py",
    "reports/test_page_one.py",
    "reports/test_reference.py",
    "reports/test_sarif.py",
    "repository/test_lazy_reading.py",
    "rules/test_sheets_reworked.py",
    "specs/test_templates.py",
    "test_example_specs.py",
    "test_guide.py",
    "test_misnamed.py",
    "test_omission.py",
    "test_unit_slips.py",
)
_HERE = Path(__file__).parent
_NUMBERS = itertools.count()
_WIDE_PLACES = frozenset(_HERE / place for place in WIDE)


def pytest_addoption(parser: pytest.Parser) -> None:
    """The option that takes the wide tests, and them alone; and the one that takes a share of what is left."""
    parser.addoption(
        "--wide", action="store_true", help="only what looks at the whole example or at every rule"
    )
    parser.addoption("--part", default="1/1", help="which share of the tests, as 1/2: another each day")


def pytest_configure(config: pytest.Config) -> None:
    """Leave the seed of Python's own numbers alone between tests, as none draws by it: a twentieth less time."""
    if hasattr(config.option, "randomly_reset_seed"):
        config.option.randomly_reset_seed = False


def pytest_ignore_collect(collection_path: Path, config: pytest.Config) -> bool | None:
    """Leave out the wide tests, or all others; neither where some are named and ``--wide`` is not asked for."""
    wide: bool = config.getoption("wide")
    usual = {config.rootpath / place for place in config.getini("testpaths")}
    if not wide and {config.rootpath / place for place in config.args} != usual:
        return None
    is_wide = not _WIDE_PLACES.isdisjoint((collection_path, *collection_path.parents))
    return (is_wide if not wide else collection_path.is_file() and not is_wide) or None


@pytest.hookimpl(wrapper=True)
def pytest_collect_file(
    file_path: Path,
) -> Generator[None, list[pytest.Collector], list[pytest.Collector]]:
    """Look for examples in the docstrings of no module of tests: that takes a fifth of the time of collecting."""
    found = yield
    is_of_tests = file_path.name.startswith("test_")
    return [one for one in found if not is_of_tests or type(one) is pytest.Module]


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item], config: pytest.Config) -> None:
    """Leave those of other shares, whatever order the tests are in; what is not marked for this run is gone before."""
    names = share_of(sorted(item.nodeid for item in items), config.getoption("part"))
    own = frozenset(names)
    others = [item for item in items if item.nodeid not in own]
    if others:
        config.hook.pytest_deselected(items=others)
        items[:] = [item for item in items if item.nodeid in own]


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> object:
    """Give each process tests that stand together, and those of another once it has none: a tenth less time."""
    from xdist.scheduler import WorkStealingScheduling

    return WorkStealingScheduling(config, log)


@pytest.fixture(autouse=True, scope="session")
def _results_of_the_tests(
    tmp_path_factory: pytest.TempPathFactory, pytestconfig: pytest.Config
) -> Iterator[None]:
    """Results that commands keep go to a folder of the tests, which the processes of one run share.

    Those of the example stay in the cache of pytest, where it has one: the next run of the tests finds them.
    """
    own = tmp_path_factory.getbasetemp()
    folder = own.parent if "PYTEST_XDIST_WORKER" in os.environ else own
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv(LENT, str(usual_folder()))
        if pytestconfig.pluginmanager.has_plugin("cacheprovider"):
            patch.setenv(STAY, str(pytestconfig.rootpath / ".pytest_cache" / "d" / "results-of-the-example"))
        for variable, name in (("XDG_CACHE_HOME", "cache"), (SHARED, "share")):
            (folder / name).mkdir(mode=0o700, exist_ok=True)
            patch.setenv(variable, str(folder / name))
        yield


@pytest.fixture
def tmp_path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder of the test's own. That of pytest looks through those of all tests before it for a free name.

    It names the process too: one that forks, as to try changes of the code, hands its number on to each.
    """
    folder = tmp_path_factory.getbasetemp() / f"test-{os.getpid()}-{next(_NUMBERS)}"
    folder.mkdir(mode=0o700)
    return folder


@pytest.fixture
def workshop(tmp_path: Path) -> DesignFolder:
    """A design repository of the test's own."""
    return DesignFolder(tmp_path)
