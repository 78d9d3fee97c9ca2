"""The cams of a valve gear in its notches: feet of −9.5° and 140°, at the back half a turn on."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.facts import (
    bore_of_gear,
    direction_of,
    end_on,
    gears_beside,
    gears_of,
    mid_notches,
    notch_of,
    placed_in_notches,
    running_notches,
    set_cam,
    set_cams,
    steam_in_bore,
    train_of_cam,
    value_from_events,
)
from speclint.handbook.valve_events import End
from speclint.rules import NotAssessed, NotCovered
from tests.facts.bench import Bench, bench, opened
from tests.plugins.events.gear import files
from tests.plugins.known_metals import WITH_METALS

_ANGLE = 'block = "block"\nangle = "0 °"'


def drawn(folder: Path, *changes: tuple[str, str, str], on: str = "gear") -> Bench:
    return opened(folder, {**files(*changes), "speclint.toml": WITH_METALS}, on)


def test_notches_run_forwards_backwards_or_are_in_mid_gear(tmp_path: Path) -> None:
    on = drawn(tmp_path)
    assert running_notches(on["gear"], on.sheet) == ("65", "35", "20", "b")
    assert mid_notches(on["gear"], on.sheet) == ("mid",)
    assert direction_of(on["gear"], "b", on.sheet) == "backward"
    assert notch_of(on["gear"], "35", on.sheet) is on["gear"].notches["35"]
    with pytest.raises(NotAssessed, match="gear has no notch '50'"):
        direction_of(on["gear"], "50", on.sheet)


def test_a_gear_that_never_runs_is_not_assessed(tmp_path: Path) -> None:
    on = bench(tmp_path, {"valve-gear gear": '[notches.mid]\ndirection = "mid"\n'}, "gear")
    with pytest.raises(NotAssessed, match="gear states no notch in which the engine runs"):
        running_notches(on["gear"], on.sheet)


@pytest.mark.parametrize(
    ("notch", "serves", "side", "cam", "foot", "backward"),
    [
        ("65", "inlet", End.FRONT, "cam-inlet-front-65", "-9.5 °", False),
        ("35", "inlet", End.BACK, "cam-inlet-back-35", "-10.5 °", False),
        ("35", "exhaust", End.FRONT, "cam-exhaust-front", "140 °", False),
        ("b", "exhaust", End.BACK, "cam-exhaust-back-b", "140 °", True),
    ],
)
def test_a_notch_sets_a_cam_for_each_valve(
    tmp_path: Path, notch: str, serves: str, side: End, cam: str, foot: str, backward: bool
) -> None:
    on = drawn(tmp_path)
    found = set_cam(on["gear"], notch, serves, side, on.sheet)  # type: ignore[arg-type]  # one of both
    assert found is not None
    assert (found.cam.id, getattr(found.foot, "text", ""), found.backward) == (cam, foot, backward)
    assert found.mark == serves[0] + side.value[0]


def test_a_back_that_states_no_foot_has_that_of_the_front(tmp_path: Path) -> None:
    text = '[notches.65.inlet_back]\ncam = "cam-inlet-back-65"\nfoot = "-9.5 °"\n'
    on = drawn(tmp_path, ("gear.toml", text, text.replace('foot = "-9.5 °"\n', "")))
    found = set_cam(on["gear"], "65", "inlet", End.BACK, on.sheet)
    assert found is not None
    assert found.foot is on["gear"].notches["65"].inlet_front.foot


def test_mid_gear_leaves_valves_without_a_cam_shut(tmp_path: Path) -> None:
    mid = '[notches.mid]\ndirection = "mid"\n'
    setting = '[notches.mid.exhaust_front]\ncam = "cam-exhaust-front"\nfoot = "140 °"\n'
    on = drawn(tmp_path, ("gear.toml", mid, mid + setting))
    assert [one.cam.id for one in set_cams(on["gear"], "mid", on.sheet)] == ["cam-exhaust-front"]
    assert len(list(set_cams(on["gear"], "65", on.sheet))) == 4


@pytest.mark.parametrize(
    ("angle", "cam", "notch", "place"),
    [
        ("0 °", "cam-inlet-front-65", "65", -9.5),
        ("0 °", "cam-inlet-back-65", "65", 170.5),
        ("0 °", "cam-exhaust-front", "65", 140.0),
        ("0 °", "cam-inlet-front-b", "b", -9.5),
        # a crank that leads by 120° has its cams so much earlier, and running backwards so much later
        ("120 °", "cam-inlet-front-65", "65", -129.5),
        ("120 °", "cam-inlet-back-65", "65", 50.5),
        ("120 °", "cam-inlet-front-b", "b", 110.5),
    ],
)
def test_where_a_cam_stands_on_its_shaft(
    tmp_path: Path, angle: str, cam: str, notch: str, place: float
) -> None:
    on = drawn(tmp_path, ("engine.toml", _ANGLE, _ANGLE.replace("0 °", angle)))
    placed = placed_in_notches([on[cam]], on.sheet)
    (found,) = placed[notch]
    assert found.cam.id == cam
    assert math.degrees(found.place) == pytest.approx(place)
    assert found.backward == (notch == "b")


def test_a_cam_works_in_the_notches_that_name_it_and_none_in_mid_gear(tmp_path: Path) -> None:
    mid = '[notches.mid]\ndirection = "mid"\n'
    setting = '[notches.mid.exhaust_front]\ncam = "cam-exhaust-front"\nfoot = "140 °"\n'
    on = drawn(tmp_path, ("gear.toml", mid, mid + setting))
    both = placed_in_notches([on["cam-exhaust-front"], on["cam-inlet-front-65"]], on.sheet)
    assert {notch: [one.cam.id for one in some] for notch, some in both.items()} == {
        "65": ["cam-inlet-front-65", "cam-exhaust-front"],
        "35": ["cam-exhaust-front"],
        "20": ["cam-exhaust-front"],
    }


def test_without_an_angle_of_the_crank_or_an_engine_nothing_leads(tmp_path: Path) -> None:
    on = drawn(tmp_path, ("engine.toml", _ANGLE, 'block = "block"'))
    (found,) = placed_in_notches([on["cam-inlet-front-65"]], on.sheet)["65"]
    assert math.degrees(found.place) == pytest.approx(-9.5)
    (tmp_path / "a").mkdir()
    texts = {**files(), "speclint.toml": WITH_METALS}
    del texts["engine.toml"]
    bare = opened(tmp_path / "a", texts, "gear")
    (found,) = placed_in_notches([bare["cam-inlet-front-65"]], bare.sheet)["65"]
    assert math.degrees(found.place) == pytest.approx(-9.5)


def test_the_train_of_a_cam_leads_to_its_valve(tmp_path: Path) -> None:
    on = drawn(tmp_path)
    train = train_of_cam(on["cam-inlet-front-65"], on.sheet)
    assert train.rocker is None
    assert (train.tappet.id, train.spindle.id, train.valve.id) == (
        "tappet-inlet-front",
        "spindle-inlet-front",
        "valve-inlet-front",
    )


def test_a_train_may_have_a_rocker(tmp_path: Path) -> None:
    parts = {
        "cam cam": 'lifts = "tappet"\n',
        "tappet tappet": 'works = "rocker"\n',
        "rocker rocker": 'works = "spindle"\n',
        "valve-spindle spindle": 'moves = "valve"\n',
        "poppet-valve valve": "",
    }
    on = bench(tmp_path, parts, "cam")
    train = train_of_cam(on["cam"], on.sheet)
    assert train.rocker is on["rocker"]
    assert (train.spindle.id, train.valve.id) == ("spindle", "valve")


TWO = {
    "cylinder-block block": '[bores.a]\n[bores.b]\n[ends.af]\nof_bore = "a"\nside = "front"\n'
    '[ends.ab]\nof_bore = "a"\nside = "back"\n[ends.bf]\nof_bore = "b"\nside = "front"\n[ends.bb]\nof_bore = "b"\n',
    "valve-gear of-a": 'in_block = "block"\ncylinder_bore = "a"\n',
    "valve-gear of-b": 'in_block = "block"\ncylinder_bore = "b"\n',
    "valve-gear of-b-too": 'in_block = "block"\ncylinder_bore = "b"\n',
    "valve-gear of-none": 'in_block = "block"\n',
}


def test_the_gears_of_a_block_by_the_bores_that_they_serve(tmp_path: Path) -> None:
    on = bench(tmp_path, TWO, "block")
    assert {bore: one.id for bore, one in gears_of(on["block"], on.sheet).items()} == {
        "a": "of-a",
        "b": "of-b",
    }
    with pytest.raises(NotAssessed, match="cylinder_bore is not stated"):
        bore_of_gear(on["of-none"], on.sheet)
    (tmp_path / "a").mkdir()
    alone = {"cylinder-block block": "[bores.main]\n", "valve-gear gear": 'in_block = "block"\n'}
    only = bench(tmp_path / "a", alone, "block")
    assert bore_of_gear(only["gear"], only.sheet) == (only["block"], "main")
    assert set(gears_of(only["block"], only.sheet)) == {"main"}


def test_the_ends_of_a_bore_by_their_sides(tmp_path: Path) -> None:
    on = bench(tmp_path, TWO, "block")
    assert end_on(on["block"], "a", End.BACK, on.sheet) == ("ab", on["block"].ends["ab"])
    assert end_on(on["block"], "b", End.FRONT, on.sheet)[0] == "bf"
    with pytest.raises(NotAssessed, match="no end of bore b of block is at the back"):
        end_on(on["block"], "b", End.BACK, on.sheet)


def test_the_gears_beside_a_part_are_those_of_its_block(tmp_path: Path) -> None:
    on = drawn(tmp_path)
    assert gears_beside(on["gear"], on.sheet) == (on["gear"],)
    assert gears_beside(on["liner"], on.sheet) == (on["gear"],)
    (tmp_path / "a").mkdir()
    parts = {"cylinder-block block": "[bores.main]\n", "piston alone": ""}
    bare = bench(tmp_path / "a", parts, "block")
    with pytest.raises(NotAssessed, match="no valve gear serves block"):
        gears_beside(bare["block"], bare.sheet)
    with pytest.raises(NotAssessed, match="no cylinder block is joined to alone"):
        gears_beside(bare["alone"], bare.sheet)


def test_a_notch_in_which_the_engine_does_not_run_has_no_steam(tmp_path: Path) -> None:
    change = ("duty.toml", 'notch = "35"', 'notch = "mid"')
    on = drawn(tmp_path, change)
    case = on["duty"].cases["running"]
    assert steam_in_bore(on["block"], "main", case, on.sheet) is None
    with pytest.raises(NotAssessed, match="gear has no notch 'mid' in which the engine runs"):
        value_from_events("steam_flow", on["block"], case, on.sheet)


def test_a_bore_without_a_gear_and_a_case_without_a_notch_have_none(tmp_path: Path) -> None:
    on = drawn(tmp_path, ("duty.toml", 'notch = "35"\n', ""))
    assert steam_in_bore(on["block"], "main", on["duty"].cases["running"], on.sheet) is None
    assert steam_in_bore(on["block"], "other", on["duty"].cases["starting"], on.sheet) is None


def test_a_cycle_that_is_not_covered_gives_no_value(tmp_path: Path) -> None:
    """Live steam below the pressure of the exhaust."""
    texts = {**files(), "speclint.toml": WITH_METALS}
    before, running = texts["duty.toml"].split("[cases.running]\n")
    low = running.replace("15.2 bar gauge", "0.2 bar gauge")
    on = opened(tmp_path, {**texts, "duty.toml": f"{before}[cases.running]\n{low}"}, "gear")
    with pytest.raises(NotCovered):
        value_from_events("steam_flow", on["block"], on["duty"].cases["running"], on.sheet)
