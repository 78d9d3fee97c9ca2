"""What changed since a revision: specs and values as written, and what came and went among the findings."""

from __future__ import annotations

import json
from importlib.resources import files

import jsonschema
import pytest

from speclint.checking import Assessment, DesignChanges
from speclint.errors import replace
from speclint.register import before_at
from speclint.reports import json_report, markdown_report, terminal_page
from speclint.repository import scratch_folder
from tests.register.office import FILES, Office, committed
from tests.tubes import RACK


def since(office: Office, revision: str = "HEAD") -> Assessment:
    """The design as it lies there, with what changed since a revision."""
    now = office.shop.assess()
    with scratch_folder() as folder:
        changes = before_at([office.shop.root], revision, office.shop.loaded, folder).changes(now)
    return replace(now, changes=changes)


def changes_of(office: Office) -> DesignChanges:
    found = since(office).changes
    assert found is not None
    return found


@pytest.fixture
def overloaded(office: Office) -> Office:
    """A tube at 45 bar, which is a hold, with its rack and its duty, committed."""
    return committed(office)


def test_nothing_changed_says_so(overloaded: Office) -> None:
    found = changes_of(overloaded)
    assert (found.added, found.removed, found.changed, found.new, found.cleared) == ((), (), {}, (), ())
    assert "Since HEAD: no spec differs" in terminal_page.write(since(overloaded), 100, full=False).text()


def test_a_changed_value_is_told_as_it_was_and_as_it_is(overloaded: Office) -> None:
    overloaded.shop.replace("tube.toml", "45 bar gauge", "46 bar gauge")
    found = changes_of(overloaded)
    ((name, (one,)),) = found.changed.items()
    assert (name, one.key, one.was, one.now) == ("tube", "pressure", "45 bar gauge", "46 bar gauge")
    assert (found.new, found.cleared) == ((), ())  # the hold was there before


def test_a_value_that_is_stated_no_longer_is_told(overloaded: Office) -> None:
    overloaded.shop.replace("tube.toml", 'pressure = "45 bar gauge"\n', "")
    ((one,),) = changes_of(overloaded).changed.values()
    assert (one.key, one.was, one.now) == ("pressure", "45 bar gauge", "")


def test_a_comment_is_no_change_of_a_spec(overloaded: Office) -> None:
    overloaded.shop.replace("tube.toml", "pressure =", "# as the boiler has it\npressure =")
    assert changes_of(overloaded).changed == {}


def test_a_finding_that_goes_is_cleared_and_one_that_comes_is_new(overloaded: Office) -> None:
    """At 30 bar the stress is 75 of 100 MPa; with 3 hoops a rule of the rack's tube fails that held."""
    overloaded.shop.replace("tube.toml", "45 bar", "30 bar")
    overloaded.shop.replace("tube.toml", "hoops = 4", "hoops = 3")
    found = changes_of(overloaded)
    assert [one.order for one in found.cleared] == [("tube", "tube.stress")]
    assert [one.component for one in found.new] == ["tube"]
    assert found.new[0].rule.name != "tube.stress"


def test_a_neighbour_s_change_that_makes_a_finding_is_seen(overloaded: Office) -> None:
    """The hole of the rack is 101 mm, and the tube is 104.5 mm at least."""
    overloaded.shop.write({"rack.toml": RACK.replace("106 mm", "101 mm")})
    found = changes_of(overloaded)
    assert list(found.changed) == ["rack"]
    assert "tube" in {one.component for one in found.new}


def test_what_is_not_assessed_any_more_is_new(overloaded: Office) -> None:
    overloaded.shop.replace("tube.toml", "45 bar", "30 bar")
    committed(overloaded)
    overloaded.shop.replace("tube.toml", 'pressure = "30 bar gauge"\n', "")
    assert ("tube", "tube.stress") in [one.order for one in changes_of(overloaded).new]


def test_specs_that_come_and_go_are_named(overloaded: Office) -> None:
    """A tube under another name: its findings are new, and those of the one that is gone are cleared."""
    root = overloaded.shop.root
    (root / "tube.toml").rename(root / "pipe.toml")
    found = changes_of(overloaded)
    assert (found.added, found.removed) == (("pipe",), ("tube",))
    assert ("pipe", "tube.stress") in [one.order for one in found.new]
    assert ("tube", "tube.stress") in [one.order for one in found.cleared]


def test_each_report_says_it(overloaded: Office) -> None:
    overloaded.shop.replace("tube.toml", "45 bar", "30 bar")
    found = since(overloaded)
    page = terminal_page.write(found, 100, full=False).text()
    assert "Since HEAD: 1 spec changed (tube)" in page
    assert "cleared hold: tube: " in page
    text = markdown_report.write(found)
    assert text.index("### Since HEAD: 1 spec changed (tube)") < text.index("cleared")
    document = json.loads(json_report.write(found))
    schema = json.loads(
        (files("speclint.reports") / "speclint.result-1.schema.json").read_text(encoding="utf-8")
    )
    jsonschema.validate(document, schema, jsonschema.Draft202012Validator)
    assert document["changes"]["changed"] == {
        "tube": [{"key": "pressure", "was": "45 bar gauge", "now": "30 bar gauge"}]
    }


def test_the_first_five_are_told_and_the_others_counted(overloaded: Office) -> None:
    """Seven more tubes, each a hold by a pressure of its own, and the one that was there is sound now."""
    tube = FILES["tube.toml"]
    more = {f"tube-{number}.toml": tube.replace("45 bar", f"4{number}.5 bar") for number in range(1, 8)}
    overloaded.shop.write(more)
    overloaded.shop.replace("tube.toml", "45 bar", "30 bar")
    found = since(overloaded)
    assert found.changes is not None
    new, cleared = (
        sum(1 for one in some if one.rule.name == "tube.stress")
        for some in (found.changes.new, found.changes.cleared)
    )
    assert (new, cleared) == (7, 1)
    page = terminal_page.write(found, 100, full=False).text()
    section = page[page.index("Since HEAD:") :].partition("\n\n")[0].splitlines()[1:]
    assert sum(line.lstrip().startswith(("new ", "cleared ")) for line in section if "more" not in line) == 5
    left = len(found.changes.new) - 5
    assert f"and {left} more new, {len(found.changes.cleared)} more cleared" in " ".join(page.split())
