"""A component with safety checks that a change withdraws is withheld until its withdrawal is accepted by name."""

from __future__ import annotations

import json
from collections.abc import Callable

import pytest

from speclint.commands import main
from speclint.errors import DesignError, replace
from speclint.families import load_families, loading
from speclint.register.withdrawals import WITHDRAWAL
from tests import tubes
from tests.register.office import (
    OVERLOADED,
    SETTINGS,
    SIGNED,
    Office,
    committed,
    days,
    decide,
    git,
    said,
)
from tests.tubes import RACK

SOUND = OVERLOADED.replace("45 bar", "30 bar")
LISTED = "tube.loose-hot, tube.stress"


@pytest.fixture
def office(office: Office) -> Office:
    """Two sound tubes on the main branch."""
    office.shop.write({"tube.toml": SOUND, "other.toml": SOUND}, settings=SETTINGS)
    return committed(office)


def moved(old: str, new: str) -> Callable[[Office], None]:
    def change(office: Office) -> None:
        place = office.shop.root / new
        place.parent.mkdir(exist_ok=True)
        (office.shop.root / old).rename(place)

    return change


def written(file: str, text: str, settings: str = SETTINGS) -> Callable[[Office], None]:
    def change(office: Office) -> None:
        office.shop.write({file: text}, settings=settings)

    return change


def into_a_repository_of_its_own(office: Office) -> None:
    moved("tube.toml", "left/tube.toml")(office)
    written("left/speclint.toml", "")(office)


def out_of_git(office: Office) -> None:
    git(office.shop.root, "rm", "--quiet", "--cached", "tube.toml")
    (office.shop.root / ".gitignore").write_text("tube.toml\n", encoding="utf-8")


WITHDRAWN = [
    pytest.param(lambda office: (office.shop.root / "tube.toml").unlink(), "tube.toml is gone", id="gone"),
    pytest.param(
        written("tube.toml", SOUND + 'id = "pipe"\n'), "tube.toml is now the spec of pipe", id="renamed"
    ),
    pytest.param(moved("tube.toml", "pipe.toml"), "tube.toml is gone", id="renamed by its file"),
    pytest.param(
        into_a_repository_of_its_own,
        "left/tube.toml is passed over: left/speclint.toml makes its folder a repository of its own",
        id="own settings beside it",
    ),
    pytest.param(
        moved("tube.toml", ".tube.toml"), ".tube.toml is passed over: its name begins with a dot", id="dot"
    ),
    pytest.param(
        moved("tube.toml", ".old/tube.toml"),
        ".old/tube.toml is passed over: its folder .old is hidden",
        id="folder",
    ),
    pytest.param(
        moved("tube.toml", "tube.TOML"), "tube.TOML is passed over: its name ends in .TOML", id="capitals"
    ),
    pytest.param(out_of_git, "tube.toml is ignored by git", id="ignored by git"),
    pytest.param(written("tube.toml", RACK), "tube is now a rack", id="another kind"),
    pytest.param(written("tube.toml", 'kind = "duty"\n'), "tube is now a duty", id="a duty"),
]


@pytest.mark.parametrize(("change", "how"), WITHDRAWN)
def test_a_component_withdrawn_in_any_way_is_withheld_until_that_is_accepted(
    office: Office, change: Callable[[Office], None], how: str
) -> None:
    change(office)
    assert decide(office).exit_code == 0
    decision = decide(office, against="main")
    assert decision.exit_code == 1
    (reason,) = decision.reasons
    assert reason.says.startswith(f"withdrawn: tube: {how}")
    assert reason.says.endswith(f"; its safety checks were {LISTED}")
    assert reason.details == ("no concession of its withdrawal is entered",)
    entry = office.concede(rule=WITHDRAWAL, against="main", grounds="scrapped, drawing withdrawn")
    assert (entry.number, entry.outcome, entry.grade) == ("C-001", "withdrawn", "hold")
    decision = decide(office, against="main")
    assert said(decision) == ""
    assert [one.subject for one in decision.accepted] == [("tube", WITHDRAWAL)]


