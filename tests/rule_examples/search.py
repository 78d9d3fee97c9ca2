"""Looking for an example of a rule: a check that conforms, and the smallest change that makes it a finding."""

from __future__ import annotations

import time
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from speclint.checking import Check
from speclint.families import Change, RuleExample
from tests.rule_examples.designs import Bench, State, Unreadable
from tests.rule_examples.shown import finding_of, holds_of, result_of
from tests.rule_examples.tries import Tries

#: Seconds for which changes of one check are tried, and checks that are tried.
SECONDS, CHECKS = 8.0, 2
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

    :raises Unreadable: where a design of it cannot be read.
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
        holds = bench.made(bench.rules[rule], one.component, bench.example)
        taken = time.process_time() - began
        if holds.outcome != "conforms" or (slow and taken > QUICK):
            continue
        change = _breaking(bench, holds, bench.example, seconds)
        if change is None:
            continue
        empty = RuleExample(rule, one.component, "", "", "", change)
        made = example_of(bench, empty)
        if made is not None and taken <= QUICK:
            return made
        slow = slow or made
    return slow


def _breaking(bench: Bench, holds: Check, state: State, seconds: float) -> tuple[Change, ...] | None:
    until = time.process_time() + seconds
    for changes in Tries(state, holds):
        if time.process_time() > until:
            return None
        try:
            changed = bench.changed(state, changes)
            if breaks(bench.made(holds.rule, holds.component, changed)):
                return changes
        except Unreadable:
            continue
    return None
