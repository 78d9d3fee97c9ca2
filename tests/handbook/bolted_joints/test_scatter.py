"""Scatter of preload and embedding: the table, its bounds and its properties."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.bolted_joints import scatter as s


@pytest.mark.parametrize("method", s.tightening_methods())
def test_every_method_has_an_ordered_scatter_and_a_source(method: str) -> None:
    found = s.scatter(method)
    assert 0 < found.low <= found.nominal <= found.high < 1
    assert found.source.common_practice or found.source.work.startswith("VDI 2230")


def test_a_torque_wrench_by_common_practice_is_25_to_30_per_cent() -> None:
    found = s.scatter("torque wrench")
    assert [found.low, found.nominal, found.high] == pytest.approx([0.25, 0.275, 0.30], abs=1e-6)
    assert found.source.common_practice


def test_feel_is_worse_than_any_wrench_but_the_impact_wrench() -> None:
    feel = s.scatter("spanner by feel").high
    assert all(
        s.scatter(m).high < feel
        for m in s.tightening_methods()
        if m not in ("spanner by feel", "impact wrench")
    )


def test_an_unknown_method_is_not_known() -> None:
    with pytest.raises(NotKnown, match="no method 'hammer'"):
        s.scatter("hammer")


@given(st.floats(1.0, 10.0), st.floats(1e3, 1e6))
def test_low_and_high_stand_in_the_ratio_of_the_tightening_factor(factor: float, F: float) -> None:
    share = s.scatter_of_factor(factor)
    assert s.preload_high(F, share) == pytest.approx(factor * s.preload_low(F, share))
    assert s.preload_high(F, share) + s.preload_low(F, share) == pytest.approx(2 * F)


def test_factor_is_at_least_one() -> None:
    assert s.scatter_of_factor(1.0) == 0
    with pytest.raises(OutOfRange, match=r"tightening factor 0\.99 is below 1"):
        s.scatter_of_factor(0.99)


def test_scatter_lies_from_zero_to_one() -> None:
    assert s.preload_low(8.0, 0.0) == 8.0
    assert s.preload_low(8.0, 1.0) == 0
    for wrong in (-0.01, 1.01):
        with pytest.raises(OutOfRange, match="is not from 0 to 1"):
            s.preload_low(8.0, wrong)
        with pytest.raises(OutOfRange, match="is not from 0 to 1"):
            s.preload_high(8.0, wrong)


def test_embedding_of_a_turned_joint() -> None:
    """VDI 2230, Rz below 10 µm: thread 3, nut 2.5, two faces of 1.5 µm: 8.5 µm."""
    assert s.embedding(6e-6, 2).nominal == pytest.approx(8.5e-6)


def test_embedding_changes_at_the_edges_of_its_bands() -> None:
    """One face: below 10 µm 3 + 2.5 + 1.5, from there 3 + 3 + 2, from 40 µm 3 + 4 + 3."""
    assert s.embedding(9.99e-6, 1).nominal == pytest.approx(7e-6)
    assert s.embedding(10.01e-6, 1).nominal == pytest.approx(8e-6)
    assert s.embedding(39.9e-6, 1).nominal == pytest.approx(8e-6)
    assert s.embedding(40.1e-6, 1).nominal == pytest.approx(10e-6)
    assert s.embedding(159.9e-6, 1).nominal == pytest.approx(10e-6)
    with pytest.raises(NotKnown, match="160 µm"):
        s.embedding(160.1e-6, 1)


def test_a_load_across_the_bolts_embeds_more() -> None:
    """VDI 2230, bolt with two faces under nut and head and one between, Rz 10 to 40: 3 + 2 × 3 + 2 = 11 µm along,
    3 + 2 × 4.5 + 2.5 = 14.5 µm across."""
    assert s.embedding(20e-6, 1, 2).nominal == pytest.approx(11e-6)
    assert s.embedding(20e-6, 1, 2, across=True).nominal == pytest.approx(14.5e-6)


@given(st.floats(1e-6, 159e-6), st.integers(0, 6), st.integers(1, 2))
def test_a_load_across_never_embeds_less(roughness: float, between: int, under: int) -> None:
    along = s.embedding(roughness, between, under).nominal
    assert s.embedding(roughness, between, under, across=True).nominal > along


@given(st.floats(1e-6, 50e-6), st.floats(1e7, 1e10), st.floats(1e7, 1e10))
def test_preload_lost_is_what_both_springs_give_up(f: float, k_b: float, k_m: float) -> None:
    lost = s.preload_lost(f, k_b, k_m)
    assert lost / k_b + lost / k_m == pytest.approx(f)
