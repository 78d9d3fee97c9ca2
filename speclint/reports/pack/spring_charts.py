"""The load of a valve's springs over its lift, and the load needed for inertia, steam, friction and weight."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from speclint.checking import Assessment
from speclint.quantities import Measure, amount
from speclint.reports.pack.curves import Courses, alike, courses_of
from speclint.reports.pack.figures import Figure, followed, known_of, said, specs_of
from speclint.reports.pack.plot import Key, Plot
from speclint.specs import CompressionSpring, PoppetValve

_ROOM = 1.04  # how far the axis runs beyond the greatest load
_COLD = "springs as drawn, least and greatest, at 20 °C"

_OPEN = "their load at full lift, as the drawing states it"


def spring_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each valve whose lift and springs are stated, once for each check that was scanned over the lift."""
    springs: dict[str, list[CompressionSpring]] = {}
    for spring in known_of(assessment, CompressionSpring):
        valve = followed(assessment, spring.closes)
        if isinstance(valve, PoppetValve):
            springs.setdefault(valve.id, []).append(spring)
    for valve in specs_of(assessment, PoppetValve):
        lift, own = valve.lift, springs.get(valve.id, [])
        if isinstance(lift, Measure) and own and all(_is_stated(spring) for spring in own):
            found = next(courses_of(assessment.checks, valve.id), None)
            yield _figure(valve, lift, own, found)


def _is_stated(spring: CompressionSpring) -> bool:
    return isinstance(spring.shut_load, Measure) and isinstance(spring.rate, Measure)


def _band(springs: Sequence[CompressionSpring], lift: float, side: str) -> list[tuple[float, float]]:
    """Load of all springs, shut and at a lift, at one side of their limits: [mm], [N]."""
    shut = sum(getattr(spring.shut_load, side) for spring in springs)
    rate = sum(getattr(spring.rate, side) for spring in springs)
    return [(0.0, shut), (lift * 1e3, shut + rate * lift)]


def _figure(
    valve: PoppetValve, lift: Measure, springs: Sequence[CompressionSpring], found: Courses | None
) -> Figure:
    low, high = (_band(springs, lift.nominal, side) for side in ("low", "high"))
    loads = [up for one in (found.loads if found else ()) for up in one.values if up is not None]
    travels = [at * 1e3 for at in (found.travel.values if found else ()) if at is not None]
    rows = _rows(lift, springs, low[1][1], high[1][1], found)
    plot = Plot(
        f"load-{valve.id}",
        f"Load of the springs of {valve.id} over its lift",
        "; ".join(f"{what}: {value}" for what, value in rows),
        (0.0, max(lift.nominal * 1e3, *travels, 0.0)),
        _ends(loads, high[1][1]),
        ("lift of the valve, mm", "load, N"),
        [Key("band", _COLD), Key("stated", _OPEN), *(_keys(found) if found else ())],
    )
    plot.band(low, high)
    if all(isinstance(spring.open_load, Measure) for spring in springs):
        ends = [sum(getattr(spring.open_load, side) for spring in springs) for side in ("low", "high")]
        plot.line([(lift.nominal * 1e3, end) for end in ends], "stated")
    if found:
        _asked(plot, found)
    names = ", ".join(spring.id for spring in springs)
    return Figure(
        plot.paper.name,
        valve.id,
        f"{valve.id}: load of {names} over the lift, and the load needed",
        _says(found),
        plot.paper.markup(),
        rows,
        ("what", "size"),
    )


def _ends(loads: Sequence[float], most: float) -> tuple[float, float]:
    """The ends of the axis of loads, with a little room beyond them."""
    low, high = min(0.0, *loads, 0.0), max(most, *loads, 0.0)
    return (low - (_ROOM - 1) * (high - low) if low < 0 else 0.0), high * _ROOM


def _says(found: Courses | None) -> str:
    if found is None:
        return "No check of this valve was scanned over its lift: the load needed is not drawn."
    case = f", {found.check.case}" if found.check.case else ""
    return (
        f"From the sheet of {found.check.rule.name}{case}, at its governing tolerance corner. No load is needed where "
        "the cam pushes the train: there the line breaks off. The two points are at the instant that governs."
    )


def _keys(found: Courses) -> list[Key]:
    there, *parts, asked = found.loads
    keys = [Key("curve", there.name), *(Key("part", one.name) for one in parts)]
    if alike(found.opening(asked), found.closing(asked)):
        keys.append(Key("asked", f"{asked.name}, opening and shutting alike"))
    else:
        keys += [Key("asked", f"{asked.name}, opening"), Key("asked shutting", f"{asked.name}, shutting")]
    return [*keys, Key(_point(found), "where the margin is least: load available, and load needed")]


def _point(found: Courses) -> str:
    return "point bad" if found.check.outcome == "finding" else "point"


def _asked(plot: Plot, found: Courses) -> None:
    there, *parts, asked = found.loads
    plot.line(found.opening(there), "curve")
    for part in parts:
        plot.line(found.opening(part), "part")
    opening, closing = found.opening(asked), found.closing(asked)
    plot.line(opening, "asked")
    if not alike(opening, closing):
        plot.line(closing, "asked shutting")
    at, has, wants = (found.governing(one) for one in (found.travel, there, asked))
    if at is not None and has is not None and wants is not None:
        plot.paper.line(plot.place(at * 1e3, has), plot.place(at * 1e3, wants), "thin")
        for load in (has, wants):
            plot.point(at * 1e3, load, _point(found))
            x, y = plot.place(at * 1e3, load)
            plot.paper.text(
                (x - 10, y + (-6 if load == max(has, wants) else 16)), amount(load, "N"), "figure", "end"
            )


def _rows(
    lift: Measure, springs: Sequence[CompressionSpring], low: float, high: float, found: Courses | None
) -> tuple[tuple[str, str], ...]:
    rows = [("lift", said(lift))]
    for spring in springs:
        rows += [(f"{spring.id}, load shut", said(spring.shut_load)), ("its rate", said(spring.rate))]
        rows += [("its load at full lift, as stated", said(spring.open_load))]
    rows.append(("all springs at full lift, calculated at 20 °C", f"{low:.0f} N to {high:.0f} N"))
    return (*rows, *(_governing(found) if found else ()))


def _governing(found: Courses) -> Iterator[tuple[str, str]]:
    """The sheet's own figures where the margin is least."""
    yield "worked for", found.check.case or "the part as drawn"
    speeds = [step for step in found.check.steps if step.unit == "rad/s" and isinstance(step.value, float)]
    if speeds:
        yield f"{speeds[-1].name[:1].lower()}{speeds[-1].name[1:]}", amount(float(speeds[-1].value), "rad/s")
    for series in (found.travel, *found.loads):
        value = found.governing(series)
        if value is not None:
            yield f"{series.name}, where the margin is least", amount(value, series.unit)
    yield "judged", found.check.says
