"""The load that shuts a valve over its lift, and the load that must be held, as its sheet judges them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from speclint.checking import Assessment
from speclint.quantities import Measure
from speclint.reports.pack.curves import Courses, courses_of
from speclint.reports.pack.figures import Figure, followed, known_of, said, specs_of
from speclint.reports.pack.labels import Labels
from speclint.reports.pack.plot import Plot
from speclint.reports.pack.printed import Quantity, shown, stated, words, worked
from speclint.specs import CompressionSpring, PoppetValve

_ROOM = 1.12  # how far the axis runs beyond the greatest load
_TALL = 280.0
_COLD = "springs by their drawings, cold, least and greatest"
_NAMED = (0.12, 0.72)  # shares of the lift at which the names of the curves stand
_BAND_NAMED = 0.4
_EVERY = 15  # places of a scan from one that is held to the next


def spring_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each valve whose lift and springs are stated, of the check that was scanned over the lift."""
    springs: dict[str, list[CompressionSpring]] = {}
    for spring in known_of(assessment, CompressionSpring):
        valve = followed(assessment, spring.closes)
        if isinstance(valve, PoppetValve):
            springs.setdefault(valve.id, []).append(spring)
    courses = {one.check.component: one for one in reversed(list(courses_of(assessment.checks)))}
    for valve in specs_of(assessment, PoppetValve):
        lift, own = valve.lift, springs.get(valve.id, [])
        if isinstance(lift, Measure) and own and all(_is_stated(spring) for spring in own):
            yield _figure(valve, lift, own, courses.get(valve.id))


def _is_stated(spring: CompressionSpring) -> bool:
    return isinstance(spring.shut_load, Measure) and isinstance(spring.rate, Measure)


def load_at(shut: float, rate: float, lift: float) -> float:
    """Load of a spring at a lift."""
    return shut + rate * lift


def together(**loads: float) -> float:
    """Loads of several springs together."""
    return sum(loads.values())


def _at_lift(springs: Sequence[CompressionSpring], lift: Measure, side: str) -> tuple[Quantity, Quantity]:
    """Load of all springs, shut and at the lift, at one side of their limits."""
    shut, full = {}, {}
    for number, spring in enumerate(springs):
        assert isinstance(spring.shut_load, Measure)
        assert isinstance(spring.rate, Measure)
        ends = stated(spring.shut_load, side), stated(spring.rate, side)  # type: ignore[arg-type]
        shut[f"F{number}"] = ends[0]
        full[f"F{number}"] = worked(load_at, shut=ends[0], rate=ends[1], lift=stated(lift))
    return worked(together, **shut), worked(together, **full)


def _figure(
    valve: PoppetValve, lift: Measure, springs: Sequence[CompressionSpring], found: Courses | None
) -> Figure:
    sides = [_at_lift(springs, lift, side) for side in ("low", "high")]
    loads = [up for one in (found.curves if found else ()) for _, up in one if up is not None]
    travels = [at * 1e3 for at in (found.travel.values if found else ()) if at is not None]
    rows = tuple(_rows(lift, springs, (sides[0][1], sides[1][1]), found))
    plot = Plot(
        f"load-{valve.id}",
        f"Load of the springs of {valve.id} over its lift",
        "; ".join(f"{what}: {value}" for what, value in rows),
        (0.0, max(lift.nominal * 1e3, *travels, 0.0) * 1.02),
        _ends(loads, sides[1][1].value),
        ("lift of the valve, {mm}", "load, {N}"),
        _TALL,
    )
    labels = plot.labels()
    _as_drawn(plot, labels, stated(lift), sides)
    if found:
        _asked(plot, labels, found)
    _name_band(plot, labels, stated(lift), *sides[0])
    names = ", ".join(spring.id for spring in springs)
    return Figure.of(
        plot.paper,
        valve.id,
        f"{valve.id}: load of {names} over the lift, and the load needed",
        _says(found),
        rows,
        ("what", "size"),
    )


def _ends(loads: Sequence[float], most: float) -> tuple[float, float]:
    """The ends of the axis of loads, with a little room beyond them."""
    low, high = min(0.0, *loads, 0.0), max(most, *loads, 0.0)
    return (low - (_ROOM - 1) * (high - low) if low < 0 else 0.0), high * _ROOM


