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
VALVE = (
    'kind = "poppet-valve"\nserves = "inlet"\nbeats = 2\nupper_beat.seat = "upper"\nlower_beat.seat = "lower"'
)
VALVED = {
    "block": BLOCK,
    "upper": 'kind = "valve-seat"\npressed_into = "block"\nin_bore = "upper"',
    "lower": 'kind = "valve-seat"\npressed_into = "block"\nin_bore = "lower"',
    "valve": VALVE,
    "spring": 'kind = "compression-spring"\ncloses = "valve"',
    "cover": 'kind = "chamber-cover"\ncloses = "block"\nseat_bore = "upper"',
    "pocket": 'kind = "steam-passage"\nin_block = "block"\nvalve = "valve"\nplace = "valve pocket"',
}


def design(workshop: DesignFolder, parts: dict[str, str]) -> DesignFolder:
    files = {f"{name}.toml": f'id = "{name}"\n{text}\n' for name, text in parts.items() if text}
    return workshop.write(files, settings=FOR_REVIEW)


@pytest.mark.parametrize(
    ("parts", "outcome"),
    [
        ({}, "conforms"),  # by its lower seat bore too it may be named
        ({"cover": VALVED["cover"].replace("upper", "lower")}, "conforms"),
        ({"cover": 'kind = "chamber-cover"\nover = "valve"'}, "conforms"),
        ({"cover": 'kind = "chamber-cover"\ncloses = "block"'}, "finding"),
        ({"cover": 'kind = "chamber-cover"\ncloses = "other"\nover = "valve"'}, "finding"),
        ({"other": "", "cover": 'kind = "chamber-cover"\ncloses = "block"\nover = "valve"'}, "conforms"),
        ({"upper": 'kind = "valve-seat"\npressed_into = "block"'}, "finding"),
        ({"upper": 'kind = "valve-seat"\nin_bore = "upper"'}, "finding"),
        ({"valve": VALVE.replace('\nupper_beat.seat = "upper"', "")}, "finding"),
    ],
)
def test_the_cover_over_a_chamber(workshop: DesignFolder, parts: dict[str, str], outcome: str) -> None:
    """It names the valve, or a seat bore in which the valve sits, and is of the valve's block."""
    made = {**VALVED, "other": 'kind = "cylinder-block"', **parts}
    check = design(workshop, made).only("valve.chamber-closed", "valve")
    assert check.outcome == outcome, check.says


@pytest.mark.parametrize(
    ("valve", "outcome"),
    [
        (VALVE, "conforms"),
        (VALVE.replace('\nlower_beat.seat = "lower"', ""), "finding"),
        (VALVE.replace('\nupper_beat.seat = "upper"', ""), "finding"),
        (VALVE.replace("beats = 2", "beats = 1").replace('\nlower_beat.seat = "lower"', ""), "conforms"),
        (VALVE.replace("beats = 2\n", "").replace('\nlower_beat.seat = "lower"', ""), "conforms"),
        (VALVE.replace("beats = 2", "beats = 1").replace('\nupper_beat.seat = "upper"', ""), "finding"),
    ],
)
def test_each_beat_has_its_seat(workshop: DesignFolder, valve: str, outcome: str) -> None:
    assert (
        design(workshop, {**VALVED, "valve": valve}).only("valve.has-its-seats", "valve").outcome == outcome
    )


@pytest.mark.parametrize(
    ("parts", "outcome"),
    [
        ({}, "conforms"),
        ({"spring": ""}, "finding"),
        ({"second": VALVED["spring"]}, "finding"),
        ({"second": 'kind = "compression-spring"\ncloses = "valve"\nnested_in = "spring"'}, "conforms"),
        # the outer spring says that it shuts another valve, and only the inner one is of this
        (
            {
                "spring": 'kind = "compression-spring"\ncloses = "other-valve"',
                "other-valve": 'kind = "poppet-valve"',
                "second": 'kind = "compression-spring"\ncloses = "valve"\nnested_in = "spring"',
            },
            "finding",
        ),
    ],
)
def test_a_valve_has_one_spring_or_one_nest(
    workshop: DesignFolder, parts: dict[str, str], outcome: str
) -> None:
    check = design(workshop, {**VALVED, **parts}).only("valve.has-springs", "valve")
    assert check.outcome == outcome, check.says


