"""The section of a key: as high as the standard has it for its width, and within its proportions for any other."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet
from speclint.handbook.fits import share_of_size
from speclint_valves.formulae.keys import height_of_parallel_key, is_listed_width, is_woodruff
from speclint_valves.sources import ISO_773

if TYPE_CHECKING:
    from speclint.specs import Length

#: What a section may differ from the standard, and the proportions of its flattest and its square keys.
SECTION_LIMITS = (
    Limit(
        "section",
        "0.25 mm",
        "length",
        COMMON_PRACTICE,
        "what a key may differ in height from the section of its width",
        "not negative",
    ),
    Limit("flattest", "0.5", "ratio", ISO_773, "least height of a key over its width, as of 100 by 50 mm"),
    Limit("highest", "1", "ratio", ISO_773, "greatest height of a key over its width, as of square keys"),
)


def section_of(width: Length, height: Length, sheet: Sheet) -> Judgement:
    """The stated height of a key against that of the standard for the width of its keyway, both as drawn; a query.

    A Woodruff key has a standard of its own. A width that the standard of parallel keys does not list has the
    proportions of its keys, from the flattest to the square.
    """
    b, h = sheet.take_nominal("b_n", width), sheet.take_nominal("h_n", height)
    if is_woodruff(b, h):
        return sheet.states(True, "the key is one of the Woodruff keys of ISO 3912", where=height.where)
    if is_listed_width(b):
        standard = sheet.look_up("h_s", height_of_parallel_key, b=b)
        return (
            sheet.equals(h, standard, sheet.limit("section", "Δh"))
            .else_says("the key is {found} high, and {limit} by the standard for its width")
            .graded(Grade.QUERY)
        )
    flattest = sheet.work("h_f", share_of_size, k=sheet.limit("flattest", "k_f"), t=b)
    highest = sheet.work("h_q", share_of_size, k=sheet.limit("highest", "k_q"), t=b)
    return sheet.worst(
        sheet.at_least(h, flattest)
        .else_says("the key is {found} high, no key of its width less than {limit}")
        .graded(Grade.QUERY),
        sheet.at_most(h, highest)
        .else_says("the key is {found} high, no key of its width more than {limit}")
        .graded(Grade.QUERY),
    )
