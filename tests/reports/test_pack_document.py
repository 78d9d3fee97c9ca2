"""What the document of a design review says: title page, sums, holds with their boxes, actions, signatures, index."""

from __future__ import annotations

import datetime as dt
import html
import re
from pathlib import Path

import pytest

from speclint.errors import replace
from speclint.reports.pack import review_page
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.asked_for import Row, asked_for
from speclint.reports.pack.document import Document, document
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.templating import file_text
from speclint.reports.pack.title_page import Drawing, files_read, title_page
from speclint.reports.phrases import NO_CODES
from speclint.repository import WorkTree
from speclint.testing import DesignFolder
from tests import tubes
from tests.register.office import FILES, SETTINGS, Office

NAMED = SETTINGS.replace('stage = "for-review"', 'name = "Tube works"\nstage = "for-review"')


def worse(name: str, pressure: str, drawing: str = "") -> str:
    """A tube at a pressure; at 45 bar it uses 113.1 MPa of 100 MPa, and the stress rises with the pressure."""
    stated = f'drawing = "{drawing}"\nrevision = "C"\nchecked_by = "M. Coyle"\n' if drawing else ""
    return FILES["tube.toml"].replace("45 bar", pressure) + f'id = "{name}"\n{stated}'


@pytest.fixture
def shop(workshop: DesignFolder) -> DesignFolder:
    workshop.loaded = tubes.tubes()
    files = {
        **FILES,
        "tube.toml": worse("tube-a", "45 bar", "T-1"),
        "tube-b.toml": worse("tube-b", "60 bar", "T-1"),
        "tube-c.toml": worse("tube-c", "50 bar").replace("hoops = 4", "hoops = 3"),
        "tube-d.toml": worse("tube-d", "30 bar").replace('bore = "100 mm ±0.5"\n', ""),
    }
    return workshop.write(files, settings=NAMED)


def words(page: str) -> str:
    """The text of a page without its marks."""
    return " ".join(
        html.unescape(re.sub(r"<(style|script).*?</\1>|<[^>]+>", " ", page, flags=re.DOTALL)).split()
    )


def section(page: str, name: str) -> str:
    start = page.index(f"<h2 id={name}>")
    return page[start : page.find("</section>\n\n<section", start)]


def test_the_title_page_states_what_is_reviewed(shop: DesignFolder) -> None:
    found = title_page(shop.assess(), WorkTree("0123456789abcdef", ()), dt.date(2026, 3, 5))
    assert found.works == "Tube works"
    facts = dict(found.facts)
    assert facts["date of the check"] == "5 March 2026"
    assert facts["revision"] == "git 0123456789ab; every file of the design is as committed"
    assert facts["stage"] == "for-review"
    assert [names for _, names in found.families] == [(f"tubes ({len(tubes.RULES)} rules)",)]
    assert found.drawings == (Drawing("T-1", "C", ("tube",), ("tube-a", "tube-b"), "A. Render", "M. Coyle"),)
    assert set(found.unnumbered) == {"duty", "rack", "tube-c", "tube-d"}


@pytest.mark.parametrize(
    ("revision", "said"),
    [
        (None, "not under git, or git is not there: no revision can be named"),
        (WorkTree("", ("a.toml",)), "nothing is committed yet; 1 file in the folder"),
        (WorkTree("ab" * 20, ("a", "b")), "git abababababab, but 2 files differ from it: a, b"),
    ],
)
def test_a_revision_that_is_not_clean_is_told_on_the_page(
    shop: DesignFolder, revision: WorkTree | None, said: str
) -> None:
    page = review_page(shop.assess(), revision=revision)
    assert f"revision {said}" in words(page[: page.index("<main>")])


def test_a_check_rests_on_settings_register_signers_and_specs(shop: DesignFolder) -> None:
    assert files_read(shop.assess()) == {
        "speclint.toml",
        "register.toml",
        "allowed_signers",
        "duty.toml",
        "rack.toml",
        *("tube.toml", "tube-b.toml", "tube-c.toml", "tube-d.toml"),
    }


def test_a_check_rests_on_the_files_of_drawings_and_nothing_rests_on_settings_that_are_not_read(
    workshop: DesignFolder,
) -> None:
    workshop.loaded = tubes.tubes()
    drawn = {**FILES, "tube.toml": FILES["tube.toml"] + 'drawing_file = "tube.svg"\n', "tube.svg": "<svg/>"}
    workshop.write(drawn, settings="")
    found = files_read(workshop.assess())
    assert {"tube.svg", "tube.toml"} <= found
    assert files_read(replace(workshop.assess(), settings=None, design=None)) == {"speclint.toml"}


