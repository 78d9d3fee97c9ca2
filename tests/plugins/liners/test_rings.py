"""liner.ring-overrun and liner.iron.

Front, running, all in mm: rod 1500 × 50 K × 11.92e-6 ± 0.3e-6 grows 0.8715 to 0.9165; cover 700 × 180 K ×
12.7e-6 ± 0.3e-6 goes 1.5624 to 1.638. Stretch: 300 kg × 0.33 × (10 π)² × (1 + 1/6) = 113.99 kN over π 90²/4 and
194.12 GPa (29.026e6 psi at 158 °F, less 3 %): 0.1385, and of the connecting rod, 1980 mm of 5000 mm² at 197.35 GPa
(20 °C): 0.2287. Near end: 8 + 1.5624 − 0.9165 − 0.3672 − 1 = 7.2787; far end, worn: 8 + 1.638 − 0.8715 + 1 = 9.7665.
From cover to working bore: (88 − 35) grown, 53.1120 and 53.0987.
Overrun 53.1120 − 7.2787 − 40 = 5.8333 at most, 53.0987 − 9.7665 − 40 = 3.3322 at least, and 4.3322 when new.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, found, limit
from speclint_liners.formulae.ends import hardness_apart, ring_overrun
from tests.plugins.liners.bench import BLOCK, bench, in_block, in_duty, in_liner, in_ring

OVERRUN, IRON = "liner.ring-overrun", "liner.iron"


def test_the_overrun_by_hand(workshop: DesignFolder) -> None:
    # the port of 40 mm at 60 mm leaves 88 − 80 = 8 mm of bore, less than three quarters of the ring, 10.5 mm
    check = workshop.write(bench()).only(OVERRUN)
    assert found(check) == pytest.approx(5.8333e-3, rel=2e-4)
    assert limit(check) == pytest.approx(8e-3)


@pytest.mark.parametrize(("width", "outcome"), [("7.79", "conforms"), ("7.76", "finding")])
def test_a_quarter_of_a_ring_stays_in_the_bore(workshop: DesignFolder, width: str, outcome: str) -> None:
    # 5.8333/0.75 = 7.778 mm
    check = workshop.write(bench(in_ring('width = "14 mm"', f'width = "{width} mm"'))).only(OVERRUN)
    assert check.outcome == outcome
    assert check.grade is (Grade.OBSERVATION if outcome == "finding" else None)


@pytest.mark.parametrize(("place", "outcome"), [("62.1", "conforms"), ("62.2", "finding")])
def test_a_ring_never_enters_a_port(workshop: DesignFolder, place: str, outcome: str) -> None:
    # 88 − 20 − 5.8333 = 62.167 mm
    moved = in_liner('from_collar = "60 mm"', f'from_collar = "{place} mm"')
    assert workshop.write(bench(moved)).only(OVERRUN).outcome == outcome


@pytest.mark.parametrize(
    ("edge", "wear", "outcome"),
    [
        # new 4.3322 − 1.5 = 2.8322 mm more
        ("42.82", "1 mm", "conforms"),
        ("42.84", "1 mm", "finding"),
        # worn 4.3322 − 2 = 2.3322 at 40 mm; at 42.5 mm new 1.8322 is enough and 1.83 mm of wear is all that it has
        ("42.5", "1.82 mm", "conforms"),
        ("42.5", "1.85 mm", "finding"),
    ],
)
def test_a_ring_runs_past_when_new_and_reaches_the_end_when_worn(
    workshop: DesignFolder, edge: str, wear: str, outcome: str
) -> None:
    worn = in_block('wear = "1 mm"', f'wear = "{wear}"')
    check = workshop.write(bench(in_ring('"40 mm"', f'"{edge} mm"'), worn)).only(OVERRUN)
    assert check.outcome == outcome


def test_the_back_ring_is_held_against_the_back_end(workshop: DesignFolder) -> None:
    """Back: 860 − 807 = 53 cold; hot 860 × 12.4e-6 × 180 − 807 × 12e-6 × 180 = 0.17640 to 0.33960 more.

    Near: 8 + 0.2232 + 0.8715 − 0.3672 − 1 = 7.7275 with 860 × 12.4 − 807 × 11.4 = 0.26355: 5.5360 at most, or 13.0
    and 11.4: 0.3564, 7.7383: 5.6181, of three quarters of the ring, 10.5 mm: no port lies beyond the back end.
    """
    check = workshop.write(bench(in_ring('place = "front"', 'place = "back"'))).only(OVERRUN)
    assert found(check) == pytest.approx(5.6181e-3, rel=2e-4)
    assert limit(check) == pytest.approx(10.5e-3)


@pytest.mark.parametrize(
    ("place", "outcome"),
    [
        ("832.7", "conforms"),
        ("832.5", "finding"),
        ("807", "finding"),
        ("790", "conforms"),  # within the working bore, where all rings run over it
    ],
)
def test_the_back_ring_never_enters_a_port_beyond_the_back_end(
    workshop: DesignFolder, place: str, outcome: str
) -> None:
    """807 + 20 + 5.6181 = 832.618 mm: a port of 40 mm beside that of the front, which is none of the back ring's."""
    port = f'[ports.back]\nfrom_collar = "{place} mm"\nheight = "40 mm"\n[lands.front]'
    check = workshop.write(
        bench(in_ring('place = "front"', 'place = "back"'), in_liner("[lands.front]", port))
    ).only(OVERRUN)
    assert check.outcome == outcome


