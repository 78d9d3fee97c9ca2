"""Parts of a small engine that name their places in each of the ways that they may, and what is left without.

The blocks and parts are drawn as far as one rule looks at them.
"""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, expect_conforms, expect_finding

FOR_REVIEW = '[works]\nstage = "for-review"\n'
BLOCK = (
    'kind = "cylinder-block"\n[ends.front]\n[seat_bores.upper]\nserves = "inlet"\nend = "front"\n'
    '[seat_bores.lower]\nserves = "inlet"\nend = "front"'
)
VALVED = {
    "block": BLOCK,
    "upper": 'kind = "valve-seat"\npressed_into = "block"\nin_bore = "upper"',
    "lower": 'kind = "valve-seat"\npressed_into = "block"\nin_bore = "lower"',
    "valve": 'kind = "poppet-valve"\nserves = "inlet"\nupper_beat.seat = "upper"\nlower_beat.seat = "lower"',
}


def design(workshop: DesignFolder, parts: dict[str, str]) -> DesignFolder:
    files = {f"{name}.toml": f'id = "{name}"\n{text}\n' for name, text in parts.items() if text}
    return workshop.write(files, settings=FOR_REVIEW)


LINER = 'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "main"'
BARE = {
    "block": 'kind = "cylinder-block"\n[bores.main]\nlined = false',
    "ring": 'kind = "piston-ring"\nbears_on = "block"',
}


def test_a_liner_for_an_unlined_bore_is_wrong_in_a_draft_too(workshop: DesignFolder) -> None:
    """Its rings need not be drawn yet; a part that belongs nowhere is told at every stage."""
    parts = {"block": BARE["block"], "liner": LINER}
    drafted = design(workshop, parts).write({}, settings=FOR_REVIEW.replace("for-review", "draft"))
    expect_finding(drafted.only("bore.one-liner", "block"), says="it is unlined, and liner")


#: Two cylinders in one block, each with a port at its front that its own liner matches.
PORTED = {
    "block": 'kind = "cylinder-block"\n'
    + "".join(
        f'[bores.{one}]\n[ends.{one}]\nof_bore = "{one}"\nside = "front"\n[ports.{one}]\nof_end = "{one}"\n'
        for one in ("left", "right")
    ),
    **{
        f"liner-{one}": 'kind = "cylinder-liner"\nhoused_in = "block"\n'
        f'in_bore = "{one}"\n[ports.front]\nmatches = "{one}"'
        for one in ("left", "right")
    },
}


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("", "", ""),
        # the liner of the other bore has both openings
        (
            'in_bore = "right"\n[ports.front]\nmatches = "right"',
            'in_bore = "right"',
            "port right wants a port of the liner: none is there",
        ),
        # an end that names no bore, and a port that names no end: any liner of the block may match it
        ('of_bore = "right"\n', "", ""),
        ('of_end = "right"\n', "", ""),
    ],
)
def test_a_port_is_matched_by_the_liner_of_its_own_bore(
    workshop: DesignFolder, old: str, new: str, told: str
) -> None:
    parts = {name: text.replace(old, new) if old else text for name, text in PORTED.items()}
    if told:
        parts["liner-left"] += '\n[ports.second]\nmatches = "right"'
    check = design(workshop, parts).only("port.one-opening", "block")
    if told:
        expect_finding(check, says=told)
    else:
        expect_conforms(check)


def test_a_port_of_a_liner_says_which_of_the_block_it_matches(workshop: DesignFolder) -> None:
    loose = {**PORTED, "liner-left": PORTED["liner-left"] + '\n[ports.second]\nheight = "40 mm"'}
    check = design(workshop, loose).only("port.one-opening", "block")
    expect_finding(check, says="port second of liner-left wants a port of the block: none is there")


def test_a_cam_wants_a_shaft(workshop: DesignFolder) -> None:
    parts = {"cam": 'kind = "cam"\nturns_on = "shaft"', "shaft": 'kind = "shaft"'}
    expect_conforms(design(workshop, parts).only("cam.on-one-shaft", "cam"))
    check = design(workshop, {**parts, "cam": 'kind = "cam"'}).only("cam.on-one-shaft", "cam")
    expect_finding(check, says="cam wants a shaft: none is there")


@pytest.mark.parametrize(
    ("boxes", "says"),
    [
        ({"box": ""}, ""),  # a box that names no end stands for all
        ({"box": '\nof_end = "front"'}, ""),
        ({"box": '\nof_end = "back"'}, "end front wants a cam box: none is there"),
        ({"box": "", "second": '\nof_end = "front"'}, "end front is filled twice"),
    ],
)
def test_each_end_with_valves_has_its_cam_box(
    workshop: DesignFolder, boxes: dict[str, str], says: str
) -> None:
    block = VALVED["block"].replace("[ends.front]", "[ends.front]\n[ends.back]")
    made = {name: f'kind = "cam-box"\nmounted_on = "block"{end}' for name, end in boxes.items()}
    check = design(workshop, {**VALVED, "block": block, **made}).only("end.its-cam-box", "block")
    if says:
        expect_finding(check, says=says)
    else:
        expect_conforms(check)


def test_a_cover_of_a_third_block_is_over_no_valve_of_two(workshop: DesignFolder) -> None:
    parts = {
        **VALVED,
        "other": VALVED["block"],
        "third": VALVED["block"],
        "lower": VALVED["lower"].replace('"block"', '"other"'),
        "cover": 'kind = "chamber-cover"\ncloses = "third"\nover = "valve"',
    }
    check = design(workshop, parts).only("valve.chamber-closed", "valve")
    expect_finding(check, says="cover closes third, and the valve is in block")


@pytest.mark.parametrize(("lined", "outcome"), [("", "finding"), ("lined = true", "finding")])
def test_a_bore_that_does_not_say_that_it_is_bare_wants_its_liner(
    workshop: DesignFolder, lined: str, outcome: str
) -> None:
    block = BARE["block"].replace("lined = false", lined)
    assert design(workshop, {**BARE, "block": block}).only("bore.one-liner", "block").outcome == outcome
