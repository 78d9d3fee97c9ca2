"""A check with several comparisons that fail: every report that shows its working lists them, and what is missing."""

from __future__ import annotations

import html

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.reports import sheet_markdown, sheet_page, terminal_page
from speclint.reports.json_report import document
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES, RACK, Rack

SLOTS = '[slots.a]\nwidth = "3 mm"\n[slots.b]\nwidth = "4 mm"\n[slots.c]\n[slots.d]\nwidth = "6 mm"\n'


@rule(
    "rack.slots",
    title="every slot is wide enough",
    on=Rack,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES],
    why="w",
    leaves_out="l",
)
def slots(rack: Rack, sheet: Sheet) -> Judgement:
    """Each slot against a width on the sheet."""
    least = sheet.take("w_0", rack.slots["d"].width)
    return sheet.each(rack.slots.items(), lambda item: sheet.at_least(sheet.take("w", item[1].width), least))


def test_all_that_fails_is_listed(workshop: DesignFolder) -> None:
    """Slots of 3 and 4 mm against 6 mm; one is not stated."""
    workshop.loaded = tubes.tubes(slots)
    assessment = workshop.write({**FILES, "rack.toml": RACK + SLOTS}).assess()
    (check,) = (one for one in assessment.checks if one.rule.name == "rack.slots")
    pages = (
        terminal_page.write(assessment, 200).text(),
        sheet_page.write(assessment, [check], 200).text(),
        html.unescape(sheet_markdown.write(assessment, [check])).replace("\\", ""),
    )
    for said in pages:
        assert "width, slots a 3 mm < 6 mm" in said
        assert "b: width, slots b 4 mm < 6 mm" in said
        assert "slots.c.width is not stated in rack.toml" in said
    data = next(one for one in document(assessment)["checks"] if one["rule"] == "rack.slots")
    assert [(one["of"], one["found"]["value"]) for one in data["failing"]] == [("a", 3.0), ("b", 4.0)]
    assert data["missing"] == ["slots.c.width is not stated in rack.toml"]
    assert data["proofs"] == {"always": "nothing is toleranced"}