def test_a_component_left_out_by_the_settings_of_the_change_is_withheld(office: Office) -> None:
    office.shop.write({}, settings='leave_out = ["tube.toml"]\n' + SETTINGS)
    decision = decide(office, against="main")
    assert decision.exit_code == 1
    passed_over = 'withdrawn: tube: tube.toml is passed over: speclint.toml leaves out "tube.toml"'
    assert [one.says.split(";")[0] for one in decision.reasons] == [
        f"on the change's own design basis: {passed_over}"
    ]
    assert decision.to_review[0] == "speclint.toml leave_out was not stated, is tube.toml"
    office.concede(rule=WITHDRAWAL, against="main")
    assert said(decide(office, against="main")) == ""


def test_a_component_left_out_before_the_change_too_is_withheld(office: Office) -> None:
    """Moved to where the settings of before, but not those of the change, pass files over."""
    office.shop.write({}, settings='leave_out = ["old/*"]\n' + SETTINGS)
    committed(office)
    moved("tube.toml", "old/tube.toml")(office)
    office.shop.write({}, settings=SETTINGS)
    (reason,) = decide(office, against="main").reasons
    assert reason.says.startswith(
        'withdrawn: tube: old/tube.toml is passed over: speclint.toml leaves out "old/*"'
    )
    office.concede(rule=WITHDRAWAL, against="main")
    assert said(decide(office, against="main")) == ""


@pytest.mark.parametrize(
    "settings",
    ['materials = ["tube.toml"]\n' + SETTINGS, SETTINGS.replace("signed", 'file = "tube.toml"\nsigned')],
)
def test_a_component_that_the_settings_take_for_something_else_is_withheld(
    office: Office, settings: str
) -> None:
    office.shop.write({}, settings=settings)
    decision = decide(office, against="main")
    assert decision.exit_code == 2
    assert "withdrawn: tube: speclint.toml no longer takes tube.toml for a spec" in said(decision)


def test_a_component_that_moves_with_its_id_is_only_listed(office: Office) -> None:
    (office.shop.root / "tube.toml").unlink()
    office.shop.write({"left/spare.toml": SOUND + 'id = "tube"\n'}, settings=SETTINGS)
    decision = decide(office, against="main")
    assert said(decision) == ""
    assert decision.to_review == (
        "tube.toml is removed or moved: what it held is no longer checked under that name",
    )


def test_a_component_that_moves_out_of_the_paths_is_judged_where_it_is(office: Office) -> None:
    office.shop.write({"left/pipe.toml": SOUND, "left/spare.toml": SOUND}, settings=SETTINGS)
    committed(office)
    moved("left/pipe.toml", "right/pipe.toml")(office)
    office.shop.replace("right/pipe.toml", "30 bar", "45 bar")
    assert decide(office, "left").released
    assert "hold: pipe tube.stress" in said(decide(office, "left", against="main"))


def test_a_component_withdrawn_elsewhere_is_not_of_these_paths(office: Office) -> None:
    office.shop.write({"left/pipe.toml": SOUND}, settings=SETTINGS)
    committed(office)
    (office.shop.root / "tube.toml").unlink()
    assert decide(office, "left", against="main").released
    assert not decide(office, against="main").released


def test_a_component_without_a_safety_check_may_go(office: Office) -> None:
    office.shop.write({"spare-rack.toml": RACK}, settings=SETTINGS)
    committed(office)
    (office.shop.root / "spare-rack.toml").unlink()
    assert said(decide(office, against="main")) == ""


def test_a_spec_that_can_no_longer_be_read_is_a_complaint_and_no_withdrawal(office: Office) -> None:
    office.shop.write({"tube.toml": "kind ="}, settings=SETTINGS)
    decision = decide(office, against="main")
    assert decision.exit_code == 2
    assert "withdrawn" not in said(decision)


