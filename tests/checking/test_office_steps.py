"""Remedies in the steps of the drawing office, held to hand working; written into the spec they clear the finding."""

from __future__ import annotations

import random
from pathlib import Path
from typing import Annotated, Any, ClassVar

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.checking import Remedy, question, solved
from speclint.checking.office_steps import listed, rounding, threads
from speclint.families import Loaded, load_families
from speclint.handbook.threads import nominal_diameter
from speclint.quantities import read
from speclint.specs import NOT_STATED, OWN_PLACE, Component, Force, Fraction, Length, LinkTo, Pressure, Word
from speclint.testing import DesignFolder, made_family
from tests.remedies import remedies


class Gauge(Component):
    """What a plug is held against."""

    kind: ClassVar[str] = "gauge"
    called: ClassVar[str] = "gauge"

    size: Length = NOT_STATED
    load: Force = NOT_STATED
    share: Fraction = NOT_STATED
    pressure: Pressure = NOT_STATED


class Plug(Component):
    """A plug."""

    kind: ClassVar[str] = "plug"
    called: ClassVar[str] = "plug"

    outside: Length = NOT_STATED
    thickness: Length = NOT_STATED
    as_made: Length = NOT_STATED
    thread: Word[str] = NOT_STATED
    load: Force = NOT_STATED
    share: Fraction = NOT_STATED
    pressure: Pressure = NOT_STATED
    held_by: Annotated[LinkTo[Gauge], OWN_PLACE] = NOT_STATED


_COMMON: dict[str, Any] = {
    "on": Plug,
    "grade": Grade.NONCONFORMITY,
    "cites": [FIRST_PRINCIPLES],
    "why": "for tests",
    "leaves_out": "nothing",
}


@rule("plug.least", title="the outside is at least the gauge", **_COMMON)
def least(plug: Plug, sheet: Sheet) -> Judgement:
    """At least, with its limits."""
    return sheet.at_least(sheet.take("d", plug.outside), sheet.take("D", sheet.follow(plug.held_by).size))


@rule("plug.most", title="the outside is at most the gauge", **_COMMON)
def most(plug: Plug, sheet: Sheet) -> Judgement:
    """At most, with its limits."""
    return sheet.at_most(sheet.take("d", plug.outside), sheet.take("D", sheet.follow(plug.held_by).size))


@rule("plug.within", title="the outside is within the limits of the gauge", **_COMMON)
def within(plug: Plug, sheet: Sheet) -> Judgement:
    """A window: at least the one limit of the gauge and at most the other."""
    low, high = sheet.take_limits("D", sheet.follow(plug.held_by).size)
    d = sheet.take("d", plug.outside)
    return sheet.worst(sheet.at_least(d, low), sheet.at_most(d, high))


@rule("plug.aimed", title="the size is the one that was aimed at", **_COMMON)
def aimed(plug: Plug, sheet: Sheet) -> Judgement:
    """The nominal is as before, whatever its limits are."""
    return sheet.at_most(
        sheet.take_nominal("d", plug.outside), sheet.take("D", sheet.follow(plug.held_by).size)
    )


@rule("plug.thick", title="the plug is thick enough", **_COMMON)
def thick(plug: Plug, sheet: Sheet) -> Judgement:
    """A thickness."""
    return sheet.at_least(sheet.take("t", plug.thickness), sheet.take("t_0", sheet.follow(plug.held_by).size))


@rule("plug.thin", title="the plug is thin enough", **_COMMON)
def thin(plug: Plug, sheet: Sheet) -> Judgement:
    """A thickness from the other side."""
    return sheet.at_most(sheet.take("t", plug.thickness), sheet.take("t_0", sheet.follow(plug.held_by).size))


@rule("plug.thread", title="the thread is large enough", **_COMMON)
def thread(plug: Plug, sheet: Sheet) -> Judgement:
    """A number taken from a designation."""
    designation = sheet.read("thread", plug.thread)
    d = sheet.look_up("d", nominal_diameter, designation=designation)
    return sheet.at_least(d, sheet.take("D", sheet.follow(plug.held_by).size))


@rule("plug.small-thread", title="the thread is small enough", **_COMMON)
def small_thread(plug: Plug, sheet: Sheet) -> Judgement:
    """The same from the other side."""
    designation = sheet.read("thread", plug.thread)
    d = sheet.look_up("d", nominal_diameter, designation=designation)
    return sheet.at_most(d, sheet.take("D", sheet.follow(plug.held_by).size))


@rule("plug.load", title="the plug carries the load of the gauge", **_COMMON)
def load(plug: Plug, sheet: Sheet) -> Judgement:
    """A force."""
    return sheet.at_least(sheet.take("F", plug.load), sheet.take("F_0", sheet.follow(plug.held_by).load))


