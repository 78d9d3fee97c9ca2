"""Studs or bolts on one circle, and the joint that they close."""

from __future__ import annotations

from typing import ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Angle,
    Force,
    Fraction,
    Length,
    LinkTo,
    Moment,
    Stress,
    Temperature,
    Word,
)
from speclint.specs.spec import SpecTable

#: What keeps a part up when its first fastening has failed.
SecondRetention = Literal[
    "none", "safety strap", "keep plate", "chain", "pinned stud", "hooked over the frame"
]


class Gasket(SpecTable):
    """A flat gasket or a ring inside the stud circle.

    Fields:
        name: the gasket as the handbook lists it, such as "graphite sheet on tanged steel 1.5 mm".
        form: "flat" between two faces, or "ring in a groove".
        outside: of the ring on which gasket and both faces touch.
        inside: of the same ring.
        thickness: as compressed.
        modulus: of the compressed gasket when it is unloaded, with its limits.
    """

    name: Word[str] = NOT_STATED
    form: Word[Literal["flat", "ring in a groove"]] = NOT_STATED
    outside: Length = NOT_STATED
    inside: Length = NOT_STATED
    thickness: Length = NOT_STATED
    modulus: Stress = NOT_STATED


class GroundFace(SpecTable):
    """A face ground or scraped to its mating face, metal to metal.

    Fields:
        outside: of the ring on which the two faces touch.
        inside: of the same ring.
    """

    outside: Length = NOT_STATED
    inside: Length = NOT_STATED


class Tightening(SpecTable):
    """How the nuts are tightened, and to what.

    Fields:
        method: as the handbook lists it, such as "torque wrench".
        torque: on the nut, for a method that measures torque; of one that measures the angle, to draw it snug.
        angle: by which the nut is turned after that.
        torque_coefficient: K in T = K F d, the mean for this lubrication; its scatter belongs to the method.
        preload: mean in one stud, for a method that measures it (elongation, tensioner).
        lubrication: of thread and nut face.
        temperature: of the metal when it is tightened.
    """

    method: Word[str] = NOT_STATED
    torque: Moment = NOT_STATED
    angle: Angle = NOT_STATED
    torque_coefficient: Fraction = NOT_STATED
    preload: Force = NOT_STATED
    lubrication: Word[str] = NOT_STATED
    temperature: Temperature = NOT_STATED


class TappedHole(SpecTable):
    """The tapped hole into which a stud is screwed.

    Fields:
        thread: as tapped, such as "M24".
        engagement: length of full thread in engagement.
        depth: of the drilled hole below the face.
        run_out: room at the bottom for the tap's lead and for chips.
        opens_into: what the drilled hole breaks into.
        sealed: how a hole that breaks into steam is sealed; "none" where it is not.
    """

    thread: Word[str] = NOT_STATED
    engagement: Length = NOT_STATED
    depth: Length = NOT_STATED
    run_out: Length = NOT_STATED
    opens_into: Word[Literal["nothing", "air", "steam"]] = NOT_STATED
    sealed: Word[Literal["none", "sealant", "welded", "copper washer", "taper thread"]] = NOT_STATED


class Nut(SpecTable):
    """The nuts.

    Fields:
        thread: as tapped.
        material: of the nut, as the handbook lists it.
        engagement: length of full thread in engagement.
        across_flats: width across its flats; of a round nut its outside diameter.
        face: outside diameter of the bearing face (of the washer's, if it is thick).
        locking: how a nut is kept from turning.
        could_fall_into: where a loose nut could fall.
    """

    thread: Word[str] = NOT_STATED
    material: Word[str] = NOT_STATED
    engagement: Length = NOT_STATED
    across_flats: Length = NOT_STATED
    face: Length = NOT_STATED
    locking: Word[
        Literal[
            "none",
            "split pin",
            "tab washer",
            "lock plate",
            "wire",
            "lock nut",
            "prevailing torque nut",
            "peened",
        ]
    ] = NOT_STATED
    could_fall_into: Word[Literal["nothing", "valve", "cylinder", "cam box", "motion", "track"]] = NOT_STATED


class BoltedJoint(Component):
    """Studs or bolts on one circle, with the joint they close.

    Fields:
        material: of the studs (bolting steel).
        holds: the part that the nuts hold down.
        screwed_into: the part with the tapped holes of studs.
        bolted_to: the part under the other nut, or the head, of bolts.
        fastener: "stud" in a tapped hole, or "bolt" through both parts.
        thread: of the stud at both ends, such as "M24" or "7/8 BSF".
        thread_made: how the thread was made.
        count: how many.
        circle: diameter of the bolt circle.
        grip: clamped thickness of the part held, nut face to joint face, without the gasket.
        far_grip: clamped thickness of the part bolted to, for bolts.
        set_in: how far the first engaged thread lies below the face of the tapped part.
        shank: diameter of the plain or reduced part between the threads.
        shank_length: its length.
        hole: clearance hole in the part held.
        edge_distance: from the centre of a tapped hole to the nearest bore or edge of its part.
        roughness: Rz of the coarsest of the faces that touch.
        faces: how many pairs of faces touch between the nut and the thread, apart from the gasket.
        carries_shear: whether the joint also carries a load across its studs; it settles more then, and is taken to
            where nothing is stated.
        load_introduction: factor n of VDI 2230, 1 where the load enters under nut and head, 0 at the joint face;
            where it is not stated, 1 is taken for the stud and 0 for the joint face.
        relaxation: share of the preload lost in service by creep of gasket and stud.
        seal: what keeps the steam in.
        pressure: which pressure the joint holds.
        pressure_circle: diameter to which the pressure reaches, for a ground face or a lens ring.
        over_track: whether the part, or a stud or nut of it, could fall on the track if it came away.
        second_retention: what else would keep it from falling.
    """

    kind: ClassVar[str] = "bolted-joint"
    called: ClassVar[str] = "bolted joint"

    holds: LinkTo[Component] = NOT_STATED
    screwed_into: LinkTo[Component] = NOT_STATED
    bolted_to: LinkTo[Component] = NOT_STATED
    fastener: Word[Literal["stud", "bolt"]] = NOT_STATED
    thread: Word[str] = NOT_STATED
    thread_made: Word[Literal["rolled before treatment", "rolled after treatment", "cut"]] = NOT_STATED
    count: Word[int] = NOT_STATED
    circle: Length = NOT_STATED
    grip: Length = NOT_STATED
    far_grip: Length = NOT_STATED
    set_in: Allowance = NOT_STATED
    shank: Length = NOT_STATED
    shank_length: Length = NOT_STATED
    hole: Length = NOT_STATED
    edge_distance: Length = NOT_STATED
    roughness: Length = NOT_STATED
    faces: Word[int] = NOT_STATED
    carries_shear: Word[bool] = NOT_STATED
    load_introduction: Fraction = NOT_STATED
    relaxation: Fraction = NOT_STATED
    seal: Word[Literal["gasket", "ground face", "lens ring"]] = NOT_STATED
    pressure: Word[Literal["cylinder", "live", "exhaust"]] = NOT_STATED
    pressure_circle: Length = NOT_STATED
    over_track: Word[bool] = NOT_STATED
    second_retention: Word[SecondRetention] = NOT_STATED
    gasket: Gasket = Gasket.unstated()
    ground_face: GroundFace = GroundFace.unstated()
    tightening: Tightening = Tightening.unstated()
    tapped: TappedHole = TappedHole.unstated()
    nut: Nut = Nut.unstated()
