"""What pushes a tappet aside over a lift: at one angle the load along it, the force across it, the reach of its cam."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from speclint import Sheet
from speclint.equations import Metres, Newtons, Radians, Ratio
from speclint.facts import ValvesTrain, turning
from speclint.handbook.cams import Follower
from speclint.specs import LoadCase, PoppetValve
from speclint_valves.formulae.cam_shape import reach_on_crown, reach_on_flat
from speclint_valves.formulae.holding import moment_at_guide, side_by_rubbing, side_by_slant
from speclint_valves.inputs.loads import Loaded, worked_struck_load, worked_tappet_load
from speclint_valves.inputs.rollers import OnALine, OnAnArm, roller_of
from speclint_valves.inputs.train import SCAN, trains_of

#: Angles of a lift at which a track is looked at to find those that push most.
_STEPS = 120
#: How often the step in which the clearance is taken up is halved to find where.
_HALVINGS = 20


class Aside(NamedTuple):
    """At one angle: its mark, the load along the tappet, the force across it, how far beside its line it is touched."""

    mark: str
    along: Newtons
    across: Newtons
    reach: Metres


def tracks_pushing_most(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> tuple[ValvesTrain, ...]:
    """The train of a valve with the tracks that push its tappet aside most, every size as the drawings aim at it.

    That with the steepest slope where the clearance is taken up, for the blow, and that of the greatest torque, for the
    lift: all tracks of a tappet have one base circle.
    """
    trains = trains_of(valve, sheet)
    if len(trains) == 1:
        return trains

    def most() -> tuple[ValvesTrain, ...]:
        looked = [(one, *_looked_at(one, case, sheet)) for one in trains]
        struck = max(looked, key=lambda one: (one[1], one[2]))[0]
        lifting = max(looked, key=lambda one: one[2])[0]
        return (struck,) if struck.cam.id == lifting.cam.id else (struck, lifting)

    return sheet.once(("tracks that push aside most", valve.id, case.where), most)


def _looked_at(train: ValvesTrain, case: LoadCase, sheet: Sheet) -> tuple[float, float]:
    """Slope where the clearance is taken up [m/rad], 0 where it never is, and the greatest torque of the lift [N·m]."""
    track = turning(train.cam, case, 0.0, sheet)
    step = track.cam.duration / _STEPS
    angles = [step * number for number in range(_STEPS + 1)]
    first = next((angle for angle in angles if track.bears(track.follower(angle))), None)
    if first is None:
        return 0.0, 0.0
    for _ in range(_HALVINGS):
        step /= 2
        before = max(first - step, 0.0)
        if track.bears(track.follower(before)):
            first = before
    return round(track.follower(first).slope, 6), max(map(track.torque, angles))


def pushed_aside(load: Loaded, a: Metres, μ: Ratio, sheet: Sheet) -> Iterator[Aside]:
    """What pushes a tappet aside as it takes up its clearance, and where it does most in either part of the lift.

    ``a`` overhang of the tappet [m], ``μ`` friction of a foot.
    """
    kind = sheet.read("follower", load.train.tappet.follower)
    pushed = _Pushed(load, a, μ, kind, None if kind == "flat foot" else _rounded(load.train, sheet))
    yield pushed.worked("b", load.taken_up, worked_struck_load(load, sheet), sheet)
    for phase in load.phases:
        angle = sheet.scan(
            f"θ_{phase.mark}",
            f"cam angle at which the tappet is pushed aside most {phase.when}",
            lambda angle, steam=phase.steam: pushed.moment(angle, steam),  # type: ignore[misc]
            phase.start,
            phase.stop,
            unit="rad",
            steps=min(phase.steps, SCAN),
        )
        yield pushed.worked(phase.mark, angle, worked_tappet_load(load, phase, angle, sheet), sheet)


@dataclass(frozen=True)
class _Pushed:
    """A tappet under its load, pushed by the slant of a roller or rubbed beside its line at a foot."""

    load: Loaded
    a: Metres
    μ: Ratio
    kind: str
    round: OnALine | OnAnArm | None

    def moment(self, angle: Radians, steam: Newtons) -> float:
        """The moment at the guide at an angle of the cam."""
        at = self.load.cam.at(angle)
        F = self.load.tappet(at, steam)
        if self.kind == "roller" and self.round is not None:
            return moment_at_guide(Q=side_by_slant(F=F, α=self.round.aslant(at)), a=self.a, F=F, b=0.0)
        return moment_at_guide(Q=side_by_rubbing(μ=self.μ, F=F), a=self.a, F=F, b=self._reach(at))

    def _reach(self, at: Follower) -> Metres:
        if self.round is None:
            return reach_on_flat(s_prime=at.slope)
        return reach_on_crown(r=self.round.radius, α=self.round.aslant(at))

    def worked(self, mark: str, angle: Radians, F: Newtons, sheet: Sheet) -> Aside:
        """The same for a load along the tappet, written on the sheet."""
        at = self.load.cam.at(angle)
        if self.kind == "roller" and self.round is not None:
            α = self.round.worked_angle(at, sheet)
            return Aside(mark, F, sheet.work(f"Q_t{mark}", side_by_slant, F=F, α=α), 0.0)
        Q = sheet.work(f"Q_t{mark}", side_by_rubbing, μ=self.μ, F=F)
        if self.round is None:
            return Aside(mark, F, Q, sheet.work(f"b_f{mark}", reach_on_flat, s_prime=at.slope))
        α = self.round.worked_angle(at, sheet)
        return Aside(mark, F, Q, sheet.work(f"b_f{mark}", reach_on_crown, r=self.round.radius, α=α))


def _rounded(train: ValvesTrain, sheet: Sheet) -> OnALine | OnAnArm:
    """The roller or the crown of a tappet on its cam."""
    return roller_of(train.tappet, sheet.take("R_b", train.cam.base_radius), sheet)
