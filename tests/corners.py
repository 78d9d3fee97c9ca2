"""The worst corner against full enumeration, on checks made with opposed limits.

Every comparison of a check is brought to some share of its limit, 0.90 to 1.10 by turns, while the others stand just
inside theirs: so one that is nearly used is there to hide the one that fails. What the boxes find is held against a run
at every corner: outcome, grade, printed worst value, and every comparison that fails.

``python -m tests.corners`` does it for every check of the example with up to 12 toleranced inputs, and for a seeded
sample of 200 with up to 16; ``--part 1/2`` and ``--part 2/2`` share them between two processors. A rule with more
than a few inputs is run once at every corner, and what it compares there is judged again for each turn; a difference
is confirmed by a run of its own at every corner. The test of the same name does it for one check of each rule.
"""

from __future__ import annotations

import argparse
import math
import random
import sys
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any
from unittest.mock import patch

from speclint.checking import Assessment, Check, check
from speclint.checking.conclusion import outcome_of
from speclint.checking.corner_search import every_corner
from speclint.checking.load_case import load_case_of
from speclint.checking.one_corner import ending_at
from speclint.checking.severity import NOTHING, Ending, Severity, severity, told
from speclint.checking.worst_corner import Effort
from speclint.errors import replace
from speclint.rules import Amount, Context, Corner, Judgement, Rule
from speclint.rules.box import BoxSheet
from speclint.rules.comparisons import Judging
from speclint.rules.steps import Steps
from speclint.specs import Component
from tests.example import assessed
from tests.shares import add_part, share_of

SHARES = (0.90, 0.98, 1.02, 1.10)
EVERY_CORNER = Effort(boxes=0, corners=2**17)
FEW = 5


@dataclass(frozen=True)
class Moved:
    """How one comparison is moved: its limit by a factor, or what must stay by an amount."""

    factor: float = 1.0
    less: float = 0.0


def _limit(move: Moved, value: Any, against: Any) -> tuple[Any, ...]:
    return value, against * move.factor


def _band(move: Moved, value: Any, low: Any, high: Any) -> tuple[Any, ...]:
    return value, low, high * move.factor


def _stay(move: Moved, left: Any, cold: Any) -> tuple[Any, ...]:
    return left - move.less, cold


#: How the values that a sheet compares are changed, by the method that compares them.
CHANGES: dict[str, Callable[..., tuple[Any, ...]]] = {
    "at_most": _limit,
    "at_least": _limit,
    "no_hotter": _limit,
    "within": _band,
    "stays": _stay,
}


@contextmanager
def moved(by: Mapping[int, Moved]) -> Iterator[None]:
    """Move the comparisons of every sheet, by their number on it."""

    def wrapped(plain: Callable[..., Any], change: Callable[..., tuple[Any, ...]]) -> Callable[..., Any]:
        def judge(self: Any, *values: Any, **options: Any) -> Any:
            number = vars(self)["compared"] = vars(self).get("compared", -1) + 1
            return plain(self, *change(by.get(number, Moved()), *values), **options)

        return judge

    patches = [
        patch.object(sheet, name, wrapped(getattr(sheet, name), change))
        for sheet in (Judging, BoxSheet)
        for name, change in CHANGES.items()
    ]
    amount = patch.object(Steps, "amount", lambda _, value: Amount(value, ""))
    both = patch.object(Steps, "amounts", lambda _, *values: tuple(Amount(value, "") for value in values))
    with amount, both:
        for one in patches:
            one.start()
        try:
            yield
        finally:
            for one in patches:
                one.stop()


@dataclass(frozen=True)
class AtCorner:
    """How a rule ended at one corner of a load case, and what it compared, in order."""

    case: str
    ending: Ending
    compared: tuple[tuple[str, tuple[Any, ...], dict[str, Any]], ...]


