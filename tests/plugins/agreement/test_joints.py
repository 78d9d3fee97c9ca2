"""A joint and what it holds: each agreement from both sides, and the hold rules on what is worked."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.joints.bench import STUDS, bench, in_every_case
from tests.plugins.joints.test_lenses import LENS


@pytest.fixture
def workshop(tmp_path: Path) -> DesignFolder:
    return bench(DesignFolder(tmp_path))


def lined(workshop: DesignFolder, inside: str = "604 mm", last: str = "560 mm") -> DesignFolder:
    """The bench's cover on a bore with a liner of 500 mm, and the collar's recess of 590 mm at its end."""
    block = (workshop.root / "block.toml").read_text(encoding="utf-8")
    block = block.replace("\nside = ", '\nof_bore = "main"\nside = ')
    block += '[bores.main]\nrecess_diameter = "590 mm"\n'
    liner = f"""
kind = "cylinder-liner"
id = "liner"
housed_in = "block"
in_bore = "main"
bore = "500 mm"
last_bore = "{last}"
[collar]
end = "front"
"""
    workshop.write({"block.toml": block, "liner.toml": liner}, settings=_settings(workshop))
    return workshop.replace("studs.toml", 'inside = "604 mm"', f'inside = "{inside}"')


@pytest.mark.parametrize(
    ("bores", "of_bore", "outcome"),
    [
        ("", "", "conforms"),
        ("[bores.other]\n", 'of_bore = "main"\n', "conforms"),
        ("[bores.other]\n", "", "not assessed"),
    ],
)
def test_an_end_of_two_bores_says_which_is_its_own(
    workshop: DesignFolder, bores: str, of_bore: str, outcome: str
) -> None:
    """Else the liner under the cover would be sought in the first bore."""
    lined(workshop).replace("block.toml", '[ends.front]\nof_bore = "main"\n', f"[ends.front]\n{of_bore}")
    workshop.replace("block.toml", "[ends.front]", f"{bores}[ends.front]")
    assert workshop.only("joint.separation", "studs").outcome == outcome


def _settings(workshop: DesignFolder) -> str:
    return (workshop.root / "speclint.toml").read_text(encoding="utf-8")


def piped(workshop: DesignFolder, carries: str) -> DesignFolder:
    """A flange of 50 mm on a pipe, held by studs like those of the cover."""
    pipe = f'kind = "steam-pipe"\nid = "pipe"\nduty = "duty"\ncarries = "{carries}"\n'
    flange = 'kind = "pipe-flange"\nid = "flange"\nof = "pipe"\nthickness = "50 mm"\nbore = "500 mm"\n'
    studs = STUDS.replace('id = "studs"', 'id = "pipe-studs"').replace('holds = "cover"', 'holds = "flange"')
    files = {"pipe.toml": pipe, "flange.toml": flange, "pipe-studs.toml": studs}
    return workshop.write(files, settings=_settings(workshop))


@pytest.mark.parametrize(
    ("word", "outcome"), [("cylinder", "conforms"), ("live", "finding"), ("exhaust", "finding")]
)
def test_a_cover_holds_the_pressure_of_its_cylinder(workshop: DesignFolder, word: str, outcome: str) -> None:
    workshop.replace("studs.toml", 'pressure = "cylinder"', f'pressure = "{word}"')
    found = workshop.only("joint.pressure-of-part", "studs")
    assert (found.outcome, found.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("carries", "word", "outcome"),
    [
        ("live steam", "live", "conforms"),
        ("live steam", "exhaust", "finding"),
        ("exhaust steam", "exhaust", "conforms"),
        ("exhaust steam", "cylinder", "finding"),
    ],
)
def test_a_flange_holds_the_steam_of_its_pipe(
    workshop: DesignFolder, carries: str, word: str, outcome: str
) -> None:
    piped(workshop, carries).replace("pipe-studs.toml", 'pressure = "cylinder"', f'pressure = "{word}"')
    assert workshop.only("joint.pressure-of-part", "pipe-studs").outcome == outcome


@pytest.mark.parametrize(
    "rule", ["joint.separation", "joint.gasket-load", "joint.stud-stress", "joint.engagement"]
)
def test_a_wrong_word_eases_no_hold(workshop: DesignFolder, rule: str) -> None:
    """The studs of a cover called "exhaust" are judged by the cylinder all the same: nothing moves."""
    before = workshop.only(rule, "studs")
    workshop.replace("studs.toml", 'pressure = "cylinder"', 'pressure = "exhaust"')
    after = workshop.only(rule, "studs")
    assert (after.outcome, after.utilisation) == (before.outcome, before.utilisation)


def test_a_cover_is_judged_by_its_cylinder_whatever_its_studs_are_called(workshop: DesignFolder) -> None:
    before = workshop.only("cover.thickness", "cover").utilisation
    workshop.replace("studs.toml", 'pressure = "cylinder"', 'pressure = "exhaust"')
    assert workshop.only("cover.thickness", "cover").utilisation == before


@pytest.mark.parametrize(("inside", "outcome"), [("590 mm", "conforms"), ("589.9 mm", "finding")])
def test_a_ring_lies_outside_the_recess(workshop: DesignFolder, inside: str, outcome: str) -> None:
    assert lined(workshop, inside).only("joint.ring-outside-bore", "studs").outcome == outcome


@pytest.mark.parametrize(("last", "outcome"), [("604 mm", "conforms"), ("604.1 mm", "finding")])
def test_a_ring_lies_outside_the_last_bore(workshop: DesignFolder, last: str, outcome: str) -> None:
    assert lined(workshop, last=last).only("joint.ring-outside-bore", "studs").outcome == outcome


@pytest.mark.parametrize(("outside", "outcome"), [("674 mm", "conforms"), ("674.1 mm", "finding")])
def test_a_ring_lies_inside_the_holes(workshop: DesignFolder, outside: str, outcome: str) -> None:
    """Holes of 26 mm on 700 mm leave 674 mm."""
    workshop.replace("studs.toml", 'outside = "636 mm"', f'outside = "{outside}"')
    assert workshop.only("joint.ring-outside-bore", "studs").outcome == outcome


@pytest.mark.parametrize(("bore", "outcome"), [("504 mm", "conforms"), ("504.1 mm", "finding")])
def test_a_ring_lies_outside_the_opening_under_its_flange(
    workshop: DesignFolder, bore: str, outcome: str
) -> None:
    """The ring of 504 mm is wider than the flange of 500, and must be than the opening of the block."""
    piped(workshop, "live steam").replace("pipe-studs.toml", 'inside = "604 mm"', 'inside = "504 mm"')
    block = (workshop.root / "block.toml").read_text(encoding="utf-8")
    pipe = (workshop.root / "pipe.toml").read_text(encoding="utf-8")
    workshop.write(
        {
            "block.toml": f'{block}[openings.chest]\nbore = "{bore}"\n',
            "pipe.toml": f'{pipe}ends_at = {{ part = "block", opening = "chest" }}\n',
        },
        settings=_settings(workshop),
    )
    assert workshop.only("joint.ring-outside-bore", "pipe-studs").outcome == outcome


@pytest.mark.parametrize(("opening", "outcome"), [("604 mm", "conforms"), ("604.1 mm", "finding")])
def test_a_ring_lies_outside_the_opening_of_a_chamber(
    workshop: DesignFolder, opening: str, outcome: str
) -> None:
    block = (workshop.root / "block.toml").read_text(encoding="utf-8")
    lid = 'kind = "chamber-cover"\nid = "lid"\ncloses = "block"\nseat_bore = "upper"\nbore = "500 mm"\n'
    studs = STUDS.replace('id = "studs"', 'id = "lid-studs"').replace('holds = "cover"', 'holds = "lid"')
    workshop.write(
        {
            "block.toml": f'{block}[seat_bores.upper]\nopening = "{opening}"\n',
            "lid.toml": lid,
            "lid-studs.toml": studs,
        },
        settings=_settings(workshop),
    )
    assert workshop.only("joint.ring-outside-bore", "lid-studs").outcome == outcome


def test_steam_reaches_at_least_as_far_as_the_bore(workshop: DesignFolder) -> None:
    """A ring of 400 to 440 mm on a last bore of 560 mm: π/4 560² × 1.6/20 = 19.70 kN on a stud, not π/4 430² × …"""
    lined(workshop, inside="400 mm").replace("studs.toml", 'outside = "636 mm"', 'outside = "440 mm"')
    workshop.replace("block.toml", 'recess_diameter = "590 mm"', 'recess_diameter = "520 mm"')
    found = workshop.only("joint.separation", "studs")
    assert on_sheet(found, "P") == pytest.approx(math.pi / 4 * 0.560**2 * 1.6e6 / 20, rel=1e-9)


@pytest.mark.parametrize(
    ("grip", "outcome"), [("50.5 mm", "conforms"), ("50.51 mm", "finding"), ("33 mm", "finding")]
)
def test_the_grip_is_the_flange(workshop: DesignFolder, grip: str, outcome: str) -> None:
    workshop.replace("studs.toml", 'grip = "50 mm"', f'grip = "{grip}"')
    found = workshop.only("joint.grip-of-flange", "studs")
    assert (found.outcome, found.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_a_stated_grip_changes_no_preload(workshop: DesignFolder) -> None:
    before = workshop.only("joint.stud-stress", "studs").utilisation
    workshop.replace("studs.toml", 'grip = "50 mm"', 'grip = "33 mm"')
    assert workshop.only("joint.stud-stress", "studs").utilisation == before


def with_lens(workshop: DesignFolder, *changes: tuple[str, str]) -> Check:
    studs = STUDS.replace('id = "studs"', 'id = "lens-studs"').replace('holds = "cover"', 'holds = "lens"')
    studs = studs.replace('seal = "gasket"', 'seal = "lens ring"').replace(
        "[gasket]", 'pressure_circle = "150 mm"\n[gasket]'
    )
    lens = LENS
    for old, new in changes:
        lens, studs = lens.replace(old, new), studs.replace(old, new)
    workshop.write({"lens.toml": lens, "lens-studs.toml": studs}, settings=_settings(workshop))
    return workshop.only("joint.grip-of-flange", "lens-studs")


@pytest.mark.parametrize(
    ("thickness", "mouth", "outcome"),
    [
        ("20 mm", "150 mm", "conforms"),  # 40 + 20/2 = 50 mm
        (
            "22 mm",
            "153.464 mm",
            "conforms",
        ),  # the circle lies 3.464/(2 tan 60°) = 1 mm below the face: 40 + 11 - 1
        ("20 mm", "153.464 mm", "finding"),  # 49 mm
        ("22 mm", "150 mm", "finding"),  # 51 mm
    ],
)
def test_the_grip_at_a_lens_ring(workshop: DesignFolder, thickness: str, mouth: str, outcome: str) -> None:
    found = with_lens(
        workshop,
        ('thickness = "25.7735 mm"', f'thickness = "{thickness}"'),
        ('"160 mm"\nthickness', f'"{mouth}"\nthickness'),
    )
    assert found.outcome == outcome


@pytest.mark.parametrize(("circle", "outcome"), [("150 mm", "conforms"), ("60 mm", "finding")])
def test_steam_reaches_the_circle_of_the_ring(workshop: DesignFolder, circle: str, outcome: str) -> None:
    """Called 60 mm, the joint is judged by the ring's 150 mm all the same: π/4 150² × 1.6/20 = 1.414 kN on a stud."""
    with_lens(workshop, ('pressure_circle = "150 mm"', f'pressure_circle = "{circle}"'))
    assert workshop.only("joint.pressure-circle", "lens-studs").outcome == outcome
    found = workshop.only("joint.separation", "lens-studs")
    assert on_sheet(found, "P") == pytest.approx(math.pi / 4 * 0.150**2 * 1.6e6 / 20, rel=1e-9)


def test_the_studs_of_a_gland_have_no_ring(workshop: DesignFolder) -> None:
    gland = 'kind = "gland"\nid = "gland"\nof = "cover"\n'
    studs = STUDS.replace('id = "studs"', 'id = "gland-studs"').replace('holds = "cover"', 'holds = "gland"')
    workshop.write({"gland.toml": gland, "gland-studs.toml": studs}, settings=_settings(workshop))
    for rule in ("joint.ring-outside-bore", "joint.pressure-circle"):
        assert workshop.only(rule, "gland-studs").outcome == "not applicable"
    workshop.replace("gland-studs.toml", 'seal = "gasket"\n', "")  # packing is no seal that one must state
    for rule in ("joint.ring-outside-bore", "joint.pressure-circle"):
        assert workshop.only(rule, "gland-studs").outcome == "not applicable"
    in_every_case(workshop, '"16 bar gauge"', '"15 bar gauge"')
    assert workshop.only("joint.pressure-of-part", "gland-studs").outcome == "conforms"
