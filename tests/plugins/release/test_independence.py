"""release.independent-body and made.independent-body: who certifies a pressure part neither designed nor made it."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.release.part import files, settings

BODY, MAKER = "release.independent-body", "made.independent-body"
OLD = 'competent_body = "the inspecting engineer"'
CHECKED = 'checked_by = "M. Coyle"'
SOUND = "neither prepared nor checked it"


@pytest.mark.parametrize(
    ("body", "checker", "says"),
    [
        ("the inspecting engineer", "M. Coyle", SOUND),
        ("A. Renderson", "M. Coyle", SOUND),  # another name that begins alike
        ("A. M. Board", "M. Coyle", SOUND),  # initials alone are no name
        ("A. Render", "M. Coyle", "prepared by A. Render, and the competent body is A. Render"),
        ("Render, Anne", "M. Coyle", "prepared by A. Render, and the competent body is Render, Anne"),
        ("Mary Coyle, inspector", "M. Coyle", "checked by M. Coyle, and the competent body is Mary Coyle"),
        (
            "M. Coyle, inspector",
            "Dr. Mary Coyle",
            "checked by Dr. Mary Coyle, and the competent body is M. Coyle",
        ),
        (
            "J. Bates and M. Coyle",
            "Dr. Mary Coyle",
            "checked by Dr. Mary Coyle, and the competent body is J. Bates and M. Coyle",
        ),
        (
            "J. Bates and Mary Coyle",
            "MaryCoyle",
            "checked by MaryCoyle, and the competent body is J. Bates and Mary Coyle",
        ),
        ("P. Coyle, inspector", "M. Coyle", SOUND),  # another of the same surname
        (
            "Mary J. Coyle, inspector",
            "M. Coyle",
            "checked by M. Coyle, and the competent body is Mary J. Coyle",
        ),
        ("the drawing office", "M. Coyle", "a role in the works names nobody outside of it"),
        ("ourselves", "M. Coyle", "a role in the works names nobody outside of it"),
        ("B. Thorne", "M. Coyle and B. Thorne", "checked by B. Thorne, and the competent body is B. Thorne"),
    ],
)
def test_the_body_is_nobody_who_prepared_or_checked(
    workshop: DesignFolder, body: str, checker: str, says: str
) -> None:
    changes = (OLD, f'competent_body = "{body}"'), (CHECKED, f'checked_by = "{checker}"')
    check = workshop.write(files(*changes), settings=settings()).only(BODY, "cover")
    found = says != SOUND
    assert (check.outcome, check.grade) == (("finding", Grade.HOLD) if found else ("conforms", None))
    assert says in check.says
    assert not found or check.where.key == "competent_body"


@pytest.mark.parametrize(
    ("body", "maker", "outcome"),
    [
        ("Ness Works, inspection department", "The Ness Works Ltd", "finding"),
        ("Ness Works, inspection department", "Corrow Works Ltd", "conforms"),
        ("Corrow and Ness", "Ness Works Ltd", "conforms"),  # one word of the two
        ("N.P.W., inspection department", "Ness Pipe Works Ltd", "finding"),
        ("Harl Group Inspection", "Corrow Works, of the Harl Group", "finding"),
        ("Harl Boiler Insurance", "Corrow Works, Harl", "conforms"),  # of the same town
        ("the maker's own surveyor", "Ness Works Ltd", "finding"),
        ("B. Thorne, surveyor", "Ness Works Ltd", "conforms"),
        ("Ness Works, inspection department", "", "not applicable"),  # made.identified asks for the maker
        ("", "Ness Works Ltd", "not applicable"),  # release.pressure-part asks for the body
    ],
)
def test_the_body_is_not_the_works_that_made_it(
    workshop: DesignFolder, body: str, maker: str, outcome: str
) -> None:
    made = 'kind = "made-part"\nid = "cover-7"\nof = "cover"\n' + (f'maker = "{maker}"\n' if maker else "")
    given = files((OLD, f'competent_body = "{body}"' if body else "")) | {"made.toml": made}
    check = workshop.write(given, settings=settings()).only(MAKER, "cover-7")
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)
    assert outcome != "finding" or f"made by {maker}, and the competent body is {body}" in check.says


@pytest.mark.parametrize("stage", ["draft", "released"])
def test_works_that_certify_themselves_are_told_at_every_stage(workshop: DesignFolder, stage: str) -> None:
    made = 'kind = "made-part"\nid = "cover-7"\nof = "cover"\nmaker = "Ness Works"\n'
    given = files((OLD, 'competent_body = "Ness Works"')) | {"made.toml": made}
    assert workshop.write(given, settings=settings(stage)).only(MAKER, "cover-7").outcome == "finding"


def test_a_checker_who_is_not_stated_is_not_read(workshop: DesignFolder) -> None:
    check = workshop.write(files((CHECKED, "")), settings=settings()).only(BODY, "cover")
    assert check.outcome == "conforms"


def test_the_body_of_the_vessel_is_that_of_its_parts(workshop: DesignFolder) -> None:
    """The studs state none: that of the cover which they hold is theirs, and their preparer is another."""
    studs = 'kind = "bolted-joint"\nid = "studs"\nholds = "cover"\npressure_part = true\nprepared_by = "{}"\n'
    for preparer, outcome in (("A. Render", "conforms"), ("E. Wright", "finding")):
        given = files((OLD, 'competent_body = "E. Wright"')) | {"studs.toml": studs.format(preparer)}
        check = workshop.write(given, settings=settings()).only(BODY, "studs")
        assert check.outcome == outcome


@pytest.mark.parametrize(
    ("change", "component", "stage", "why"),
    [
        (("", ""), "cover", "draft", "the design is a draft"),
        (("", ""), "ring", "for-review", "it holds no pressure"),
        ((OLD, ""), "cover", "for-review", "it names no competent body"),
    ],
)
def test_it_applies_from_the_review_on_to_pressure_parts_with_a_body(
    workshop: DesignFolder, change: tuple[str, str], component: str, stage: str, why: str
) -> None:
    given = files(*([change] if change[0] else []))
    check = workshop.write(given, settings=settings(stage)).only(BODY, component)
    assert check.outcome == "not applicable"
    assert why in check.says
