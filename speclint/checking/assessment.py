"""The result of one run. Reports read it; nothing here prints."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.checking.check_result import Check
from speclint.checking.parts_alike import grouped
from speclint.checking.remedy import Remedy, Sought
from speclint.errors import Complaint, replace
from speclint.families import Loaded
from speclint.repository import (
    FILE_NAME,
    Basis,
    Design,
    PassedOver,
    Register,
    Settings,
    no_component_called,
)
from speclint.rules import Context, Grade

if TYPE_CHECKING:
    from speclint.checking.design_changes import DesignChanges
    from speclint.checking.kept_results import KeptResults
    from speclint.checking.waiting import Waits

#: The register of a repository whose settings could not be read.
NO_REGISTER = Register("")
#: This many names of one sort are written out before the others are counted.
_NAMED = 8


@dataclass(frozen=True)
class Assessment:
    """Everything that one run found.

    ``design`` and ``settings`` are None when the settings could not be read: then nothing was checked.
    ``register`` is empty where the repository has none. ``basis`` is what the design was judged by. ``touched`` is
    false for a commit that touches no spec: then nothing had to be checked. ``accepted`` counts the checks that are
    left out of ``checks``, as a concession of their finding holds. ``kept`` are the results of earlier runs, where
    they were used. ``changes`` are what changed since a revision, where a report was asked to say so.
    """

    root: Path
    loaded: Loaded
    settings: Settings | None
    design: Design | None
    checks: tuple[Check, ...]
    complaints: tuple[Complaint, ...]
    context: Context | None = None
    register: Register = NO_REGISTER
    basis: Basis | None = None
    touched: bool = True
    accepted: int = 0
    kept: KeptResults | None = field(default=None, repr=False, compare=False)
    changes: DesignChanges | None = None
    _remedies: dict[tuple[str, str], Sought] = field(default_factory=dict, repr=False, compare=False)
    _sought: set[tuple[str, str]] = field(default_factory=set, repr=False, compare=False)

    def remedies(self, check: Check) -> tuple[Remedy, ...]:
        """What would clear a finding; worked out when first asked for, where it has not been found already."""
        return self.search(check).remedies

    def search(self, check: Check) -> Sought:
        """What the search for remedies of a finding came to; made when first asked for, as those are."""
        if check.order not in self._remedies:
            from speclint.checking.remedy_search import search_of

            found = search_of(check, self.checks, self.context) if self.context else Sought()
            self._remedies[check.order] = found
        return self._remedies[check.order]

    def keep(self, found: Mapping[tuple[str, str], Sought]) -> None:
        """Keep what searches for remedies came to that were made elsewhere, by component and rule."""
        self._remedies.update(found)
        self._sought.update(found)

    def sought(self, check: Check) -> Sought | None:
        """What the search for remedies came to where it was made before the report; None where it was not."""
        return self._remedies[check.order] if check.order in self._sought else None

    @cached_property
    def waits(self) -> Waits:
        """What keeps checks from being made: files that could not be read, and names that are not known."""
        from speclint.checking.waiting import waits_of

        return waits_of(self)

    @property
    def changed_limits(self) -> tuple[str, ...]:
        """The limits that the repository sets for itself, in words."""
        limits = self.context.limits if self.context else {}
        return tuple(
            f"{rule} {name} = {measure.text}" + (f" ({measure.note})" if measure.note else "")
            for (rule, name), measure in sorted(limits.items())
        )

    @property
    def exit_at(self) -> Grade:
        """The lowest grade that makes a check exit with 1."""
        word = self.settings.exit_at if self.settings else Grade.NONCONFORMITY.word
        return Grade[word.upper()]

    @property
    def passed_over(self) -> tuple[PassedOver, ...]:
        """The TOML files that were not read as specs, and why."""
        return self.design.passed_over if self.design else ()

    @property
    def old_keys(self) -> tuple[Complaint, ...]:
        """A note for each old key that a spec states: it is read, and no finding."""
        return self.design.old_keys if self.design else ()

    @property
    def nothing_checked(self) -> bool:
        """Whether something had to be checked and no rule applied to anything: that is no pass."""
        judged = any(check.outcome != "not applicable" for check in self.checks)
        return self.touched and not judged and not self.accepted

    @property
    def why_nothing(self) -> str:
        """Why nothing was checked, in words."""
        if self.design is not None and self.design.selected:
            return f"no rule applies to {named(sorted(self.design.selected))}"
        return "no file was read as a spec" if self.passed_over else "there is no spec here"

    @property
    def exit_code(self) -> int:
        """0 in order, 1 findings or nothing checked, 2 something unreadable, 3 a rule that could not be run."""
        if any(check.could_not_run for check in self.checks):
            return 3
        if self.complaints:
            return 2
        if self.nothing_checked:
            return 1
        in_the_way = (check.stands_in_the_way for check in self.checks)
        return int(any(grade is not None and grade >= self.exit_at for grade in in_the_way))

    def counted(self) -> dict[str, int]:
        """How many checks came out each way."""
        outcomes = Counter(check.outcome for check in self.checks)
        return {word: outcomes[word] for word in ("conforms", "finding", "not assessed", "not applicable")}

    def graded(self) -> dict[str, int]:
        """How many findings of each grade, the most serious first."""
        return _by_grade(check for check in self.checks if check.outcome == "finding")

    def graded_once(self) -> dict[str, int]:
        """The same with each finding of parts alike counted once."""
        found = grouped(check for check in self.checks if check.outcome == "finding")
        return _by_grade(alike.first for alike in found)


def _by_grade(checks: Iterable[Check]) -> dict[str, int]:
    grades = Counter(check.grade for check in checks)
    return {grade.word: grades[grade] for grade in sorted(Grade, reverse=True)}


def named(names: Sequence[str]) -> str:
    """Some names in words: the first of them, and how many more there are."""
    more = f", and {len(names) - _NAMED} more" if len(names) > _NAMED else ""
    return f"{', '.join(names[:_NAMED])}{more}"


def of_component(assessment: Assessment, name: str) -> Assessment:
    """The part of an assessment that concerns one component.

    :raises DesignError: when the repository has no such component.
    """
    known = assessment.design.files if assessment.design else {}
    if name not in known:
        raise no_component_called(name, known)
    files = (*assessment.design.files_of(name), FILE_NAME) if assessment.design else ()
    complaints = tuple(one for one in assessment.complaints if one.where.file in files)
    checks = tuple(check for check in assessment.checks if check.component == name)
    return replace(assessment, checks=checks, complaints=complaints)
