"""Strengths that a certificate states, in the place of the least ones of the standard: only where a setting allows it.

A certificate tells the strength of the metal cold. Hot, the standard's figure stays: nobody has tested the heat there.
Of cast iron nothing is taken: a bar cast beside the part tells little of the iron in a thick wall.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from speclint.equations import Source
from speclint.errors import field_names
from speclint.handbook.materials import Material
from speclint.handbook.tables import Reading
from speclint.quantities import Measure
from speclint.specs import Component, MadePart, NotStated, Stated

#: Documents that rest on tests of the metal delivered, EN 10204.
_BY_TESTS = ("3.1", "3.2")
_MARK = " as certified for "
#: The highest temperature at which a strength measured cold stands: that of the test room, ISO 6892-1: 10 to 35 °C.
_WARMEST = 308.15


def certified(part: Component, made: MadePart) -> Component:
    """A component whose material is that of its certificate, where this rests on tests and states a strength."""
    document = made.certificate
    stated = any(isinstance(one, Measure) for one in (document.proof_stress, document.tensile_strength))
    rests = isinstance(document.type, Stated) and document.type.value in _BY_TESTS
    if not (stated and rests) or isinstance(part.material, NotStated):
        return part
    word = Stated(f"{part.material.value}{_MARK}{made.id}", part.material.where)
    return part.model_copy(update={"material": word})


def material_as_certified(
    find: Callable[[str], Material], parts: Mapping[str, MadePart]
) -> Callable[[str], Material]:
    """How materials are found where some are as certified for a part."""

    def found(name: str) -> Material:
        word, _, of = name.partition(_MARK)
        plain = find(word)
        if not of or "iron" in plain.family:
            return plain
        return _with_strengths(plain, parts[of])

    return found


@dataclass(frozen=True)
class _Certified(Material):
    """A material with the strengths of a certificate, cold."""

    proof: Reading | None = field(default=None, repr=False)
    tensile: Reading | None = field(default=None, repr=False)

    def proof_stress(self, at: float, thickness: float | None = None) -> Reading:
        """As certified where it is asked for cold; else that of the standard."""
        return self.proof if self.proof and at <= _WARMEST else super().proof_stress(at, thickness)

    def tensile_strength(self, at: float, thickness: float | None = None) -> Reading:
        """As certified where it is asked for cold; else that of the standard."""
        return self.tensile if self.tensile and at <= _WARMEST else super().tensile_strength(at, thickness)


def _with_strengths(plain: Material, made: MadePart) -> Material:
    document = made.certificate
    source = Source(f"certificate {_word(document.number)} of {made.id}", _word(document.date))
    return _Certified(
        **{name: getattr(plain, name) for name in field_names(Material)},
        proof=_reading("proof stress", document.proof_stress, plain, source),
        tensile=_reading("tensile strength", document.tensile_strength, plain, source),
    )


def _reading(what: str, stated: Measure | NotStated, plain: Material, source: Source) -> Reading | None:
    if isinstance(stated, NotStated):
        return None
    words = f"{what} of {plain.name}, certified"
    return Reading(words, stated.nominal, stated.low, stated.high, "Pa", source)


def _word(stated: Stated[str] | NotStated) -> str:
    return "without a number" if isinstance(stated, NotStated) else stated.value
