"""material.weldability and material.iron-weld."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, expect_conforms, expect_finding
from tests.plugins.pairings.bench import files

WELD, IRON = "material.weldability", "material.iron-weld"


def block(material: str = "plate-P265GH", welding: str = "") -> dict[str, str]:
    """The fabricated block of a material, with a table of its welding."""
    found = files(block=(("structural-S355", material),))
    found["block.toml"] += f"[welding]\n{welding}"
    return found


def on(check: Check, symbol: str) -> float:
    (value,) = {step.value for step in check.steps if step.symbol == symbol}
    assert isinstance(value, float)
    return value


@pytest.mark.parametrize(("CE", "outcome"), [("0.400 %", "conforms"), ("0.401 %", "finding")])
def test_no_preheat_is_asked_for_up_to_the_limit(workshop: DesignFolder, CE: str, outcome: str) -> None:
    check = workshop.write(block(welding=f'carbon_equivalent = "{CE}"')).only(WELD, "block")
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("CE", "preheat", "outcome"),
    [
        ("0.43 %", "100 °C", "conforms"),  # 0.40 to 0.45 %: 20 to 100 °C
        ("0.43 %", "99 °C", "finding"),
        ("0.50 %", "200 °C", "conforms"),  # 0.45 to 0.55 %: 100 to 200 °C
        ("0.50 %", "199 °C", "finding"),
    ],
)
def test_preheat_reaches_the_upper_end_of_its_band(
    workshop: DesignFolder, CE: str, preheat: str, outcome: str
) -> None:
    found = block(welding=f'carbon_equivalent = "{CE}"\npreheat = "{preheat}"')
    assert workshop.write(found).only(WELD, "block").outcome == outcome


@pytest.mark.parametrize(
    ("treated", "outcome"),
    [
        ("", "finding"),
        ('heat_treatment = "none"', "finding"),
        ('heat_treatment = "stress relieved"', "conforms"),
    ],
)
def test_a_poor_steel_is_heat_treated_after_welding(
    workshop: DesignFolder, treated: str, outcome: str
) -> None:
    """0.60 %: 150 to 250 °C of preheat, and above 0.55 % heat treatment."""
    found = block(welding=f'carbon_equivalent = "0.60 %"\npreheat = "250 °C"\n{treated}')
    check = workshop.write(found).only(WELD, "block")
    if outcome == "conforms":
        expect_conforms(check)
    else:
        expect_finding(
            check, says="heat treatment none" if treated else "heat_treatment after welding is not"
        )


def test_heat_treatment_is_asked_for_from_055(workshop: DesignFolder) -> None:
    found = block(welding='carbon_equivalent = "0.549 %"\npreheat = "200 °C"')
    assert workshop.write(found).only(WELD, "block").outcome == "conforms"
    found = block(welding='carbon_equivalent = "0.551 %"\npreheat = "250 °C"')
    assert workshop.write(found).only(WELD, "block").outcome == "finding"


def test_without_a_document_the_standards_most_counts(workshop: DesignFolder) -> None:
    """P265GH to EN 10028-2: C 0.20, Mn 1.4, Cr 0.3, Mo 0.08, V 0.02, Ni 0.3, Cu 0.3 at most.

    0.20 + 1.4/6 + 0.40/5 + 0.60/15 = 0.20 + 0.23333 + 0.08 + 0.04 = 0.55333 %.
    """
    check = workshop.write(block()).only(WELD, "block")
    assert check.outcome == "finding"
    assert on(check, "CE of block") == pytest.approx(0.0055333, abs=1e-7)


WELDMENT = """
kind = "weldment"
id = "weldment"
makes = "block"
[plates.chest]
material = "plate-P265GH"
carbon_equivalent = "0.39 %"
[plates.barrel]
material = "forging-42CrMo4"
[welding]
carbon_equivalent = "0.39 %"
preheat = "110 °C"
heat_treatment = "stress relieved"
"""


@pytest.mark.parametrize("part", ["block", "weldment"])
def test_the_poorest_plate_of_a_weldment_counts(workshop: DesignFolder, part: str) -> None:
    """42CrMo4: C 0.45, Mn 0.9, Cr 1.2, Mo 0.3 at most: 0.45 + 0.15 + 0.30 = 0.90 %, whatever is typed for the block."""
    found = block(
        welding='carbon_equivalent = "0.39 %"\npreheat = "110 °C"\nheat_treatment = "stress relieved"'
    )
    check = workshop.write({**found, "weldment.toml": WELDMENT}).only(WELD, part)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert on(check, "CE of barrel of weldment") == pytest.approx(0.0090, abs=1e-7)


@pytest.mark.parametrize(("document", "outcome"), [("0.40 %", "conforms"), ("0.46 %", "finding")])
def test_the_document_of_a_plate_counts(workshop: DesignFolder, document: str, outcome: str) -> None:
    """0.46 % wants 100 to 200 °C of preheat; 110 °C are given."""
    steel = WELDMENT.replace('"forging-42CrMo4"', f'"plate-P355GH"\ncarbon_equivalent = "{document}"')
    check = workshop.write({**block(), "weldment.toml": steel}).only(WELD, "weldment")
    assert check.outcome == outcome


def test_a_weldment_is_welded_whatever_it_says(workshop: DesignFolder) -> None:
    denied = WELDMENT.replace("[welding]", "[welding]\nwelded = false")
    assert workshop.write({**block(), "weldment.toml": denied}).only(WELD, "weldment").outcome == "finding"
    cold = block(welding='welded = false\ncarbon_equivalent = "0.43 %"')
    assert workshop.write(cold).only(WELD, "block").outcome == "finding"


def test_a_block_that_is_cast_is_not_welded(workshop: DesignFolder) -> None:
    found = files(block=(('"fabricated"', '"cast"'),))
    assert workshop.write(found).only(WELD, "block").outcome == "not applicable"


def test_not_assessed_while_the_block_does_not_say_how_it_is_made(workshop: DesignFolder) -> None:
    found = files(block=(('construction = "fabricated"', ""),))
    check = workshop.write(found).only(WELD, "block")
    assert (check.outcome, check.says) == ("not assessed", "construction is not stated in block.toml")


def test_any_part_may_say_that_it_is_welded(workshop: DesignFolder) -> None:
    found = files()
    found["liner.toml"] += '[welding]\nwelded = true\ncarbon_equivalent = "0.39 %"\n'
    assert workshop.write(found).only(WELD, "liner").outcome == "conforms"


def test_a_steels_equivalent_says_nothing_of_iron(workshop: DesignFolder) -> None:
    found = files()
    found["liner.toml"] += "[welding]\nwelded = true\n"
    check = workshop.write(found).only(WELD, "liner")
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@pytest.mark.parametrize(("made", "outcome"), [("fabricated", "finding"), ("cast", "conforms")])
def test_grey_iron_under_pressure_is_not_welded(workshop: DesignFolder, made: str, outcome: str) -> None:
    found = files(block=(("structural-S355", "grey-iron-250"), ('"fabricated"', f'"{made}"')))
    found["block.toml"] += "[welding]\nwelded = false\n"
    check = workshop.write(found).only(IRON, "block")
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def test_a_repair_weld_counts(workshop: DesignFolder) -> None:
    found = files(block=(("structural-S355", "grey-iron-250"), ('"fabricated"', '"cast"')))
    found["block.toml"] += "[welding]\nwelded = true\n"
    assert workshop.write(found).only(IRON, "block").outcome == "finding"


@pytest.mark.parametrize(
    ("told", "outcome"),
    [
        ('preheat = "110 °C"', "finding"),
        ('heat_treatment = "stress relieved"', "finding"),
        ('welded = false\npreheat = "110 °C"', "finding"),
        ('welded = false\nheat_treatment = "none"', "conforms"),
        ("welded = false", "conforms"),
        ('heat_treatment = "none"', "not assessed"),
        ("", "not assessed"),
    ],
)
def test_iron_with_a_preheat_or_a_treatment_of_its_welds_is_welded(
    workshop: DesignFolder, told: str, outcome: str
) -> None:
    """A cast block that denies it, or leaves the word out, and states what only a weld has; else the word is asked."""
    found = files(block=(("structural-S355", "grey-iron-250"), ('"fabricated"', '"cast"')))
    found["block.toml"] += f"[welding]\n{told}\n"
    assert workshop.write(found).only(IRON, "block").outcome == outcome


@pytest.mark.parametrize(("efficiency", "outcome"), [("1", "conforms"), ("0.85", "finding")])
def test_an_iron_cover_with_a_weld_efficiency_is_welded(
    workshop: DesignFolder, efficiency: str, outcome: str
) -> None:
    cover = f"""
