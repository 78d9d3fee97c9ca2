"""Which module of the handbook a published check proves, by which source, and how that was obtained.

A test over ``Row``s needs no more than its rows. Any other test in this folder says it with ``proves``::

    @proves("members.beams", memory="AISC Manual, Table 3-23")
    @pytest.mark.parametrize(...)
    def test_coefficients_of_the_steel_manual(...): ...

Each case of a parametrised test counts as one check. Two sources are different where the text before their
first comma differs. ``tests/contracts/test_published.py`` counts.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Literal, TypeVar

How = Literal["seen", "library", "derived", "memory"]
Test = TypeVar("Test", bound=Callable[..., None])


@dataclass(frozen=True)
class Proof:
    """The modules proved, named from ``speclint.handbook`` down, and each source with how it was obtained."""

    topics: tuple[str, ...]
    sources: Mapping[str, How]

    @property
    def works(self) -> frozenset[str]:
        """The works behind the sources, without place or page."""
        return frozenset(source.partition(",")[0].strip() for source in self.sources)


def proves(
    *topics: str,
    seen: str | Iterable[str] = (),
    library: str | Iterable[str] = (),
    derived: str | Iterable[str] = (),
    memory: str | Iterable[str] = (),
) -> Callable[[Test], Test]:
    """Say that each case of a test checks the ``topics`` against the sources named.

    ``seen``: read in a copy of the work; ``library``: worked by another library; ``derived``: by hand or
    numerically from first principles, named with what was done; ``memory``: recalled and not seen.
    ValueError when nothing is named.
    """
    given: tuple[tuple[How, str | Iterable[str]], ...] = (
        ("seen", seen),
        ("library", library),
        ("derived", derived),
        ("memory", memory),
    )
    sources = {one: how for how, named in given for one in ((named,) if isinstance(named, str) else named)}
    if not topics or not sources:
        raise ValueError("a published check names what it proves and by which source")

    def with_proof(test: Test) -> Test:
        test.__dict__["proof"] = Proof(topics, sources)
        return test

    return with_proof
