"""A casting or a weldment and the part that it becomes state one size of each machined face, and one metal."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.specs import Casting, Component, Length, NotStated, Stated, Weldment


def _faces(blank: Casting | Weldment, sheet: Sheet) -> Iterator[Pair]:
    """The dimension of each face that names a key of the finished part against what stands under it, as drawn."""
    part: Component = sheet.follow(blank.becomes) if isinstance(blank, Casting) else sheet.follow(blank.makes)
    for name, face in blank.faces.items():
        if sheet.is_stated(f"key of {name}", face.of_key):
            yield Pair(face.dimension, _under(part, face.of_key, name, sheet), name=name)


def _under(part: Component, key: Stated[str] | NotStated, name: str, sheet: Sheet) -> Length:
    wanted = sheet.read(f"key of {name}", key)
    try:
        return part.under(wanted)
    except LookupError:
        raise sheet.not_assessed(f'{part.id} has no dimension "{wanted}"', key.where) from None


def _metals(casting: Casting, sheet: Sheet) -> Iterator[Pair]:
    """The metal that is poured against that of the finished part."""
    yield Pair(casting.material, sheet.follow(casting.becomes).material)


faces_of_part: Rule = agreement(
    "blank.faces-of-part",
    title="The dimension of each machined face of a casting or a weldment is the one that the finished part gives it",
    on=(Casting, Weldment),
    pairs=_faces,
    within="0.5 mm",
    grade=Grade.NONCONFORMITY,
    why="the metal left on a face is reckoned by its size; for a part of another size too little is left",
    leaves_out="faces that name no key of the finished part",
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
