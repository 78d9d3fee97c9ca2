"""What several checks wait for is found once: by the file that could not be read, by the name that no list holds."""

from __future__ import annotations

from speclint.checking import Assessment, Waiting, names_not_listed, waiting_for_files
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.tubes import FILES

DUTY = 'kind = "duty"\n[cases.running]\nlive_temperature = "390 °C"\n[cases.running.temperatures]\npin = "60 °C"\n'
PIN = 'kind = "pin"\nduty = "duty"\nmaterial = "{}"\n'
OWN = """
[sources]
CERT = {{ work = "founder's certificate 1207", edition = "2026" }}
["own-steel"]
title = "works steel"
family = "carbon-steel"
standard = "works specification 13"
like = "plate-P355GH"
{} = {{ value = 7850, unit = "kg/m³", tolerance = 50, source = "CERT" }}
"""


def told(found: tuple[Waiting, ...]) -> list[tuple[str, str, int, int]]:
    return [(str(one.where), one.complaint.read, one.parts, len(one.checks)) for one in found]


def waiting_rules(one: Waiting) -> set[tuple[str, str]]:
    return {check.order for check in one.checks}


def pins(workshop: DesignFolder, name: str, *others: str) -> Assessment:
    parts = {"duty.toml": DUTY, "pin.toml": PIN.format(name)}
    return workshop.write(parts | {f"{one}.toml": PIN.format(name) for one in others}).assess()


def test_the_checks_of_every_part_wait_for_the_one_duty_that_could_not_be_read(
    workshop: DesignFolder,
) -> None:
    workshop.loaded = tubes.tubes()
    twin = FILES["tube.toml"].replace('id = "tube"', 'id = "twin"')
    found = workshop.write({**FILES, "twin.toml": twin}).replace("duty.toml", "12 bar gauge", "12 bar")
    (one,) = waiting_for_files(found.assess())
    assert (one.where.file, one.parts) == ("duty.toml", 2)
    assert waiting_rules(one) == {("tube", "tube.case-stress"), ("twin", "tube.case-stress")}
    workshop.replace("duty.toml", '"12 bar"', '"12 bar gauge"')
    assert waiting_for_files(workshop.assess()) == ()


def test_the_checks_that_follow_a_link_wait_for_the_file_it_leads_to_or_else_for_its_own(
    workshop: DesignFolder,
) -> None:
    """Rack: read with a fault first; then there is no spec of that id, and the link is what is to be put right."""
    workshop.loaded = tubes.tubes()
    workshop.write(FILES).replace("rack.toml", "106 mm", "106 kg")
    (one,) = waiting_for_files(workshop.assess())
    assert (one.where.file, ("tube", "tube.loose-hot") in waiting_rules(one)) == ("rack.toml", True)
    workshop.replace("rack.toml", "106 kg", "106 mm").replace("tube.toml", '"rack"', '"rock"')
    (one,) = waiting_for_files(workshop.assess())
    assert (one.where.file, ("tube", "tube.loose-hot") in waiting_rules(one)) == ("tube.toml", True)


def test_an_own_material_of_a_file_that_could_not_be_read_is_no_name_that_is_not_known(
    workshop: DesignFolder,
) -> None:
    settings = 'materials = ["own.toml"]\n' + SETTINGS
    workshop.write({"duty.toml": DUTY, "pin.toml": PIN.format("own-steel"), "own.toml": OWN.format("densty")})
    found = workshop.write({}, settings=settings).assess()
    (one,) = waiting_for_files(found)
    assert str(one.where) == "own.toml:9 own-steel.densty"
    assert ("pin", "material.temperature") in waiting_rules(one)
    assert names_not_listed(found) == ()
    assert (
        names_not_listed(workshop.write({"own.toml": OWN.format("density")}, settings=settings).assess())
        == ()
    )


def test_a_name_that_no_list_holds_is_told_once_for_each_place_with_the_nearest(
    workshop: DesignFolder,
) -> None:
    """By hand: P355GH is plate-P355GH but for the last letter of the name that is stated."""
    found = pins(workshop, "plate-P355GJ", "other")
    places = [one for one, *_ in told(names_not_listed(found))]
    assert places == ["other.toml:3 material", "pin.toml:3 material"]
    one = names_not_listed(found)[1]
    assert one.complaint.read == '"plate-P355GJ"'
    assert one.complaint.write.startswith('"plate-P355GH"')
    assert ("pin", "material.temperature") in waiting_rules(one)
    assert one.parts == 1
    assert names_not_listed(pins(workshop, "plate-P355GH", "other")) == ()


def test_a_name_beside_one_that_is_not_known_is_not_told(workshop: DesignFolder) -> None:
    """What is said of the one names the other as near: the other is in the list."""
    parts = {
        "duty.toml": DUTY,
        "pin.toml": PIN.format("plate-P355GJ") + 'bearing_material = "plate-P355GH"\n',
    }
    found = workshop.write(parts).assess()
    assert [str(one.where) for one in names_not_listed(found)] == ["pin.toml:3 material"]


def test_a_thread_that_is_not_known_is_told_where_it_stands(workshop: DesignFolder) -> None:
    joint = (
        'kind = "bolted-joint"\nmaterial = "bolting-42CrMo4"\nthread = "N24"\ncount = 12\nholds = "cover"\n'
    )
    cover = 'kind = "cylinder-cover"\n'
    found = workshop.write({"studs.toml": joint, "cover.toml": cover}).assess()
    (one,) = names_not_listed(found)
    assert (str(one.where), one.complaint.read) == ("studs.toml:3 thread", '"N24"')
