"""cam.key-in-its-hub and shaft.room-for-its-cams."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, found, limit

KEY, ROOM = "cam.key-in-its-hub", "shaft.room-for-its-cams"
FINE, WRONG = ("conforms", None), ("finding", Grade.NONCONFORMITY)
SILENT = ("not applicable", None)
CAM = 'kind = "cam"\nid = "cam"\nbore = "60 mm"\nwidth = "30 mm"\nkey_length = "{}"\n'
Ends = tuple[str, "Grade | None"]


@pytest.mark.parametrize(
    ("key", "more", "ends"),
    [
        ("30 mm", "", FINE),
        ("30.1 mm", "", WRONG),
        ("30 mm ±0.1", "", WRONG),
        ("45 mm", 'hub_length = "45 mm"\n', FINE),
        ("45.1 mm", 'hub_length = "45 mm"\n', WRONG),
        ("30 mm", 'hub_length = "25 mm"\n', WRONG),  # a hub shorter than the track
    ],
)
def test_a_key_within_its_cam(workshop: DesignFolder, key: str, more: str, ends: Ends) -> None:
    check = workshop.write({"cam.toml": CAM.format(key) + more}).only(KEY)
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize("silent", ['width = "30 mm"\n', 'key_length = "40 mm"\n'])
def test_a_cam_without_key_or_length_is_not_held_against_it(workshop: DesignFolder, silent: str) -> None:
    check = workshop.write({"cam.toml": changed(CAM.format("40 mm"), (silent, ""))}).only(KEY)
    assert (check.outcome, check.grade) == SILENT


SHAFT = (
    'kind = "shaft"\nid = "shaft"\n[bearings]\nnear.at = "-10 mm"\nfar.at = "90 mm"\nmiddle.at = "40 mm"\n'
)
BOX = 'kind = "cam-box"\nid = "box"\nlength = "110 mm"\nwidth = "80 mm"\nheight = "60 mm"\n'
NO_BEARINGS = ("shaft.toml", 'near.at = "-10 mm"\nfar.at = "90 mm"\nmiddle.at = "40 mm"\n', "")
TWO = ("shaft.toml", 'middle.at = "40 mm"\n', "")
Change = tuple[str, str, str]


def shafted(*changes: Change) -> dict[str, str]:
    """Three cams of 30 mm on one shaft, with bearings 100 mm apart, in a box of 110 mm."""
    files = {"shaft.toml": SHAFT, "box.toml": BOX}
    for one in "abc":
        files[f"tappet-{one}.toml"] = f'kind = "tappet"\nid = "tappet-{one}"\ncarried_in = "box"\n'
        files[f"cam-{one}.toml"] = (
            f'kind = "cam"\nid = "cam-{one}"\nlifts = "tappet-{one}"\nturns_on = "shaft"\nwidth = "30 mm"\n'
        )
    for name, old, new in changes:
        files[name] = changed(files[name], (old, new))
    return files


def _wide(width: str) -> Change:
    return "cam-a.toml", 'width = "30 mm"', f'width = "{width}"'


@pytest.mark.parametrize(
    ("changes", "ends"),
    [
        ((), FINE),
        ((_wide("40 mm"),), FINE),  # 40 + 30 + 30 = 100 mm, as the bearings are apart
        ((_wide("40.5 mm"),), WRONG),
        ((_wide("40 mm ±0.5"),), WRONG),
        ((("cam-b.toml", 'width = "30 mm"', 'width = "30 mm"\nhub_length = "40.5 mm"'),), WRONG),
        (
            (("cam-b.toml", 'width = "30 mm"', 'width = "30 mm"\nhub_length = "25 mm"'), _wide("40.5 mm")),
            WRONG,
        ),
        ((("shaft.toml", 'far.at = "90 mm"', 'far.at = "80.5 mm"'),), FINE),  # 90 of 90.5 mm
        ((("shaft.toml", 'far.at = "90 mm"', 'far.at = "79.5 mm"'),), WRONG),  # 90 of 89.5 mm
        ((_wide("40 mm"), TWO), FINE),
        ((_wide("40.5 mm"), TWO), WRONG),
        ((_wide("50 mm"), NO_BEARINGS), FINE),  # 110 mm in the box
        ((_wide("50.5 mm"), NO_BEARINGS), WRONG),
        ((_wide("50.5 mm"), NO_BEARINGS, ("box.toml", '"80 mm"', '"120 mm"')), FINE),  # the longest side
        ((_wide("50.5 mm"), NO_BEARINGS, ("box.toml", '"60 mm"', '"120 mm"')), FINE),
        # one of the cams is in no box that is stated, and the others have 80.5 mm
        ((_wide("50.5 mm"), NO_BEARINGS, ("cam-b.toml", 'lifts = "tappet-b"\n', "")), FINE),
        ((_wide("80.5 mm"), NO_BEARINGS, ("tappet-b.toml", 'carried_in = "box"\n', "")), WRONG),
        ((_wide("50.5 mm"), NO_BEARINGS, ("cam-c.toml", 'turns_on = "shaft"\n', "")), FINE),
    ],
)
def test_cams_side_by_side(workshop: DesignFolder, changes: tuple[Change, ...], ends: Ends) -> None:
    check = workshop.write(shafted(*changes)).only(ROOM, "shaft")
    assert (check.outcome, check.grade) == ends


def test_what_they_take_and_have(workshop: DesignFolder) -> None:
    """101 mm of cams between bearings 100 mm apart."""
    check = workshop.write(shafted(_wide("41 mm"))).only(ROOM, "shaft")
    assert (found(check), limit(check)) == (pytest.approx(0.101), pytest.approx(0.100))


@pytest.mark.parametrize(
    "more",
    [
        (("box.toml", 'width = "80 mm"\n', ""),),  # it may lie along the shaft
        (("box.toml", 'height = "60 mm"\n', ""),),
        tuple((f"cam-{one}.toml", 'width = "30 mm"\n', "") for one in "abc"),
    ],
)
def test_a_room_or_cams_without_sizes_are_not_judged(
    workshop: DesignFolder, more: tuple[Change, ...]
) -> None:
    check = workshop.write(shafted(NO_BEARINGS, *more)).only(ROOM, "shaft")
    assert (check.outcome, check.grade) == SILENT


@pytest.mark.parametrize("bearings", ['near.at = "-10 mm"\n', 'near.at = "-10 mm"\nfar = {}\n'])
def test_of_one_place_of_a_bearing_nothing_is_known(workshop: DesignFolder, bearings: str) -> None:
    """150.5 mm of cams in a box of 160 mm, and one bearing that states where it is."""
    kept = ("shaft.toml", NO_BEARINGS[1], bearings)
    box = ("box.toml", '"110 mm"', '"160 mm"')
    check = workshop.write(shafted(_wide("90.5 mm"), kept, box)).only(ROOM, "shaft")
    assert (check.outcome, check.grade) == FINE
