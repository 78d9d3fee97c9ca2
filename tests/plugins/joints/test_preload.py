"""The temperature at which studs are tightened, from which their preload changes with heat."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.joints.bench import GROUND, STUDS, bench


@pytest.mark.parametrize(
    ("at", "outcome"),
    [("0 °C", "conforms"), ("-0.1 °C", "finding"), ("40 °C", "conforms"), ("40.1 °C", "finding")],
)
def test_studs_are_tightened_in_the_shop(workshop: DesignFolder, at: str, outcome: str) -> None:
    """Expansion counts from 20 °C, which is near enough from 0 to 40 °C, either included."""
    bench(workshop, ("studs", 'temperature = "20 °C"', f'temperature = "{at}"'))
    check = workshop.only("joint.separation", "studs")
    assert check.outcome == outcome
    assert outcome == "conforms" or "outside 0 to 40 °C" in check.says


@pytest.mark.parametrize(
    ("seal", "faces", "least"),
    [("gasket", 2, 2), ("gasket", 1, 2), ("ground face", 1, 1), ("ground face", 0, 1), ("none", 1, 1)],
)
def test_no_fewer_faces_settle_than_the_seal_makes(
    workshop: DesignFolder, seal: str, faces: int, least: int
) -> None:
    """Both sides of a gasket, and metal on metal once."""
    bench(workshop)
    studs = STUDS.replace("faces = 2", f"faces = {faces}")
    if seal != "gasket":
        head, _, rest = studs.partition("[gasket]")
        studs = head + rest[rest.index("[tightening]") :]
    if seal == "ground face":
        studs = studs.replace('seal = "gasket"', 'seal = "ground face"\npressure_circle = "620 mm"') + GROUND
    if seal == "none":
        studs = studs.replace('seal = "gasket"\npressure = "cylinder"\n', 'purpose = "structural"\n')
    (workshop.root / "studs.toml").write_text(studs, encoding="utf-8")
    check = workshop.only("joint.separation", "studs")
    pairs = "1 pair of faces is" if faces == 1 else f"{faces} pairs of faces are"
    said = f"{pairs} stated to touch, but a {seal} alone makes {least}"
    assert (said in check.says) is (faces < least)
