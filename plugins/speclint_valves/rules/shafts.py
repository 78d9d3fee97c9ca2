"""The torque of a camshaft, by the cams that turn on it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from speclint import FIRST_PRINCIPLES, Grade, Pair, Rule, Sheet, agreement, worked
from speclint.equations import NewtonMetres
from speclint.facts import PlacedCam, placed_in_notches
from speclint.specs import Cam, LoadCase, Shaft
from speclint_valves.formulae.cams import torque_of_cam, torque_together
from speclint_valves.formulae.motion import tappet_load
from speclint_valves.inputs.turning import Turning, angle_of_greatest, turning
from speclint_valves.rules.cams import CRACKED


def _torques(shaft: Shaft, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The torque of the shaft, at its least, against the greatest of its cams in a turn.

    Together in each notch of the valve gear that names them, or where every cam states its place on the shaft; else
    each at the angle at which it needs most.
    """
    cams = [
        cam
        for cam in sheet.belonging_to(shaft, Cam)
        if sheet.is_stated(f"shaft of {cam.id}", cam.turns_on) and sheet.follow(cam.turns_on).id == shaft.id
    ]
    if not (cams and sheet.is_stated("torque", shaft.torque)):
        return
    if notches := placed_in_notches(cams, sheet):
        yield from _in_notches(shaft, notches, case, sheet)
        return
    placed = all(sheet.is_stated(f"place of {cam.id}", cam.phase) for cam in cams)
    turned = [turning(cam, case, _place(cam, sheet) if placed else 0.0, sheet) for cam in cams]
    together = [tuple(turned)] if placed else [(one,) for one in turned]
    T: NewtonMetres = 0.0
    for group in together:
        θ = sheet.look_up("θ", angle_of_greatest, cams=group)
        for one in group:
            T = sheet.work("T", torque_together, T_0=T, T_c=_at(one, θ, sheet))
    phases = [cam.phase for cam in cams] if placed else []
    yield Pair(shaft.torque, worked(T, *(cam.turns_on for cam in cams), *phases), "at least")


def _in_notches(
    shaft: Shaft, notches: Mapping[str, tuple[PlacedCam, ...]], case: LoadCase, sheet: Sheet
) -> Iterator[Pair]:
    for notch, placed in notches.items():
        turned = tuple(turning(one.cam, case, one.place, sheet, backward=one.backward) for one in placed)
        θ = sheet.look_up(f"θ_{notch}", angle_of_greatest, cams=turned)
        T: NewtonMetres = 0.0
        for one in turned:
            T = sheet.work("T", torque_together, T_0=T, T_c=_at(one, θ, sheet))
        yield Pair(
            shaft.torque, worked(T, *(one.cam.turns_on for one in placed)), "at least", name=f"notch {notch}"
        )


def _place(cam: Cam, sheet: Sheet) -> float:
    return sheet.take_nominal(f"φ of {cam.id}", cam.phase)


def _at(one: Turning, θ: float, sheet: Sheet) -> NewtonMetres:
    """The torque of a cam at an angle of the shaft, written on the sheet; a cam on its base circle needs none."""
    if not one.bears(θ):
        return 0.0
    F = sheet.work(f"F of {one.name}", tappet_load, **one.load(θ))
    return sheet.work(f"T of {one.name}", torque_of_cam, F=max(F, 0.0), s_prime=one.follower(θ).slope)


turns_its_cams: Rule = agreement(
    "shaft.turns-its-cams",
    edition=3,
    title="The torque stated for a camshaft is at least that of its cams: together over a turn in each notch of their "
    "valve gear, or where all state their place on it, else each at its greatest",
    on=Shaft,
    pairs=_torques,
    within="",
    cases=("starting", "running"),
    limits=[CRACKED],
    cites=[FIRST_PRINCIPLES],
    grade=Grade.NONCONFORMITY,
    why="a shaft judged for less torque than its cams need twists, and opens its valves late",
    leaves_out="limits of sizes, springs and pressures, which are taken as the drawings aim at them; the blow as the "
    "clearance is taken up; friction of followers and bearings",
)

RULES = (turns_its_cams,)
