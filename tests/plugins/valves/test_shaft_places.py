"""shaft.cams-in-their-places."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed

PLACES = "shaft.cams-in-their-places"
FINE, WRONG, SILENT = ("conforms", None), ("finding", Grade.NONCONFORMITY), ("not applicable", None)
ASKED = ("finding", Grade.QUERY)
Ends = tuple[str, "Grade | None"]
SHAFT = """kind = "shaft"
id = "shaft"
length = "300 mm"
bearings.near = { at = "40 mm", length = "40 mm" }
bearings.far = { at = "220 mm", length = "40 mm" }
keyways.inner = { begins = "70 mm", ends = "190 mm" }
keyways.outer = { begins = "245 mm", ends = "295 mm" }
"""
#: Places: two cams of 30 mm between the bearings, which leave 60 to 200 mm, and one beyond, from 240 to 300 mm.
AT = {"a": 90, "b": 140, "c": 270}
Change = tuple[str, str, str]


def placed(design: DesignFolder, *changes: Change) -> DesignFolder:
    files = {"shaft.toml": SHAFT}
    for name, at in AT.items():
        files[f"cam-{name}.toml"] = (
            f'kind = "cam"\nid = "cam-{name}"\nlifts = "tappet"\nturns_on = "shaft"\nat = "{at} mm"\nwidth = "30 mm"\n'
            'keyway_width = "18 mm"\nkey_length = "28 mm"\nheld_along = "shoulder and nut"\n'
        )
    files["tappet.toml"] = 'kind = "tappet"\nid = "tappet"\n'
    files["forks.toml"] = GEAR
    for name, old, new in changes:
        files[f"{name}.toml"] = changed(files[f"{name}.toml"], (old, new))
    return design.write(files)


def _at(cam: str, place: str) -> Change:
    return f"cam-{cam}", f'at = "{AT[cam]} mm"', f'at = "{place}"'


@pytest.mark.parametrize(
    ("changes", "ends"),
    [
        ((), FINE),
        ((_at("b", "120.1 mm"),), FINE),  # 30.1 mm from the other, half of both is 30
        ((_at("b", "119.9 mm"),), WRONG),
        ((_at("b", "120.5 mm ±0.6"),), WRONG),
        ((_at("b", "90 mm"),), WRONG),
        ((_at("a", "84.1 mm"),), FINE),  # its key begins at 70.1 mm
        ((_at("a", "83.9 mm"),), WRONG),
        ((_at("b", "175.9 mm"),), FINE),  # its key ends at 189.9 mm
        ((_at("b", "176.1 mm"),), WRONG),
        ((_at("c", "280.9 mm"),), FINE),  # its key ends at 294.9 mm, the cam at 295.9 of 300
        ((_at("c", "281.1 mm"),), WRONG),
        ((_at("c", "242 mm"),), WRONG),  # over no keyway
        (
            (("cam-b", 'width = "30 mm"', 'width = "30 mm"\nhub_length = "69.9 mm"'),),
            FINE,
        ),  # 50 = (30 + 70)/2
        ((("cam-b", 'width = "30 mm"', 'width = "30 mm"\nhub_length = "70.1 mm"'),), WRONG),
        ((("cam-b", 'width = "30 mm"', 'width = "70.1 mm"\nhub_length = "30 mm"'),), WRONG),
    ],
)
def test_cams_stand_clear_of_each_other_and_over_their_keyways(
    workshop: DesignFolder, changes: tuple[Change, ...], ends: Ends
) -> None:
    check = placed(workshop, *changes).only(PLACES)
    assert (check.outcome, check.grade) == ends


#: Without keyways in the cams, so that only ends and neighbours count.
LOOSE = tuple((f"cam-{name}", 'keyway_width = "18 mm"\nkey_length = "28 mm"\n', "") for name in AT)


@pytest.mark.parametrize(
    ("changes", "ends"),
    [
        ((), FINE),
        ((_at("a", "75.1 mm"),), FINE),  # the near bearing ends at 60 mm
        ((_at("a", "74.9 mm"),), WRONG),
        ((_at("c", "255.1 mm"),), FINE),  # the far one at 240 mm
        ((_at("c", "254.9 mm"),), WRONG),
        ((_at("c", "284.9 mm"),), FINE),  # it ends at 299.9 of 300 mm
        ((_at("c", "285.1 mm"),), WRONG),
        ((_at("a", "15.1 mm"), ("shaft", '"40 mm", length', '"65 mm", length')), FINE),
        ((_at("a", "14.9 mm"), ("shaft", '"40 mm", length', '"65 mm", length')), WRONG),
        ((_at("a", "-30 mm"),), WRONG),
        ((("shaft", 'length = "300 mm"', 'length = "280 mm"'), _at("c", "262 mm")), FINE),
        ((("shaft", 'length = "300 mm"', 'length = "280 mm"'), _at("c", "266 mm")), WRONG),
    ],
)
def test_cams_that_are_not_keyed_stand_between_ends_and_bearings(
    workshop: DesignFolder, changes: tuple[Change, ...], ends: Ends
) -> None:
    check = placed(
        workshop,
        *LOOSE,
        *changes,
        ("shaft", 'keyways.outer = { begins = "245 mm", ends = "295 mm" }\n', ""),
        ("shaft", 'keyways.inner = { begins = "70 mm", ends = "190 mm" }\n', ""),
    ).only(PLACES)
    assert (check.outcome, check.grade) == ends


OUTER = ("shaft", 'keyways.outer = { begins = "245 mm", ends = "295 mm" }\n', "")


def _driven(at: str, length: str) -> Change:
    """The shaft turned by a wheel at a place, or at none that is stated, and its length."""
    drive = f'drive = {{ by = "gear wheel"{at} }}'
    return "shaft", 'length = "300 mm"', f'length = "{length}"\n{drive}'


@pytest.mark.parametrize(
    ("changes", "ends"),
    [
        # The outer keyway ends at 295 mm: 442.5 mm.
        ((_driven(', at = "0 mm"', "442 mm"),), FINE),
        ((_driven(', at = "0 mm"', "443 mm"),), ASKED),
        ((_driven(', at = "0 mm"', "442.4 mm ±0.2"),), ASKED),
        # Without it a cam of 30 mm with its middle at 270 mm: 427.5 mm.
        ((*LOOSE, OUTER, _driven(', at = "0 mm"', "427 mm")), FINE),
        ((*LOOSE, OUTER, _driven(', at = "0 mm"', "428 mm")), ASKED),
        # A bearing of 40 mm at 320 mm: 510 mm.
        ((("shaft", 'at = "220 mm"', 'at = "320 mm"'), _driven(', at = "0 mm"', "509 mm")), FINE),
        ((("shaft", 'at = "220 mm"', 'at = "320 mm"'), _driven(', at = "0 mm"', "511 mm")), ASKED),
        # A wheel at 310 mm: 465 mm.
        ((_driven(', at = "310 mm"', "464 mm"),), FINE),
        ((_driven(', at = "310 mm"', "466 mm"),), ASKED),
        ((_driven("", "3000 mm"),), FINE),
    ],
)
def test_a_shaft_does_not_end_far_beyond_what_stands_on_it(
    workshop: DesignFolder, changes: tuple[Change, ...], ends: Ends
) -> None:
    check = placed(workshop, *changes).only(PLACES)
    assert (check.outcome, check.grade) == ends


def test_a_long_shaft_is_told_by_both_lengths(workshop: DesignFolder) -> None:
    check = placed(workshop, _driven(', at = "0 mm"', "3000 mm")).only(PLACES)
    assert check.actual == "shaft 3000 mm long, by what stands on it 442.5 mm at most"


@pytest.mark.parametrize(
    "more",
    [
        ("cam-c", 'at = "270 mm"\n', ""),
        ("shaft", 'begins = "245 mm", ends = "295 mm"', 'begins = "245 mm"'),
        ("shaft", 'at = "220 mm", length = "40 mm"', 'at = "220 mm"'),
    ],
)
def test_where_something_may_stand_at_the_far_end_its_length_is_not_judged(
    workshop: DesignFolder, more: Change
) -> None:
    """What is not stated is asked for, and is all that is told."""
    check = placed(workshop, more, _driven(', at = "0 mm"', "3000 mm")).only(PLACES)
    assert check.outcome == "not assessed"


def test_the_length_of_a_shaft_that_slides_is_not_judged(workshop: DesignFolder) -> None:
    name, old, new = _driven(', at = "0 mm"', "3000 mm")
    assert placed(workshop, (name, old, f"{new}\nslides = true")).only(PLACES).outcome == "conforms"


SAME = _at("b", "90 mm")
SLIDES = ("shaft", 'length = "300 mm"', 'length = "300 mm"\nslides = {}')
FORK = tuple((f"cam-{name}", "shoulder and nut", "fork of the gear") for name in "ab")
GEAR = 'kind = "valve-gear"\nid = "forks"\n[forks.inlet]\nmoves = ["cam-a", "cam-b"]\n'
UNMOVED = ("forks", 'moves = ["cam-a", "cam-b"]', 'moves = ["cam-a"]')
OTHER = ("cam-b", 'lifts = "tappet"', 'lifts = "other"')


@pytest.mark.parametrize(
    ("changes", "ends"),
    [
        ((SAME, (*SLIDES[:2], SLIDES[2].format("true"))), FINE),
        ((SAME, (*SLIDES[:2], SLIDES[2].format("false"))), WRONG),
        ((SAME, *FORK), FINE),
        ((SAME, *FORK, UNMOVED), WRONG),  # by the word alone: no fork of a gear moves the other
        ((SAME, FORK[0]), WRONG),  # the other is held by a nut
        ((SAME, OTHER, *FORK), WRONG),  # two tappets at one place
        ((_at("b", "91 mm"), *FORK), WRONG),  # beside each other, not at one place
        (
            (SAME, *FORK, ("cam-a", 'width = "30 mm"', 'width = "70 mm"')),
            WRONG,
        ),  # the bearing stands 50 mm away
        ((SAME, *FORK, ("cam-b", 'width = "30 mm"', 'width = "70 mm"')), WRONG),
    ],
)
def test_tracks_that_slide_come_under_one_tappet(
    workshop: DesignFolder, changes: tuple[Change, ...], ends: Ends
) -> None:
    folder = placed(workshop, *changes)
    (folder.root / "other.toml").write_text('kind = "tappet"\nid = "other"\n', encoding="utf-8")
    check = folder.only(PLACES)
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(
    "change",
    [
        _at("c", "400 mm"),
        ("shaft", 'ends = "190 mm"', 'ends = "201 mm"'),  # into the far bearing, from 200 mm
        ("shaft", 'at = "220 mm", length = "40 mm"', 'at = "299.9 mm ±0.2", length = "5 mm"'),
    ],
)
def test_of_a_shaft_that_slides_ends_and_keyways_move_along(workshop: DesignFolder, change: Change) -> None:
    """A key and an end that would be told stand otherwise in each notch."""
    assert placed(workshop, change).only(PLACES).grade is Grade.NONCONFORMITY
    check = placed(workshop, change, (*SLIDES[:2], SLIDES[2].format("true"))).only(PLACES)
    assert (check.outcome, check.grade) == FINE


@pytest.mark.parametrize(("at", "ends"), [("299.8 mm ±0.2", FINE), ("299.9 mm ±0.2", WRONG)])
def test_a_bearing_has_its_middle_on_the_shaft(workshop: DesignFolder, at: str, ends: Ends) -> None:
    """One of 5 mm, beyond the cam that ends at 285 mm and its keyway that ends at 295 mm."""
    far = ("shaft", 'at = "220 mm", length = "40 mm"', f'at = "{at}", length = "5 mm"')
    check = placed(workshop, far).only(PLACES)
    assert (check.outcome, check.grade) == ends


def test_cams_and_keyways_stand_on_a_shaft_without_bearings(workshop: DesignFolder) -> None:
    bearings = [line for line in SHAFT.splitlines(keepends=True) if line.startswith("bearings.")]
    check = placed(workshop, *(("shaft", line, "") for line in bearings)).only(PLACES)
    assert (check.outcome, check.grade) == FINE


@pytest.mark.parametrize(("begins", "ends"), [("405.1 mm", FINE), ("404.9 mm", WRONG)])
def test_a_short_keyway_close_behind_its_bearing(workshop: DesignFolder, begins: str, ends: Ends) -> None:
    """The bearing reaches from 395 to 405 mm."""
    check = placed(
        workshop,
        *LOOSE,
        ("shaft", 'length = "300 mm"', 'length = "500 mm"'),
        ("shaft", 'at = "220 mm", length = "40 mm"', 'at = "400 mm", length = "10 mm"'),
        ("shaft", 'begins = "245 mm", ends = "295 mm"', f'begins = "{begins}", ends = "410 mm"'),
    ).only(PLACES)
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(
    ("at", "says"),
    [
        ("245 mm", "key of cam-c begins at 231 mm, its keyway at 245 mm"),
        ("244.9 mm", "cam-c stands over no keyway of shaft"),
        ("295 mm", "key of cam-c ends at 309 mm, its keyway at 295 mm"),
        ("295.1 mm", "cam-c stands over no keyway of shaft"),
    ],
)
def test_a_cam_stands_over_a_keyway_up_to_its_ends(workshop: DesignFolder, at: str, says: str) -> None:
    check = placed(
        workshop,
        ("shaft", 'length = "300 mm"', 'length = "400 mm"'),
        ("shaft", '"220 mm", length', '"212 mm", length'),
        ("cam-c", 'width = "30 mm"', 'width = "4 mm"'),
        _at("c", at),
    ).only(PLACES)
    assert check.actual == says


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("cam-a", 'at = "90 mm"\n', ""), "at is not stated"),
        (("cam-a", 'width = "30 mm"\n', ""), "width is not stated"),
        (("cam-a", 'key_length = "28 mm"\n', ""), "key_length is not stated"),
        (("shaft", 'length = "300 mm"\n', ""), "length is not stated"),
        (("shaft", 'at = "40 mm", length = "40 mm"', 'at = "40 mm"'), "bearings.near.length is not stated"),
        (("shaft", 'at = "40 mm", length = "40 mm"', 'length = "40 mm"'), "bearings.near.at is not stated"),
        (("shaft", 'begins = "70 mm", ', ""), "keyways.inner.begins is not stated"),
    ],
)
def test_what_is_not_stated_is_asked_for(workshop: DesignFolder, change: Change, says: str) -> None:
    check = placed(workshop, change).only(PLACES)
    assert check.outcome == "not assessed"
    assert says in check.says


def test_a_shaft_without_keyways_along_it_is_told_how_to_write_them(workshop: DesignFolder) -> None:
    check = placed(
        workshop,
        ("shaft", 'keyways.outer = { begins = "245 mm", ends = "295 mm" }\n', ""),
        ("shaft", 'keyways.inner = { begins = "70 mm", ends = "190 mm" }\n', ""),
    ).only(PLACES)
    assert check.outcome == "not assessed"
    assert '[keyways] cams = { begins = "80 mm", ends = "280 mm" }' in check.says


@pytest.mark.parametrize(
    "missing",
    [
        ("cam-c", 'at = "270 mm"\n', ""),
        ("shaft", 'at = "40 mm", length = "40 mm"', 'at = "40 mm"'),
        ("shaft", 'at = "40 mm", length = "40 mm"', 'length = "40 mm"'),
    ],
)
def test_what_is_missing_hides_no_overlap(workshop: DesignFolder, missing: Change) -> None:
    check = placed(workshop, SAME, missing).only(PLACES)
    assert (check.outcome, check.grade) == WRONG
    assert check.actual.startswith("cam-b beside cam-a: 0 mm from middle to middle, and 30 mm wanted")


def test_a_shaft_without_cams_has_none_to_place(workshop: DesignFolder) -> None:
    check = workshop.write({"shaft.toml": SHAFT}).only(PLACES)
    assert (check.outcome, check.grade) == SILENT


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('begins = "70 mm"', 'begins = "60.1 mm"', FINE),  # the near bearing reaches from 20 to 60 mm
        ('begins = "70 mm"', 'begins = "59.9 mm"', WRONG),
        ('ends = "190 mm"', 'ends = "199.9 mm"', FINE),  # and the far one from 200 to 240 mm
        ('ends = "190 mm"', 'ends = "200.1 mm"', WRONG),
        ('begins = "245 mm"', 'begins = "240.1 mm"', FINE),
        ('begins = "245 mm"', 'begins = "239.9 mm"', WRONG),
        ('ends = "190 mm"', 'ends = "295 mm"', WRONG),  # one keyway through the far bearing
        ('ends = "190 mm"', 'ends = "190 mm ±10.1"', WRONG),
    ],
)
def test_a_keyway_runs_into_no_bearing(workshop: DesignFolder, old: str, new: str, ends: Ends) -> None:
    check = placed(workshop, ("shaft", old, new)).only(PLACES, "shaft")
    assert (check.outcome, check.grade) == ends


def test_a_keyway_that_runs_into_a_bearing_is_told_with_both_places(workshop: DesignFolder) -> None:
    """Also where the bearing lies beyond it; without lengths of bearings nothing can be said of them."""
    check = placed(workshop, ("shaft", 'ends = "190 mm"', 'ends = "201 mm"')).only(PLACES, "shaft")
    assert check.actual == "keyway inner ends at 201 mm, and bearing far begins at 200 mm"
    check = placed(workshop, ("shaft", 'begins = "245 mm"', 'begins = "239 mm"')).only(PLACES, "shaft")
    assert check.actual == "keyway outer begins at 239 mm, and bearing far reaches to 240 mm"


@pytest.mark.parametrize(
    ("at", "ends"),
    [
        ("155.1 mm", FINE),  # beside a cam of 30 mm at 140 mm
        ("154.9 mm", WRONG),
        ("140 mm", WRONG),
        ("199.9 mm", FINE),  # beside the far bearing
        ("200.1 mm", WRONG),
        ("220 mm", WRONG),
        ("299 mm", FINE),
    ],
)
def test_what_drives_a_shaft_stands_within_no_cam_or_bearing(
    workshop: DesignFolder, at: str, ends: Ends
) -> None:
    drive = ("shaft", 'length = "300 mm"\n', f'length = "300 mm"\ndrive.at = "{at}"\n')
    check = placed(workshop, drive).only(PLACES, "shaft")
    assert (check.outcome, check.grade) == ends
    if ends == WRONG:
        assert "drive" in check.actual
