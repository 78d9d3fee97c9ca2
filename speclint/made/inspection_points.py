"""Where the inspection of a part stops the work or calls the inspector, and what its spec asks for on paper.

A hold point stops the work until the inspector has released it; a witness point invites him to attend: EN 13445-5,
clause 6, and common practice. A point that the making of a part needs and nobody stated is told as such.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from speclint.errors import Location
from speclint.quantities import Measure
from speclint.specs import Component, CylinderLiner, NotStated, Stated, ValveSeat, Weldment

#: What is inspected at each point, by the key of the point.
_POINTS = {
    "welding": "welds, before they are covered",
    "pressing": "entry into its bore, or of what is pressed into it",
    "pressure_test": "hydraulic test",
    "lift_in": "lift into the frames",
}
#: What a spec asks for on paper, by the last word of its key: what it is, and where the record of a part made has it.
_ASKED = {
    "inspection_document": ("inspection document, EN 10204", "certificate"),
    "examination": ("examination", "examinations"),
    "examined": ("share of the weld examined by film or ultrasound", "examinations"),
    "procedure": ("qualified welding procedure, ISO 15614-1", "welds"),
    "welder": ("qualified welder, ISO 9606-1", "welds"),
    "quality": ("quality level of the weld, ISO 5817", "examinations"),
    "heat_treatment": ("heat treatment after welding", "heat_treatments"),
    "test_pressure": ("hydraulic test", "hydraulic_tests"),
    "check_valve_pressure": ("tightness test of the check valve", "hydraulic_tests"),
    "proof_load": ("proof load", "examinations"),
    "competent_body": ("review by the competent body", "certificate"),
}
_TABLES = ("welding", "joints", "fastening", "lubrication")


class InspectionPoint(Struct, frozen=True):
    """A point of the inspection: of what, how it stands, and where that is stated.

    ``stands`` is hold, witness or none as the spec has it; "not stated" where the making of the part needs the point
    and nobody stated it; "hold" of the release of a safety part.
    """

    what: str
    stands: str
    where: Location


class AskedOnPaper(Struct, frozen=True):
    """A certificate, an examination or a test that the spec asks for; ``record`` is the key of the made part."""

    what: str
    stated: str
    record: str
    where: Location


def inspection_points(part: Component) -> tuple[InspectionPoint, ...]:
    """The points of a part, in the order of its making; the release of a safety part is the last."""
    return tuple(_points(part))


def _points(part: Component) -> Iterator[InspectionPoint]:
    needed = set(_needed(part))
    for key, what in _POINTS.items():
        stated = getattr(part.inspection_points, key)
        if isinstance(stated, Stated):
            yield InspectionPoint(what, str(stated.value), stated.where)
        elif key in needed:
            yield InspectionPoint(what, "not stated", stated.where)
    if _is(part.safety_part):
        what = "release of the whole record by a competent person, before the part is fitted (safety part)"
        yield InspectionPoint(what, "hold", part.safety_part.where)


def _needed(part: Component) -> Iterator[str]:
    if isinstance(part, Weldment) or _is(part.welding.welded):
        yield "welding"
    if isinstance(part, CylinderLiner | ValveSeat):
        yield "pressing"
    if isinstance(part.test_pressure, Measure):
        yield "pressure_test"


def _is(stated: Stated[bool] | NotStated) -> bool:
    return isinstance(stated, Stated) and stated.value


def asked_on_paper(part: Component) -> tuple[AskedOnPaper, ...]:
    """The certificates, examinations and tests that a spec asks for, in the order of its keys."""
    return tuple(_asked(part))


def _asked(part: Component) -> Iterator[AskedOnPaper]:
    for key, value in part.at_keys():
        tables, _, last = key.rpartition(".")
        text = _text(value)
        if last not in _ASKED or not text or (tables and tables.split(".")[0] not in _TABLES):
            continue
        what, record = _ASKED[last]
        of = f" ({tables})" if tables else ""
        yield AskedOnPaper(f"{what}{of}", text, record, value.where)


def _text(value: Any) -> str:
    if isinstance(value, Measure):
        return value.text
    return str(value.value) if isinstance(value, Stated) else ""
