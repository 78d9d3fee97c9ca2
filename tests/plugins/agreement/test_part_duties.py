"""A part with a duty of its own sees no milder steam than the block or the pipe that it is on."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "duty.no-milder-for-a-part"
ENGINE = """
kind = "duty"
id = "engine"
[cases.running]
safety_valve_pressure = "16.6 bar gauge"
live_pressure = "15.2 bar gauge ±0.3"
exhaust_pressure = "0.35 bar gauge"
live_temperature = "390 °C ±10"
exhaust_temperature = "140 °C ±5"
rotational_speed = "250 rev/min"
track_speed = "75..78 km/h"
[cases.test]
live_pressure = "33 bar gauge"
"""
OWN = ENGINE.replace('id = "engine"', 'id = "own"').replace("33 bar", "24 bar")
FILES = {
    "engine.toml": ENGINE,
    "own.toml": OWN,
    "block.toml": 'kind = "cylinder-block"\nduty = "engine"',
    "passage.toml": 'kind = "steam-passage"\nin_block = "block"',
    "pipe.toml": 'kind = "steam-pipe"\nduty = "own"\nends_at.part = "block"',
    "liner.toml": 'kind = "cylinder-liner"\nduty = "own"\nhoused_in = "block"',
    "seat.toml": 'kind = "valve-seat"\nduty = "own"\npressed_into = "block"',
    "cover.toml": 'kind = "cylinder-cover"\nduty = "own"\ncloses = "block"',
}


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(FILES)


HOLD, FINE = ("finding", Grade.HOLD), ("conforms", None)


def outcome(design: DesignFolder, part: str = "pipe") -> tuple[str, Grade | None]:
    found = design.only(RULE, part)
    return found.outcome, found.grade


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('safety_valve_pressure = "16.6', 'safety_valve_pressure = "16.5', FINE),
        ('safety_valve_pressure = "16.6', 'safety_valve_pressure = "16.49', HOLD),
        ("15.2 bar gauge ±0.3", "15.4 bar gauge", FINE),
        ("15.2 bar gauge ±0.3", "15.39 bar gauge", HOLD),
        ("0.35 bar", "0.25 bar", FINE),
        ("0.35 bar", "0.24 bar", HOLD),
        ("390 °C ±10", "395 °C", FINE),
        ("390 °C ±10", "394.9 °C", HOLD),
        ("390 °C ±10", "450 °C ±10", FINE),
        ("140 °C ±5", "105 °C", FINE),
        ("140 °C ±5", "104.9 °C", HOLD),
        ("140 °C ±5", "200 °C", FINE),
        ("250 rev/min", "255 rev/min", FINE),
        ("250 rev/min", "240..250 rev/min", FINE),  # at its greatest
        ("250 rev/min", "249 rev/min", HOLD),
        ("75..78 km/h", "78 km/h", FINE),
        ("75..78 km/h", "77.5 km/h", HOLD),
        ('rotational_speed = "250 rev/min"\n', "", FINE),
    ],
)
def test_a_duty_of_its_own(design: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]) -> None:
    """Upper limits: 16.6, 15.5 and 0.35 bar less 0.1 bar; 400 °C less 5 K and 145 °C less 40 K.

    Its own test is at another pressure.
    """
    assert outcome(design.replace("own.toml", old, new)) == ends


@pytest.mark.parametrize(("live", "ends"), [("16.5 bar gauge", FINE), ("15.6 bar gauge", HOLD)])
def test_without_safety_valves_its_live_steam_counts(
    design: DesignFolder, live: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace("own.toml", 'safety_valve_pressure = "16.6 bar gauge"\n', "")
    assert outcome(design.replace("own.toml", "15.2 bar gauge ±0.3", live)) == ends


@pytest.mark.parametrize("part", ["pipe", "liner", "seat", "cover"])
def test_each_part_is_held_against_what_it_is_on(design: DesignFolder, part: str) -> None:
    assert outcome(design, part) == FINE
    assert outcome(design.replace("own.toml", "16.6", "8"), part) == HOLD


def test_a_pipe_that_begins_at_a_passage_is_held_against_its_block(design: DesignFolder) -> None:
    design.replace("pipe.toml", 'ends_at.part = "block"', 'follows = "passage"')
    assert outcome(design) == FINE
    assert outcome(design.replace("own.toml", "0.35 bar", "0.035 bar")) == HOLD


def test_a_part_without_a_duty_of_its_own_has_that_of_the_block(design: DesignFolder) -> None:
    assert outcome(design.replace("pipe.toml", 'duty = "own"\n', ""))[0] == "not applicable"


BLOCK = "duty.one-temperature-of-block"


def with_heat(engine: str, own: str, named: str = "cylinder-block") -> dict[str, str]:
    """Both duties with a temperature under one name, running and on test."""
    heat = '[cases.running.temperatures]\n"{0}" = {1}\n[cases.test]'
    return {
        "engine.toml": ENGINE.replace("[cases.test]", heat.format(named, engine)),
        "own.toml": OWN.replace("[cases.test]", heat.format(named, own)),
    }


@pytest.mark.parametrize(
    ("own", "ends"),
    [
        ('"250..270 °C"', FINE),
        ('"245..275 °C"', FINE),
        ('"244.9..270 °C"', HOLD),
        ('"250..264.9 °C"', HOLD),
        ('"255.1..270 °C"', HOLD),
        ('"250..275.1 °C"', HOLD),
        ('"150..170 °C"', HOLD),
    ],
)
@pytest.mark.parametrize("named", ["cylinder-block", "block"])
def test_a_block_has_one_temperature(
    design: DesignFolder, named: str, own: str, ends: tuple[str, Grade | None]
) -> None:
    found = design.write(with_heat('"250..270 °C"', own, named)).only(BLOCK, "pipe")
    assert (found.outcome, found.grade) == ends


def test_a_block_by_its_kind_in_one_duty_and_its_id_in_the_other(design: DesignFolder) -> None:
    files = with_heat('"250..270 °C"', '"150..170 °C"')
    files["engine.toml"] = files["engine.toml"].replace('"cylinder-block"', '"block"')
    found = design.write(files).only(BLOCK, "pipe")
    assert (found.outcome, found.grade) == HOLD


def test_a_kind_of_which_there_are_many_may_differ(design: DesignFolder) -> None:
    design.replace("pipe.toml", 'ends_at.part = "block"', 'follows = "passage"')
    design.write(with_heat('"340..375 °C"', '"110..140 °C"', "steam-passage"))
    assert design.only(BLOCK, "pipe").outcome == "not applicable"
    design.write(with_heat('"340..375 °C"', '"110..140 °C"', "passage"))
    assert design.only(BLOCK, "pipe").outcome == "finding"


def test_a_test_of_its_own_may_be_at_another_temperature(design: DesignFolder) -> None:
    design.write(
        {
            "engine.toml": f"{ENGINE}temperatures.cylinder-block = '20 °C'\n",
            "own.toml": f"{OWN}temperatures.cylinder-block = '60 °C'\n",
        }
    )
    assert design.only(BLOCK, "pipe").outcome == "not applicable"


@pytest.mark.parametrize(("engine", "own"), [('"250 °C"', '"estimate"'), ('"estimate"', '"250 °C"')])
def test_a_temperature_still_to_be_worked_is_not_compared(
    design: DesignFolder, engine: str, own: str
) -> None:
    assert design.write(with_heat(engine, own)).only(BLOCK, "pipe").outcome == "not applicable"


@pytest.mark.parametrize("file", ["engine.toml", "own.toml"])
def test_exhaust_steam_still_to_be_worked_is_not_compared(design: DesignFolder, file: str) -> None:
    design.replace(file, '"140 °C ±5"', '{ from = "events" }')
    assert outcome(design) == FINE
