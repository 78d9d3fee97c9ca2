"""Geometrical tolerances that are whole, faces of joints that are flat, and holes that match."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

from speclint import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Grade,
    Judgement,
    Limit,
    Rule,
    Sheet,
    facts,  # what it works of joints is imported where there are any
    rule,
)
from speclint.equations import Metres, Radians, Ratio
from speclint.handbook.fits import DRAWING_TEMPERATURE, diametral_clearance, share_of_size
from speclint.specs import (
    FORMS,
    LOCATIONS,
    ORIENTATIONS,
    RUN_OUTS,
    Component,
    GeometricalTolerance,
    HolePattern,
    by_word,
)
from speclint_fits.formulae.geometry import (
    angles_apart,
    opening_of_zone,
    room_for_form,
    room_in_hole,
    unlike_growth,
    zone_of_coordinates,
    zones_hot,
    zones_together,
)
from speclint_fits.sources import ASME_PCC_1, ASME_Y14_5, ISO_1101, ISO_2692

if TYPE_CHECKING:
    from speclint.specs import BoltedJoint, LoadCase, ValveSpindle

Named = tuple[str, GeometricalTolerance, str]


@rule(
    "geometry.whole",
    edition=2,
    title="A tolerance of form has no datum and every other has one; each datum is closer in form by half than the "
    "zones that count from it; on one face form is no wider than orientation, and that than location",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_1101, COMMON_PRACTICE],
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
    t = sheet.take(f"t of {name}", one.zone)
    for datum in one.to:
        letter = sheet.read(f"datum of {name}", datum)
        if len(letter) == 1:
            yield _datum(letter, one, t, named, part, sheet)
    yield from _beside(item, t, named, sheet)


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
        sheet.take(f"t of {name}", one.zone)
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
            yield sheet.at_most(t, sheet.take(f"t of {other}", its.zone)).else_says(
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
    on=by_word.BoltedJoint,
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

    return sheet.each([(part.id, part) for part in _parts(joint, sheet)], judge)


def _parts(joint: BoltedJoint, sheet: Sheet) -> tuple[Component, Component]:
    """The part that the nuts hold and the one that it is held to."""
    stud = sheet.read("fastener", joint.fastener) == "stud"
    return sheet.follow(joint.holds), sheet.follow(joint.screwed_into if stud else joint.bolted_to)


def _flatness(part: Component, joint: BoltedJoint, kind: str, sheet: Sheet) -> Metres:
    def across() -> Metres:
        return sheet.take("D", (joint.ground_face if kind == "ground" else joint.gasket).outside)

    found = [
        sheet.take(f"t_{name} of {part.id}", one.zone)
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


@rule(
    "holes.match",
    title="The holes of two parts that one joint fastens are as many as it has studs, on its circle and from the same "
    "angle, and the room of each stud takes up both zones of position and unlike growth",
    on=by_word.BoltedJoint,
    cases=("warming", "running", "cooling"),
    grade=Grade.NONCONFORMITY,
    edition=3,
    cites=[ASME_Y14_5, FIRST_PRINCIPLES],
    why="a cover that does not go over its studs is filed until it does, and then its studs bend",
    leaves_out="reamed holes, which are fits; patterns off a circle; temperatures that differ over one part",
    against=(),
    limits=[],
)
def holes_match(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """H − F ≥ T_1 (1 + 2 P/D) + T_2, the tapped zone as it is unless projected, less what first angle and heat take."""
    from speclint.handbook.threads import nominal_diameter  # only where a joint has holes

    if sheet.read("seal", joint.seal) == "lens ring":
        raise sheet.not_applicable("its bolts pass two flanges alike, of which the lens joint says the sizes")
    parts = _parts(joint, sheet)
    one, other = (_pattern(part, joint, sheet) for part in parts)
    n, m = (_count(which, joint, sheet) for which in (one, other))
    studs = sheet.count("n", joint.count)
    said = f"{parts[0].id} has {n} holes, {parts[1].id} {m}, the joint {studs} studs"
    alike = sheet.states(n == m == studs, said, where=joint.where)
    circles = [
        sheet.take(f"D_{mark}", pattern.circle if sheet.is_stated("circle", pattern.circle) else joint.circle)
        for mark, pattern in (("1", one), ("2", other))
    ]
    same = sheet.equals(circles[0], circles[1], 0.0).else_says(
        "circle of the holes {found}, of the others {limit}"
    )
    drawn = sheet.equals(circles[0], sheet.take("D", joint.circle), 0.0).else_says(
        "circle of the holes {found}, of the studs {limit}"
    )
    grown = (_growth(mark, part, case, sheet) for mark, part in zip("21", parts, strict=True))
    Δε = sheet.work("Δε", unlike_growth, ε_2=next(grown), ε_1=next(grown))
    T_n = _taken(one, other, circles[0] / 2, n, joint, sheet)
    taken = sheet.work("T_h", zones_hot, T_n=T_n, r=circles[0] / 2, Δε=Δε)
    H = sheet.take("H", one.diameter if sheet.is_stated("hole", one.diameter) else joint.hole)
    F = sheet.look_up("F", nominal_diameter, designation=sheet.read("thread", joint.thread))
    room = sheet.at_most(taken, sheet.work("c", room_in_hole, H=H, F=F)).else_says(
        "zones of the holes take {found}, their room is {limit}"
    )
    return sheet.worst(alike, same, drawn, room)


def _pattern(part: Component, joint: BoltedJoint, sheet: Sheet) -> HolePattern:
    """The pattern of a part that names the joint."""
    for name, one in part.hole_patterns.items():
        if sheet.read(f"joint of {name}", one.joint) == joint.id:
            return one
    raise sheet.not_assessed(f"{part.id} states no pattern of holes for {joint.id}", part.where)


def _count(pattern: HolePattern, joint: BoltedJoint, sheet: Sheet) -> int:
    return sheet.count("z", pattern.count if sheet.is_stated("holes", pattern.count) else joint.count)


def _growth(mark: str, part: Component, case: LoadCase, sheet: Sheet) -> Ratio:
    """Growth of a part in a load case, since it was drawn."""
    T = sheet.take(f"T_{mark}", case.temperature_of(part))
    alpha = sheet.look_up(f"α_{mark}", sheet.material_of(part).expansion, of=part, at=T)
    drawn = {"alpha_0": 0.0, "T_0": DRAWING_TEMPERATURE, "T_ref": DRAWING_TEMPERATURE}
    return sheet.work(f"ε_{mark}", facts.strain_since, alpha=alpha, T=T, **drawn)


def _taken(
    one: HolePattern, other: HolePattern, r: Metres, z: int, joint: BoltedJoint, sheet: Sheet
) -> Metres:
    """What both zones and the first angle take of the room, on the diameter."""
    T_2, T_1 = _position("2", one, sheet), _position("1", other, sheet)
    k = 1.0
    if sheet.read("fastener", joint.fastener) == "stud" and not sheet.read("projected", other.projected):
        k = sheet.work(
            "k", opening_of_zone, P=facts.grip_held(joint, sheet), D=sheet.take("D", joint.tapped.engagement)
        )
    θ_1, θ_2 = sheet.take("θ_1", one.first_angle), sheet.take("θ_2", other.first_angle)
    Δθ: Radians = sheet.work("Δθ", angles_apart, θ_1=θ_1, θ_2=θ_2, z=z)
    return sheet.work("T_n", zones_together, T_1=T_1, k=k, T_2=T_2, r=r, Δθ=Δθ)


def _position(mark: str, pattern: HolePattern, sheet: Sheet) -> Metres:
    """The zone of a hole's axis: as stated, or by the error of its coordinates; the wider where both are."""
    zones = []
    if sheet.is_stated("zone", pattern.position):
        zones.append(sheet.take(f"T_{mark}", pattern.position))
    if not zones or sheet.is_stated("coordinates", pattern.coordinates):
        zones.append(
            sheet.work(f"T_{mark}", zone_of_coordinates, x=sheet.take(f"x_{mark}", pattern.coordinates))
        )
    return max(zones)