def at_every_corner(rule: Rule, component: Component, context: Context) -> Iterator[AtCorner]:
    """A rule run at every corner of each load case."""
    compared: list[tuple[str, tuple[Any, ...], dict[str, Any]]] = []

    def noting(name: str, plain: Callable[..., Any]) -> Callable[..., Any]:
        def judge(self: Any, *values: Any, **options: Any) -> Any:
            compared.append((name, values, options))
            return plain(self, *values, **options)

        return judge

    patches = [patch.object(Judging, name, noting(name, getattr(Judging, name))) for name in CHANGES]
    for one in patches:
        one.start()
    try:
        for name in rule.cases or ("",):
            case = load_case_of(component, name, context) if name else None

            def run(at: Corner, case: Any = case) -> Ending:
                compared.clear()
                return ending_at(rule, component, case, context, at)

            for _, ending in every_corner(run):
                yield AtCorner(name, ending, tuple(compared))
    finally:
        for one in patches:
            one.stop()


class Bare(Judging):
    """Only judges."""

    def __init__(self, rule: Rule) -> None:
        self._rule, self._record = rule, None


def judged_again(at: AtCorner, by: Mapping[int, Moved], bare: Bare) -> tuple[Ending, tuple[Any, ...]] | None:
    """The ending at a corner with its comparisons moved, and the values compared; None where they are not its parts."""
    if not isinstance(at.ending, Judgement):
        return at.ending, ()
    old = [part for part in at.ending.every if part.margins]
    if len(old) != len(at.compared):
        return None
    new: list[Judgement] = []
    shown: list[Any] = []
    for number, (part, (name, values, options)) in enumerate(zip(old, at.compared, strict=True)):
        judge = getattr(bare, name)
        same = judge(*values, **options)
        if (same.holds, same.utilisation) != (part.holds, part.utilisation):
            return None
        changed = CHANGES[name](by.get(number, Moved()), *values)
        shown.append(changed[0])
        new.append(replace(judge(*changed, **options), grade=part.grade))
    again = iter(zip(new, shown, strict=True))
    parts = [next(again) if part.margins else (part, part.says) for part in at.ending.every]
    ending = bare.worst(*(part for part, _ in parts))
    return replace(ending, ended=at.ending.ended), tuple(value for _, value in parts)


@dataclass(frozen=True)
class Result:
    """What is compared of two checks."""

    outcome: str
    grade: object
    utilisation: object
    failing: list[str]


def in_full(rule: Rule, corners: Iterable[AtCorner], by: Mapping[int, Moved]) -> Result | None:
    """The worst of all corners with comparisons moved; None where the corners do not tell."""
    bare = Bare(rule)
    worst: Ending | None = None
    cases: dict[str, Severity] = {}
    failing: dict[tuple[str, int, int, str], tuple[Severity, Any]] = {}
    for at in corners:
        again = judged_again(at, by, bare)
        if again is None:
            return None
        ending, shown = again
        here = severity(ending, rule)
        cases[at.case] = max(here, cases.get(at.case, NOTHING))
        if worst is None or here > severity(worst, rule):
            worst = ending
        parts = ending.every if isinstance(ending, Judgement) else ()
        for index, part in enumerate(parts):
            key, grave = (at.case, len(parts), index, part.compared), severity(part, rule)
            if not part.holds and (key not in failing or grave > failing[key][0]):
                failing[key] = grave, shown[index]
    assert worst is not None
    once: dict[tuple[int, int, str], Any] = {}
    for case in sorted(cases, key=lambda case: cases[case], reverse=True):
        for (of, *place), (_, value) in failing.items():
            if of == case:
                once.setdefault(tuple(place), value)  # type: ignore[arg-type]
    outcome, grade = outcome_of(told(worst), rule)
    used = worst.utilisation if isinstance(told(worst), Judgement) else None  # type: ignore[union-attr]
    return Result(outcome, grade, near(used), sorted(printed(one) for one in once.values()))


def printed(value: object) -> str:
    return f"{value:.6g}" if isinstance(value, float) else str(value)


def result(found: Check) -> Result:
    return Result(found.outcome, found.grade, near(found.utilisation), values(found))


def worst_of_each(rule: Rule, component: Component, context: Context) -> dict[int, Judgement]:
    """The worst that each comparison comes to over all load cases and corners, by its number on the sheet."""
    found: dict[int, Judgement] = {}
    for name in rule.cases or ("",):
        case = load_case_of(component, name, context) if name else None
        if isinstance(case, Exception):
            continue
        for _, ending in every_corner(lambda at, case=case: ending_at(rule, component, case, context, at)):  # type: ignore[misc]
            if not isinstance(ending, Judgement):
                continue
            for number, part in enumerate(ending.every):
                if part.utilisation is not None and (
                    number not in found or part.utilisation > (found[number].utilisation or 0.0)
                ):
                    found[number] = part
    return found


