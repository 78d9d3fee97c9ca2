"""A change cannot loosen what judges it: settings, limits, materials, duties, preparers, and the words that decide."""

from __future__ import annotations

import pytest

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.errors import replace
from speclint.facts import may_be_one_person
from tests import tubes
from tests.register.office import OVERLOADED, SETTINGS, Office, committed, decide, said
from tests.tubes import RACK, Rack, Tube

HELD = replace(tubes.case_stress, grade=Grade.HOLD, gravest=Grade.HOLD)
SOUND = (
    OVERLOADED.replace("45 bar", "30 bar")
    + 'material = "own-iron"\nsafety_part = true\nsupplied_as = "made"\n'
)
OTHER_RACK = RACK.replace("106 mm", "107 mm")

METALS = """
[sources]
CERT = { work = "founder's certificate 1207", edition = "2026" }
[own-iron]
title = "own iron"
family = "grey-iron"
standard = "works specification 12"
allowable = "grey-iron"
like = "grey-iron-250"
hardness = { value = 200, low = 190, high = 210, unit = "HB", source = "CERT" }
"""
WITH_METALS = 'materials = ["metals.toml"]\n' + SETTINGS


@rule(
    "tube.hard",
    title="the tube is hard",
    on=Tube,
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="for tests",
    leaves_out="nothing",
    limits=[Limit("least", "180 HB", "Brinell hardness", COMMON_PRACTICE, "least hardness")],
)
def hard(tube: Tube, sheet: Sheet) -> Judgement:
    """A rule that takes a figure of the material, for parts that can hurt someone."""
    if not sheet.read("safety part", tube.safety_part):
        raise sheet.not_applicable("it is no safety part")
    return sheet.at_least(
        sheet.look_up("HB", sheet.material_of(tube).hardness, of=tube), sheet.limit("least", "HB_min")
    )


@rule(
    "tube.made",
    title="the tube is made to its drawing",
    on=Tube,
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="for tests",
    leaves_out="nothing",
)
def made(tube: Tube, sheet: Sheet) -> Judgement:
    """A rule whose finding is less grave for a part that was bought."""
    word = sheet.read("supplied as", tube.supplied_as)
    judged = sheet.states(sheet.read("ends", tube.ends) == "open", "the ends are open")
    return judged if word == "made" else judged.graded(Grade.QUERY)


@pytest.fixture
def office(office: Office) -> Office:
    """A sound tube of the works' own iron, with all that judges it on the main branch."""
    office.shop.loaded = tubes.tubes(tubes.stress, HELD, tubes.loose_hot, hard, made)
    office.shop.write({"tube.toml": SOUND, "metals.toml": METALS}, settings=WITH_METALS)
    committed(office)
    assert decide(office, against="main").released
    return office


# Materials, limits and duties, judged as they were and as they are

#: What the change of the material is told as.
_HARDER = [
    "metals.toml own-iron.hardness.low was 160, is 190",
    "metals.toml own-iron.hardness.value was 170, is 200",
]
#: What is so strict on the main branch that the tube is a hold: the file, what it says there, what the change says.
STRICT = {
    "duty.toml": ("45 bar gauge", "12 bar gauge"),
    "metals.toml": ("value = 170, low = 160", "value = 200, low = 190"),
    "speclint.toml": ('"70 MPa"', '"100 MPa"'),
}


def strict(office: Office, *files: str) -> None:
    """Main branch on which each of some files makes the tube a hold, and a change that loosens each of them."""
    for file in files:
        office.shop.replace(file, *reversed(STRICT[file]))
    committed(office)
    for file in files:
        office.shop.replace(file, *STRICT[file])


@pytest.mark.parametrize(
    ("file", "held", "differs", "listed"),
    [
        (
            "duty.toml",
            "tube.case-stress",
            "duty cases.starting.live_pressure was 45 bar gauge, is 12 bar gauge",
            ["duty.toml cases.starting.live_pressure was 45 bar gauge, is 12 bar gauge"],
        ),
        (
            "metals.toml",
            "tube.hard",
            "hardness HB was 160 HB to 210 HB, is 190 HB to 210 HB",
            _HARDER,
        ),
        (
            "speclint.toml",
            "tube.stress",
            "limit allowable was 70 MPa, is 100 MPa",
            ['speclint.toml limits."tube.stress".allowable.value was 70 MPa, is 100 MPa'],
        ),
    ],
)
def test_what_judges_a_part_loosened_within_the_change(
    office: Office, file: str, held: str, differs: str, listed: list[str]
) -> None:
    strict(office, file)
    assert decide(office).released
    decision = decide(office, against="main")
    (reason,) = decision.reasons
    assert reason.hold is not None
    assert (decision.exit_code, reason.hold.order) == (1, ("tube", held))
    assert f"not so on the change's own design basis; what differs: {differs}" in said(decision)
    assert list(decision.to_review) == listed


