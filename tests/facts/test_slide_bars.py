"""A slide bar and the slipper on it."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import reach_on_bar, width_on_bars
from tests.facts.bench import Bench, bench

BAR = 'guides = "head"\nwidth = "{}"\n'
STROKE = 'stroke = "660 mm"\n'
HEAD = 'on_rod = "rod"\nslipper_length = "420 mm"\nslipper_width = "160 mm"\n'


def drawn(
    folder: Path,
    bar: str = BAR.format("150 mm"),
    head: str = HEAD,
    stroke: str = STROKE,
    **more: str,
) -> Bench:
    files = {
        "cylinder-block block": "[bores.main]\n[drive]\n" + stroke,
        "cylinder-liner liner": 'housed_in = "block"\nin_bore = "main"\n',
        "piston piston": 'runs_in = "liner"\n',
        "piston-rod rod": 'carries = "piston"\n',
        "crosshead head": head,
        "slide-bar bar": bar,
    }
    return bench(folder, files | {f"slide-bar {name}": text for name, text in more.items()}, "bar")


@pytest.mark.parametrize(
    ("bars", "width"),
    [
        ({}, 0.150),
        ({"bar": BAR.format("170 mm")}, 0.160),
        ({"other": BAR.format("140 mm")}, 0.140),
        ({"other": 'guides = "head"\n'}, 0.150),
        ({"bar": 'guides = "head"\n'}, 0.160),
    ],
)
def test_a_slipper_bears_no_wider_than_its_bars(tmp_path: Path, bars: dict[str, str], width: float) -> None:
    on = drawn(tmp_path, **bars)
    assert width_on_bars(on["head"], on.sheet) == pytest.approx(width)


@pytest.mark.parametrize(
    ("bar", "head", "stroke", "reach"),
    [
        (BAR.format("150 mm"), HEAD, STROKE, 1.080),  # 210 + 660 + 210
        (BAR.format("150 mm") + 'crosshead_from_end = "300 mm"\n', HEAD, STROKE, 1.170),
        (BAR.format("150 mm"), HEAD.replace('slipper_length = "420 mm"\n', ""), STROKE, None),
        (BAR.format("150 mm"), HEAD, "", None),
        ('width = "150 mm"\n', HEAD, STROKE, None),
    ],
)
def test_how_far_a_slipper_comes(
    tmp_path: Path, bar: str, head: str, stroke: str, reach: float | None
) -> None:
    on = drawn(tmp_path, bar, head, stroke)
    found = reach_on_bar(on["bar"], on.sheet)
    assert (None if found is None else found.value) == pytest.approx(reach)
