"""material.known, material.temperature, material.time-dependent and material.certificate."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings as trials, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.pairings.bench import files

KNOWN, TEMPERATURE = "material.known", "material.temperature"

OWN = """
[sources]
WORKS = { work = "Works metallurgist's report 12", edition = "2024" }
[works-iron]
title = "the works' own iron"
family = "grey-iron"
standard = "works"
like = "grey-iron-250"
density = { value = 7150, tolerance = 50, unit = "kg/m³", source = "WORKS", place = "p. 3" }
"""


def test_a_material_of_the_handbook_is_known(workshop: DesignFolder) -> None:
    assert {check.outcome for check in workshop.write(files()).check(KNOWN)} == {"conforms"}


def test_a_material_of_the_repository_is_known(workshop: DesignFolder) -> None:
    found = {**files(ring=(("ring-iron", "works-iron"),)), "own.toml": OWN}
    workshop.write(found, settings='materials = ["own.toml"]\nleave_out = ["own.toml"]\n')
    assert workshop.only(KNOWN, "ring").outcome == "conforms"


def test_a_name_that_nobody_knows_is_a_query(workshop: DesignFolder) -> None:
    check = workshop.write(files(ring=(("ring-iron", "best iron"),))).only(KNOWN, "ring")
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert check.says == "best iron is neither in the handbook nor among the repository's own materials"


def test_no_material_at_all_is_not_assessed(workshop: DesignFolder) -> None:
    check = workshop.write(files(ring=(('material = "ring-iron"', ""),))).only(KNOWN, "ring")
    assert (check.outcome, check.says) == ("not assessed", "material is not stated in ring.toml")


@pytest.mark.parametrize(("hot", "outcome"), [("230 °C", "conforms"), ("231 °C", "finding")])
def test_grey_iron_as_a_pressure_part(workshop: DesignFolder, hot: str, outcome: str) -> None:
    """ASTM A278, scope: 230 °C for every class. In running, the hottest of the three cases tried."""
    found = files(
        block=(("structural-S355", "grey-iron-250"),),
        duty=(('"250..260 °C"', f'"{hot}"'), ('"240 °C"', '"200 °C"')),
    )
    check = workshop.write(found).only(TEMPERATURE, "block")
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)
    assert check.case == "running"


@pytest.mark.parametrize(("hot", "outcome"), [("345 °C", "conforms"), ("346 °C", "finding")])
def test_stress_relieved_iron_of_the_higher_classes(workshop: DesignFolder, hot: str, outcome: str) -> None:
    """ASTM A278, classes 40 and above, stress relieved: 345 °C."""
    found = files(
        block=(("structural-S355", "grey-iron-300-stress-relieved"),), duty=(('"250..260 °C"', f'"{hot}"'),)
    )
    assert workshop.write(found).only(TEMPERATURE, "block").outcome == outcome


RELIEVED = (("[bores.main]", '[bores.main.relieved.middle]\nstarts = "300 mm"\n[bores.main]'),)


@pytest.mark.parametrize("says", ["true", "false"])
@pytest.mark.parametrize(
    ("block", "length", "outcome"),
    [
        # the working bore is 807 − 88 = 719 mm long
        ((), "719 mm", "conforms"),
        ((), "718 mm", "finding"),
        (RELIEVED, "800 mm", "finding"),
    ],
)
def test_a_liner_holds_pressure_where_its_block_does_not_stand_behind_it(
    workshop: DesignFolder, block: tuple[tuple[str, str], ...], length: str, outcome: str, says: str
) -> None:
    """At 270 to 290 °C: fully backed a running part, to 400 °C; else a pressure part of grey iron, to 230 °C."""
    stated = (('fit_length = "800 mm"', f'fit_length = "{length}"\npressure_part = {says}'),)
    check = workshop.write(files(block=block, liner=stated)).only(TEMPERATURE, "liner")
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def test_what_stands_behind_a_liner_must_be_known(workshop: DesignFolder) -> None:
    check = workshop.write(files(liner=(('fit_length = "800 mm"\n', ""),))).only(TEMPERATURE, "liner")
    assert check.outcome == "not assessed"


@pytest.mark.parametrize(("hot", "outcome"), [("400 °C", "conforms"), ("401 °C", "finding")])
def test_iron_as_a_running_part(workshop: DesignFolder, hot: str, outcome: str) -> None:
    """Common practice: 400 °C for liners, seats and rings; a nonconformity."""
    check = workshop.write(files(duty=(('"270..290 °C"', f'"{hot}"'),))).only(TEMPERATURE, "liner")
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_the_hottest_of_the_tolerance_governs(workshop: DesignFolder) -> None:
    check = workshop.write(files(duty=(('"270..290 °C"', '"390..410 °C"'),))).only(TEMPERATURE, "liner")
    assert check.outcome == "finding"
    assert check.governing == ("temperature of cylinder-liner high",)


@pytest.mark.parametrize(
    ("material", "outcome"), [("bolting-8.8", "finding"), ("bolting-25CrMo4", "conforms")]
)
def test_studs_by_the_limit_of_bolting(workshop: DesignFolder, material: str, outcome: str) -> None:
    """ISO 898-1 ends at 150 °C; EN 10269 goes to 500 °C. The studs reach 220 °C."""
    studs = (
        f'kind = "bolted-joint"\nid = "studs"\nmaterial = "{material}"\nduty = "duty"\npressure_part = true\n'
    )
    check = workshop.write({**files(), "studs.toml": studs}).only(TEMPERATURE, "studs")
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def test_bolts_of_the_frame_by_the_limit_of_bolting(workshop: DesignFolder) -> None:
    """A nonconformity: they hold no pressure."""
    bolts = 'kind = "frame-fastening"\nid = "bolts"\nmaterial = "bolting-10.9"\nduty = "duty"\n'
    found = files()
    for hot in ("180 °C", "220 °C", "210 °C"):
        line = f'bolted-joint = "{hot}"\n'
        found["duty.toml"] = found["duty.toml"].replace(line, f'{line}frame-fastening = "{hot}"\n')
    check = workshop.write({**found, "bolts.toml": bolts}).only(TEMPERATURE, "bolts")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)


@pytest.mark.parametrize(("hot", "outcome"), [("120 °C", "conforms"), ("240 °C", "finding")])
def test_a_spring_by_the_limit_of_its_wire(workshop: DesignFolder, hot: str, outcome: str) -> None:
    """Patented wire is given 120 °C by every source, and 240 °C by none."""
    spring = 'kind = "compression-spring"\nid = "spring"\nmaterial = "wire-patented-SH"\nduty = "duty"\n'
    found = files()
    found["duty.toml"] = found["duty.toml"].replace(
        'compression-spring = "100 °C"', f'compression-spring = "{hot}"'
    )
    check = workshop.write({**found, "spring.toml": spring}).only(TEMPERATURE, "spring")
    assert check.outcome == outcome


@trials(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=10, deadline=None)
@given(hot=st.integers(300, 500), more=st.integers(0, 100))
def test_hotter_is_never_better(workshop: DesignFolder, hot: int, more: int) -> None:
    def used(at: int) -> float:
        check = workshop.write(files(duty=(('"270..290 °C"', f'"{at} °C"'),))).only(TEMPERATURE, "liner")
        assert check.utilisation is not None
        return check.utilisation

    assert used(hot) <= used(hot + more)


def test_not_assessed_without_a_temperature(workshop: DesignFolder) -> None:
    check = workshop.write(files(duty=(('cylinder-liner = "270..290 °C"', ""),))).only(TEMPERATURE, "liner")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


CREEP, CERTIFICATE = "material.time-dependent", "material.certificate"


@pytest.mark.parametrize(("hot", "outcome"), [("380 °C", "conforms"), ("381 °C", "finding")])
def test_creep_of_carbon_steel_from_both_sides(workshop: DesignFolder, hot: str, outcome: str) -> None:
    """EN 10028-2: the creep tables of P265GH begin at 380 °C."""
    found = files(block=(("structural-S355", "plate-P265GH"),), duty=(('"250..260 °C"', f'"{hot}"'),))
    check = workshop.write(found).only(CREEP, "block")
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def test_molybdenum_steel_goes_further(workshop: DesignFolder) -> None:
    """16Mo3 to 450 °C."""
    found = files(block=(("structural-S355", "plate-16Mo3"),), duty=(('"250..260 °C"', '"440 °C"'),))
    assert workshop.write(found).only(CREEP, "block").outcome == "conforms"


def test_iron_and_running_parts_have_no_such_limit(workshop: DesignFolder) -> None:
    workshop.write(files(block=(("structural-S355", "grey-iron-250"),)))
    assert {check.outcome for check in workshop.check(CREEP)} == {"not applicable"}


def test_creep_is_not_assessed_without_a_temperature(workshop: DesignFolder) -> None:
    found = files(block=(("structural-S355", "plate-P265GH"),), duty=(('cylinder-block = "240 °C"', ""),))
    check = workshop.write(found).only(CREEP, "block")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(
    ("document", "outcome"),
    [("2.1", "finding"), ("2.2", "finding"), ("3.1", "conforms"), ("3.2", "conforms")],
)
def test_the_document_is_on_the_very_melt(workshop: DesignFolder, document: str, outcome: str) -> None:
    found = files(block=(('duty = "duty"', f'duty = "duty"\ninspection_document = "{document}"'),))
    check = workshop.write(found).only(CERTIFICATE, "block")
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def test_no_document_is_not_assessed_and_counts_as_a_hold(workshop: DesignFolder) -> None:
    check = workshop.write(files()).only(CERTIFICATE, "block")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_a_ring_needs_no_document(workshop: DesignFolder) -> None:
    assert workshop.write(files()).only(CERTIFICATE, "ring").outcome == "not applicable"


@pytest.mark.parametrize(
    "rule", ["material.known", "material.temperature", "material.time-dependent", "material.certificate"]
)
def test_what_is_no_piece_of_metal_has_no_material(workshop: DesignFolder, rule: str) -> None:
    """A chain of dimensions is stated in a spec of its own, and is made of nothing."""
    chain = 'kind = "dimension-chain"\nid = "chain"\nduty = "duty"\n'
    found = workshop.write({**files(), "chain.toml": chain}).only(rule, "chain")
    assert found.outcome == "not applicable"