def test_several_withdrawn_at_once_are_each_accepted_by_name(office: Office) -> None:
    for file in ("tube.toml", "other.toml"):
        (office.shop.root / file).unlink()
    office.shop.write({"third.toml": SOUND.replace("A. Render", "J. Ostler")}, settings=SETTINGS)
    office.concede(rule=WITHDRAWAL, against="main")
    assert [one.withdrawn for one in decide(office, against="main").reasons] == ["other"]
    office.concede(component="other", rule=WITHDRAWAL, against="main")
    assert said(decide(office, against="main")) == ""


# Who may accept a withdrawal, and for how long


@pytest.mark.parametrize(
    ("name", "why"),
    [
        (
            "J. Ostler",
            "J. Ostler is not a reviewer in speclint.toml, and only a reviewer can accept a withdrawal",
        ),
        ("B. Thorne", "B. Thorne is competent for none of the families tubes: speclint.toml has boilers"),
        (
            "A. Render",
            "A. Render prepared tube before this change, and a withdrawal must be accepted by another",
        ),
    ],
)
def test_a_withdrawal_is_accepted_by_whoever_may_accept_holds(office: Office, name: str, why: str) -> None:
    (office.shop.root / "tube.toml").unlink()
    with pytest.raises(DesignError, match=why):
        office.concede(rule=WITHDRAWAL, against="main", accepted_by=name)
    office.concede(rule=WITHDRAWAL, against="main")
    office.shop.replace("register.toml", "M. Coyle", name)
    assert f"C-001 is not accepted: {why}" in said(decide(office, against="main"))


def test_a_part_that_named_no_preparer_cannot_be_shown_to_be_accepted_by_another(office: Office) -> None:
    office.shop.replace("tube.toml", 'prepared_by = "A. Render"\n', "")
    committed(office)
    (office.shop.root / "tube.toml").unlink()
    with pytest.raises(DesignError, match="tube did not state who prepared it"):
        office.concede(rule=WITHDRAWAL, against="main")


def test_each_family_whose_safety_checks_are_lost_needs_a_competent_reviewer(office: Office) -> None:
    own = replace(tubes.stress, name="boiler.tube-stress")
    office.shop.loaded = load_families(
        [tubes.entry_point("tubes"), tubes.entry_point("boilers", kinds=(), rules=(own,))]
    )
    (office.shop.root / "tube.toml").unlink()
    office.concede(rule=WITHDRAWAL, against="main")
    assert "no reviewer who is competent for boilers accepts it" in said(decide(office, against="main"))
    office.concede(rule=WITHDRAWAL, against="main", accepted_by="B. Thorne")
    decision = decide(office, against="main")
    assert (said(decision), len(decision.accepted)) == ("", 2)


def test_a_reviewer_made_competent_by_the_change_does_not_count(office: Office) -> None:
    (office.shop.root / "tube.toml").unlink()
    office.concede(rule=WITHDRAWAL, against="main")
    office.shop.replace("register.toml", "M. Coyle", "B. Thorne")
    office.shop.replace("speclint.toml", '["boilers"]', '["boilers", "tubes"]')
    assert "B. Thorne is competent for none of the families tubes" in said(decide(office, against="main"))


def test_a_withdrawal_is_signed_where_holds_must_be(office: Office) -> None:
    office.shop.write({}, settings=SIGNED)
    key = office.key_of("m.coyle")
    committed(office)
    (office.shop.root / "tube.toml").unlink()
    office.concede(rule=WITHDRAWAL, against="main")
    office.shop.replace("register.toml", 'grade = "hold"', 'grade = "observation"')
    assert "asks for a signature on a hold, and it has none" in said(decide(office, against="main"))
    office.shop.replace("register.toml", 'grade = "observation"', 'grade = "hold"')
    office.sign("C-001", key)
    assert said(decide(office, against="main")) == ""
    office.shop.replace("register.toml", 'component = "tube"', 'component = "other"')
    (office.shop.root / "other.toml").unlink()
    assert "C-001 is lapsed" in said(decide(office, against="main"))


