"""Rework of two sizes at once, and a mate that is machined to suit its part, by hand working."""

from __future__ import annotations

from typing import Annotated, Any, ClassVar

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.checking import check
from speclint.families import Loaded, load_families
from speclint.handbook.fits import diametral_clearance
from speclint.made import Bench, bench_of, finish_sizes, judge, pair
from speclint.quantities import read
from speclint.specs import (
    CUT_DOWN,
    NOT_STATED,
    OPENED,
    OWN_PLACE,
    Component,
    FitsIn,
    Length,
    LinkTo,
    restated,
)
from speclint.testing import DesignFolder, made_family
from tests.made.test_pairing import made

_ABOUT: dict[str, Any] = {
    "grade": Grade.NONCONFORMITY,
    "cites": [FIRST_PRINCIPLES],
    "why": "for tests",
    "leaves_out": "nothing",
}


class Spool(Component):
    """A spool with a hub, and a spigot at each end whose clearance over the hub is judged."""

    kind: ClassVar[str] = "spool"
    called: ClassVar[str] = "spool"

    hub: Length = NOT_STATED
    front: Annotated[Length, CUT_DOWN] = NOT_STATED
    back: Annotated[Length, CUT_DOWN] = NOT_STATED


_LEAST = Limit("least", "0.9 mm", "length", FIRST_PRINCIPLES, "least clearance")
_GAUGE = Limit("gauge", "50.04 mm", "length", FIRST_PRINCIPLES, "size of the gauge")


@rule("spool.front", title="the hub clears the front", on=Spool, limits=[_LEAST], **_ABOUT)
def front(spool: Spool, sheet: Sheet) -> Judgement:
    """Hub less front."""
    D, d = sheet.take("D", spool.hub), sheet.take("d", spool.front)
    return sheet.at_least(sheet.work("c", diametral_clearance, D=D, d=d), sheet.limit("least"))


@rule("spool.back", title="the hub clears the back", on=Spool, limits=[_LEAST], **_ABOUT)
def back(spool: Spool, sheet: Sheet) -> Judgement:
    """Hub less back."""
    D, d = sheet.take("D", spool.hub), sheet.take("d", spool.back)
    return sheet.at_least(sheet.work("c", diametral_clearance, D=D, d=d), sheet.limit("least"))


DRAWN = 'kind = "spool"\nid = "spool"\nhub = "51 mm ±0.02"\nfront = "50 mm ±0.02"\nback = "50 mm ±0.02"\n'


def test_two_sizes_are_machined_where_no_single_one_clears_all(workshop: DesignFolder) -> None:
    """The hub came out at 50.80 mm, and nothing can be put on: both ends must come down to 50.799 − 0.9 = 49.899 mm.

    As drawn 51 − 0.02 − 50.02 = 0.96 mm; as made 50.799 − 50.02 = 0.779 mm at both ends.
    """
    workshop.loaded = load_families([made_family("spools", kinds=[Spool], rules=[front, back])])
    drawn = workshop.write({"spool.toml": DRAWN, **made("one", "spool", "hub", "50.800")}).assess()
    [part] = judge(drawn).parts
    assert {one.rule.name for one in part.failing} == {"spool.front", "spool.back"}
    assert part.outcome == "rework"
    [rework] = part.reworks  # the front and the back, which is the same as the back and the front
    changes = rework.changes
    assert {one.key for one in changes} == {"front", "back"}
    bench = Bench.of(drawn)
    spool = bench.specs_as_made(part.made)["spool"]
    sizes = {one.key: read(one.then, "length") for one in changes}
    assert all(0.0498 < one.high <= 0.049899 + 1e-9 for one in sizes.values())
    both = restated(spool, sizes)
    for keys, fails in ((("front", "back"), 0), (("front",), 1), (("back",), 1), ((), 2)):
        other = restated(spool, {key: sizes[key] for key in keys})
        context = bench.context({"spool": other})
        outcomes = [check(one, other, context).outcome for one in (front, back)]
        assert outcomes.count("finding") == fails, keys
    assert both is not spool


