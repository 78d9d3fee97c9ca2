"""What a spec states, as it is written, by key: so that two states of one spec can be compared by a reader."""

from __future__ import annotations

from speclint.quantities import Measure
from speclint.specs.fields import Link, NotStated, Stated
from speclint.specs.spec import Spec, leaves
from speclint.specs.ties import WrittenTie
from speclint.specs.worked_values import Estimate, FromEvents


def stated_values(spec: Spec) -> dict[str, str]:
    """Every value that a spec states or takes over, by its dotted key, as it is written."""
    stated = ((one.key, one.value) for one in leaves(spec))
    return {"kind": spec.kind, **{key: as_written(value) for key, value in stated if _is_stated(value)}}


def _is_stated(value: object) -> bool:
    """Whether a value stands in a file: also where it is left to be worked."""
    return isinstance(value, FromEvents | Estimate) or not isinstance(value, NotStated)


def as_written(value: object) -> str:
    """A value that is stated, as it stands in its file."""
    if isinstance(value, Measure):
        return value.text
    if isinstance(value, Link):
        return str(value.id)
    if isinstance(value, Stated):
        return str(value.value).lower() if isinstance(value.value, bool) else str(value.value)
    if isinstance(value, WrittenTie):
        return value.difference.text
    if isinstance(value, FromEvents | Estimate):
        return "from the valve events" if isinstance(value, FromEvents) else "an estimate"
    return str(value)
