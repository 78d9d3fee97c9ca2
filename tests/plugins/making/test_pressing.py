"""What the rules of pressing and heating leave to others, and what concerns a block that lacks a part or a step."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, changed, expect_conforms, expect_not_applicable
from tests.plugins.making.bench import BLOCK_STEPS, WELDMENT, WELDMENT_STEPS, moved, told, write

PRESSED, IN_LINE = "making.pressed-before-finished", "making.seats-finished-in-line"
HEATED, COOLER = "making.heated-once", "making.later-steps-cooler"
Change = tuple[str, str, str]

NOT_BORED: Change = ("liner", "finish_bored_after = true", "finish_bored_after = false")
COLD_SEAT: Change = ("seat", 'entering = "block heated"', 'entering = "pressed cold"')


def without(*steps: str) -> tuple[str, ...]:
    """The list of the block without some steps."""
    return tuple(step for step in BLOCK_STEPS if step not in steps)


def put_in_at(step: str) -> Change:
    """The seat goes in at another step."""
    return ("seat", 'id = "seat"\n', f'id = "seat"\nmaking.at_step = "{step}"\n')


@pytest.mark.parametrize("bored", [True, False])
def test_a_liner_that_is_not_bored_in_its_place_goes_in_at_any_time(
    workshop: DesignFolder, bored: bool
) -> None:
    late = moved(without("match ports"), "press liners", "hone")
    check = write(workshop, *([] if bored else [NOT_BORED]), block=late).only(PRESSED, "block")
    if bored:
        told(check, says='"press liners"')
    else:
        expect_not_applicable(check, "no liner is finished in its place, and no port is matched")


def test_a_liner_is_bored_in_its_place_whether_ports_are_matched_or_not(workshop: DesignFolder) -> None:
    """With ports the liner of another block is bored: only the matching and the chamfering are judged."""
    expect_conforms(write(workshop, block=without("match ports", "chamfer ports")).only(PRESSED, "block"))
    ports = without("finish bore", "hone")
    expect_conforms(write(workshop, NOT_BORED, block=ports).only(PRESSED, "block"))
    late = moved(ports, "match ports", "chamfer ports")
    told(write(workshop, NOT_BORED, block=late).only(PRESSED, "block"), says='"match ports"')


def test_a_bore_that_is_finished_by_no_step_is_told_by_the_rule_of_the_list(workshop: DesignFolder) -> None:
    """A liner that is pressed in after honing is told, though the boring is missing."""
    unfinished = without("finish bore", "hone", "match ports")
    check = write(workshop, block=unfinished).only(PRESSED, "block")
    expect_conforms(check)
    assert 'no "finish bore", of which making.steps-complete tells' in check.says
    honed = moved(without("finish bore"), "press liners", "hone")
    told(write(workshop, block=honed).only(PRESSED, "block"), says='"press liners", comes after')


def test_a_liner_that_goes_in_at_the_step_that_bores_it_is_told(workshop: DesignFolder) -> None:
    own = ("liner", "[making]\nsteps", '[making]\nat_step = "finish bore"\nsteps')
    check = write(workshop, own).only(PRESSED, "block")
    told(check, says='"finish bore", comes no earlier than step 14, "finish bore"')


def test_seats_are_finished_where_there_are_seats_and_their_finishing_is_listed(
    workshop: DesignFolder,
) -> None:
    unlisted = write(workshop, block=without("finish seats in line")).only(IN_LINE, "block")
    expect_not_applicable(unlisted, 'no "finish seats in line", of which making.steps-complete tells')
    elsewhere = put_in_at("match ports")
    expect_conforms(write(workshop, elsewhere, block=without("press seats")).only(IN_LINE, "block"))
    late = moved(without("press seats"), "match ports", "finish seats in line")
    told(write(workshop, elsewhere, block=late).only(IN_LINE, "block"), says='"match ports"')
    folder = write(workshop)
    (folder.root / "valve.toml").unlink()
    (folder.root / "spindle.toml").unlink()
    (folder.root / "access.toml").unlink()
    (folder.root / "seat.toml").unlink()
    expect_not_applicable(folder.only(IN_LINE, "block"), "no seat is pressed into the block")
    (folder.root / "liner.toml").unlink()
    expect_not_applicable(folder.only(HEATED, "block"), "neither a liner nor a seat goes into the block")


def test_guides_are_pressed_and_reamed_where_both_are_listed(workshop: DesignFolder) -> None:
    expect_conforms(write(workshop, block=without("press guides")).only(IN_LINE, "block"))


def test_a_part_that_is_in_no_list_has_no_heating(workshop: DesignFolder) -> None:
    """Of the missing step making.steps-complete tells; the seat is judged all the same."""
    none = without("press liners", "press seats")
    check = write(workshop, block=none).only(HEATED, "block")
    expect_not_applicable(check, "no step puts anything into a hot block")
    seat = moved(without("press liners"), "press seats")
    told(
        write(workshop, block=("press seats", *seat)).only(HEATED, "block"),
        says='seat goes into a hot block at step 9, with no "heat block" before',
    )


def test_a_hot_part_of_a_list_without_heating_is_left_to_the_list(workshop: DesignFolder) -> None:
    check = write(workshop, block=without("heat block")).only(HEATED, "block")
    expect_conforms(check)
    assert 'no "heat block", of which making.steps-complete tells' in check.says


def test_a_heating_that_states_no_temperature_has_that_of_the_block(workshop: DesignFolder) -> None:
    more = '[making.details."heat block"]\nneeds = ["rough machine"]\n'
    expect_conforms(write(workshop, more=more).only(HEATED))
    told(write(workshop, more=more, heated="149.9 °C").only(HEATED), says="149.9 °C < 150 °C")


def test_only_what_goes_in_hot_has_an_order_in_a_heating(workshop: DesignFolder) -> None:
    """The seat asks for 155 °C, the liner before it for 150 °C: cold, the seat may go in after it."""
    hotter = ("seat", 'block_heated_to = "130 °C"', 'block_heated_to = "155 °C"')
    told(write(workshop, hotter, heated="160 °C").only(HEATED), says="150 °C < 155 °C")
    expect_conforms(write(workshop, hotter, COLD_SEAT, heated="160 °C").only(HEATED))


def test_parts_of_two_heatings_have_no_order(workshop: DesignFolder) -> None:
    """The liner goes in at the first heating, the hotter seat at the second; 0.4 mm hold the liner meanwhile."""
    hotter = ("seat", 'block_heated_to = "130 °C"', 'block_heated_to = "155 °C"')
    steps = list(BLOCK_STEPS)
    steps.insert(steps.index("press liners") + 1, "heat block 2")
    expect_conforms(write(workshop, hotter, block=steps, heated="160 °C").only(HEATED))


def test_a_ring_of_the_size_of_its_bore_is_loose_at_any_heating(workshop: DesignFolder) -> None:
    """At 20 °C nothing grows: of an interference of 0 nothing is left, of one of 1 µm all."""
    steps = list(BLOCK_STEPS)
    steps.insert(steps.index("press liners") + 1, "heat block 2")
    more = '[making.details."heat block 2"]\ntemperature = "20 °C"\n'
    seat = ("seat", 'block_heated_to = "130 °C"', 'block_heated_to = "20 °C"')
    for outside, outcome in (("560 mm", "finding"), ("560.001 mm", "conforms")):
        liner = ("liner", 'outside_diameter = "560.4 mm"', f'outside_diameter = "{outside}"')
        assert write(workshop, seat, liner, block=steps, more=more).only(HEATED).outcome == outcome


def test_the_coolest_relief_of_several_weldments_bounds_later_heats(workshop: DesignFolder) -> None:
    """One weldment is relieved at 570 °C, another at 550 °C: 550 − 50 = 500 °C."""
    second = changed(WELDMENT, ('id = "weldment"', 'id = "second"'), ("570 °C", "550 °C"))
    for heated, outcome in (("499.9 °C", "conforms"), ("500.1 °C", "finding")):
        folder = write(workshop, heated=heated)
        (folder.root / "second.toml").write_text(second, encoding="utf-8")
        assert folder.only(COOLER).outcome == outcome


def test_what_follows_the_last_relief_is_cooler_from_the_next_step_on(workshop: DesignFolder) -> None:
    """The last relief, at 600 °C, and a rough machining warm from it before it: only what follows is judged."""
    steps = ("rough machine 2", "stress relieve 2", *BLOCK_STEPS)
    more = '[making.details."{}"]\ntemperature = "600 °C"\n'
    for step in ("rough machine 2", "stress relieve 2"):
        expect_conforms(write(workshop, block=steps, more=more.format(step)).only(COOLER))
    told(write(workshop, block=steps, more=more.format("heat block")).only(COOLER), says="600 °C")


@pytest.mark.parametrize("step", ["paint", "lag"])
def test_paint_and_lagging_stay_below_the_design_temperature(workshop: DesignFolder, step: str) -> None:
    """The block is made for 400 °C; another step may be hotter, up to the 520 °C below its relief."""
    more = '[making.details."{}"]\ntemperature = "{}"\n'
    expect_conforms(write(workshop, more=more.format(step, "399.9 °C")).only(COOLER))
    told(write(workshop, more=more.format(step, "400.1 °C")).only(COOLER), says="400 °C")
    expect_conforms(write(workshop, more=more.format("lap valves", "400.1 °C")).only(COOLER))


def test_a_block_that_is_not_heated_after_its_relief_or_not_relieved_has_no_heat_to_stay_below(
    workshop: DesignFolder,
) -> None:
    cold = write(workshop, block=without("heat block")).only(COOLER)
    expect_not_applicable(cold, "no step after the stress relief is hot")
    raw = write(workshop, welded=moved(WELDMENT_STEPS, "stress relieve")).only(COOLER)
    expect_not_applicable(raw, "not stress relieved after welding")
