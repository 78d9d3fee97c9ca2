"""The plausible span of a field: from both sides of its ends, with both readings in the complaint."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, ClassVar

import pytest

from speclint.errors import Complaint
from speclint.repository.reading import load_specs
from speclint.specs import (
    NOT_STATED,
    Component,
    Length,
    Position,
    Pressure,
    Span,
    Temperature,
    schema_of,
)
from speclint.testing import installed_families


class Sleeve(Component):
    """A sleeve.

    Fields:
        wall: of it
        offset: of its bore
        steps: bores to which it may be turned
        bores: by name
    """

    kind: ClassVar[str] = "sleeve"
    called: ClassVar[str] = "sleeve"

    wall: Annotated[Length, Span("2 mm", "50 mm")] = NOT_STATED
    offset: Annotated[Position, Span("0.1 mm", "5 mm")] = NOT_STATED
    steps: tuple[Annotated[Length, Span("20 mm", "200 mm")], ...] = ()
    bores: dict[str, Annotated[Length, Span("20 mm", "200 mm")]] = {}
    length: Length = NOT_STATED
    pressure: Pressure = NOT_STATED
    hot: Temperature = NOT_STATED


def complaints(folder: Path, line: str) -> list[Complaint]:
    path = folder / "sleeve.toml"
    path.write_text(f'kind = "sleeve"\n{line}\n', encoding="utf-8")
    return list(load_specs(path, "sleeve.toml", {"sleeve": Sleeve})[0].complaints)


@pytest.mark.parametrize(
    "line",
    [
        'wall = "2 mm"',
        'wall = "50 mm"',
        'wall = "49.9 mm ±0.1"',
        'wall = "5 cm"',
        'wall = "0.16 ft"',
        'wall = "2000 µm"',
        'wall = "1 3/4 in"',
        'offset = "0 mm"',
        'offset = "-5 mm"',
        'offset = "-0.1 mm"',
        'steps = ["20 mm", "200 mm"]',
        'bores = { a = "20 mm" }',
        'length = "100 m"',
        'pressure = "0 bar gauge"',
        'pressure = "-0.9 bar gauge"',
        'hot = "1100 °C"',
    ],
)
def test_what_lies_within_passes_in_whatever_unit(tmp_path: Path, line: str) -> None:
    assert complaints(tmp_path, line) == []


@pytest.mark.parametrize(
    ("line", "meant"),
    [
        ('wall = "3.2 m"', "3.2 mm"),
        ('wall = "0.5 mm"', "0.5 in"),
        ('wall = "12000 mm"', "12000 µm"),
        ('wall = "30 µm"', "30 mm"),
        ('wall = "3 in"', "3 mm"),
        ('wall = "500 in"', "500 thou"),
        ('wall = "50.1 mm"', ""),
        ('wall = "1.9 mm"', "1.9 in"),
        ('wall = "49.95 mm ±0.1"', ""),
        ('wall = { value = "3.2 m", from = "measured" }', "3.2 mm"),
        ('offset = "-6 mm"', ""),
        ('offset = "0.05 mm"', "0.05 in"),
        ('steps = ["30 mm", "30 m"]', "30 mm"),
        ('bores = { a = "30 m" }', "30 mm"),
        ('length = "101 m"', "101 mm"),
        ('pressure = "1001 bar gauge"', "1001 psi gauge"),
        ('hot = "3000 °C"', ""),
    ],
)
def test_outside_both_readings_are_shown(tmp_path: Path, line: str, meant: str) -> None:
    (complaint,) = complaints(tmp_path, line)
    assert (complaint.where.file, complaint.where.line) == ("sleeve.toml", 2)
    assert complaint.where.key.startswith(line.split(" =")[0])
    assert " is outside what parts of this trade have, " in complaint.message
    assert complaint.message.endswith(f": is {meant} meant?") == bool(meant)
    assert complaint.write.startswith(f'"{meant}" if so, or a value of ' if meant else "a value of ")


def test_each_slip_is_told_and_not_only_the_first(tmp_path: Path) -> None:
    found = complaints(tmp_path, 'wall = "3.2 m"\nsteps = ["30 m", "300 mm"]')
    assert [one.where.key for one in found] == ["wall", "steps[0]", "steps[1]"]


def test_the_span_is_printed_with_the_key() -> None:
    schema = schema_of(Sleeve)["properties"]
    assert schema["wall"]["description"] == 'of it; length, such as "10 mm"; 2 mm to 50 mm'
    assert schema["steps"]["description"].endswith("; 20 mm to 200 mm")
    assert schema["steps"]["examples"] == [["63 mm"]]


@pytest.mark.parametrize("wall", ["90 mm", "170 mm", "3.2 m", "84.2 mm", "0.25 mm"])
def test_the_wall_of_a_pipe_is_no_slip_of_a_unit(tmp_path: Path, wall: str) -> None:
    path = tmp_path / "pipe.toml"
    text = f'kind = "steam-pipe"\noutside_diameter = "168.3 mm"\nwall = "{wall}"\n'
    path.write_text(text, encoding="utf-8")
    loaded = load_specs(path, "pipe.toml", installed_families().kinds)[0]
    assert [one.where.key for one in loaded.complaints] == ["wall"]


@pytest.mark.parametrize(
    ("kind", "key", "value", "readable"),
    [
        ("weldment", "plates.a.carbon_equivalent", "0.02 %", True),
        ("weldment", "plates.a.carbon_equivalent", "0.019 %", False),
        ("steam-pipe", "welding.carbon_equivalent", "5 %", True),
        ("steam-pipe", "welding.carbon_equivalent", "0.44", False),
        ("steam-pipe", "welding.carbon_equivalent", "0 %", False),
        ("lagging", "conductivity", "0.015 W/(m·K)", True),
        ("lagging", "conductivity", "0.006 W/(m·K)", False),
        ("lagging", "conductivity", "2.1 W/(m·K)", False),
        ("partition", "gap_conductivity", "0.014 W/(m·K)", False),
    ],
)
def test_steels_that_are_welded_and_lagging_have_figures_of_their_own(
    tmp_path: Path, kind: str, key: str, value: str, readable: bool
) -> None:
    """Per cent written as a share and a slip of ten; still air has 0.026 W/(m·K), the best lagging little less."""
    path = tmp_path / "part.toml"
    path.write_text(f'kind = "{kind}"\n{key} = "{value}"\n', encoding="utf-8")
    found = load_specs(path, "part.toml", installed_families().kinds)[0].complaints
    assert [one.where.key for one in found] == ([] if readable else [key])


@pytest.mark.parametrize(
    ("kind", "key", "holds", "refused"),
    [
        ("access-plan", 'spanners."a".over', "1 m", "2286 mm"),  # 90 mm × 25.4
        ("bolted-joint", "to_wall", "500 mm", "711.2 mm"),  # 28 mm × 25.4
        ("lagging", "height", "60 mm", "39.37 mm"),  # 1 m / 25.4
        ("lagging", "room_behind", "1 m", "1524 mm"),  # 60 mm × 25.4
        ("steam-passage", "drains.low.head", "1.5 m", "1524 mm"),
    ],
)
def test_more_room_than_is_ever_needed_is_a_slip_of_a_unit(
    tmp_path: Path, kind: str, key: str, holds: str, refused: str
) -> None:
    """What is 25 times as large as a common size lies beyond what the key asks for."""
    kinds = installed_families().kinds
    path = tmp_path / "part.toml"
    for size, told in ((holds, False), (refused, True)):
        path.write_text(f'kind = "{kind}"\nid = "part"\n{key} = "{size}"\n', encoding="utf-8")
        said = [str(one) for one in load_specs(path, "part.toml", kinds)[0].complaints]
        assert bool(said) is told, said
        assert all("is " in one and key.rpartition(".")[2] in one for one in said)
