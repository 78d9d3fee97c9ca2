"""The table of packings: complete, ordered where the trade orders it, honest about its standing."""

from __future__ import annotations

import pytest

from speclint.errors import NotKnown
from speclint.handbook.materials import packings as p


@pytest.mark.parametrize("packing", p.packings())
def test_every_packing_is_rated_by_common_practice_and_has_advice(packing: str) -> None:
    for rating in (p.hottest(packing), p.greatest_pressure(packing)):
        assert rating.source.common_practice
        assert rating.low == rating.nominal == rating.high
    assert 373 <= p.hottest(packing).nominal <= 873
    assert 5e5 <= p.greatest_pressure(packing).nominal <= 300e5
    assert p.advice(packing)


def test_segments_run_hotter_from_white_metal_through_bronze_to_iron() -> None:
    found = [p.hottest(f"{metal} segments").nominal for metal in ("white metal", "bronze", "grey iron")]
    assert found == sorted(found)
    assert len(set(found)) == 3


def test_iron_segments_by_the_table() -> None:
    """400 °C is 673.15 K, 25 bar is 2.5 MPa."""
    assert p.hottest("grey iron segments").nominal == pytest.approx(673.15)
    assert p.greatest_pressure("grey iron segments").nominal == pytest.approx(2.5e6)
    assert p.fastest("grey iron segments").nominal == 8.0


def test_a_static_seal_has_no_speed() -> None:
    with pytest.raises(NotKnown, match="gives no greatest speed of silicone ring"):
        p.fastest("silicone ring")


def test_an_unknown_packing_is_refused_with_its_nearest() -> None:
    for read in (p.hottest, p.greatest_pressure, p.fastest, p.advice):
        with pytest.raises(NotKnown, match="braided graphite"):
            read("braided graphit")
