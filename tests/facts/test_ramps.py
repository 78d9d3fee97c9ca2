"""The ramps of a cam by its table of lifts: steps that differ by no more than a tenth are of one ramp."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import ramp_by_table, ramp_of
from speclint.facts.ramps import _top
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench


def cam(folder: Path, lifts: str = "", stated: str = "") -> Bench:
    table = ", ".join(f'"{one} mm"' for one in lifts.split())
    return bench(folder, {"cam cam": (f"table = [{table}]\n" if lifts else "") + stated}, "cam")


@pytest.mark.parametrize(
    ("lifts", "height"),
    [
        ("0 0.1 0.2 0.3 1 2 1 0.2 0.1 0", 0.2),  # 0.3 mm before the rise, 0.2 after the fall
        ("0 0.1 0.2 1 2 1 0.3 0.2 0.1 0", 0.2),
        ("0 0.1 0.209 1 2 1 0.2 0.1 0", 0.2),
        ("0 0.1 0.209 1 2 1 0.209 0.1 0", 0.209),  # a step of 0.109 is like one of 0.1
        ("0 0.1 0.211 1 2 1 0.211 0.1 0", 0.1),  # one of 0.111 is not
        ("0 1 2.5 4.5 2.5 1 0", 1.0),  # it rises faster from its second step on
        ("0 0.1", 0.0),
        ("0", None),
        ("", None),
    ],
)
def test_the_lower_ramp_counts(tmp_path: Path, lifts: str, height: float | None) -> None:
    on = cam(tmp_path, lifts)
    found = ramp_by_table(on["cam"], on.sheet)
    assert (None if found is None else found.value * 1e3) == pytest.approx(height)


def test_a_step_that_is_just_a_tenth_more_is_of_the_ramp() -> None:
    """2.1 − 1.0 is 1.1 to the last digit; of a table of one slope the ramp is all."""
    assert _top([0.0, 1.0, 2.1, 5.0]) == 2
    assert _top([0.0, 1.0, 2.0, 3.0]) == 3


@pytest.mark.parametrize(
    ("stated", "height"),
    [("", 0.2), ('ramp_height = "0.15 mm"\n', 0.15), ('ramp_height = "0.25 mm"\n', 0.2)],
)
def test_a_stated_height_is_no_more_than_the_table_has(tmp_path: Path, stated: str, height: float) -> None:
    on = cam(tmp_path, "0 0.1 0.2 1 2 1 0.2 0.1 0", stated)
    assert ramp_of(on["cam"], on.sheet) * 1e3 == pytest.approx(height)


def test_without_a_table_it_must_be_stated(tmp_path: Path) -> None:
    on = cam(tmp_path, "", 'ramp_height = "0.25 mm"\n')
    assert ramp_of(on["cam"], on.sheet) == pytest.approx(0.25e-3)
    (tmp_path / "a").mkdir()
    bare = cam(tmp_path / "a")
    with pytest.raises(NotAssessed, match="ramp_height is not stated"):
        ramp_of(bare["cam"], bare.sheet)
