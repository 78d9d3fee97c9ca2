"""What a key of a spec may be written as: an example in the words of the key, and none where there is no such key."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.specs import usual_at
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES, RACK


@pytest.mark.parametrize(
    ("spec", "key", "written"),
    [
        ("tube", "held_in", "rack-left"),
        ("tube", "no_such_key", None),
        ("rack", "slots", None),  # a table, not a value
        ("rack", "slots.b.width", None),  # no slot is called b
        ("rack", "hole.width", None),  # a quantity has no keys
    ],
)
def test_what_a_key_may_be_written_as(tmp_path: Path, spec: str, key: str, written: str | None) -> None:
    shop = DesignFolder(tmp_path, tubes.tubes())
    shop.write({**FILES, "rack.toml": RACK + '[slots.a]\nwidth = "10 mm"\n'})
    design = shop.assess().design
    assert design is not None
    assert usual_at(design.specs[spec], key) == written
    inner, outer = usual_at(design.specs["rack"], "slots.a.width"), usual_at(design.specs["rack"], "hole")
    assert isinstance(inner, str)
    assert isinstance(outer, str)
    assert inner.endswith("mm")
