"""A dimension chain: where each link and the enlarged gap stand, worked by hand.

100 mm less 58 and less half of 80: 2 mm, from 99.9 − 58.06 − 40.05 = 1.79 to 2.21 mm. Bars stand from 230 to 590: for
the links from −8 to 108 mm, 8 % beyond what is drawn; for the gap from 1.428 to 2.472 mm, as it is to be 1.5 to 2.4.
"""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from speclint import Grade
from speclint.checking import Assessment, Processes, assess
from speclint.errors import replace
from speclint.reports.pack.chain_charts import chain_figures, gap, moved
from speclint.reports.pack.figures import Figure
from speclint.testing import DesignFolder, changed_files
from tests.reports.placed_marks import numbers

CHAIN = """
kind = "dimension-chain"
id = "chain"
least = "1.5 mm"
greatest = "2.4 mm"
[chain.long]
size = "100 mm ±0.1"
direction = "widens"
[chain.short]
size = "58 mm ±0.06"
direction = "narrows"
[chain.half]
size = "80 mm ±0.1"
direction = "narrows"
lever = "0.5"
"""


def made(workshop: DesignFolder, *changes: tuple[str, str], rules: tuple[str, ...] = ()) -> Assessment:
    files = changed_files({"chain.toml": CHAIN}, *(("chain.toml", *one) for one in changes))
    workshop.write(files)
    chosen = [one for one in workshop.loaded.rules if one.name in rules]
    found = assess([workshop.root], workshop.loaded, chosen, processes=Processes(0))
    assert not found.complaints
    return found


def drawn(workshop: DesignFolder, *changes: tuple[str, str]) -> Figure:
    (figure,) = chain_figures(made(workshop, *changes))
    return figure


def hot(
    workshop: DesignFolder,
    case: str = "running",
    outcome: str = "conforms",
    changes: tuple[tuple[str, str], ...] = (),
) -> Figure:
    """With the check of the cold chain in the place of that of the hot one."""
    found = made(workshop, *changes, rules=("chain.worst-case",))
    (check,) = found.checks
    grade = Grade.HOLD if outcome == "finding" else None
    rule = replace(check.rule, name="chain.worst-case-hot")
    turned = replace(check, rule=rule, case=case, outcome=outcome, grade=grade)  # type: ignore[arg-type]
    (figure,) = chain_figures(replace(found, checks=(turned,)))
    return figure


def marks(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]


def boxes(figure: Figure, ink: str) -> list[list[float]]:
    return [numbers(one, "x", "y", "width", "height") for one in marks(figure, "rect", ink)]


def lines(figure: Figure, ink: str) -> list[list[float]]:
    return [numbers(one, "x1", "y1", "x2", "y2") for one in marks(figure, "line", ink)]


def says(figure: Figure) -> list[tuple[str, float, float]]:
    root = ElementTree.fromstring(figure.drawing)
    return [(one.text or "", *numbers(one, "x", "y")) for one in root.iter() if one.tag.endswith("}text")]  # type: ignore[misc]


def near(places: list[list[float]]) -> list[object]:
    return [pytest.approx(one, abs=0.02) for one in places]


def link(value: float) -> float:
    return 230 + (value + 8) / 116 * 360


def opened(value: float, low: float = 1.428, high: float = 2.472) -> float:
    return 230 + (value - low) / (high - low) * 360


def bar(at: float, end: float, y: float, high: float) -> list[float]:
    return [at, y, end - at, high]


