"""The register as a page and as data: each entry with its state, by hand."""

from __future__ import annotations

import datetime as dt

import pytest

from speclint.errors import Complaint, Location, replace
from speclint.register import ReadingStanding, Standing
from speclint.reports.reading_listing import reading_slip, readings_data, readings_said
from speclint.reports.register_listing import exit_code, register_data, register_page, slip, summary
from speclint.repository import Concession, DrawingReading, Register

ONE = Concession(
    number="C-1",
    component="tube",
    rule="tube.stress",
    edition=1,
    outcome="finding",
    grade="hold",
    found="113 MPa, allowed 100 MPa",
    used="1.13",
    fingerprint="f",
    accepted_by="A. Bell",
    role="engineer",
    date=dt.date(2027, 1, 2),
    until=dt.date(2028, 1, 2),
    grounds="tested at works",
    reference="T-7",
    rests_on={"pressure": "45 bar gauge", "bore": "100 mm"},
    signature="signed",
    also_on=("tube-right",),
    alike="a",
    where=Location("register.toml", 3),
)
VALID = Standing(ONE, "valid", ())
LAPSED = Standing(replace(ONE, number="C-2", signature=""), "lapsed", ("pressure differs", "bore differs"))
FILE = Register("register.toml", (ONE,))
READING = DrawingReading(
    number="R-1",
    component="tube",
    file="tube.svg",
    sha256="0a1b",
    read_by="B. Ash",
    date=dt.date(2027, 3, 4),
    revision="B",
    role="checker",
    also_on=("tube-right",),
    signature="signed",
    where=Location("register.toml", 30),
)
READ = ReadingStanding(READING, "tube-right", "valid")


def lines(text: str) -> list[str]:
    return [line.rstrip() for line in text.splitlines()]


def test_an_entry_says_who_accepted_what_until_when() -> None:
    found = lines(register_page(FILE, (VALID,), (), 100).text())
    assert found[0] == found[3] == "═" * 100
    assert found[1].startswith("REGISTER OF CONCESSIONS  ")
    assert found[1].endswith("  register.toml")
    assert found[2] == "1 valid"
    assert found[4:] == [
        "",
        "  VALID  C-1  tube  tube.stress",
        "    hold           113 MPa, allowed 100 MPa (1.13 of the limit)",
        "    accepted by    A. Bell, engineer, on 2027-01-02, until 2028-01-02",
        "    grounds        tested at works",
        "    reference      T-7",
        "    alike on       tube-right",
        "    signed         yes",
        "    entry          register.toml:3",
    ]


def test_what_an_entry_does_not_say_has_no_line() -> None:
    bare = replace(ONE, used="", reference="", also_on=(), signature="", where=Location(""))
    found = lines(register_page(FILE, (Standing(bare, "valid", ()),), (), 100).text())
    assert found[5:] == [
        "  VALID  C-1  tube  tube.stress",
        "    hold           113 MPa, allowed 100 MPa",
        "    accepted by    A. Bell, engineer, on 2027-01-02, until 2028-01-02",
        "    grounds        tested at works",
        "    signed         no",
    ]


def test_an_entry_that_does_not_hold_says_why_and_of_which_part() -> None:
    page = register_page(FILE, (replace(LAPSED, part="tube-right"),), (), 100)
    found = lines(page.text())
    assert found[5:8] == [
        "  LAPSED  C-2  tube-right  tube.stress",
        "    why            pressure differs",
        "    and            bore differs",
    ]
    inks = {text: ink for line in page.lines for text, ink in line}
    assert inks["LAPSED"] == "hold"
    valid = register_page(FILE, (VALID,), (), 100)
    assert {text: ink for line in valid.lines for text, ink in line}["VALID"] == "conforms"


def test_entries_that_cannot_be_read_stand_first() -> None:
    faults = (
        Complaint(Location("register.toml", 9, "until"), "this is no day", '"soon"', "a day"),
        Complaint(Location("register.toml", 12), "something is missing"),
    )
    found = lines(register_page(replace(FILE, complaints=faults), (VALID,), (), 100).text())
    assert found[2] == "1 valid, 2 faults that keep an entry from being read"
    assert found[5].startswith("  CANNOT BE READ  register.toml:9")
    assert found[6:9] == [
        "    this is no day",
        '    read           "soon"',
        "    write          a day",
    ]
    assert found[10].startswith("  CANNOT BE READ  register.toml:12")
    assert found[11:13] == ["    something is missing", ""]
    assert found[13] == "  VALID  C-1  tube  tube.stress"