def _as_drawn(plot: Plot, labels: Labels, lift: Quantity, sides: Sequence[tuple[Quantity, Quantity]]) -> None:
    """The band of the springs by their drawings, its corners held."""
    lines = [[(0.0, shut.value), (lift.in_unit("mm"), full.value)] for shut, full in sides]
    plot.band(*lines)
    for shut, full in sides:
        for at, load in ((0.0, shut), (lift.in_unit("mm"), full)):
            plot.paper.place(load, "N", "y", plot.place(at, load.value)[1])
    plot.paper.place(lift, "mm", "x", plot.place(lift.in_unit("mm"), 0.0)[0])
    for line in lines:
        labels.avoid(plot.on(line))


def _name_band(plot: Plot, labels: Labels, lift: Quantity, shut: Quantity, full: Quantity) -> None:
    """The name of the band at the side of its lower line, when all curves are there."""
    up = shut.value + (full.value - shut.value) * _BAND_NAMED
    labels.put(plot.place(lift.in_unit("mm") * _BAND_NAMED, up), _COLD, "quiet")


def _says(found: Courses | None) -> str:
    if found is None:
        return "No check of this valve was scanned over its lift: the load needed is not drawn."
    case = f", {found.check.case}" if found.check.case else ""
    both = "" if found.is_alike else " Broken line: as the valve shuts."
    return (
        f"From the sheet of {found.check.rule.name}{case}, at its governing corner: what is there to hold the valve "
        "on its cam, hot and relaxed, with its weight and less friction and steam, and what must be held. "
        "Nothing must be held where the cam pushes the train: there the line breaks off. The two points are at the "
        f"instant that governs, as judged.{both}"
    )


def _asked(plot: Plot, labels: Labels, found: Courses) -> None:
    there, needed = found.curves
    opening = found.opening(there), found.opening(needed)
    plot.line(opening[0], "edge")
    plot.line(opening[1], "asked")
    for line in opening:
        labels.avoid(plot.on(line))
    if not found.is_alike:
        shutting = found.closing(needed)
        plot.line(shutting, "asked shutting")
        labels.avoid(plot.on(shutting))
    for place in range(0, found.top + 1, _EVERY):
        for load in found.held(place):
            plot.paper.place(load, "N", "y", plot.place(0.0, load.value)[1])
    _points(plot, labels, found)
    for line, share, name in zip(opening, _NAMED, found.names, strict=True):
        known = [(at, up) for at, up in line if up is not None]
        if known:
            wanted = share * max(at for at, _ in known)
            labels.put(plot.place(*min(known, key=lambda one: abs(one[0] - wanted))), name)


def _points(plot: Plot, labels: Labels, found: Courses) -> None:
    """The two loads that the sheet judges, at the lift at which it does."""
    at, loads = found.at, found.judged
    if at is None or loads is None:
        return
    ends = [plot.place(at.in_unit("mm"), load.value) for load in loads]
    plot.paper.line(ends[0], ends[1], "thin")
    plot.paper.place(at, "mm", "x", ends[0][0])
    for load, end in zip(loads, ends, strict=True):
        plot.point(at.in_unit("mm"), load.value, "point bad" if found.check.outcome == "finding" else "point")
        plot.paper.place(load, "N", "y", end[1])
        labels.put(end, words("{} {N}", shown(load, "N", 0)))


def _rows(
    lift: Measure,
    springs: Sequence[CompressionSpring],
    ends: tuple[Quantity, Quantity],
    found: Courses | None,
) -> Iterator[tuple[str, str]]:
    yield "lift", said(lift)
    for spring in springs:
        yield f"{spring.id}, load shut", said(spring.shut_load)
        yield "its rate", said(spring.rate)
        yield "its load at full lift, as stated", said(spring.open_load)
    both = words("{} {N} to {} {N}", *(shown(one, "N", 0) for one in ends))
    yield "all springs at full lift, by their drawings", both
    if found is not None:
        yield from _governing(found)


def _governing(found: Courses) -> Iterator[tuple[str, str]]:
    """The sheet's own figures where the margin is least."""
    yield "worked for", found.check.case or "the part as drawn"
    if found.at is not None:
        yield f"{found.travel.name}, where the margin is least", words("{} {mm}", shown(found.at, "mm", 3))
    if found.judged is not None:
        for name, load in zip(found.names, found.judged, strict=True):
            yield f"{name}, where the margin is least", words("{} {N}", shown(load, "N", 1))
        loads = [shown(one, "N", 1) for one in found.judged]
        sign = found.check.judgement.compared if found.check.judgement else ""
        yield "judged", words("{} {N} {} {} {N}: {}", loads[0], sign, loads[1], found.check.outcome)
