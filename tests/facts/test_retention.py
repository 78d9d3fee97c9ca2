"""What keeps a seat, a valve and a liner in their places, and the room beyond an open valve."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import clearance_to_cage, cover_on_collar, covers_on_collar, ends_beyond, retained_by_part
from tests.facts.bench import bench


@pytest.mark.parametrize(
    ("cage", "cover", "clearance"),
    [
        ('end_at = "150 mm"\n', 'inside_at = "146 mm"\n', 0.006),
        ('end_at = "145 mm"\n', 'inside_at = "146 mm"\n', 0.005),
        ('end_at = "145 mm"\n', "", 0.005),
        ("", "", 0.004),
    ],
)
def test_a_valve_may_meet_its_cage_or_the_cover_over_it(
    tmp_path: Path, cage: str, cover: str, clearance: float
) -> None:
    """Less 120 + 20 mm; the valve states 4 mm."""
    files = {
        "poppet-valve valve": 'height = "120 mm"\nlift = "20 mm"\nclearance_open = "4 mm"\n',
        "valve-cage cage": 'surrounds = "valve"\n' + cage,
        "chamber-cover lid": 'over = "valve"\n' + cover,
    }
    on = bench(tmp_path, files, "valve")
    assert clearance_to_cage(on["valve"], on.sheet) == pytest.approx(clearance)
    assert {name for name, _ in ends_beyond(on["valve"], on.sheet)} == {
        name for name, text in (("cage", cage), ("lid", cover)) if text
    }


RING, CAGE = 'retains = "seat"\n', 'surrounds = "valve"\n'


@pytest.mark.parametrize(
    ("parts", "seat", "kept"),
    [
        ({"ring": RING + 'fastened = "welded in"\n'}, "", "retaining ring"),
        ({"ring": RING + 'fastened = "screwed in"\nlocked = true\n'}, "", "retaining ring"),
        ({"ring": RING + 'fastened = "screwed in"\nlocked = false\n'}, "", None),
        ({"ring": RING + 'fastened = "screwed in"\n'}, "", None),
        ({"ring": RING}, "", None),
        ({"cage": CAGE + 'held_by = "lid"\n'}, 'retention = "shoulder and cage"\n', "shoulder and cage"),
        ({"cage": CAGE + 'held_by = "lid"\n'}, 'retention = "screwed ring"\n', None),
        ({"cage": CAGE + 'held_by = "lid"\n'}, "", None),
        ({"cage": CAGE}, 'retention = "shoulder and cage"\n', None),
        ({}, 'retention = "shoulder and cage"\n', None),
    ],
)
def test_a_seat_is_kept_by_a_part_that_holds(
    tmp_path: Path, parts: dict[str, str], seat: str, kept: str | None
) -> None:
    kinds = {"ring": "retaining-ring", "cage": "valve-cage"}
    files = {
        "valve-seat seat": seat,
        "poppet-valve valve": 'upper_beat.seat = "seat"\n',
        "chamber-cover lid": "",
    }
    files |= {f"{kinds[name]} {name}": text for name, text in parts.items()}
    on = bench(tmp_path, files, "seat")
    found = retained_by_part(on["seat"], on.sheet)
    assert (None if found is None else found.value) == kept


END = '[ends.front]\nof_bore = "main"\nside = "front"\nclearance = "8 mm"\n'
LINER = 'housed_in = "block"\nin_bore = "main"\ncollar.end = "front"\n'
ENDS = END + END.replace("front", "back")


@pytest.mark.parametrize(
    ("liner", "cover", "closes"),
    [
        (LINER, 'of_end = "front"\n', True),
        (LINER, 'of_end = "back"\n', False),
        (LINER, 'end = "front"\n', True),
        (LINER, 'end = "back"\n', False),
        (LINER, "", False),
        (LINER.replace('collar.end = "front"\n', ""), 'end = "front"\n', False),
        (LINER.replace('in_bore = "main"\n', ""), 'end = "front"\n', False),
    ],
)
def test_the_cover_at_the_collar_of_a_liner(tmp_path: Path, liner: str, cover: str, closes: bool) -> None:
    files = {
        "cylinder-block block": "[bores.main]\n" + ENDS,
        "cylinder-liner liner": liner,
        "cylinder-cover cover": 'closes = "block"\n' + cover,
        "bolted-joint studs": 'holds = "cover"\n',
        "bolted-joint gland-studs": 'holds = "gland"\nscrewed_into = "cover"\n',
        "gland gland": "",
    }
    on = bench(tmp_path, files, "liner")
    assert [one.id for one in covers_on_collar(on["liner"], on.sheet)] == (["cover"] if closes else [])
    found = cover_on_collar(on["liner"], on.sheet)
    assert (found is not None) == closes
    if found is not None:
        assert [place.file for place in found.places] == ["cover.toml", "studs.toml"]


def test_a_cover_on_which_no_joint_is_drawn_clamps_nothing(tmp_path: Path) -> None:
    files = {
        "cylinder-block block": "[bores.main]\n" + ENDS,
        "cylinder-liner liner": LINER,
        "cylinder-cover cover": 'closes = "block"\nof_end = "front"\n',
    }
    on = bench(tmp_path, files, "liner")
    assert cover_on_collar(on["liner"], on.sheet) is None
