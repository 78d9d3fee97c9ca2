"""Texts that name nothing: refused where a thing, a person or a document is to be named."""

from __future__ import annotations

import pytest

from speclint.repository.reading import load_specs
from speclint.specs import names_nothing
from speclint.testing import DesignFolder


@pytest.mark.parametrize(
    "text",
    [
        "none",
        "None.",
        "-",
        "—",
        "n/a",
        "N.A.",
        "nil",
        "no",
        "nothing",
        "nobody",
        "unknown",
        "?",
        "TBD",
        "later",
    ],
)
def test_a_mark_or_a_word_for_none_names_nothing(text: str) -> None:
    assert names_nothing(text)


@pytest.mark.parametrize("text", ["to be decided", "To be advised", "not yet decided", "not applicable"])
def test_what_is_still_to_be_named_names_nothing(text: str) -> None:
    assert names_nothing(text)


@pytest.mark.parametrize("text", ["not recorded", "Not on record.", "not stated", "not noted"])
def test_what_is_not_on_record_names_nothing(text: str) -> None:
    assert names_nothing(text)


@pytest.mark.parametrize(
    "text",
    [
        "none fitted",
        "Not fitted.",
        "none provided",
        "not provided",
        "no feed",
        "omitted",
        "plugged",
        "blanked off",
    ],
)
def test_what_is_not_fitted_or_closed_names_nothing(text: str) -> None:
    """A feed that is not fitted feeds nothing, and what leaks off goes nowhere by a pipe that is plugged."""
    assert names_nothing(text)


@pytest.mark.parametrize(
    "text",
    [
        "0",
        "plug cock 3",
        "none-return valve",
        "fitted by the works",
        "A",
        "lost",
        "not recorded by him: R. Fell",
        "feed 3",
        "no. 4 feed",
        "nonesuch",
        "together",
        "to bearing 2",
        "open",
        "unknown melt 7",
    ],
)
def test_other_words_name_something(text: str) -> None:
    assert not names_nothing(text)


@pytest.mark.parametrize("key", ["drawing", "checked_by", "prepared_by", "competent_body", "leak_off"])
def test_a_spec_names_what_it_says_or_leaves_it_out(workshop: DesignFolder, key: str) -> None:
    text = f'id = "spindle"\nkind = "valve-spindle"\n{key} = "none"\n'
    assert f'{key}: this names nothing; read "none"' in refused(workshop, text)


def test_the_first_issue_of_a_drawing_has_the_revision_that_is_written_as_a_dash(
    workshop: DesignFolder,
) -> None:
    assert refused(workshop, 'id = "part"\nkind = "valve-spindle"\nrevision = "-"\n') == ""


@pytest.mark.parametrize(
    ("key", "said"),
    [("leak_off", "plugged"), ("leak_off", "none fitted"), ("lubrication.feed", "none fitted")],
)
def test_a_pipe_that_is_closed_or_not_fitted_leads_nowhere(
    workshop: DesignFolder, key: str, said: str
) -> None:
    text = f'id = "spindle"\nkind = "valve-spindle"\n{key} = "{said}"\n'
    assert f'{key}: this names nothing; read "{said}"' in refused(workshop, text)


def test_none_is_an_answer_where_a_text_says_how(workshop: DesignFolder) -> None:
    """A thread may be tightened dry, and a revision is a stroke until the first change."""
    text = 'id = "studs"\nkind = "bolted-joint"\nrevision = "-"\nexamination = "none"\n'
    assert refused(workshop, text + '[tightening]\nlubrication = "none"\n') == ""


@pytest.mark.parametrize(
    ("kind", "key"),
    [
        ("cylinder-cover", "checked_by"),
        ("cylinder-cover", "prepared_by"),
        ("cylinder-cover", "drawing"),
        ("cylinder-cover", "competent_body"),
        ("cylinder-block", "procedures.first_steaming"),
        ("cylinder-block", "pairs.rods.feed"),
        ("cylinder-liner", "lubrication.feed"),
        ("weldment", "joints.seam.procedure"),
        ("weldment", "joints.seam.welder"),
        ("weldment", "cavities_record"),
        ("steam-passage", "drains.low.into"),
        ("access-plan", "spanners.studs.reaction_at"),
        ("gauge-outline", "issued_by"),
    ],
)
def test_keys_of_tables_name_what_they_say(workshop: DesignFolder, kind: str, key: str) -> None:
    text = f'id = "part"\nkind = "{kind}"\n{key} = "B. Thorne"\n'
    assert refused(workshop, text) == ""
    assert f'{key}: this names nothing; read "to be named"' in refused(
        workshop, text.replace("B. Thorne", "to be named")
    )


def refused(workshop: DesignFolder, text: str) -> str:
    """What the reader refuses of a spec."""
    root = workshop.write({"part.toml": text}).root
    (loaded,) = load_specs(root / "part.toml", "part.toml", workshop.loaded.kinds)
    return "\n".join(map(str, loaded.complaints))
