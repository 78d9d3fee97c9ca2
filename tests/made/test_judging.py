"""Parts as made, judged by every rule of the part and its mates; each rework is proved by running the rules.

The liner of the bench is 560.3 mm ±0.02 in a bore of 560 mm. By hand, with U = 0.004 mm: at 560.310 it is in; at
560.325 it is 560.321..560.329, out by more than U. It goes into a block heated to 150 °C: the bore grows by
560 × 12.7e-6 × 130 = 0.92 mm, so that 560.9 mm leaves no room to enter freely, and 560.3 mm does.
"""

from __future__ import annotations

import pytest

from speclint.checking import Assessment, assess, check
from speclint.made import Bench, Change, PartMade, bench_of, judge
from speclint.quantities import Measure, read
from speclint.specs import CylinderLiner, restated
from speclint.testing import DesignFolder, changed
from tests.plugins.liners.bench import bench, in_block, in_liner

MADE = """
kind = "made-part"
id = "liner-7"
of = "liner"
serial = "7"
[measured.outside_diameter]
values = ["560.3 mm"]
uncertainty = "4 µm"
date = "2026-05-31"
"""
#: The bore of the liner is finished when it is in, or before: then its tolerance is what it may close.
FINISHED_IN_PLACE = in_liner("finish_bored_after = false", "finish_bored_after = true")
PRESSED_LAST = in_liner("finish_bored_after = true", "finish_bored_after = false")
DRAWN = in_liner('"560.3 mm"', '"560.3 mm ±0.02"')


def judged(workshop: DesignFolder, size: str, *more: tuple[str, str, str], **files: str) -> PartMade:
    made = changed(MADE, ('"560.3 mm"', f'"{size} mm"'))
    named = {f"{name}.toml": text for name, text in files.items()}
    drawn = drained(workshop.write({**bench(DRAWN, FINISHED_IN_PLACE, *more), "liner-7.toml": made, **named}))
    assert not drawn.complaints
    return next(one for one in judge(drawn).parts if one.made.id == "liner-7")


def drained(workshop: DesignFolder) -> Assessment:
    """Assessed but for the water, as the drains of the bench are not drawn, and for limits, which its bores lack."""
    left_out = ("water.", "release.limits-stated")
    rules = [one for one in workshop.loaded.rules if not one.name.startswith(left_out)]
    return assess([workshop.root], workshop.loaded, rules)


def test_a_part_within_its_limits_is_as_drawn(workshop: DesignFolder) -> None:
    part = judged(workshop, "560.310")
    assert (part.outcome, part.failing, part.reworks) == ("as drawn", (), ())
    assert (part.fails_by_mates, part.margins) == (
        (),
        (),
    )  # no size is out, though more or less is used of limits
    fit = next(one for one in part.pairs if one.made.rule.name == "liner.fit-stress-cold")
    assert fit.made.utilisation != fit.drawn.utilisation  # it was run on what was measured
    assert any(step.note == "560.306..560.314 mm; as made; on liner-7" for step in fit.made.steps)


def test_a_size_at_its_limit_is_undecided(workshop: DesignFolder) -> None:
    assert judged(workshop, "560.318").outcome == "undecided"


def test_a_part_that_is_out_and_breaks_no_rule_may_be_conceded(workshop: DesignFolder) -> None:
    part = judged(workshop, "560.325")
    assert part.outcome == "ready to concede"
    assert [one.key for one in part.departures] == ["outside_diameter"]
    assert "liner.fit-hot" in {pair.made.rule.name for pair in part.margins}
    assert all((pair.made.utilisation or 0) <= 1 for pair in part.margins)


def test_a_part_that_is_out_is_not_conceded_before_what_rests_on_it_is_clear(workshop: DesignFolder) -> None:
    """The drains of the bench are not drawn: whether they pass the water, which hangs on the liner, is not assessed."""
    judged(workshop, "560.325")
    part = next(one for one in judge(workshop.assess()).parts if one.made.id == "liner-7")
    assert (part.outcome, part.failing) == ("held by other findings", ())
    assert "water.drain-passes-it" in {one.rule.name for one in part.open_as_drawn}


def test_a_part_that_is_out_is_not_conceded_beside_a_mate_by_which_a_rule_fails(
    workshop: DesignFolder,
) -> None:
    """The bore at 560.5 mm leaves 560.325 − 560.5 = −0.18 mm: loose, and a liner as drawn would be looser."""
    open_bore = changed(BLOCK_MADE, ('"560.0 mm"', '"560.5 mm"'))
    part = judged(workshop, "560.325", block_1=open_bore)
    assert (part.outcome, part.failing) == ("held by other findings", ())
    assert "liner.fit-hot" in {one.rule.name for one in part.fails_by_mates}


