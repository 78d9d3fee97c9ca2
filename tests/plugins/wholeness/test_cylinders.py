"""The cylinders of a block: what each place wants, what is in it too often, and what is of another end or side."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

NO_PLACE = "not applicable: it has no such place"
#: One cylinder with both ends, and each end with its seat bores, one for each valve.
BLOCK = 'kind = "cylinder-block"\n[bores.main]\n' + "".join(
    f'[ends.{end}]\nside = "{end}"\n[ports.{end}]\nof_end = "{end}"\n'
    + "".join(
        f'[seat_bores.{serves}-{end}]\nend = "{end}"\nserves = "{serves}"\n'
        for serves in ("inlet", "exhaust")
    )
    for end in ("front", "back")
)
SEATS = {
    f"seat-{serves}-{end}": f'kind = "valve-seat"\npressed_into = "block"\nin_bore = "{serves}-{end}"'
    for serves in ("inlet", "exhaust")
    for end in ("front", "back")
}
VALVES = {
    name.replace("seat", "valve"): f'kind = "poppet-valve"\nupper_beat.seat = "{name}"' for name in SEATS
}
LINER = 'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "main"'
PISTON = 'kind = "piston"\nruns_in = "liner"'
COVERS = {end: f'kind = "cylinder-cover"\ncloses = "block"\nend = "{end}"' for end in ("front", "back")}
PARTS = {"block": BLOCK, "liner": LINER, "piston": PISTON, **SEATS, **VALVES, **COVERS}


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"liner": ""}, "bore main wants a cylinder liner: none is there"),
        (
            {"second": LINER},
            "bore main is filled twice (cylinder liner): liner (liner.toml), second (second.toml)",
        ),
        (
            {"liner": 'kind = "cylinder-liner"\nhoused_in = "block"'},
            "bore main wants a cylinder liner: none is there",
        ),
        # one that names no bore, in a block that has one bore
        (
            {"second": 'kind = "cylinder-liner"\nhoused_in = "block"'},
            "bore main is filled twice (cylinder liner): liner (liner.toml), second (second.toml)",
        ),
    ],
)
def test_a_bore_takes_one_liner(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**PARTS, "piston": "", **parts}, "bore.one-liner", "block") == says


def test_a_liner_that_names_no_bore_of_two_is_in_neither(workshop: DesignFolder) -> None:
    block = 'kind = "cylinder-block"\n[bores.main]\n[bores.other]'
    parts = {"block": block, "a": LINER, "b": LINER.replace("main", "other"), "c": LINER.split("in_bore")[0]}
    assert told(workshop, parts, "bore.one-liner", "block") == ""


UNLISTED = 'kind = "cylinder-block"'
TWO_LINERS = "bore main is filled twice (cylinder liner): liner (liner.toml), second (second.toml)"
NOT_LISTED = "not applicable: a draft: 1 still to be drawn, listed under block"


@pytest.mark.parametrize(
    ("second", "says"),
    [
        (LINER, TWO_LINERS),
        (LINER.replace("main", "other"), NOT_LISTED),
        (LINER.replace('in_bore = "main"', ""), NOT_LISTED),
        ("", NOT_LISTED),
    ],
)
def test_two_liners_of_a_bore_that_no_block_lists_yet(workshop: DesignFolder, second: str, says: str) -> None:
    parts = {"block": UNLISTED, "liner": LINER, "second": second}
    assert told(workshop, parts, "bore.one-liner", "block", "draft") == says


@pytest.mark.parametrize(
    ("second", "says"),
    [
        (
            SEATS["seat-inlet-front"],
            "seat bore inlet-front is filled twice (valve seat): first (first.toml), ",
        ),
        (SEATS["seat-exhaust-front"], NOT_LISTED),
    ],
)
def test_two_seats_of_a_bore_that_no_block_lists_yet(workshop: DesignFolder, second: str, says: str) -> None:
    parts = {"block": UNLISTED, "first": SEATS["seat-inlet-front"], "second": second}
    assert told(workshop, parts, "seat-bore.one-seat", "block", "draft").startswith(says)


@pytest.mark.parametrize(
    ("second", "says"),
    [
        ("front", "end front is filled twice (cylinder cover): first (first.toml), second (second.toml)"),
        ("back", "not applicable: it has no such place"),
    ],
)
def test_two_covers_of_an_end_that_no_block_lists_yet(workshop: DesignFolder, second: str, says: str) -> None:
    cover = 'kind = "cylinder-cover"\ncloses = "block"\nof_end = "{}"'
    parts = {"block": UNLISTED, "first": cover.format("front"), "second": cover.format(second)}
    assert told(workshop, parts, "end.one-cover", "block", "draft") == says


@pytest.mark.parametrize(
    ("second", "says"),
    [
        (PISTON, "liner is filled twice (piston): piston (piston.toml), second (second.toml)"),
        ("", "not applicable: it has no such place"),
    ],
)
def test_two_pistons_of_a_block_that_lists_no_bore_yet(
    workshop: DesignFolder, second: str, says: str
) -> None:
    parts = {"block": UNLISTED, "liner": LINER, "piston": PISTON, "second": second}
    assert told(workshop, parts, "bore.one-piston", "block", "draft") == says


BARE = {
    "block": 'kind = "cylinder-block"\n[bores.main]\nlined = false',
    "ring": 'kind = "piston-ring"\nbears_on = "block"',
}


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        (
            {"block": BARE["block"].replace("false", "true")},
            "bore main wants a cylinder liner: none is there",
        ),
        ({"second": BARE["ring"]}, ""),  # of rings there may be several
        ({"ring": ""}, "bore main wants a piston ring: none is there"),
        ({"liner": LINER}, "bore main: it is unlined, and liner (liner.toml) is drawn for it"),
        ({"liner": LINER, "ring": ""}, "bore main: it is unlined, and liner (liner.toml) is drawn for it"),
    ],
)
def test_an_unlined_bore_takes_rings(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**BARE, **parts}, "bore.one-liner", "block") == says


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("", "", ""),
        ('side = "front"\n', "", "front of bore main wants a front end: none is there"),
        ('side = "back"\n', "", "back of bore main wants a back end: none is there"),
        (
            'side = "back"',
            'side = "front"',
            "front of bore main is filled twice (front end): end front, end back",
        ),
        # the ends of the other bore are no ends of this one
        (
            '[bores.main]\n[ends.front]\nside = "front"\n',
            '[bores.main]\n[bores.other]\n[ends.front]\nside = "front"\nof_bore = "other"\n',
            "front of bore main wants a front end: none is there",
        ),
    ],
)
def test_a_bore_has_an_end_on_each_side(workshop: DesignFolder, old: str, new: str, says: str) -> None:
    block = BLOCK.replace("[ends.back]\n", '[ends.back]\nof_bore = "main"\n')
    parts = {"block": block.replace(old, new, 1) if old else block}
    assert told(workshop, parts, "bore.two-ends", "block") == says


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"piston": ""}, "bore main wants a piston: none is there"),
        (
            {"second": PISTON},
            "bore main is filled twice (piston): piston (piston.toml), second (second.toml)",
        ),
        ({"liner": "", "piston": ""}, NO_PLACE),  # the liner is told of
    ],
)
def test_one_piston_runs_in_a_bore(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**PARTS, **parts}, "bore.one-piston", "block") == says


FRONT = COVERS["front"]


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"front": ""}, "end front wants a cylinder cover: none is there"),
        (
            {"second": FRONT},
            "end front is filled twice (cylinder cover): front (front.toml), second (second.toml)",
        ),
        ({"front": FRONT.replace("end =", "of_end =")}, ""),  # it names the end, and not the side
        ({"front": FRONT + '\nof_end = "front"'}, ""),
        (
            {"front": FRONT.replace('end = "front"', 'end = "back"\nof_end = "front"')},
            "end front: front is a back cover, and the end is at the front",
        ),
        ({"front": FRONT.replace('\nend = "front"', "")}, "end front wants a cylinder cover: none is there"),
        # an end that does not say its side is closed by the cover that names it, of whatever side that is
        (
            {"block": BLOCK.replace('side = "front"\n', ""), "front": FRONT + '\nof_end = "front"'},
            "",
        ),
        ({"block": BLOCK.replace('side = "front"\n', "")}, "end front wants a cylinder cover: none is there"),
        # of two ends on one side a cover that names none closes neither
        (
            {"block": BLOCK + '[ends.third]\nside = "front"', "third": FRONT + '\nof_end = "third"'},
            "end front wants a cylinder cover: none is there",
        ),
        (
            {
                "block": BLOCK + '[ends.third]\nside = "front"',
                "third": FRONT + '\nof_end = "third"',
                "front": FRONT + '\nof_end = "front"',
            },
            "",
        ),
    ],
)
def test_one_cover_closes_an_end(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**PARTS, **parts}, "end.one-cover", "block") == says


LOWER = 'kind = "poppet-valve"\nlower_beat.seat = "seat-inlet-front"'


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        *(
            ({name: ""}, f"end {name.split('-')[2]} wants an {name.split('-')[1]} valve: none is there")
            for name in VALVES
        ),
        (
            {"second": VALVES["valve-inlet-front"]},
            "end front is filled twice (inlet valve): second (second.toml), valve-inlet-front (valve-inlet-front.toml)",
        ),
        ({"valve-inlet-front": LOWER}, ""),  # a seat of its lower beat alone says where it is
        # where both seats say where it is, it is at the upper one
        ({"valve-inlet-front": VALVES["valve-inlet-front"] + '\nlower_beat.seat = "seat-inlet-back"'}, ""),
        (
            {"seat-inlet-front": SEATS["seat-inlet-front"].replace('"inlet-front"', '"exhaust-front"')},
            "end front wants an inlet valve: none is there",
        ),
    ],
)
def test_an_end_has_an_inlet_and_an_exhaust_valve(
    workshop: DesignFolder, parts: dict[str, str], says: str
) -> None:
    assert told(workshop, {**PARTS, **parts}, "end.its-valves", "block") == says


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("", "", ""),
        ('[ports.back]\nof_end = "back"', "", "end back wants a port: none is there"),
        ('of_end = "back"', 'of_end = "front"', "end back wants a port: none is there"),
        ('of_end = "front"', "blanked = false", "end front wants a port: none is there"),
        ('of_end = "front"', 'of_end = "front"\nblanked = true', "end front wants a port: none is there"),
        ('of_end = "front"', 'of_end = "front"\nblanked = false', ""),
        ("[ports.back]", '[ports.third]\nof_end = "front"\n[ports.back]', ""),  # an end may have several
    ],
)
def test_an_open_port_leads_into_each_end(workshop: DesignFolder, old: str, new: str, says: str) -> None:
    block = BLOCK.replace(old, new) if old else BLOCK
    assert told(workshop, {"block": block}, "end.has-ports", "block") == says


#: Two cylinders in one block, each with a port at its front that its own liner matches.
PORTED = {
    "block": 'kind = "cylinder-block"\n'
    + "".join(
        f'[bores.{one}]\n[ends.{one}]\nof_bore = "{one}"\nside = "front"\n[ports.{one}]\nof_end = "{one}"\n'
        for one in ("left", "right")
    ),
    **{
        one: f'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "{one}"\n[ports.front]\nmatches = "{one}"'
        for one in ("left", "right")
    },
}
BLIND = PORTED["right"].replace('\n[ports.front]\nmatches = "right"', "")
NO_OPENING = "port right wants a port of the liner: none is there"


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"right": BLIND}, NO_OPENING),
        # which bore the end is of, or which end the port leads into, is not stated: a liner of the block matches it
        ({"block": PORTED["block"].replace('of_bore = "right"\n', ""), "right": BLIND}, NO_OPENING),
        ({"block": PORTED["block"].replace('of_end = "right"\n', ""), "right": BLIND}, NO_OPENING),
        ({"right": ""}, ""),  # the liner is told of
        ({"left": "", "right": ""}, NO_PLACE),
        (
            {"right": PORTED["right"] + '\n[ports.second]\nmatches = "right"'},
            "port right is filled twice (port of the liner): port front of right (right.toml), "
            "port second of right (right.toml)",
        ),
    ],
)
def test_a_port_of_the_block_meets_one_of_its_liner(
    workshop: DesignFolder, parts: dict[str, str], says: str
) -> None:
    assert told(workshop, {**PORTED, **parts}, "port.one-opening", "block") == says


WAY = 'kind = "steam-passage"\nin_block = "block"\ncylinder_bore = "main"\nplace = "breathing way"'
LIFTS = {name: f"{text}\nlifts_drifting = true" for name, text in VALVES.items()}
NO_WAY = "bore main wants a breathing way: none is there"


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, NO_WAY),
        ({"way": WAY}, ""),
        ({"way": WAY.replace("breathing way", "port")}, NO_WAY),
        ({"way": WAY.replace('cylinder_bore = "main"\n', "")}, NO_WAY),
        ({"way": WAY, "second": WAY}, ""),
        (LIFTS, ""),
        # an inlet valve at one end, an exhaust valve at the other
        ({name: LIFTS[name] for name in ("valve-inlet-front", "valve-exhaust-back")}, ""),
        (
            {name: LIFTS[name] for name in ("valve-inlet-front", "valve-exhaust-front")},
            "bore main: no valve of end back lifts",
        ),
        (
            {name: LIFTS[name] for name in ("valve-inlet-back", "valve-exhaust-back")},
            "bore main: no valve of end front lifts",
        ),
        ({name: f"{text}\nreversal_hurts = true" for name, text in LIFTS.items()}, NO_WAY),
        ({name: f"{text}\nreversal_hurts = false" for name, text in LIFTS.items()}, ""),
        ({name: text.replace("true", "false") for name, text in LIFTS.items()}, NO_WAY),
        (
            {"way": WAY, **{name: LIFTS[name] for name in ("valve-inlet-back", "valve-exhaust-back")}},
            "",
        ),
    ],
)
def test_a_cylinder_breathes(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**PARTS, **parts}, "cylinder.breathing-way", "block") == says


@pytest.mark.parametrize(
    ("material", "casting", "says"),
    [
        ('material = "grey-iron-250"', "", "liner wants a casting: none is there"),
        ('material = "grey-iron-250"', 'kind = "casting"\nbecomes = "liner"', ""),
        ('material = "C45E+QT"', "", NO_PLACE),
        ("", "", NO_PLACE),
    ],
)
def test_a_liner_of_cast_iron_has_its_casting(
    workshop: DesignFolder, material: str, casting: str, says: str
) -> None:
    parts = {"block": BLOCK, "liner": f"{LINER}\n{material}", "casting": casting}
    assert told(workshop, parts, "liner.has-its-casting", "liner") == says
