"""What all tests share."""

from __future__ import annotations

import gc
import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

from speclint.checking import usual_folder
from speclint.testing import DesignFolder
from tests.example import LENT, SHARED

# Times differ between machines, so none is set; CI repeats the same examples, a desk meets new ones each time.
settings.register_profile("desk", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True)
# The tests hold much for long and make few rings of objects, so that rings are looked for seldom.
gc.set_threshold(50_000, 20, 20)
settings.load_profile("ci" if os.environ.get("CI") else "desk")


@pytest.fixture(autouse=True, scope="session")
def _results_of_the_tests(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Results that commands keep go to a folder of the tests, which the processes of one run share."""
    own = tmp_path_factory.getbasetemp()
    folder = own.parent if "PYTEST_XDIST_WORKER" in os.environ else own
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv(LENT, str(usual_folder()))
        for variable, name in (("XDG_CACHE_HOME", "cache"), (SHARED, "share")):
            (folder / name).mkdir(mode=0o700, exist_ok=True)
            patch.setenv(variable, str(folder / name))
        yield


@pytest.fixture
def workshop(tmp_path: Path) -> DesignFolder:
    """A design repository of the test's own."""
    return DesignFolder(tmp_path)
