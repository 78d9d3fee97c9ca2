"""made.independent-examination: who examined and tested a part as made is not who made it."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed
from tests.plugins.release.part import files

RULE = "made.independent-examination"
MADE = """
kind = "made-part"
id = "cover-7"
of = "cover"
serial = "7"
[welds.boss]
welder = "W. Dunn, mark 7"
[examinations.boss]
method = "ultrasonic"
by = "K. Ashby"
result = "passed"
[hydraulic_tests.shop]
pressure = "28 bar gauge"
by = "K. Ashby"
witnessed_by = "B. Thorne"
result = "passed"
"""
EXAMINED = 'method = "ultrasonic"\nby = "K. Ashby"'
TESTED = 'gauge"\nby = "K. Ashby"'
WITNESS = 'witnessed_by = "B. Thorne"\n'
SOUND = "each is by somebody who is named, and looked at by another"


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("", ""), SOUND),
        ((WITNESS, ""), "shop names no witness"),
        ((WITNESS, 'witnessed_by = "Ashby, Karl"\n'), "shop was made and witnessed by K. Ashby"),
        ((WITNESS, 'witnessed_by = "K. Ashby and B. Thorne"\n'), SOUND),
        ((WITNESS, 'witnessed_by = "the tester"\n'), "shop names no witness"),
        ((WITNESS, 'witnessed_by = "K. Ashby and himself"\n'), "shop was made and witnessed by K. Ashby"),
        ((WITNESS, 'witnessed_by = "the inspecting engineer"\n'), SOUND),
        ((TESTED, 'gauge"\nby = "test shop"'), "shop names nobody who made it"),
        ((EXAMINED, 'method = "ultrasonic"\nby = "the welder"'), "boss names nobody who made it"),
        ((TESTED, 'gauge"'), "shop names nobody who made it"),
        ((EXAMINED, 'method = "ultrasonic"'), "boss names nobody who made it"),
        (
            (EXAMINED, 'method = "ultrasonic"\nby = "William Dunn"'),
            "boss was made by William Dunn, who welded boss",
        ),
        ((EXAMINED, 'method = "ultrasonic"\nby = "W. Dunn and K. Ashby"'), SOUND),
        (('welder = "W. Dunn, mark 7"\n', ""), SOUND),  # made.examined asks for the welder
    ],
)
def test_whoever_looks_is_another(workshop: DesignFolder, change: tuple[str, str], says: str) -> None:
    text = changed(MADE, change) if change[0] else MADE
    check = workshop.write({**files(), "made.toml": text}).only(RULE, "cover-7")
    assert (check.outcome, check.grade) == (
        ("conforms", None) if says == SOUND else ("finding", Grade.NONCONFORMITY)
    )
    assert check.says == says


def test_all_that_is_wrong_is_listed(workshop: DesignFolder) -> None:
    text = changed(MADE, (WITNESS, ""), (EXAMINED, 'method = "ultrasonic"'))
    check = workshop.write({**files(), "made.toml": text}).only(RULE, "cover-7")
    assert check.says == "shop names no witness; boss names nobody who made it"


def test_without_a_result_nothing_was_done(workshop: DesignFolder) -> None:
    text = MADE.replace('result = "passed"\n', "")
    check = workshop.write({**files(), "made.toml": text}).only(RULE, "cover-7")
    assert check.outcome == "not applicable"
