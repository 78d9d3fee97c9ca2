"""The zones of faces in a chain, by hand: a cut-out of 186 mm less a pad of 180 mm leaves 6 mm ± 0.3."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.facts import zone_at_distance
from speclint.testing import SETTINGS, DesignFolder, expect_query, on_sheet
from speclint_fits.formulae.tables import general_flatness, weldment_angle

RULE = "geometry.in-the-chain"
_CHAIN = """
kind = "dimension-chain"
id = "chain"
least = "5.5 mm"
greatest = "6.5 mm"
[chain.slot]
of = "face"
dimension = "slot"
direction = "widens"
[chain.pad]
of = "block"
dimension = "pads.front.width"
direction = "narrows"
"""
_FACE = 'kind = "locating-face"\nid = "face"\nlocks = "block"\npad = "front"\nslot = "186 mm ±0.2"\n'
_BLOCK = 'kind = "cylinder-block"\nid = "block"\n{general}[pads.front]\nwidth = "180 mm {limits}"\n'
_ZONE = '[tolerances.it]\nform = "{form}"\nof = "slot"\nzone = "{zone}"\n'


def _write(
    folder: DesignFolder,
    face: str,
    general: str = "",
    limits: str = "±0.1",
    chain: str = _CHAIN,
    pad: str = "",
) -> DesignFolder:
    block = _BLOCK.format(general=general, limits=limits) + pad
    return folder.write({"chain.toml": chain, "face.toml": _FACE + face, "block.toml": block})


@pytest.mark.parametrize(("zone", "outcome"), [("0.19 mm", "conforms"), ("0.21 mm", "finding")])
def test_a_place_at_maximum_material_grows_with_the_size(
    workshop: DesignFolder, zone: str, outcome: str
) -> None:
    """The slot may leave that size by 0.4: (t + 0.4)/2 and 0.1 of the pad are 0.4, to 5.3, at t = 0.2."""
    face = _ZONE.format(form="position", zone=zone) + 'to = ["A"]\nmodifier = "M"\n'
    chain = _CHAIN.replace('"5.5 mm"', '"5.3 mm"').replace('"6.5 mm"', '"6.7 mm"')
    assert _write(workshop, face, chain=chain, pad=_FLAT_PAD).only(RULE).outcome == outcome


_FLAT_PAD = 'flatness = "0.1 mm"\nsquareness = "0.1 mm"\n'


@pytest.mark.parametrize(("zone", "outcome"), [("0.18 mm", "conforms"), ("0.22 mm", "finding")])
def test_place_and_faces_take_of_the_gap(workshop: DesignFolder, zone: str, outcome: str) -> None:
    """The sizes leave 5.7, 0.2 beyond the least; the pad's faces take (0.1 + 0.1)/2 and the place t/2, 0.1 at most."""
    face = _ZONE.format(form="position", zone=zone) + 'to = ["A"]\n'
    check = _write(workshop, face, pad=_FLAT_PAD).only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("zone", "outcome"), [("0.06 mm", "conforms"), ("0.07 mm", "finding")])
def test_an_error_of_orientation_grows_with_its_reach(
    workshop: DesignFolder, zone: str, outcome: str
) -> None:
    """t L/l = t 450/300: 0.2 mm are left, less 0.1 of the pad: t is 0.0667 at most."""
    face = _ZONE.format(form="square", zone=zone) + 'to = ["A"]\nover = "300 mm"\n'
    chain = _CHAIN.replace('dimension = "slot"\n', 'dimension = "slot"\nreach = "450 mm"\n')
    assert _write(workshop, face, chain=chain, pad=_FLAT_PAD).only(RULE).outcome == outcome


def test_an_orientation_without_reach_takes_its_zone(workshop: DesignFolder) -> None:
    face = _ZONE.format(form="parallel", zone="0.09 mm") + 'to = ["A"]\n'
    check = _write(workshop, face, pad=_FLAT_PAD).only(RULE)
    assert on_sheet(check, "Z") == pytest.approx(0.09e-3 + 0.1e-3)


_PROJECTED = 'to = ["A"]\nmodifier = "P"\nprojects = "40 mm"\n'


