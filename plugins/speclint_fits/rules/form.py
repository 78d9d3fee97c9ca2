"""What form takes of the room of a long sliding fit, and of the interference of a press fit."""

from __future__ import annotations

from msgspec import Struct

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres
from speclint.facts import holds_at_most_material, stated_zone, zone_beside_size
from speclint.handbook.fits import (
    DIN_7190_2001,
    diametral_clearance,
    interference_after_smoothing,
    share_of_size,
)
from speclint.specs import Component, Fit, GeometricalTolerance, Length, ValveSpindle
from speclint_fits.formulae.geometry import departure_from_material, room_for_form
from speclint_fits.inputs.fits import intent_of, sizes_of
from speclint_fits.sources import ISO_1101, ISO_2692

_STRAIGHT, _ROUND = ("straight", "cylindrical"), ("round", "cylindrical", "total run-out", "run-out")


@rule(
    "geometry.room-for-form",
    edition=3,
    title="A spindle in its guide or a sliding fit, longer than 1.5 diameters, keeps clearance as bent as drawings "
    "allow; a press fit keeps interference as far out of round as they allow, its faces smoothed",
    wrong="form takes all of the fit: {left} left",
    on=(ValveSpindle, Fit),
    grade=Grade.NONCONFORMITY,
    cites=[ISO_1101, ISO_2692, DIN_7190_2001, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a long spindle that is in limits everywhere still binds where it is bent, and a lobed ring grips on its lobes",
    leaves_out="heat (spindle.guide-clearance-hot, fit.hot); a sliding fit in a class of tolerance, whose form lies "
    "within its limits; transition fits",
    against=("seize",),
    against_on={"fit": ("loosen",)},
    limits=[
        Limit("long", "1.5", "ratio", COMMON_PRACTICE, "length over diameter from which straightness counts")
    ],
)
def room_for_form_of_fit(part: ValveSpindle | Fit, sheet: Sheet) -> Judgement:
    """Least clearance less the straightness of both; least interference less smoothing and the roundness of both."""
    if isinstance(part, ValveSpindle):
        return _in_guide(part, sheet)
    intent = intent_of(part, sheet)
    if intent == "transition":
        raise sheet.not_applicable("a transition fit may have clearance or interference")
    if intent == "clearance":
        return _sliding(part, sheet)
    return _pressed(part, sheet)


class _Face(Struct, frozen=True):
    """A face of a fit: the part and the key that it has there, its size as drawn and at this corner; inside or not."""

    part: Component
    key: str
    drawn: Length
    size: Metres
    inside: bool


def _in_guide(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    d, L = sheet.take("d", spindle.diameter), sheet.take("L", spindle.guide_length)
    if sheet.work("L_n", share_of_size, k=sheet.limit("long", "k"), t=d) >= L:
        raise sheet.not_applicable("the guide is short")
    D = sheet.take("D_g", spindle.guide_bore)
    c = sheet.work("c_0", diametral_clearance, D=D, d=d)
    faces = (
        _Face(spindle, "guide", spindle.guide_bore, D, inside=True),
        _Face(spindle, "diameter", spindle.diameter, d, inside=False),
    )
    t_1, t_2 = (_asked(face, _STRAIGHT, "straightness", L, sheet) for face in faces)
    return sheet.stays(sheet.work("c", room_for_form, c_0=c, t_1=t_1, t_2=t_2), c)


def _sliding(fit: Fit, sheet: Sheet) -> Judgement:
    D, d = (sheet.take(symbol, sheet.dimension(one)) for symbol, one in (("D", fit.hole), ("d", fit.shaft)))
    L = sheet.take("L", sheet.dimension(fit.length))
    if sheet.work("L_n", share_of_size, k=sheet.limit("long", "k"), t=d) >= L:
        raise sheet.not_applicable("the fit is short")
    c = sheet.work("c_0", diametral_clearance, D=D, d=d)
    t_1, t_2 = (
        0.0
        if sheet.tolerance_class(face.drawn) and _zone(face, _STRAIGHT, L, sheet) is None
        else _asked(face, _STRAIGHT, "straightness", L, sheet)
        for face in _faces(fit, D, d, sheet)
    )
    return sheet.stays(sheet.work("c", room_for_form, c_0=c, t_1=t_1, t_2=t_2), c)


def _pressed(fit: Fit, sheet: Sheet) -> Judgement:
    sizes = sizes_of(fit, sheet)
    L = sheet.take("L", sheet.dimension(fit.length))
    left = sheet.work(
        "δ_w",
        interference_after_smoothing,
        delta=sizes.delta,
        Rz_in=sheet.take("Rz_in", fit.shaft_roughness),
        Rz_out=sheet.take("Rz_out", fit.hole_roughness),
    )
    faces = _faces(fit, sizes.hole, sizes.shaft, sheet)
    t_1, t_2 = (_asked(face, _ROUND, "roundness", L, sheet) for face in faces)
    return sheet.stays(sheet.work("δ_f", room_for_form, c_0=left, t_1=t_1, t_2=t_2), sizes.delta)


def _faces(fit: Fit, D: Metres, d: Metres, sheet: Sheet) -> tuple[_Face, _Face]:
    """Hole and shaft of a fit on the parts that have them."""
    hole, shaft = (
        _Face(
            sheet.follow(one.of),
            sheet.read(f"{side} of its part", one.dimension),
            sheet.dimension(one),
            size,
            side == "hole",
        )
        for side, one, size in (("hole", fit.hole, D), ("shaft", fit.shaft, d))
    )
    return hole, shaft


def _asked(face: _Face, forms: tuple[str, ...], word: str, L: Metres, sheet: Sheet) -> Metres:
    t = _zone(face, forms, L, sheet)
    if t is None:
        said = f"{face.part.id} states no {word} of its {face.key} over the whole length"
        raise sheet.not_assessed(said, face.part.where)
    return t


def _zone(face: _Face, forms: tuple[str, ...], L: Metres, sheet: Sheet) -> Metres | None:
    """The least zone of one of these forms that holds over the whole length; None where none is stated."""
    part = face.part
    found = [
        _wide(name, one, face, sheet)
        for name, one in part.tolerances.items()
        if sheet.read(f"form of {name} of {part.id}", one.form) in forms
        and sheet.read(f"face of {name} of {part.id}", one.of) == face.key
        and _holds_over(name, one, L, sheet)
    ]
    return min(found) if found else None


def _wide(name: str, one: GeometricalTolerance, face: _Face, sheet: Sheet) -> Metres:
    """The width of a zone, which at maximum material grows by as much as the size has left that."""
    t = sheet.take(f"t_{name} of {face.part.id}", stated_zone(name, one, sheet))
    if not holds_at_most_material(name, one, sheet):
        return t
    low, high = sheet.take_limits(f"x of {name}", face.drawn)
    T = sheet.work(f"T of {name}", departure_from_material, x=face.size, x_m=low if face.inside else high)
    return sheet.work(f"t of {name}", zone_beside_size, t=t, T=T)


def _holds_over(name: str, one: GeometricalTolerance, length: Metres, sheet: Sheet) -> bool:
    """Whether a zone holds over a whole length: it does where it states none of its own."""
    if not sheet.is_stated(f"length of {name}", one.over):
        return True
    return sheet.take(f"l_{name}", one.over) >= length


RULES: tuple[Rule, ...] = (room_for_form_of_fit,)
