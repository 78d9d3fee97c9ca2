"""The edge of a tapped hole by the face in which it stands: the agreement, and the rules that rest on it."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.agreement.test_joints import lined
from tests.plugins.joints.bench import bench

WRONG = ("finding", Grade.NONCONFORMITY)
FINE = ("conforms", None)
SILENT = ("not applicable", None)


@pytest.fixture
def workshop(tmp_path: Path) -> DesignFolder:
    """The bench's cover with a circle of 700 mm, on a block with a recess of 590 mm: 55 mm are left inside."""
    return lined(bench(DesignFolder(tmp_path)))


def faced(workshop: DesignFolder, face: str) -> DesignFolder:
    return workshop.replace("block.toml", 'side = "front"\n', f'side = "front"\nface_diameter = "{face}"\n')


@pytest.mark.parametrize(("edge", "ends"), [("55 mm", FINE), ("55.1 mm", WRONG), ("54.9 mm ±0.2", WRONG)])
def test_what_is_stated_is_left_inside(
    workshop: DesignFolder, edge: str, ends: tuple[str, Grade | None]
) -> None:
    check = workshop.replace("studs.toml", '"30 mm"\nroughness', f'"{edge}"\nroughness').only(
        "joint.edge-left"
    )
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(("face", "ends"), [("760 mm", FINE), ("759.9 mm", WRONG)])
def test_what_is_stated_is_left_outside(
    workshop: DesignFolder, face: str, ends: tuple[str, Grade | None]
) -> None:
    """(760 − 700)/2 = 30 mm."""
    check = faced(workshop, face).only("joint.edge-left")
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(("face", "ends"), [("734 mm", FINE), ("733 mm", WRONG)])
def test_a_stated_edge_hides_no_narrow_face(
    workshop: DesignFolder, face: str, ends: tuple[str, Grade | None]
) -> None:
    """0.7 × 24 = 16.8 mm are asked; 17 and 16.5 mm are left, though 30 are stated."""
    workshop.replace("studs.toml", 'engagement = "36 mm"', 'engagement = "60 mm"')
    check = faced(workshop, face).only("joint.edge", "studs")
    assert (check.outcome, check.grade) == ends


def test_a_stated_edge_eases_no_engagement(workshop: DesignFolder) -> None:
    """Twice (734 − 700)/2 = 34 mm across the metal round the thread, whatever is stated, and left out."""
    faced(workshop, "734 mm")
    assert on_sheet(workshop.only("joint.engagement", "studs"), "s_e") == pytest.approx(0.034)
    workshop.replace("studs.toml", 'edge_distance = "30 mm"\n', "")
    assert on_sheet(workshop.only("joint.engagement", "studs"), "s_e") == pytest.approx(0.034)
    check = workshop.only("joint.edge-left")
    assert (check.outcome, check.grade) == SILENT


def test_one_edge_alone_is_not_enough(workshop: DesignFolder) -> None:
    workshop.replace("studs.toml", 'edge_distance = "30 mm"\n', "")
    assert workshop.only("joint.edge", "studs").outcome == "not assessed"


def test_a_bore_without_a_liner_counts_as_bored_out(workshop: DesignFolder) -> None:
    """(700 − 650)/2 = 25 mm, less than the 30 that are stated."""
    (workshop.root / "liner.toml").unlink()
    workshop.replace(
        "block.toml", 'recess_diameter = "590 mm"\n', 'diameter = "600 mm"\nlast_bore = "650 mm"\n'
    )
    check = workshop.only("joint.edge-left")
    assert (check.outcome, check.grade) == WRONG


@pytest.mark.parametrize(("edge", "ends"), [("30 mm", FINE), ("30.1 mm", WRONG)])
def test_studs_of_a_chamber_cover_stand_round_its_bore(
    tmp_path: Path, edge: str, ends: tuple[str, Grade | None]
) -> None:
    """(300 − 240)/2 = 30 mm."""
    studs = 'kind = "bolted-joint"\nholds = "cover"\nfastener = "stud"\nscrewed_into = "block"\ncircle = "300 mm"\n'
    files = {
        "block.toml": 'kind = "cylinder-block"\n',
        "cover.toml": 'kind = "chamber-cover"\ncloses = "block"\nbore = "240 mm"\n',
        "studs.toml": f'{studs}edge_distance = "{edge}"\n',
    }
    check = DesignFolder(tmp_path).write(files).only("joint.edge-left")
    assert (check.outcome, check.grade) == ends
