"""From files to specs: every complaint has its place, what was read and what to write instead."""

from __future__ import annotations

import gc
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from speclint.quantities import Measure
from speclint.repository.reading import Loaded, ids_stated, load_specs, read_drafts
from speclint.specs import Duty, NotStated, Spec, Stated
from tests.tubes import Rack, Tube

KINDS: dict[str, type[Spec]] = {"tube": Tube, "rack": Rack, "duty": Duty}


@contextmanager
def _collector_at_rest() -> Iterator[None]:
    """Going over what other tests left in memory takes a second or more, and is no part of a reading."""
    gc.disable()
    try:
        yield
    finally:
        gc.enable()


def load(folder: Path, text: str | bytes) -> Loaded:
    path = folder / "part.toml"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return load_specs(path, "part.toml", KINDS)[0]


def test_a_value_knows_where_it_was_written(tmp_path: Path) -> None:
    spec = load(tmp_path, 'kind = "tube"\n\nbore = "100 mm"\n').spec
    assert isinstance(spec, Tube)
    assert isinstance(spec.bore, Measure)
    assert str(spec.bore.where) == "part.toml:3 bore"
    assert spec.id == "part"


def test_what_is_not_stated_knows_the_key_it_would_have(tmp_path: Path) -> None:
    spec = load(tmp_path, 'kind = "rack"\n[slots.left]\n').spec
    assert isinstance(spec, Rack)
    width = spec.slots["left"].width
    assert isinstance(width, NotStated)
    assert width.where.key == "slots.left.width"
    assert width.where.line == 2


def test_provenance_is_a_table(tmp_path: Path) -> None:
    text = 'kind = "tube"\nbore = { value = "99.8..100.1 mm", from = "measured", note = "worn" }\n'
    spec = load(tmp_path, text).spec
    assert isinstance(spec, Tube)
    assert isinstance(spec.bore, Measure)
    assert (spec.bore.provenance, spec.bore.note, spec.bore.low) == ("measured", "worn", 0.0998)
    assert str(spec.bore.where) == "part.toml:2 bore"  # the key itself, not the value within


@pytest.mark.parametrize(("letters", "refused"), [(100, False), (101, True)])
def test_a_link_is_as_long_as_an_id_may_be(tmp_path: Path, letters: int, refused: bool) -> None:
    loaded = load(tmp_path, f'kind = "tube"\nheld_in = "{"r" * letters}"\n')
    said = [str(one) for one in loaded.complaints]
    assert (loaded.spec is None) is refused
    assert any("held_in: an id has at most 100 characters" in one for one in said) is refused


def test_words_and_counts(tmp_path: Path) -> None:
    spec = load(
        tmp_path, 'kind = "tube"\nhoops = 3\nends = "closed"\n[notes]\nanything = [1, { a = 2 }]\n'
    ).spec
    assert isinstance(spec, Tube)
    assert isinstance(spec.hoops, Stated)
    assert spec.hoops.value == 3
    assert spec.notes == {"anything": [1, {"a": 2}]}


