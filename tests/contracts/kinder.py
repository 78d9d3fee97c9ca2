"""Rules of hold grade that a stated value clears though an agreement contradicts it by what other places give.

Every fact of the example that one place states and others give is contradicted in turn, so that its agreement fails.
No check of hold grade that took the stated value may then use less of its limit: it has to read what is worked, or the
worse of the two. ``python -m tests.contracts.kinder`` tries all of them, ``--part`` a share, a test of the same subject
some.
"""

from __future__ import annotations

import argparse
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from typing import NamedTuple

from speclint.checking import Check, check
from speclint.errors import Location, replace
from speclint.repository import Design
from speclint.rules import Context, Judgement
from speclint.specs import Component
from speclint.testing.taken_values import general_key, taken_by
from tests.contracts.omissions import hold_rules
from tests.example import assessed
from tests.shares import add_part, share_of

#: Shares by which a stated quantity is changed, either way: beyond what any rule allows.
_BEYOND = (0.31, -0.29, 3.07, -0.9)
#: Another word of those that a key accepts.
_OTHER = {
    "live steam": "exhaust steam",
    "exhaust steam": "live steam",
    "beyond the beats": "between the beats",
    "between the beats": "beyond the beats",
    "supply": "delivery",
    "one fixed and one pinned": "both fixed",
    "two walls": "single wall",
    "single wall": "two walls",
}
_EPSILON = 1e-6  # of a utilisation: the same, but for rounding
#: What is kinder all the same, by key and rule, with the reason.
OPEN: Mapping[tuple[str, str], str] = {
    (
        "duty.cases.*.exhaust_pressure",
        "events.compression-peak",
    ): "what the nozzle needs is worked from the flow of this cycle, which cannot wait for it: the agreement tells",
    (
        "cylinder-block.pads.*.area",
        "frame.block-couple",
    ): "never more than its sides leave: what the agreement proposes stands at another corner of the hole, 3e-5 away",
}


class Place(NamedTuple):
    """A value of the example: the spec and its key there."""

    spec: str
    key: str


class Kinder(NamedTuple):
    """A rule of hold grade that is kinder by a stated value which an agreement contradicts: key and rule."""

    agreement: str
    key: str
    rule: str


@dataclass
class Trial:
    """An agreement's check, one of hold grade, the place that both took, and what each pair would have stand there."""

    done: Check
    taker: Check
    where: Location
    aims: list[object] = field(default_factory=list)


def _design() -> Design:
    context = assessed().context
    assert context is not None
    return context.design


def _place(where: Location) -> Place:
    return Place(where.part or _files()[where.file], where.key)


@cache
def _files() -> Mapping[str, str]:
    return {file: spec for spec, file in _design().files.items()}


def _component(name: str) -> Component:
    found = _design().specs[name]
    assert isinstance(found, Component)
    return found


@cache
def _takers() -> Mapping[Place, Sequence[Check]]:
    """The checks of hold grade that took each value of the example, one of a rule for a value."""
    found: dict[Place, dict[str, Check]] = defaultdict(dict)
    holds = {rule.name for rule in hold_rules()}
    for done in assessed().checks:
        if done.rule.name in holds and done.outcome in ("conforms", "finding"):
            for one in taken_by(done, _design()):
                if one.stated:
                    found[Place(one.spec, one.key)].setdefault(done.rule.name, done)
    return {place: tuple(checks.values()) for place, checks in found.items()}


def stated_and_worked() -> Iterator[tuple[Check, Judgement]]:
    """Every pair of the example that agrees, of which one place states what others give, with a check that took it."""
    for done in assessed().checks:
        if not done.rule.agreement or done.judgement is None:
            continue
        for part in done.judgement.every:
            here, *there = part.places
            if part.holds and here.aim is not None and there and all(one.aim is None for one in there):
                yield done, part


