"""What a word, a link or a drawn part tells: pressure, danger, drains, welds, and what stands in a throat."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.facts import throat_of
from speclint.facts.concern import holds_pressure, hurts_by_kind, is_safety_part, pressure_by_place
from speclint.facts.design_stages import graded_as_assembly, graded_by_stage
from speclint.facts.drains import has_drain_cock, is_drained
from speclint.facts.flange_welds import is_welded_to_flange
from speclint.facts.throats import around_throat
from speclint.rules import Grade, Judgement, NotAssessed
from tests.facts.bench import Bench, bench


def one(folder: Path, kind: str, text: str = "", **others: str) -> Bench:
    return bench(folder, {f"{kind} part": text, **others}, "part")


# Pressure and safety


@pytest.mark.parametrize(
    ("kind", "text", "holds"),
    [
        ("steam-pipe", "", True),
        ("steam-pipe", "pressure_part = false\n", True),  # no word unsays it
        ("cam", "", False),
        ("cam", "pressure_part = true\n", True),
        ("cam", "pressure_part = false\n", False),
        ("bolted-joint", 'holds = "pipe"\n', True),
        ("bolted-joint", 'holds = "pipe"\npressure_part = false\n', True),
        ("bolted-joint", 'holds = "cam"\npressure_part = true\n', True),
        ("bolted-joint", 'holds = "cam"\npressure_part = false\n', False),
        ("bolted-joint", "pressure_part = true\n", True),
        ("weldment", 'makes = "block"\n', True),
    ],
)
def test_a_part_holds_pressure_by_its_kind_its_neighbour_or_its_word(
    tmp_path: Path, kind: str, text: str, holds: bool
) -> None:
    others = {"steam-pipe pipe": "", "cam cam": "", "cylinder-block block": ""}
    on = one(tmp_path, kind, text, **others)
    assert holds_pressure(on["part"], on.sheet) is holds
    by_place = holds and "= true" not in text
    assert pressure_by_place(on["part"], on.sheet) is by_place


def test_a_joint_whose_neighbour_tells_nothing_must_say_whether_it_holds_pressure(tmp_path: Path) -> None:
    on = one(tmp_path, "bolted-joint", 'holds = "cam"\n', **{"cam cam": ""})
    with pytest.raises(NotAssessed, match="pressure_part is not stated"):
        holds_pressure(on["part"], on.sheet)


@pytest.mark.parametrize(
    ("kind", "text", "safe"),
    [
        ("piston-rod", "", True),
        ("piston-rod", "safety_part = false\n", True),
        ("cam", "", False),
        ("cam", "safety_part = true\n", True),
        ("cam", "safety_part = false\n", False),
    ],
)
def test_a_part_can_hurt_someone_by_its_kind_or_its_word(
    tmp_path: Path, kind: str, text: str, safe: bool
) -> None:
    on = one(tmp_path, kind, text)
    assert is_safety_part(on["part"], on.sheet) is safe
    assert hurts_by_kind(on["part"]) is (kind == "piston-rod")


FOUND = Judgement(holds=False, says="so")


@pytest.mark.parametrize(
    ("stage", "grade"),
    [("draft", Grade.OBSERVATION), ("for-review", Grade.QUERY), ("released", Grade.NONCONFORMITY)],
)
def test_a_finding_is_as_grave_as_the_stage_of_the_design(stage: str, grade: Grade) -> None:
    sheet: Any = SimpleNamespace(setting={"stage": stage}.__getitem__)
    found = graded_by_stage(
        FOUND, sheet, draft=Grade.OBSERVATION, for_review=Grade.QUERY, released=Grade.NONCONFORMITY
    )
    assert found.grade is grade


@pytest.mark.parametrize(
    ("stage", "kind", "grade"),
    [
        ("for-review", "steam-pipe", None),
        ("released", "steam-pipe", Grade.HOLD),
        ("released", "cam", Grade.NONCONFORMITY),
    ],
)
def test_what_cannot_be_put_in_is_a_hold_of_a_pressure_part_that_is_released(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, stage: str, kind: str, grade: Grade | None
) -> None:
    on = one(tmp_path, kind)
    monkeypatch.setattr(on.sheet, "setting", lambda name: {"stage": stage}[name])
    assert graded_as_assembly(FOUND, on["part"], on.sheet).grade is grade


# Drains, flanges


def test_a_chamber_is_drained_by_its_drains_or_by_its_word() -> None:
    sheet: Any = SimpleNamespace(read=lambda name, word: (name, word))
    drawn: Any = SimpleNamespace(id="belt", drains={"one": 1}, drained=False, drain_cock=False)
    said: Any = SimpleNamespace(id="belt", drains={}, drained="as stated", drain_cock="as stated")
    assert is_drained(drawn, sheet) is True
    assert has_drain_cock("front", drawn, sheet) is True
    assert is_drained(said, sheet) == ("belt drained", "as stated")
    assert has_drain_cock("front", said, sheet) == ("drain cock of front", "as stated")


@pytest.mark.parametrize(
    ("held", "welded"),
    [('held = "welded on"\n', True), ('held = "loose behind a collar"\n', False), ("", False)],
)
def test_a_flange_is_welded_where_it_says_so_and_so_is_its_pipe(
    tmp_path: Path, held: str, welded: bool
) -> None:
    files = {"steam-pipe pipe": "", "pipe-flange flange": f'of = "pipe"\n{held}', "cam cam": ""}
    on = bench(tmp_path, files, "pipe")
    assert is_welded_to_flange(on["flange"], on.sheet) is welded
    assert is_welded_to_flange(on["pipe"], on.sheet) is welded
    assert is_welded_to_flange(on["cam"], on.sheet) is False


BLOCK = '[seat_bores.upper]\npassage = "{}"\n'
SEAT = 'pressed_into = "block"\nin_bore = "upper"\nbore = "140 mm"\n'
VALVE = '[upper_beat]\nseat = "seat"\nthroat = "145 mm"\n'


@pytest.mark.parametrize(
    ("passage", "seat", "valve", "throat", "names"),
    [
        ("150 mm", SEAT, VALVE, 0.140, ["bore of seat", "passage beyond seat"]),
        ("130 mm", SEAT, VALVE, 0.130, ["bore of seat", "passage beyond seat"]),
        ("130 mm", SEAT.replace('in_bore = "upper"\n', ""), VALVE, 0.140, ["bore of seat"]),
        ("130 mm", SEAT.replace('bore = "140 mm"\n', ""), VALVE, 0.130, ["passage beyond seat"]),
        ("150 mm", SEAT, VALVE.replace("145", "135"), 0.135, ["bore of seat", "passage beyond seat"]),
        ("130 mm", SEAT, VALVE.replace('seat = "seat"\n', ""), 0.145, []),
    ],
)
def test_a_throat_is_no_more_than_seat_and_block_leave(
    tmp_path: Path, passage: str, seat: str, valve: str, throat: float, names: list[str]
) -> None:
    files = {
        "cylinder-block block": BLOCK.format(passage),
        "valve-seat seat": seat,
        "poppet-valve valve": valve,
    }
    on = bench(tmp_path, files, "valve")
    beat = on["valve"].upper_beat
    assert [name for name, _ in around_throat(beat, "upper", on.sheet)] == names
    assert throat_of(on["valve"], beat, "upper", on.sheet) == pytest.approx(throat)