IN_TURN = {
    **VALVED,
    "pocket": 'kind = "steam-passage"\nin_block = "block"\nvalve = "other-valve"\nplace = "port"',
    "other-valve": 'kind = "poppet-valve"\nserves = "inlet"',
}


@pytest.mark.parametrize(
    ("parts", "outcome"),
    [
        ({}, "conforms"),
        ({"pocket": IN_TURN["pocket"].replace('"port"', '"valve pocket"')}, "finding"),
        ({"pocket": IN_TURN["pocket"].replace('in_block = "block"\n', "")}, "finding"),
        ({"pocket": IN_TURN["pocket"].replace('valve = "other-valve"\n', "")}, "finding"),
        ({"other-valve": 'kind = "poppet-valve"\nserves = "exhaust"'}, "finding"),
        ({"upper": 'kind = "valve-seat"', "lower": 'kind = "valve-seat"'}, "finding"),
        ({"upper": 'kind = "valve-seat"'}, "conforms"),  # the lower seat says which block it is
    ],
)
def test_valves_that_open_in_turn_share_a_passage(
    workshop: DesignFolder, parts: dict[str, str], outcome: str
) -> None:
    """One that has no passage of its own is at that of another valve of its service; a pocket is of one valve alone."""
    check = design(workshop, {**IN_TURN, **parts}).only("valve.on-its-path", "valve")
    assert check.outcome == outcome, check.says


@pytest.mark.parametrize(
    ("carries", "serves", "outcome"),
    [
        ("live steam", "inlet", "conforms"),
        ("exhaust steam", "inlet", "finding"),
        ("exhaust steam", "exhaust", "conforms"),
        ("live steam", "exhaust", "finding"),
        ("", "inlet", "conforms"),
        ("live steam", "", "conforms"),
    ],
)
def test_the_passage_of_a_valve_carries_its_steam(
    workshop: DesignFolder, carries: str, serves: str, outcome: str
) -> None:
    stated = f'\ncarries = "{carries}"' if carries else ""
    parts = {
        "pocket": VALVED["pocket"] + stated,
        "valve": VALVE.replace('serves = "inlet"\n', f'serves = "{serves}"\n' if serves else ""),
    }
    check = design(workshop, {**VALVED, **parts}).only("valve.on-its-path", "valve")
    assert check.outcome == outcome, check.says


PISTON = 'kind = "piston"\nruns_in = "liner"\n[grooves.first]\ntakes = "ring"'
RUNNING = {
    "block": 'kind = "cylinder-block"\n[bores.main]',
    "liner": 'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "main"',
    "piston": PISTON,
    "ring": 'kind = "piston-ring"\nruns_in = "liner"',
    "rod": 'kind = "piston-rod"\ncarries = "piston"',
    "cover": 'kind = "cylinder-cover"\ncloses = "block"',
    "box": 'kind = "stuffing-box"\nin_cover = "cover"\nseals = "rod"',
    "other": 'kind = "cylinder-block"',
}


@pytest.mark.parametrize(
    ("parts", "outcome"),
    [
        ({}, "conforms"),
        ({"piston": PISTON.replace('takes = "ring"', "")}, "finding"),
        ({"loose": RUNNING["ring"]}, "finding"),
        ({"piston": PISTON.replace('runs_in = "liner"\n', ""), "loose": RUNNING["ring"]}, "conforms"),
        # two pistons run in the liner: which of them lacks the ring is not known
        ({"second": 'kind = "piston"\nruns_in = "liner"', "loose": RUNNING["ring"]}, "conforms"),
    ],
)
def test_each_ring_of_a_liner_is_in_a_groove(
    workshop: DesignFolder, parts: dict[str, str], outcome: str
) -> None:
    check = design(workshop, {**RUNNING, **parts}).only("groove.one-ring", "piston")
    assert check.outcome == outcome, check.says


BOX = RUNNING["box"]


