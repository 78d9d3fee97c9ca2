"""The record for certification, and what the pack adds to its parts: sentences and data of parts made here."""

from __future__ import annotations

import datetime as dt
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.checking import Check
from speclint.errors import NOWHERE, replace
from speclint.made import PartInDossier, PieceMade
from speclint.reports import dossier as module
from speclint.reports.dossier import CONCEDED, NO_PIECE, OPEN, PIECES, SHEETS, DossierPart, dossier_said
from speclint.reports.pack import _typeset, mathematics, what_changed as changed_module
from speclint.reports.pack.page import _LONG, _long_lists, style_with
from speclint.reports.pack.what_changed import ROWS, _rows
from speclint.reports.phrases import NO_CODES
from speclint.rules import Grade, Judgement, Step
from speclint.specs import NOT_STATED, Stated
from tests import tubes


def check(component: str = "cover", **other: Any) -> Check:
    judged = Judgement(holds=False, says="113 MPa > 100 MPa", utilisation=1.13)
    one = Check(component, "cover", tubes.stress, "finding", "it bursts", NOWHERE, "f1", judgement=judged)
    return replace(one, **other)


def word(value: object) -> Any:
    return Stated(value, NOWHERE)


def piece(name: str = "cover-7", *checks: Check, **other: Any) -> PieceMade:
    paper = SimpleNamespace(
        type=word("3.1"),
        number=NOT_STATED,
        heat=word("H-1"),
        material=word("steel"),
        by=word("a mill"),
        date=word("1 May"),
    )
    own = {"serial": word("7"), "made_to": word("A"), "maker": NOT_STATED, "certificate": paper}
    made: Any = SimpleNamespace(id=name, **{**own, **{key: {} for key in module._RECORDS}})
    made.welds = {"all": [("mark_of_welder", word("W")), ("of", NOT_STATED)], "none": []}
    found = PieceMade(made, fitted=True, old_revision=False, departures=(), checks=checks)
    return replace(found, **other)


def part(name: str = "cover", **other: Any) -> PartInDossier:
    own: Any = SimpleNamespace(id=name, revision=word("A"))
    return replace(PartInDossier(own, ("pressure part",), (piece(),), (), ()), **other)


def standing(state: str, number: str = "C-001") -> Any:
    entry = SimpleNamespace(
        number=number,
        grade="hold",
        accepted_by="M. Coyle",
        role="draughtsman",
        date=dt.date(2026, 3, 5),
        until=dt.date(2027, 1, 31),
        grounds="proved",
    )
    return SimpleNamespace(concession=entry, state=state, holds=state == "valid")


DESIGN: Any = SimpleNamespace(specs={})


def drawn(monkeypatch: pytest.MonkeyPatch, *parts: PartInDossier, conceded: Any = None, **other: Any) -> Any:
    monkeypatch.setattr(module, "dossier", lambda _: parts)
    monkeypatch.setattr(module, "standings_of", lambda _: conceded or {})
    own = {"design": DESIGN, "settings": None, "complaints": (), "checks": ()}
    return SimpleNamespace(**{**own, **other})


def sections(
    monkeypatch: pytest.MonkeyPatch, one: PartInDossier, conceded: Any = None
) -> dict[str, tuple[str, ...]]:
    (found,) = dossier_said(drawn(monkeypatch, one), conceded or {}).parts
    return dict(found.sections)


def test_a_piece_is_told_with_its_papers_and_records(monkeypatch: pytest.MonkeyPatch) -> None:
    departure = SimpleNamespace(
        key="bore",
        size=SimpleNamespace(band=lambda guard: SimpleNamespace(text=f"20 mm {guard}"), written="2 µm"),
        drawn=None,
        verdict="out",
    )
    other: Any = SimpleNamespace(**{**vars(departure), "drawn": SimpleNamespace(text="19 mm")})
    one = piece(departures=(departure, other))
    found = sections(monkeypatch, part(pieces=(one,)))
    assert list(found) == [PIECES]
    assert found[PIECES] == (
        "cover-7: serial number 7, made to revision A, by not stated; fitted",
        "certificate EN 10204 type 3.1, number not stated, heat H-1, steel, by a mill, 1 May",
        "weld all: mark of welder W",
        "weld none: nothing is stated",
        "departure: bore measured 20 mm 0.0, U = 2 µm, drawn not stated: out",
        "departure: bore measured 20 mm 0.0, U = 2 µm, drawn 19 mm: out",
    )
    old = sections(monkeypatch, part(pieces=(piece(fitted=False, old_revision=True),)))
    assert old[PIECES][0] == (
        "cover-7: serial number 7, made to revision A, an old revision, by not stated; not said to be fitted"
    )


