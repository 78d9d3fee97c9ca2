"""casting.sections: walls that meet, fillets and cores."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder
from speclint_fabrication.formulae.castings import ratio_of_walls

RULE = "casting.sections"
CASTING = """
kind = "casting"
id = "casting"
cored = true
[meetings.foot]
thick = "36 mm"
thin = "24 mm"
fillet = "8 mm"
[cores.bore]
held = true
vented = true
"""


def write(workshop: DesignFolder, old: str = "", new: str = "") -> DesignFolder:
    assert not old or old in CASTING
    return workshop.write({"casting.toml": CASTING.replace(old, new) if old else CASTING})


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ("", "", "conforms"),  # 36/24 = 1.5, 8 mm of a third of 24
        ('"36 mm"', '"36.1 mm"', "finding"),
        ('"8 mm"', '"7.9 mm"', "finding"),
        ("held = true", "held = false", "finding"),
        ("vented = true", "vented = false", "finding"),
        ("cored = true", "cored = false", "finding"),
        ("cored = true", "", "not assessed"),
        ("vented = true", "", "not assessed"),
        ('fillet = "8 mm"', "", "not assessed"),
        ("[cores.bore]\nheld = true\nvented = true\n", "", "not assessed"),
    ],
)
def test_walls_fillets_and_cores(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    check = write(workshop, old, new).only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_casting_without_meetings_is_not_assessed(workshop: DesignFolder) -> None:
    text = '[meetings.foot]\nthick = "36 mm"\nthin = "24 mm"\nfillet = "8 mm"\n'
    assert write(workshop, text, "").only(RULE).outcome == "not assessed"


def test_walls_the_wrong_way_round_are_a_query(workshop: DesignFolder) -> None:
    assert write(workshop, '"36 mm"', '"20 mm"').only(RULE).grade is Grade.QUERY


@given(thin=st.floats(1e-3, 0.1), by=st.floats(1.0, 5.0))
def test_the_ratio_is_that_of_the_walls(thin: float, by: float) -> None:
    assert ratio_of_walls(by * thin, thin) == pytest.approx(by)


@pytest.mark.parametrize(
    ("kind", "cores", "outcome"),
    [
        ("cylinder-liner", "", "finding"),
        ("cylinder-block", "", "finding"),
        ("steam-passage", "", "finding"),
        ("steam-pipe", "", "finding"),
        ("cam-box", "", "finding"),
        ("valve-seat", "", "conforms"),
        ("cylinder-cover", "", "conforms"),
        ("cylinder-liner", "[cores.bore]\nheld = true\nvented = true\n", "finding"),
        ("cylinder-cover", "[cores.bore]\nheld = true\nvented = true\n", "finding"),
        ("cylinder-liner", "[cores.bore]\nheld = false\nvented = true\n", "finding"),
    ],
)
def test_a_hollow_part_has_a_core_and_one_that_is_listed_counts(
    workshop: DesignFolder, kind: str, cores: str, outcome: str
) -> None:
    """That it is said to have no core: neither makes a cylinder solid, nor agrees with a core that is listed."""
    casting = CASTING.partition("[cores")[0].replace("cored = true", 'cored = false\nbecomes = "part"')
    files = {"casting.toml": casting + cores, "part.toml": f'kind = "{kind}"\n'}
    check = workshop.write(files).only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
