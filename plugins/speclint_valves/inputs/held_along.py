"""What holds a cam along its shaft: a nut or a clamp that is locked, set screws, or a fork of the gear."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from speclint import Judgement, Sheet
from speclint.facts import Locked, fork_of, is_locked, train_of_cam, two_pieces_by
from speclint.specs import Cam, LoadCase
from speclint_valves.formulae.holding import play_of_fork
from speclint_valves.formulae.set_screws import held_by_screw, holding_power, pushed_along
from speclint_valves.inputs.loads import loaded, worked_valve_load

#: What works back unless it is locked: a set is clamped by nuts or bolts.
_TIGHTENED: Mapping[str, Locked] = {"shoulder and nut": "nut", "clamped set": "nut", "set screw": "set screw"}


def of_one_piece(cam: Cam, sheet: Sheet) -> Judgement:
    """A cam that is keyed or bored for its shaft, of another metal or on another drawing, is another piece."""
    said = "the cam is said to be of one piece with its shaft"
    sizes = {
        "a keyway": cam.keyway_width,
        "a keyway of some depth": cam.keyway_depth,
        "a bore for it": cam.bore,
        "a key of some length": cam.key_length,
        "a key of some height": cam.key_height,
    }
    for called, size in sizes.items():
        if sheet.is_stated(called, size):
            return sheet.states(False, f"{said}, and has {called}", where=size.where)
    wrong = " and ".join(two_pieces_by(cam, sheet.follow(cam.turns_on), sheet))
    return sheet.states(not wrong, f"{said}: {wrong}" if wrong else said, where=cam.where)


def held_along(cam: Cam, by: str, case: LoadCase, sheet: Sheet) -> Iterator[Judgement]:
    """That something holds a cam, that it is locked, and that a set screw holds what pushes it along."""
    yield sheet.states(by != "nothing", f"along its shaft the cam is held by: {by}", where=cam.where)
    if by in _TIGHTENED:
        lock = sheet.read("locked by", cam.locked_by)
        yield sheet.states(
            is_locked(_TIGHTENED[by], lock),
            f"what holds the cam along is locked by: {lock}",
            where=cam.locked_by.where,
        )
    if by == "set screw":
        yield from _by_screws(cam, case, sheet)
    if by == "fork of the gear":
        yield from _by_fork(cam, sheet)


def _by_fork(cam: Cam, sheet: Sheet) -> Iterator[Judgement]:
    """A fork of a valve gear that moves the cam, its play in the groove of the cam, and what holds it in a notch."""
    fork = fork_of(cam, sheet)
    if fork is None:
        says = "a fork of the gear is said to hold the cam, and no valve gear has a fork that moves it"
        yield sheet.states(False, says, where=cam.held_along.where)
        return
    by = sheet.read("fork held by", fork.held_by)
    yield sheet.states(
        by != "nothing", f"in each notch the fork of the cam is held by: {by}", where=fork.held_by.where
    )
    play = sheet.work(
        "s_f", play_of_fork, b_g=sheet.take("b_g", fork.groove), b_f=sheet.take("b_f", fork.width)
    )
    yield sheet.at_most(play, sheet.limit("fork")).else_says(
        "the cam has {found} of play along its shaft in its fork, {limit} allowed"
    )


def _by_screws(cam: Cam, case: LoadCase, sheet: Sheet) -> Iterator[Judgement]:
    """Two screws, each of which holds the friction of the greatest load of the tappet alone."""
    n = sheet.count("n", cam.set_screws.count)
    yield sheet.states(
        n >= sheet.limit("screws", "n_s"), f"set screws of the cam: {n}", where=cam.set_screws.count.where
    )
    P = sheet.look_up("P", holding_power, designation=sheet.read("set screw", cam.set_screws.thread))
    holds = sheet.work("F_h", held_by_screw, P=P, x=sheet.limit("dynamic", "x_s"))
    _, F = worked_valve_load(loaded(train_of_cam(cam, sheet), case, sheet), sheet)
    pushed = sheet.work("F_a", pushed_along, mu=sheet.limit("friction", "μ"), F=F)
    yield sheet.at_least(holds, pushed).else_says(
        "a set screw of the cam holds {found} along its shaft, {limit} wanted"
    )
