"""How much of each limit is used and by which values: by hand, on a tube."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import jsonschema
import pytest

from speclint.checking import Margins, margins
from speclint.commands import main
from speclint.errors import DesignError
from speclint.families import loading
from speclint.reports import hooks, margins_csv, margins_data, margins_schema
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    """A design of one tube, in the current folder, and the family of tubes alone."""
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    monkeypatch.chdir(tmp_path)
    return DesignFolder(tmp_path, loading.load_families(built_in=hooks)).write(FILES)


def of(shop: DesignFolder, component: str = "tube", most: int = 100) -> Margins:
    return margins(shop.assess(), component, most)


def test_a_value_carries_what_the_use_differs_between_its_limits(shop: DesignFolder) -> None:
    """By hand at 30 bar, σ = 3 d/(D − d) MPa of 100 MPa, at worst d = 100.5 and D = 104.5 mm: 0.75375 is used.

    With d = 99.5: 3 × 99.5/5 = 59.7 MPa, so that the bore carries 0.15675; with D = 105.5: 3 × 100.5/5 = 60.3 MPa, so
    that the outside carries 0.15075. The pressure states no limits.
    """
    stress = next(one for one in of(shop).listed if one.check.rule.name == "tube.stress")
    assert stress.used == pytest.approx(0.75375)
    assert stress.values is not None
    carried = {one.where.key: one.carried for one in stress.values}
    assert carried == {
        "bore": pytest.approx(0.15675),
        "outside": pytest.approx(0.15075),
        "pressure": 0.0,
    }
    assert [one.where.key for one in stress.values] == ["bore", "outside", "pressure"]
    assert stress.values[2].why_not == "it states no limits"


def test_the_least_to_spare_comes_first(shop: DesignFolder) -> None:
    used = [one.used for one in of(shop).listed]
    assert len(used) > 1
    assert used == sorted(used, reverse=True)


def test_the_temperature_that_matters_most_is_told(shop: DesignFolder) -> None:
    """Of the hot gap: α D (T − T₀) rises with the temperature of the tube, and with it what is used of the cold gap."""
    shop.replace("tube.toml", tubes_temperature(shop), 'temperature = "250..300 °C"')
    found = of(shop).hottest
    assert found is not None
    margin, value = found
    assert margin.check.rule.name == "tube.loose-hot"
    assert (value.where.key, value.written) == ("temperature", "250..300 °C")
    assert value.hotter is not None
    assert value.hotter > 0
    assert value.carried == pytest.approx(value.hotter * 5, rel=0.01)  # 50 K, and each 10 K alike


def test_a_temperature_without_limits_carries_nothing_and_is_not_told(shop: DesignFolder) -> None:
    """All that is hot is stated exactly: 10 K more would matter, but none of a limit goes to a temperature."""
    shop.replace("tube.toml", tubes_temperature(shop), 'temperature = "210 °C"')
    found = of(shop)
    taken = [value for one in found.listed for value in one.values or () if value.temperature]
    assert [value.carried for value in taken] == [0.0]
    assert found.hottest is None


def tubes_temperature(shop: DesignFolder) -> str:
    """The line of the tube's temperature."""
    text = (shop.root / "tube.toml").read_text(encoding="utf-8")
    return next(line for line in text.splitlines() if line.startswith("temperature"))


def test_only_the_first_are_varied(shop: DesignFolder) -> None:
    found = of(shop, "", 1)
    assert found.varied == 1
    assert [one.values is None for one in found.listed] == [False, *[True] * (len(found.listed) - 1)]


def test_the_margins_of_one_component_are_its_own(shop: DesignFolder) -> None:
    """Another tube, of a bore of its own, so that no margin of it is alike: it is told only where all are asked for."""
    tube = (shop.root / "tube.toml").read_text(encoding="utf-8")
    shop.write({"other.toml": tube.replace("100 mm ±0.5", "99 mm ±0.5")})
    assert {one.check.component for one in of(shop, "other", 0).listed} == {"other"}
    assert {one.check.component for one in of(shop, "", 0).listed} == {"tube", "other"}


def test_parts_alike_are_listed_once(shop: DesignFolder) -> None:
    shop.replace("tube.toml", 'kind = "tube"', 'kind = "tube"\nid = "tube-{each}"\neach = ["left", "right"]')
    found = of(shop, "", 0)
    stress = [one for one in found.listed if one.check.rule.name == "tube.stress"]
    assert [(one.check.component, one.alike) for one in stress] == [("tube-left", ("tube-right",))]


def test_a_component_that_is_not_there_is_answered_by_the_nearest(shop: DesignFolder) -> None:
    with pytest.raises(DesignError, match='no component is called tubee; write "tube"'):
        of(shop, "tubee")


def test_margins_of_settings_that_cannot_be_read_are_refused(shop: DesignFolder) -> None:
    shop.write({}, settings="[works")
    with pytest.raises(DesignError, match=r"^nothing could be read to tell margins from$"):
        of(shop)


def test_the_data_follow_the_published_schema(shop: DesignFolder) -> None:
    assessment = shop.assess()
    schema = json.loads(margins_schema())
    jsonschema.Draft202012Validator.check_schema(schema)
    for component, most in (("tube", 100), ("", 1)):
        data = json.loads(json.dumps(margins_data(assessment, margins(assessment, component, most))))
        jsonschema.validate(data, schema, jsonschema.Draft202012Validator)
    data["margins"][0]["used"] = "much"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(data, schema, jsonschema.Draft202012Validator)


def test_the_table_has_a_row_for_each_value(shop: DesignFolder) -> None:
    found = of(shop)
    rows = list(csv.DictReader(io.StringIO(margins_csv(found), newline="")))
    stress = [row for row in rows if row["rule"] == "tube.stress"]
    assert [(row["key"], row["carried"]) for row in stress] == [
        ("bore", "0.15675"),
        ("outside", "0.15075"),
        ("pressure", "0"),
    ]
    assert len({len(row) for row in rows}) == 1


def test_a_spec_that_cannot_be_read_is_exit_2_and_the_others_are_printed(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.write({"other.toml": 'kind = "tube"\nboer = "100 mm"\n'})
    assert main(["margins", "--in", str(shop.root)]) == 2
    assert "tube tube.stress" in " ".join(capsys.readouterr().out.split())


def test_the_command_prints_them_and_says_what_was_not_varied(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["margins", "--in", str(shop.root), "--vary", "1"]) == 0
    page = " ".join(capsys.readouterr().out.split())
    assert "0.75 tube tube.stress" in page
    assert "The values of the first 1 check were varied" in page
    assert main(["margins", "tubee"]) == 2
    assert main(["margins", "--vary", "-1"]) == 2
    assert "--vary is a number of checks from 0 to 100000, not -1" in capsys.readouterr().err
    assert main(["margins", "--schema"]) == 0
    assert json.loads(capsys.readouterr().out)["$id"] == "speclint.margins/1"