def test_the_sheets_of_a_part_stand_by_gravity_and_then_by_what_is_used(workshop: DesignFolder) -> None:
    """By hand at 45 bar: a hold; closed ends a query, three hoops an observation; loose 0.519 of the gap, and 0.302
    of the stress when starting, both in order."""
    workshop.loaded = tubes.tubes()
    text = FILES["tube.toml"].replace('"open"', '"closed"').replace("hoops = 4", "hoops = 3")
    found = workshop.write({**FILES, "tube.toml": text}, settings="").assess()
    page = review_page(found)
    at = {one.rule.name: page.index(f'id="{sheet_anchor(one)}"') for one in found.checks}
    assert sorted(at, key=lambda name: at[name]) == [
        "tube.stress",
        "tube.ends",
        "tube.hoops",
        "tube.loose-hot",
        "tube.case-stress",
    ]


def test_holds_stand_by_gravity_each_with_its_drawing_its_sheet_and_a_box(shop: DesignFolder) -> None:
    """Of 60, 50 and 45 bar; the tube at 30 bar has no bore, so that its safety check could not be made."""
    page = review_page(shop.assess())
    holds = section(page, "holds").split("<section class=decide")[1:]
    assert [words("<p " + one)[:9] for one in holds] == ["H1 tube-b", "H2 tube-c", "H3 tube-a"]
    for label, one in zip(("H1", "H2", "H3"), holds, strict=True):
        name = words("<p " + one).split()[1]
        assert f'href="#finding.{name}.tube.stress"' in one
        assert f'href="#sheet.{name}.tube.stress"' in one
        assert ("drawing T-1 rev. C" in one) == (name != "tube-c")
        for what in ("accepted", "to be changed", "by whom", "by when"):
            assert f"<th scope=col>{what}" in one
            assert f'aria-label="{label}: {what}"' in one
    assert (
        page.index("id=holds")
        < page.index("id=coverage")
        < page.index("id=findings")
        < page.index("id=sheets")
    )


def test_nothing_is_decided_in_a_box(shop: DesignFolder) -> None:
    page = review_page(shop.assess())
    assert "checked>" not in page
    assert (
        len(re.findall(r"<span class=fill contenteditable=plaintext-only role=textbox [^>]*></span>", page))
        > 6
    )


def test_the_sum_of_the_verdict_adds_up(shop: DesignFolder) -> None:
    found = document(shop.assess())
    assert found.sums.terms == ((3, "holds not conceded"), (1, "safety check not assessed"))
    told = section(review_page(shop.assess()), "verdict")
    assert "<td>4<th scope=row>reasons to withhold release" in told
    assert found.numbers[0] == "6 specs in 6 files."
    assert found.numbers[1] == "At least one rule applies to 4 of them, none to the other 2: duty, rack."
    checks = re.match(r"(\d+) checks, each of one rule on one spec: (.*)\.", found.numbers[2])
    assert checks
    assert sum(map(int, re.findall(r"\d+", checks[2]))) == int(checks[1]) == len(shop.assess().checks)


def test_specs_that_were_not_asked_for_are_counted(shop: DesignFolder) -> None:
    one = shop.assess("tube.toml")
    assert document(one).numbers[0] == "1 spec in 1 file; 5 other specs of the repository were not asked for."


def test_actions_say_what_is_wanting_and_what_is_to_be_decided(shop: DesignFolder) -> None:
    actions = {one.says: one.because for one in document(shop.assess()).actions}
    wanting = next(says for says in actions if says.startswith("give what is wanting: "))
    assert "bore" in wanting
    assert "tube.stress on tube-d" in actions[wanting]
    assert actions[wanting].endswith("a safety check, which counts as a hold")
    decide = "decide each hold in the boxes of section 2"
    assert actions[decide] == "H1 to H3: 3 holds without a valid concession"
    assert next(iter(actions)) == wanting


def test_a_conceded_hold_is_no_action_and_its_concession_is_told(tmp_path: Path) -> None:
    office = Office(DesignFolder(tmp_path, tubes.tubes()).write(FILES, settings=SETTINGS))
    before = document(office.shop.assess())
    assert any(one.says.startswith("decide each hold") for one in before.actions)
    office.concede()
    after = document(office.shop.assess())
    assert after.holds
    assert not any(one.says.startswith("decide each hold") for one in after.actions)
    office.shop.replace("tube.toml", "45 bar", "46 bar")
    lapsed = document(office.shop.assess())
    renew = [one for one in lapsed.actions if one.says == "renew or withdraw concession C-001"]
    assert "lapsed" in renew[0].because


