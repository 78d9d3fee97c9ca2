"""The worst corner against full enumeration, on checks made with opposed limits.

Every comparison of a check is brought to some share of its limit, 0.90 to 1.10 by turns, while the others stand just
inside theirs: so one that is nearly used is there to hide the one that fails. What the boxes find is held against a run
at every corner: outcome, grade, printed worst value, and every comparison that fails.

``python -m tests.corners`` does it for every check of the example with up to 12 toleranced inputs, and for a seeded
sample of 200 with up to 16; it takes an hour. The test of the same name does it for one check of each rule.
"""

from __future__ import annotations

import argparse
import math
import random
import sys
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from unittest.mock import patch

from speclint.checking import Assessment, Check, assess, check
from speclint.checking.corner_search import every_corner
from speclint.checking.rule_run import _ending, _load_case
from speclint.checking.worst_corner import Effort
from speclint.rules import Amount, Context, Judgement, Rule
from speclint.rules.box import BoxSheet
from speclint.rules.comparisons import Judging
from speclint.rules.record import Record
from speclint.specs import Component
from speclint.testing import installed_families

ROOT = Path(__file__).parents[1]
SHARES = (0.90, 0.98, 1.02, 1.10)
EVERY_CORNER = Effort(boxes=0, corners=2**17)


@dataclass(frozen=True)
class Moved:
    """How one comparison is moved: its limit by a factor, or what must stay by an amount."""

    factor: float = 1.0
    less: float = 0.0


@contextmanager
def moved(by: Mapping[int, Moved]) -> Iterator[None]:
    """Move the comparisons of every sheet, by their number on it."""

    def wrapped(plain: Callable[..., Any], change: Callable[..., tuple[Any, ...]]) -> Callable[..., Any]:
        def judge(self: Any, *values: Any, **options: Any) -> Any:
            number = vars(self)["compared"] = vars(self).get("compared", -1) + 1
            return plain(self, *change(by.get(number, Moved()), *values), **options)

        return judge

    def limit(move: Moved, value: Any, against: Any) -> tuple[Any, Any]:
        return value, against * move.factor

    def band(move: Moved, value: Any, low: Any, high: Any) -> tuple[Any, Any, Any]:
        return value, low, high * move.factor

    def stay(move: Moved, left: Any, cold: Any) -> tuple[Any, Any]:
        return left - move.less, cold

    changes: dict[str, Callable[..., tuple[Any, ...]]] = {
        "at_most": limit,
        "at_least": limit,
        "no_hotter": limit,
        "within": band,
        "stays": stay,
    }
    patches = [
        patch.object(sheet, name, wrapped(getattr(sheet, name), change))
        for sheet in (Judging, BoxSheet)
        for name, change in changes.items()
    ]
    amount = patch.object(Record, "amount", lambda _, value: Amount(value, ""))
    both = patch.object(Record, "amounts", lambda _, *values: tuple(Amount(value, "") for value in values))
    with amount, both:
        for one in patches:
            one.start()
        try:
            yield
        finally:
            for one in patches:
                one.stop()


def worst_of_each(rule: Rule, component: Component, context: Context) -> dict[int, Judgement]:
    """The worst that each comparison comes to over all load cases and corners, by its number on the sheet."""
    found: dict[int, Judgement] = {}
    for name in rule.cases or ("",):
        case = _load_case(component, name, context) if name else None
        if isinstance(case, Exception):
            continue
        for _, ending in every_corner(lambda at, case=case: _ending(rule, component, case, context, at)):  # type: ignore[misc]
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
    parts = worst_of_each(found.rule, component, context)
    for count, by in enumerate(rounds(parts, chance)):
        if count == most:
            return
        with moved(by):
            boxed = check(found.rule, component, context)
            full = check(found.rule, component, context, effort=EVERY_CORNER)
        for what, one, other in (
            ("outcome", boxed.outcome, full.outcome),
            ("grade", boxed.grade, full.grade),
            ("utilisation", near(boxed.utilisation), near(full.utilisation)),
            ("failing", values(boxed), values(full)),
        ):
            if one != other:
                yield f"{found.component} {found.rule.name} {by}: {what} {one}, at every corner {other}"


def values(found: Check) -> list[str]:
    """The worst value of each comparison that fails, as printed."""
    return sorted(f"{one.found.value:.6g}" if one.found else one.says for one in found.failing)


def near(used: float | None) -> object:
    return used if used is None or not math.isfinite(used) else f"{used:.9g}"


def example() -> Assessment:
    return assess([ROOT / "example_specs"], installed_families())


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
    given = reader.parse_args()
    chance, assessment = random.Random(given.seed), example()
    few = to_be_tried(assessment, 1, given.full_to)
    many = to_be_tried(assessment, given.full_to + 1, 16)
    many = chance.sample(many, min(given.sample, len(many)))
    wrong = 0
    for number, one in enumerate(few + many):
        for words in differences(one, assessment, chance, given.rounds if number < len(few) else 1):
            wrong += 1
            print(words, flush=True)
        if number % 50 == 0:
            print(f"{number} of {len(few) + len(many)} checks", file=sys.stderr, flush=True)
    print(f"{len(few)} checks in full, {len(many)} of the sample: {wrong} differences")
    return int(wrong > 0)


if __name__ == "__main__":
    raise SystemExit(main())
