"""Short lists of a report by hand: names, readings of drawings, what is staged, what a part takes over, faults."""

from __future__ import annotations

import datetime as dt
import math
from importlib import import_module
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.errors import NOWHERE, Location
from speclint.reports import phrases, terminal_page
from speclint.reports.comparison_data import comparison_data
from speclint.reports.names_listing import lists_page, names_data, names_page
from speclint.reports.page import Page
from speclint.reports.phrases import drawings_said, known_faults_said, left_out, old_revisions_said
from speclint.reports.reading_listing import reading_slip, readings_data, readings_on, readings_said
from speclint.reports.staged_findings import staged_page
from speclint.reports.taken_over import said_of_like
from speclint.rules import Grade


def name(called: str, says: str = "so") -> Any:
    return SimpleNamespace(name=called, says=says)


def listed(called: str, *names: str, taken_by: tuple[str, ...] = ()) -> Any:
    return SimpleNamespace(
        called=called, about=f"about {called}", names=[name(one) for one in names], taken_by=taken_by
    )


# Names


def test_lists_stand_in_a_line_each_beside_the_longest() -> None:
    page = lists_page([listed("units", "a", "b"), listed("gaskets", "a")], 80).text().splitlines()
    assert page[:3] == ["  units    about units: 2 names", "  gaskets  about gaskets: 1 name", ""]
    assert lists_page([], 80).text().startswith("speclint names LIST")


def test_the_names_of_a_list_with_where_they_are_written() -> None:
    """Of a list that is asked for by its one key it need not be said."""
    keys = tuple(f"kind.{one}" for one in "abcde")
    one = listed("units", "mm", "a longer name", taken_by=keys)
    page = names_page([one], 80).text().splitlines()
    assert page == [
        "units" + "2 names".rjust(75),
        "about units.",
        "Written under kind.a, kind.b, kind.c, kind.d and 1 more.",
        "  mm             so",
        "  a longer name  so",
    ]
    four = listed("units", "mm", taken_by=keys[:4])
    assert "Written under kind.a, kind.b, kind.c, kind.d." in names_page([four], 80).text()
    own = listed("words of kind.a", "mm", taken_by=("kind.a",))
    assert "Written under" not in names_page([own], 80).text()
    both = names_page([own, listed("none")], 80).text().splitlines()
    assert both == [
        "words of kind.a" + "1 name".rjust(65),
        "about words of kind.a.",
        "Written under kind.a.",
        "  mm  so",
        "",
        "none" + "0 names".rjust(76),
        "about none.",
    ]


def test_a_name_that_is_too_long_stands_out() -> None:
    """Of 41 letters and more the others stay beside each other at the 44th."""
    page = names_page([listed("units", "a" * 50, "mm")], 100).text().splitlines()
    assert page[2:] == [f"  {'a' * 50} so", "  mm".ljust(44) + "so"]


def test_names_as_data() -> None:
    assert names_data([listed("units", "mm", taken_by=("kind.a",))]) == [
        {
            "list": "units",
            "about": "about units",
            "taken_by": ["kind.a"],
            "names": [{"name": "mm", "says": "so"}],
        }
    ]


# Readings of drawings


def reading(**changed: Any) -> Any:
    own = {
        "number": "D-001",
        "read_by": "M. Coyle",
        "role": "draughtsman",
        "date": dt.date(2026, 3, 5),
        "file": "a.svg",
        "sha256": "ab12",
        "revision": "C",
        "also_on": ("b", "c"),
        "signature": "signed",
        "where": Location("register.toml", 7, ""),
        "parts": ("a", "b", "c"),
        "content": lambda: {"number": "D-001"},
    }
    return SimpleNamespace(**{**own, **changed})


def stands(state: str, *reasons: str, of: Any = None) -> Any:
    holds = state == "read"
    return SimpleNamespace(
        reading=of or reading(), part="a", state=state, reasons=reasons, holds=holds, in_order=holds
    )


