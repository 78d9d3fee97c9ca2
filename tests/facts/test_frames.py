"""The pads of a block by the frames they are on, and what each frame takes."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import (
    bores_on_frame,
    face_by_sides,
    face_of_cut_out,
    face_of_pad,
    frames_of_pads,
    mass_drawn,
    mass_on_frame,
    pads_by_frame,
    shock_on_frame,
    weldments_unweighed,
)
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
    on = drawn(tmp_path, "abc", (), **faces)
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


def two_frames(folder: Path, *, locates: str = "true", bore: str = 'bore = "b"\n', own: str = "") -> Bench:
    """A block of two bores on pads a and b of one frame and c of another, whose fastening may name a bore."""
    files = {
        "cylinder-block block": "[bores.a]\n[bores.b]\n[pads.a]\nlocates = true\n[pads.b]\nlocates = false\n"
        f"[pads.c]\nlocates = {locates}\n",
        "frame-fastening here": 'holds = "block"\npad = "a"\nother_pad = "b"\ncarried_mass = "1000 kg"\nshock = "2"\n'
        + own,
        "frame-fastening far": 'holds = "block"\npad = "b"\ncarried_mass = "1100 kg"\nshock = "3"\n',
        "frame-fastening there": 'holds = "block"\npad = "c"\ncarried_mass = "800 kg"\nshock = "5"\n' + bore,
        "weldment weldment": 'makes = "block"\nmass = "2500 kg"\n',
    }
    return bench(folder, files, "here")


@pytest.mark.parametrize(
    ("locates", "bore", "own", "bores"),
    [
        ("true", 'bore = "b"\n', "", ("a",)),
        ("true", 'bore = "b"\n', 'bore = "b"\n', ("a", "b")),  # two frames share it
        ("true", "", "", ("a", "b")),
        ("false", 'bore = "b"\n', "", ("a", "b")),  # a pad that slides takes no thrust
    ],
)
def test_the_thrust_of_a_bore_comes_on_the_frame_that_takes_it(
    tmp_path: Path, locates: str, bore: str, own: str, bores: tuple[str, ...]
) -> None:
    on = two_frames(tmp_path, locates=locates, bore=bore, own=own)
    assert bores_on_frame(on["here"], on["block"], on.sheet) == bores


def test_a_frame_carries_what_is_stated_and_no_less_than_what_is_left(tmp_path: Path) -> None:
    """1100 kg stated at its far end; 2500 − 800 = 1700 kg of what is drawn, unless a pad that slides is there."""
    on = two_frames(tmp_path)
    assert mass_on_frame(on["here"], on["block"], on.sheet) == pytest.approx(1700)
    assert mass_on_frame(on["there"], on["block"], on.sheet) == pytest.approx(1500)  # less the 1000 kg here
    assert shock_on_frame(on["here"], on["block"], on.sheet) == pytest.approx(3)
    assert shock_on_frame(on["there"], on["block"], on.sheet) == pytest.approx(5)
    (tmp_path / "a").mkdir()
    slides = two_frames(tmp_path / "a", locates="false")
    assert mass_on_frame(slides["here"], slides["block"], slides.sheet) == pytest.approx(2500)


PLAN = 'lifts = "block"\n'


@pytest.mark.parametrize(
    ("plan", "weldment", "mass"),
    [
        ("", 'mass = "1700 kg"\n', 1700.0),
        ('[weights.w]\nof = "weldment"\nmass = "1600 kg"\n', 'mass = "1700 kg"\n', 1700.0),
        ('[weights.w]\nof = "weldment"\n[weights.s]\nmass = "300 kg"\n', 'mass = "1700 kg"\n', 2000.0),
        # a weight that names no part may be some of those that no weight names: the greater counts
        ('[weights.s]\nmass = "300 kg"\n', 'mass = "1700 kg"\n', 1700.0),
        ('[weights.s]\nmass = "1800 kg"\n', 'mass = "1700 kg"\n', 1800.0),
        ("", "", None),
    ],
)
def test_the_mass_of_a_block_as_far_as_it_is_drawn(
    tmp_path: Path, plan: str, weldment: str, mass: float | None
) -> None:
    files = {"cylinder-block block": "[bores.main]\n", "weldment weldment": 'makes = "block"\n' + weldment}
    files |= {"lifting-plan plan": PLAN + plan} if plan else {}
    on = bench(tmp_path, files, "block")
    found = mass_drawn(on["block"], on.sheet, on.sheet.take)
    assert (None if found is None else found.value) == (None if mass is None else pytest.approx(mass))
    unweighed = [one.id for one in weldments_unweighed(on["block"], on.sheet)]
    assert unweighed == ([] if weldment or "weldment" in plan else ["weldment"])
