"""Two places of one fact: compared, both named with their drawings, and a change proposed in each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any, ClassVar, Literal

import pytest

from speclint import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Grade,
    Limit,
    Pair,
    Rule,
    Sheet,
    Worked,
    agreement,
    formula,
    worked,
)
from speclint.checking import Check, Remedy
from speclint.equations import Metres
from speclint.errors import QuantityError
from speclint.families import load_families
from speclint.reports import terminal_page
from speclint.rules.agreement import _same
from speclint.specs import NOT_STATED, Component, Length, LinkTo, Word
from speclint.testing import DesignFolder, made_family
from tests.remedies import remedies


class Plug(Component):
    """A plug."""

    kind: ClassVar[str] = "plug"
    called: ClassVar[str] = "plug"

    size: Length = NOT_STATED
    head: Length = NOT_STATED
    shank: Length = NOT_STATED
    keys: Word[int] = NOT_STATED
    hand: Word[Literal["left", "right"]] = NOT_STATED


class Socket(Component):
    """A socket."""

    kind: ClassVar[str] = "socket"
    called: ClassVar[str] = "socket"

    takes: LinkTo[Plug] = NOT_STATED
    size: Length = NOT_STATED
    depth: Length = NOT_STATED
    length: Length = NOT_STATED
    keys: Word[int] = NOT_STATED
    hand: Word[Literal["left", "right"]] = NOT_STATED


WORDS: dict[str, Any] = {
    "on": Socket,
    "grade": Grade.HOLD,
    "why": "a plug that does not fit falls out",
    "leaves_out": "nothing",
}


@formula("l = h + s", cites=[FIRST_PRINCIPLES])
def together(h: Metres, s: Metres) -> Metres:
    """Length of a plug."""
    return h + s


def _sizes(socket: Socket, sheet: Sheet) -> Iterator[Pair]:
    """Both as drawn."""
    yield Pair(socket.size, sheet.follow(socket.takes).size)


def _depths(socket: Socket, sheet: Sheet) -> Iterator[Pair]:
    """The depth against the head, with their limits."""
    yield Pair(socket.depth, sheet.follow(socket.takes).head, "at least")


def _lengths(socket: Socket, sheet: Sheet) -> Iterator[Pair]:
    """The length against head and shank together."""
    plug = sheet.follow(socket.takes)
    head, shank = sheet.take_nominal("h", plug.head), sheet.take_nominal("s", plug.shank)
    both = sheet.work("l", together, h=head, s=shank)
    yield Pair(socket.length, worked(both, plug.head, plug.shank))


def _words(socket: Socket, sheet: Sheet) -> Iterator[Pair]:
    """Keys and hand."""
    plug = sheet.follow(socket.takes)
    yield Pair(socket.keys, plug.keys, name="keys")
    yield Pair(socket.hand, plug.hand, name="hand")


RULES: Sequence[Rule] = (
    agreement("socket.size", pairs=_sizes, title="Socket and plug are of one size", **WORDS),
    agreement("socket.depth", pairs=_depths, title="The socket takes the plug's head", within="", **WORDS),
    agreement("socket.length", pairs=_lengths, title="The socket is as long as its plug", **WORDS),
    agreement("socket.words", pairs=_words, title="Keys and hand are alike", within="", **WORDS),
)

PLUG = """
kind = "plug"
drawing = "A-1"
revision = "B"
size = "20 mm"
head = "30 mm ±0.5"
shank = "50 mm"
keys = 2
hand = "left"
"""
SOCKET = """
kind = "socket"
drawing = "A-2"
takes = "plug"
size = "20 mm H7"
depth = "31 mm ±0.5"
length = "80 mm"
keys = 2
hand = "left"
"""


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    loaded = load_families([made_family("sockets", kinds=[Plug, Socket], rules=RULES)])
    return DesignFolder(tmp_path, loaded).write({"plug.toml": PLUG, "socket.toml": SOCKET})


def remedied(design: DesignFolder, rule: str) -> list[Remedy]:
    assessment = design.assess()
    found = next(one for one in assessment.checks if one.rule.name == rule)
    assert assessment.context is not None
    return remedies(found, assessment.checks, assessment.context)


@pytest.mark.parametrize("rule", [rule.name for rule in RULES])
def test_what_agrees_conforms(design: DesignFolder, rule: str) -> None:
    """30.5 mm of head at most goes into 30.5 mm of depth at least; 30 + 50 = 80 mm."""
    assert design.only(rule).outcome == "conforms"


@pytest.mark.parametrize(
    ("size", "outcome"), [("20.01 mm", "conforms"), ("20.011 mm", "finding"), ("19.98 mm", "finding")]
)
def test_two_sizes_may_differ_by_what_is_allowed(design: DesignFolder, size: str, outcome: str) -> None:
    """0.01 mm is allowed where nothing else is said; a tolerance is no difference of what is aimed at."""
    design.replace("plug.toml", 'size = "20 mm"', f'size = "{size}"')
    found = design.only("socket.size")
    assert (found.outcome, found.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_a_finding_names_both_places_with_value_line_and_drawing(design: DesignFolder) -> None:
    design.replace("plug.toml", 'size = "20 mm"', 'size = "22 mm"')
    found = design.only("socket.size")
    assert found.says == (
        "size 20 mm (socket.toml:5, drawing A-2) does not agree with "
        "size of plug 22 mm (plug.toml:5, drawing A-1 revision B)"
    )
    assert (found.where.file, found.where.line, found.where.key) == ("socket.toml", 5, "size")


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (('size = "20 mm"', 'size = "22 mm"'), "size 20 mm does not agree with size of plug 22 mm"),
        (('"30 mm ±0.5"', '"31 mm ±0.5"'), "depth 30.5 mm is less than head of plug 31.5 mm"),
        (
            ('"50 mm"', '"60 mm"'),
            "length 80 mm does not agree with 90 mm by head of plug and 1 more",
        ),
    ],
)
def test_page_one_names_both_places_with_their_values_alone(
    design: DesignFolder, change: tuple[str, str], said: str
) -> None:
    design.replace("plug.toml", *change)
    assert f"socket (A-2): {said}" in terminal_page.write(design.assess(), 120, full=False).text()


def test_a_finding_offers_the_change_here_and_the_change_there(design: DesignFolder) -> None:
    design.replace("plug.toml", 'size = "20 mm"', 'size = "22 mm"')
    assert [str(one) for one in remedied(design, "socket.size")] == [
        "size from 20 mm H7 to 22 mm H7, all else equal",
        "size of plug from 22 mm to 20 mm, all else equal",
    ]


@pytest.mark.parametrize(
    ("old", "new", "says", "offered"),
    [
        (
            "keys = 2",
            "keys = 3",
            "keys 2 (socket.toml:8, drawing A-2) does not agree with keys of plug 3 "
            "(plug.toml:8, drawing A-1 revision B)",
            ["keys from 2 to 3, all else equal", "keys of plug from 3 to 2, all else equal"],
        ),
        (
            'hand = "left"',
            'hand = "right"',
            'hand "left" (socket.toml:9, drawing A-2) does not agree with hand of plug "right" '
            "(plug.toml:9, drawing A-1 revision B)",
            [
                'hand from "left" to "right", all else equal',
                'hand of plug from "right" to "left", all else equal',
            ],
        ),
    ],
)
def test_words_and_counts_are_compared_and_changed(
    design: DesignFolder, old: str, new: str, says: str, offered: list[str]
) -> None:
    design.replace("plug.toml", old, new)
    assert design.only("socket.words").says == says
    assert [str(one) for one in remedied(design, "socket.words")] == offered


def test_every_pair_that_disagrees_is_listed(design: DesignFolder) -> None:
    design.replace("plug.toml", "keys = 2", "keys = 3").replace("plug.toml", '"left"', '"right"')
    found = design.only("socket.words")
    assert len(found.failing) == 2
    assert {place.where.key for one in found.failing for place in one.places} == {"keys", "hand"}


@pytest.mark.parametrize(("depth", "outcome"), [("31 mm ±0.5", "conforms"), ("31 mm ±0.51", "finding")])
def test_what_must_reach_is_taken_with_its_limits(design: DesignFolder, depth: str, outcome: str) -> None:
    """Least depth 30.5 or 30.49 mm against the greatest head, 30.5 mm."""
    design.replace("socket.toml", 'depth = "31 mm ±0.5"', f'depth = "{depth}"')
    assert design.only("socket.depth").outcome == outcome


def test_a_fact_worked_from_several_places_names_them_all(design: DesignFolder) -> None:
    """30 + 50 mm is not 81 mm: 80 is, or 51 and 30, or 50 and 31, for which the socket is not deep enough."""
    design.replace("socket.toml", '"80 mm"', '"81 mm"')
    found = design.only("socket.length")
    assert "head of plug 30 mm" in found.says
    assert "shank of plug 50 mm" in found.says
    assert [str(one) for one in remedied(design, "socket.length")] == [
        "length from 81 mm to 80 mm, all else equal",
        "shank of plug from 50 mm to 51 mm, all else equal",
        "head of plug from 30 mm ±0.5 to 31 mm ±0.5, but then socket.depth would not hold",
    ]


def _doubled(socket: Socket, sheet: Sheet) -> Iterator[Pair]:
    """The length against the head and as much again, and the depth against the head as it stands."""
    head = sheet.follow(socket.takes).head
    h = sheet.take_nominal("h", head)
    yield Pair(socket.length, worked(sheet.work("l", together, h=h, s=h), head), "at least", name="length")
    yield Pair(socket.depth, worked(h, head), "at least", name="depth")


@pytest.mark.parametrize(
    ("length", "relation"),
    [("60 mm", "is no less than"), ("59 mm", "is less than"), ("80 mm", "is no less than")],
)
def test_what_is_worked_from_one_place_stands_beside_it(
    design: DesignFolder, length: str, relation: str
) -> None:
    """Twice the head of 30 mm is 60 mm, which its place does not state; the head itself is what its place states.

    The depth of 31 mm ±0.5 is 30.5 mm at the least.
    """
    made = agreement("socket.twice", pairs=_doubled, title="Twice the head", within="", **WORDS)
    design.loaded = load_families([made_family("sockets", kinds=[Plug, Socket], rules=[made])])
    design.replace("socket.toml", '"80 mm"', f'"{length}"')
    found = design.only("socket.twice")
    says = [one.says for one in found.judgement.every] if found.judgement else []
    assert f"{relation} 60 mm, worked from head of plug 30 mm (plug.toml:" in says[0]
    assert "is no less than head of plug 30 mm (plug.toml:" in says[1]
    assert found.judgement is not None
    briefly = [one.brief for one in found.judgement.every]
    assert briefly == [
        f"length {length} {relation} 60 mm by head of plug",
        "depth 30.5 mm is no less than head of plug 30 mm",
    ]


def _limits(socket: Socket, sheet: Sheet) -> Iterator[Pair]:
    """Depth and size against both limits of the head, each with what it may differ by."""
    head = sheet.follow(socket.takes).head
    low, high = (Worked(one, (head.where,)) for one in sheet.take_limits("h", head))
    yield Pair(socket.depth, low, name="depth", within="wide")
    yield Pair(socket.length, high, name="length", within="narrow")


@pytest.mark.parametrize(
    ("depth", "length", "wrong"),
    [
        ("30.4 mm", "30.51 mm", []),
        ("30.6 mm", "30.51 mm", ["depth"]),
        ("29.5 mm", "30.52 mm", ["length"]),
    ],
)
def test_pairs_of_one_rule_may_differ_by_limits_of_their_own(
    design: DesignFolder, depth: str, length: str, wrong: list[str]
) -> None:
    """1 mm beside 29.5, and 0.01 mm beside 30.5: the limits of the head, of which each finding names its own."""
    wide, narrow = (
        Limit(name, size, "length", COMMON_PRACTICE, "what two sizes may differ by")
        for name, size in (("wide", "1 mm"), ("narrow", "0.01 mm"))
    )
    of_both = agreement(
        "socket.limits", pairs=_limits, title="Both", within="", limits=[wide, narrow], **WORDS
    )
    loaded = load_families([made_family("limits", kinds=[Plug, Socket], rules=[of_both])])
    design = DesignFolder(design.root, loaded)
    design.replace("socket.toml", '"31 mm ±0.5"', f'"{depth}"').replace(
        "socket.toml", '"80 mm"', f'"{length}"'
    )
    found = design.only("socket.limits")
    assert [one.places[0].where.key for one in found.failing] == wrong
    for one in found.failing:
        assert ("head of plug 29.5 mm" if wrong == ["depth"] else "head of plug 30.5 mm") in one.says


def _named(socket: Socket, sheet: Sheet) -> Iterator[Pair]:
    """The length against the head, of a plug of that hand: a word among what the fact was worked from."""
    plug = sheet.follow(socket.takes)
    hand = sheet.read("hand of the plug", plug.hand)
    head = sheet.take_nominal("h", plug.head)
    yield Pair(socket.length, worked(head, plug.head, plug.hand), name=hand)


def test_a_word_among_what_gives_a_fact_is_no_remedy(design: DesignFolder) -> None:
    named = agreement("socket.named", pairs=_named, title="The socket is as long as the head", **WORDS)
    loaded = load_families([made_family("named", kinds=[Plug, Socket], rules=[named])])
    assert [str(one) for one in remedied(DesignFolder(design.root, loaded), "socket.named")] == [
        "length from 80 mm to 30 mm, all else equal"
    ]


@pytest.mark.parametrize(("size", "offered"), [("37.99 mm", 2), ("38.01 mm", 1)])
def test_a_value_moved_far_is_another_design(design: DesignFolder, size: str, offered: int) -> None:
    """20 mm may become 20 × 1.9 = 38 mm and no more; that the plug may become 20 mm is less than half of it."""
    design.replace("plug.toml", 'size = "20 mm"', f'size = "{size}"')
    assert len(remedied(design, "socket.size")) == offered


def test_a_place_that_is_silent_is_worked_from_the_other(design: DesignFolder) -> None:
    design.replace("socket.toml", 'size = "20 mm H7"\n', "")
    found = design.only("socket.size")
    assert (found.outcome, found.says) == (
        "not applicable",
        "size is not stated: it is worked from the other place",
    )


def _where_stated(socket: Socket, sheet: Sheet) -> Iterator[Pair]:
    """The depth against the head, of a plug that is drawn whole."""
    plug = sheet.follow(socket.takes)
    asked = {"head": plug.head, "shank": plug.shank, "keys": plug.keys, "hand": plug.hand}
    stated = [sheet.is_stated(name, value) for name, value in asked.items()]
    if all(stated):
        yield Pair(socket.depth, plug.head)


@pytest.mark.parametrize(
    ("left_out", "says"),
    [
        (("head",), "nothing to compare; not stated: plug head"),
        (("head", "shank"), "nothing to compare; not stated: plug head, plug shank"),
        (
            ("head", "shank", "keys", "hand"),
            "nothing to compare; not stated: plug head, plug shank, plug keys and 1 more",
        ),
    ],
)
def test_what_leaves_nothing_to_compare_is_named(
    design: DesignFolder, left_out: tuple[str, ...], says: str
) -> None:
    text = (design.root / "plug.toml").read_text(encoding="utf-8").splitlines()
    kept = [line for line in text if line.partition(" ")[0] not in left_out]
    (design.root / "plug.toml").write_text("\n".join(kept) + "\n", encoding="utf-8")
    asking = agreement("socket.asking", pairs=_where_stated, title="Both", within="", **WORDS)
    loaded = load_families([made_family("asking", kinds=[Plug, Socket], rules=[asking])])
    check = DesignFolder(design.root, loaded).only("socket.asking")
    assert (check.outcome, check.says) == ("not applicable", says)


def test_the_other_place_must_not_be_silent(design: DesignFolder) -> None:
    design.replace("plug.toml", 'size = "20 mm"\n', "")
    found = design.only("socket.size")
    assert (found.outcome, found.says) == ("not assessed", "size is not stated in plug.toml")


def test_both_values_belong_to_the_fingerprint(design: DesignFolder) -> None:
    before = design.only("socket.size").fingerprint
    design.replace("plug.toml", 'size = "20 mm"', 'size = "20.005 mm"')
    after = design.only("socket.size").fingerprint
    design.replace("socket.toml", 'size = "20 mm H7"', 'size = "20.005 mm"')
    assert len({before, after, design.only("socket.size").fingerprint}) == 3


def test_a_difference_must_be_a_quantity() -> None:
    with pytest.raises(QuantityError):
        agreement("socket.odd", pairs=_sizes, title="Odd", within="5 bananas", **WORDS)


def test_a_quantity_is_not_held_against_a_word(design: DesignFolder) -> None:
    def mixed(socket: Socket, sheet: Sheet) -> Iterator[Pair]:
        """A slip of whoever wrote the rule."""
        yield Pair(socket.size, sheet.follow(socket.takes).hand)

    odd = agreement("socket.mixed", pairs=mixed, title="Mixed", within="", **WORDS)
    loaded = load_families([made_family("odd", kinds=[Plug, Socket], rules=[odd])])
    found: Check = DesignFolder(design.root, loaded).only("socket.mixed", runs=False)
    assert "held against a word" in found.could_not_run


def _outcomes(design: DesignFolder, plug: str, socket: str) -> tuple[str, str]:
    """How size and depth come out with one size and head of the plug, and one size and depth of the socket."""
    design.write(
        {
            "plug.toml": PLUG.replace('size = "20 mm"', f'size = "{plug}"').replace(
                '"30 mm ±0.5"', f'"{plug}"'
            ),
            "socket.toml": SOCKET.replace('"20 mm H7"', f'"{socket}"').replace('"31 mm ±0.5"', f'"{socket}"'),
        }
    )
    return design.only("socket.size").outcome, design.only("socket.depth").outcome


@pytest.mark.parametrize(("plug", "socket"), [(3, 3), (3, 4), (4, 3)])
def test_inches_and_millimetres_agree_alike(design: DesignFolder, plug: int, socket: int) -> None:
    """Quarters of an inch: 6.35 mm each, exactly."""
    sizes = [(f"{n / 4} in", f"{n * 6.35:.2f} mm") for n in (plug, socket)]
    ways = {_outcomes(design, one, other) for one in sizes[0] for other in sizes[1]}
    assert ways == {
        ("conforms" if plug == socket else "finding", "conforms" if socket >= plug else "finding"),
    }


@pytest.mark.parametrize("aimed", ["30 mm", "30.3 mm", "31 mm"])
def test_a_wider_tolerance_never_clears_what_has_to_reach(design: DesignFolder, aimed: str) -> None:
    """What conforms with some limits of head and depth conforms with narrower ones; the aim alone decides equality."""
    reached = [_outcomes(design, f"30 mm ±{wide}", f"{aimed} ±{wide}") for wide in ("0.01", "0.1", "0.4")]
    assert len({size for size, _ in reached}) == 1
    depths = [depth for _, depth in reached]
    assert depths == sorted(depths)  # conforms, then finding


@pytest.mark.parametrize("far", ["19.5 mm", "20.4 mm"])
def test_each_of_two_remedies_makes_both_agree(design: DesignFolder, far: str) -> None:
    design.replace("plug.toml", 'size = "20 mm"', f'size = "{far}"')
    assert len(remedied(design, "socket.size")) == 2
    design.replace("socket.toml", "20 mm H7", far)
    assert design.only("socket.size").outcome == "conforms"
    design.replace("socket.toml", f'"{far}"', '"20 mm H7"').replace(
        "plug.toml", f'size = "{far}"', 'size = "20 mm"'
    )
    assert design.only("socket.size").outcome == "conforms"


def _read_before(socket: Socket, sheet: Sheet) -> Iterator[Pair]:
    """The keys, which the rule has read as words before it counts them."""
    plug = sheet.follow(socket.takes)
    sheet.read("keys there", plug.keys)
    sheet.read("keys here", socket.keys)
    yield Pair(socket.keys, plug.keys, name="keys")


def test_a_count_that_a_rule_also_read_as_a_word_is_changed_as_a_count(design: DesignFolder) -> None:
    design.replace("plug.toml", "keys = 2", "keys = 3")
    read = agreement("socket.read", pairs=_read_before, title="Keys are alike", within="", **WORDS)
    loaded = load_families([made_family("read", kinds=[Plug, Socket], rules=[read])])
    assert [str(one) for one in remedied(DesignFolder(design.root, loaded), "socket.read")] == [
        "keys from 2 to 3, all else equal",
        "keys of plug from 3 to 2, all else equal",
    ]


@pytest.mark.parametrize(("must", "holding"), [("equal", {3}), ("at least", {3, 4}), ("at most", {2, 3})])
def test_a_count_holds_where_it_is_as_great_as_it_must_be(must: Any, holding: set[int]) -> None:
    """Two, three and four to three."""
    held: list[int] = []

    class Page:
        def __init__(self, here: int) -> None:
            self.here = here

        def states(self, holds: bool, _: str) -> None:
            held.extend([self.here] * holds)

        def between(self, *_: Any) -> None:
            """Nothing is written."""

    for here in (2, 3, 4):
        _same(Pair(Worked(here), Worked(3), must), Page(here))  # type: ignore[arg-type]
    assert set(held) == holding
