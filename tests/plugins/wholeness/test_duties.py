"""Load cases of the duty of a block, and tables without which a spec says nothing."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

SAFETY = ("starting", "running", "test", "water")
OTHERS = ("cold", "drifting", "warming", "cooling", "standing-hot")
RULES = {"duty.cases-there": SAFETY, "duty.other-cases": OTHERS}
BLOCK = 'kind = "cylinder-block"\nduty = "duty"'


def duty(*cases: str) -> str:
    return 'kind = "duty"\n' + "\n".join(f"[cases.{case}]" for case in cases)


@pytest.mark.parametrize(("rule", "cases"), RULES.items())
def test_each_load_case_of_its_own_is_asked_for(
    workshop: DesignFolder, rule: str, cases: tuple[str, ...]
) -> None:
    """Those of one rule are enough for it, and each of them is missed; that of no duty is the first one."""
    assert told(workshop, {"block": BLOCK, "duty": duty(*cases)}, rule, "block") == ""
    for gone in cases:
        rest = (case for case in (*SAFETY, *OTHERS) if case != gone)
        says = f"duty of block wants a load case {gone}: none is there"
        assert told(workshop, {"block": BLOCK, "duty": duty(*rest)}, rule, "block") == says
    says = f"duty of block wants a load case {cases[0]}: none is there"
    assert told(workshop, {"block": 'kind = "cylinder-block"'}, rule, "block") == says


@pytest.mark.parametrize(("rule", "cases"), RULES.items())
def test_a_case_that_is_missed_is_looked_for_in_the_file_of_the_duty(
    workshop: DesignFolder, rule: str, cases: tuple[str, ...]
) -> None:
    files = {"block.toml": BLOCK, "duties/duty.toml": duty(*cases[1:])}
    found = workshop.write(files, settings='[works]\nstage = "for-review"\n').only(rule, "block")
    assert (found.outcome, found.where.file) == ("finding", "duties/duty.toml")
    alone = workshop.write({"block.toml": 'kind = "cylinder-block"\n'}).only(rule, "block")
    assert alone.where.file == "block.toml"


LAND, POINT, GAP, WEIGHT = (f"[{table}.one]" for table in ("lands", "points", "gaps", "weights"))


@pytest.mark.parametrize(
    ("kind", "tables", "wants"),
    [
        ("cylinder-liner", [LAND], ""),
        ("cylinder-liner", [], "lands"),
        ("envelope", [POINT], ""),
        ("envelope", [GAP], ""),
        ("envelope", [POINT, GAP], ""),
        ("envelope", [], "points or gaps"),
        ("lifting-plan", [WEIGHT, POINT], ""),
        ("lifting-plan", [POINT], "weights"),
        ("lifting-plan", [WEIGHT], "points"),
    ],
)
def test_a_plan_states_its_tables(workshop: DesignFolder, kind: str, tables: list[str], wants: str) -> None:
    says = f"part wants a statement of its {wants}: none is there" if wants else ""
    part = "\n".join((f'kind = "{kind}"', *tables))
    assert told(workshop, {"part": part}, "part.tables-stated", "part") == says
