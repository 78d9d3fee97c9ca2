"""What a valve passes, and when it leaves its seat on a cam of which a table of lifts is known."""

from __future__ import annotations

import math
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.errors import OutOfRange
from speclint.facts import beats_of, crank_of, passage_of, share_at, valve_timing
from speclint.facts.valve_timing import (
    DriveOfGear,
    angle_by_table,
    error_of_setting,
    lag_of_drive,
    ramp_shutting_angle,
)
from speclint.handbook.cams import LiftTable
from speclint.handbook.valve_events import Crank, End
from speclint.rules import NotCovered
from tests.facts.bench import Bench, bench

BEAT = """seat_diameter = "{d} mm"
seat_angle = "45 °"
contact_width = "2.5 mm"
throat = "{t} mm"
blocked_area = "1000 mm²"
"""
VALVE = 'beats = {beats}\nport_area = "16000 mm²"\n{more}'


def valve(folder: Path, beats: int = 2, more: str = 'through_valve = "neither"\n') -> Bench:
    text = VALVE.format(beats=beats, more=more)
    text += "[upper_beat]\n" + BEAT.format(d=150, t=140) + "[lower_beat]\n" + BEAT.format(d=140, t=130)
    return bench(folder, {"poppet-valve valve": text}, "valve")


def test_a_valve_has_one_or_two_beats(tmp_path: Path) -> None:
    """π 140²/4 − 1000 = 14 393.8 mm² and π 130²/4 − 1000 = 12 273.2 mm² of throat."""
    on = valve(tmp_path)
    found = passage_of(on["valve"], "if", on.sheet)
    assert [one.diameter for one in found.beats] == pytest.approx([0.150, 0.140])
    throats = [math.pi / 4 * d**2 - 1e-3 for d in (0.14, 0.13)]
    assert [one.throat for one in found.beats] == pytest.approx(throats)
    assert [index for index, _ in beats_of(on["valve"], on.sheet)] == ["u", "l"]
    (tmp_path / "a").mkdir()
    single = valve(tmp_path / "a", 1, "")
    assert len(passage_of(single["valve"], "if", single.sheet).beats) == 1
    assert [index for index, _ in beats_of(single["valve"], single.sheet)] == ["u"]
    (tmp_path / "b").mkdir()
    of_three = valve(tmp_path / "b", 3)
    with pytest.raises(NotCovered, match="a poppet valve of 3 beats: one or two are covered"):
        passage_of(of_three["valve"], "if", of_three.sheet)
    with pytest.raises(NotCovered, match="a poppet valve of 3 beats: one or two are covered"):
        beats_of(of_three["valve"], of_three.sheet)


@pytest.mark.parametrize(
    ("beats", "more", "throat"),
    [
        (1, 'through_valve = "upper"\ncommon_throat = "9000 mm²"\n', None),
        (2, 'through_valve = "neither"\n', None),
        (2, 'through_valve = "neither"\ncommon_throat = "9000 mm²"\n', 9e-3),
        (2, 'through_valve = "upper"\ncommon_throat = "9000 mm²"\n', 9e-3),
    ],
)
def test_the_throat_of_streams_that_have_met(
    tmp_path: Path, beats: int, more: str, throat: float | None
) -> None:
    on = valve(tmp_path, beats, more)
    assert passage_of(on["valve"], "if", on.sheet).common_throat == pytest.approx(throat)


@pytest.mark.parametrize(
    ("more", "of_valve", "of_port"),
    [
        ("", 0.75, 0.9),  # the usual ones
        ('discharge_coefficient = "0.6"\n', 0.6, 0.9),
        ('port_discharge_coefficient = "0.8"\n', 0.75, 0.8),
        (
            'discharge_coefficient = "0.6"\nport_discharge_coefficient = "0.8"\nloss_coefficient = "3"\n',
            0.6,
            0.8,
        ),
        ('loss_coefficient = "3"\n', 1.0, 0.5),  # 1/√(1 + 3)
        ('discharge_coefficient = "0.6"\nloss_coefficient = "3"\n', 0.6, 0.9),
    ],
)
def test_the_coefficients_are_those_stated_or_by_the_loss(
    tmp_path: Path, more: str, of_valve: float, of_port: float
) -> None:
    on = valve(tmp_path, more='through_valve = "neither"\n' + more)
    found = passage_of(on["valve"], "if", on.sheet)
    assert (found.valve_coefficient, found.port_coefficient) == pytest.approx((of_valve, of_port))


#: It rises by 1 mm in each step of 0.1 rad to 4 mm and falls so again.
TENT = LiftTable([0.1 * n for n in range(9)], [1e-3 * (4 - abs(4 - n)) for n in range(9)])