@rule(
    "spool.hub",
    title="the hub is large enough",
    on=Spool,
    limits=[Limit("least", "50.9 mm", "length", FIRST_PRINCIPLES, "least hub")],
    **_ABOUT,
)
def hub(spool: Spool, sheet: Sheet) -> Judgement:
    """The hub alone, on which nothing can be put."""
    return sheet.at_least(sheet.take("D", spool.hub), sheet.limit("least"))


def test_two_sizes_that_leave_a_rule_failing_are_no_rework(workshop: DesignFolder) -> None:
    """Of the hub of 50.80 mm both ends can be turned clear; it stays less than 50.9 mm."""
    workshop.loaded = load_families([made_family("spools", kinds=[Spool], rules=[front, back, hub])])
    files = {"spool.toml": DRAWN, **made("one", "spool", "hub", "50.800")}
    [part] = judge(workshop.write(files).assess()).parts
    assert len(part.failing) == 3
    assert (part.outcome, part.reworks) == ("no rework found", ())


@rule(
    "spool.step",
    title="the front stands above the back",
    on=Spool,
    limits=[Limit("least", "20 µm", "length", FIRST_PRINCIPLES, "least step")],
    **_ABOUT,
)
def step(spool: Spool, sheet: Sheet) -> Judgement:
    """Front less back."""
    D, d = sheet.take("D", spool.front), sheet.take("d", spool.back)
    return sheet.at_least(sheet.work("c", diametral_clearance, D=D, d=d), sheet.limit("least"))


def test_a_size_that_spoils_another_rule_is_machined_with_the_one_that_mends_it(
    workshop: DesignFolder,
) -> None:
    """For the hub of 50.80 mm the front comes down to 50.799 − 0.9 = 49.899 mm; the back is drawn 49.90 mm ±0.02, and
    must then be 20 µm less. As drawn the step is 49.98 − 49.92 = 60 µm at the least.
    """
    workshop.loaded = load_families([made_family("spools", kinds=[Spool], rules=[front, step])])
    text = DRAWN.replace('back = "50 mm ±0.02"', 'back = "49.90 mm ±0.02"')
    files = {"spool.toml": text, **made("one", "spool", "hub", "50.800")}
    [part] = judge(workshop.write(files).assess()).parts
    assert [one.rule.name for one in part.failing] == ["spool.front"]
    assert part.outcome == "rework"
    for rework in part.reworks:
        sizes = {one.key: read(one.then, "length") for one in rework.changes}
        assert sizes.keys() == {"front", "back"}
        assert sizes["front"].high <= 0.049899 + 1e-9
        assert sizes["front"].low - sizes["back"].high >= 20e-6 - 1e-9


@rule("spool.front-again", title="the hub clears the front", on=Spool, limits=[_LEAST], **_ABOUT)
def front_again(spool: Spool, sheet: Sheet) -> Judgement:
    """The same of the same sizes."""
    D, d = sheet.take("D", spool.hub), sheet.take("d", spool.front)
    return sheet.at_least(sheet.work("c", diametral_clearance, D=D, d=d), sheet.limit("least"))


def test_a_rework_that_clears_two_rules_is_told_once(workshop: DesignFolder) -> None:
    workshop.loaded = load_families([made_family("spools", kinds=[Spool], rules=[front, front_again])])
    files = {"spool.toml": DRAWN, **made("one", "spool", "front", "50.300")}
    [part] = judge(workshop.write(files).assess()).parts
    assert len(part.failing) == 2
    hows = [one.how for one in part.reworks]
    assert hows.count("machine to the drawing") == 1
    changes = [one.changes for one in part.reworks if one.how == "machine until it conforms"]
    assert len(set(changes)) == len(changes) > 0


@pytest.mark.parametrize(
    ("measured", "wanted"),
    [
        ({"front": "50.050", "back": "50.030"}, ["spool.front", "spool.back"]),
        ({"front": "50.030", "hub": "50.990"}, ["spool.front"]),
    ],
)
def test_the_margins_of_sizes_that_are_out_are_told_the_least_first(
    workshop: DesignFolder, measured: dict[str, str], wanted: list[str]
) -> None:
    """Above 50.02 mm an end is out: 50.98 − 50.051 = 0.929 mm at the front, 50.98 − 50.031 = 0.949 mm at the back, of
    0.9. A hub of 50.990 mm is in: the back takes that alone, and is not told, though it leaves 9 µm more.
    """
    workshop.loaded = load_families([made_family("spools", kinds=[Spool], rules=[front, back])])
    text = 'kind = "made-part"\nid = "one"\nof = "spool"\nserial = "one"\n' + "".join(
        f'[measured.{key}]\nvalues = ["{size} mm"]\nuncertainty = "1 µm"\ndate = "2026-05-31"\n'
        for key, size in measured.items()
    )
    [part] = judge(workshop.write({"spool.toml": DRAWN, "one.toml": text}).assess()).parts
    assert part.outcome == "ready to concede"
    assert [one.made.rule.name for one in part.margins] == wanted


