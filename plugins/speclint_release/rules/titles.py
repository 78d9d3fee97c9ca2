"""What the title of a part promises in numbers, against its fields."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any, cast

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import Component
from speclint_release.inputs.title_sizes import (
    Promised,
    is_of_pitch,
    promised_sizes,
    promised_tube,
    threads_in,
)

if TYPE_CHECKING:
    from speclint.specs import Piston, PistonRod


@rule(
    "release.title-sizes",
    title="A size or a metric thread that the title of a part names is that which its spec states",
    on=Component,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="who orders, issues and fits a part goes by its title, and the rules by its figures: one of the two is wrong",
    leaves_out="sizes of neighbours, and those that the spec has under no key of their own; threads of other systems; "
    "a number that stands beside no word for a size, save outside diameter and wall of a pipe, as 168.3 x 5.6",
    against=(),
    edition=2,
    limits=[
        Limit(
            "rounded",
            "2 %",
            "ratio",
            COMMON_PRACTICE,
            "what a size in a title may differ by from the limits of that size, as titles are rounded",
            "not negative",
        )
    ],
)
def title_sizes(component: Component, sheet: Sheet) -> Judgement:
    """Each size that stands beside its word; of several beside one word one of them is that size.

    A thread without a pitch is of the coarse pitch in the spec, and of any in the title.
    """
    title = sheet.read("title", component.title)
    judged = [*_sizes(component, title, sheet), *_threads(component, title, sheet)]
    if not judged:
        raise sheet.not_applicable("its title names no size that its spec states")
    return sheet.worst(*judged)


def _sizes(component: Component, title: str, sheet: Sheet) -> Iterator[Judgement]:
    by_key: dict[str, list[Promised]] = defaultdict(list)
    tube = promised_tube(title) if component.is_one_of(("steam-pipe",)) else ()
    for one in (*promised_sizes(title), *tube):
        by_key[one.key].append(one)
    for key, promised in by_key.items():
        value = cast("Any", getattr(component, key, None))
        if getattr(value, "dimension", "") != "length":  # not stated, or a word or a table of that name
            continue
        low, high = sheet.take_limits(key, value)
        share = sheet.limit("rounded", "k")
        agree = any(low - share * one.size <= one.size <= high + share * one.size for one in promised)
        drawn = " to ".join(sheet.millimetres(one, "g") for one in dict.fromkeys((low, high)))
        says = f'the title says "{promised[0].words}", and {key.replace("_", " ")} is {drawn}'
        yield sheet.states(agree, says, where=value.where)


def _threads(component: Component, title: str, sheet: Sheet) -> Iterator[Judgement]:
    promised = threads_in(title)
    said = [
        (sheet.read("thread", one), one) for one in _own_threads(component) if sheet.is_stated("thread", one)
    ]
    if not promised or not said:
        return
    own = [one for text, _ in said for one in threads_in(text)]
    agree = any(
        size == one and (not pitch or is_of_pitch(one, of_it, pitch))
        for one, of_it in own
        for size, pitch in promised
    )
    size, pitch = promised[0]
    named = f"M{size}x{pitch}" if pitch else f"M{size}"
    drawn = " and ".join(dict.fromkeys(text for text, _ in said))
    yield sheet.states(agree, f'the title says "{named}", and the thread is {drawn}', where=said[0][1].where)


def _own_threads(component: Component) -> list[Any]:
    """The threads that a spec states of the part itself: of a rod those of its sections, of a piston its nut's."""
    if component.is_one_of(("piston-rod",)):
        return [one.thread for one in cast("PistonRod", component).sections.values()]
    if component.is_one_of(("piston",)):
        return [cast("Piston", component).fastening.thread]
    own = cast("Any", getattr(component, "thread", None))
    return [] if own is None else [own]


RULES = (title_sizes,)