def test_a_basis_made_stricter_counts_at_once(office: Office) -> None:
    office.shop.replace("duty.toml", "12 bar gauge", "45 bar gauge")
    decision = decide(office, against="main")
    (reason,) = decision.reasons
    assert reason.says.startswith("on the change's own design basis: hold: tube tube.case-stress")
    assert "duty cases.starting.live_pressure was 12 bar gauge, is 45 bar gauge" in said(decision)


def test_a_hold_on_both_is_said_once_without_a_difference(office: Office) -> None:
    office.shop.replace("duty.toml", "12 bar gauge", "45 bar gauge")
    committed(office)
    office.shop.replace("duty.toml", "45 bar gauge", "44 bar gauge")
    decision = decide(office, against="main")
    assert [one.details for one in decision.reasons] == [("no concession is entered for it",)]


@pytest.mark.parametrize("there", [True, False])
def test_a_part_put_under_another_duty(office: Office, there: bool) -> None:
    """Under one that comes with the change, or that was there before."""
    office.shop.replace("duty.toml", "12 bar gauge", "45 bar gauge")
    committed(office)
    mild = (office.shop.root / "duty.toml").read_text(encoding="utf-8").replace("45 bar", "12 bar")
    office.shop.write({"mild.toml": mild.replace('id = "duty"', 'id = "mild"')}, settings=WITH_METALS)
    if there:
        committed(office)
    office.shop.replace("tube.toml", 'duty = "duty"', 'duty = "mild"')
    assert decide(office).released
    decision = decide(office, against="main")
    assert [one.hold.order for one in decision.reasons if one.hold] == [("tube", "tube.case-stress")]
    new = () if there else ("mild.toml: the duty mild is new",)
    assert decision.to_review == (*new, "tube duty was duty, is mild")


def test_a_duty_taken_away_is_still_judged_by(office: Office) -> None:
    office.shop.replace("duty.toml", "12 bar gauge", "45 bar gauge")
    committed(office)
    (office.shop.root / "duty.toml").rename(office.shop.root / "other.toml")
    office.shop.replace("other.toml", "45 bar gauge", "12 bar gauge")
    decision = decide(office, against="main")
    assert [one.hold.order for one in decision.reasons if one.hold] == [("tube", "tube.case-stress")]
    assert (
        "duty.toml is removed or moved: what it held is no longer checked under that name"
        in decision.to_review
    )


def test_a_new_own_material_was_not_known_before_the_change(office: Office) -> None:
    better = METALS.replace("[own-iron]", "[better-iron]").replace("value = 200", "value = 205")
    office.shop.write({"better.toml": better}, settings=WITH_METALS.replace('"]', '", "better.toml"]', 1))
    office.shop.replace("tube.toml", '"own-iron"', '"better-iron"')
    assert decide(office).released
    decision = decide(office, against="main")
    (reason,) = decision.reasons
    assert "hold, not assessed: tube tube.hard: no material 'better-iron'" in reason.says
    assert "tube material was own-iron, is better-iron" in decision.to_review


def test_a_hold_that_only_the_old_basis_gives_can_be_accepted_on_it(office: Office) -> None:
    strict(office, "duty.toml")
    office.concede(rule="tube.case-stress", against="main")
    decision = decide(office, against="main")
    assert (said(decision), [one.concession.number for one in decision.accepted]) == ("", ["C-001"])
    office.shop.replace("tube.toml", "100 mm", "101 mm")
    assert "C-001 is lapsed: tube bore was 100 mm ±0.5, is 101 mm ±0.5" in said(
        decide(office, against="main")
    )


def test_everything_loosened_at_once_is_judged_and_listed(office: Office) -> None:
    """Settings, a duty, a material, a removed spec and a name in one change: none of them hides another."""
    strict(office, *STRICT)
    office.shop.replace("tube.toml", "A. Render", "J. Ostler")
    office.shop.replace("tube.toml", 'held_in = "rack"', 'held_in = "other-rack"')
    office.shop.write(
        {"other-rack.toml": RACK}, settings=(office.shop.root / "speclint.toml").read_text("utf-8")
    )
    (office.shop.root / "rack.toml").unlink()
    decision = decide(office, against="main")
    assert sorted(one.hold.rule.name for one in decision.reasons if one.hold) == [
        "tube.case-stress",
        "tube.hard",
        "tube.stress",
    ]
    assert len(decision.reasons) == 3
    assert decision.to_review == (
        'speclint.toml limits."tube.stress".allowable.value was 70 MPa, is 100 MPa',
        *_HARDER,
        "duty.toml cases.starting.live_pressure was 45 bar gauge, is 12 bar gauge",
        "rack.toml is removed or moved: what it held is no longer checked under that name",
        "tube prepared_by was A. Render, is J. Ostler",
    )


