"""What presses a spindle to the side of its guide, and what lifts and strikes a valve.

A spring of 1000 N shut and 40 N/mm has 1960 N at a lift of 24 mm. Of an arm of 80 mm the sine is 24/160 = 0.15:
1960 × 0.15/√(1 − 0.15²) = 297.364 N across. The weight of 4.5 + 1.5 kg lies on the guide with 58.840 N.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.errors import NotKnown, OutOfRange
from speclint.facts import (
    load_aslant,
    load_on_stop,
    mass_of_train,
    ratio_of_train,
    sense_of_push,
    sense_of_weight,
    share_across,
    side_load,
    side_load_worked,
    springs_of,
    train_of_cam,
)
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

VALVE = 'lift = "24 mm"\nmass = "4.5 kg"\nopens = "{}"\n'
SPINDLE = 'moves = "valve"\nmass = "1.5 kg"\n'
SPRING = 'closes = "valve"\nshut_load = "1000 N"\nrate = "40 N/mm"\nmass = "0.6 kg"\n'
ROCKER = 'works = "spindle"\nvalve_arm = "80 mm"\ntappet_arm = "64 mm"\ninertia = "0.0064 kg·m²"\n'
TAPPET = 'works = "rocker"\nmass = "0.5 kg"\n'
ASLANT = 1960 * 0.15 / math.sqrt(1 - 0.15**2)
WEIGHT = 6 * 9.80665


def drawn(folder: Path, opens: str = "upwards", **changed: str | None) -> Bench:
    files: dict[str, str | None] = {
        "poppet-valve valve": VALVE.format(opens),
        "valve-spindle spindle": SPINDLE,
        "compression-spring spring": SPRING,
        "compression-spring inner": None,
        "rocker rocker": ROCKER,
        "tappet tappet": TAPPET,
        "cam cam": 'lifts = "tappet"\n',
        "duty duty": "[cases.running]\n",
    }
    texts = {name: changed.get(name.split()[1], text) for name, text in files.items()}
    return bench(
        folder, {name: text for name, text in texts.items() if text is not None}, "valve", metals=True
    )


def worked(on: Bench) -> float | None:
    found = side_load_worked(on["spindle"], on.sheet)
    return None if found is None else float(found.value)


@pytest.mark.parametrize(
    ("opens", "changed", "load"),
    [
        ("upwards", {}, ASLANT),
        ("downwards", {}, ASLANT),
        ("sideways", {}, ASLANT + WEIGHT),
        ("30 ° from upright, outwards", {}, ASLANT + WEIGHT / 2),
        ("upwards", {"inner": SPRING}, 2 * ASLANT),
        ("upwards", {"rocker": None, "tappet": None, "cam": None}, None),
        ("sideways", {"rocker": None, "tappet": None, "cam": None}, WEIGHT),
        ("upwards", {"spring": None}, None),
        ("sideways", {"spring": None}, WEIGHT),
        ("upwards", {"rocker": ROCKER.replace('valve_arm = "80 mm"\n', "")}, None),
        ("sideways", {"spindle": SPINDLE.replace('moves = "valve"\n', "")}, None),
    ],
)
def test_arm_and_weight_press_across(
    tmp_path: Path, opens: str, changed: dict[str, str | None], load: float | None
) -> None:
    assert worked(drawn(tmp_path, opens, **changed)) == (None if load is None else pytest.approx(load))


@pytest.mark.parametrize(
    ("stated", "load"), [("", ASLANT), ('side_load = "400 N"\n', 400.0), ('side_load = "200 N"\n', ASLANT)]
)
def test_the_load_is_as_stated_and_no_less_than_worked(tmp_path: Path, stated: str, load: float) -> None:
    on = drawn(tmp_path, spindle=SPINDLE + stated)
    assert side_load(on["spindle"], on.sheet) == pytest.approx(load)


def test_without_arm_and_weight_it_must_be_stated(tmp_path: Path) -> None:
    on = drawn(tmp_path, spring=None)
    with pytest.raises(NotAssessed, match="side_load is not stated"):
        side_load(on["spindle"], on.sheet)
    (tmp_path / "a").mkdir()
    stated = drawn(tmp_path / "a", spring=None, spindle=SPINDLE + 'side_load = "200 N"\n')
    assert side_load(stated["spindle"], stated.sheet) == 200.0


def test_a_drawing_that_contradicts_itself_has_the_greater_spring(tmp_path: Path) -> None:
    """79.5 GPa, 8 mm, 48 mm, six coils: 61.343 N/mm against the stated 40; from 150 to 120 mm 1840.28 N.

    At full lift 1840.28 + 24 × 61.343 = 3312.5 N, within the 2 % of the modulus.
    """
    sizes = 'wire = "8 mm"\nmean_diameter = "48 mm"\nworking_coils = "6"\n'
    sizes += 'free_length = "150 mm"\nshut_length = "120 mm"\n'
    on = drawn(tmp_path, spring='material = "known-wire"\n' + SPRING + sizes)
    assert worked(on) == pytest.approx(3312.5 * ASLANT / 1960, rel=0.021)


@pytest.mark.parametrize(("h", "b", "inside"), [(0.0, 0.08, True), (-1e-6, 0.08, False), (0.16, 0.08, False)])
def test_an_arm_swings_by_less_than_twice_its_length(h: float, b: float, inside: bool) -> None:
    if inside:
        assert load_aslant(F=1800.0, h=h, b=b) == 0.0
        return
    with pytest.raises(OutOfRange):
        load_aslant(F=1800.0, h=h, b=b)


def test_how_an_axis_stands_is_said_in_words() -> None:
    assert [sense_of_weight(word).nominal for word in ("upwards", "sideways", "downwards")] == [1, 0, -1]
    assert [share_across(word).nominal for word in ("upwards", "sideways", "downwards")] == [0, 1, 0]
    assert [sense_of_push(word).nominal for word in ("open", "shut")] == [1, -1]
    for ask in (sense_of_weight, share_across):
        with pytest.raises(NotKnown, match="'aloft' does not say how an axis stands"):
            ask("aloft")


@pytest.mark.parametrize(
    ("changed", "mass"),
    [
        ({}, 4.5 + 1.5 + 0.2 + 0.5 / 1.25**2 + 1.0),  # 0.0064/0.08² = 1 kg of the rocker
        ({"inner": SPRING}, 4.5 + 1.5 + 0.4 + 0.5 / 1.25**2 + 1.0),
        ({"rocker": None, "tappet": TAPPET.replace('"rocker"', '"spindle"')}, 4.5 + 1.5 + 0.2 + 0.5),
        # a wire of 8 mm in eight coils of 48 mm
        (
            {
                "spring": 'material = "known-wire"\ncloses = "valve"\nwire = "8 mm"\nmean_diameter = "48 mm"\n'
                'total_coils = "8"\n'
            },
            4.5 + 1.5 + math.pi / 4 * 0.008**2 * math.pi * 0.048 * 8 * 7850 / 3 + 0.5 / 1.25**2 + 1.0,
        ),
    ],
)
def test_the_mass_of_a_train_at_its_valve(
    tmp_path: Path, changed: dict[str, str | None], mass: float
) -> None:
    on = drawn(tmp_path, "upwards", **changed)
    train = train_of_cam(on["cam"], on.sheet)
    i = ratio_of_train(train, on.sheet)
    assert i == (1.25 if train.rocker else 1.0)
    assert mass_of_train(train, i, on.sheet) == pytest.approx(mass)


def test_a_valve_that_no_spring_closes_is_not_assessed(tmp_path: Path) -> None:
    on = drawn(tmp_path, spring=None)
    with pytest.raises(NotAssessed, match="no spring states that it closes valve"):
        springs_of(on["valve"], on.sheet)


def test_a_stop_without_a_gear_is_not_assessed(tmp_path: Path) -> None:
    on = drawn(tmp_path, cam=None)
    with pytest.raises(NotAssessed, match="the gear that lifts valve against its stop is not drawn"):
        load_on_stop(on["valve"], on["duty"].cases["running"], on.sheet)
