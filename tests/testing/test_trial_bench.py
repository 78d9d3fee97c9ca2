"""The bench on which examples of rules are tried: each on its own design, the last of them kept."""

from __future__ import annotations

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.errors import DesignError, replace
from speclint.families import RuleExample
from speclint.repository import Change
from speclint.testing import TrialBench
from speclint.testing.declared_properties import Direction
from speclint.testing.directions import changed_in
from speclint.testing.stating import stated_too
from tests.tubes import FILES, Tube, ends, stress, tubes

GIVEN = tuple(Change(name.removesuffix(".toml"), value=text) for name, text in FILES.items())
#: By hand, as in the tests of remedies: 30 bar uses 0.75375 of the limit, 45 bar 1.130625.
HIGHER = Change("tube", "pressure", "45 bar gauge")
EXAMPLE = RuleExample("tube.stress", "tube", "", "", "", (HIGHER,), GIVEN, alone=True)


def wider() -> RuleExample:
    """The same with a tube of 110 mm: 3 × 100.5/(109.5 − 100.5) = 33.5 MPa of 100, at 45 bar 50.25."""
    given = [
        replace(one, value=one.value.replace("105 mm", "110 mm")) if one.component == "tube" else one
        for one in GIVEN
    ]
    return replace(EXAMPLE, given=tuple(given))


def test_each_example_is_tried_on_its_own_design() -> None:
    bench = TrialBench(tubes())
    used = [one.utilisation for example in (EXAMPLE, wider(), EXAMPLE) for one in bench.checks(example)]
    assert used == pytest.approx([0.75375, 1.130625, 0.335, 0.5025, 0.75375, 1.130625])
    assert [one.outcome for one in bench.checks(EXAMPLE)] == ["conforms", "finding"]


def test_the_design_of_an_example_that_is_asked_for_again_is_kept() -> None:
    bench = TrialBench(tubes())
    first = bench.before(EXAMPLE)
    assert bench.before(EXAMPLE) is first
    assert bench.before(wider()) is not first


@pytest.mark.parametrize(
    ("direction", "changes"),
    [
        ("pressure", [Change("tube", "pressure", "33 bar gauge")]),  # a tenth more than 30 bar
        ("temperature", []),  # the rule opens none: bore, outside and pressure alone
        ("wear", []),
    ],
)
def test_a_design_is_made_worse_in_one_way_alone(direction: Direction, changes: list[Change]) -> None:
    holds, _ = TrialBench(tubes()).trials(EXAMPLE)
    assert list(changed_in(holds, direction)) == changes


def stated_in(rule: str, *left_out: str) -> list[tuple[str, str, object]]:
    """What could be stated too for a check of the tube, where some of its lines are left out."""
    lines = FILES["tube.toml"].splitlines()
    tube = "\n".join(one for one in lines if one.partition(" =")[0] not in left_out)
    more = (Change("other", value=FILES["tube.toml"].replace("hoops = 4", "hoops = 6")),)
    given = [replace(one, value=tube) if one.component == "tube" else one for one in GIVEN]
    holds, _ = TrialBench(tubes()).trials(replace(EXAMPLE, rule=rule, given=(*given, *more)))
    return [(change.component, change.key, change.value) for _, change in stated_too(holds)]


def test_what_is_not_stated_is_tried_with_each_word_or_with_what_others_state() -> None:
    assert stated_in("tube.ends", "ends") == [("tube", "ends", "open"), ("tube", "ends", "closed")]
    assert stated_in("tube.hoops", "hoops") == [("tube", "hoops", 6)]


def test_what_is_stated_is_not_stated_again() -> None:
    assert stated_in("tube.ends") == []
    assert stated_in("tube.stress") == []
    assert stated_in("tube.stress", "hoops") == []  # nor what the rule does not ask for


def test_a_rule_or_a_repository_that_is_not_there_is_told() -> None:
    bench = TrialBench(tubes())
    with pytest.raises(DesignError, match=r"^no rule is called tube\.stres$"):
        bench.trial("tube.stres", "tube", bench.before(EXAMPLE))
    with pytest.raises(DesignError, match=r"^the bench was given no design repository$"):
        bench.trials(replace(EXAMPLE, alone=False))


def test_of_a_rule_that_reviews_the_others_its_own_check_is_tried() -> None:
    """It is made after the others of the component, and says how they came out."""

    @rule(
        "tube.reviewed",
        title="no check of the tube fails",
        on=Tube,
        grade=Grade.QUERY,
        cites=[FIRST_PRINCIPLES],
        why="w",
        leaves_out="l",
        reviews=True,
    )
    def reviewed(_tube: Tube, sheet: Sheet) -> Judgement:
        """No check of the tube has a finding."""
        outcomes = sheet.outcomes()
        return sheet.states("finding" not in outcomes.values(), ", ".join(sorted(outcomes)))

    bench = TrialBench(tubes(stress, reviewed, ends))
    checks = bench.checks(replace(EXAMPLE, rule="tube.reviewed"))
    assert [(one.rule.name, one.outcome) for one in checks] == [
        ("tube.reviewed", "conforms"),
        ("tube.reviewed", "finding"),
    ]
    assert "tube.stress" in checks[0].says


def test_a_component_that_is_not_there_is_told() -> None:
    bench = TrialBench(tubes())
    with pytest.raises(DesignError, match=r"^no component is called tubee$"):
        bench.trial("tube.stress", "tubee", bench.before(EXAMPLE))
    with pytest.raises(DesignError, match=r"^no component is called duty$"):
        bench.trial("tube.stress", "duty", bench.before(EXAMPLE))
