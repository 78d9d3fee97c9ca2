"""The gap between the two walls of a partition: that it stays open, and what its gas carries."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres, Pascals
from speclint.facts import Panel, build_of, gap_between, greatest_exhaust_pressure, panels_of_partition
from speclint.handbook.heat import INCROPERA
from speclint.handbook.plates import PANEL_TABLES, panel_deflection, panel_deflection_factor
from speclint.specs import LoadCase, Partition
from speclint_steamways.formulae.gaps import gap_left, section_of_bridges
from speclint_steamways.inputs.gaps import convection_in
from speclint_steamways.inputs.partitions import pressure_on_live_side, wall_left


@rule(
    "heat.gap-works",
    title="The gap between the two walls of a partition stays at least 5 mm open, at the least width by its drawing "
    "and with both walls bent into it by the pressures on them",
    wrong="gap between the walls closes to {found}, {limit} wanted",
    on=Partition,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[PANEL_TABLES, INCROPERA.at("equation 9.52"), COMMON_PRACTICE],
    why="Walls that touch are one wall, and the heat goes through as if there were no gap.",
    leaves_out="walls that warp as they are welded, corrosion of one that is no plate of a weldment, and dirt in the "
    "gap; that it is vented (block.closed-cavities); "
    "the sum of heat, which takes the convection in the gap from here (heat.exhaust-heating)",
    against=(),
    edition=4,
    limits=[
        Limit("gap", "5 mm", "length", COMMON_PRACTICE, "least gap that is left"),
        Limit(
            "stay",
            "100 mm²",
            "area",
            COMMON_PRACTICE,
            "least section across a gap, of one round stay of 11 mm",
        ),
    ],
)
def gap_works(partition: Partition, case: LoadCase, sheet: Sheet) -> Judgement:
    """Width less the deflection of both walls, each less its corrosion allowance.

    By how much its gas carries more than still gas stands beside it. Bridges that are stated, and not none, are in all
    at least one stay: a share that makes a thread of it is a slip, and counts the heat that they carry as nothing.
    """
    if build_of(partition, sheet) == "single wall":
        raise sheet.not_applicable("it is a single wall")
    s = sheet.take("s", gap_between(partition, sheet))
    panels = panels_of_partition(partition, sheet)
    pressures = (
        pressure_on_live_side(partition, case, sheet),
        greatest_exhaust_pressure(partition, case, sheet),
    )
    # where one wall is drawn for both, they are alike
    y_1, y_2 = (
        _bent(panel, p, i, partition, case, sheet)
        for i, panel, p in zip(("1", "2"), (panels[0], panels[-1]), pressures, strict=True)
    )
    T_1, T_2 = sheet.take("T_l", case.live_temperature), sheet.take("T_e", case.exhaust_temperature)
    convection_in(partition, s, T_1, T_2, sheet)
    open_still = sheet.at_least(sheet.work("s_l", gap_left, s=s, y_1=y_1, y_2=y_2), sheet.limit("gap", "s_a"))
    return sheet.worst(open_still, *_bridged(partition, sheet))


def _bridged(partition: Partition, sheet: Sheet) -> Iterator[Judgement]:
    """The section of all that bridges the gap, where the partition says that something does."""
    if not sheet.is_stated("bridges", partition.bridges):
        return
    b = sheet.take("b", partition.bridges)
    if b > 0:
        A = sheet.work("A_b", section_of_bridges, b=b, A=sheet.take("A", partition.area))
        yield sheet.at_least(A, sheet.limit("stay", "A_s")).else_says(
            "all that bridges the gap has {found}, one stay alone has {limit}"
        )


def _bent(panel: Panel, p: Pascals, i: str, partition: Partition, case: LoadCase, sheet: Sheet) -> Metres:
    """By how much a wall bends into the gap; with edges not stated, as supported ones, which bend it most."""
    metal, at = sheet.material_of(partition), sheet.take("T_w", case.temperature_of(partition))
    stated = panel.edges is not None and sheet.is_stated("edges", panel.edges)
    edges = sheet.read("edges", panel.edges) if stated and panel.edges is not None else "supported"
    a, b = sheet.take(f"a_{i}", panel.short), sheet.take(f"b_{i}", panel.long)
    return sheet.work(
        f"y_{i}",
        panel_deflection,
        alpha=sheet.look_up(f"α_{i}", panel_deflection_factor, edges=edges, a=a, b=b),
        p=p,
        a=a,
        t=wall_left(sheet.take(f"t_{i}", panel.thickness), panel, f"_{i}", sheet),
        E=sheet.look_up("E", metal.modulus, of=partition, at=at),
        nu=sheet.look_up("ν", metal.poisson, of=partition),
    )


RULES: tuple[Rule, ...] = (gap_works,)