kind = "cylinder-cover"
id = "cover"
material = "grey-iron-250"
pressure_part = true
weld_efficiency = "{efficiency}"
welding = {{ welded = false }}
"""
    assert workshop.write({**files(), "cover.toml": cover}).only(IRON, "cover").outcome == outcome


def test_steel_may_be_welded_and_iron_without_pressure_is_another_matter(workshop: DesignFolder) -> None:
    checks = {check.component: check.outcome for check in workshop.write(files()).check(IRON)}
    assert set(checks.values()) == {"not applicable"}


def test_iron_weld_is_not_assessed_without_the_construction(workshop: DesignFolder) -> None:
    found = files(block=(("structural-S355", "grey-iron-250"), ('construction = "fabricated"', "")))
    check = workshop.write(found).only(IRON, "block")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(
    ("held", "outcome"), [("welded on", "finding"), ("loose behind a collar", "conforms")]
)
def test_an_iron_flange_that_is_welded_on_is_welded_whatever_it_says_else(
    workshop: DesignFolder, held: str, outcome: str
) -> None:
    flange = f"""kind = "pipe-flange"
material = "grey-iron-250"
held = "{held}"
welding = {{ welded = false }}
"""
    assert workshop.write({**files(), "flange.toml": flange}).only(IRON, "flange").outcome == outcome


@pytest.mark.parametrize(
    ("held", "outcome"), [("welded on", "finding"), ("loose behind a collar", "not applicable")]
)
def test_a_pipe_with_a_flange_welded_on_is_welded(workshop: DesignFolder, held: str, outcome: str) -> None:
    """0.42 % of carbon equivalent wants a preheat, and none is stated."""
    pipe = """kind = "steam-pipe"
