"""material.known, material.temperature, material.time-dependent and material.certificate."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings as trials, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_applicable
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


@pytest.mark.parametrize(
    ("length", "ends", "outcome"),
    [("800 mm", "807 mm", "conforms"), ("800 mm", "806 mm", "finding"), ("718 mm", "807 mm", "finding")],
)
def test_of_a_stated_length_of_fit_and_its_lands_the_lesser_stands_behind_a_liner(
    workshop: DesignFolder, length: str, ends: str, outcome: str
) -> None:
    """The working bore is 719 mm long; a land from 88 to 807 mm is as long."""
    land = f'fit_length = "{length}"\n[lands.one]\nstarts = "88 mm"\nends = "{ends}"\n'
    check = workshop.write(files(liner=(('fit_length = "800 mm"\n', land),))).only(TEMPERATURE, "liner")
    assert check.outcome == outcome


def test_a_relieved_length_says_where_it_starts(workshop: DesignFolder) -> None:
    ends = (("[bores.main]", '[bores.main.relieved.middle]\nends = "300 mm"\n[bores.main]'),)
    assert workshop.write(files(block=ends)).only(TEMPERATURE, "liner").outcome == "not assessed"


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


PIECES = {
    "crosshead": 'kind = "crosshead"\nmaterial = "forging-42CrMo4"\nslipper_material = "white-metal-tin"\n',
    "pin": 'kind = "pin"\nmaterial = "forging-42CrMo4"\nbearing_material = "white-metal-tin"\n',
    "rocker": 'kind = "rocker"\nmaterial = "forging-42CrMo4"\nbush_material = "white-metal-tin"\n',
    "pinned rocker": 'kind = "rocker"\nmaterial = "forging-42CrMo4"\npin_material = "white-metal-tin"\n',
    "valve-spindle": 'kind = "valve-spindle"\nmaterial = "forging-42CrMo4"\nguide_material = "white-metal-tin"\n',
}


def heated(kind: str, at: str, block: str = "100 °C") -> str:
    """A duty in which only a part of a kind and the block have temperatures."""
    return 'kind = "duty"\nid = "duty"\n' + "".join(
        f'[cases.{case}.temperatures]\n{kind} = "{at}"\ncylinder-block = "{block}"\n'
        for case in ("starting", "running", "drifting")
    )


@pytest.mark.parametrize("name", sorted(PIECES))
@pytest.mark.parametrize(("hot", "outcome"), [("110 °C", "conforms"), ("111 °C", "finding")])
def test_the_metal_of_a_bearing_has_its_own_limit(
    workshop: DesignFolder, name: str, hot: str, outcome: str
) -> None:
    """Tin white metal to 110 °C (common practice) in a forging that bears 400."""
    part = f'id = "part"\nduty = "duty"\n{PIECES[name]}'
    kind = name.removeprefix("pinned ")
    check = workshop.write({"part.toml": part, "duty.toml": heated(kind, hot)}).only(TEMPERATURE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("block", "outcome"), [("200 °C", "conforms"), ("270 °C", "finding")])
def test_a_guide_is_as_hot_as_the_block_around_it(workshop: DesignFolder, block: str, outcome: str) -> None:
    """Bronze to 200 °C (common practice), its spindle at 150 °C."""
    part = 'kind = "valve-spindle"\nid = "part"\nmaterial = "stainless-1.4021"\nguide_material = "bronze-CC480K"\n'
    found = {"part.toml": part + 'duty = "duty"\n', "duty.toml": heated("valve-spindle", "150 °C", block)}
    assert workshop.write(found).only(TEMPERATURE).outcome == outcome


@pytest.mark.parametrize(
    ("left_out", "outcome"),
    [
        ("", "conforms"),
        ('pressed_into = "other"\n', "finding"),
        ('upper_beat.seat = "seat"\n', "finding"),
        ('moves = "valve"\n', "finding"),
    ],
)
def test_a_guide_is_as_hot_as_its_own_block(workshop: DesignFolder, left_out: str, outcome: str) -> None:
    """Its block is at 200 °C, others at 270: it is as hot as those, where it does not lead to its own."""
    made = {
        "other.toml": 'kind = "cylinder-block"\nid = "other"\n',
        "seat.toml": 'kind = "valve-seat"\nid = "seat"\npressed_into = "other"\n',
        "valve.toml": 'kind = "poppet-valve"\nid = "valve"\nupper_beat.seat = "seat"\n',
        "part.toml": 'kind = "valve-spindle"\nid = "part"\nmaterial = "stainless-1.4021"\nmoves = "valve"\n'
        'guide_material = "bronze-CC480K"\nduty = "duty"\n',
        "duty.toml": heated("valve-spindle", "150 °C", "270 °C").replace(
            "cylinder-block =", 'other = "200 °C"\ncylinder-block ='
        ),
    }
    made = {file: text.replace(left_out, "") if left_out else text for file, text in made.items()}
    assert workshop.write(made).only(TEMPERATURE, "part").outcome == outcome


def test_a_guide_is_as_hot_as_its_spindle_where_no_block_has_a_temperature(workshop: DesignFolder) -> None:
    """Bronze to 200 °C."""
    part = 'kind = "valve-spindle"\nid = "part"\nmaterial = "stainless-1.4021"\nguide_material = "bronze-CC480K"\n'
    for hot, outcome in (("200 °C", "conforms"), ("201 °C", "finding")):
        duty = heated("valve-spindle", hot).replace('cylinder-block = "100 °C"\n', "")
        found = {"part.toml": part + 'duty = "duty"\n', "duty.toml": duty}
        assert workshop.write(found).only(TEMPERATURE).outcome == outcome


def test_a_nut_has_the_limit_of_bolting(workshop: DesignFolder) -> None:
    """Nuts of 8.8 to 150 °C on studs of 25CrMo4 at 220."""
    studs = 'kind = "bolted-joint"\nid = "studs"\nmaterial = "bolting-25CrMo4"\nduty = "duty"\npressure_part = true\n'
    nut = '[nut]\nmaterial = "bolting-8.8"\n'
    check = workshop.write({**files(), "studs.toml": studs + nut}).only(TEMPERATURE, "studs")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


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


@pytest.mark.parametrize(
    ("stud", "nut", "hot", "outcome"),
    [
        ("bolting-25CrMo4", "bolting-25CrMo4", "420 °C", "conforms"),
        ("bolting-25CrMo4", "bolting-25CrMo4", "421 °C", "finding"),
        ("bolting-B7", "bolting-25CrMo4", "371 °C", "conforms"),
        ("bolting-B7", "bolting-25CrMo4", "372 °C", "finding"),
        ("bolting-25CrMo4", "bolting-B7", "372 °C", "finding"),
        (
            "bolting-8.8",
            "bolting-8.8",
            "470 °C",
            "not applicable",
        ),  # its limit of 150 °C is material.temperature's
    ],
)
def test_studs_creep(workshop: DesignFolder, stud: str, nut: str, hot: str, outcome: str) -> None:
    """EN 10269 from 420 °C, B7 from 371 °C (700 °F), by the handbook's data."""
    studs = f'kind = "bolted-joint"\nid = "studs"\nmaterial = "{stud}"\nduty = "duty"\npressure_part = true\n'
    found = files(duty=(('bolted-joint = "220 °C"', f'bolted-joint = "{hot}"'),))
    check = workshop.write({**found, "studs.toml": f'{studs}[nut]\nmaterial = "{nut}"\n'}).only(
        CREEP, "studs"
    )
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_iron_and_running_parts_have_no_such_limit(workshop: DesignFolder) -> None:
    workshop.write(files(block=(("structural-S355", "grey-iron-250"),)))
    assert {check.outcome for check in workshop.check(CREEP)} == {"not applicable"}


