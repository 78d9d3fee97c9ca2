"""Geometrical tolerances that are whole, faces of joints that are flat, and holes that match."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from speclint import (
    COMMON_PRACTICE,
    Grade,
    Judgement,
    Limit,
    Rule,
    Sheet,
    rule,
)
from speclint.equations import Metres
from speclint.facts import size_with_zone, stated_zone
from speclint.handbook.fits import share_of_size
from speclint.specs import (
    FORMS,
    LOCATIONS,
    ORIENTATIONS,
    RUN_OUTS,
    BoltedJoint,
    Component,
    GeometricalTolerance,
)
from speclint_fits.sources import ASME_PCC_1, ISO_1101, ISO_2692

Named = tuple[str, GeometricalTolerance, str]

#: Beside orientation what is stated of an axis, whose zone may be round.
_OF_AXES = ("straight", "position", "coaxial")


@rule(
    "geometry.whole",
    edition=3,
    title="A zone is written as in ISO 1101: form without a datum, all else from one, round or modified where it may "
    "be; a datum is closer by half than what counts from it; form ≤ orientation ≤ location",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_1101, ISO_2692, COMMON_PRACTICE],
    why="a zone that counts from nothing, or from a face that is itself out of true, cannot be measured",
    leaves_out="whether a tolerance suits its purpose, and datums that are other parts",
    against=(),
    limits=[
        Limit(
            "datum",
            "0.5",
            "ratio",
            COMMON_PRACTICE,
            "greatest form of a datum over the zone that counts from it",
        )
    ],
)
def whole(part: Component, sheet: Sheet) -> Judgement:
    """Each tolerance by its word, its datums, and beside the others of its face."""
    if not part.tolerances:
        raise sheet.not_applicable("it states no geometrical tolerance")
    named: list[Named] = [
        (name, one, sheet.read(f"form of {name}", one.form)) for name, one in part.tolerances.items()
    ]
    return sheet.each(named, lambda item: sheet.worst(*_whole(item, named, part, sheet)))


def _whole(item: Named, named: list[Named], part: Component, sheet: Sheet) -> Iterator[Judgement]:
    name, one, form = item
    if form in FORMS:
        says = f"{name}: a tolerance of form counts from nothing"
        yield sheet.states(not one.to or form == "profile", says, where=part.where)
    else:
        yield sheet.states(bool(one.to), f"{name}: {form} counts from a datum", where=part.where)
    t = sheet.take(f"t of {name}", stated_zone(name, one, sheet))
    yield from _written(item, part, sheet)
    for datum in one.to:
        letter = sheet.read(f"datum of {name}", datum)
        if len(letter) == 1:
            yield _datum(letter, one, t, named, part, sheet)
    yield from _beside(item, t, named, sheet)


def _written(item: Named, part: Component, sheet: Sheet) -> Iterator[Judgement]:
    """A zone is either so wide or round, and says at maximum material or projected only where that means something."""
    name, one, form = item
    if sheet.is_stated(f"diameter of {name}", one.diameter_zone):
        both = sheet.is_stated(f"width of {name}", one.zone)
        said = f"{name}: a zone has a width or a diameter, not both"
        yield sheet.states(not both, said, where=one.where)
        said = f"{name}: {form} of an axis, which alone has a round zone"
        yield sheet.states(form in (*_OF_AXES, *ORIENTATIONS), said, where=one.where)
    if not sheet.is_stated(f"modifier of {name}", one.modifier):
        return
    if sheet.read(f"modifier of {name}", one.modifier) == "P":
        said = f"{name}: a projected zone is one of position or orientation, and says how far it projects"
        projects = sheet.is_stated(f"projection of {name}", one.projects)
        yield sheet.states(projects and form in ("position", *ORIENTATIONS), said, where=one.where)
        return
    may = form in ("straight", *ORIENTATIONS, *LOCATIONS)
    said = f"{name}: maximum material is for straightness, orientation and location"
    yield sheet.states(may, said, where=one.where)
    size = size_with_zone(name, one, part, sheet)
    said = f"{name}: the size that leaves maximum material has limits"
    yield sheet.states(sheet.tolerance(f"T of {name}", size) > 0, said, where=one.where)


def _datum(
    letter: str, one: GeometricalTolerance, t: Metres, named: list[Named], part: Component, sheet: Sheet
) -> Judgement:
    """A datum of the part is another face than the one that counts from it, and closer in form than that zone."""
    if letter not in part.datums:
        return sheet.states(False, f"datum {letter} is not stated", where=part.where)
    face = sheet.read(f"face of datum {letter}", part.datums[letter].feature)
    if face == sheet.read(f"face that counts from {letter}", one.of):
        return sheet.states(False, f"{face} counts from datum {letter}, which it is itself", where=one.where)
    forms = [
        sheet.take(f"t of {name}", stated_zone(name, one, sheet))
        for name, one, form in named
        if form in FORMS and sheet.read(f"face of {name}", one.of) == face
    ]
    if not forms:
        return sheet.states(False, f"datum {letter}, {face}, has no tolerance of form", where=part.where)
    allowed = sheet.work("t_n", share_of_size, k=sheet.limit("datum", "k"), t=t)
    return sheet.at_most(min(forms), allowed).else_says(
        f"datum {letter} may be {{found}} out of true, {{limit}} allowed by what counts from it"
    )


def _beside(item: Named, t: Metres, named: list[Named], sheet: Sheet) -> Iterator[Judgement]:
    """Wider zones of a stricter word on the same face."""
    name, one, form = item
    rank, face = _rank(form), sheet.read(f"face of {name}", one.of)
    for other, its, word in named:
        if _rank(word) > rank and sheet.read(f"face of {other}", its.of) == face:
            yield sheet.at_most(t, sheet.take(f"t of {other}", stated_zone(other, its, sheet))).else_says(
                f"{name} allows {{found}}, {other} of the same face {{limit}}"
            )


def _rank(form: str) -> int:
    """Form, orientation, location and run-out, each of which holds in what comes before it."""
    ranks = (FORMS, ORIENTATIONS, (*LOCATIONS, *RUN_OUTS))
    return next(rank for rank, words in enumerate(ranks) if form in words)


@rule(
    "geometry.joint-face-flat",
    edition=2,
    title="Both faces of a joint are flat to what its seal takes up: 0.25 mm under a flat gasket, 0.15 mm under a "
    "ring, 0.02 mm ground metal to metal",
    on=BoltedJoint,
    grade=Grade.NONCONFORMITY,
    cites=[ASME_PCC_1, COMMON_PRACTICE],
    why="a face that is hollow by more than its gasket gives leaks however hard its studs pull",
    leaves_out="lens rings, which turn in their seats; scratches and steps across the face; bending by the studs",
    against=("leak",),
    limits=[
        Limit("flat", "0.25 mm", "length", ASME_PCC_1, "greatest flatness under a flat gasket"),
        Limit("ring", "0.15 mm", "length", ASME_PCC_1, "greatest flatness under a ring in a groove"),
        Limit("ground", "0.02 mm", "length", COMMON_PRACTICE, "greatest flatness of a ground face"),
    ],
)
def joint_face_flat(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """The flatness that each part states of the whole face of the joint, after welding and stress relief."""
    seal = sheet.read("seal", joint.seal)
    if seal == "lens ring":
        raise sheet.not_applicable("a lens ring turns in its seats")
    kind = "ground"
    if seal == "gasket":
        kind = "flat" if sheet.read("form of the gasket", joint.gasket.form) == "flat" else "ring"

    def judge(item: tuple[str, Component]) -> Judgement:
        t = _flatness(item[1], joint, kind, sheet)
        return sheet.at_most(t, sheet.limit(kind)).else_says(
            "face of {item} may be {found} out of flat, {limit} allowed"
        )

    return sheet.each([(part.id, part) for part in parts_joined(joint, sheet)], judge)


def parts_joined(joint: BoltedJoint, sheet: Sheet) -> tuple[Component, Component]:
    """The part that the nuts hold and the one that it is held to."""
    stud = sheet.read("fastener", joint.fastener) == "stud"
    return sheet.follow(joint.holds), sheet.follow(joint.screwed_into if stud else joint.bolted_to)


def _flatness(part: Component, joint: BoltedJoint, kind: str, sheet: Sheet) -> Metres:
    def across() -> Metres:
        return sheet.take("D", (joint.ground_face if kind == "ground" else joint.gasket).outside)

    found = [
        sheet.take(f"t_{name} of {part.id}", stated_zone(name, one, sheet))
        for name, one in part.tolerances.items()
        if sheet.read(f"form of {name}", one.form) == "flat"
        and sheet.read(f"face of {name}", one.of) == joint.id
        and _holds_over(name, one, across, sheet)
    ]
    if not found:
        raise sheet.not_assessed(f"{part.id} states no flatness of the whole face of {joint.id}", part.where)
    return min(found)


def _holds_over(name: str, one: GeometricalTolerance, length: Callable[[], Metres], sheet: Sheet) -> bool:
    """Whether a zone holds over a whole length: it does where it states none of its own."""
    if not sheet.is_stated(f"length of {name}", one.over):
        return True
    return sheet.take(f"l_{name}", one.over) >= length()


RULES: tuple[Rule, ...] = (whole, joint_face_flat)
