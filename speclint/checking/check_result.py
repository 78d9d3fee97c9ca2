"""A check: one rule applied to one component, and its outcome."""

from __future__ import annotations

import hashlib
from collections.abc import Hashable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from speclint.checking.proved import Proof
from speclint.errors import Location
from speclint.rules import Consulted, Grade, Judgement, PlaceSeen, Rule, Step, actual

Outcome = Literal["conforms", "finding", "not assessed", "not applicable"]


@dataclass(frozen=True)
class Check:
    """One rule on one component at its governing load case and tolerance corner.

    ``grade`` is that of the finding; of a check not assessed it is the gravest that the rule can give when
    that is a hold, else None. ``governing`` names the corner in words, ``at_worst`` the same
    inputs with their values there. ``missing`` says what an assessment
    needs, of the rule as a whole or of an item that it goes over. ``failing`` are all the comparisons that fail, each
    at its own worst corner, the gravest first. ``could_not_run`` holds the error of a rule that raised. ``rests_on``
    is what the fingerprint was made of, in words as a report shows it; ``consulted`` is all that it asked of the
    design, at every corner. ``alike`` is the same for checks of parts alike: of one rule, with one outcome and grade,
    made of the same values but for the names of parts and places; "" where nothing stands in the way. ``corners`` are
    the worst corners of each load case, by its name; ``proofs`` say how each is known to be the worst.
    ``places`` are those that it looked at, filled or not; ``unstated`` are the values that it wanted. ``unread`` are
    files that could not be read and keep it from being assessed, ``unlisted`` what is said of names that no list holds.
    """

    component: str
    kind: str
    rule: Rule
    outcome: Outcome
    says: str
    where: Location
    fingerprint: str
    grade: Grade | None = None
    judgement: Judgement | None = None
    case: str = ""
    governing: tuple[str, ...] = ()
    at_worst: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()
    failing: tuple[Judgement, ...] = ()
    steps: tuple[Step, ...] = ()
    assumed: tuple[Location, ...] = ()
    could_not_run: str = ""
    rests_on: Mapping[str, str] = field(default_factory=dict, repr=False)
    consulted: Consulted = field(default_factory=Consulted, repr=False, compare=False)
    alike: str = ""
    corners: Mapping[str, Mapping[Hashable, bool]] = field(default_factory=dict, repr=False)
    proofs: Mapping[str, Proof] = field(default_factory=dict, repr=False)
    places: tuple[PlaceSeen, ...] = field(default=(), repr=False)
    unstated: tuple[Location, ...] = field(default=(), repr=False)
    unread: tuple[str, ...] = field(default=(), repr=False)
    unlisted: tuple[str, ...] = field(default=(), repr=False)

    @property
    def corner(self) -> Mapping[Hashable, bool]:
        """The governing corner: which inputs are at their high side there."""
        return self.corners.get(self.case, {})

    @property
    def utilisation(self) -> float | None:
        """What is used of the limit; None where the rule compares no numbers or was not assessed."""
        return self.judgement.utilisation if self.judgement else None

    @property
    def beyond(self) -> float:
        """By how much it lies beyond its limit, in SI units; nothing where it does not, or was not assessed."""
        return self.judgement.beyond if self.judgement else 0.0

    @property
    def actual(self) -> str:
        """What is wrong, in the second sentence of the rule; of a check that is no finding, how it came out."""
        judged = self.judgement
        return actual(self.rule, judged) if judged is not None and self.outcome == "finding" else self.says

    @property
    def only_unstated(self) -> bool:
        """Whether nothing keeps the check from being assessed but values that are not stated."""
        return bool(self.unstated) and len(self.unstated) == len(self.missing)

    @property
    def also_failing(self) -> tuple[Judgement, ...]:
        """The comparisons that fail beside the one that governs."""
        return tuple(one for one in self.failing if one.says not in self.says)

    @property
    def order(self) -> tuple[str, str]:
        """Sorts checks by component and rule."""
        return (self.component, self.rule.name)

    @property
    def stands_in_the_way(self) -> Grade | None:
        """The grade at which this check counts for the exit code, or None when it does not."""
        return self.grade if self.outcome in ("finding", "not assessed") else None


def fingerprint(rule: Rule, component: str, basis: Mapping[str, str]) -> str:
    """A digest of exactly what a check was based on: the rule, its edition, and every value it took.

    It does not change when a line moves in a file or a value is written in another unit.
    """
    digest = hashlib.sha256()
    for part in (
        rule.name,
        str(rule.edition),
        component,
        *(f"{name}={basis[name]}" for name in sorted(basis)),
    ):
        digest.update(part.encode("utf-8", "backslashreplace") + b"\0")
    return digest.hexdigest()[:24]  # 96 bits: enough against equal digests by chance within one register
