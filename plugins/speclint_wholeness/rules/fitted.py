"""Chains of dimensions and fits that parts call for by their sizes: a pad in its cut-out, a tappet, fitted bolts."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.facts import fits_of_bolts, is_size_of
from speclint.specs import (
    NOT_STATED,
    Component,
    Dimension,
    DimensionChain,
    Fit,
    FrameFastening,
    Length,
    LocatingFace,
    Tappet,
    as_item,
)

_Fitted = LocatingFace | FrameFastening | Tappet


def _chains_and_fits(part: _Fitted, sheet: Sheet) -> Iterator[ToFill]:
    """The chain or the fit that a size of the part calls for, of the part itself or of one on its drawing.

    A cut-out of a frame with its width or its room, a tappet whose clearance no screw sets, and bolts with a fitted
    diameter. That of another part counts where both are one item of the drawing and made to the same size, and the
    pads in two cut-outs are too.
    """
    if not _calls_for_it(part, sheet):
        return
    wants = DimensionChain.called if isinstance(part, LocatingFace | Tappet) else Fit.called
    found = _found(part, sheet) or tuple(
        one
        for other in sheet.sharing_drawing(part)
        if isinstance(other, type(part)) and isinstance(other, _Fitted) and _is_made_like(part, other, sheet)
        for one in _found(other, sheet)
    )
    yield ToFill(_what(part), wants, found, most=0, where=part.where)


def _what(part: _Fitted) -> str:
    if isinstance(part, LocatingFace):
        return f"pad in {part.id}"
    return f"fitted bolts of {part.id}" if isinstance(part, FrameFastening) else f"clearance of {part.id}"


def _calls_for_it(part: _Fitted, sheet: Sheet) -> bool:
    """Whether the part states the size by which it is fitted."""
    if isinstance(part, LocatingFace):
        return sheet.is_stated("cut-out", part.slot) or sheet.is_stated("room", part.room)
    if isinstance(part, FrameFastening):
        return sheet.is_stated("fitted diameter", part.fitted_diameter)
    by_screw = sheet.is_stated("accuracy of setting", part.clearance_setting)
    return not by_screw and sheet.is_stated("clearance", part.clearance)


def _is_made_like(part: _Fitted, other: _Fitted, sheet: Sheet) -> bool:
    """Whether what is worked for another part of a drawing is worked for this one: one item, of the same sizes."""
    item, there = (sheet.said(f"item of {one.id}", one.item) for one in (part, other))
    if item and there and as_item(item) != as_item(there):
        return False
    own, theirs = _sizes(part, sheet), _sizes(other, sheet)
    return all(_is_same(own[key], theirs[key], f"{key} of {other.id}", sheet) for key in own)


def _sizes(part: _Fitted, sheet: Sheet) -> Mapping[str, Length]:
    """The sizes that call for a chain or a fit, with the width of the pad in a cut-out."""
    if isinstance(part, FrameFastening):
        return {"d": part.fitted_diameter}
    if isinstance(part, Tappet):
        return {"s": part.clearance}
    sizes = {"b": part.slot, "r": part.room, "w": NOT_STATED}
    pad = sheet.said(f"pad in {part.id}", part.pad)
    if pad and sheet.is_stated(f"block of {part.id}", part.locks):
        pads = sheet.follow(part.locks).pads
        sizes["w"] = pads[pad].width if pad in pads else NOT_STATED
    return sizes


def _is_same(own: Length, other: Length, symbol: str, sheet: Sheet) -> bool:
    """Whether a size has the same limits in both; one that either leaves out tells nothing."""
    if not (sheet.is_stated(symbol, own) and sheet.is_stated(f"{symbol}, there", other)):
        return True
    here, there = sheet.take_limits(symbol, own), sheet.take_limits(f"{symbol}, there", other)
    return all(math.isclose(a, b) for a, b in zip(here, there, strict=True))


def _found(part: _Fitted, sheet: Sheet) -> tuple[Component, ...]:
    if isinstance(part, FrameFastening):
        return fits_of_bolts(part, sheet)
    if isinstance(part, Tappet):
        chains = sheet.belonging_to(part, DimensionChain)
        return tuple(one for one in chains if _is(one.closes, part, "clearance", one, sheet))
    return tuple(one for one in sheet.belonging_to(part, DimensionChain) if _of_cut_out(one, part, sheet))


def _of_cut_out(chain: DimensionChain, face: LocatingFace, sheet: Sheet) -> bool:
    """Whether the gap of a chain is the room in a cut-out, or between its width and that of the pad in it."""
    if _is(chain.closes, face, "room", chain, sheet):
        return True
    pad = sheet.said("pad", face.pad)
    if not (pad and sheet.is_stated("block", face.locks)):
        return False
    block, links = sheet.follow(face.locks), chain.chain.values()
    return any(_is(one, face, "slot", chain, sheet) for one in links) and any(
        _is(one, block, f"pads.{pad}.width", chain, sheet) for one in links
    )


def _is(size: Dimension, part: Component, key: str, chain: DimensionChain, sheet: Sheet) -> bool:
    """Whether a size in a chain is one of a part."""
    return is_size_of(size, part, key, (f"part in {chain.id}", f"key in {chain.id}"), sheet)


worked_together: Rule = filled_once(
    "part.its-chain-or-fit",
    title="A pad in its cut-out and a tappet that no screw sets have the chain that makes their gap; fitted bolts have "
    "their fit: their own, or that of a part like them on their drawing",
    on=(LocatingFace, FrameFastening, Tappet),
    places=_chains_and_fits,
    row=615,
    gravity="part",
    why="sizes on several drawings make the gap; where nobody adds up their limits, it comes out on the engine as it "
    "likes, and is filed to suit",
    leaves_out="other sizes in the chain of a part on the same drawing, such as those of its box; liners, seats, "
    "pistons and pins, whose own rules work their fits",
    edition=2,
)

RULES = (worked_together,)
