"""Steam paths: whole, cut off, branching, and at a valve of the other steam."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_conforms, expect_finding
from tests.plugins.wholeness.engine import told

LIVE, EXHAUST = "path.reaches-its-valve", "path.leaves-its-valve"
PARTS = {
    "inlet": 'kind = "poppet-valve"\nserves = "inlet"',
    "exhaust": 'kind = "poppet-valve"\nserves = "exhaust"',
    "pipe": 'kind = "steam-pipe"',
    "chest": 'kind = "steam-passage"\nfollows = "pipe"',
    "port": 'kind = "steam-passage"\nfollows = "chest"\nvalve = "inlet"',
    "way-out": 'kind = "steam-passage"\nvalve = "exhaust"',
    "belt": 'kind = "steam-passage"\nfollows = "way-out"',
    "exhaust-pipe": 'kind = "steam-pipe"\nfollows = "belt"',
    "nozzle": 'kind = "blast-nozzle"\nfollows = "exhaust-pipe"',
}


def design(workshop: DesignFolder, **parts: str) -> DesignFolder:
    """Both paths of a valve each, with some parts changed."""
    specs = {f"{name}.toml": f'id = "{name}"\n{text}\n' for name, text in (PARTS | parts).items()}
    return workshop.write(specs, settings=_FOR_REVIEW)


_FOR_REVIEW = '[works]\nstage = "for-review"\n'


def test_whole_paths_conform(workshop: DesignFolder) -> None:
    expect_conforms(design(workshop).only(LIVE, "port"))
    expect_conforms(design(workshop).only(EXHAUST, "way-out"))


def test_a_path_of_live_steam_that_begins_in_a_passage_has_no_pipe(workshop: DesignFolder) -> None:
    parts = {"chest": 'kind = "steam-passage"'}
    check = design(workshop, **parts).only(LIVE, "port")
    expect_finding(check, grade=Grade.NONCONFORMITY, says="steam pipe at its start")


def test_a_path_of_exhaust_steam_that_ends_in_a_pipe_has_no_nozzle(workshop: DesignFolder) -> None:
    parts = {"nozzle": 'kind = "blast-nozzle"'}
    expect_finding(design(workshop, **parts).only(EXHAUST, "way-out"), grade=Grade.NONCONFORMITY)


@pytest.mark.parametrize(("rule", "passage"), [(LIVE, "port"), (EXHAUST, "way-out")])
@pytest.mark.parametrize("serves", ["inlet", "exhaust", ""])
def test_a_path_at_a_valve_that_serves_otherwise_is_not_asked_for(
    workshop: DesignFolder, rule: str, passage: str, serves: str
) -> None:
    """Each rule asks for the path of its own steam, and neither where the valve does not say."""
    stated = f'serves = "{serves}"' if serves else ""
    parts = dict.fromkeys(("inlet", "exhaust"), f'kind = "poppet-valve"\n{stated}')
    own = {LIVE: "inlet", EXHAUST: "exhaust"}[rule]
    check = design(workshop, **parts).only(rule, passage)
    assert check.outcome == ("conforms" if serves == own else "not applicable")


@pytest.mark.parametrize("rule", [LIVE, EXHAUST])
def test_a_passage_at_no_valve_begins_and_ends_no_path(workshop: DesignFolder, rule: str) -> None:
    assert design(workshop).only(rule, "belt").outcome == "not applicable"


def test_two_nozzles_at_the_end_of_one_path_are_one_too_many(workshop: DesignFolder) -> None:
    """The belt branches: a pipe with a nozzle, and another nozzle at once."""
    parts = {"second": 'kind = "blast-nozzle"\nfollows = "belt"'}
    check = design(workshop, **parts).only(EXHAUST, "way-out")
    expect_finding(check, says="second")
    assert "nozzle" in check.says


PIPE_GONE = "live path of port wants a steam pipe at its start: none is there"


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"chest": 'kind = "steam-passage"'}, PIPE_GONE),
        ({"port": 'kind = "steam-passage"\nvalve = "inlet"'}, PIPE_GONE),
        ({"port": 'kind = "steam-passage"\nfollows = "pipe"\nvalve = "inlet"'}, ""),
        # what the first pipe follows is before the path: it begins in that, a pipe too or no pipe
        ({"pipe": 'kind = "steam-pipe"\nfollows = "header"', "header": 'kind = "steam-pipe"'}, ""),
        ({"pipe": 'kind = "steam-pipe"\nfollows = "header"', "header": 'kind = "steam-passage"'}, PIPE_GONE),
    ],
)
def test_a_path_of_live_steam_begins_in_a_pipe(
    workshop: DesignFolder, parts: dict[str, str], says: str
) -> None:
    assert told(workshop, {**PARTS, **parts}, LIVE, "port") == says


NOZZLE_GONE = "exhaust path of way-out wants a blast nozzle: none is there"


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"nozzle": 'kind = "blast-nozzle"'}, NOZZLE_GONE),
        ({"belt": 'kind = "steam-passage"'}, NOZZLE_GONE),
        ({"exhaust-pipe": 'kind = "steam-pipe"'}, NOZZLE_GONE),
        ({"nozzle": 'kind = "blast-nozzle"\nfollows = "way-out"'}, ""),
        (
            {"second": 'kind = "blast-nozzle"\nfollows = "belt"'},
            "exhaust path of way-out is filled twice (blast nozzle): second (second.toml), nozzle (nozzle.toml)",
        ),
        # two branches that meet again in one nozzle
        (
            {
                "branch": 'kind = "steam-pipe"\nfollows = "belt"',
                "nozzle": 'kind = "blast-nozzle"\nfollows = ["exhaust-pipe", "branch"]',
            },
            "",
        ),
    ],
)
def test_a_path_of_exhaust_steam_ends_in_one_nozzle(
    workshop: DesignFolder, parts: dict[str, str], says: str
) -> None:
    assert told(workshop, {**PARTS, **parts}, EXHAUST, "way-out") == says
