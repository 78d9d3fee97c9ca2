"""Entering a concession: what stands in the register then, what stays, and who is refused."""

from __future__ import annotations

import tempfile
from pathlib import Path
from typing import Any

import pytest
import tomli
from hypothesis import example, given, settings, strategies as st

from speclint.errors import DesignError, SettingsError, replace
from speclint.register.writing import append_entries, put_signature
from speclint.repository import Concession, Settings, read_register
from speclint.specs import names_nothing
from tests.register.office import SETTINGS, TODAY, Office, days
from tests.tubes import TUBE

KEPT = """\
# Ours: read this before the review.

[[concession]]  # the first of the engine
number = "C-007"
component = "gone"
rule = "tube.stress"
edition = 1
outcome = "finding"
grade = "nonconformity"
found = "x"
fingerprint = "0"
accepted_by = "M. Coyle"
role = 'chief draughtsman'   # in those days
date = 2020-01-02
until = 2020-02-03
grounds = \"\"\"
two
lines\"\"\"
# the end
"""


def test_the_entry_says_all_that_a_reader_asks(office: Office) -> None:
    office.concede(reference="CN-DR-014")
    (entry,) = tomli.loads(office.text())["concession"]
    assert len(entry.pop("fingerprint")) == 24
    assert entry == {
        "number": "C-001",
        "component": "tube",
        "rule": "tube.stress",
        "edition": 1,
        "outcome": "finding",
        "grade": "hold",
        "found": "mean hoop stress of a tube 113.1 MPa > 100 MPa allowable stress",
        "used": "1.131",
        "accepted_by": "M. Coyle",
        "role": "chief draughtsman",
        "date": TODAY,
        "until": days(200),
        "grounds": "carried at 113 MPa in service for years",
        "reference": "CN-DR-014",
        "rests_on": {
            "tube bore": "100 mm ±0.5",
            "tube outside": "105 mm ±0.5",
            "tube pressure": "45 bar gauge",
            "limit allowable": "100 MPa",
        },
    }


@pytest.mark.parametrize("newline", ["\n", "\r\n"])
def test_order_comments_and_line_ends_stay(office: Office, newline: str) -> None:
    kept = KEPT.replace("\n", newline).encode()
    (office.shop.root / "register.toml").write_bytes(kept)
    assert office.concede().number == "C-008"
    after = (office.shop.root / "register.toml").read_bytes()
    assert after.startswith(kept)
    assert after.replace(b"\r\n", b"").count(b"\n") == (0 if newline == "\r\n" else after.count(b"\n"))
    assert [one.number for one in office.register().concessions] == ["C-007", "C-008"]


def test_an_entry_after_an_entry(office: Office) -> None:
    office.concede()
    first = office.text()
    office.concede(until=days(300), grounds='longer: "quoted", a \\ and a line\nmore, ä')
    assert office.text().startswith(first)
    assert [one.number for one in office.register().concessions] == ["C-001", "C-002"]
    assert office.register().concessions[1].grounds == 'longer: "quoted", a \\ and a line\nmore, ä'
    assert [one.state for one in office.stands()] == ["replaced", "valid"]


def test_a_check_not_assessed_is_a_hold_that_can_be_conceded_and_ends_when_the_value_is_stated(
    office: Office,
) -> None:
    office.shop.replace("tube.toml", 'pressure = "45 bar gauge"\n', "")
    office.concede()
    assert office.only().state == "valid"
    office.shop.replace(
        "tube.toml", 'bore = "100 mm ±0.5"', 'bore = "100 mm ±0.5"\npressure = "46 bar gauge"'
    )
    standing = office.only()
    assert standing.state == "lapsed"
    assert "tube pressure was not stated, is 46 bar gauge" in standing.reasons
    assert "the check was: not assessed, is: finding" in standing.reasons


