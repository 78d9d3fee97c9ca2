"""What was measured in steam, beside what the duty assumes or the drawing states."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.specs import MadePart
from speclint.specs.measured_sizes import MisreadError, sizes_of
from speclint.specs.steamings import Steaming, steamings_of
from tests.facts.bench import Bench, bench

DUTY = """[cases.running]
live_temperature = "390 °C"
live_pressure = "15 bar gauge"
[cases.running.temperatures]
cylinder-block = "200..210 °C"
liner = "cylinder-block - 10..30 K"
"""
LINER = 'bore = "500 mm"\n'
FIRST = '[steamings.first]\ncase = "running"\nvalue = "{}"\n'
KNOWN = 'uncertainty = "{}"\n'


def made(folder: Path, record: str, duty: str = DUTY, *, readable: bool = True) -> Bench:
    files = {
        "duty duty": duty,
        "cylinder-liner liner": LINER,
        "made-part made": 'of = "liner"\n' + record,
    }
    return bench(folder, files, "made", readable=readable)


def steamed(on: Bench, duty: str = "duty") -> list[Steaming]:
    part = on["made"]
    assert isinstance(part, MadePart)
    return list(steamings_of(part, on["liner"], on[duty] if duty else None))


def celsius(*kelvins: float) -> list[float]:
    return [one - 273.15 for one in kelvins]


def test_the_metal_of_a_part_beside_its_tied_temperature(tmp_path: Path) -> None:
    """10 to 30 K below 200 to 210 °C: 170 to 200 °C; stretched to hold 205 ± 2."""
    (found,) = steamed(made(tmp_path, FIRST.format("205 °C") + KNOWN.format("2 K")))
    assert (found.case, found.key, found.of_part, found.uncertainty_known) == (
        "running",
        "temperatures.liner",
        False,
        True,
    )
    assert celsius(found.measured.low, found.measured.high) == pytest.approx([203, 207])
    assert found.assumed is not None
    assert celsius(found.assumed.low, found.assumed.high) == pytest.approx([170, 200])
    wider = found.stretched
    assert celsius(wider.low, wider.high) == pytest.approx([170, 207])
    assert (wider.provenance, wider.note) == ("as made", "in steam")


@pytest.mark.parametrize(
    ("value", "low", "high"), [("160 °C", 160, 200), ("180 °C", 170, 200), ("210 °C", 170, 210)]
)
def test_limits_are_stretched_no_further_than_they_must(
    tmp_path: Path, value: str, low: float, high: float
) -> None:
    (found,) = steamed(made(tmp_path, FIRST.format(value), readable=False))
    assert not found.uncertainty_known
    wider = found.stretched
    assert celsius(wider.low, wider.high) == pytest.approx([low, high])


def test_a_quantity_of_the_load_case(tmp_path: Path) -> None:
    record = FIRST.format("388 °C") + 'quantity = "live_temperature"\n' + KNOWN.format("1 K")
    record += FIRST.format("14.2 bar gauge").replace("first", "second") + 'quantity = "live_pressure"\n'
    record += KNOWN.format("0.1 bar")
    first, second = steamed(made(tmp_path, record))
    assert (first.key, second.key) == ("live_temperature", "live_pressure")
    assert celsius(first.measured.low, first.measured.high) == pytest.approx([387, 389])
    assert [1e-5 * one for one in (second.measured.low, second.measured.high)] == pytest.approx([14.1, 14.3])
    assert first.assumed is not None
    assert first.assumed.text == "390 °C"


def test_a_size_of_the_part(tmp_path: Path) -> None:
    record = FIRST.format("501.2 mm") + 'dimension = "bore"\n' + KNOWN.format("0.1 mm")
    (found,) = steamed(made(tmp_path, record), duty="")
    assert (found.key, found.of_part, found.uncertainty_known) == ("bore", True, True)
    assert [1e3 * one for one in (found.measured.low, found.measured.high)] == pytest.approx([501.1, 501.3])
    assert found.assumed is not None
    assert found.assumed.text == "500 mm"


NO_LINER = DUTY.replace('liner = "cylinder-block - 10..30 K"\n', "")


def test_what_no_duty_states_is_not_assumed(tmp_path: Path) -> None:
    (found,) = steamed(made(tmp_path, FIRST.format("205 °C") + KNOWN.format("2 K"), NO_LINER))
    assert found.assumed is None
    assert celsius(found.stretched.low, found.stretched.high) == pytest.approx([203, 207])


@pytest.mark.parametrize(
    ("record", "duty"),
    [
        (FIRST.format("205 °C"), ""),
        (FIRST.format("205 °C").replace('case = "running"\n', ""), "duty"),
        (FIRST.format("205 °C").replace("running", "drifting"), "duty"),
        (FIRST.format("205 °C").replace('value = "205 °C"\n', ""), "duty"),
        (FIRST.format("205 °C") + 'quantity = "no_such"\n', "duty"),
        (FIRST.format("501 mm") + 'dimension = "no_such"\n', "duty"),
        (FIRST.format("501 mm").replace('case = "running"\n', "") + 'dimension = "bore"\n', "duty"),
        (FIRST.format("501 mm").replace('value = "501 mm"\n', "") + 'dimension = "bore"\n', "duty"),
    ],
)
def test_what_is_not_told_of_what_is_left_out(tmp_path: Path, record: str, duty: str) -> None:
    assert steamed(made(tmp_path, record, readable=False), duty) == []


def test_a_value_of_another_dimension_is_told(tmp_path: Path) -> None:
    on = made(tmp_path, FIRST.format("205 mm"), readable=False)
    with pytest.raises(MisreadError):
        steamed(on)


MEASURED = '[measured."{name}"]\ndimension = "bore"\nvalues = {values}\nuncertainty = "0.01 mm"\n{date}'


def test_the_last_day_of_a_key_counts_and_later_lines_of_one_day(tmp_path: Path) -> None:
    days = [
        MEASURED.format(name="b", values='"500.2 mm"', date='date = "2026-02-01"\n'),
        MEASURED.format(name="a", values='["500.1 mm"]', date='date = "2026-01-01"\n'),
        MEASURED.format(
            name="c", values='["500.3 mm", { value = "500.4 mm" }]', date='date = "2026-02-01"\n'
        ),
    ]
    on = made(tmp_path, "".join(days))
    ((size, at),) = sizes_of(on["made"].measured, on["liner"])
    assert (size.name, at.key) == ("c", "bore")
    assert (1e3 * size.least, 1e3 * size.greatest) == pytest.approx((500.3, 500.4))


@pytest.mark.parametrize(
    "values",
    ["[]", '["5 bar gauge"]', '["50 mm"]', '["500 mm ±0.1"]', '["500 mm H7"]', '[{ along = "10 mm" }]'],
)
def test_what_is_misread_is_left_out(tmp_path: Path, values: str) -> None:
    """The bore of a liner is 100 mm and more."""
    on = made(tmp_path, MEASURED.format(name="b", values=values, date=""), readable=False)
    assert sizes_of(on["made"].measured, on["liner"]) == ()
