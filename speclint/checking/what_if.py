"""What if a value were another: the design checked as it is and with the value, and what that moves.

The files of the design are not touched. They are copied, the value is written in its line as a designer would, and the
copy is read and checked as a design is: whatever is wrong with the value is told as it would be there.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path

from msgspec import Struct, field

from speclint.checking.assessment import Assessment
from speclint.checking.check_result import Check
from speclint.checking.consequences import spec_with
from speclint.checking.design_changes import new_and_cleared
from speclint.errors import DesignError, Location, SettingsError
from speclint.repository import (
    Design,
    component_and_key,
    copy_repository,
    read_regular,
    restated_text,
    scratch_folder,
)
from speclint.specs import stated_values, usual_at

#: Checks the repository in a folder, or the same paths of it.
Assess = Callable[[Path], Assessment]
_SAME = 1e-9  # relative: what two runs of the same sums may differ by


class Question(Struct, frozen=True):
    """A value that is asked about: COMPONENT.KEY, and what it would be, as written."""

    component: str
    key: str
    written: str

    @property
    def name(self) -> str:
        """The value that is meant, as COMPONENT.KEY."""
        return f"{self.component}.{self.key}"


class Restatement(Struct, frozen=True):
    """A value written otherwise: ``was`` as it stands, "" where it is not stated. ``with_it`` read the same line."""

    question: Question
    where: Location
    was: str
    with_it: tuple[str, ...] = ()


class MovedMargin(Struct, frozen=True):
    """A check that comes out otherwise, or uses another share of its limit; None where it is not made."""

    before: Check | None
    after: Check | None

    @property
    def check(self) -> Check:
        """It as it then is, or as it was where it is made no more."""
        found = self.after or self.before
        assert found is not None  # one of them is there
        return found

    @property
    def by(self) -> float:
        """By how much more of the limit is used; nothing where no numbers are compared on one side."""
        before, after = (one.utilisation if one else None for one in (self.before, self.after))
        if before is None or after is None or (math.isinf(before) and math.isinf(after)):
            return 0.0
        return after - before


class WhatIf(Struct, frozen=True):
    """What some values do to a design: ``moved`` are the checks that differ, the worst change first.

    ``new`` are findings and safety checks not assessed that come, or become graver; ``cleared`` those that go.
    """

    restated: tuple[Restatement, ...]
    before: Assessment
    after: Assessment
    moved: tuple[MovedMargin, ...] = ()
    new: tuple[Check, ...] = ()
    cleared: tuple[Check, ...] = field(default=())


def question(said: str, design: Design) -> Question:
    """A value that is asked about, from COMPONENT.KEY=VALUE.

    :raises SettingsError: where it is not written so, or the design has no such value.
    """
    place, equals, written = said.partition("=")
    component, key = component_and_key(place.strip(), design.specs.keys())
    if not equals or not key or not written.strip():
        raise SettingsError(
            f'--set {said}: write it as COMPONENT.KEY=VALUE, such as liner-left.bore="500 mm H8"'
        )
    try:
        spec_with(design, component, key)
    except DesignError as problem:
        raise SettingsError(f"--set {said}: {problem}") from problem
    return Question(component, key, written.strip())


def what_if(before: Assessment, asked: Sequence[Question], assess: Assess) -> WhatIf:
    """The design with some values written otherwise, beside the design as it is.

    :raises SettingsError: for a value that cannot be read, with what to write instead.
    """
    restated = _restatements(before, asked)
    after = _assessed(before, restated, assess)
    moved = sorted(_moved(before.checks, after.checks), key=_order)
    new, cleared = new_and_cleared(before.checks, after.checks)
    return WhatIf(restated, before, after, tuple(moved), new, cleared)


def checked_with(before: Assessment, asked: Sequence[Question], assess: Assess) -> Assessment:
    """The design checked with some values written otherwise.

    :raises SettingsError: for a value that cannot be read, with what to write instead.
    """
    return _assessed(before, _restatements(before, asked), assess)


def _restatements(before: Assessment, asked: Sequence[Question]) -> tuple[Restatement, ...]:
    if before.design is None:
        raise DesignError("the settings could not be read: nothing can be asked about the design")
    return tuple(_restatement(one, before.design) for one in asked)


def _assessed(before: Assessment, restated: Sequence[Restatement], assess: Assess) -> Assessment:
    """A copy of the design with the values, checked."""
    assert before.design is not None  # as it was asked about
    assert before.settings is not None
    if not restated:
        return before
    texts = _texts(restated, before.design)
    with scratch_folder() as folder:
        copy = folder / before.root.name
        copy_repository(before.root, before.settings, copy, texts)
        after = assess(copy)
    _refuse_misread(restated, before, after)
    return after


def _restatement(asked: Question, design: Design) -> Restatement:
    spec = design.specs[asked.component]
    value, stated = dict(spec.at_keys())[asked.key], stated_values(spec)
    if asked.key not in stated:
        where = Location(design.files[asked.component], 0, asked.key)
        others = [name for name in design.names_sharing(asked.component) if design.files[name] == where.file]
        return Restatement(asked, where, "", tuple(sorted(others)))
    where = value.where
    if design.is_turned(where):
        other = next(name for name in design.files if design.files[name] == where.file)
        raise SettingsError(
            f"--set {asked.name}: it is mirrored from {other}, whose drawing states it: ask about {other}.{asked.key}"
        )
    return Restatement(asked, where.drawn, stated[asked.key], tuple(_reading(where, asked, design)))


def _reading(where: Location, asked: Question, design: Design) -> Iterator[str]:
    """The other parts that read the same line."""
    for name in design.names_sharing(asked.component):
        other = design.specs.get(name)
        if other and any(one.where.drawn == where.drawn for _, one in other.at_keys()):
            yield name


def _texts(restated: Sequence[Restatement], design: Design) -> dict[str, str]:
    """The files that state some values otherwise, each with its text."""
    texts: dict[str, str] = {}
    for one in restated:
        file, asked = one.where.file, one.question
        text = texts.get(file) or read_regular(design.root / file).decode("utf-8")
        usual = usual_at(design.specs[asked.component], asked.key)
        texts[file] = restated_text(text, one.where, asked.written, "" if usual is None else usual)
    return texts


def _refuse_misread(restated: Sequence[Restatement], before: Assessment, after: Assessment) -> None:
    """One line for a value that makes the design unreadable, at its key where the complaint is of that."""
    known = {str(one) for one in before.complaints}
    found = [one for one in after.complaints if str(one) not in known]
    if not found:
        return
    keys = {one.where.key: one.question.name for one in restated}
    first = next((one for one in found if one.where.key in keys), found[0])
    names = keys.get(first.where.key, ", ".join(keys.values()))
    raise SettingsError(f"--set {names}: {first}")


def _moved(before: Sequence[Check], after: Sequence[Check]) -> Iterator[MovedMargin]:
    was: Mapping[tuple[str, str], Check] = {one.order: one for one in before}
    then: Mapping[tuple[str, str], Check] = {one.order: one for one in after}
    for order in dict.fromkeys([*was, *then]):
        one = MovedMargin(was.get(order), then.get(order))
        if _differs(one):
            yield one


def _differs(one: MovedMargin) -> bool:
    if one.before is None or one.after is None:
        return one.check.outcome != "not applicable"
    if (one.before.outcome, one.before.grade) != (one.after.outcome, one.after.grade):
        return True
    used, then = one.before.utilisation, one.after.utilisation
    if used is None or then is None:
        return used is not then
    if math.isinf(used) and math.isinf(then):
        return not math.isclose(one.before.beyond, one.after.beyond, rel_tol=_SAME)
    return not math.isclose(used, then, rel_tol=_SAME, abs_tol=_SAME)


def _order(one: MovedMargin) -> tuple[bool, float, tuple[str, str]]:
    """What comes to stand in the way first, then the worst change."""
    was, then = (check.stands_in_the_way if check else None for check in (one.before, one.after))
    return not (then is not None and was is None), -one.by, one.check.order