@pytest.mark.parametrize(
    ("other", "said"),
    [
        ({"component": "tubes"}, 'no component is called tubes; write "tube"'),
        ({"component": "duty"}, "which is no component"),
        ({"rule": "tube.stres"}, 'no rule on a tube is called tube.stres; write "tube.stress"'),
        ({"rule": "tube.hoops"}, "there is no finding to accept; the check came out as: conforms"),
        ({"accepted_by": "N. Body"}, "N. Body is not a reviewer"),
        ({"accepted_by": "B. Thorne"}, "not competent for the family tubes: speclint.toml has boilers"),
        ({"accepted_by": "A. Render"}, "A. Render prepared tube"),
        ({"accepted_by": "a render"}, "a render prepared tube"),
        ({"until": days(-1)}, "is in the past"),
        ({"until": days(30 * 366)}, "more than 30 years on, and no concession runs longer"),
        ({"grounds": "  "}, "a concession states its grounds"),
        ({"grounds": "n/a"}, 'a concession states its grounds; read "n/a"'),
        ({"reference": "none"}, 'a concession states its reference; read "none"'),
        ({"role": "-"}, "the role of M. Coyle is not stated: give it as --role"),
        ({"role": " "}, "the role of M. Coyle is not stated: give it as --role"),
    ],
)
def test_what_is_refused(office: Office, other: dict[str, Any], said: str) -> None:
    with pytest.raises(DesignError, match=said.replace("(", r"\(")):
        office.concede(**other)
    assert not (office.shop.root / "register.toml").exists()


def test_who_prepared_it_must_be_stated_for_a_hold(office: Office) -> None:
    office.shop.replace("tube.toml", 'prepared_by = "A. Render"\n', "")
    with pytest.raises(DesignError, match="does not state who prepared it"):
        office.concede()


def test_a_finding_below_hold_may_be_accepted_by_anyone_in_a_stated_role(office: Office) -> None:
    office.shop.replace("tube.toml", 'ends = "open"', 'ends = "closed"')
    with pytest.raises(DesignError, match=r"the role of J\. Ostler is not stated"):
        office.concede(rule="tube.ends", accepted_by="J. Ostler")
    made = office.concede(rule="tube.ends", accepted_by="J. Ostler", role="section leader")
    assert (made.grade, made.used) == ("query", "")
    assert office.only().state == "valid"


def test_a_second_entry_that_adds_nothing_is_refused(office: Office) -> None:
    office.concede()
    with pytest.raises(DesignError, match="C-001 already accepts this finding until"):
        office.concede(until=days(200))
    assert office.concede(until=days(201)).number == "C-002"


def test_a_rule_that_could_not_be_run_cannot_be_accepted(office: Office) -> None:
    from tests import tubes

    office.shop.loaded = tubes.tubes(tubes.raises, *tubes.RULES)
    with pytest.raises(DesignError, match="cannot be accepted: ZeroDivisionError"):
        office.concede(rule="tube.raises")


@pytest.mark.parametrize("text", ["[[concession]\n", "[[concession]]\nnumber = 'C-001'\n", "x = 1\n"])
def test_a_register_at_fault_is_put_right_first(office: Office, text: str) -> None:
    office.shop.write({"register.toml": text}, settings=SETTINGS)
    with pytest.raises(SettingsError, match=r"register\.toml"):
        office.concede()
    assert office.text() == text


def test_the_finding_may_be_a_sound_part_s(office: Office) -> None:
    office.shop.write({"tube.toml": TUBE}, settings=SETTINGS)
    with pytest.raises(DesignError, match="there is no finding"):
        office.concede()


@settings(max_examples=60, deadline=None)
@example("two\r\nlines", True)
@example('"""\n"""\\ quoted', False)
@example("\n0", False)
@given(
    st.text(st.characters(exclude_categories=["Cs"])).filter(lambda one: not names_nothing(one)),
    st.booleans(),
)
def test_any_text_reads_back_as_it_was_meant(grounds: str, windows: bool) -> None:
    """Property: whatever is entered is what is read, and what stood there stays; also with the line ends of Windows."""
    newline = "\r\n" if windows else "\n"
    made = concession(grounds)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "register.toml"
        path.write_bytes(KEPT.replace("\n", newline).encode("utf-8"))
        before = path.read_bytes()
        append_entries(path, made)
        put_signature(path, replace(made, signature="one\ntwo\n"))
        register = read_register(Path(folder), Settings())
        assert path.read_bytes().startswith(before)
    assert register.complaints == ()
    assert register.concessions[-1].statement() == made.statement()
    assert register.concessions[-1].signature == "one\ntwo\n"


def concession(grounds: str) -> Concession:
    return Concession(
        *(
            "C-008",
            "tube",
            "tube.stress",
            1,
            "finding",
            "hold",
            "found",
            "1.131",
            "0" * 24,
            "M. Coyle",
            "chief",
        ),
        *(TODAY, days(1), grounds, "", {"tube bore": grounds, grounds: "a key of any text"}),
    )