def test_each_link_begins_where_the_last_one_ended(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    assert boxes(figure, "shaft")[0] == pytest.approx(bar(link(0), link(100), 25, 12), abs=0.02)
    assert boxes(figure, "hole")[:2] == near(
        [bar(link(42), link(100), 51, 12), bar(link(2), link(42), 77, 12)]
    )
    assert lines(figure, "thin")[:2] == near([[link(100), 31, link(100), 57], [link(42), 57, link(42), 83]])
    grid = lines(figure, "grid")[:6]
    assert grid == near([[link(value), 18, link(value), 101] for value in range(0, 101, 20)])
    said = says(figure)
    assert ("0", pytest.approx(link(0), abs=0.02), 114) in said
    for words, y in (("long", 35), ("short", 61), ("half", 87)):
        assert (words, 210, y) in said
    for words, y in (
        ("widens by 100 mm ±0.1", 35),
        ("narrows by 58 mm ±0.06", 61),
        ("narrows by 80 mm ±0.1, 0.5 of it", 87),
        ("mm from where the chain begins", 130),
    ):
        assert words in [name for name, _, at in said if at == y], words


def test_the_gap_is_enlarged_with_its_limits_and_what_moves_it(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    assert boxes(figure, "metal") == near([bar(opened(1.79), opened(2.21), 168, 14)])
    assert lines(figure, "limit") == near([[opened(value), 164, opened(value), 186] for value in (1.5, 2.4)])
    assert boxes(figure, "shaft")[1] == pytest.approx(bar(opened(1.79), opened(1.99), 196, 10), abs=0.02)
    assert boxes(figure, "hole")[2:] == near(
        [bar(opened(1.99), opened(2.11), 222, 10), bar(opened(2.11), opened(2.21), 248, 10)]
    )
    assert lines(figure, "thin")[2:] == near(
        [[opened(1.99), 201, opened(1.99), 227], [opened(2.11), 227, opened(2.11), 253]]
    )
    assert lines(figure, "grid")[6:] == near(
        [[opened(value), 162, opened(value), 271] for value in (1.6, 1.8, 2.0, 2.2, 2.4)]
    )
    said = says(figure)
    for words, x, y in (
        ("gap, cold", 210, 179),
        ("1.790 to 2.210 mm", 604, 179),
        ("by long", 210, 205),
        ("0.200 mm", 604, 205),
        ("by short", 210, 231),
        ("by half", 210, 257),
        ("mm, the gap enlarged", 410, 300),
    ):
        assert (words, x, y) in said, words
    root = ElementTree.fromstring(figure.drawing)
    assert list(map(float, (root.get("viewBox") or "").split()))[2:] == [900, 18 + 7 * 26 + 66 + 44]


def test_the_links_that_move_most_stand_first_and_those_that_move_nothing_are_left_out(
    workshop: DesignFolder,
) -> None:
    figure = drawn(workshop, ("58 mm ±0.06", "58 mm ±0.3"), ("100 mm ±0.1", "100 mm ±0"))
    labels = [(words, y) for words, _, y in says(figure) if words.startswith("by ")]
    assert labels == [("by short", 205), ("by half", 231)]


def test_a_limit_far_from_the_gap_stands_in_words_alone(workshop: DesignFolder) -> None:
    """The spread is 0.42 mm: limits more than 4.2 mm off, beyond 6.41 and −2.41, are not drawn."""
    assert len(lines(drawn(workshop, ('"2.4 mm"', '"6.40 mm"')), "limit")) == 2
    (only,) = lines(drawn(workshop, ('"2.4 mm"', '"6.42 mm"')), "limit")
    room = (2.21 - 1.5) * 0.08
    assert only[0] == pytest.approx(opened(1.5, 1.5 - room, 2.21 + room), abs=0.02)
    assert len(lines(drawn(workshop, ('"1.5 mm"', '"-2.40 mm"')), "limit")) == 2
    assert len(lines(drawn(workshop, ('"1.5 mm"', '"-2.42 mm"')), "limit")) == 1


def test_the_gap_hot_stands_below_with_its_limit(workshop: DesignFolder) -> None:
    """2.21 mm of the 2.4 allowed; one row more, so that the others stand 26 lower."""
    figure = hot(workshop)
    assert boxes(figure, "hot") == near([[opened(2.21) - 3, 194, 6, 14]])
    assert lines(figure, "limit")[2] == pytest.approx([opened(2.4), 190, opened(2.4), 212], abs=0.02)
    said = says(figure)
    assert ("hot, running", 210, 205) in said
    assert ("2.210 mm, needs ≤ 2.400 mm", 604, 205) in said
    assert ("by long", 210, 231) in said
    assert figure.rows[-1] == ("gap hot, running", "2.210 mm, needs ≤ 2.400 mm", "")
    assert "#sheet.chain.chain.worst-case-hot" in figure.drawing
    assert boxes(hot(workshop, outcome="finding"), "bad") == near([[opened(2.21) - 3, 194, 6, 14]])
    bare = hot(workshop, case="")
    assert ("hot", 210, 205) in says(bare)
    assert bare.rows[-1][0] == "gap hot, at its worst"


def test_a_limit_far_from_the_gap_hot_stands_in_words_alone(workshop: DesignFolder) -> None:
    """1.79 mm where −2.42 are asked for, which is more than 4.2 mm below it."""
    far = ('least = "1.5 mm"\ngreatest = "2.4 mm"\n', 'least = "-2.42 mm"\n')
    figure = hot(workshop, changes=(far,))
    room = (2.21 - 1.79) * 0.08
    at = opened(1.79, 1.79 - room, 2.21 + room)
    assert boxes(figure, "hot") == near([[at - 3, 194, 6, 14]])
    assert not lines(figure, "limit")
    assert ("1.790 mm, needs ≥ −2.420 mm", 604, 205) in says(figure)


def test_the_table_of_a_chain(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    assert figure.heading == "chain: the links and the gap that they leave"
    assert figure.rows == (
        ("long", "widens by 100 mm ±0.1", "0.200 mm"),
        ("short", "narrows by 58 mm ±0.06", "0.120 mm"),
        ("half", "narrows by 80 mm ±0.1, 0.5 of it", "0.100 mm"),
        ("gap, cold", "1.790 to 2.210 mm", "0.420 mm"),
    )
    assert figure.says.endswith("Required cold: at least 1.5 mm, at most 2.4 mm.")


def test_what_a_gap_is_of_its_links() -> None:
    assert gap((1.0, -1.0, -0.5), x0=100.0, x1=58.0, x2=80.0) == pytest.approx(2.0)
    assert moved(-0.5, 79.9, 80.1) == pytest.approx(0.1)


def test_a_chain_of_which_a_link_is_not_found_is_not_drawn(workshop: DesignFolder) -> None:
    assert not list(chain_figures(made(workshop, ('size = "58 mm ±0.06"\n', ""))))
    assert not list(chain_figures(made(workshop, (CHAIN[CHAIN.index("[chain.long]") :], ""))))
