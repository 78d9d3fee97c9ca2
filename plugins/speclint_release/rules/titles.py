"""What the title of a part promises in numbers, against its fields."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from typing import Any, cast

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import Component, PistonRod, SlideBar
from speclint_release.inputs.title_sizes import (
    Promised,
    is_of_pitch,
    promised_sizes,
    promised_tube,
    threads_in,
)

#: Where a spec states a diameter, if not as its only one.
_DIAMETERS = ("bore", "outside_diameter", "inside_diameter", "mean_diameter", "spigot_diameter", "circle")
#: The table of a kind that states the thread by which the part is held.
_HELD_BY = {
    "piston": "fastening",
    "crosshead": "rod_held",
    "valve-spindle": "valve_held",
    "lagging": "fixing",
}


@rule(
    "release.title-sizes",
    title="A size or a metric thread that the title of a part names is that which its spec states",
    on=Component,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="who orders, issues and fits a part goes by its title, and the rules by its figures: one of the two is wrong",
    leaves_out="sizes of neighbours, and those that the spec has under no key of their own; threads of other systems; "
    "a number that stands beside no word or sign for a size, save outside diameter and wall of a pipe, as 168.3 x 5.6",
    against=(),
    edition=4,
    limits=[
        Limit(
            "rounded",
            "1 %",
            "ratio",
            COMMON_PRACTICE,
            "what a size in round tens of mm, in inches, cm or m may differ by from its limits",
            "not negative",
        )
    ],
)
def title_sizes(component: Component, sheet: Sheet) -> Judgement:
    """Each size that stands beside its word; of several beside one word one of them is that size.

    A size lies within its limits, or beyond them by half of its last figure: of 510 mm and other round tens by 5 mm, of
    inches by half of a sixteenth, and by no more than the share that is set. Ø and a diameter of a part that states
    several is one of them.

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
        if stated := _stated(component, key):
            yield _is_one_of(promised, stated, sheet)


def _stated(component: Component, key: str) -> dict[str, Any]:
    """The lengths of a spec by the keys that may be meant: of a diameter that it does not state, its others."""
    keys = _DIAMETERS if key == "diameter" and not _is_length(component, key) else (key,)
    return {one: cast("Any", getattr(component, one)) for one in keys if _is_length(component, one)}


def _is_length(component: Component, key: str) -> bool:
    """Whether a spec states a length under a key, and not a word or a table."""
    return getattr(getattr(component, key, None), "dimension", "") == "length"


def _is_one_of(promised: list[Promised], stated: dict[str, Any], sheet: Sheet) -> Judgement:
    """Whether a size in a title is one of those of the spec that it may be."""
    share = sheet.limit("rounded", "k")
    limits = {key: sheet.take_limits(key, value) for key, value in stated.items()}
    agree = any(
        low - one.lost(share) <= one.size <= high + one.lost(share)
        for low, high in limits.values()
        for one in promised
    )
    drawn = " and ".join(
        f"{key.replace('_', ' ')} is "
        + " to ".join(sheet.millimetres(one, "g") for one in dict.fromkeys(ends))
        for key, ends in limits.items()
    )
    where = next(iter(stated.values())).where
    return sheet.states(agree, f'the title says "{promised[0].words}", and {drawn}', where=where)


def _threads(component: Component, title: str, sheet: Sheet) -> Iterator[Judgement]:
    promised = threads_in(title)
    said = [
        (sheet.read("thread", one), one) for one in _own_threads(component) if sheet.is_stated("thread", one)
    ]
    if not promised or not said:
        return
    own = [one for text, _ in said for one in threads_in(text.replace("M ", "M", 1))]
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
    """The threads that a spec states of the part itself: of a rod those of its sections, else those that hold it."""
    if isinstance(component, PistonRod):
        return [one.thread for one in component.sections.values()]
    if isinstance(component, SlideBar):
        return [one.thread for one in component.supports.values()]
    for kind, table in _HELD_BY.items():
        if component.is_one_of((kind,)):
            return [cast("Any", getattr(component, table)).thread]
    own = cast("Any", getattr(component, "thread", None))
    return [] if own is None else [own]


RULES = (title_sizes,)
