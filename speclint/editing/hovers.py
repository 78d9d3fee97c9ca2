"""What is said of a place of a spec: what its key means, its limits, the checks that rest on it, the part it names."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.checking import Check
from speclint.editing.cursor import Cursor, cursor_at
from speclint.editing.workspace import OpenText, Workspace
from speclint.errors import QuantityError
from speclint.quantities import DIMENSIONS, Measure, amount, read
from speclint.reports import share_of_limit
from speclint.repository import CellError, Schema
from speclint.specs import Stated

_MOST = 8  # checks that are told before the rest is counted


def hover(space: Workspace, text: OpenText, line: int, column: int) -> str:
    """What is said of the key or the value at a line and a column, both from 0, as Markdown; "" where nothing is."""
    at = cursor_at(text.lines, line, column)
    kind = space.kind_of(text.lines)
    if at.side == "remark" or kind is None or not (at.whole and at.path):
        return ""
    parts = [*_of_key(at, space.schema(kind)), *_of_link(space, at), *_of_checks(text, line + 1)]
    return "\n\n".join(parts)


def _of_key(at: Cursor, schema: Schema) -> Iterator[str]:
    try:
        node = schema.at(at.path)
        dimension = schema.dimension(at.path)
        above = schema.ways(schema.at(at.path[:-1]))
    except CellError:
        return
    name = at.path[-1]
    said = next((one["properties"][name] for one in above if name in one.get("properties", ())), node)
    yield f"**{'.'.join(at.path)}**: {said.get('description', node.get('description', ''))}"
    if dimension and at.side == "value":
        try:
            measure = read(at.whole, dimension, "any")
        except QuantityError as problem:
            yield f"{problem}; write {problem.instead}"
        else:
            if not measure.exact:
                yield _limits(measure)


def _limits(measure: Measure) -> str:
    known = DIMENSIONS.get("pressure" if measure.dimension == "fluid pressure" else measure.dimension)
    if known is None:  # a temperature, whose unit has another zero
        return measure.text
    return " to ".join(amount(one, known.si, measure.unit) for one in (measure.low, measure.high))


def _of_link(space: Workspace, at: Cursor) -> Iterator[str]:
    spec = space.edited.design.specs.get(at.whole) if at.side == "value" else None
    if spec is not None:
        title = f": {spec.title.value}" if isinstance(spec.title, Stated) else ""
        yield f"{spec.kind} in {space.edited.design.files[spec.id]}{title}"


def _of_checks(text: OpenText, line: int) -> Iterator[str]:
    """The checks that take the value of a line, the one that uses most of its limit first."""
    every = [one for one in text.checks.values() if one.outcome != "not applicable"]
    found = [one for one in every if _rests_on(one, text.file, line)]
    found.sort(key=lambda one: (-(one.utilisation or 0.0), one.order))
    lines = [f"- {_told(one)}" for one in found[:_MOST]]
    if (more := len(found) - _MOST) > 0:
        what = "check that rests on it" if more == 1 else "checks that rest on it"
        lines.append(f"- and {more} more {what}")
    if lines:
        yield "\n".join(lines)


def _rests_on(check: Check, file: str, line: int) -> bool:
    places = (step.where for step in check.steps)
    return any(one.file == file and one.line == line for one in (check.where, *places))


def _told(check: Check) -> str:
    used = f"{share_of_limit(check.utilisation)}, " if check.utilisation is not None else ""
    word = check.grade.word if check.outcome == "finding" and check.grade else check.outcome
    sources = "; ".join(str(source) for source in check.rule.cites)
    return f"{used}{word}: {check.rule.name} on {check.component}: {check.says}. Source: {sources}"