@pytest.mark.parametrize("beside", ["a spec", "a duty", "a material", "a signer", "a removed spec"])
def test_settings_changed_beside_something_else_are_judged_all_the_same(office: Office, beside: str) -> None:
    """A limit made stricter counts whatever else the change touches."""
    office.shop.write({"spare.toml": OTHER_RACK}, settings=WITH_METALS)
    committed(office)
    office.shop.replace("speclint.toml", '"100 MPa"', '"70 MPa"')
    if beside == "a spec":
        office.shop.replace("rack.toml", "106 mm", "107 mm")
    elif beside == "a duty":
        office.shop.replace("duty.toml", "12 bar gauge", "11 bar gauge")
    elif beside == "a material":
        office.shop.replace("metals.toml", "value = 200", "value = 201")
    elif beside == "a signer":
        (office.shop.root / "allowed_signers").write_text("# none yet\n", encoding="utf-8")
    else:
        (office.shop.root / "spare.toml").unlink()
    decision = decide(office, against="main")
    assert [one.says.split(": mean")[0] for one in decision.reasons] == [
        "on the change's own design basis: hold: tube tube.stress"
    ]
    assert 'speclint.toml limits."tube.stress".allowable.value was 100 MPa, is 70 MPa' in decision.to_review
    assert len(decision.to_review) == (1 if beside == "a spec" else 2)


# Who prepared a part


@pytest.mark.parametrize(
    "name",
    [
        "M. Coyle",
        "m coyle",
        "COYLE, M.",
        "M.\u00a0Coyle",
        "\u041c. C\u043eyle",
        "Mary Coyle",
        "J. Ostler and M. Coyle",
    ],
)
def test_whoever_prepared_a_part_before_the_change_cannot_accept_its_holds(office: Office, name: str) -> None:
    office.shop.replace("tube.toml", "A. Render", name)
    committed(office)
    office.shop.replace("tube.toml", name, "J. Ostler")
    office.shop.replace("tube.toml", "30 bar gauge", "45 bar gauge")
    office.concede()
    assert decide(office).released
    decision = decide(office, against="main")
    assert "C-001 is not accepted: M. Coyle prepared tube before this change" in said(decision)
    assert f"tube prepared_by was {name}, is J. Ostler" in decision.to_review


def test_whoever_prepared_it_after_the_change_cannot_either(office: Office) -> None:
    office.shop.replace("tube.toml", "30 bar gauge", "45 bar gauge")
    office.concede()
    committed(office)
    office.shop.replace("tube.toml", "A. Render", "M. Coyle")
    assert "C-001 is not accepted: M. Coyle prepared tube" in said(decide(office, against="main"))


@pytest.mark.parametrize("left", [None, 'kind = "duty"\n'])
@pytest.mark.parametrize("file", ["tube.toml", "other.toml"])
def test_a_part_under_a_new_name_keeps_whoever_prepared_it(
    office: Office, file: str, left: str | None
) -> None:
    """Renamed within its file, or as a new spec where one of its kind is removed or turned into something else."""
    office.shop.replace("tube.toml", "A. Render", "M. Coyle")
    committed(office)
    (office.shop.root / "tube.toml").unlink()
    renamed = SOUND.replace("30 bar", "45 bar").replace("A. Render", "J. Ostler") + 'id = "pipe"\n'
    remains = {} if left is None else {"remains.toml": left + 'id = "tube"\n'}
    office.shop.write({file: renamed, **remains}, settings=WITH_METALS)
    office.concede(component="pipe")
    refused = "C-001 is not accepted: M. Coyle prepared pipe before this change"
    assert refused in said(decide(office, against="main"))


def test_a_new_part_beside_the_others_is_nobodys_before(office: Office) -> None:
    office.shop.replace("tube.toml", "A. Render", "M. Coyle")
    committed(office)
    office.shop.write({"pipe.toml": SOUND.replace("30 bar", "45 bar")}, settings=WITH_METALS)
    office.concede(component="pipe")
    assert said(decide(office, against="main")) == ""