def test_states_are_counted() -> None:
    assert summary(FILE, (VALID, LAPSED, VALID)) == "2 valid, 1 lapsed"
    assert summary(FILE, ()) == "no entries"


@pytest.mark.parametrize(
    ("states", "reads", "code"),
    [
        (("valid",), ("valid",), 0),
        ((), (), 0),
        (("valid", "lapsed"), (), 1),
        (("replaced", "withdrawn", "ending soon"), ("replaced",), 0),
        (("valid",), ("not signed",), 1),
    ],
)
def test_the_exit_code_tells_whether_all_is_in_order(
    states: tuple[str, ...], reads: tuple[str, ...], code: int
) -> None:
    stand = [Standing(ONE, state, ()) for state in states]  # type: ignore[arg-type]  # words of states
    read = [ReadingStanding(READING, "tube", state) for state in reads]  # type: ignore[arg-type]
    assert exit_code(FILE, stand, read) == code
    fault = Complaint(Location("register.toml"), "broken")
    assert exit_code(replace(FILE, complaints=(fault,)), stand, read) == 2


def test_the_slip_of_an_entry_shows_what_it_rests_on() -> None:
    found = lines(slip(ONE, "register.toml", "entered", 100).text())
    assert found[0] == "C-1 entered in register.toml: tube tube.stress"
    assert found[-3:] == [
        "    rests on       pressure = 45 bar gauge",
        "                   bore = 100 mm",
        "It ends when any of these values changes, and on its day at the latest.",
    ]


def test_the_register_as_data() -> None:
    found = register_data(FILE, (LAPSED,), (READ,))
    assert (found["file"], found["complaints"], found["exit"]) == ("register.toml", [], 1)
    (one,) = found["concessions"]
    assert (one["number"], one["component"], one["state"]) == ("C-2", "tube", "lapsed")
    assert (one["date"], one["until"]) == ("2027-01-02", "2028-01-02")
    assert (one["signed"], one["holds"], one["reasons"]) == (
        False,
        False,
        ["pressure differs", "bore differs"],
    )
    assert one["rests_on"] == {"pressure": "45 bar gauge", "bore": "100 mm"}
    assert [each["number"] for each in found["readings"]] == ["R-1"]
    assert "readings" not in register_data(FILE, (VALID,), ())
    (valid,) = register_data(FILE, (VALID,), ())["concessions"]
    assert (valid["signed"], valid["holds"]) == (True, True)


def test_readings_stand_below_the_concessions() -> None:
    other = ReadingStanding(
        replace(READING, number="R-2", role="", signature=""), "tube", "not signed", ("no signature",)
    )
    page = register_page(FILE, (VALID,), (READ, other), 100)
    found = lines(page.text())
    start = found.index("READINGS OF DRAWINGS")
    assert found[start - 1 :] == [
        "",
        "READINGS OF DRAWINGS",
        "1 valid, 1 not signed",
        "",
        "  VALID  R-1  tube-right  tube.svg",
        "    read by        B. Ash, checker, on 2027-03-04",
        "    file           tube.svg",
        "    sha256         0a1b",
        "    revision       B",
        "    also on        tube-right",
        "    signed         yes",
        "    entry          register.toml:30",
        "",
        "  NOT SIGNED  R-2  tube  tube.svg",
        "    why            no signature",
        "    read by        B. Ash, on 2027-03-04",
        "    file           tube.svg",
        "    sha256         0a1b",
        "    revision       B",
        "    also on        tube-right",
        "    signed         no",
        "    entry          register.toml:30",
    ]
    inks = {text: ink for line in page.lines for text, ink in line}
    assert (inks["NOT SIGNED"], inks["VALID"]) == ("nonconformity", "conforms")
    assert list(readings_said((other,))) == ["R-2  tube tube.svg: not signed; no signature"]


def test_a_reading_as_data_and_its_slip() -> None:
    (found,) = readings_data((READ,))
    assert (found["component"], found["also_on"]) == ("tube-right", ["tube"])
    assert (found["date"], found["signed"], found["state"], found["holds"]) == (
        "2027-03-04",
        True,
        "valid",
        True,
    )
    assert found["reasons"] == []
    text = lines(reading_slip((READING,), "register.toml", "signed", 100).text())
    assert text[0] == "R-1 signed in register.toml: tube, tube-right"
    assert text[-1] == "It ends when the file changes, or the revision or the file that the spec names."
