"""A long calculation on a sheet of its own, such as the cycle in a cylinder: a sheet shows its result alone."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from hashlib import sha256
from typing import TYPE_CHECKING, Any, TypeVar

from speclint.rules.context import Context
from speclint.rules.record import Record
from speclint.specs import Spec

if TYPE_CHECKING:
    from speclint.rules.sheet import Sheet

T = TypeVar("T")


def worked_aside(
    context: Context,
    record: Record | None,
    own: Callable[[], Sheet],
    name: str,
    work: Callable[..., T],
    about: tuple[Any, ...],
) -> T:
    """What ``work`` gives, worked once for all corners of a check; the record notes what it rests on as one line.

    ``work`` takes what it is ``about`` and a sheet, and from it nothing but nominals and limits; ``name`` tells one
    such calculation about a part from another. In the search for a remedy it is worked anew, once for each value that
    is tried, where it took a place that is moved.
    """
    of = name, tuple(one.id for one in about if isinstance(one, Spec))  # a remedy is tried on several parts
    key: tuple[Hashable, ...] = "aside", of
    known = context.steady.get(key)
    if (context.moved or context.worded) and (
        known is None or not known[2].isdisjoint((*context.moved, *context.worded))
    ):
        key = "aside", of, frozenset(context.moved.items()), frozenset(context.worded.items())
        known = context.steady.get(key)
    if known is None:
        sheet = own()
        found = work(*about, sheet)
        rests = repr(sorted(sheet.record.basis.items())).encode()
        digest = f"worked from {sha256(rests).hexdigest()[:16]}"
        places = sheet.record.aside.union(step.where for step in sheet.record.steps)
        known = context.steady[key] = found, digest, places
    if record:
        record.note(name, known[1])
        record.aside |= known[2]
    result: T = known[0]
    return result
