"""A pipe and its neighbours in the path of the steam state one steam."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.facts import bore_of_pipe, steams_beside
from speclint.handbook.fits import share_of_size
from speclint.specs import BoltedJoint, Component, LensJoint, PipeFlange, SteamPipe
from speclint_agreement.formulae.pipes import beyond_faces, less_step, longest_straight, size_of_share


def _steam(pipe: SteamPipe, sheet: Sheet) -> Iterator[Pair]:
    """What the pipe states, and what each passage or pipe before or after it, and the opening at its end, carries.

    Of a pipe that states nothing its neighbours among one another.
    """
    beside = steams_beside(pipe, sheet)
    for one in beside:
        yield Pair(pipe.carries, one)
    if not sheet.is_stated("steam of the pipe", pipe.carries):
        for other in beside[1:]:
            yield Pair(other, beside[0], name="neighbours")


def _lengths(pipe: SteamPipe, sheet: Sheet) -> Iterator[Pair]:
    """The developed length against the distance of the anchors, where no bend is stated."""
    if not (
        sheet.is_stated("distance of anchors", pipe.anchor_distance)
        and sheet.is_stated("length", pipe.length)
    ):
        return
    if sheet.count("n", pipe.bends) == 0:
        length, apart = sheet.take_nominal("L", pipe.length), sheet.take_nominal("L_a", pipe.anchor_distance)
        most = sheet.work("L_m", longest_straight, L_a=apart, x=sheet.limit("straight", "x"))
        without = worked(length, pipe.length, pipe.bends)
        yield Pair(without, worked(most, pipe.anchor_distance), "at most", name="no bends")


def _anchors(pipe: SteamPipe, sheet: Sheet) -> Iterator[Pair]:
    """The distance of the anchors against that between the faces at both ends: a share of it, and little more.

    Of the pipe's own length between its faces and of the gap that it goes into the greater counts. A pipe without bends
    is no longer than that distance over the same share.
    """
    faces = [one for one in (pipe.faces_gap, pipe.faces_length) if sheet.is_stated("faces of its ends", one)]
    taken = [(sheet.take_nominal(f"L_{number}", one), one) for number, one in enumerate(faces, start=1)]
    if not taken:
        return
    apart, between = max(taken, key=lambda one: one[0])
    k = sheet.limit("share", "k")
    if sheet.is_stated("distance of anchors", pipe.anchor_distance):
        least = sheet.work("U_l", share_of_size, k=k, t=apart)
        yield Pair(pipe.anchor_distance, worked(least, between), "at least", name="anchors")
        far = sheet.work("U_m", beyond_faces, t=apart, b=sheet.limit("beyond", "b"))
        yield Pair(pipe.anchor_distance, worked(far, between), "at most", name="anchors beyond the faces")
    stated = all(sheet.is_stated("length or bends", one) for one in (pipe.length, pipe.bends))
    if stated and sheet.count("n", pipe.bends) == 0:
        L, most = sheet.take_nominal("L", pipe.length), sheet.work("L_m", size_of_share, t=apart, k=k)
        yield Pair(worked(L, pipe.length, pipe.bends), worked(most, between), "at most", name="no bends")


def _rings(lens: LensJoint, sheet: Sheet) -> Iterator[Pair]:
    """The bore of the ring against that of its pipe, and the mouth of its seat against the collar that it is cut in."""
    pipe = sheet.follow(lens.of)
    if not isinstance(pipe, SteamPipe):
        return
    if sheet.is_stated("collar of the pipe", pipe.collar_diameter):
        yield Pair(lens.seat_mouth, pipe.collar_diameter, "at most", name="mouth of the seat")
    D, t = sheet.take_nominal("D", pipe.outside_diameter), sheet.take_nominal("t", pipe.wall)
    inside = sheet.work("d", bore_of_pipe, D=D, t=t)
    yield Pair(lens.bore, worked(inside, pipe.outside_diameter, pipe.wall), name="bore")


def _flanges(flange: PipeFlange, sheet: Sheet) -> Iterator[Pair]:
    """The bore of the flange against the bore of its pipe: not less, or it stands in the stream."""
    pipe = sheet.follow(flange.of)
    if isinstance(pipe, SteamPipe):
        D, t = sheet.take_nominal("D", pipe.outside_diameter), sheet.take_nominal("t", pipe.wall)
        inside = sheet.work("d", bore_of_pipe, D=D, t=t)
        least = sheet.work("d_l", less_step, d=inside, s=sheet.limit("step", "s"))
        yield Pair(flange.bore, worked(least, pipe.outside_diameter, pipe.wall), "at least")


def _thicknesses(lens: LensJoint, sheet: Sheet) -> Iterator[Pair]:
    """The flange that the ring states against the one on the other end of its bolts; of studs, of its pipe."""
    if not sheet.is_stated("flange under the nuts", lens.flange_thickness):
        return
    joints = sheet.belonging_to(lens, BoltedJoint)
    through = [one for one in joints if sheet.is_stated(f"part under {one.id}", one.bolted_to)]
    for joint in through:
        far = sheet.follow(joint.bolted_to)
        if isinstance(far, PipeFlange) and not sheet.is_stated(f"far grip of {joint.id}", joint.far_grip):
            yield Pair(lens.flange_thickness, far.thickness, name=far.id)
    if not through:
        yield from _likest(lens, _tapped(joints, sheet), sheet)


def _tapped(joints: Iterable[BoltedJoint], sheet: Sheet) -> list[Component]:
    """The parts that studs are screwed into, which no nut clamps."""
    return [
        sheet.follow(one.screwed_into)
        for one in joints
        if sheet.is_stated(f"tapped part of {one.id}", one.screwed_into)
    ]


def _likest(lens: LensJoint, tapped: Sequence[Component], sheet: Sheet) -> Iterator[Pair]:
    """Of the flanges of its pipe, one at either end, that of which the thickness comes nearest."""
    h = sheet.take_nominal("h", lens.flange_thickness)
    apart = {
        abs(sheet.take_nominal(f"t of {one.id}", one.thickness) - h): one
        for one in sheet.belonging_to(sheet.follow(lens.of), PipeFlange)
        if one not in tapped
    }
    if apart:
        flange = apart[min(apart)]
        yield Pair(lens.flange_thickness, flange.thickness, name=flange.id)


def _tests(pipe: SteamPipe, sheet: Sheet) -> Iterator[Pair]:
    """The test pressure of each flange and lens ring of the pipe, and of the joints that hold them, against its own."""
    if not sheet.is_stated("test pressure of the pipe", pipe.test_pressure):
        return  # pipe.test asks for it
    parts: list[Component] = [
        *sheet.belonging_to(pipe, PipeFlange),
        *sheet.belonging_to(pipe, LensJoint),
    ]
    joints = {one.id: one for part in parts for one in sheet.belonging_to(part, BoltedJoint)}
    for part in (*parts, *joints.values()):
        yield Pair(part.test_pressure, pipe.test_pressure, "at least", name=part.id)


same_steam: Rule = agreement(
    "steamway.same-steam",
    title="A pipe carries the steam that its neighbours in the path carry",
    on=SteamPipe,
    pairs=_steam,
    within="",
    grade=Grade.HOLD,
    why="a wall worked for exhaust steam bursts when the boiler's steam comes to it",
    leaves_out="a pipe that no other part of a path states a link to or from",
    edition=4,
)

length_agrees: Rule = agreement(
    "pipe.length-agrees",
    title="A pipe for which no bend is stated is not longer than the distance of its anchors",
    on=SteamPipe,
    pairs=_lengths,
    within="",
    limits=[
        Limit("straight", "1 %", "ratio", COMMON_PRACTICE, "what a straight pipe may be longer than its way")
    ],
    grade=Grade.HOLD,
    why="a bend that is not stated is a wall that is not judged where it is thinnest",
    leaves_out="where the bends are, and a pipe shorter than that distance, whose spec is refused",
)

anchors_at_its_ends: Rule = agreement(
    "pipe.anchors-at-its-ends",
    title="The anchors of a pipe are at least 0.8 times as far apart as the faces at its two ends and at most 100 mm "
    "farther, and a pipe without bends is no longer than the distance of the faces over 0.8",
    on=SteamPipe,
    pairs=_anchors,
    within="",
    limits=[
        Limit(
            "share",
            "0.8",
            "ratio",
            COMMON_PRACTICE,
            "least distance of the anchors over that of the faces, and of the faces over the length without bends",
        ),
        Limit(
            "beyond",
            "100 mm",
            "length",
            COMMON_PRACTICE,
            "what the anchors may lie beyond the faces, of both ends together: rings, flanges, a short branch",
        ),
    ],
    grade=Grade.QUERY,
    why="the pipe grows between its anchors, and joints chosen for a tenth of its length are torn by the rest; one "
    "made to faces that are not where its anchors are does not reach",
    leaves_out="an anchor between the ends, or well behind a face, for which the growth of each part is to be judged: "
    "a concession says where it is; how far the bends turn; a pipe of which the faces are not stated",
    edition=3,
    against=(),
)

lens_of_its_pipe: Rule = agreement(
    "lens-joint.of-its-pipe",
    title="A lens ring has the bore of its pipe, and the mouth of its seat lies within the collar in which it is cut",
    on=LensJoint,
    pairs=_rings,
    within="2 mm",
    grade=Grade.NONCONFORMITY,
    why="a narrower ring is a step in the stream, a wider one lies beside its cone; a cone wider than its collar "
    "cannot be cut, and the ring bears on an edge",
    leaves_out="a ring whose pipe is not drawn; that it touches between its bore and its outside is asked of its spec; "
    "the part beside the seat at the other end of the ring, whose face no spec states",
    edition=2,
)

flange_of_its_pipe: Rule = agreement(
    "flange.of-its-pipe",
    title="The bore of a flange is not less than that of its pipe",
    on=PipeFlange,
    pairs=_flanges,
    within="",
    limits=[Limit("step", "1 mm", "length", COMMON_PRACTICE, "what a flange may be narrower than its pipe")],
    grade=Grade.NONCONFORMITY,
    why="a flange narrower than its pipe stands in the stream",
    leaves_out="how the flange is held on the pipe",
)

tested_together: Rule = agreement(
    "pipe.tested-together",
    title="No flange, lens ring or joint of a pipe is tested at less pressure than the pipe",
    on=SteamPipe,
    pairs=_tests,
    within="",
    grade=Grade.HOLD,
    why="the gauge shows one pressure for all that is bolted together, and the weakest part was reckoned for less",
    leaves_out="parts tested by themselves before they are fitted; joints that hold neither a flange nor a ring of the "
    "pipe",
)

flanges_of_lens: Rule = agreement(
    "lens-joint.flange-of-its-joint",
    title="The flange that a lens joint states is as thick as the one on the other end of its bolts, and of studs as "
    "thick as a flange of its pipe",
    on=LensJoint,
    pairs=_thicknesses,
    within="0.5 mm",
    grade=Grade.HOLD,
    why="bolts reckoned for a thinner flange are too stiff for their preload, and cut for it too short for their nuts",
    leaves_out="unlike flanges, whose bolts state the far grip (joint.grip-of-flange); flanges that are not drawn",
    against=("leak",),
)

RULES = (
    anchors_at_its_ends,
    flange_of_its_pipe,
    flanges_of_lens,
    length_agrees,
    lens_of_its_pipe,
    same_steam,
    tested_together,
)
