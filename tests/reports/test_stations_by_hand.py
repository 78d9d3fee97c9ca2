"""The places of a steam path, read from the sheets of its checks: which sheets give which place what, by hand.

One cylinder: pipe, chest and pocket to the inlet valve at the front; the exhaust valve at the front, belt, pipe and
nozzle. The checks are made here, with the steps that such sheets have and others that must not be taken for them.
"""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from speclint.checking import Assessment, Check, Processes, assess
from speclint.errors import Location, replace
from speclint.reports.pack.stations import Station, paths_of
from speclint.rules import Amount, Judgement, Step
from speclint.testing import DesignFolder
from tests import tubes

BLOCK = """kind = "cylinder-block"
[bores.main]
[bores.own]
[ends.front]
of_bore = "main"
side = "front"
[ends.back]
side = "back"
[seat_bores.in-front]
end = "front"
serves = "inlet"
[seat_bores.out-front]
end = "front"
serves = "exhaust"
[seat_bores.out-back]
end = "back"
serves = "exhaust"
"""
PASSAGE = 'kind = "steam-passage"\nin_block = "block"\nplace = "{}"\ncarries = "{}"\n'
PIPE = 'kind = "steam-pipe"\ncarries = "{}"\n'
VALVE = 'kind = "poppet-valve"\nserves = "{}"\ncylinder_bore = "own"\n[upper_beat]\nseat = "{}"\n'
SEAT = 'kind = "valve-seat"\npressed_into = "block"\nin_bore = "{}"\n'
LIVE, SPENT = "live steam", "exhaust steam"
FILES = {
    "block": BLOCK,
    "seat-in": SEAT.format("in-front"),
    "seat-out": SEAT.format("out-front"),
    "seat-back": SEAT.format("out-back"),
    "valve-in": VALVE.format("inlet", "seat-in"),
    "valve-back": VALVE.format("exhaust", "seat-back"),
    "valve-out": VALVE.format("exhaust", "seat-out"),
    "pipe": PIPE.format(LIVE),
    "chest": PASSAGE.format("chest", LIVE),
    "pocket": PASSAGE.format("valve pocket", LIVE) + 'valve = "valve-in"\n',
    "belt": PASSAGE.format("belt", SPENT) + 'valve = "valve-out"\n',
    "out": PIPE.format(SPENT),
    "nozzle": 'kind = "blast-nozzle"\n',
}


def at(part: str) -> Location:
    return Location(f"{part}.toml", 1, "area", part)


def worked(symbol: str, value: float, unit: str, **filled: tuple[float, str]) -> Step:
    numbers = tuple((name, number, its) for name, (number, its) in filled.items())
    return Step("worked", symbol, symbol, value, unit, filled=numbers)


def taken(part: str) -> Step:
    return Step("taken", "A", "area", 0.5, "m²", where=at(part))


def limit(value: float, name: str = "greatest speed", unit: str = "m/s") -> Step:
    return Step("limit", "v_max", name, value, unit)


def stage(part: str, speed: float, area: float = 0.02) -> list[Step]:
    """A stage as its sheet works it: its section, its speed, the number of Mach and what is lost."""
    return [
        taken(part),
        worked("v", speed, "m/s", m=(1.7, "kg/s"), ρ=(5.0, "kg/m³"), A=(area, "m²")),
        worked("Ma", speed / 500, "", v=(speed, "m/s"), w=(500.0, "m/s")),
        worked("p_2", 15e5, "Pa", p=(16e5, "Pa"), Δp=(speed * 10, "Pa")),
    ]


def opening(speed: float, valve: float | None = 0.015, port: float = 0.01) -> list[Step]:
    """A valve as its sheet works it: the narrower of valve and port, and the speed through it."""
    narrow = port if valve is None else min(valve, port)
    areas = [] if valve is None else [worked("A", narrow, "m²", A_v=(valve, "m²"), A_port=(port, "m²"))]
    put_in = {"A_p": (0.2, "m²"), "c": (6.0, "m/s"), "A": (narrow, "m²")}
    return [*areas, worked("v_s", speed, "m/s", **put_in), limit(100.0)]


def jet(speed: float = 300.0) -> list[Step]:
    put_in = dict.fromkeys(("m", "C", "A", "h", "p_2"), (1.0, "1"))
    return [worked("A_n", 0.021, "m²", z=(1.0, ""), d=(0.165, "m")), worked("w", speed, "m/s", **put_in)]


@pytest.fixture
def design(workshop: DesignFolder) -> DesignFolder:
    return workshop.write({f"{name}.toml": f'id = "{name}"\n{text}' for name, text in FILES.items()})