@pytest.mark.parametrize(
    ("parts", "outcome"),
    [
        ({}, "conforms"),
        ({"box": ""}, "finding"),
        ({"second": BOX}, "conforms"),  # two in one cover are told of the cover
        ({"cover": 'kind = "cylinder-cover"\ncloses = "other"'}, "finding"),
        ({"cover": 'kind = "cylinder-cover"'}, "conforms"),
        # where no link leads the rod to its block, no cover is that of another
        ({"cover": 'kind = "cylinder-cover"\ncloses = "other"', "rod": 'kind = "piston-rod"'}, "conforms"),
        (
            {
                "cover": 'kind = "cylinder-cover"\ncloses = "other"',
                "piston": PISTON.replace('runs_in = "liner"\n', ""),
            },
            "conforms",
        ),
        (
            {
                "cover": 'kind = "cylinder-cover"\ncloses = "other"',
                "liner": RUNNING["liner"].replace('housed_in = "block"\n', ""),
            },
            "conforms",
        ),
        ({"rod": RUNNING["rod"] + "\ntail_rod = true"}, "finding"),
        ({"rod": RUNNING["rod"] + "\ntail_rod = false"}, "conforms"),
        (
            {
                "rod": RUNNING["rod"] + "\ntail_rod = true",
                "front": RUNNING["cover"],
                "second": BOX.replace('"cover"', '"front"'),
            },
            "conforms",
        ),
    ],
)
def test_a_rod_is_sealed_in_each_cover_that_it_passes(
    workshop: DesignFolder, parts: dict[str, str], outcome: str
) -> None:
    check = design(workshop, {**RUNNING, **parts}).only("rod.sealed-at-its-cover", "rod")
    assert check.outcome == outcome, check.says


BARE = {
    "block": 'kind = "cylinder-block"\n[bores.main]\nlined = false',
    "ring": 'kind = "piston-ring"\nbears_on = "block"',
}


def test_an_unlined_bore_takes_rings_and_no_liner(workshop: DesignFolder) -> None:
    expect_conforms(design(workshop, BARE).only("bore.one-liner", "block"))
    without = {"block": BARE["block"], "ring": 'kind = "piston-ring"'}
    expect_finding(design(workshop, without).only("bore.one-liner", "block"))
    check = design(workshop, {**BARE, "liner": RUNNING["liner"]}).only("bore.one-liner", "block")
    expect_finding(check, says="it is unlined, and liner (liner.toml) is drawn for it")


def test_a_liner_for_an_unlined_bore_is_wrong_in_a_draft_too(workshop: DesignFolder) -> None:
    """Its rings need not be drawn yet; a part that belongs nowhere is told at every stage."""
    parts = {"block": BARE["block"], "liner": RUNNING["liner"]}
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


BREATHING = {
    "block": BLOCK.replace("[ends.front]", '[bores.main]\n[ends.front]\nside = "front"'),
    "upper": VALVED["upper"],
    "lower": VALVED["lower"],
    "valve": f"{VALVE}\nlifts_drifting = true",
}
WAY = 'kind = "steam-passage"\nin_block = "block"\ncylinder_bore = "main"\nplace = "breathing way"'


@pytest.mark.parametrize(
    ("parts", "outcome"),
    [
        ({}, "conforms"),
        ({"valve": VALVE}, "finding"),
        ({"valve": f"{VALVE}\nlifts_drifting = false"}, "finding"),
        ({"valve": f"{VALVE}\nlifts_drifting = true\nreversal_hurts = true"}, "finding"),
        ({"valve": f"{VALVE}\nlifts_drifting = true\nreversal_hurts = false"}, "conforms"),
        ({"valve": VALVE, "way": WAY}, "conforms"),
        ({"valve": VALVE, "way": WAY.replace("breathing way", "port")}, "finding"),
        # a valve at one end of two lets in nothing at the other
        ({"block": BREATHING["block"] + '\n[ends.back]\nside = "back"'}, "finding"),
        ({"block": BREATHING["block"] + '\n[ends.back]\nside = "back"', "way": WAY}, "conforms"),
    ],
)
def test_a_cylinder_breathes_while_it_drifts(
    workshop: DesignFolder, parts: dict[str, str], outcome: str
) -> None:
    check = design(workshop, {**BREATHING, **parts}).only("cylinder.breathing-way", "block")
    assert check.outcome == outcome, check.says
