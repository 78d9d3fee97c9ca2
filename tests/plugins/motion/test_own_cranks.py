"""An engine whose cranks differ: what a crank has of its own counts for its bore alone."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, on_sheet
from tests.plugins.motion.train import files

SPEED = "piston.speed"
ENGINE = 'kind = "engine"\nid = "engine"\nstroke = "660 mm"\n'
PERIOD = 5.08  # m/s: 1000 ft/min


def crank(name: str, bore: str = "", stroke: str = "") -> str:
    lines = [f"[cranks.{name}]", 'block = "block"']
    lines += [f'bore = "{bore}"'] if bore else []
    lines += [f'stroke = "{stroke}"'] if stroke else []
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize(
    ("cranks", "stroke"),
    [
        (crank("only"), 0.660),
        (crank("only", stroke="610 mm"), 0.610),
        (crank("left", "main", "610 mm") + crank("right", "other"), 0.610),
        (crank("left", "main") + crank("right", "other", "610 mm"), 0.660),
        (crank("left", "main", "600 mm") + crank("right", "other", "610 mm"), 0.600),
    ],
    ids=["of the engine", "of its one crank", "of its own crank", "of another's", "both of their own"],
)
def test_a_piston_makes_the_stroke_of_its_own_crank(
    workshop: DesignFolder, cranks: str, stroke: float
) -> None:
    """At six turns a second 12 strokes: 7.92 m/s of 660 mm, 7.32 of 610 and 7.2 of 600."""
    made = files()
    if "other" in cranks:
        made["block.toml"] += "[bores.other]\n"
    check = workshop.write({**made, "engine.toml": ENGINE + cranks}).only(SPEED)
    assert on_sheet(check, "x_period") == pytest.approx(12 * stroke / PERIOD)
