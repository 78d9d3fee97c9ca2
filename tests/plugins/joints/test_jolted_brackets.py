"""What jolts do to a bracket and its bolts: the least preload that holds, fatigue, welds and give, by hand."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, changed, changed_files, on_sheet
from tests.plugins.joints import brackets
from tests.plugins.joints.brackets import FATIGUE, LOCK, PART, PRY, SLIP, STIFF, WELDS, built


@pytest.fixture(scope="module")
def drawn(tmp_path_factory: pytest.TempPathFactory) -> float:
    """Least preload of a bolt without creep, N."""
    folder = DesignFolder(tmp_path_factory.mktemp("drawn"))
    return on_sheet(built(folder, bar=False).only(SLIP), "F_low,h")


def _left(drawn: float, F: float, *changes: tuple[str, str], mass: str = "25 kg") -> dict[str, str]:
    """What weighs 25 kg hangs on bolts that creep until a preload of F newtons is left on each.

    With jolts of twice gravity 735.5 N act down and 490.3 along, upon the face and out of it alike: S 1225.8 N across,
    P 490.3 N out, M_x 735.5 × 0.2 = 147.1 N·m and M_y 490.3 × 0.2 = 98.07 N·m. The worst bolt of six rows with Σy²
    0.974 m² is pulled by 147.1 × 0.45/0.974 + 98.07/(0.12 × 6) + 490.3/12 = 245.0 N, with prying 1.3168 times: 322.7.
    """
    creep = ('relaxation = "0 %"', f'relaxation = "{100 * (1 - F / drawn):.6f} %"')
    made = brackets.files(creep, *changes, bar=False)
    return changed_files(made, ("bracket.toml", 'mass = "25 kg"', f'mass = "{mass}"'))


def _ends(workshop: DesignFolder, made: dict[str, str], rule: str) -> str:
    return workshop.write(made, settings=brackets.settings()).only(rule).outcome


@pytest.mark.parametrize(
    ("rule", "how", "F", "outcome"),
    [
        (SLIP, "wedge washers", 1067, "conforms"),
        (SLIP, "wedge washers", 1058, "finding"),
        (LOCK, "lock nut", 1580, "conforms"),
        (LOCK, "lock nut", 1566, "finding"),
        (PART, "wedge washers", 389, "conforms"),
        (PART, "wedge washers", 385, "finding"),
    ],
)
def test_how_little_preload_holds_a_lubricator(
    workshop: DesignFolder, drawn: float, rule: str, how: str, F: float, outcome: str
) -> None:
    """A load of one sense may slip at 0.12 (12 F − 490.3)/1225.8 = 1.2: F = 1062.4 N; at 1.8, 1573.1 N.

    Flanges part at 1.2 × 322.7 = 387.2 N.
    """
    assert _ends(workshop, _left(drawn, F, ('"wedge washers"', f'"{how}"')), rule) == outcome


@pytest.mark.parametrize(
    ("F", "mass", "outcome"),
    [
        (5000, "1970 kg", "conforms"),
        (5000, "1995 kg", "finding"),
        (34400, "2200 kg", "conforms"),
        (33700, "2200 kg", "finding"),
    ],
)
def test_a_bolt_tires_by_what_shakes_on_it(
    workshop: DesignFolder, drawn: float, F: float, mass: str, outcome: str
) -> None:
    """M24 rolled before treatment endures 0.85 (150/24 + 45) = 43.56 MPa, over 1.2 36.3: 25.59 kN on 2 × 352.5 mm².

    322.7 N for 25 kg are 25.59 kN for 1983 kg where the flanges part. With 2200 kg and 28.39 kN they part below a
    preload of 1.2 times that, 34.07 kN, and a bolt takes all of it; above it takes its small share.
    """
    assert _ends(workshop, _left(drawn, F, mass=mass), FATIGUE) == outcome


@pytest.mark.parametrize(("left", "times"), [(40_000, 2.0), (8000, 1.0)])
def test_a_load_that_reverses_eases_a_bolt_that_stays_tight(
    workshop: DesignFolder, drawn: float, left: float, times: float
) -> None:
    """12 kN out and in are 1 kN a bolt, 1.317 with prying, and a mass of 500 kg brings 6.45: of 40 kN they leave the
    flanges shut, and the bolt swings about its preload; of 8 kN they part them, and it goes slack.
    """
    found_of = {}
    for reverses in ("true", "false"):
        push = f'[carries.push]\nforce = {{ z = "12 kN" }}\nreverses = {reverses}\nat = {{ z = "0 mm" }}\n'
        made = _left(drawn, left, mass="500 kg")
        made["bracket.toml"] += push
        workshop.write(made, settings=brackets.settings())
        found_of[reverses] = on_sheet(workshop.only(FATIGUE), "σ_a")
    assert found_of["true"] == pytest.approx(times * found_of["false"])


@pytest.mark.parametrize(("t", "outcome"), [("3.21 mm", "conforms"), ("3.18 mm", "finding")])
def test_a_lubricator_bends_its_flange(workshop: DesignFolder, drawn: float, t: str, outcome: str) -> None:
    """Of 125 kg: 6 × 5 × 245.0 × (35 − 0.3168 × 40)/(100 t²) is 0.67 × 240 = 160.8 MPa at t = 3.195 mm."""
    made = _left(drawn, drawn, mass="125 kg")
    made = changed_files(made, ("bracket.toml", 'thickness = "25 mm"', f'thickness = "{t}"'))
    assert _ends(workshop, made, PRY) == outcome


@pytest.mark.parametrize(("arm", "outcome"), [("2530 mm", "conforms"), ("2567 mm", "finding")])
def test_a_pair_of_bolts_bears_one_and_a_half_times_its_load(
    workshop: DesignFolder, arm: str, outcome: str
) -> None:
    """M24 bears 0.9 × 400 × 352.5/1.25 = 101.5 kN, so 67.68 kN with 1.5: 57.48 kN × a × 0.45/0.974 at a = 2.548 m.

    The flange with its bolts bears (2 × 3750 N·m + 0.08 × 101.5 kN)/0.075 = 208 kN, more than 2 × 101.5; it is bent
    to 145 of 160.8 MPa.
    """
    assert built(workshop, ('arm = "300 mm"', f'arm = "{arm}"'), part="bracket").only(PRY).outcome == outcome


@pytest.mark.parametrize(("mass", "outcome"), [("768 kg", "conforms"), ("776 kg", "finding")])
def test_welds_bear_what_shakes_on_them(
    workshop: DesignFolder, drawn: float, mass: str, outcome: str
) -> None:
    """On 40 × 400 mm 5.884 N·m/1.0667e6 mm³ + 19.61/16 000 = 6742 Pa for a kilogram, upwards and out.

    From the side 3.923 N·m on 106 667 mm³ = 36 778 Pa, together 43 520: 33.6 MPa for 772 kg.
    It does not reverse; shear 49.03/16 000 = 3064 Pa for a kilogram is less than half of its 33.9 MPa.
    """
    assert _ends(workshop, _left(drawn, drawn, mass=mass), WELDS) == outcome


def _stiff(workshop: DesignFolder, made: dict[str, str], stiffness: str) -> str:
    stiff = changed_files(made, ("bracket.toml", '"100000 N/mm"', f'"{stiffness} N/mm"'))
    return _ends(workshop, stiff, STIFF)


@pytest.mark.parametrize(("stiffness", "outcome"), [("177000", "conforms"), ("175500", "finding")])
def test_jolts_bend_a_bracket_too(workshop: DesignFolder, stiffness: str, outcome: str) -> None:
    """2500 kg with 5 g across and 2 g out: 171.6 kN, with the bar 229.1; 1.3 mm on 176.2 kN/mm."""
    made = brackets.loaded()
    made["bracket.toml"] = changed(made["bracket.toml"], ('mass = "25 kg"', 'mass = "2500 kg"'))
    assert _stiff(workshop, made, stiffness) == outcome


@pytest.mark.parametrize(("stiffness", "outcome"), [("4320", "conforms"), ("4260", "finding")])
def test_a_bracket_gives_under_a_rocker(
    workshop: DesignFolder, drawn: float, stiffness: str, outcome: str
) -> None:
    """25 kg press with 1225.8 + 490.3 N: 0.02 × 20 = 0.4 mm on 4290 N/mm."""
    made = changed_files(_left(drawn, drawn), ("bracket.toml", "mass =", 'of = "rocker"\nmass ='))
    made["rocker.toml"] = 'kind = "rocker"\nid = "rocker"\nworks = "spindle"\n'
    made["spindle.toml"] = 'kind = "valve-spindle"\nid = "spindle"\nmoves = "valve"\n'
    made["valve.toml"] = 'kind = "poppet-valve"\nid = "valve"\nlift = "20 mm"\n'
    assert _stiff(workshop, made, stiffness) == outcome


FRAME = 'kind = "frame"\nid = "frame"\nmaterial = "known-steel"\n'

FACE = 'kind = "locating-face"\nid = "face"\nlocks = "block"\nin_frame = "frame"\nmaterial = "known-steel"\n'


def test_a_bracket_on_the_frame_is_shaken_by_the_wheels_of_the_block_beside_it(
    workshop: DesignFolder,
) -> None:
    """32 m/s on 1675 mm: 6.08 turns a second, twice 12.16 Hz as on the block itself."""
    made = brackets.files(('on = "block"', 'on = "frame"\nduty = "duty"'), part="bracket", bar=False)
    made["frame.toml"] = FRAME
    made["joint.toml"] = changed(made["joint.toml"], ('bolted_to = "block"', 'bolted_to = "frame"'))
    alone = workshop.write(made, settings=brackets.settings()).only(STIFF)
    assert alone.outcome == "not assessed"
    assert "no block is joined to bracket" in alone.says
    check = workshop.write({**made, "face.toml": FACE}, settings=brackets.settings()).only(STIFF)
    assert check.outcome == "conforms", check.says
    assert on_sheet(check, "f_n") == pytest.approx(2 * 12.16, rel=1e-3)
