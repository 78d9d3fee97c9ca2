"""Bars, pins, pistons and rings: each agreement from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.motion.train import PISTON, RING, files

WRONG = ("finding", Grade.NONCONFORMITY)
HOLD = ("finding", Grade.HOLD)
QUERY = ("finding", Grade.QUERY)
FINE = ("conforms", None)
SILENT = ("not applicable", None)
Ends = tuple[str, Grade | None]


def outcome(design: DesignFolder, rule: str, component: str = "") -> Ends:
    check = design.only(rule, component)
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("part", "old", "new", "ends"),
    [
        # a bar of 200 mm less 2 mm for its edges takes a slipper of 198 mm
        ("crosshead", 'slipper_width = "240 mm"', 'slipper_width = "198 mm"', FINE),
        ("crosshead", 'slipper_width = "240 mm"', 'slipper_width = "198.1 mm"', WRONG),
        ("crosshead", 'slipper_width = "240 mm"', 'slipper_width = "197 mm ±1.1"', WRONG),
        # 320 + 660 + 200 = 1180 mm
        ("bar", 'span = "1300 mm"', 'span = "1180 mm"', FINE),
        ("bar", 'span = "1300 mm"', 'span = "1179 mm"', WRONG),
        ("bar", 'from_end = "320 mm"', 'from_end = "440 mm"', FINE),
        ("bar", 'from_end = "320 mm"', 'from_end = "441 mm"', WRONG),
        ("bar", 'from_end = "320 mm"', 'from_end = "199 mm"', WRONG),
    ],
)
def test_a_bar_takes_the_stroke(workshop: DesignFolder, part: str, old: str, new: str, ends: Ends) -> None:
    workshop.write(files(part, (old, new)))
    if part == "bar":
        workshop.replace("crosshead.toml", 'slipper_width = "240 mm"', 'slipper_width = "190 mm"')
    assert outcome(workshop, "slidebar.takes-the-stroke") == ends


def test_a_bar_that_places_no_crosshead_has_room_for_it(workshop: DesignFolder) -> None:
    """660 + 400 = 1060 mm at the least."""
    workshop.write(files("bar", ('crosshead_from_end = "320 mm"\n', ""), ('"1300 mm"', '"1059 mm"')))
    workshop.replace("crosshead.toml", 'slipper_width = "240 mm"', 'slipper_width = "190 mm"')
    assert outcome(workshop, "slidebar.takes-the-stroke") == WRONG
    workshop.replace("bar.toml", '"1059 mm"', '"1060 mm"')
    assert outcome(workshop, "slidebar.takes-the-stroke") == FINE


def _between(design: DesignFolder, rod: str, connecting: str, *changes: tuple[str, str]) -> Ends:
    """The bar of a cylinder with its faces 800 mm apart, by the lengths of its rods."""
    design.write(
        files(
            "block",
            ('side = "front"\n', 'side = "front"\nface_from_seat = "50 mm"\n'),
            ('side = "back"\n', 'side = "back"\nface_from_seat = "850 mm"\n'),
            ('connecting_rod_length = "1900 mm"', f'connecting_rod_length = "{connecting}"'),
            ('stroke = "660 mm"', f'stroke = "660 mm"\nrod_length = "{rod}"'),
            *changes,
        )
    )
    design.replace("crosshead.toml", 'slipper_width = "240 mm"', 'slipper_width = "190 mm"')
    return outcome(design, "slidebar.takes-the-stroke")


@pytest.mark.parametrize(
    ("rod", "connecting", "ends"),
    [
        ("1050.1 mm", "1900 mm", FINE),
        ("1049.9 mm", "1900 mm", WRONG),
        ("1200 mm", "831 mm", FINE),
        ("1200 mm", "829 mm", WRONG),
        ("1200.4 mm ±0.5", "829.5 mm", WRONG),
    ],
)
def test_a_bar_lies_between_cylinder_and_crank(
    workshop: DesignFolder, rod: str, connecting: str, ends: Ends
) -> None:
    """From pin to face at the front dead centre 1050 − 330 − 400 = 320 mm, where the front support stands; the bar is
    1300 mm long, and 1200 − 330 − 400 + 830 = 1300 mm lie between the face and the crank pin.
    """
    assert _between(workshop, rod, connecting) == ends


@pytest.mark.parametrize("gone", ['face_from_seat = "850 mm"\n', 'rod_length = "900 mm"', 'side = "back"\n'])
def test_where_faces_or_rods_are_not_stated_no_support_is_placed(workshop: DesignFolder, gone: str) -> None:
    """A rod of 900 mm would leave 170 mm for the 320 from the support to the pin."""
    assert _between(workshop, "900 mm", "1900 mm") == WRONG
    assert _between(workshop, "900 mm", "1900 mm", (gone, "")) == FINE


COVER = 'kind = "cylinder-cover"\nid = "cover"\ncloses = "block"\nend = "back"\n'
PLATE = '[supports.back]\ndrawing = "F-0410"\n'
FRONT = '[supports.front]\npart = "cover"\n'


@pytest.mark.parametrize(
    ("supports", "ends"),
    [
        (FRONT + PLATE, FINE),
        (PLATE + PLATE.replace("back", "front"), FINE),
        (PLATE, ("finding", Grade.OBSERVATION)),
        ("[supports.front]\n" + PLATE, ("not assessed", None)),
        ("", ("not assessed", None)),
    ],
)
def test_a_part_holds_the_bar(workshop: DesignFolder, supports: str, ends: Ends) -> None:
    workshop.write({**files("bar", add=supports), "cover.toml": COVER})
    assert outcome(workshop, "slidebar.held-by") == ends


def test_a_front_cover_holds_no_bar(workshop: DesignFolder) -> None:
    cover = COVER.replace('"back"', '"front"')
    workshop.write({**files("bar", add=FRONT + PLATE), "cover.toml": cover})
    assert outcome(workshop, "slidebar.held-by") == WRONG


def test_the_cover_of_another_cylinder_holds_no_bar(workshop: DesignFolder) -> None:
    other = 'kind = "cylinder-block"\nid = "other"\n'
    cover = COVER.replace('"block"', '"other"')
    workshop.write({**files("bar", add=FRONT + PLATE), "cover.toml": cover, "other.toml": other})
    assert outcome(workshop, "slidebar.held-by") == WRONG


@pytest.mark.parametrize(
    ("length", "boss", "ends"),
    [
        ("169.8 mm", "", FINE),
        ("169.9 mm", "", WRONG),
        ("111.8 mm", 'boss_width = "58 mm"\n', FINE),
        ("111.9 mm", 'boss_width = "58 mm"\n', WRONG),
        ("112 mm", 'boss_width = "58 mm"\n', WRONG),
        ("111.8 mm", 'boss_width = "58 mm ±0.1"\n', WRONG),
    ],
)
def test_a_bearing_goes_between_the_bosses(
    workshop: DesignFolder, length: str, boss: str, ends: Ends
) -> None:
    """170 − 58 = 112 mm, of which the eye leaves 0.2 for its play."""
    workshop.write(files("crosshead", add=boss))
    workshop.replace("pin.toml", 'length = "110 mm"', f'length = "{length}"')
    assert outcome(workshop, "pin.in-its-crosshead", "pin") == ends


def test_a_crank_pin_stands_in_no_crosshead(workshop: DesignFolder) -> None:
    assert outcome(workshop.write(files()), "pin.in-its-crosshead", "crank-pin") == SILENT


SEAT = """
[seat]
by = "press fit"
length = "116 mm"
boss = "210 mm"
boss_material = "known-steel"
"""


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ("", "", FINE),
        ('length = "116 mm"', 'length = "116.1 mm"', WRONG),
        ('length = "116 mm"', 'length = "115 mm"', FINE),
        ('length = "116 mm"', 'length = "116 mm ±0.4"', FINE),
        ('boss = "210 mm"', 'boss = "210.1 mm"', WRONG),
        ('boss = "210 mm"', 'boss = "205 mm"', FINE),
        ('boss = "210 mm"', 'boss = "210 mm ±2"', FINE),
        ('"known-steel"', '"known-forging"', WRONG),
    ],
)
def test_a_seat_is_that_of_its_crosshead(workshop: DesignFolder, old: str, new: str, ends: Ends) -> None:
    """Two bosses of 58 mm: 116 mm; 210 mm outside, of the crosshead's known-steel."""
    bosses = files("crosshead", add='boss_width = "58 mm"\nboss_diameter = "210 mm"\n')
    workshop.write({**bosses, "pin.toml": files("pin", add=SEAT.replace(old, new))["pin.toml"]})
    assert outcome(workshop, "pin.in-its-crosshead", "pin") == ends


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        # (200 - 165)/2 = 17.5 mm
        ("10 mm", "17.5 mm", FINE),
        ("10 mm", "17.6 mm", QUERY),
        ("10 mm", "17 mm ±0.6", QUERY),
        ("200 mm", "185 mm", FINE),
        ("200 mm", "184.9 mm", QUERY),
        ("200 mm", "185 mm ±0.2", QUERY),
        ("165 mm", "180 mm", FINE),
        ("165 mm", "180.1 mm", QUERY),
    ],
)
def test_a_fillet_runs_into_its_shoulder(workshop: DesignFolder, old: str, new: str, ends: Ends) -> None:
    assert (
        outcome(workshop.write(files("crank-pin", (old, new))), "pin.fillet-of-its-shoulder", "crank-pin")
        == ends
    )


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        # 185/2 + 10 = 102.5 mm
        ('overhang = "120 mm"', 'overhang = "102.6 mm"', FINE),
        ('overhang = "120 mm"', 'overhang = "102.4 mm"', QUERY),
        ('overhang = "120 mm"', 'overhang = "102.6 mm ±0.2"', QUERY),
        # 2 (120 - 10) = 220 mm
        ('length = "185 mm"', 'length = "219.8 mm"', FINE),
        ('length = "185 mm"', 'length = "220.2 mm"', QUERY),
    ],
)
def test_a_bearing_begins_clear_of_the_fillet(workshop: DesignFolder, old: str, new: str, ends: Ends) -> None:
    check = workshop.write(files("crank-pin", (old, new)))
    assert outcome(check, "pin.fillet-of-its-shoulder", "crank-pin") == ends


