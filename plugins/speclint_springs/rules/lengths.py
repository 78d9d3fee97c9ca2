"""Shape and lengths: spring index, clearance before the coils touch."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Ratio
from speclint.handbook.springs import (
    EN_13906_1,
    clearance_multiplier,
    clearance_sum_cold_coiled,
    clearance_sum_hot_coiled,
    dead_coils,
    en_13906_1_clause,
    spring_index,
)
from speclint.specs import CompressionSpring
from speclint_springs.formulae.helical import coils_at_rest, gap_before_solid
from speclint_springs.inputs import (
    alternates,
    greatest_solid_length,
    mean_diameter,
    shortest_length,
    working_coils,
)

#: What the difference of two numbers of coils may lose by being worked in binary.
_ROUNDED = 1e-9


@rule(
    "coil-spring.index",
    title="The spring index is within the standard (4 to 20 cold coiled, 3 to 12 hot coiled) and the "
    "preferred 6 to 12",
    on=CompressionSpring,
    grade=Grade.OBSERVATION,
    gravest=Grade.QUERY,
    cites=[en_13906_1_clause("1, scope, spring index"), COMMON_PRACTICE],
    why="a low index cracks the wire during coiling and raises the stress on its inside; a high one "
    "lets the spring buckle and tangle",
    leaves_out="whether the maker has the mandrel and the coiling machine for it",
    against=(),
    limits=[
        Limit(
            "least-cold", "4", "ratio", en_13906_1_clause("1, scope, cold coiled"), "least index, cold coiled"
        ),
        Limit(
            "greatest-cold",
            "20",
            "ratio",
            en_13906_1_clause("1, scope, cold coiled"),
            "greatest index, cold coiled",
        ),
        Limit(
            "least-hot", "3", "ratio", en_13906_1_clause("1, scope, hot coiled"), "least index, hot coiled"
        ),
        Limit(
            "greatest-hot",
            "12",
            "ratio",
            en_13906_1_clause("1, scope, hot coiled"),
            "greatest index, hot coiled",
        ),
        Limit("least-preferred", "6", "ratio", COMMON_PRACTICE, "least preferred index"),
        Limit("greatest-preferred", "12", "ratio", COMMON_PRACTICE, "greatest preferred index"),
    ],
)
def index(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """w = D/d, against the range of the standard and the preferred range."""
    process = sheet.read("process", spring.process)
    d = sheet.take("d", spring.wire)
    w = sheet.work("w", spring_index, D=mean_diameter(spring, sheet, d), d=d)
    covered = sheet.within(w, sheet.limit(f"least-{process}"), sheet.limit(f"greatest-{process}")).else_says(
        "spring index {found}, where the nearer limit is {limit}"
    )
    preferred = sheet.within(w, sheet.limit("least-preferred"), sheet.limit("greatest-preferred")).else_says(
        "spring index {found}, where the nearer preferred limit is {limit}"
    )
    return preferred if covered.holds else covered.graded(Grade.QUERY)


@rule(
    "coil-spring.solid-clearance",
    edition=3,
    title="At full lift the coils have at least the sum of clearances of the standard left before they touch, and as "
    "many coils as the ends take up are counted beside the working ones",
    on=CompressionSpring,
    grade=Grade.NONCONFORMITY,
    cites=[en_13906_1_clause("9.9, sum of clearances"), EN_13906_1.at("9.8, number of coils")],
    why="coils that touch stop the valve short of its lift, and the cam then breaks a part of the gear",
    leaves_out="lift beyond the open length, from worn stops or overtravel of the gear",
    against=("foul",),
)
def solid_clearance(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """L_O − L_c ≥ S_a with the greatest wire and the shortest open length of the drawing; n_t − n ≥ that of ends."""
    d = sheet.take("d", spring.wire)
    solid = greatest_solid_length(spring, sheet, d)
    gap = sheet.work("S", gap_before_solid, L_O=shortest_length(spring, sheet), L_c=solid)
    clear = sheet.at_least(gap, _least_clearance(spring, sheet, d)).else_says(
        "coils near solid at full lift: {found} left, {limit} wanted"
    )
    return sheet.worst(clear, _ends_rest(spring, sheet))


def _ends_rest(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """The coils that are stated beyond the working ones, against those that closed ends take up."""
    process, ends = sheet.read("process", spring.process), sheet.read("ends", spring.ends)
    n_t, n = sheet.take("n_t", spring.total_coils), working_coils(spring, sheet)
    resting = sheet.work("n_d", coils_at_rest, n_t=n_t, n=n)
    wanted = sheet.look_up("n_e", dead_coils, process=process, ends=ends)
    says = f"{resting:g} coils beyond the working ones; the ends of a spring coiled {process} take {wanted:g}"
    return sheet.states(resting > wanted - _ROUNDED, says, where=spring.total_coils.where)


def _least_clearance(spring: CompressionSpring, sheet: Sheet, d: Metres) -> Metres:
    process = sheet.read("process", spring.process)
    x: Ratio = sheet.look_up("x", clearance_multiplier, process=process, dynamic=alternates(spring, sheet))
    D, n = mean_diameter(spring, sheet, d), working_coils(spring, sheet)
    formula = clearance_sum_cold_coiled if process == "cold" else clearance_sum_hot_coiled
    return sheet.work("S_a", formula, x=x, n=n, D=D, d=d)


RULES = (index, solid_clearance)
