"""The water of the first steam, where it lies, how it leaves, and what ash and acid take; worked by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, expect_not_applicable, found, on_sheet
from speclint_steamways.formulae.water import drained_together, pool
from tests.plugins.steamways.wet import files

WARMING, PASSES = "water.of-warming", "water.drain-passes-it"
LIES, OPEN, ASH = "water.lies-on-the-grade", "water.drain-stays-open", "water.ash-and-acid"


def test_the_water_of_two_tonnes_by_hand(workshop: DesignFolder) -> None:
    """62.5 kg, 1.04 kg a minute over an hour, 3.12 at first."""
    check = workshop.write(files()).only(WARMING)
    assert check.outcome == "conforms"
    assert on_sheet(check, "T_s") - 273.15 == pytest.approx(143.7, abs=0.1)
    assert on_sheet(check, "r") == pytest.approx(2.133e6, rel=1e-3)
    assert on_sheet(check, "m") == pytest.approx(62.5, rel=1e-2)
    assert on_sheet(check, "w") * 60 == pytest.approx(3.12, rel=1e-2)


def test_a_chest_without_a_drain_keeps_its_water(workshop: DesignFolder) -> None:
    made = files()
    head, _, _ = made["chest.toml"].partition("[drains.low]")
    made["chest.toml"] = head.replace("low_point = true", "low_point = true\ndrained = false")
    check = workshop.write(made).only(WARMING)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "chest gathers water" in check.says


@pytest.mark.parametrize(("chest", "outcome"), [("1660 kg", "conforms"), ("1650 kg", "finding")])
def test_all_of_the_metal_is_counted(workshop: DesignFolder, chest: str, outcome: str) -> None:
    """Ends of 250 kg each and the chest: 98 % of 2200 is 2156 kg."""
    made = files()
    made["block.toml"] = made["block.toml"].replace("clearance =", 'water_of = "250 kg"\nclearance =')
    made["chest.toml"] = made["chest.toml"].replace(
        "low_point = true", f'low_point = true\nwater_of = "{chest}"'
    )
    assert workshop.write(made).only(WARMING).outcome == outcome


@pytest.mark.parametrize("ends", ["", 'water_of = "250 kg"\n'])
def test_no_more_metal_is_drained_than_there_is(workshop: DesignFolder, ends: str) -> None:
    """Each chamber that states no metal counts all of the block: a chest and two ends made 300 %, or 123 %."""
    made = files()
    made["block.toml"] = made["block.toml"].replace("clearance =", f"{ends}clearance =")
    check = workshop.write(made).only(WARMING)
    assert (check.outcome, found(check)) == ("conforms", 1.0)


def test_the_drain_that_passes_it_by_hand(workshop: DesignFolder) -> None:
    """10 mm at 0.2 bar: 0.3 × 17.5 = 5.25 kg a minute against 1.5 × 3.12 = 4.69."""
    check = workshop.write(files()).only(PASSES)
    assert check.outcome == "conforms"
    assert found(check) * 60 == pytest.approx(5.25, rel=1e-2)
    assert on_sheet(check, "w_a") * 60 == pytest.approx(4.69, rel=1e-2)


def test_a_weldment_without_its_mass_leaves_the_water_unknown(workshop: DesignFolder) -> None:
    """A liner that is drawn is metal, but not all of it: the lightest block would have the least water to drain."""
    liner = 'kind = "cylinder-liner"\nid = "liner"\nmaterial = "steel-45"\nhoused_in = "block"\nin_bore = "main"\n'
    sizes = 'bore = "440 mm"\noutside_diameter = "500 mm"\nlength = "900 mm"\n'
    made = {**files("weldment", ('mass = "2200 kg"\n', "")), "liner.toml": liner + sizes}
    for rule in (WARMING, PASSES):
        check = workshop.write(made).only(rule, "block")
        assert (check.outcome, "mass is not stated in weldment.toml" in check.says) == ("not assessed", True)


def test_a_drain_of_six_millimetres_is_too_small(workshop: DesignFolder) -> None:
    """It was a drain, and that was all that was asked: it passes 1.9 kg a minute."""
    made = files("chest", ('"10 mm"', '"6 mm"'))
    check = workshop.write(made).only(PASSES)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert found(check) * 60 == pytest.approx(1.89, rel=1e-2)


@pytest.mark.parametrize(("bore", "outcome"), [("9.5 mm", "conforms"), ("9.4 mm", "finding")])
def test_the_bore_from_both_sides(workshop: DesignFolder, bore: str, outcome: str) -> None:
    """5.25 kg a minute at 10 mm: 4.69 at 10 √(4.69/5.25) = 9.45 mm."""
    assert workshop.write(files("chest", ('"10 mm"', f'"{bore}"'))).only(PASSES).outcome == outcome


@pytest.mark.parametrize(("part", "key"), [("chest", "drained"), ("block", "drain_cock")])
def test_no_drain_at_all_is_a_hold(workshop: DesignFolder, part: str, key: str) -> None:
    made = files()
    if part == "chest":
        head, _, _ = made["chest.toml"].partition("[drains.low]")
        made["chest.toml"] = head.replace("low_point = true", "low_point = true\ndrained = false")
    else:
        head, _, rest = made["block.toml"].partition("[ends.back.drains.cock]")
        assert rest
        made["block.toml"] = head.replace('side = "back"', 'side = "back"\ndrain_cock = false')
    check = workshop.write(made).only(PASSES)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD), key


def test_a_word_is_no_drain(workshop: DesignFolder) -> None:
    """Said to be drained, without a drain: not assessed, and a hold."""
    made = files()
    head, _, _ = made["chest.toml"].partition("[drains.low]")
    made["chest.toml"] = head.replace("low_point = true", "low_point = true\ndrained = true")
    check = workshop.write(made).only(PASSES)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(("head", "outcome"), [("50 mm", "conforms"), ("9 mm", "finding")])
def test_a_belt_drains_by_its_head(workshop: DesignFolder, head: str, outcome: str) -> None:
    """20 mm and 50 mm of head: 0.6 × 314.16e-6 × 958 √(2 × 9.80665 × 0.050) = 10.7 kg a minute; 9 mm 4.55."""
    made = files()
    made["belt.toml"] = (
        made["chest.toml"]
        .replace('id = "chest"', 'id = "belt"')
        .replace('place = "chest"', 'place = "belt"')
        .replace("live steam", "exhaust steam")
        .replace('bore = "10 mm"', f'bore = "20 mm"\nhead = "{head}"')
    )
    check = workshop.write(made).only(PASSES)
    assert check.outcome == outcome
    if outcome == "finding":
        assert found(check) * 60 == pytest.approx(10.73 * math.sqrt(9 / 50), rel=1e-2)


@pytest.mark.parametrize("missing", ['time = "1 h"', 'live_pressure = "3 bar gauge"'])
def test_the_warming_must_be_stated(workshop: DesignFolder, missing: str) -> None:
    check = workshop.write(files("duty", (missing, ""))).only(PASSES)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


LEVEL = ('fall = "0.02"\ntowards = "front"', 'fall = "0"')


def test_the_pools_of_the_page_by_hand(workshop: DesignFolder) -> None:
    """0.4 × 0.2 m, the drain at the upper end: ½ × 0.2 × 0.4²/30 = 0.53, by cant ½ × 0.4 × 0.2² × 0.1 = 0.80 litre.

    Of an end of 1.571 + 9.5 = 11.07 litres 4.8 and 7.2 %.
    """
    check = workshop.write(files("chest", LEVEL)).only(LIES, "chest")
    assert check.outcome == "conforms"
    assert found(check) == pytest.approx(0.8 / 11.07, rel=1e-2)
    pools = [step.value for step in check.steps if step.symbol == "V_chest"]
    assert any(one == pytest.approx(0.533e-3, rel=1e-2) for one in pools)


def test_a_pool_below_a_raised_drain_by_hand() -> None:
    """20 mm over 0.4 × 0.2 m are 1.6 litre; beyond the drain 0.2 × 0.4² × (1/30 − 0.01)/2 = 0.37333 more."""
    assert pool(H=0.02, L=0.4, b=0.2, a=0.4, s=1 / 30, φ=0.01) == pytest.approx(1.97333e-3, rel=1e-5)
    assert pool(H=0.02, L=0.4, b=0.2, a=0.4, s=0.01, φ=0.02) == pytest.approx(1.6e-3)


@pytest.mark.parametrize(("at", "outcome"), [("3.8 mm", "conforms"), ("3.9 mm", "finding")])
def test_a_drain_above_the_floor_leaves_water(workshop: DesignFolder, at: str, outcome: str) -> None:
    """Of 1.10708 litre 0.8 lie there by cant: (1.10708 − 0.8)/(0.4 × 0.2 m²) = 3.84 mm."""
    made = files("chest", LEVEL, ('at = "0 mm"', f'at = "{at}"'))
    assert workshop.write(made).only(LIES, "chest").outcome == outcome


@pytest.mark.parametrize(("first", "second"), [("0 mm", "50 mm"), ("50 mm", "0 mm")])
def test_the_lowest_of_two_drains_empties_a_floor(workshop: DesignFolder, first: str, second: str) -> None:
    """One at 50 mm alone would leave 4 litres."""
    made = files("chest", LEVEL, ('at = "0 mm"', f'at = "{first}"'))
    drain = made["chest.toml"].partition("[drains.low]\n")[2]
    made["chest.toml"] += "[drains.high]\n" + drain.replace(f'at = "{first}"', f'at = "{second}"')
    check = workshop.write(made).only(LIES, "chest")
    assert check.outcome == "conforms"
    assert found(check) == pytest.approx(0.8 / 11.0708, rel=1e-4)


def test_where_no_water_gathers_none_lies(workshop: DesignFolder) -> None:
    """A port gathers none unless it lies low, whatever its floor."""
    port = ('place = "chest"', 'place = "port"')
    for low, outcome in (("false", "not applicable"), ("true", "conforms")):
        made = files("chest", LEVEL, port, ("low_point = true", f"low_point = {low}"))
        assert workshop.write(made).only(LIES, "chest").outcome == outcome
    made = files("chest", port, ("low_point = true", "low_point = false"))
    head, _, _ = made["chest.toml"].partition("[drains.low]")
    made["chest.toml"] = head.replace("low_point = false", "low_point = false\ndrained = false")
    expect_not_applicable(workshop.write(made).only(OPEN, "chest"), "water does not gather in it")


def test_of_one_bore_the_ends_need_not_say_which(workshop: DesignFolder) -> None:
    made = files("chest", LEVEL)
    made["block.toml"] = made["block.toml"].replace('of_bore = "main"\n', "")
    check = workshop.write(made).only(LIES, "chest")
    assert (check.outcome, found(check)) == ("conforms", pytest.approx(0.8 / 11.0708, rel=1e-4))


@pytest.mark.parametrize(
    ("of_back", "volume"), [("low", math.pi * 0.6**2 * 0.008 / 4), ("main", math.pi * 0.5**2 * 0.008 / 4)]
)
def test_of_two_bores_each_end_says_its_own(workshop: DesignFolder, of_back: str, volume: float) -> None:
    """A second bore of 600 mm: 2.262 + 9.5 litre at the back, or 1.571 + 9.5; the front is of 500 mm."""
    made = files("chest", LEVEL)
    head, _, rest = made["block.toml"].partition("[ends.back]")
    back = rest.replace('of_bore = "main"', f'of_bore = "{of_back}"', 1)
    made["block.toml"] = f'{head}[ends.back]{back}\n[bores.low]\ndiameter = "600 mm"\n'
    check = workshop.write(made).only(LIES, "chest")
    volumes = {round(float(step.value) * 1e3, 3) for step in check.steps if step.symbol == "V_c"}
    assert volumes == {11.071, round((volume + 9.5e-3) * 1e3, 3)}


def test_a_longer_floor_holds_too_much(workshop: DesignFolder) -> None:
    """0.6 × 0.3 m: ½ × 0.3 × 0.6²/30 = 1.80 litre, 16 %; with its drain in the middle 0.45 by grade, and by cant."""
    long = ('length = "400 mm"', 'length = "600 mm"'), ('width = "200 mm"', 'width = "300 mm"')
    centred = ('across = "0 mm"', 'across = "150 mm"')
    check = workshop.write(files("chest", LEVEL, *long, centred)).only(LIES, "chest")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert found(check) == pytest.approx(1.8 / 11.07, rel=1e-2)
    middle = ('along = "0 mm"', 'along = "300 mm"')
    check = workshop.write(files("chest", LEVEL, *long, centred, middle)).only(LIES, "chest")
    assert check.outcome == "conforms"


@pytest.mark.parametrize(("width", "outcome"), [("235 mm", "conforms"), ("236 mm", "finding")])
def test_the_pool_from_both_sides(workshop: DesignFolder, width: str, outcome: str) -> None:
    """½ × 0.4 × b² × 0.1 = 0.1 × 11.0708 litre at b = 235.3 mm."""
    made = files("chest", LEVEL, ('width = "200 mm"', f'width = "{width}"'))
    assert workshop.write(made).only(LIES, "chest").outcome == outcome


@pytest.mark.parametrize(("cant", "outcome"), [("207 mm", "conforms"), ("209 mm", "finding")])
def test_the_cant_of_the_line(workshop: DesignFolder, cant: str, outcome: str) -> None:
    """½ × 0.4 × 0.2² × u/1500 = 1.10708 litre at u = 207.6 mm, stated once for the line."""
    made = files("chest", LEVEL)
    made["speclint.toml"] += f'[railway]\ncant = "{cant}"\n'
    assert workshop.write(made).only(LIES, "chest").outcome == outcome


@pytest.mark.parametrize(("steepest", "outcome"), [("0.069", "conforms"), ("0.0695", "finding")])
def test_the_steepest_grade_of_the_line(workshop: DesignFolder, steepest: str, outcome: str) -> None:
    """½ × 0.2 × 0.4² × s = 1.10708 litre at s = 0.06919; a limit of the rule itself goes before that of the line."""
    made = files("chest", LEVEL)
    made["speclint.toml"] += f'[railway]\nsteepest = "{steepest}"\n'
    assert workshop.write(made).only(LIES, "chest").outcome == outcome
    made["speclint.toml"] += f'[limits."{LIES}"]\nsteepest = "0.01"\n'
    assert workshop.write(made).only(LIES, "chest").outcome == "conforms"


def test_fall_to_the_drain_leaves_less(workshop: DesignFolder) -> None:
    """Drain and fall of 1 in 50 to the front: with the back lower 1/30 − 1/50 = 0.01333: 0.213 litre, 1.9 %."""
    check = workshop.write(files("chest", ('across = "0 mm"', 'across = "100 mm"'))).only(LIES, "chest")
    pools = [step.value for step in check.steps if step.symbol == "V_chest"]
    assert any(one == pytest.approx(0.2133e-3, rel=1e-2) for one in pools)


def test_a_fall_away_from_the_drain_leaves_more(workshop: DesignFolder) -> None:
    """Drain at the back, fall of 1 in 50 to the front, front lower: ½ × 0.2 × 0.4² × (1/30 + 1/50) = 0.853 litre."""
    made = files("chest", ('along = "0 mm"', 'along = "400 mm"'), ('across = "0 mm"', 'across = "100 mm"'))
    check = workshop.write(made).only(LIES, "chest")
    assert max(pools_of(check)) == pytest.approx(0.85333, rel=1e-4)


def test_the_nearer_of_two_drains_empties_each_end(workshop: DesignFolder) -> None:
    """At 100 and 300 of 400 mm, half across: ½ × 0.2 × 0.1²/30 = 0.0333, by cant ½ × 0.4 × 0.1² × 0.1 = 0.2 litre."""
    made = files(
        "chest", LEVEL, ('along = "0 mm"', 'along = "100 mm"'), ('across = "0 mm"', 'across = "100 mm"')
    )
    drain = made["chest.toml"].partition("[drains.low]\n")[2]
    made["chest.toml"] += "[drains.other]\n" + drain.replace('"100 mm"', '"300 mm"', 1)
    check = workshop.write(made).only(LIES, "chest")
    assert set(pools_of(check)) == {0.0333, 0.2}


def test_without_a_drain_all_of_the_floor_holds_water(workshop: DesignFolder) -> None:
    """½ × 0.2 × 0.4²/30 = 0.533 litre by grade and 0.8 by cant, either way."""
    made = files("chest", LEVEL, ("low_point = true", "low_point = true\ndrained = false"))
    made["chest.toml"] = made["chest.toml"].partition("[drains.low]")[0]
    check = workshop.write(made).only(LIES, "chest")
    assert set(pools_of(check)) == {0.5333, 0.8}


def pools_of(check: Check) -> list[float]:
    """The pools in the chest, litre to four places."""
    return [
        round(step.value * 1e3, 4)
        for step in check.steps
        if step.symbol == "V_chest" and isinstance(step.value, float)
    ]


def test_water_reaches_the_ends_of_the_bore_that_it_names(workshop: DesignFolder) -> None:
    """The end of the second bore is so small, 1.571 + 0.5 litre, that 0.8 litre are 39 % of it."""
    made = files("chest", LEVEL)
    head, _, rest = made["block.toml"].partition("[ends.back]")
    back = rest.replace('of_bore = "main"', 'of_bore = "other"', 1).replace('"9500 cm³"', '"500 cm³"')
    made["block.toml"] = f'{head}[ends.back]{back}\n[bores.other]\ndiameter = "500 mm"\n'
    assert workshop.write(made).only(LIES, "chest").outcome == "finding"
    made["chest.toml"] = made["chest.toml"].replace(
        'place = "chest"', 'place = "chest"\ncylinder_bore = "main"'
    )
    assert workshop.write(made).only(LIES, "chest").outcome == "conforms"
    made["chest.toml"] = made["chest.toml"].replace('"main"', '"other"')
    assert workshop.write(made).only(LIES, "chest").outcome == "finding"


@pytest.mark.parametrize(
    ("towards", "along", "inclines", "outcome"),
    [
        ("front", "104 mm", False, "conforms"),
        ("front", "106 mm", False, "finding"),
        ("back", "296 mm", False, "conforms"),
        ("back", "294 mm", False, "finding"),
        ("front", "99.5 mm", True, "conforms"),
        ("front", "101.5 mm", True, "finding"),
        ("back", "300.5 mm", True, "conforms"),
        ("back", "298.5 mm", True, "finding"),
    ],
)
def test_the_drain_lies_where_the_floor_is_lowest(
    workshop: DesignFolder, towards: str, along: str, inclines: bool, outcome: str
) -> None:
    """A mouth of 10 mm and 2 mm of water: 5 + 2/0.02 = 105 mm from the edge, at 1.2°, 0.020947, 100.48; of 400 mm."""
    way = "forward" if towards == "front" else "back"
    floor = f'inclined = "1.2 ° from upright, {way}"' if inclines else f'fall = "0.02"\ntowards = "{towards}"'
    made = files(
        "chest", ('fall = "0.02"\ntowards = "front"', floor), ('along = "0 mm"', f'along = "{along}"')
    )
    check = workshop.write(made).only(OPEN, "chest")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    if outcome == "finding":
        assert "stays at the lower edge of a sloping floor" in check.says


def test_the_drain_nearest_to_the_lowest_edge_counts(workshop: DesignFolder) -> None:
    """One in the middle, under which 0.02 × 195 = 3.9 mm stay, and one at the edge to which the floor falls."""
    made = files("chest", ('along = "0 mm"', 'along = "200 mm"'))
    check = workshop.write(made).only(OPEN, "chest")
    assert (check.outcome, found(check)) == ("finding", pytest.approx(3.9e-3))
    drain = made["chest.toml"].partition("[drains.low]\n")[2]
    made["chest.toml"] += "[drains.other]\n" + drain.replace('"200 mm"', '"0 mm"', 1)
    assert workshop.write(made).only(OPEN, "chest").outcome == "conforms"


def test_an_inclined_floor_that_hardly_falls_is_found(workshop: DesignFolder) -> None:
    """0.2° are 1 in 286."""
    level = ('fall = "0.02"\ntowards = "front"', 'inclined = "0.2 ° from upright, forward"')
    check = workshop.write(files("chest", level)).only(OPEN, "chest")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert check.says.startswith("fall towards the front edge 0.003491 < 0.02")  # tan 0.2°, without a unit


def inclined(stands: str, across: str, hand: str = "left") -> dict[str, str]:
    """The chest on a floor that stands so, in a block of a hand, with its drain so far across."""
    made = files(
        "chest",
        ('fall = "0.02"\ntowards = "front"', f'inclined = "{stands}"'),
        ('across = "0 mm"', f'across = "{across}"'),
    )
    made["block.toml"] = made["block.toml"].replace('duty = "duty"', f'duty = "duty"\nhand = "{hand}"', 1)
    return made


@pytest.mark.parametrize(
    ("stands", "across", "hand", "litres"),
    [
        ("2 ° from upright, outwards", "200 mm", "left", 0.5 * 0.4 * 0.2**2 * (0.1 + 0.03492) * 1e3),
        ("2 ° from upright, outwards", "0 mm", "left", 0.5 * 0.4 * 0.2**2 * (0.1 - 0.03492) * 1e3),
        ("2 ° from upright, outwards", "0 mm", "right", 0.5 * 0.4 * 0.2**2 * (0.1 + 0.03492) * 1e3),
        ("2 ° from upright, inwards", "200 mm", "left", 0.5 * 0.4 * 0.2**2 * (0.1 - 0.03492) * 1e3),
        ("1 ° from upright, forward", "100 mm", "left", 0.5 * 0.2 * 0.4**2 * (1 / 30 - 0.01746) * 1e3),
    ],
)
def test_water_on_an_inclined_floor(
    workshop: DesignFolder, stands: str, across: str, hand: str, litres: float
) -> None:
    """tan 2° = 0.03492 beside the cant of 0.1, with it or against it: towards the side away from the drain, or to it.

    Forward by tan 1° = 0.01746 it falls to its drain, and a grade the other way leaves so much less at the back.
    """
    check = workshop.write(inclined(stands, across, hand)).only(LIES, "chest")
    pools = [
        step.value * 1e3 for step in check.steps if step.symbol == "V_chest" and isinstance(step.value, float)
    ]
    assert any(one == pytest.approx(litres, rel=2e-3) for one in pools)
    assert max(pools) <= max(litres, 0.8) * 1.001


@pytest.mark.parametrize(
    ("stands", "across", "outcome"),
    [
        ("1.2 ° from upright, outwards", "0 mm", "conforms"),
        ("1.1 ° from upright, outwards", "0 mm", "finding"),
        ("1.2 ° from upright, outwards", "150 mm", "finding"),
        ("1.2 ° from upright, inwards", "150 mm", "conforms"),
        ("1.2 ° from upright, forward", "150 mm", "conforms"),
        ("1.2 ° from upright, back", "150 mm", "finding"),
    ],
)
def test_an_inclined_floor_falls_to_its_drain(
    workshop: DesignFolder, stands: str, across: str, outcome: str
) -> None:
    """1 in 50 is 1.146°; the drain is at the front end, and 150 of 200 mm across is the right half of a left block."""
    assert workshop.write(inclined(stands, across)).only(OPEN, "chest").outcome == outcome


def test_a_pool_that_fills_the_end_is_a_hold(workshop: DesignFolder) -> None:
    """1.4 × 0.6 m, drain in one corner: by cant ½ × 1.4 × 0.6² × 0.1 = 25.2 litre in 11."""
    big = ('length = "400 mm"', 'length = "1400 mm"'), ('width = "200 mm"', 'width = "600 mm"')
    check = workshop.write(files("chest", LEVEL, *big)).only(LIES, "chest")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@pytest.mark.parametrize(("width", "grade"), [("468 mm", Grade.NONCONFORMITY), ("473 mm", Grade.HOLD)])
def test_the_full_end_from_both_sides(workshop: DesignFolder, width: str, grade: Grade) -> None:
    """1 m long: by cant ½ × 1 × b² × 0.1 is the 11.0708 litre of the end at b = 470.5 mm; by grade 7.8 litre."""
    big = ('length = "400 mm"', 'length = "1000 mm"'), ('width = "200 mm"', f'width = "{width}"')
    check = workshop.write(files("chest", LEVEL, *big)).only(LIES, "chest")
    assert (check.outcome, check.grade) == ("finding", grade)


def test_a_passage_between_the_ends_adds_its_ports(workshop: DesignFolder) -> None:
    """Each by itself 0.80 litre, below a tenth; passage and both ports together 2.4 litre at the lower end."""
    made = files("chest", LEVEL)
    for name, place, end in (
        ("over", "breathing way", ""),
        ("port-front", "port", 'of_end = "front"\n'),
        ("port-back", "port", 'of_end = "back"\n'),
    ):
        made[f"{name}.toml"] = (
            made["chest.toml"]
            .replace('id = "chest"', f'id = "{name}"')
            .replace('place = "chest"', f'{end}cylinder_bore = "main"\nplace = "{place}"')
        )
    workshop.write(made)
    assert workshop.only(LIES, "port-front").outcome == "conforms"
    check = workshop.only(LIES, "over")
    assert check.outcome == "finding"
    assert found(check) == pytest.approx(3 * 0.8 / 11.07, rel=1e-2)


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ('bore = "10 mm"', 'bore = "8.1 mm"', "conforms"),
        ('bore = "10 mm"', 'bore = "7.9 mm"', "finding"),
        ('fall = "0.02"', 'fall = "0.0201"', "conforms"),
        ('fall = "0.02"', 'fall = "0.0199"', "finding"),
        ('rises = "0 mm"', 'rises = "40 mm"', "finding"),
        ('towards = "front"', 'towards = "back"', "finding"),
    ],
)
def test_the_way_of_the_water_stays_open(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    check = workshop.write(files("chest", (old, new))).only(OPEN, "chest")
    assert (check.outcome, check.grade) == (
        outcome,
        Grade.NONCONFORMITY if outcome == "finding" else None,
    )


@pytest.mark.parametrize(
    ("rises", "says"),
    [("0 mm", "its way falls all the way"), ("1 mm", "its way rises again, and water stays in the loop")],
)
def test_the_way_of_the_water_is_told_as_it_is(workshop: DesignFolder, rises: str, says: str) -> None:
    check = workshop.write(files("chest", ('rises = "0 mm"', f'rises = "{rises}"'))).only(OPEN, "chest")
    assert check.judgement is not None
    told = {one.says for one in check.judgement.every if "its way" in one.says}
    assert len(told) == 1
    assert says in told.pop()


@pytest.mark.parametrize(
    "port", ["", 'place = "port"\nof_end = "front"', 'place = "port"\nof_end = "front"\n# exhaust']
)
def test_a_chest_may_drain_where_live_steam_stands(workshop: DesignFolder, port: str) -> None:
    """Live steam stands in it too; the drains of a port are those of its end."""
    made = files("chest", ("open air", "other"))
    made["other.toml"] = (
        made["chest.toml"]
        .replace('id = "chest"', 'id = "other"')
        .replace('into = "other"', 'into = "open air"')
    )
    if port:
        made["chest.toml"] = made["chest.toml"].replace('place = "chest"', port)
    if "exhaust" in port:
        made["chest.toml"] = made["chest.toml"].replace("live steam", "exhaust steam")
    check = workshop.write(made).only(OPEN, "chest")
    assert check.outcome == "conforms", check.says


def test_a_block_in_which_no_water_gathers(workshop: DesignFolder) -> None:
    made = files()
    del made["chest.toml"]
    made["block.toml"] = made["block.toml"].partition("[ends.front]")[0]
    check = workshop.write(made).only(WARMING, "block")
    expect_not_applicable(check, "neither a passage where water gathers nor an end of a cylinder is drawn")


def test_no_common_pipe_joins_both_ends(workshop: DesignFolder) -> None:
    assert workshop.write(files()).only(OPEN, "block").outcome == "conforms"
    joined = ("cock pipe front", "cock pipe"), ("cock pipe back", "cock pipe")
    check = workshop.write(files("block", *joined)).only(OPEN, "block")
    assert check.outcome == "finding"
    assert "cock pipe joins back and front" in check.says
    air = ("cock pipe front", "open air"), ("cock pipe back", "open air")
    assert workshop.write(files("block", *air)).only(OPEN, "block").outcome == "conforms"


@pytest.mark.parametrize(
    ("into", "outcome"), [("cock pipe front", "conforms"), ("cock pipe back", "finding")]
)
def test_the_drain_of_a_port_is_one_of_its_end(workshop: DesignFolder, into: str, outcome: str) -> None:
    made = files("chest", ('place = "chest"', 'place = "port"\nof_end = "front"'), ("open air", into))
    check = workshop.write(made).only(OPEN, "block")
    assert (check.outcome, "cock pipe back joins back and front" in check.says) == (
        outcome,
        outcome == "finding",
    )


def test_an_end_without_a_drain_has_no_way_that_could_stay_open(workshop: DesignFolder) -> None:
    """Of a block with one end alone nothing is left to judge here: water.drain-passes-it asks for the drain."""
    made = files()
    head = made["block.toml"].partition("[ends.back]")[0].partition("[ends.front.drains.cock]")[0]
    made["block.toml"] = head.replace('side = "front"', 'side = "front"\ndrain_cock = false')
    check = workshop.write(made).only(OPEN, "block")
    assert check.outcome == "not applicable"
    assert "water.drain-passes-it" in check.says


@pytest.mark.parametrize(
    ("chest", "into", "outcome"),
    [
        ((), "chest", "finding"),
        ((), "Chest ", "finding"),
        ((), "chest cock", "conforms"),
        ((("live steam", "exhaust steam"),), "chest", "conforms"),
        ((('place = "chest"', 'place = "port"\nof_end = "front"'),), "chest", "conforms"),
        ((('place = "chest"', 'place = "port"\nof_end = "back"'),), "chest", "finding"),
    ],
)
def test_no_end_drains_where_live_steam_stands(
    workshop: DesignFolder, chest: tuple[tuple[str, str], ...], into: str, outcome: str
) -> None:
    """Steam of a live chest, or of the other end, would come in by the drain; its own port is the end itself."""
    made = files("chest", *chest)
    made["block.toml"] = made["block.toml"].replace("cock pipe front", into)
    check = workshop.write(made).only(OPEN, "block")
    assert check.outcome == outcome, check.says
    assert outcome == "conforms" or "leads into chest" in check.says


@pytest.mark.parametrize(
    ("chest", "end", "outcome"),
    [
        ("chest cock", "Chest  cock", "finding"),
        ("chest cock", "cock pipe front", "conforms"),
        ("open air", "open air", "conforms"),
    ],
)
def test_no_end_shares_its_pipe_with_live_steam(
    workshop: DesignFolder, chest: str, end: str, outcome: str
) -> None:
    """A pipe that drains the chest too brings its steam to the end, though it is no passage of the block."""
    made = files("chest", ("open air", chest))
    made["block.toml"] = made["block.toml"].replace("cock pipe front", end)
    check = workshop.write(made).only(OPEN, "block")
    assert check.outcome == outcome, check.says
    assert outcome == "conforms" or "which chest with its live steam drains into too" in check.says


@pytest.mark.parametrize(("into", "outcome"), [("chest", "finding"), ("open air", "conforms")])
def test_no_belt_drains_where_live_steam_stands(workshop: DesignFolder, into: str, outcome: str) -> None:
    assert workshop.write(with_belt(into)).only(OPEN, "belt").outcome == outcome


def with_belt(into: str) -> dict[str, str]:
    """An exhaust belt beside the chest, of 1100 kg each."""
    made = files("chest", ("low_point = true", 'low_point = true\nwater_of = "1100 kg"'))
    text = (
        made["chest.toml"].replace('id = "chest"', 'id = "belt"').replace('place = "chest"', 'place = "belt"')
    )
    text = text.replace("live steam", "exhaust steam").replace(
        'bore = "10 mm"', 'bore = "20 mm"\nhead = "50 mm"'
    )
    made["belt.toml"] = text.replace("open air", into)
    made["block.toml"] = made["block.toml"].replace("clearance =", 'water_of = "1 kg"\nclearance =')
    return made


@pytest.mark.parametrize(
    ("into", "bore", "outcome"),
    [
        ("open air", "6.8 mm", "conforms"),
        ("open air", "6.6 mm", "finding"),
        ("chest", "9.5 mm", "conforms"),
        ("chest", "9.4 mm", "finding"),
    ],
)
def test_water_drained_into_a_chamber_is_its_own(
    workshop: DesignFolder, into: str, bore: str, outcome: str
) -> None:
    """5.25 kg a minute of 10 mm, as the square of the bore: 4.69 want 9.45 mm, half of it, of 1100 kg, 6.68 mm."""
    made = with_belt(into)
    made["chest.toml"] = made["chest.toml"].replace('"10 mm"', f'"{bore}"')
    assert workshop.write(made).only(PASSES).outcome == outcome


def test_chambers_that_drain_into_each_other_have_no_way_out(workshop: DesignFolder) -> None:
    made = with_belt("chest")
    made["chest.toml"] = made["chest.toml"].replace("open air", "belt")
    check = workshop.write(made).only(PASSES)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "drains back into itself" in check.says


def test_where_a_drain_leads_must_be_said(workshop: DesignFolder) -> None:
    made = files("chest", ('into = "open air"\n', ""))
    assert workshop.write(made).only(PASSES).outcome == "not assessed"


SADDLE = """
kind = "saddle"
id = "saddle"
material = "steel-45"
on = "block"
thickness = "12 mm"
wet = { allowance = "4 mm", rate = "0.3 mm/year", years = "10 year", renewal = "plate" }
"""


def test_a_saddle_that_lasts_to_its_renewal(workshop: DesignFolder) -> None:
    """12 − 0.3 × 10 = 9 mm, 8 for strength."""
    check = workshop.write(files(saddle=SADDLE)).only(ASH, "saddle")
    assert check.outcome == "conforms"
    assert on_sheet(check, "t_l") == pytest.approx(9e-3, rel=1e-6)
    assert on_sheet(check, "t_s") == pytest.approx(8e-3, rel=1e-6)


@pytest.mark.parametrize(("limits", "outcome"), [("+0.5/-0.9", "conforms"), ("±1.1", "finding")])
def test_a_plate_at_its_least_must_last_too(workshop: DesignFolder, limits: str, outcome: str) -> None:
    """12 mm less 4 of allowance are 8 mm by the drawing: 11.1 − 3 = 8.1 mm last, 10.9 − 3 = 7.9 do not."""
    check = workshop.write(files("saddle", ('"12 mm"', f'"12 mm {limits}"'), saddle=SADDLE)).only(
        ASH, "saddle"
    )
    assert check.outcome == outcome


def test_a_saddle_under_wet_ash(workshop: DesignFolder) -> None:
    """10 mm, 0.5 mm a year: 5 of 6 mm."""
    wet = ('"12 mm"', '"10 mm"'), ('"0.3 mm/year"', '"0.5 mm/year"')
    check = workshop.write(files("saddle", *wet, saddle=SADDLE)).only(ASH, "saddle")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert on_sheet(check, "t_l") == pytest.approx(5e-3, rel=1e-6)


@pytest.mark.parametrize(
    ("celsius", "years", "outcome"),
    [
        ("121 °C", "13.3 year", "conforms"),  # 4/0.3 = 13.33
        ("121 °C", "13.4 year", "finding"),
        ("119 °C", "7.9 year", "conforms"),  # 4/0.5 = 8, whatever rate is stated
        ("119 °C", "8.1 year", "finding"),
    ],
)
def test_a_cool_floor_is_a_wet_one(workshop: DesignFolder, celsius: str, years: str, outcome: str) -> None:
    made = files("saddle", ('"10 year"', f'"{years}"'), saddle=SADDLE)
    made["duty.toml"] = made["duty.toml"].replace('saddle = "150 °C"', f'saddle = "{celsius}"')
    assert workshop.write(made).only(ASH, "saddle").outcome == outcome


@pytest.mark.parametrize(
    ("celsius", "years", "outcome"),
    [
        ("121 °C", "13.3 year", "conforms"),
        ("121 °C", "13.4 year", "finding"),
        ("119 °C", "7.9 year", "conforms"),
        ("119 °C", "8.1 year", "finding"),
    ],
)
def test_ash_wastes_a_floor_that_states_no_rate(
    workshop: DesignFolder, celsius: str, years: str, outcome: str
) -> None:
    """4 mm by 0.3 mm a year last 13.33 years, and by 0.5 where it is wet 8."""
    made = files("saddle", ('rate = "0.3 mm/year", ', ""), ('"10 year"', f'"{years}"'), saddle=SADDLE)
    made["duty.toml"] = made["duty.toml"].replace('saddle = "150 °C"', f'saddle = "{celsius}"')
    assert workshop.write(made).only(ASH, "saddle").outcome == outcome


@pytest.mark.parametrize(("allowance", "outcome"), [("3.1 mm", "conforms"), ("2.9 mm", "finding")])
def test_the_pipe_through_the_floor(workshop: DesignFolder, allowance: str, outcome: str) -> None:
    pipe = (
        'kind = "steam-pipe"\nid = "pipe"\nmaterial = "steel-45"\njoined_to = "block"\n'
        f'corrosion_allowance = "{allowance}"\n'
    )
    made = files(saddle=SADDLE.replace("thickness =", 'pipes = "pipe"\nthickness ='), pipe=pipe)
    assert workshop.write(made).only(ASH, "saddle").outcome == outcome


@pytest.mark.parametrize(("allowance", "outcome"), [("3.1 mm", "conforms"), ("2.9 mm", "finding")])
def test_a_chest_in_ash(workshop: DesignFolder, allowance: str, outcome: str) -> None:
    assert workshop.write(files()).only(ASH, "chest").outcome == "not applicable"
    lining = f'wet = {{ allowance = "{allowance}", years = "10 year", renewal = "lining" }}\n[floor]'
    assert workshop.write(files("chest", ("[floor]", lining))).only(ASH, "chest").outcome == outcome


def test_a_saddle_always_lies_in_ash(workshop: DesignFolder) -> None:
    """One that states nothing of it is not passed over, as a passage is."""
    wet = SADDLE[SADDLE.index("wet =") :]
    assert (
        workshop.write(files("saddle", (wet, ""), saddle=SADDLE)).only(ASH, "saddle").outcome
        == "not assessed"
    )


@pytest.mark.parametrize(("bore", "outcome"), [("8 mm", "conforms"), ("7.9 mm", "finding")])
def test_a_drain_of_a_branch_in_which_no_water_gathers_is_a_drain_all_the_same(
    workshop: DesignFolder, bore: str, outcome: str
) -> None:
    changes = ('place = "chest"', 'place = "branch"'), ("low_point = true", "low_point = false")
    made = files("chest", *changes, ('bore = "10 mm"', f'bore = "{bore}"'))
    assert workshop.write(made).only(OPEN, "chest").outcome == outcome


@pytest.mark.parametrize("missing", [', renewal = "plate"', 'allowance = "4 mm", ', ', years = "10 year"'])
def test_the_renewal_must_be_stated(workshop: DesignFolder, missing: str) -> None:
    made = files("saddle", (missing, ""), saddle=SADDLE)
    assert workshop.write(made).only(ASH, "saddle").outcome == "not assessed"


@given(a=st.floats(0.01, 2), b=st.floats(0.01, 1), s=st.floats(0, 0.2), φ=st.floats(0, 0.2))
def test_fall_never_holds_more_water(a: float, b: float, s: float, φ: float) -> None:
    assert 0 <= pool(0.0, a, b, a, s, φ) <= pool(0.0, a, b, a, s, 0.0)


@given(Δp=st.floats(0, 1e5), A=st.floats(1e-6, 1e-3), before=st.floats(0, 1))
def test_one_more_drain_never_passes_less(Δp: float, A: float, before: float) -> None:
    assert drained_together(before, 0.3, 0.6, A, 958.0, Δp) >= before
