"""Chains, fits and cut-outs: what they state beside the parts that they point at."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, found, limit
from tests.plugins.fits.bench import in_fit, write

WRONG = ("finding", Grade.NONCONFORMITY)
HOLD = ("finding", Grade.HOLD)
FINE = ("conforms", None)
SILENT = ("not applicable", None)
Ends = tuple[str, Grade | None]

BLOCK = """
kind = "cylinder-block"
id = "block"
[pads.front]
at = "620 mm"
[pads.back]
at = "0 mm"
"""
FACE = 'kind = "locating-face"\nid = "face"\nlocks = "block"\npad = "front"\nroom = "2.4..3.6 mm"\n'
CHAIN = """
kind = "dimension-chain"
id = "chain"
closes = { of = "face", dimension = "room" }
least = "2.4 mm"
greatest = "3.6 mm"
[chain.cut-outs]
of = "face"
dimension = "at"
direction = "widens"
[chain.pads]
of = "block"
dimension = "pads.front.at"
direction = "narrows"
"""


def outcome(design: DesignFolder, rule: str) -> Ends:
    check = design.only(rule)
    return check.outcome, check.grade


def chained(
    workshop: DesignFolder, *, at: str = "623 mm", chain: str = CHAIN, room: str = ""
) -> DesignFolder:
    face = FACE.replace('"2.4..3.6 mm"', f'"{room}"') if room else FACE
    return workshop.write({"block.toml": BLOCK, "face.toml": f'{face}at = "{at}"\n', "chain.toml": chain})


@pytest.mark.parametrize(
    ("at", "ends"), [("620.05 mm", FINE), ("619.94 mm", WRONG), ("620 mm ±0.2", FINE), ("623 mm", WRONG)]
)
def test_a_cut_out_stands_at_its_pad(workshop: DesignFolder, at: str, ends: Ends) -> None:
    assert outcome(chained(workshop, at=at), "face.at-its-pad") == ends


@pytest.mark.parametrize(
    ("size", "ends"),
    [("", SILENT), ('size = "623 mm ±0.2"\n', FINE), ('size = "623.1 mm"\n', WRONG)],
)
def test_a_size_typed_beside_its_key_is_that_of_the_key(
    workshop: DesignFolder, size: str, ends: Ends
) -> None:
    text = CHAIN.replace('dimension = "at"\n', f'dimension = "at"\n{size}')
    assert outcome(chained(workshop, chain=text), "chain.sizes-by-key") == ends


def test_a_key_that_no_part_has_is_told(workshop: DesignFolder) -> None:
    text = CHAIN.replace('dimension = "at"\n', 'dimension = "nowhere"\nsize = "1 mm"\n')
    assert outcome(chained(workshop, chain=text), "chain.sizes-by-key") == ("not assessed", None)


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ("", "", FINE),
        ('least = "2.4 mm"', 'least = "2.41 mm"', WRONG),
        ('greatest = "3.6 mm"', 'greatest = "3.5 mm"', WRONG),
        ('least = "2.4 mm"\n', "", FINE),
        ('closes = { of = "face", dimension = "room" }\n', "", SILENT),
    ],
)
def test_a_chain_asks_what_is_drawn(workshop: DesignFolder, old: str, new: str, ends: Ends) -> None:
    assert outcome(chained(workshop, chain=CHAIN.replace(old, new)), "chain.asks-what-is-drawn") == ends


@pytest.mark.parametrize(("room", "ends"), [("3 mm", FINE), ("2.3 mm", WRONG), ("3.7 mm", WRONG)])
def test_a_size_without_limits_lies_within_those_of_the_chain(
    workshop: DesignFolder, room: str, ends: Ends
) -> None:
    assert outcome(chained(workshop, room=room), "chain.asks-what-is-drawn") == ends


def test_a_chain_without_limits_takes_those_of_the_size_that_it_closes(workshop: DesignFolder) -> None:
    """623.7 − 620 = 3.7 mm, beyond 3.6."""
    text = CHAIN.replace('least = "2.4 mm"\ngreatest = "3.6 mm"\n', "")
    check = chained(workshop, at="623.7 mm", chain=text).only("chain.worst-case")
    assert (check.outcome, check.grade) == WRONG
    assert (found(check), limit(check)) == (pytest.approx(0.0037), pytest.approx(0.0036))


@pytest.mark.parametrize(
    ("left_out", "at", "ends", "held"),
    [
        ('least = "2.4 mm"\n', "622.5 mm", FINE, None),
        ('least = "2.4 mm"\n', "622.3 mm", WRONG, 0.0024),  # 2.3 mm, below the 2.4 that the drawing asks
        ('greatest = "3.6 mm"\n', "623.7 mm", WRONG, 0.0036),
    ],
)
def test_a_limit_that_a_chain_leaves_out_is_that_of_the_size_that_it_closes(
    workshop: DesignFolder, left_out: str, at: str, ends: Ends, held: float | None
) -> None:
    check = chained(workshop, at=at, chain=CHAIN.replace(left_out, "")).only("chain.worst-case")
    assert (check.outcome, check.grade) == ends
    assert held is None or limit(check) == pytest.approx(held)


PRESSED = (
    ("seat.toml", 'duty = "duty"\n', 'duty = "duty"\npressed_into = "block"\nin_bore = "inlet"\nroughness = "3.2 µm"\n'
     'friction = "0.10..0.14"\nsticking_drag = "1 kN"\n'),
    ("block.toml", 'wall = "22 mm"\n', 'wall = "22 mm"\nroughness = "3.2 µm"\n'),
)  # fmt: skip


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('axial_load = "1 kN"', 'axial_load = "1001 N"', FINE),
        ('axial_load = "1 kN"', 'axial_load = "1002 N"', HOLD),
        ('friction = "0.10..0.14"', 'friction = "0.06..0.18"', HOLD),
        ('friction = "0.10..0.14"', 'friction = "0.10..0.12"', HOLD),
        ('friction = "0.10..0.14"', "", FINE),
        ('shaft_roughness = "3.2 µm"', 'shaft_roughness = "1.6 µm"', HOLD),
        ('hole_roughness = "3.2 µm"', 'hole_roughness = "6.3 µm"', HOLD),
        ('hole_roughness = "3.2 µm"', 'hole_roughness = "3.25 µm"', FINE),
    ],
)
def test_a_fit_says_what_its_seat_says(workshop: DesignFolder, old: str, new: str, ends: Ends) -> None:
    assert outcome(write(workshop, *PRESSED, in_fit(old, new)), "fit.says-once") == ends


LINED = {
    "block.toml": 'kind = "cylinder-block"\n[bores.main]\nroughness = "3.2 µm"\n',
    "liner.toml": 'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "main"\nroughness = "1.6 µm"\n',
    "fit.toml": 'kind = "fit"\nshaft_roughness = "1.6 µm"\nhole_roughness = "3.2 µm"\nshaft.of = "liner"\n',
}


@pytest.mark.parametrize("key", ["hole_roughness", "shaft_roughness"])
def test_a_fit_says_what_its_liner_and_its_bore_say(workshop: DesignFolder, key: str) -> None:
    """Of two places that do not agree that of the fit is told first, which is made to suit the other."""
    assert outcome(workshop.write(LINED), "fit.says-once") == FINE
    was = "3.2 µm" if key == "hole_roughness" else "1.6 µm"
    workshop.replace("fit.toml", f'{key} = "{was}"', f'{key} = "6.3 µm"')
    check = workshop.only("fit.says-once")
    assert (check.outcome, check.grade) == HOLD
    places = [[place.where.key.rpartition(".")[2] for place in one.places] for one in check.failing]
    assert places == [[key, "roughness"]] * 2  # at its least and at its greatest


def test_a_fit_of_other_parts_has_nothing_to_say_twice(workshop: DesignFolder) -> None:
    write(
        workshop,
        in_fit('shaft = { of = "seat", dimension = "outside_diameter" }', 'shaft = { size = "170 mm" }'),
    )
    assert outcome(workshop, "fit.says-once") == SILENT
