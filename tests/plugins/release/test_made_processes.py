"""Welds and heat treatments of parts as made: what a record of each says, and in which words."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed
from tests.plugins.release.made import DRAWN, MADE, made, recorded
from tests.plugins.release.part import files, settings


@pytest.mark.parametrize(
    ("treatment", "outcome"),
    [
        *(("", "finding"), ("stress relieved", "conforms"), ("PWHT", "conforms"), ("normalize", "finding")),
        *(("stress relief waived", "finding"), ("baked", "finding")),
    ],
)
def test_what_was_treated_otherwise_was_not(workshop: DesignFolder, treatment: str, outcome: str) -> None:
    stated = f'treatment = "{treatment}"\n' if treatment else ""
    text = recorded()
    cast = changed(text["casting-1.toml"], ('treatment = "stress relieved"\n', stated))
    workshop.write({**text, "casting-1.toml": cast}, settings=settings())
    assert workshop.only("made.examined", "casting-1").outcome == outcome


@pytest.mark.parametrize("table", ["welds", "heat_treatments", "entries"])
def test_a_process_that_failed_is_a_hold(workshop: DesignFolder, table: str) -> None:
    more = ("[certificate]\n", f'[{table}.first]\nresult = "failed"\n[certificate]\n')
    check = made(workshop, "made.examined", more)
    assert (check.grade, check.says) == (Grade.HOLD, "failed: first")


BLOCK = """
kind = "cylinder-block"
id = "block"
drawing = "X-104"
construction = "fabricated"
[welding]
heat_treatment = "stress relieved"
"""

WELDED = """
kind = "made-part"
id = "block-1"
of = "block"
[welds.all]
procedure = "WPS-12"
welder = "mark 7"
result = "passed"
[heat_treatments.relief]
treatment = "stress relieve"
chart = "F-97"
result = "passed"
"""


@pytest.mark.parametrize(
    ("left", "outcome"), [("", "conforms"), ("procedure", "finding"), ("welder", "finding")]
)
def test_each_weld_has_both_its_procedure_and_its_welder(
    workshop: DesignFolder, left: str, outcome: str
) -> None:
    weld = 'result = "passed"\n' + "".join(
        f'{key} = "{value}"\n' for key, value in (("procedure", "WPS-1"), ("welder", "mark 7")) if key != left
    )
    design = {
        **files(DRAWN, add="[welding]\nwelded = true\n"),
        "cover-7.toml": f"{MADE}[welds.all]\n{weld}",
    }
    check = workshop.write(design, settings=settings()).only("made.examined", "cover-7")
    assert check.outcome == outcome
    if outcome == "finding":
        assert "welds, each with its procedure and its welder" in check.says


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (("[welds.all]", "[entries.all]"), "welds, each with its procedure and its welder"),
        (("stress relieve", "normalize"), "stress relieve, with its chart"),
        (('chart = "F-97"\n', ""), "stress relieve, with its chart"),
    ],
)
def test_a_fabricated_block_has_its_welds_and_its_relief_on_record(
    workshop: DesignFolder, change: tuple[str, str], said: str
) -> None:
    """It is welded by its construction, whether it says so under welding or not."""
    text = (
        WELDED
        if change[0] != "[welds.all]"
        else changed(WELDED, ('procedure = "WPS-12"\nwelder = "mark 7"\n', ""))
    )
    design = {**files(), "block.toml": BLOCK}
    whole = workshop.write({**design, "block-1.toml": WELDED}, settings=settings()).only(
        "made.examined", "block-1"
    )
    assert whole.outcome == "conforms"
    check = workshop.write({**design, "block-1.toml": changed(text, change)}, settings=settings()).only(
        "made.examined", "block-1"
    )
    assert (check.outcome, check.says) == ("finding", f"not on record: {said}")


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ("WPS-12", "to follow", "finding"),
        ("mark 7", "whoever was on shift", "finding"),
        ("mark 7", "W. Dunn", "conforms"),
        ('result = "passed"\n[heat', "[heat", "finding"),  # the weld has no result
        ('chart = "F-97"\nresult = "passed"\n', 'chart = "F-97"\n', "finding"),
        ('treatment = "stress relieve"\n', "", "finding"),
        ('relief]\ntreatment = "stress relieve"\n', '"stress relief"]\n', "conforms"),  # called by it
    ],
)
def test_a_record_says_what_was_done_and_how_it_came_out(
    workshop: DesignFolder, old: str, new: str, outcome: str
) -> None:
    design = {**files(), "block.toml": BLOCK, "block-1.toml": changed(WELDED, (old, new))}
    check = workshop.write(design, settings=settings()).only("made.examined", "block-1")
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("treatment", "outcome"),
    [
        ("local stress relief of the chest", "finding"),
        ("stress relief of the chest", "finding"),
        ("stress relieved locally, ring burner", "finding"),
        ("PWHT by heating mats", "finding"),
        ("stress relief of repaired areas", "finding"),
        ("örtlich spannungsarmgeglüht, stress relieved", "finding"),
        ("stress relief of seams 1 to 4", "finding"),
        ("stress relief of all but the branch", "finding"),
        ("stress relief of the block except its feet", "finding"),
        ("stress relief of the right half", "finding"),
        ("stress relieved at 580 to 620 °C, 2 h, furnace cooled, no exceptions", "conforms"),
        ("PWHT per ASME VIII UCS-56, complete weldment", "conforms"),
        ("furnace stress relief of the whole block, not local", "conforms"),
        ("stress relief of the welds", "conforms"),
        ("PWHT of the cylinder block", "conforms"),
    ],
)
def test_the_relief_is_of_the_whole_piece(workshop: DesignFolder, treatment: str, outcome: str) -> None:
    record = changed(WELDED, ('treatment = "stress relieve"', f'treatment = "{treatment}"'))
    check = workshop.write(
        {**files(), "block.toml": BLOCK, "block-1.toml": record}, settings=settings()
    ).only("made.examined", "block-1")
    assert check.outcome == outcome
    said = f"not on record: stress relieve, with its chart, on record is {treatment}"
    assert outcome == "conforms" or check.says == said


@pytest.mark.parametrize(
    ("treatment", "says"),
    [
        ("spannungsarmgeglüht", ""),
        ("spannungsarmgegluht", ""),
        ("Spannungsfrei geglueht bei 580 °C", ""),
        ("weichgeglüht", ""),
        ("SAG 580 °C", ""),
        ("P.W.H.T. 600 °C", ""),
        ("no P.W.H.T.", "not on record: stress relieve, with its chart"),
        ("N+T", "not on record: stress relieve, with its chart"),
        ("+N", "not on record: stress relieve, with its chart"),
        ("normalgeglüht", "not on record: stress relieve, with its chart"),
        ("vergütet", "not on record: stress relieve, with its chart"),
        ("nicht spannungsarmgeglüht", "not on record: stress relieve, with its chart"),
        (
            "heated through",
            "not on record: stress relieve, with its chart, on record is heated through, which is not understood",
        ),
    ],
)
def test_heat_treatments_in_german_and_in_words_that_nobody_knows(
    workshop: DesignFolder, treatment: str, says: str
) -> None:
    record = changed(WELDED, ('treatment = "stress relieve"', f'treatment = "{treatment}"'))
    design = {**files(), "block.toml": BLOCK, "block-1.toml": record}
    check = workshop.write(design, settings=settings()).only("made.examined", "block-1")
    assert check.outcome == ("finding" if says else "conforms")
    assert check.says == says or not says


@pytest.mark.parametrize(
    ("asked", "treatment", "outcome"),
    [
        ("normalized", "normalgeglueht", "conforms"),
        ("normalized", "+N", "conforms"),
        ("normalized", "N+T", "conforms"),
        ("normalized", "H&T", "finding"),
        ("quenched and tempered", "H&T", "conforms"),
        ("quenched and tempered", "Q/T", "conforms"),
        ("quenched and tempered", "OQT", "conforms"),
        ("quenched and tempered", "N+T", "finding"),
        ("normalized", "Normalglühen", "conforms"),
        ("normalized", "normal geglüht", "conforms"),
        ("normalized", "geglüht", "finding"),
        ("quenched and tempered", "vergütet", "conforms"),
        ("quenched and tempered", "verguetet", "conforms"),
        ("quenched and tempered", "vergutet", "conforms"),
        ("quenched and tempered", "gehärtet und angelassen", "conforms"),
        ("quenched and tempered", "gehärtet", "finding"),
        ("quenched and tempered", "abgeschreckt und angelassen", "conforms"),
    ],
)
def test_german_words_of_what_is_asked_for(
    workshop: DesignFolder, asked: str, treatment: str, outcome: str
) -> None:
    block = changed(BLOCK, ("stress relieved", asked))
    record = changed(WELDED, ("stress relieve", treatment))
    design = {**files(), "block.toml": block, "block-1.toml": record}
    check = workshop.write(design, settings=settings()).only("made.examined", "block-1")
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("surface", "treatment"),
    [
        ("nitrided", "gasnitriert"),
        ("case hardened", "einsatzgehärtet"),
        ("case hardened", "aufgekohlt und gehaertet"),
        ("induction hardened", "induktionsgehärtet"),
        ("induction hardened", "induktiv gehärtet"),
    ],
)
def test_german_words_of_the_heat_treatment_of_a_surface(
    workshop: DesignFolder, surface: str, treatment: str
) -> None:
    record = f'[heat_treatments.a]\ntreatment = "{treatment}"\nchart = "F-1"\nresult = "passed"\n'
    design = {
        "pin.toml": f'kind = "tappet"\nid = "tappet"\nsurface = "{surface}"\n',
        "pin-1.toml": f'kind = "made-part"\nid = "tappet-1"\nof = "tappet"\n{record}',
    }
    assert workshop.write(design, settings=settings()).only("made.examined").outcome == "conforms"


def test_the_whole_relieved_beside_a_part_of_it_is_the_whole(workshop: DesignFolder) -> None:
    local = '[heat_treatments.repair]\ntreatment = "local PWHT"\nchart = "F-98"\nresult = "passed"\n'
    design = {**files(), "block.toml": BLOCK, "block-1.toml": WELDED + local}
    assert workshop.write(design, settings=settings()).only("made.examined", "block-1").outcome == "conforms"


def test_the_welds_of_a_pipe_are_relieved_where_they_are(workshop: DesignFolder) -> None:
    pipe = changed(BLOCK, ("cylinder-block", "steam-pipe"), ('construction = "fabricated"\n', ""))
    record = changed(WELDED, ('treatment = "stress relieve"', 'treatment = "local PWHT of each weld"'))
    design = {**files(), "block.toml": pipe, "block-1.toml": record}
    assert workshop.write(design, settings=settings()).only("made.examined", "block-1").outcome == "conforms"


@pytest.mark.parametrize(
    ("surface", "treatment", "outcome"),
    [
        ("nitrided", "gas nitriding", "conforms"),
        ("nitrided", "tempered", "finding"),
        ("case hardened", "carburised and quenched", "conforms"),
        ("case hardened", "flame hardened", "finding"),
        ("induction hardened", "induction hardening", "conforms"),
        ("induction hardened", "nitriding", "finding"),
        ("hard chromium plated", "", "not applicable"),
    ],
)
def test_the_heat_treatment_of_a_surface_is_on_record(
    workshop: DesignFolder, surface: str, treatment: str, outcome: str
) -> None:
    """Chromium is plated on without heat: no record of a furnace is asked for."""
    record = f'[heat_treatments.a]\ntreatment = "{treatment}"\nchart = "F-1"\nresult = "passed"\n'
    design = {
        "pin.toml": f'kind = "tappet"\nid = "tappet"\nsurface = "{surface}"\n',
        "pin-1.toml": f'kind = "made-part"\nid = "tappet-1"\nof = "tappet"\n{record if treatment else ""}',
    }
    assert workshop.write(design, settings=settings()).only("made.examined").outcome == outcome


def test_each_heat_treatment_on_record_has_its_chart(workshop: DesignFolder) -> None:
    files = recorded()
    second = '[heat_treatments.second]\ntreatment = "stress relieved"\nresult = "passed"\n'
    made = files["casting-1.toml"]
    check = workshop.write({**files, "casting-1.toml": made + second}).only("made.examined", "casting-1")
    assert check.says == "not on record: stress relieve, with its chart"
    charted = {**files, "casting-1.toml": f'{made}{second}chart = "F-2"\n'}
    assert workshop.write(charted).only("made.examined", "casting-1").outcome == "conforms"