def test_an_acceptance_holds_for_the_part_as_it_was_and_until_its_day(office: Office) -> None:
    (office.shop.root / "tube.toml").unlink()
    office.concede(rule=WITHDRAWAL, against="main", until=days(5))
    assert [one.concession.number for one in decide(office, against="main").ending] == ["C-001"]
    assert "C-001 is expired" in said(decide(office, against="main", today=days(6)))
    office.shop.write({"tube.toml": SOUND.replace("30 bar", "45 bar")}, settings=SETTINGS)
    committed(office)
    (office.shop.root / "tube.toml").unlink()
    assert "C-001 is lapsed: tube.stress was conforms, is hold" in said(decide(office, against="main"))
    with pytest.raises(DesignError, match="in the past"):
        office.concede(rule=WITHDRAWAL, against="main", until=days(-1))


def test_the_entry_stays_as_the_record_and_says_so_when_the_part_is_back(office: Office) -> None:
    (office.shop.root / "tube.toml").unlink()
    office.concede(rule=WITHDRAWAL, against="main", until=days(5))
    committed(office)
    record = office.only(today=days(300))
    assert (record.state, record.in_order, record.holds) == ("withdrawn", True, False)
    assert said(decide(office, against="main")) == ""
    office.shop.write({"tube.toml": RACK}, settings=SETTINGS)
    assert office.only().state == "withdrawn"
    office.shop.write({"tube.toml": SOUND}, settings=SETTINGS)
    assert (office.only().state, office.only().in_order) == ("unmatched", False)
    assert office.only().reasons == ("tube is in the design and judged by tube.loose-hot, tube.stress",)


def test_what_is_not_withdrawn_cannot_be_accepted_as_withdrawn(office: Office) -> None:
    for against in (None, "main"):
        with pytest.raises(
            DesignError, match="the change withdraws no component tube that had a safety check"
        ):
            office.concede(rule=WITHDRAWAL, against=against)


def test_one_acceptance_by_one_reviewer_is_enough(office: Office) -> None:
    (office.shop.root / "tube.toml").unlink()
    office.concede(rule=WITHDRAWAL, against="main")
    with pytest.raises(DesignError, match="C-001 already accepts this"):
        office.concede(rule=WITHDRAWAL, against="main")


def test_the_command_accepts_a_withdrawal(
    office: Office, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    monkeypatch.chdir(office.shop.root)
    git(office.shop.root, "mv", "tube.toml", ".tube.toml")
    assert main(["gate", "--against", "main"]) == 1
    out = " ".join(capsys.readouterr().out.split())
    assert "withdrawn: tube: .tube.toml is passed over: its name begins with a dot" in out
    assert "judged on the design basis of main" in out
    assert main(["gate", "--against", "main", "--as", "json"]) == 1
    (reason,) = json.loads(capsys.readouterr().out)["reasons"]
    assert (reason["component"], reason["rule"]) == ("tube", "withdrawal")
    words = [
        "concede",
        "tube",
        "withdrawal",
        "--by",
        "M. Coyle",
        "--grounds",
        "scrapped",
        "--until",
        str(days(9)),
    ]
    assert main(words) == 2
    assert "--against names the revision before it" in capsys.readouterr().err
    assert main([*words, "--against", "main"]) == 0
    assert "C-001 entered in register.toml: tube withdrawal" in capsys.readouterr().out
    assert main(["gate", "--against", "main"]) == 0
    assert f"tube withdrawal: M. Coyle, chief draughtsman, until {days(9)}; scrapped" in " ".join(
        capsys.readouterr().out.split()
    )
    assert main(["register"]) == 0
    assert "WITHDRAWN C-001 tube withdrawal" in " ".join(capsys.readouterr().out.split())
