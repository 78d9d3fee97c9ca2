"""Index of what the specs ask for beside dimensions: inspection documents, welds and tests, parts alike together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence

from msgspec import Struct

from speclint.checking import Assessment
from speclint.quantities import Measure
from speclint.reports.pack.figures import word
from speclint.specs import Component, NotStated, Stated, Weldment

_POINTS = ("welding", "pressing", "pressure_test", "lift_in")


class Row(Struct, frozen=True):
    """What is asked for alike of some parts: their names, or the kind of which they are all that there are."""

    parts: tuple[str, ...]
    cells: tuple[str, ...]


class AskedFor(Struct, frozen=True):
    """The three tables of the index."""

    certificates: tuple[Row, ...]
    welds: tuple[Row, ...]
    tests: tuple[Row, ...]


def asked_for(assessment: Assessment) -> AskedFor:
    """What the selected specs ask for, as they state it."""
    parts = tuple(assessment.design.parts()) if assessment.design else ()
    return AskedFor(
        _together(parts, lambda one: [_certificate(one)]),
        _together(parts, lambda one: list(_welds(one))),
        _together(parts, lambda one: [_tests(one)]),
    )


def _together(
    parts: Sequence[Component], asked: Callable[[Component], Sequence[tuple[str, ...]]]
) -> tuple[Row, ...]:
    """What is asked for alike with all its parts, where the first of them stood; no row where all cells are empty."""
    found: dict[tuple[str, ...], list[Component]] = {}
    for part in parts:
        for cells in asked(part):
            if any(cells):
                found.setdefault(cells, []).append(part)
    number = Counter(part.kind for part in parts)
    return tuple(Row(tuple(_named(alike, number)), cells) for cells, alike in found.items())


def _named(parts: Sequence[Component], number: Mapping[str, int]) -> Iterator[str]:
    """The parts by name; where they are all of their kind, and more than one, the kind with their number."""
    by_kind: dict[str, list[Component]] = {}
    for part in parts:
        by_kind.setdefault(part.kind, []).append(part)
    for kind, alike in by_kind.items():
        if len(alike) == number[kind] > 1:
            yield f"each {alike[0].called or kind} ({len(alike)})"
        else:
            yield from (part.id for part in alike)


def _certificate(part: Component) -> tuple[str, ...]:
    """Inspection document, material, examination, and the body that reviews it."""
    document = word(part.inspection_document)
    asked = word(part.examination), word(part.competent_body)
    return (document, word(part.material), *asked) if document or any(asked) else ()


def _welds(part: Component) -> Iterator[tuple[str, ...]]:
    """Each joint: its name, its form, its quality, how much is examined, and by whom and how it is welded."""
    if not isinstance(part, Weldment):
        if isinstance(part.welding.welded, Stated) and part.welding.welded.value:
            yield (
                "welded",
                word(part.welding.heat_treatment),
                "",
                "",
                _amount("preheat", part.welding.preheat),
            )
        return
    for name, joint in part.joints.items():
        form = " ".join(filter(None, (word(joint.shape), word(joint.weld))))
        level = f"level {word(joint.quality)}" if word(joint.quality) else ""
        qualified = "; ".join(filter(None, (word(joint.procedure), word(joint.welder))))
        yield name, form, level, _amount("", joint.examined), qualified


def _tests(part: Component) -> tuple[str, ...]:
    """Test pressure over design pressure, and the points of inspection."""
    pressures = _amount("", part.test_pressure), _amount("", part.design_pressure)
    table = part.inspection_points
    points = ((name.replace("_", " "), word(getattr(table, name))) for name in _POINTS)
    stops = "; ".join(f"{name}: {point}" for name, point in points if point and point != "none")
    return (*pressures, stops) if pressures[0] or stops else ()


def _amount(name: str, value: Measure | NotStated) -> str:
    if not isinstance(value, Measure):
        return ""
    return f"{name} {value.text}".strip()
