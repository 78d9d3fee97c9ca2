"""What hangs on a joint or a bracket: stated by itself, by its part, in its case and at its place."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, changed_files, on_sheet
from tests.plugins.joints import brackets
from tests.plugins.joints.brackets import OWN, PART, SADDLE, SLIP, STIFF, WELDS


def test_a_bracket_that_says_nothing_of_its_load(workshop: DesignFolder) -> None:
    made = brackets.files()
    del made["bar.toml"]
    folder = workshop.write(made, settings=brackets.settings())
    assert (folder.only(SLIP).outcome, folder.only(SLIP).grade) == ("not assessed", Grade.HOLD)
    assert folder.only(WELDS).outcome == "not assessed"


def test_a_joint_without_a_bracket_states_what_it_carries_itself(workshop: DesignFolder) -> None:
    """25 kg, three times: 735.5 N down, and twice, 490.3 N, along and out: 1225.8 N across."""
    made = {**brackets.files(*OWN), "saddle.toml": SADDLE}
    check = workshop.write(made, settings=brackets.settings()).only(SLIP)
    assert check.outcome == "conforms", check.says
    assert on_sheet(check, "W of lubricator") == pytest.approx(735.5, rel=1e-3)
    assert on_sheet(check, "V") == pytest.approx(1225.8, rel=1e-3)
    made = {**brackets.files(*OWN, ('z = "200 mm"', 'z = "0 mm"')), "saddle.toml": SADDLE}
    made["joint.toml"] = made["joint.toml"].replace(', z = "0 mm"', "")
    check = workshop.write(made, settings=brackets.settings()).only(SLIP)
    assert check.outcome == "not assessed"
    assert "carries.lubricator.at.z is not stated" in check.says


def test_a_joint_that_names_a_slide_bar_bears_what_is_stated_of_it(workshop: DesignFolder) -> None:
    """Its thrust is worked only for a bracket: 2 kN across and 1 kN out are those of the bar, too.

    25 kg: 735.5 N down, 490.3 N along and 735.5 N out, or 490.3.
    """
    bar = '\n[carries.bar]\nof = "bar"\nforce.y = "2 kN"\nforce.z = "1 kN"\nmass = "25 kg"\n'
    bar += 'at = { x = "0 mm", y = "0 mm", z = "200 mm" }\n'
    own = (*OWN[:2], ("[tightening]", f'stands = "upright"{bar}[tightening]'))
    made = {**brackets.files(*own), "saddle.toml": SADDLE}
    made["bar.toml"] = made["bar.toml"].partition("[supports.back]")[0]
    check = workshop.write(made, settings=brackets.settings()).only(SLIP)
    assert on_sheet(check, "S") == pytest.approx(2000 + 735.5 + 490.3, rel=1e-3)
    assert on_sheet(check, "P") == pytest.approx(1000 + 490.3, rel=1e-3)


def _carrying(workshop: DesignFolder, load: str, *changes: tuple[str, str]) -> DesignFolder:
    """A bracket that names its slide bar among what it carries, which does not name the bracket."""
    made = brackets.files(*changes, part="bracket", bracket=brackets.BRACKET + load)
    made["bar.toml"] = made["bar.toml"].partition("[supports.back]")[0]
    return workshop.write(made, settings=brackets.settings())


@pytest.mark.parametrize(("stands", "axis"), [("upright", "y"), ("below", "z")])
@pytest.mark.parametrize(
    ("stated", "case", "N"),
    [("70 kN", "", 70e3), ("50 kN", "", 57.5e3), ("70 kN", "running", 70e3), ("70 kN", "drifting", 57.5e3)],
)
def test_a_thrust_that_is_stated_counts_where_it_is_more_and_in_its_own_case(
    workshop: DesignFolder, stands: str, axis: str, stated: str, case: str, N: float
) -> None:
    """57.5 kN by the steam; 25 kg bring 735.5 N across or out, and 490.3 N the other way."""
    load = f'[carries.thrust]\nof = "bar"\nforce.{axis} = "{stated}"\nmass = "25 kg"\n'
    load += f'case = "{case}"\n' if case else ""
    folder = _carrying(workshop, load, ('stands = "upright"', f'stands = "{stands}"'))
    check = folder.only(WELDS)
    assert on_sheet(check, "S" if axis == "y" else "P") == pytest.approx(
        N + (735.5 + 490.3 if axis == "y" else 735.5), rel=1e-3
    )


@pytest.mark.parametrize(
    ("case", "outcome"),
    [("running", "conforms"), ("starting", "conforms"), ("drifting", "not applicable")],
)
def test_a_force_acts_in_the_case_that_it_names(workshop: DesignFolder, case: str, outcome: str) -> None:
    """Slip is judged in starting and running: a push of 5 kN in another case is none there."""
    made = brackets.pushed("5 kN")
    made["bracket.toml"] += f'case = "{case}"\n'
    check = workshop.write(made, settings=brackets.settings()).only(SLIP)
    assert check.outcome == outcome, check.says
    if outcome == "conforms":
        assert (check.case, on_sheet(check, "V")) == (case, pytest.approx(5e3))


def test_a_load_without_a_place_acts_at_the_arm(workshop: DesignFolder) -> None:
    """5 kN at the arm of 300 mm: 1.5 kN·m."""
    made = brackets.pushed("5 kN")
    made["bracket.toml"] = changed(made["bracket.toml"], (', z = "300 mm"', ""))
    check = workshop.write(made, settings=brackets.settings()).only(PART)
    assert on_sheet(check, "M_y") == pytest.approx(1500)


VALVE = 'kind = "poppet-valve"\nid = "valve"\n'


@pytest.mark.parametrize(
    ("own", "here", "W"),
    [("40 kg", "25 kg", 1176.8), ("10 kg", "25 kg", 735.5), ("40 kg", "", 1176.8), ("", "25 kg", 735.5)],
)
def test_the_greater_of_two_masses_counts(workshop: DesignFolder, own: str, here: str, W: float) -> None:
    """40 kg × 9.80665 × 3 = 1176.8 N; 25 kg 735.5 N."""
    check = _named(workshop, own, here).only(SLIP)
    assert on_sheet(check, "W of lubricator") == pytest.approx(W, rel=1e-4)


def _named(workshop: DesignFolder, own: str, here: str, load: str = "") -> DesignFolder:
    mass = f'mass = "{here}"' if here else ""
    made = changed_files(
        brackets.files(bar=False), ("bracket.toml", 'mass = "25 kg"', f'of = "valve"\n{mass}{load}')
    )
    made["valve.toml"] = VALVE + (f'mass = "{own}"\n' if own else "")
    return workshop.write(made, settings=brackets.settings())


def test_a_part_without_a_mass_is_named(workshop: DesignFolder) -> None:
    for load in ("", 'force.y = "1 kN"'):
        check = _named(workshop, "", "", load).only(SLIP)
        assert check.outcome == "not assessed"
        assert "the mass of valve, which lubricator carries, is not stated" in check.says


def test_a_load_of_neither_mass_nor_force_is_told(workshop: DesignFolder) -> None:
    made = changed_files(brackets.files(bar=False), ("bracket.toml", 'mass = "25 kg"\n', ""))
    check = workshop.write(made, settings=brackets.settings()).only(SLIP)
    assert check.outcome == "not assessed"
    assert "lubricator states neither a mass nor a force" in check.says


def test_an_early_cut_off_lessens_the_thrust_but_not_in_starting(workshop: DesignFolder) -> None:
    """2 √(0.2 × 0.8) = 0.8 of the thrust in running; an engine that starts may stand at any angle."""
    made = brackets.files()
    made["duty.toml"] = made["duty.toml"].replace("track_speed", 'cut_off = "20 %"\ntrack_speed')
    folder = workshop.write(made, settings=brackets.settings())
    slips = folder.only(SLIP)
    assert (slips.case, on_sheet(slips, "V")) == ("starting", pytest.approx(57.5e3, rel=1e-3))
    stiff = folder.only(STIFF)
    assert on_sheet(stiff, "F") == pytest.approx(0.8 * 57.5e3, rel=1e-3)