@pytest.mark.parametrize(
    ("line", "said", "read", "write"),
    [
        ('bore = "480,5 mm"', "a comma is not a decimal point", '"480,5 mm"', '"480.5 mm"'),
        (
            'pressure = "17 bar"',
            "a fluid pressure must say whether it is gauge or absolute",
            '"17 bar"',
            '"17 bar gauge"',
        ),
        ("bore = 480", "written as text with its unit", "480", "480 mm"),
        ('boer = "480 mm"', '"boer" is no key of a tube', '"480 mm"', '"bore"'),
        ('hoops = "3"', "not a whole number", '"3"', "without quotes"),
        ("hoops = true", "not a whole number", "true", "without quotes"),
        ('ends = "shut"', "not one of the words used here", '"shut"', '"open", "closed"'),
        ("held_in = 3", "a link is the id of another spec", "3", "the id of a rack"),
        ('bore = { value = "1 mm", form = "x" }', '"form" is no key of a quantity', "a table", "value ="),
        ('bore = { value = "1 mm", from = "guess" }', "no provenance", "a table", '"measured"'),
        ("bore = [1]", "written as text with its unit", "an array", '"480 mm'),
        ('title = ""', "the text is empty", '""', "leave the key out"),
        ('title = " "', "the text is empty", '" "', "leave the key out"),
        ('checked_by = "n/a"', "this names nothing", '"n/a"', "what it is, or leave the key out"),
        ("notes = 3", "", "3", ""),
    ],
)
def test_a_mistake_is_said_with_its_place(
    tmp_path: Path, line: str, said: str, read: str, write: str
) -> None:
    loaded = load(tmp_path, f'kind = "tube"\n{line}\n')
    assert loaded.spec is None
    assert len(loaded.complaints) == 1
    complaint = loaded.complaints[0]
    assert (complaint.where.file, complaint.where.line) == ("part.toml", 2)
    assert complaint.where.key == line.split(" =")[0]
    assert said in complaint.message
    assert complaint.read == read
    assert write in complaint.write


def test_every_mistake_of_a_file_is_reported(tmp_path: Path) -> None:
    loaded = load(tmp_path, 'kind = "tube"\nbore = "1,5 mm"\noutside = "5 kg"\nfoo = 1\nhoops = 1.5\n')
    assert [complaint.where.line for complaint in loaded.complaints] == [2, 3, 4, 5]


@pytest.mark.parametrize(
    ("written", "said", "read"),
    [
        ("3", "an id is a word in quotes", "3"),
        ("[]", "an id is a word in quotes", "an array"),
        ("{ a = 1 }", "an id is a word in quotes", "a table"),
        ('""', "an id is a word in quotes", '""'),
        (r'"a\nb"', "an id is written on one line", '"a b"'),
        (r'"a\u200bb"', "an id is written on one line", '"a\u200bb"'),
        ('"part "', "without spaces at its ends", '"part "'),
    ],
)
def test_beside_an_id_that_is_refused_all_else_in_the_file_is_told(
    tmp_path: Path, written: str, said: str, read: str
) -> None:
    loaded = load(tmp_path, f'kind = "tube"\nid = {written}\nbore = "5 kg"\n')
    assert loaded.spec is None
    of_id, of_bore = sorted(loaded.complaints, key=lambda one: one.order)
    assert (of_id.where.line, of_id.where.key, of_id.read, of_id.write) == (2, "id", read, 'id = "part"')
    assert said in of_id.message
    assert (of_bore.where.line, of_bore.where.key) == (3, "bore")


@pytest.mark.parametrize("name", ["liner left", "Zylinderbüchse", "7"])
def test_an_id_may_have_spaces_within_and_letters_of_any_language(tmp_path: Path, name: str) -> None:
    loaded = load(tmp_path, f'kind = "tube"\nid = "{name}"\n')
    assert (loaded.id, loaded.complaints) == (name, ())


@pytest.mark.parametrize(
    ("text", "line", "said"),
    [
        ("kind = \n", 1, "this is not TOML"),
        ('kind = "tube"\nbore = "1 mm"\nbore = "2 mm"\n', 3, "this is not TOML"),
        (b'kind = "tube"\n\ntitle = "\xff"\n', 3, "not UTF-8"),
        ('bore = "1 mm"\n', 1, "does not say what kind"),
        ('# x\nkind = "tub"\n', 2, "not known"),
        ("kind = 3\n", 1, "not known"),
        ('kind = "tube"\nid = 3\n', 2, "an id is a word"),
        ('kind = "duty"\n[cases.runing]\n', 2, "not a name used here"),
        ('kind = "duty"\n[cases]\nrunning = 3\n', 3, "a table is expected here"),
        ('kind = "duty"\n[cases.running]\nlive_presure = "1 bar gauge"\n', 3, "no key of [cases.running]"),
        ("a = " + "[" * 3000 + "]" * 3000, 1, "more than 20 deep"),
    ],
)
def test_files_that_are_no_specs(tmp_path: Path, text: str | bytes, line: int, said: str) -> None:
    loaded = load(tmp_path, text)
    assert loaded.spec is None
    assert len(loaded.complaints) == 1
    assert loaded.complaints[0].where.line == line
    assert said in loaded.complaints[0].message


