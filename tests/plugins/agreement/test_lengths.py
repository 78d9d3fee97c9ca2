"""Lengths that follow from other drawings: of a gland on its box, of a spindle beyond its guide, from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

#: 30 mm of flange and 20 mm of nut.
GLAND = {
    "gland.toml": 'kind = "gland"\nid = "gland"\nof = "box"\nstands_out = "60 mm"\nflange_thickness = "30 mm"\n',
    "box.toml": 'kind = "stuffing-box"\nid = "box"\n',
    "studs.toml": 'kind = "bolted-joint"\nid = "studs"\nholds = "gland"\n[nut]\nengagement = "20 mm"\n',
}
#: 330 mm less 60 and 100: 170 mm.
SPINDLE = {
    "spindle.toml": 'kind = "valve-spindle"\nid = "spindle"\nfree_length = "200 mm"\nheated_length = "330 mm"\n'
    'guide_from_seat = "60 mm"\nguide_length = "100 mm"\n'
}
WRONG, FINE = ("finding", Grade.NONCONFORMITY), ("conforms", None)


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('stands_out = "60 mm"', 'stands_out = "50 mm"', FINE),
        ('stands_out = "60 mm"', 'stands_out = "49.9 mm"', WRONG),
        ('stands_out = "60 mm"', 'stands_out = "50 mm ±0.1"', WRONG),
        ('flange_thickness = "30 mm"', 'flange_thickness = "40 mm"', FINE),
        ('flange_thickness = "30 mm"', 'flange_thickness = "41 mm"', WRONG),
    ],
)
def test_a_gland_stands_out_by_flange_and_nuts(
    workshop: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    found = workshop.write(GLAND).replace("gland.toml", old, new).only("gland.stands-out")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(("nut", "ends"), [("30 mm", FINE), ("31 mm", WRONG)])
def test_the_nuts_of_a_gland_count(workshop: DesignFolder, nut: str, ends: tuple[str, Grade | None]) -> None:
    found = workshop.write(GLAND).replace("studs.toml", "20 mm", nut).only("gland.stands-out")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('free_length = "200 mm"', 'free_length = "170 mm"', FINE),
        ('free_length = "200 mm"', 'free_length = "169.9 mm"', WRONG),
        ('heated_length = "330 mm"', 'heated_length = "361 mm"', WRONG),
        ('guide_from_seat = "60 mm"', 'guide_from_seat = "30 mm"', FINE),
        ('guide_from_seat = "60 mm"', 'guide_from_seat = "29 mm"', WRONG),
        ('guide_length = "100 mm"', 'guide_length = "69 mm"', WRONG),
        ('guide_length = "100 mm"', 'guide_length = "290 mm"', FINE),  # it reaches to the gear
    ],
)
def test_a_spindle_is_free_from_guide_to_gear(
    workshop: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    found = workshop.write(SPINDLE).replace("spindle.toml", old, new).only("spindle.free-length")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(("valve", "ends"), [("90 mm", FINE), ("89.9 mm", WRONG), ("90 mm ±0.1", WRONG)])
def test_a_spindle_is_free_from_valve_to_guide_too(
    workshop: DesignFolder, valve: str, ends: tuple[str, Grade | None]
) -> None:
    """The guide moved to 290 mm from the seat, 20 mm long: 200 mm from a valve that ends at 90, 20 mm to the gear."""
    design = workshop.write(SPINDLE).replace("spindle.toml", "60 mm", f'290 mm"\nvalve_length = "{valve}')
    found = design.replace("spindle.toml", "100 mm", "20 mm").only("spindle.free-length")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(("length", "ends"), [("82 mm", FINE), ("82.1 mm", WRONG), ("55 mm", FINE)])
def test_no_more_of_a_spindle_belongs_to_its_valve_than_that_is_high(
    workshop: DesignFolder, length: str, ends: tuple[str, Grade | None]
) -> None:
    moves = f'moves = "valve"\nvalve_length = "{length}"\n'
    files = {
        "spindle.toml": SPINDLE["spindle.toml"] + moves,
        "valve.toml": 'kind = "poppet-valve"\nid = "valve"\nheight = "82 mm"\n',
    }
    found = workshop.write(files).only("spindle.free-length", "spindle")
    assert (found.outcome, found.grade) == ends
