"""The planted parts of every family: bad ones are findings, sound ones hold, with the numbers worked by hand."""

from __future__ import annotations

from zlib import crc32

import pytest

from speclint.errors import replace
from speclint.repository import Change
from tests.planted.reading import NotReadable, Planted, families, planted, read
from tests.planted.trying import faults_of, in_si
from tests.rule_examples.designs import bench

_SHARES = 8  # of the parts, told by their names, one share is tried in every run and the others in .ci/long


@pytest.mark.parametrize(
    "share", [0, *(pytest.param(one, marks=pytest.mark.long) for one in range(1, _SHARES))]
)
@pytest.mark.parametrize("family", families())
def test_bad_parts_are_found_and_sound_ones_hold(family: str, share: int) -> None:
    own = [one for one in planted(family) if crc32(one.name.encode()) % _SHARES == share]
    faults = [fault for one in own for fault in faults_of(bench(), one)]
    assert not faults, "\n".join(faults)


@pytest.mark.parametrize("family", families())
def test_each_rule_has_three_bad_parts_and_a_sound_one(family: str) -> None:
    for rule in {one.rule for one in planted(family)}:
        own = [one for one in planted(family) if one.rule == rule]
        bad = {repr(one.changes) for one in own if one.sort == "bad"}
        assert len(bad) >= 3, f"{rule} has {len(bad)} bad parts that differ"
        assert any(one.sort == "sound" for one in own), f"{rule} has no sound part"
        assert bench().rules[rule].family == family


IRON = Planted(
    "liner.iron",
    "bad",
    "liner-left",
    "steel wears",
    (Change("liner-left", "material", "plate-P355GH"),),
    name="it",
)


def test_a_bad_part_that_passes_is_told() -> None:
    """The liner of the example is of iron; of plate it must be a finding."""
    assert list(faults_of(bench(), IRON)) == []
    (fault,) = faults_of(bench(), replace(IRON, changes=()))
    assert fault.startswith("it: conforms, not finding: ")
    (fault,) = faults_of(bench(), replace(IRON, sort="sound"))
    assert fault.startswith("it: finding, not conforms: ")


def test_another_number_than_that_worked_by_hand_is_told() -> None:
    own = next(one for family in families() for one in planted(family) if one.found and one.sort == "bad")
    number, unit = own.found.split(" ", 1) if " " in own.found else (own.found, "")
    other = replace(own, found=f"{float(number) * (1 + 2 * own.within):.9g} {unit}".strip())
    (fault,) = faults_of(bench(), other)
    assert f"{own.name}: found is {other.found} by hand" in fault


def test_words_that_are_not_said_are_told() -> None:
    (fault,) = faults_of(bench(), replace(IRON, says="it is sound"))
    assert "does not say 'it is sound'" in fault


@pytest.mark.parametrize(
    ("table", "fault"),
    [
        ({}, "worked is missing"),
        ({"worked": "w", "good": []}, "good is none of bad, sound, worked"),
        ({"worked": "w", "bad": [{"why": "y"}]}, "a.rule, bad 1: component is missing"),
        ({"worked": "w", "bad": [{"component": "c"}]}, "a.rule, bad 1: why is missing"),
        ({"worked": "w", "bad": [{"component": "c", "why": "y", "set": 1}]}, "set is none of"),
        ({"worked": "w", "bad": [{"component": "c", "why": "y", "changes": [{"value": 1}]}]}, "neither key"),
    ],
)
def test_a_file_that_is_not_as_it_should_be_is_told(table: dict[str, object], fault: str) -> None:
    with pytest.raises(NotReadable, match=fault):
        list(read("a.rule", table))


def test_a_number_in_another_unit_is_told() -> None:
    assert in_si("25.4 mm", "m") == pytest.approx(in_si("1 in", "m"))
    with pytest.raises(NotReadable, match="unit is m; write one of"):
        in_si("3 kg", "m")
    with pytest.raises(NotReadable, match="is not a number"):
        in_si("some mm", "m")
