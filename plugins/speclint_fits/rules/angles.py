"""The one angle at which a valve and all that stands on its axis are drawn."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Rule, Sheet, rule
from speclint.equations import Radians
from speclint.facts import bores_under, boxes_of, gear_of
from speclint.specs import ChamberCover, Inclination, PoppetValve
from speclint_fits.formulae.tables import angle_between, general_angle
from speclint_fits.sources import ISO_2768_1

#: An axis with its name and how it stands.
_Named = tuple[str, Inclination]


@rule(
    "geometry.angle-agrees",
    title="Valve, seat bores, the cover over the valve and the face of its cam box stand at one angle and to one side "
    "within the tolerance of angles",
    on=PoppetValve,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_2768_1, COMMON_PRACTICE],
    why="a box that stands at another angle than its valve bends the spindle, and a seat cuts one side of its face",
    leaves_out="spindle and seats, which have the axis of their valve and bore; how far the axes are apart "
    "(gear.in-line); inclined cylinders",
    against=("leak",),
    against_on={"valve-seat": ("leak",)},
)
def angle_agrees(valve: PoppetValve, sheet: Sheet) -> Judgement:
    """The angle between the valve's axis and each other, against that of the general class or what the valve states."""
    opens = sheet.read("opens", valve.opens)
    axes = list(_axes(valve, sheet))
    silent = [name for name, one in axes if not sheet.is_stated(f"how {name} stands", one)]
    if len(silent) == len(axes) and opens in ("upwards", "downwards", "sideways"):
        raise sheet.not_applicable("the valve and all that stands on its axis are square to the block")
    if silent and opens not in ("upwards", "downwards"):
        raise sheet.not_assessed(
            f"how they are inclined is not stated by {', '.join(silent)}", valve.opens.where
        )
    allowed = _allowed(valve, sheet)

    def judge(item: _Named) -> Judgement:
        stands = sheet.read(f"how {item[0]} stands", item[1])
        apart = sheet.look_up(f"Δ of {item[0]}", angle_between, one=opens, other=stands)
        return sheet.at_most(apart, allowed).else_says(
            "{item} stands {found} from the axis of the valve, {limit} allowed"
        )

    return sheet.each([one for one in axes if one[0] not in silent], judge)


def _allowed(valve: PoppetValve, sheet: Sheet) -> Radians:
    """The tolerance that the valve states of its angle, else the general one for a leg as long as the valve is high."""
    if sheet.is_stated("tolerance of the angle", valve.inclined_within):
        return sheet.take("δ", valve.inclined_within)
    return sheet.look_up(
        "δ", general_angle, grade=sheet.setting("general angles"), leg=sheet.take_nominal("H", valve.height)
    )


def _axes(valve: PoppetValve, sheet: Sheet) -> Iterator[_Named]:
    """Each place on the axis of the valve that may say how it stands."""
    for name, _, bore in bores_under(valve, sheet):
        yield f"seat bore of the {name} beat", bore.inclined
    for cover in sheet.belonging_to(valve, ChamberCover):
        yield cover.id, cover.inclined
    gear = gear_of(valve, sheet)
    if gear is not None:
        for box in {one.id: one for one in boxes_of(gear, sheet)}.values():
            yield box.id, box.inclined


RULES: tuple[Rule, ...] = (angle_agrees,)
