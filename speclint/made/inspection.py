"""The inspection list of a part: what the rules rest on, ranked by how much of a limit each tolerance carries.

A dimension is ranked by the check whose use of its limit changes most between the low and the high limit of the
dimension, all else at the governing corner (:func:`speclint.checking.swings`): of the part, and of any mate whose
checks take the dimension.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import cast

from msgspec import Struct

from speclint.checking import Assessment, Check, Swing, swings
from speclint.errors import DesignError, Location
from speclint.handbook.inspection import Decision, accepted_between, greatest_uncertainty, guard_band
from speclint.made.inspection_points import (
    AskedOnPaper,
    InspectionPoint,
    asked_on_paper,
    inspection_points,
)
from speclint.quantities import Measure
from speclint.repository import Design, component_called
from speclint.specs import Component, MadePart, QuantityAt, quantities_of

#: Of these the part is designed for, or it meets them in service: nobody measures them on the part.
_CONDITIONS = frozenset(
    {
        "fluid pressure",
        "temperature",
        "temperature difference",
        "speed",
        "rotational speed",
        "mass flow",
        "time",
    }
)


class Inspected(Struct, frozen=True):
    """A quantity of the part with its limits, and the checks that rest on it, those that it carries most of first.

    The zone of a geometrical tolerance, or a roughness, has its width as the high limit, and nothing as the low.

    ``uncertainty`` is the greatest expanded one that a gauge may have, and ``accepted`` between which readings such a
    gauge proves conformity, both in SI units; None where the drawing states no limits.
    """

    at: QuantityAt
    drawn: Measure
    rests: tuple[Swing, ...]
    uncertainty: float | None = None
    accepted: tuple[float, float] | None = None

    @property
    def carried(self) -> float:
        """How much of a limit its tolerance carries at the most."""
        return self.rests[0].carried if self.rests else 0.0


class InspectionList(Struct, frozen=True):
    """What is inspected on a part.

    ``ranked`` are its dimensions with limits that rules rest on. ``without_limits`` are those for which the drawing
    states none, ``conditions`` what is not measured on the part, ``figures`` what tables give for its metal.
    ``unstated`` are the keys of values that rules ask for and nobody stated, each with the rules. ``no_rule`` are the
    quantities that it states and no rule rests on. ``share`` is how much of a tolerance a gauge may
    take, ``decision`` the decision rule.
    """

    part: Component
    ranked: tuple[Inspected, ...]
    without_limits: tuple[Inspected, ...]
    conditions: tuple[Inspected, ...]
    figures: tuple[Swing, ...]
    points: tuple[InspectionPoint, ...]
    asked: tuple[AskedOnPaper, ...]
    unstated: tuple[tuple[str, tuple[str, ...]], ...]
    no_rule: tuple[Inspected, ...]
    share: float
    decision: Decision


def inspection_list(
    drawn: Assessment, name: str, told: Callable[[str], None] | None = None
) -> InspectionList:
    """The inspection list of one component, from an assessment of the whole design.

    ``told`` hears the name of each component whose checks are varied.

    :raises DesignError: where there is no component of that id.
    """
    if drawn.design is None:
        raise DesignError("; ".join(map(str, drawn.complaints)))
    part = _component(name, drawn.design)
    settings = drawn.design.settings
    share, decision = settings.gauge_share, cast(Decision, settings.decision)
    found = tuple(_swings(drawn, part, told))
    resting = _by_place(found)
    rows = [
        _inspected(at, limits, resting.get(limits.where, ()), share, decision)
        for at in quantities_of(part).values()
        if (limits := at.limits) is not None
    ]
    on_part = [one for one in rows if one.rests and not is_condition(one.at)]
    ranked = (one for one in on_part if not one.drawn.exact)
    return InspectionList(
        part,
        tuple(sorted(ranked, key=lambda one: (-one.carried, one.at.key))),
        tuple(one for one in on_part if one.drawn.exact),
        tuple(one for one in rows if one.rests and is_condition(one.at)),
        _figures(found),
        inspection_points(part),
        asked_on_paper(part),
        _unstated(drawn, part),
        tuple(one for one in rows if not one.rests),
        share,
        decision,
    )


def checked_for(name: str, design: Design) -> frozenset[str]:
    """The components whose checks may rest on one: all that are drawn.

    :raises DesignError: where there is no component of that id, before anything is checked.
    """
    _component(name, design)
    entries = design.index.entries
    return frozenset(one for one in design.part_names() if entries[one].kind != MadePart.kind)


def _component(name: str, design: Design) -> Component:
    part = component_called(name, design)
    if isinstance(part, MadePart):
        raise DesignError(f"{name} is a part as made; give the component that it was made to")
    return part


def _swings(drawn: Assessment, part: Component, told: Callable[[str], None] | None) -> Iterator[Swing]:
    """What each check takes of the part: of its own, and of the mates'."""
    assert drawn.context is not None
    last = ""
    for one in drawn.checks:
        if _may_rest(one, part):
            if told is not None and one.component != last:
                told(last := one.component)
            yield from swings(one, part, drawn.context)


def _may_rest(one: Check, part: Component) -> bool:
    """Whether a check may rest on a part; rules that review others, and those of records, are left out."""
    judges = one.outcome != "not applicable" and not one.rule.reviews and one.kind != MadePart.kind
    return judges and part.id in one.consulted.ids


def _unstated(drawn: Assessment, part: Component) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """The values of a part that checks wanted and nobody stated, by key."""
    assert drawn.design is not None
    wanted: dict[str, dict[str, None]] = {}
    for one in drawn.checks:
        if _may_rest(one, part):
            for where in one.unstated:
                if where.key and drawn.design.owner(where) == part.id:
                    wanted.setdefault(where.key, {})[one.rule.name] = None
    return tuple((key, tuple(rules)) for key, rules in sorted(wanted.items()))


def _by_place(found: Iterable[Swing]) -> Mapping[Location, tuple[Swing, ...]]:
    """The checks that rest on each value, those that it carries most of first."""
    places: dict[Location, list[Swing]] = {}
    for one in found:
        places.setdefault(one.where, []).append(one)
    return {where: tuple(sorted(some, key=_order)) for where, some in places.items()}


def _figures(found: Iterable[Swing]) -> tuple[Swing, ...]:
    """Each figure of the metal once, with the check that it carries most of."""
    first: dict[str, Swing] = {}
    for one in sorted((one for one in found if one.figure), key=_order):
        first.setdefault(one.figure, one)
    return tuple(first.values())


def _order(one: Swing) -> tuple[float, tuple[str, str]]:
    return -one.carried, one.check.order


def is_condition(at: QuantityAt) -> bool:
    """Whether nobody measures a quantity on the part, such as a pressure that it meets, or a mill's tolerance."""
    return at.dimension in _CONDITIONS or bool(at.until_measured)


def _inspected(
    at: QuantityAt, drawn: Measure, rests: tuple[Swing, ...], share: float, decision: Decision
) -> Inspected:
    if drawn.exact or is_condition(at):
        return Inspected(at, drawn, rests)
    uncertainty = greatest_uncertainty(drawn.high - drawn.low, share)
    accepted: tuple[float, float] | None
    if at.only_greatest:
        accepted = (0.0, drawn.high - guard_band(uncertainty, decision))
    else:
        accepted = accepted_between(drawn.low, drawn.high, uncertainty, decision)
    return Inspected(at, drawn, rests, uncertainty, accepted)
