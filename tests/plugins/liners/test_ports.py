"""liner.port-register and liner.port-bars.

First steam governs: liner at 120 °C with 11.46667e-6, block at 50 °C with 11.5e-6, so that 60 mm from the collar
become 60.0688 in the liner and 60.0207 mm in the block.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, found, limit
from speclint_liners.formulae.ports import angle_between, blocked_share, least_bar, overlap
from tests.plugins.liners.bench import RING, bench, in_liner

REGISTER, BARS = "liner.port-register", "liner.port-bars"
PORT = """[ports.front]
matches = "front"
from_collar = "60 mm"
height = "40 mm"
angle = "0 °"
width = "300 mm"
crossed_by_rings = false
"""


def test_growth_alone_blocks_little(workshop: DesignFolder) -> None:
    check = workshop.write(bench()).only(REGISTER)
    assert found(check) == pytest.approx(0.0481 / 40, rel=1e-3)


@pytest.mark.parametrize(("place", "outcome"), [("61.94", "conforms"), ("62", "finding")])
def test_a_port_out_of_place_along_the_axis(workshop: DesignFolder, place: str, outcome: str) -> None:
    # 61.94 × 1.001146667 − 60.0207 = 1.9903 mm, 4.976 % of 40 mm; 62 mm: 2.0504 mm, 5.126 %
    check = workshop.write(bench(in_liner('from_collar = "60 mm"', f'from_collar = "{place} mm"'))).only(
        REGISTER
    )
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("angle", "outcome"),
    [
        ("2.9", "conforms"),
        ("3.1", "finding"),
        ("-3.1", "finding"),
        ("359.9", "conforms"),
        ("357.1", "conforms"),
        ("356.9", "finding"),
        ("362.9", "conforms"),
    ],
)
def test_a_port_out_of_place_round_the_bore(workshop: DesignFolder, angle: str, outcome: str) -> None:
    # 2.9° on 560 mm is 14.17 of 300 mm, 4.72 % and 0.12 % along; 3.1° is 15.15 mm, 5.05 %
    check = workshop.write(bench(in_liner('angle = "0 °"', f'angle = "{angle} °"'))).only(REGISTER)
    assert check.outcome == outcome


def test_a_liner_without_ports_has_none_to_register(workshop: DesignFolder) -> None:
    assert workshop.write(bench(in_liner(PORT, ""))).only(REGISTER).outcome == "not applicable"


@pytest.mark.parametrize(
    ("old", "new"),
    [('height = "40 mm"', ""), ('matches = "front"', "")],
)
def test_register_needs_both_ports(workshop: DesignFolder, old: str, new: str) -> None:
    assert workshop.write(bench(in_liner(old, new))).only(REGISTER).outcome == "not assessed"


def crossed(opening: str = "60 mm", bar: str = "18.1 mm") -> dict[str, str]:
    barred = f'crossed_by_rings = true\nopening = "{opening}"\nbar = "{bar}"'
    return bench(in_liner("crossed_by_rings = false", barred))


@pytest.mark.parametrize(
    ("opening", "bar", "outcome"),
    [
        ("60 mm", "18.1 mm", "conforms"),  # 0.12 × 500; 0.6 × 30.15 = 18.09 mm
        ("60.1 mm", "18.1 mm", "finding"),
        ("60 mm", "18.08 mm", "finding"),
    ],
)
def test_openings_and_bars(workshop: DesignFolder, opening: str, bar: str, outcome: str) -> None:
    check = workshop.write(crossed(opening, bar)).only(BARS)
    assert check.outcome == outcome
    assert check.grade is (Grade.QUERY if outcome == "finding" else None)


def test_the_least_bar_of_a_thin_liner(workshop: DesignFolder) -> None:
    files = crossed("60 mm", "11.9 mm")
    files["liner.toml"] = files["liner.toml"].replace('bore = "50', 'bore = "53')  # the new and the last
    check = workshop.write(files).only(BARS)
    assert check.outcome == "finding"
    assert limit(check) == pytest.approx(0.012)


@pytest.mark.parametrize(
    ("place", "said", "outcome"),
    [("64 mm", "false", "finding"), ("62 mm", "true", "not applicable")],
)
def test_where_the_rings_are_drawn_no_word_says_what_they_run_over(
    workshop: DesignFolder, place: str, said: str, outcome: str
) -> None:
    """The front ring turns at 35 + 8 + 40 = 83 mm: the port ends at 84 or 82 mm, and its opening is 1 mm too wide."""
    back = RING.replace('id = "ring"', 'id = "back"').replace('place = "front"', 'place = "back"')
    files = bench(
        in_liner('from_collar = "60 mm"', f'from_collar = "{place}"'),
        in_liner(
            "crossed_by_rings = false", f'crossed_by_rings = {said}\nopening = "61 mm"\nbar = "18.1 mm"'
        ),
    )
    assert workshop.write({**files, "back.toml": back}).only(BARS).outcome == outcome


def test_bars_matter_only_where_rings_cross_and_must_then_be_stated(workshop: DesignFolder) -> None:
    assert workshop.write(bench()).only(BARS).outcome == "not applicable"
    files = crossed()
    files["liner.toml"] = files["liner.toml"].replace('bar = "18.1 mm"', "")
    assert workshop.write(files).only(BARS).outcome == "not assessed"


@pytest.mark.parametrize(
    ("one", "other", "apart"), [(30, 10, 20), (10, 30, -20), (350, 10, -20), (10, 350, 20)]
)
def test_from_one_place_to_another_it_is_the_shorter_way(one: float, other: float, apart: float) -> None:
    """In degrees: 350° lies 10° before 0°."""
    assert math.degrees(angle_between(math.radians(one), math.radians(other))) == pytest.approx(apart)


@given(angle=st.floats(-3.0, 3.0), turns=st.integers(-3, 3))
def test_whole_turns_count_for_nothing(angle: float, turns: int) -> None:
    assert angle_between(angle + 2 * math.pi * turns, 0.0) == pytest.approx(angle, abs=1e-9)
    assert abs(angle_between(angle, 2.0)) <= math.pi + 1e-12


@given(at=st.floats(-0.1, 0.1), a=st.floats(0.01, 0.1), b=st.floats(0.01, 0.1))
def test_openings_meet_alike_from_either_side(at: float, a: float, b: float) -> None:
    assert overlap(0.0, a, at, b) == pytest.approx(overlap(at, b, 0.0, a), abs=1e-12)
    assert 0 <= overlap(0.0, a, at, b) <= min(a, b) + 1e-12
    assert blocked_share(overlap(0.0, a, at, b), 0.2, b, 0.2) >= -1e-12
    assert least_bar(0.6, a, 0.012) >= 0.012
