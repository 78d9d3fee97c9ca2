"""A misspelt name of a place breaks no rule off and is told: one of each key. ``tests.misnamed`` itself tries all."""

from __future__ import annotations

import pytest

from tests.misnamed import Misnamer
from tests.unit_slips import Slip


@pytest.fixture(scope="module")
def misnamer() -> Misnamer:
    return Misnamer()


def test_the_example_has_many_names(misnamer: Misnamer) -> None:
    assert len(set(misnamer.slips.values())) > 30


@pytest.mark.long
def test_a_misspelt_name_is_told(misnamer: Misnamer) -> None:
    firsts = {declared: slip for slip, declared in reversed(misnamer.slips.items())}
    faults = [fault for slip in firsts.values() for fault in misnamer.faults(slip)]
    assert not faults, "\n".join(faults)


def test_a_name_that_is_spelt_as_it_was_is_a_fault_of_the_test(misnamer: Misnamer) -> None:
    """Nothing is told of what is right."""
    key = "welds.division.seen_through"  # which one check reads: other names are read by hundreds
    slip = next(one for one in misnamer.slips if (one.spec, one.key) == ("access-block-left", key))
    (fault,) = misnamer.faults(Slip(slip.spec, slip.where, slip.key, slip.right, slip.right))
    assert fault.endswith("checks come out as before")
