"""What is still to be done, who signs, what specs ask for, and the counts of a review, by hand."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from speclint.checking import Assessment, Check, Processes, Waits, assess
from speclint.errors import NOWHERE, replace
from speclint.reports.pack.asked_for import Row, asked_for
from speclint.reports.pack.counted import said_of_numbers
from speclint.reports.pack.open_actions import Action, open_actions
from speclint.reports.pack.reviewers import nobody_for, signatories
from speclint.rules import Grade
from speclint.testing import DesignFolder
from tests import tubes


def check(component: str = "tube", outcome: str = "not assessed", **other: Any) -> Check:
    return replace(Check(component, "tube", tubes.stress, outcome, "no bore", NOWHERE, ""), **other)  # type: ignore[arg-type]


def actions(*checks: Check, conceded: Any = None, **labels: list[str]) -> list[Action]:
    of: Any = SimpleNamespace(
        checks=checks,
        complaints=("tube.toml:3: what is this",),
        design=None,
        settings=None,
        waits=Waits((), ()),
    )
    return open_actions(of, conceded or {}, labels)


def test_what_cannot_be_read_or_run_comes_first_then_what_is_wanting() -> None:
    """What a safety check wants before what another does, each by its name with all that wait for it."""
    found = actions(
        check("a", missing=("the bore", "a metal")),
        check("b", missing=("the bore",), grade=Grade.HOLD),
        check("c"),
        check("d", "finding", missing=("nothing",)),
        check("e", "conforms", could_not_run="ZeroDivisionError"),
    )
    assert found == [
        Action("make the line readable", "tube.toml:3: what is this"),
        Action("have the rule tube.stress mended", "e: ZeroDivisionError"),
        Action(
            "give what is wanting: the bore",
            "not assessed: tube.stress on a, tube.stress on b; a safety check, which counts as a hold",
        ),
        Action("give what is wanting: a metal", "not assessed: tube.stress on a"),
        Action("give what is wanting: no bore", "not assessed: tube.stress on c"),
    ]


def test_findings_are_asked_for_by_grade_from_the_first_label_to_the_last() -> None:
    found = actions(query=["Q1"], hold=["H1", "H2", "H4"], nonconformity=[])
    assert found[1:] == [
        Action("decide each hold in the boxes of section 2", "H1 to H4: 3 holds without a valid concession"),
        Action(
            "answer each query in the spec, or have it conceded", "Q1: 1 query without a valid concession"
        ),
    ]


@pytest.mark.parametrize(
    ("state", "in_order", "reasons", "because"),
    [
        ("valid", True, (), None),
        ("ending soon", True, ("30 days left",), "tube tube.stress: ending soon; 30 days left"),
        (
            "lapsed",
            False,
            ("the bore moved", "so did the wall"),
            "tube tube.stress: lapsed; the bore moved; so did the wall",
        ),
        ("lapsed", False, (), "tube tube.stress: lapsed"),
        ("replaced", True, (), None),
    ],
)
def test_a_concession_that_is_not_in_order_or_ends_is_to_be_renewed(
    state: str, in_order: bool, reasons: tuple[str, ...], because: str | None
) -> None:
    entry = SimpleNamespace(number="C-001", component="tube", rule="tube.stress")
    standing = SimpleNamespace(concession=entry, state=state, in_order=in_order, reasons=reasons)
    wanted = [Action("renew or withdraw concession C-001", because)] if because else []
    assert actions(conceded={"one": standing})[1:] == wanted


# Who signs


def test_reviewers_sign_for_the_holds_of_their_families() -> None:
    people = {
        "M. Coyle": SimpleNamespace(role=None, competent_for=("tubes", "racks")),
        "B. Thorne": SimpleNamespace(role=None, competent_for=("boilers",)),
    }
    of: Any = SimpleNamespace(settings=SimpleNamespace(reviewers=people))
    holds = {"H1": "tubes", "H2": "springs", "H3": "tubes", "H4": "cams", "H5": "springs"}
    signed = signatories(of, holds)
    assert [(one.name, one.role, one.competent_for, one.holds) for one in signed] == [
        ("M. Coyle", "", ("tubes", "racks"), ("H1", "H3")),
        ("B. Thorne", "", ("boilers",), ()),
    ]
    assert nobody_for(signed, holds) == (("cams", "H4"), ("springs", "H2, H5"))
    nobody: Any = SimpleNamespace(settings=None)
    assert signatories(nobody, holds) == ()
    assert nobody_for((), {}) == ()


# What specs ask for


def read(workshop: DesignFolder, files: dict[str, str]) -> Assessment:
    workshop.write({f"{name}.toml": f'id = "{name}"\n{text}' for name, text in files.items()})
    found = assess([workshop.root], workshop.loaded, [], processes=Processes(0))
    assert not found.complaints
    return found


WELDMENT = """kind = "weldment"
[welding]
welded = true
[joints.plain]
[joints.seam]
shape = "butt"
weld = "full penetration"
quality = "B"
examined = "100 %"
procedure = "WPS-1"
welder = "W-7"
"""


def test_each_joint_of_a_weldment_has_its_row(workshop: DesignFolder) -> None:
    """Its form, its level, what is examined, and who may weld it by what; the weldment itself has none."""
    found = asked_for(read(workshop, {"block": WELDMENT})).welds
    assert found == (
        Row(("block",), ("plain", "", "", "", "")),
        Row(("block",), ("seam", "butt full penetration", "level B", "100 %", "WPS-1; W-7")),
    )


def test_a_part_that_is_welded_has_its_row_and_one_that_is_not_none(workshop: DesignFolder) -> None:
    welded = "[welding]\nwelded = {}\n"
    pipe = 'kind = "steam-pipe"\n'
    found = asked_for(
        read(
            workshop,
            {"a": pipe + welded.format("true"), "b": pipe + welded.format("false"), "c": pipe},
        )
    )
    assert found.welds == (Row(("a",), ("welded", "", "", "", "")),)
    assert found.certificates == ()
    assert found.tests == ()


def test_a_document_asked_for_has_its_material_and_what_is_examined(workshop: DesignFolder) -> None:
    """A material alone asks for nothing; a body that reviews it does. All of a kind are told together."""
    pipe, nozzle = 'kind = "steam-pipe"\n', 'kind = "blast-nozzle"\n'
    body = 'competent_body = "the surveyor"\n'
    found = asked_for(
        read(
            workshop,
            {"a": pipe + body, "b": pipe + body, "c": nozzle + body, "d": 'kind = "cam"\nmaterial = "x"\n'},
        )
    )
    assert found.certificates == (Row(("each steam pipe (2)", "c"), ("", "", "", "the surveyor")),)
    nothing: Any = SimpleNamespace(design=None)
    assert asked_for(nothing).certificates == ()


def test_a_test_has_its_pressure_over_that_of_the_design_and_its_points(workshop: DesignFolder) -> None:
    """What is a point of none stops nothing; a pressure of the design alone asks for no test."""
    pipe, points = 'kind = "steam-pipe"\n', "[inspection_points]\n"
    found = asked_for(
        read(
            workshop,
            {
                "a": f'{pipe}design_pressure = "16 bar gauge"\n',
                "b": f'{pipe}design_pressure = "16 bar gauge"\ntest_pressure = "24 bar gauge"\n',
                "c": f'{pipe}{points}pressure_test = "witness"\nlift_in = "hold"\nwelding = "none"\n',
                "d": f'{pipe}{points}welding = "none"\n',
            },
        )
    )
    assert found.tests == (
        Row(("b",), ("24 bar gauge", "16 bar gauge", "")),
        Row(("c",), ("", "", "pressure test: witness; lift in: hold")),
    )


# The counts


def numbers(files: dict[str, str], selected: set[str], *checks: Check, sheets: int = 0) -> tuple[str, ...]:
    design = SimpleNamespace(files=files, selected=selected)
    counted = {
        one: sum(check.outcome == one for check in checks)
        for one in ("conforms", "finding", "not assessed", "not applicable")
    }
    of: Any = SimpleNamespace(design=design, checks=checks, counted=lambda: counted)
    return _said(of, sheets)


def _said(of: Any, sheets: int) -> tuple[str, ...]:
    from speclint.reports.pack import counted

    with pytest.MonkeyPatch.context() as patch:
        for name in ("left_out", "known_faults_said", "drawings_said"):
            patch.setattr(counted, name, lambda _, name=name: f"{name}." if name == "left_out" else "")
        return said_of_numbers(of, sheets)


def test_specs_and_checks_are_counted_in_sentences() -> None:
    """Two parts in one file; a check that does not apply applies to nothing."""
    files = {"a": "one.toml", "b": "one.toml", "c": "two.toml", "d": "three.toml"}
    found = numbers(
        files,
        {"a", "b", "c"},
        check("a", "conforms"),
        check("a", "conforms"),
        check("b", "finding"),
        check("c", "not applicable"),
        sheets=1,
    )
    assert found == (
        "3 specs in 2 files, of which some state several parts; 1 other spec of the repository was not asked for.",
        "At least one rule applies to 2 of them, none to the other 1: c.",
        "4 checks, each of one rule on one spec: 2 conform, 1 found something, 1 does not apply.",
        "The 2 checks that conform have 1 sheet: what is worked with the same figures stands once.",
        "left_out.",
    )


def test_what_is_not_there_is_not_counted() -> None:
    files = {"a": "one.toml", "b": "two.toml", "c": "three.toml"}
    assert numbers(files, {"a"}, check("a")) == (
        "1 spec in 1 file; 2 other specs of the repository were not asked for.",
        "At least one rule applies to 1 of them.",
        "1 check, each of one rule on one spec: 1 could not be assessed.",
        "left_out.",
    )
    assert numbers({"a": "one.toml"}, {"a"})[:3] == (
        "1 spec in 1 file.",
        "At least one rule applies to 0 of them, none to the other 1: a.",
        "0 checks, each of one rule on one spec: none.",
    )
    of: Any = SimpleNamespace(
        design=None,
        checks=(),
        counted=lambda: dict.fromkeys(("conforms", "finding", "not assessed", "not applicable"), 0),
    )
    assert _said(of, 0) == ("0 checks, each of one rule on one spec: none.", "left_out.")
