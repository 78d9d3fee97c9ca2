"""The invented design repository, assessed once for all tests: a run of it takes many seconds."""

from __future__ import annotations

import gc
import os
import shutil
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

import pytest

from speclint.checking import Assessment, Check, KeptFolder, Processes, assess, loop, usual_folder
from speclint.errors import replace
from speclint.testing import installed_families

EXAMPLE = Path(__file__).parents[1] / "example_specs"
#: The variables of the environment that name the folder in which the processes of one run of the tests share results,
#: the folder of the user's own results, and that in which the results of the example stay for later runs, if any.
SHARED, LENT, STAY = "SPECLINT_TESTS_SHARE", "SPECLINT_TESTS_LENT", "SPECLINT_TESTS_STAY"


@cache
def assessed() -> Assessment:
    """The whole of example_specs by every installed family; not to be changed.

    The first process of a run of the tests makes the checks, the others wait and take them over; so do commands that
    a test runs on the example or a copy of it, as they keep their results in the same folder.
    """
    found = _assessed()
    gc.collect()
    gc.freeze()  # what stays to the end is looked through no more, which takes a fifth of the time of later tests
    return found


def _assessed() -> Assessment:
    shared = os.environ.get(SHARED)
    if shared is None:
        return assess([EXAMPLE], installed_families())
    folder, stay = Path(shared), Path(os.environ.get(STAY) or usual_folder())
    with _one_at_a_time(folder / "example.lock"), Processes() as processes:
        _lend(Path(os.environ[LENT]), stay)
        found = _by_kept(KeptFolder(stay), processes)
        _lend(stay, usual_folder())
        return found


def _lend(lent: Path, own: Path) -> None:
    """Let results that one folder keeps be found in another: each holds for the same code, specs and packages alone.

    No file is copied where the system can give it a second name: who writes one anew replaces the name.
    """
    if not lent.is_dir():
        return
    own.mkdir(parents=True, exist_ok=True, mode=0o700)
    for file in lent.iterdir():
        try:
            os.link(file, own / file.name)
        except FileExistsError:
            continue
        except OSError:  # another disk, or a system of files without second names
            shutil.copyfile(file, own / file.name)


def made_of(rule: str, component: str) -> Check:
    """The check of a rule on a component of the example, among those made once for all tests."""
    (found,) = (one for one in assessed().checks if (one.component, one.rule.name) == (component, rule))
    return found


@cache
def of_one_cylinder() -> Assessment:
    """The same of the left cylinder and of what all share: quicker to draw, and of the same sorts."""
    whole = assessed()
    assert whole.design is not None
    design = replace(whole.design, selected=frozenset(filter(is_of_one, whole.design.selected)))
    return replace(
        whole, design=design, checks=tuple(one for one in whole.checks if is_of_one(one.component))
    )


def shared_text(name: str, make: Callable[[], str]) -> str:
    """A text that takes long to make, made by the first process of a run of the tests that needs it."""
    shared = os.environ.get(SHARED)
    if shared is None:
        return make()
    file = Path(shared) / name
    with _one_at_a_time(file.with_suffix(".lock")):
        if not file.exists():
            file.write_text(make(), encoding="utf-8", newline="\n")
        return file.read_text(encoding="utf-8")


def is_of_one(name: str) -> bool:
    """Whether an id of the example is of the left cylinder, or of none."""
    return {"middle", "right"}.isdisjoint(name.split("-"))


def _by_kept(kept: KeptFolder, processes: Processes) -> Assessment:
    """The checks of another process where it made them; the design is read whole all the same."""
    assert not kept.why_not
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(loop, "_remembered", lambda *_: None)
        return replace(assess([EXAMPLE], installed_families(), processes=processes, kept=kept), kept=None)


@contextmanager
def _one_at_a_time(lock: Path) -> Iterator[None]:
    """Wait while another process of this run of the tests holds a lock."""
    while True:
        try:
            os.close(os.open(lock, os.O_CREAT | os.O_EXCL))
            break
        except FileExistsError:
            time.sleep(0.2)
    try:
        yield
    finally:
        lock.unlink()
