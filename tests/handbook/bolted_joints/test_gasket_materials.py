"""The gasket table: both columns of seating stress agree, missing figures are said to be missing."""

from __future__ import annotations

import pytest

from speclint.errors import NotKnown
from speclint.handbook.bolted_joints import gasket_materials as gm
from speclint.handbook.tables.csv_files import rows

TABLE = rows("gaskets-asme-viii-1-2019-table-2-5-1.csv")
PSI_IN_MPA = 6.894757e-3


@pytest.mark.parametrize("found", TABLE, ids=lambda found: found["gasket"])
def test_seating_stress_in_psi_and_in_megapascals_agree_as_rounded(found: dict[str, str]) -> None:
    assert float(found["y_MPa"]) == pytest.approx(float(found["y_psi"]) * PSI_IN_MPA, abs=0.95)


@pytest.mark.parametrize("gasket", gm.gaskets())
def test_factors_name_their_source(gasket: str) -> None:
    for reading in (gm.gasket_factor(gasket), gm.seating_stress(gasket)):
        assert reading.source.common_practice or reading.source.place.startswith("Table 2-5.1")
        assert reading.nominal >= 0


@pytest.mark.parametrize("gasket", [name for name in gm.gaskets() if name != "self-energising ring"])
def test_limits_of_use_are_common_practice(gasket: str) -> None:
    assert gm.hottest(gasket).source.common_practice
    assert 373 < gm.hottest(gasket).nominal < 800
    assert gm.greatest_pressure(gasket).nominal >= 10e5


def test_harder_metal_needs_more_of_both() -> None:
    solids = ["solid aluminium", "solid copper or brass", "solid soft iron or steel", "solid stainless steel"]
    factors = [gm.gasket_factor(name).nominal for name in solids]
    stresses = [gm.seating_stress(name).nominal for name in solids]
    assert factors == sorted(factors)
    assert stresses == sorted(stresses)


def test_thinner_sheet_needs_more_and_bears_more() -> None:
    sheets = ["fibre sheet 3 mm", "fibre sheet 1.5 mm", "fibre sheet 0.8 mm"]
    for read in (gm.gasket_factor, gm.seating_stress, gm.greatest_pressure_temperature):
        found = [read(name).nominal for name in sheets]
        assert found == sorted(found)
    assert [gm.thickness(name).nominal for name in sheets] == pytest.approx([3e-3, 1.5e-3, 0.8e-3])


def test_a_missing_limit_is_not_known() -> None:
    with pytest.raises(NotKnown, match="gives no greatest pressure × temperature of solid copper or brass"):
        gm.greatest_pressure_temperature("solid copper or brass")
    with pytest.raises(NotKnown, match="gives no greatest temperature of self-energising ring"):
        gm.hottest("self-energising ring")


def test_an_unknown_gasket_is_refused_with_its_nearest() -> None:
    with pytest.raises(NotKnown, match="solid copper or brass"):
        gm.gasket_factor("solid copper")


def test_pressure_times_temperature_by_hand() -> None:
    """17 bar × 210 °C = 3570."""
    assert gm.pressure_temperature(17e5, 483.15) == pytest.approx(3570)
