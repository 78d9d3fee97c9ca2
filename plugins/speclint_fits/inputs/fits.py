"""Inputs that several rules of a fit share: its sizes and parts, cold and hot, and its contact pressure."""

from __future__ import annotations

from msgspec import Struct

from speclint import Sheet
from speclint.equations import Kelvins, Metres, Pascals
from speclint.handbook.cylinders import outside_of_wall
from speclint.handbook.fits import (
    DRAWING_TEMPERATURE,
    contact_pressure,
    hot_interference,
    interference,
    pressing_interference,
)
from speclint.specs import Component, Fit, LoadCase


class Sizes(Struct, frozen=True):
    """Hole, shaft and their interference at one corner of their limits, negative for a clearance."""

    hole: Metres
    shaft: Metres
    delta: Metres


class Parts(Struct, frozen=True):
    """The components that carry the hole and the shaft."""

    outer: Component
    inner: Component


class Hot(Struct, frozen=True):
    """The interference hot, and the temperature of each part."""

    delta: Metres
    T_out: Kelvins
    T_in: Kelvins


class Pressed(Struct, frozen=True):
    """The contact pressure, with the inside of the shaft (0 where it is solid) and the outside of the hub."""

    p: Pascals
    d_in: Metres
    D_out: Metres


def intent_of(fit: Fit, sheet: Sheet) -> str:
    """The intended kind of fit; a bedded saddle is not a fit of a shaft in a hole."""
    intent = sheet.read("intent", fit.intent)
    if intent == "bedded":
        raise sheet.not_applicable("a saddle bedded on a barrel is judged by fit.curved-seat")
    return intent


def sizes_of(fit: Fit, sheet: Sheet) -> Sizes:
    """The fit as the drawings give it, at 20 °C."""
    hole = sheet.take("D", sheet.dimension(fit.hole))
    shaft = sheet.take("d", sheet.dimension(fit.shaft))
    return Sizes(hole, shaft, sheet.work("δ", interference, d=shaft, D=hole))


def parts_of(fit: Fit, sheet: Sheet) -> Parts:
    """The parts that mate; not assessed where a diameter is stated without the part that carries it."""
    return Parts(sheet.follow(fit.hole.of), sheet.follow(fit.shaft.of))


def hot_fit(sizes: Sizes, parts: Parts, case: LoadCase, sheet: Sheet) -> Hot:
    """The interference with each part at its own temperature."""
    T_out = sheet.take("T_out", case.temperature_of(parts.outer))
    T_in = sheet.take("T_in", case.temperature_of(parts.inner))
    outer, inner = sheet.material_of(parts.outer), sheet.material_of(parts.inner)
    delta = sheet.work(
        "δ_h",
        hot_interference,
        delta=sizes.delta,
        D=sizes.hole,
        alpha_in=sheet.look_up("α_in", inner.expansion, of=parts.inner, at=T_in),
        T_in=T_in,
        alpha_out=sheet.look_up("α_out", outer.expansion, of=parts.outer, at=T_out),
        T_out=T_out,
        T_ref=DRAWING_TEMPERATURE,
    )
    return Hot(delta, T_out, T_in)


def pressed(fit: Fit, sizes: Sizes, parts: Parts, hot: Hot, sheet: Sheet) -> Pressed:
    """The contact pressure; zero where the parts are loose."""
    outer, inner = sheet.material_of(parts.outer), sheet.material_of(parts.inner)
    d_in = inside_of_shaft(fit, sheet)
    D_out = sheet.work("D_o", outside_of_wall, d=sizes.hole, t=sheet.take("t", sheet.dimension(fit.wall)))
    p = sheet.work(
        "p",
        contact_pressure,
        delta=sheet.work("δ_p", pressing_interference, delta=hot.delta),
        d_in=d_in,
        D=sizes.hole,
        D_out=D_out,
        E_in=sheet.look_up("E_in", inner.modulus, of=parts.inner, at=hot.T_in),
        nu_in=sheet.look_up("ν_in", inner.poisson, of=parts.inner),
        E_out=sheet.look_up("E_out", outer.modulus, of=parts.outer, at=hot.T_out),
        nu_out=sheet.look_up("ν_out", outer.poisson, of=parts.outer),
    )
    return Pressed(p, d_in, D_out)


def cold(sizes: Sizes) -> Hot:
    """The fit at the temperature of the drawing."""
    return Hot(sizes.delta, DRAWING_TEMPERATURE, DRAWING_TEMPERATURE)


def inside_of_shaft(fit: Fit, sheet: Sheet) -> Metres:
    """Bore of a hollow shaft; 0 where the spec says that it is solid."""
    if sheet.said("solid", fit.solid):
        return 0.0
    return sheet.take("d_in", sheet.dimension(fit.bore))
