"""How much of its limit each check uses, and by which values: the least to spare first.

A value carries so much of a limit as the use of it differs between the low and the high limit of the value, all else at
the governing corner of the governing load case (:mod:`speclint.checking.swings`).
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence

from msgspec import Struct

from speclint.checking.assessment import Assessment
from speclint.checking.check_result import Check
from speclint.checking.one_corner import written_at
from speclint.checking.swings import AtCorner, Swing
from speclint.checking.time_limit import Overrun
from speclint.errors import NOWHERE, DesignError, FamilyError, Location, replace
from speclint.quantities import Measure
from speclint.repository import no_component_called
from speclint.rules import Context
from speclint.specs import Component

#: By which a temperature is made greater to tell what that does: common practice.
_HOTTER = 10.0
_FIGURES = 9  # of what is used: checks of one rule that differ by less are alike


class Sensitivity(Struct, frozen=True):
    """What one value does to one check in its governing load case.

    ``name`` says what it is, ``owner`` the spec that states it, "" for a figure of a table, and ``written`` how it is
    stated there. ``low`` and ``high`` are what is used of the limit at its limits, ``carried`` the difference.
    ``hotter`` is what is used more with a temperature 10 K higher; None for what is no temperature, and where that was
    not worked. ``why_not`` says why nothing is carried.
    """

    name: str
    owner: str
    where: Location
    written: str
    low: float | None
    high: float | None
    carried: float
    hotter: float | None = None
    temperature: bool = False
    why_not: str = ""


class Margin(Struct, frozen=True):
    """A check with what it uses of its limit; ``alike`` are other parts on which the rule uses the same.

    ``values`` are what it rests on, those that carry most first; None where they were not varied.
    """

    check: Check
    used: float
    alike: tuple[str, ...] = ()
    values: tuple[Sensitivity, ...] | None = None


class Margins(Struct, frozen=True):
    """The checks that compare numbers, the least to spare first, and how many others there are.

    ``varied`` counts those whose values were varied.
    """

    component: str
    listed: tuple[Margin, ...]
    without_numbers: int
    varied: int

    @property
    def hottest(self) -> tuple[Margin, Sensitivity] | None:
        """The temperature that carries most of a limit, with the check of which it does; None where none carries."""
        found = [
            (margin, value)
            for margin in self.listed
            for value in margin.values or ()
            if value.temperature and value.carried > 0
        ]
        return max(found, key=lambda pair: pair[1].carried, default=None)


def margins(
    assessment: Assessment, component: str, most: int, told: Callable[[int, int], None] = lambda *_: None
) -> Margins:
    """The margins of a component, or of all where that is "", with the values of the first ``most`` varied.

    :raises DesignError: where there is no such component.
    :raises FamilyError: where a rule that is run for it takes longer than the settings allow.
    """
    context, design = assessment.context, assessment.design
    if context is None or design is None:
        raise DesignError("nothing could be read to tell margins from")
    if component and component not in design.files:
        raise no_component_called(component, design.files)
    checks = [one for one in assessment.checks if component in ("", one.component)]
    judged = [one for one in checks if one.outcome in ("conforms", "finding")]
    listed = _listed([one for one in judged if one.utilisation is not None])
    found = []
    for number, margin in enumerate(listed):
        if number < most:
            told(number + 1, min(most, len(listed)))
            margin = replace(margin, values=_values(margin.check, context))
        found.append(margin)
    return Margins(
        component,
        tuple(found),
        len(judged) - sum(1 + len(one.alike) for one in listed),
        min(most, len(listed)),
    )


def _listed(checks: Sequence[Check]) -> list[Margin]:
    """The checks by what they use, those of one rule that use the same on several parts together."""
    groups: dict[Hashable, list[Check]] = {}
    for one in checks:
        assert one.utilisation is not None  # those alone are listed
        groups.setdefault((one.rule.name, one.case, round(one.utilisation, _FIGURES)), []).append(one)
    found = [
        Margin(group[0], group[0].utilisation or 0.0, tuple(one.component for one in group[1:]))
        for group in groups.values()
    ]
    return sorted(found, key=lambda one: (-one.used, one.check.order))


def _values(one: Check, context: Context) -> tuple[Sensitivity, ...]:
    """What the check rests on, those values that carry most first."""
    try:
        found = list(_varied(one, context))
    except Overrun as problem:
        what = f"{one.rule.name} was varied on {one.component}"
        raise FamilyError(
            f"family {one.rule.family}: a rule did not end in its time while {what}"
        ) from problem
    return tuple(sorted(found, key=lambda value: (-value.carried, -abs(value.hotter or 0.0), value.name)))


def _varied(one: Check, context: Context) -> Iterator[Sensitivity]:
    component = context.design.specs[one.component]
    if not isinstance(component, Component) or one.rule.reviews:
        return
    stated = dict(_measures(one, context))
    context.begin()
    sides = one.corners.get(one.case)
    written = None if sides is None else written_at(one.rule, component, one.case, sides, context)
    if written is None:
        return
    at = AtCorner(one, component, one.case, written, context, whole=True)
    for swing in (*at.of_values(stated), *at.of_sides(stated), *at.of_figures()):
        yield _told(swing, at, stated, context)


def _measures(one: Check, context: Context) -> Iterator[tuple[Location, Measure]]:
    """The quantities stated by the specs that a check consulted, by their places."""
    for name in sorted(one.consulted.ids):
        spec = context.design.specs.get(name)
        for measure in spec.measures() if spec else ():
            yield measure.where, measure


def _told(swing: Swing, at: AtCorner, stated: Mapping[Location, Measure], context: Context) -> Sensitivity:
    steps = at.written.record.steps
    step = next((one for one in steps if one.where == swing.where and one.where != NOWHERE), None)
    measure = stated.get(swing.where)
    temperature = step is not None and step.unit in ("K", "ΔK")
    long = any(one.long for one in steps)
    return Sensitivity(
        name=step.name if step else swing.figure,
        owner=context.design.owner(swing.where),
        where=swing.where,
        written=measure.text if measure else swing.taken.removeprefix(swing.figure).strip(),
        low=swing.low,
        high=swing.high,
        carried=swing.carried,
        hotter=at.with_more(swing.where, _HOTTER) if temperature and not long else None,
        temperature=temperature,
        why_not=swing.why_not,
    )