def test_a_shaft_too_large_is_machined_and_the_rules_prove_it(workshop: DesignFolder) -> None:
    """Metal is left on: to the drawing, or as far as it will enter; each run again here, by itself."""
    part = judged(workshop, "560.9")
    assert part.outcome == "rework"
    assert [one.rule.name for one in part.failing] == ["liner.entering"]
    hows = {one.how: one.changes[0] for one in part.reworks}
    assert hows["machine to the drawing"] == Change(
        "liner", "outside_diameter", "560.896..560.904 mm", "560.3 mm ±0.02"
    )
    until = hows["machine until it conforms"]
    drawn = workshop.assess()
    found = Bench.of(drawn)
    specs = found.specs_as_made(part.made)
    failing = part.failing[0]
    for text, outcome in ((until.then, "conforms"), (until.now, "finding")):
        size = read(text, "length")
        assert size.high <= read(until.now, "length").high  # metal comes off, not on
        liner = restated(specs["liner"], {"outside_diameter": size})
        again = check(failing.rule, liner, found.context({**specs, "liner": liner}))
        assert again.outcome == outcome


def test_a_shaft_too_small_is_not_machined_but_its_mate_can_be_made_to_match(workshop: DesignFolder) -> None:
    """Out by 559.9 − 560.3 = −0.4 mm: a bore of 560 − 0.4 = 559.6 mm has the interference of the drawing."""
    part = judged(workshop, "559.9")
    assert "liner.fit-hot" in {one.rule.name for one in part.failing}
    assert [(one.how, one.changes) for one in part.reworks] == [
        ("make the mate to match", (Change("block", "bores.main.diameter", "560 mm", "559.6 mm"),))
    ]


BLOCK_MADE = """
kind = "made-part"
id = "block-1"
of = "block"
serial = "1"
[measured."bores.main.diameter"]
values = ["560.0 mm"]
uncertainty = "4 µm"
date = "2026-05-31"
"""


def test_a_liner_that_does_not_name_its_bore_is_not_made_to_match(workshop: DesignFolder) -> None:
    """The bore came out at 560.5 mm: the liner that names it becomes 560.8 mm, 0.5 mm more; the other is let be."""
    open_bore = changed(BLOCK_MADE, ('"560.0 mm"', '"560.5 mm"'))
    files = bench(DRAWN, in_block('diameter = "560 mm"', 'diameter = "560 mm ±0.02"'))
    other = files["liner.toml"].replace('id = "liner"', 'id = "spare"').replace('in_bore = "main"\n', "")
    drawn = workshop.write({**files, "spare.toml": other, "block-1.toml": open_bore}).assess()
    assert not drawn.complaints
    [block] = judge(drawn).parts
    assert "liner.fit-hot" in {one.rule.name for one in block.failing}
    assert [(one.how, [change.spec for change in one.changes]) for one in block.reworks] == [
        ("make the mate to match", ["liner"])
    ]


def test_nothing_clears_a_shaft_too_small_for_a_bore_that_is_made(workshop: DesignFolder) -> None:
    part = judged(workshop, "559.9", block_1=BLOCK_MADE)
    assert (part.outcome, part.beside) == ("no rework found", ("block-1",))


def test_a_mate_stands_as_it_was_made(workshop: DesignFolder) -> None:
    """The bore at 560.5 mm leaves 560.31 − 560.5 = −0.19 mm: loose, and the liner as drawn would be loose too."""
    open_bore = changed(BLOCK_MADE, ('"560.0 mm"', '"560.5 mm"'))
    part = judged(workshop, "560.310", block_1=open_bore)
    assert (part.outcome, part.failing) == ("as drawn", ())
    assert "liner.fit-hot" in {one.rule.name for one in part.fails_by_mates}
    block = next(one for one in judge(workshop.assess()).parts if one.made.id == "block-1")
    assert "liner.fit-hot" in {one.rule.name for one in block.failing}


@pytest.mark.parametrize(("fitted", "beside"), [("", ()), ("fitted = true\n", ("block-1",))])
def test_of_several_made_to_one_spec_the_one_that_is_fitted_stands(
    workshop: DesignFolder, fitted: str, beside: tuple[str, ...]
) -> None:
    first = changed(BLOCK_MADE, ('serial = "1"\n', f'serial = "1"\n{fitted}'))
    second = changed(BLOCK_MADE, ('id = "block-1"', 'id = "block-2"'))
    assert judged(workshop, "560.310", block_1=first, block_2=second).beside == beside