@rule("plug.share", title="the share is at most that of the gauge", **_COMMON)
def share(plug: Plug, sheet: Sheet) -> Judgement:
    """A ratio."""
    return sheet.at_most(sheet.take("x", plug.share), sheet.take("x_0", sheet.follow(plug.held_by).share))


@rule("plug.pressure", title="the pressure is at most that of the gauge", **_COMMON)
def pressure(plug: Plug, sheet: Sheet) -> Judgement:
    """A fluid pressure."""
    return sheet.at_most(
        sheet.take("p", plug.pressure), sheet.take("p_0", sheet.follow(plug.held_by).pressure)
    )


RULES = {
    one.name.partition(".")[2]: one
    for one in (least, most, within, aimed, thick, thin, thread, small_thread, load, share, pressure)
}


def loaded(*names: str) -> Loaded:
    return load_families([made_family("plugs", kinds=[Plug, Gauge], rules=[RULES[one] for one in names])])


def folder(root: Path, plug: str, gauge: str, *names: str) -> DesignFolder:
    files = {
        "plug.toml": f'kind = "plug"\nheld_by = "gauge"\n{plug}\n',
        "gauge.toml": f'kind = "gauge"\n{gauge}\n',
    }
    return DesignFolder(root, loaded(*names)).write(files)


def offered(design: DesignFolder, name: str) -> list[Remedy]:
    assessment = design.assess()
    assert not assessment.complaints, assessment.complaints
    assert assessment.context is not None
    found = next(one for one in assessment.checks if one.rule.name == f"plug.{name}")
    assert found.outcome == "finding"
    return remedies(found, assessment.checks, assessment.context)


def only(root: Path, name: str, plug: str, gauge: str) -> Remedy:
    """The one remedy, written into the spec and checked anew."""
    design = folder(root, plug, gauge, name)
    (remedy,) = offered(design, name)
    design.replace("plug.toml", f'"{remedy.written}"', f'"{remedy.instead}"')
    assert design.only(f"plug.{name}").outcome == "conforms"
    return remedy


@pytest.mark.parametrize(
    ("name", "size", "gauge", "then"),
    [
        # ISO 286-1, shafts over 180 to 200 mm: lower deviation of s 122, t 166, u 236, v 284 µm; IT6 is 29 µm
        ("least", "190 mm s6", "190.166 mm", "190 mm t6"),
        ("least", "190 mm s6", "190.167 mm", "190 mm u6"),
        ("least", "190 mm s6", "190.236 mm", "190 mm u6"),
        ("least", "190 mm s6", "190.237 mm", "190 mm v6"),
        # upper deviations: r 77 + 29 = 106, p 50 + 29 = 79 µm
        ("most", "190 mm s6", "190.106 mm", "190 mm r6"),
        ("most", "190 mm s6", "190.105 mm", "190 mm p6"),
        # holes over 80 to 120 mm, IT7 is 35 µm: G +12, F +36 µm below; JS ± 17.5, K7 +10/-25, M7 0/-35 µm
        ("least", "100 mm H7", "100.012 mm", "100 mm G7"),
        ("least", "100 mm H7", "100.013 mm", "100 mm F7"),
        ("most", "100 mm H7", "100.010 mm", "100 mm K7"),
        ("most", "100 mm H7", "100.009 mm", "100 mm M7"),
        # beyond zc, the lower deviation of which is 1150 µm, the size itself: 191 mm u6 would be another
        ("least", "190 mm s6", "191.2 mm", "191.1 mm s6"),
    ],
)
def test_a_class_gives_way_to_the_next_letter_of_its_grade(
    tmp_path: Path, name: str, size: str, gauge: str, then: str
) -> None:
    remedy = only(tmp_path, name, f'outside = "{size}"', f'size = "{gauge}"')
    assert str(remedy) == f"outside from {size} to {then}, all else equal"


def test_a_rule_that_takes_the_nominal_sees_it_unmoved(tmp_path: Path) -> None:
    """190 mm u6 lies wholly above 190.2 mm, and is aimed at 190 mm still."""
    design = folder(tmp_path, 'outside = "190 mm s6"', 'size = "190.2 mm"', "least", "aimed")
    (remedy,) = offered(design, "least")
    assert (remedy.instead, remedy.spoils) == ("190 mm u6", ())