@rule("spool.passes", title="the front passes its gauge", on=Spool, limits=[_GAUGE], **_ABOUT)
def passes(spool: Spool, sheet: Sheet) -> Judgement:
    """A number where it passes, words where it does not."""
    front_end, gauge = sheet.take("d", spool.front), sheet.limit("gauge")
    if front_end > gauge:
        return sheet.states(False, "the front passes")
    return sheet.at_most(front_end, gauge)


def test_what_fails_in_words_alone_is_a_fault_of_the_part_and_leaves_no_margin(
    workshop: DesignFolder,
) -> None:
    """As drawn up to 50.02 mm it passes a gauge of 50.04 mm; as made it is 50.051 mm."""
    workshop.loaded = load_families([made_family("spools", kinds=[Spool], rules=[front, passes])])
    files = {"spool.toml": DRAWN, **made("one", "spool", "front", "50.050")}
    [part] = judge(workshop.write(files).assess()).parts
    assert [one.rule.name for one in part.failing] == ["spool.passes"]
    assert [one.made.rule.name for one in part.margins] == ["spool.front"]


def test_another_part_that_fails_by_itself_keeps_no_rework_from_this_one(workshop: DesignFolder) -> None:
    """The front of the one came out at 50.30 mm: 50.98 − 50.301 = 0.679 mm. The hub of the other, 50.50 mm, leaves
    0.48 mm at both of its ends, whatever is done to the one.
    """
    workshop.loaded = load_families([made_family("spools", kinds=[Spool], rules=[front, back])])
    files = {
        "spool.toml": DRAWN,
        "other.toml": DRAWN.replace('"spool"\nhub', '"other"\nhub'),
        **made("one", "spool", "front", "50.300"),
        **made("two", "other", "hub", "50.500"),
    }
    one, two = judge(workshop.write(files).assess()).parts
    assert [check.rule.name for check in one.failing] == ["spool.front"]
    assert {check.rule.name for check in two.failing} == {"spool.front", "spool.back"}
    assert (one.outcome, one.beside) == ("rework", ())
    how = one.reworks[0]
    assert (how.how, how.changes[0].then) == ("machine to the drawing", "50 mm ±0.02")


class Socket(Component):
    """What a pin goes into, which can be reamed."""

    kind: ClassVar[str] = "socket"
    called: ClassVar[str] = "socket"

    bore: Annotated[Length, OPENED] = NOT_STATED


class Dowel(Component):
    """A dowel, which is ground no more."""

    kind: ClassVar[str] = "dowel"
    called: ClassVar[str] = "dowel"
    hosts: ClassVar[tuple[FitsIn, ...]] = (FitsIn("outside", "held_by", "bore"),)

    outside: Length = NOT_STATED
    held_by: Annotated[LinkTo[Socket], OWN_PLACE] = NOT_STATED


@rule(
    "dowel.slides",
    title="the dowel slides",
    on=Dowel,
    limits=[Limit("least", "20 µm", "length", FIRST_PRINCIPLES, "least clearance")],
    **_ABOUT,
)
def slides(dowel: Dowel, sheet: Sheet) -> Judgement:
    """At least."""
    return sheet.at_least(_clearance(dowel, sheet), sheet.limit("least"))


@rule(
    "dowel.tight",
    title="the dowel is tight",
    on=Dowel,
    limits=[Limit("most", "100 µm", "length", FIRST_PRINCIPLES, "greatest clearance")],
    **_ABOUT,
)
def tight(dowel: Dowel, sheet: Sheet) -> Judgement:
    """At most."""
    return sheet.at_most(_clearance(dowel, sheet), sheet.limit("most"))


