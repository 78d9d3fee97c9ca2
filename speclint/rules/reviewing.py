"""What a sheet tells of the drawing of a part, of the parts like it and of its other checks."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from speclint.errors import Location
from speclint.quantities import Provenance
from speclint.rules.asked import Asked
from speclint.rules.consulted import OF_THE_DRAWING
from speclint.rules.context import Context
from speclint.rules.definition import Rule
from speclint.rules.judgement import NotApplicable, NotAssessed
from speclint.rules.record import Record
from speclint.specs import Component, SizeApart, TakenOver

if TYPE_CHECKING:
    from speclint.repository import SettingName


class Reviewing:
    """The part of a sheet for rules of release: what is stated where, taken over, conceded and found by other rules."""

    _rule: Rule
    _component: Component
    _context: Context
    _record: Record | None
    _asked: Asked

    def taken_over(self, component: Component) -> TakenOver:
        """What a component takes over from one that it is like or the mirror of; ends the rule where it is neither."""
        self._asked.everything = True  # the other spec is asked too
        found = component.taken_over
        if found is None:
            raise NotApplicable("it is like no other part")
        consulted = self._context.consulted
        consulted.specs.add(found.id)
        consulted.words |= {(name, word) for name in (component.id, found.id) for word in OF_THE_DRAWING}
        if self._record:
            differs = [(one.where.key, one.here, one.there) for one in found.differs]
            keys = [[where.key for where in some] for some in (found.said_twice, found.places)]
            said = (
                "; ".join(f"{key} {here}, not {there}" for key, here, there in differs) or "nothing differs"
            )
            named = f"the {'mirror' if found.mirrored else 'like'} of {component.id}"
            self._record.note(named, repr((differs, keys, found.notes)), shown=said)
            self._record.word("mirror of" if found.mirrored else "like", found.id, found.where)
            for one in found.differs:
                self._record.word(f"{self._record.label(one.where)}, there {one.there}", one.here, one.where)
        return found

    def sizes_apart(self, one: Component, other: Component) -> tuple[SizeApart, ...]:
        """The sizes and words of their form that two parts of a kind both state for the shop, and their metals."""
        self._asked.everything = True  # every size of both
        self._context.consulted.specs |= {one.id, other.id}
        found = self._context.design.sizes_apart(one, other)
        if self._record:
            said = "; ".join(f"{one.where.key} {one.here}, not {one.there}" for one in found)
            self._record.note(f"sizes of {one.id} and {other.id}", repr(found), shown=said or "the same")
        return found

    def stated_from(self, provenance: Provenance, component: Component) -> tuple[Location, ...]:
        """Where a component states quantities of one provenance: those assumed, or measured from an original."""
        self._asked.values.update((id(one.where), one.where) for one in component.measures())
        found = tuple(one for one in component.measures() if one.provenance == provenance)
        if self._record:
            stated = [(one.where.key, one.low, one.high, one.datum) for one in found]
            shown = "; ".join(f"{one.where.key} {one.text}" for one in found) or "nothing"
            self._record.note(f"{provenance} in {component.id}", repr(stated), shown=shown)
            for one in found:
                self._record.word(f"{provenance}: {self._record.label(one.where)}", one.text, one.where)
        return tuple(one.where for one in found)

    def concessions(self) -> tuple[tuple[str, str], ...]:
        """The number of each concession of the component, and why its time is over; "" where it is not."""
        found = self._context.concessions(self._component, self._rule)
        self._asked.everything = True  # after that, as it makes other checks
        if self._record:
            said = [f"{name} {why or 'in time'}" for name, why in found]
            self._record.note("concessions", repr(found), shown="; ".join(said) or "none")
            for name, why in found:
                self._record.word(f"concession {name}", why or "in time")
        return found

    def outcomes(self) -> Mapping[str, str]:
        """How the component's other checks came out, by rule; only for a rule that reviews.

        Of a check that is not assessed since a file could not be read, which is told of that file, "waiting" stands.

        Ends the rule when only some of the rules are run: then nothing can be said of the others.
        """
        if not self._rule.reviews:
            raise ValueError(f"{self._rule.name} does not say that it reviews other checks")
        if self._context.outcomes is None:
            raise NotAssessed("only some of the rules were run; this one looks at all of them")
        self._asked.everything = True
        found = self._context.outcomes.get(self._component.id, {})
        if self._record:
            self._record.note("outcomes", repr(sorted(found.items())))
        return found

    def parts_alike(self, part: Component) -> tuple[Component, ...]:
        """The other components that are said to be like a part, or mirrored, or stated with it for each place."""
        self._asked.everything = True
        self._context.consulted.asked.add(("alike", part.id))
        found = self._context.design.parts_alike(part)
        if self._record:
            ids = [one.id for one in found]
            self._record.note(f"parts alike to {part.id}", repr(ids), shown=", ".join(ids) or "none")
        return found

    def assumed_by_holds(self) -> tuple[str, ...]:
        """The rules of hold grade that took an assumed value; only for a rule that reviews."""
        self.outcomes()
        found = self._context.assumed_by_holds.get(self._component.id, ())
        if self._record:
            self._record.note("assumed by holds", repr(found), shown=", ".join(found) or "none")
        return found

    def setting(self, name: SettingName) -> str:
        """A setting of the repository, as text; "" where it is not set."""
        value = self._context.design.settings.said(name)
        if self._record:
            self._record.note(f"setting {name}", value, shown=value or "not set")
            self._record.word(f"setting: {name}", value or "not set")
        return value
