"""coil-spring.buckling, coil-spring.house and coil-spring.one-broken."""

from __future__ import annotations

import math
from itertools import product

import pytest
from hypothesis import given, strategies as st

from speclint.testing import DesignFolder, changed, found
from speclint_springs.formulae.helical import clearance_inside, clearance_outside, radial_room
from tests.plugins.known_metals import METALS, WITH_METALS
from tests.plugins.springs.spring import spring

BUCKLING, HOUSE, BROKEN = "coil-spring.buckling", "coil-spring.house", "coil-spring.one-broken"
HELD = 'seating = "both ends held but one free sideways"\n'


def buckles_at(L_0: float, D: float) -> float:
    """EN 13906-1's buckling deflection (from memory) at a seating of 1 and the worst of the metal's limits."""
    found = []
    for G, E in product((77.91, 81.09), (206 * 0.98, 206 * 1.02)):
        x = 1 - G / E
        found.append(L_0 * 0.5 / x * (1 - math.sqrt(1 - x / (0.5 + G / E) * (math.pi * D / L_0) ** 2)))
    return min(found)


@pytest.mark.parametrize(("spare", "outcome"), [(0.01, "conforms"), (-0.01, "finding")])
def test_buckling_limit_from_both_sides(workshop: DesignFolder, spare: float, outcome: str) -> None:
    """200 mm free on 48 mm: about 36 mm."""
    opened = 200 - buckles_at(200, 48) + spare
    files = spring(('"140 mm"', '"200 mm"'), ('"100 mm"', f'"{opened:.4f} mm"'), add=HELD)
    assert workshop.write(files).only(BUCKLING).outcome == outcome


def test_a_guided_spring_cannot_bow(workshop: DesignFolder) -> None:
    for guide in ('guide_pin = "39 mm"', 'housing = "60 mm"'):
        files = spring(add=f"guided = true\n{guide}\n")
        assert workshop.write(files).only(BUCKLING).outcome == "not applicable"
    long = (('"140 mm"', '"200 mm"'), ('"100 mm"', '"160 mm"'))
    assert workshop.write(spring(*long, add=f"{HELD}guided = false\n")).only(BUCKLING).outcome == "finding"


@pytest.mark.parametrize(("guided", "outcome"), [("true", "finding"), ("false", "finding")])
def test_a_word_alone_guides_no_spring(workshop: DesignFolder, guided: str, outcome: str) -> None:
    """Pressed by 40 mm of 200, the spring buckles at some 36 mm, where neither pin nor housing is stated."""
    long = (('"140 mm"', '"200 mm"'), ('"100 mm"', '"160 mm"'))
    files = spring(*long, add=f"{HELD}guided = {guided}\n")
    assert workshop.write(files).only(BUCKLING).outcome == outcome


@pytest.mark.parametrize("guided", ["guided = false\n", ""])
@pytest.mark.parametrize("guide", ['guide_pin = "39 mm"\n', 'housing = "60 mm"\n'])
def test_a_spring_that_is_not_said_to_be_guided_may_bow(
    workshop: DesignFolder, guided: str, guide: str
) -> None:
    long = (('"140 mm"', '"200 mm"'), ('"100 mm"', '"160 mm"'))
    files = spring(*long, add=HELD + guided + guide)
    assert workshop.write(files).only(BUCKLING).outcome == "finding"


@pytest.mark.parametrize(
    ("guide", "outcome"),
    [
        ('guide_pin = "35.21 mm"', "not applicable"),  # 48 - 8 - 35.21 = 4.79 mm of play, 0.1 × 48 = 4.8 mm
        ('guide_pin = "35.19 mm"', "finding"),
        ('housing = "60.79 mm"', "not applicable"),  # 60.79 - 56 = 4.79 mm
        ('housing = "60.81 mm"', "finding"),
        ('guide_pin = "20 mm"\nhousing = "60 mm"', "not applicable"),  # the housing keeps it straight
    ],
)
def test_a_guide_that_is_far_from_the_coils_guides_no_spring(
    workshop: DesignFolder, guide: str, outcome: str
) -> None:
    long = (('"140 mm"', '"200 mm"'), ('"100 mm"', '"160 mm"'))
    files = spring(*long, add=f"{HELD}guided = true\n{guide}\n")
    assert workshop.write(files).only(BUCKLING).outcome == outcome


