"""What nobody looked at: hazards of the parts without a judgement, parts never judged, and what rules leave out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from typing import Literal, TypeVar

from msgspec import Struct

from speclint.checking.assessment import Assessment
from speclint.checking.check_result import Check
from speclint.repository import Design
from speclint.rules import Rule
from speclint.specs import HAZARDS, Component, Hazard, Hazards

K = TypeVar("K")
V = TypeVar("V")

#: How a hazard of a part stands: the first of these that is true of it.
State = Literal["judged", "not assessed", "not applicable", "no rule"]
STATES: tuple[State, ...] = ("judged", "not assessed", "not applicable", "no rule")


class HazardSeen(Struct, frozen=True):
    """A hazard of a part, and how it stands.

    It is judged where a check against it conforms or has a finding; not assessed where a rule guards against it, and no
    check of one could be made, or none within what its rule covers; not applicable where no such rule applies to the
    part as it is stated. ``checks`` are all that guard against it: of the part, and of others that look at it.
    ``beside`` are rules on other kinds that guard against it, of which no check looked at the part. Rules on kinds of
    which the repository has no part are not among them: a hazard that only such a rule guards against has none.
    """

    component: str
    kind: str
    hazard: Hazard
    state: State
    checks: tuple[Check, ...] = ()
    beside: tuple[Rule, ...] = ()

    @property
    def waiting(self) -> tuple[Check, ...]:
        """The checks against it that could not be made, beside those that judge it or alone."""
        return tuple(one for one in self.checks if _waits(one))

    @property
    def judging(self) -> tuple[Check, ...]:
        """The checks that judge it: those that conform or have a finding."""
        return tuple(one for one in self.checks if not _waits(one) and one.outcome != "not applicable")

    @property
    def reasons(self) -> tuple[str, ...]:
        """Why a rule does not judge it, each with its rule; of a rule on another kind, that it did not reach it."""
        said = [
            f"{one.rule.name}: {'; '.join(one.missing) or one.says}"
            for one in self.checks
            if _waits(one) or one.outcome == "not applicable"
        ]
        said += [f"{one.name}: no check of {_kinds_of(one)} looked at it" for one in self.beside]
        return tuple(dict.fromkeys(said))


def _waits(check: Check) -> bool:
    """Whether a check could not be made: something is missing, or its rule does not cover the part, which is a finding
    without a judgement."""
    return check.outcome == "not assessed" or (check.outcome == "finding" and check.judgement is None)


class LeftOut(Struct, frozen=True):
    """What rules say alike, such as what they do not cover: these rules, and the parts that they were applied to."""

    says: str
    rules: tuple[str, ...]
    parts: tuple[str, ...]


class Unseen(Struct, frozen=True):
    """What nobody looked at, of some parts.

    ``hazards`` are those of every part whose kind says what it can suffer, in the order of parts and of the list.
    ``unsaid`` are parts of metal whose kind does not say so, ``silent`` the rules that do not say what they guard
    against. ``idle`` are the reasons for which checks do not apply, told like what rules leave out. ``unread`` counts
    the lines that could not be read: what stands there is not among the parts.
    """

    hazards: tuple[HazardSeen, ...]
    unsaid: tuple[str, ...]
    silent: tuple[str, ...]
    left_out: tuple[LeftOut, ...]
    idle: tuple[LeftOut, ...]
    unread: int = 0

    @property
    def parts(self) -> tuple[str, ...]:
        """The parts that can suffer a hazard, in their order."""
        return tuple(dict.fromkeys(one.component for one in self.hazards))

    @property
    def never_judged(self) -> tuple[str, ...]:
        """The parts of which no hazard was judged: what was checked of them is on record only."""
        judged = {one.component for one in self.hazards if one.state == "judged"}
        return tuple(name for name in self.parts if name not in judged)

    def counted(self) -> dict[State, int]:
        """How many hazards stand each way."""
        return _counted(self.hazards)

    def by_hazard(self) -> dict[Hazard, dict[State, int]]:
        """The same for each hazard that a part can suffer."""
        found = dict(_grouped((one.hazard, one) for one in self.hazards))
        return {hazard: _counted(found[hazard]) for hazard in HAZARDS if hazard in found}

    def by_kind(self) -> dict[str, tuple[HazardSeen, ...]]:
        """The hazards of the parts of each kind, in the order of the kinds."""
        return dict(sorted(_grouped((one.kind, one) for one in self.hazards)))

    def standing(self, state: State) -> tuple[HazardSeen, ...]:
        """The hazards that stand one way."""
        return tuple(one for one in self.hazards if one.state == state)


def counts_hazards(assessment: Assessment) -> bool:
    """Whether the hazards of a design can be counted: every spec was checked by every rule, and no check left out."""
    design, context = assessment.design, assessment.context
    return (
        design is not None
        and context is not None
        and context.outcomes is not None
        and not assessment.accepted
        and design.selected >= design.index.entries.keys()
    )


def unseen(assessment: Assessment, component: str = "") -> Unseen:
    """What nobody looked at, of all that was checked or of one component, by what rules and kinds say of themselves."""
    design = assessment.design
    if design is None:
        return Unseen((), (), (), (), (), len(assessment.complaints))
    names = design.part_names()
    of = [name for name in names if component in ("", name)]
    kinds = dict(_kinds(design, assessment))
    rules = _rules_on(assessment, kinds)
    guarding = _guarding(design, assessment.checks, kinds)
    seen = _Seen(guarding, _beside(rules, set(kinds.values())), _waiting_rules(design, assessment, rules))
    hazards = [seen.hazard(name, kinds[name], hazard) for name in of for hazard in kinds[name].hazards or ()]
    checks = [one for one in assessment.checks if component in ("", one.component)]
    return Unseen(
        tuple(hazards),
        tuple(name for name in of if kinds[name].of_metal and kinds[name].hazards is None),
        tuple(sorted({one.rule.name for one in checks if one.rule.against is None})),
        tuple(_left_out(checks)),
        tuple(_idle(checks)),
        len(assessment.complaints),
    )


def _rules_on(assessment: Assessment, kinds: Mapping[str, type[Component]]) -> tuple[Rule, ...]:
    """The rules on kinds of which the repository has a part: the others are not loaded for a check either."""
    present = set(kinds.values())
    rules = assessment.loaded.rules_for({kind.kind for kind in present})
    return tuple(one for one in rules if any(issubclass(kind, one.on) for kind in present))


def _kinds(design: Design, assessment: Assessment) -> Iterator[tuple[str, type[Component]]]:
    """The kind of every component of the repository, also of those that are not checked; none is read for it."""
    for name, entry in design.index.entries.items():
        kind = assessment.loaded.kinds.get(entry.kind)
        if kind is not None and issubclass(kind, Component):
            yield name, kind


def _guarding(
    design: Design, checks: Iterable[Check], kinds: Mapping[str, type[Component]]
) -> dict[tuple[str, Hazard], list[Check]]:
    """The checks that guard against each hazard of each part: its own, and those of others that look at it."""
    found: dict[tuple[str, Hazard], list[Check]] = {}
    own: dict[tuple[str, type[Component]], Hazards] = {}  # the same for every part of a kind
    for one in checks:
        at = one.rule.name, kinds[one.component]
        if at not in own:
            own[at] = one.rule.guards(kinds[one.component])
        for hazard in own[at]:
            found.setdefault((one.component, hazard), []).append(one)
        for name in _looked_at(one, design) if one.rule.against_on else ():
            kind = kinds.get(name)
            if kind is not None and name != one.component and not issubclass(kind, one.rule.on):
                for hazard in one.rule.guards_beside(kind):
                    found.setdefault((name, hazard), []).append(one)
    return found


class _Seen(Struct, frozen=True):
    """What guards against hazards in one run: checks by part, rules on other kinds by kind.

    ``waiting`` names the rules of which a check is wanting.
    """

    guarding: Mapping[tuple[str, Hazard], list[Check]]
    beside: Mapping[tuple[type[Component], Hazard], list[Rule]]
    waiting: frozenset[str]

    def hazard(self, name: str, kind: type[Component], hazard: Hazard) -> HazardSeen:
        """How one hazard of a part stands."""
        checks = tuple(self.guarding.get((name, hazard), ()))
        looked = {one.rule.name for one in checks}
        beside = tuple(one for one in self.beside.get((kind, hazard), ()) if one.name not in looked)
        return HazardSeen(name, kind.kind, hazard, self._state(checks, beside), checks, beside)

    def _state(self, checks: tuple[Check, ...], beside: tuple[Rule, ...]) -> State:
        if any(not _waits(one) and one.outcome != "not applicable" for one in checks):
            return "judged"
        if any(_waits(one) for one in checks) or any(one.name in self.waiting for one in beside):
            return "not assessed"
        return "not applicable" if checks or beside else "no rule"


def _beside(
    rules: Iterable[Rule], kinds: Iterable[type[Component]]
) -> dict[tuple[type[Component], Hazard], list[Rule]]:
    """The rules on other kinds that guard against each hazard of each kind."""
    found: dict[tuple[type[Component], Hazard], list[Rule]] = {}
    reaching = [one for one in rules if one.against_on]
    for kind in kinds:
        for one in reaching:
            for hazard in () if issubclass(kind, one.on) else one.guards_beside(kind):
                found.setdefault((kind, hazard), []).append(one)
    return found


def _waiting_rules(design: Design, assessment: Assessment, rules: Iterable[Rule]) -> frozenset[str]:
    """The rules of which a check could not be made, or was not asked for: parts of its kinds were not checked."""
    left = [entry for name, entry in design.index.entries.items() if name not in design.selected]
    not_made = {one.rule.name for one in assessment.checks if one.outcome == "not assessed"}
    asked = {
        rule.name for rule in rules if any(entry.is_one_of({kind.kind for kind in rule.on}) for entry in left)
    }
    return frozenset(not_made | asked)


def _looked_at(check: Check, design: Design) -> Iterable[str]:
    """The parts that a check looks at beside its own: all that it consulted, or that to which one link leads."""
    if not check.rule.reached_by:
        return check.consulted.ids
    links = design.index.entries[check.component].links()
    return [link.id for link in links if link.where.key == check.rule.reached_by]


def _kinds_of(rule: Rule) -> str:
    return " or ".join(f"a {kind.called or kind.kind}" for kind in rule.on)


def _left_out(checks: Iterable[Check]) -> Iterator[LeftOut]:
    """What the rules that apply leave out, each clause of their words once, that of most parts first."""
    applied = [one for one in checks if one.outcome != "not applicable"]
    return _said((clause, one) for one in applied for clause in _clauses(one.rule.leaves_out))


def _clauses(said: str) -> list[str]:
    """The clauses of what a rule leaves out: many rules end with the same.

    >>> _clauses("Wear; the local code decides.")
    ['wear', 'the local code decides']
    """
    parts = (part.strip().rstrip(".") for part in said.split("; "))
    return [part[0].lower() + part[1:] if part[1:2].islower() else part for part in parts if part]


def _idle(checks: Iterable[Check]) -> Iterator[LeftOut]:
    """Why checks do not apply, each reason once, that of most parts first."""
    return _said((one.says, one) for one in checks if one.outcome == "not applicable")


def _said(told: Iterable[tuple[str, Check]]) -> Iterator[LeftOut]:
    found = _grouped(told)
    rows = [
        LeftOut(
            says, tuple(sorted({one.rule.name for one in of})), tuple(sorted({one.component for one in of}))
        )
        for says, of in found
    ]
    yield from sorted(rows, key=lambda one: (-len(one.parts), one.says))


def _counted(hazards: Iterable[HazardSeen]) -> dict[State, int]:
    found = Counter(one.state for one in hazards)
    return {state: found[state] for state in STATES}


def _grouped(pairs: Iterable[tuple[K, V]]) -> Iterable[tuple[K, tuple[V, ...]]]:
    """Values by their key, the keys as they first come."""
    found: dict[K, list[V]] = {}
    for key, value in pairs:
        found.setdefault(key, []).append(value)
    return [(key, tuple(values)) for key, values in found.items()]
