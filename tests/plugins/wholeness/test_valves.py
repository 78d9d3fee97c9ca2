"""Seats, valves and what moves and shuts them: what each place wants, in words."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

NO_PLACE = "not applicable: it has no such place"
PARTS = {
    "block": 'kind = "cylinder-block"\n[seat_bores.upper]\n[seat_bores.lower]',
    "other": 'kind = "cylinder-block"\n[seat_bores.upper]\n[seat_bores.lower]',
    "upper": 'kind = "valve-seat"\npressed_into = "block"\nin_bore = "upper"',
    "lower": 'kind = "valve-seat"\npressed_into = "block"\nin_bore = "lower"',
    "valve": 'kind = "poppet-valve"\nserves = "inlet"\nbeats = 2\nupper_beat.seat = "upper"\n'
    'lower_beat.seat = "lower"',
    "second-valve": 'kind = "poppet-valve"\nserves = "inlet"',
}
VALVE = PARTS["valve"]
CAGE = 'kind = "valve-cage"\nsurrounds = "valve"'


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"lower": ""}, "seat bore lower wants a valve seat: none is there"),
        (
            {"lower": PARTS["upper"]},
            "seat bore upper is filled twice (valve seat): lower (lower.toml), upper (upper.toml)",
        ),
        (
            {"lower": 'kind = "valve-seat"\npressed_into = "block"'},
            "seat bore lower wants a valve seat: none is there",
        ),
        (
            {"lower": PARTS["lower"].replace('"block"', '"other"')},
            "seat bore lower wants a valve seat: none is there",
        ),
    ],
)
def test_a_seat_is_in_each_bore(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**PARTS, "valve": "", **parts}, "seat-bore.one-seat", "block") == says


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"valve": ""}, NO_PLACE),
        (
            {"valve": VALVE.replace('seat = "lower"', 'seat = "upper"')},
            "upper is filled twice (beat of a valve): upper beat of valve (valve.toml), "
            "lower beat of valve (valve.toml)",
        ),
        (
            {"second-valve": VALVE},
            "upper is filled twice (beat of a valve): upper beat of second-valve (second-valve.toml), "
            "upper beat of valve (valve.toml)",
        ),
    ],
)
def test_one_beat_sits_on_a_seat(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**PARTS, **parts}, "seat.one-beat", "upper") == says


_ONE_BEAT = "lower beat of valve: the valve states one beat, and a lower beat as well"


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("", "", ""),
        ('\nupper_beat.seat = "upper"', "", "upper beat of valve wants a valve seat: none is there"),
        ('\nlower_beat.seat = "lower"', "", "lower beat of valve wants a valve seat: none is there"),
        (
            'beats = 2\nupper_beat.seat = "upper"\nlower_beat.seat = "lower"',
            'beats = 1\nupper_beat.seat = "upper"',
            "",
        ),
        ('beats = 2\nupper_beat.seat = "upper"\nlower_beat.seat = "lower"', 'upper_beat.seat = "upper"', ""),
        (
            'beats = 2\nupper_beat.seat = "upper"\nlower_beat.seat = "lower"',
            "beats = 1",
            "upper beat of valve wants a valve seat: none is there",
        ),
        ("beats = 2", "beats = 1", _ONE_BEAT),
        (
            'beats = 2\nupper_beat.seat = "upper"\nlower_beat.seat = "lower"',
            'beats = 1\nupper_beat.seat = "upper"\nlower_beat.seat_diameter = "150 mm"',
            _ONE_BEAT,
        ),
        ("beats = 2\n", "", ""),
    ],
)
def test_each_beat_of_a_valve_has_its_seat(workshop: DesignFolder, old: str, new: str, says: str) -> None:
    valve = VALVE.replace(old, new) if old else VALVE
    assert told(workshop, {**PARTS, "valve": valve}, "valve.has-its-seats", "valve") == says


@pytest.mark.parametrize("number", [0, 1, 2])
def test_one_spindle_moves_a_valve(workshop: DesignFolder, number: int) -> None:
    says = (
        "valve wants a valve spindle: none is there",
        "",
        "valve is filled twice (valve spindle): one-0 (one-0.toml), one-1 (one-1.toml)",
    )
    spindles = {f"one-{n}": 'kind = "valve-spindle"\nmoves = "valve"' for n in range(number)}
    assert told(workshop, {**PARTS, **spindles}, "valve.one-spindle", "valve") == says[number]


SPRING = 'kind = "compression-spring"\ncloses = "valve"'
INNER = f'{SPRING}\nnested_in = "spring"'


@pytest.mark.parametrize(
    ("springs", "says"),
    [
        ({"spring": SPRING}, ""),
        ({}, "valve wants a compression spring: none is there"),
        (
            {"spring": SPRING, "second": SPRING},
            "valve is filled twice (compression spring): second (second.toml), spring (spring.toml)",
        ),
        ({"spring": SPRING, "inner": INNER}, ""),
        ({"spring": SPRING, "inner": INNER, "innermost": INNER.replace('"spring"', '"inner"')}, ""),
        (
            {"spring": SPRING, "inner": INNER, "second": INNER},
            "inside of spring is filled twice (compression spring): inner (inner.toml), second (second.toml)",
        ),
        # the spring round the inner one shuts another valve, or does not say which
        (
            {
                "spring": SPRING,
                "outer": SPRING.replace('"valve"', '"second-valve"'),
                "inner": INNER.replace('"spring"', '"outer"'),
            },
            "valve: inner is nested in outer, which shuts second-valve",
        ),
        (
            {
                "spring": SPRING,
                "outer": 'kind = "compression-spring"',
                "inner": INNER.replace('"spring"', '"outer"'),
            },
            "",
        ),
        (
            {
                "outer": SPRING.replace('"valve"', '"second-valve"'),
                "inner": INNER.replace('"spring"', '"outer"'),
            },
            "valve: inner is nested in outer, which shuts second-valve",
        ),
    ],
)
def test_one_spring_or_one_nest_shuts_a_valve(
    workshop: DesignFolder, springs: dict[str, str], says: str
) -> None:
    assert told(workshop, {**PARTS, **springs}, "valve.has-springs", "valve") == says


def test_a_spring_of_another_nest_is_told_in_a_draft_too(workshop: DesignFolder) -> None:
    """The outer spring of this valve need not be drawn yet; the inner one stands in that of another all the same."""
    nest = {
        "outer": SPRING.replace('"valve"', '"second-valve"'),
        "inner": INNER.replace('"spring"', '"outer"'),
    }
    said = told(workshop, {**PARTS, **nest}, "valve.has-springs", "valve", "draft")
    assert said == "valve: inner is nested in outer, which shuts second-valve"


LID = 'kind = "chamber-cover"\ncloses = "block"\nseat_bore = "upper"'
UNCLOSED = "chamber of valve wants a chamber cover: none is there"


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({"lid": LID}, ""),
        ({}, UNCLOSED),
        ({"lid": LID.replace("upper", "lower")}, ""),
        ({"lid": 'kind = "chamber-cover"\nover = "valve"'}, ""),
        ({"lid": 'kind = "chamber-cover"\ncloses = "block"'}, UNCLOSED),
        ({"lid": LID + '\nover = "valve"'}, ""),  # named in both ways it is one
        (
            {"lid": LID, "second": 'kind = "chamber-cover"\nover = "valve"'},
            "chamber of valve is filled twice (chamber cover): second (second.toml), lid (lid.toml)",
        ),
        (
            {"lid": 'kind = "chamber-cover"\ncloses = "other"\nover = "valve"'},
            "chamber of valve: lid closes other, and the valve is in block",
        ),
        (
            {
                "lid": 'kind = "chamber-cover"\ncloses = "other"\nover = "valve"',
                "valve": 'kind = "poppet-valve"\nlower_beat.seat = "lower"',
            },
            "chamber of valve: lid closes other, and the valve is in block",
        ),
        # where the valve is in no block that is stated, its cover is of none that is another
        (
            {
                "lid": 'kind = "chamber-cover"\ncloses = "other"\nover = "valve"',
                "valve": 'kind = "poppet-valve"',
            },
            "",
        ),
        ({"lid": LID, "valve": VALVE.replace('\nupper_beat.seat = "upper"', "")}, UNCLOSED),
        (
            {"lid": LID.replace("upper", "lower"), "valve": VALVE.replace('\nupper_beat.seat = "upper"', "")},
            "",
        ),
        ({"lid": LID, "upper": 'kind = "valve-seat"\nin_bore = "upper"'}, UNCLOSED),
        ({"lid": LID, "upper": 'kind = "valve-seat"\npressed_into = "block"'}, UNCLOSED),
    ],
)
def test_one_cover_closes_a_chamber(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**PARTS, **parts}, "valve.chamber-closed", "valve") == says


OWN = 'kind = "steam-passage"\nin_block = "block"\nvalve = "valve"\ncarries = "live steam"'
SHARED = 'kind = "steam-passage"\nin_block = "block"\nvalve = "second-valve"'
NO_PATH = "valve wants a steam passage: none is there"


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({"way": OWN}, ""),
        ({}, NO_PATH),
        ({"way": OWN + '\nplace = "valve pocket"'}, ""),
        ({"way": OWN, "second": OWN}, ""),  # of passages there may be several
        (
            {"way": OWN.replace("live", "exhaust")},
            "valve: way carries exhaust steam, and the valve live steam",
        ),
        (
            {"way": OWN, "valve": VALVE.replace("inlet", "exhaust")},
            "valve: way carries live steam, and the valve exhaust steam",
        ),
        ({"way": OWN.replace("live", "exhaust"), "valve": VALVE.replace("inlet", "exhaust")}, ""),
        ({"way": OWN.partition("\ncarries")[0]}, ""),
        ({"way": OWN, "valve": VALVE.replace('serves = "inlet"\n', "")}, ""),
        # that of another valve of the same service in the block, where it has none of its own
        ({"way": SHARED}, ""),
        ({"way": SHARED + '\nplace = "valve pocket"'}, NO_PATH),
        ({"way": SHARED + '\nplace = "belt"'}, ""),
        ({"way": SHARED, "second-valve": 'kind = "poppet-valve"\nserves = "exhaust"'}, NO_PATH),
        ({"way": SHARED.replace('"block"', '"other"')}, NO_PATH),
        ({"way": SHARED.replace('in_block = "block"\n', "")}, NO_PATH),
        ({"way": SHARED.replace('\nvalve = "second-valve"', "")}, NO_PATH),
        ({"way": SHARED, "valve": VALVE.replace('\nupper_beat.seat = "upper"', "")}, ""),
        ({"way": SHARED, "valve": 'kind = "poppet-valve"\nserves = "inlet"'}, NO_PATH),
        ({"way": SHARED, "upper": 'kind = "valve-seat"'}, ""),
        ({"way": SHARED, "upper": 'kind = "valve-seat"', "lower": 'kind = "valve-seat"'}, NO_PATH),
    ],
)
def test_a_valve_is_on_its_path(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**PARTS, **parts}, "valve.on-its-path", "valve") == says


@pytest.mark.parametrize(
    ("lines", "says"),
    [
        ('seal = "lip seal"\nguide_bore = "20 mm"', ""),
        ('guide_bore = "20 mm"', "spindle wants a seal: none is there"),
        ('seal = "lip seal"', "spindle wants a guide: none is there"),
    ],
)
def test_a_spindle_states_its_seal_and_its_guide(workshop: DesignFolder, lines: str, says: str) -> None:
    assert (
        told(workshop, {"spindle": f'kind = "valve-spindle"\n{lines}'}, "spindle.sealed", "spindle") == says
    )


@pytest.mark.parametrize(
    ("cages", "says"),
    [
        ({}, ""),
        ({"cage": CAGE}, ""),
        (
            {"cage": CAGE, "copy": CAGE},
            "valve is filled twice (valve cage): cage (cage.toml), copy (copy.toml)",
        ),
        ({"cage": CAGE, "copy": CAGE.replace('"valve"', '"second-valve"')}, ""),
        ({"cage": CAGE, "copy": 'kind = "valve-cage"'}, ""),
    ],
)
def test_one_cage_surrounds_a_valve(workshop: DesignFolder, cages: dict[str, str], says: str) -> None:
    assert told(workshop, {**PARTS, **cages}, "valve.one-cage", "valve") == says