@pytest.mark.parametrize(
    ("steel", "outcome"),
    [("bolting-25CrMo4", "conforms"), ("bolting-B7", "finding"), ("bolting-8.8", "not applicable")],
)
def test_bolting_steel_creeps_too(workshop: DesignFolder, steel: str, outcome: str) -> None:
    """At 400 °C: 25CrMo4 from 420 °C, B7 from 700 °F = 371 °C; class 8.8 ends at 150 °C, far below."""
    found = files(block=(("structural-S355", steel),), duty=(('"250..260 °C"', '"400 °C"'),))
    check = workshop.write(found).only(CREEP, "block")
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def test_creep_is_not_assessed_without_a_temperature(workshop: DesignFolder) -> None:
    found = files(block=(("structural-S355", "plate-P265GH"),), duty=(('cylinder-block = "240 °C"', ""),))
    check = workshop.write(found).only(CREEP, "block")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(
    ("document", "outcome", "says"),
    [
        ("2.1", "finding", "inspection document of type 2.1, which does not certify this melt"),
        ("2.2", "finding", "inspection document of type 2.2, which does not certify this melt"),
        ("3.1", "conforms", "inspection document of type 3.1"),
        ("3.2", "conforms", "inspection document of type 3.2"),
    ],
)
def test_the_document_is_on_the_very_melt(
    workshop: DesignFolder, document: str, outcome: str, says: str
) -> None:
    found = files(block=(('duty = "duty"', f'duty = "duty"\ninspection_document = "{document}"'),))
    check = workshop.write(found).only(CERTIFICATE, "block")
    assert (check.outcome, check.says) == (outcome, says)
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def test_no_document_is_not_assessed_and_counts_as_a_hold(workshop: DesignFolder) -> None:
    check = workshop.write(files()).only(CERTIFICATE, "block")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(
    ("said", "outcome"),
    [
        ("safety_part = true\n", "not assessed"),
        ('safety_part = true\ninspection_document = "2.2"\n', "finding"),
        ('safety_part = true\ninspection_document = "3.1"\n', "conforms"),
        ("safety_part = false\n", "not assessed"),  # a rod is one, whatever it says
    ],
)
def test_a_safety_part_needs_a_document_too(workshop: DesignFolder, said: str, outcome: str) -> None:
    rod = 'kind = "piston-rod"\nid = "rod"\nmaterial = "forging-42CrMo4"\n'
    check = workshop.write({"rod.toml": rod + said}).only(CERTIFICATE)
    assert (check.outcome, check.grade) == (
        outcome,
        Grade.HOLD if outcome in ("finding", "not assessed") else None,
    )


def test_the_plates_of_a_weldment_need_a_document(workshop: DesignFolder) -> None:
    made = 'kind = "weldment"\nid = "made"\npressure_part = true\n'
    assert workshop.write({"made.toml": made}).only(CERTIFICATE).outcome == "not assessed"
    assert (
        workshop.write({"made.toml": f'{made}inspection_document = "2.2"\n'}).only(CERTIFICATE).outcome
        == "finding"
    )


def test_a_ring_needs_no_document(workshop: DesignFolder) -> None:
    assert workshop.write(files()).only(CERTIFICATE, "ring").outcome == "not applicable"


@pytest.mark.parametrize(
    "rule",
    [
        "material.known",
        "material.temperature",
        "material.time-dependent",
        "material.certificate",
        "material.weldability",
    ],
)
def test_what_is_no_piece_of_metal_has_no_material(workshop: DesignFolder, rule: str) -> None:
    """A chain of dimensions is stated in a spec of its own, and is made of nothing."""
    chain = 'kind = "dimension-chain"\nid = "chain"\nduty = "duty"\n'
    found = workshop.write({**files(), "chain.toml": chain}).only(rule, "chain")
    expect_not_applicable(found, "it is not a piece of metal")