material = "tube-P235GH"
welding = { welded = false, carbon_equivalent = "0.42 %" }
"""
    flange = f'kind = "pipe-flange"\nof = "pipe"\nheld = "{held}"\n'
    found = {**files(), "pipe.toml": pipe, "flange.toml": flange}
    assert workshop.write(found).only(WELD, "pipe").outcome == outcome


PIPE = """kind = "steam-pipe"
material = "tube-P235GH"
welding = {{ {welded}carbon_equivalent = "0.42 %" }}
{line}
"""
WELDS_ON_RECORD = """kind = "made-part"
of = "pipe"
[welds.butts]
procedure = "WPQR 12"
"""


@pytest.mark.parametrize("welded", ["", "welded = false, "])
@pytest.mark.parametrize(
    ("line", "outcome"),
    [
        ('examination = "butt welds radiographed, all of them"', "finding"),
        ('examination = "Schweißnähte durchstrahlt"', "finding"),
        ('examination = "dye penetrant after welding"', "finding"),
        ('examination = "no film; root of each weld by dye penetrant"', "finding"),
        ('examination = "looked over, no weld repairs allowed"', "not applicable"),
        ('examination = "welding not permitted, magnetic particle all over"', "not applicable"),
        ('examination = "weldless tube by ultrasound, unwelded"', "not applicable"),
        ('examination = "with the weldment"', "not applicable"),
        ('inspection_points.welding = "witness"', "finding"),
        ('inspection_points.welding = "hold"', "finding"),
        ('inspection_points.welding = "none"', "not applicable"),
        ("", "not applicable"),
    ],
)
def test_a_part_whose_words_name_welds_is_welded(
    workshop: DesignFolder, line: str, outcome: str, welded: str
) -> None:
    """0.42 % of carbon equivalent wants a preheat, and none is stated."""
    found = {**files(), "pipe.toml": PIPE.format(welded=welded, line=line)}
    assert workshop.write(found).only(WELD, "pipe").outcome == outcome


@pytest.mark.parametrize(
    ("record", "outcome"),
    [(WELDS_ON_RECORD, "finding"), (WELDS_ON_RECORD.partition("[welds")[0], "not applicable")],
)
def test_a_part_with_welds_on_record_is_welded(workshop: DesignFolder, record: str, outcome: str) -> None:
    found = {**files(), "pipe.toml": PIPE.format(welded="", line=""), "made.toml": record}
    assert workshop.write(found).only(WELD, "pipe").outcome == outcome


@pytest.mark.parametrize(
    ("part", "outcome"),
    [
        ('kind = "valve-cage"\nfastened_by = "welds"', "finding"),
        ('kind = "valve-cage"\nfastened_by = "studs"', "not applicable"),
        ('kind = "retaining-ring"\nfastened = "welded in"', "finding"),
        ('kind = "retaining-ring"\nfastened = "screwed in"', "not applicable"),
        ('kind = "bracket"\n[welds.root]\nweld = "fillet"', "finding"),
        ('kind = "bracket"', "not applicable"),
    ],
)
def test_a_part_that_is_held_by_welds_is_welded(workshop: DesignFolder, part: str, outcome: str) -> None:
    head, _, rest = part.partition("\n")
    text = f'{head}\nmaterial = "plate-P265GH"\nwelding = {{ carbon_equivalent = "0.42 %" }}\n{rest}\n'
    assert workshop.write({**files(), "part.toml": text}).only(WELD, "part").outcome == outcome


def test_a_weld_on_the_record_of_an_iron_part_counts(workshop: DesignFolder) -> None:
    found = files(block=(("structural-S355", "grey-iron-250"), ('"fabricated"', '"cast"')))
    found["block.toml"] += "[welding]\nwelded = false\n"
    assert workshop.write(found).only(IRON, "block").outcome == "conforms"
    found["made.toml"] = WELDS_ON_RECORD.replace('"pipe"', '"block"')
    assert workshop.write(found).only(IRON, "block").outcome == "finding"
