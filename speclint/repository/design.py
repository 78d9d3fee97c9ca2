"""The whole design repository: its specs, the links between them, the duties they inherit."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from speclint.errors import Complaint, Location
from speclint.repository.settings import Settings
from speclint.repository.spec_files import PassedOver
from speclint.specs import CaseName, Component, Duty, Link, LoadCase, Spec, old_keys_in


@dataclass(frozen=True)
class Design:
    """Every readable spec of a repository by id, and what could not be read.

    ``files`` gives the file of each id, readable or not. ``selected`` are the ids that the command line
    asked for; links may lead anywhere in the repository. ``cut`` are the places of links that close a loop.
    ``passed_over`` are TOML files where the command line pointed that were not read as specs.
    """

    root: Path
    settings: Settings
    specs: Mapping[str, Spec]
    files: Mapping[str, str]
    selected: frozenset[str]
    complaints: tuple[Complaint, ...] = ()
    cut: frozenset[Location] = frozenset()
    passed_over: tuple[PassedOver, ...] = ()
    _linking: dict[str, tuple[Component, ...]] = field(default_factory=dict, repr=False, compare=False)
    _duties: dict[str, tuple[Duty | None, frozenset[str]]] = field(
        default_factory=dict, repr=False, compare=False
    )
    _owners: dict[str, str] = field(default_factory=dict, repr=False, compare=False)

    def __post_init__(self) -> None:
        self._duties.clear()  # a copy with other specs may have other duties
        linking: dict[str, list[Component]] = {}
        for name in sorted(self.specs):
            spec = self.specs[name]
            if isinstance(spec, Component):
                for target in sorted({link.id for link in spec.links() if self.follow(link)}):
                    linking.setdefault(target, []).append(spec)
        self._owners.update({file: name for name, file in self.files.items()})
        self._linking.update({name: tuple(parts) for name, parts in linking.items()})

    def follow(self, link: Link[Any]) -> Spec | None:
        """The spec a link leads to; None where it is missing, unreadable, of a wrong kind or closes a loop."""
        found = self.specs.get(link.id)
        if found is None or not found.is_one_of(link.kinds):
            return None
        return None if self.cut and link.where in self.cut else found

    def linking_to(self, target: Spec) -> tuple[Component, ...]:
        """The components that state a link to a spec, in the order of their ids."""
        return self._linking.get(target.id, ())

    def owner(self, file: str) -> str:
        """The id of the spec in a file; the file itself where it holds none."""
        return self._owners.get(file, file)

    def duty_of(self, component: Component) -> tuple[Duty | None, frozenset[str]]:
        """The duty a component states, or else that of the nearest component it is linked to.

        With the ids of all specs that were looked at to find it, the duty and whatever it is like among them.
        """
        if component.id not in self._duties:
            self._duties[component.id] = self._nearest_duty(component)
        return self._duties[component.id]

    def _nearest_duty(self, component: Component) -> tuple[Duty | None, frozenset[str]]:
        passed: set[str] = set()
        waiting: deque[Component] = deque([component])
        while waiting:
            part = waiting.popleft()
            if part.id in passed:
                continue
            passed.add(part.id)
            if isinstance(part.duty, Link):
                duty = self.follow(part.duty)
                passed.update(self._alike(part.duty))
                return duty if isinstance(duty, Duty) else None, frozenset(passed)
            for link in part.links():
                passed_on = self.follow(link)
                if isinstance(passed_on, Component):
                    waiting.append(passed_on)
                elif passed_on is None:
                    passed.add(link.id)
        return None, frozenset(passed)

    def _alike(self, link: Link[Any]) -> Iterator[str]:
        """The id of a duty, and of each that it is like in turn, whether or not they are there."""
        seen: set[str] = set()
        while link.id not in seen:
            seen.add(link.id)
            yield link.id
            spec = self.follow(link)
            if not isinstance(spec, Duty) or not isinstance(spec.like, Link):
                return
            link = spec.like

    def case_of(self, duty: Duty, name: CaseName) -> LoadCase | None:
        """A load case of a duty, or of the one it is like."""
        if name in duty.cases:
            return duty.cases[name]
        base = self.follow(duty.like) if isinstance(duty.like, Link) else None
        return self.case_of(base, name) if isinstance(base, Duty) else None

    @property
    def old_keys(self) -> tuple[Complaint, ...]:
        """A note for each old key that a selected spec states, by file and line."""
        notes = (
            note for name in self.selected if name in self.specs for note in old_keys_in(self.specs[name])
        )
        return tuple(sorted(notes, key=lambda note: note.order))

    def parts(self) -> Iterator[Component]:
        """The selected components that could be read, in the order of their ids."""
        for name in sorted(self.selected):
            spec = self.specs.get(name)
            if isinstance(spec, Component):
                yield spec
