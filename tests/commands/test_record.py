"""speclint record: a shop's table becomes the record of a part; every row that cannot be read is told by its number."""

from __future__ import annotations

from pathlib import Path

import pytest
import tomli

from speclint.commands import main
from speclint.testing import DesignFolder
from tests.plugins.release.part import files

MAPPING = """
heading = 2
separator = ";"
decimal = ","
date_format = "%d.%m.%Y"
[columns]
dimension = "Feature"
value = "Actual"
uncertainty = "U"
along = "Depth"
round = "Angle"
instrument = "Gauge"
date = "Date"
inspector = "By"
serial = "No."
[units]
value = "mm"
uncertainty = "µm"
along = "mm"
round = "°"
[dimensions]
"plate" = "thickness"
"""
SETTINGS = '[works]\nstage = "draft"\n[made]\nmappings = ["shops/north.toml"]\n'
TWO = SETTINGS.replace('north.toml"', 'north.toml", "shops/south.toml"')
HEAD = "Report 14;;;;;;;;\nNo.;Feature;Actual;U;Depth;Angle;Gauge;Date;By\n"
GOOD = "7;plate;50,02;4;10;0;micrometer 3;31.05.2026;R. Fell\n7;plate;50,04;4;10;90;micrometer 3;31.05.2026;R. Fell\n"


def works(folder: Path, rows: str, mapping: str = MAPPING, settings: str = SETTINGS) -> list[str]:
    """The arguments that record a table of some rows."""
    DesignFolder(folder).write(
        {**files(), "shops/north.toml": mapping, "report.csv": HEAD + rows}, settings=settings
    )
    return ["record", str(folder / "report.csv"), "--part", "cover", "--serial", "7", "--in", str(folder)]