@rule(
    "geometry.room-for-form",
    edition=2,
    title="A spindle longer in its guide than 1.5 diameters keeps clearance there when both are as bent as their "
    "drawings allow",
    wrong="straightness takes the clearance in the guide: {left} left",
    on=by_word.ValveSpindle,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_2692, FIRST_PRINCIPLES],
    why="a long spindle that is in limits everywhere still binds where it is bent",
    leaves_out="heat (spindle.guide-clearance-hot), and other sliding fits",
    against=("seize",),
    limits=[
        Limit("long", "1.5", "ratio", COMMON_PRACTICE, "length over diameter from which straightness counts")
    ],
)
def room_in_guide(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """Least clearance less the straightness of spindle and guide."""
    d, L = sheet.take("d", spindle.diameter), sheet.take("L", spindle.guide_length)
    if sheet.work("L_n", share_of_size, k=sheet.limit("long", "k"), t=d) >= L:
        raise sheet.not_applicable("the guide is short")
    c = sheet.work("c_0", diametral_clearance, D=sheet.take("D_g", spindle.guide_bore), d=d)
    t_1, t_2 = (_straightness(spindle, face, L, sheet) for face in ("guide", "diameter"))
    return sheet.stays(sheet.work("c", room_for_form, c_0=c, t_1=t_1, t_2=t_2), c)


def _straightness(spindle: ValveSpindle, face: str, L: Metres, sheet: Sheet) -> Metres:
    found = [
        sheet.take(f"t_{name}", one.zone)
        for name, one in spindle.tolerances.items()
        if sheet.read(f"form of {name}", one.form) in ("straight", "cylindrical")
        and sheet.read(f"face of {name}", one.of) == face
        and _holds_over(name, one, lambda: L, sheet)
    ]
    if not found:
        said = f"{spindle.id} states no straightness of its {face} over the length of the guide"
        raise sheet.not_assessed(said, spindle.where)
    return min(found)


RULES: tuple[Rule, ...] = (whole, joint_face_flat, holes_match, room_in_guide)
