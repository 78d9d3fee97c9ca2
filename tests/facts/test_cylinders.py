"""Which parts belong to one bore of a block, and which end and bore a cover closes."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import (
    bore_closed,
    bore_named,
    bore_under,
    end_closed_by,
    ends_of,
    liner_under,
    liners_of,
    openings_at_end,
    rods_in,
    side_closed,
)
from speclint.quantities import Measure
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

BLOCK = """[bores.main]
diameter = "570 mm"
recess_diameter = "600 mm"
[ends.front]
of_bore = "main"
side = "front"
[ends.back]
of_bore = "main"
side = "back"
"""
LINER = 'housed_in = "block"\nin_bore = "main"\nbore = "500 mm"\n'
COVER = 'closes = "block"\n'


def drawn(folder: Path, cover: str = COVER, liner: str = LINER, block: str = BLOCK) -> Bench:
    files = {"cylinder-block block": block, "cylinder-cover cover": cover}
    if liner:
        files["cylinder-liner liner"] = liner
    return bench(folder, files, "cover")


def test_a_bore_that_the_block_does_not_state_is_not_assessed(tmp_path: Path) -> None:
    on = drawn(tmp_path)
    assert bore_named(on["block"], "main", on.sheet) is on["block"].bores["main"]
    with pytest.raises(NotAssessed, match="bore mian is not stated"):
        bore_named(on["block"], "mian", on.sheet)


@pytest.mark.parametrize(
    ("cover", "end"),
    [
        ('of_end = "back"\n', "back"),
        ('of_end = "back"\nend = "front"\n', "back"),
        ('end = "front"\n', "front"),
    ],
)
def test_a_cover_closes_the_end_that_it_names_or_the_only_one_on_its_side(
    tmp_path: Path, cover: str, end: str
) -> None:
    on = drawn(tmp_path, COVER + cover)
    assert end_closed_by(on["cover"], on.sheet) == (end, on["block"].ends[end])
    assert side_closed(on["cover"], on.sheet) == end


@pytest.mark.parametrize(
    ("side", "says"), [('"front"', "no ends of block are at the back"), ('"back"', "2 ends of block are at")]
)
def test_of_no_end_or_two_on_its_side_a_cover_names_its_own(tmp_path: Path, side: str, says: str) -> None:
    block = BLOCK.replace('side = "front"', f"side = {side}").replace('side = "back"', f"side = {side}")
    on = drawn(tmp_path, COVER + 'end = "back"\n', block=block)
    with pytest.raises(NotAssessed, match=says):
        end_closed_by(on["cover"], on.sheet)


def test_an_end_that_states_no_side_is_on_none(tmp_path: Path) -> None:
    block = BLOCK.replace('side = "back"\n', "")
    on = drawn(tmp_path, COVER + 'end = "back"\n', block=block)
    with pytest.raises(NotAssessed, match="no ends of block are at the back"):
        end_closed_by(on["cover"], on.sheet)


@pytest.mark.parametrize(
    ("cover", "side"),
    [('of_end = "back"\nend = "front"\n', "front"), ('of_end = "back"\n', None), ("", None)],
)
def test_a_cover_is_on_its_own_side_where_the_end_says_none(
    tmp_path: Path, cover: str, side: str | None
) -> None:
    on = drawn(tmp_path, COVER + cover, block=BLOCK.replace('side = "back"\n', ""))
    assert side_closed(on["cover"], on.sheet) == side


def test_without_a_block_a_cover_states_its_side_and_its_bore(tmp_path: Path) -> None:
    on = bench(tmp_path, {"cylinder-cover cover": 'end = "front"\nbore = "490 mm"\n'}, "cover")
    assert side_closed(on["cover"], on.sheet) == "front"
    assert bore_closed(on["cover"], on.sheet) is on["cover"].bore


@pytest.mark.parametrize(
    ("cover", "liner", "block", "bore"),
    [
        ('of_end = "front"\nbore = "490 mm"\n', LINER, BLOCK, "500 mm"),
        ('of_end = "front"\nbore = "490 mm"\n', "", BLOCK, "570 mm"),
        ('end = "front"\nbore = "490 mm"\n', LINER, BLOCK, "490 mm"),
        ('end = "front"\n', LINER, BLOCK, "500 mm"),
        ('end = "front"\n', "", BLOCK, "570 mm"),
        ('end = "front"\n', LINER, BLOCK.partition("[ends")[0], None),
    ],
)
def test_the_bore_closed_is_that_of_the_end_and_of_its_liner(
    tmp_path: Path, cover: str, liner: str, block: str, bore: str | None
) -> None:
    on = drawn(tmp_path, COVER + cover, liner, block)
    found = bore_closed(on["cover"], on.sheet)
    assert (found.text if isinstance(found, Measure) else None) == bore


def test_a_block_without_ends_or_bores_tells_no_bore_under_a_cover(tmp_path: Path) -> None:
    for number, block in enumerate((BLOCK.partition("[ends")[0], '[ends.front]\nside = "front"\n')):
        (tmp_path / str(number)).mkdir()
        on = drawn(tmp_path / str(number), COVER + 'end = "front"\n', "", block)
        assert bore_under(on["cover"], on.sheet) is None
        assert liner_under(on["cover"], on.sheet) is None


def test_ends_of_the_only_bore_need_not_name_it(tmp_path: Path) -> None:
    on = drawn(tmp_path, COVER + 'of_end = "front"\n', block=BLOCK.replace('of_bore = "main"\n', ""))
    assert set(ends_of(on["block"], "main", on.sheet)) == {"front", "back"}
    assert bore_under(on["cover"], on.sheet) == "main"


def test_ends_and_liners_of_two_bores_are_kept_apart(tmp_path: Path) -> None:
    block = BLOCK.replace('[ends.back]\nof_bore = "main"', '[bores.second]\n[ends.back]\nof_bore = "second"')
    files = {
        "cylinder-block block": block,
        "cylinder-liner first": LINER,
        "cylinder-liner other": LINER.replace('"main"', '"second"'),
        "piston p1": 'runs_in = "first"\n',
        "piston p2": 'runs_in = "other"\n',
        "piston-rod r1": 'carries = "p1"\n',
        "piston-rod r2": 'carries = "p2"\n',
    }
    on = bench(tmp_path, files, "block")
    assert set(ends_of(on["block"], "second", on.sheet)) == {"back"}
    assert [one.id for one in liners_of(on["block"], "second", on.sheet)] == ["other"]
    assert [one.id for one in rods_in(on["block"], "second", on.sheet)] == ["r2"]


def test_an_end_of_one_of_two_bores_names_its_own(tmp_path: Path) -> None:
    on = bench(tmp_path, {"cylinder-block block": "[bores.a]\n[bores.b]\n[ends.front]\n"}, "block")
    with pytest.raises(NotAssessed, match=r"ends\.front\.of_bore is not stated"):
        ends_of(on["block"], "a", on.sheet)


BOTH = {"bore of the liner", "bore of the block"}
ALL = BOTH | {"recess of the collar"}


@pytest.mark.parametrize(
    ("collar", "openings"),
    [('collar.end = "front"\n', ALL), ('collar.end = "back"\n', BOTH), ("", ALL)],
)
def test_the_recess_is_an_opening_where_the_collar_may_sit(
    tmp_path: Path, collar: str, openings: set[str]
) -> None:
    on = drawn(tmp_path, COVER + 'of_end = "front"\n', LINER + collar)
    assert set(openings_at_end(on["cover"], on.sheet)) == openings


def test_without_a_liner_bore_and_recess_of_the_block_are_open(tmp_path: Path) -> None:
    on = drawn(tmp_path, COVER + 'of_end = "front"\n', "")
    assert set(openings_at_end(on["cover"], on.sheet)) == {"bore of the block", "recess of the collar"}


def test_only_openings_whose_size_is_stated_count(tmp_path: Path) -> None:
    block = BLOCK.replace('recess_diameter = "600 mm"\n', "")
    on = drawn(tmp_path, COVER + 'of_end = "front"\n', LINER, block)
    assert set(openings_at_end(on["cover"], on.sheet)) == BOTH


@pytest.mark.parametrize(("end", "openings"), [("", ALL), ('end = "front"\n', ALL), ('end = "back"\n', BOTH)])
def test_a_cover_whose_end_states_no_side_may_be_at_the_collar(
    tmp_path: Path, end: str, openings: set[str]
) -> None:
    block = BLOCK.replace('side = "front"\n', "")
    on = drawn(tmp_path, COVER + 'of_end = "front"\n' + end, LINER + 'collar.end = "front"\n', block)
    assert set(openings_at_end(on["cover"], on.sheet)) == openings