@pytest.mark.parametrize(
    ("name", "size", "gauge", "then"),
    [
        # 28 µm wide: steps of 0.001 mm
        ("least", "190 mm +0.150/+0.122", "190.184 mm", "190 mm +0.212/+0.184"),
        ("least", "190 mm +0.150/+0.122", "190.1831 mm", "190 mm +0.212/+0.184"),
        ("most", "190 mm +0.150/+0.122", "190.1394 mm", "190 mm +0.139/+0.111"),
        # 0.5 mm wide: steps of 0.01 mm
        ("least", "190 mm +0.3/-0.2", "190.155 mm", "190 mm +0.66/+0.16"),
        # 1 mm wide, of equal limits: the size moves in steps of 0.1 mm
        ("least", "105 mm ±0.5", "105.02 mm", "105.6 mm ±0.5"),
        ("most", "105 mm ±0.5", "105.02 mm", "104.5 mm ±0.5"),
        # 0.2 mm wide: 0.01 mm; both ends of a range move
        ("least", "20.0..20.2 mm", "20.055 mm", "20.06..20.26 mm"),
        # limits that lie further out than any class would: the size moves
        ("least", "100 mm +0.3/-0.2", "101.83 mm", "102.1 mm +0.3/-0.2"),
    ],
)
def test_written_limits_move_in_a_step_that_fits_their_width(
    tmp_path: Path, name: str, size: str, gauge: str, then: str
) -> None:
    assert only(tmp_path, name, f'outside = "{size}"', f'size = "{gauge}"').instead == then


@pytest.mark.parametrize(
    ("name", "size", "gauge", "then"),
    [
        ("least", "190 mm", "190.184 mm", "190.2 mm"),
        ("most", "190 mm", "189.96 mm", "189.9 mm"),
        ("least", "0.5 mm", "0.513 mm", "0.52 mm"),
        ("least", "1 3/4 in", "1.751 in", "1 49/64 in"),
        ("least", "1.75 in", "1.751 in", "1.755 in"),
        ("most", "7/8 in", "0.87 in", "55/64 in"),
    ],
)
def test_a_plain_length_moves_by_a_tenth_or_by_a_sixty_fourth(
    tmp_path: Path, name: str, size: str, gauge: str, then: str
) -> None:
    """1.751 in is 112.06 sixty-fourths: 113 are 1 49/64 in; 0.87 in is 55.7: 55."""
    assert only(tmp_path, name, f'outside = "{size}"', f'size = "{gauge}"').instead == then


@pytest.mark.parametrize(
    ("gauge", "said"),
    [
        ("100.12..100.18 mm", "100 mm to exactly 100.12 mm"),
        ("100.12..100.28 mm", "100 mm to 100.2 mm"),
        ("100.08..100.18 mm", "100 mm to 100.1 mm"),
        ("99.82..99.88 mm", "100 mm to exactly 99.88 mm"),
    ],
)
def test_a_window_narrower_than_the_step_is_met_exactly_and_said_so(
    tmp_path: Path, gauge: str, said: str
) -> None:
    """No multiple of 0.1 mm lies between the gauges' limits: the least change is 0.12 mm."""
    assert said in str(only(tmp_path, "within", 'outside = "100 mm"', f'size = "{gauge}"'))


@pytest.mark.parametrize(
    ("name", "size", "gauge", "then"),
    [
        ("thick", "18 mm", "18.2 mm", "20 mm"),
        ("thick", "20 mm", "20.1 mm", "25 mm"),
        ("thin", "20 mm", "19.5 mm", "15 mm"),
        ("thick", "3/4 in", "0.8 in", "7/8 in"),
    ],
)
def test_plate_is_taken_in_the_next_thickness_rolled(
    tmp_path: Path, name: str, size: str, gauge: str, then: str
) -> None:
    plug = f'material = "plate-P265GH"\nthickness = "{size}"'
    assert only(tmp_path, name, plug, f'size = "{gauge}"').instead == then


@pytest.mark.parametrize(
    "more", ['material = "plate-P265GH"\nas_made = "25 mm"', 'material = "forging-C45E"', ""]
)
def test_what_is_machined_or_no_plate_has_any_thickness(tmp_path: Path, more: str) -> None:
    assert only(tmp_path, "thick", f'{more}\nthickness = "18 mm"', 'size = "18.15 mm"').instead == "18.2 mm"


@pytest.mark.parametrize(
    ("name", "size", "gauge", "then", "change"),
    [
        ("thread", "M20", "21 mm", "M22", 2 / 20),
        ("thread", "M20", "22.5 mm", "M24", 4 / 20),
        ("thread", "M20", "29 mm", "M30", 10 / 20),  # the fourth
        ("small-thread", "M20", "19 mm", "M18", 2 / 20),
        ("thread", "7/8 BSW", "0.9 in", "1 BSW", 1 / 7),
    ],
)
def test_a_thread_gives_way_to_the_next_of_its_series(
    tmp_path: Path, name: str, size: str, gauge: str, then: str, change: float
) -> None:
    """The change is told by the diameters, as a share of that which is stated: from M20 to M22 it is a tenth."""
    remedy = only(tmp_path, name, f'thread = "{size}"', f'size = "{gauge}"')
    assert str(remedy) == f"thread from {size} to {then}, all else equal"
    assert remedy.change == pytest.approx(change)


