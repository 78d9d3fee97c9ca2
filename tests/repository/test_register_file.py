"""The file of the register: what an entry says is kept, each fault is one line, and what is found by a number."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from speclint.errors import Complaint, replace
from speclint.repository import Concession, Register, Settings, find_concession, read_register
from speclint.repository.drawing_reading import DrawingReading, latest_reading

ENTRY = """\
[[concession]]
number = "C-1"
component = "tube"
rule = "tube.stress"
edition = 2
outcome = "finding"
grade = "hold"
found = "stress 120 MPa > 100 MPa"
used = "1.2"
fingerprint = "abcd"
accepted_by = "M. Coyle"
role = "chief draughtsman"
date = 2026-03-01
until = 2026-03-02
grounds = "it is renewed in the spring"
"""
DIGEST = "0123456789abcdef" * 4
READING = f"""\
[[reading]]
number = "R-1"
component = "tube"
file = "tube.svg"
sha256 = "{DIGEST}"
read_by = "M. Coyle"
date = 2026-03-01
"""


def register(folder: Path, text: str) -> Register:
    (folder / "register.toml").write_text(text, encoding="utf-8")
    return read_register(folder, Settings())


def said(folder: Path, text: str) -> list[str]:
    return [str(one) for one in register(folder, text).complaints]


def test_what_an_entry_says_is_kept(tmp_path: Path) -> None:
    more = 'reference = "letter 7"\nalso_on = ["spare"]\nalike = "one"\nsignature = "SSH"\n'
    found = register(tmp_path, ENTRY + more + 'rests_on = { bore = "100 mm" }\n' + READING)
    assert found.complaints == ()
    assert found.file == "register.toml"
    (one,) = found.concessions
    assert one == Concession(
        number="C-1",
        component="tube",
        rule="tube.stress",
        edition=2,
        outcome="finding",
        grade="hold",
        found="stress 120 MPa > 100 MPa",
        used="1.2",
        fingerprint="abcd",
        accepted_by="M. Coyle",
        role="chief draughtsman",
        date=dt.date(2026, 3, 1),
        until=dt.date(2026, 3, 2),
        grounds="it is renewed in the spring",
        reference="letter 7",
        rests_on={"bore": "100 mm"},
        signature="SSH",
        also_on=("spare",),
        alike="one",
    )
    assert (one.where.file, one.where.line) == ("register.toml", 1)
    assert one.parts == ("tube", "spare")
    assert one.signatory == "M. Coyle"
    (read,) = found.readings
    assert read == DrawingReading("R-1", "tube", "tube.svg", DIGEST, "M. Coyle", dt.date(2026, 3, 1))
    assert (read.where.line, read.signatory, read.parts) == (21, "M. Coyle", ("tube",))


def test_what_is_signed_is_what_the_entry_says_without_signature_and_place(tmp_path: Path) -> None:
    (one,) = register(tmp_path, ENTRY).concessions
    content = one.content()
    assert not {"where", "signature", "also_on", "alike"} & content.keys()
    assert list(content)[:3] == ["number", "component", "rule"]
    assert one.statement() == replace(one, signature="SSH").statement()
    assert one.statement() != replace(one, also_on=("spare",), alike="one").statement()
    assert {"also_on", "alike"} <= replace(one, also_on=("spare",), alike="one").content().keys()
    (read,) = register(tmp_path, READING).readings
    assert not {"where", "signature", "also_on"} & read.content().keys()
    assert "also_on" in replace(read, also_on=("spare",)).content()
    assert read.statement() == replace(read, signature="SSH").statement()
    assert read.statement() != replace(read, also_on=("spare",)).statement()


def test_an_absent_register_is_an_empty_one(tmp_path: Path) -> None:
    assert read_register(tmp_path, Settings()) == Register("register.toml")


def test_a_register_that_is_no_toml_is_one_line(tmp_path: Path) -> None:
    found = register(tmp_path, "[[concession\n")
    assert (found.concessions, len(found.complaints)) == ((), 1)
    assert found.complaints[0].where.file == "register.toml"


@pytest.mark.parametrize(
    ("text", "line"),
    [
        (
            ENTRY.replace("until = 2026-03-02\n", ""),
            "register.toml:1 until: concession C-1 does not state its until; write until = …",
        ),
        (
            ENTRY.replace('number = "C-1"\n', ""),
            "register.toml:1 number: concession without number does not state its number",
        ),
        (ENTRY.replace("C-1", "  "), "register.toml:2 number: the text is empty"),
        (
            ENTRY.replace("2026-03-02", "2026-02-28"),
            "register.toml:14 concession[0].until: concession C-1 ends before it begins",
        ),
        (
            ENTRY + 'also_on = ["spare"]\n',
            "register.toml:1 also_on: concession C-1 states also_on and alike together",
        ),
        (
            ENTRY + 'alike = "one"\n',
            "register.toml:1 also_on: concession C-1 states also_on and alike together",
        ),
        (
            ENTRY + "rests_on = { bore = 3 }\n",
            "register.toml:1 rests_on: what concession C-1 rests on is text",
        ),
        (ENTRY.replace('"hold"', '"grave"'), "register.toml:7 grade: "),
        (ENTRY + 'reason = "x"\n', "register.toml:16 reason: "),
        ('concession = "C-1"\n', "register.toml:1 concession: concessions are tables"),
        ('concession = ["C-1"]\n', "register.toml:1 concession: concessions are tables"),
        ("[concession]\n", "register.toml:1 concession: concessions are tables"),
        ("[[concesion]]\n", 'register.toml:1 concesion: "concesion" is no key of a register'),
        ("count = 3\n", 'register.toml:1 count: "count" is no key of a register'),
        (
            READING.replace(DIGEST, DIGEST[1:]),
            "register.toml:5 reading[0].sha256: the sha256 of reading R-1 is no digest",
        ),
        (
            READING.replace(DIGEST, DIGEST + "0"),
            "register.toml:5 reading[0].sha256: the sha256 of reading R-1 is no digest",
        ),
        (
            READING.replace(DIGEST, "ab" * 2500),
            f'register.toml:5 reading[0].sha256: the sha256 of reading R-1 is no digest; read "{"ab" * 20}… (5000 ',
        ),
        (
            READING.replace(DIGEST, DIGEST.upper()),
            "register.toml:5 reading[0].sha256: the sha256 of reading R-1 is no digest",
        ),
        (
            READING.replace('file = "tube.svg"\n', ""),
            "register.toml:1 file: reading R-1 does not state its file",
        ),
    ],
)
def test_each_fault_is_one_line_and_its_entry_is_none(tmp_path: Path, text: str, line: str) -> None:
    found = register(tmp_path, text)
    assert (found.concessions, found.readings) == ((), ())
    (complaint,) = [str(one) for one in found.complaints]
    assert complaint.startswith(line)


def test_an_entry_that_ends_on_the_day_it_begins_is_one(tmp_path: Path) -> None:
    assert len(register(tmp_path, ENTRY.replace("2026-03-02", "2026-03-01")).concessions) == 1


def test_every_fault_of_every_entry_is_told_in_the_order_of_the_file_and_sound_ones_are_kept(
    tmp_path: Path,
) -> None:
    wrong = ENTRY.replace('role = "chief draughtsman"\n', "").replace("2026-03-02", "2026-02-28")
    found = register(tmp_path, READING.replace(DIGEST, "0") + wrong + ENTRY.replace("C-1", "C-2"))
    assert [(one.where.line, one.where.key) for one in found.complaints] == [
        (5, "reading[0].sha256"),
        (8, "role"),
        (20, "concession[0].until"),
    ]
    assert [one.number for one in found.concessions] == ["C-2"]


ACCEPTED = Concession(
    number="C-1",
    component="tube",
    rule="tube.stress",
    edition=1,
    outcome="finding",
    grade="hold",
    found="",
    used="",
    fingerprint="",
    accepted_by="M. Coyle",
    role="",
    date=dt.date(2026, 3, 1),
    until=dt.date(2026, 3, 2),
    grounds="",
)


def entries(*numbers: str, signed: str = "") -> Register:
    one = replace(ACCEPTED, signature=signed)
    return Register("register.toml", tuple(replace(one, number=number) for number in numbers))


def test_an_entry_is_found_by_its_number() -> None:
    found = find_concession(entries("C-1", "C-2"), "C-2")
    assert isinstance(found, Concession)
    assert found.number == "C-2"


MANY = [f"C-{number}" for number in range(1, 22)]


@pytest.mark.parametrize(
    ("register", "said"),
    [
        (entries("C-1", "C-1"), "register.toml: 2 concessions have the number C-1"),
        (entries("C-2"), "no concession has the number C-1; write one that is not signed yet: C-2"),
        (
            entries("C-2", signed="SSH"),
            "no concession has the number C-1; write one that is there, all signed: C-2",
        ),
        (entries(), "no concession has the number C-1; write nothing: it has no entry that can be read"),
        (entries(*MANY[1:]), f"not signed yet: {', '.join(MANY[1:])}"),
        (entries(*MANY[1:], "D"), f"not signed yet: {', '.join(MANY[1:])} and 1 more"),
        (entries(*MANY[1:], "D", signed="SSH"), f"all signed: {', '.join(MANY[1:])} and 1 more"),
    ],
)
def test_why_none_is_found_by_a_number(register: Register, said: str) -> None:
    found = find_concession(register, "C-1")
    assert isinstance(found, Complaint)
    assert str(found).endswith(said)


def test_of_signed_and_unsigned_entries_the_unsigned_are_offered() -> None:
    both = Register("register.toml", (*entries("C-2", signed="SSH").concessions, *entries("C-3").concessions))
    assert str(find_concession(both, "C-1")).endswith("one that is not signed yet: C-3")


def read(number: str, day: int, *also: str, file: str = "tube.svg") -> DrawingReading:
    return DrawingReading(number, "tube", file, DIGEST, "M. Coyle", dt.date(2026, 3, day), also_on=also)


@pytest.mark.parametrize(
    ("readings", "component", "file", "number"),
    [
        ([], "tube", "", None),
        ([read("R-1", 1), read("R-2", 3), read("R-3", 2)], "tube", "", "R-2"),
        ([read("R-1", 1), read("R-2", 1)], "tube", "", "R-2"),  # of one day the last of the register
        ([read("R-1", 1, "spare"), read("R-2", 2)], "spare", "", "R-1"),
        ([read("R-1", 1), read("R-2", 2, file="other.svg")], "tube", "tube.svg", "R-1"),
        ([read("R-1", 1), read("R-2", 2, file="other.svg")], "tube", "", "R-2"),
        ([read("R-1", 1), read("R-2", 2), read("R-2", 3)], "tube", "", "R-1"),  # two with one number
        ([read("R-1", 1)], "spare", "", None),
    ],
)
def test_the_last_reading_of_a_drawing(
    readings: list[DrawingReading], component: str, file: str, number: str | None
) -> None:
    found = latest_reading(readings, component, file)
    assert (found.number if found else None) == number
