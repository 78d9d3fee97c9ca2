"""All that a part names is of one block."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_finding

RULE = "part.of-one-block"
#: One cylinder's parts, of each kind that names more than one; "one" is their block.
FILES = {
    "one.toml": 'kind = "cylinder-block"',
    "two.toml": 'kind = "cylinder-block"',
    "liner-two.toml": 'kind = "cylinder-liner"\nhoused_in = "two"',
    "cover-two.toml": 'kind = "cylinder-cover"\ncloses = "two"',
    "box-two.toml": 'kind = "cam-box"\nmounted_on = "two"',
    "passage-two.toml": 'kind = "steam-passage"\nin_block = "two"',
    "seat-two.toml": 'kind = "valve-seat"\npressed_into = "two"',
    "valve-two.toml": 'kind = "poppet-valve"\nupper_beat.seat = "seat-two"',
    "crosshead-two.toml": 'kind = "crosshead"',
    "spring-two.toml": 'kind = "compression-spring"\ncloses = "valve-two"',
    "ring-two.toml": 'kind = "piston-ring"\nruns_in = "liner-two"',
    "weldment-two.toml": 'kind = "weldment"\nmakes = "two"',
    "chain-two.toml": 'kind = "dimension-chain"\nchain.rod.of = "two"',
    "cam-two.toml": 'kind = "cam"\nlifts = "tappet-two"',
    "tappet-two.toml": 'kind = "tappet"\ncarried_in = "box-two"',
    "seat.toml": 'kind = "valve-seat"\npressed_into = "one"',
    "lower.toml": 'kind = "valve-seat"\npressed_into = "one"',
    "liner.toml": 'kind = "cylinder-liner"\nhoused_in = "one"',
    "cover.toml": 'kind = "cylinder-cover"\ncloses = "one"',
    "box.toml": 'kind = "cam-box"\nmounted_on = "one"',
    "passage.toml": 'kind = "steam-passage"\nin_block = "one"',
    "spindle.toml": 'kind = "valve-spindle"\nmoves = "valve"',
    "rod.toml": 'kind = "piston-rod"\ncarries = "piston"',
    "crosshead.toml": 'kind = "crosshead"\non_rod = "rod"',
    "weldment.toml": 'kind = "weldment"\nmakes = "one"',
    "cam.toml": 'kind = "cam"\nlifts = "tappet"',
    "outer.toml": 'kind = "compression-spring"\ncloses = "valve"',
    # those that are judged
    "valve.toml": 'kind = "poppet-valve"\nupper_beat.seat = "seat"\nlower_beat.seat = "lower"',
    "rocker.toml": 'kind = "rocker"\nworks = "spindle"\ncarried_in = "box"',
    "tappet.toml": 'kind = "tappet"\nworks = "rocker"\ncarried_in = "box"',
    "inner.toml": 'kind = "compression-spring"\ncloses = "valve"\nnested_in = "outer"',
    "lid.toml": 'kind = "chamber-cover"\ncloses = "one"\nover = "valve"',
    "ring.toml": 'kind = "piston-ring"\nruns_in = "liner"\nbears_on = "one"',
    "piston.toml": 'kind = "piston"\nruns_in = "liner"\ngrooves.first.takes = "ring"',
    "packing.toml": 'kind = "stuffing-box"\nseals = "rod"\nin_cover = "cover"',
    "cage.toml": 'kind = "valve-cage"\nsurrounds = "valve"\nheld_by = "lid"',
    "studs.toml": 'kind = "bolted-joint"\nholds = "cover"\nscrewed_into = "one"',
    "bar.toml": 'kind = "slide-bar"\nguides = "crosshead"\nsupports.front.part = "cover"',
    "wall.toml": 'kind = "partition"\nlive_side = "passage"\nexhaust_side = "passage"',
    "plan.toml": 'kind = "access-plan"\nserves = "one"\nweldment = "weldment"',
    "space.toml": 'kind = "envelope"\naround = "one"\npoints.cover.of = "cover"',
    "front.toml": 'kind = "cylinder-cover"\ncloses = "one"\nbears.stop.stop = "valve"',
    "press.toml": 'kind = "fit"\nhole.of = "one"\nshaft.of = "liner"',
    "chain.toml": 'kind = "dimension-chain"\nchain.cover.of = "cover"',
    "room.toml": 'kind = "envelope"\naround = "one"\ngaps.rod.chain = "chain"',
    "gear.toml": 'kind = "valve-gear"\nin_block = "one"\nnotches.full.inlet_front.cam = "cam"',
}
#: Each judged part with one of its links, and what of the other block it names instead.
CHANGES = [
    ("valve", 'lower_beat.seat = "lower"', "seat-two"),
    ("rocker", 'carried_in = "box"', "box-two"),
    ("tappet", 'carried_in = "box"', "box-two"),
    ("inner", 'nested_in = "outer"', "spring-two"),
    ("lid", 'over = "valve"', "valve-two"),
    ("ring", 'bears_on = "one"', "two"),
    ("piston", 'grooves.first.takes = "ring"', "ring-two"),
    ("packing", 'in_cover = "cover"', "cover-two"),
    ("cage", 'surrounds = "valve"', "valve-two"),
    ("studs", 'screwed_into = "one"', "two"),
    ("bar", 'supports.front.part = "cover"', "cover-two"),
    ("wall", 'exhaust_side = "passage"', "passage-two"),
    ("plan", 'weldment = "weldment"', "weldment-two"),
    ("gear", 'notches.full.inlet_front.cam = "cam"', "cam-two"),
    ("space", 'points.cover.of = "cover"', "cover-two"),
    ("room", 'gaps.rod.chain = "chain"', "chain-two"),
    ("front", 'bears.stop.stop = "valve"', "valve-two"),
    ("press", 'shaft.of = "liner"', "liner-two"),
    ("press", 'hole.of = "one"', "two"),
]
OTHER, FINE = ("finding", Grade.NONCONFORMITY), ("conforms", None)


@pytest.mark.parametrize("part", dict.fromkeys(name for name, _, _ in CHANGES))
def test_all_that_it_names_is_of_one_block(workshop: DesignFolder, part: str) -> None:
    found = workshop.write(FILES).only(RULE, part)
    assert (found.outcome, found.grade) == FINE


@pytest.mark.parametrize(("part", "link", "instead"), CHANGES)
def test_one_link_leads_to_the_other_block(
    workshop: DesignFolder, part: str, link: str, instead: str
) -> None:
    key = link.partition(" ")[0]
    found = workshop.write(FILES).replace(f"{part}.toml", link, f'{key} = "{instead}"').only(RULE, part)
    assert (found.outcome, found.grade) == OTHER


def test_the_link_that_leads_elsewhere_is_named(workshop: DesignFolder) -> None:
    workshop.write(FILES).replace("tappet.toml", '"box"', '"box-two"')
    expect_finding(
        workshop.only(RULE, "tappet"),
        grade=Grade.NONCONFORMITY,
        says='carried in "box-two" (tappet.toml:3, no drawing number) does not agree with cylinder block one, '
        "to which this leads: works",
    )


@pytest.mark.parametrize("part", ["gear", "valve"])
def test_a_part_with_one_way_or_none_has_nothing_to_compare(workshop: DesignFolder, part: str) -> None:
    files = FILES | {
        "valve.toml": 'kind = "poppet-valve"',
        "front.toml": 'kind = "cylinder-cover"\ncloses = "one"\nbears.stop.stop = "valve"',
        "press.toml": 'kind = "fit"\nhole.of = "one"\nshaft.of = "liner"',
        "chain.toml": 'kind = "dimension-chain"\nchain.cover.of = "cover"',
        "room.toml": 'kind = "envelope"\naround = "one"\ngaps.rod.chain = "chain"',
        "gear.toml": 'kind = "valve-gear"\nin_block = "one"',
    }
    assert workshop.write(files).only(RULE, part).outcome == "not applicable"


@pytest.mark.parametrize(
    "text",
    [
        'kind = "bolted-joint"\nholds = "two"\nbolted_to = "one"',
        'kind = "fit"\nhole.of = "two"\nshaft.of = "one"',
    ],
    ids=["joint", "fit"],
)
def test_two_blocks_may_be_joined_to_each_other(workshop: DesignFolder, text: str) -> None:
    """Cylinders between the frames are cast one by one and bolted together on the middle line: common practice."""
    found = workshop.write(FILES | {"between.toml": text}).only(RULE, "between")
    assert found.outcome == "not applicable"


def test_what_moves_beside_a_block_may_be_of_another(workshop: DesignFolder) -> None:
    """The crosshead of an inside cylinder passes an outside one, whose envelope has a gap to it: common practice."""
    files = FILES | {
        "crosshead-two.toml": 'kind = "crosshead"\non_rod = "rod-two"',
        "rod-two.toml": 'kind = "piston-rod"\ncarries = "piston-two"',
        "piston-two.toml": 'kind = "piston"\nruns_in = "liner-two"',
        "room.toml": f'{FILES["room.toml"]}\ngaps.beside.to = "crosshead-two"',
    }
    found = workshop.write(files).only(RULE, "room")
    assert (found.outcome, found.grade) == FINE