@pytest.mark.parametrize("size", ["M22", "M27"])
def test_the_least_thread_that_holds_may_be_the_present_one(tmp_path: Path, size: str) -> None:
    """M22 is at least 21 mm and M20 is not; a larger one holds as far as is looked."""
    shop = folder(tmp_path, f'thread = "{size}"', 'size = "21 mm"', "thread")
    assessment = shop.assess()
    assert assessment.design is not None
    found = solved(assessment, question("plug.thread=?", assessment.design), "plug.thread")
    assert [(one.written, one.beyond, one.higher) for one in found.bounds] == [("M22", "M20", False)]


def test_a_few_threads_are_tried_and_no_more(tmp_path: Path) -> None:
    """M22, M24, M27 and M30 are too small for 33 mm; a fine thread has no next one."""
    assert offered(folder(tmp_path, 'thread = "M20"', 'size = "33 mm"', "thread"), "thread") == []
    assert threads("M24x2") == ([], [])
    assert threads("welded") == ([], [])


@pytest.mark.parametrize(
    ("name", "plug", "gauge", "then"),
    [
        ("load", 'load = "1240 N"', 'load = "1263 N"', "1270 N"),
        ("load", 'load = "1.24 kN"', 'load = "1263 N"', "1.27 kN"),
        ("share", 'share = "0.85"', 'share = "0.837"', "0.83"),
        ("share", 'share = "85 %"', 'share = "83.7 %"', "83 %"),
        ("pressure", 'pressure = "15.5 bar gauge"', 'pressure = "15.04 bar gauge"', "15 bar gauge"),
    ],
)
def test_other_quantities_move_by_a_hundredth_of_their_decade(
    tmp_path: Path, name: str, plug: str, gauge: str, then: str
) -> None:
    """1240 N by 10 N, 1.24 kN by 0.01 kN, 15.5 bar by 0.1 bar; a share of one by 0.01."""
    assert only(tmp_path, name, plug, gauge).instead == then


def before(remedy: Remedy, dimension: str = "length") -> str:
    """The step before a remedy, on the way from what the spec states; "" where that is what it states."""
    now = read(remedy.written, dimension)
    for some in listed(now, plate=False):
        texts = [now.text, *(one.text for one in some)]
        if remedy.instead in texts:
            return texts[texts.index(remedy.instead) - 1]
    for limits in (True, False):
        steps = rounding(now, limits=limits)
        way = read(remedy.instead, dimension).low - now.low
        back = way - (steps.steps[0] if way > 0 else -steps.steps[0]) if steps else 0.0
        found = steps.rounded(back * (1 - 1e-9), 0, 0) if steps and abs(back) > 1e-9 else None
        then = steps.rounded(way * (1 - 1e-9), 0, 0) if steps else None
        if then and then.text == remedy.instead:
            return found.text if found and back * way > 0 else now.text
    raise AssertionError(f"{remedy.instead} is no step from {remedy.written}")


_SIZES = ("{n} mm", "{n} mm ±0.2", "{n} mm +0.05/-0.01", "{n} mm H7", "{n} mm s6", "{n} mm f8", "{n}..{m} mm")


@pytest.mark.parametrize("seed", range(12))
def test_every_remedy_clears_its_finding_and_the_step_before_it_does_not(tmp_path: Path, seed: int) -> None:
    """Sizes and gauges by chance, always the same ones."""
    chance = random.Random(seed)
    nominal = chance.randint(10, 300)
    size = chance.choice(_SIZES).format(n=nominal, m=nominal + 0.25)
    name = chance.choice(("least", "most"))
    by = chance.uniform(0.002, 0.4) if name == "least" else -chance.uniform(0.002, 0.4)
    stated = read(size, "length")
    reached = (stated.low if name == "least" else stated.high) * 1e3 + by
    design = folder(tmp_path, f'outside = "{size}"', f'size = "{reached:.4f} mm"', name)
    (remedy,) = offered(design, name)
    assert not remedy.exact
    design.replace("plug.toml", f'"{size}"', f'"{remedy.instead}"')
    assert design.only(f"plug.{name}").outcome == "conforms"
    design.replace("plug.toml", f'"{remedy.instead}"', f'"{before(remedy)}"')
    assert design.only(f"plug.{name}").outcome == "finding"