def test_readings_stand_below_a_heading_with_their_state() -> None:
    page = Page(80)
    readings_on(page, [])
    assert page.lines == []
    bare = reading(role="", also_on=(), signature="", where=NOWHERE)
    readings_on(page, [stands("read"), stands("changed", "the file moved", "twice", of=bare)])
    assert page.text().splitlines() == [
        "READINGS OF DRAWINGS",
        "1 read, 1 changed",
        "",
        "  READ  D-001  a  a.svg",
        "    read by        M. Coyle, draughtsman, on 2026-03-05",
        "    file           a.svg",
        "    sha256         ab12",
        "    revision       C",
        "    also on        b, c",
        "    signed         yes",
        "    entry          register.toml:7",
        "",
        "  CHANGED  D-001  a  a.svg",
        "    why            the file moved",
        "    and            twice",
        "    read by        M. Coyle, on 2026-03-05",
        "    file           a.svg",
        "    sha256         ab12",
        "    revision       C",
        "    signed         no",
    ]
    assert [line[1][1] for line in page.lines if len(line) == 3] == ["conforms", "nonconformity"]


def test_readings_in_a_line_as_data_and_as_a_slip() -> None:
    one = stands("changed", "the file moved", "twice")
    assert list(readings_said([one])) == ["D-001  a a.svg: changed; the file moved; twice"]
    assert readings_data([one]) == [
        {
            "number": "D-001",
            "component": "a",
            "also_on": ["b", "c"],
            "date": "2026-03-05",
            "signed": True,
            "state": "changed",
            "holds": False,
            "reasons": ["the file moved", "twice"],
        }
    ]
    slip = reading_slip([reading()], "register.toml", "entered", 80).text().splitlines()
    assert slip[0] == "D-001 entered in register.toml: a, b, c"
    assert slip[1].startswith("    read by")
    assert slip[-1].startswith("It ends when the file changes")


# What is staged


def staged(monkeypatch: pytest.MonkeyPatch, selected: frozenset[str], **found: Any) -> list[str]:
    asked: list[object] = []

    def report(_: object, width: int, *, full: bool) -> Page:
        asked.append((width, full))
        page = Page(width)
        page.line("the report")
        return page

    monkeypatch.setattr(terminal_page, "write", report)
    design = SimpleNamespace(selected=selected) if selected is not None else None
    own = {
        "files": ("x",),
        "removed": (),
        "moved": {},
        "accepted": (),
        "assessment": SimpleNamespace(design=design),
    }
    one: Any = SimpleNamespace(**{**own, **found})
    page = staged_page(one, 200, full=False).text().splitlines()
    assert asked == [(200, False)]
    assert page[-2:] == ["", "the report"]
    return page[:-2]


def test_what_is_staged_is_told_before_the_report(monkeypatch: pytest.MonkeyPatch) -> None:
    entry = SimpleNamespace(component="a", rule="tube.stress", number="C-001", until=dt.date(2027, 1, 31))
    page = staged(
        monkeypatch,
        frozenset("ba"),
        files=("x", "y"),
        removed=("c", "d"),
        moved={"z.toml": ("q.toml",), "y.toml": ("p.toml", "r.toml")},
        accepted=(SimpleNamespace(concession=entry),),
    )
    assert page == [
        "As staged, not as in the work tree: 2 files staged.",
        "Looked at: a, b.",
        "Removed, so that what they held is no longer checked: c, d.",
        "Moved: y.toml to p.toml, r.toml.",
        "Moved: z.toml to q.toml.",
        "Accepted: a tube.stress by C-001, until 2027-01-31.",
    ]


@pytest.mark.parametrize(("number", "more"), [(12, ""), (13, ", and 1 more")])
def test_twelve_components_are_named(monkeypatch: pytest.MonkeyPatch, number: int, more: str) -> None:
    names = [f"part-{n:02}" for n in range(number)]
    page = staged(monkeypatch, frozenset(names))
    assert page[1] == f"Looked at: {', '.join(names[:12])}{more}."


def test_what_affects_no_component_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    nothing: tuple[Any, ...] = (frozenset(), None)
    for selected in nothing:
        assert staged(monkeypatch, selected)[1] == "Nothing that is staged affects a component."


# What a part takes over


def like(taken: Any, **more: Any) -> str:
    design = SimpleNamespace(specs={"a": SimpleNamespace(taken_over=taken)}, files={"b": "b.toml"})
    of: Any = SimpleNamespace(design=design, **more)
    return said_of_like(of, "a")


