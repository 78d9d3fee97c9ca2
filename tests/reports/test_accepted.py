"""Concessions of findings on parts alike, and what few words of a finding say and where it points, by hand."""

from __future__ import annotations

import datetime as dt
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.checking import Check
from speclint.errors import NOWHERE, Location, replace
from speclint.reports.accepted import standings_shown, with_concessions
from speclint.reports.finding_lines import (
    cut_to_one,
    row,
    short,
    where_to_look,
)
from speclint.rules import Amount, Grade, Judgement
from tests import tubes


def check(component: str = "tube", used: float | None = None, **other: Any) -> Check:
    judged = Judgement(holds=False, says="113 MPa > 100 MPa", utilisation=used)
    one = Check(component, "tube", tubes.stress, "finding", "it bursts", NOWHERE, "", judgement=judged)
    return replace(one, **other)


@pytest.mark.parametrize(("width", "words"), [(60, 10), (59, 10), (58, 9), (57, 9)])
def test_a_row_is_cut_to_one_line_with_a_mark(width: int, words: int) -> None:
    """Ten words take 49 letters beside the eight of the figure; the mark and its space take two more."""
    one = row("1.13", "one line", width)
    assert cut_to_one(one, width) == one
    rows = row("1.13", " ".join(["word"] * 15), width, "hold")
    assert len(rows) == 2
    assert cut_to_one(rows, width) == [(("  1.13  ", "hold"), (" ".join(["word"] * words) + " …", ""))]


def test_what_fails_in_few_words() -> None:
    """The rule's second sentence, what is briefer, or the numbers; a rule that has none says how it came out."""
    assert short(check(could_not_run="ZeroDivisionError")) == "tube.stress could not be run"
    brief = Judgement(holds=False, says="long", brief="in brief")
    assert short(check(judgement=brief)) == "in brief"
    assert short(check(judgement=replace(brief, brief="", wrong="it is wrong"))) == "it is wrong"
    assert short(check(judgement=None)) == "it bursts"
    numbers = replace(brief, brief="", found=Amount(113e6, "Pa"), limit=Amount(100e6, "Pa"), compared="≤")
    said = check(judgement=numbers)
    plain = replace(said, says=said.actual)
    assert short(plain) == "tube.stress: 113 MPa > 100 MPa"
    assert short(replace(plain, judgement=replace(brief, brief="", says="as judged", wrong=plain.says))) == (
        "tube.stress: as judged"
    )


def standing(state: str, number: str = "C-001") -> Any:
    entry = SimpleNamespace(
        number=number, accepted_by="M. Coyle", until=dt.date(2027, 1, 31), rule="tube.stress"
    )
    return SimpleNamespace(concession=entry, state=state, holds=state in ("valid", "ending soon"))


def test_the_value_to_look_at_is_one_that_a_remedy_changes() -> None:
    here, there = Location("tube.toml", 3, "bore"), Location("tube.toml", 4, "outside")
    own, other = SimpleNamespace(where=here), SimpleNamespace(where=there)
    found = check(where=here)
    assert where_to_look(found, []) == here
    assert where_to_look(found, [other, own]) == here  # type: ignore[list-item]
    assert where_to_look(found, [other]) == there  # type: ignore[list-item]
    of_part = replace(found, where=replace(here, part="tube-b"))
    assert where_to_look(of_part, [own]) == of_part.where  # type: ignore[list-item]


# Concessions of parts alike


def test_parts_alike_stand_together_where_one_concession_is_of_all_or_none_of_any() -> None:
    some = [check(name, alike="same") for name in "abcd"]
    conceded = {some[1].order: standing("valid"), some[3].order: standing("valid")}
    found = list(with_concessions(some, conceded))
    assert [[one.component for one in group.checks] for group in found] == [["a", "c"], ["b", "d"]]
    other = {**conceded, some[3].order: standing("valid", "C-002")}
    assert [len(one.checks) for one in with_concessions(some, other)] == [2, 1, 1]
    lapsed = {**conceded, some[3].order: standing("lapsed")}
    assert [len(one.checks) for one in with_concessions(some, lapsed)] == [2, 1, 1]


def test_a_standing_is_asked_of_the_checks_in_the_way_that_have_a_concession_and_of_no_other(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Another's would have to be checked first, which the check of one part has no use for."""
    from speclint.reports import accepted

    asked: list[set[tuple[str, str]]] = []

    def found(_: object, about: set[tuple[str, str]]) -> dict[str, str]:
        asked.append(about)
        return {"found": "it"}

    monkeypatch.setattr(accepted, "standings_of", found)

    def shown(grade: Grade | None, part: str, rule: str) -> bool:
        other = SimpleNamespace(parts=("other",), rule="tube.stress")
        entries = (other, SimpleNamespace(parts=("more", part), rule=rule))
        of = SimpleNamespace(checks=(check(grade=grade),), register=SimpleNamespace(concessions=entries))
        return bool(standings_shown(of))  # type: ignore[arg-type]

    assert shown(Grade.QUERY, "tube", "tube.stress")
    assert not shown(None, "tube", "tube.stress")
    assert not shown(Grade.QUERY, "tube", "tube.hoops")
    assert not shown(Grade.QUERY, "tube-2", "tube.stress")
    assert asked == [{("tube", "tube.stress")}]


def test_of_several_entries_of_one_finding_the_one_that_holds_counts_else_the_last(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    import speclint.register
    from speclint.reports.accepted import standings_of

    def state(*states: str) -> object:
        found = [SimpleNamespace(subject=("tube", "rule"), state=one, holds=one == "valid") for one in states]
        monkeypatch.setattr(speclint.register, "surroundings", lambda _, today: today)
        monkeypatch.setattr(speclint.register, "standings", lambda _, _today, _about: found)
        of: Any = SimpleNamespace(register=SimpleNamespace(concessions=("one",)))
        (only,) = standings_of(of, dt.date(2026, 1, 1)).values()
        return only.state

    assert state("lapsed", "expired") == "expired"
    assert state("lapsed", "valid") == "valid"
    assert state("valid", "lapsed") == "valid"
    empty: Any = SimpleNamespace(register=SimpleNamespace(concessions=()))
    assert standings_of(empty) == {}
