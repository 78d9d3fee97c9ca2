"""Galvanic pairs: symmetry, order of both series, limits by surroundings."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown
from speclint.handbook.materials import galvanic as g

metals = st.sampled_from(g.metals())


@given(metals, metals)
def test_the_difference_is_the_same_both_ways(one: str, other: str) -> None:
    first, second = g.anodic_index(one).nominal, g.anodic_index(other).nominal
    assert g.potential_difference(first, second) == g.potential_difference(second, first) >= 0
    assert g.base_metal(one, other) == g.base_metal(other, one)


@given(metals, metals, metals)
def test_differences_along_the_series_add_up(one: str, other: str, third: str) -> None:
    a, b, c = sorted(g.anodic_index(name).nominal for name in (one, other, third))
    assert g.potential_difference(a, c) == pytest.approx(
        g.potential_difference(a, b) + g.potential_difference(b, c)
    )


def test_the_table_runs_from_noble_to_base() -> None:
    found = [g.anodic_index(name).nominal for name in g.metals()]
    assert found == sorted(found, reverse=True)


@pytest.mark.parametrize("metal", g.metals_in_sea_water())
def test_sea_water_figures_are_ranges(metal: str) -> None:
    found = g.sea_water_potential(metal)
    assert found.low < found.nominal < found.high
    assert found.source.memory == (metal not in ("cast iron", "mild steel", "nickel cast iron"))


def test_a_range_in_sea_water_is_known_by_its_middle() -> None:
    """Cast iron stands from −0.60 to −0.71 V: −0.655 V between."""
    assert g.sea_water_potential("cast iron").nominal == pytest.approx(-0.655)


def test_like_metals_have_no_base_one() -> None:
    assert g.base_metal("cast iron", "carbon steel") == ""
    assert g.base_metal("cast iron", "zinc plate") == "zinc plate"


def test_harsher_surroundings_permit_less() -> None:
    found = [g.potential_limit(where).nominal for where in g.surroundings()]
    assert found == sorted(found) == [0.15, 0.25, 0.50]


def test_unknown_metals_and_surroundings_are_not_known() -> None:
    with pytest.raises(NotKnown, match="cast iron"):
        g.anodic_index("cast irons")
    with pytest.raises(NotKnown, match="no metal"):
        g.sea_water_potential("gold")
    with pytest.raises(
        NotKnown, match="no surroundings 'under water' in the handbook; it knows weather and wet"
    ):
        g.potential_limit("under water")
