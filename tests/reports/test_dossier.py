"""The record for whoever certifies: of a cover with its studs and a casting, each with all that its spec asks for."""

from __future__ import annotations

import json

import jsonschema
import pytest

from speclint.made import dossier
from speclint.reports import (
    dossier_data,
    dossier_exit_code,
    dossier_html,
    dossier_markdown,
    published_schema,
    review_page,
)
from speclint.testing import DesignFolder, changed
from tests.plugins.release.made import recorded
from tests.plugins.release.part import settings

CHOSEN = (
    "made.certificate",
    "made.hydraulic-test",
    "made.revision",
    "made.tightening",
    "made.within-limits",
    "release.made-parts",
)


def of(workshop: DesignFolder, stage: str = "for-review", **other: str):  # type: ignore[no-untyped-def]
    from speclint.checking import assess

    files = {**recorded(), **{f"{name}.toml": text for name, text in other.items()}}
    workshop.write(files, settings=settings(stage))
    chosen = [one for one in workshop.loaded.rules if one.name in CHOSEN]
    return assess([workshop.root], workshop.loaded, chosen)


def test_what_a_record_does_not_state_is_null_in_the_data(workshop: DesignFolder) -> None:
    files = recorded()
    made = "".join(line for line in files["made.toml"].splitlines(True) if not line.startswith("heat = "))
    assert made != files["made.toml"]
    (stated,) = (one for one in dossier_data(of(workshop))["parts"] if one["part"] == "cover")
    (bare,) = (one for one in dossier_data(of(workshop, made=made))["parts"] if one["part"] == "cover")
    assert stated["pieces"][0]["serial"] == bare["pieces"][0]["serial"] == "7"
    assert isinstance(stated["pieces"][0]["certificate"]["heat"], str)
    assert bare["pieces"][0]["certificate"]["heat"] is None


def test_a_pressure_part_is_told_with_piece_papers_and_sheets(workshop: DesignFolder) -> None:
    drawn = of(workshop)
    found = {one.part.id: one for one in dossier(drawn)}
    assert set(found) >= {"cover", "studs"}
    assert "ring" not in found  # neither a pressure part nor a safety part
    assert found["cover"].why == ("pressure part", "safety part")
    assert [one.made.id for one in found["cover"].pieces] == ["cover-7"]
    text = dossier_markdown(drawn)
    assert "cover-7: serial number 7, made to revision A, by an invented works; not said to be fitted" in text
    assert "certificate EN 10204 type 3.1, number not stated, heat H-3312" in text
    assert "hydraulic test first: result passed, pressure 28 bar gauge, held 1800 s" in text
    assert "weld all: result passed, procedure WPS-1, welder mark 7" in text


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (('made_to = "A"', 'made_to = "0"'), "made.revision on cover-7"),
        (('values = ["50.02 mm"]', 'values = ["50.06 mm"]'), "made.within-limits on cover-7"),
        (('pressure = "28 bar', 'pressure = "27 bar'), "made.hydraulic-test on cover-7"),
    ],
)
def test_what_is_open_is_told(workshop: DesignFolder, change: tuple[str, str], said: str) -> None:
    drawn = of(workshop, made=changed(recorded()["made.toml"], change))
    cover = next(one for one in dossier_data(drawn)["parts"] if one["part"] == "cover")
    assert any(one.startswith(said) for one in cover["open"])
    assert dossier_exit_code(drawn) == 1
    assert cover["pieces"][0]["old_revision"] == (said == "made.revision on cover-7")
    assert bool(cover["pieces"][0]["departures"]) == (said == "made.within-limits on cover-7")


def test_a_part_without_a_piece_is_open_and_one_scrapped_is_no_piece(workshop: DesignFolder) -> None:
    scrapped = changed(recorded()["made.toml"], ('serial = "7"\n', 'serial = "7"\nfitted = false\n'))
    drawn = of(workshop, made=scrapped)
    cover = next(one for one in dossier_data(drawn)["parts"] if one["part"] == "cover")
    assert (cover["pieces"], cover["open"][0]) == ([], "no part as made is on record")
    assert "no part as made is on record" in dossier_markdown(drawn)


def test_data_are_as_their_schema_says_and_the_page_prints_the_same(workshop: DesignFolder) -> None:
    drawn = of(workshop)
    data = json.loads(json.dumps(dossier_data(drawn)))
    jsonschema.validate(data, json.loads(published_schema("speclint.dossier/1")))
    assert data["parts"], "nothing was validated"
    page = dossier_html(drawn)
    assert "heat H-3312" in page
    assert "<script" not in page


def test_the_review_pack_has_the_record_beside_its_sheets(workshop: DesignFolder) -> None:
    page = review_page(of(workshop))
    section = page.partition("<h2 id=certification>")[2].partition("<h2 id=sheets>")[0]
    assert "cover-7: serial number 7, made to revision A" in section
    assert '<a href="#certification">' in page
