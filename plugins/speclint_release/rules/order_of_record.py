"""What the records of a part as made say of the part as it is: examined and measured after it was welded and heated."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import MadePart
from speclint_release.inputs import Record, days_of
from speclint_release.sources import EN_13445_5


@rule(
    "made.examined-as-finished",
    title="No weld on record is later than the last examination that the part passed, and no weld or heat treatment is "
    "later than the last measurement of a size",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    edition=2,
    cites=[EN_13445_5.at("clause 6, inspection during fabrication"), COMMON_PRACTICE],
    why="a film taken before the weld shows no weld, and a bore measured before the furnace is not the bore that comes "
    "out of it",
    leaves_out="that an examination was passed (made.examined); which weld an examination looked at, cracks that a "
    "heat treatment opens, and sizes that were cut after they were measured",
    against=(),
)
def examined_as_finished(made: MadePart, sheet: Sheet) -> Judgement:
    """The day of the last examination that was passed, and of each measured size, against the other records."""
    welds = [(f"weld {name}", one.date) for name, one in made.welds.items()]
    heated = [(name, one.date) for name, one in made.heat_treatments.items()]
    judged = [*_examined(made, welds, sheet), *_measured(made, [*welds, *heated], sheet)]
    if not judged:
        raise sheet.not_applicable("no weld or heat treatment stands on record beside what was looked at")
    return sheet.worst(*judged)


def _examined(made: MadePart, welds: Sequence[Record], sheet: Sheet) -> Iterator[Judgement]:
    """Examinations: the last that was passed is of the welded part."""
    passed = [
        (name, one.date)
        for name, one in made.examinations.items()
        if sheet.said(f"result of {name}", one.result) == "passed"
    ]
    if passed and welds:
        last = max(day for _, day in days_of(passed, sheet))
        late = [name for name, day in days_of(welds, sheet) if day > last]
        says = (
            f"{', '.join(late)}: later than the last examination" if late else "examined after it was welded"
        )
        yield sheet.states(not late, says, where=made.where)


def _measured(made: MadePart, works: Sequence[Record], sheet: Sheet) -> Iterator[Judgement]:
    """Sizes: each was measured last on the part as it came from the last weld and the last furnace."""
    for size, on in _last_measured(made, sheet).items() if works else ():
        late = [name for name, day in days_of(works, sheet) if day > on]
        says = (
            f"{', '.join(late)}: later than {size} was measured" if late else f"{size} measured as finished"
        )
        yield sheet.states(not late, says, where=made.where)


def _last_measured(made: MadePart, sheet: Sheet) -> dict[str, dt.date]:
    """The sizes by their keys, each with the last day on which it was measured."""
    last: dict[str, dt.date] = {}
    for name, day in days_of([(name, one.date) for name, one in made.measured.items()], sheet):
        size = sheet.said(f"dimension of {name}", made.measured[name].dimension) or name
        last[size] = max(day, last.get(size, day))
    return last


RULES = (examined_as_finished,)
