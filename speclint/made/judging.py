"""Judging parts as made: the design as made, the rules that rest on each part, and the rework that clears a failure."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property
from typing import cast

from speclint.checking import Assessment, Check, Inputs, context_of
from speclint.errors import replace
from speclint.handbook.inspection import Decision
from speclint.made.alike import in_place
from speclint.made.certified import certified, material_as_certified
from speclint.made.design_as_made import as_made, fitted_parts, made_parts, made_to
from speclint.made.dimensions import dimensions_of
from speclint.made.in_steam import as_in_steam, duties_in_steam, in_steam
from speclint.made.judgement import Judged, Pair, PartMade
from speclint.made.rework import reworks_of
from speclint.made.trial import Trial
from speclint.repository import Register, with_specs
from speclint.rules import Context
from speclint.specs import Component, Duty, MadePart


def judge(
    drawn: Assessment, names: Iterable[str] | None = None, told: Callable[[str], None] | None = None
) -> Judged:
    """Judge parts as made, all or those of some ids, beside an assessment of the whole design as drawn.

    ``told`` hears the id of each part before it is judged.

    :raises ValueError: for an assessment of a design that could not be read.
    """
    if drawn.design is None:
        raise ValueError("nothing could be read to judge parts as made")
    wanted = None if names is None else set(names)
    bench = Bench.of(drawn)
    parts = []
    for made in made_parts(drawn.design):
        if wanted is None or made.id in wanted:
            if told is not None:
                told(made.id)
            parts.append(bench.judged(made))
    settings = drawn.design.settings
    return Judged(tuple(parts), settings.decision, settings.certificate_strengths)


@dataclass(frozen=True)
class Bench:
    """What parts as made are judged with: the design as drawn with its checks, and the parts fitted in it."""

    drawn: Assessment
    fitted: Mapping[str, MadePart]
    decision: Decision
    _trials: dict[object, Trial] = field(default_factory=dict, compare=False, repr=False)

    @staticmethod
    def of(drawn: Assessment) -> Bench:
        """The bench for an assessment of a whole design."""
        assert drawn.design is not None
        decision = cast(Decision, drawn.design.settings.decision)
        return Bench(drawn, fitted_parts(drawn.design), decision)

    def judged(self, made: MadePart) -> PartMade:
        """One part as made."""
        design = self.drawn.design
        assert design is not None
        drawn = made_to(made, design)
        if drawn is None:
            return PartMade(made, None)
        dimensions = dimensions_of(made, drawn, self.decision)
        chosen = self._chosen(made)
        specs = self.standing(chosen)
        before = [one for one in self.drawn.checks if _rests_on(one, drawn)]
        trial = self._trial_of(chosen, specs)
        pairs = self._attributed([Pair(one, trial.again(one)) for one in before], specs, drawn)
        beside = sorted(one.id for name, one in self.fitted.items() if name in specs and name != drawn.id)
        beside = [name for name in beside if self._is_mate(name, pairs)]
        steam = in_steam(made, design, self.decision)
        part = PartMade(made, drawn, dimensions, tuple(beside), pairs, in_steam=steam)
        return replace(part, reworks=reworks_of(part, specs, self, trial)) if part.failing else part

    def _attributed(
        self, pairs: Sequence[Pair], specs: Mapping[str, Component], drawn: Component
    ) -> tuple[Pair, ...]:
        """The pairs, those that fail made once more with the part as drawn and as assumed beside its mates as made."""
        mates = {name: spec for name, spec in specs.items() if name != drawn.id}
        if not (mates or self.duties(drawn.id)) or not any(pair.fails for pair in pairs):
            return tuple(pairs)
        trial = self.trial(mates, without=drawn.id, keep=True)
        return tuple(replace(pair, beside=trial.again(pair.drawn)) if pair.fails else pair for pair in pairs)

    def _is_mate(self, name: str, pairs: Iterable[Pair]) -> bool:
        """Whether a check of a part took anything from the spec that another part as made was made to."""
        design = self.drawn.design
        assert design is not None
        spec = next(key for key, one in self.fitted.items() if one.id == name)
        return any(spec in pair.made.consulted.ids for pair in pairs)

    def specs_as_made(self, made: MadePart) -> dict[str, Component]:
        """The specs that stand as made where one part is judged: its own, and those of the parts fitted."""
        return self.standing(self._chosen(made))

    def _chosen(self, made: MadePart) -> dict[str, MadePart]:
        assert self.drawn.design is not None
        own = made_to(made, self.drawn.design)
        return {**self.fitted, **({own.id: made} if own is not None else {})}

    def standing(self, chosen: Mapping[str, MadePart]) -> dict[str, Component]:
        """The specs that stand as made where some parts stand in the places of specs, by the ids of these."""
        design = self.drawn.design
        assert design is not None
        found = {}
        for name, one in chosen.items():
            spec = design.specs[name]
            assert isinstance(spec, Component)
            own = made_to(one, design)
            assert own is not None  # or it would not stand there
            if own.id != name:
                spec = in_place(own, spec)
            found[name] = as_made(spec, dimensions_of(one, spec, self.decision), one)
            found[name] = as_in_steam(found[name], one, design, self.decision)
            if design.settings.certificate_strengths:
                found[name] = certified(found[name], one)
        return found

    def duties(self, without: str = "") -> dict[str, Duty]:
        """The duties as measured in steam on the parts that are fitted, but for that of one spec."""
        design = self.drawn.design
        assert design is not None
        parts = [one for name, one in self.fitted.items() if name != without]
        return duties_in_steam(parts, design, self.decision)

    def context(self, specs: Mapping[str, Component], without: str = "") -> Context:
        """What the sheets consult where some specs stand in the place of those of the drawings.

        The duties assume what was measured in steam too, but for what was measured on the part of the spec ``without``.
        """
        design, context, basis = self.drawn.design, self.drawn.context, self.drawn.basis
        assert design is not None
        assert context is not None
        assert basis is not None
        other = with_specs(design, {**self.duties(without), **specs})
        # concessions accept what the drawing states, so that none is looked up
        nothing = Register(self.drawn.register.file)
        inputs = Inputs(other, context.limits, basis.materials, nothing, date.today())
        found = context_of(inputs, self.drawn.loaded)
        if design.settings.certificate_strengths:
            by_id = {one.id: one for one in made_parts(design)}
            found.material = material_as_certified(found.material, by_id)
        return found

    def trial(
        self,
        specs: Mapping[str, Component],
        before: Trial | None = None,
        without: str = "",
        *,
        keep: bool = False,
    ) -> Trial:
        """A trial of some specs, beside the duties as measured in steam, but for what was measured on one part.

        ``before`` is a trial of which it differs in some of its specs; else it is made beside the design as drawn. Its
        checks are kept for another run where ``keep`` says so, and those of the drawings are.
        """
        if before is None:
            before = self._as_drawn
        kept = self.drawn.kept if keep else None
        return Trial.after(before, self.context(specs, without), {**self.duties(without), **specs}, kept)

    def _trial_of(self, chosen: Mapping[str, MadePart], specs: Mapping[str, Component]) -> Trial:
        """The trial of some parts in the places of specs, once."""
        key = tuple(sorted((name, one.id) for name, one in chosen.items()))
        if key not in self._trials:
            # one that is not fitted stands beside the same mates: what rests on these alone was made already
            fitted = (
                None if chosen == self.fitted else self._trial_of(self.fitted, self.standing(self.fitted))
            )
            self._trials[key] = self.trial(specs, fitted, keep=True)
        return self._trials[key]

    @cached_property
    def _as_drawn(self) -> Trial:
        assert self.drawn.context is not None
        return Trial(self.drawn.context)


def _rests_on(one: Check, drawn: Component) -> bool:
    """Whether a check consulted the spec of a part; rules that review others, and those of records, are left out."""
    return drawn.id in one.consulted.ids and not one.rule.reviews and one.kind != "made-part"