def test_a_crosshead_pin_may_have_a_shoulder_too(workshop: DesignFolder) -> None:
    """(120 - 100)/2 = 10 mm."""
    rule, shoulder = "pin.fillet-of-its-shoulder", 'larger_diameter = "120 mm"\nfillet = "{} mm"\n'
    assert outcome(workshop.write(files("pin", add=shoulder.format("10"))), rule, "pin") == FINE
    assert outcome(workshop.write(files("pin", add=shoulder.format("10.1"))), rule, "pin") == QUERY


@pytest.mark.parametrize(
    ("seat", "by", "ends"),
    [
        ("120 mm +0.1/+0.08", "press fit", FINE),
        ("120.2 mm", "press fit", QUERY),
        ("119.8 mm", "press fit", FINE),
        ("130 mm", "taper and nut", FINE),
        ("130 mm", "end plate", FINE),
    ],
)
def test_a_pin_is_no_thinner_beyond_its_shoulder_than_its_pressed_seat(
    workshop: DesignFolder, seat: str, by: str, ends: Ends
) -> None:
    """120 mm beyond the shoulder, as aimed at: what the seat is larger by for its fit is no difference."""
    text = f'larger_diameter = "120 mm"\nfillet = "10 mm"\n[seat]\nby = "{by}"\ndiameter = "{seat}"\n'
    assert outcome(workshop.write(files("pin", add=text)), "pin.fillet-of-its-shoulder", "pin") == ends