def test_a_part_says_which_other_it_is_like_and_in_what_it_differs() -> None:
    where = SimpleNamespace(key="bore", line=4)
    differs = (SimpleNamespace(where=where, here="1 mm", there="2 mm"),)
    assert like(SimpleNamespace(mirrored=False, id="b", differs=differs * 2)) == (
        "like b (b.toml); differs in bore: 1 mm (line 4), there 2 mm; bore: 1 mm (line 4), there 2 mm"
    )
    assert like(SimpleNamespace(mirrored=True, id="c", differs=())) == (
        "mirror of c (); differs in nothing but its place"
    )
    assert like(None) == ""
    empty: Any = SimpleNamespace(design=None)
    assert said_of_like(empty, "a") == ""


# Sentences


def test_known_faults_are_counted_by_how_they_stand(monkeypatch: pytest.MonkeyPatch) -> None:
    def said(settled: tuple[str, ...], waiting: tuple[str, ...], still_open: tuple[str, ...]) -> str:
        number = len(settled) + len(waiting) + len(still_open)
        faults = SimpleNamespace(count=number, settled=settled, waiting=waiting, open=still_open)
        monkeypatch.setattr(phrases, "known_faults", lambda _: faults)
        return known_faults_said(SimpleNamespace())  # type: ignore[arg-type]

    assert said((), (), ()) == ""
    assert said(("a",), (), ()) == "1 known fault of the old design, 1 settled."
    assert said((), ("b", "c"), ("d",)) == (
        "3 known faults of the old design, 0 settled; 2 waiting: b, c; 1 open: d."
    )


def test_drawings_are_told_once_for_each_file(monkeypatch: pytest.MonkeyPatch) -> None:
    def said(*stand: tuple[str, str]) -> str:
        found = [SimpleNamespace(word=word, file=file) for word, file in stand]
        monkeypatch.setattr(phrases, "drawings_checked", lambda _: found)
        return drawings_said(SimpleNamespace())  # type: ignore[arg-type]

    assert said() == ""
    assert said(("read", "a.svg")) == ""
    assert said(
        ("never read", "a.svg"), ("changed", "b.svg"), ("changed", "b.svg"), ("never read", "c.svg")
    ) == ("1 drawing changed since it was read: b.svg; 2 drawings were never read: a.svg, c.svg.")


def test_parts_made_to_an_old_revision_are_named(monkeypatch: pytest.MonkeyPatch) -> None:
    def said(*names: str) -> str:
        monkeypatch.setattr(phrases, "made_to_old_revision", lambda _: names)
        return old_revisions_said(SimpleNamespace())  # type: ignore[arg-type]

    assert said() == ""
    assert said("a") == "1 part was made to an old revision: a."
    assert said("a", "b") == "2 parts were made to an old revision: a, b."


def test_families_that_the_settings_leave_out_and_that_are_not_there() -> None:
    def said(left: tuple[str, ...], absent: tuple[str, ...]) -> str:
        of: Any = SimpleNamespace(loaded=SimpleNamespace(left_out=left, absent=absent))
        return left_out(of)

    told = "LEFT OUT by speclint.toml: the family a; none of its rules was applied."
    more = "speclint.toml leaves out b: no family of that name is installed."
    assert said((), ()) == ""
    assert said(("a", "b"), ("b",)) == f"{told} {more}"
    assert said(("b",), ("b",)) == more


# A comparison as a page, and as data

#: The module, of which the package has the function by the same name.
_PAGE = import_module("speclint.reports.comparison_page")


