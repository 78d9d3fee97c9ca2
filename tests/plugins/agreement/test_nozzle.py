"""The blast nozzle: the cylinders that exhaust through it, their bore, and the back pressure that it needs."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.facts.jets import pressure_before_nozzle
from speclint.handbook.steam import nozzle_mass_flow, steam_nozzle_flux
from speclint.testing import DesignFolder, limit, on_sheet
from tests.plugins.steamways.way import files, without

ENGINE = """
kind = "engine"
id = "engine"
nozzle = "nozzle"
[cranks.left]
block = "block"
[cranks.right]
block = "other"
"""
OTHER = 'kind = "cylinder-block"\nid = "other"\n[bores.main]\ndiameter = "500 mm"\nlined = false\n'
OF_ITS, BACK, AREA = "blast-pipe.of-its-cylinders", "duty.back-pressure-by-nozzle", "blast-pipe.area"
WRONG, FINE = ("finding", Grade.NONCONFORMITY), ("conforms", None)


def with_engine(*changes: tuple[str, str], part: str = "", engine: str = ENGINE) -> dict[str, str]:
    return files(part, *changes, engine=engine, other=OTHER)


def outcome(workshop: DesignFolder, rule: str, component: str) -> tuple[str, Grade | None]:
    check = workshop.only(rule, component)
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ("", "", FINE),
        ("cylinders = 2", "cylinders = 1", WRONG),
        ("cylinders = 2", "cylinders = 3", WRONG),
        ('"500 mm"', '"500.02 mm"', WRONG),
    ],
)
def test_a_nozzle_has_the_cylinders_of_its_engine(
    workshop: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    changes = ((old, new),) if old else ()
    workshop.write(with_engine(*changes, part="nozzle"))
    assert outcome(workshop, OF_ITS, "nozzle") == ends


def test_a_nozzle_for_fewer_cylinders_than_its_engine_has(workshop: DesignFolder) -> None:
    third = ENGINE + '[cranks.inside]\nblock = "block"\n'
    assert outcome(workshop.write(with_engine(engine=third)), OF_ITS, "nozzle") == WRONG


@pytest.mark.parametrize(("carried", "ends"), [(1, FINE), (2, FINE), (3, WRONG)])
def test_no_more_cylinders_exhaust_by_its_paths(
    workshop: DesignFolder, carried: int, ends: tuple[str, Grade | None]
) -> None:
    workshop.write(with_engine(("cylinders = 1", f"cylinders = {carried}"), part="out"))
    assert outcome(workshop, OF_ITS, "nozzle") == ends


@pytest.mark.parametrize(("stated", "ends"), [(1, FINE), (2, FINE)])
def test_without_an_engine_a_path_may_not_be_drawn(
    workshop: DesignFolder, stated: int, ends: tuple[str, Grade | None]
) -> None:
    workshop.write(files("nozzle", ("cylinders = 2", f"cylinders = {stated}")))
    assert outcome(workshop, OF_ITS, "nozzle") == ends


def test_a_wrong_count_does_not_ease_the_flow(workshop: DesignFolder) -> None:
    """Two cranks, whatever the nozzle's drawing counts: 2 × 1.7 kg/s."""
    workshop.write(with_engine(("cylinders = 2", "cylinders = 1"), part="nozzle"))
    assert on_sheet(workshop.only(AREA, "nozzle"), "m") == pytest.approx(3.4)


@pytest.mark.parametrize("key", ["cylinders", "cylinder_bore"])
def test_what_the_nozzle_leaves_out_is_worked(workshop: DesignFolder, key: str) -> None:
    workshop.write(without("nozzle", key, engine=ENGINE, other=OTHER))
    assert workshop.only(AREA, "nozzle").outcome != "not assessed"
    assert on_sheet(workshop.only(AREA, "nozzle"), "D") == pytest.approx(0.5)


def test_two_paths_bring_what_each_carries(workshop: DesignFolder) -> None:
    """A path of one cylinder and one of two: 3 × 1.7 kg/s."""
    out = files()["out.toml"].replace('"out"', '"second"').replace("cylinders = 1", "cylinders = 2")
    nozzle = files("nozzle", ('"out"', '["out", "second"]'), second=out)
    assert on_sheet(workshop.write(nozzle).only(AREA, "nozzle"), "m") == pytest.approx(5.1)


@pytest.mark.parametrize(("stated", "ends"), [("0.40 bar gauge", FINE), ("0.25 bar gauge", WRONG)])
def test_the_back_pressure_that_the_nozzle_needs(
    workshop: DesignFolder, stated: str, ends: tuple[str, Grade | None]
) -> None:
    """3.4 kg/s through 0.95 × 21 382 mm² into steam of 1.01325 bar, some 1.9 m³/kg: about 320 m/s, for which 51 kJ/kg
    must become speed: over 1.7 m³/kg, the mean of both sides, 0.30 bar; and a little is lost on the way.
    """
    workshop.write(with_engine(('"0.35 bar gauge"', f'"{stated}"'), part="duty"))
    assert outcome(workshop, BACK, "block") == ends
    assert limit(workshop.only(BACK, "block")) == pytest.approx(0.31e5, abs=0.03e5)


