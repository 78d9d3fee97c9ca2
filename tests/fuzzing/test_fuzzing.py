"""The tool that mutates, and the cases that it found."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from speclint.rules import Grade
from speclint.testing import DesignFolder, installed_families
from tests.fuzzing.__main__ import mutants
from tests.fuzzing.bench import Bench
from tests.fuzzing.designs import small_designs
from tests.fuzzing.mutations import MUTATIONS, mutate
from tests.fuzzing.trial import faults, holds_of
from tests.tubes import FILES, RULES, tubes


def test_every_component_of_the_example_is_begun_with() -> None:
    designs = small_designs()
    assert len(designs) > 90
    assert all({"speclint.toml", "register.toml", one.checked} <= set(one.files) for one in designs)


@pytest.mark.parametrize("mutation", dict.fromkeys(MUTATIONS), ids=lambda one: one.__name__)
def test_a_mutation_changes_a_spec_and_depends_on_its_seed_alone(mutation: object) -> None:
    text = small_designs()[0].files[small_designs()[0].checked]
    one, again = ([mutation(text, random.Random(seed)) for seed in range(20)] for _ in range(2))  # type: ignore[operator]
    assert one == again
    assert sum(changed != text for changed in one) >= 15


def test_mutants_depend_on_the_seed_alone() -> None:
    def first(seed: int) -> list[tuple[int, str, str]]:
        drawn = mutants(seed)
        return [(number, file, how) for number, _, _, file, how in (next(drawn) for _ in range(5))]

    assert first(3) == first(3) != first(4)
    assert mutate(b'a = "1 mm"', random.Random(1)) == mutate(b'a = "1 mm"', random.Random(1))


def test_a_traceback_and_a_rule_that_cannot_run_are_faults(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    design = small_designs()[0]
    for name, text in design.files.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_bytes(text)
    assert faults(tmp_path, design.checked, (), design.checked, {}) == []
    monkeypatch.setattr("tests.fuzzing.trial.assess", lambda *_: 1 / 0)
    (found,) = faults(tmp_path, design.checked, (), design.checked, {})
    assert "ZeroDivisionError" in found


def test_a_hold_that_vanishes_without_cause_is_a_fault(tmp_path: Path) -> None:
    """The rule's hold is said to have stood before; the file that was changed is none of those it came from."""
    design = small_designs()[0]
    for name, text in design.files.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_bytes(text)
    before = {("another", "another.rule"): frozenset({"another"})}
    (found,) = faults(tmp_path, design.checked, (), design.checked, before)
    assert "the hold of another.rule on another vanished" in found
    before = {("another", "another.rule"): frozenset({design.checked})}
    assert faults(tmp_path, design.checked, (), design.checked, before) == []


def test_the_holds_of_an_assessment_name_what_they_came_from(workshop: DesignFolder) -> None:
    tube = FILES["tube.toml"].replace("30 bar", "300 bar")
    workshop.loaded = tubes(*(rule for rule in RULES if rule.grade is Grade.HOLD))
    found = holds_of(workshop.write({**FILES, "tube.toml": tube}).assess())
    assert found == {("tube", "tube.stress"): frozenset({"tube.toml"})}


def test_a_process_that_ends_is_a_fault_and_the_next_mutant_is_tried() -> None:
    bench = Bench()
    design = small_designs()[0]
    try:
        assert bench.try_out(design.files, design.checked, (), "") == []
        assert bench.try_out(design.files, design.checked, (), design.checked) == []
        assert bench._process is not None
        bench._process.kill()
        assert bench.try_out(design.files, design.checked, (), "") == ["the process ended"]
        assert bench.fresh
    finally:
        bench.end()


#: Files that once drew a traceback, a hang or a rule that could not be run: a whole design each.
FOUND: dict[str, dict[str, str]] = {
    "a long link": {"ring.toml": f'kind = "piston-ring"\nruns_in = "{"a" * 5000}"\n'},
    "a long id": {"ring.toml": f'kind = "piston-ring"\nid = "{"a" * 5000}"\n'},
    "steps of reboring without number": {
        "liner.toml": 'kind = "cylinder-liner"\nbore = "500 mm"\nlast_bore = "520 mm"\nreboring_step = "1e-9 mm"\n'
    },
    "a thread with a fraction over 0": {"studs.toml": 'kind = "bolted-joint"\nthread = "3/4-1 1/0 UNC"\n'},
}


@pytest.mark.parametrize("name", FOUND)
def test_a_case_that_was_found_stays_answered(workshop: DesignFolder, name: str) -> None:
    workshop.loaded = installed_families()
    workshop.write(FOUND[name])
    assert faults(workshop.root, ".", (), "", {}) == []
