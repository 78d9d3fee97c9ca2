"""Each crank pin of an axle is that of its own cylinder, on the axle that it drives, as far out as its crank."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_finding

RULE = "axle.pins-of-its-cranks"
OTHER, FINE = ("finding", Grade.NONCONFORMITY), ("conforms", None)
FILES = {
    "one.toml": 'kind = "cylinder-block"',
    "two.toml": 'kind = "cylinder-block"',
    "engine.toml": 'kind = "engine"\ncranks.left.block = "one"\ncranks.right.block = "two"',
    "liner.toml": 'kind = "cylinder-liner"\nhoused_in = "one"',
    "piston.toml": 'kind = "piston"\nruns_in = "liner"',
    "rod.toml": 'kind = "piston-rod"\ncarries = "piston"',
    "head.toml": 'kind = "crosshead"\non_rod = "rod"',
    "pin.toml": 'kind = "pin"\nmoved_by = "head"',
    "axle.toml": 'kind = "driving-axle"\nengine = "engine"\nturning.pin = { of = "pin", crank = "left" }\n'
    'turning.web = { mass = "40 kg", crank = "right" }\ndriven_by = ["left"]',
}


@pytest.mark.parametrize(
    ("file", "old", "new", "wanted"),
    [
        ("axle.toml", "left", "left", FINE),
        ("axle.toml", 'crank = "left"', 'crank = "right"', OTHER),
        ("axle.toml", '["left"]', '["left", "right"]', FINE),
        ("axle.toml", '["left"]', '["right"]', OTHER),
        ("axle.toml", 'driven_by = ["left"]', "", OTHER),
        ("liner.toml", '"one"', '"two"', OTHER),
        ("engine.toml", 'left.block = "one"', 'left.block = "two"', OTHER),
        ("pin.toml", 'kind = "pin"', 'kind = "pin"\nplace = "crank pin"', FINE),
        ("pin.toml", 'kind = "pin"', 'kind = "pin"\nplace = "crosshead pin"', OTHER),
    ],
)
def test_a_pin_turns_at_the_crank_of_its_cylinder(
    workshop: DesignFolder, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    found = workshop.write({**FILES, file: FILES[file].replace(old, new)}).only(RULE)
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("driven_by", "says"),
    [("", "the axle axle, which no connecting rod drives"), ('driven_by = ["right"]', "driven by")],
)
def test_a_finding_says_what_drives_the_axle(workshop: DesignFolder, driven_by: str, says: str) -> None:
    axle = FILES["axle.toml"].replace('driven_by = ["left"]', driven_by)
    expect_finding(workshop.write({**FILES, "axle.toml": axle}).only(RULE), says=says)


@pytest.mark.parametrize(
    ("file", "line"),
    [
        ("axle.toml", 'engine = "engine"\n'),
        ("axle.toml", ', crank = "left"'),
        ("axle.toml", 'of = "pin", '),
        ("engine.toml", '\ncranks.left.block = "one"'),
        ("liner.toml", '\nhoused_in = "one"'),
        ("piston.toml", '\nruns_in = "liner"'),
        ("rod.toml", '\ncarries = "piston"'),
        ("head.toml", '\non_rod = "rod"'),
        ("pin.toml", '\nmoved_by = "head"'),
    ],
)
def test_where_the_chain_is_broken_there_is_nothing_to_compare(
    workshop: DesignFolder, file: str, line: str
) -> None:
    """But whether the axle is driven by the crank, where the pin names that."""
    files = {**FILES, file: FILES[file].replace(line, "")}
    if file == "engine.toml":
        files[file] += '\ncranks.left.angle = "0 °"'
    elif line.startswith((", crank", "engine")):
        files[file] = files[file].replace('turning.web = { mass = "40 kg", crank = "right" }', "")
    outcome = "not applicable" if file == "axle.toml" else "conforms"
    assert workshop.write(files).only(RULE).outcome == outcome


@pytest.mark.parametrize(
    ("radius", "stroke", "wanted"),
    [
        ("330 mm", 'stroke = "660 mm"', FINE),
        ("330.09 mm", 'stroke = "660 mm"', FINE),
        ("330.11 mm", 'stroke = "660 mm"', OTHER),
        ("310 mm", 'stroke = "660 mm"', OTHER),
        ("310 mm", 'stroke = "660 mm"\ncranks.left.stroke = "620 mm"', FINE),
        ("310 mm", "", FINE),
    ],
)
def test_a_pin_stands_as_far_out_as_its_crank(
    workshop: DesignFolder, radius: str, stroke: str, wanted: tuple[str, Grade | None]
) -> None:
    files = dict(FILES)
    files["axle.toml"] = files["axle.toml"].replace('of = "pin"', f'of = "pin", radius = "{radius}"')
    files["engine.toml"] = files["engine.toml"].replace('kind = "engine"', f'kind = "engine"\n{stroke}')
    found = workshop.write(files).only(RULE)
    assert (found.outcome, found.grade) == wanted


SEATED = {
    **FILES,
    "pin.toml": FILES["pin.toml"]
    + '\nseat = { length = "200 mm", boss = "400 mm", boss_material = "forging-C45" }',
    "axle.toml": FILES["axle.toml"].replace(
        'crank = "left" }',
        'crank = "left", boss = "400 mm", boss_width = "200 mm", boss_material = "forging-C45" }',
    ),
}


@pytest.mark.parametrize(
    ("old", "new", "wanted"),
    [
        ('boss = "400 mm"', 'boss = "401 mm"', FINE),
        ('boss = "400 mm"', 'boss = "399 mm"', OTHER),
        ('boss_width = "200 mm"', 'boss_width = "201 mm"', FINE),
        ('boss_width = "200 mm"', 'boss_width = "199 mm"', OTHER),
        ('"forging-C45"', '"cast-steel-GP240GH"', OTHER),
        ('boss = "400 mm", ', "", FINE),
        ('boss_width = "200 mm", ', "", FINE),
        (', boss_material = "forging-C45"', "", FINE),
    ],
)
def test_the_seat_of_a_pin_is_in_the_boss_of_its_axle(
    workshop: DesignFolder, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    """A boss that the axle does not state is asked for by pin.seat-has-room."""
    found = workshop.write({**SEATED, "axle.toml": SEATED["axle.toml"].replace(old, new)}).only(RULE)
    assert (found.outcome, found.grade) == wanted


def test_the_boss_is_compared_where_the_crank_is_not_stated(workshop: DesignFolder) -> None:
    axle = SEATED["axle.toml"].replace(', crank = "left"', "").replace('boss = "400 mm"', 'boss = "399 mm"')
    found = workshop.write({**SEATED, "axle.toml": axle}).only(RULE)
    assert (found.outcome, found.grade) == OTHER
