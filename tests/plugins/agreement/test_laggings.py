"""Lagging and the part under it, from both sides.

The pipe: 168.3 mm of a steel whose mean expansion to 320 °C is at most 13.3e-6/K: 168.3 × (1 + 13.3e-6 × 300) =
168.972 mm.
Of its 2.7 m each end may be bare for 100 mm: 2.5 m are lagged. The cover: π/4 × 0.75² = 0.4418 m².
"""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.known_metals import METALS, WITH_METALS

RULE = "lagging.of-its-part"
FINE, LESS = ("conforms", None), ("finding", Grade.NONCONFORMITY)
FILES = {
    "metals.toml": METALS,
    "duty.toml": """
kind = "duty"
id = "duty"
[cases.running]
ambient_temperature = "20 °C"
[cases.running.temperatures]
steam-pipe = "320 °C"
cylinder-cover = "200 °C"
""",
    "pipe.toml": """
kind = "steam-pipe"
id = "pipe"
duty = "duty"
material = "known-steel"
outside_diameter = "168.3 mm"
length = "2.7 m"
""",
    "cover.toml": 'kind = "cylinder-cover"\nid = "cover"\nduty = "duty"\noutside_diameter = "750 mm"\n',
    "round.toml": """
kind = "lagging"
id = "round"
covers = "pipe"
form = "round"
inside_diameter = "170 mm"
length = "2.6 m"
""",
    "flat.toml": 'kind = "lagging"\nid = "flat"\ncovers = "cover"\nform = "flat"\nheight = "0.7 m"\narea = "0.4 m²"\n',
}


@pytest.mark.parametrize(
    ("lagging", "old", "new", "wanted"),
    [
        (
            "round",
            "170 mm",
            "168.4 mm",
            FINE,
        ),  # the pipe has 168.3 mm cold; its growth of 0.7 mm the mat gives way to
        ("round", "170 mm", "168.2 mm", LESS),
        # 168.972 + 20 mm; at the least 13.0e-6 and 12.7e-6/K the hot pipe is no wider
        ("round", "170 mm", "188.9 mm", FINE),
        ("round", "170 mm", "189 mm", LESS),
        ("round", "170 mm", "600 mm", LESS),
        ("round", "2.6 m", "2.5 m", FINE),
        ("round", "2.6 m", "2.49 m", LESS),
        ("round", "2.6 m", "2.71 m", LESS),
        ("round", 'inside_diameter = "170 mm"\nlength = "2.6 m"', "", ("not applicable", None)),
        ("flat", "0.4 m²", "0.4417 m²", FINE),
        ("flat", "0.4 m²", "0.4419 m²", LESS),
        ("flat", "0.4 m²", "0.178 m²", FINE),  # 0.4 of π/4 · 0.75² = 0.4418 are 0.1767
        ("flat", "0.4 m²", "0.1755 m²", LESS),
        ("flat", "0.4 m²", "0.04 m²", LESS),
        ("flat", "0.7 m", "0.75 m", FINE),
        ("flat", "0.7 m", "0.76 m", LESS),
    ],
)
def test_lagging_fits_what_it_covers(
    workshop: DesignFolder, lagging: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    workshop.write(FILES, settings=WITH_METALS).replace(f"{lagging}.toml", old, new)
    found = workshop.only(RULE, lagging)
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("form", "length", "wanted"),
    [
        ("round", "1.31 m", FINE),
        ("round", "1.29 m", LESS),
        ("flat", "1.31 m", LESS),
    ],
)
def test_all_round_lagging_of_a_pipe_counts_together(
    workshop: DesignFolder, form: str, length: str, wanted: tuple[str, Grade | None]
) -> None:
    """Before the bend 1.2 m and behind it 1.3 m are the 2.5 m that are to be lagged; a flat sheet is none of it."""
    more = f'kind = "lagging"\nid = "more"\ncovers = "pipe"\nform = "{form}"\nlength = "{length}"\n'
    design = workshop.write({**FILES, "more.toml": more}, settings=WITH_METALS)
    design.replace("round.toml", "2.6 m", "1.2 m")
    found = workshop.only(RULE, "round")
    assert (found.outcome, found.grade) == wanted, found.says


@pytest.mark.parametrize(("inside", "taken"), [("", 0.1683), ("150 mm", 0.1683), ("180 mm", 0.18)])
def test_the_heat_is_that_of_the_larger_inside(workshop: DesignFolder, inside: str, taken: float) -> None:
    stated = f'inside_diameter = "{inside}"\n' if inside else ""
    rest = 'thickness = "70 mm"\nconductivity = "0.06 W/(m·K)"\nemissivity = "0.9"\nreach = "in reach"\n'
    workshop.write(FILES, settings=WITH_METALS).replace(
        "round.toml", 'inside_diameter = "170 mm"\n', stated + rest
    )
    assert on_sheet(workshop.only("lagging.loss", "round"), "d" if taken == 0.18 else "D_p") == taken


