"""A spring and the valve that it shuts state one lift, one spindle, a nest one valve, and a drawing one wire."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement, worked
from speclint.facts import apart
from speclint.handbook.springs import grade_of_wire, length_at_lift
from speclint.specs import CompressionSpring, ValveSpindle

#: What a metal is that is drawn to no wire whose strength is known, in place of a grade.
_NO_WIRE = "no spring wire"


def _lengths(spring: CompressionSpring, sheet: Sheet) -> Iterator[Pair]:
    """The open length against the shut length less the lift of the valve that the spring shuts."""
    if not sheet.is_stated("valve that it shuts", spring.closes):
        return
    lift = sheet.follow(spring.closes).lift
    if sheet.is_stated("shut length", spring.shut_length) and sheet.is_stated("lift", lift):
        L_U, h = sheet.take_nominal("L_U", spring.shut_length), sheet.take_nominal("h", lift)
        left = sheet.work("L_O", length_at_lift, L_U=L_U, h=h)
        yield Pair(spring.open_length, worked(left, spring.shut_length, lift))


def _nests(spring: CompressionSpring, sheet: Sheet) -> Iterator[Pair]:
    """Of a spring inside another: the valve that both shut, and the distance between shut and open length."""
    if not sheet.is_stated("spring round it", spring.nested_in):
        return
    outer = sheet.follow(spring.nested_in)
    if sheet.is_stated("valve", spring.closes) and sheet.is_stated("valve of the outer", outer.closes):
        own, other = sheet.follow(spring.closes).id, sheet.follow(outer.closes).id
        yield Pair(worked(own, spring.closes), worked(other, outer.closes), name="valve")
    lengths = spring.shut_length, spring.open_length, outer.shut_length, outer.open_length
    if all(sheet.is_stated("length of a spring", one) for one in lengths):
        x = [sheet.take_nominal(f"x_{number}", one) for number, one in enumerate(lengths, start=1)]
        own_stroke = sheet.work("s", apart, x_1=x[0], x_2=x[1])
        outer_stroke = sheet.work("s_o", apart, x_1=x[2], x_2=x[3])
        yield Pair(worked(own_stroke, *lengths[:2]), worked(outer_stroke, *lengths[2:]), name="stroke")


def _pins(spring: CompressionSpring, sheet: Sheet) -> Iterator[Pair]:
    """The guide pin inside the coils against the spindle of the valve, which passes through it."""
    if not sheet.is_stated("valve that it shuts", spring.closes):
        return
    for spindle in sheet.belonging_to(sheet.follow(spring.closes), ValveSpindle):
        if sheet.is_stated(f"diameter of {spindle.id}", spindle.diameter):
            yield Pair(spring.guide_pin, spindle.diameter, "at least", name=spindle.id)


def _grades(spring: CompressionSpring, sheet: Sheet) -> Iterator[Pair]:
    """The grade of the wire against that which its material is named for; a metal that is no wire has none."""
    if not (sheet.is_stated("material", spring.material) and sheet.is_stated("grade", spring.wire_grade)):
        return
    drawn = grade_of_wire(sheet.read("material", spring.material))
    if drawn or not sheet.material_of(spring).holds("wire-strength"):
        yield Pair(spring.wire_grade, worked(drawn or _NO_WIRE, spring.material))


works_the_lift: Rule = agreement(
    "spring.works-the-lift",
    title="The open length of a valve spring is its shut length less the lift of the valve",
    on=CompressionSpring,
    pairs=_lengths,
    within="0.1 mm",
    grade=Grade.HOLD,
    why="a spring judged on less stroke than it makes breaks by fatigue, and its valve stays open",
    leaves_out="travel of the gear beyond full lift, which the spring's own rules work",
)

nest_agrees: Rule = agreement(
    "spring.nest-agrees",
    title="A spring inside another shuts the same valve and makes the same stroke",
    on=CompressionSpring,
    pairs=_nests,
    within="0.1 mm",
    grade=Grade.NONCONFORMITY,
    why="the inner spring is solid before the valve is open, or belongs to another valve",
    leaves_out="spring plates with steps, which may give the two springs other lengths but one stroke",
)

in_its_housing: Rule = agreement(
    "spring.in-its-housing",
    title="The guide pin inside a valve spring is no thinner than the spindle that it surrounds",
    on=CompressionSpring,
    pairs=_pins,
    within="",
    grade=Grade.NONCONFORMITY,
    why="the spring does not go over its pin, or jams on the spindle",
    leaves_out="a spring that stands beside the spindle; the bore of the part round the coils, which no spec states",
)

grade_of_its_wire: Rule = agreement(
    "spring.grade-of-its-wire",
    title="The grade of a spring's wire is that of the wire which is its material",
    on=CompressionSpring,
    pairs=_grades,
    within="",
    grade=Grade.HOLD,
    why="its endurance and its heat are judged by the grade, its strength by the material: it has one wire",
    leaves_out="a wire of the repository's own that is not named for a grade; a spring that states no grade",
    edition=2,
)

RULES = (grade_of_its_wire, in_its_housing, nest_agrees, works_the_lift)
