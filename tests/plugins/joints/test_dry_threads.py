"""joint.nuts-come-off: studs put together dry, their heat and their torque coefficient."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, found, limit
from speclint_joints.rules.dry_threads import is_dry
from tests.plugins.joints.bench import bench, in_every_case

RULE = "joint.nuts-come-off"
FINE, WRONG = ("conforms", None), ("finding", Grade.NONCONFORMITY)
_PASTE, _K = 'lubrication = "graphite paste"', 'torque_coefficient = "0.16"'


def dry(workshop: DesignFolder, heat: str, coefficient: str, words: str = "none") -> DesignFolder:
    """The bench with studs that are put together dry, and as hot in every case."""
    design = bench(
        workshop,
        ("studs", _PASTE, f'lubrication = "{words}"'),
        ("studs", _K, f'torque_coefficient = "{coefficient}"' if coefficient else ""),
    )
    return in_every_case(design, 'bolted-joint = "200 °C"', f'bolted-joint = "{heat}"')


@pytest.mark.parametrize(
    ("heat", "coefficient", "ends"),
    [
        ("249..250 °C", "0.20", FINE),
        ("249..251 °C", "0.20", WRONG),
        ("350 °C", "0.20", WRONG),
        ("200 °C", "0.18", FINE),
        ("200 °C", "0.179", WRONG),
        ("200 °C", "0.16", WRONG),
        ("200 °C", "", FINE),
    ],
)
def test_dry_studs_from_both_sides(
    workshop: DesignFolder, heat: str, coefficient: str, ends: tuple[str, Grade | None]
) -> None:
    check = dry(workshop, heat, coefficient).only(RULE, "studs")
    assert (check.outcome, check.grade) == ends, check.says


def test_what_is_found_of_hot_dry_studs(workshop: DesignFolder) -> None:
    check = dry(workshop, "350 °C", "0.20").only(RULE, "studs")
    assert (found(check), limit(check)) == (pytest.approx(623.15), pytest.approx(523.15))


@pytest.mark.parametrize(
    "words", ["graphite paste", "dry graphite", "oil", "nickel paste on threads and faces"]
)
def test_a_lubricant_lets_the_nuts_come_off(workshop: DesignFolder, words: str) -> None:
    check = dry(workshop, "350 °C", "0.16", words).only(RULE, "studs")
    assert check.outcome == "conforms"
    assert words in check.says


def test_what_oils_the_thread_is_asked_for(workshop: DesignFolder) -> None:
    assert bench(workshop, ("studs", _PASTE, "")).only(RULE, "studs").outcome == "not assessed"


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        ("none", True),
        ("-", True),
        ("dry", True),
        ("Dry, as delivered", True),
        ("threads and nut faces degreased", True),
        ("without lubricant", True),
        ("not greased", True),
        ("greased", False),
        ("oiled threads", False),
        ("no oil: graphite", False),
        ("dry film of molybdenum disulphide", False),
        ("no lubricant specified", True),
        ("lubrication not required", True),
        ("thread lubricant: none", True),
        ("none used", True),
        ("no oil or grease", True),
        ("w/o grease", True),
        ("oil-free", True),
        ("bone dry", True),
        ("bare metal", True),
        ("zinc plated, dry", True),
        ("dry, by the practice of the works", True),
        ("degreased with solvent", True),
        ("dry lubricant", False),
        ("delivered greased", False),
        ("threads greased, faces not oiled", False),
        ("copper paste not oil", False),
        ("not oil but copper paste", False),
        ("nickel paste without copper", False),
        ("graphite paste; no nut goes on dry", False),
        ("no dry threads", False),
        ("as in the handbook, not", False),
    ],
)
def test_words_that_say_dry(words: str, wanted: bool) -> None:
    assert is_dry(words) is wanted