def test_parts_are_told_by_what_becomes_of_them(workshop: DesignFolder) -> None:
    large = changed(
        MADE, ('"liner-7"', '"liner-8"'), ('serial = "7"', 'serial = "8"'), ('"560.3 mm"', '"560.325 mm"')
    )
    workshop.write({**bench(DRAWN, FINISHED_IN_PLACE), "liner-7.toml": MADE, "liner-8.toml": large})
    judged_all = judge(drained(workshop))
    assert [one.made.id for one in judged_all.of("as drawn")] == ["liner-7"]
    assert [one.made.id for one in judged_all.of("ready to concede")] == ["liner-8"]
    assert judged_all.of("rework") == []


def test_what_fails_as_drawn_is_no_fault_of_the_part(workshop: DesignFolder) -> None:
    """A bore without tolerance may not close at all, and does by what the liner is too large: as drawn 0.32 mm of
    interference at the most, and here 0.314 mm."""
    part = judged(workshop, "560.310", PRESSED_LAST)
    assert part.failing == ()
    assert {one.rule.name for one in part.open_as_drawn} >= {"liner.bore-after-pressing"}
    assert all(one.outcome in {"finding", "not assessed"} for one in part.open_as_drawn)


@pytest.mark.parametrize("size", ["560.318", "560.325"])
def test_what_fails_by_more_than_as_drawn_is_a_fault_of_the_part_where_no_share_of_the_limit_is_left(
    workshop: DesignFolder, size: str
) -> None:
    """Interference of 0.322 and of 0.329 mm, where the drawing has 0.32 mm at the most."""
    part = judged(workshop, size, PRESSED_LAST)
    assert [one.rule.name for one in part.failing] == ["liner.bore-after-pressing"]
    assert "liner.bore-after-pressing" in {pair.made.rule.name for pair in part.margins}
    assert "liner.bore-after-pressing" not in {one.rule.name for one in part.open_as_drawn}
    # also where the size itself is undecided; no scrap, as the drawing fails too
    assert part.outcome in {"rework", "held by other findings"}


def test_each_part_is_told_before_it_is_judged_and_others_are_left_out(workshop: DesignFolder) -> None:
    other = changed(MADE, ('"liner-7"', '"liner-8"'), ('serial = "7"', 'serial = "8"'))
    drawn = workshop.write({**bench(DRAWN), "liner-7.toml": MADE, "liner-8.toml": other}).assess()
    told: list[str] = []
    assert [one.made.id for one in judge(drawn, ["liner-8"], told.append).parts] == told == ["liner-8"]


@pytest.mark.parametrize("of", ['of = "nowhere"', "", 'of = "duty"'])
def test_a_part_made_to_no_component_that_could_be_read_is_judged_by_none(
    workshop: DesignFolder, of: str
) -> None:
    stray = changed(MADE, ('of = "liner"', of))
    drawn = workshop.write({**bench(DRAWN), "liner-7.toml": stray}).assess()
    [part] = judge(drawn).parts
    assert (part.drawn, part.dimensions, part.pairs, part.worn) == (None, (), (), ())


def test_nothing_is_judged_where_the_settings_could_not_be_read(workshop: DesignFolder) -> None:
    drawn = workshop.write(bench(DRAWN), settings="[works\n").assess()
    with pytest.raises(ValueError, match="nothing could be read to judge parts as made"):
        judge(drawn)
    with pytest.raises(ValueError, match="nothing could be read to pair parts as made"):
        bench_of(drawn)


def test_a_size_measured_with_no_uncertainty_stands_as_drawn(workshop: DesignFolder) -> None:
    made = changed(MADE, ('uncertainty = "4 µm"\n', ""), ('"560.3 mm"', '"560.9 mm"'))
    drawn = workshop.write({**bench(DRAWN), "liner-7.toml": made}).assess()
    bench_there = Bench.of(drawn)
    [part] = judge(drawn).parts
    assert (part.failing, part.departures) == ((), ())
    stands = bench_there.specs_as_made(part.made)["liner"]
    assert isinstance(stands, CylinderLiner)
    assert isinstance(stands.outside_diameter, Measure)
    assert stands.outside_diameter.high == pytest.approx(0.56032)
