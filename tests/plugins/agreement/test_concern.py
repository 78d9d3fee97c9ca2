"""What a spec says of pressure and danger, against the kind and the place of the part."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

PRESSURE, SAFETY = "release.pressure-by-place", "release.safety-by-kind"
COVER = 'kind = "cylinder-cover"\nid = "cover"\n'


@pytest.fixture
def workshop(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path)


@pytest.mark.parametrize("rule", [PRESSURE, SAFETY])
@pytest.mark.parametrize(("word", "outcome"), [("true", "conforms"), ("false", "finding")])
def test_a_cover_holds_pressure_and_can_hurt(
    workshop: DesignFolder, rule: str, word: str, outcome: str
) -> None:
    key = "pressure_part" if rule == PRESSURE else "safety_part"
    found = workshop.write({"part.toml": f"{COVER}{key} = {word}\n"}).only(rule)
    assert (found.outcome, found.grade) == (outcome, Grade.QUERY if outcome == "finding" else None)


@pytest.mark.parametrize(
    "kind", ["cylinder-block", "weldment", "stuffing-box", "pipe-flange", "steam-pipe", "valve-cage"]
)
def test_a_part_that_can_burst_or_let_go_is_not_said_to_hurt_nobody(
    workshop: DesignFolder, kind: str
) -> None:
    workshop.write({"part.toml": f'kind = "{kind}"\nid = "part"\nsafety_part = false\n'})
    assert workshop.only(SAFETY).outcome == "finding"


@pytest.mark.parametrize("rule", [PRESSURE, SAFETY])
def test_what_says_nothing_is_taken_by_its_kind(workshop: DesignFolder, rule: str) -> None:
    assert workshop.write({"part.toml": COVER}).only(rule).outcome == "not applicable"


@pytest.mark.parametrize("rule", [PRESSURE, SAFETY])
def test_a_lagging_may_say_what_it_likes(workshop: DesignFolder, rule: str) -> None:
    text = 'kind = "lagging"\npressure_part = false\nsafety_part = false\n'
    assert workshop.write({"part.toml": text}).only(rule).outcome == "not applicable"


@pytest.mark.parametrize(("holds", "outcome"), [("cover", "finding"), ("lagging", "not applicable")])
def test_studs_are_as_what_they_hold(workshop: DesignFolder, holds: str, outcome: str) -> None:
    studs = f'kind = "bolted-joint"\nholds = "{holds}"\npressure_part = false\n'
    lagging = 'kind = "lagging"\nid = "lagging"\n'
    found = workshop.write({"cover.toml": COVER, "lagging.toml": lagging, "studs.toml": studs})
    assert found.only(PRESSURE, "studs").outcome == outcome


def test_a_finding_says_what_speaks_against_the_word(workshop: DesignFolder) -> None:
    found = workshop.write({"part.toml": f'drawing = "A-1"\n{COVER}pressure_part = false\n'}).only(PRESSURE)
    assert found.says == (
        "pressure part false (part.toml:4, drawing A-1) does not agree with "
        "its place: a cylinder cover holds the pressure of steam"
    )
