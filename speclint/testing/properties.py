"""What must hold of every rule, whatever it is about: tried on a check by changing its design in memory."""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import partial
from typing import Any

from speclint.checking import Check
from speclint.errors import DesignError
from speclint.repository import Change
from speclint.testing.declared_properties import Declared, Direction, Property
from speclint.testing.directions import changed_in
from speclint.testing.other_units import in_other_units
from speclint.testing.outcomes_compared import SAME, culprit, same_numbers, shown, worse
from speclint.testing.scaling import twice_the_size
from speclint.testing.stated_quantities import quantities_of
from speclint.testing.stating import stated_too
from speclint.testing.tightening import tighter
from speclint.testing.trial import Trial

#: The seed of the one order that is drawn at random, beside the order turned round.
_SEED = 2611


def expect_same_in_other_units(trial: Trial) -> None:
    """A check comes out alike where every quantity of the parts that it consulted is written in another unit.

    Millimetres become inches, bar psi, degrees Celsius degrees Fahrenheit, and the other way round, each exactly the
    same quantity: outcome, grade, what is used of the limit and what a concession rests on are the same.

    :raises AssertionError: naming the value with which it comes out otherwise.
    """
    _raise_for(_units(trial))


def expect_order_changes_nothing(trial: Trial) -> None:
    """A check comes out alike in whatever order the files of a design are read and the keys of their tables stand.

    The order is turned round, and drawn at random: outcome, grade and what is used of the limit are the same. Lists
    stay as they are. Of several items that are equally near to their limit, which one is named may follow the order.

    :raises AssertionError: naming the order in which it comes out otherwise.
    """
    _raise_for(_order(trial))


def expect_tighter_is_no_worse(trial: Trial) -> None:
    """A check comes out no worse where all tolerances that it opened are made tighter.

    The size as it is written stays, and the new limits lie within the old: half the width about the same middle, or a
    finer grade of the same class. What conforms goes on to conform, and no more of the limit is used.

    :raises AssertionError: naming the tolerance with which it comes out worse.
    """
    _raise_for(_tightening(trial))


def expect_stating_hides_nothing(trial: Trial) -> None:
    """A finding stays one, or is cleared, where a value is stated that the check asked for and did not find.

    Each such value is stated in turn, with every word of its list or with what the same key says elsewhere in the
    design: the rule never becomes not applicable by it.

    :raises AssertionError: naming the values with which it does.
    """
    _raise_for(_stating(trial))


def expect_never_better_with(trial: Trial, direction: Direction) -> bool:
    """A check comes out no better where something rises: pressures, temperatures, the rate of wear, eccentricities.

    Returns whether it came out worse, so that a test can ask that a declaration says something.

    :raises AssertionError: where it comes out better.
    """
    after = _after_rise(trial, direction)
    hidden = trial.done.outcome == "finding" and after is not None and after.outcome == "not applicable"
    if after is not None and (hidden or worse(after, trial.done)):
        raise AssertionError(
            f"{trial.name}: with more {direction} it is better: {shown(after)}; was {shown(trial.done)}"
        )
    return after is not None and worse(trial.done, after)


def expect_power_of_size(trial: Trial, power: int) -> bool:
    """What is used of the limit goes with a power of the size of the parts, in a design similar in every way.

    Lengths are doubled with their tolerances; pressures, densities and speeds stay, and all other quantities follow by
    their dimensions. Returns whether there were numbers to compare: a part may be refused at twice its size.

    :raises AssertionError: where it goes otherwise.
    """
    changes = twice_the_size(trial)
    after = trial.with_changes(changes) if changes else None
    used, then = trial.done.utilisation, after.utilisation if after is not None else None
    if used is None or then is None or math.isinf(used):
        return False
    if not math.isclose(then, used * 2.0**power, rel_tol=SAME):
        raise AssertionError(
            f"{trial.name}: at twice the size {then:.10g} of the limit is used, not 2^{power} times {used:.10g}"
        )
    return used != 0


def expect_properties(*trials: Trial, declared: Declared | None = None) -> None:
    """Everything that must hold of a rule, tried on some checks of it, such as its example as it holds and once broken.

    What is declared stands in ``data/properties.toml`` of the family of the rule, unless it is given. A property of
    which the rule is exempt must fail on one of them at least, and what is declared of pressure,
    temperature, wear, eccentricity or size must show on one: else the declaration says nothing, and goes.

    :raises AssertionError: naming everything that is amiss.
    """
    if declared is None:
        declared = trials[0].bench.declared.get(trials[0].rule.name, Declared())
    faults = [fault for of in _TRIED for fault in _of_property(of, trials, declared)]
    for direction in declared.never_better_with:
        show = partial(expect_never_better_with, direction=direction)
        faults += _of_declaration(trials, f"never_better_with.{direction}", show)
    if declared.power is not None:
        faults += _of_declaration(trials, "with_size", partial(expect_power_of_size, power=declared.power))
    if faults:
        raise AssertionError("\n".join(faults))


