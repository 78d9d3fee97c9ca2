"""Texts that name somebody or something: a word for none is refused, since a rule takes the key for stated."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.repository import open_repository
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
        "nil",
        "nobody",
        "to be decided",
        "To be named",
        "TBC",
        "not  known",
    ],
)
def test_words_for_none(text: str) -> None:
    assert names_nothing(text)


@pytest.mark.parametrize(
    "text",
    ["WPQR 41", "B. Thorne", "No. 7", "None-such Forge", "lost", "CN-C-1203", "open air", "tobe & sons", "7"],
)
def test_names(text: str) -> None:
    """A name that begins like a word for none is a name."""
    assert not names_nothing(text)


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
def test_a_key_that_names_nothing_is_refused(tmp_path: Path, kind: str, key: str) -> None:
    design = DesignFolder(tmp_path).write({"part.toml": f'kind = "{kind}"\n{key} = "B. Thorne"\n'})
    assert complaints(design) == []
    design.replace("part.toml", "B. Thorne", "to be named")
    (said,) = complaints(design)
    assert said.startswith(f'part.toml:2 {key}: this text names nothing; read "to be named"; write ')


def complaints(design: DesignFolder) -> list[str]:
    return [str(one) for one in open_repository([design.root], design.loaded.kinds).complaints]


def test_words_that_say_how_it_is_done_may_be_none(tmp_path: Path) -> None:
    """A revision may be a stroke until the first change, and a thread may be tightened dry."""
    files = {
        "joint.toml": 'kind = "bolted-joint"\nrevision = "-"\ntightening.lubrication = "none"\n',
        "cover.toml": 'kind = "cylinder-cover"\nexamination = "none"\n',
    }
    assert complaints(DesignFolder(tmp_path).write(files)) == []
