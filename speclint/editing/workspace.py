"""A design repository in an editor: the texts that are open, the specs as they read them, and their checks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct, field

from speclint.checking import Check, Inputs, KeptFolder, check, code_of, context_of, remember, usual_folder
from speclint.editing.marks import Mark, of_checks, of_complaints
from speclint.errors import Complaint, replace
from speclint.register import Standing, Surroundings, standings
from speclint.repository import EditedDesign, Remembered, Repository, Schema, Settings, open_repository
from speclint.rules import Context, Rule, read_limits
from speclint.specs import Component, Spec, schema_of, schema_of_table

if TYPE_CHECKING:
    from speclint.families import Loaded


class OpenText(Struct):
    """A text that an editor has open: its lines, what is wrong with it, and its checks by component and rule.

    ``conceded`` says which of its findings are accepted, and how. ``changed`` are the lines, from 1, that were changed
    since all its checks were last made.
    """

    file: str
    lines: Sequence[str]
    complaints: tuple[Complaint, ...] = ()
    checks: dict[tuple[str, str], Check] = field(default_factory=dict)
    conceded: dict[tuple[str, str], str] = field(default_factory=dict)
    changed: frozenset[int] = frozenset()

    def marks(self) -> list[Mark]:
        """What is marked in it."""
        return of_complaints(self.complaints, self.file, self.lines) + of_checks(
            self.checks.values(), self.file, self.lines, self.conceded
        )

    def rests_on_change(self, check: Check) -> bool:
        """Whether a check takes a value of a line that was changed."""
        places = (check.where, *(step.where for step in check.steps))
        return any(one.file == self.file and one.line in self.changed for one in places)


class Workspace:
    """One repository in an editor. Texts are edited one by one; nothing is written."""

    def __init__(self, root: Path, loaded: Loaded) -> None:
        self.root = root
        self.texts: dict[str, OpenText] = {}
        #: The specs of open texts as they could last be read: what links a half-written one has.
        self.last_read: dict[str, Spec] = {}
        self._everything = loaded
        self._schemas: dict[str, Schema] = {}
        self.reopen()

    def reopen(self) -> None:
        """Read the repository anew, as after a file was saved that is no spec, with the open texts in its place."""
        loaded = self._everything
        remembered = None
        folder = KeptFolder(usual_folder())
        if not folder.why_not:
            remembered = Remembered(folder, code_of(loaded))
        self.opened: Repository = open_repository(
            [self.root], loaded.kinds, None, tuple(loaded.materials), remembered
        )
        left_out = self.opened.settings.families.left_out if self.opened.settings else ()
        self.loaded = loaded.without(left_out)
        self.edited = EditedDesign(self.opened.design, self.loaded.kinds)
        self.__dict__.pop("materials", None)
        for text in list(self.texts.values()):
            self.write(text.file, "\n".join(text.lines))

    def file_of(self, path: Path) -> str:
        """A path as the repository names it; "" for one outside of it."""
        try:
            return path.resolve().relative_to(self.root.resolve()).as_posix()
        except ValueError:
            return ""

    def write(self, file: str, content: str) -> OpenText:
        """Take what an editor has for the text of a file; its checks are to be made."""
        before = self.texts.get(file)
        text = self.texts[file] = OpenText(file, content.splitlines())
        if self.edited.is_spec(file):
            text.complaints = self.edited.edit(file, content)
            specs = self.edited.design.specs
            names = self.edited.names_in(file)
            self.last_read.update({name: specs[name] for name in names if name in specs})
            if before is not None:  # shown until those of the new text are made, so that nothing flickers
                there = {name for name in names if name in specs}
                text.checks = {order: one for order, one in before.checks.items() if order[0] in there}
                text.conceded = before.conceded
                text.changed = before.changed | _differing(before.lines, text.lines)
        else:
            text.complaints = tuple(one for one in self.opened.complaints if one.where.file == file)
        return text

    def close(self, file: str) -> None:
        """Take the file itself again."""
        if self.texts.pop(file, None) is not None and self.edited.is_spec(file):
            self.edited.edit(file, None)

    def checking(self, file: str) -> Iterator[bool]:
        """Make the checks of the specs of an open text, one rule at each step.

        Those that rest on a line that was changed come first, and whatever is a finding so far; then the step is true,
        as the text can be marked anew, and at the end.
        """
        text = self.texts.get(file)
        if text is None or self.opened.settings is None:
            return
        names = self.edited.names_in(file)
        context = self._context(names)
        made: dict[tuple[str, str], Check] = {}
        turns = sorted(self._turns(text, names), key=lambda one: one[0])
        soon = sum(1 for turn, _, _ in turns if turn == 0)
        for number, (_, rule, spec) in enumerate(turns, start=1):
            if rule.reviews:
                remember(spec.id, [one for one in made.values() if one.component == spec.id], context)
            made[spec.id, rule.name] = text.checks[spec.id, rule.name] = check(rule, spec, context)
            if number == soon:
                text.conceded = self._conceded(text.checks, context)
            yield number == soon
        text.checks, text.conceded, text.changed = made, self._conceded(made, context), frozenset()
        yield True

    def _turns(self, text: OpenText, names: Sequence[str]) -> Iterator[tuple[int, Rule, Component]]:
        """Each rule with its component, and when it has its turn: those that review the others last."""
        for name in names:
            spec = self.edited.design.specs.get(name)
            if isinstance(spec, Component):
                for rule in self.loaded.rules_for({spec.kind}):
                    if isinstance(spec, rule.on):
                        known = text.checks.get((name, rule.name))
                        soon = known is not None and (
                            known.outcome == "finding" or text.rests_on_change(known)
                        )
                        yield 2 if rule.reviews else 0 if soon else 1, rule, spec

    def _conceded(
        self, checks: Mapping[tuple[str, str], Check], context: Context
    ) -> dict[tuple[str, str], str]:
        """The findings that a concession of the register accepts as they are now."""
        register, settings = self.opened.register, self.opened.settings
        parts = {name for name, _ in checks}
        entries = tuple(one for one in register.concessions if not parts.isdisjoint(one.parts))
        if not entries or settings is None:
            return {}
        signers = self.root / settings.signers_file
        around = Surroundings(context, settings, self.loaded, signers, date.today(), checks)
        stand = standings(replace(register, concessions=entries), around)
        return {one.subject: _accepted(one) for one in stand if one.holds and one.component in parts}

    def _context(self, names: Sequence[str]) -> Context:
        design = replace(self.edited.design, selected=frozenset(names), _known=self.edited.design.index)
        settings = self.opened.settings
        assert settings is not None  # as nothing is checked without
        limits, _ = read_limits(settings, self.loaded.rules)
        inputs = Inputs(design, limits, self.opened.materials, self.opened.register, date.today())
        context = context_of(inputs, self.loaded)
        context.outcomes = {}
        return context

    def resting_on(self, file: str) -> list[str]:
        """The other open texts whose specs are linked to one of a file, or whose checks looked at one."""
        names = {*self.edited.names_in(file)}
        others = [
            text for text in self.texts.values() if text.file != file and self.edited.is_spec(text.file)
        ]
        return [text.file for text in others if not names.isdisjoint(self._looked_at(text))]

    def _looked_at(self, text: OpenText) -> set[str]:
        entries = self.edited.design.index.entries
        own = [entries[name] for name in self.edited.names_in(text.file) if name in entries]
        linked = {link.id for entry in own for link in entry.links()}
        return linked.union(*(one.consulted.ids for one in text.checks.values()))

    def again(self, file: str) -> None:
        """Hold an open text against the others anew, as after one of them was changed."""
        self.write(file, "\n".join(self.texts[file].lines))

    def kind_of(self, lines: Sequence[str]) -> type[Spec] | None:
        """The kind that a text states, also where it could not be read."""
        for line in lines:
            key, _, value = line.partition("=")
            if key.strip() == "kind":
                return self.loaded.kinds.get(value.split("#")[0].strip().strip("\"'"))
        return None

    def schema(self, kind: type[Spec]) -> Schema:
        """What may stand under the keys of a kind."""
        if kind.kind not in self._schemas:
            self._schemas[kind.kind] = Schema(schema_of(kind))
        return self._schemas[kind.kind]

    @cached_property
    def settings_schema(self) -> Schema:
        """What may stand under the keys of speclint.toml."""
        return Schema(schema_of_table(Settings))

    @property
    def installed(self) -> Loaded:
        """All that is loaded, also the families that the settings leave out."""
        return self._everything

    @cached_property
    def materials(self) -> tuple[str, ...]:
        """The names of all materials: of the handbook, the families and the repository."""
        from speclint.handbook.materials import names

        return tuple(sorted({*names(), *self.loaded.materials, *self.opened.materials}))


def _accepted(standing: Standing) -> str:
    one = standing.concession
    return f"conceded by {one.accepted_by} until {one.until} ({one.number})"


def _differing(before: Sequence[str], now: Sequence[str]) -> frozenset[int]:
    """The lines, from 1, that differ; where lines came or went, those from the first that differs on."""
    pairs = list(zip(before, now, strict=False))
    found = [number for number, (one, other) in enumerate(pairs, start=1) if one != other]
    if len(before) != len(now):
        return frozenset(range(min([*found, len(pairs) + 1]), max(len(before), len(now)) + 1))
    return frozenset(found)
