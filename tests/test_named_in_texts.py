"""Every key, option, method, name, file and path that README.md, DEVELOPERS.md and the guide name is there."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import tomli

from speclint.repository import Settings, load_settings
from speclint.repository.table_mappings import PartsMapping
from speclint.rules import Judgement, Sheet
from speclint.specs import schema_of_table
from tests.command_blocks import fenced
from tests.guide import FOLDER
from tests.known_names import INVENTED, keys_of, keys_of_kind
from tests.named_in_texts import WORDS, Span, fault_of, keys_in, spans_of

ROOT = Path(__file__).parents[1]
TEXTS = {
    path.name: path.read_text(encoding="utf-8")
    for path in (ROOT / "README.md", ROOT / "DEVELOPERS.md", *sorted(FOLDER.glob("*.md")))
}


@pytest.mark.parametrize("name", TEXTS)
def test_what_a_text_names_is_there(name: str) -> None:
    spans = spans_of(TEXTS[name])
    assert len(spans) >= 5
    assert [fault for span in dict.fromkeys(spans) if (fault := fault_of(span))] == []


def test_no_word_is_let_through_that_no_text_has() -> None:
    """The list of words of other trades, and of what a page invents, may only hold what stands there."""
    told = {span.text for text in TEXTS.values() for span in spans_of(text)}
    assert told >= WORDS
    assert all(any(re.search(rf"\b{word}\b", one) for one in told) for word in INVENTED)


#: A span with one slip in it, of every sort, each of which a text could have; and the commands of its row.
BROKEN = [
    *(
        "speclint chek",
        "speclint check --staged --ful",
        "speclint check --as xlm",
        "speclint kinds steampipe",
    ),
    *("speclint rules pipe.walls", "speclint names casses", "speclint gate --in FOLDER", "check --as jsn"),
    *(
        "--afreshed",
        "--units metrical",
        "python -m tests.omissions",
        ".venv/bin/python -m tests.mutation --table",
    ),
    *(
        ".venv/bin/python -m pytest tests/plugins/liner",
        ".venv/bin/python -m pytest --wider tests",
        ".venv/bin/python -m pytest -m longer tests",
        ".ci/runs",
        ".ci/long benchmark",
        "pip install speclint[tabels]",
    ),
    *(
        "tests/contracts/test_architectures.py",
        "speclint/rule/",
        "unreads.csv",
        "duties/mainline.toml",
        "plugins/specs_*",
    ),
    *(
        "speclint.facts.zones_of",
        "speclint_steamways.input.dividing",
        "speclint.factual",
        "speclint_pipework/rods.py",
    ),
    *(
        "take_absolutes",
        "followed_by(link)",
        "sheet.taken(hanger)",
        "limit(name, symbols=…)",
        "Grade.HOLDS",
    ),
    *(
        "ToFill(leest=…)",
        'Limit(…, settings="cant")',
        "expect_limits",
        "speclint_rule",
        "@rules",
        "raise not_applied(why)",
    ),
    *(
        'housed = "block-left"',
        "[concesions]",
        '{ value = "480 mm", form = "measured" }',
        "prepared_from",
        "ends_at.parts",
    ),
    *(
        "ruling/FAMILY.html#NAME",
        "![caption](figure:load-case)",
        "walled (mm)",
        '"25 mmm"',
        '"for-reviews"',
        "pipe.flexible",
        "standing-hots",
        "made-parts",
        "a sentence in code",
    ),
]


@pytest.mark.parametrize("text", BROKEN)
def test_a_slip_in_a_text_is_told(text: str) -> None:
    assert fault_of(Span(text))


@pytest.mark.parametrize(
    "text", ["rules/FAMILY.html#NAME", "![caption](figure:NAME)", "![x](figure:load-cases)"]
)
def test_pages_and_pictures_of_the_reference_are_known(text: str) -> None:
    assert fault_of(Span(text)) == ""


def test_an_option_must_be_one_of_the_command_in_whose_row_it_stands() -> None:
    row = "| `speclint gate [PATH…]` | may this be released? `--kept`, and `--vary N` |\n"
    kept, vary = spans_of(row)[1:]
    assert (fault_of(kept), bool(fault_of(vary))) == ("", True)
    assert fault_of(Span("--vary N")) == ""


def test_what_stands_on_the_sheet_is_a_method_of_the_sheet() -> None:
    """The table of DEVELOPERS.md: a name that only some other class has is none."""
    table = TEXTS["DEVELOPERS.md"].split("| on the sheet | what it does |\n")[1].split("\n\n")[0]
    cells = [row.split(" | ")[0] for row in table.splitlines()[1:]]
    names = {name for cell in cells for name in re.findall(r"`(?:raise )?(\w+)", cell)}
    assert len(names) > 30
    told = " ".join(table.split())
    changes = set(re.findall(r"`(\w+)`", told.split("stand on the sheet; ")[1].split(" change one")[0]))
    assert names <= {*dir(Sheet)}
    assert changes <= {*dir(Judgement)}
    assert len(changes) == 4


def blocks(name: str) -> list[str]:
    return [inside for language, inside in fenced(TEXTS[name]) if language == "toml"]


def keys_for(block: str) -> set[str]:
    """The keys that a block of README.md may have: those of its kind, of the settings, or of a table of parts."""
    if found := re.search(r'^kind = "(.*)"$', block, re.MULTILINE):
        return keys_of_kind(found[1])
    if "columns = " in block:
        return keys_of(schema_of_table(PartsMapping))
    if "[steamings" in block:
        return keys_of_kind("made-part")
    return keys_of(schema_of_table(Settings))


def test_each_key_in_a_block_of_readme_is_one_of_the_spec_or_settings_that_it_shows() -> None:
    """The block of own metals is read whole by ``tests/test_readme.py``: its reader refuses any other key."""
    every = blocks("README.md")
    shown = [block for block in every if "# metals.toml" not in block]
    assert (len(shown), len(every)) == (6, 7)
    for block in shown:
        assert set(keys_in(tomli.loads(block.replace("…", "x")))) <= keys_for(block), block


def test_the_settings_that_readme_shows_are_read(tmp_path: Path) -> None:
    """As they stand there, with a file where a text is left out; both blocks together."""
    settings = [block for block in blocks("README.md") if "# speclint.toml" in block]
    assert len(settings) == 2
    text = "\n".join(settings).replace("# names and public", "# ").replace('file = "allowed_signers"', "")
    (tmp_path / "speclint.toml").write_text(text, encoding="utf-8")
    found, complaints = load_settings(tmp_path)
    assert complaints == ()
    assert found is not None
    assert found.reviewers["M. Coyle"].competent_for == ("liners", "steamways")


def test_each_key_in_a_block_of_the_guide_is_one_of_its_kind() -> None:
    """The blocks of the tutorial are read as well (``tests/test_guide.py``); an example is read by nothing else."""
    (block,) = blocks("20-load-cases.md")
    assert set(keys_in(tomli.loads(block))) <= keys_for(block)
    assert not set(keys_in(tomli.loads(block.replace("steam_flow", "flow_of_steam")))) <= keys_for(block)
