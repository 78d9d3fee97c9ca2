"""What would clear a finding: the change of one stated value, solved for and then proved.

One value that the rule took from the component's own spec is restated, in the steps of the drawing office, until the
rule holds (:mod:`speclint.checking.remedy_trial`). The search runs at the governing corner only; the proof runs the
whole check again, every corner and load case, and a corner that then governs joins the search. Places that do not
agree are another matter (:mod:`speclint.checking.agreement_remedy`).
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence

from speclint.checking.agreement_remedy import agreed
from speclint.checking.check_result import Check
from speclint.checking.office_steps import threads
from speclint.checking.past_long_work import past_long_work
from speclint.checking.remedy import Remedy, Sought
from speclint.checking.remedy_for_all import TrialForAll
from speclint.checking.remedy_trial import Trial, took
from speclint.checking.spoiling import fails_too
from speclint.checking.stated_value import StatedValue
from speclint.checking.time_limit import Overrun
from speclint.errors import FamilyError, Location
from speclint.rules import Consulted, Context, Step
from speclint.specs import Component, MadePart, given_keys, no_less_keys

#: So many remedies of a finding are enough.
_MOST = 3
#: The share by which a diameter may be made less for its fit, which takes some thousandths of it: common practice.
_FIT = 0.01


def search_of(found: Check, checks: Sequence[Check], context: Context) -> Sought:
    """The remedies of a finding: those that spoil no other check first, then the smallest change; or what was in vain.

    ``checks`` are the others of the same run. None are sought where the rule is not a matter of number. No value is
    tried that changes what a long calculation gives, such as that of a cylinder's cycle: a search would repeat it
    hundreds of times. A figure that is given, such as a friction, is no remedy, nor is a pin thinner than its fit
    wants.

    :raises FamilyError: where a rule that is run for it takes longer than the settings allow.
    """
    if found.outcome != "finding" or found.judgement is None:
        return Sought()
    component = context.design.specs.get(found.component)
    if not isinstance(component, Component):
        return Sought()
    try:
        if found.judgement.places:
            return Sought(tuple(agreed(found, component, checks, context)))
        if found.utilisation is None:
            return Sought()
        if isinstance(component, MadePart):
            return Sought()  # what is on record of a part as made is as it is
        return _by_one_value(found, component, checks, context)
    except Overrun as problem:
        what = f"a remedy of {found.rule.name} was sought on {found.component}"
        raise FamilyError(
            f"family {found.rule.family}: a rule did not end in its time while {what}"
        ) from problem


def _by_one_value(found: Check, component: Component, checks: Sequence[Check], context: Context) -> Sought:
    """The remedies that change one size, count or thread of the component; where there is none, what was tried."""
    given = given_keys(component)
    free = [step for step in _own_values(found, context) if step.where.key not in given]
    failing = [one for one in checks if fails_too(one, found)]
    tried = list(past_long_work(found, free, failing, context))
    values = [StatedValue(step, found, component, checks, context) for step in tried]
    proved = _for_all_parts(values, failing)
    if proved:
        no_less = no_less_keys(component)
        return Sought(tuple(sorted((one for one in proved if not _lessens(one, no_less)), key=_order)))
    return Sought((), _names(tried), _names(step for step in free if step not in tried))


def _names(steps: Iterable[Step]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(step.name for step in steps))


def _for_all_parts(values: Sequence[StatedValue], failing: Sequence[Check]) -> list[Remedy]:
    """The remedies that clear the finding on all parts that read the same line; where there is none, on this alone."""
    trials = [
        TrialForAll(value, failing) if any(took(one, value.step.where) for one in failing) else Trial(value)
        for value in values
    ]
    if (proved := _proved(trials)) or not failing:
        return proved
    return _proved([Trial(value, short_of=failing) for value in values])


def reworks(
    found: Check,
    part: Component,
    ways: Mapping[str, int],
    checks: Sequence[Check],
    context: Context,
    *,
    spoiling: bool = False,
) -> list[Remedy]:
    """The remedies of a finding by taking metal off sizes of a part as made; the finding may be one of another part.

    ``ways`` gives for each key that can be machined the sign in which its size then goes. One that spoils another
    check is given only where ``spoiling`` asks for it.

    :raises FamilyError: where a rule that is run for it takes longer than the settings allow.
    """
    component = context.design.specs.get(found.component)
    if found.outcome != "finding" or found.utilisation is None or not isinstance(component, Component):
        return []
    own = {step.where: step for step in found.steps if context.design.owner(step.where) == part.id}
    try:
        trials = [
            Trial(StatedValue(step, found, component, checks, context), ways=(ways[where.key],), holder=part)
            for where, step in own.items()
            if where.key in ways and _is_number(step)
        ]
        return sorted((one for one in _proved(trials) if spoiling or not one.spoils), key=_order)
    except Overrun as problem:
        raise FamilyError(f"family {found.rule.family}: a rule did not end in its time") from problem


def solved(found: Check, checks: Sequence[Check], context: Context) -> tuple[Sought, Consulted]:
    """What the search for remedies of a finding came to, and what was consulted to find them."""
    with context.asking() as consulted:
        return search_of(found, checks, context), consulted


def _proved(trials: Sequence[Trial | TrialForAll]) -> list[Remedy]:
    """The best remedies: whatever looks best is proved first, and looked at again where its proof fails."""
    hoped = [(trial, one) for trial in trials if (one := trial.hoped()) is not None]
    found: list[Remedy] = []
    while hoped and len(found) < _MOST:
        best = min(hoped, key=lambda pair: _order(pair[1]))
        hoped.remove(best)
        trial, remedy = best
        if proved := trial.proved(remedy):
            found.append(proved)
        elif again := trial.hoped():
            hoped.append((trial, again))
    return found


def _lessens(remedy: Remedy, no_less: Collection[str]) -> bool:
    """Whether what is to be no less would be less by more than a fit takes."""
    if remedy.where.key not in no_less or isinstance(remedy.now, str) or isinstance(remedy.then, str):
        return False
    return remedy.then < remedy.now * (1 - _FIT)


def _order(remedy: Remedy) -> tuple[int, float, str]:
    return len(remedy.spoils), remedy.change, remedy.name


def _own_values(found: Check, context: Context) -> Iterator[Step]:
    """The dimensions, counts and threads of the component that the governing run took, each once.

    A mirrored one is left out: its drawing states another number, and has its own remedy there.
    """
    design = context.design
    seen: set[Location] = set()
    for step in found.steps:
        own = design.owner(step.where) == found.component and step.where.key and step.unit not in ("K", "ΔK")
        own = own and not design.is_turned(step.where)
        if own and step.where not in seen and (_is_number(step) or _is_thread(step)):
            seen.add(step.where)
            yield step


def _is_number(step: Step) -> bool:
    return step.kind in ("taken", "counted") and bool(step.stated)


def _is_thread(step: Step) -> bool:
    return step.kind == "read" and isinstance(step.value, str) and any(threads(step.value))
