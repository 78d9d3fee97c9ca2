"""The sizes that a drawing gives the shop, and those in which two parts differ."""

from __future__ import annotations

from typing import Annotated, Any

import pytest

from speclint.errors import Location
from speclint.quantities import Measure
from speclint.specs import (
    AS_FITTED,
    MADE_SO,
    NOT_STATED,
    OWN_PLACE,
    Angle,
    Component,
    Fraction,
    Length,
    Mirrors,
    Pressure,
    SizeApart,
    SpecTable,
    Stated,
    Word,
    sizes_apart,
    sizes_made,
)

#: What every part lists, as not stated where it is left out.
_DONE_OR_NOT = ("surface", "general_tolerance")


class _Groove(SpecTable):
    """A groove.

    Fields:
        width: of it
        play: of the ring in it
        from_end: of the plug, where each is put
    """

    width: Length = NOT_STATED
    from_end: Annotated[Length, OWN_PLACE] = NOT_STATED
    play: Annotated[Length, AS_FITTED] = NOT_STATED


class _Plug(Component):
    """A plug.

    Fields:
        length: of it
        angle: of its cone
        turned: of its lever
        at: where it sits
        gap: set on fitting
        pressure: behind it
        grooves: by name
        worn: of a groove in service
        rows: of grooves
        law: of its cone
        turns: of its thread
        locking: how it is held
        law_fitted: chosen on fitting
    """

    kind = "plug-of-this-test"

    length: Length = NOT_STATED
    angle: Angle = NOT_STATED
    turned: Annotated[Angle, Mirrors("negate")] = NOT_STATED
    at: Annotated[Length, OWN_PLACE] = NOT_STATED
    gap: Annotated[Length, AS_FITTED] = NOT_STATED
    pressure: Pressure = NOT_STATED
    grooves: dict[str, _Groove] = {}
    worn: Annotated[_Groove, AS_FITTED] = _Groove()
    rows: tuple[_Groove, ...] = ()
    law: Annotated[Word[str], MADE_SO] = NOT_STATED
    turns: Annotated[Fraction, MADE_SO] = NOT_STATED
    locking: Word[str] = NOT_STATED
    law_fitted: Annotated[Word[str], MADE_SO, AS_FITTED] = NOT_STATED


def of(nominal: float, dimension: str = "length", **other: Any) -> Measure:
    given = {"low": nominal, "high": nominal, "text": f"{nominal:g}", **other}
    return Measure(nominal=nominal, dimension=dimension, **given)


def plug(**stated: Any) -> _Plug:
    return _Plug.model_construct(
        **{**{name: one.default for name, one in _Plug.model_fields.items()}, **stated}
    )


def test_words_and_numbers_that_are_marked_are_made() -> None:
    """Not a word that says how it is held, nor what is chosen on fitting or measured."""
    here = Location("plug.toml", 3, "law")
    part = plug(
        law=Stated("Round  cone", here),
        turns=of(6.5, "ratio"),
        locking=Stated("wire", here),
        law_fitted=Stated("round", here),
    )
    made = sizes_made(part)
    assert set(made) == {"law", "turns", *_DONE_OR_NOT}
    assert made["law"][0] == here
    other = plug(law=Stated("round cone", here), turns=of(6.5, "ratio", provenance="measured"))
    assert set(sizes_made(other)) == {"law", *_DONE_OR_NOT}
    assert sizes_apart(made, sizes_made(other)) == ()
    apart = sizes_apart(made, sizes_made(plug(law=Stated("flat", here), turns=of(7.5, "ratio"))))
    assert [(one.here, one.there) for one in apart] == [("Round  cone", "flat"), ("6.5", "7.5")]


def test_lengths_and_angles_are_made_and_the_metal() -> None:
    """Not what is set on fitting, where it sits, nor a pressure; down to the innermost table."""
    part = plug(
        material=Stated("steel", Location("plug.toml", 3, "material")),
        length=of(0.1),
        angle=of(0.2, "angle"),
        at=of(0.3),
        gap=of(0.4),
        pressure=of(1e5, "pressure"),
        grooves={"top": _Groove.model_construct(width=of(0.5), play=of(0.6))},
        worn=_Groove.model_construct(width=of(0.7), play=of(0.8)),
        rows=(_Groove.model_construct(width=of(0.9), play=of(1.0), from_end=of(1.1)),),
    )
    found = sizes_made(part)
    made = ["material", *_DONE_OR_NOT, "length", "angle", "grooves.top.width", "rows[0].width"]
    assert list(found) == made
    assert found["material"] == (Location("plug.toml", 3, "material"), "steel", "steel")


@pytest.mark.parametrize(("provenance", "made"), [("drawing", True), ("measured", False), ("assumed", False)])
def test_what_was_measured_or_assumed_is_on_no_drawing(provenance: str, made: bool) -> None:
    assert ("length" in sizes_made(plug(length=of(0.1, provenance=provenance)))) is made


@pytest.mark.parametrize(("hand", "made"), [("left", False), (None, True)])
def test_an_angle_that_changes_with_the_hand_is_that_of_one_hand(hand: str | None, made: bool) -> None:
    stated = {} if hand is None else {"hand": Stated(hand, Location("plug.toml", 2, "hand"))}
    found = sizes_made(plug(turned=of(0.2, "angle"), angle=of(0.1, "angle"), **stated))
    assert ("turned" in found) is made
    assert "angle" in found


@pytest.mark.parametrize(
    ("other", "apart"),
    [
        (of(0.1, text="100 mm"), False),
        (of(0.11), True),
        (of(0.1, low=0.099), True),
        (of(0.1, high=0.101), True),
        (of(0.1, low=0.1 - 1e-15, tolerance_class="h7"), False),  # the same limits, by a class
    ],
)
def test_parts_differ_in_a_size_or_in_its_limits(other: Measure, apart: bool) -> None:
    here = Location("one.toml", 4, "length")
    one, two = plug(length=of(0.1, text="10 cm", where=here)), plug(length=other)
    found = sizes_apart(sizes_made(one), sizes_made(two))
    assert found == ((SizeApart(here, "10 cm", other.text),) if apart else ())


def test_a_finish_that_one_alone_states_makes_two_parts() -> None:
    here = Location("one.toml", 4, "surface")
    one, two = sizes_made(plug(surface=Stated("nitrided", here))), sizes_made(plug())
    assert sizes_apart(one, two) == (SizeApart(here, "nitrided", "not stated"),)
    assert [(found.here, found.there) for found in sizes_apart(two, one)] == [("not stated", "nitrided")]


def test_what_one_alone_states_is_left() -> None:
    one, two = plug(length=of(0.1), angle=of(0.2, "angle")), plug(length=of(0.1))
    assert sizes_apart(sizes_made(one), sizes_made(two)) == ()
    assert sizes_apart(sizes_made(two), sizes_made(one)) == ()