@cache
def tried() -> Mapping[Kinder, Trial]:
    """One trial for each agreement, key and rule."""
    found: dict[Kinder, Trial] = {}
    for done, part in stated_and_worked():
        place = _place(part.places[0].where)
        key = (
            f"{_design().specs[place.spec].kind}.{general_key(type(_design().specs[place.spec]), place.key)}"
        )
        for taker in _takers().get(place, ()):
            named = Kinder(done.rule.name, key, taker.rule.name)
            trial = found.setdefault(named, Trial(done, taker, part.places[0].where))
            if trial.done is done and trial.where == part.places[0].where:
                trial.aims.append(part.places[0].aim)
    return found


def _contradicted(done: Check, where: Location) -> Iterator[Context]:
    """The design with other values at a place, each of which the agreement finds."""
    context = assessed().context
    assert context is not None
    step = next((one for one in done.steps if one.where == where), None)
    if step is None:
        return
    if isinstance(step.value, bool):
        others = [replace(context, worded={where: not step.value})]
    elif isinstance(step.value, str):
        others = [replace(context, worded={where: _OTHER[step.value]})] if step.value in _OTHER else []
    elif step.kind == "counted":
        others = [replace(context, moved={where: shift}) for shift in (1.0, -1.0)]
    else:
        others = [replace(context, moved={where: share * (step.stated or 1.0)}) for share in _BEYOND]
    component = _component(done.component)
    for other in others:
        after = check(done.rule, component, other)
        if not after.could_not_run and any(
            where in {one.where for one in bad.places} for bad in after.failing
        ):
            yield other


def _agreed(trial: Trial) -> float | None:
    """What a check uses of its limit with the value as stated, or as other places give it, whichever is least.

    Of a value between two bounds both are tried: as far as either it is not contradicted.
    """
    used, context = trial.taker.utilisation, assessed().context
    assert context is not None
    step = next((one for one in trial.done.steps if one.where == trial.where), None)
    if step is None or step.stated is None or used is None:
        return used
    for aim in {one for one in trial.aims if isinstance(one, float)}:
        at_aim = replace(context, moved={trial.where: aim - step.stated})
        after = check(trial.taker.rule, _component(trial.taker.component), at_aim).utilisation
        used = used if after is None else min(used, after)
    return used


def is_kinder(trial: Trial) -> bool:
    """Whether a check uses less of its limit once the value at a place is contradicted than where all places agree."""
    before, taker = _agreed(trial), trial.taker
    for other in _contradicted(trial.done, trial.where):
        after = check(taker.rule, _component(taker.component), other)
        if after.could_not_run or after.outcome not in ("conforms", "finding"):
            continue
        if taker.outcome == "finding" and after.outcome == "conforms":
            return True
        if before is not None and after.utilisation is not None and after.utilisation < before - _EPSILON:
            return True
    return False


def is_open(trial: Kinder) -> bool:
    """Whether a trial is listed as kinder, with the reason."""
    return (trial.key, trial.rule) in OPEN


def main() -> int:
    reader = argparse.ArgumentParser(description=__doc__)
    add_part(reader)
    part = reader.parse_args().part
    found = {trial: is_kinder(made) for trial, made in share_of(sorted(tried().items()), part)}
    wrong = [trial for trial, kinder in found.items() if kinder and not is_open(trial)]
    for trial in wrong:
        print(f"{trial.rule} is kinder by {trial.key}, whatever {trial.agreement} finds")
    kept = {(trial.key, trial.rule) for trial, kinder in found.items() if kinder}
    elsewhere = {(trial.key, trial.rule) for trial in tried()} - {(trial.key, trial.rule) for trial in found}
    stale = [row for row in OPEN if row not in kept | elsewhere]
    for key, rule in stale:
        print(f"{rule} is listed as kinder by {key}, and is not")
    print(f"{len(found)} trials")
    return int(bool(wrong or stale))


if __name__ == "__main__":
    raise SystemExit(main())