def test_rows_become_a_record_that_is_read_as_a_spec(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    arguments = [*works(tmp_path, GOOD + "8;plate;50,01;4;;;;;\n"), "--made-to", "A"]
    assert main(arguments) == 0
    told = capsys.readouterr().out
    assert told == "made/cover-7.toml: 2 values of 1 measurement; 1 row of other serial numbers\n"
    assert tomli.loads((tmp_path / "made" / "cover-7.toml").read_text(encoding="utf-8")) == {
        "kind": "made-part",
        "id": "cover-7",
        "of": "cover",
        "serial": "7",
        "made_to": "A",
        "measured": {
            "thickness": {
                "uncertainty": "4 µm",
                "instrument": "micrometer 3",
                "inspector": "R. Fell",
                "date": "2026-05-31",
                "values": [
                    {"value": "50.02 mm", "along": "10 mm", "round": "0 °"},
                    {"value": "50.04 mm", "along": "10 mm", "round": "90 °"},
                ],
            }
        },
    }
    assert DesignFolder(tmp_path).assess("duty.toml").complaints == ()
    assert main(arguments) == 2  # no record is replaced
    assert "there is a record already" in capsys.readouterr().err


BLOCK = """
kind = "cylinder-block"
id = "cover"
[bores.main]
diameter = "560 mm H7"
recess_diameter = "634 mm ±0.1"
"""
OF_BLOCK = (
    MAPPING
    + '"bore" = "bores.main.diameter"\n"recess" = "bores.main.recess_diameter"\n"outer" = "bores.outer.diameter"\n'
)


def test_a_record_is_written_as_a_person_would_write_it(tmp_path: Path) -> None:
    """A key is quoted only where it has to be, several values stand on a line each, and one beside its key."""
    rows = "7;{};560,02;4;;;;31.05.2026;\n".format
    arguments = works(tmp_path, rows("bore") + rows("bore") + rows("recess"), OF_BLOCK)
    (tmp_path / "cover.toml").write_text(BLOCK, encoding="utf-8")
    assert main(arguments) == 0
    text = (tmp_path / "made" / "cover-7.toml").read_text(encoding="utf-8")
    assert '[measured."bores.main.diameter"]' in text
    assert "[measured]\n" not in text
    assert 'values = [\n    "560.02 mm",\n    "560.02 mm",\n]\n' in text
    assert 'values = ["560.02 mm"]\n' in text
    plain = works(tmp_path / "plain", "7;plate;50,02;4;;;;31.05.2026;\n")
    assert main(plain) == 0
    assert "[measured.thickness]\n" in (tmp_path / "plain" / "made" / "cover-7.toml").read_text(
        encoding="utf-8"
    )


def test_a_key_of_the_mapping_that_the_part_does_not_state(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The name of the row is right: what is wrong is the key that the mapping has for it."""
    arguments = works(tmp_path, "7;outer;40,02;4;;;;31.05.2026;\n", OF_BLOCK)
    (tmp_path / "cover.toml").write_text(BLOCK, encoding="utf-8")
    assert main(arguments) == 2
    told = capsys.readouterr().err
    assert (
        'row 3: cover has no quantity bores.outer.diameter, for which the mapping has "outer"; write the key'
        in told
    )


def test_measurements_of_one_dimension_on_two_days_are_two_entries(tmp_path: Path) -> None:
    """A second day is another measurement: none takes the place of the other."""
    later = "7;plate;50,01;4;;;;02.06.2026;R. Fell\n7;plate;50,00;4;;;;03.06.2026;R. Fell\n"
    assert main(works(tmp_path, GOOD + later)) == 0
    record = tomli.loads((tmp_path / "made" / "cover-7.toml").read_text(encoding="utf-8"))["measured"]
    found = {
        name: (entry.get("dimension"), entry["date"], len(entry["values"])) for name, entry in record.items()
    }
    assert found == {
        "thickness": (None, "2026-05-31", 2),
        "thickness-2": ("thickness", "2026-06-02", 1),
        "thickness-3": ("thickness", "2026-06-03", 1),
    }
    assert DesignFolder(tmp_path).assess("duty.toml").complaints == ()


#: Rows that cannot be read, and what is said of each.
BAD = {
    "7;plte;50,02;4;;;;;": 'a cylinder-cover has no quantity "plte"; write "plate"',
    "7;;50,02;4;;;;;": "it names no dimension",
    "7;plate;;4;;;;;": "it has no value",
    "7;plate;50.02;4;;;;;": "has a point, and the mapping says that the decimal mark is a comma",
    "7;plate;about 50;4;;;;;": "this is not a number with its unit and limits",
    "7;plate;50,02 bar;4;;;;;": '"bar" is no unit of length',
    "7;plate;50,02;;;;;;": "no uncertainty is recorded for thickness",
    "7;plate;50,02;0;;;;;": "a length of 0 is not possible here",
    "7;plate;50,02;4;ten;;;;": "along: this is not a number with its unit and limits",
    "7;plate;50,02;4;;;;31.05.2126;": "this day is still to come",
    "7;plate;50,02;4;;;;May 2026;": '"May 2026" is no date of the form %d.%m.%Y',
    ";plate;50,02;4;;;;;": "it has no serial number; write 7",
    "7;plate;5002;4;;;;;": "thickness lies in ",
}


def test_every_row_that_cannot_be_read_is_told_by_its_number_and_the_others_are_recorded(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(works(tmp_path, GOOD + "".join(f"{row}\n" for row in BAD))) == 1
    out, err = capsys.readouterr()
    lines = err.splitlines()
    assert len(lines) == len(BAD)
    for number, (line, said) in enumerate(zip(lines, BAD.values(), strict=True), start=5):
        assert f": row {number}: " in line
        assert said in line
    assert f"2 values of 1 measurement; {len(BAD)} rows could not be read" in out


def test_one_row_that_cannot_be_read_is_counted_as_one(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(works(tmp_path, GOOD + next(iter(BAD)) + "\n")) == 1
    told = capsys.readouterr().out
    assert told == "made/cover-7.toml: 2 values of 1 measurement; 1 row could not be read, and is not in it\n"


def test_the_record_goes_where_it_is_said_by_the_mapping_that_is_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Of two mappings one is named; the serial number is written as it is, and as an id without what is none."""
    words = works(tmp_path, GOOD.replace("7;", "No. 7/A;"), settings=TWO)
    words[words.index("7")] = "No. 7/A"
    assert main([*words, "--by", "shops/north.toml", "--as-spec", "parts/one.toml"]) == 0
    assert capsys.readouterr().out == "parts/one.toml: 2 values of 1 measurement\n"
    record = tomli.loads((tmp_path / "parts" / "one.toml").read_text(encoding="utf-8"))
    assert (record["id"], record["serial"]) == ("cover-no-7-a", "No. 7/A")
    assert "made_to" not in record


def test_where_no_row_can_be_read_nothing_is_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(works(tmp_path, next(iter(BAD)) + "\n")) == 2
    assert "no row of serial number 7 could be read" in capsys.readouterr().err
    assert not (tmp_path / "made").exists()


@pytest.mark.parametrize(
    ("mapping", "settings", "more", "said"),
    [
        (MAPPING, '[works]\nstage = "draft"\n', [], "names 0 mappings of tables; name one under [made]"),
        (MAPPING, SETTINGS, ["--by", "shops/south.toml"], "names no such file under mappings"),
        (
            MAPPING,
            TWO,
            [],
            "names 2 mappings of tables; say which with --by: shops/north.toml, shops/south.toml",
        ),
        (MAPPING.replace('value = "Actual"\n', ""), SETTINGS, [], "no column holds the value"),
        (
            MAPPING.replace('"Actual"', '"Actuals"'),
            SETTINGS,
            [],
            "it has no column Actuals; it has No., Feature",
        ),
        (MAPPING.replace("value =", "valeu =", 1), SETTINGS, [], '"valeu" is not a name used here'),
        (MAPPING, SETTINGS, ["--as-spec", "../x.toml"], "a record is a TOML file in the repository"),
        (
            MAPPING,
            SETTINGS,
            ["--as-spec", "made/x.csv"],
            "made/x.csv: a record is a TOML file in the repository",
        ),
        (
            MAPPING,
            SETTINGS,
            ["--part", "duty"],
            "duty is of the kind duty",
        ),  # a spec, and no component
        (MAPPING, SETTINGS, ["--part", "covr"], 'no component is called covr; write "cover"'),
    ],
)
def test_what_cannot_be_is_told_in_one_line(
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    mapping: str,
    settings: str,
    more: list[str],
    said: str,
) -> None:
    assert main([*works(tmp_path, GOOD, mapping, settings), *more]) == 2
    err = capsys.readouterr().err
    assert said in err
    assert len(err.splitlines()) == 1


def test_a_bare_number_without_a_unit_is_no_guess(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(works(tmp_path, GOOD, MAPPING.replace('value = "mm"\n', ""))) == 2
    err = capsys.readouterr().err
    assert '"50.02" has no unit, and neither a column nor the mapping gives one for value' in err
