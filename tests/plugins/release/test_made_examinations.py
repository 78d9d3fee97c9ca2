"""Examinations of parts as made: by which method, of how much, when, and what settles one that failed."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, expect_not_applicable
from tests.plugins.release.made import DRAWN, MADE, made, recorded
from tests.plugins.release.part import files, settings


@pytest.mark.parametrize(
    ("method", "outcome"),
    [
        *(("ultrasonic", "conforms"), ("ultrasound, all edges", "conforms"), ("dye penetrant", "finding")),
        *(("ultrasonic thickness", "finding"), ("UT to follow", "finding")),
    ],
)
def test_what_was_examined_by_another_method_was_not(
    workshop: DesignFolder, method: str, outcome: str
) -> None:
    """The spec says: ultrasonic, plate edges."""
    check = made(workshop, "made.examined", ('method = "ultrasonic"', f'method = "{method}"'))
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("extent", "ends"),
    [
        *(("all edges", ("conforms", None)), ("99 %", ("conforms", None))),
        *(("98.9 %", ("finding", Grade.HOLD)), ("one in ten", ("finding", Grade.HOLD))),
        ("random samples", ("finding", Grade.HOLD)),
    ],
)
def test_an_examination_of_a_part_of_what_is_asked_is_a_hold(
    workshop: DesignFolder, extent: str, ends: tuple[str, Grade | None]
) -> None:
    """The spec says: ultrasonic, plate edges."""
    check = made(
        workshop, "made.examined", ('method = "ultrasonic"', f'method = "ultrasonic"\nextent = "{extent}"')
    )
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(
    ("asked", "record", "ends", "says"),
    [
        (
            "MT after turning",
            'method = "MT before turning"',
            ("finding", Grade.NONCONFORMITY),
            "not when it is asked",
        ),
        ("MT after turning", 'method = "MT after turning"', ("conforms", None), ""),
        (
            "MT when ground",
            'method = "MT after turning"',
            ("finding", Grade.QUERY),
            "when ground is asked for",
        ),
        ("MT of faces", 'method = "MT"\nextent = "faces"', ("conforms", None), ""),
        (
            "MT of faces and edges",
            'method = "MT"\nextent = "faces"',
            ("finding", Grade.QUERY),
            "edge by magnetic",
        ),
        (
            "MT",
            'method = "MT"\nextent = "the crown"',
            ("finding", Grade.QUERY),
            'in "MT, the crown" the word "crown" is not understood: nobody can tell how much was examined. Write all, ',
        ),
        ("MT", 'method = "MT"\nextent = "not possible"', ("finding", Grade.HOLD), "or a part: not possible"),
        ("MT", 'method = "MT"\nextent = "whole cylinder cover"', ("conforms", None), ""),
    ],
)
def test_when_and_where_it_was_examined(
    workshop: DesignFolder, asked: str, record: str, ends: tuple[str, Grade | None], says: str
) -> None:
    text = changed(MADE, ('method = "ultrasonic"', record))
    drawn = files(DRAWN, ('"ultrasonic, plate edges"', f'"{asked}"'))
    check = workshop.write({**drawn, "cover-7.toml": text}, settings=settings()).only(
        "made.examined", "cover-7"
    )
    assert (check.outcome, check.grade) == ends
    assert says in check.says


AGAIN = """
[examinations.again]
method = "{method}"
extent = "{extent}"
date = "2026-04-09"
result = "passed"
[welds."{weld}"]
procedure = "WPQR 38"
welder = "mark 7"
date = "{repaired}"
result = "passed"
[certificate]
"""


@pytest.mark.parametrize(
    ("says", "holds"),
    [
        ({}, False),
        ({"failed": "2026-04-07"}, False),  # mended on the day on which it was found
        ({"failed": "2026-04-08"}, True),  # the repair is earlier than the examination that failed
        ({"failed": "2026-04-09", "repaired": "2026-04-09"}, True),  # nobody can tell which was the last
        ({"repaired": "2026-04-09"}, False),  # mended on the day on which it was looked at again
        ({"repaired": "2026-04-10"}, True),  # mended after it was looked at again
        ({"repaired": ""}, True),
        ({"failed": ""}, True),
        ({"weld": "second seam"}, True),  # a weld that is not called a repair
        ({"weld": "second seam", "extent": "the place ground out"}, False),
        ({"weld": "second seam", "extent": "edges, no repairs"}, True),
        ({"weld": "second seam", "method": "UT after repair"}, False),
        ({"weld": "no repair"}, True),
        ({"weld": "edge_repair"}, False),
        ({"weld": "Nachgeschweißt"}, False),
        ({"method": "MT"}, True),
        ({"method": "UT and MT"}, False),
        ({"method": "looked over"}, True),
        ({"of": "weld 3", "extent": "weld 3"}, False),
        ({"of": "weld 3", "extent": "weld 4"}, True),
        ({"of": "weld 3", "extent": "welds 1 to 3"}, False),
        ({"of": "weld 3", "extent": "repaired weld 3"}, False),
        ({"of": "weld 3", "extent": "repaired weld 4"}, True),
        ({"of": "welds 1 to 3", "extent": "repaired weld 2"}, False),
        ({"of": "welds 1 to 3", "extent": "weld 2"}, True),
        ({"of": "front edge", "extent": "rear edge"}, True),
        ({"of": "front edge", "extent": "front and rear edges"}, False),
        ({"of": "front edge", "extent": "repaired bore"}, True),
        ({"of": "front edge", "extent": "all edges"}, False),
        ({"of": "the whole front edge", "extent": "front edge"}, False),
        ({"of": "front edge to EN ISO 5817", "extent": "front edge"}, False),
        ({"of": "front edge to DIN 25435", "extent": "front edge"}, False),
        ({"of": "front edge to ASTM 1", "extent": "front edge"}, False),
        ({"of": "front edge to BS 1", "extent": "front edge"}, False),
        ({"of": "weld 501", "extent": "welds 1 to 600"}, False),
        ({"of": "weld 502", "extent": "welds 1 to 600"}, True),  # no part has so many
        ({"of": "", "extent": "front edge"}, True),
        ({"of": "", "extent": "repaired edge"}, False),
        ({"of": "all edges", "extent": "repaired edge"}, False),
        ({"extent": ""}, False),
    ],
)
def test_an_examination_that_failed_is_settled_by_repair_and_a_later_one(
    workshop: DesignFolder, says: dict[str, str], holds: bool
) -> None:
    """It failed on 6 April, is mended on the 7th, and passed on the 9th."""
    said = {
        "failed": "2026-04-06",
        "repaired": "2026-04-07",
        "weld": "repair",
        "method": "UT",
        "of": "",
        "extent": "",
    }
    changes = failed_and_again({**said, **says})
    check = made(workshop, "made.examined", *changes)
    assert (check.says.startswith("failed: edges"), check.grade is Grade.HOLD) == (holds, holds)


def failed_and_again(said: dict[str, str]) -> list[tuple[str, str]]:
    """The examination of a record that failed, a weld, and a second examination; what is "" is not stated."""
    first = f'date = "{said["failed"]}"\nextent = "{said["of"]}"\nresult = "failed"\n'
    again = AGAIN.format(**{key: said[key] for key in ("method", "extent", "weld", "repaired")})
    stated = [
        "".join(line for line in text.splitlines(keepends=True) if not line.endswith('= ""\n'))
        for text in (first, again)
    ]
    old = 'method = "ultrasonic"\nresult = "passed"\n'
    return [(old, f'method = "ultrasonic"\n{stated[0]}'), ("[certificate]\n", stated[1])]


SETTLED = {
    "failed": "2026-04-06",
    "of": "all",
    "method": "UT",
    "extent": "all",
    "weld": "repair",
    "repaired": "2026-04-07",
}


def test_a_weld_by_no_welder_makes_nothing_good(workshop: DesignFolder) -> None:
    """Of a part that is welded by its record alone, too, a weld names its procedure and its welder."""
    check = made(workshop, "made.examined", *failed_and_again(SETTLED), ('welder = "mark 7"\n', ""))
    assert check.outcome == "finding"
    assert "welds, each with its procedure and its welder" in check.says


def test_what_failed_and_was_made_good_is_said(workshop: DesignFolder) -> None:
    check = made(workshop, "made.examined", *failed_and_again(SETTLED))
    assert check.outcome == "conforms"
    assert check.says.endswith("; edges failed, weld repair, then again passed")
    by_hand = failed_and_again({**SETTLED, "weld": "seam", "extent": "all, ground out"})
    assert made(workshop, "made.examined", *by_hand).says.endswith(
        "; edges failed, repaired, then again passed"
    )


@pytest.mark.parametrize("table", ["examinations.again", "welds.repair"])
@pytest.mark.parametrize("result", ['result = "failed"\n', ""])
def test_what_was_not_passed_settles_nothing(workshop: DesignFolder, table: str, result: str) -> None:
    first, (old, again) = failed_and_again(SETTLED)
    head, at, rest = again.replace('[welds."repair"]', "[welds.repair]").partition(f"[{table}]")
    assert at
    record = head + at + rest.replace('result = "passed"\n', result, 1)
    check = made(workshop, "made.examined", first, (old, record))
    assert (check.grade, "edges" in check.says.removeprefix("failed: ").split(", ")) == (Grade.HOLD, True)


def test_a_weld_that_failed_is_not_settled_with_an_examination_of_its_name(workshop: DesignFolder) -> None:
    first, (old, again) = failed_and_again(SETTLED)
    weld = again.replace("[certificate]", '[welds.edges]\nresult = "failed"\n[certificate]')
    assert made(workshop, "made.examined", first, (old, weld)).says == "failed: edges"


@pytest.mark.parametrize(
    ("method", "outcome"), [("", "finding"), ('method = "UT"\n', "conforms"), ('method = "VT"\n', "finding")]
)
def test_an_examination_on_record_names_its_method(workshop: DesignFolder, method: str, outcome: str) -> None:
    check = made(workshop, "made.examined", ('method = "ultrasonic"\n', method))
    assert check.outcome == outcome


@pytest.mark.parametrize("asked", ["not required", "UT not required", "UT if required"])
def test_a_spec_that_denies_an_examination_asks_for_no_record(workshop: DesignFolder, asked: str) -> None:
    design = {
        "ring.toml": f'kind = "piston-ring"\nid = "ring"\nexamination = "{asked}"\n',
        "ring-1.toml": 'kind = "made-part"\nid = "ring-1"\nof = "ring"\n',
    }
    check = workshop.write(design, settings=settings()).only("made.examined")
    expect_not_applicable(check, "no examination")


def test_an_examination_of_which_nothing_is_on_record_is_asked_for_as_it_is_drawn(
    workshop: DesignFolder,
) -> None:
    files = recorded()
    none = changed(
        files["made.toml"], ('[examinations.edges]\nmethod = "ultrasonic"\nresult = "passed"\n', "")
    )
    check = workshop.write({**files, "made.toml": none}).only("made.examined", "cover-7")
    assert check.says == "not on record: examination (ultrasonic, plate edges)"
