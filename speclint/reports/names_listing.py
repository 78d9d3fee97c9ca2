"""The names that fields accept, as a page and as data."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from speclint.families import NameList
from speclint.reports.page import Page
from speclint.reports.phrases import count

_WIDEST = 42  # columns of the names: longer ones stand out, and those after them stay beside each other
_KEYS = 4  # of the places where a list may be written, those that are named


def lists_page(lists: Sequence[NameList], width: int) -> Page:
    """Every list: its name, what its names stand for, how many there are."""
    page = Page(width)
    column = max((len(one.called) for one in lists), default=0) + 2
    for one in lists:
        page.entry(one.called, f"{one.about}: {count(len(one.names), 'name')}", indent=2, column=column)
    page.gap()
    page.wrapped("speclint names LIST [TEXT] prints a list, or the names of it in which a text is found.")
    page.wrapped(
        "speclint names KIND.KEY says what one key accepts, such as poppet-valve.retained; COMPONENT.KEY for "
        "the part of a design, such as liner-left.in_bore; KEY alone for every kind that has it."
    )
    return page


def names_page(lists: Sequence[NameList], width: int) -> Page:
    """The names of some lists, each with the property that matters."""
    page = Page(width)
    for one in lists:
        page.gap()
        page.ends(one.called, count(len(one.names), "name"), "strong")
        page.wrapped(f"{one.about}.")
        if len(lists) > 1 or not one.called.endswith(one.taken_by[:1] or ("",)):
            page.wrapped(_places(one), emphasis="faint")
        column = min(max((len(name.name) for name in one.names), default=0) + 2, _WIDEST)
        for name in one.names:
            page.entry(name.name, name.says, indent=2, column=column)
    return page


def _places(one: NameList) -> str:
    shown = ", ".join(one.taken_by[:_KEYS])
    more = len(one.taken_by) - _KEYS
    return f"Written under {shown}{f' and {more} more' if more > 0 else ''}." if shown else ""


def names_data(lists: Sequence[NameList]) -> list[dict[str, Any]]:
    """The same as plain data."""
    return [
        {
            "list": one.called,
            "about": one.about,
            "taken_by": list(one.taken_by),
            "names": [{"name": name.name, "says": name.says} for name in one.names],
        }
        for one in lists
    ]
