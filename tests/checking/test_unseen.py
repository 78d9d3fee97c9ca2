"""What nobody looked at: every hazard of every part stands one way, and each way is reached from both sides."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings, strategies as st

from speclint.checking import STATES, HazardSeen, State, Unseen, counts_hazards, unseen
from speclint.commands import main
from speclint.families import loading
from speclint.reports import hazards_said, json_report, markdown_report, unseen_data, unseen_page
from speclint.reports.accepted import standings_of
from speclint.reports.pack.not_looked_at import not_looked_at
from speclint.reports.page_one import page_one
from speclint.testing import DesignFolder, changed_files
from tests import drums
from tests.drums import DRUM, FILES


@pytest.fixture
def yard(workshop: DesignFolder) -> DesignFolder:
    workshop.loaded = drums.drums()
    return workshop.write(FILES)


def states(found: Unseen) -> dict[tuple[str, str], str]:
    return {(one.component, one.hazard): one.state for one in found.hazards}


def of(found: Unseen, component: str, hazard: str) -> HazardSeen:
    (one,) = [one for one in found.hazards if (one.component, one.hazard) == (component, hazard)]
    return one


def test_each_hazard_of_each_part_is_listed_once(yard: DesignFolder) -> None:
    """The drum can burst, leak and wear, the lid leak and fall, the strap nothing; no rule looks at wear."""
    found = unseen(yard.assess())
    assert states(found) == {
        ("drum", "burst"): "judged",
        ("drum", "leak"): "judged",
        ("drum", "wear"): "no rule",
        ("lid", "leak"): "judged",
        ("lid", "fall"): "judged",
    }
    assert found.counted() == {"judged": 4, "not assessed": 0, "not applicable": 0, "no rule": 1}
    assert (found.never_judged, found.unsaid, found.silent) == ((), (), ())


#: A change of a file, and how one hazard then stands.
CHANGES = [
    ("drum.toml", 'wall = "6 mm"', 'wall = "4 mm"', "drum", "burst", "judged"),  # a finding judges too
    ("drum.toml", 'wall = "6 mm"', "", "drum", "burst", "not assessed"),
    ("drum.toml", 'wall = "6 mm"', 'wall = "101 mm"', "drum", "burst", "not assessed"),  # beyond its rule
    ("drum.toml", '"lead"', '"none"', "drum", "leak", "not applicable"),
    ("drum.toml", 'closed_by = "lid"', "", "lid", "leak", "not assessed"),
    ("lid.toml", 'face = "12 mm"', "", "lid", "leak", "not assessed"),
    ("lid.toml", 'face = "12 mm"', 'face = "8 mm"', "lid", "leak", "judged"),
    ("strap.toml", "kept = true", "", "lid", "fall", "not assessed"),
    ("strap.toml", 'holds = "lid"', 'beside = "lid"', "lid", "fall", "not applicable"),
]


@pytest.mark.parametrize(("file", "old", "new", "component", "hazard", "state"), CHANGES)
def test_a_hazard_stands_by_what_its_checks_came_to(
    yard: DesignFolder, file: str, old: str, new: str, component: str, hazard: str, state: str
) -> None:
    found = unseen(yard.write(changed_files(FILES, (file, old, new))).assess())
    assert of(found, component, hazard).state == state


def test_the_reasons_are_those_of_the_checks(yard: DesignFolder) -> None:
    changes = (("drum.toml", '"lead"', '"none"'), ("drum.toml", 'closed_by = "lid"', ""))
    found = unseen(yard.write(changed_files(FILES, *changes)).assess())
    beyond = unseen(yard.write(changed_files(FILES, ("drum.toml", '"6 mm"', '"101 mm"'))).assess())
    assert of(found, "drum", "burst").reasons == ()  # as it is judged
    assert of(beyond, "drum", "burst").reasons == ("drum.wall: a wall of more than 100 mm is not thin",)
    assert of(found, "drum", "leak").reasons == ("drum.lining: the drum has no lining",)
    assert of(found, "lid", "leak").reasons == ("drum.lid-bears: no check of a drum looked at it",)


def test_a_rule_that_is_added_judges_and_one_that_is_not_there_does_not(yard: DesignFolder) -> None:
    yard.loaded = drums.drums(drums.lining)
    assert of(unseen(yard.assess()), "drum", "burst").state == "no rule"
    yard.loaded = drums.drums(drums.lining, drums.wall)
    assert of(unseen(yard.assess()), "drum", "burst").state == "judged"


def test_one_check_that_judges_is_enough_and_the_others_are_told(yard: DesignFolder) -> None:
    """Two drums close one lid: the check of the second waits for the link, which then does not reach the lid."""
    yard.write({"other.toml": DRUM.replace('wall = "6 mm"\n', "")})
    yard.write({"lid.toml": 'kind = "lid"\n', "third.toml": 'kind = "drum"\nclosed_by = "lid"\n'})
    found = unseen(yard.assess())
    assert of(found, "lid", "leak").state == "not assessed"
    assert len(of(found, "lid", "leak").waiting) == 3
    assert of(found, "other", "leak").state == "judged"


def test_what_is_not_checked_in_this_run_is_not_assessed(yard: DesignFolder) -> None:
    """A check of the lid alone makes no check of the drum and of the strap, which look at it."""
    assessment = yard.assess("lid.toml")
    assert states(unseen(assessment)) == {("lid", "leak"): "not assessed", ("lid", "fall"): "not assessed"}
    assert unseen(assessment).never_judged == ("lid",)
    assert not counts_hazards(assessment)
    assert hazards_said(assessment) == ""


def test_without_the_other_kind_its_rule_does_not_apply(yard: DesignFolder) -> None:
    (yard.root / "strap.toml").unlink()
    assert of(unseen(yard.assess()), "lid", "fall").state == "no rule"  # no strap is drawn
    yard.write({"strap.toml": 'kind = "strap"\nkept = true\n'})
    assert of(unseen(yard.assess()), "lid", "fall").state == "not applicable"


def test_kinds_and_rules_that_do_not_say_are_told(yard: DesignFolder) -> None:
    yard.loaded = drums.drums(*drums.RULES, drums.named)
    found = unseen(yard.write({"foot.toml": 'kind = "foot"\n', "label.toml": 'kind = "label"\n'}).assess())
    assert found.unsaid == ("foot",)
    assert found.silent == ("drum.named",)
    assert found.parts == ("drum", "lid")
    page = unseen_page(found, 100).text()
    assert "parts of kinds that do not say what they can suffer: foot" in page
    assert "rules that do not say what they guard against: drum.named" in page


def test_what_rules_leave_out_stands_once_with_its_rules_and_parts(yard: DesignFolder) -> None:
    """Two rules of the drum leave the local code to decide, in clauses that differ by a full stop."""
    yard.write({"other.toml": DRUM})
    found = {one.says: (one.rules, one.parts) for one in unseen(yard.assess()).left_out}
    assert found["the local code decides"] == (("drum.lining", "drum.wall"), ("drum", "other"))
    assert found["corrosion"] == (("drum.wall",), ("drum", "other"))
    assert found["nothing else"] == (("drum.lid-bears", "strap.kept"), ("drum", "other", "strap"))
    yard.replace("drum.toml", '"lead"', '"none"').replace("other.toml", '"lead"', '"none"')
    after = unseen(yard.assess())
    assert (
        "how the lining is laid" in found,
        "how the lining is laid" in {one.says for one in after.left_out},
    ) == (
        True,
        False,
    )
    assert [(one.says, one.rules, one.parts) for one in after.idle] == [
        ("the drum has no lining", ("drum.lining",), ("drum", "other"))
    ]


# A property: every hazard stands exactly one way, and the sums add up

_WALLS: dict[str, State] = {'wall = "6 mm"': "judged", 'wall = "2 mm"': "judged", "": "not assessed"}
_LININGS: dict[str, State] = {
    'lining = "lead"': "judged",
    'lining = "none"': "not applicable",
    "": "not assessed",
}


@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.lists(
        st.tuples(st.sampled_from(list(_WALLS)), st.sampled_from(list(_LININGS))), min_size=1, max_size=4
    )
)
def test_the_sums_add_up(tmp_path_factory: pytest.TempPathFactory, made: list[tuple[str, str]]) -> None:
    folder = DesignFolder(tmp_path_factory.mktemp("yard"), drums.drums(drums.wall, drums.lining))
    files = {f"drum-{n}.toml": f'kind = "drum"\n{wall}\n{lining}\n' for n, (wall, lining) in enumerate(made)}
    found = unseen(folder.write(files).assess())
    assert len(found.hazards) == 3 * len(made) == len({(one.component, one.hazard) for one in found.hazards})
    wanted = [state for wall, lining in made for state in (_WALLS[wall], _LININGS[lining], "no rule")]
    assert found.counted() == {state: wanted.count(state) for state in STATES}
    for sums in (found.by_hazard().values(), [unseen(folder.assess()).counted()]):
        assert {state: sum(one[state] for one in sums) for state in STATES} == found.counted()
    assert sum(map(len, found.by_kind().values())) == len(found.hazards)
    assert sum(len(found.standing(state)) for state in STATES) == len(found.hazards)


# Reports


def test_one_line_on_page_one_in_markdown_and_in_the_result(yard: DesignFolder) -> None:
    import jsonschema

    assessment = yard.write(changed_files(FILES, ("drum.toml", '"lead"', '"none"'))).assess()
    line = "1 of 5 hazards of 2 parts has no rule, 1 not applicable: speclint unseen."
    assert line in page_one(assessment, 100, standings_of(assessment)).text()
    assert line in markdown_report.write(assessment)
    data = json_report.document(assessment)
    assert data["hazards"] == {"judged": 3, "not assessed": 0, "not applicable": 1, "no rule": 1}
    jsonschema.validate(json.loads(json.dumps(data)), json.loads(json_report.schema()))


def test_the_page_has_the_sums_first_and_then_each_gap(yard: DesignFolder) -> None:
    yard.write({**changed_files(FILES, ("drum.toml", '"lead"', '"none"')), "other.toml": DRUM})
    page = unseen_page(unseen(yard.assess()), 100).text()
    rows = [" ".join(line.split()) for line in page.splitlines()]
    assert rows[1] == "2 of 8 hazards of 3 parts have no rule, 1 not applicable; 5 judged."
    first = rows.index("hazard judged not assessed not applicable no rule")
    assert rows[first + 1 : first + 7] == [
        "burst 2 – – –",
        "leak 2 – 1 –",
        "fall 1 – – –",
        "wear – – – 2",
        "all 5 – 1 2",
        "",
    ]
    assert "drum (2 parts): wear" in rows
    assert "drum (2 parts): leak (1 of them)" in rows
    assert "drum, leak: drum.lining: the drum has no lining" in rows
    assert page.index("no rule") < page.index("What the rules that apply leave out, in their own words")
    narrow = unseen_page(unseen(yard.assess()), 44).text()
    assert all(len(line) <= 44 for line in narrow.splitlines())
    assert "2 judged" in narrow


def test_one_component_tells_what_judges_each_hazard(yard: DesignFolder) -> None:
    found = unseen(yard.assess(), "drum")
    assert found.parts == ("drum",)
    page = unseen_page(found, 100).text()
    assert "burst: judged by drum.wall" in page
    assert "wear: no rule" in page


def test_the_pack_has_the_page(yard: DesignFolder) -> None:
    shown = not_looked_at(yard.write(changed_files(FILES, ("drum.toml", '"lead"', '"none"'))).assess())
    assert shown.says == "1 of 5 hazards of 2 parts has no rule, 1 not applicable; 3 judged."
    assert shown.rows[-1] == ("all", (3, 0, 1, 1))
    assert dict(shown.gaps)["No rule guards against it"] == (("drum (1 part)", "wear"),)
    assert dict(shown.lists)["Rules guard against it, and none applies"] == (
        ("drum, leak", "drum.lining: the drum has no lining"),
    )
    assert [heading for heading, _ in shown.lists][-1] == (
        "what the rules that apply leave out, in their own words"
    )


def test_the_command_prints_the_page_and_the_data(
    yard: DesignFolder, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(loading, "find_families", list)
    monkeypatch.setattr("speclint.commands.unseen.families_for", lambda _: yard.loaded)
    assert main(["unseen", str(yard.root), "--afresh", "--as", "json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told == json.loads(json.dumps(unseen_data(unseen(yard.assess()))))
    assert told["hazards"] == {"judged": 4, "not assessed": 0, "not applicable": 0, "no rule": 1, "parts": 2}
    assert [(one["component"], one["hazard"]) for one in told["not_judged"]] == [("drum", "wear")]
    assert main(["unseen", str(yard.root), "--afresh", "--of", "drum"]) == 0
    assert "1 of 3 hazards of 1 part has no rule; 2 judged." in capsys.readouterr().out
    assert main(["unseen", str(yard.root), "--afresh", "--of", "drumm"]) == 2
    assert "no component is called drumm" in capsys.readouterr().err


def test_a_file_that_cannot_be_read_is_told(yard: DesignFolder) -> None:
    yard.write({"bad.toml": 'kind = "drum"\nwall = "thick"\n'})
    found = unseen(yard.assess())
    assert found.unread == 1
    assert "1 line could not be read; what stands there is not counted" in unseen_page(found, 100).text()


def test_without_readable_settings_nothing_is_counted(yard: DesignFolder) -> None:
    Path(yard.root / "speclint.toml").write_text("[works]\nstage = 3\n", encoding="utf-8")
    assessment = yard.assess()
    assert unseen(assessment).hazards == ()
    assert hazards_said(assessment) == ""
