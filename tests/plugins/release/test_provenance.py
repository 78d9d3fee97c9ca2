"""release.assumed and release.measured-only."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.release.part import files, settings

ASSUMED, MEASURED = "release.assumed", "release.measured-only"
PLAIN = 'thickness = "50 mm"'


def marked(*words: str) -> dict[str, str]:
    """The cover with thickness, bore and flange marked."""
    keys = ("thickness", "bore", "flange_thickness")
    lines = (
        f'{key} = {{ value = "50 mm", from = "{word}" }}' for key, word in zip(keys, words, strict=False)
    )
    return files((PLAIN, "\n".join(lines)))


@pytest.mark.parametrize("rule", [ASSUMED, MEASURED])
def test_figures_of_the_drawing_conform(workshop: DesignFolder, rule: str) -> None:
    assert workshop.write(files(), settings=settings()).only(rule, "cover").outcome == "conforms"


def test_every_assumed_figure_is_listed_and_no_other(workshop: DesignFolder) -> None:
    workshop.write(marked("assumed", "measured", "assumed"), settings=settings())
    check = workshop.only(ASSUMED, "cover")
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert check.says == "assumed: thickness, flange_thickness"
    assert check.where.file == "cover.toml"


@pytest.mark.parametrize("word", ["drawing", "calculated", "measured"])
def test_another_provenance_is_not_assumed(workshop: DesignFolder, word: str) -> None:
    assert workshop.write(marked(word), settings=settings()).only(ASSUMED, "cover").outcome == "conforms"


@pytest.mark.parametrize(
    ("stage", "outcome"),
    [("draft", "not applicable"), ("for-review", "finding"), ("released", "finding")],
)
def test_a_draft_may_assume(workshop: DesignFolder, stage: str, outcome: str) -> None:
    workshop.write(marked("assumed"), settings=settings(stage))
    assert workshop.only(ASSUMED, "cover").outcome == outcome


@pytest.mark.parametrize("stage", ["draft", "for-review", "released"])
def test_a_figure_measured_from_an_original_is_a_query_at_every_stage(
    workshop: DesignFolder, stage: str
) -> None:
    check = workshop.write(marked("measured"), settings=settings(stage)).only(MEASURED, "cover")
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert check.says == "measured, without a design value: thickness"


@pytest.mark.parametrize("word", ["drawing", "calculated", "assumed"])
def test_another_provenance_is_not_measured(workshop: DesignFolder, word: str) -> None:
    assert workshop.write(marked(word), settings=settings()).only(MEASURED, "cover").outcome == "conforms"


def test_a_measured_figure_inside_a_table_is_found(workshop: DesignFolder) -> None:
    block = 'kind = "cylinder-block"\nid = "block"\n[bores.main]\n'
    block += 'diameter = { value = "500 mm", from = "measured", note = "from the old cylinder" }\n'
    check = workshop.write({"block.toml": block}).only(MEASURED, "block")
    assert check.says == "measured, without a design value: bores.main.diameter"


def test_a_chain_measured_on_the_job_copies_no_worn_original(workshop: DesignFolder) -> None:
    chain = (
        'kind = "dimension-chain"\nid = "chain"\n[chain.a]\nsize = { value = "50 mm", from = "measured" }\n'
    )
    assert workshop.write({"chain.toml": chain}).only(MEASURED, "chain").outcome == "not applicable"


def test_a_rule_of_safety_that_took_an_assumed_figure_makes_it_a_hold(workshop: DesignFolder) -> None:
    """The design pressure, which release.pressure-part holds against the duty, is only assumed."""
    stated = 'design_pressure = "17 bar gauge"'
    assumed = 'design_pressure = { value = "17 bar gauge", from = "assumed" }'
    check = workshop.write(files((stated, assumed)), settings=settings()).only(ASSUMED, "cover")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "used by" in check.says
    assert "release.pressure-part" in check.says
