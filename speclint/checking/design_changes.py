"""What a change did to a design: its specs, value by value, and what stands in the way of a release."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from msgspec import Struct

from speclint.checking.check_result import Check
from speclint.repository import Design
from speclint.specs import Link, Spec, leaves, stated_values


class ValueChange(Struct, frozen=True):
    """A value of a spec as it was written before and as it is now; "" where it is not stated."""

    key: str
    was: str
    now: str


class DesignChanges(Struct, frozen=True):
    """What changed since a revision.

    ``added`` and ``removed`` are ids of specs, ``changed`` the values of those that were there and still are. ``new``
    are findings and safety checks not assessed that did not stand in the way before, or stood there less gravely;
    ``cleared`` are those that do so no longer, as they came out before.
    """

    since: str
    added: tuple[str, ...]
    removed: tuple[str, ...]
    changed: Mapping[str, tuple[ValueChange, ...]]
    new: tuple[Check, ...]
    cleared: tuple[Check, ...]


def changed_specs(
    before: Design, now: Design, renamed: Mapping[str, str] | None = None
) -> dict[str, tuple[ValueChange, ...]]:
    """The values that differ of each spec that both designs have, where any does.

    ``renamed`` gives the id now of each spec that had another: a link that follows it is no change.
    """
    called = renamed or {}
    found = {}
    for name in sorted(before.files):
        other = called.get(name, name)
        if other not in now.files or before.state_of(name) == now.state_of(other):
            continue
        differs = tuple(_differing(before.specs.get(name), now.specs.get(other), called))
        if differs:
            found[other] = differs
    return found


def _differing(was: Spec | None, now: Spec | None, called: Mapping[str, str]) -> Iterator[ValueChange]:
    old, new = (stated_values(one) if one is not None else {} for one in (was, now))
    links = (
        {one.key for one in leaves(was) if isinstance(one.value, Link)} if was is not None and called else ()
    )
    for key in dict.fromkeys([*old, *new]):
        then, since = old.get(key, ""), new.get(key, "")
        follows = called.get(then) == since and (key in links or key == "id")
        if then != since and not follows:
            yield ValueChange(key, then, since)


def new_and_cleared(
    before: Iterable[Check], now: Iterable[Check]
) -> tuple[tuple[Check, ...], tuple[Check, ...]]:
    """What stands in the way now and did not before, and the reverse, by component and rule; graver counts as new."""
    old = {one.order: one for one in before if one.stands_in_the_way is not None}
    new = {one.order: one for one in now if one.stands_in_the_way is not None}
    return (
        tuple(one for order, one in new.items() if _grade(one) > _grade(old.get(order))),
        tuple(one for order, one in old.items() if order not in new),
    )


def _grade(check: Check | None) -> int:
    """The grade at which a check stands in the way; below every grade where it does not."""
    grade = check.stands_in_the_way if check is not None else None
    return -1 if grade is None else int(grade)
