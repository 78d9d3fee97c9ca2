"""The card of the engine of the worked cases: where its lines, crosses and words stand.

16.2 bar in the chest, 1.35 in the belt. The clearance of the front is 9500 cm³ and 8 mm of 0.19635 m², 0.085429 of its
stroke of 660 mm; that of the back 9400 cm³ and 8 mm of 0.18999 m², 0.087087. So 1.172516 of a stroke lie on 660 units
from 70 on: dead centre at 118.087 and 680.979, 562.892 apart. The field is 390 tall, from 26 to 416.
"""

from __future__ import annotations

from typing import Any

import pytest

from speclint import OutOfRange
from speclint.errors import replace
from speclint_events.figures import indicator_card as made
from speclint_events.figures.fields import Field
from speclint_events.figures.gears import GearDrawn, gears_drawn
from tests.plugins.events.marks import Noted, curves, lines, said
from tests.plugins.events.test_figures import assessed, drawn, size_of

LEFT, WIDE = 118.087, 562.892
CARD = "indicator-gear"


def gear() -> GearDrawn:
    (found,) = gears_drawn(assessed())
    return found


def level(bar: float) -> float:
    """How far down a pressure stands, by that of the chest at the top and nothing at the foot."""
    chest = min(y for _, y, _, _ in lines(drawn(CARD).drawing, "fine"))
    return 416 - bar / 16.2 * (416 - chest)


def test_the_clearance_volumes_stand_beyond_the_dead_centres() -> None:
    figure = drawn(CARD).drawing
    stand = said(figure)
    assert [stand[f"{n / 10:g}"][0] for n in range(1, 11)] == pytest.approx(
        [LEFT + WIDE * n / 10 for n in range(1, 11)], abs=0.1
    )
    upright = sorted(x for x, top, _, foot in lines(figure, "axis") if (top, foot) == (416, 26))
    assert upright == pytest.approx([LEFT, LEFT + WIDE], abs=0.1)


def test_there_is_room_above_the_chest() -> None:
    """The axis ends at 1.08 of the greatest pressure, which is that of the chest or a little less."""
    assert min(y for _, y, _, _ in lines(drawn(CARD).drawing, "fine")) == pytest.approx(
        416 - 390 / 1.08, abs=0.1
    )


def test_the_axes_are_named() -> None:
    """That across beneath the middle of the field, 36 lower than its foot; that up beside its middle."""
    stand = said(drawn(CARD).drawing)
    assert stand["share of the stroke from the front dead centre"] == (400, 452, "middle")
    assert stand["pressure, bar absolute"][1] == 221


def test_the_theoretical_diagrams_begin_at_the_pressure_of_the_chest() -> None:
    """That of the front at the left, that of the back at the right; both reach down to the belt."""
    front, back = (line for ink, line in curves(drawn(CARD).drawing) if ink == "axis")
    for line, dead in ((front, LEFT), (back, LEFT + WIDE)):
        assert min(y for _, y in line) == pytest.approx(level(16.2), abs=0.1)
        assert max(y for _, y in line) == pytest.approx(level(1.35), abs=0.1)
        assert any((x, y) == pytest.approx((dead, level(16.2)), abs=0.2) for x, y in line)


def test_what_stands_beneath_the_card() -> None:
    stand = said(drawn(CARD).drawing)
    beneath = {text: at for text, at in stand.items() if "mean effective pressure" in text}
    assert [text.split(":")[0] for text in beneath] == ["front", "back"]
    assert list(beneath.values()) == [(70, 480, "start"), (70, 500, "start")]


def test_words_keep_clear_of_the_lines_and_stand_at_their_events(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each cross has its share of the stroke, and each end its name at 0.6 of its stroke, on its expansion."""
    levels = [  # before anything is put in place: they are read off the card that is kept for all tests
        [(70.0, pytest.approx(level(bar), abs=0.1)), (730.0, pytest.approx(level(bar), abs=0.1))]
        for bar in (16.2, 1.35, 1.01325)
    ]
    noted = Noted()
    monkeypatch.setattr(Field, "labels", lambda _: noted)
    (figure,) = made.indicator_cards(assessed())
    diagrams = [line for ink, line in curves(figure.drawing) if ink in ("edge", "edge dashed")]
    assert noted.avoided == [*levels, *diagrams]
    strokes = lines(figure.drawing, "edge")
    crosses = [((x_1 + x_2) / 2, (y_1 + y_2) / 2) for x_1, y_1, x_2, y_2 in strokes[::2]]
    assert [at for at, _ in noted.put_at[:8]] == [pytest.approx(one, abs=0.06) for one in crosses]
    shares = [
        size_of(figure, f"{event}, {side}").split(", ")[1].split(" %")[0] + " %"
        for side in ("front", "back")
        for event in ("cut-off", "admission", "release", "compression")
    ]
    assert [says for _, says in noted.put_at] == [*shares, "front", "back"]
    for (x, y), share in zip((at for at, _ in noted.put_at[8:]), (0.6, 0.4), strict=True):
        assert x == pytest.approx(LEFT + WIDE * share, abs=0.1)
        assert level(16.2) < y < level(1.35)


def test_the_table_says_what_is_made_and_what_is_left_of_the_stroke() -> None:
    figure = drawn(CARD)
    for side in ("front", "back"):
        for event, ends in (
            ("admission", "of the stroke left"),
            ("cut-off", "of the stroke"),
            ("release", "of the stroke"),
            ("compression", "of the stroke left"),
        ):
            assert size_of(figure, f"{event}, {side}").endswith(ends)
    assert size_of(figure, "chest and belt") == "16.20 bar and 1.35 bar absolute"


@pytest.mark.parametrize("missing", ["p_mf", "k_f"])
def test_of_a_sheet_that_lacks_a_number_nothing_is_said(missing: str) -> None:
    """Of the front; the sheet of the back is whole."""
    whole = gear()
    check = whole.checks["cycle.steam-rate"]
    steps = tuple(step for step in check.steps if step.symbol != missing)
    told = [
        what for what, _ in made._rows(replace(whole, checks={check.rule.name: replace(check, steps=steps)}))
    ]
    assert "on the sheet of cycle.steam-rate, front" not in told
    assert "on the sheet of cycle.steam-rate, back" in told


def test_a_cycle_that_cannot_be_worked_hides_no_other(monkeypatch: pytest.MonkeyPatch) -> None:
    first, second = replace(gear(), name="first"), replace(gear(), name="second")
    given: list[Any] = []

    def once(cylinder: object) -> object:
        given.append(cylinder)
        if len(given) == 1:
            raise OutOfRange("beyond the steam tables")
        return "cycles"

    monkeypatch.setattr(made, "gears_drawn", lambda _: iter([first, second]))
    monkeypatch.setattr(made, "cycles_as_drawn", once)
    monkeypatch.setattr(made, "_figure", lambda drawn, both: (drawn.name, both))
    assert list(made.indicator_cards(assessed())) == [("second", "cycles")]
