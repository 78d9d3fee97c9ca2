"""A spring free, on the shut valve, on the open one and solid, and its stresses in the diagram of its endurance."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from speclint.checking import Assessment, Check
from speclint.quantities import Measure
from speclint.reports.pack.figures import Figure, followed, millimetres, said, specs_of, word
from speclint.reports.pack.paper import Paper
from speclint.reports.pack.plot import Plot
from speclint.reports.pack.printed import Quantity, Words, judged, on_sheet, shown, stated, words, worked
from speclint.specs import CompressionSpring

_TALL, _TOP, _LEFT, _APART = 240.0, 34.0, 60.0, 150.0
_FOOT = 84.0
_SOLID, _STRESSED, _ENDURES = "coil-spring.solid-clearance", "coil-spring.stress-solid", "coil-spring.fatigue"
_SAYS = (
    "Drawn in the simplified form of ISO 2162: nominal lengths and loads; solid, as its sheets work it at the limits "
    "that govern. Lengths are to scale, and so is the mean diameter of the coils."
)
_FATIGUE_SAYS = (
    "From the sheet of {}: upper stress of the wire over the lower one, at the inside of the coil. The lower line is "
    "where both are the same, the upper one what a wire of this strength endures, the broken one that with the factor "
    "asked for. The upright is the working range."
)


def spring_views(assessment: Assessment) -> Iterator[Figure]:
    """Figures of each spring whose lengths are stated: its positions, and its endurance where that is checked."""
    checks: dict[str, dict[str, Check]] = defaultdict(dict)
    for check in assessment.checks:
        checks[check.component][check.rule.name] = check
    for spring in specs_of(assessment, CompressionSpring):
        if all(millimetres(one) for one in (spring.free_length, spring.shut_length, spring.mean_diameter)):
            yield _positions(assessment, spring, checks[spring.id])
        if (found := checks[spring.id].get(_ENDURES)) is not None:
            yield from _endurance(spring.id, found)


def _known(checks: Mapping[str, Check], rule: str, symbol: str) -> Quantity | None:
    check = checks.get(rule)
    return on_sheet(check, symbol) if check is not None else None


def _stages(
    spring: CompressionSpring, checks: Mapping[str, Check]
) -> Iterator[tuple[str, Quantity, Quantity | None]]:
    """Each position: its name, the length, and the load where that is known."""
    lengths = (
        ("free", spring.free_length, None),
        ("valve shut", spring.shut_length, spring.shut_load),
        ("valve open", spring.open_length, spring.open_load),
    )
    for name, length, load in lengths:
        if isinstance(length, Measure):
            yield name, stated(length), stated(load) if isinstance(load, Measure) else None
    solid = _known(checks, _SOLID, "L_c")
    if solid is not None:
        yield "solid", solid, _known(checks, _STRESSED, "F_c")


def _positions(assessment: Assessment, spring: CompressionSpring, checks: Mapping[str, Check]) -> Figure:
    stages = list(_stages(spring, checks))
    assert isinstance(spring.mean_diameter, Measure)
    across, longest = stated(spring.mean_diameter), max(length.in_unit("mm") for _, length, _ in stages)
    scale = min(_TALL / longest, 90.0 / across.in_unit("mm"))
    foot = _TOP + longest * scale
    rows = tuple(_rows(spring, stages))
    paper = Paper(
        f"spring-{spring.id}",
        f"Positions of {spring.id}",
        "; ".join(f"{what}: {size}" for what, size in rows),
        _LEFT + len(stages) * _APART + 40,
        foot + _FOOT,
    )
    for number, (name, length, load) in enumerate(stages):
        middle = _LEFT + 34 + (number + 0.5) * _APART
        _coils(paper, spring, (middle, foot), length, across.in_unit("mm") / 2 * scale, scale)
        says = words("{} {mm}", shown(length, "mm"))
        x = middle - across.in_unit("mm") / 2 * scale - 18
        for y in (foot, foot - length.in_unit("mm") * scale):
            paper.line((x - 6, y), (middle - across.in_unit("mm") / 2 * scale, y), "fine")
        paper.dimension((x, foot - length.in_unit("mm") * scale), (x, foot), length)
        paper.text((x - 6, foot - length.in_unit("mm") * scale / 2), says, "figure", "end")
        paper.text((middle, foot + 20), name, "word", "middle")
        if load is not None:
            paper.text((middle, foot + 38), words("{} {N}", shown(load, "N", 0)), "figure", "middle")
    paper.line((_LEFT, foot), (paper.width - 20, foot), "edge")
    paper.scale_bar((_LEFT, foot + 58), scale, 90 / scale)
    valve = followed(assessment, spring.closes)
    of = f" of {valve.id}" if valve is not None else ""
    heading = f"{spring.id}{of}: free, shut, open and solid"
    return Figure.of(paper, spring.id, heading, _SAYS, rows, ("what", "size"))


def _coils(
    paper: Paper,
    spring: CompressionSpring,
    at: tuple[float, float],
    length: Quantity,
    half: float,
    scale: float,
) -> None:
    """The coils as a line from side to side, the end coils flat, between two plates."""
    x, foot = at
    count = spring.total_coils.nominal if isinstance(spring.total_coils, Measure) else 8.0
    tall, turns = length.in_unit("mm") * scale, max(2, round(count))
    wire = (millimetres(spring.wire) or 0.0) * scale
    step = (tall - wire) / turns
    low = foot - wire / 2
    sides = [(x + (half if n % 2 else -half), low - n * step / 2) for n in range(2 * turns + 1)]
    paper.path([(x + half, low), *sides, (x + half, sides[-1][1])], "stated")
    paper.line((x - half - 12, foot - tall), (x + half + 12, foot - tall), "edge")
    paper.line((x, foot + 6), (x, foot - tall - 8), "axis")


def _rows(
    spring: CompressionSpring, stages: Sequence[tuple[str, Quantity, Quantity | None]]
) -> Iterator[tuple[str, str]]:
    yield "wire", words("{} {}", said(spring.wire), word(spring.wire_grade))
    yield "mean diameter", said(spring.mean_diameter)
    yield (
        "coils, working and in all",
        words("{} and {}", said(spring.working_coils), said(spring.total_coils)),
    )
    yield "rate", said(spring.rate)
    for name, length, load in stages:
        size = words("{} {mm}", shown(length, "mm"))
        yield name, words("{} at {} {N}", size, shown(load, "N", 0)) if load is not None else size


def endured(lower: float, stroke: float, slope: float) -> float:
    """The upper stress that a wire endures over a lower one: its stroke strength falls as the lower one grows."""
    return lower + stroke - (1 - slope) * lower


def asked(lower: float, stroke: float, slope: float, factor: float) -> float:
    """The upper stress at which a working range has a factor to what is endured."""
    return lower + (stroke - (1 - slope) * lower) / factor


class _Stresses(Struct, frozen=True):
    """What a check of endurance works: lower and upper stress, stroke strength and slope, and what follows of them."""

    check: Check
    lower: Quantity
    upper: Quantity
    stroke: Quantity
    slope: Quantity
    factor: Quantity

    @property
    def top(self) -> Quantity:
        """The upper stress that is endured over the lower one."""
        return worked(endured, lower=self.lower, stroke=self.stroke, slope=self.slope)

    @property
    def wanted(self) -> Quantity:
        """The upper stress at which the range has the factor that is asked for."""
        return worked(asked, lower=self.lower, stroke=self.stroke, slope=self.slope, factor=self.factor)

    def lines(self, end: float) -> list[tuple[list[tuple[float, float]], str, str]]:
        """The three lines of the diagram up to a lower stress [MPa], each with its ink and its name."""
        m, strength, factor = self.slope.value, self.stroke.in_unit("MPa"), self.factor.value
        return [
            ([(0.0, 0.0), (end, end)], "edge", "both the same"),
            ([(0.0, strength), (end, endured(end, strength, m))], "edge", "endured"),
            (
                [(0.0, strength / factor), (end, asked(end, strength, m, factor))],
                "edge dashed",
                "with the factor",
            ),
        ]


def _endurance(name: str, check: Check) -> Iterator[Figure]:
    """The figure of a check that works a lower and an upper stress, and the stroke strength of the wire."""
    held = judged(check)
    found = [on_sheet(check, symbol) for symbol in ("τ_U", "τ_O", "τ_H0", "m")]
    known = [one for one in found if one is not None]
    if held is None or len(known) != len(found):
        return
    stresses = _Stresses(check, known[0], known[1], known[2], known[3], held[1])
    end = max(stresses.lower.in_unit("MPa") * 1.3, 100.0)
    rows = _fatigue_rows(stresses)
    plot = Plot(
        f"endurance-{name}",
        f"Endurance of {name}",
        "; ".join(f"{what}: {size}" for what, size in rows),
        (0.0, end),
        (0.0, 1.15 * max(one.in_unit("MPa") for one in (stresses.upper, stresses.top))),
        ("lower stress, {MPa}", "upper stress, {MPa}"),
        tall=240.0,
    )
    _stressed(plot, stresses, end)
    heading = f"{name}: stresses of the wire, and what it endures"
    says = _FATIGUE_SAYS.format(check.rule.name)
    yield Figure.of(plot.paper, name, heading, says, rows, ("what", "size"))


def _stressed(plot: Plot, stresses: _Stresses, end: float) -> None:
    """The lines of the diagram with the working range, each with its words."""
    labels, lower = plot.labels(), stresses.lower.in_unit("MPa")
    for line, ink, _ in stresses.lines(end):
        plot.line(line, ink)
        labels.avoid(plot.on(line))
    plot.paper.place(stresses.lower, "MPa", "x", plot.place(lower, 0.0)[0])
    of = (stresses.lower, stresses.upper, stresses.wanted, stresses.top)
    marks = [(one, plot.place(lower, one.in_unit("MPa"))) for one in of]
    plot.paper.line(marks[0][1], marks[3][1], "thin")
    ink = "point bad" if stresses.check.outcome == "finding" else "point"
    for number, (one, at) in enumerate(marks):
        plot.paper.place(one, "MPa", "y", at[1])
        if number < 2:
            plot.point(lower, one.in_unit("MPa"), ink)
        else:
            plot.paper.line((at[0] - 5, at[1]), (at[0] + 5, at[1]), "edge")
    for number in (0, 1, 3):
        one, at = marks[number]
        labels.put(at, words("{} {MPa}", shown(one, "MPa", 0)))
    for line, _, says in stresses.lines(end):
        labels.put(plot.place(end * 0.3, line[0][1] + (line[1][1] - line[0][1]) * 0.3), says, "quiet")


def _fatigue_rows(stresses: _Stresses) -> list[tuple[str, str]]:
    held = judged(stresses.check)
    assert held is not None  # as was asked

    def megapascals(one: Quantity) -> Words:
        return words("{} {MPa}", shown(one, "MPa", 1))

    return [
        ("lower stress, valve shut", megapascals(stresses.lower)),
        ("upper stress, valve open", megapascals(stresses.upper)),
        ("stroke strength of the wire", megapascals(stresses.stroke)),
        ("upper stress that is endured", megapascals(stresses.top)),
        ("factor of the range", words("{}, at least {}", shown(held[0], "", 3), shown(held[1], "", 2))),
    ]
