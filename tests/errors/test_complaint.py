"""What a complaint says to write in place of a word that is not known."""

from __future__ import annotations

import pytest

from speclint.errors import Complaint, Location, one_of
from speclint.errors.complaint import nearest, nearest_few, shortened

SIXTEEN = [f"part-{number:02}" for number in range(16)]


@pytest.mark.parametrize(
    ("read", "write", "told"),
    [
        ("", "", "a.toml:3: it is too wide"),
        ('"5 mm"', "", 'a.toml:3: it is too wide; read "5 mm"'),
        ("", "4 mm", "a.toml:3: it is too wide; write 4 mm"),
        ('"5 mm"', "4 mm", 'a.toml:3: it is too wide; read "5 mm"; write 4 mm'),
    ],
)
def test_a_complaint_says_what_was_read_and_what_to_write(read: str, write: str, told: str) -> None:
    assert str(Complaint(Location("a.toml", 3), "it is too wide", read, write)) == told


def test_a_short_list_is_named_in_full() -> None:
    assert one_of("zz", SIXTEEN) == "one of " + ", ".join(f'"{name}"' for name in SIXTEEN)


def test_of_a_long_list_the_first_are_named_and_how_many_there_are() -> None:
    first = ", ".join(f'"{name}"' for name in SIXTEEN[:8])
    assert one_of("zz", [*SIXTEEN, "part-16"]) == f"one of {first}; there are 17"


def test_of_a_long_list_those_that_hold_the_word_are_named() -> None:
    """The word "fit" is too short to resemble "fit_length", and yet it is what was meant."""
    assert one_of("fit", [*SIXTEEN, "fit_length"]) == '"fit_length"'
    assert one_of("fit", [*SIXTEEN, "fit_length", "free_fit_end"]) == (
        'one of "fit_length", "free_fit_end"; there are 18'
    )


def test_of_up_to_sixteen_that_hold_the_word_all_are_named() -> None:
    """The word "fit" is in few of 40 names, in all 16 that can be listed, or in one more, of which 8 are."""
    others = [f"bore-{number:02}" for number in range(30)]
    holding = [f"fit_length_{number:02}" for number in range(17)]
    for count, shown in ((9, 9), (16, 16), (17, 8)):
        listed = ", ".join(f'"{name}"' for name in holding[:shown])
        assert one_of("fit", [*others, *holding[:count]]) == f"one of {listed}; there are {30 + count}"


def test_a_word_longer_than_a_line_is_compared_with_none() -> None:
    line, longer = "a" * 80, "a" * 81
    assert (nearest(line, [line]), nearest(longer, [longer])) == (line, "")
    assert (nearest_few(line, [line]), nearest_few(longer, [longer])) == ((line,), ())


def test_a_word_of_two_letters_is_looked_for_in_no_name() -> None:
    assert one_of("fi", [*SIXTEEN, "fit_length_of_all"]).endswith("; there are 17")


def test_the_most_similar_name_is_named_alone() -> None:
    assert one_of("part-1", [*SIXTEEN, "bore"]).startswith('"part-1')


def test_a_mistyped_name_brings_the_most_similar_first_and_no_other() -> None:
    """Of 10 and 12 letters plat and -P355 are alike, 18/22; plat, -P and 35 of the other, 16/22; of bore far less."""
    known = ["bore", "plate-P235GH", "plate-P355GH"]
    assert nearest_few("platt-P355", known) == ("plate-P355GH", "plate-P235GH")


def test_of_three_letters_a_shortened_name_is_known_and_of_two_it_is_not() -> None:
    """2 · 3/(3 + 10) = 0.46 and 2 · 2/(2 + 10) = 0.33: neither resembles the whole name."""
    assert nearest_few("fit", ["bore", "fit_length"]) == ("fit_length",)
    assert nearest_few("fi", ["bore", "fit_length"]) == ()


@pytest.mark.parametrize("text", ["two\nlines", "two\r\nlines", "two\rlines"])
def test_a_value_is_shown_on_one_line(text: str) -> None:
    assert shortened(text) == "two lines"


def test_a_name_that_holds_the_word_stands_before_one_that_is_only_similar() -> None:
    """3 letters of tappet are of pipe, 2 · 3/(4 + 6) = 0.6; stream has all 5 of steam, 2 · 5/(5 + 6) = 0.91."""
    assert one_of("pipe", ["steam-pipe", "tappet"]) == '"steam-pipe"'
    assert one_of("pipe", ["pipe-of-the-boiler", "steam-pipe-live", "tappet"]) == (
        'one of "pipe-of-the-boiler", "steam-pipe-live"; there are 3'
    )
    assert one_of("steam", ["steam-pipe-of-the-left", "stream"]) == '"stream"'


def test_where_there_is_no_name_or_one_the_words_say_so() -> None:
    assert one_of("pipe", []) == "nothing: there is none here"
    assert one_of("zz", ["bore"]) == '"bore"'


@pytest.mark.parametrize("word", ["zz", "a" * 4999, "aaaaa"])
def test_a_long_name_is_cut_wherever_it_is_proposed(word: str) -> None:
    """As one of several, as the nearest, and as the only one that holds the word."""
    told = one_of(word, ["a" * 5000, *(f"bore{n}" for n in range(20))])
    assert ("… (5000 characters)" in told) is True
    assert len(told) < 500
