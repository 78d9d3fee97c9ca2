"""The gap that a chain leaves, and the room of a pad that slides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import gap_of_chain, room_of_pad
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

LINKS = """[chain.slot]
size = "186 mm"
direction = "widens"
[chain.pad]
size = "180 mm"
direction = "narrows"
"""


def chained(folder: Path, links: str = LINKS) -> Bench:
    return bench(folder, {"dimension-chain chain": links}, "chain")


@pytest.mark.parametrize(
    ("old", "new", "gap"),
    [
        ("", "", 0.006),
        ('size = "180 mm"', 'size = "180 mm"\nmeasured = "180.4 mm"', 0.0056),
        ('size = "180 mm"', 'size = "180 mm"\nlever = "0.5"', 0.096),
        ("narrows", "widens", 0.366),
    ],
)
def test_links_widen_or_narrow_a_gap(tmp_path: Path, old: str, new: str, gap: float) -> None:
    on = chained(tmp_path, LINKS.replace(old, new) if old else LINKS)
    found = gap_of_chain(on["chain"], on.sheet, on.sheet.take)
    assert found.value == pytest.approx(gap)
    assert [place.key for place in found.places] == [
        "chain.slot.size",
        "chain.pad.measured" if "measured" in new else "chain.pad.size",
    ]


def test_a_chain_without_links_is_not_assessed(tmp_path: Path) -> None:
    on = chained(tmp_path, "")
    with pytest.raises(NotAssessed, match="no link of the chain is stated"):
        gap_of_chain(on["chain"], on.sheet, on.sheet.take)


SLOT, WIDTH = 'slot = "190 mm"\n', 'width = "180 mm"\n'
CLOSES = '[closes]\nof = "face"\ndimension = "{key}"\n'


@pytest.mark.parametrize(
    ("slot", "width", "closes", "room"),
    [
        (SLOT, WIDTH, "", 0.005),  # (190 − 180)/2: no chain closes there
        (SLOT, WIDTH, CLOSES.format(key="room"), 0.006),
        (SLOT, WIDTH, CLOSES.format(key="slot"), 0.005),
        (SLOT, WIDTH, '[closes]\nof = "face"\n', 0.005),
        (SLOT, WIDTH, '[closes]\nof = "other"\ndimension = "room"\n', 0.005),
        ("", "", CLOSES.format(key="room"), 0.006),
        (SLOT, "", "", None),
        ("", WIDTH, "", None),
    ],
)
def test_the_room_of_a_pad_is_by_its_chain_else_half_of_what_is_left(
    tmp_path: Path, slot: str, width: str, closes: str, room: float | None
) -> None:
    face = 'locks = "block"\npad = "front"\n'
    of_face = LINKS.replace('size = "186 mm"', 'of = "face"\ndimension = "at"')
    files = {
        "cylinder-block block": "[pads.front]\n" + width,
        "locating-face face": face + 'at = "186 mm"\n' + slot,
        "locating-face other": face,
        "dimension-chain chain": of_face + closes,
    }
    on = bench(tmp_path, files, "face")
    found = room_of_pad(on["face"], on["block"].pads["front"], on.sheet, on.sheet.take)
    assert (None if found is None else found.value) == pytest.approx(room)
