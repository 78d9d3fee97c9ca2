"""What rests on a value: nothing that a change of it changes is missing from the list."""

from __future__ import annotations

import pytest

from speclint.checking import Assessment, Consequences, consequences
from speclint.errors import DesignError
from speclint.reports import consequences_data, consequences_page
from speclint.testing import DesignFolder
from tests.plugins.release.part import settings
from tests.plugins.release.test_known_faults import faults
from tests.plugins.valves.test_rockers import rocker_files

#: Values of a valve train, and what each is changed to.
CHANGES = {
    "spring.rate": ('rate = "40 N/mm"', 'rate = "44 N/mm"'),
    "cam.ramp_angle": ('ramp_angle = "20 °"', 'ramp_angle = "19 °"'),
}


def of(shop: DesignFolder, component: str, key: str) -> tuple[Assessment, Consequences]:
    assessment = shop.assess()
    return assessment, consequences(assessment, component, key)


def results(assessment: Assessment) -> dict[tuple[str, str], tuple[object, ...]]:
    return {
        (one.component, one.rule.name): (one.outcome, one.says, one.utilisation, one.fingerprint)
        for one in assessment.checks
    }


@pytest.mark.parametrize("value", CHANGES)
def test_nothing_that_a_change_changes_is_missing(workshop: DesignFolder, value: str) -> None:
    made = rocker_files()
    component, _, key = value.partition(".")
    file = f"{component}.toml"
    assert CHANGES[value][0] in made[file]
    before, found = of(workshop.write(made), component, key)
    made[file] = made[file].replace(*CHANGES[value])
    was, now = results(before), results(workshop.write(made).assess())
    changed = {at for at in was | now if was.get(at) != now.get(at)}
    listed = {(one.component, one.rule.name) for one in found.checks}
    assert changed
    assert changed <= listed
    assert len(listed) < len(was) / 2  # a list of everything would tell nothing


def test_a_line_that_several_parts_read_reaches_them_all(workshop: DesignFolder) -> None:
    other = 'kind = "cylinder-cover"\nid = "other"\ndrawing = "X-103"\nlike = "cover"\n'
    shop = workshop.write({**faults(), "other.toml": other}, settings=settings())
    assessment, found = of(shop, "cover", "test_pressure")
    assert found.read_in == ("cover", "other")
    assert {"cover", "other"} <= set(found.parts)
    assert ("lifting", "fault.proved-by-checks") in {(one.component, one.rule.name) for one in found.checks}
    page = consequences_page(assessment, found, 100).text()
    assert "cover.test_pressure = 28 bar gauge" in page
    assert "The same line is read for other: they change with it." in page
    assert consequences_data(assessment, found)["drawings"] == ["X-101", "X-103"]


def test_a_part_as_a_whole_names_what_is_joined_to_it(workshop: DesignFolder) -> None:
    _, found = of(workshop.write(faults(), settings=settings()), "cover", "")
    assert found.joined == ("duty", "lifting")


@pytest.mark.parametrize("key", ["number", "heat"])
def test_a_certificate_reaches_each_part_that_may_share_its_numbers(workshop: DesignFolder, key: str) -> None:
    """The other part has another number now: what it is changed to may be that of any."""
    made = 'kind = "made-part"\nof = "cover"\n[certificate]\nnumber = "C-{0}"\nheat = "H-{0}"\n'
    parts = {f"made-{one}.toml": made.format(one) for one in (1, 2)}
    _, found = of(workshop.write({**faults(), **parts}, settings=settings()), "made-2", f"certificate.{key}")
    assert ("made-1", "made.certificates-agree") in {(one.component, one.rule.name) for one in found.checks}


def test_a_title_reaches_each_record_that_may_be_called_by_it(workshop: DesignFolder) -> None:
    """A cover is called otherwise: what its title is changed to may be that of any record."""
    record = 'kind = "made-part"\nof = "lifting"\ntitle = "Bush"\n'
    cover = {"other.toml": 'kind = "cylinder-cover"\nid = "other"\ntitle = "Cover"\n'}
    shop = workshop.write({**faults(), **cover, "made.toml": record}, settings=settings())
    _, found = of(shop, "other", "title")
    assert ("made", "made.of-its-spec") in {(one.component, one.rule.name) for one in found.checks}


def test_pieces_that_were_made_already_are_named(workshop: DesignFolder) -> None:
    """One to the cover that is asked about, one to the lifting gear that lifts it, none of the duty."""
    made = {
        f"made-{name}.toml": f'kind = "made-part"\nid = "{name}-7"\nof = "{name}"\nserial = "7"\n'
        for name in ("cover", "lifting")
    }
    made["loose.toml"] = 'kind = "made-part"\nid = "loose-7"\nserial = "7"\n'  # of what is not stated
    shop = workshop.write({**faults(), **made}, settings=settings())
    assessment, found = of(shop, "cover", "test_pressure")
    assert found.made == ("cover-7", "lifting-7")
    assert not {*found.made} & {*found.joined}
    assert (
        "Parts made already that it concerns: cover-7, lifting-7."
        in consequences_page(assessment, found, 100).text()
    )
    assert consequences_data(assessment, found)["made_parts"] == ["cover-7", "lifting-7"]


def test_a_key_that_is_not_there_is_answered_by_the_nearest(workshop: DesignFolder) -> None:
    assessment = workshop.write(faults(), settings=settings()).assess()
    with pytest.raises(DesignError, match=r"cover has no key thicknes; .*thickness"):
        consequences(assessment, "cover", "thicknes")
    with pytest.raises(DesignError, match=r"no spec is called covr; .*cover"):
        consequences(assessment, "covr", "thickness")


def test_what_is_not_stated_rests_too(workshop: DesignFolder) -> None:
    """A value that is left out is asked for by the checks that it would clear."""
    made = faults(cover=(('test_pressure = "28 bar gauge"\n', ""),))
    _, found = of(workshop.write(made, settings=settings()), "cover", "test_pressure")
    assert found.stated == ""
    assert ("cover", "release.pressure-part") in {(one.component, one.rule.name) for one in found.checks}
