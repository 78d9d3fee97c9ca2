"""Of every rule an example that holds and a change that breaks it, each made again: what a page shows is what it says.

``python -m tests.rule_examples`` writes them. A rule without one stands in ``without_example.csv`` with the reason.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any
from zlib import crc32

import pytest

from speclint import Grade
from speclint.errors import DesignError, field_names, replace
from speclint.families import RuleExample, rule_examples
from speclint.repository import Change
from tests.rule_examples.designs import Bench, bench, examples
from tests.rule_examples.search import example_of
from tests.rule_examples.writing import ROOT, by_hand, file_of

LIST = Path(__file__).with_name("without_example.csv")


def listed() -> Mapping[str, str]:
    """The rules without an example, each with the reason."""
    with LIST.open(encoding="utf-8", newline="") as lines:
        rows = list(csv.DictReader(lines))
    found = {row["rule"]: row["why"] for row in rows}
    assert len(found) == len(rows), f"{LIST.name} lists a rule twice"
    return found


def faults_of(one: RuleExample) -> Iterator[str]:
    """What is wrong with an example: it does not hold, is not broken, or says something else."""
    try:
        now = example_of(bench(), one)
    except DesignError as problem:
        yield f"{one.rule}: {problem}"
        return
    if now is None:
        holds, broken = bench().checks(one)
        yield f"{one.rule} on {one.component} is {holds.outcome}, and once changed {broken.outcome}: {broken.says}"
        return
    for name in field_names(type(one)):
        said, says = getattr(one, name), getattr(now, name)
        if said != says:
            yield f"{one.rule} on {one.component}: {name} is {says!r}, not {said!r}"


FAMILIES = sorted({rule.family for rule in Bench().rules.values()})


@pytest.mark.parametrize(
    "third", [0, pytest.param(1, marks=pytest.mark.long), pytest.param(2, marks=pytest.mark.long)]
)
@pytest.mark.parametrize("family", FAMILIES)
def test_an_example_holds_and_its_change_breaks_it(family: str, third: int) -> None:
    """Each of a family made again, unchanged and changed, with the same words; of all a third, told by their names."""
    own = [
        one
        for one in examples().values()
        if bench().rules[one.rule].family == family and crc32(one.rule.encode()) % 3 == third
    ]
    faults = [fault for one in own for fault in faults_of(one)]
    assert not faults, "\n".join([*faults, "python -m tests.rule_examples writes them anew"])


def test_every_rule_has_an_example_or_is_listed() -> None:
    assert examples().keys() <= bench().rules.keys(), "examples of rules that no family has"
    wanting = bench().rules.keys() - examples().keys()
    assert sorted(wanting) == sorted(listed()), f"{LIST.name} lists other rules than those without an example"


def test_what_is_listed_has_a_reason() -> None:
    assert all(len(why.split()) >= 4 for why in listed().values())


def test_an_example_is_brought_by_the_family_of_its_rule() -> None:
    for family in bench().loaded.families:
        strange = {one for one in rule_examples([family]) if bench().rules[one].family != family.name}
        assert not strange, f"{family.name} brings examples of rules of others: {sorted(strange)}"


def test_what_is_stated_by_hand_is_what_is_shown() -> None:
    for rule, one in by_hand().items():
        assert (one.component, one.changes, one.given) == (
            examples()[rule].component,
            examples()[rule].changes,
            examples()[rule].given,
        )


def test_the_page_for_authors_prints_one_as_it_stands() -> None:
    page = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    (printed,) = re.findall(r'```text\n(\["liner\.iron"\].*?)```', page, re.DOTALL)
    assert printed in file_of("liners").read_text(encoding="utf-8")


IRON = "liner.iron"


@pytest.mark.parametrize(
    ("change", "fault"),
    [
        (Change("liner-left", "title", "Liner"), "is conforms, and once changed conforms"),
        (Change("liner-left", "bore", "4 furlongs"), "bore"),
        (Change("liner-nowhere", "bore", "500 mm"), "no spec is called liner-nowhere"),
        (Change("liner-left", "housed_in", "block-nowhere"), "no spec has this id"),
    ],
)
def test_a_change_that_breaks_nothing_is_found(change: Change, fault: str) -> None:
    (found,) = faults_of(replace(examples()[IRON], changes=(change,), given=()))
    assert fault in found


@pytest.mark.parametrize("field", ["holds", "result", "finding"])
def test_words_that_a_check_does_not_say_are_found(field: str) -> None:
    said: dict[str, Any] = {field: "It is sound."}
    faults = list(faults_of(replace(examples()[IRON], **said)))
    assert len(faults) == 1
    assert f": {field} is " in faults[0]


@pytest.mark.parametrize("name", sorted(listed()))
def test_only_a_rule_that_judges_nothing_is_listed(name: str) -> None:
    """What may be graver than an observation holds a part to something: a change must break it."""
    assert bench().rules[name].gravest is Grade.OBSERVATION
