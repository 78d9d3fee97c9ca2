"""Reading the register: every fault of every entry is told with its place, and the other entries stay."""

from __future__ import annotations

import pytest

from speclint.errors import replace
from speclint.reports.register_listing import summary
from tests.register.office import Office


def test_no_file_is_an_empty_register(office: Office) -> None:
    assert office.register().concessions == office.register().complaints == ()


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('number = "C-001"', "number = 1", "register.toml:5 number: this is not text; read 1"),
        ('rule = "tube.stress"\n', "", "register.toml:4 rule: concession C-001 does not state its rule"),
        ("until = ", 'until = "2027" #', 'this is not a date; read "2027"; write a date without quotes'),
        ("date = ", "date = 2026-01-01T00:00:00 #", "this is not a date"),
        ("until = ", "until = 2020-01-01 #", "concession C-001 ends before it begins"),
        ('grade = "hold"', 'grade = "grave"', 'not one of the words used here; read "grave"'),
        ('grounds = "', 'grounds = " " #', "grounds: the text is empty"),
        ("edition = 1", "edition = true", "this is not a whole number"),
        ('"tube bore" = "100 mm ±0.5"', '"tube bore" = 100', "what concession C-001 rests on is text"),
        ('role = "', 'rôle = "', "this is not TOML"),
        ('role = "', 'rolle = "', '"rolle" is no key of a concession'),
        ("[[concession]]", "[concession]", "concessions are tables"),
        ("[[concession]]", "[[concesion]]", '"concesion" is no key of a register'),
    ],
)
def test_what_is_wrong_with_an_entry(office: Office, old: str, new: str, said: str) -> None:
    office.concede()
    text = office.text().replace(old, new, 1)
    if old == "[[concession]]":
        text = text.replace("[concession.rests_on]", "[x]" if "[[" in new else "[y]")
    (office.shop.root / "register.toml").write_text(text, encoding="utf-8")
    register = office.register()
    assert register.concessions == ()
    assert any(said in str(one) for one in register.complaints), [str(one) for one in register.complaints]
    assert office.shop.assess().exit_code == 2


def test_a_fault_in_one_entry_leaves_the_others(office: Office) -> None:
    office.concede()
    office.shop.replace("tube.toml", 'ends = "open"', 'ends = "closed"')
    office.concede(rule="tube.ends")
    office.shop.replace("register.toml", 'outcome = "finding"\ngrade = "query"', 'outcome = "conforms"')
    register = office.register()
    assert [one.number for one in register.concessions] == ["C-001"]
    assert len(register.complaints) == 1
    assert 'read "conforms"' in str(register.complaints[0])
    assert summary(register, ()) == "1 fault that keeps an entry from being read"
    twice = replace(register, complaints=register.complaints * 2)
    assert summary(twice, ()) == "2 faults that keep an entry from being read"
