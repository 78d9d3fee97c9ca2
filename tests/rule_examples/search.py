"""Looking for an example of a rule: a check that conforms, and the smallest change that makes it a finding."""

from __future__ import annotations

import math
import time
from collections.abc import Iterable, Iterator, Sequence
from decimal import Decimal
from typing import NamedTuple

from speclint.checking import Check
from speclint.errors import DesignError
from speclint.families import RuleExample
from speclint.repository import Change, DraftedDesign
from tests.rule_examples.designs import Bench
from tests.rule_examples.shown import finding_of, holds_of, result_of
from tests.rule_examples.tries import FACTORS, Tries, Way

#: Seconds for which changes of one check are tried, and checks that are tried.
SECONDS, CHECKS = 8.0, 2
#: The factor by which it is asked how much each size matters, and how many of those that matter most are tried.
PROBE, STEEPEST = "1.1", 8
#: A check that takes longer than this is left to one that takes less, where there is one.
QUICK = 0.3


class Candidate(NamedTuple):
    """A check of the example that conforms: how much it took, and what it used of its limit."""

    rule: str
    component: str
    kind: str
    taken: int
    used: float | None

    @property
    def order(self) -> tuple[bool, bool, int, str]:
        """A check with numbers that uses a good share of its limit first; of these the one with the fewest inputs."""
        good = self.used is not None and 0.2 < self.used <= 1
        return not good, self.used is None, self.taken, self.component


def candidates(checks: Iterable[Check]) -> dict[str, list[Candidate]]:
    """The conforming checks of each rule, the clearest first, of parts alike the first alone."""
    found: dict[str, list[Candidate]] = {}
    for one in checks:
        if one.outcome == "conforms":
            clear = Candidate(one.rule.name, one.component, one.kind, len(one.rests_on), one.utilisation)
            found.setdefault(one.rule.name, []).append(clear)
    return {rule: list(_unlike(sorted(some, key=lambda one: one.order))) for rule, some in found.items()}


def _unlike(some: Sequence[Candidate]) -> Iterator[Candidate]:
    """Those that differ in kind, inputs or what is used, in their order."""
    seen = set[tuple[str, int, float | None]]()
    for one in some:
        key = one.kind, one.taken, None if one.used is None else round(one.used, 6)
        if key not in seen:
            seen.add(key)
            yield one


def breaks(done: Check) -> bool:
    """Whether a check shows its rule broken: a finding that was judged, and is no query for want of a source."""
    return done.outcome == "finding" and not done.could_not_run and done.judgement is not None


def example_of(
    bench: Bench, one: RuleExample, checks: tuple[Check, Check] | None = None
) -> RuleExample | None:
    """An example with all that its checks say now; None where it does not hold, or is not broken.

    :raises DesignError: where a design of it cannot be read.
    """
    holds, broken = checks or bench.checks(one)
    if holds.outcome != "conforms" or not breaks(broken):
        return None
    shown = holds_of(holds, bench.before(one), one.changes)
    return RuleExample(
        one.rule,
        one.component,
        shown,
        result_of(holds),
        finding_of(broken),
        one.changes,
        one.given,
        one.alone,
    )


def found(bench: Bench, rule: str, some: Sequence[Candidate], seconds: float = SECONDS) -> RuleExample | None:
    """The example of a rule with the smallest change, of the first check that a change breaks."""
    slow: RuleExample | None = None
    for one in some[:CHECKS]:
        began = time.process_time()
        holds = bench.made(bench.rules[rule], one.component, bench.design)
        taken = time.process_time() - began
        if holds.outcome != "conforms" or (slow and taken > QUICK):
            continue
        change = breaking(bench, holds, bench.design, seconds)
        if change is None:
            continue
        empty = RuleExample(rule, one.component, "", "", "", change)
        made = example_of(bench, empty)
        if made is not None and taken <= QUICK:
            return made
        slow = slow or made
    return slow


def breaking(
    bench: Bench, holds: Check, state: DraftedDesign, seconds: float = SECONDS
) -> tuple[Change, ...] | None:
    """The smallest change of a design that makes a check a finding; None where none is found in the time."""
    until = time.process_time() + seconds
    tries = Tries(state, holds)
    if holds.utilisation is not None and (change := _of_steepest(bench, holds, state, tries, until)):
        return (change,)
    for changes in tries:
        if time.process_time() > until:
            return None
        if (after := _after(bench, holds, state, changes)) and breaks(after):
            return changes
    return None


def _after(bench: Bench, holds: Check, state: DraftedDesign, changes: tuple[Change, ...]) -> Check | None:
    """A check once the design is changed; None where that cannot be read."""
    try:
        return bench.made(holds.rule, holds.component, state.changed(changes))
    except DesignError:
        return None


def _of_steepest(
    bench: Bench, holds: Check, state: DraftedDesign, tries: Tries, until: float
) -> Change | None:
    """The smallest change of one of those sizes that move what is used of the limit most."""
    slopes: dict[Way, float] = {}
    for way, change in tries.sized(Decimal(PROBE)):
        if time.process_time() > until - SECONDS / 2:
            break
        after = _after(bench, holds, state, (change,))
        if after is not None and after.judgement is not None:
            slopes[way] = (
                math.inf if breaks(after) else (after.utilisation or 0.0) - (holds.utilisation or 0.0)
            )
    best = sorted((way for way in slopes if slopes[way] > 0), key=lambda way: -slopes[way])[:STEEPEST]
    for factor in FACTORS:
        for _, change in tries.sized(Decimal(factor), best):
            if time.process_time() > until:
                return None
            if (after := _after(bench, holds, state, (change,))) and breaks(after):
                return change
    return None
