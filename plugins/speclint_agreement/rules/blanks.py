"""A casting or a weldment and the part that it becomes state one size of each machined face, and one metal."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import length_over_collar
from speclint.specs import (
    Casting,
    Component,
    CylinderCover,
    CylinderLiner,
    Length,
    MachinedFace,
    NotStated,
    Stated,
    Weldment,
)
from speclint_agreement.formulae.blanks import finished_wall, with_allowance

#: The keys that give a wall of a finished part: one thickness, or the outside and the inside of a ring.
_WALLS: dict[type[Component], dict[str, tuple[str, ...]]] = {
    CylinderLiner: {"barrel": ("outside_diameter", "bore"), "collar": ("collar.thickness",)},
    CylinderCover: {"plate": ("thickness",), "flange": ("flange_thickness",)},
}

#: What a face names as its key that is the length of a liner with its collar, for which no spec has a key.
_OVER_COLLAR = "length over collar"


def _faces(blank: Casting | Weldment, sheet: Sheet) -> Iterator[Pair]:
    """The dimension of each face that names a key of the finished part against what stands under it, as drawn."""
    part: Component = sheet.follow(blank.becomes) if isinstance(blank, Casting) else sheet.follow(blank.makes)
    for name, face in blank.faces.items():
        if sheet.is_stated(f"key of {name}", face.of_key):
            yield Pair(face.dimension, _under(part, face.of_key, name, sheet), name=name)
    if isinstance(blank, Casting):
        if isinstance(part, CylinderLiner):
            yield from _unnamed(blank, part, sheet)
        for name, meeting in blank.meetings.items():
            for here, wall in ((meeting.thick, meeting.thick_of), (meeting.thin, meeting.thin_of)):
                if sheet.is_stated(f"wall at {name}", wall):
                    there = _as_cast(blank, part, wall, sheet)
                    yield Pair(here, there, name=f"{sheet.read(f'wall at {name}', wall)} at {name}")


def _unnamed(casting: Casting, liner: CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """Each face that names no key, while bore, outside or length of the liner is named by no face."""
    keys = {name: sheet.said(f"key of {name}", face.of_key) for name, face in casting.faces.items()}
    main = {
        ("bore",): liner.bore,
        ("outside_diameter",): liner.outside_diameter,
        ("length", _OVER_COLLAR): liner.length,
    }
    stated = [names for names, size in main.items() if sheet.is_stated(names[0], size)]
    if all(any(key in names for key in keys.values()) for names in stated):
        return
    for name, face in casting.faces.items():
        if keys[name] is None:
            yield Pair(face.dimension, face.of_key, name=name)


def _as_cast(
    casting: Casting,
    part: Component,
    wall: Stated[Literal["barrel", "collar", "plate", "flange"]] | NotStated,
    sheet: Sheet,
) -> Worked:
    """A wall of the finished part with the allowance of each face of it that is machined."""
    called = sheet.read("wall", wall)
    walls = next((walls for kind, walls in _WALLS.items() if isinstance(part, kind)), {})
    if called not in walls:
        raise sheet.not_assessed(f"a {part.called} has no wall called {called}", wall.where)
    keys = walls[called]
    sizes = [part.under(key) for key in keys]
    given = [sheet.take_nominal(symbol, size) for symbol, size in zip(("D", "d"), sizes, strict=False)]
    thick = given[0] if len(given) == 1 else sheet.work("t_0", finished_wall, D=given[0], d=given[1])
    places = [size.where for size in sizes]
    for face in _faces_of(casting, keys, sheet):
        sides = 1 if len(keys) > 1 else 2 if sheet.read("both sides", face.both_sides) else 1
        for _ in range(sides):
            thick = sheet.work("t", with_allowance, t_0=thick, z=sheet.take_nominal("z", face.allowance))
        places.append(face.allowance.where)
    return Worked(thick, tuple(places))


def _faces_of(casting: Casting, keys: tuple[str, ...], sheet: Sheet) -> list[MachinedFace]:
    return [
        face
        for name, face in casting.faces.items()
        if (sheet.said(f"key of {name}", face.of_key) or "") in keys
    ]


def _under(part: Component, key: Stated[str] | NotStated, name: str, sheet: Sheet) -> Length | Worked:
    wanted = sheet.read(f"key of {name}", key)
    if wanted == _OVER_COLLAR and isinstance(part, CylinderLiner):
        return length_over_collar(part, sheet, sheet.take_nominal)
    try:
        return part.under(wanted)
    except LookupError:
        raise sheet.not_assessed(f'{part.id} has no dimension "{wanted}"', key.where) from None


def _metals(casting: Casting, sheet: Sheet) -> Iterator[Pair]:
    """The metal that is poured against that of the finished part."""
    yield Pair(casting.material, sheet.follow(casting.becomes).material)


faces_of_part: Rule = agreement(
    "blank.faces-of-part",
    title="The dimension of each machined face of a casting or a weldment is the one that the finished part gives it, "
    "and walls that meet are as thick as its walls with their allowances",
    on=(Casting, Weldment),
    pairs=_faces,
    within="0.5 mm",
    grade=Grade.NONCONFORMITY,
    why="the metal left on a face is reckoned by its size; for a part of another size too little is left",
    leaves_out="faces that name no key of the finished part, of a liner where others name its bore, its outside and "
    "its length; meeting walls that do not say which they are",
    edition=3,
)

of_its_part: Rule = agreement(
    "blank.of-its-part",
    title="A casting is of the metal of the part that it becomes",
    on=Casting,
    pairs=_metals,
    within="",
    grade=Grade.NONCONFORMITY,
    why="the foundry pours what the drawing of the casting says, and strength is reckoned by that of the part",
    leaves_out="a part whose spec states no material",
)

RULES = (faces_of_part, of_its_part)
