"""What a report of a part as made says of its wear and of what was measured on it in steam."""

from __future__ import annotations

import json

import jsonschema

from speclint.checking import assess
from speclint.made import Judged, PartMade, in_steam, made_parts, made_to
from speclint.reports import made_data, made_page, made_schema
from speclint.testing import DesignFolder, changed
from tests.made.test_wear import WORN, measured
from tests.plugins.liners.bench import bench
from tests.plugins.release.test_steamings import BAND, STEAMED


def test_wear_and_steam_in_words_and_as_data(workshop: DesignFolder) -> None:
    """From 500.00 to 501.00 mm in 1000 days: 0.36525 mm a year, known to 2 × 0.005 √2/1000 × 365.25 = 0.0052 mm; 509 mm
    8000 days after 2022-09-27 is 2044-08-22.
    """
    days = measured("2020-01-01", "500.00", "500.00") + measured("2022-09-27", "501.00", "500.90")
    made = changed(STEAMED, ("VALUE", "250 °C")) + days
    workshop.write({**bench(WORN, BAND), "liner-7.toml": made})
    drawn = assess([workshop.root], workshop.loaded, [])
    assert drawn.design is not None
    [one] = made_parts(drawn.design)
    part = PartMade(one, made_to(one, drawn.design), in_steam=in_steam(one, drawn.design, "guard band of U"))
    judged = Judged((part,), "guard band of U", False)
    said = " ".join(made_page(drawn, judged, 100).text().split())
    assert (
        "in steam, temperatures.liner running: measured 248..252 °C, duty assumes 190..210 °C: outside"
        in said
    )
    assert "wear of bore, to the last: 501 mm on 2022-09-27, limit 509 mm; 0.365" in said
    assert "mm a year, U = 0.005165 mm, from 2 measurements" in said
    assert "by a straight line the limit is met on 2044-08-22, give or take 120 days" in said
    assert part.outcome == "outside its duty"
    data = made_data(drawn, judged)
    jsonschema.validate(data, json.loads(made_schema()), jsonschema.Draft202012Validator)
    assert data["parts"][0]["wear"][0]["met"] == "2044-08-22"
    assert data["parts"][0]["in_steam"][0]["verdict"] == "out"
