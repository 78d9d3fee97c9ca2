"""What the sheets of a run consult: materials of the repository before those of the handbook, and other checks."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint.checking.inputs import _find_material
from speclint.errors import NotKnown
from speclint.handbook.materials import material
from speclint.rules.other_check import OtherCheck
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES


def test_a_material_of_the_repository_goes_before_that_of_the_handbook() -> None:
    own: Any = object()
    name = "plate-P265GH"
    assert _find_material({name: own}, name) is own
    assert _find_material({"other": own}, name) is material(name)
    with pytest.raises(NotKnown):
        _find_material({"other": own}, "nothing")


def test_the_check_of_another_part_is_told_by_its_rule_and_part(tmp_path: Path) -> None:
    """By hand as in other tests: 30 bar × 100.5/(104.5 − 100.5) = 75.375 of 100 MPa."""
    context = DesignFolder(tmp_path, tubes.tubes()).write(FILES).assess().context
    assert context is not None
    found = context.other_check("tube", "tube.stress")
    assert isinstance(found, OtherCheck)
    assert (found.rule, found.part, found.outcome) == ("tube.stress", "tube", "conforms")
    assert found.used == pytest.approx(0.75375)
    assert found.says.startswith("mean hoop stress of a tube 75.38 MPa ≤ 100 MPa")
    assert context.other_check("tube", "tube.stress") == found
    assert isinstance(context.other_check("tube", "tube.none"), str)