@pytest.mark.parametrize(("pin", "outcome"), [("28 mm", "not applicable"), ("27.999 mm", "finding")])
def test_a_guide_with_all_the_play_that_it_may_have_guides(
    workshop: DesignFolder, pin: str, outcome: str
) -> None:
    """40 − 8 − 28 = 4 mm of play, 0.1 × 40 = 4 mm; numbers of which no digit is lost."""
    long = (('"140 mm"', '"200 mm"'), ('"100 mm"', '"160 mm"'), ('"48 mm"', '"40 mm"'))
    files = spring(*long, add=f'{HELD}guided = true\nguide_pin = "{pin}"\n')
    assert workshop.write(files).only(BUCKLING).outcome == outcome


@pytest.mark.parametrize("line", ['open_length = "100 mm"', 'free_length = "140 mm"'])
def test_buckling_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(spring((line, ""), add=HELD)).only(BUCKLING).outcome == "not assessed"


def test_buckling_is_not_assessed_without_the_seating(workshop: DesignFolder) -> None:
    check = workshop.write(spring()).only(BUCKLING)
    assert check.outcome == "not assessed"
    assert "seating" in check.says


@pytest.mark.parametrize(
    ("bore", "outcome"),
    [("56.268 mm", "conforms"), ("56.2671875 mm", "finding"), ("56.266 mm", "finding")],
)
def test_house_limit_from_both_sides(workshop: DesignFolder, bore: str, outcome: str) -> None:
    """Pitch (60 + 64)/8 = 15.5 mm; growth 0.1 (240.25 − 99.2 − 12.8)/48 = 0.2671875 mm on 56 mm."""
    assert workshop.write(spring(add=f'housing = "{bore}"\n')).only(HOUSE).outcome == outcome


@pytest.mark.parametrize(
    ("pin", "outcome"), [("39.99 mm", "conforms"), ("40 mm", "finding"), ("40.01 mm", "finding")]
)
def test_guide_pin_limit_from_both_sides(workshop: DesignFolder, pin: str, outcome: str) -> None:
    """48 − 8 = 40 mm within the coils."""
    assert workshop.write(spring(add=f'guide_pin = "{pin}"\n')).only(HOUSE).outcome == outcome


@pytest.mark.parametrize(("pin", "left"), [("39.7 mm", 0.1e-3), ("39.9 mm", -0.1e-3), ("40.1 mm", -0.3e-3)])
def test_the_pin_is_held_against_the_narrowest_coil(workshop: DesignFolder, pin: str, left: float) -> None:
    """48 − 0.1 less 8 + 0.1 is 39.8 mm, also where the pin is thicker than the coils that the drawing aims at."""
    sizes = (('"8 mm"', '"8 mm ±0.1"'), ('"48 mm"', '"48 mm ±0.1"'))
    check = workshop.write(spring(*sizes, add=f'guide_pin = "{pin}"\n')).only(HOUSE)
    assert found(check) == pytest.approx(left)


@pytest.mark.parametrize("stated", ['outside_diameter = "56 mm"', 'inside_diameter = "40 mm"'])
def test_the_pin_is_held_against_other_diameters(workshop: DesignFolder, stated: str) -> None:
    """56 − 8 and 40 + 8 are both 48 mm in the middle of the wire: 0.5 mm are left on a pin of 39.5 mm."""
    check = workshop.write(spring(('mean_diameter = "48 mm"', stated), add='guide_pin = "39.5 mm"\n')).only(
        HOUSE
    )
    assert found(check) == pytest.approx(0.5e-3)


