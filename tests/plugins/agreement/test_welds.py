"""weldment.same-as-block from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

WRONG = ("finding", Grade.NONCONFORMITY)
FINE = ("conforms", None)
SILENT = ("not applicable", None)
BLOCK = """
kind = "cylinder-block"
id = "block"
[welding]
carbon_equivalent = "0.44 %"
preheat = "110 °C"
heat_treatment = "stress relieved"
"""
SHELL = '[plates.shell]\ncarbon_equivalent = "0.44 %"'
WELDMENT = """
kind = "weldment"
id = "weldment"
makes = "block"
[welding]
carbon_equivalent = "0.44 %"
preheat = "110 °C"
heat_treatment = "stress relieved"
[plates.shell]
carbon_equivalent = "0.44 %"
[treatment]
temperature = "570 °C"
"""


@pytest.mark.parametrize(
    ("part", "old", "new", "ends"),
    [
        ("block", "", "", FINE),
        ("block", "110 °C", "111 °C", FINE),
        ("block", "110 °C", "111.02 °C", WRONG),
        ("block", "110 °C", "112 °C", WRONG),
        ("block", "stress relieved", "none", WRONG),
        ("block", '"0.44 %"', '"0.4452 %"', WRONG),  # 0.005 % may stand between them, and no more
        ("block", '"0.44 %"', '"0.4448 %"', FINE),
        ("block", '"0.44 %"', '"0.43 %"', WRONG),
        ("weldment", SHELL, SHELL.replace("0.44", "0.45"), WRONG),
        ("weldment", SHELL, SHELL.replace("0.44", "0.40"), FINE),
        ("weldment", 'makes = "block"\n', "", SILENT),
    ],
)
def test_the_block_states_the_welding_of_its_weldment(
    workshop: DesignFolder, part: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    texts = {"block": BLOCK, "weldment": WELDMENT}
    texts[part] = texts[part].replace(old, new)
    check = workshop.write({f"{name}.toml": text for name, text in texts.items()}).only(
        "weldment.same-as-block"
    )
    assert (check.outcome, check.grade) == ends


def test_a_weldment_that_is_stress_relieved_makes_no_block_without_it(workshop: DesignFolder) -> None:
    weldment = WELDMENT.replace('heat_treatment = "stress relieved"\n', "")
    block = BLOCK.replace("stress relieved", "none")
    check = workshop.write({"block.toml": block, "weldment.toml": weldment}).only("weldment.same-as-block")
    assert (check.outcome, check.grade) == WRONG


def test_a_block_that_says_nothing_is_as_its_weldment(workshop: DesignFolder) -> None:
    block = BLOCK.partition("[welding]")[0]
    check = workshop.write({"block.toml": block, "weldment.toml": WELDMENT}).only("weldment.same-as-block")
    assert (check.outcome, check.grade) == SILENT
