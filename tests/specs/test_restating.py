"""Whether a spec could state another quantity: as its own reading would say."""

from __future__ import annotations

import pytest

from speclint.quantities import read
from speclint.specs import Weldment, could_state
from speclint.specs.kinds.chamber_cover import ChamberCover
from speclint.specs.kinds.weldment import Plate
from tests.tubes import Tube


def cover() -> ChamberCover:
    return ChamberCover(id="cover", thickness=read("20 mm", "length"), as_made=read("22 mm", "length"))


@pytest.mark.parametrize(
    ("text", "could"),
    [("22 mm", True), ("22.1 mm", False), ("4 mm", True), ("3.9 mm", False), ("-5 mm", False)],
)
def test_sign_span_and_geometry_are_held(text: str, could: bool) -> None:
    """A cover is 4 mm to 200 mm thick, and no thicker than the plate that it is made of."""
    assert could_state(cover(), "thickness", read(text, "length", "any")) is could


@pytest.mark.parametrize(("text", "could"), [("25 mm", True), ("26 mm", False), ("2 mm", False)])
def test_a_table_within_is_held_too(text: str, could: bool) -> None:
    plate = Plate(thickness=read("20 mm", "length"), rolled_thickness=read("25 mm", "length"))
    weldment = Weldment(id="block", plates={"web": plate})
    assert could_state(weldment, "plates.web.thickness", read(text, "length", "any")) is could


def test_a_key_that_leads_to_no_quantity_is_told() -> None:
    for key in ("hoops", "bore", "thickness", "bore.width"):
        with pytest.raises(LookupError):
            could_state(Tube(id="tube"), key, read("5 mm", "length"))