BLOCK = """
kind = "cylinder-block"
id = "block"
duty = "duty"
entering_width = "1050 mm"
entering_height = "900 mm"
[bores.main]
length = "900 mm"
[bores.short]
length = "600 mm"
"""


@pytest.mark.parametrize(
    ("area", "wanted"),
    [
        ("8.09 m²", FINE),
        ("8.11 m²", LESS),
        ("10 m²", LESS),
        ("1.09 m²", FINE),
        ("1.07 m²", LESS),
        ("0.3 m²", LESS),
    ],
)
def test_lagging_of_a_block_is_of_the_size_of_its_box(
    workshop: DesignFolder, area: str, wanted: tuple[str, Grade | None]
) -> None:
    """1.05 by 0.9 by 0.9 m: 2 × (0.945 + 1.95 × 0.9) = 5.4 m², half as much again 8.1 m², a fifth of it 1.08 m²."""
    flat = FILES["flat.toml"].replace('"cover"', '"block"').replace("0.4 m²", area)
    workshop.write({**FILES, "block.toml": BLOCK, "flat.toml": flat}, settings=WITH_METALS)
    found = workshop.only(RULE, "flat")
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize("left_out", ["entering_width", "entering_height", "length"])
def test_lagging_of_a_block_without_sizes_is_not_held_against_it(
    workshop: DesignFolder, left_out: str
) -> None:
    flat = FILES["flat.toml"].replace('"cover"', '"block"').replace("0.4 m²", "10 m²")
    block = "".join(line for line in BLOCK.splitlines(keepends=True) if not line.startswith(left_out))
    workshop.write({**FILES, "block.toml": block, "flat.toml": flat}, settings=WITH_METALS)
    assert workshop.only(RULE, "flat").outcome == "not applicable"


@pytest.mark.parametrize(
    ("form", "area", "wanted"),
    [("flat", "3.09 m²", FINE), ("flat", "3.11 m²", LESS), ("round", "3.11 m²", FINE)],
)
def test_all_flat_lagging_of_a_block_counts_together(
    workshop: DesignFolder, form: str, area: str, wanted: tuple[str, Grade | None]
) -> None:
    """5 m² and 3.1 m² are the 8.1 m² that its box allows; round lagging of the barrel is none of it."""
    flat = FILES["flat.toml"].replace('"cover"', '"block"').replace("0.4 m²", "5 m²")
    more = f'kind = "lagging"\nid = "more"\ncovers = "block"\nform = "{form}"\narea = "{area}"\n'
    workshop.write({**FILES, "block.toml": BLOCK, "flat.toml": flat, "more.toml": more}, settings=WITH_METALS)
    found = workshop.only(RULE, "flat")
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("form", "area", "wanted"),
    [("flat", "0.79 m²", FINE), ("flat", "0.77 m²", LESS), ("flat", "", FINE), ("round", "0.77 m²", FINE)],
)
def test_little_flat_lagging_of_a_block_leaves_it_bare(
    workshop: DesignFolder, form: str, area: str, wanted: tuple[str, Grade | None]
) -> None:
    """0.3 m² and 0.78 m² are the 1.08 m² of a fifth of its box.

    Round lagging, or some of a size that is not said, may do the rest.
    """
    flat = FILES["flat.toml"].replace('"cover"', '"block"').replace("0.4 m²", "0.3 m²")
    more = f'kind = "lagging"\nid = "more"\ncovers = "block"\nform = "{form}"\n'
    more += f'area = "{area}"\n' if area else ""
    workshop.write({**FILES, "block.toml": BLOCK, "flat.toml": flat, "more.toml": more}, settings=WITH_METALS)
    found = workshop.only(RULE, "flat")
    assert (found.outcome, found.grade) == wanted


def test_flat_lagging_of_a_pipe_is_told(workshop: DesignFolder) -> None:
    """A sheet goes round no pipe, whatever area is stated."""
    flat = FILES["flat.toml"].replace('"cover"', '"pipe"')
    found = workshop.write({**FILES, "flat.toml": flat}, settings=WITH_METALS).only(RULE, "flat")
    assert (found.outcome, found.grade) == LESS
    assert 'form "flat"' in found.says
    assert "does not agree with lagging that goes round a pipe, " in found.says
