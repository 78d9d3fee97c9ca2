"""Known faults of the old design are listed at all, so that a design without any is not taken for one that has none."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import Engine


@rule(
    "fault.some-listed",
    title="From the review stage on a design lists at least one known fault of the engines before it, on a part of "
    "this engine",
    on=Engine,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="every engine before this one had faults; a design that lists none was not asked about them, or its list went "
    "with a folder",
    leaves_out="whether the list is whole; a list that is kept elsewhere, for which a concession says so; whether the "
    "faults are mended (fault.proved-by-checks, fault.settled)",
    against=(),
)
def some_listed(engine: Engine, sheet: Sheet) -> Judgement:
    """A chain of links, either way, joins the engine to a known fault."""
    if sheet.setting("stage") == "draft":
        raise sheet.not_applicable("the design is a draft: known faults are listed by the review stage")
    listed = sheet.joined_to(engine, "known-fault")
    said = "a known fault is listed" if listed else "no known fault of any part of this engine is listed"
    return sheet.states(listed, said, where=engine.where)


RULES = (some_listed,)