@pytest.mark.parametrize(
    ("reach", "zone", "outcome"),
    [
        ("60 mm", "0.099 mm", "conforms"),
        ("60 mm", "0.101 mm", "finding"),
        ("40 mm", "0.199 mm", "conforms"),
        ("40 mm", "0.201 mm", "finding"),
        ("25 mm", "0.199 mm", "conforms"),
        ("25 mm", "0.201 mm", "finding"),
    ],
)
def test_a_projected_place_opens_beyond_its_height(
    workshop: DesignFolder, reach: str, zone: str, outcome: str
) -> None:
    """20 mm beyond 40 make t/2 (1 + 2 × 20/40) = t, of which 0.1 mm are left; within the height t/2, as at its top."""
    face = _ZONE.format(form="position", zone=zone) + _PROJECTED
    chain = _CHAIN.replace('dimension = "slot"\n', f'dimension = "slot"\nreach = "{reach}"\n')
    check = _write(workshop, face, chain=chain, pad=_FLAT_PAD).only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("zone", "outcome"), [("0.066 mm", "conforms"), ("0.067 mm", "finding")])
def test_a_projected_orientation_holds_over_its_height(
    workshop: DesignFolder, zone: str, outcome: str
) -> None:
    """t 60/40: 0.1 mm are left, t is 0.0667 at most; the length over which the face itself is made does not count."""
    face = _ZONE.format(form="square", zone=zone) + _PROJECTED + 'over = "300 mm"\n'
    chain = _CHAIN.replace('dimension = "slot"\n', 'dimension = "slot"\nreach = "60 mm"\n')
    assert _write(workshop, face, chain=chain, pad=_FLAT_PAD).only(RULE).outcome == outcome


def test_a_projected_place_without_its_height_is_not_assessed(workshop: DesignFolder) -> None:
    face = _ZONE.format(form="position", zone="0.01 mm") + 'to = ["A"]\nmodifier = "P"\n'
    chain = _CHAIN.replace('dimension = "slot"\n', 'dimension = "slot"\nreach = "60 mm"\n')
    assert _write(workshop, face, chain=chain, pad=_FLAT_PAD).only(RULE).outcome == "not assessed"


def test_a_projected_place_without_reach_takes_half_of_its_zone(workshop: DesignFolder) -> None:
    face = _ZONE.format(form="position", zone="0.1 mm") + _PROJECTED
    check = _write(workshop, face, pad=_FLAT_PAD).only(RULE)
    assert on_sheet(check, "Z") == pytest.approx(0.05e-3 + 0.1e-3)


@pytest.mark.parametrize(("grade", "outcome"), [("H", "conforms"), ("K", "finding")])
def test_the_general_class_where_a_face_states_none(workshop: DesignFolder, grade: str, outcome: str) -> None:
    """ISO 2768-2 at 100 to 300 mm: H 0.2, half of it 0.1, and K 0.4, half of it 0.2; 0.05 of the slot's form beside."""
    face = _ZONE.format(form="flat", zone="0.1 mm")
    check = _write(workshop, face, f'general_tolerance = "ISO 2768-2 {grade}"\n').only(RULE)
    assert check.outcome == outcome, check.says


@pytest.mark.parametrize(("grade", "outcome"), [("H", "conforms"), ("K", "finding")])
def test_the_class_of_all_drawings(workshop: DesignFolder, grade: str, outcome: str) -> None:
    """The same two for a block that names no class, of which the settings of the design do."""
    _write(workshop, _ZONE.format(form="flat", zone="0.1 mm"))
    settings = SETTINGS + f'[drawings]\ngeneral_geometry = "{grade}"\n'
    assert workshop.write({}, settings=settings).only(RULE).outcome == outcome


@pytest.mark.parametrize(
    ("grade", "taken"),
    [('tolerance_class = "A"\n', 6e-3 * 20e-3), ('tolerance_class = "B"\n', 13e-3 * 20e-3), ("", 0.1e-3)],
)
def test_the_class_of_a_weldment_goes_before_that_of_all_drawings(
    workshop: DesignFolder, grade: str, taken: float
) -> None:
    """ISO 13920 to 400 mm: A 6 and B 13 mm in 1 m, over 20 mm; else ISO 2768-2 H, half of 0.2. 0.05 of the slot."""
    weld = f'kind = "weldment"\nid = "weld"\n{grade}[plates.pad]\nthickness = "120 mm"\n'
    link = 'of = "block"\ndimension = "pads.front.width"\n'
    chain = _CHAIN.replace(link, 'of = "weld"\ndimension = "plates.pad.thickness"\nreach = "20 mm"\n')
    assert chain != _CHAIN
    _write(workshop, _ZONE.format(form="flat", zone="0.1 mm"), chain=chain)
    settings = SETTINGS + '[drawings]\ngeneral_geometry = "H"\n'
    check = workshop.write({"weld.toml": weld}, settings=settings).only(RULE)
    assert on_sheet(check, "Z") == pytest.approx(0.05e-3 + taken)