@pytest.mark.parametrize("other", ["B. Thorne", "M. Boyle", "N. Coyle", "Coyne", "", "..."])
def test_two_people_are_two(other: str) -> None:
    assert not may_be_one_person("M. Coyle", other)
    assert not may_be_one_person(other, "M. Coyle")


# Words that decide


@pytest.mark.parametrize(
    ("old", "new", "listed"),
    [
        (
            'prepared_by = "A. Render"',
            'prepared_by = "J. Ostler"',
            "tube prepared_by was A. Render, is J. Ostler",
        ),
        ('"open"', '"open"\nchecked_by = "B. Thorne"', "tube checked_by was not stated, is B. Thorne"),
        ('"open"', '"open"\npressure_part = false', "tube pressure_part was not stated, is false"),
        ('"made"', '"bought"', "tube supplied_as was made, is bought"),
        (
            '"105 mm ±0.5"',
            '{ value = "105 mm ±0.5", from = "assumed" }',
            "tube outside from was drawing, is assumed",
        ),
        ('"open"', '"open"\nlubrication.drained = true', "tube lubrication.drained was not stated, is true"),
        ("hoops = 4", "hoops = 5", ""),
        ('"30 bar gauge"', '"31 bar gauge"', ""),
    ],
)
def test_words_that_decide_are_listed_for_a_reviewer_and_dimensions_are_not(
    office: Office, old: str, new: str, listed: str
) -> None:
    office.shop.replace("tube.toml", old, new)
    assert decide(office, against="main").to_review == ((listed,) if listed else ())


def test_a_safety_check_that_no_longer_applies_is_listed(office: Office) -> None:
    office.shop.replace("tube.toml", "safety_part = true", "safety_part = false")
    decision = decide(office, against="main")
    assert decision.to_review == (
        "tube safety_part was true, is false",
        "tube tube.hard no longer applies: tube safety_part was true, is false",
    )


def test_a_finding_made_less_grave_is_listed(office: Office) -> None:
    office.shop.replace("tube.toml", '"open"', '"closed"')
    committed(office)
    office.shop.replace("tube.toml", '"made"', '"bought"')
    decision = decide(office, against="main")
    assert decision.released
    assert decision.to_review == (
        "tube supplied_as was made, is bought",
        "tube tube.made was a hold and is a query: tube supplied_as was made, is bought",
    )


@rule(
    "tube.held",
    title="the tube is held",
    on=Tube,
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="for tests",
    leaves_out="nothing",
)
def held(tube: Tube, sheet: Sheet) -> Judgement:
    """A rule on a part that a word of another part decides."""
    if not sheet.read("safety part", sheet.follow(tube.held_in).safety_part):
        raise sheet.not_applicable("its rack is no safety part")
    return sheet.states(True, "it is held")


def test_a_safety_check_that_the_word_of_another_part_ends_is_listed(office: Office) -> None:
    """The tube's own spec does not change; a change beside it does not concern it."""
    office.shop.loaded = tubes.tubes(tubes.stress, held)
    office.shop.replace("rack.toml", "hole", "safety_part = true\nhole")
    office.shop.write(
        {"pipe.toml": SOUND, "rack-2.toml": RACK + "safety_part = true\n"}, settings=WITH_METALS
    )
    office.shop.replace("pipe.toml", '"rack"', '"rack-2"')
    committed(office)
    office.shop.replace("rack.toml", "safety_part = true", "safety_part = false")
    assert decide(office, against="main").to_review == (
        "rack safety_part was true, is false",
        "tube tube.held no longer applies: rack safety_part was true, is false",
    )
    committed(office)
    office.shop.replace("pipe.toml", '"rack-2"', '"rack"')
    assert decide(office, against="main").to_review == (
        "pipe tube.held no longer applies: pipe held_in was rack-2, is rack; rack safety_part was not used, is false",
    )


@rule(
    "rack.stiff",
    title="the rack is stiff",
    on=Rack,
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="for tests",
    leaves_out="nothing",
)
def stiff(rack: Rack, sheet: Sheet) -> Judgement:
    """A rule on a part that others link to."""
    if not sheet.belonging_to(rack, Tube):
        raise sheet.not_applicable("it holds nothing")
    return sheet.states(True, "it is stiff")


def test_a_safety_check_that_ends_because_another_part_no_longer_links_there_is_listed(
    office: Office,
) -> None:
    office.shop.loaded = tubes.tubes(tubes.stress, stiff)
    office.shop.write({"rack-2.toml": RACK}, settings=WITH_METALS)
    committed(office)
    office.shop.replace("tube.toml", '"rack"', '"rack-2"')
    assert decide(office, against="main").to_review == (
        "rack rack.stiff no longer applies: tube on rack was tube, is none",
    )
