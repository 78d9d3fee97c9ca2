"""The stage at which a part is examined: by its words, and as a record has it against the drawing."""

from __future__ import annotations

import pytest

from speclint_release.inputs.recorded_extents import out_of_stage, recorded
from speclint_release.inputs.stages import stages


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("in the rough", [(True, "machining")]),
        ("as forged", [(True, "machining")]),
        ("before welding", [(True, "welding")]),
        ("prior to turning", [(True, "machining")]),
        ("following turning", [(False, "machining")]),
        ("after stress relief", [(False, "heat treatment")]),
        ("after PWHT", [(False, "heat treatment")]),
        ("when hardened", [(False, "heat treatment")]),
        ("after rough turning", [(False, "rough machining")]),
        ("when bored", [(False, "machining")]),
        ("once it is ground", [(False, "grinding")]),
        ("as finished", [(False, "finishing")]),
        ("when finish turned", [(False, "finishing")]),
        ("after turning and grinding", [(False, "grinding")]),
        ("before turning or grinding", [(True, "machining")]),
        ("before and after turning", [(True, "machining"), (False, "machining")]),
        ("turned bore", []),
        ("when cold", []),
        ("rough turned", [(False, "rough machining")]),
        ("in the rough-machined condition", [(False, "rough machining")]),
        ("vorgedreht", [(False, "rough machining")]),
        ("machined", [(False, "machining")]),
        ("machined all over", [(False, "machining")]),
        ("in the machined state", [(False, "machining")]),
        ("bearbeitet", [(False, "machining")]),
        ("finish machined", [(False, "finishing")]),
        ("finish-turned", [(False, "finishing")]),
        ("finish ground", [(False, "finishing")]),
        ("finished", [(False, "finishing")]),
        ("finished machined", [(False, "finishing")]),
        ("fertig bearbeitet", [(False, "finishing")]),
        ("ground", [(False, "grinding")]),
        ("geschliffen", [(False, "grinding")]),
        ("on completion of machining", [(False, "machining")]),
        ("after finish grinding", [(False, "finishing")]),
        ("in black condition", [(True, "machining")]),
        ("im Schmiedezustand", [(True, "machining")]),
        ("machined faces", []),
        ("finish machined faces", []),
        ("finished after 3 h", []),
    ],
)
def test_a_stage_by_its_words(text: str, found: list[tuple[bool, str]]) -> None:
    """Of several steps together the last is the one that it comes after, and the first that it comes before."""
    order = ("welding", "heat treatment", "rough machining", "machining", "grinding", "finishing")
    assert [(one.before, order[one.step]) for one in stages(text)] == found


@pytest.mark.parametrize(
    ("asked", "made", "ends"),
    [
        ("after turning", "after turning", "shown"),
        ("after turning", "when ground", "shown"),
        ("after turning", "", "shown"),
        ("after turning", "before turning", "wrong"),
        ("after turning", "in the rough", "wrong"),
        ("after turning", "before welding", "wrong"),
        ("after turning", "before grinding", "unclear"),
        ("after turning", "after stress relief", "unclear"),
        ("before turning", "before welding", "shown"),
        ("before turning", "in the rough", "shown"),
        ("before turning", "after rough turning", "shown"),
        ("before turning", "after turning", "wrong"),
        ("before turning", "before grinding", "unclear"),
        ("before turning", "rough turned", "shown"),
        ("before turning", "finish turned", "wrong"),
        ("after turning", "finish machined", "shown"),
        ("after turning", "rough turned", "unclear"),
        ("before and after turning", "after turning", "wrong"),
        ("", "before turning", "shown"),
    ],
)
def test_a_record_at_the_stage_that_is_asked_for(asked: str, made: str, ends: str) -> None:
    """What is before an earlier step is before a later one, and what is after a later step is after an earlier one."""
    wrong, unclear = out_of_stage(f"MT {asked}", recorded(f"MT {asked}", [(f"MT {made}", "all")]))
    assert (bool(wrong), bool(unclear)) == (ends == "wrong", ends == "unclear")


def test_one_of_several_records_is_of_the_stage() -> None:
    asked = "MT before and after turning"
    both = [("MT before turning", ""), ("MT after turning", "")]
    assert out_of_stage(asked, recorded(asked, both)) == ([], [])
    assert out_of_stage(asked, recorded(asked, [*both[:1], ("MT", "")])) == ([], [])
    ((said,), _) = out_of_stage(asked, recorded(asked, both[:1]))
    assert said == "magnetic particle before turning, after turning is asked for"


def test_the_stage_of_one_method_is_not_that_of_another() -> None:
    asked = "UT in the rough, MT when ground"
    assert out_of_stage(asked, recorded(asked, [("UT in the rough, MT when ground", "")])) == ([], [])
    wrong, _ = out_of_stage(asked, recorded(asked, [("UT when ground, MT in the rough", "")]))
    assert len(wrong) == 2