def move_to(part: Judgement, share: float) -> Moved:
    """What brings the worst of a comparison to a share of its limit."""
    used = part.utilisation
    if used is None or not math.isfinite(used) or used <= 0.0:
        return Moved()
    if part.left is not None:
        cold = part.left.value / (1 - used) if used != 1 else 0.0
        return Moved(less=(share - used) * cold)
    return Moved(factor=used / share if part.compared == "≤" else share / used)


def rounds(parts: Mapping[int, Judgement], chance: random.Random) -> Iterator[dict[int, Moved]]:
    """Each comparison by turns at each share, the others just inside their limits."""
    for number in parts:
        for share in SHARES:
            shares = {other: chance.uniform(0.9, 0.999) for other in parts} | {number: share}
            yield {other: move_to(part, shares[other]) for other, part in parts.items()}


def differences(
    found: Check, assessment: Assessment, chance: random.Random, most: int = 10**6
) -> Iterator[str]:
    """Where the boxes find otherwise than a run at every corner, for one check with its limits moved."""
    context, component = assessment.context, assessment.design.specs[found.component]  # type: ignore[union-attr]
    assert context is not None
    assert isinstance(component, Component)
    context.begin()
    rule = found.rule
    parts = worst_of_each(rule, component, context)
    many = max((len(met) for met in found.corners.values()), default=0) > FEW
    corners: Iterable[AtCorner] = at_every_corner(rule, component, context) if many else ()
    if most > 1:  # else they are gone through once, as they are run
        corners = list(corners)
    for count, by in enumerate(rounds(parts, chance)):
        if count == most:
            return
        with moved(by):
            boxed = result(check(rule, component, context))
        full = in_full(rule, corners, by) if many else None
        if full == boxed:
            continue
        with moved(by):
            full = result(check(rule, component, context, effort=EVERY_CORNER))
        if full != boxed:
            yield f"{found.component} {rule.name} {by}: {boxed}, at every corner {full}"


def values(found: Check) -> list[str]:
    """The worst value of each comparison that fails, as printed."""
    return sorted(f"{one.found.value:.6g}" if one.found else one.says for one in found.failing)


def near(used: float | None) -> object:
    return used if used is None or not math.isfinite(used) else f"{used:.9g}"


def to_be_tried(assessment: Assessment, least: int, most: int) -> list[Check]:
    """The checks whose load cases have at least, and at most, so many toleranced inputs."""
    return [
        one
        for one in assessment.checks
        if not one.rule.reviews
        and not one.could_not_run
        and least <= max((len(met) for met in one.corners.values()), default=0) <= most
    ]


def main() -> int:
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("--seed", type=int, default=14)
    reader.add_argument("--full-to", type=int, default=12)
    reader.add_argument("--sample", type=int, default=200)
    reader.add_argument("--rounds", type=int, default=10**6, help="rounds of each check at most")
    add_part(reader)
    given = reader.parse_args()
    chance, assessment = random.Random(given.seed), assessed()
    few = to_be_tried(assessment, 1, given.full_to)
    many = to_be_tried(assessment, given.full_to + 1, 16)
    many = chance.sample(many, min(given.sample, len(many)))
    wrong = 0
    done: Counter[int] = Counter()
    for number, one in share_of(list(enumerate(few + many)), given.part):
        for words in differences(one, assessment, chance, given.rounds if number < len(few) else 1):
            wrong += 1
            print(words, flush=True)
        done[max(len(met) for met in one.corners.values())] += 1
        if sum(done.values()) % 20 == 1:
            print(f"{number} of {len(few) + len(many)} checks", file=sys.stderr, flush=True)
    by_inputs = ", ".join(f"{checks} with {inputs}" for inputs, checks in sorted(done.items()))
    print(f"checks by toleranced inputs: {by_inputs}")
    print(f"{len(few)} checks in full, {len(many)} of the sample, part {given.part}: {wrong} differences")
    return int(wrong > 0)


if __name__ == "__main__":
    raise SystemExit(main())
