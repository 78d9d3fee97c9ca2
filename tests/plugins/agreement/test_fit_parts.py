"""Where a fit takes its sizes: hole and wall of one bore, bore and length of the part in it."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "fit.sizes-of-its-parts"
BORES = """
[seat_bores.inlet]
diameter = "170 mm H7"
depth = "48 mm"
wall = "22 mm"
[seat_bores.exhaust]
diameter = "170 mm H7"
wall = "22 mm"
[bores.main]
diameter = "578 mm H7"
wall = "40 mm"
"""
PARTS = {
    "block": f'kind = "cylinder-block"\n{BORES}',
    "other": f'kind = "cylinder-block"\n{BORES}',
    "seat": 'kind = "valve-seat"\npressed_into = "block"\nin_bore = "inlet"\nlength = "48 mm"',
    "liner": 'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "main"\nbore = "500 mm"',
    "weldment": 'kind = "weldment"\nmakes = "block"\n[plates.seats]\nthickness = "22 mm"',
    "casting": 'kind = "casting"\nbecomes = "block"\n[faces.seats]\ndimension = "22 mm"',
}
SEAT = {
    "hole": '{ of = "block", dimension = "seat_bores.inlet.diameter" }',
    "shaft": '{ of = "seat", dimension = "outside_diameter" }',
}
LINER = {
    "hole": '{ of = "block", dimension = "bores.main.diameter" }',
    "shaft": '{ of = "liner", dimension = "outside_diameter" }',
}


def found(design: DesignFolder, sizes: dict[str, str], **parts: str) -> tuple[str, Grade | None]:
    """What comes of a fit with the sizes given, some parts changed."""
    fit = "\n".join(['kind = "fit"', *(f"{name} = {size}" for name, size in sizes.items())])
    specs = {
        f"{name}.toml": f'id = "{name}"\n{text}\n' for name, text in (PARTS | parts | {"fit": fit}).items()
    }
    check = design.write(specs).only(RULE, "fit")
    return check.outcome, check.grade


FINE, WRONG = ("conforms", None), ("finding", Grade.NONCONFORMITY)


@pytest.mark.parametrize(
    ("name", "size", "ends"),
    [
        ("wall", '{ of = "block", dimension = "seat_bores.inlet.wall" }', FINE),
        ("wall", '{ of = "block", dimension = "seat_bores.exhaust.wall" }', WRONG),
        ("wall", '{ of = "block", dimension = "bores.main.wall" }', WRONG),
        ("wall", '{ of = "block", dimension = "divisions.chest.thickness" }', FINE),
        ("wall", '{ of = "other", dimension = "seat_bores.inlet.wall" }', WRONG),
        ("wall", '{ of = "weldment", dimension = "plates.seats.thickness" }', FINE),
        ("wall", '{ of = "casting", dimension = "faces.seats.dimension" }', FINE),
        ("wall", '{ size = "20 mm" }', FINE),
        ("bore", '{ of = "seat", dimension = "bore" }', FINE),
        ("bore", '{ of = "liner", dimension = "bore" }', WRONG),
        ("length", '{ of = "seat", dimension = "length" }', FINE),
        ("length", '{ of = "block", dimension = "seat_bores.inlet.depth" }', FINE),
        ("length", '{ of = "block", dimension = "seat_bores.exhaust.depth" }', WRONG),
        ("length", '{ of = "liner", dimension = "fit_length" }', WRONG),
        ("hole", '{ of = "block", dimension = "seat_bores.exhaust.diameter" }', WRONG),
        ("hole", '{ of = "other", dimension = "seat_bores.inlet.diameter" }', WRONG),
    ],
)
def test_a_fit_of_a_seat_takes_its_own_sizes(
    workshop: DesignFolder, name: str, size: str, ends: tuple[str, Grade | None]
) -> None:
    assert found(workshop, SEAT | {name: size}) == ends


@pytest.mark.parametrize(
    ("hole", "ends"), [("bores.main.diameter", FINE), ("seat_bores.inlet.diameter", WRONG)]
)
def test_the_hole_of_a_liner_is_its_bore(
    workshop: DesignFolder, hole: str, ends: tuple[str, Grade | None]
) -> None:
    assert found(workshop, LINER | {"hole": f'{{ of = "block", dimension = "{hole}" }}'}) == ends


@pytest.mark.parametrize("blank", ["weldment", "casting"])
def test_a_wall_of_the_blank_of_another_block_is_none_of_the_hole(workshop: DesignFolder, blank: str) -> None:
    wall = {"wall": f'{{ of = "{blank}", dimension = "plates.seats.thickness" }}'}
    of_other = PARTS[blank].replace('"block"', '"other"')
    assert found(workshop, SEAT | wall, **{blank: of_other}) == WRONG


@pytest.mark.parametrize("parts", [{}, {"seat": 'kind = "valve-seat"'}])
def test_where_neither_names_another_size_nothing_is_compared(
    workshop: DesignFolder, parts: dict[str, str]
) -> None:
    sizes = {"hole": '{ size = "170 mm" }', "shaft": SEAT["shaft"]} if not parts else SEAT
    assert found(workshop, sizes, **parts)[0] == "not applicable"