def test_the_one_nozzle_of_an_engine_is_told_without_a_number(workshop: DesignFolder) -> None:
    workshop.write(with_engine(('"0.35 bar gauge"', '"0.1 bar gauge"'), part="duty"))
    assert [one.of for one in workshop.only(BACK, "block").failing] == ["nozzle"]


@pytest.mark.parametrize("share", [0.998, 1.002])
def test_it_is_the_pressure_at_which_the_nozzle_passes_the_flow(workshop: DesignFolder, share: float) -> None:
    """Where the stated pressure is what was worked, the rule of the nozzle's area is at its limit, too."""
    needed = limit(workshop.write(with_engine()).only(BACK, "block"))
    workshop.write(with_engine(('"0.35 bar gauge"', f'"{needed * share / 1e5:.6f} bar gauge"'), part="duty"))
    holds = outcome(workshop, BACK, "block") == FINE
    assert holds is (share > 1)
    assert (workshop.only(AREA, "nozzle").outcome == "conforms") is holds


@given(m=st.floats(1.0, 3.0), C=st.floats(0.8, 1.0), h=st.floats(2.7e6, 3.1e6))
def test_the_pressure_drives_the_flow(m: float, C: float, h: float) -> None:
    """By the flux of the handbook, which is proved against another library."""
    p = pressure_before_nozzle(m=m, C=C, A=0.025, h=h, p_2=1e5)
    assert nozzle_mass_flow(C=C, A=0.025, G=steam_nozzle_flux(p=p, h=h, p_2=1e5)) == pytest.approx(
        m, rel=1e-6
    )


RECORD = """design_pressure = "{} bar gauge"
design_temperature = "300 °C"
test_pressure = "3 bar gauge"
examination = "hydraulic test and visual, every year"
competent_body = "the inspecting body"
inspection_document = "3.1"
"""


@pytest.mark.parametrize(
    ("stated", "designed", "says"),
    [
        (
            "0.25",
            "0.27",
            "design pressure 0.27 bar < 0.308 bar",
        ),  # the nozzle needs 0.31 bar, whatever the duty states
        ("0.25", "0.36", ""),
        ("0.40", "0.36", "design pressure 0.36 bar < 0.4 bar"),  # the duty states more than the nozzle needs
        ("0.40", "0.41", ""),
    ],
)
def test_an_exhaust_pipe_holds_what_the_nozzle_needs(
    workshop: DesignFolder, stated: str, designed: str, says: str
) -> None:
    engine = with_engine(('"0.35 bar gauge"', f'"{stated} bar gauge"'), part="duty")
    pipe = files("out", add=RECORD.format(designed))["out.toml"]
    duty = engine["duty.toml"].replace('pipe = "380 °C"\n', 'pipe = "380 °C"\nout = "170 °C"\n')
    duty = duty.replace('pipe = "300 °C"\n', 'pipe = "300 °C"\nout = "150 °C"\n')
    check = workshop.write({**engine, "out.toml": pipe, "duty.toml": duty}).only(
        "release.pressure-part", "out"
    )
    assert check.outcome == ("finding" if says else "conforms"), check.says
    assert says in check.says


def test_without_a_nozzle_that_is_drawn_whole_the_duty_counts(workshop: DesignFolder) -> None:
    engine = with_engine(('"0.35 bar gauge"', '"0.25 bar gauge"'), part="duty")
    nozzle = without("nozzle", "diameter", engine=ENGINE, other=OTHER)["nozzle.toml"]
    pipe = files("out", add=RECORD.format("0.27"))["out.toml"]
    check = workshop.write({**engine, "nozzle.toml": nozzle, "out.toml": pipe}).only(
        "release.pressure-part", "out"
    )
    assert not any("designed for" in one.says for one in (check.judgement.every if check.judgement else ()))


def test_a_flow_that_cannot_be_worked_is_not_assessed(workshop: DesignFolder) -> None:
    """It is stated, to be worked from the valve events of a gear that is not drawn: no gap that nobody need fill."""
    made = with_engine()
    made["duty.toml"] = made["duty.toml"].replace(
        'steam_flow = "1.7 kg/s"', 'steam_flow = { from = "events" }'
    )
    check = workshop.write(made).only(BACK, "block")
    assert check.outcome == "not assessed"
    assert "steam_flow cannot be worked: no valve gear serves block" in check.says


def test_a_flow_that_nobody_states_leaves_nothing_to_compare(workshop: DesignFolder) -> None:
    made = with_engine()
    made["duty.toml"] = made["duty.toml"].replace('steam_flow = "1.7 kg/s"\n', "")
    assert workshop.write(made).only(BACK, "block").outcome == "not applicable"
