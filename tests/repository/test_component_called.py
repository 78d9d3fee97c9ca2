"""The component of an id, and in one line why there is none."""

from __future__ import annotations

import pytest

from speclint.errors import DesignError
from speclint.repository import component_called
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("duty", "duty is of the kind duty, which is no component"),
        ("bad", "bad could not be read: speclint check says why"),
        ("tubb", 'no component is called tubb; write "tube"'),
    ],
)
def test_why_there_is_no_component(workshop: DesignFolder, name: str, says: str) -> None:
    workshop.loaded = tubes.tubes()
    broken = 'kind = "tube"\nid = "bad"\nbore = "5,5 mm"\n'
    design = workshop.write({**FILES, "bad.toml": broken}).assess().design
    assert design is not None
    assert component_called("tube", design) is design.specs["tube"]
    with pytest.raises(DesignError) as told:
        component_called(name, design)
    assert str(told.value) == says