def test_what_stands_in_the_way_is_open_unless_it_is_conceded(monkeypatch: pytest.MonkeyPatch) -> None:
    hold, of_piece = check(grade=Grade.HOLD), check("cover-7", grade=Grade.QUERY)
    one = part(pieces=(piece("cover-7", of_piece),), open=(hold, check(grade=None)))
    found = sections(monkeypatch, one)
    assert found[OPEN] == (
        f"tube.stress on cover (hold): {hold.actual}",
        f"tube.stress on cover-7 (query): {of_piece.actual}",
    )
    lapsed = sections(monkeypatch, one, {hold.order: standing("lapsed"), of_piece.order: standing("valid")})
    assert lapsed[OPEN] == (f"tube.stress on cover (hold): {hold.actual}",)
    assert lapsed[CONCEDED] == (
        "C-001: tube.stress on cover (hold), by M. Coyle, draughtsman, 2026-03-05 until 2027-01-31: lapsed; proved",
        "C-001: tube.stress on cover-7 (hold), by M. Coyle, draughtsman, 2026-03-05 until 2027-01-31: valid; proved",
    )
    assert CONCEDED not in sections(monkeypatch, one, {("other", "tube.stress"): standing("valid")})


def test_a_part_has_one_piece(monkeypatch: pytest.MonkeyPatch) -> None:
    none = sections(monkeypatch, part(pieces=()))
    assert none == {PIECES: (NO_PIECE,), OPEN: (NO_PIECE,)}
    two = sections(monkeypatch, part(pieces=(piece("a"), piece("b"))))
    assert two[OPEN] == ("2 parts as made, and not one of them is said to be fitted",)


def test_a_sheet_says_what_is_used_of_its_limit(monkeypatch: pytest.MonkeyPatch) -> None:
    found = sections(monkeypatch, part(sheets=(check(), check(judgement=None, outcome="conforms"))))
    assert found[SHEETS] == (
        "tube.stress, edition 1: finding, uses 1.13 of its limit; fingerprint f1",
        "tube.stress, edition 1: conforms; fingerprint f1",
    )


@pytest.mark.parametrize(
    ("pieces", "still_open", "said"),
    [
        (
            (1,),
            (0,),
            "Of 1 part that holds pressure or is a safety part, 0 are without a part as made on record, and 0 have",
        ),
        (
            (0, 1),
            (1, 0),
            "Of 2 parts that hold pressure or are safety parts, 1 is without a part as made on record, and 1 has",
        ),
        (
            (0, 0),
            (2, 1),
            "Of 2 parts that hold pressure or are safety parts, 2 are without a part as made on record, and 2 have",
        ),
    ],
)
def test_the_parts_are_counted(pieces: tuple[int, ...], still_open: tuple[int, ...], said: str) -> None:
    parts = [
        DossierPart("a", "a", "so", number, ((OPEN, ("x",) * left),) if left else ())
        for number, left in zip(pieces, still_open, strict=True)
    ]
    assert module._counted(parts) == f"{said} something open."
    assert [one.open for one in parts] == list(still_open)
    assert DossierPart("a", "a", "so", 1, ((CONCEDED, ("x", "y")),)).conceded == 2


def test_the_works_and_their_codes_are_named(monkeypatch: pytest.MonkeyPatch) -> None:
    bare = dossier_said(drawn(monkeypatch, complaints=("a.toml:3: so",)))
    assert (bare.works, bare.codes, bare.not_read) == (
        "a works that is not named",
        (NO_CODES,),
        ("a.toml:3: so",),
    )
    codes = SimpleNamespace(pressure=("code P",), railway=("code R",))
    settings = SimpleNamespace(works=SimpleNamespace(name=word("Tube works")), local_codes=codes)
    found = dossier_said(drawn(monkeypatch, settings=settings))
    assert (found.works, found.codes) == ("Tube works", ("code P", "code R"))
    settings.local_codes, settings.works.name = SimpleNamespace(pressure=(), railway=()), NOT_STATED
    found = dossier_said(drawn(monkeypatch, part(), settings=settings))
    assert (found.works, found.codes) == ("a works that is not named", (NO_CODES,))
    assert len(found.parts) == 1
    assert dossier_said(drawn(monkeypatch, part(), design=None)).parts == ()


def test_concessions_are_those_that_are_known_or_asked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    hold = check(grade=Grade.HOLD)
    asked = drawn(monkeypatch, part(open=(hold,)), conceded={hold.order: standing("valid")})
    assert dossier_said(asked).parts[0].open == 0
    assert dossier_said(asked, {}).parts[0].open == 1


