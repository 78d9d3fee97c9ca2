"""Where links lead: the vessel of a part, the steam under a cover, and the paths of the steam."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import (
    box_of,
    branches_off,
    carries_live,
    fitted_to,
    packing_in,
    paths_to,
    rod_in,
    vessel_of,
)
from speclint.facts.chamber_covers import bore_under_cover, pressure_under_cover
from speclint.rules import NotApplicable, NotAssessed
from tests.facts.bench import bench

PARTS = {
    "cylinder-block block": "[bores.main]\n",
    "steam-pipe pipe": "",
    "cylinder-cover cover": 'closes = "block"\n',
    "chamber-cover lid": 'closes = "block"\n',
    "stuffing-box box": 'in_cover = "cover"\n',
    "gland gland": 'of = "box"\n',
    "bolted-joint studs": 'holds = "gland"\n',
    "weldment weldment": 'makes = "block"\n',
    "lens-joint lens": 'of = "pipe"\n',
    "pipe-flange flange": 'of = "pipe"\n',
    "cylinder-cover loose": "",
    "piston piston": "",
}


@pytest.mark.parametrize(
    ("part", "vessel"),
    [
        *((part, "block") for part in ("block", "cover", "lid", "box", "gland", "studs", "weldment")),
        *((part, "pipe") for part in ("pipe", "lens", "flange")),
        ("loose", None),
        ("piston", None),
    ],
)
def test_links_lead_to_a_vessel(tmp_path: Path, part: str, vessel: str | None) -> None:
    on = bench(tmp_path, PARTS, "block")
    found = vessel_of(on[part], on.sheet)
    assert (None if found is None else found.id) == vessel


def test_links_that_run_in_a_ring_lead_to_none(tmp_path: Path) -> None:
    files = {"gland one": 'of = "two"\n', "gland two": 'of = "one"\n'}
    on = bench(tmp_path, files, "one", readable=False)
    with pytest.raises(NotAssessed):
        vessel_of(on["one"], on.sheet)


@pytest.mark.parametrize(
    ("of", "more", "box"),
    [
        ('of = "box"\n', {}, "box"),
        ('of = "cover"\n', {}, "box"),
        ('of = "cover"\n', {"stuffing-box other": 'in_cover = "cover"\n'}, None),
        ('of = "loose"\n', {}, None),
        ('of = "block"\n', {}, None),
        ("", {}, None),
    ],
)
def test_a_gland_closes_its_box_or_the_only_one_of_its_cover(
    tmp_path: Path, of: str, more: dict[str, str], box: str | None
) -> None:
    on = bench(tmp_path, PARTS | {"gland gland": of} | more, "gland")
    found = box_of(on["gland"], on.sheet)
    assert (None if found is None else found.id) == box


def test_what_is_fitted_to_a_cover(tmp_path: Path) -> None:
    more = {"bolted-joint on-cover": 'holds = "cover"\n', "gland plain": 'of = "cover"\n'}
    on = bench(tmp_path, PARTS | more, "cover")
    assert [one.id for one in fitted_to(on["cover"], on.sheet)] == [
        "on-cover",
        "box",
        "plain",
        "gland",
        "studs",
    ]
    assert [one.id for one in fitted_to(on["loose"], on.sheet)] == []


@pytest.mark.parametrize(
    ("packing", "word"), [("braided graphite", "soft"), ("bronze segments", "metallic"), ("", None)]
)
def test_a_gland_compresses_a_braided_packing(tmp_path: Path, packing: str, word: str | None) -> None:
    stated = f'packing = "{packing}"\n' if packing else ""
    on = bench(tmp_path, {"stuffing-box box": stated}, "box")
    assert packing_in(on["box"], on.sheet) == word
    assert rod_in(on["box"], on.sheet) is None


BORES = '[seat_bores.u]\n{}[seat_bores.l]\nchamber = "live steam"\nopens_into = "chamber"\n'


@pytest.mark.parametrize(
    ("cover", "bore", "pressure"),
    [
        ('seat_bore = "u"\n', 'opens_into = "cylinder"\nserves = "inlet"\n', "cylinder"),
        ('seat_bore = "u"\n', 'opens_into = "chamber"\nserves = "inlet"\n', "live"),
        (
            'seat_bore = "u"\n',
            'opens_into = "chamber"\nserves = "exhaust"\nchamber = "live steam"\n',
            "exhaust",
        ),
        ('seat_bore = "u"\n', 'opens_into = "chamber"\nchamber = "exhaust steam"\n', "exhaust"),
        ('seat_bore = "u"\n', 'serves = "inlet"\n', None),
        ('seat_bore = "l"\n', "", "live"),
        ('over = "valve"\n', 'opens_into = "chamber"\nserves = "inlet"\n', "live"),
        ('over = "bare"\n', 'opens_into = "chamber"\nserves = "inlet"\n', None),
        ("", 'opens_into = "chamber"\nserves = "inlet"\n', None),
    ],
)
def test_the_steam_under_the_cover_of_a_chamber(
    tmp_path: Path, cover: str, bore: str, pressure: str | None
) -> None:
    files = {
        "cylinder-block block": BORES.format(bore),
        "chamber-cover lid": 'closes = "block"\n' + cover,
        "valve-seat seat": 'pressed_into = "block"\nin_bore = "u"\n',
        "poppet-valve valve": 'upper_beat.seat = "seat"\n',
        "poppet-valve bare": "",
    }
    on = bench(tmp_path, files, "lid")
    found = pressure_under_cover(on["lid"], on.sheet)
    assert (None if found is None else found.value) == pressure
    assert (bore_under_cover(on["lid"], on.sheet) is None) == (cover in ("", 'over = "bare"\n'))


PATH = {
    "cylinder-block block": "[bores.main]\n",
    "steam-pipe header": 'carries = "live steam"\n',
    "steam-passage chest": 'follows = "header"\nplace = "chest"\n',
    "steam-passage branch": 'follows = "chest"\nplace = "branch"\n',
    "steam-passage last": 'follows = "chest"\nplace = "passage"\n',
    "steam-passage port": 'place = "port"\n',
    "steam-passage from-port": 'follows = "port"\nplace = "passage"\ncarries = "exhaust steam"\n',
    "steam-passage astray": 'follows = "block"\nplace = "passage"\n',
    "blast-nozzle nozzle": 'follows = ["from-port", "last"]\n',
    "blast-nozzle nowhere": "",
}


def test_paths_run_from_their_first_stage_to_their_end(tmp_path: Path) -> None:
    on = bench(tmp_path, PATH, "chest")
    paths = paths_to(on["nozzle"], on.sheet)
    assert [[one.id for one in path] for path in paths] == [
        ["port", "from-port"],
        ["header", "chest", "last"],
    ]
    assert carries_live(paths[1], on.sheet)
    assert [one.id for one in branches_off(on["chest"], on.sheet)] == ["branch"]
    (tmp_path / "a").mkdir()
    bare = bench(tmp_path / "a", {name: text for name, text in PATH.items() if "nozzle" not in name}, "chest")
    assert [[one.id for one in path] for path in paths_to(bare["last"], bare.sheet)] == [
        ["header", "chest", "last"]
    ]
    assert not carries_live(paths_to(bare["from-port"], bare.sheet)[0][1:], bare.sheet)


@pytest.mark.parametrize(
    ("end", "why"),
    [
        ("chest", "the path goes on to last and is judged at its end"),
        ("last", "the path goes on to nozzle"),
        ("branch", "it branches off a path"),
        ("port", "it lies between valve and cylinder"),
    ],
)
def test_what_is_no_end_of_a_path(tmp_path: Path, end: str, why: str) -> None:
    on = bench(tmp_path, PATH, "chest")
    with pytest.raises(NotApplicable, match=why):
        paths_to(on[end], on.sheet)


def test_a_path_without_an_end_or_a_stage_is_not_assessed(tmp_path: Path) -> None:
    on = bench(tmp_path, PATH, "chest")
    with pytest.raises(NotAssessed, match="follows is not stated"):
        paths_to(on["nowhere"], on.sheet)
    with pytest.raises(NotAssessed, match="block is neither pipe nor passage of a steam path"):
        paths_to(on["astray"], on.sheet)