def test_a_ring_at_an_end_that_is_not_drawn_is_not_assessed(workshop: DesignFolder) -> None:
    head, _, rest = BLOCK.partition("[ends.front]")
    block = head + rest[rest.index("[ends.back]") :]
    check = workshop.write({**bench(), "block.toml": block}).only(OVERRUN)
    assert check.outcome == "not assessed"
    assert "ends: the front of bore main is not stated in block.toml" in check.says


def test_a_middle_ring_never_runs_over(workshop: DesignFolder) -> None:
    check = workshop.write(bench(in_ring('place = "front"', 'place = "middle"'))).only(OVERRUN)
    assert check.outcome == "not applicable"


@pytest.mark.parametrize(
    "change",
    [
        in_ring('edge_from_piston_face = "40 mm"', ""),
        in_liner('end = "front"', ""),
        in_block('of_bore = "main"\nside = "front"', 'of_bore = "main"'),
        in_duty('piston-rod = "70 °C"', ""),
    ],
)
def test_overrun_needs_every_length_and_temperature(
    workshop: DesignFolder, change: tuple[str, str, str]
) -> None:
    assert workshop.write(bench(change)).only(OVERRUN).outcome == "not assessed"


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ('"0.5 %"', '"0.3 %"', "conforms"),
        ('"0.5 %"', '"0.297 %"', "finding"),
        ('"0.5 %"', '"0.9 %"', "conforms"),
        ('"0.5 %"', '"0.91 %"', "finding"),
        ('"200 HB"', '"180 HB"', "conforms"),
        ('"200 HB"', '"179 HB"', "finding"),
        ('"200 HB"', '"240 HB"', "conforms"),
        ('"200 HB"', '"241 HB"', "finding"),
        ('"pearlitic grey"', '"ferritic grey"', "finding"),
        ('structure = "pearlitic grey"', "", "not assessed"),
        ('phosphorus = "0.5 %"', "", "finding"),  # EN-GJL-250 has at most 0.2 %
        ('\nhardness = "200 HB"', "", "conforms"),  # and 180 to 230 HB
    ],
)
def test_the_iron_of_a_liner(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    check = workshop.write(bench(in_liner(old, new))).only(IRON, "liner")
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("hardness", "outcome"),
    [("230", "conforms"), ("230.5", "finding"), ("190", "conforms"), ("189.5", "finding")],
)
def test_a_ring_is_within_a_band_of_what_the_liner_asks(
    workshop: DesignFolder, hardness: str, outcome: str
) -> None:
    check = workshop.write(bench(in_ring('"210 HB"', f'"{hardness} HB"'))).only(IRON, "ring")
    assert check.outcome == outcome