def grooved(workshop: DesignFolder, *places: float, length: float = 150, land: float = 11) -> DesignFolder:
    """Three grooves of 16 mm at some places from the front face; of places that are below nothing none is said."""
    head, _, rest = PISTON.partition("[grooves.front]")
    fastening = rest[rest.index("[fastening]") :]
    grooves = "".join(
        f'[grooves.{name}]\ntakes = "ring-{name}"\nwidth = "16 mm"\ndepth = "18 mm"\nland = "{land} mm"\n'
        + (f'at = "{at} mm"\n' if at > 0 else "")
        for name, at in zip(("a", "b", "c"), places, strict=False)
    )
    rings = {
        f"ring-{name}.toml": RING.replace('id = "ring"', f'id = "ring-{name}"') for name in ("a", "b", "c")
    }
    piston = f'{head}length = "{length} mm"\n{grooves}{fastening}'
    return workshop.write({**files(), **rings, "piston.toml": piston})


@pytest.mark.parametrize(
    ("places", "length", "ends"),
    [
        ((40, 67, 94), 150, FINE),
        ((11, 38, 65), 92, FINE),
        ((10.9, 38, 65), 92, WRONG),
        ((11, 37.9, 65), 92, WRONG),
        ((11, 38, 65), 91.9, WRONG),
        ((94, 67, 40), 150, FINE),
        ((-1, 67, 94), 121, FINE),
        ((-1, 67, 94), 120.9, WRONG),
        ((-1, -1, -1), 92, FINE),
        ((-1, -1, -1), 91.9, WRONG),
    ],
)
def test_the_grooves_fit_their_piston(
    workshop: DesignFolder, places: tuple[float, ...], length: float, ends: Ends
) -> None:
    """Lands of 11 mm: 11 + 16, 11 + 16, 11 + 16 and 11 make 92 mm, whichever way the grooves are listed.

    The last groove at 94 mm ends with its land at 94 + 16 + 11 = 121 mm, though another does not say where it is.
    """
    assert outcome(grooved(workshop, *places, length=length), "piston.grooves-fit") == ends