def test_those_sign_whom_the_settings_name(shop: DesignFolder) -> None:
    found = document(shop.assess())
    assert [(one.name, one.role, one.holds) for one in found.signed] == [
        ("M. Coyle", "chief draughtsman", ("H1", "H2", "H3")),
        ("B. Thorne", "boiler inspector", ()),
        ("A. Render", "designer", ("H1", "H2", "H3")),
    ]
    assert found.nobody_for == ()
    shop.write({}, settings=NAMED.replace('["tubes"]', '["boilers"]'))
    assert document(shop.assess()).nobody_for == (("tubes", "H1, H2, H3"),)
    shop.write({}, settings="[works]\n")
    told = section(review_page(shop.assess()), "signatures")
    assert "speclint.toml names no reviewer, and only a reviewer can accept a hold." in told


def test_the_index_has_what_specs_ask_for_with_parts_alike_together(shop: DesignFolder) -> None:
    asked = (
        'inspection_document = "3.1"\nexamination = "dye penetrant"\n[inspection_points]\nlift_in = "hold"\n'
    )
    welded = '[welding]\nwelded = true\npreheat = "100 °C"\n'
    for name in ("a", "b"):
        file = "tube.toml" if name == "a" else f"tube-{name}.toml"
        shop.write({file: worse(f"tube-{name}", "45 bar") + 'test_pressure = "60 bar gauge"\n' + asked})
    shop.write({"tube-c.toml": worse("tube-c", "45 bar") + welded})
    found = asked_for(shop.assess())
    alike = ("tube-a", "tube-b")
    assert found.certificates == (Row(alike, ("3.1", "", "dye penetrant", "")),)
    assert found.welds == (Row(("tube-c",), ("welded", "", "", "", "preheat 100 °C")),)
    assert found.tests == (Row(alike, ("60 bar gauge", "", "lift in: hold")),)


def test_what_is_asked_of_every_part_of_a_kind_is_told_by_the_kind(shop: DesignFolder) -> None:
    for file, name in (("tube.toml", "a"), ("tube-b.toml", "b"), ("tube-c.toml", "c"), ("tube-d.toml", "d")):
        shop.write({file: worse(f"tube-{name}", "45 bar") + 'inspection_document = "3.1"\n'})
    assert asked_for(shop.assess()).certificates == (Row(("each tube (4)",), ("3.1", "", "", "")),)


def test_a_figure_of_no_checked_component_is_shown_all_the_same(shop: DesignFolder) -> None:
    from speclint.reports.pack.drawn_once import ShownFigure
    from speclint.reports.pack.figures import Figure
    from speclint.reports.pack.parts import figures_by_name, figures_of_all, with_figures

    own = ShownFigure(Figure("one", "rack", "the rack", "", "<svg/>"), ("tube-a",))
    whole = ShownFigure(Figure("all", "", "everything", "", "<svg/>"))
    parts = with_figures(document(shop.assess()).parts, [whole, own])
    rack = next(part for part in parts if part.name == "rack")
    assert [(one.number, one.shown) for one in rack.figures] == [(1, own)]
    assert rack.held, "it shows the tube on which a hold is, too"
    assert [one.number for one in figures_of_all(parts, [whole, own])] == [2]
    assert figures_by_name(parts)["tube-a"] == rack.figures


def test_the_name_of_the_works_stays_a_text_in_the_head_of_each_page(shop: DesignFolder) -> None:
    shop.write({}, settings=NAMED.replace("Tube works", "}</style>\\\\22 *{display:none}"))
    page = review_page(shop.assess())
    style = page[page.index("<style>") : page.index("</style>")]
    head = re.search(r'@top-left \{ content: "([^"]*)" \', design review\'; \}', style)
    assert head
    assert re.sub(r"\\([0-9a-f]+) ", lambda found: chr(int(found[1], 16)), head[1]) == (
        "}</style>\\22 *{display:none}"
    )


def test_the_page_has_rules_and_headings_and_no_cards_or_badges() -> None:
    """No box with a ground, a rounded corner, a shadow or a coloured edge, but for what is drawn or filled in."""
    rules = re.findall(r"([^{}]+)\{([^{}]*)\}", file_text("style.css"))
    own = [(names.strip(), says) for names, says in rules if ".drawing" not in names]
    assert len(own) > 50
    for names, says in own:
        assert "box-shadow" not in says, names
        assert not re.search(r"border-radius: (?!0)", says), names
        if re.search(r"border(-left)?: [^;]*var\(--(hold|bad|ask|good|line)", says):
            assert names == ".share::after", names
        if "background" in says:
            assert names in ("body", ".filters", "input, select, button") or ".skip" in names, names


def test_a_finding_of_no_number_stands_after_those_with_numbers(shop: DesignFolder) -> None:
    """Three holds of one design with what they use: 1.5, none, 1.2."""
    from speclint.checking import Alike
    from speclint.reports.pack.finding_labels import labels_of

    holds = [
        one for one in shop.assess().checks if one.outcome == "finding" and one.rule.name == "tube.stress"
    ]
    bare = replace(holds[0], component="aaa", judgement=None)
    labels = labels_of([Alike((one,)) for one in (bare, *holds)])
    assert labels["aaa", "tube.stress"] == "H4"