@pytest.mark.parametrize(
    ("opens", "angle", "least", "most"),
    [(True, 0.2, 0.1, 0.3), (False, 0.6, 0.5, 0.7)],
)
def test_an_event_by_a_table_is_where_the_lift_passes_the_clearance(
    opens: bool, angle: float, least: float, most: float
) -> None:
    """Clearances of 2, 1 and 3 mm: at their own steps, from a foot of 1 rad."""
    found = angle_by_table(TENT, 1.0, 2e-3, 1e-3, 3e-3, opens)
    assert (found.nominal, found.low, found.high) == pytest.approx((1 + angle, 1 + least, 1 + most), abs=1e-6)


@pytest.mark.parametrize(
    ("δ", "h_r", "γ", "inside"),
    [
        (0.0, 1e-3, 0.1, True),
        (1e-3, 1e-3, 0.1, True),
        (1.1e-3, 1e-3, 0.1, False),
        (-1e-6, 1e-3, 0.1, False),
        (0.0, 0.0, 0.1, False),
        (0.0, 1e-3, 0.0, False),
    ],
)
def test_the_closing_ramp_takes_the_clearance(δ: float, h_r: float, γ: float, inside: bool) -> None:
    at = {"φ_f": 0.2, "β": 1.5, "γ": γ, "δ": δ, "h_r": h_r}
    if inside:
        assert ramp_shutting_angle(**at) == pytest.approx(1.7 - γ * δ / h_r)
        return
    with pytest.raises(OutOfRange):
        ramp_shutting_angle(**at)


@pytest.mark.parametrize(("ramp", "by"), [((0.1, 1e-3), "_by_ramp"), (None, "_by_table")])
@pytest.mark.parametrize(("opens", "event"), [(True, "o"), (False, "s")])
def test_an_event_is_by_the_ramp_where_the_cam_has_one(
    monkeypatch: pytest.MonkeyPatch, ramp: object, by: str, opens: bool, event: str
) -> None:
    for name in ("_by_ramp", "_by_table"):
        monkeypatch.setattr(valve_timing, name, lambda *given, name=name: (name, *given[1:3]))
    at = SimpleNamespace(serves="inlet", side=End.FRONT, cam="cam")
    cam: Any = SimpleNamespace(ramp=ramp, at=at, mark="if")
    sheet: Any = SimpleNamespace(
        work=lambda *given, **named: (given, named), look_up=lambda name, *_, **__: name
    )
    found: Any = valve_timing.event_angle(cam, DriveOfGear(0.01, 0.02), opens=opens, sheet=sheet)
    said = {"φ_0": (by, opens, event), "e": "e_if", "a": "a"}
    assert found == ((f"φ_{event}if", valve_timing.angle_as_set), said)


def test_errors_of_setting_go_either_way_and_play_lags() -> None:
    setting, lag = error_of_setting("the inlet", 0.01), lag_of_drive(0.02)
    assert (setting.nominal, setting.low, setting.high) == (0.0, -0.01, 0.01)
    assert (lag.nominal, lag.low, lag.high) == (0.0, 0.0, 0.02)


@pytest.mark.parametrize(("side", "sign"), [(End.FRONT, 1), (End.BACK, -1)])
def test_the_share_of_the_stroke_at_a_quarter_turn(tmp_path: Path, side: End, sign: int) -> None:
    """Half of it, and l − √(l² − r²) of 2 r more in front and less at the back, by Pythagoras."""
    on = bench(tmp_path, {"piston piston": ""}, "piston")
    found = share_at(math.pi / 2, Crank(0.33, 1.9), side, "x", on.sheet)
    assert found == pytest.approx(0.5 + sign * (1.9 - math.sqrt(1.9**2 - 0.33**2)) / 0.66)


def test_a_crank_is_half_a_stroke_on_a_rod_that_is_long_enough(tmp_path: Path) -> None:
    drive = '[bores.main]\n[drive]\nstroke = "{}"\nconnecting_rod_length = "1900 mm"\n'
    on = bench(tmp_path, {"cylinder-block block": drive.format("660 mm")}, "block")
    assert crank_of(on["block"], "main", on.sheet) == Crank(0.33, 1.9)


def test_a_rod_no_longer_than_the_crank_of_the_engine_is_not_covered(tmp_path: Path) -> None:
    """A rod of 400 mm in the block, and half the stroke in the engine: 399.5 mm, and 400 mm."""

    def drawn(stroke: str) -> Bench:
        (tmp_path / stroke).mkdir()
        block = '[bores.main]\n[drive]\nconnecting_rod_length = "400 mm"\n'
        engine = f'stroke = "{stroke}"\n[cranks.one]\nblock = "block"\n'
        return bench(tmp_path / stroke, {"cylinder-block block": block, "engine engine": engine}, "block")

    longer, short = drawn("799 mm"), drawn("800 mm")
    assert crank_of(longer["block"], "main", longer.sheet) == Crank(0.3995, 0.4)
    with pytest.raises(
        NotCovered, match=r"^the connecting rod must be longer than the crank, and that above 0$"
    ):
        crank_of(short["block"], "main", short.sheet)
