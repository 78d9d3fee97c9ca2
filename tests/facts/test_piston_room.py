"""Room between a valve and the piston, by where its seat lies and which way it lifts."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import lifts_clear_of_piston, room_to_piston, stands_across
from tests.facts.bench import Bench, bench

SEAT_BORE = 'lifts = "{lifts}"\nto_cylinder = "150 mm"\nend = "front"\n'
VALVE = 'upper_beat.seat = "seat"\nheight = "120 mm"\nlift = "20 mm"\n'
END = '[ends.front]\nof_bore = "main"\nside = "front"\nclearance = "8 mm"\n'


def over_piston(folder: Path, bore: str, end: str = END, valve: str = VALVE) -> Bench:
    files = {
        "cylinder-block block": f"[bores.main]\n[seat_bores.upper]\n{bore}{end}",
        "valve-seat seat": 'pressed_into = "block"\nin_bore = "upper"\n',
        "poppet-valve valve": valve,
    }
    return bench(folder, files, "valve")


ALONG, ACROSS = "along the cylinder", "across the cylinder"


@pytest.mark.parametrize("nominal", [True, False])
@pytest.mark.parametrize(
    ("bore", "end", "valve", "room"),
    [
        (SEAT_BORE.format(lifts=ALONG), END, VALVE, 0.018),  # 150 + 8 − 120 − 20
        (SEAT_BORE.format(lifts=ACROSS), END, VALVE, 0.010),
        (SEAT_BORE.format(lifts=ACROSS).replace('end = "front"\n', ""), "", VALVE, 0.010),
        (SEAT_BORE.format(lifts="away from the cylinder"), END, VALVE, None),
        (SEAT_BORE.replace('lifts = "{lifts}"\n', ""), END, VALVE, None),
        (SEAT_BORE.format(lifts=ALONG).replace('end = "front"\n', ""), END, VALVE, None),
        (SEAT_BORE.format(lifts=ALONG).replace('to_cylinder = "150 mm"\n', ""), END, VALVE, None),
        (SEAT_BORE.format(lifts=ALONG), END, VALVE.replace('height = "120 mm"\n', ""), None),
        (SEAT_BORE.format(lifts=ALONG), END, VALVE.replace('lift = "20 mm"\n', ""), None),
    ],
)
def test_room_to_the_piston(
    tmp_path: Path, bore: str, end: str, valve: str, room: float | None, nominal: bool
) -> None:
    on = over_piston(tmp_path, bore, end, valve)
    found = room_to_piston(on["valve"], on.sheet, nominal=nominal)
    assert (None if found is None else found.value) == pytest.approx(room)
    assert stands_across(on["valve"], on.sheet) == (ACROSS in bore)


def test_drawn_room_rests_on_a_clearance_that_is_stated(tmp_path: Path) -> None:
    on = over_piston(tmp_path, SEAT_BORE.format(lifts=ALONG), END.replace('clearance = "8 mm"\n', ""))
    assert room_to_piston(on["valve"], on.sheet, nominal=True) is None


@pytest.mark.parametrize(
    ("bore", "clear"),
    [
        ('lifts = "away from the cylinder"\n', True),
        (f'lifts = "{ALONG}"\nopens_into = "chamber"\n', False),
        ('opens_into = "chamber"\n', True),
        ('opens_into = "cylinder"\n', False),
        ("", False),
    ],
)
def test_a_valve_is_clear_of_the_piston_where_it_lifts_from_it(
    tmp_path: Path, bore: str, clear: bool
) -> None:
    on = over_piston(tmp_path, bore)
    found = lifts_clear_of_piston(on["valve"], on.sheet)
    assert (found is not None) == clear
    assert found is None or found.value is False
