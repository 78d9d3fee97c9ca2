"""What rules of places take alike: who fills a place, and whether the place is closed on purpose."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import TypeVar

from speclint import Sheet, ToFill
from speclint.specs import (
    BoltedJoint,
    ChamberCover,
    Closable,
    Component,
    CylinderBlock,
    CylinderCover,
    PistonRod,
    Spec,
    SpecTable,
)

C = TypeVar("C", bound=Component)
_CLOSABLE = ("ports", "seat_bores", "openings", "pads")  # tables of a block whose places a plug may close


def place(
    name: str,
    owner: Spec,
    kind: type[C],
    sheet: Sheet,
    *,
    by: str | Sequence[str],
    named: tuple[str, str] | None = None,
    wrong: Callable[[C], str | None] | None = None,
    entry: SpecTable | None = None,
) -> ToFill:
    """A place that one component of a kind fills which leads to its owner by a link, of an entry where one is named.

    ``wrong`` says what is wrong with a component that is there. ``entry`` is the table of the place.
    """
    found = sheet.fillers(owner, kind, by=by, named=named)
    said = next((said for one in found if wrong is not None and (said := wrong(one))), "")
    return ToFill(name, kind.called, found, wrong=said, where=(entry or owner).where)


def entries(owner: Spec, table: str, sheet: Sheet) -> Iterator[ToFill]:
    """A table that states nothing: a gap of its own, since each entry would be a place."""
    if not sheet.names_under(owner, table):
        yield ToFill(owner.id, f"statement of its {table.replace('_', ' ')}", where=owner.where)


def twice_where_unlisted(
    word: str, owner: Spec, table: str, kind: type[C], sheet: Sheet, *, by: str, key: str
) -> Iterator[ToFill]:
    """Components of a kind that name one place of a table that states nothing: two of them are one too many."""
    if sheet.names_under(owner, table):
        return
    named: dict[str, list[C]] = {}
    for one in sheet.fillers(owner, kind, by=by):
        name = sheet.said(f"{word} of {one.id}", getattr(one, key))
        if name:
            named.setdefault(name, []).append(one)
    for name, parts in named.items():
        if len(parts) > 1:
            yield ToFill(f"{word} {name}", kind.called, tuple(parts), where=owner.where)


def closed(
    name: str, key: str, entry: Closable, owner: CylinderBlock, inside: ToFill, sheet: Sheet
) -> ToFill:
    """A place as it is, or as one that is closed on purpose: by a plug or a cover, with a reason, and nothing in it."""
    if not blanked(name, entry, sheet):
        return inside
    fillers: tuple[str, ...] = ()
    wrong = (
        "" if sheet.reason_given(owner, key) else f"it is blanked, and [notes] gives no reason under {key}"
    )
    if sheet.is_stated(f"what closes {name}", entry.blanked_by):
        plug = sheet.follow(entry.blanked_by)
        fillers = (plug.id,)
        wrong = _elsewhere(plug, entry, sheet) or wrong
    if inside.fillers:
        part = inside.fillers[0]
        wrong = f"it is blanked, and {part if isinstance(part, str) else part.id} is in it"
    wrong = wrong if fillers or inside.fillers else ""
    return ToFill(name, "plug or cover", fillers, wrong=wrong, where=entry.where)


def _elsewhere(plug: Component, entry: Closable, sheet: Sheet) -> str | None:
    """What another place, of this block or of another, says of the plug that is to close this one."""
    if isinstance(plug, CylinderCover | ChamberCover) and sheet.is_stated(
        f"what {plug.id} closes", plug.closes
    ):
        return f"{plug.id} closes {sheet.follow(plug.closes).id}"
    by = [f"{table}.*.blanked_by" for table in _CLOSABLE]
    for block in sheet.fillers(plug, CylinderBlock, by=by):
        for word, other in _closable(block):
            stated = other is not entry and sheet.is_stated(f"what closes {word}", other.blanked_by)
            if stated and sheet.follow(other.blanked_by).id == plug.id:
                return f"{plug.id} closes {word} too"
    return None


def _closable(block: CylinderBlock) -> Iterator[tuple[str, Closable]]:
    """The places of a block that a plug may close, each with what it is called."""
    for table in _CLOSABLE:
        for name, one in getattr(block, table).items():
            yield f"{table}.{name} of {block.id}", one


def blanked(name: str, entry: Closable, sheet: Sheet) -> bool:
    """Whether an entry says that nothing is to fill it."""
    return sheet.is_stated(f"whether {name} is blanked", entry.blanked) and sheet.read(
        f"{name} blanked", entry.blanked
    )


def covers_passed(rod: PistonRod, sheet: Sheet) -> int:
    """How many covers of its cylinder a rod passes: the back one, and with a tail rod the front one too."""
    tail = sheet.is_stated(f"tail rod of {rod.id}", rod.tail_rod) and sheet.read(
        f"{rod.id} has a tail rod", rod.tail_rod
    )
    return 2 if tail else 1


def screwed_elsewhere(joint: BoltedJoint, into: Sequence[str], sheet: Sheet) -> str | None:
    """What is wrong with the part under a joint, where that is none of those given."""
    for word, link, done in (
        (f"part under {joint.id}", joint.screwed_into, "screwed into"),
        (f"part bolted to by {joint.id}", joint.bolted_to, "bolted to"),
    ):
        if into and sheet.is_stated(word, link):
            under = sheet.follow(link).id
            return None if under in into else f"{joint.id} is {done} {under}, not {done} {' or '.join(into)}"
    return None
