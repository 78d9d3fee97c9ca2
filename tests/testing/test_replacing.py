"""A function that a test replaces counts where the rules run on copies of their functions, and in that test alone."""

from __future__ import annotations

import pytest

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Pascals
from speclint.rules.twins import original_of, twin
from speclint.testing import DesignFolder, functions_replaced
from tests import tubes
from tests.tubes import FILES

#: By hand, of 100 MPa at 3 MPa: 3 × 100.5/(104.5 − 100.5) = 75.375 MPa, the bore large and the outside small; of the
#: other formula 3 × 105.5/99.5 = 3.181 MPa, the bore small and the outside large.
DRAWN, REPLACED = 0.75375, 0.03180905


@formula("σ = p D/d", cites=[FIRST_PRINCIPLES])
def other_stress(p: Pascals, d: Metres, D: Metres) -> Pascals:
    """A stress that is the worst where the other is the least."""
    return p * D / d


@pytest.fixture
def shop(workshop: DesignFolder) -> DesignFolder:
    workshop.loaded = tubes.tubes()
    return workshop.write(FILES)


def used(shop: DesignFolder) -> float | None:
    return shop.only("tube.stress").utilisation


def test_a_function_that_is_replaced_counts_inside(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert used(shop) == pytest.approx(DRAWN, rel=1e-6)
    with functions_replaced(), monkeypatch.context() as patch:
        patch.setattr(tubes, "mean_hoop_stress", other_stress)
        assert used(shop) == pytest.approx(REPLACED, rel=1e-6)
    assert used(shop) == pytest.approx(DRAWN, rel=1e-6)


def test_what_was_made_of_it_goes_with_it(shop: DesignFolder, monkeypatch: pytest.MonkeyPatch) -> None:
    with functions_replaced():
        with monkeypatch.context() as patch:
            patch.setattr(tubes, "mean_hoop_stress", other_stress)
            used(shop)
        with functions_replaced():
            assert used(shop) == pytest.approx(DRAWN, rel=1e-6)
    assert used(shop) == pytest.approx(DRAWN, rel=1e-6)


def fails_inside(function: object) -> None:
    with functions_replaced():
        twin(function)
        raise ZeroDivisionError


def test_the_copies_of_before_come_back_after_an_error_too() -> None:
    function = tubes.stress.function
    before = twin(function)
    with functions_replaced():
        inside = twin(function)
        assert inside is not before
    assert twin(function) is before
    with pytest.raises(ZeroDivisionError):
        fails_inside(function)
    assert twin(function) is before
    assert original_of(before) is function
    assert original_of(inside) is inside
