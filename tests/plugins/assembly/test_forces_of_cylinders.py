"""What forces liner, piston, ring, rod, box, cover, studs and pipe into an order: a few parts at a time."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, expect_finding
from tests.plugins.assembly.forced import RULE, forced, instead, without

BLOCK = 'kind = "cylinder-block"\n[bores.main]\n[ends.front]\nof_bore = "main"\nside = "front"\n'
LINER = """
kind = "cylinder-liner"
housed_in = "block"
in_bore = "main"
bore = "500 mm"
outside_diameter = "560 mm"
collar.end = "front"
"""
PISTON = 'kind = "piston"\nruns_in = "liner"\ndiameter = "468.75 mm"\n'
COVER = 'kind = "cylinder-cover"\ncloses = "block"\nof_end = "front"\ncentral_hole = "40 mm"\n'
RING = 'kind = "piston-ring"\nruns_in = "liner"\nthickness = "16 mm"\n'
ROD = """
kind = "piston-rod"
carries = "piston"
[sections.flange]
at = "crosshead end"
form = "shoulder"
diameter = "88 mm"
larger_diameter = "140 mm"
"""
BOX = 'kind = "stuffing-box"\nseals = "rod"\nneck_bush = "90 mm"\ngland_bore = "91 mm"\n'
GLAND = 'kind = "gland"\nof = "box"\n'
CROSSHEAD = 'kind = "crosshead"\non_rod = "rod"\nslipper_width = "240 mm"\n'
STUDS = 'kind = "bolted-joint"\nholds = "cover"\nfastener = "stud"\ncircle = "690 mm"\n'
PIPE = """
kind = "steam-pipe"
joined_to = "block"
collar_diameter = "190 mm"
drawn_back = "60 mm"
outside_diameter = "168 mm"
"""

#: A liner with its cover at the collar.
COVERED = {"block": BLOCK, "liner": LINER, "cover": COVER}
#: A piston in its liner, with a cover in front.
CLOSED = {**COVERED, "piston": PISTON}
#: A ring, its groove in the piston.
GROOVE = '[grooves.one]\ntakes = "ring"\n'
RINGED = {"block": BLOCK, "liner": LINER, "piston": PISTON + GROOVE, "ring": RING}
#: A rod in its box.
BOXED = {
    "block": BLOCK,
    "liner": LINER,
    "piston": PISTON,
    "rod": ROD,
    "box": BOX,
    "gland": GLAND,
    "crosshead": CROSSHEAD,
}


@pytest.mark.parametrize(("bore", "held"), [("559.9 mm", True), ("560 mm", False), ("560.1 mm", False)])
def test_a_liner_goes_in_before_the_ring_that_it_does_not_pass(
    workshop: DesignFolder, bore: str, *, held: bool
) -> None:
    """It is 560 mm outside; what just passes on the drawing passes."""
    keeper = f'kind = "retaining-ring"\nretains = "liner"\nbore = "{bore}"\n'
    found = forced(workshop, {"block": BLOCK, "liner": LINER, "keeper": keeper})
    assert found == (
        {("liner", "keeper"): f"outside diameter of liner, 560 mm, does not pass bore of keeper, {bore}"}
        if held
        else {}
    )


@pytest.mark.parametrize(
    ("hole", "least"),
    [("399.9 mm", "399.9"), ("400.1 mm ±0.2", "399.9"), ("400 mm", ""), ("400.3 mm ±0.2", "")],
)
def test_a_liner_goes_in_before_the_cover_at_its_collar(
    workshop: DesignFolder, hole: str, least: str
) -> None:
    """Its 400 mm does not pass a hole that may be 399.9 mm, and passes one of 400 mm."""
    small = LINER.replace("560", "400").replace("500", "390")
    outside = 'central_hole = "40 mm"\n', f'central_hole = "{hole}"\noutside_diameter = "800 mm"\n'
    found = forced(workshop, instead({**COVERED, "liner": small}, "cover", *outside))
    says = f"outside diameter of liner, 400 mm, does not pass central hole of cover, {least} mm"
    assert found == ({("liner", "cover"): says} if least else {})


def test_the_cover_at_the_other_end_does_not_stop_the_liner(workshop: DesignFolder) -> None:
    assert forced(workshop, instead(COVERED, "liner", '"front"', '"back"')) == {}


TWO_BORES = instead(COVERED, "block", "[bores.main]", "[bores.main]\n[bores.other]")
BY_SIDE = 'of_end = "front"', 'end = "front"'


@pytest.mark.parametrize(
    ("parts", "held"),
    [
        (TWO_BORES, True),
        # the end is of the other bore, or says of none
        (instead(TWO_BORES, "block", 'of_bore = "main"', 'of_bore = "other"'), False),
        (without(TWO_BORES, "block", 'of_bore = "main"'), False),
        # neither the bore of the liner nor that of the end is known: they need not be the same
        (without(without(TWO_BORES, "block", 'of_bore = "main"'), "liner", 'in_bore = "main"'), False),
        # a side alone tells where the block has one bore
        (instead(TWO_BORES, "cover", *BY_SIDE), False),
        (instead(COVERED, "cover", *BY_SIDE), True),
        (instead(COVERED, "cover", 'of_end = "front"', 'end = "back"'), False),
        (without(instead(COVERED, "cover", *BY_SIDE), "liner", 'in_bore = "main"'), True),
    ],
)
def test_a_cover_closes_the_bore_of_its_end(
    workshop: DesignFolder, parts: dict[str, str], *, held: bool
) -> None:
    assert (("liner", "cover") in forced(workshop, parts)) is held


def test_a_cover_of_no_side_is_not_that_of_a_collar_of_no_end(workshop: DesignFolder) -> None:
    """Neither the side of the collar nor that of the cover is stated: no order follows."""
    parts = without(COVERED, "liner", 'collar.end = "front"')
    assert forced(workshop, without(parts, "cover", 'of_end = "front"')) == {}
    assert forced(workshop, without(parts, "block", 'side = "front"')) == {}


def test_a_piston_stands_in_its_liner(workshop: DesignFolder) -> None:
    """Said with the greatest size of what stands inside, and the least of what it stands in."""
    parts = {"block": BLOCK, "liner": LINER.replace("500 mm", "500 mm ±0.5"), "piston": PISTON}
    found = forced(workshop, instead(parts, "piston", '"468.75 mm"', '"468.75 mm ±0.25"'))
    assert found == {("liner", "piston"): "diameter of piston, 469 mm, stands in bore of liner, 499.5 mm"}


@pytest.mark.parametrize(("hole", "held"), [("468.7 mm", True), ("468.8 mm", False)])
def test_a_piston_goes_in_before_the_one_closed_cover(
    workshop: DesignFolder, hole: str, *, held: bool
) -> None:
    """It is 468.75 mm."""
    found = forced(workshop, instead(CLOSED, "cover", '"40 mm"', f'"{hole}"'))
    says = f"diameter of piston, 468.75 mm, does not pass central hole of cover, {hole}"
    assert found.get(("piston", "cover")) == (says if held else None)


def test_a_piston_goes_in_by_either_of_two_closed_covers(workshop: DesignFolder) -> None:
    """And where the one in front has a stuffing box, before the one behind."""
    back = '[ends.back]\nof_bore = "main"\nside = "back"\n'
    other = COVER.replace('"front"', '"back"')
    parts = {**CLOSED, "block": BLOCK + back, "other": other}
    assert not {("piston", "cover"), ("piston", "other")} & set(forced(workshop, parts))
    box = 'kind = "stuffing-box"\nin_cover = "cover"\n'
    found = forced(workshop, {**parts, "box": box})
    assert ("piston", "other") in found
    assert ("piston", "cover") not in found


def test_a_piston_of_no_liner_and_one_in_a_liner_of_no_block_are_forced_nowhere(
    workshop: DesignFolder,
) -> None:
    """The ring in its groove runs in the liner of the block."""
    assert forced(workshop, without(RINGED, "piston", 'runs_in = "liner"')) == {
        ("ring", "piston"): "the thickness of ring, 16 mm, does not pass the room beside piston in its bore, "
        "15.625 mm"
    }
    loose = LINER.replace('housed_in = "block"\n', "").replace('bore = "500 mm"\n', "")
    parts = {**RINGED, "loose": loose, "cover": COVER}
    found = forced(workshop, instead(parts, "piston", '"liner"', '"loose"'))
    assert ("piston", "cover") not in found


@pytest.mark.parametrize(
    ("thickness", "held"),
    [("15.6 mm", False), ("15.625 mm", False), ("15.65 mm", True), ("15.6 mm ±0.03", True)],
)
def test_a_ring_that_does_not_pass_beside_the_piston_goes_in_before_it(
    workshop: DesignFolder, thickness: str, *, held: bool
) -> None:
    """(500 − 468.75)/2 = 15.625 mm of room, in which 15.6 mm pass, and 15.6 + 0.03 mm do not."""
    assert (
        ("ring", "piston") in forced(workshop, instead(RINGED, "ring", '"16 mm"', f'"{thickness}"'))
    ) is held


@pytest.mark.parametrize(
    ("bore", "piston", "room"),
    [("500 mm ±0.5", "468 mm", "15.75"), ("500 mm", "468 mm ±0.5", "15.75")],
)
def test_the_room_beside_a_piston_is_the_least(
    workshop: DesignFolder, bore: str, piston: str, room: str
) -> None:
    """(499.5 − 468)/2 = (500 − 468.5)/2 = 15.75 mm: 15.8 mm do not pass, though 16 mm are drawn."""
    sizes = instead(instead(RINGED, "liner", '"500 mm"', f'"{bore}"'), "piston", '"468.75 mm"', f'"{piston}"')
    found = forced(workshop, instead(sizes, "ring", '"16 mm"', '"15.8 mm"'))
    assert found["ring", "piston"].endswith(f"room beside piston in its bore, {room} mm")
    thin = forced(workshop, instead(sizes, "ring", '"16 mm"', '"15.7 mm"'))
    assert ("ring", "piston") not in thin


@pytest.mark.parametrize(
    ("part", "line"),
    [
        ("ring", 'thickness = "16 mm"'),
        ("piston", 'diameter = "468.75 mm"'),
        ("liner", 'bore = "500 mm"'),
        ("ring", 'runs_in = "liner"'),
    ],
)
def test_a_ring_of_which_a_size_is_unknown_is_forced_nowhere(
    workshop: DesignFolder, part: str, line: str
) -> None:
    """The ring belongs to the block by the bore that it bears on, whatever its liner."""
    bears = {**RINGED, "ring": f'{RING}bears_on = "block"\n'}
    assert ("ring", "piston") not in forced(workshop, without(bears, part, line))
    assert ("ring", "piston") in forced(workshop, bears)


#: What is threaded on the rod, by the flange that does not pass it, and by the slippers of the crosshead.
THREADED = {
    ("box", "piston"): "diameter of piston, 468.75 mm, does not pass neck bush of box, 90 mm",
    ("gland", "piston"): "diameter of piston, 468.75 mm, does not pass gland bore of box, 91 mm",
    ("rod", "piston"): "diameter at flange of rod, 140 mm, does not pass neck bush of box, 90 mm",
    ("rod", "crosshead"): "diameter at flange of rod, 140 mm, does not pass neck bush of box, 90 mm",
    ("box", "crosshead"): "width of the slipper of crosshead, 240 mm, does not pass neck bush of box, 90 mm",
    (
        "gland",
        "crosshead",
    ): "width of the slipper of crosshead, 240 mm, does not pass gland bore of box, 91 mm",
}
#: What remains where the flange passes.
BY_THE_CROSSHEAD = {("box", "crosshead"), ("gland", "crosshead")}


def on_the_rod(workshop: DesignFolder, parts: dict[str, str]) -> dict[tuple[str, str], str]:
    """What is forced beside the piston in its liner."""
    return {pair: says for pair, says in forced(workshop, parts).items() if pair != ("liner", "piston")}


def test_what_is_threaded_on_a_rod_with_a_flange(workshop: DesignFolder) -> None:
    """The piston comes off, so that the rod goes in by its end, and the box before the piston."""
    assert on_the_rod(workshop, BOXED) == THREADED


@pytest.mark.parametrize(
    ("flange", "box", "gland"),
    [("89.9 mm", False, False), ("90 mm", False, False), ("90.1 mm", True, False), ("91.1 mm", True, True)],
)
def test_a_part_that_passes_the_flange_goes_on_after_the_piston_too(
    workshop: DesignFolder, flange: str, *, box: bool, gland: bool
) -> None:
    """The neck bush is 90 mm, the gland 91 mm."""
    found = on_the_rod(workshop, instead(BOXED, "rod", '"140 mm"', f'"{flange}"'))
    wanted = set(BY_THE_CROSSHEAD)
    wanted |= {("box", "piston"), ("rod", "piston"), ("rod", "crosshead")} if box else set()
    wanted |= {("gland", "piston")} if gland else set()
    assert set(found) == wanted


@pytest.mark.parametrize(
    ("part", "gone"), [("box", {"box"}), ("gland", {"gland"}), ("both", {"box", "gland"})]
)
def test_a_part_in_halves_goes_on_at_any_time(workshop: DesignFolder, part: str, gone: set[str]) -> None:
    parts = {name: f"{text}split = true\n" if name in gone else text for name, text in BOXED.items()}
    found = on_the_rod(workshop, parts)
    firsts = {first for first, _ in found}
    assert firsts == ({"box", "gland", "rod"} - gone if part != "both" else set())


def test_a_section_elsewhere_is_no_flange(workshop: DesignFolder) -> None:
    found = on_the_rod(workshop, instead(BOXED, "rod", '"crosshead end"', '"between the ends"'))
    assert set(found) == BY_THE_CROSSHEAD


@pytest.mark.parametrize(("diameter", "held"), [("90.1 mm", True), ("89.9 mm", False)])
@pytest.mark.parametrize("form", ["shoulder", "plain"])
def test_without_a_larger_diameter_that_of_the_section_counts(
    workshop: DesignFolder, form: str, diameter: str, *, held: bool
) -> None:
    """Where the smaller side of a shoulder does not pass 90 mm, the larger does not either."""
    less = without(BOXED, "rod", 'larger_diameter = "140 mm"')
    parts = instead(instead(less, "rod", '"88 mm"', f'"{diameter}"'), "rod", '"shoulder"', f'"{form}"')
    assert (("box", "piston") in on_the_rod(workshop, parts)) is held


def test_a_piston_that_passes_the_bush_holds_nothing(workshop: DesignFolder) -> None:
    """One of 240 mm goes through a bush of 240.1 mm; the flange of 241 mm and slippers of 480 mm do not."""
    parts = {**BOXED, "piston": PISTON.replace("468.75", "240"), "rod": ROD.replace("140", "241")}
    wide = instead(without(parts, "box", 'gland_bore = "91 mm"'), "box", '"90 mm"', '"240.1 mm"')
    larger = instead(wide, "crosshead", '"240 mm"', '"480 mm"')
    assert set(on_the_rod(workshop, larger)) == {("rod", "crosshead"), ("box", "crosshead")}
    forged = f'{larger["piston"]}fastening.by = "forged in one"\n'
    one_piece = on_the_rod(workshop, {**larger, "piston": forged})
    assert set(one_piece) == {("rod", "crosshead"), ("box", "crosshead")}


def test_a_gland_too_goes_on_no_rod_whose_two_ends_do_not_pass_it(workshop: DesignFolder) -> None:
    """Box and rod each must be in before the other; so must gland and rod where the box is in halves."""
    forged = {**BOXED, "piston": f'{PISTON}fastening.by = "forged in one"\n'}
    files = {f"{name}.toml": text for name, text in forged.items()}
    says = "box before rod: diameter of piston, 468.75 mm, does not pass neck bush of box, 90 mm"
    back = "rod before box: diameter at flange of rod, 140 mm, does not pass neck bush of box, 90 mm"
    check = workshop.write(files).only(RULE)
    expect_finding(check, says=says)
    assert back in check.says
    expect_finding(
        workshop.write({**files, "box.toml": f"{BOX}split = true\n"}).only(RULE), says="gland before rod"
    )


BACK = COVER.replace('of_end = "front"\n', "")


def test_a_box_without_a_cover_and_one_in_its_cover(workshop: DesignFolder) -> None:
    """149 mm stand in a hole of 150 mm, and so would 151 mm: that they do not fit is told by another rule."""
    sized = f'{BOX}outside_diameter = "149 mm"\nbore = "130 mm"\n'
    parts = {**BOXED, "box": sized, "cover": BACK.replace("40 mm", "150 mm")}
    assert ("cover", "box") not in on_the_rod(workshop, parts)
    found = on_the_rod(workshop, {**parts, "box": f'{sized}in_cover = "cover"\n'})
    assert found["cover", "box"] == (
        "outside diameter of box, 149 mm, stands in central hole of cover, 150 mm"
    )
    assert found["box", "gland"] == "bore of the gland of box, 91 mm, stands in bore of box, 130 mm"


def test_a_gland_on_the_cover_closes_the_box_only_where_none_is_on_the_box(workshop: DesignFolder) -> None:
    on_cover = GLAND.replace('"box"', '"cover"')
    parts = {**BOXED, "box": f'{BOX}in_cover = "cover"\n', "cover": BACK}
    assert ("gland", "crosshead") in on_the_rod(workshop, {**parts, "gland": on_cover})
    found = on_the_rod(workshop, {**parts, "other": on_cover})
    assert ("gland", "crosshead") in found
    assert ("other", "crosshead") not in found
    elsewhere = on_the_rod(workshop, {**BOXED, "cover": BACK, "gland": on_cover})
    assert ("gland", "crosshead") not in elsewhere


@pytest.mark.parametrize(
    ("fastener", "outside", "held"),
    [
        ("stud", "690.1 mm", True),
        ("stud", "690 mm", False),
        ("bolt", "690.1 mm", False),
        ("", "690.1 mm", False),
    ],
)
@pytest.mark.parametrize(
    ("kind", "link"), [("cylinder-cover", "closes"), ("chamber-cover", "closes"), ("pipe-flange", "of")]
)
def test_studs_go_in_before_what_is_held_over_them(
    workshop: DesignFolder, kind: str, link: str, fastener: str, outside: str, *, held: bool
) -> None:
    """On a circle of 690 mm; bolts go through afterwards."""
    cover = f'kind = "{kind}"\n{link} = "block"\noutside_diameter = "{outside}"\n'
    of = f'fastener = "{fastener}"\n' if fastener else ""
    studs = STUDS.replace('fastener = "stud"\n', of)
    found = forced(workshop, {"block": BLOCK, "cover": cover, "studs": studs})
    says = f"outside diameter of cover, {outside}, does not pass circle of studs, 690 mm"
    assert found == ({("studs", "cover"): says} if held else {})


def test_studs_that_hold_another_part_are_forced_nowhere(workshop: DesignFolder) -> None:
    """The circle lies round the liner, which has no flange over them; and studs may not say what they hold."""
    on_block = STUDS.replace('holds = "cover"', 'screwed_into = "block"')
    cover = f'{COVER}outside_diameter = "800 mm"\n'
    assert forced(workshop, {"block": BLOCK, "cover": cover, "studs": on_block}) == {}
    on_liner = STUDS.replace('"cover"', '"liner"').replace("690", "300")
    assert forced(workshop, {"block": BLOCK, "liner": LINER, "studs": on_liner}) == {}


def test_lagging_lies_over_its_cover(workshop: DesignFolder) -> None:
    cover = f'{COVER}outside_diameter = "800 mm"\n'
    lagging = 'kind = "lagging"\ncovers = "cover"\nheight = "500 mm"\n'
    found = forced(workshop, {"block": BLOCK, "cover": cover, "lagging": lagging})
    assert found == {
        ("cover", "lagging"): "height of lagging, 500 mm, lies over outside diameter of cover, 800 mm"
    }


@pytest.mark.parametrize(("opening", "held"), [("799.9 mm", True), ("800 mm", False)])
def test_a_cover_wider_than_the_opening_waits_for_the_frames(
    workshop: DesignFolder, opening: str, *, held: bool
) -> None:
    """Of 800 mm; one that names no block waits for none."""
    cover = f'{COVER}outside_diameter = "800 mm"\n'
    face = f'kind = "locating-face"\nlocks = "block"\nopening_width = "{opening}"\n'
    bolts = 'kind = "frame-fastening"\nholds = "block"\n'
    parts = {"block": BLOCK, "cover": cover, "face": face, "bolts": bolts}
    says = f"outside diameter of cover, 800 mm, does not pass opening width of face, {opening}"
    assert forced(workshop, parts) == ({("bolts", "cover"): says} if held else {})
    box = 'kind = "stuffing-box"\nin_cover = "cover"\nseals = "rod"\n'
    loose = {**BOXED, **parts, "box": box, "cover": cover.replace('closes = "block"\n', "")}
    assert ("bolts", "cover") not in forced(workshop, loose)


@pytest.mark.parametrize(
    ("part", "text", "pair", "says"),
    [
        (
            "flange",
            'kind = "pipe-flange"\nof = "pipe"\nbore = "189.9 mm"\n',
            ("flange", "pipe"),
            "collar diameter of pipe, 190 mm, does not pass bore of flange, 189.9 mm",
        ),
        ("flange", 'kind = "pipe-flange"\nof = "pipe"\nbore = "190 mm"\n', None, ""),
        (
            "ring",
            'kind = "lens-joint"\nof = "pipe"\nthickness = "60.1 mm"\n',
            ("ring", "pipe"),
            "thickness of ring, 60.1 mm, does not pass draw-back of pipe, 60 mm",
        ),
        ("ring", 'kind = "lens-joint"\nof = "pipe"\nthickness = "60 mm"\n', None, ""),
        (
            "lagging",
            'kind = "lagging"\ncovers = "pipe"\ninside_diameter = "170 mm"\n',
            ("pipe", "lagging"),
            "outside diameter of pipe, 168 mm, stands in inside diameter of lagging, 170 mm",
        ),
    ],
)
def test_what_goes_on_a_pipe(
    workshop: DesignFolder, part: str, text: str, pair: tuple[str, str] | None, says: str
) -> None:
    """Its collar is 190 mm, it is drawn back by 60 mm, and lagging lies round it whatever its size."""
    found = forced(workshop, {"block": BLOCK, "pipe": PIPE, part: text})
    assert found == ({pair: says} if pair else {})
