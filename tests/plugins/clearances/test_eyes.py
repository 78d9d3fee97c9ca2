"""lifting.eyes-as-marked: what an eye is taken for, against a forged eye bolt of its thread."""

from __future__ import annotations

import pytest

from speclint import Grade, NotKnown
from speclint.testing import DesignFolder, expect_not_applicable, expect_not_assessed, on_sheet
from speclint_clearances.formulae.eyes import is_held, load_of_eye, shank_of_eye
from tests.own_limits import own_limit

RULE = "lifting.eyes-as-marked"
EYE = '[points.{}]\nform = "eye bolt"\nworking_load = "{}"\nthread = "{}"\nengagement = "{}"\n'
LUG = '[points.lug]\nform = "lug"\n'


def plan(*points: str) -> dict[str, str]:
    return {"plan.toml": 'kind = "lifting-plan"\nid = "plan"\n' + "".join(points)}


def eye(load: str = "3300 kg", thread: str = "M36", engaged: str = "54 mm", name: str = "first") -> str:
    return EYE.format(name, load, thread, engaged)


@pytest.mark.parametrize(
    ("points", "outcome"),
    [
        ([eye()], "conforms"),
        ([eye("3301 kg")], "finding"),
        ([eye("3300 kg ±10")], "finding"),
        ([eye(engaged="54.1 mm")], "finding"),
        ([eye(engaged="54.1 mm") + 'shank = "60 mm"\n'], "conforms"),
        ([eye(engaged="60.1 mm") + 'shank = "60 mm"\n'], "finding"),
        ([eye(engaged="50.1 mm") + 'shank = "50 mm"\n'], "finding"),
        ([eye("500 kg", "M16", "27 mm")], "conforms"),
        ([eye("501 kg", "M16", "27 mm")], "finding"),
        ([eye(), eye("3300 kg", "M30", "40 mm", "second")], "finding"),
        ([eye(thread="M36x4")], "conforms"),  # the coarse pitch, written out
        ([eye("3301 kg", "M36x4")], "finding"),
        ([eye(thread="M36x3")], "conforms"),  # a fine one
        ([eye("3301 kg", "M36x3")], "finding"),
        ([eye(thread="M36x3", engaged="54.1 mm")], "finding"),
        ([eye(), LUG], "conforms"),
        ([LUG, eye("2301 kg", "M30", "40 mm")], "finding"),
        ([eye("99 t", "M18", "30 mm"), eye(name="second")], "conforms"),  # of M18 the table has none
    ],
)
def test_an_eye_from_both_sides(workshop: DesignFolder, points: list[str], outcome: str) -> None:
    """DIN 580: M36 3300 kg and 54 mm, M30 2300 kg and 45 mm, M16 500 kg and 27 mm."""
    check = workshop.write(plan(*points)).only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_an_eye_is_told_by_its_name_its_load_before_its_thread(workshop: DesignFolder) -> None:
    check = workshop.write(plan(eye("3301 kg", engaged="54.1 mm"))).only(RULE)
    assert on_sheet(check, "m_b first") == pytest.approx(3300)
    assert check.judgement is not None
    told = [part.says.partition(",")[0] for part in check.judgement.parts]
    assert told == ["working load", "engagement"]


@pytest.mark.parametrize(("load", "outcome"), [("1500 kg", "conforms"), ("1501 kg", "finding")])
def test_eyes_of_a_stronger_make_are_a_limit_of_the_works(
    workshop: DesignFolder, load: str, outcome: str
) -> None:
    """Three times the 500 kg of M16."""
    settings = own_limit(RULE, "clearances", make="3")
    design = workshop.write(plan(eye(load, "M16", "20 mm")), settings=settings)
    assert design.only(RULE).outcome == outcome


@pytest.mark.parametrize(
    "points", [[], [LUG], [eye("99 t", "M18", "30 mm")], [eye("99 t", "1 1/4-7 UNC", "30 mm")]]
)
def test_a_plan_without_such_an_eye(workshop: DesignFolder, points: list[str]) -> None:
    expect_not_applicable(workshop.write(plan(*points)).only(RULE), "no eye bolt with a thread of the table")


@pytest.mark.parametrize(
    ("gone", "named"),
    [
        ('form = "eye bolt"\n', "form"),
        ('thread = "M36"\n', "thread"),
        ('working_load = "3300 kg"\n', "working_load"),
        ('engagement = "54 mm"\n', "engagement"),
    ],
)
def test_an_eye_that_does_not_say_is_not_assessed(workshop: DesignFolder, gone: str, named: str) -> None:
    expect_not_assessed(workshop.write(plan(eye().replace(gone, ""))).only(RULE), named)


@pytest.mark.parametrize(
    ("thread", "load", "shank"),
    [
        ("M8", 100, 13),
        ("M10", 170, 17),
        ("M12", 240, 20.5),
        ("M20", 860, 30),
        ("M24", 1290, 36),
        ("M42", 4500, 63),
        ("M48", 6100, 68),
        ("M56", 8200, 78),
        ("M64", 11000, 90),
    ],
)
def test_the_other_eyes_of_the_table(thread: str, load: float, shank: float) -> None:
    """DIN 580, kg and mm, from memory."""
    assert load_of_eye(thread).nominal == load
    assert shank_of_eye(thread).nominal == pytest.approx(shank / 1e3)


def test_a_thread_that_the_table_has_not() -> None:
    assert not is_held("no thread")
    with pytest.raises(NotKnown, match="M18"):
        load_of_eye("M18")
    with pytest.raises(NotKnown, match="M18"):
        shank_of_eye("M18")
