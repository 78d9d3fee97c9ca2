"""Measured parts paired with their mates, as a page, as data and as Markdown: the pairs, what is left, finish sizes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from speclint.checking import Assessment, Check
from speclint.made import FinishSize, Paired, Place, Tried
from speclint.reports.markdown_text import marked, table
from speclint.reports.page import Page
from speclint.reports.phrases import CAUTION, CAUTIONS, count

SCHEMA = "speclint.pairs/1"
_COLUMN = 4
_HEADS = ("part", "stands beside", "as", "least margin", "by")


def pairs_page(
    drawn: Assessment, paired: Paired, finishes: Sequence[FinishSize], width: int, by: str = ""
) -> Page:
    """The pairs, the parts left over, the empty places with their finish sizes, and every pair that was tried.

    ``by`` names the families or rules by which alone pairs were judged; "" for all.
    """
    page = Page(width)
    page.rule("═")
    page.ends("PARTS PAIRED", count(len(paired.pairs), "pair"), "strong")
    page.wrapped(_METHOD, emphasis="faint")
    if by:
        page.wrapped(_only(by))
    page.rule("═")
    for heading, lines in _sections(drawn, paired, finishes):
        page.gap()
        page.line((heading, "strong"))
        for line in lines:
            page.wrapped(line, indent=_COLUMN, hanging=_COLUMN)
    page.gap_always()
    page.wrapped(CAUTION, emphasis="faint")
    return page


def pairs_markdown(drawn: Assessment, paired: Paired, finishes: Sequence[FinishSize], by: str = "") -> str:
    """The same as Markdown, with the pairs as tables."""
    lines = [f"## {marked(count(len(paired.pairs), 'pair'))}", "", marked(_METHOD), ""]
    lines += [marked(_only(by)), ""] if by else []
    lines += table(_HEADS, [_row(one) for one in paired.pairs])
    for heading, said in _sections(drawn, paired, finishes):
        if heading not in (_PAIRS, _TRIED):
            lines += [f"### {heading}", "", *(f"- {marked(one)}" for one in said), ""]
    lines += [f"### {_TRIED}", "", *table(_HEADS, [_row(one) for one in paired.tried])]
    lines += [f"*{marked(caution)}*\n" for caution in CAUTIONS]
    return "\n".join(lines).rstrip() + "\n"


def pairs_data(
    drawn: Assessment, paired: Paired, finishes: Sequence[FinishSize], by: str = ""
) -> dict[str, Any]:
    """The same as plain data, schema ``speclint.pairs/1``."""
    return {
        "schema": SCHEMA,
        "judged_by_alone": by or None,
        "pairs": [_tried_data(one) for one in paired.pairs],
        "left_over": [one.id for one in paired.left_over],
        "empty": [_place_data(one) for one in paired.empty],
        "finish_sizes": [_finish_data(one) for one in finishes],
        "tried": [_tried_data(one) for one in paired.tried],
        "drawn_otherwise": [
            {"part": part.id, **_place_data(place), "keys": list(keys)}
            for part, place, keys in paired.not_tried
        ],
        "mates_left_out": list(paired.mates_left_out),
        "not_read": [str(one) for one in drawn.complaints],
        "exit": pairs_exit_code(drawn, paired),
    }


def pairs_exit_code(drawn: Assessment, paired: Paired) -> int:
    """0 where every part has its place, 1 where a part or a place is left or nothing was paired, 2 where something
    could not be read, 3 not be run."""
    if any(pair.made.could_not_run for one in paired.tried for pair in one.pairs):
        return 3
    if drawn.complaints:
        return 2
    return int(not paired.pairs or bool(paired.left_over or paired.empty))


_METHOD = (
    "As many pairs as there can be without a check that fails; of these ways the one whose least margin is greatest, "
    "then with the greatest sum. A margin is what a rule that took a measured size of both leaves, as a share of its "
    "limit; rules whose margin is the same in every pair do not decide. All else in the design stands as "
    "drawn, and in the duties as measured in steam."
)


def _only(by: str) -> str:
    return f"Judged by the rules of {by} alone: no other was run, and any other may fail."


_PAIRS, _TRIED = "Pairs", "Every pair that was tried"


def _sections(
    drawn: Assessment, paired: Paired, finishes: Sequence[FinishSize]
) -> Iterator[tuple[str, list[str]]]:
    found = {
        _PAIRS: [_line(one) for one in paired.pairs] or [_why_none(paired)],
        "Parts left over": [one.id for one in paired.left_over],
        "Empty places": list(_empty(paired, finishes)),
        "Finish sizes": [_finish(one) for one in finishes],
        _TRIED: [_line(one) for one in paired.tried],
        "Not tried": list(_not_tried(drawn, paired)),
    }
    yield from ((heading, lines) for heading, lines in found.items() if lines)


def _why_none(paired: Paired) -> str:
    if paired.tried:
        return "none"
    return (
        "none: no pair could be tried"
        if paired.left_over
        else "none: no part of these kinds is recorded as made"
    )


def _line(one: Tried) -> str:
    part, beside, stands_as, margin, by = _words(one)
    return f"{part} with {beside}, as {stands_as}: {margin}{f', {by}' if by else ''}"


def _row(one: Tried) -> tuple[str, ...]:
    return tuple(map(marked, _words(one)))


def _words(one: Tried) -> tuple[str, ...]:
    part = one.part.id if one.part is not None else "a part to be made"
    place = one.place
    if one.failing:
        return part, place.called, _stands_as(one), "may not be", "; ".join(map(_fails, one.failing))
    if one.governing is None or one.margin is None:
        return part, place.called, _stands_as(one), "not known", "no rule takes a measured size of both"
    return part, place.called, _stands_as(one), _percent(one.margin), _by(one.governing)


def _stands_as(one: Tried) -> str:
    """The spec in whose place it stands, and what its own drawing states otherwise."""
    if not one.own:
        return one.place.spec.id
    keys = list(dict.fromkeys(key.partition("[")[0] for key in one.own))
    return f"{one.place.spec.id} with {', '.join(keys)} of its own drawing"


def _fails(check: Check) -> str:
    return f"{check.rule.name} on {check.component}: {check.actual}"


def _by(check: Check) -> str:
    return f"{check.rule.name} on {check.component}{f', {check.case}' if check.case else ''}"


def _percent(margin: float) -> str:
    return f"{100 * margin:.1f} %"


def _finish(one: FinishSize) -> str:
    whose = one.part.id if one.part is not None else f"the {one.proof.place.spec.id} that is still to be made"
    of_mate = one.part is not one.proof.part and one.proof.part is not None
    suits = one.proof.part.id if of_mate and one.proof.part is not None else one.proof.place.called
    if not one.proof.may_stand:
        failing = "; ".join(map(_fails, one.proof.failing)) or "no rule takes a measured size of both"
        return f"no {one.key} of {whose} suits {suits}: at {one.then.text} {failing}"
    governing, margin = one.proof.governing, one.proof.margin
    assert governing is not None  # as it may stand
    assert margin is not None
    return (
        f"machine {one.key} of {whose} to {one.then.text} for {suits}: leaves {_percent(margin)}, "
        f"{_by(governing)}; proved by running the rules again"
    )


def _empty(paired: Paired, finishes: Sequence[FinishSize]) -> Iterator[str]:
    sized = {one.proof.place.spec.id for one in finishes}
    for place in paired.empty:
        why = "" if place.spec.id in sized else _NO_SIZE
        yield f"{place.called}, for {place.spec.id}{why}"


_NO_SIZE = (
    ": no finish size is known; none of its sizes goes into a measured one, or its drawing states no limits "
    "(say with --within how closely it is machined)"
)


def _not_tried(drawn: Assessment, paired: Paired) -> Iterator[str]:
    yield from (
        f"{part.id} with {place.called}: its drawing and that of {place.spec.id} differ in what joins them to others: "
        f"{', '.join(keys)}"
        for part, place, keys in paired.not_tried
    )
    yield from (
        f"the mates made to {name}: several were made, and not one of them is said to be fitted"
        for name in paired.mates_left_out
    )
    yield from (f"could not be read: {one}" for one in drawn.complaints)


def _place_data(place: Place) -> dict[str, Any]:
    return {"as": place.spec.id, "mates": [one.id for one in place.mates.values()]}


def _tried_data(one: Tried) -> dict[str, Any]:
    return {
        "part": one.part.id if one.part is not None else None,
        **_place_data(one.place),
        "margin": one.margin,
        "by": {"component": one.governing.component, "rule": one.governing.rule.name}
        if one.governing is not None
        else None,
        "failing": [
            {"component": two.component, "rule": two.rule.name, "says": two.says} for two in one.failing
        ],
        "own_drawing": list(one.own),
    }


def _finish_data(one: FinishSize) -> dict[str, Any]:
    return {
        "of": one.part.id if one.part is not None else None,
        "key": one.key,
        "from": one.now.text,
        "to": one.then.text,
        "proved": one.proof.may_stand,
        **_tried_data(one.proof),
    }
