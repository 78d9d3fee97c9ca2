"""One load that two brackets carry."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Ratio
from speclint.specs import Bracket, Carried
from speclint_joints.formulae.carried import shares_together

#: Each shared load with its name.
_Shared = tuple[str, Carried]


@rule(
    "bracket.load-shared",
    title="Two brackets that share one load each say which share they take, and together they take all of it",
    on=Bracket,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="what each of two brackets leaves to the other is carried by neither",
    leaves_out="how a load falls on two brackets of unlike stiffness, for which the shares are to allow; three "
    "brackets or more, which want an analysis of the frame; slide bars, of which each support takes the whole thrust",
    against=(),
    limits=[Limit("whole", "1", "ratio", COMMON_PRACTICE, "least sum of both shares")],
)
def load_shared(bracket: Bracket, sheet: Sheet) -> Judgement:
    """y_1 + y_2 ≥ 1 at the least of both; three brackets on one load are statically indeterminate."""
    shared = [
        (name, one)
        for name, one in bracket.carries.items()
        if one.shared_with or sheet.is_stated(f"share of {name}", one.share)
    ]
    if not shared:
        raise sheet.not_applicable("it shares no load with another bracket")
    return sheet.each(shared, lambda item: _both(item, bracket, sheet))


def _both(item: _Shared, bracket: Bracket, sheet: Sheet) -> Judgement:
    name, one = item
    others = {other.id: other for other in _others(item, bracket, sheet)}
    if len(others) > 1:
        says = f"{name} is shared by {len(others) + 1} brackets: an analysis by finite elements is wanted"
        return sheet.states(False, says, where=one.where).graded(Grade.QUERY)
    theirs = [other.carries[name] for other in others.values() if name in other.carries]
    if not theirs:
        return sheet.states(False, f"no other bracket carries the rest of {name}", where=one.where)
    mine, rest = _share("1", name, one, sheet), _share("2", name, theirs[0], sheet)
    together = sheet.work(f"y of {name}", shares_together, y_1=mine, y_2=rest)
    return sheet.at_least(together, sheet.limit("whole")).else_says(
        "both brackets take {found} of {item}, {limit} wanted"
    )


def _others(item: _Shared, bracket: Bracket, sheet: Sheet) -> Iterator[Bracket]:
    """The brackets that a load is shared with: those that it names, and those that name this one for it."""
    name, one = item
    yield from (sheet.follow(link) for link in one.shared_with)
    for other in sheet.belonging_to(bracket, Bracket):
        its = other.carries.get(name)
        if its is not None and any(sheet.follow(link) is bracket for link in its.shared_with):
            yield other
            yield from (part for part in map(sheet.follow, its.shared_with) if part is not bracket)


def _share(mark: str, name: str, one: Carried, sheet: Sheet) -> Ratio:
    return sheet.take(f"y_{mark} of {name}", one.share)


RULES: tuple[Rule, ...] = (load_shared,)
