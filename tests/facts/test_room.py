"""How far parts stand out towards the loading gauge, and the gap to what moves."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import least_gap, reach_of
from tests.facts.bench import bench

BLOCK = '[bores.main]\naxis_from_frame = "350 mm"\n[ends.front]\nof_bore = "main"\nside = "front"\n'
ENVELOPE = 'around = "block"\nframe_from_centre = "530 mm"\ncylinders = "{}"\n'


@pytest.mark.parametrize(
    ("part", "where", "block", "reach"),
    [
        ("cover", "outside", BLOCK, 1.280),  # 530 + 350 + 400
        ("cover", "inside", BLOCK, 0.580),
        ("box", "outside", BLOCK, 1.300),
        ("box", "inside", BLOCK, 0.600),
        ("box", "outside", BLOCK.replace('of_bore = "main"\n', ""), 1.300),
        ("pipe", "outside", BLOCK, None),
    ],
)
def test_how_far_a_part_stands_out(
    tmp_path: Path, part: str, where: str, block: str, reach: float | None
) -> None:
    files = {
        "cylinder-block block": block,
        "cylinder-cover cover": 'closes = "block"\nof_end = "front"\noutside_diameter = "800 mm"\n',
        "cam-box box": 'mounted_on = "block"\nof_end = "front"\nstands_out = "420 mm"\n',
        "steam-pipe pipe": 'joined_to = "block"\noutside_diameter = "200 mm"\n',
        "envelope envelope": ENVELOPE.format(where),
    }
    on = bench(tmp_path, files, "envelope")
    found = reach_of(on[part], on["envelope"], on["block"], on.sheet, on.sheet.take)
    assert (None if found is None else found.value) == pytest.approx(reach)
    if found is not None:
        own = {"cover": "outside_diameter", "box": "stands_out"}[part]
        rests_on = ["frame_from_centre", "bores.main.axis_from_frame", own]
        assert [str(one.key) for one in found.places] == rests_on


CHAIN = """[chain.frame]
size = "50 mm"
direction = "widens"
[chain.head]
size = "30 mm"
direction = "narrows"
"""


@pytest.mark.parametrize(
    ("gap", "least"),
    [
        ('size = "25 mm"\n', 0.025),
        ('chain = "chain"\n', 0.020),
        ('chain = "chain"\nsize = "25 mm"\n', 0.020),
        ('chain = "chain"\nsize = "15 mm"\n', 0.015),
        ('chain = "chain"\nof = "bar"\ndimension = "width"\n', 0.020),
        ('chain = "chain"\nof = "bar"\ndimension = "web"\n', 0.012),
    ],
)
def test_the_lesser_of_a_gap_and_its_chain_counts(tmp_path: Path, gap: str, least: float) -> None:
    files = {
        "dimension-chain chain": CHAIN,
        "slide-bar bar": 'width = "120 mm"\nweb = "12 mm"\n',
        "envelope envelope": "[gaps.rod]\n" + gap,
    }
    on = bench(tmp_path, files, "envelope")
    assert least_gap("rod", on["envelope"].gaps["rod"], on.sheet) == pytest.approx(least)
