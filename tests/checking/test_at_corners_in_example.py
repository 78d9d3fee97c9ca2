"""Every rule of the example that takes something toleranced, worked at several corners at once and at each of them."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Hashable, Iterator

import pytest

from speclint.checking import Assessment, Check
from speclint.checking.load_case import load_case_of
from speclint.checking.one_corner import ending_at
from speclint.rules import Corner, Judgement, NotTogether, at_corners
from speclint.rules.many import Many
from speclint.specs import Component, LoadCase
from tests.example import assessed

_CORNERS = 6
#: Of the checks of a rule that are tried, so many: a rule meets other branches on other parts.
_OF_EACH = 2


def _tried(found: Assessment) -> Iterator[tuple[Check, str, list[Hashable]]]:
    """Some checks of each rule in one load case, with the inputs that have sides there."""
    seen: Counter[str] = Counter()
    for one in found.checks:
        for case, sides in one.corners.items():
            if len(sides) > 1 and seen[one.rule.name] < _OF_EACH:
                seen[one.rule.name] += 1
                yield one, case, list(sides)


@pytest.mark.long
def test_the_margins_are_those_of_each_corner_to_the_last_figure() -> None:
    found = assessed()
    context, design = found.context, found.design
    assert context is not None
    assert design is not None
    chance, together, alone = random.Random(26), set[str](), set[str]()
    for one, case_name, keys in _tried(found):
        part = design.specs[one.component]
        assert isinstance(part, Component)
        case = load_case_of(part, case_name, context) if case_name else None  # type: ignore[arg-type]
        assert case is None or isinstance(case, LoadCase)  # as the check has corners in it
        corners = [{key: chance.random() < 0.5 for key in keys} for _ in range(_CORNERS)]
        context.begin()
        try:
            over = at_corners(one.rule, part, case, context, corners)
        except NotTogether:
            alone.add(one.rule.name)
            continue
        for index, sides in enumerate(corners):
            ending = ending_at(one.rule, part, case, context, Corner(sides))
            assert isinstance(ending, Judgement), (one.rule.name, one.component)
            at_once = [
                margin.values[index] if isinstance(margin, Many) else margin
                for compared in over.parts
                for margin in compared.margins
            ]
            alone_there = [margin for judged in ending.every for margin in judged.margins]
            assert at_once == alone_there, (one.rule.name, one.component, case_name)
        together.add(one.rule.name)
    assert len(together) > 60
    assert len(alone - together) < len(together) / 4, sorted(alone - together)