def _of_property(of: Property, trials: Sequence[Trial], declared: Declared) -> Iterator[str]:
    faults = [fault for trial in trials for fault in _TRIED[of](trial)]
    if of not in declared.exempt:
        yield from faults
    elif not faults:
        yield f"{trials[0].rule.name} is exempt of {of}, and keeps it: leave the exemption out"


def _of_declaration(trials: Sequence[Trial], called: str, show: Callable[[Trial], bool]) -> Iterator[str]:
    shows = False
    for trial in trials:
        try:
            shows |= show(trial)
        except AssertionError as fault:
            yield str(fault)
            shows = True
    if not shows:
        yield f"{trials[0].rule.name} declares {called}, and nothing shows it: leave it out"


def _raise_for(faults: Iterator[str]) -> None:
    found = list(faults)
    if found:
        raise AssertionError("\n".join(found))


def _units(trial: Trial) -> Iterator[str]:
    changes = _readable(trial, list(in_other_units(trial)))
    after = trial.with_changes(changes)

    def differs(found: Check) -> bool:
        return found.fingerprint != trial.done.fingerprint or not same_numbers(trial.done, found)

    if after is None:
        yield f"{trial.name}: it cannot be read in other units"
    elif differs(after):
        by = culprit(trial, changes, differs)
        yield f"{trial.name}: in other units, {by}, {shown(after)}; was {shown(trial.done)}"


def _readable(trial: Trial, changes: list[Change]) -> list[Change]:
    """The changes but those of parts that cannot be read anew even as they are: a change of another part broke them."""
    if trial.with_changes(changes) is not None:
        return changes
    as_they_are: dict[str, list[Change]] = {}
    for one in quantities_of(trial):
        as_they_are.setdefault(one.spec, []).append(one.written(one.text))
    broken = {part for part, same in as_they_are.items() if trial.with_changes(same) is None}
    return [one for one in changes if one.component not in broken]


def _order(trial: Trial) -> Iterator[str]:
    for called, reorder in _orders().items():
        try:
            after = trial.of(trial.design.reordered(reorder, trial.done.consulted.ids))
        except DesignError as problem:
            yield f"{trial.name}: {called}, it cannot be read: {problem}"
            continue
        if not same_numbers(trial.done, after):
            yield f"{trial.name}: {called}, {shown(after)}; was {shown(trial.done)}"


def _orders() -> Mapping[str, Callable[[list[Any]], list[Any]]]:
    drawn = random.Random(_SEED)
    return {
        "with files and keys the other way round": lambda some: some[::-1],
        f"with files and keys shuffled by the seed {_SEED}": lambda some: drawn.sample(some, len(some)),
    }


def _tightening(trial: Trial) -> Iterator[str]:
    changes = _readable(trial, list(tighter(trial)))

    def is_worse(found: Check) -> bool:
        lost = trial.done.outcome == "conforms" and found.outcome != "conforms"
        return lost or worse(trial.done, found)

    after = trial.with_changes(changes) if changes else None
    if after is not None and is_worse(after):
        by = culprit(trial, changes, is_worse)
        yield f"{trial.name}: with a tighter tolerance, {by}, {shown(after)}; was {shown(trial.done)}"


def _stating(trial: Trial) -> Iterator[str]:
    if trial.done.outcome != "finding":
        return
    for taken, change in stated_too(trial):
        after = trial.with_changes([change])
        if after is not None and after.outcome == "not applicable":
            yield (
                f"{trial.name}: with {taken.spec}.{taken.key} = {change.value!r} it is not applicable: {after.says}"
            )


def _after_rise(trial: Trial, direction: Direction) -> Check | None:
    """The check once something has risen; None where nothing of it is stated, or the design cannot be read with it."""
    changes = list(changed_in(trial, direction))
    return trial.with_changes(changes) if changes else None


_TRIED: Mapping[Property, Callable[[Trial], Iterator[str]]] = {
    "units": _units,
    "order": _order,
    "tightening": _tightening,
    "stating": _stating,
}