def test_a_zone_of_the_drawing_by_iso_22081(workshop: DesignFolder) -> None:
    face = _ZONE.format(form="flat", zone="0.1 mm")
    check = _write(workshop, face, 'general_tolerance = "ISO 22081"\ngeneral_zone = "0.2 mm"\n').only(RULE)
    assert on_sheet(check, "Z") == pytest.approx(0.15e-3)


def test_a_face_that_nothing_says_is_one_query(workshop: DesignFolder) -> None:
    check = _write(workshop, "", 'general_tolerance = "ISO 2768-2 H"\n').only(RULE)
    expect_query(check, "stated by face")
    assert check.grade is Grade.QUERY


def test_form_lies_within_a_class_of_fits_and_within_what_was_measured(workshop: DesignFolder) -> None:
    chain = _CHAIN.replace('dimension = "slot"\n', 'dimension = "slot"\nmeasured = "186.02 mm"\n')
    check = _write(workshop, "", limits="h9", chain=chain).only(RULE)
    assert check.outcome == "conforms"
    assert not [step.symbol for step in check.steps if step.symbol[:1] in ("Z", "z")], "nothing is taken"


def test_the_tables_and_the_page() -> None:
    """ISO 2768-2, K, 300 to 1000 mm: 0.6; ISO 13920, C, to 400 mm: 18 mm in 1 m. 0.05 over 300: 0.24 at 1450."""
    assert general_flatness("K", 0.62).nominal == pytest.approx(0.6e-3)
    assert weldment_angle("C", 0.4).nominal == pytest.approx(18e-3)
    assert zone_at_distance(t=0.05e-3, L=1.45, l=0.3) == pytest.approx(0.242e-3, rel=0.01)


@given(st.floats(1e-6, 1e-2), st.floats(0.01, 5), st.floats(0.01, 5))
def test_an_error_of_orientation_is_in_proportion(t: float, reach: float, over: float) -> None:
    once = zone_at_distance(t=t, L=reach, l=over)
    assert zone_at_distance(t=t, L=2 * reach, l=over) == pytest.approx(2 * once)
    assert zone_at_distance(t=t, L=reach, l=2 * over) == pytest.approx(once / 2)


@pytest.mark.parametrize(("zone", "outcome"), [("0.19 mm", "conforms"), ("0.21 mm", "finding")])
@pytest.mark.parametrize("side", ["least", "greatest"])
def test_zones_take_of_either_limit_where_one_alone_is_asked(
    workshop: DesignFolder, side: str, zone: str, outcome: str
) -> None:
    """5.7 to 6.3 mm by the sizes; 0.1 of the pad's faces and t/2 of the place, to 5.5 or 6.5 mm."""
    other = 'greatest = "6.5 mm"\n' if side == "least" else 'least = "5.5 mm"\n'
    face = _ZONE.format(form="position", zone=zone) + 'to = ["A"]\n'
    check = _write(workshop, face, chain=_CHAIN.replace(other, ""), pad=_FLAT_PAD).only(RULE)
    assert check.outcome == outcome
    assert on_sheet(check, "g_low" if side == "least" else "g_high") * 1e3 == pytest.approx(
        5.6 - float(zone[:4]) / 2 if side == "least" else 6.4 + float(zone[:4]) / 2
    )


def test_the_widest_zone_of_the_face_itself_counts(workshop: DesignFolder) -> None:
    """Form holds in place, so that they do not add up: 0.12/2 and 0.1; the zone of another face is none of it."""
    face = (
        _ZONE.format(form="flat", zone="0.04 mm")
        + _ZONE.format(form="position", zone="0.12 mm").replace("tolerances.it", "tolerances.place")
        + 'to = ["A"]\n'
        + _ZONE.format(form="flat", zone="0.9 mm")
        .replace("tolerances.it", "tolerances.side")
        .replace("slot", "side")
    )
    check = _write(workshop, face, pad=_FLAT_PAD).only(RULE)
    assert on_sheet(check, "Z") == pytest.approx(0.06e-3 + 0.1e-3)