@pytest.mark.parametrize(
    ("sizes", "ends"),
    [
        ('stock_thickness = "48.5 mm"\n', FINE),
        ('stock_thickness = "48.4 mm"\n', WRONG),
        ('stock_thickness = "15.5 mm"\n[crown]\nrim = "470 mm"\n', FINE),
        ('stock_thickness = "15.4 mm"\n[crown]\nrim = "470 mm"\n', WRONG),
        ('stock_thickness = "15.4 mm"\n[crown]\nhub = "190 mm"\n', WRONG),
        ('stock_thickness = "15.5 mm"\n[crown]\nhub = "190 mm"\n', FINE),
        ('[crown]\nrim = "400 mm"\n', FINE),
    ],
)
def test_the_wall_of_the_grooves_is_cast_no_thinner_than_finished(
    workshop: DesignFolder, sizes: str, ends: Ends
) -> None:
    """(497 − 400)/2 = 48.5 mm of rim; inside 470 mm it is 13.5 mm, and the groove of 15.5 mm is the deeper."""
    sizes = sizes if "[crown]" in sizes else sizes + '[crown]\nrim = "400 mm"\n'
    piston = (
        'kind = "piston"\nid = "piston"\nruns_in = "liner"\ndiameter = "497 mm"\nlength = "140 mm"\n' + sizes
    )
    groove = '[grooves.front]\nat = "24 mm"\nwidth = "16 mm"\ndepth = "15.5 mm"\nland = "20 mm"\n'
    workshop.write({**files(), "piston.toml": piston + groove})
    assert outcome(workshop, "piston.grooves-fit", "piston") == ends


@pytest.mark.parametrize(("chamfer", "ends"), [("13 mm", FINE), ("13.1 mm", WRONG), ("40 mm", WRONG)])
def test_a_face_is_cut_back_no_farther_than_the_first_land(
    workshop: DesignFolder, chamfer: str, ends: Ends
) -> None:
    """A groove at 24 mm behind a land of 11 mm."""
    piston = (
        'kind = "piston"\nid = "piston"\nruns_in = "liner"\nlength = "140 mm"\n'
        f'crown_chamfer = "{chamfer}"\n[grooves.front]\nat = "24 mm"\nwidth = "16 mm"\nland = "11 mm"\n'
    )
    workshop.write({**files(), "piston.toml": piston})
    assert outcome(workshop, "piston.grooves-fit", "piston") == ends


@pytest.mark.parametrize(
    ("length", "chamfer", "ends"),
    [
        ("64 mm", "13 mm", FINE),
        ("63.9 mm", "13 mm", WRONG),
        ("64 mm", "13.1 mm", WRONG),
        ("51 mm", "", FINE),
        ("50.9 mm", "", WRONG),
    ],
)
def test_the_back_face_is_cut_back_no_farther_than_the_last_land(
    workshop: DesignFolder, length: str, chamfer: str, ends: Ends
) -> None:
    """A groove of 16 mm at 24 mm and a land of 11 mm end at 51 mm; 13 mm of the back face make 64 mm."""
    cut = f'crown_chamfer = "{chamfer}"\n' if chamfer else ""
    piston = f'kind = "piston"\nid = "piston"\nruns_in = "liner"\nlength = "{length}"\n{cut}' + (
        '[grooves.front]\nat = "24 mm"\nwidth = "16 mm"\nland = "11 mm"\n'
    )
    workshop.write({**files(), "piston.toml": piston})
    assert outcome(workshop, "piston.grooves-fit", "piston") == ends