def check(component: str, steps: Sequence[Step], found: float | None = None) -> Check:
    judgement = None
    if found is not None:
        amount = Amount(found, "m/s")
        judgement = Judgement(holds=True, says="", found=amount, limit=amount)
    return Check(
        component,
        "kind",
        tubes.stress,
        "conforms",
        "",
        at(component),
        "",
        judgement=judgement,
        steps=tuple(steps),
    )


def read(design: DesignFolder, *checks: Check) -> Assessment:
    found = assess([design.root], design.loaded, [], processes=Processes(0))
    assert not found.complaints
    return replace(found, checks=checks)


def paths(design: DesignFolder, *checks: Check) -> dict[str, tuple[Station, ...]]:
    return dict(paths_of(read(design, *checks)))


def told(stations: Sequence[Station]) -> list[tuple[object, ...]]:
    """What each place is, of which part, its area, its speed and its limit."""
    return [
        (
            one.what,
            one.component,
            one.area.value,
            one.speed.value if one.speed else None,
            one.limit.value if one.limit else None,
        )
        for one in stations
    ]


LIVE_CHECK = check(
    "pocket", [*stage("pipe", 30.0), *stage("chest", 20.0, 0.03), *stage("pocket", 25.0), limit(40.0)]
)
SPENT_CHECK = check("nozzle", [*stage("belt", 50.0), *stage("out", 60.0, 0.03), limit(70.0), *jet()])
INLET = check("valve-in", opening(80.0), found=80.0)
OUTLET = check("valve-out", opening(90.0, valve=0.012, port=0.018), found=90.0)
BACK = check("valve-back", opening(95.0), found=95.0)
BELOW_PISTON = [
    ("inlet valve", "valve-in", 0.015, None, None),
    ("port", "valve-in", 0.01, 80.0, 100.0),
    ("cylinder", "bore main", 0.2, 6.0, None),
]
LIVE_PATH = [
    ("pipe", "pipe", 0.02, 30.0, 40.0),
    ("chest", "chest", 0.03, 20.0, 40.0),
    ("valve pocket", "pocket", 0.02, 25.0, 40.0),
]
SPENT_PATH = [("belt", "belt", 0.02, 50.0, 70.0), ("pipe", "out", 0.03, 60.0, 70.0)]
JET = [("nozzle", "nozzle", 0.021, 300.0, None)]
OUT_OF = [
    ("port", "valve-out", 0.018, None, None),
    ("exhaust valve", "valve-out", 0.012, 90.0, 100.0),
]


def test_live_and_exhaust_of_one_block_are_one_path(design: DesignFolder) -> None:
    """The exhaust valve is that of the end at which the steam came in, though the other comes first by its name."""
    found = paths(design, LIVE_CHECK, INLET, BACK, OUTLET, SPENT_CHECK)
    assert list(found) == ["pocket"]
    whole = found["pocket"]
    assert told(whole) == [*LIVE_PATH, *BELOW_PISTON, *OUT_OF, *SPENT_PATH, *JET]
    assert [one.live for one in whole] == [True] * 6 + [False] * 5
    assert [one.mach and one.mach.value for one in whole[:3]] == [0.06, 0.04, 0.05]
    assert [one.lost and one.lost.value for one in whole[:3]] == [300.0, 200.0, 250.0]
    assert [one.check for one in whole] == [
        *[LIVE_CHECK] * 3,
        *[INLET] * 3,
        *[OUTLET] * 2,
        *[SPENT_CHECK] * 3,
    ]


def test_without_a_check_of_the_inlet_valve_the_two_are_apart(design: DesignFolder) -> None:
    """The live path then ends at its pocket; the exhaust is told by the part that is judged, from its valve on."""
    found = paths(design, LIVE_CHECK, OUTLET, SPENT_CHECK)
    assert {name: told(one) for name, one in found.items()} == {
        "pocket": LIVE_PATH,
        "nozzle": [*OUT_OF, *SPENT_PATH, *JET],
    }


def test_what_is_made_in_no_block_or_in_another_is_not_joined(design: DesignFolder) -> None:
    def apart(*changes: tuple[str, str]) -> bool:
        for file, new in changes:
            design.replace(file, 'in_block = "block"\n', new)
        found = paths(design, LIVE_CHECK, INLET, OUTLET, SPENT_CHECK)
        assert told(found["pocket"])[:6] == [*LIVE_PATH, *BELOW_PISTON]
        return list(found) == ["pocket", "nozzle"]

    design.write({"other.toml": BLOCK, **_file_of("belt")})
    assert apart(("belt.toml", 'in_block = "other"\n'))
    design.write(_file_of("belt"))
    assert apart(("belt.toml", ""))
    design.write(_file_of("belt"))
    assert apart(("pocket.toml", ""))
    assert apart(("belt.toml", "")), "two that state none are not of one block"


