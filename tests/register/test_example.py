"""The register of ``example_specs``: entries of every sort.

Where one lapsed because the example or a rule was changed, ``python -m tests.register.enter_example`` makes it anew.
"""

from __future__ import annotations

import datetime as dt

import tomli

from speclint.register import Standing, stand_of
from speclint.testing import installed_families
from tests.register.enter_example import EXAMPLE, REGISTER

#: A day within the years for which the example is meant; its entries are dated long before and after.
A_DAY = dt.date(2027, 1, 4)


def stand(today: dt.date = A_DAY) -> dict[str, Standing]:
    register, found, _ = stand_of(EXAMPLE, installed_families(), today)
    assert register.complaints == ()
    return {one.concession.number: one for one in found}


def test_it_has_entries_of_every_sort() -> None:
    """Sixty days before its end, as the works asks for, one is listed as ending soon."""
    states = {number: one.state for number, one in stand(dt.date(2029, 5, 1)).items()}
    assert states == {
        "C-001": "valid",
        "C-002": "ending soon",
        "C-003": "replaced",
        "C-004": "valid",
        "C-005": "lapsed",
    }


def test_the_lapsed_one_says_which_value_changed_from_what_to_what() -> None:
    assert "studs-front-right circle was 736 mm, is 740 mm" in stand()["C-005"].reasons


def test_one_that_ends_soon_was_valid_and_ends() -> None:
    """Its last day is 30 June 2029, and 1 May is the sixtieth day before it."""
    assert stand(dt.date(2029, 4, 30))["C-002"].state == "valid"
    assert stand(dt.date(2029, 7, 1))["C-002"].state == "expired"


def test_an_accepted_hold_counts_for_a_competent_reviewer_only() -> None:
    hold = stand()["C-001"]
    assert hold.concession.grade == "hold"
    assert hold.found is not None
    assert hold.holds
    settings = tomli.loads((EXAMPLE / "speclint.toml").read_text(encoding="utf-8"))
    assert hold.found.rule.family in settings["reviewers"]["M. Coyle"]["competent_for"]


def test_no_private_key_is_kept() -> None:
    for path in EXAMPLE.rglob("*"):
        if path.is_file():
            assert b"PRIVATE KEY" not in path.read_bytes(), path


def test_the_register_is_what_the_program_would_write() -> None:
    """Entries are made by the program and not by hand: each number, date and fingerprint stands as it writes them."""
    text = (EXAMPLE / REGISTER).read_text(encoding="utf-8")
    assert text.startswith("# The register of concessions")
    assert text.count("[[concession]]") == 5