@pytest.mark.parametrize("other", ['outside_diameter = "60 mm"\n', 'inside_diameter = "44 mm"\n'])
def test_the_pin_is_held_against_the_mean_diameter_where_several_are_stated(
    workshop: DesignFolder, other: str
) -> None:
    """Of 48 − 8 − 39.5 = 0.5 mm that the drawing aims at, 0.1 mm go by the limits of wire and coil each: 0.3 are left.

    Of the play that is aimed at 1 − 0.3/0.5 = 0.4 is used.
    """
    sizes = (('"8 mm"', '"8 mm ±0.1"'), ('"48 mm"', '"48 mm ±0.1"'))
    check = workshop.write(spring(*sizes, add=f'guide_pin = "39.5 mm"\n{other}')).only(HOUSE)
    assert found(check) == pytest.approx(0.3e-3)
    assert check.utilisation == pytest.approx(0.4)


def test_house_is_not_assessed_where_neither_is_stated(workshop: DesignFolder) -> None:
    assert workshop.write(spring()).only(HOUSE).outcome == "not assessed"


VALVE = 'kind = "poppet-valve"\nid = "valve"\nopens = "downwards"\nmass = "4.5 kg"\n'
SPINDLE = 'kind = "valve-spindle"\nid = "spindle"\nmoves = "valve"\nmass = "1.5 kg"\nfriction = "20 N"\n'
INNER = """
kind = "compression-spring"
id = "inner"
closes = "valve"
nested_in = "spring"
wire = "5 mm"
mean_diameter = "33 mm"
hand = "left"
shut_load = "400 N"
"""


def nest(*inner: tuple[str, str], valve: str = VALVE, hand: str = "right") -> dict[str, str]:
    """A set of two springs on a valve that opens downwards, the inner changed."""
    outer = f'closes = "valve"\nhand = "{hand}"\nshut_load = "900 N"\n'
    return {
        **spring(add=outer),
        "inner.toml": changed(INNER, *inner),
        "valve.toml": valve,
        "spindle.toml": SPINDLE,
    }


@pytest.mark.parametrize(("load", "outcome"), [("79 N", "conforms"), ("78 N", "finding")])
def test_one_broken_limit_from_both_sides(workshop: DesignFolder, load: str, outcome: str) -> None:
    """With the outer broken the inner must overcome 20 N of friction and 6 × 9.80665 = 58.84 N of weight: 78.84 N."""
    assert workshop.write(nest(("400 N", load))).only(BROKEN, "spring").outcome == outcome


@pytest.mark.parametrize(("rate", "outcome"), [("30 N/mm", "finding"), ("60 N/mm", "conforms")])
def test_a_valve_is_shut_by_the_lesser_of_two_rates_that_differ(
    workshop: DesignFolder, rate: str, outcome: str
) -> None:
    """The sizes of the outer spring give 45.087 N/mm with G 2 % low, 991.9 N over its 22 mm; 30 N/mm gives 660 N.

    20 N and (78 + 1.5) × 9.80665 = 779.6 N, 799.6 N in all, are wanted.
    """
    files = nest(valve=VALVE.replace("4.5 kg", "78 kg"))
    files["spring.toml"] = changed(files["spring.toml"], ('shut_load = "900 N"', f'rate = "{rate}"'))
    assert workshop.write(files).only(BROKEN, "inner").outcome == outcome


@pytest.mark.parametrize(
    ("load", "mass", "outcome"),
    [
        ("900 N", "78 kg", "conforms"),
        ("500 N", "78 kg", "finding"),  # the lesser of 500 and some 1012 N
        ("2000 N", "78 kg", "conforms"),
        ("2000 N", "120 kg", "finding"),  # of 2000 and some 1012 N
    ],
)
def test_a_valve_is_shut_by_the_lesser_of_two_loads_that_differ(
    workshop: DesignFolder, load: str, mass: str, outcome: str
) -> None:
    """The sizes of the outer spring give 46.007 × 22 = 1012.2 N at its shut length.

    20 N and (78 + 1.5) × 9.80665 = 779.6 N are 799.6 N; (120 + 1.5) × 9.80665 + 20 = 1211.5 N.
    """
    files = nest(valve=VALVE.replace("4.5 kg", mass))
    files["spring.toml"] = changed(files["spring.toml"], ('shut_load = "900 N"', f'shut_load = "{load}"'))
    files["spring.toml"] += 'quality_grade = "2"\n'
    assert workshop.write(files).only(BROKEN, "inner").outcome == outcome


