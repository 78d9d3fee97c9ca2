"""Openings that bars divide, from both sides: round a cage, and in the port of a liner."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed

CAGE, PORT = "cage.opening-of-its-bars", "liner.port-divided"
#: Round the valve, of 200 mm, each of 12 bars has 30°; 30 mm of bar leave 200 sin(15° − arcsin 0.15) = 22.200 mm.
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
        ('opening = "25 mm"', 'opening = "22.21 mm"', FINE),
        ('opening = "25 mm"', 'opening = "22.19 mm"', WRONG),
        ('opening = "25 mm"', 'opening = "22.21 mm ±0.1"', WRONG),
        # of several widths the widest is stated: round 222 mm they leave 58.12 − 30 = 28.12 mm, and twice that is 56.24
        ('opening = "25 mm"', 'opening = "56.2 mm"', FINE),
        ('opening = "25 mm"', 'opening = "56.3 mm"', WRONG),
        ('opening = "25 mm"', 'opening = "56.2 mm ±0.1"', WRONG),
        # 200 sin(16.364° − 8.627°) = 26.92 mm
        ("bars = 12", "bars = 11", WRONG),
        # 200 sin(7.2° − 8.627°) < 0: round the valve they close, and 25 × 30 = 750 mm is more than π × 222 = 697.4 mm
        ("bars = 12", "bars = 25", WRONG),
        ("bars = 12", "bars = 23", WRONG),  # 690 mm: they leave 0.32 mm each, and 25 mm are stated
        ("bars = 12", "bars = 16", FINE),  # 2 (43.59 − 30) = 27.18 mm
        ("bars = 12", "bars = 17", WRONG),  # 2 (41.03 − 30) = 22.05 mm
        ('bar = "30 mm"', 'bar = "27.25 mm"', FINE),  # 200 sin(15° − 7.8310°) = 24.96 mm
        ('bar = "30 mm"', 'bar = "27.15 mm"', WRONG),  # 25.06 mm
        ('bar = "30 mm"', 'bar = "45.6 mm"', FINE),  # 2 (58.12 − 45.6) = 25.04 mm
        ('bar = "30 mm"', 'bar = "45.7 mm"', WRONG),  # 24.84 mm
        ('bar = "30 mm"', 'bar = "58.2 mm"', WRONG),  # 698.4 mm
    ],
)
def test_bars_leave_the_openings_that_a_cage_states(
    workshop: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    files = {**CAGED, "cage.toml": changed(CAGED["cage.toml"], (old, new))}
    found = workshop.write(files).only(CAGE, "cage")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(("bar", "says"), [("58.1 mm", "opening between bars"), ("58.2 mm", "bars together")])
def test_bars_that_close_the_circle_leave_no_opening_to_judge(
    workshop: DesignFolder, bar: str, says: str
) -> None:
    """12 × 58.1 = 697.2 mm of π × 222 = 697.43 mm leave 0.02 mm each; 12 × 58.2 = 698.4 mm leave none."""
    files = {**CAGED, "cage.toml": changed(CAGED["cage.toml"], ('bar = "30 mm"', f'bar = "{bar}"'))}
    found = workshop.write(files).only(CAGE, "cage")
    assert found.judgement is not None
    assert (found.outcome, found.judgement.of) == ("finding", says)


@pytest.mark.parametrize(("bars", "outcome"), [("bars = 12\n", "not assessed"), ("", "not applicable")])
def test_bars_that_are_counted_are_asked_how_wide_they_are(
    workshop: DesignFolder, bars: str, outcome: str
) -> None:
    cage = changed(CAGED["cage.toml"], ("bars = 12\n", bars), ('bar = "30 mm"\n', ""))
    found = workshop.write({**CAGED, "cage.toml": cage}).only(CAGE, "cage")
    assert found.outcome == outcome


BOXED = 'outside_diameter = "200 mm"\nbox_diameter = "{}"\nretained = "{}"'


@pytest.mark.parametrize(
    ("box", "retained", "ends"),
    [
        ("210.6 mm", "cage", FINE),  # 210.6 sin(15° − arcsin(30/210.6)) = 24.97 mm
        ("210.8 mm", "cage", WRONG),  # 25.03 mm
        ("210 mm ±1", "cage", WRONG),
        ("211 mm", "perforated plate", FINE),  # the plate stands beside the valve: 22.20 mm round the valve
    ],
)
def test_bars_stand_round_the_bore_of_the_cage(
    workshop: DesignFolder, box: str, retained: str, ends: tuple[str, Grade | None]
) -> None:
    files = {
        **CAGED,
        "valve.toml": CAGED["valve.toml"].replace('outside_diameter = "200 mm"', BOXED.format(box, retained)),
    }
    found = workshop.write(files).only(CAGE, "cage")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(("valve", "ends"), [("210.6 mm", FINE), ("210.8 mm", WRONG)])
def test_round_a_larger_valve_they_leave_more(
    workshop: DesignFolder, valve: str, ends: tuple[str, Grade | None]
) -> None:
    """210.6 sin(15° − arcsin(30/210.6)) = 24.97 mm, and of 210.8 mm 25.03 mm."""
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


@pytest.mark.parametrize(("opening", "ends"), [("82.3 mm", FINE), ("82.1 mm", WRONG)])
def test_a_few_bars_are_measured_straight_across(
    workshop: DesignFolder, opening: str, ends: tuple[str, Grade | None]
) -> None:
    """Six bars of 20 mm on 200 mm: 200 sin(30° − arcsin 0.1) = 82.18 mm; along the circle it would be 84.72 mm."""
    few = changed(CAGED["cage.toml"], ("bars = 12", "bars = 6"), ('bar = "30 mm"', 'bar = "20 mm"'))
    files = {**CAGED, "cage.toml": changed(few, ('opening = "25 mm"', f'opening = "{opening}"'))}
    found = workshop.write(files).only(CAGE, "cage")
    assert (found.outcome, found.grade) == ends