@pytest.mark.parametrize(("liner", "outcome"), [("180", "conforms"), ("179", "finding")])
def test_a_ring_is_within_a_band_of_its_liner(workshop: DesignFolder, liner: str, outcome: str) -> None:
    """A ring of 230 HB, as is asked for, in a liner of 180 HB: 50 apart."""
    softer = bench(
        in_liner(
            '\nhardness = "200 HB"\nring_hardness = "210 HB"',
            f'\nhardness = "{liner} HB"\nring_hardness = "230 HB"',
        ),
        in_ring('"210 HB"', '"230 HB"'),
    )
    check = workshop.write(softer).only(IRON, "ring")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("part", "metal", "outcome"),
    [
        ("liner", "plate-P355GH", "finding"),
        ("liner", "ductile-iron-500-7", "finding"),
        ("ring", "forging-42CrMo4", "finding"),
        ("ring", "ductile-iron-500-7", "conforms"),
    ],
)
def test_steel_is_no_iron(workshop: DesignFolder, part: str, metal: str, outcome: str) -> None:
    """Whatever structure and hardness its spec states."""
    old, change = {
        "liner": ('material = "grey-iron-250"', in_liner),
        "ring": ('material = "phosphoric-cylinder-iron"', in_ring),
    }[part]
    check = workshop.write(bench(change(old, f'material = "{metal}"'))).only(IRON, part)
    assert check.outcome == outcome


def test_a_ring_needs_what_the_liner_asks(workshop: DesignFolder) -> None:
    assert (
        workshop.write(bench(in_liner('ring_hardness = "210 HB"', ""))).only(IRON, "ring").outcome
        == "not assessed"
    )


@given(w=st.floats(0.04, 0.08), c=st.floats(0.0, 0.02), e=st.floats(0.01, 0.05), more=st.floats(0.0, 0.01))
def test_more_clearance_is_less_overrun(w: float, c: float, e: float, more: float) -> None:
    assert ring_overrun(w, c + more, e) == pytest.approx(ring_overrun(w, c, e) - more)
    assert hardness_apart(200 + w, 200) == pytest.approx(hardness_apart(200, 200 + w))


PISTON = """
kind = "piston"
id = "piston"
runs_in = "liner"
length = "149 mm"
[grooves.a]
takes = "ring"
at = "40 mm"
width = "16 mm"
[grooves.b]
takes = "other"
at = "94 mm"
width = "16 mm"
"""
OTHER = 'kind = "piston-ring"\nid = "other"\n'


def test_the_groove_places_the_ring_whatever_its_own_spec_says(workshop: DesignFolder) -> None:
    """The groove is 40 mm from the front face, as in the hand working: 5.8333 mm, though the ring says 60.

    A piston of 149 mm leaves 860 − 35 − 660 − 149 = 16 mm at both ends, the 8 mm of each that are stated.
    """
    wrong = in_ring('edge_from_piston_face = "40 mm"', 'edge_from_piston_face = "60 mm"')
    files = {**bench(wrong), "piston.toml": PISTON, "other.toml": OTHER}
    assert found(workshop.write(files).only(OVERRUN, "ring")) == pytest.approx(5.8333e-3, rel=2e-4)
    silent = bench(in_ring('place = "front"\nedge_from_piston_face = "40 mm"\n', ""))
    workshop.write({**silent, "piston.toml": PISTON, "other.toml": OTHER})
    assert found(workshop.only(OVERRUN, "ring")) == pytest.approx(5.8333e-3, rel=2e-4)
