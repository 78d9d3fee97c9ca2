"""Where a ring stands in its piston, by the groove that takes it."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import edge_by_groove, edge_of_ring, place_in_piston
from tests.facts.bench import Bench, bench

GROOVES = """length = "150 mm"
[grooves.second]
takes = "back"
at = "120 mm"
width = "16 mm"
[grooves.first]
takes = "front"
at = "20 mm"
width = "16 mm"
"""
MIDDLE = '[grooves.third]\ntakes = "middle"\nat = "70 mm"\nwidth = "16 mm"\n'


def ringed(folder: Path, piston: str) -> Bench:
    files = {"piston piston": piston}
    files |= {
        f"piston-ring {name}": 'edge_from_piston_face = "30 mm"\n' for name in ("front", "middle", "back")
    }
    return bench(folder, files, "piston")


@pytest.mark.parametrize(
    ("piston", "places"),
    [
        (GROOVES + MIDDLE, ("front", "middle", "back")),
        (GROOVES, ("front", None, "back")),
        (GROOVES.replace('at = "120 mm"\n', ""), (None, None, None)),
        (
            GROOVES.partition("[grooves.first]")[0],
            (None, None, None),
        ),  # of one groove the ring is at both ends
        (GROOVES.replace('takes = "front"', 'takes = "back"'), (None, None, None)),  # it stands in two
        (GROOVES.replace('takes = "front"\n', ""), (None, None, "back")),
    ],
)
def test_the_order_of_the_grooves_tells_where_a_ring_is(
    tmp_path: Path, piston: str, places: tuple[str | None, ...]
) -> None:
    on = ringed(tmp_path, piston)
    for name, place in zip(("front", "middle", "back"), places, strict=True):
        found = place_in_piston(on[name], on.sheet)
        assert (None if found is None else found.value) == place


@pytest.mark.parametrize(
    ("piston", "ring", "place", "edge"),
    [
        (GROOVES, "front", "front", 0.020),
        (GROOVES, "back", "back", 0.014),  # 150 − 120 − 16
        (GROOVES + MIDDLE, "middle", "middle", None),
        (GROOVES, "middle", "front", None),
        (GROOVES.replace('at = "120 mm"\n', ""), "back", "back", None),
        (GROOVES.replace('length = "150 mm"\n', ""), "back", "back", None),
        (GROOVES.replace('length = "150 mm"\n', ""), "front", "front", 0.020),
        (GROOVES.replace('at = "120 mm"\nwidth = "16 mm"\n', 'at = "120 mm"\n'), "back", "back", None),
    ],
)
def test_the_edge_of_a_ring_is_that_of_its_groove(
    tmp_path: Path, piston: str, ring: str, place: str, edge: float | None
) -> None:
    on = ringed(tmp_path, piston)
    found = edge_by_groove(on[ring], place, on.sheet, on.sheet.take)
    assert (None if found is None else found.value) == pytest.approx(edge)
    assert edge_of_ring(on[ring], place, on.sheet) == pytest.approx(0.030 if edge is None else edge)
