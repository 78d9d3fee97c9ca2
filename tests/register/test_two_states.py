"""Two states of a design held against each other, each number worked by hand.

The mean hoop stress of the tube is p d/(D − d) at the worst corner: at 45 bar 4.5 MPa × 100.5/(104.5 − 100.5), that is
113.06 MPa against 100 MPa, so 1.1306 of the limit; at 30 bar two thirds of that, 0.7537.
"""

from __future__ import annotations

import datetime as dt
from contextlib import nullcontext
from pathlib import Path

import pytest

from speclint.checking import Processes, checks_of_report, margin_changes, seen
from speclint.errors import DesignError, RevisionError, TableError
from speclint.register import Checking, Comparison, compare, state_called
from speclint.reports.json_report import write as report_of
from tests import tubes
from tests.register.office import Office, git

AT_45, AT_30 = 4.5 * 100.5 / 4.0 / 100.0, 3.0 * 100.5 / 4.0 / 100.0


def compared(office: Office, old: str, new: str = "", part: str = "") -> Comparison:
    """What differs between a state and the folder of the office, or a part of it, or another state."""
    root = office.shop.root / part
    how = Checking(office.shop.loaded, dt.date.today(), lambda: nullcontext(Processes(0)))
    states = [
        state_called(word, root, office.keys / name, how)
        for word, name in ((old, "old"), (new or str(root), "new"))
    ]
    return compare(*states)


def committed(office: Office) -> Office:
    """The office with what lies there committed."""
    root = office.shop.root
    git(root, "init", "--quiet", "--initial-branch=main")
    git(root, "add", "--all")
    git(root, "commit", "--quiet", "--message=first")
    return office


def test_a_finding_that_a_change_clears_with_its_margins_and_the_value_that_did_it(office: Office) -> None:
    committed(office)
    office.shop.replace("tube.toml", "45 bar gauge", "30 bar gauge")
    found = compared(office, "HEAD")
    (value,) = found.changed["tube"]
    assert (value.key, value.was, value.now) == ("pressure", "45 bar gauge", "30 bar gauge")
    (change,) = [one for one in found.margins if one.rule == "tube.stress"]
    assert change.was is not None
    assert change.now is not None
    assert change.was.utilisation == pytest.approx(AT_45)
    assert change.now.utilisation == pytest.approx(AT_30)
    assert change.by == pytest.approx(AT_30 - AT_45)
    assert (change.is_cleared, change.is_new, change.cause) == (True, False, "design")
    assert change in found.cleared
    assert found.exit_code == 0


def test_the_same_change_the_other_way_is_a_new_finding_and_exits_with_one(office: Office) -> None:
    office.shop.replace("tube.toml", "45 bar gauge", "30 bar gauge")
    committed(office)
    office.shop.replace("tube.toml", "30 bar gauge", "45 bar gauge")
    found = compared(office, "HEAD")
    assert [one.rule for one in found.found] == ["tube.stress"]
    worse = [one.worse_by for one in found.margins]
    assert worse == sorted(worse, reverse=True)
    assert found.margins[0].by == pytest.approx(AT_45 - AT_30)
    assert found.exit_code == 1


def test_nothing_differs_between_a_revision_and_itself(office: Office) -> None:
    found = compared(committed(office), "HEAD", "main")
    assert len(found.margins) >= 3
    differing = (found.moved, found.changed, found.added, found.removed, found.basis, found.lapsed)
    assert not any(differing)


def test_parts_added_removed_and_renamed_with_the_links_that_follow(office: Office) -> None:
    committed(office)
    root = office.shop.root
    (root / "rack.toml").rename(root / "rack-left.toml")
    office.shop.replace("tube.toml", 'held_in = "rack"', 'held_in = "rack-left"')
    (root / "spare.toml").write_text(tubes.TUBE.replace("100 mm", "90 mm"), encoding="utf-8")
    found = compared(office, "HEAD")
    assert found.renamed == {"rack": "rack-left"}
    assert found.added == ("spare",)
    assert found.removed == ()
    assert found.changed == {}  # the link follows the rack
    (root / "rack-left.toml").unlink()
    office.shop.replace("tube.toml", 'held_in = "rack-left"\n', "")
    assert compared(office, "HEAD").removed == ("rack",)


def test_a_part_is_known_by_its_drawing_where_it_changed_and_of_two_alike_none_is_guessed(
    office: Office,
) -> None:
    root = office.shop.root
    rack = (root / "rack.toml").read_text(encoding="utf-8")
    (root / "stand.toml").write_text(rack + 'drawing = "T-12"\n', encoding="utf-8")
    for name in ("twin-a", "twin-b"):
        (root / f"{name}.toml").write_text(rack.replace("106 mm", "120 mm"), encoding="utf-8")
    committed(office)
    (root / "stand.toml").unlink()
    text = rack.replace("106 mm", "107 mm") + 'drawing = "T-12"\n'
    (root / "support.toml").write_text(text, encoding="utf-8")
    for old, new in (("twin-a", "twin-c"), ("twin-b", "twin-d")):
        (root / f"{old}.toml").rename(root / f"{new}.toml")
    found = compared(office, "HEAD")
    assert found.renamed == {"stand": "support"}
    assert [(one.key, one.was[:6], one.now[:6]) for one in found.changed["support"]] == [
        ("hole", "106 mm", "107 mm")
    ]
    assert (found.removed, found.added) == (("twin-a", "twin-b"), ("twin-c", "twin-d"))


