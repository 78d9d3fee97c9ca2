"""A kind of a test's own, with a key of every sort."""

from __future__ import annotations

import datetime as dt
from typing import Annotated, ClassVar, Literal

from speclint.specs import (
    NOT_STATED,
    OWN_PLACE,
    Component,
    Length,
    LinkTo,
    Mirrors,
    Position,
    Span,
    SpecTable,
    Temperature,
    Word,
)
from speclint.specs.listed_in import ListedIn


class Foot(SpecTable):
    """A foot of a stand.

    More is said of ``height``
    in another line.

    Fields:
        height: from the floor
            to its top.
        fixed: whether it is bolted down
    """

    height: Length = NOT_STATED
    fixed: Word[bool] = NOT_STATED


class Rest(Component):
    """What a stand carries."""

    kind: ClassVar[str] = "rest"
    called: ClassVar[str] = "rest"


class Stand(Component):
    """A stand of a test.

    Fields:
        width: across its feet
    """

    kind: ClassVar[str] = "stand"
    called: ClassVar[str] = "stand"

    width: Annotated[Length, Span("1 m", "4 m")] = NOT_STATED
    offset: Annotated[Position, Mirrors("negate")] = NOT_STATED
    heights: tuple[Length, ...] = ()
    widths: dict[str, Length] = {}
    form: Annotated[Word[Literal["welded", "cast"]], Mirrors("swap")] = NOT_STATED
    sides: tuple[Word[Literal["left", "right"]], ...] = ()
    paints: tuple[Annotated[Word[str], OWN_PLACE], ...] = ()
    maker: Word[str] = NOT_STATED
    alloy: Annotated[Word[str], ListedIn("alloys", "alloys of stands")] = NOT_STATED
    legs: Word[int] = NOT_STATED
    made_on: Word[dt.date] = NOT_STATED
    carries: Annotated[LinkTo[Rest], OWN_PLACE] = NOT_STATED
    holds: tuple[LinkTo[Rest], ...] = ()
    foot: Foot = Foot.unstated()
    feet: dict[str, Foot] = {}
    spares: tuple[Foot, ...] = ()
    temperatures: dict[str, Temperature] = {}
