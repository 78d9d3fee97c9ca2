"""Metals that are welded."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Ratio
from speclint.facts import is_welded
from speclint.handbook.materials import carbon_equivalent, preheat_band
from speclint.specs import Component, CylinderBlock, NotStated, Stated, Weldment
from speclint_pairings.inputs.components import holds_pressure, require_metal
from speclint_pairings.sources import ASME_VIII, EN_1011_2, EN_13445_2

if TYPE_CHECKING:
    from speclint.specs import Plate, Welding

_IRONS = ("grey-iron", "chilled-iron")
_ELEMENTS = ("C", "Mn", "Cr", "Mo", "V", "Ni", "Cu")


@rule(
    "material.weldability",
    title="A welded part, of all its plates the one of greatest carbon equivalent, has at most 0.40 %, or is given "
    "the preheat that it needs and, above 0.55 %, a heat treatment other than none",
    wrong="preheat {found}, {limit} wanted",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[EN_1011_2.at("C.2.1, carbon equivalent"), COMMON_PRACTICE],
    why="beside a weld that cools fast a steel rich in carbon hardens, and may crack hours later",
    leaves_out="elements that the standard does not limit, plate thickness, hydrogen and heat input, tabs and plugs "
    "that are welded in place, a weld that no word, point of inspection or record names: the welding "
    "procedure and a qualified welding engineer decide",
    against=(),
    edition=5,
    limits=[
        Limit(
            "free",
            "0.40 %",
            "ratio",
            COMMON_PRACTICE,
            "carbon equivalent up to which no preheat is needed",
        ),
        Limit(
            "treated",
            "0.55 %",
            "ratio",
            COMMON_PRACTICE,
            "carbon equivalent from which a weld is heat treated afterwards",
        ),
    ],
)
def weldability(component: Component, sheet: Sheet) -> Judgement:
    """CE as the inspection document has it, or the most that the standard's composition allows.

    Of a weldment, and of the block that it becomes, the plate with the greatest counts: each is joined to another. The
    preheat is compared with the upper end of the band for that CE.
    """
    weldments = _weldments(component, sheet)
    if not weldments:
        require_metal(component, sheet)
    if not (weldments or is_welded(component, sheet)):
        raise sheet.not_applicable("it is not stated to be welded, and nothing else names a weld of it")
    CE = max(_carbon_equivalent(piece, sheet) for piece in _pieces(component, weldments, sheet))
    free = sheet.at_most(CE, sheet.limit("free"))
    if free.holds:
        return free
    welding = component.welding
    if not sheet.is_stated("preheat", welding.preheat):
        return sheet.states(False, f"{free.says}: preheat is not stated", where=welding.preheat.where)
    preheated = sheet.at_least(sheet.take("T_p", welding.preheat), sheet.look_up("T_n", preheat_band, CE=CE))
    treated = sheet.at_most(CE, sheet.limit("treated"))
    if treated.holds:
        return preheated
    return sheet.worst(preheated, _heat_treated(component, treated, sheet))


def _heat_treated(component: Component, treated: Judgement, sheet: Sheet) -> Judgement:
    stated = component.welding.heat_treatment
    if not sheet.is_stated("heat treatment", stated):
        return sheet.states(
            False, f"{treated.says}: heat_treatment after welding is not stated", where=stated.where
        )
    given = sheet.read("heat treatment", stated)
    return sheet.states(given != "none", f"{treated.says}: heat treatment {given}", where=stated.where)


class _Piece(Struct, frozen=True):
    """A piece of metal that is welded: what it is called, whose it is, its own table, its material."""

    called: str
    part: Component
    of: Welding | Plate
    material: Stated[str] | NotStated


def _weldments(component: Component, sheet: Sheet) -> tuple[Weldment, ...]:
    """The weldment that a component is, or those of which it is made."""
    if isinstance(component, Weldment):
        return (component,)
    return sheet.belonging_to(component, Weldment) if isinstance(component, CylinderBlock) else ()


def _pieces(component: Component, weldments: tuple[Weldment, ...], sheet: Sheet) -> list[_Piece]:
    plates = [
        _Piece(f"{name} of {weldment.id}", weldment, plate, plate.material)
        for weldment in weldments
        for name, plate in weldment.plates.items()
    ]
    own = _Piece(component.id, component, component.welding, component.material)
    if plates and not sheet.is_stated("carbon equivalent", component.welding.carbon_equivalent):
        return plates  # the weldment's plates are all the metal there is
    return [own, *plates]


def _carbon_equivalent(piece: _Piece, sheet: Sheet) -> Ratio:
    called = piece.called
    if sheet.is_stated(f"carbon equivalent of {called}", piece.of.carbon_equivalent):
        return sheet.take(f"CE of {called}", piece.of.carbon_equivalent)
    material = sheet.material_named(called, piece.material)
    if material.family in _IRONS:
        raise sheet.not_covered(
            f"{material.title}: the carbon equivalent of steel does not apply to cast iron"
        )
    held = material.elements()
    contents = {
        name: sheet.look_up(f"{name} of {called}", material.composition, of=piece.part, element=name)
        if name in held
        else 0.0
        for name in _ELEMENTS
    }
    return sheet.work(f"CE of {called}", carbon_equivalent, **contents)


@rule(
    "material.iron-weld",
    title="Grey or chilled iron that holds pressure is not welded",
    on=Component,
    grade=Grade.HOLD,
    cites=[ASME_VIII.at("UCI-78, repairs of cast iron"), EN_13445_2.at("scope, castings"), COMMON_PRACTICE],
    why="the weld and the iron beside it become hard and brittle, and crack at the first steam",
    edition=8,
    leaves_out="cold mechanical repairs, and plugs where a code permits them: the local code and a "
    "competent person decide",
    against=(),
)
def iron_weld(component: Component, sheet: Sheet) -> Judgement:
    """Applies to pressure parts of grey or chilled iron, each of which must say whether it is welded."""
    require_metal(component, sheet)
    if not holds_pressure(component, sheet):
        raise sheet.not_applicable("it is not stated to be a pressure part")
    material = sheet.material_of(component)
    if material.family not in _IRONS:
        raise sheet.not_applicable(f"{material.title} is neither grey nor chilled iron")
    welded = is_welded(component, sheet) or sheet.read("welded", component.welding.welded)
    says = f"{material.title} holds pressure and is {'' if welded else 'not '}welded"
    return sheet.states(not welded, says, where=component.material.where)


RULES = (weldability, iron_weld)
