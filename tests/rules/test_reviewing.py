"""What a sheet tells of the drawing of a part and of the parts like it: what is noted, and that none need be."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Sheet
from speclint.testing import SETTINGS, changed
from tests.rules.test_placing import ALL, Bench

#: Of the first tube, 100 mm ±0.5 wide; and one made like it but 99 mm wide.
FIFTH = 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\nbore = "99 mm ±0.5"\n'


def steps(sheet: Sheet) -> list[tuple[str, object]]:
    return [(step.name, step.value) for step in sheet.record.steps]


@pytest.fixture
def five(tmp_path: Path) -> Bench:
    return Bench(tmp_path, {**ALL, "fifth.toml": FIFTH})


def test_the_sizes_in_which_two_parts_differ(five: Bench) -> None:
    sheet, tube, fifth = five.sheet(), five.part("tube"), five.part("fifth")
    (found,) = sheet.sizes_apart(tube, fifth)
    assert (found.where.key, found.here, found.there) == ("bore", "100 mm ±0.5", "99 mm ±0.5")
    assert sheet.record.rests_on["sizes of tube and fifth"] == "bore 100 mm ±0.5, not 99 mm ±0.5"
    assert five.context.asked.everything
    assert five.context.consulted.specs == {"tube", "fifth"}
    (back,) = sheet.sizes_apart(fifth, tube)
    assert (back.where.file, back.here, back.there) == (fifth.where.file, "99 mm ±0.5", "100 mm ±0.5")
    assert sheet.sizes_apart(tube, five.part("second")) == ()
    assert sheet.record.rests_on["sizes of tube and second"] == "the same"


@pytest.mark.parametrize("mirrored", [False, True])
def test_a_part_is_the_like_or_the_mirror_of_another(tmp_path: Path, mirrored: bool) -> None:
    text = FIFTH.replace("like =", "mirror_of =") if mirrored else FIFTH
    bench = Bench(tmp_path, {**ALL, "fifth.toml": text})
    sheet = bench.sheet("fifth")
    assert sheet.taken_over(bench.part("fifth")).mirrored is mirrored
    assert f"the {'mirror' if mirrored else 'like'} of fifth" in sheet.record.rests_on
    assert ("mirror of" if mirrored else "like", "tube") in steps(sheet)


@pytest.mark.parametrize("codes", ["the railway code", ""])
def test_a_setting_is_told_and_that_one_is_not_set(tmp_path: Path, codes: str) -> None:
    old = 'railway = ["the invented railway code"]\n'
    settings = changed(SETTINGS, (old, f'railway = ["{codes}"]\n' if codes else ""))
    sheet = Bench(tmp_path, {**ALL, "speclint.toml": settings}).sheet()
    assert sheet.setting("railway codes") == codes
    assert sheet.record.basis["setting railway codes"] == codes
    shown = codes or "not set"
    assert sheet.record.rests_on["setting railway codes"] == shown
    assert ("setting: railway codes", shown) in steps(sheet)


def test_what_is_asked_without_a_record_is_the_same(five: Bench) -> None:
    """Corners are run without one."""
    five.context.outcomes, five.context.assumed_by_holds = {"fifth": {"tube.stress": "conforms"}}, {}
    tube, fifth = five.part("tube"), five.part("fifth")
    with_one, without = five.sheet("fifth"), five.sheet("fifth", record=False)

    def asked(sheet: Sheet) -> list[object]:
        return [
            sheet.taken_over(fifth).id,
            sheet.sizes_apart(tube, fifth),
            sheet.stated_from("drawing", fifth),
            sheet.concessions(),
            sheet.outcomes(),
            sheet.parts_alike(tube),
            sheet.assumed_by_holds(),
            sheet.setting("stage"),
        ]

    assert asked(without) == asked(with_one)
    assert [bool(one) for one in asked(without)] == [True, True, True, False, True, True, False, True]
