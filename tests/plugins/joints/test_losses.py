"""joint.loss-foreseen: at least 5 % of the preload is taken to be lost in service."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "joint.loss-foreseen"


@pytest.mark.parametrize("kind", ["bolted-joint", "frame-fastening"])
@pytest.mark.parametrize(
    ("loss", "conforms"),
    [("5 %", True), ("4.9 %", False), ("4..10 %", False), ("0 %", False), ("10 %", True)],
)
def test_the_loss_is_at_least_a_twentieth(
    workshop: DesignFolder, kind: str, loss: str, conforms: bool
) -> None:
    text = f'kind = "{kind}"\nid = "studs"\nrelaxation = "{loss}"\n'
    check = workshop.write({"studs.toml": text}).only(RULE)
    assert (check.outcome, check.grade) == (("conforms", None) if conforms else ("finding", Grade.QUERY))


def test_without_a_loss_other_rules_ask_for_it(workshop: DesignFolder) -> None:
    check = workshop.write({"studs.toml": 'kind = "bolted-joint"\nid = "studs"\n'}).only(RULE)
    assert check.outcome == "not applicable"
