"""The calculation sheet: a rule reads a spec only through it, works on it, and is judged on it.

At one tolerance corner the sheet hands over plain SI floats. When it records, every step is written down with
symbol, equation, numbers, unit and source (:mod:`speclint.rules.record`). Both do the same arithmetic. What a rule
takes, works, looks for and judges on it stands in modules of their own; here are the specs that it reaches by links.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from speclint.errors import NOWHERE, NotKnown
from speclint.quantities import Measure
from speclint.rules.aside import worked_aside
from speclint.rules.comparisons import Judging
from speclint.rules.consulted import class_in_full
from speclint.rules.context import Context
from speclint.rules.corners import Corner
from speclint.rules.definition import Rule
from speclint.rules.judgement import NotAssessed, Unlisted
from speclint.rules.placing import no_spec_at
from speclint.rules.record import Record
from speclint.rules.reviewing import Reviewing
from speclint.rules.taking import Taking
from speclint.specs import Component, Dimension, Duty, Link, NotStated, Spec, Stated

if TYPE_CHECKING:
    from speclint.handbook.materials import Material
    from speclint.rules.other_check import OtherCheck

T = TypeVar("T")
S = TypeVar("S", bound=Spec)
C = TypeVar("C", bound=Component)


class Sheet(Judging, Reviewing, Taking):
    """The sheet of one rule on one component at one corner.

    A family sees only the methods; ``record`` is for the core.
    """

    def __init__(
        self, rule: Rule, component: Component, context: Context, corner: Corner, *, record: bool
    ) -> None:
        self._rule, self._component, self._context, self._corner = rule, component, context, corner
        self._record = Record(context.design, component.id) if record else None
        self._asked = context.asked
        self._unread = {}
        self.unworked = None

    @property
    def record(self) -> Record:
        """What a recording sheet wrote down."""
        if self._record is None:
            raise ValueError("this sheet does not record")
        return self._record

    def dimension(self, table: Dimension) -> Measure | NotStated:
        """The length that a table points at in another spec, or states itself; to be taken."""
        return table.size if self.is_stated("size", table.size) else self.pointed_at(table)

    def pointed_at(self, table: Dimension) -> Measure | NotStated:
        """The length that a table points at in another spec, whatever size it states itself; to be taken."""
        part, key = self.follow(table.of), self.read("dimension", table.dimension)
        try:
            found = part.under(key)
        except LookupError:
            raise NotAssessed(f'{part.id} has no dimension "{key}"', table.dimension.where) from None
        if isinstance(found, Measure) and found.dimension != "length":
            raise NotAssessed(
                f'"{key}" of {part.id} is no length but {found.dimension}', table.dimension.where
            )
        return found

    @property
    def silent(self) -> list[str]:
        """The places that the rule looked at and that state nothing; none on a sheet that does not record."""
        return list(self._record.silent) if self._record else []

    def follow(self, link: Link[S] | NotStated) -> S:
        """The spec that a link leads to. Ends the rule when it is not stated or cannot be read."""
        if isinstance(link, NotStated):
            raise self._missing(link)
        self._asked.followed.add(link.id)
        found = self._context.design.follow(link)
        self._context.consulted.specs.add(link.id)
        self._note_link(link)
        if found is None:
            raise no_spec_at(link, self._context.design)
        return found  # type: ignore[return-value]  # the design has checked the target

    def duty_of(self, component: Component) -> Duty | None:
        """The duty that a component states, or else that of the nearest component it is linked to; None without one.

        :raises NotAssessed: where its duty, or a part on the way to it, could not be read.
        """
        found, passed = self._context.design.duty_of(component)
        self._context.consulted.specs |= passed
        if found is None:
            self.require_read(self._context.design.unread_among(passed))
        self._asked.everything |= component is not self._component
        if self._record:
            called = found.id if found else ""
            self._record.note(f"duty of {component.id}", called, shown=called or "none")
        return found

    def entry(self, table: Mapping[str, T], name: Stated[str] | NotStated, of: str) -> T:
        """An entry of a named table of another spec, such as one bore of a block; ``of`` says of what."""
        key = self.read(f"name in {of}", name)
        if key not in table:
            where = name.where if isinstance(name, Stated) else NOWHERE
            raise NotAssessed(f"{of} has no entry {key!r}", where)
        return table[key]

    def belonging_to(self, target: Spec, kind: type[C]) -> tuple[C, ...]:
        """The components of a kind that state a link to a spec: the rings of a liner, the studs of a cover.

        :raises NotAssessed: where a file that could not be read may hold one more.
        """
        self._asked.queried.add((target.id, kind))
        found = self._context.design.linking_of(target, kind)
        self.require_read(self._context.design.unread_linking(target, kind))
        ids = [part.id for part in found]
        consulted = self._context.consulted
        consulted.specs.update(ids)
        consulted.linked.add((target.id, class_in_full(kind)))
        if self._record:
            alike = " ".join(self._record.renaming.part(one) for one in (target.id, *ids))
            name, shown = f"{kind.kind} on {target.id}", ", ".join(ids) or "none"
            self._record.note(name, repr(ids), shown=shown, alike=alike)
        return found

    def material_of(self, component: Component) -> Material:
        """The material of a component, from the handbook or the repository's own."""
        return self.material_named(component.id, component.material)

    def material_named(self, of: str, name: Stated[str] | NotStated) -> Material:
        """The material that a table of a spec names for a part of it; ``of`` says of what."""
        called = self.read(f"material of {of}", name)
        try:
            return self._context.material(called)
        except NotKnown as problem:
            raise Unlisted(str(problem), name.where) from problem

    def other_check(self, part: Component, rule: Stated[str] | NotStated) -> OtherCheck:
        """How the check of another part by a rule of some name comes out; only for a rule that reviews.

        :raises NotAssessed: where no rule on that part has the name.
        """
        if not self._rule.reviews:
            raise ValueError(f"{self._rule.name} does not say that it reviews other checks")
        name = self.read("rule", rule)
        found = self._context.other_check(part.id, name)
        self._asked.everything = True  # after that, as another check was made
        if isinstance(found, str):
            raise NotAssessed(found, rule.where)
        if self._record:
            self._record.note(f"{name} on {part.id}", repr(found), shown=found.briefly)
            self._record.word(f"{name} on {part.id}", found.briefly)
        return found

    def knows_material(self, name: Stated[str] | NotStated) -> bool:
        """Whether the handbook, a family or the repository holds a material. Ends the rule when none is stated."""
        called = self.read("material", name)
        try:
            self._context.material(called)
        except NotKnown:
            return False
        return True

    def aside(self, name: str, work: Callable[..., T], /, *about: Any) -> T:
        """The result of a long calculation on a sheet of its own: see :func:`~speclint.rules.aside.worked_aside`."""
        return worked_aside(self._context, self._record, self._of_its_own, name, work, about)

    def _of_its_own(self) -> Sheet:
        return Sheet(self._rule, self._component, self._context, Corner(), record=True)

    def list_item(self, name: str, says: str) -> None:
        """Write a line of a result in words, such as a step of an order; nothing rests on it."""
        if self._record:
            self._record.word(name, says)
