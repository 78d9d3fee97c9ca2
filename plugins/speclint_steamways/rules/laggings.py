"""Lagging: temperature of its surface, and the heat lost through it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kelvins
from speclint.facts import inside_of_lagging
from speclint.handbook.cylinders import outside_of_wall
from speclint.handbook.heat import (
    CHURCHILL_CHU,
    INCROPERA,
    INCROPERA_EXAMPLE,
    lagged_pipe_loss,
    lagged_pipe_surface_temperature,
    lagged_wall_loss,
    lagged_wall_surface_temperature,
)
from speclint.specs import Envelope, Lagging, LoadCase
from speclint_steamways.formulae.heat import loss_of_area, loss_of_length
from speclint_steamways.sources import ASTM_C1055, ISO_13732_1, ISO_13857

if TYPE_CHECKING:
    from speclint.specs import Component, GaugePoint


def _arguments(lagging: Lagging, case: LoadCase, air: Kelvins, sheet: Sheet) -> dict[str, float]:
    """The arguments of the handbook's formulae of lagging, round or flat."""
    shared = {
        "T_i": _metal(lagging, case, sheet),
        "T_a": air,
        "λ": sheet.take("λ", lagging.conductivity),
        "ε": sheet.take("ε", lagging.emissivity),
    }
    t = sheet.take("t", lagging.thickness)
    if sheet.read("form", lagging.form) == "flat":
        return {**shared, "t": t, "H": sheet.take("H", lagging.height)}
    d = inside_of_lagging(lagging, sheet)
    return {**shared, "d": d, "D": sheet.work("D", outside_of_wall, d=d, t=t)}


def _metal(lagging: Lagging, case: LoadCase, sheet: Sheet) -> Kelvins:
    return sheet.take("T_i", case.temperature_of(sheet.follow(lagging.covers)))


@rule(
    "lagging.touch",
    title="The outside of lagging within reach, as is all outside the frames below 2.5 m, is no hotter than 60 °C in "
    "the hottest air of the duty, 35 °C where it states none",
    wrong="lagging at {found} within reach, {limit} allowed",
    on=Lagging,
    cases=("running", "standing-hot"),
    edition=5,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[
        COMMON_PRACTICE,
        ASTM_C1055,
        ISO_13732_1,
        ISO_13857,
        CHURCHILL_CHU,
        INCROPERA_EXAMPLE,
        INCROPERA.at("table A.4, air"),
    ],
    why="A hand that reaches for a cock in the dark touches the lagging beside it.",
    leaves_out="flanges, studs and brackets that stand out of the lagging, gaps in it, wet lagging; what injury is "
    "tolerable, which no guide settles: ASTM C1055 recommends none beyond the first degree, and that begins below the "
    "60 °C of the trade; the local code and a competent person decide",
    against=("burn",),
    against_on={
        "steam-pipe": ("burn",),
        "cylinder-cover": ("burn",),
        "chamber-cover": ("burn",),
        "cylinder-block": ("burn",),
    },
    reached_by="covers",
    limits=[
        Limit(
            "touch",
            "60 °C",
            "temperature",
            COMMON_PRACTICE,
            "hottest surface within reach: what the trade takes for five seconds on metal",
        ),
        Limit(
            "air",
            "35 °C",
            "temperature",
            COMMON_PRACTICE,
            "hottest air, where the duty states no hottest_ambient",
        ),
        Limit(
            "hand",
            "2.5 m",
            "length",
            ISO_13857,
            "least height above the rail of what nobody on the ground can touch",
        ),
    ],
)
def touch(lagging: Lagging, case: LoadCase, sheet: Sheet) -> Judgement:
    """Surface temperature in still air; a hold where a hand must go.

    Of what is said to be out of reach, an envelope of cylinders outside the frames gives the heights.
    """
    reach = sheet.read("reach", lagging.reach)
    if reach == "out of reach":
        return _out_of_reach(lagging, sheet)
    flat = sheet.read("form", lagging.form) == "flat"
    formula = lagged_wall_surface_temperature if flat else lagged_pipe_surface_temperature
    arguments = _arguments(lagging, case, _hottest_air(case, sheet), sheet)
    judged = sheet.no_hotter(sheet.work("T_s", formula, **arguments), sheet.limit("touch"))
    return judged.graded(Grade.HOLD) if reach == "a hand must go there" else judged


def _out_of_reach(lagging: Lagging, sheet: Sheet) -> Judgement:
    """Every point of the part outside the frames is higher than a hand on the ground reaches."""
    part = sheet.follow(lagging.covers)
    found = [
        sheet.at_least(sheet.take(f"h of {name}", point.height), sheet.limit("hand"))
        .graded(Grade.QUERY)
        .else_says("said to be out of reach, {found} above the rail: a hand reaches up to {limit}")
        for envelope in sheet.belonging_to(part, Envelope)
        if sheet.said(f"cylinders of {envelope.id}", envelope.cylinders) != "inside"
        for name, point in envelope.points.items()
        if _is_of(part, point, envelope, sheet, name)
    ]
    if not found:
        raise sheet.not_applicable("nobody can touch it, and no envelope gives its height")
    return sheet.worst(*found)


def _is_of(part: Component, point: GaugePoint, envelope: Envelope, sheet: Sheet, name: str) -> bool:
    """Whether a point is of a part: of that which the envelope is around where it names none, nor a drain cock."""
    if sheet.is_stated(f"part of {name}", point.of):
        return sheet.follow(point.of) is part
    return not sheet.is_stated(f"cock of {name}", point.cock_of) and sheet.follow(envelope.around) is part


def _hottest_air(case: LoadCase, sheet: Sheet) -> Kelvins:
    """The hottest air stated, else the limit; never cooler than the air of an ordinary day."""
    stated = sheet.is_stated("hottest air", case.hottest_ambient)
    hottest = sheet.take("T_a", case.hottest_ambient) if stated else sheet.limit("air", "T_a")
    if not sheet.is_stated("ordinary air", case.ambient_temperature):
        return hottest
    return max(hottest, sheet.take("T_o", case.ambient_temperature))


@rule(
    "lagging.loss",
    title="The heat lost through the lagging can be calculated from its spec, and is reported",
    on=Lagging,
    cases=("running",),
    edition=2,
    grade=Grade.OBSERVATION,
    cites=[CHURCHILL_CHU, INCROPERA_EXAMPLE, INCROPERA.at("table A.4, air"), COMMON_PRACTICE],
    why="Heat lost through the lagging costs fuel all day, standing and running.",
    leaves_out="any limit; wind, which multiplies the loss of thin lagging; parts left bare",
    against=(),
)
def loss(lagging: Lagging, case: LoadCase, sheet: Sheet) -> Judgement:
    """Heat lost in still air, reported."""
    arguments = _arguments(lagging, case, sheet.take("T_a", case.ambient_temperature), sheet)
    if sheet.read("form", lagging.form) == "flat":
        q = sheet.work("q", lagged_wall_loss, **arguments)
        Q = sheet.work("Q", loss_of_area, q=q, A=sheet.take("A", lagging.area))
    else:
        q_L = sheet.work("q_L", lagged_pipe_loss, **arguments)
        Q = sheet.work("Q", loss_of_length, q_L=q_L, L=sheet.take("L", lagging.length))
    return sheet.reported(Q, "heat lost in still air")


RULES = (touch, loss)