def test_the_same_as_data(monkeypatch: pytest.MonkeyPatch) -> None:
    hold = check(grade=Grade.HOLD)
    one = part(open=(hold,), sheets=(hold,))
    data = module.dossier_data(
        drawn(monkeypatch, one, conceded={hold.order: standing("lapsed"), ("z", "r"): standing("valid")})
    )
    (found,) = data["parts"]
    (made,) = found.pop("pieces")
    assert found == {
        "part": "cover",
        "why": ["pressure part"],
        "revision": "A",
        "conceded": [
            {
                "number": "C-001",
                "component": "cover",
                "rule": "tube.stress",
                "by": "M. Coyle",
                "until": "2027-01-31",
                "state": "lapsed",
            }
        ],
        "sheets": [{"rule": "tube.stress", "outcome": "finding", "fingerprint": "f1"}],
        "open": [f"tube.stress on cover (hold): {hold.actual}"],
    }
    assert made == {
        "part": "cover-7",
        "serial": "7",
        "made_to": "A",
        "old_revision": False,
        "fitted": True,
        "certificate": {"type": "3.1", "number": None, "heat": "H-1"},
        "records": [
            {"of": "welds", "name": "all", "states": ["mark of welder W"]},
            {"of": "welds", "name": "none", "states": []},
        ],
        "departures": [],
    }
    own: Any = SimpleNamespace(id="cover", revision=NOT_STATED)
    bare = module.dossier_data(drawn(monkeypatch, part(part=own)))
    assert bare["parts"][0]["revision"] is None
    assert module.dossier_data(drawn(monkeypatch, part(), design=None))["parts"] == []


def test_the_exit_code_of_a_record(monkeypatch: pytest.MonkeyPatch) -> None:
    hold = check(grade=Grade.HOLD)
    code = module.dossier_exit_code
    assert code(drawn(monkeypatch, part())) == 0
    assert code(drawn(monkeypatch, part(), part(open=(hold,)))) == 1
    assert code(drawn(monkeypatch, part(open=(hold,)), conceded={hold.order: standing("valid")})) == 0
    assert code(drawn(monkeypatch)) == 1
    assert code(drawn(monkeypatch, part(), complaints=("so",))) == 2
    assert code(drawn(monkeypatch, part(), design=None)) == 2
    assert code(drawn(monkeypatch, part(), complaints=("so",), checks=(check(could_not_run="fault"),))) == 3


# Parts of the pack


def test_a_table_of_what_changed_has_a_hundred_rows() -> None:
    """A heading that counts stands by itself; any other only over rows."""
    rows = [("a",)] * (ROWS + 2)
    assert _rows("Specs", rows[:ROWS], "row").more == ""
    found = _rows("Specs", rows[: ROWS + 1], "row")
    assert (len(found.shown), found.more, found.heading) == (ROWS, "and 1 more row", "Specs")
    assert _rows("Specs", rows, "row").more == "and 2 more rows"
    assert _rows("Specs", [], "row").heading == ""
    assert _rows("Findings: none", [], "row").heading == "Findings: none"
    assert changed_module.ROWS == 100


@pytest.mark.parametrize(("number", "packed"), [(_LONG, []), (_LONG + 1, ["gaps.2"])])
def test_a_list_of_more_than_two_hundred_rows_is_packed(number: int, packed: list[str]) -> None:
    lists = (("short", (("a", "b"),)), ("long", (("a", "b"),) * number))
    document: Any = SimpleNamespace(not_looked_at=SimpleNamespace(lists=lists))
    assert [place for place, _ in _long_lists(document)] == packed
    assert _LONG == 200


def test_each_width_of_a_drawing_has_its_rule_once() -> None:
    drawings = [f'<svg class="drawing own-{wide}"/>' for wide in (760, 90, 760)]
    style = style_with(drawings)
    assert style.endswith(".own-90 { --own: 90px; }\n.own-760 { --own: 760px; }\n")
    assert style.count("--own: 760px") == 1


def test_formulae_are_set_by_helpers_a_hundred_at_a_time(monkeypatch: pytest.MonkeyPatch) -> None:
    """Those of checks that apply, and that are not known yet."""
    monkeypatch.setattr(mathematics, "_known", {"a0 =": "known"})
    steps = tuple(Step("taken", f"a{n}", "a", 1.0) for n in range(202))
    idle = check(outcome="not applicable", steps=(Step("taken", "b", "b", 1.0),))
    asked: list[list[Any]] = []

    def spread(work: Any, shares: Any) -> Any:
        assert work is mathematics.typeset
        asked.extend(shares)
        return [[(one, f"page of {one}") for one in share] for share in shares]

    of: Any = SimpleNamespace(checks=(check(steps=steps), idle))
    _typeset(of, SimpleNamespace(spread=spread))  # type: ignore[arg-type]
    assert [len(share) for share in asked] == [100, 100, 1]
    assert asked[0][0] == "a1 ="
    assert mathematics.known()["a201 ="] == "page of a201 ="
    assert "b =" not in mathematics.known()
