"""Checks of parts alike: one rule on several parts that came out the same, of the same values."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Sequence

from msgspec import Struct

from speclint.checking.check_result import Check
from speclint.rules import Record


class Alike(Struct, frozen=True):
    """Checks of one rule that rest on the same values, in the order of their components: one, or several."""

    checks: tuple[Check, ...]

    @property
    def first(self) -> Check:
        """The check that stands for all."""
        return self.checks[0]

    @property
    def others(self) -> tuple[str, ...]:
        """The components of the others."""
        return tuple(check.component for check in self.checks[1:])

    @property
    def said(self) -> str:
        """The others in words; "" where there is none."""
        if not self.others:
            return ""
        parts = "1 part" if len(self.others) == 1 else f"{len(self.others)} parts"
        return f"alike on {parts}: {', '.join(self.others)}"


def grouped(checks: Iterable[Check]) -> tuple[Alike, ...]:
    """Some checks with those of parts alike together, each group where the first of its checks stood."""
    together: dict[object, list[Check]] = {}
    for check in checks:
        together.setdefault(check.alike or check.order, []).append(check)
    return tuple(Alike(tuple(sorted(group, key=lambda one: one.order))) for group in together.values())


def findings_once(checks: Iterable[Check]) -> tuple[Check, ...]:
    """The findings, of those of parts alike only the first."""
    return tuple(alike.first for alike in grouped(one for one in checks if one.outcome == "finding"))


def digest_of(check: Check, records: Sequence[tuple[str, Record]]) -> str:
    """What is the same for checks of parts alike, and for no others: a digest of how the check came out, and of what.

    ``records`` are those that were written, each with its load case.
    """
    said = [check.kind, check.rule.name, str(check.rule.edition), check.outcome, str(check.grade), check.case]
    said.append(repr(check.utilisation))
    numbers: dict[str, int] = {}
    for case, record in records:
        met = [numbers.setdefault(name, len(numbers)) for name in record.renaming.met]
        said.append(f"{case} {met}")
        said += sorted(f"{case} {name}={value}" for name, value in record.alike)
    digest = hashlib.sha256("\0".join(said).encode("utf-8", "backslashreplace"))
    return digest.hexdigest()[:24]  # as long as a fingerprint
