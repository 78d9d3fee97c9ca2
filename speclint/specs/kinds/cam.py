"""A cam that lifts a valve."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Allowance, Angle, Length, LinkTo, Position, Word
from speclint.specs.geometry import Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import Shaft, Tappet
from speclint.specs.listed_in import THREADS
from speclint.specs.reworking import CUT_DOWN, OPENED
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import AS_FITTED, DONE_OR_NOT, MADE_SO, OWN_PLACE
from speclint.specs.wear import Regrind, WearOfFace

Law = Literal["parabolic", "harmonic", "cycloidal", "3-4-5 polynomial"]


class SetScrews(SpecTable):
    """The set screws by which a cam is held along its shaft, with a cup point.

    Fields:
        count: how many of them press on the shaft
        thread: of each
    """

    count: Word[int] = NOT_STATED
    thread: Annotated[Word[str], THREADS] = NOT_STATED


class Cam(Component):
    """A cam: by a law with ramps, or by a table of lifts.

    Angles are those of the cam, which turns with the wheels. Lifts are those of the tappet.

    Fields:
        lifts: the tappet that it lifts.
        track: name of this track, where one cam or a set of cams gives the same tappet several lifts.
        law: of rise and fall above the ramps.
        lift: of the tappet above the ramps.
        rise_angle: angle of the rise above its ramp.
        dwell_angle: angle at full lift.
        fall_angle: angle of the fall above its ramp.
        ramp_height: height of the ramps before rise and after fall.
        ramp_angle: angle of each ramp.
        table_step: step of the angle in the table of lifts.
        table: lifts of the tappet at equal steps from the foot of the lift to its end, where no law is stated.
        turns_on: the shaft that turns it.
        at: middle of its track along that shaft, where it works its tappet.
        phase: angle of the shaft, from a mark of it, at which its ramp begins to lift.
        bore: bore in which the shaft sits.
        keyway_width: of the keyway in that bore; left out where the cam is not keyed.
        keyway_depth: of the keyway in that bore, beside the key, least.
        key_height: of the key; left out where it is a parallel key of the width of its keyway.
        key_length: of the key within the cam, least.
        held_along: what keeps it in its place along the shaft.
        locked_by: what keeps the nut or the screws that hold it along the shaft from working back.
        set_screws: the set screws that hold it along the shaft, where they do.
        base_radius: radius of the base circle.
        width: of the track.
        hub_length: of its hub along the shaft, where that is not the width of the track.
        wear: of the depth worn off its track.
        regrind: what grinding takes off its track.
        hardened_depth: depth of its hardened skin after grinding; leave out if it is not hardened.
    """

    kind: ClassVar[str] = "cam"
    called: ClassVar[str] = "cam"
    hazards: ClassVar[Hazards] = ("loosen", "wear")
    geometry: ClassVar[Conditions] = (
        Below("ramp_height", "lift"),
        Below("keyway_width", "bore"),
        Below("keyway_depth", "bore", 0.25),
        Below("key_length", "bore", 4),
    )

    lifts: Annotated[LinkTo[Tappet], OWN_PLACE] = NOT_STATED
    track: Word[str] = NOT_STATED
    law: Annotated[Word[Law], MADE_SO] = NOT_STATED
    lift: Annotated[Length, Span("2 mm", "100 mm")] = NOT_STATED
    rise_angle: Angle = NOT_STATED
    dwell_angle: Angle = NOT_STATED
    fall_angle: Angle = NOT_STATED
    ramp_height: Annotated[Length, Span("1 µm", "20 mm")] = NOT_STATED
    ramp_angle: Angle = NOT_STATED
    table_step: Angle = NOT_STATED
    table: tuple[Annotated[Allowance, Span("1 µm", "100 mm")], ...] = ()
    turns_on: Annotated[LinkTo[Shaft], OWN_PLACE] = NOT_STATED
    at: Annotated[Position, Span("1 mm", "6 m"), OWN_PLACE] = NOT_STATED
    phase: Angle = NOT_STATED
    bore: Annotated[Length, Span("10 mm", "400 mm"), OPENED] = NOT_STATED
    keyway_width: Annotated[Length, Span("1 mm", "100 mm"), OPENED] = NOT_STATED
    keyway_depth: Annotated[Length, Span("0.5 mm", "50 mm"), OPENED] = NOT_STATED
    key_height: Annotated[Length, Span("1 mm", "60 mm"), CUT_DOWN] = NOT_STATED
    key_length: Annotated[Length, Span("3 mm", "400 mm")] = NOT_STATED
    held_along: Word[
        Literal["forged on", "shoulder and nut", "clamped set", "set screw", "fork of the gear", "nothing"]
    ] = NOT_STATED
    locked_by: Word[
        Literal[
            "split pin",
            "locking plate",
            "tab washer",
            "lock nut",
            "locking wire",
            "second screw on each",
            "nothing",
        ]
    ] = NOT_STATED
    set_screws: SetScrews = SetScrews.unstated()
    base_radius: Annotated[Length, Span("10 mm", "400 mm")] = NOT_STATED
    width: Annotated[Length, Span("4 mm", "300 mm"), CUT_DOWN] = NOT_STATED
    hub_length: Annotated[Length, Span("4 mm", "400 mm"), CUT_DOWN] = NOT_STATED
    wear: Annotated[WearOfFace, AS_FITTED] = WearOfFace.unstated()
    regrind: Annotated[Regrind, AS_FITTED] = Regrind.unstated()
    hardened_depth: Annotated[Length, Span("0.2 mm", "12 mm"), DONE_OR_NOT] = NOT_STATED