def test_weight_that_shuts_helps(workshop: DesignFolder) -> None:
    up = VALVE.replace("downwards", "upwards")
    assert workshop.write(nest(("400 N", "1 N"), valve=up)).only(BROKEN, "spring").outcome == "conforms"


def test_springs_wound_alike_are_found(workshop: DesignFolder) -> None:
    assert workshop.write(nest()).only(BROKEN, "inner").outcome == "conforms"
    check = workshop.write(nest(hand="left")).only(BROKEN, "inner")
    assert check.outcome == "finding"
    assert "wound left hand, inside spring, which is wound left hand" in check.says


@pytest.mark.parametrize(("mean", "outcome"), [("32.99 mm", "conforms"), ("33.01 mm", "finding")])
def test_radial_room_from_both_sides(workshop: DesignFolder, mean: str, outcome: str) -> None:
    """(48 − 8 − 33 − 5)/2 = 1 mm."""
    assert workshop.write(nest(('"33 mm"', f'"{mean}"'))).only(BROKEN, "inner").outcome == outcome


def test_a_spring_alone_is_not_applicable(workshop: DesignFolder) -> None:
    files = nest()
    del files["inner.toml"]
    assert workshop.write(files).only(BROKEN).outcome == "not applicable"


def test_one_broken_is_not_assessed_without_spindle(workshop: DesignFolder) -> None:
    files = nest()
    del files["spindle.toml"]
    assert workshop.write(files).only(BROKEN, "spring").outcome == "not assessed"


@given(D=st.floats(0.03, 0.1), d=st.floats(0.002, 0.01), growth=st.floats(0.0, 0.001))
def test_growth_takes_its_own_size_of_the_room(D: float, d: float, growth: float) -> None:
    still = clearance_outside(D_h=0.12, D=D, d=d, ΔD=0.0)
    assert still - clearance_outside(D_h=0.12, D=D, d=d, ΔD=growth) == pytest.approx(growth)
    assert clearance_inside(D=D, d=d, d_p=D - d) == pytest.approx(0.0)


@given(D=st.floats(0.03, 0.1), d=st.floats(0.002, 0.01), room=st.floats(-0.005, 0.005))
def test_room_is_counted_on_the_radius(D: float, d: float, room: float) -> None:
    assert radial_room(D_o=D + 2 * d + 2 * room, d_o=d, D=D, d=d) == pytest.approx(room)


SIZES = """
material = "known-steel"
outside_diameter = "164 mm"
wall = "2.4 mm"
height = "82 mm"
beat_distance = "72 mm"
lower_beat.seat_diameter = "143 mm"
"""


@pytest.mark.parametrize(
    ("opens", "mass", "friction", "holds", "fails"),
    [("downwards", "0.1 kg", "20 N", "40.1 N", "39.9 N"), ("upwards", "90 kg", "200 N", "38.7 N", "38.5 N")],
)
def test_a_valve_weighs_what_its_sizes_let_it(
    workshop: DesignFolder, opens: str, mass: str, friction: str, holds: str, fails: str
) -> None:
    """Of 7850 kg/m³ its shell alone, 143 on 138.2 mm and 72 mm long, is 0.59917 kg, and a solid of its height 13.5976.

    At least 0.9 × 0.59917 and 1.5 kg of spindle open it: 20 + 2.03925 × 9.80665 = 39.998 N. At most 1.1 × 13.5976 and
    1.5 kg shut it: 200 − 16.45732 × 9.80665 = 38.609 N.
    """
    valve = VALVE.replace("downwards", opens).replace("4.5 kg", mass) + SIZES
    for load, outcome in ((holds, "conforms"), (fails, "finding")):
        files = nest(("400 N", load), valve=valve)
        files["spindle.toml"] = files["spindle.toml"].replace("20 N", friction)
        workshop.write({**files, "metals.toml": METALS}, settings=WITH_METALS)
        assert workshop.only(BROKEN, "spring").outcome == outcome
