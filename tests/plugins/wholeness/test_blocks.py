"""A block, its engine and its plans: what each place wants, in words."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

NO_PLACE = "not applicable: it has no such place"
BLOCK = 'kind = "cylinder-block"'
ENGINE = 'kind = "engine"\n[cranks.one]\nblock = "block"'


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({"engine": ENGINE}, ""),
        ({}, "engine of block wants an engine: none is there"),
        (
            {"engine": ENGINE + '\n[cranks.two]\nblock = "block"'},
            "",
        ),  # of one engine with two cylinders in a block
        (
            {"engine": ENGINE, "second": ENGINE},
            "engine of block is filled twice (engine): engine (engine.toml), second (second.toml)",
        ),
    ],
)
def test_a_block_is_of_one_engine(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {"block": BLOCK, **parts}, "engine.blocks-named", "block") == says


@pytest.mark.parametrize(
    ("cranks", "says"),
    [
        ('[cranks.one]\nblock = "block"\nbore = "main"', ""),
        ('[cranks.one]\nblock = "block"', ""),
        # the crank of another block with a bore of the same name, and one that names no block
        ('[cranks.one]\nblock = "block"\n[cranks.two]\nblock = "other"\nbore = "main"', ""),
        ('[cranks.one]\nblock = "block"\n[cranks.two]\nbore = "main"', ""),
        (
            '[cranks.one]\nblock = "block"\n[cranks.two]\nblock = "block"\nbore = "main"',
            "bore main is filled twice (crank): crank one, crank two",
        ),
    ],
)
def test_the_piston_of_a_bore_turns_one_crank(workshop: DesignFolder, cranks: str, says: str) -> None:
    block = BLOCK + "\n[bores.main]"
    parts = {"block": block, "other": block, "engine": f'kind = "engine"\n{cranks}'}
    assert told(workshop, parts, "bore.one-crank", "block") == says


@pytest.mark.parametrize("engines", [{}, {"engine": ENGINE, "second": ENGINE}])
def test_without_one_engine_the_engine_is_asked_for_and_no_crank(
    workshop: DesignFolder, engines: dict[str, str]
) -> None:
    parts = {"block": BLOCK + "\n[bores.main]", **engines}
    assert told(workshop, parts, "bore.one-crank", "block") == NO_PLACE


@pytest.mark.parametrize(
    ("nozzle", "says"),
    [('nozzle = "nozzle"', ""), ("", "exhaust of engine wants a blast nozzle: none is there")],
)
def test_the_exhaust_of_an_engine_ends_in_a_nozzle(workshop: DesignFolder, nozzle: str, says: str) -> None:
    parts = {"engine": f'kind = "engine"\n{nozzle}', "nozzle": 'kind = "blast-nozzle"'}
    assert told(workshop, parts, "engine.exhaust-ends-in-nozzle", "engine") == says


WELDED, CAST = 'kind = "weldment"\nmakes = "block"', 'kind = "casting"\nbecomes = "block"'
TWICE = "blank of block is filled twice"


@pytest.mark.parametrize(
    ("construction", "parts", "says"),
    [
        ("fabricated", {"welded": WELDED}, ""),
        ("cast", {"cast": CAST}, ""),
        ("", {"welded": WELDED}, ""),
        ("", {"cast": CAST}, ""),
        ("fabricated", {}, "blank of block wants a weldment: none is there"),
        ("cast", {}, "blank of block wants a casting: none is there"),
        ("", {}, "blank of block wants a weldment or casting: none is there"),
        (
            "fabricated",
            {"cast": CAST},
            "blank of block: the block is fabricated, and casting cast becomes it",
        ),
        ("cast", {"welded": WELDED}, "blank of block: the block is cast, and weldment welded makes it"),
        (
            "fabricated",
            {"welded": WELDED, "cast": CAST},
            f"{TWICE} (weldment): welded (welded.toml), cast (cast.toml)",
        ),
        (
            "cast",
            {"cast": CAST, "second": CAST},
            f"{TWICE} (casting): cast (cast.toml), second (second.toml)",
        ),
    ],
)
def test_a_block_is_made_once_as_its_construction_says(
    workshop: DesignFolder, construction: str, parts: dict[str, str], says: str
) -> None:
    stated = f'\nconstruction = "{construction}"' if construction else ""
    assert told(workshop, {"block": BLOCK + stated, **parts}, "block.made-once", "block") == says


PLANS = {
    "block": BLOCK,
    "other": BLOCK,
    "weldment": WELDED,
    "access": 'kind = "access-plan"\nserves = "block"\nweldment = "weldment"',
    "envelope": 'kind = "envelope"\naround = "block"',
    "lifting": 'kind = "lifting-plan"\nlifts = "block"',
}


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"access": ""}, "block wants an access plan: none is there"),
        ({"envelope": ""}, "block wants an envelope: none is there"),
        (
            {"weldment": WELDED.replace('"block"', '"other"')},
            "block: access shows the welds of weldment, which makes other",
        ),
        ({"weldment": 'kind = "weldment"'}, ""),  # which block it makes is not said
        ({"access": 'kind = "access-plan"\nserves = "block"'}, ""),  # nor whose welds the plan shows
    ],
)
def test_a_block_has_its_plans(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**PLANS, **parts}, "block.has-its-plans", "block") == says


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"lifting": ""}, "block wants a lifting plan: none is there"),
        (
            {"second": PLANS["lifting"]},
            "block is filled twice (lifting plan): lifting (lifting.toml), second (second.toml)",
        ),
    ],
)
def test_a_block_has_one_lifting_plan(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**PLANS, **parts}, "block.lifted-by-a-plan", "block") == says


LINER = 'kind = "cylinder-liner"\nhoused_in = "block"'
OF_BLOCK, OF_LINER = '[weights.welded]\nof = "weldment"', '[weights.liner]\nof = "liner"'


@pytest.mark.parametrize(
    ("weights", "says"),
    [
        ((OF_BLOCK, OF_LINER, "[weights.studs]"), ""),
        ((), ""),  # part.tables-stated asks for weights
        (('[weights.all]\nof = "block"',), ""),
        ((OF_BLOCK, "[weights.liner]"), "liner in lifting wants a weight: none is there"),
        (("[weights.welded]", "[weights.liner]"), "weldment in lifting wants a weight: none is there"),
        (
            (OF_BLOCK, OF_LINER, '[weights.spare]\nof = "liner"'),
            "liner in lifting is filled twice (weight): weight liner, weight spare",
        ),
    ],
)
def test_a_plan_weighs_weldment_and_liner_once(
    workshop: DesignFolder, weights: tuple[str, ...], says: str
) -> None:
    plan = "\n".join((PLANS["lifting"], *weights))
    parts = {**PLANS, "block": f"{BLOCK}\n[bores.main]", "liner": LINER, "lifting": plan}
    assert told(workshop, parts, "block.lifted-by-a-plan", "block") == says


PUT_IN = {
    "block": BLOCK,
    "other": BLOCK,
    "liner": 'kind = "cylinder-liner"\nhoused_in = "block"',
    "cover": 'kind = "cylinder-cover"\ncloses = "block"',
    "order": 'kind = "assembly"\nof = "block"',
}
NO_ORDER = "block wants an assembly: none is there"


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"order": ""}, NO_ORDER),
        ({"order": 'kind = "assembly"\nof = "other"'}, NO_ORDER),
        (
            {"second": PUT_IN["order"]},
            "block is filled twice (assembly): order (order.toml), second (second.toml)",
        ),
        ({"order": "", "cover": ""}, NO_PLACE),  # one part needs no order
        ({"order": "", "cover": 'kind = "cylinder-cover"\ncloses = "other"'}, NO_PLACE),
        ({"order": "", "cover": 'kind = "valve-seat"\npressed_into = "block"'}, NO_ORDER),
        ({"order": "", "cover": 'kind = "chamber-cover"\ncloses = "block"'}, NO_ORDER),
        ({"order": "", "cover": 'kind = "cam-box"\nmounted_on = "block"'}, NO_ORDER),
        ({"order": "", "liner": 'kind = "cylinder-cover"\ncloses = "block"'}, NO_ORDER),
    ],
)
def test_a_block_into_which_parts_go_has_an_order(
    workshop: DesignFolder, parts: dict[str, str], says: str
) -> None:
    assert told(workshop, {**PUT_IN, **parts}, "block.has-its-order", "block") == says


LAGGED = {
    "block": BLOCK + "\n[ends.front]\n[ends.back]",
    **{end: f'kind = "cylinder-cover"\ncloses = "block"\nof_end = "{end}"' for end in ("front", "back")},
    **{f"lagging-{one}": f'kind = "lagging"\ncovers = "{one}"' for one in ("block", "front", "back")},
}


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"lagging-block": ""}, "block wants a lagging: none is there"),
        ({"second": LAGGED["lagging-block"]}, ""),  # a block may be lagged in pieces
        ({"lagging-front": ""}, "front wants a lagging: none is there"),
        ({"lagging-back": ""}, "back wants a lagging: none is there"),
        (
            {"second": LAGGED["lagging-front"]},
            "front is filled twice (lagging): lagging-front (lagging-front.toml), second (second.toml)",
        ),
        # a cover drawn again for one end is told of the end; of covers that name no end each is asked
        ({"second": LAGGED["front"]}, ""),
        ({"second": 'kind = "cylinder-cover"\ncloses = "block"'}, "second wants a lagging: none is there"),
    ],
)
def test_block_and_covers_are_lagged(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**LAGGED, **parts}, "block.lagged", "block") == says


OPEN = {
    "block": BLOCK + '\n[openings.chest]\ncarries = "live steam"',
    "other": BLOCK + "\n[openings.chest]",
    "pipe": 'kind = "steam-pipe"\ncarries = "live steam"\n[starts_at]\npart = "block"\nopening = "chest"',
}
PIPE = OPEN["pipe"]
UNCLOSED = "opening chest wants a steam pipe: none is there"


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"pipe": PIPE.replace("starts_at", "ends_at")}, ""),
        ({"pipe": ""}, UNCLOSED),
        ({"pipe": PIPE.replace('"block"', '"other"')}, UNCLOSED),
        ({"pipe": PIPE.replace('part = "block"\n', "")}, UNCLOSED),
        ({"pipe": PIPE.replace('\nopening = "chest"', "")}, UNCLOSED),
        # its other end is at the opening of that name in another block
        ({"pipe": PIPE + '\n[ends_at]\npart = "other"\nopening = "chest"'}, ""),
        (
            {"pipe": PIPE + '\n[ends_at]\npart = "block"\nopening = "chest"'},
            "opening chest is filled twice (steam pipe): pipe (pipe.toml), pipe (pipe.toml)",
        ),
        (
            {"second": PIPE},
            "opening chest is filled twice (steam pipe): pipe (pipe.toml), second (second.toml)",
        ),
        (
            {"pipe": PIPE.replace("live steam", "exhaust steam")},
            "opening chest: pipe carries exhaust steam, and the opening live steam",
        ),
        ({"pipe": PIPE.replace('carries = "live steam"\n', "")}, ""),
        ({"block": BLOCK + "\n[openings.chest]"}, ""),
        ({"block": BLOCK, "pipe": ""}, NO_PLACE),
    ],
)
def test_one_pipe_is_at_an_opening(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**OPEN, **parts}, "opening.closed-once", "block") == says
