"""The pads of a block by the frames they are on, and what each frame takes."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import face_by_sides, face_of_cut_out, face_of_pad, frames_of_pads, pads_by_frame
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench


def drawn(folder: Path, pads: str, joined: tuple[str, ...] = (), **faces: str) -> Bench:
    """Pads by their letters; each fastening joins the two of a word of two letters."""
    files = {
        "cylinder-block block": "".join(f"[pads.{pad}]\n" for pad in pads),
        "frame f1": "",
        "frame f2": "",
    }
    for number, names in enumerate(joined):
        keys = zip(("pad", "other_pad"), names, strict=False)
        files[f"frame-fastening bolts-{number}"] = 'holds = "block"\n' + "".join(
            f'{key} = "{name}"\n' for key, name in keys
        )
    for pad, frame in faces.items():
        stated = f'in_frame = "{frame}"\n' if frame else ""
        files[f"locating-face at-{pad}"] = f'locks = "block"\npad = "{pad}"\n{stated}'
    return bench(folder, files, "block")


@pytest.mark.parametrize(
    ("pads", "joined", "frames"),
    [
        ("abc", (), [("a", "b", "c")]),  # on one frame, unless it is drawn on two
        ("abc", ("ab",), [("a", "b", "c")]),
        ("abcd", ("ab", "cd"), [("a", "b"), ("c", "d")]),
        ("abcd", ("cd", "ab"), [("a", "b"), ("c", "d")]),
        ("abcde", ("ab", "cd"), [("a", "b"), ("c", "d"), ("e",)]),
        ("abcd", ("ab", "cd", "bc"), [("a", "b", "c", "d")]),
        ("abcdef", ("ab", "cd", "ef", "bc"), [("a", "b", "c", "d"), ("e", "f")]),
        ("abcd", ("ab", "c", "d"), [("a", "b", "c", "d")]),  # a fastening of one pad joins none
        ("", (), []),
    ],
)
def test_pads_that_fastenings_join_are_on_one_frame(
    tmp_path: Path, pads: str, joined: tuple[str, ...], frames: list[tuple[str, ...]]
) -> None:
    on = drawn(tmp_path, pads, joined)
    assert frames_of_pads(on["block"], on.sheet) == frames


@pytest.mark.parametrize(
    ("faces", "frames"),
    [
        ({"a": "f1", "b": "f2", "c": "f1"}, [["a", "c"], ["b"]]),
        ({"a": "f1", "b": "f2", "c": ""}, [["a", "b", "c"]]),  # the cut-out of c leads to no frame
        ({"a": "f1", "b": "f2"}, [["a", "b", "c"]]),
    ],
)
def test_cut_outs_that_lead_to_frames_tell_which_pads_are_on_them(
    tmp_path: Path, faces: dict[str, str], frames: list[list[str]]
) -> None:
    on = drawn(tmp_path, "abc", **faces)
    assert pads_by_frame(on["block"], on.sheet) == frames


def test_each_pad_has_a_cut_out(tmp_path: Path) -> None:
    on = drawn(tmp_path, "ab", a="f1")
    assert face_of_cut_out(on["block"], "a", on.sheet).id == "at-a"
    with pytest.raises(NotAssessed, match="no locating face says that it takes pad b"):
        face_of_cut_out(on["block"], "b", on.sheet)


SIDES = 'width = "300 mm"\nheight = "200 mm"\n'
BOLTS = 'holds = "block"\npad = "a"\ncount = 4\nhole = "40 mm"\n'
_HOLES = 4 * 3.14159265 * 0.02**2  # m², of four of 40 mm


@pytest.mark.parametrize(
    ("pad", "bolts", "by_sides", "face"),
    [
        (SIDES, "", 0.060, 0.060),
        (SIDES, BOLTS, 0.060 - _HOLES, 0.060 - _HOLES),
        (SIDES, BOLTS.replace("count = 4\n", ""), 0.060, 0.060),
        (SIDES, BOLTS.replace('hole = "40 mm"\n', ""), 0.060, 0.060),
        (SIDES, BOLTS.replace('pad = "a"', 'pad = "b"'), 0.060, 0.060),
        (SIDES, BOLTS.replace('pad = "a"\n', ""), 0.060, 0.060),
        (SIDES + 'area = "50000 mm²"\n', "", 0.060, 0.050),
        (SIDES + 'area = "70000 mm²"\n', "", 0.060, 0.060),
        ('width = "300 mm"\narea = "70000 mm²"\n', BOLTS, None, 0.070),
        ('height = "200 mm"\narea = "70000 mm²"\n', BOLTS, None, 0.070),
    ],
)
def test_the_face_of_a_pad_is_what_sides_and_holes_leave(
    tmp_path: Path, pad: str, bolts: str, by_sides: float | None, face: float
) -> None:
    files = {"cylinder-block block": f"[pads.a]\n{pad}[pads.b]\n"}
    if bolts:
        files["frame-fastening bolts"] = bolts
    on = bench(tmp_path, files, "block")
    found = face_by_sides(on["block"], "a", on.sheet, on.sheet.take)
    assert (None if found is None else found.value) == pytest.approx(by_sides)
    assert face_of_pad(on["block"], "a", on["block"].pads["a"], on.sheet) == pytest.approx(face)
