"""What is said of a list of names and of a key, in a design of a few parts: each name with the parts that it is for."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.errors import SettingsError
from speclint.families import NameLists
from speclint.families.names import dimensions, units_of
from speclint.repository import open_repository
from speclint.testing import DesignFolder, installed_families

BLOCK = 'kind = "cylinder-block"\nid = "block"\n[bores.main]\n[bores.outer]\n'
LINER = 'kind = "cylinder-liner"\nhoused_in = "block"\n'
DUTY = 'kind = "duty"\n[cases.running]\n'
#: A part of one kind under the word of another.
NAMED_AS_A_KIND = 'kind = "cylinder-block"\nid = "piston"\n'


@pytest.fixture(scope="module")
def lists() -> NameLists:
    """The lists of the installed families, without a design."""
    loaded = installed_families()
    return NameLists(loaded.kinds, loaded.materials)


def of_design(folder: Path, **more: str) -> NameLists:
    """The lists of a design of a block, a liner and a duty, and of some more parts."""
    files = {"block.toml": BLOCK, "liner.toml": LINER, "duty.toml": DUTY}
    design = DesignFolder(folder).write(files | {f"{name}.toml": text for name, text in more.items()})
    opened = open_repository([design.root], design.loaded.kinds)
    assert opened.design is not None
    return NameLists(design.loaded.kinds, opened.materials, opened.design)


def said_by(lists: NameLists, word: str) -> dict[str, str]:
    """The names of the one list, each with what is said beside it."""
    (one,) = lists.of(word)
    return {name.name: name.says for name in one.names}


def test_a_load_case_is_said_to_be_stated_by_the_duty_that_states_it(tmp_path: Path) -> None:
    cases = said_by(of_design(tmp_path), "cases")
    assert cases["running"].endswith("; stated by duty")
    assert [name for name, says in cases.items() if "stated by" in says] == ["running"]


def test_a_key_of_one_part_has_the_names_for_that_part_alone(tmp_path: Path) -> None:
    """Two liners may stand in the bores of the block; each is asked for by its name, or both by their kind."""
    lists = of_design(tmp_path, other=LINER)
    assert said_by(lists, "other.in_bore") == {"main": "for other", "outer": "for other"}
    both = {one.removeprefix("for ") for one in said_by(lists, "cylinder-liner.in_bore").values()}
    assert both == {"liner, other"}


def test_a_part_may_have_points_in_its_name(tmp_path: Path) -> None:
    lists = of_design(tmp_path, left=f'id = "liner.left"\n{LINER}')
    assert said_by(lists, "liner.left.in_bore") == {"main": "for liner.left", "outer": "for liner.left"}


def test_the_word_of_a_kind_means_the_kind_where_a_part_has_that_name_too(tmp_path: Path) -> None:
    assert "liner" in said_by(of_design(tmp_path, piston=NAMED_AS_A_KIND), "piston.runs_in")


def test_a_part_that_could_not_be_read_is_told(tmp_path: Path) -> None:
    lists = of_design(tmp_path, spoilt='kind = "no-such-kind"\n')
    with pytest.raises(SettingsError, match=r"^spoilt could not be read: speclint check says why$"):
        lists.of("spoilt.bore")


def test_a_key_of_nothing_that_is_there_is_no_list(lists: NameLists, tmp_path: Path) -> None:
    for some in (lists, of_design(tmp_path)):
        with pytest.raises(SettingsError, match=r"^no list is called nothing-there\.bore; "):
            some.of("nothing-there.bore")


def test_a_table_of_keys_takes_no_name_itself(lists: NameLists) -> None:
    with pytest.raises(SettingsError, match=r"^a cylinder-block has no key bores; "):
        lists.of("cylinder-block.bores")


def test_without_a_design_a_key_has_no_names_of_it(lists: NameLists) -> None:
    assert said_by(lists, "cylinder-liner.in_bore") == {}


@pytest.mark.parametrize(("word", "said"), [("retaned", '"retained"'), ("in_borre", 'one of "cases", ')])
def test_a_key_alone_is_offered_only_where_it_has_words_of_its_own(
    lists: NameLists, word: str, said: str
) -> None:
    """``in_bore`` alone is refused, so that it is not offered for a word nearly so written."""
    with pytest.raises(SettingsError) as problem:
        lists.of(word)
    assert str(problem.value).startswith(f"no list is called {word}; write {said}")


def test_a_list_says_what_it_is_of(lists: NameLists) -> None:
    """What the kind says of its key, then what the key takes; a table is filled by its names."""
    assert lists.of("duty.cases")[0].about == "a table of these names"
    assert lists.of("cylinder-liner.bore")[0].about.startswith('the new bore; length, such as "')


def test_a_key_is_written_with_a_name_for_each_entry_of_several_alone(lists: NameLists) -> None:
    """A block has several bores and a joint one way of tightening."""
    assert lists.of("cylinder-block.bores.diameter")[0].taken_by == ("cylinder-block.bores.NAME.diameter",)
    assert lists.of("bolted-joint.tightening.method")[0].taken_by == ("bolted-joint.tightening.method",)


def test_the_unit_in_which_others_are_shown_says_nothing_of_itself() -> None:
    """A centimetre is 10 mm."""
    lengths = {one.name: one.says for one in units_of("length")}
    assert (lengths["mm"], lengths["cm"]) == ("", "10 mm")


def test_each_dimension_is_listed_once_with_units_that_can_be_written() -> None:
    """A ratio may be a number alone or in per cent."""
    found = list(dimensions())
    names = [one.name for one in found]
    assert len(set(names)) == len(names)
    assert names[names.index("pressure") + 1] == "fluid pressure"
    assert {one.name: one.says for one in found}["ratio"] == "%"
