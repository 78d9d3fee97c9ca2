"""Where the faces of a cylinder's covers are, and how long a bore is up to the cover that stops its liner."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import bore_up_to_stop, cover_beyond, face_by_seat, face_forward
from tests.facts.bench import Bench, bench

BLOCK = """[bores.main]
seat_at = "711 mm"
length = "905 mm"
[ends.front]
of_bore = "main"
side = "front"
face_from_seat = "25 mm"
[ends.back]
of_bore = "main"
side = "back"
face_from_seat = "861 mm"
face_at = "-155 mm"
"""
LINER = 'housed_in = "block"\nin_bore = "main"\nfree_end_stop = "cover"\ncollar.end = "front"\n'


def drawn(folder: Path, block: str = BLOCK, liner: str = LINER) -> Bench:
    files = {"cylinder-block block": block, "cylinder-liner liner": liner}
    return bench(folder, {name: text for name, text in files.items() if text}, "block")


@pytest.mark.parametrize(("collar", "place"), [("front", -0.150), ("back", 1.572)])
def test_a_face_lies_from_the_seat_away_from_the_collar(tmp_path: Path, collar: str, place: float) -> None:
    """711 − 861 and 711 + 861 mm."""
    on = drawn(tmp_path, liner=LINER.replace('"front"', f'"{collar}"'))
    end = on["block"].ends["back"]
    found = face_by_seat(on["block"], end, on.sheet, on.sheet.take)
    assert found is not None
    assert found.value == pytest.approx(place)
    assert face_forward(on["block"], end, on.sheet) == pytest.approx(place)


@pytest.mark.parametrize(
    ("block", "liner"),
    [
        (
            BLOCK.replace('side = "back"', 'side = "back"').replace(
                '[ends.back]\nof_bore = "main"', "[ends.back]"
            ),
            LINER,
        ),
        (BLOCK.replace('seat_at = "711 mm"\n', ""), LINER),
        (BLOCK.replace('face_from_seat = "861 mm"\n', ""), LINER),
        (BLOCK, LINER.replace('collar.end = "front"\n', "")),
        (BLOCK, ""),
    ],
)
def test_where_the_seat_does_not_tell_the_face_is_as_stated(tmp_path: Path, block: str, liner: str) -> None:
    on = drawn(tmp_path, block, liner)
    end = on["block"].ends["back"]
    assert face_by_seat(on["block"], end, on.sheet, on.sheet.take) is None
    assert face_forward(on["block"], end, on.sheet) == pytest.approx(-0.155)


@pytest.mark.parametrize(
    ("block", "liner", "beyond"),
    [
        (BLOCK, LINER, "861 mm"),
        (BLOCK, LINER.replace('collar.end = "front"', 'collar.end = "back"'), "25 mm"),
        (BLOCK, LINER.replace('"cover"', '"shoulder"'), ""),
        (BLOCK, LINER.replace('free_end_stop = "cover"\n', ""), ""),
        (BLOCK, LINER.replace('collar.end = "front"\n', ""), ""),
        (BLOCK.replace('face_from_seat = "861 mm"\n', ""), LINER, ""),
        (BLOCK.replace('side = "back"\n', ""), LINER, ""),
    ],
)
def test_the_cover_that_stops_a_liner_is_at_its_free_end(
    tmp_path: Path, block: str, liner: str, beyond: str
) -> None:
    on = drawn(tmp_path, block, liner)
    assert getattr(cover_beyond(on["liner"], on.sheet), "text", "") == beyond
    assert getattr(bore_up_to_stop(on["liner"], on.sheet), "text", "") == (beyond or "905 mm")