def _file_of(name: str) -> dict[str, str]:
    return {f"{name}.toml": f'id = "{name}"\n{FILES[name]}'}


def test_an_exhaust_that_begins_with_a_pipe_joins_no_block(design: DesignFolder) -> None:
    spent = check("nozzle", [*stage("out", 60.0, 0.03), limit(70.0)])
    found = paths(design, LIVE_CHECK, INLET, OUTLET, spent)
    assert {name: told(one) for name, one in found.items()} == {
        "pocket": [*LIVE_PATH, *BELOW_PISTON],
        "nozzle": SPENT_PATH[1:],
    }


def test_where_no_spec_tells_the_end_the_steam_leaves_by_the_valve_that_the_outlet_follows(
    design: DesignFolder,
) -> None:
    """An inlet whose seat bore is at no end: the belt's own valve; the bore is the one that the valve states."""
    design.replace("block.toml", '[seat_bores.in-front]\nend = "front"', "[seat_bores.in-front]")
    found = told(paths(design, LIVE_CHECK, INLET, BACK, OUTLET, SPENT_CHECK)["pocket"])
    assert found[6:8] == OUT_OF
    assert found[5] == ("cylinder", "bore own", 0.2, 6.0, None)


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("block.toml", 'of_bore = "main"\n', ""),
        ("seat-in.toml", 'in_bore = "in-front"\n', ""),
        ("seat-in.toml", 'pressed_into = "block"\n', ""),
        ("valve-in.toml", '[upper_beat]\nseat = "seat-in"\n', ""),
    ],
)
def test_a_bore_that_the_seat_does_not_tell_is_the_one_that_the_valve_states(
    design: DesignFolder, file: str, old: str, new: str
) -> None:
    design.replace(file, old, new)
    found = told(paths(design, LIVE_CHECK, INLET)["pocket"])
    assert found[-1] == ("cylinder", "bore own", 0.2, 6.0, None)


def test_several_paths_to_one_nozzle_are_told_apart(design: DesignFolder) -> None:
    """The first by the nozzle, the second by its first place; a limit of any sort ends a path."""
    steps = [
        *stage("belt", 50.0),
        limit(70.0),
        limit(3.0, unit="bar"),
        *stage("out", 60.0, 0.03),
        limit(70.0),
    ]
    found = paths(design, check("nozzle", steps))
    assert {name: told(one) for name, one in found.items()} == {
        "nozzle": SPENT_PATH[:1],
        "out": SPENT_PATH[1:],
    }
    last = paths(design, check("nozzle", [limit(70.0), *stage("belt", 50.0)]))
    assert {name: told(one) for name, one in last.items()} == {"nozzle": SPENT_PATH[:1]}


def test_a_stage_is_the_last_part_of_which_a_size_was_taken(design: DesignFolder) -> None:
    """A value of the duty, or of a part that is no stage, comes between."""
    between = [taken("pipe"), taken("chest"), taken("valve-in"), *stage("belt", 50.0)[1:]]
    (found,) = paths(design, check("nozzle", [*between, limit(70.0)]))["nozzle"]
    assert found.component == "chest"


@pytest.mark.parametrize(
    "steps",
    [
        [*stage("belt", 50.0)],
        [*stage("belt", 50.0), limit(70.0, "greatest speed, reported")],
        [*stage("belt", 50.0), limit(70.0, unit="bar")],
        [*stage("belt", 50.0), replace(limit(70.0), kind="taken")],
        [taken("belt"), replace(stage("belt", 50.0)[1], kind="scanned"), limit(70.0)],
        [taken("belt"), replace(stage("belt", 50.0)[1], unit="m"), limit(70.0)],
        *(
            [taken("belt"), worked("v", 50.0, "m/s", **some), limit(70.0)]
            for some in (
                {"m": (1.7, "kg/s"), "ρ": (5.0, "kg/m³")},
                {"m": (1.7, "kg/s"), "A": (0.02, "m²")},
                {"ρ": (5.0, "kg/m³"), "A": (0.02, "m²")},
            )
        ),
    ],
)
def test_what_judges_no_greatest_speed_of_stages_is_no_path(design: DesignFolder, steps: list[Step]) -> None:
    assert not paths(design, check("nozzle", steps))


def test_a_speed_may_need_more_than_flow_density_and_area(design: DesignFolder) -> None:
    steps = stage("belt", 50.0)
    more = replace(steps[1], filled=(*steps[1].filled, ("n", 2.0, "")))
    assert paths(design, check("nozzle", [steps[0], more, limit(70.0)]))


