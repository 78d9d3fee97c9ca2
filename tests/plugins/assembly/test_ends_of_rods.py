"""The greatest diameter at the end of a rod: whatever its section is called, its larger diameter has to pass."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, expect_conforms, expect_finding, expect_not_assessed
from tests.plugins.assembly.bench import with_links, write

ORDER = "assembly.order"
FLANGE = 'form = "shoulder"\nat = "crosshead end"\ndiameter = "88 mm"\nlarger_diameter = "140 mm"\n'


@pytest.mark.parametrize("form", ["shoulder", "plain", "cotter slot"])
def test_a_flange_by_another_name_does_not_pass_either(workshop: DesignFolder, form: str) -> None:
    """The flange of 140 mm cannot go through a gland bore of 91 mm: the piston's end, 85 mm, is the one that can."""
    change = ("rod", FLANGE, FLANGE.replace("shoulder", form))
    thread = ("rod", 'form = "thread"\nat = "piston end"\nthread = "M85x4"', NO_SLIM_END)
    needed = with_links("rod", "box", "gland")
    assert write(workshop, change, only=needed).only("rod.enters", "rod").outcome == "conforms"
    assert write(workshop, change, thread, only=needed).only("rod.enters", "rod").outcome == "finding"


NO_SLIM_END = 'form = "plain"\nat = "piston end"\ndiameter = "92 mm"'


def test_without_a_larger_diameter_a_plain_end_passes(workshop: DesignFolder) -> None:
    """88 mm through a neck bush of 90.6 mm."""
    plain = FLANGE.replace("shoulder", "plain").replace('larger_diameter = "140 mm"\n', "")
    changes = (
        ("rod", FLANGE, plain),
        ("rod", 'form = "thread"\nat = "piston end"\nthread = "M85x4"', NO_SLIM_END),
    )
    needed = with_links("rod", "box", "gland")
    assert write(workshop, *changes, only=needed).only("rod.enters", "rod").outcome == "conforms"


ENTERS = "rod.enters"
NEEDED = with_links("rod", "box", "gland")
SECTION = f"[sections.flange]\n{FLANGE}"
FORGED = ("piston", 'by = "nut"', 'by = "forged in one"')


def test_a_shoulder_that_states_no_larger_diameter_is_not_taken_for_its_smaller_side(
    workshop: DesignFolder,
) -> None:
    """88 mm would pass the bush of 90.6 mm; what stands next to it is not known."""
    less = ("rod", 'larger_diameter = "140 mm"\n', "")
    expect_not_assessed(write(workshop, less, only=NEEDED).only(ENTERS, "rod"), "larger_diameter")


@pytest.mark.parametrize("end", ["piston", "crosshead"])
def test_a_rod_of_which_an_end_has_no_section_is_not_assessed(workshop: DesignFolder, end: str) -> None:
    thread = '[sections.nut]\nform = "thread"\nat = "piston end"\nthread = "M85x4"\n'
    none = ("rod", thread if end == "piston" else SECTION, "")
    check = write(workshop, none, only=NEEDED).only(ENTERS, "rod")
    expect_not_assessed(check, f"rod states no section at its {end} end")


@pytest.mark.parametrize(("neck", "outcome"), [("89.1 mm", "conforms"), ("88.9 mm", "finding")])
@pytest.mark.parametrize("first", [True, False])
def test_the_greatest_section_of_an_end_has_to_pass(
    workshop: DesignFolder, neck: str, outcome: str, *, first: bool
) -> None:
    """Of 85 and 89 mm the latter, through the neck bush; the flange of 140 mm does not pass at all."""
    collar = '[sections.collar]\nform = "plain"\nat = "piston end"\ndiameter = "89 mm"\n'
    place = "[sections.nut]" if first else "[sections.flange]"
    changes = (("rod", place, f"{collar}{place}"), ("box", '"90.6 mm"', f'"{neck}"'))
    assert write(workshop, *changes, only=NEEDED).only(ENTERS, "rod").outcome == outcome


ON_COVER = ("gland", 'of = "box"', 'of = "cover-back"')
HALF_BOX, HALF_GLAND = ((part, f'id = "{part}"', f'id = "{part}"\nsplit = true') for part in ("box", "gland"))


def test_a_gland_on_the_cover_in_halves_stops_no_rod(workshop: DesignFolder) -> None:
    """The flange of 140 mm of a rod forged to its piston passes the hole of 150 mm, and no whole gland of 91 mm."""
    expect_conforms(write(workshop, FORGED, HALF_BOX, HALF_GLAND, ON_COVER, only=NEEDED).only(ENTERS, "rod"))
    expect_finding(write(workshop, FORGED, HALF_BOX, ON_COVER, only=NEEDED).only(ENTERS, "rod"))


@pytest.mark.parametrize(("own", "outcome"), [(True, "conforms"), (False, "finding")])
def test_the_gland_on_the_box_counts_before_one_on_its_cover(
    workshop: DesignFolder, outcome: str, *, own: bool
) -> None:
    """One of the two is in halves: that on the box, or that on the cover."""
    folder = write(workshop, FORGED, HALF_BOX, *((HALF_GLAND,) if own else ()), only=NEEDED)
    other = f'kind = "gland"\nid = "other"\nof = "cover-back"\nsplit = {"false" if own else "true"}\n'
    (folder.root / "other.toml").write_text(other, encoding="utf-8")
    assert folder.only(ENTERS, "rod").outcome == outcome


def test_every_gland_on_a_box_must_be_in_halves(workshop: DesignFolder) -> None:
    folder = write(workshop, FORGED, HALF_BOX, HALF_GLAND, only=NEEDED)
    (folder.root / "other.toml").write_text('kind = "gland"\nid = "other"\nof = "box"\n', encoding="utf-8")
    expect_finding(folder.only(ENTERS, "rod"))


def test_a_box_in_no_cover_asks_for_it(workshop: DesignFolder) -> None:
    """The hole of the cover is one of the ways past it."""
    loose = ("box", 'in_cover = "cover-back"\n', "")
    expect_not_assessed(write(workshop, loose, only=NEEDED).only(ENTERS, "rod"), "in_cover")


def test_a_gland_that_is_not_drawn_is_in_one_piece(workshop: DesignFolder) -> None:
    """The gland bore of 91 mm counts, which the flange of 140 mm does not pass."""
    expect_finding(write(workshop, FORGED, HALF_BOX, only=NEEDED - {"gland"}).only(ENTERS, "rod"))
