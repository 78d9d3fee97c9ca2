"""The decision on each dimension of a part as made, from both sides, and what is not judged."""

from __future__ import annotations

import pytest

from speclint.handbook.inspection import Decision
from speclint.made import DimensionMade, dimensions_of
from speclint.specs import MadePart
from speclint.testing import DesignFolder, changed
from tests.plugins.liners.bench import bench as liner_bench
from tests.plugins.release.part import files
from tests.repository.test_made_parts import MADE

DRAWN = ('thickness = "50 mm"', 'thickness = "50 mm ±0.05"')
VALUES = 'values = ["50.02 mm", { value = "50.04 mm", along = "20 mm", round = "90 °" }]'


def judged(
    workshop: DesignFolder,
    *changes: tuple[str, str],
    drawn: tuple[tuple[str, str], ...] = (DRAWN,),
    decision: Decision = "guard band of U",
) -> tuple[DimensionMade, ...]:
    made = {**files(*drawn), "cover-7.toml": changed(MADE, *changes)}
    design = workshop.write(made).assess("duty.toml").design
    assert design is not None
    part = design.specs["cover-7"]
    assert isinstance(part, MadePart)
    return dimensions_of(part, design.specs["cover"], decision)


#: Limits 49.95 and 50.05, U = 0.004: by hand the zones meet at 50.046 and 50.054.
@pytest.mark.parametrize(
    ("greatest", "verdict"),
    [("50.046", "in"), ("50.047", "undecided"), ("50.054", "undecided"), ("50.055", "out")],
)
def test_the_zones_at_the_upper_limit(workshop: DesignFolder, greatest: str, verdict: str) -> None:
    (one,) = judged(workshop, ("50.04", greatest))
    assert one.verdict == verdict
    assert one.band is not None
    assert one.band.high == pytest.approx(float(greatest) / 1000 + 0.000004, rel=1e-12)


def test_the_decision_of_the_settings(workshop: DesignFolder) -> None:
    """Guard band 1.65 × 0.002 = 0.0033 mm: 50.0467 is in by 50.05 − 0.0033."""
    change = ("50.04", "50.0467")
    assert judged(workshop, change)[0].verdict == "undecided"
    assert judged(workshop, change, decision="guard band for 95 %")[0].verdict == "in"
    assert judged(workshop, change, decision="simple acceptance")[0].verdict == "in"


def test_without_uncertainty_nothing_is_judged(workshop: DesignFolder) -> None:
    (one,) = judged(workshop, ('uncertainty = "4 µm"\n', ""))
    assert (one.verdict, one.why_not, one.band) == ("not judged", "no uncertainty was recorded", None)


def test_without_limits_nothing_is_judged(workshop: DesignFolder) -> None:
    (one,) = judged(workshop, drawn=())
    assert (one.verdict, one.why_not) == ("not judged", "the drawing states no limits")
    (one,) = judged(workshop, drawn=(('thickness = "50 mm"\n', ""),))
    assert (one.verdict, one.why_not) == ("not judged", "the drawing does not state it")


def test_the_last_measurement_counts(workshop: DesignFolder) -> None:
    again = changed(
        MADE.split("[certificate]")[0].split("[measured.thickness]")[1], (VALUES, 'values = "50.01 mm"')
    )
    later = again.replace("2026-05-31", "2026-06-30").replace("thickness", "")
    more = f'[measured.second]\ndimension = "thickness"{later}[certificate]'
    (one,) = judged(workshop, ("[certificate]", more))
    assert (one.size.name, one.size.greatest) == ("second", pytest.approx(0.05001))


GAUGED = """
kind = "made-part"
id = "liner-7"
of = "liner"
[measured.{key}]
values = [
    {{ value = "500.02 mm", along = "100 mm", round = "0 °" }},
    {{ value = "500.05 mm", along = "100 mm", round = "90 °" }},
    {{ value = "500.06 mm", along = "700 mm", round = "0 °" }},
]
uncertainty = "4 µm"
date = "2026-05-31"
"""


@pytest.mark.parametrize(
    ("key", "ovality", "taper"),
    [
        ("bore", 0.03e-3, 0.025e-3),
        ("outside_diameter", 0.03e-3, 0.025e-3),
        ('"collar.diameter"', 0.03e-3, 0.025e-3),
        ("length", None, None),
    ],
)
def test_only_a_diameter_is_oval_or_tapers(
    workshop: DesignFolder, key: str, ovality: float | None, taper: float | None
) -> None:
    """Round 100 mm 500.05 − 500.02 mm; the means of the two places are 500.035 and 500.06 mm."""
    design = workshop.write({**liner_bench(), "made.toml": GAUGED.format(key=key)}).assess("duty.toml").design
    assert design is not None
    part = design.specs["liner-7"]
    assert isinstance(part, MadePart)
    (one,) = dimensions_of(part, design.specs["liner"], "guard band of U")
    for found, wanted in ((one.ovality, ovality), (one.taper, taper)):
        assert found == (None if wanted is None else pytest.approx(wanted, abs=1e-9))