def test_what_a_stage_does_not_work_is_not_known(design: DesignFolder) -> None:
    (found,) = paths(design, check("nozzle", [*stage("belt", 50.0)[:2], limit(70.0)]))["nozzle"]
    assert (found.mach, found.lost) == (None, None)


def test_the_greatest_speed_is_the_first_that_is_not_only_reported(design: DesignFolder) -> None:
    steps = [limit(1.0, "least, reported"), *stage("belt", 50.0), limit(70.0), limit(75.0)]
    (found,) = paths(design, check("nozzle", steps))["nozzle"]
    assert found.limit is not None
    assert found.limit.value == 70.0


# The valve


def test_a_valve_is_read_from_its_check_that_judges_the_speed_behind_the_piston(design: DesignFolder) -> None:
    """Of two speeds the one that is judged; what judges nothing, or something else, is passed over."""
    sheets = [
        check("valve-out", opening(80.0), found=80.0),
        check("valve-in", opening(70.0)),
        check("valve-in", [limit(100.0)], found=80.0),
        check("valve-in", [*opening(60.0), *opening(80.0)], found=80.0),
        check("valve-in", opening(55.0), found=55.0),
    ]
    found = told(paths(design, LIVE_CHECK, *sheets)["pocket"])
    assert found[3:] == BELOW_PISTON


@pytest.mark.parametrize(
    "change",
    [
        {"kind": "scanned"},
        {"unit": "m"},
        {"filled": (("A_p", 0.2, "m²"), ("c", 6.0, "m/s"))},
        {"filled": (("A_p", 0.2, "m²"), ("c", 6.0, "m/s"), ("A", 0.01, "m²"), ("n", 1.0, ""))},
    ],
)
def test_only_the_speed_that_follows_the_piston_through_an_area_tells_a_valve(
    design: DesignFolder, change: dict[str, object]
) -> None:
    areas, speed, most = opening(80.0)
    other = check("valve-in", [areas, replace(speed, **change), most], found=80.0)  # type: ignore[arg-type]
    assert told(paths(design, LIVE_CHECK, other)["pocket"]) == LIVE_PATH


def test_valve_and_port_of_one_area_have_the_speed_both(design: DesignFolder) -> None:
    """So has one whose sheet works no areas of its own."""
    for steps in (opening(80.0, valve=0.01), opening(80.0, valve=None)):
        found = told(paths(design, LIVE_CHECK, check("valve-in", steps, found=80.0))["pocket"])
        assert found[3:5] == [(what, "valve-in", 0.01, 80.0, 100.0) for what in ("inlet valve", "port")]


# The nozzle


def test_a_nozzle_without_a_jet_has_its_area_alone(design: DesignFolder) -> None:
    steps = [*stage("belt", 50.0), limit(70.0), *jet()[:1]]
    nozzle = paths(design, check("nozzle", steps))["nozzle"][-1]
    assert told([nozzle]) == [("nozzle", "nozzle", 0.021, None, None)]
    assert nozzle.check is None


def test_what_works_no_area_of_openings_is_no_nozzle(design: DesignFolder) -> None:
    area, speed = jet()
    for other in (
        replace(area, kind="taken"),
        replace(area, unit="m"),
        replace(area, filled=area.filled[:1]),
        replace(area, filled=area.filled[1:]),
    ):
        steps = [*stage("belt", 50.0), limit(70.0), other, speed]
        assert told(paths(design, check("nozzle", steps))["nozzle"]) == SPENT_PATH[:1]


def test_the_jet_is_the_first_speed_of_a_flow_out_of_openings(design: DesignFolder) -> None:
    """Not one of another unit, nor of other numbers; the sheet may be another of the nozzle."""
    area, speed = jet()
    wrong = [
        replace(speed, unit="m", value=1.0),
        replace(speed, kind="taken", value=2.0),
        *(
            replace(speed, value=3.0, filled=speed.filled[:n] + speed.filled[n + 1 :])
            for n in range(len(speed.filled))
        ),
    ]
    path = check("nozzle", [*stage("belt", 50.0), limit(70.0), *wrong, area, replace(area, value=9.0)])
    own = check("nozzle", [speed, replace(speed, value=8.0)])
    other = check("belt", [replace(area, value=7.0), replace(speed, value=7.0)])
    nozzle = paths(design, other, path, own)["nozzle"][-1]
    assert told([nozzle]) == JET
    assert nozzle.check == own


def test_a_path_that_ends_elsewhere_has_no_nozzle(design: DesignFolder) -> None:
    spent = check("out", [*stage("belt", 50.0), *stage("out", 60.0, 0.03), limit(70.0)])
    found = paths(design, spent, check("nozzle", jet()))
    assert {name: told(one) for name, one in found.items()} == {"out": SPENT_PATH}
