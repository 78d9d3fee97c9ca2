"""How many specs and checks there are, in sentences by which each figure of the document can be added up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from speclint.checking import Assessment, Check, named
from speclint.reports.phrases import count, drawings_said, known_faults_said, left_out


def said_of_numbers(assessment: Assessment, sheets: int) -> tuple[str, ...]:
    """The specs, the checks and the sheets that are in the document; ``sheets`` are those of checks that conform."""
    shown = [check for check in assessment.checks if check.outcome != "not applicable"]
    said = [*_specs(assessment, shown), _checks(assessment), *_sheets(shown, sheets)]
    more = left_out(assessment), known_faults_said(assessment), drawings_said(assessment)
    said += [told for told in more if told]
    return tuple(said)


def _specs(assessment: Assessment, shown: Sequence[Check]) -> Iterator[str]:
    design = assessment.design
    if design is None:
        return
    files = {design.files[name] for name in design.selected if name in design.files}
    where = "" if len(files) == len(design.selected) else ", of which some state several parts"
    rest = len(design.files) - len(design.selected)
    beside = f"; {count(rest, 'other spec')} of the repository {'was' if rest == 1 else 'were'} not asked for"
    yield (
        f"{count(len(design.selected), 'spec')} in {count(len(files), 'file')}{where}{beside if rest else ''}."
    )
    judged = {check.component for check in shown}
    none = sorted(design.selected - judged)
    applied = f"At least one rule applies to {len(design.selected & judged)} of them"
    yield f"{applied}, none to the other {len(none)}: {named(none)}." if none else f"{applied}."


def _checks(assessment: Assessment) -> str:
    number = assessment.counted()
    parts = [
        f"{number[word]} {one if number[word] == 1 else several}"
        for word, one, several in _OUTCOMES
        if number[word]
    ]
    return f"{count(len(assessment.checks), 'check')}, each of one rule on one spec: {', '.join(parts) or 'none'}."


#: What is said of one check that came out so, and of several.
_OUTCOMES = (
    ("conforms", "conforms", "conform"),
    ("finding", "found something", "found something"),
    ("not assessed", "could not be assessed", "could not be assessed"),
    ("not applicable", "does not apply", "do not apply"),
)


def _sheets(shown: Sequence[Check], sheets: int) -> Iterator[str]:
    conform = sum(check.outcome == "conforms" for check in shown)
    if sheets != conform:
        yield (
            f"The {conform} checks that conform have {count(sheets, 'sheet')}: what is worked with the same figures "
            "stands once."
        )
