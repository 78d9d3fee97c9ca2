"""Components that a change withdraws: each had safety checks that no longer apply to anything, and may go by its name.

A withdrawal is accepted in the register under the name of the component and the word ``withdrawal`` in place of a rule.
"""

from __future__ import annotations

import hashlib
from collections.abc import Collection, Iterable, Iterator
from pathlib import PurePosixPath

from msgspec import Struct

from speclint.checking import Check
from speclint.repository import FILE_NAME, Design, passed_over
from speclint.rules import Grade
from speclint.specs import Component

#: Stands in the register where a finding has the name of its rule; rules have a dot in their names.
WITHDRAWAL = "withdrawal"


class Withdrawal(Struct, frozen=True):
    """One component that is withdrawn: ``how`` says what became of it, ``checks`` are the safety checks it loses."""

    component: str
    how: str
    checks: tuple[Check, ...]

    @property
    def says(self) -> str:
        """The withdrawal in words."""
        rules = ", ".join(check.rule.name for check in self.checks)
        return f"{self.how}; its safety checks were {rules}"

    @property
    def families(self) -> frozenset[str]:
        """The families whose safety checks are lost."""
        return frozenset(check.rule.family for check in self.checks)

    @property
    def rests_on(self) -> dict[str, str]:
        """How each safety check came out before the component was withdrawn."""
        return {check.rule.name: _came_out(check) for check in self.checks}

    @property
    def fingerprint(self) -> str:
        """A digest of the safety checks as they were: an acceptance holds for no other state of the component."""
        digest = hashlib.sha256(self.component.encode("utf-8") + b"\0")
        for check in self.checks:
            digest.update(f"{check.rule.name}={check.fingerprint}".encode() + b"\0")
        return digest.hexdigest()[:24]  # as long as that of a check


def _came_out(check: Check) -> str:
    return check.grade.word if check.outcome == "finding" and check.grade else check.outcome


def is_safety_check(check: Check) -> bool:
    """Whether a check can withhold, and applied to its component."""
    return check.rule.gravest is Grade.HOLD and check.outcome != "not applicable"


def withdrawn_parts(before: Design, now: Design, ignored: Collection[str]) -> Iterator[str]:
    """The components that are no longer there as what they were: gone, of another kind, or ignored by git."""
    for name, was in before.specs.items():
        spec = now.specs.get(name)
        unreadable = spec is None and name in now.files  # that is complained of
        same = spec is not None and spec.kind == was.kind
        if isinstance(was, Component) and (now.files.get(name) in ignored or not (same or unreadable)):
            yield name


def withdrawals(
    checks: Iterable[Check], before: Design, now: Design, ignored: Collection[str] = ()
) -> dict[str, Withdrawal]:
    """The components that had a safety check and have it no longer, by their ids.

    ``checks`` are those of components that are withdrawn; ``ignored`` are the files that git ignores.
    """
    lost: dict[str, list[Check]] = {}
    for check in checks:
        if is_safety_check(check) and _is_lost(check, now, ignored):
            lost.setdefault(check.component, []).append(check)
    search = _Search(now, ignored)
    return {
        name: Withdrawal(name, search.how(name, before.files[name]), tuple(lost[name]))
        for name in sorted(lost)
    }


def _is_lost(check: Check, now: Design, ignored: Collection[str]) -> bool:
    if now.files.get(check.component) in ignored:
        return True
    spec = now.specs.get(check.component)
    if spec is None:
        return check.component not in now.files  # one that cannot be read is complained of
    return not isinstance(spec, check.rule.on)


class _Search(Struct, frozen=True):
    """What became of a component: where its file and its id are now."""

    now: Design
    ignored: Collection[str]

    def how(self, name: str, file: str) -> str:
        """In words: it is hidden, of another kind, under another name, or gone."""
        there = self.now.files.get(name, "")
        if there in self.ignored:
            return f"{there} is ignored by git"
        if name in self.now.specs:
            return f"{name} is now a {self.now.specs[name].kind}"
        return next(self._hidden(file), "") or self._renamed(file) or f"{file} is gone"

    def _hidden(self, file: str) -> Iterator[str]:
        settings = self.now.settings
        if file in (settings.register_file, *settings.materials):
            yield f"{FILE_NAME} no longer takes {file} for a spec"
        sought = PurePosixPath(file).name.lower()
        for one in passed_over(self.now.root, settings):
            if PurePosixPath(one.file).name.lstrip(".").lower() == sought:
                yield f"{one.file} is passed over: {one.why}"

    def _renamed(self, file: str) -> str:
        owners = sorted(name for name, its in self.now.files.items() if its == file)
        return f"{file} is now the spec of {' and '.join(owners)}" if owners else ""