def test_a_concession_that_lapses_and_a_limit_that_is_another(office: Office) -> None:
    office.concede()
    committed(office)
    office.shop.replace("speclint.toml", "100 MPa", "95 MPa")
    found = compared(office, "HEAD")
    (lapsed,) = found.lapsed
    assert (lapsed.concession.number, lapsed.state) == ("C-001", "lapsed")
    assert found.basis == ('speclint.toml limits."tube.stress".allowable.value was 100 MPa, is 95 MPa',)
    assert found.exit_code == 1


def test_a_concession_that_is_gone_from_the_register_is_told_as_it_was(office: Office) -> None:
    office.concede()
    committed(office)
    (office.shop.root / "register.toml").unlink()
    (gone,) = compared(office, "HEAD").lapsed
    assert (gone.concession.number, gone.state) == ("C-001", "withdrawn")
    assert gone.reasons == ("it is no longer in the register",)


@pytest.mark.parametrize(("then", "now", "part"), [("", "left", "left"), ("left", "", "left")])
def test_a_part_that_moved_into_or_out_of_what_is_compared_is_renamed_and_neither_added_nor_removed(
    office: Office, then: str, now: str, part: str
) -> None:
    """The rack of the tube, from the top folder to one of its own, or back; that folder alone is compared."""
    root = office.shop.root
    (root / "left").mkdir()
    (root / "left" / "tube.toml").write_bytes((root / "tube.toml").read_bytes())
    (root / "tube.toml").unlink()
    before = root / then / "rack.toml"
    rack = (root / "rack.toml").read_bytes()
    (root / "rack.toml").unlink()
    before.write_bytes(rack)
    committed(office)
    before.rename(root / now / "stand.toml")
    office.shop.replace("left/tube.toml", 'held_in = "rack"', 'held_in = "stand"')
    found = compared(office, "HEAD", part=part)
    assert (found.renamed, found.added, found.removed) == ({"rack": "stand"}, (), ())


def test_a_rule_of_another_edition_in_a_report_is_told_from_a_change_of_the_design(office: Office) -> None:
    report = office.keys / "before.json"
    text = report_of(office.shop.assess())
    report.write_text(text, encoding="utf-8")
    same = compared(office, str(report))
    assert len(same.margins) >= 3
    assert not same.moved
    now = office.shop.assess()
    older = tuple(seen(one, now.context) for one in now.checks if one.rule.name == "tube.stress")
    (check,) = older
    assert check.at_edition(1) == check.fingerprint
    assert check.at_edition(7) != check.fingerprint
    report.write_text(
        text.replace(check.fingerprint, check.at_edition(7)).replace('"edition": 1', '"edition": 7'),
        encoding="utf-8",
    )
    (change,) = margin_changes(
        [one for one in checks_of_report(report) if one.rule == "tube.stress"], older, {}
    )
    assert change.cause == "edition"
    office.shop.replace("tube.toml", "45 bar gauge", "44 bar gauge")
    found = compared(office, str(report))
    assert found.editions["tube.stress"] == (7, 1)
    assert {one.cause for one in found.margins if one.rule == "tube.stress"} == {"both"}


def test_what_is_no_state_is_refused_in_one_line(office: Office) -> None:
    committed(office)
    with pytest.raises(RevisionError, match="nowhere: git has no such revision"):
        compared(office, "nowhere")
    with pytest.raises(DesignError, match=r"tube\.toml: neither a folder nor a report that ends in \.json"):
        compared(office, str(office.shop.root / "tube.toml"))
    other = office.keys / "other.json"
    other.write_text("{}", encoding="utf-8")
    with pytest.raises(TableError, match=r"this is no report of speclint check --as json"):
        compared(office, str(other))
    other.write_text('{"schema": "speclint.result/1", "checks": [{}]}', encoding="utf-8")
    with pytest.raises(TableError, match="a check of the report cannot be read"):
        compared(office, str(other))


def test_folders_are_compared_without_git(office: Office, tmp_path: Path) -> None:
    other = tmp_path / "other"
    other.mkdir()
    for file in office.shop.root.iterdir():
        (other / file.name).write_bytes(file.read_bytes().replace(b"45 bar", b"30 bar"))
    found = compared(office, str(other))
    assert [one.rule for one in found.found] == ["tube.stress"]