# The document as data


def gathered(shop: DesignFolder, *files: str, **more: str) -> Document:
    """With further tubes, each one of the tubes with some text changed."""
    shop.write({f"{name}.toml": text for name, text in more.items()})
    return document(shop.assess(*files))


NO_BORE = worse("tube-d", "30 bar").replace('bore = "100 mm ±0.5"\n', "")


def test_sheets_are_told_by_their_outcome_and_findings_by_their_grade(shop: DesignFolder) -> None:
    """Three hoops of tube-c are an observation, three tubes burst; the rest conforms but for what lacks a bore."""
    found = document(shop.assess())
    said = [(one.check.component, one.check.rule.name) for one in found.sheets("not assessed")]
    assert said == [("tube-d", "tube.stress"), ("tube-d", "tube.case-stress")]
    assert {one.check.outcome for one in found.sheets()} == {"finding", "conforms", "not assessed"}
    assert len(found.sheets("finding", "conforms")) == len(found.sheets()) - 2
    assert [one.label for one in found.holds] == ["H1", "H2", "H3"]
    assert [one.check.component for one in found.findings("observation")] == ["tube-c"]
    assert not found.findings("query")


def test_checks_that_wait_stand_with_those_of_safety_first(shop: DesignFolder) -> None:
    """Without its outside a tube cannot be shown loose, nor its stress be worked."""
    no_outside = worse("tube-e", "30 bar").replace('outside = "105 mm ±0.5"\n', "")
    found = gathered(shop, **{"tube-e": no_outside})
    assert [(one.check.component, one.check.rule.name) for one in found.waiting] == [
        ("tube-d", "tube.stress"),
        ("tube-e", "tube.loose-hot"),
        ("tube-e", "tube.stress"),
        ("tube-d", "tube.case-stress"),
        ("tube-e", "tube.case-stress"),
    ]


def test_of_findings_on_parts_alike_the_first_has_the_sheet(shop: DesignFolder) -> None:
    """What could not be made is looked at by itself; a part of which all is told elsewhere is told there."""
    found = gathered(
        shop,
        **{
            "tube-f": worse("tube-f", "45 bar"),
            "tube-g": NO_BORE.replace("tube-d", "tube-g"),
            "tube-h": worse("tube-h", "45 bar"),
        },
    )
    stressed = [one for one in found.holds if one.check.component in ("tube-a", "tube-f", "tube-h")]
    assert [one.alike.checks[1:] != () for one in stressed] == [True]
    assert {one.check.component for one in found.waiting} == {"tube-d", "tube-g"}
    assert [part.name for part in found.told_alike] == ["tube-f", "tube-h"]


def test_the_drawing_of_a_component_is_told_with_its_revision(shop: DesignFolder) -> None:
    found = document(shop.assess())
    assert found.drawing_of("tube-b") == "drawing T-1 rev. C"
    assert found.drawing_of("tube-c") == found.drawing_of("nobody") == ""


def test_the_files_are_those_of_parts_and_a_figure_alone_has_none(shop: DesignFolder) -> None:
    """Given figures stand in place of those that the families would draw."""
    figures = [Figure("one", "ghost", "the ghost", "", "<svg/>"), Figure("all", "", "all", "", "<svg/>")]
    stages: list[str] = []
    found = document(shop.assess(), on_progress=stages.append, drawing=lambda: figures)
    assert found.paths == ("tube-b.toml", "tube-c.toml", "tube-d.toml", "tube.toml")
    assert [part.name for part in found.parts] == ["ghost", "tube-a", "tube-b", "tube-c", "tube-d"]
    assert [one.shown.figure.name for one in found.figures] == ["all"]
    assert list(found.shown_in) == ["ghost"]
    assert stages == [*(f"sheets of tube-{name}" for name in "abcd"), "drawing"]
    assert not document(shop.assess()).figures


def test_the_codes_are_those_of_the_settings(shop: DesignFolder) -> None:
    assert document(shop.assess()).codes == (NO_CODES,)
    shop.write({}, settings=NAMED + '[local_codes]\npressure = ["code P"]\nrailway = ["code R"]\n')
    assert document(shop.assess()).codes == ("code P", "code R")
    assert document(replace(shop.assess(), settings=None)).codes == (NO_CODES,)


def test_the_rules_that_were_applied_are_told_with_their_editions(shop: DesignFolder) -> None:
    names = ("tube.case-stress", "tube.ends", "tube.hoops", "tube.loose-hot", "tube.stress")
    found = document(shop.assess())
    assert found.rules == (("tubes", ", ".join(f"{name} 1" for name in names)),)
    assert found.families == ["tubes"]
    assert found.changed is None