def test_the_nearest_kind_and_case_are_proposed(tmp_path: Path) -> None:
    assert load(tmp_path, 'kind = "tub"\n').complaints[0].write == 'kind = "tube"'
    assert load(tmp_path, 'kind = "duty"\n[cases.runing]\n').complaints[0].write == '"running"'
    assert "[notes]" in load(tmp_path, 'kind = "tube"\nzzzz = 1\n').complaints[0].write


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    loaded = load_specs(tmp_path / "none.toml", "none.toml", KINDS)[0]
    assert "cannot be read" in loaded.complaints[0].message


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (".".join(["a"] * 400) + " = 1", "more than 20 deep"),
        ("[" + ".".join(["a"] * 400) + "]", "more than 20 deep"),
        (".".join(['"a"'] * 50_000) + " = 1", "more than 20 deep"),
        ("notes = " + "{ a = " * 400 + "1" + " }" * 400, "more than 20 deep"),
        ("notes = " + "[\n" * 390 + "]" * 390, "more than 20 deep"),
        ("hoops = " + "9" * 5000, "at most 15 digits"),
        ("hoops = " + "9" * 400, "at most 15 digits"),
        ("hoops = 0x" + "f" * 5000, "at most 15 digits"),
        ("hoops = 1_000_000_000_000_000", "at most 15 digits"),
        ("hoops = 1_000_000_001", "between 0 and 1000000000"),
        ("hoops = -1", "between 0 and 1000000000"),
        ("notes = { a = 1e400 }", "not a finite number"),
        ("notes = { a = nan }", "not a finite number"),
        ("notes = { a = 1e31 }", "between 1e-30 and 1e30"),
        ("notes = { a = [" + "1," * 100_000 + "] }", "an array has at most 10000 entries; this has 100000"),
        ("".join(f"[t{number}]\n" for number in range(30_000)), "a table has at most 10000 entries"),
        ("[[slots.a]]\n" * 30_000, "an array has at most 10000 entries"),
        (f'title = "{"a" * 20_001}"', "a text has at most 20000 characters; this has 20001"),
        (f'held_in = "{"a" * 101}"', "an id has at most 100 characters"),
        (f'id = "{"a" * 101}"', "an id has at most 100 characters; this has 101"),
        (f"{'a' * 301} = 1", "a key has at most 300 characters; this has 301"),
        (f'kind2 = "{"a" * 15_000}"', "no key of a tube"),
        (f'bore = "{"9" * 15_000} mm"', "at most 100 characters; this has 15003"),
    ],
    ids=lambda value: value[:30],
)
def test_what_is_too_deep_too_long_or_too_large_is_one_clear_line_at_once(
    tmp_path: Path, line: str, said: str
) -> None:
    with _collector_at_rest():
        began = time.process_time()
        loaded = load(tmp_path, f'kind = "tube"\n{line}\n')
        spent = time.process_time() - began
    assert spent < 1
    assert len(loaded.complaints) == 1
    assert said in loaded.complaints[0].message
    assert loaded.complaints[0].write
    assert len(str(loaded.complaints[0])) < 800
    assert "\n" not in str(loaded.complaints[0])


