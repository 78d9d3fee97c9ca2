"""How far the axis of a cylinder lies from its frame: the greater of what the block and the crank say."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import axis_by_crank, axis_of_bore
from tests.facts.bench import Bench, bench

CRANK = '[cranks.one]\nblock = "block"\nbore = "{bore}"\naxis_from_centre = "{axis}"\n{frame}'
FRAME = 'frame_from_centre = "600 mm"\n'


def drawn(folder: Path, bore: str = "right", axis: str = "950 mm", frame: str = FRAME) -> Bench:
    """A block of two bores, each stated 360 mm from the frame; the crank is that of one of them."""
    files = {
        "cylinder-block block": '[bores.left]\n[bores.right]\naxis_from_frame = "360 mm"\n',
        "engine engine": CRANK.format(bore=bore, axis=axis, frame=frame),
    }
    return bench(folder, files, "block")


@pytest.mark.parametrize(
    ("axis", "distance"),
    [("950 mm", 0.360), ("961 mm", 0.361), ("239 mm", 0.361)],  # 350 and 361 mm by the crank; 600 − 239 = 361
)
def test_the_greater_of_both_counts(tmp_path: Path, axis: str, distance: float) -> None:
    on = drawn(tmp_path, axis=axis)
    assert axis_of_bore(on["block"], "right", on.sheet) == pytest.approx(distance)


def test_the_crank_of_another_bore_or_one_that_is_not_drawn_says_nothing(tmp_path: Path) -> None:
    (tmp_path / "a").mkdir()
    for on in (drawn(tmp_path, bore="left"), drawn(tmp_path / "a", frame="")):
        assert axis_by_crank(on["block"], "right", on.sheet, on.sheet.take) is None
        assert axis_of_bore(on["block"], "right", on.sheet) == pytest.approx(0.360)


def test_without_an_engine_the_block_says_it(tmp_path: Path) -> None:
    files = {"cylinder-block block": '[bores.right]\naxis_from_frame = "360 mm"\n'}
    on = bench(tmp_path, files, "block")
    assert axis_by_crank(on["block"], "right", on.sheet, on.sheet.take) is None
    assert axis_of_bore(on["block"], "right", on.sheet) == pytest.approx(0.360)
