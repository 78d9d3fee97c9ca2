"""The list of steps in which a part is made, with those of the part that it becomes."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import finished_after_relief, steps_of
from tests.facts.bench import Bench, bench

STEPS = "making.steps = {}\n"
FILES = {
    "cylinder-block block": STEPS.format('["weld 2", "finish bore"]'),
    "weldment weldment": 'makes = "block"\n' + STEPS.format('["weld", "stress relieve"]'),
    "casting casting": 'becomes = "{becomes}"\n' + STEPS.format('["cast"]'),
    "cylinder-liner liner": STEPS.format('["cut ports"]'),
    "valve-seat seat": STEPS.format('["hard face"]'),
    "piston piston": "",
}


def drawn(folder: Path, *parts: str, becomes: str = "block", **changed: str) -> Bench:
    files = {one: changed.get(one.split()[1], text) for one, text in FILES.items() if one.split()[1] in parts}
    files = {one: text.replace("{becomes}", becomes) for one, text in files.items()}
    return bench(folder, files, parts[0])


@pytest.mark.parametrize(
    ("parts", "becomes", "written"),
    [
        (("block",), "", ["weld 2", "finish bore"]),
        (("block", "weldment"), "", ["weld", "stress relieve", "weld 2", "finish bore"]),
        (("weldment", "block"), "", ["weld", "stress relieve", "weld 2", "finish bore"]),
        (("casting", "block"), "block", ["cast", "weld 2", "finish bore"]),
        (("casting", "liner"), "liner", ["cast", "cut ports"]),
        (("casting", "piston"), "piston", ["cast"]),
        (("liner",), "", ["cut ports"]),
        (("liner", "casting"), "liner", ["cast", "cut ports"]),
        (("liner", "casting", "piston"), "piston", ["cut ports"]),
        (("casting", "seat"), "seat", ["cast", "hard face"]),
        (("seat", "casting"), "seat", ["cast", "hard face"]),
    ],
)
def test_a_blank_and_what_it_becomes_have_one_list(
    tmp_path: Path, parts: tuple[str, ...], becomes: str, written: list[str]
) -> None:
    on = drawn(tmp_path, *parts, becomes=becomes)
    steps = steps_of(on[parts[0]], on.sheet)
    assert [one.written for one in steps] == written
    assert [one.word for one in steps] == [one.rstrip(" 2") for one in written]


@pytest.mark.parametrize(
    ("weldment", "block", "after"),
    [
        ('["weld", "stress relieve"]', '["finish bore"]', True),
        ('["weld", "stress relieve"]', '["finish bore", "stress relieve 2"]', False),
        ('["weld", "stress relieve"]', '["stress relieve 2", "finish bore"]', True),
        ('["weld", "stress relieve"]', '["finish bore", "hone"]', True),
        ('["weld"]', '["finish bore"]', None),
        ('["weld", "stress relieve"]', '["paint"]', None),
    ],
)
def test_the_first_finishing_follows_the_last_relief(
    tmp_path: Path, weldment: str, block: str, after: bool | None
) -> None:
    texts = {"weldment": 'makes = "block"\n' + STEPS.format(weldment), "block": STEPS.format(block)}
    on = drawn(tmp_path, "weldment", "block", **texts)
    found = finished_after_relief(on["weldment"], on.sheet)
    assert (None if found is None else found.value) is after


def test_a_weldment_that_makes_nothing_tells_nothing(tmp_path: Path) -> None:
    on = drawn(tmp_path, "weldment", weldment=STEPS.format('["weld", "stress relieve"]'))
    assert finished_after_relief(on["weldment"], on.sheet) is None
