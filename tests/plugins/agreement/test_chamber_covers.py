"""The cover over a valve's chamber: the room that it leaves, the pressure under it, and that it is a pressure part."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, on_sheet
from tests.plugins.joints import bench
from tests.plugins.valves.gear import gear_files

HOLD, FINE = ("finding", Grade.HOLD), ("conforms", None)
COVER = """
kind = "chamber-cover"
id = "lid"
material = "known-steel"
over = "valve"
inside_at = "145 mm"
"""


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    """A valve that lifts 20 mm and stands 120 mm above its seat; the cover is 145 mm above it, and no cage is drawn."""
    return DesignFolder(tmp_path).write({**gear_files(), "lid.toml": COVER})


@pytest.mark.parametrize(
    ("said", "ends"), [("5 mm", FINE), ("5.1 mm", FINE), ("5.2 mm", HOLD), ("4.8 mm", HOLD)]
)
def test_the_room_is_that_under_the_cover(
    design: DesignFolder, said: str, ends: tuple[str, Grade | None]
) -> None:
    """145 − 120 − 20 = 5 mm."""
    design.replace("valve.toml", 'clearance_open = "5 mm"', f'clearance_open = "{said}"')
    check = design.only("valve.room-by-lift")
    assert (check.outcome, check.grade) == ends


def test_a_stated_room_eases_no_clearance_under_a_cover(design: DesignFolder) -> None:
    design.replace("lid.toml", "145 mm", "141 mm")
    design.replace("valve.toml", 'clearance_open = "5 mm"', 'clearance_open = "30 mm"')
    check = design.only("valve.foul-clearance")
    assert check.outcome == "finding"
    assert on_sheet(check, "c_0") == pytest.approx(0.001)


def test_the_nearer_of_cage_and_cover_counts(design: DesignFolder) -> None:
    cage = 'kind = "valve-cage"\nid = "cage"\nsurrounds = "valve"\nend_at = "143 mm"\nopening = "12 mm"\n'
    (design.root / "cage.toml").write_text(cage, encoding="utf-8")
    assert min(
        float(step.value) for step in design.only("valve.foul-clearance").steps if step.symbol == "c_0"
    ) == pytest.approx(0.003)
    assert design.only("valve.room-by-lift").outcome == "finding"


SEATED = '[seat_bores.inlet]\nserves = "inlet"\nopens_into = "chamber"\n'
LID = (
    bench.COVER.replace("cylinder-cover", "chamber-cover")
    .replace('end = "front"\n', "")
    .replace("ribs = 0\n", "")
)


@pytest.fixture
def joint(workshop: DesignFolder) -> DesignFolder:
    """The bench of the joints, with a cover over a valve's chamber in the place of that of the cylinder."""
    design = bench.bench(workshop)
    written = {
        "cover.toml": LID + 'seat_bore = "inlet"\n',
        "block.toml": bench.BLOCK + SEATED,
        "duty.toml": bench.DUTY.replace('cylinder-cover = "', 'chamber-cover = "'),
    }
    for name, text in written.items():
        (design.root / name).write_text(text, encoding="utf-8")
    return design


@pytest.mark.parametrize(
    ("opens", "serves", "said", "ends"),
    [
        ("chamber", "inlet", "live", FINE),
        ("chamber", "inlet", "exhaust", HOLD),
        ("chamber", "exhaust", "exhaust", FINE),
        ("cylinder", "exhaust", "exhaust", HOLD),
        ("cylinder", "exhaust", "cylinder", FINE),
    ],
)
def test_its_joint_holds_the_steam_into_which_the_valve_lifts(
    joint: DesignFolder, opens: str, serves: str, said: str, ends: tuple[str, Grade | None]
) -> None:
    seated = changed(SEATED, ('"chamber"', f'"{opens}"'), ('"inlet"\n', f'"{serves}"\n'))
    joint.replace("block.toml", SEATED, seated)
    joint.replace("studs.toml", 'pressure = "cylinder"', f'pressure = "{said}"')
    check = joint.only("joint.pressure-of-part")
    assert (check.outcome, check.grade) == ends


def test_its_plate_is_judged_by_that_steam(joint: DesignFolder) -> None:
    """Exhaust steam in the word of its joint eases nothing."""
    before = joint.only("cover.thickness", "cover")
    assert before.utilisation is not None
    joint.replace("studs.toml", 'pressure = "cylinder"', 'pressure = "exhaust"')
    assert joint.only("cover.thickness", "cover").utilisation == before.utilisation


def test_it_is_a_pressure_part_whatever_it_says(joint: DesignFolder) -> None:
    joint.replace("cover.toml", 'form = "flat"', 'form = "flat"\npressure_part = false')
    check = joint.only("release.pressure-by-place", "cover")
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
