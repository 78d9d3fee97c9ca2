"""What a change did, between two states of a design, as a page: specs, basis, findings, concessions, margins."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from speclint.checking import Cause, CheckSeen, MarginChange, ValueChange, named
from speclint.register import Comparison
from speclint.reports.finding_lines import called
from speclint.reports.page import Page
from speclint.reports.phrases import CAUTION, count, share_used

#: Values of one spec, and margins, that are written out before the rest is counted, unless all are asked for.
_VALUES, _MARGINS = 12, 25
_COLUMN, _BEFORE = 11, 9
#: Why a check came out otherwise, where that is not the design alone.
CAUSES: dict[Cause, str] = {
    "": "",
    "design": "",
    "edition": "by the rule: edition {was}, now {now}",
    "both": "by the rule and by values: edition {was}, now {now}",
}


def comparison_page(found: Comparison, width: int, *, full: bool = False) -> Page:
    """The page; every value and every margin with ``full``."""
    page = Page(width)
    page.wrapped(f"From {found.old.called} to {found.new.called}", emphasis="strong")
    page.wrapped(specs_said(found))
    for said in judged_said(found):
        page.wrapped(said)
    _specs(page, found, full)
    _basis(page, found)
    _findings(page, found)
    _concessions(page, found)
    _margins(page, found, full)
    page.gap_always()
    page.wrapped(CAUTION, emphasis="faint")
    return page


def specs_said(found: Comparison) -> str:
    """How many specs were added, removed, renamed and changed, in a sentence."""
    parts = [
        f"{len(names)} {word}"
        for names, word in (
            (found.added, "added"),
            (found.removed, "removed"),
            (found.renamed, "renamed"),
            (found.changed, "changed"),
        )
        if names
    ]
    if found.old.assessment is None or found.new.assessment is None:
        return "Checks only."
    return f"Specs: {', '.join(parts)}." if parts else "No spec differs."


def judged_said(found: Comparison) -> Iterator[str]:
    """By what the states were judged, what could not be compared, and what could not be read."""
    if found.old.assessment is not None and found.new.assessment is not None:
        yield "Both are judged by the rules installed now: no difference comes from the edition of a rule."
    elif found.editions:
        told = ", ".join(f"{rule} {was} to {now}" for rule, (was, now) in sorted(found.editions.items()))
        yield f"{count(len(found.editions), 'rule')} changed edition, which is no change of the design: {told}."
    else:
        yield "No rule that judged both has changed its edition."
    yield from (f"{said[:1].upper()}{said[1:]}." for said in found.not_compared)
    for one in (found.old, found.new):
        if one.assessment is not None and one.assessment.complaints:
            lines = count(len(one.assessment.complaints), "line")
            yield f"{one.called}: {lines} could not be read, and what rests there is not compared: speclint check."


def _specs(page: Page, found: Comparison, full: bool) -> None:
    rows = [("added", _called(found, name)) for name in found.added]
    rows += [("removed", name) for name in found.removed]
    rows += [("renamed", f"{was} is now {name}") for was, name in sorted(found.renamed.items())]
    if rows or found.changed:
        page.gap_always()
        page.wrapped("Specs", emphasis="strong")
    for word, said in rows:
        page.entry(word, said, indent=2, column=_COLUMN)
    for names, values in changed_alike(found):
        page.entry("changed", ", ".join(_called(found, name) for name in names), indent=2, column=_COLUMN)
        shown = values if full else values[:_VALUES]
        for one in shown:
            page.wrapped(value_said(one), indent=_COLUMN + 4, hanging=2)
        if len(values) > len(shown):
            page.wrapped(f"and {count(len(values) - len(shown), 'more value')}: --full", indent=_COLUMN + 4)


def changed_alike(found: Comparison) -> list[tuple[list[str], Sequence[ValueChange]]]:
    """The specs that changed, those with the same values together."""
    groups: dict[tuple[ValueChange, ...], list[str]] = {}
    for name, values in found.changed.items():
        groups.setdefault(tuple(values), []).append(name)
    return [(names, values) for values, names in groups.items()]


def value_said(one: ValueChange) -> str:
    """A value of a spec as it was and as it is.

    >>> value_said(ValueChange("bore", "480 mm", ""))
    'bore: was 480 mm, is not stated'
    """
    return f"{one.key}: was {one.was or 'not stated'}, is {one.now or 'not stated'}"


def _called(found: Comparison, name: str) -> str:
    return called(found.new.assessment, name) if found.new.assessment is not None else name


def _basis(page: Page, found: Comparison) -> None:
    if found.basis:
        page.gap_always()
        page.wrapped("What the design is judged by", emphasis="strong")
        for said in found.basis:
            page.wrapped(said, indent=2, hanging=2)


def _findings(page: Page, found: Comparison) -> None:
    page.gap_always()
    page.wrapped(findings_said(found), emphasis="strong")
    for word, said in findings_of(found):
        page.entry(word, said, indent=2, column=_COLUMN)


def findings_said(found: Comparison) -> str:
    """How many findings are new, and how many are cleared."""
    return f"Findings: {len(found.found)} new, {len(found.cleared)} cleared"


def findings_of(found: Comparison) -> Iterator[tuple[str, str]]:
    """Each finding that is new, or cleared, in words; those of parts alike once."""
    for word, changes in (("new", found.found), ("cleared", found.cleared)):
        for one, others in alike(found, changes):
            yield word, _finding(found, one) + _and(others)


def alike(
    found: Comparison, changes: Iterable[MarginChange]
) -> list[tuple[MarginChange, list[MarginChange]]]:
    """The first of each group of changes that read the same on parts alike, and the others."""
    groups: dict[tuple[str, ...], list[MarginChange]] = {}
    for one in changes:
        part = _first_alike(found, one.component)
        groups.setdefault((part, one.rule, *figures_of(one), told_of(one)), []).append(one)
    return [(group[0], group[1:]) for group in groups.values()]


def _first_alike(found: Comparison, name: str) -> str:
    """The part that a part is like now, or was where it is gone; the part itself where it stands alone."""
    for state in (found.new, found.old):
        design = state.assessment.design if state.assessment is not None else None
        if design is not None and name in design.files:
            return design.first_alike(name) or name
    return name


def _and(others: Sequence[MarginChange]) -> str:
    return f"; the same on {named([one.component for one in others])}" if others else ""


def _finding(found: Comparison, one: MarginChange) -> str:
    told = one.now if one.is_new else one.was
    assert told is not None  # as it stands, or stood, in the way
    name = _called(found, told.component) if told is one.now else told.component
    graver = ""
    if one.is_new and one.was is not None and one.was.grade is not None:
        graver = f" (was {one.was.graded})"
    gone = "; the check is gone" if told is one.was and one.now is None else ""
    why = f"; {said}" if (said := cause_said(one)) else ""
    return f"{told.graded}{graver}: {name}, {told.rule}: {told.says}{gone}{why}"


def cause_said(one: MarginChange) -> str:
    """Whether the rule changed, in words; "" where only the design did."""
    if one.was is None or one.now is None:
        return ""
    return CAUSES[one.cause].format(was=one.was.edition, now=one.now.edition)


def _concessions(page: Page, found: Comparison) -> None:
    if found.lapsed:
        page.gap_always()
        page.wrapped("Concessions that hold no longer", emphasis="strong")
        for one in found.lapsed:
            why = "; ".join(one.reasons)
            page.entry(
                one.concession.number,
                f"{one.component}, {one.concession.rule}: {one.state}: {why}",
                indent=2,
                column=_COLUMN,
            )


def _margins(page: Page, found: Comparison, full: bool) -> None:
    moved = found.moved
    every = alike(found, found.margins if full else moved)
    rows = every if full else every[:_MARGINS]
    page.gap_always()
    page.wrapped(margins_said(found), emphasis="strong")
    if rows:
        page.line(("".join(word.rjust(_BEFORE) for word in ("before", "now", "change")), "faint"))
    for one, others in rows:
        figures = "".join(cell.rjust(_BEFORE) for cell in figures_of(one))
        words = margin_said(one, others)
        page.entry(figures, words, indent=0, column=3 * _BEFORE + 2)
    if left := sum(1 + len(others) for _, others in every[len(rows) :]):
        page.wrapped(f"and {count(left, 'more check')} came out otherwise: --full")


def margin_said(one: MarginChange, others: Sequence[MarginChange]) -> str:
    """The component and the rule of a margin, what its figures do not tell, and the parts alike."""
    said = told_of(one)
    return f"{one.component}, {one.rule}" + (f" ({said})" if said else "") + _and(others)


def margins_said(found: Comparison) -> str:
    """How many checks came out otherwise."""
    moved, every = len(found.moved), len(found.margins)
    if not moved:
        return f"Margins: none of {count(every, 'check')} came out otherwise"
    return f"Margins: {moved} of {count(every, 'check')} came out otherwise; used of each limit, worst change first"


def figures_of(one: MarginChange) -> tuple[str, str, str]:
    """What was used of the limit before, what is used now, and the difference; a dash where there is no number."""
    return _used(one.was), _used(one.now), "–" if one.by is None else _signed(one.by)


def _used(one: CheckSeen | None) -> str:
    if one is None or one.utilisation is None:
        return "–"
    return "no margin" if one.utilisation == float("inf") else share_used(one.utilisation)


def _signed(by: float) -> str:
    return (
        "–" if by in (float("inf"), float("-inf")) else f"{by:+.2g}" if 0 < abs(by) < 0.005 else f"{by:+.2f}"
    )


def told_of(one: MarginChange) -> str:
    """What the figures do not tell: an outcome that is another, a check on one side only, a rule of another edition."""
    was, now = one.was, one.now
    if was is None or now is None:
        only = was or now
        assert only is not None  # as one of them is there
        return f"{'new' if was is None else 'gone'}: {only.graded}"
    parts = [f"was {was.graded}, is {now.graded}"] if was.graded != now.graded else []
    return "; ".join([*parts, *filter(None, [cause_said(one)])])
