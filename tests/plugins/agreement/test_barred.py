"""Openings that bars divide, from both sides: round a cage, and in the port of a liner."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed

CAGE, PORT = "cage.opening-of-its-bars", "liner.port-divided"
#: Round the valve π × 200 mm = 628.32 mm, for each of 12 bars 52.36 mm, less the bar 22.36 mm.
CAGED = {
    "cage.toml": 'kind = "valve-cage"\nid = "cage"\nsurrounds = "valve"\nopening = "25 mm"\nbars = 12\n'
    'bar = "30 mm"\noutside_diameter = "222 mm"\n',
    "valve.toml": 'kind = "poppet-valve"\nid = "valve"\noutside_diameter = "200 mm"\n',
}
PORTED = {
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\n'
    '[ports.front]\nopening = "60 mm"\nbar = "15 mm"\nwidth = "500 mm"\n'
    '[ports.back]\nopening = "50 mm"\nbar = "15 mm"\nwidth = "300 mm"\n'
}
WRONG, FINE = ("finding", Grade.NONCONFORMITY), ("conforms", None)


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('opening = "25 mm"', 'opening = "22.4 mm"', FINE),
        ('opening = "25 mm"', 'opening = "22.3 mm"', WRONG),
        ('opening = "25 mm"', 'opening = "22.4 mm ±0.1"', WRONG),
        ('opening = "25 mm"', 'opening = "50 mm"', FINE),  # of several widths the widest is stated
        # 628.32/11 − 30 = 27.12 mm
        ("bars = 12", "bars = 11", WRONG),
        # 628.32/25 − 30 < 0: round the valve they close, and 25 × 30 = 750 mm is more than π × 222 = 697.4 mm
        ("bars = 12", "bars = 25", WRONG),
        ("bars = 12", "bars = 23", FINE),  # 690 mm
        ('bar = "30 mm"', 'bar = "27.4 mm"', FINE),  # 52.36 − 27.4 = 24.96 mm
        ('bar = "30 mm"', 'bar = "27.3 mm"', WRONG),  # 25.06 mm
        ('bar = "30 mm"', 'bar = "58.1 mm"', FINE),  # 697.2 mm
        ('bar = "30 mm"', 'bar = "58.2 mm"', WRONG),  # 698.4 mm
    ],
)
def test_bars_leave_the_openings_that_a_cage_states(
    workshop: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    files = {**CAGED, "cage.toml": changed(CAGED["cage.toml"], (old, new))}
    found = workshop.write(files).only(CAGE, "cage")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(("valve", "ends"), [("210 mm", FINE), ("211 mm", WRONG)])
def test_round_a_larger_valve_they_leave_more(
    workshop: DesignFolder, valve: str, ends: tuple[str, Grade | None]
) -> None:
    """π × 210/12 − 30 = 24.98 mm, and π × 211/12 − 30 = 25.24 mm."""
    found = workshop.write(CAGED).replace("valve.toml", "200 mm", valve).only(CAGE, "cage")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('opening = "60 mm"', 'opening = "485 mm"', FINE),
        ('opening = "60 mm"', 'opening = "486 mm"', WRONG),
        ('width = "500 mm"', 'width = "75 mm"', FINE),
        ('width = "500 mm"', 'width = "74.9 mm"', WRONG),
        ('opening = "50 mm"', 'opening = "286 mm"', WRONG),  # the second port
        ('opening = "50 mm"', 'opening = "285 mm"', FINE),
    ],
)
def test_a_port_has_room_for_an_opening_and_a_bar(
    workshop: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    found = workshop.write({"liner.toml": changed(PORTED["liner.toml"], (old, new))}).only(PORT)
    assert (found.outcome, found.grade) == ends