def _clearance(dowel: Dowel, sheet: Sheet) -> float:
    bore, outside = sheet.take("D", sheet.follow(dowel.held_by).bore), sheet.take("d", dowel.outside)
    return sheet.work("c", diametral_clearance, D=bore, d=outside)


@pytest.fixture(scope="module")
def dowels() -> Loaded:
    return load_families([made_family("dowels", kinds=[Socket, Dowel], rules=[slides, tight])])


@pytest.mark.parametrize(
    ("bore", "size"),
    [("50.030", "50.065 mm ±0.001"), ("50.090", None)],  # a bore too large cannot be made less
)
def test_a_bore_is_opened_for_its_dowel(
    workshop: DesignFolder, dowels: Loaded, bore: str, size: str | None
) -> None:
    """A dowel of 50.030 mm, U = 1 µm, reamed to 1 µm: (c − 22)/20 = (98 − c)/100 at c = 34.67 µm; 35 leaves 0.63:
    the bore is 50.065 mm. In 50.090 mm it has 60 µm and stands as it is.
    """
    workshop.loaded = dowels
    files = {
        "socket.toml": 'kind = "socket"\nid = "socket"\nbore = "50.07 mm ±0.03"\n',
        "dowel.toml": 'kind = "dowel"\nid = "dowel"\noutside = "50.02 mm ±0.03"\nheld_by = "socket"\n',
        **made("s-1", "socket", "bore", bore),
        **made("d-1", "dowel", "outside", "50.030"),
    }
    bench = bench_of(workshop.write(files).assess())
    found = pair(bench, "dowel", "socket")
    sizes = finish_sizes(bench, found, 1e-6)
    if size is None:
        assert (len(found.pairs), sizes) == (1, ())
        return
    [one] = [one for one in sizes if one.part is not None and one.part.id == "s-1"]
    assert (one.key, one.then.text) == ("bore", size)
    assert one.proof.part is not None
    assert one.proof.part.id == "d-1"
    assert one.proof.margin == pytest.approx(0.63)


@pytest.mark.parametrize(("bore", "machined"), [("50.020", True), ("50.110", False)])
def test_a_bore_is_machined_to_its_drawing_only_where_metal_is_left(
    workshop: DesignFolder, dowels: Loaded, bore: str, *, machined: bool
) -> None:
    """Drawn 50.04 to 50.06 mm, for dowels of 49.99 to 50.01 mm: 30 to 70 µm. One of 50.020 mm leaves 50.019 − 50.01 =
    9 µm and can be reamed; one of 50.110 mm leaves 50.111 − 49.99 = 121 µm, and nothing can be put on.
    """
    workshop.loaded = dowels
    files = {
        "socket.toml": 'kind = "socket"\nid = "socket"\nbore = "50.05 mm ±0.01"\n',
        "dowel.toml": 'kind = "dowel"\nid = "dowel"\noutside = "50.00 mm ±0.01"\nheld_by = "socket"\n',
        **made("s-1", "socket", "bore", bore),
    }
    [part] = judge(workshop.write(files).assess()).parts
    assert part.failing
    hows = {one.how: one.changes[0].then for one in part.reworks}
    assert hows.get("machine to the drawing") == ("50.05 mm ±0.01" if machined else None)


@pytest.mark.parametrize(
    ("socket", "dowel"),
    [("", 'outside = "50.02 mm ±0.03"\n'), ('bore = "50.07 mm ±0.03"\n', "")],
)
def test_no_finish_size_is_given_where_a_drawing_states_no_size(
    workshop: DesignFolder, dowels: Loaded, socket: str, dowel: str
) -> None:
    """The socket has no bore on its drawing, or the dowel no diameter; both were measured."""
    workshop.loaded = dowels
    files = {
        "socket.toml": f'kind = "socket"\nid = "socket"\n{socket}',
        "dowel.toml": f'kind = "dowel"\nid = "dowel"\n{dowel}held_by = "socket"\n',
        **made("s-1", "socket", "bore", "50.030"),
        **made("d-1", "dowel", "outside", "50.030"),
    }
    bench = bench_of(workshop.write(files).assess())
    found = pair(bench, "dowel", "socket")
    assert [one.spec.id for one in found.empty] == ["dowel"]
    assert finish_sizes(bench, found, 1e-6) == ()
