"""The geometry that must hold within a table: from both sides, at the best of its tolerances, nested and inherited."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, ClassVar, get_args

import pytest
from hypothesis import given, strategies as st

from speclint.errors import Complaint
from speclint.quantities import Measure
from speclint.repository.reading import load_specs
from speclint.specs import (
    NOT_STATED,
    AtMost,
    Below,
    Component,
    Conditions,
    Length,
    Mass,
    Pressure,
    Span,
    Spec,
    SpecTable,
    Temperature,
    conditions_of,
    schema_of,
)
from speclint.specs.examples import quantities_of
from speclint.testing import installed_families


class Ring(SpecTable):
    """A ring."""

    geometry: ClassVar[Conditions] = (Below("inside", "outside"),)

    inside: Length = NOT_STATED
    outside: Length = NOT_STATED


class Duct(Component):
    """A duct."""

    kind: ClassVar[str] = "duct"
    called: ClassVar[str] = "duct"
    geometry: ClassVar[Conditions] = (
        Below("wall", "outside", times=1 / 2),
        AtMost("worn", "wall"),
        AtMost("steps", "outside"),
        Below("ring.outside", "outside", times=2),
        AtMost("rings.*.outside", "outside", times=3),
    )

    outside: Length = NOT_STATED
    wall: Length = NOT_STATED
    worn: Length = NOT_STATED
    steps: tuple[Length, ...] = ()
    ring: Ring = Ring.unstated()
    rings: dict[str, Ring] = {}


class LinedDuct(Duct):
    """A duct with a lining."""

    kind: ClassVar[str] = "lined-duct"
    called: ClassVar[str] = "lined duct"
    geometry: ClassVar[Conditions] = (Below("lining", "wall"),)

    lining: Length = NOT_STATED


KINDS: dict[str, type[Spec]] = {"duct": Duct, "lined-duct": LinedDuct}


def complaints(folder: Path, text: str, kind: str = "duct") -> list[Complaint]:
    path = folder / "duct.toml"
    path.write_text(f'kind = "{kind}"\noutside = "100 mm"\n{text}\n', encoding="utf-8")
    return list(load_specs(path, "duct.toml", KINDS)[0].complaints)


@pytest.mark.parametrize(
    "text",
    [
        'wall = "49.9 mm"',
        'wall = "50.1 mm ±0.2"',
        'wall = "5 mm"\nworn = "5 mm"',
        'steps = ["90 mm", "100 mm"]',
        '[ring]\ninside = "90 mm"\noutside = "91 mm"',
        '[ring]\ninside = "90 mm"',
        '[rings.a]\ninside = "90 mm"\noutside = "91 mm"',
        '[ring]\noutside = "199 mm"',
    ],
)
def test_what_can_be_passes(tmp_path: Path, text: str) -> None:
    assert complaints(tmp_path, text) == []


@pytest.mark.parametrize(
    ("text", "key", "said", "write"),
    [
        (
            'wall = "50 mm"',
            "wall",
            "wall must be less than half of outside, which is 100 mm",
            "a value less than 50 mm, or another outside",
        ),
        ('wall = "2 1/2 in"', "wall", "less than half of outside", "less than 50 mm"),
        (
            'wall = "5 mm"\nworn = "5.01 mm"',
            "worn",
            "worn must be no more than wall, which is 5 mm",
            "no more than 5 mm",
        ),
        ('steps = ["90 mm", "101 mm"]', "steps[1]", "steps must be no more than outside", "100 mm"),
        (
            '[ring]\ninside = "90 mm"\noutside = "90 mm"',
            "ring.inside",
            "inside must be less than outside",
            "",
        ),
        (
            '[rings.a]\ninside = "9 mm"\noutside = "8 mm"',
            "rings.a.inside",
            "which is 8 mm",
            "another outside",
        ),
        (
            '[rings.a]\noutside = "299 mm"\n[rings.b]\noutside = "301 mm"',
            "rings.b.outside",
            "3 × outside",
            "300 mm",
        ),
        ('[ring]\noutside = "200 mm"', "ring.outside", "less than 2 × outside", "less than 200 mm"),
    ],
)
def test_what_cannot_be_is_told_at_its_key(
    tmp_path: Path, text: str, key: str, said: str, write: str
) -> None:
    (complaint,) = complaints(tmp_path, text)
    assert complaint.where.key == key
    assert said in complaint.message
    assert complaint.read
    assert write in complaint.write


def test_every_condition_that_is_broken_is_told_and_those_of_the_kind_below_too(tmp_path: Path) -> None:
    found = complaints(tmp_path, 'wall = "60 mm"\nworn = "61 mm"\nlining = "62 mm"', "lined-duct")
    assert sorted(one.where.key for one in found) == ["lining", "wall", "worn"]
    assert [str(one) for one in conditions_of(LinedDuct)][:2] == [
        "lining is less than wall",
        "wall is less than half of outside",
    ]


def test_the_conditions_are_printed() -> None:
    assert schema_of(LinedDuct)["description"].endswith(
        "It must hold: lining is less than wall; wall is less than half of outside; worn is no more than wall; "
        "steps is no more than outside; ring.outside is less than 2 × outside; "
        "rings.*.outside is no more than 3 × outside."
    )


@given(st.floats(0.001, 10), st.floats(0.001, 10))
def test_at_most_is_broken_where_below_is_or_where_both_are_equal(small: float, great: float) -> None:
    """Property: of two lengths one is broken exactly when the first is greater, and both never together reversed."""
    table = {
        name: Measure(value, value, value, "length", f"{value} m", "m")
        for name, value in (("a", small), ("b", great))
    }
    broken = bool(list(Below("a", "b").faults(table)))
    reverse = bool(list(AtMost("b", "a").faults(table)))
    assert broken != reverse or abs(small - great) < 1e-6


@pytest.mark.parametrize("kind", sorted(installed_families().kinds))
def test_every_condition_names_lengths_of_its_table(kind: str) -> None:
    """A misspelt key would make a condition that nothing can break."""
    for table in _tables(installed_families().kinds[kind]):
        for condition in conditions_of(table):
            for key in (condition.key, condition.other):
                inner: object = table
                for part in key.split("."):
                    inner = get_args(inner)[1] if part == "*" else inner.model_fields[part].annotation  # type: ignore[attr-defined]
                assert "Measure" in str(inner), f"{table.__name__}: {key}"


def _tables(table: type[SpecTable]) -> list[type[SpecTable]]:
    from speclint.specs import inner_table

    inner = [inner_table(field.annotation)[0] for field in table.model_fields.values()]
    return [table, *(one for found in inner if found for one in _tables(found))]


class Load(Component):
    """A load."""

    kind: ClassVar[str] = "load"
    called: ClassVar[str] = "load"
    geometry: ClassVar[Conditions] = (
        AtMost("hung", "mass"),
        AtMost("blown", "held"),
        AtMost("mild", "hottest"),
    )

    mass: Annotated[Mass, Span("10 t", "40 t")] = NOT_STATED
    hung: Mass = NOT_STATED
    held: Pressure = NOT_STATED
    blown: Pressure = NOT_STATED
    mild: Temperature = NOT_STATED
    hottest: Temperature = NOT_STATED


@pytest.mark.parametrize(
    ("text", "write"),
    [
        ('mass = "24 t"\nhung = "25 t"\n', "no more than 24 t, or another mass"),
        ('held = "10 bar gauge"\nblown = "11 bar gauge"\n', "no more than 10 bar, or another held"),
        ('mild = "20 °C"\nhottest = "-5 °C"\n', "no more than −5 °C, or another hottest"),
        ('mild = "20.1 °C"\nhottest = "20 °C"\n', "no more than 20 °C, or another hottest"),
    ],
)
def test_what_to_write_is_in_the_units_of_the_quantity(tmp_path: Path, text: str, write: str) -> None:
    (tmp_path / "load.toml").write_text(f'kind = "load"\n{text}', encoding="utf-8")
    (complaint,) = load_specs(tmp_path / "load.toml", "load.toml", {"load": Load})[0].complaints
    assert write in complaint.write


def test_an_example_is_in_the_units_of_the_quantity() -> None:
    """The middle of 10 and 40 t, by ratio: √(10 × 40) = 20 t."""
    assert quantities_of(Load)["mass"] == "20 t"


@pytest.mark.parametrize(
    ("diameter", "radius", "read"),
    [
        ("168.3 mm", "127 mm", False),  # 168.3/1.32 = 127.5 mm
        ("168.3 mm", "128 mm", True),
        ("168.3 mm", "60 mm", False),  # less than half of the pipe
        ("168.3 mm", "152.4 mm", True),  # an elbow of one nominal size, 6 in
        ("33.4 mm", "25.4 mm", True),  # the same of 1 in
    ],
)
def test_a_pipe_is_bent_no_sharper_than_the_sharpest_elbow(
    tmp_path: Path, diameter: str, radius: str, read: bool
) -> None:
    path = tmp_path / "pipe.toml"
    text = f'kind = "steam-pipe"\noutside_diameter = "{diameter}"\nbend_radius = "{radius}"\n'
    path.write_text(text, encoding="utf-8")
    loaded = load_specs(path, "pipe.toml", installed_families().kinds)[0]
    told = [str(one) for one in loaded.complaints]
    assert all(f"no more than 1.32 × bend_radius, which is {radius}" in one for one in told)
    assert len(told) == (0 if read else 1)
