"""What was measured of a part in steam, beside what its duty assumes for the load case, or its drawing states."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from speclint.errors import replace
from speclint.quantities import Measure
from speclint.specs.component import Component
from speclint.specs.fields import NotStated, Stated
from speclint.specs.kinds.duty import CaseName, Duty
from speclint.specs.kinds.made_part import MadePart, SteamingRecord
from speclint.specs.measured_sizes import as_range, measured_value, quantities_of
from speclint.specs.ties import Tie


class Steaming(Struct, frozen=True):
    """One value measured in steam, under its key in a load case of a duty, or in the spec of the part (``of_part``).

    ``measured`` has the uncertainty as limits, and none where none was recorded. ``assumed`` is what the duty states:
    of a temperature tied to another, from the lowest to the highest that the tie allows; None where it states nothing,
    or has it worked from other values.
    """

    name: str
    case: CaseName
    key: str
    measured: Measure
    assumed: Measure | None
    uncertainty_known: bool
    of_part: bool = False

    @property
    def stretched(self) -> Measure:
        """What is assumed as far as it must be stretched to hold what was measured, uncertainty included."""
        return self.stretching(self.assumed or self.measured)

    def stretching(self, assumed: Measure) -> Measure:
        """Some limits stretched to hold what was measured, its uncertainty included."""
        low, high = min(assumed.low, self.measured.low), max(assumed.high, self.measured.high)
        found = as_range(low, high, self.measured, self.measured.where)
        return replace(found, provenance="as made", note="in steam")


def steamings_of(made: MadePart, drawn: Component, duty: Duty | None) -> Iterator[Steaming]:
    """What was measured of a part in steam, in the order of the record; what no duty tells of is left out.

    :raises MisreadError: for a value that cannot be read in the dimension of its key.
    """
    for name, entry in made.steamings.items():
        if isinstance(entry.dimension, Stated):
            yield from _of_size(name, entry, drawn)
            continue
        case = (
            duty.cases.get(entry.case.value) if duty is not None and isinstance(entry.case, Stated) else None
        )
        if case is None or isinstance(entry.value, NotStated) or isinstance(entry.case, NotStated):
            continue
        own = isinstance(entry.quantity, NotStated)
        at = None if isinstance(entry.quantity, NotStated) else quantities_of(case).get(entry.quantity.value)
        if not own and at is None:
            continue
        key = f"temperatures.{drawn.id}" if at is None else at.key
        known = isinstance(entry.uncertainty, Stated)
        half = None if isinstance(entry.uncertainty, NotStated) else entry.uncertainty
        measured = measured_value(entry.value, half, "temperature" if at is None else at.dimension)
        assumed = case.temperature_of(drawn) if at is None else at.drawn
        yield Steaming(name, entry.case.value, key, measured, _limits(assumed), known)


def _of_size(name: str, entry: SteamingRecord, drawn: Component) -> Iterator[Steaming]:
    """A size of the part that was measured in steam; nothing where it is not told of what, or what was read."""
    assert isinstance(entry.dimension, Stated)  # or it is of the duty
    at = quantities_of(drawn).get(entry.dimension.value)
    if at is None or isinstance(entry.value, NotStated) or isinstance(entry.case, NotStated):
        return
    known = isinstance(entry.uncertainty, Stated)
    half = None if isinstance(entry.uncertainty, NotStated) else entry.uncertainty
    measured = measured_value(entry.value, half, at.dimension)
    yield Steaming(name, entry.case.value, at.key, measured, _limits(at.drawn), known, of_part=True)


def _limits(assumed: object) -> Measure | None:
    if isinstance(assumed, Measure):
        return assumed
    if not isinstance(assumed, Tie):
        return None
    base, by = _limits(assumed.base), assumed.difference
    return None if base is None else as_range(base.low + by.low, base.high + by.high, base, assumed.where)
