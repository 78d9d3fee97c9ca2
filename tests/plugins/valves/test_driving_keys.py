"""shaft.drive-key and rocker.arm-keys: a key 18 by 11 mm in a shaft of 60, as ISO 773 has it, worked by hand."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.handbook.tables import rows
from speclint.testing import (
    DesignFolder,
    changed,
    expect_conforms,
    expect_finding,
    expect_not_applicable,
    expect_not_assessed,
    expect_query,
    found,
    limit,
    on_sheet,
)
from speclint_valves.formulae.keys import is_woodruff
from tests.plugins.valves.test_rocker_shafts import slow

DRIVE, ARMS = "shaft.drive-key", "rocker.arm-keys"
SHAFT = """
kind = "shaft"
id = "shaft"
diameter = "60 mm"
keyway_width = "18 mm"
keyway_depth = "7 mm"
torque = "500 N·m"
length = "440 mm"
keyways.cams = { begins = "80 mm", ends = "286 mm" }
keyways.drive = { begins = "365 mm", ends = "435 mm" }
[drive]
by = "gear wheel"
at = "400 mm"
radius = "100 mm"
held = "key"
[drive.key]
length = "60 mm"
height = "11 mm"
hub_depth = "4.4 mm"
"""
FAILS = Grade.NONCONFORMITY
Change = tuple[str, str]


def shaft_of(folder: DesignFolder, *changes: Change) -> DesignFolder:
    return folder.write({"shaft.toml": changed(SHAFT, *changes)})


def expect_held(folder: DesignFolder, *changes: Change, held: bool) -> None:
    check = shaft_of(folder, *changes).only(DRIVE)
    if held:
        expect_conforms(check)
    else:
        expect_finding(check, grade=FAILS)


@pytest.mark.parametrize(("torque", "held"), [("718 N·m", True), ("722 N·m", False)])
def test_the_pressure_from_both_sides(workshop: DesignFolder, torque: str, held: bool) -> None:
    """4 mm stand out of the shaft: 100 MPa × 60 × 4 × 60 mm³/2 = 720 N·m."""
    expect_held(workshop, ("500 N·m", torque), held=held)


#: A key 6 mm wide and 20 high, which lies 10 mm deep in either: no section of the standard, and asked about.
HIGH = (
    ('keyway_width = "18 mm"', 'keyway_width = "6 mm"'),
    ('keyway_depth = "7 mm"', 'keyway_depth = "10 mm"'),
    ('height = "11 mm"', 'height = "20 mm"'),
    ("4.4 mm", "10.5 mm"),
)


@pytest.mark.parametrize(("torque", "held"), [("645 N·m", True), ("651 N·m", False)])
def test_the_shear_from_both_sides(workshop: DesignFolder, torque: str, held: bool) -> None:
    """60 MPa × 60 × 6 × 60 mm³/2 = 648 N·m, which press with 36 MPa."""
    check = shaft_of(workshop, *HIGH, ("500 N·m", torque)).only(DRIVE)
    expect_finding(check, grade=Grade.QUERY if held else FAILS)


@pytest.mark.parametrize(
    ("depth", "hub", "bears"), [("7 mm", "4.4 mm", 4.0), ("7 mm", "3.9 mm", 3.9), ("5 mm", "6.5 mm", 5.0)]
)
def test_the_key_bears_where_it_is_least_deep(
    workshop: DesignFolder, depth: str, hub: str, bears: float
) -> None:
    """In the hub, in the shaft, or where it stands out of it: 2 × 500 N·m/(60 × h × 60 mm³)."""
    changes = (('keyway_depth = "7 mm"', f'keyway_depth = "{depth}"'), ("4.4 mm", hub))
    check = shaft_of(workshop, *changes).only(DRIVE)
    assert on_sheet(check, "p") / 1e6 == pytest.approx(2 * 500e3 / (60 * bears * 60))


@pytest.mark.parametrize(
    ("depth", "hub", "held"),
    [
        ("5.55 mm", "6 mm", True),
        ("5.45 mm", "6 mm", False),
        ("7 mm", "4.101 mm", True),
        ("7 mm", "4.099 mm", False),
        ("7 mm", "5.19 mm", True),
        ("7 mm", "5.21 mm", False),
        ("7 mm +0.2/0", "4.4 mm +0.2/0", True),
        ("7 mm -0.3/-0.4", "4.4 mm", False),
    ],
)
def test_how_deep_the_key_lies_from_both_sides(
    workshop: DesignFolder, depth: str, hub: str, held: bool
) -> None:
    """Half of 11 mm in the shaft, and 0.1 to 1.2 mm over it: 7 mm and 4.1 to 5.2 mm in the hub."""
    expect_held(workshop, ('keyway_depth = "7 mm"', f'keyway_depth = "{depth}"'), ("4.4 mm", hub), held=held)


@pytest.mark.parametrize(
    ("begins", "ends", "held"),
    [
        ("369.9 mm", "435 mm", True),
        ("370.1 mm", "435 mm", False),
        ("365 mm", "430.1 mm", True),
        ("365 mm", "429.9 mm", False),
        ("401 mm", "435 mm", False),
    ],
)
def test_the_key_lies_in_its_keyway(workshop: DesignFolder, begins: str, ends: str, held: bool) -> None:
    """60 mm about 400 mm: from 370 to 430 mm."""
    expect_held(workshop, ("365 mm", begins), ("435 mm", ends), held=held)


def test_a_key_that_is_not_said_to_be_higher_is_that_of_the_standard(workshop: DesignFolder) -> None:
    """18 by 11 mm by ISO 773."""
    check = shaft_of(workshop, ('height = "11 mm"\n', "")).only(DRIVE)
    expect_conforms(check)
    assert on_sheet(check, "h_b") == pytest.approx(4e-3)


@pytest.mark.parametrize(
    ("gone", "missing"),
    [
        ('held = "key"\n', "held"),
        ('length = "60 mm"\n', "length"),
        ('hub_depth = "4.4 mm"\n', "hub_depth"),
        ('torque = "500 N·m"\n', "torque"),
        ('at = "400 mm"\n', "at"),
        ('keyway_depth = "7 mm"\n', "keyway_depth"),
    ],
)
def test_what_is_not_stated_is_asked_for(workshop: DesignFolder, gone: str, missing: str) -> None:
    expect_not_assessed(shaft_of(workshop, (gone, "")).only(DRIVE), missing)


def test_a_shaft_without_keyways_is_asked_for_them(workshop: DesignFolder) -> None:
    none = "\n".join(line for line in SHAFT.splitlines() if not line.startswith("keyways"))
    check = workshop.write({"shaft.toml": none}).only(DRIVE)
    expect_not_assessed(check, "no keyway along it")
    much = none.replace("500 N·m", "900 N·m")
    expect_finding(workshop.write({"shaft.toml": much}).only(DRIVE), grade=FAILS)


@pytest.mark.parametrize("drawn", [True, False])
def test_a_key_has_a_keyway_of_some_size(workshop: DesignFolder, drawn: bool) -> None:
    text = SHAFT if drawn else "\n".join(one for one in SHAFT.splitlines() if not one.startswith("keyways"))
    files = {"shaft.toml": text.replace('keyway_width = "18 mm"', 'keyway_width = "0 mm"')}
    expect_finding(workshop.write(files).only(DRIVE), grade=FAILS, says="stated as 0")


@pytest.mark.parametrize(
    ("width", "height", "section"),
    [
        ("18 mm", "11 mm h11", True),
        ("18 mm", "10.76 mm", True),
        ("18 mm", "10.74 mm", False),
        ("18 mm", "11.24 mm", True),
        ("18 mm", "11.26 mm", False),
        ("18 mm P9", "10.9..11 mm", True),  # drawn in its middle, 10.95 mm
        ("19 mm", "9.6 mm", True),
        ("19 mm", "9.4 mm", False),
        ("11 mm", "10.9 mm", True),
        ("11 mm", "11.1 mm", False),
    ],
)
def test_the_section_of_a_key_from_both_sides(
    workshop: DesignFolder, width: str, height: str, section: bool
) -> None:
    """18 by 11 mm, and 0.25 mm; of a width that the standard lacks from half of it, as of 100 by 50, to the square."""
    wide = ('keyway_width = "18 mm"', f'keyway_width = "{width}"')
    depths = ('keyway_depth = "7 mm"', 'keyway_depth = "6.5 mm"'), ("4.4 mm", "5 mm")
    if height in ("9.6 mm", "9.4 mm"):
        depths = ('keyway_depth = "7 mm"', 'keyway_depth = "5.2 mm"'), ("4.4 mm", "4.9 mm")
    light = ("500 N·m", "300 N·m")
    check = shaft_of(workshop, wide, ('height = "11 mm"', f'height = "{height}"'), *depths, light).only(DRIVE)
    if section:
        expect_conforms(check)
    else:
        expect_query(check, "height, drive key")


WITHOUT = ('length = "60 mm"\n', ""), ('height = "11 mm"\n', ""), ('hub_depth = "4.4 mm"\n', "")


#: A crank that is forged on its shaft, whose key is still stated.
FORGED = ('held = "key"', 'held = "forged on"')


def test_no_keyway_is_cut_beneath_what_is_forged_on(workshop: DesignFolder) -> None:
    """The keyway of the drive is cut from 365 to 435 mm, and the crank stands at 400 mm."""
    says = "is said to be forged on its shaft, and keyway drive of shaft"
    expect_finding(shaft_of(workshop, FORGED, *WITHOUT).only(DRIVE), grade=FAILS, says=says)
    for place in ("364 mm", "436 mm"):
        beside = shaft_of(workshop, FORGED, *WITHOUT, ('at = "400 mm"', f'at = "{place}"')).only(DRIVE)
        expect_not_applicable(beside, "one piece")
    unplaced = shaft_of(workshop, FORGED, *WITHOUT, ('at = "400 mm"\n', "")).only(DRIVE)
    expect_not_applicable(unplaced, "one piece")


def test_what_holds_without_a_key(workshop: DesignFolder) -> None:
    for how in ("splines", "press fit", "flange"):
        expect_query(shaft_of(workshop, ('held = "key"', f'held = "{how}"'), *WITHOUT).only(DRIVE), how)
    expect_not_applicable(shaft_of(workshop, ('by = "gear wheel"\n', "")).only(DRIVE), "nothing is said")


@pytest.mark.parametrize(
    ("how", "held"),
    [
        ("forged on", "forged on its shaft"),
        ("splines", "held by splines"),
        ("press fit", "held by press fit"),
        ("flange", "held by flange"),
    ],
)
@pytest.mark.parametrize(
    ("kept", "named"),
    [(WITHOUT[1:], "length"), (WITHOUT[:1] + WITHOUT[2:], "height"), (WITHOUT[:2], "hub depth")],
)
def test_what_is_held_without_a_key_states_none(
    workshop: DesignFolder, how: str, held: str, kept: tuple[Change, ...], named: str
) -> None:
    """One size of the key stands there still, whichever it is."""
    check = shaft_of(workshop, ('held = "key"', f'held = "{how}"'), *kept).only(DRIVE)
    says = f"is said to be {held}, and a key that holds it is stated by its {named}"
    expect_finding(check, grade=FAILS, says=says)


def arms(
    held: str = "key",
    *,
    length: str = "40 mm",
    depth: str = "9 mm",
    keyed: bool = True,
    valve: str = "40 mm",
    tappet: str = "290 mm",
) -> dict[str, str]:
    """Arms of 60 mm on a shaft of 80, with keys of 22 by 14 mm; 7611.3 N on each, as worked beside ``slow``."""
    sized = (
        ('keyway_width = "0 mm"', 'keyway_width = "22 mm"'),
        (
            'keyway_depth = "0 mm"',
            f'keyway_depth = "{depth}"',
        ),
    )
    made = slow("80 mm", *sized)
    made["shaft.toml"] += 'length = "500 mm"\n\n'
    made["shaft.toml"] += f'keyways.valve = {{ begins = "{valve}", ends = "110 mm" }}\n'
    made["shaft.toml"] += f'keyways.tappet = {{ begins = "{tappet}", ends = "360 mm" }}\n'
    key = f'arm_key = {{ length = "{length}", height = "14 mm", hub_depth = "5.4 mm" }}\n'
    made["rocker.toml"] += f'arms_held = "{held}"\n{key if keyed else ""}'
    return made


@pytest.mark.parametrize(("length", "held"), [("23 mm", True), ("22.6 mm", False)])
def test_the_keys_of_arms_from_both_sides(workshop: DesignFolder, length: str, held: bool) -> None:
    """7611.3 N × 60 mm = 456.7 N·m: 2 × 456.7/(80 × 5 × 100 MPa) = 22.83 mm."""
    check = workshop.write(arms(length=length)).only(ARMS)
    if held:
        expect_conforms(check)
    else:
        expect_finding(check, grade=FAILS)
        assert found(check) / 1e6 == pytest.approx(2 * 456678 / (80 * 5 * 22.6), rel=2e-3)
        assert limit(check) == pytest.approx(100e6)


def test_the_keys_of_arms_lie_half_in_their_shaft(workshop: DesignFolder) -> None:
    expect_finding(workshop.write(arms(depth="6.9 mm")).only(ARMS), grade=FAILS)


@pytest.mark.parametrize(
    ("distance", "begins", "held"),
    [
        ("250 mm", "304.9 mm", True),
        ("250 mm", "305.1 mm", False),
        ("250 mm", "330 mm", False),
        ("20 mm", "290 mm", False),
        ("14 mm", "290 mm", True),
    ],
)
def test_the_key_of_the_tappet_arm_lies_in_a_keyway(
    workshop: DesignFolder, distance: str, begins: str, held: bool
) -> None:
    """40 mm about 75 + 250 = 325 mm: from 305 mm. In 40 to 110 mm: not about 95 or 55 mm, but about 89 mm, to 109."""
    made = arms(tappet=begins)
    made["rocker.toml"] = made["rocker.toml"].replace('"250 mm"', f'"{distance}"')
    check = workshop.write(made).only(ARMS)
    if held:
        expect_conforms(check)
    else:
        expect_finding(check, grade=FAILS)


def test_the_tappet_arm_is_asked_where_it_stands(workshop: DesignFolder) -> None:
    made = arms()
    made["rocker.toml"] = made["rocker.toml"].replace('arm_distance = "250 mm"\n', "")
    expect_not_assessed(workshop.write(made).only(ARMS), "arm_distance")


def test_no_keyway_is_cut_beneath_arms_that_are_forged_on(workshop: DesignFolder) -> None:
    """The valve arm stands at 75 mm."""
    beneath = arms("forged on", keyed=False, valve="74 mm")
    expect_finding(
        workshop.write(beneath).only(ARMS), grade=FAILS, says="keyway valve of rocker-shaft is cut beneath it"
    )
    beside = arms("forged on", keyed=False, valve="76 mm")
    expect_not_applicable(workshop.write(beside).only(ARMS), "one piece")


def test_arms_without_keys(workshop: DesignFolder) -> None:
    expect_query(workshop.write(arms("splines", keyed=False)).only(ARMS), "splines")
    for held in ("forged on", "splines", "press fit"):
        says = f"the valve arm is said to be {held if held == 'forged on' else f'held by {held}'}"
        expect_finding(workshop.write(arms(held)).only(ARMS), grade=FAILS, says=says)
    made = arms()
    made["rocker.toml"] = made["rocker.toml"].replace('arms_held = "key"\n', "")
    expect_not_assessed(workshop.write(made).only(ARMS), "arms_held")
    made["rocker.toml"] = made["rocker.toml"].replace('on_shaft = "rocker-shaft"\n', "")
    expect_not_applicable(workshop.write(made).only(ARMS), "names no shaft")


def test_woodruff_keys_are_segments_of_their_discs() -> None:
    """ISO 3912 (memory): sixteen sections from 1 × 1.4 to 10 × 13 mm, each 0.35 to 0.41 of its disc high, 0.4 of most.

    A segment of half the disc would have nothing left to hold it. Of one width, the higher comes of the larger disc.
    """
    keys = [
        tuple(float(row[name]) for name in ("width_mm", "height_mm", "diameter_mm"))
        for row in rows("woodruff-keys-iso-3912.csv", "speclint_valves")
    ]
    assert (len(keys), keys[0], keys[-1]) == (16, (1.0, 1.4, 4.0), (10.0, 13.0, 32.0))
    assert all(0.35 <= height / disc <= 0.41 for _, height, disc in keys)
    assert keys == sorted(keys)
    assert [disc for _, _, disc in sorted(keys, key=lambda key: key[1])] == sorted(disc for *_, disc in keys)
    assert all(is_woodruff(width * 1e-3, height * 1e-3) for width, height, _ in keys)
