"""What a sheet may consult besides the component: the design, the materials, the limits, moved values."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from speclint.errors import Location
from speclint.handbook.tables import Reading
from speclint.quantities import Measure
from speclint.rules.asked import Asked
from speclint.rules.consulted import Consulted
from speclint.rules.definition import Limit, Rule
from speclint.rules.other_check import no_other

if TYPE_CHECKING:
    from speclint.handbook.materials import Material
    from speclint.repository import Design, DrawingState
    from speclint.rules.other_check import MakeCheck
    from speclint.specs import Component


def _no_concession(_component: Component, _asking: Rule) -> tuple[tuple[str, str], ...]:
    return ()


def _no_drawing(_component: Component) -> None:
    return None


@dataclass
class Context:
    """What every sheet of one run may consult.

    ``limits`` are those that the repository sets, by rule and name. To search for a remedy ``moved`` shifts stated
    values by SI amounts or puts another quantity in the place of one, and ``worded`` puts words in the place of
    others. ``other_check`` makes the check of another part. ``concessions`` gives the number of each concession of a
    component, and why it no longer holds, "" where it is not; the rule that asks is left out. ``drawing`` tells
    how the drawing of a component stands: its file and its last reading.
    """

    design: Design
    material: Callable[[str], Material]
    limits: Mapping[tuple[str, str], Measure]
    moved: Mapping[Location, float | Measure] = field(default_factory=dict)
    worded: Mapping[Location, Any] = field(default_factory=dict)
    outcomes: dict[str, dict[str, str]] | None = None
    assumed_by_holds: dict[str, tuple[str, ...]] = field(default_factory=dict)
    concessions: Callable[[Component, Rule], tuple[tuple[str, str], ...]] = field(
        default=_no_concession, repr=False
    )
    drawing: Callable[[Component], DrawingState | None] = field(default=_no_drawing, repr=False)
    other_check: MakeCheck = field(default=no_other, repr=False)
    #: What the check that is being made asked for, and what parts alike share of it: for the core.
    asked: Asked = field(default_factory=Asked, repr=False)
    shared: Any = field(default=None, repr=False)
    _readings: dict[Hashable, Reading] = field(default_factory=dict, repr=False)
    #: What the check that runs has asked of the design.
    consulted: Consulted = field(default_factory=Consulted, repr=False)
    #: Figures looked up for enclosures, and the rules that took something toleranced: for the core.
    enclosed: dict[Hashable, Any] = field(default_factory=dict, repr=False)
    toleranced: set[str] = field(default_factory=set, repr=False)
    #: What no corner of the check that runs changes: see :meth:`Sheet.once`.
    steady: dict[Hashable, Any] = field(default_factory=dict, repr=False)
    #: Values of load cases and checks of other parts, each with what was consulted and opened for it: for the core.
    worked: dict[Hashable, tuple[Any, Consulted, dict[int, Location]]] = field(
        default_factory=dict, repr=False
    )
    _in_force: dict[tuple[str, str], tuple[Limit, Measure, bool]] = field(default_factory=dict, repr=False)

    def limit(self, rule: Rule, name: str) -> tuple[Limit, Measure, bool]:
        """A limit that a rule declares, as it is in force, and whether the repository set it."""
        key = (rule.name, name)
        found = self._in_force.get(key)
        if found is None:
            declared, own = rule.limit(name), self.limits.get(key)
            if own is None and declared.setting is not None:
                own = self.design.settings.measured(declared.setting)
            measure = declared.read(declared.default) if own is None else own
            found = self._in_force[key] = declared, measure, own is not None
        return found

    def look_up(self, table: Callable[..., Reading], at: Mapping[str, Any]) -> Reading:
        """A figure of a table; cached, since the corners of a check need the same few again."""
        key = (table, *at, *at.values())
        try:
            found = self._readings.get(key)
        except TypeError:  # an argument that cannot be hashed is looked up each time
            return table(**at)
        if found is None:
            found = self._readings[key] = table(**at)
        return found

    def taken_aside(self) -> frozenset[Location] | None:
        """The places that the calculations aside of the run before took; None where a long one was not worked aside.

        What a long calculation gives is looked up by what was worked aside.
        """
        aside = [known for key, known in self.steady.items() if isinstance(key, tuple) and key[0] == "aside"]
        long = self.long_results
        if not long or any(all(one is not known[0] for known in aside for one in key) for key in long):
            return None
        return frozenset(where for known in aside for where in known[2])

    @property
    def long_results(self) -> frozenset[tuple[Any, ...]]:
        """What the results of long calculations were looked up by."""
        return frozenset(key for key, reading in self._readings.items() if reading.worked)  # type: ignore[misc]

    def worked_once(
        self, key: Hashable, work: Callable[[], Any], lasts: Callable[[Any], bool] = lambda _: True
    ) -> Any:
        """What does not hang on the check that asks, worked for the first that does; each has asked what it took.

        What does not last is given to that check alone.
        """
        if key not in self.worked:
            with self.asking() as consulted, self.asked.opening() as opened:
                found = work()
            if not lasts(found):
                return found
            self.worked[key] = found, consulted, opened
        found, consulted, opened = self.worked[key]
        self.consulted.add(consulted)
        self.asked.values.update(opened)
        return found

    @contextmanager
    def asking(self) -> Iterator[Consulted]:
        """What is asked of the design within the block; whoever began before has asked it too."""
        before, self.consulted = self.consulted, Consulted()
        try:
            yield self.consulted
        finally:
            before.add(self.consulted)
            self.consulted = before

    def begin(self) -> None:
        """Clear what serves one check alone, such as the cache of figures: it would grow with the repository."""
        self._readings.clear()
        self.enclosed.clear()
        self.steady.clear()
        self.asked.clear()
