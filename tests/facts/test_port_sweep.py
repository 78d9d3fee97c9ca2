"""Whether rings run over a liner's port: a face 25 mm before the collar's seat and one 861 mm beyond it, 8 mm clear.

Rings 20 mm behind the faces of the piston run from 25 + 8 + 20 = 53 mm to 861 − 8 − 20 = 833 mm.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import crossed_by_rings, ends_in_order
from speclint.facts.port_sweep import swept_by_rings
from tests.facts.bench import Bench, bench

BLOCK = """[bores.main]
[ends.back]
of_bore = "main"
side = "back"
face_from_seat = "861 mm"
clearance = "8 mm"
[ends.front]
of_bore = "main"
side = "front"
face_from_seat = "25 mm"
clearance = "8 mm"
"""
LINER = 'housed_in = "block"\nin_bore = "main"\ncollar.end = "front"\n'
PORT = '[ports.p]\nfrom_collar = "{}"\nheight = "20 mm"\n'
RING = 'runs_in = "liner"\nplace = "{}"\nedge_from_piston_face = "20 mm"\n'


def drawn(
    folder: Path, port: str = PORT.format("400 mm"), block: str = BLOCK, liner: str = LINER, **rings: str
) -> Bench:
    files = {"cylinder-block block": block, "cylinder-liner liner": liner + port}
    of_both = {name: RING.format(name) for name in ("front", "back")} | rings
    files |= {f"piston-ring {name}": text for name, text in of_both.items() if text}
    return bench(folder, files, "liner")


def swept(on: Bench) -> tuple[float, float] | None:
    found = swept_by_rings(on["liner"], on.sheet)
    return None if found is None else (found[0].value, found[1].value)


def test_rings_run_between_both_dead_centres(tmp_path: Path) -> None:
    on = drawn(tmp_path)
    assert swept(on) == pytest.approx((0.053, 0.833))
    assert [way for _, way in ends_in_order(on["liner"], on.sheet)] == [1.0, -1.0]


def test_the_collar_at_the_back_turns_them_round(tmp_path: Path) -> None:
    """861 + 28 mm at the end of the collar, and 25 − 28 mm at the other."""
    on = drawn(tmp_path, liner=LINER.replace("front", "back"))
    assert swept(on) == pytest.approx((0.889, -0.003))


def test_a_groove_goes_before_the_word_of_the_ring(tmp_path: Path) -> None:
    files = {
        "cylinder-block block": BLOCK,
        "cylinder-liner liner": LINER,
        "piston-ring one": RING.format("back"),
        "piston-ring two": RING.format("front"),
        "piston piston": 'length = "150 mm"\n[grooves.a]\ntakes = "one"\nat = "30 mm"\nwidth = "16 mm"\n'
        '[grooves.b]\ntakes = "two"\nat = "100 mm"\nwidth = "16 mm"\n',
    }
    on = bench(tmp_path, files, "liner")
    assert swept(on) == pytest.approx((0.063, 0.819))  # 25 + 8 + 30; 861 − 8 − (150 − 100 − 16)


@pytest.mark.parametrize(
    "changed",
    [
        {"front": "", "back": ""},
        {"front": ""},
        {"back": RING.format("middle")},
        {"back": RING.format("back").replace('place = "back"\n', "")},
        {"back": RING.format("back").replace('edge_from_piston_face = "20 mm"\n', "")},
        {"block": BLOCK.replace('face_from_seat = "861 mm"\n', "")},
        {
            "block": BLOCK.replace(
                'face_from_seat = "25 mm"\nclearance = "8 mm"\n', 'face_from_seat = "25 mm"\n'
            )
        },
        {"block": BLOCK.replace('side = "back"\n', "")},
        {"liner": LINER.replace('collar.end = "front"\n', "")},
        {"liner": LINER.replace('in_bore = "main"\n', "")},
    ],
)
def test_where_something_is_not_drawn_nothing_is_swept(tmp_path: Path, changed: dict[str, str]) -> None:
    on = drawn(tmp_path, **changed)
    assert swept(on) is None
    assert crossed_by_rings(on["liner"].ports["p"], on["liner"], on.sheet) is None


@pytest.mark.parametrize(
    ("middle", "crossed"),
    [
        ("42 mm", False),
        ("43 mm", False),
        ("44 mm", True),
        ("842 mm", True),
        ("843 mm", False),
        ("844 mm", False),
    ],
)
def test_a_port_is_crossed_where_it_reaches_into_what_is_swept(
    tmp_path: Path, middle: str, crossed: bool
) -> None:
    """10 mm to either side of its middle: at 43 mm its edge lies where the first ring stops, at 843 mm the last."""
    on = drawn(tmp_path, PORT.format(middle))
    found = crossed_by_rings(on["liner"].ports["p"], on["liner"], on.sheet)
    assert found is not None
    assert found.value is crossed


@pytest.mark.parametrize("missing", ['from_collar = "400 mm"\n', 'height = "20 mm"\n'])
def test_a_port_without_its_sizes_is_not_told(tmp_path: Path, missing: str) -> None:
    on = drawn(tmp_path, PORT.format("400 mm").replace(missing, ""))
    assert crossed_by_rings(on["liner"].ports["p"], on["liner"], on.sheet) is None