def test_what_is_within_the_bounds_is_read(tmp_path: Path) -> None:
    """19 tables in one another below the root, 10 000 entries, 15 digits: each the last that is taken."""
    deep = ".".join(["notes", *"a" * 18])
    numbers = f"notes.b = [{'1,' * 10_000}]\nnotes.c = 999_999_999_999_999"
    text = f'kind = "tube"\nhoops = 1_000_000_000\n{deep} = 1\n{numbers}'
    assert load(tmp_path, text).complaints == ()


@pytest.mark.parametrize("code", [0xD800, 0xDC80, 0xDFFF])
def test_a_name_of_a_file_that_is_no_text_is_told(code: int) -> None:
    """Python has bytes that are no UTF-8 as U+DC80 to U+DCFF; all from U+D800 to U+DFFF are no letters."""
    file = f"a{chr(code)}.toml"
    (found,) = read_drafts(Path(file), file, KINDS, b'kind = "tube"\n')
    (complaint,) = found.complaints
    assert complaint.message == "the name of this file is not UTF-8 text, so that nothing can refer to it"
    assert complaint.write == "a name in letters and digits"


@pytest.mark.parametrize("sign", ["\ud7ff", "\ue000", "ä"])
def test_any_letter_may_stand_in_the_name_of_a_file(sign: str) -> None:
    (found,) = read_drafts(Path(f"a{sign}.toml"), f"a{sign}.toml", KINDS, b'kind = "tube"\nid = "a"\n')
    assert (found.id, found.complaints) == ("a", ())


def test_a_name_of_a_file_that_is_no_id_is_told_with_one_that_is() -> None:
    (found,) = read_drafts(Path("a\u200bb .toml"), "a\u200bb .toml", KINDS, b'\nkind = "tube"\n')
    (complaint,) = found.complaints
    assert (complaint.where.line, complaint.where.key, complaint.write) == (1, "id", 'id = "ab"')


def test_a_spec_stands_on_the_line_of_its_id_or_else_on_the_first(tmp_path: Path) -> None:
    for text, line in (('kind = "tube"\n\nid = "a"\n', 3), ('\n\nkind = "tube"\n', 1)):
        spec = load(tmp_path, text).spec
        assert spec is not None
        assert (spec.where.file, spec.where.line, spec.where.key) == ("part.toml", line, "")


@pytest.mark.parametrize(
    ("text", "where", "write"),
    [
        ("\n\nbore = 3\n", (1, "kind"), 'kind = one of "duty", "rack", "tube"'),
        ("\nkind = [1]\n", (1, "kind"), 'kind = one of "duty", "rack", "tube"'),
        ("\nkind = 3\n", (2, "kind"), 'kind = one of "duty", "rack", "tube"'),
        ('\nkind = "tub"\n', (2, "kind"), 'kind = "tube"'),
    ],
)
def test_a_kind_that_is_not_known_is_told_with_those_that_are(
    tmp_path: Path, text: str, where: tuple[int, str], write: str
) -> None:
    loaded = load(tmp_path, text)
    (complaint,) = loaded.complaints
    assert (complaint.where.line, complaint.where.key) == where
    assert complaint.write == write
    assert loaded.id == "part"


def test_faults_of_a_file_stand_before_those_of_its_values_and_these_in_their_order(tmp_path: Path) -> None:
    text = 'kind = "tube"\nid = "t"\nhoops = 1.5\nbore = "5 kg"\ntitle = "{each}"\n'
    assert [one.where.key for one in load(tmp_path, text).complaints] == ["title", "hoops", "bore"]


@pytest.mark.parametrize(
    ("text", "ids"),
    [
        ('kind = "tube"\n', {"part"}),
        ('kind = "tube"\nid = "t-{each}"\neach = ["a", "b"]\n', {"t-a", "t-b"}),
        ('kind = "tube"\nbore = "5 kg"\n', {"part"}),
        ('kind = "tub"\n', set()),
        ("kind =", set()),
    ],
)
def test_the_ids_that_a_content_states(text: str, ids: set[str]) -> None:
    assert ids_stated(text.encode(), "part.toml", KINDS) == ids