def test_a_component_of_a_list_of_checks_alone_has_no_name_but_its_own(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """What it is called stands in its spec, and such a list has none."""
    monkeypatch.setattr(_PAGE, "called", lambda assessment, name: f"{name} of {assessment}")
    for assessment, told in ((None, "cover"), ("the new state", "cover of the new state")):
        found: Any = SimpleNamespace(
            new=SimpleNamespace(assessment=assessment), changed={}, added=["cover"], removed=[], renamed={}
        )
        page = Page(80)
        _PAGE._specs(page, found, full=True)
        assert page.text().split(maxsplit=2)[1:] == ["added", f"{told}\n"]


def seen(used: float | None, **other: Any) -> Any:
    own = {
        "component": "a",
        "edition": 2,
        "outcome": "finding",
        "grade": Grade.HOLD,
        "utilisation": used,
        "says": "so",
    }
    return SimpleNamespace(**{**own, **other})


def moved(*flags: str, was: Any = None, now: Any = None, by: float | None = None) -> Any:
    told = {name: name in flags for name in ("is_new", "is_cleared", "is_change")}
    return SimpleNamespace(component="a", rule="tube.stress", cause="", by=by, was=was, now=now, **told)


def compared(**other: Any) -> dict[str, Any]:
    state = SimpleNamespace(called="then", assessment=None)
    own = {
        "old": state,
        "new": state,
        "added": ("x",),
        "removed": ("y",),
        "renamed": {"q": "r", "o": "p"},
        "changed": {},
        "basis": ("b",),
        "editions": {"t": (1, 2), "s": (3, 4)},
        "margins": (),
        "lapsed": (),
        "not_compared": ("n",),
        "exit_code": 1,
    }
    one: Any = SimpleNamespace(**{**own, **other})
    return comparison_data(one)


def test_a_comparison_as_data() -> None:
    values = (
        SimpleNamespace(key="bore", was="", now="1 mm"),
        SimpleNamespace(key="hole", was="2 mm", now=""),
    )
    found = compared(changed={"a": values})
    assert found["specs"] == {
        "added": ["x"],
        "removed": ["y"],
        "renamed": {"o": "p", "q": "r"},
        "changed": {
            "a": [{"key": "bore", "was": None, "now": "1 mm"}, {"key": "hole", "was": "2 mm", "now": None}]
        },
    }
    assert list(found["editions"].items()) == [("s", {"was": 3, "now": 4}), ("t", {"was": 1, "now": 2})]
    assert (found["basis"], found["not_compared"], found["exit"]) == (["b"], ["n"], 1)
    assert found["old"] == {"called": "then", "specs": None, "not_read": []}


def test_a_state_of_a_comparison_as_data() -> None:
    design = SimpleNamespace(specs={"a": 1, "b": 2})
    read = SimpleNamespace(called="now", assessment=SimpleNamespace(design=design, complaints=("so",)))
    unread = SimpleNamespace(called="now", assessment=SimpleNamespace(design=None, complaints=()))
    assert compared(new=read)["new"] == {"called": "now", "specs": 2, "not_read": ["so"]}
    assert compared(new=unread)["new"]["specs"] is None


def test_a_margin_of_a_comparison_as_data() -> None:
    whole = moved("is_new", was=seen(1 / 3, grade=None), now=seen(math.inf), by=math.inf)
    (found,) = compared(margins=(whole,))["margins"]
    was, now = found.pop("was"), found.pop("now")
    assert found == {"component": "a", "rule": "tube.stress", "change": "new", "cause": None, "by": None}
    common = {"component": "a", "edition": 2, "outcome": "finding", "says": "so"}
    assert was == {**common, "grade": None, "utilisation": 0.3333333333, "no_margin": False}
    assert now == {**common, "grade": "hold", "utilisation": None, "no_margin": True}
    some = (
        moved("is_new", "is_cleared"),
        moved("is_cleared", "is_change"),
        moved("is_change", by=2 / 3),
        moved(),
    )
    others = compared(margins=some)["margins"]
    assert [one["change"] for one in others] == ["new", "cleared", "moved", "none"]
    assert [one["by"] for one in others] == [None, None, 0.6666666667, None]
    assert (others[0]["was"], others[0]["now"]) == (None, None)


def test_a_concession_that_lapsed_as_data() -> None:
    entry = SimpleNamespace(number="C-001", rule="tube.stress")
    one = SimpleNamespace(concession=entry, component="a", state="lapsed", reasons=("so",))
    assert compared(lapsed=(one,))["concessions_lapsed"] == [
        {"number": "C-001", "component": "a", "rule": "tube.stress", "state": "lapsed", "reasons": ["so"]}
    ]