@pytest.mark.parametrize(
    ("at", "length", "chamfer", "ends"),
    [
        (("40", "", "67"), "150 mm", "", FINE),
        (("40", "", "66.9"), "150 mm", "", WRONG),
        (("", "40", "67"), "150 mm", "", FINE),
        (("", "40", "66.9"), "150 mm", "", WRONG),
        (("11", "", ""), "92 mm", "", FINE),
        (("11", "", ""), "91.9 mm", "", WRONG),
        (("", "", ""), "136 mm", "22 mm", FINE),
        (("", "", ""), "135.9 mm", "22 mm", WRONG),
    ],
)
def test_a_groove_without_a_place_does_not_excuse_the_others(
    workshop: DesignFolder, at: tuple[str, ...], length: str, chamfer: str, ends: Ends
) -> None:
    """A groove of 16 mm at 40 mm with a land of 11 mm: the next at 67 mm; all three 92 mm, with two faces 136 mm."""
    cut = f'crown_chamfer = "{chamfer}"\n' if chamfer else ""
    piston = f'kind = "piston"\nid = "piston"\nruns_in = "liner"\nlength = "{length}"\n{cut}'
    for name, place in zip(("first", "second", "third"), at, strict=True):
        placed = f'at = "{place} mm"\n' if place else ""
        piston += f'[grooves.{name}]\n{placed}width = "16 mm"\nland = "11 mm"\n'
    workshop.write({**files(), "piston.toml": piston})
    assert outcome(workshop, "piston.grooves-fit", "piston") == ends


@pytest.mark.parametrize(
    ("lands", "at", "ends"),
    [
        (("20 mm", "24 mm"), "64 mm", FINE),
        (("20 mm", "24 mm"), "63.9 mm", WRONG),
        (("24 mm", "20 mm"), "64 mm", FINE),
        (("24 mm", "20 mm"), "63.9 mm", WRONG),
    ],
)
def test_between_two_grooves_stands_the_greater_of_their_lands(
    workshop: DesignFolder, lands: tuple[str, str], at: str, ends: Ends
) -> None:
    """A groove of 16 mm that begins at 24 mm ends at 40, and 24 mm further is 64 mm."""
    piston = 'kind = "piston"\nid = "piston"\nruns_in = "liner"\nlength = "140 mm"\n' + "".join(
        f'[grooves.{name}]\nat = "{place}"\nwidth = "16 mm"\nland = "{land}"\n'
        for name, place, land in zip(("first", "second"), ("24 mm", at), lands, strict=True)
    )
    workshop.write({**files(), "piston.toml": piston})
    assert outcome(workshop, "piston.grooves-fit", "piston") == ends


@pytest.mark.parametrize(
    ("ring", "says", "ends"),
    [
        ("a", 'place = "front"\nedge_from_piston_face = "40 mm"\n', FINE),
        ("a", 'place = "front"\nedge_from_piston_face = "40.2 mm"\n', FINE),
        ("a", 'place = "front"\nedge_from_piston_face = "40.3 mm"\n', WRONG),
        ("a", 'place = "back"\nedge_from_piston_face = "40 mm"\n', WRONG),
        ("b", 'place = "middle"\n', FINE),
        ("c", 'place = "back"\nedge_from_piston_face = "36 mm"\n', FINE),
        ("c", 'place = "back"\nedge_from_piston_face = "35.7 mm"\n', WRONG),
        ("c", "", FINE),
    ],
)
def test_a_ring_is_that_of_its_groove(workshop: DesignFolder, ring: str, says: str, ends: Ends) -> None:
    """The last groove ends 98 + 16 = 114 mm from the front of a piston of 150 mm: 36 mm from its back."""
    grooved(workshop, 40, 67, 98)
    workshop.replace(f"ring-{ring}.toml", 'gap = "4 mm"\n', f'gap = "4 mm"\n{says}')
    assert outcome(workshop, "ring.of-its-groove", f"ring-{ring}") == ends


@pytest.mark.parametrize(("edge", "ends"), [("11 mm", FINE), ("10.9 mm", WRONG)])
def test_a_ring_lies_behind_the_land_of_its_groove(workshop: DesignFolder, edge: str, ends: Ends) -> None:
    grooved(workshop, -1, -1, -1)
    workshop.replace(
        "ring-a.toml", 'gap = "4 mm"\n', f'gap = "4 mm"\nplace = "front"\nedge_from_piston_face = "{edge}"\n'
    )
    assert outcome(workshop, "ring.of-its-groove", "ring-a") == ends


def test_a_ring_of_another_liner_is_found(workshop: DesignFolder) -> None:
    grooved(workshop, 40, 67, 98)
    (workshop.root / "other.toml").write_text('kind = "cylinder-liner"\nid = "other"\n', encoding="utf-8")
    workshop.replace("ring-b.toml", 'runs_in = "liner"', 'runs_in = "other"')
    assert outcome(workshop, "ring.of-its-groove", "ring-b") == WRONG
