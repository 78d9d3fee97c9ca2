"""Whether the record of a part as made is that of its own spec: its drawing, its side, its days, and its welds."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import Component, Link, MadePart, NotStated, Stated, WeldedJoint, as_filed
from speclint_release.inputs.procedures import (
    Procedure,
    procedures_asked,
    procedures_drawn,
    procedures_named,
    without_denied,
    written,
)
from speclint_release.inputs.records import Dated, days_of, records_of, weldment_of_made, with_a_day
from speclint_release.inputs.titles import codes_called, is_number, is_of_series, names_called, other_places
from speclint_release.sources import ISO_15614_1


@rule(
    "made.of-its-spec",
    title="A record of a part as made names no other drawing, side, end, part or revision than its spec, and something "
    "was done to the part after the revision that it was made to was first issued",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a record that leads to the wrong spec has its sizes judged by another drawing, and what was finished before a "
    "revision was issued was made to an earlier one",
    edition=5,
    leaves_out="what a part is called elsewhere than in titles, and in words that no other title has; a revision of "
    "which no issue is on record (release.drawing-issued)",
    against=(),
)
def of_its_spec(made: MadePart, sheet: Sheet) -> Judgement:
    """Drawing number, side and title of the record against those of the spec; its days against the issues.

    Left is also LH, L.H. or near side, right RH, R.H. or off side. Titles are words, a record may have a revision of
    its own, and issues may be on record in part: there it is a query.
    """
    drawn = sheet.follow(made.of)
    number, of_spec = sheet.said("drawing", made.drawing), sheet.said("drawing of its spec", drawn.drawing)
    if number is not None and of_spec is not None and as_filed(number) != as_filed(of_spec):
        says = f"its record names drawing {number}, and its spec is on {of_spec}"
        return sheet.states(False, says, where=made.drawing.where)
    hand, of_drawn = sheet.said("hand", made.hand), sheet.said("hand of its spec", drawn.hand)
    if hand is not None and of_drawn is not None and hand != of_drawn:
        says = f"its record is of the {hand} hand, and {drawn.id} is of the {of_drawn}"
        return sheet.states(False, says, where=made.hand.where)
    if other := _other_title(made, drawn, of_drawn, sheet):
        return sheet.states(False, other, where=made.title.where).graded(Grade.QUERY)
    for says, own, place in _revisions_named(made, sheet):
        if other := _other_revision(own, made, drawn, sheet):
            told = f"its {says} revision {own}, and it is of revision {other}"
            return sheet.states(False, told, where=place.where).graded(Grade.QUERY)
    if early := _before_issue(made, sheet):
        return sheet.states(False, early, where=made.made_to.where).graded(Grade.QUERY)
    return sheet.states(True, "drawing, title and days are those of its spec")


def _other_title(made: MadePart, drawn: Component, hand: str | None, sheet: Sheet) -> str:
    """What the title of a record says of another place, drawing or part."""
    title = _own_title(made, sheet)
    for here, there in other_places(title, _own_title(drawn, sheet), hand):
        return f"its title says {here}, and that of {drawn.id} says {there}"
    number = sheet.said("drawing of its spec", drawn.drawing)
    codes = codes_called(title)
    if codes and number is not None and not any(is_number(one, number) for one in codes):
        of_its_own = [
            word
            for value in (made.serial, made.certificate.heat)
            if (word := sheet.said("number", value)) is not None
        ]
        for code in codes:
            if is_of_series(code, number, of_its_own):
                return f"its title names drawing {code}, and {drawn.id} is on {number}"
    for words in (*codes, *names_called(title)):
        others = [one for one in sheet.called(words) if one.of_metal]
        if others and not any(_is_of(one, drawn) for one in others):
            return f"its title is that of {others[0].id}, and its record is of {drawn.id}"
    return ""


def _is_of(other: Component, drawn: Component) -> bool:
    """Whether what a title calls is the spec of a record, or the same piece of metal before or after."""
    return other.id == drawn.id or any(
        isinstance(link := getattr(one, key, None), Link) and link.id == whole.id
        for one, whole in ((other, drawn), (drawn, other))
        for key in ("makes", "becomes")
    )


#: A revision that a title names, by one or two letters or digits.
_REVISION = re.compile(r"(?i:\brev(?:ision|\.|\b))\s*:?\s*([A-Z]{1,2}|\d{1,2})\b")


def _revisions_named(made: MadePart, sheet: Sheet) -> Iterator[tuple[str, str, Stated[str] | NotStated]]:
    """Each revision that a record names, between the words that say where and the value that names it."""
    own = sheet.said("revision", made.revision)
    if own is not None:
        yield "record states", own, made.revision
    for named in _REVISION.findall(_own_title(made, sheet)):
        yield "title says", named, made.title


def _other_revision(own: str, made: MadePart, drawn: Component, sheet: Sheet) -> str:
    """The revisions that a part was made to and that its spec has, where neither is that which a record names."""
    to, now = sheet.said("made to", made.made_to), sheet.said("revision of its spec", drawn.revision)
    known = [one for one in (to, now) if one is not None]
    return "" if own in known else " and ".join(dict.fromkeys(known))


def _own_title(component: Component, sheet: Sheet) -> str:
    """The title of a component; none where it is that of the part which it is like, or the mirror of."""
    said = sheet.said(f"title of {component.id}", component.title)
    own = component.title.where.file == component.where.file
    return said if said is not None and own else ""


def _before_issue(made: MadePart, sheet: Sheet) -> str:
    """That all that was done to the part is earlier than the first issue of the revision that it was made to."""
    to = sheet.said("made to", made.made_to)
    issues = [
        sheet.read(f"issue {at} on", one.on)
        for at, one in enumerate(sheet.follow(made.of).issued, 1)
        if sheet.read(f"issue {at} revision", one.revision) == to
    ]
    tables: dict[str, Mapping[str, Dated]] = {
        "weld": made.welds,
        "heat treatment": made.heat_treatments,
        "examination": made.examinations,
        "test": made.hydraulic_tests,
        "measurement": made.measured,
    }
    done = with_a_day(
        (one for called, records in tables.items() for one in records_of(records, called)),
        sheet,
    )
    if not issues or not done:
        return ""
    (last, day), first = max(days_of(done, sheet), key=lambda one: one[1]), min(issues)
    if day >= first:
        return ""
    return f"{last} of {day} is the last that was done to it, and revision {to} was first issued on {first}"


#: Words by which a procedure that is named may be none that holds.
_DOUBTFUL = re.compile(
    r"(?i)\b(?:not|withdrawn|superseded|cancel\w+|expired|lapsed|instead of|in place of|et seq)\b|\d ?ff\b"
)


@rule(
    "made.welded-as-drawn",
    title="Each weld on record of a part was made by a procedure that its weldment names for a joint, or by an "
    "instruction whose record names one, and the welds together by all that it asks for",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_15614_1.at("scope"), COMMON_PRACTICE],
    why="a procedure that is qualified for other plates leaves a weld that is hard, or not through",
    leaves_out="whether the procedure is that of this joint, and qualified for it: a competent person decides; a weld "
    "whose record names none (made.examined)",
    against=(),
    edition=5,
)
def welded_as_drawn(made: MadePart, sheet: Sheet) -> Judgement:
    """Letters and number of each procedure on record against those of the joints.

    A drawing may name qualifications, and a record the instruction that was written by one: where the record names
    none of that series, which it was is asked. So it is where each weld on record names its procedures, and none names
    one that a joint is drawn with: "WPQR 38 and 41" asks for both, "WPQR 38 or 41" and "WPQR 38, 41" for either. Of
    "WPQR 38 (not 41)" and "WPQR 38 in place of 41" the second is none, and "neither WPQR 38 nor 41" is by none.
    """
    weldment = weldment_of_made(made, sheet)
    joints = weldment.joints if weldment is not None else {}
    drawn = {
        one
        for name, joint in joints.items()
        for one in procedures_drawn(sheet.said(f"procedure of {name}", joint.procedure))
    }
    said = {name: sheet.said(f"procedure of weld {name}", one.procedure) for name, one in made.welds.items()}
    welds = {name: set(procedures_named(text, drawn)) for name, text in said.items() if text is not None}
    if not drawn or not welds:
        raise sheet.not_applicable("no weldment names a procedure, or no weld on record does")
    series = {letters for letters, _ in drawn}
    others = {name: sorted(one for one in some - drawn if one[0] in series) for name, some in welds.items()}
    named = written(drawn)
    if wrong := [f'weld "{name}" by {written(some)}' for name, some in others.items() if some]:
        return sheet.states(False, f"{', '.join(wrong)}: the drawing names {named}", where=made.where)
    unsure = [
        name
        for name, some in welds.items()
        if not some & drawn or _DOUBTFUL.search(without_denied(said[name] or ""))
    ]
    if asked := [f'weld "{name}" by {said[name]}' for name in unsure]:
        says = f"{', '.join(asked)}: that does not say by which of {named}"
        return sheet.states(False, says, where=made.where).graded(Grade.QUERY)
    named_by_all = set().union(*welds.values())
    if len(welds) == len(made.welds) and (left := _not_welded_by(joints, named_by_all, sheet)):
        return sheet.states(False, f"no weld on record is by {', nor '.join(left)}", where=made.where).graded(
            Grade.QUERY
        )
    return sheet.states(True, f"welded by {written(drawn & named_by_all)}")


def _not_welded_by(joints: Mapping[str, WeldedJoint], named: set[Procedure], sheet: Sheet) -> list[str]:
    """The procedures that joints are drawn with and that no weld names, each with its joints."""
    left: dict[str, list[str]] = {}
    for name, joint in joints.items():
        for group in procedures_asked(sheet.said(f"procedure of {name}", joint.procedure)):
            if not group & named:
                left.setdefault(" or ".join(" ".join(one) for one in sorted(group)), []).append(name)
    return [
        f"{one}, as {' and '.join(names)} {'is' if len(names) == 1 else 'are'} drawn"
        for one, names in left.items()
    ]


RULES = (of_its_spec, welded_as_drawn)
