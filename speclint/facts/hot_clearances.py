"""The clearance of a tappet as it works: cold, hot and with a worn seat."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.equations import FIRST_PRINCIPLES, Kelvins, Metres, PerKelvin, Ratio, formula, require
from speclint.facts.gear import clearance_by_lengths, is_set_on_the_engine
from speclint.facts.train import lever_ratio
from speclint.facts.valve_gear import ValvesTrain
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.heat import tied_temperature
from speclint.handbook.materials import Material
from speclint.handbook.tables import Reading
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import Component, NotStated, Tappet, Tie

if TYPE_CHECKING:
    from speclint.specs import LoadCase


#: A part that was finished at the drawing's temperature had not grown then.
_DRAWN = {"alpha_0": 0.0, "T_0": DRAWING_TEMPERATURE, "T_ref": DRAWING_TEMPERATURE}


@formula("ε = α (T − T_ref) − α_0 (T_0 − T_ref)", cites=[FIRST_PRINCIPLES])
def strain_since(alpha: PerKelvin, T: Kelvins, alpha_0: PerKelvin, T_0: Kelvins, T_ref: Kelvins) -> Ratio:
    """Thermal strain of a part since the temperature at which it was finished.

    ε = α (T − T_ref) − α_0 (T_0 − T_ref)

    ``alpha``, ``alpha_0`` mean coefficients from ``T_ref`` to ``T`` and to ``T_0`` [1/K]; ``T`` temperature
    now, ``T_0`` when finished, ``T_ref`` the drawing's [K]. Returns [-].

    Hand working: 12e-6 × 300 − 11.5e-6 × 0 = 3.6e-3.

    >>> round(strain_since(alpha=12e-6, T=593.15, alpha_0=11.5e-6, T_0=293.15, T_ref=293.15), 9)
    0.0036
    """
    return alpha * (T - T_ref) - alpha_0 * (T_0 - T_ref)


@formula("L_s = L − L_v", cites=[FIRST_PRINCIPLES])
def spindle_length(L: Metres, L_v: Metres) -> Metres:
    """Length of the spindle in the length that grows towards the gear.

    L_s = L − L_v

    ``L`` from the valve's seat to the gear, ``L_v`` the valve's own part of it [m]. Returns [m]. Raises OutOfRange
    unless 0 ≤ L_v ≤ L.

    >>> round(spindle_length(L=0.4, L_v=0.06), 6)
    0.34
    """
    require(
        0 <= L_v <= L,
        f"the valve's part {L_v * 1e3:.6g} mm is not between 0 and the whole length {L * 1e3:.6g} mm",
    )
    return L - L_v


@formula("c_h = c − (L_s ε_s + L_v ε_v − L_b ε_b − L_d ε_d + y)/i", cites=[FIRST_PRINCIPLES])
def tappet_clearance_hot(
    c: Metres,
    L_s: Metres,
    ε_s: Ratio,
    L_v: Metres,
    ε_v: Ratio,
    L_b: Metres,
    ε_b: Ratio,
    L_d: Metres,
    ε_d: Ratio,
    y: Metres,
    i: Ratio,
) -> Metres:
    """Clearance at the tappet, hot and worn.

    c_h = c − (L_s ε_s + L_v ε_v − L_b ε_b − L_d ε_d + y)/i

    ``c`` clearance cold at the tappet [m]; ``L_s`` length of the spindle that expands towards the gear [m]; ``ε_s``
    thermal strain of the spindle; ``L_v`` length of the valve below the spindle [m]; ``ε_v`` thermal strain of the
    valve; ``L_b`` length of the block between seat and gear [m]; ``ε_b`` thermal strain of the block; ``L_d`` length of
    the cam box between seat and gear [m]; ``ε_d`` thermal strain of the cam box; ``y`` how far the valve may sink into
    its seat [m]; ``i`` travel of the valve over travel of the tappet. Returns [m], negative where the valve is held off
    its seat. Raises OutOfRange unless i > 0.

    Hand working: 0.6 − (340 × 0.0030 + 60 × 0.0040 − 200 × 0.0028 − 180 × 0.0010 + 0.1)/1.25 = 0.6 − 0.496 = 0.104 mm.

    >>> hot = {"L_s": 0.34, "ε_s": 3e-3, "L_v": 0.06, "ε_v": 4e-3}
    >>> hot |= {"L_b": 0.2, "ε_b": 2.8e-3, "L_d": 0.18, "ε_d": 1e-3, "y": 1e-4, "i": 1.25}
    >>> round(tappet_clearance_hot(c=0.6e-3, **hot) * 1e3, 6)
    0.104
    """
    require(i > 0, "the lever ratio must be above 0")
    return c - (L_s * ε_s + L_v * ε_v - L_b * ε_b - L_d * ε_d + y) / i


class WorkingClearances(Struct, frozen=True):
    """The clearance at a tappet [m]: set cold, hot with a new seat, hot with a worn one; and between which it may lie.

    ``low`` and ``high`` include how far from the drawing it may be set.
    """

    cold: Metres
    hot: Metres
    worn: Metres
    low: Metres
    high: Metres


def clearance_at_work(what: str, hot: float, low: float, high: float) -> Reading:
    """The clearance at a tappet as it works, from the least, hot and worn, to the greatest [m].

    >>> clearance_at_work("the inlet", 0.5e-3, 0.4e-3, 0.88e-3).high
    0.00088
    """
    says = f"clearance at the tappet of {what} as it works: cold, hot, worn"
    return Reading(says, hot, low, high, "m", FIRST_PRINCIPLES)


def expansion_as_listed(metal: Material, at: Kelvins) -> Reading:
    """The mean coefficient of expansion of a metal, the middle of its band [1/K]."""
    found = metal.expansion(at)
    return Reading.exact(found.what, found.nominal, found.unit, found.source)


def nominal_temperature(symbol: str, value: Measure | Tie | NotStated, sheet: Sheet) -> Kelvins:
    """The middle of a temperature's band; of a tied one, that of the other and of the difference."""
    if isinstance(value, Tie):
        base = nominal_temperature(f"{symbol}_b", value.base, sheet)
        difference = sheet.take_nominal(f"Δ{symbol}", value.difference)
        return sheet.work(symbol, tied_temperature, T_b=base, ΔT=difference)
    return sheet.take_nominal(symbol, value)


def working_clearances(train: ValvesTrain, case: LoadCase, mark: str, sheet: Sheet) -> WorkingClearances:
    """The clearances at the tappet of a train in a load case, sizes and temperatures at the middle of their bands."""
    tappet, i = train.tappet, nominal_ratio(train, mark, sheet)
    cold = _cold(train, mark, sheet)
    y = sheet.take_nominal(f"y_{mark}", tappet.seat_wear)
    grown = _grown(train, case, mark, sheet)
    hot = sheet.work(f"δ_h{mark}", tappet_clearance_hot, c=cold, y=0.0, i=i, **grown)
    worn = sheet.work(f"δ_w{mark}", tappet_clearance_hot, c=cold, y=y, i=i, **grown)
    e = _error_of_setting(tappet, mark, sheet)
    return WorkingClearances(cold, hot, worn, min(cold, hot, worn) - e, max(cold, hot, worn) + e)


def cold_clearances(train: ValvesTrain, _: LoadCase, mark: str, sheet: Sheet) -> WorkingClearances:
    """The clearance at the tappet of a train as it is set on the cold engine, as if it stayed so."""
    cold = _cold(train, mark, sheet)
    return WorkingClearances(cold, cold, cold, cold, cold)


def nominal_ratio(train: ValvesTrain, mark: str, sheet: Sheet) -> Ratio:
    """Travel of the valve over travel of the tappet, by the arms as drawn."""
    if train.rocker is None:
        return 1.0
    b_v = sheet.take_nominal(f"b_v{mark}", train.rocker.valve_arm)
    b_t = sheet.take_nominal(f"b_t{mark}", train.rocker.tappet_arm)
    return sheet.work(f"i_{mark}", lever_ratio, b_v=b_v, b_t=b_t)


def _cold(train: ValvesTrain, mark: str, sheet: Sheet) -> Metres:
    def take(symbol: str, value: Measure | NotStated) -> float:
        return sheet.take_nominal(f"{symbol}_{mark}", value)

    if not is_set_on_the_engine(train.tappet, train.spindle, sheet):
        left = clearance_by_lengths(train.tappet, train.spindle, train.rocker, sheet, take)
        if left is not None:
            return left.value  # type: ignore[no-any-return]  # a float
    return take("c", train.tappet.clearance)


def _error_of_setting(tappet: Tappet, mark: str, sheet: Sheet) -> Metres:
    """How far the clearance may be from what the drawing aims at: half its tolerance, or as it is set."""
    drawn = 0.0
    if sheet.is_stated("clearance", tappet.clearance):
        drawn = sheet.tolerance(f"Δc_{mark}", tappet.clearance) / 2
    if sheet.is_stated("accuracy of setting", tappet.clearance_setting):
        return max(drawn, sheet.take_nominal(f"a_{mark}", tappet.clearance_setting))
    return drawn


def _grown(train: ValvesTrain, case: LoadCase, mark: str, sheet: Sheet) -> dict[str, float]:
    """The lengths of the train and their strains, each part at its own temperature."""
    box = sheet.follow(train.tappet.carried_in)
    L = sheet.take_nominal(f"L_{mark}", train.spindle.heated_length)
    L_v = sheet.take_nominal(f"L_v{mark}", train.spindle.valve_length)
    return {
        "L_s": sheet.work(f"L_s{mark}", spindle_length, L=L, L_v=L_v),
        "ε_s": _strain(train.spindle, f"s{mark}", case, sheet),
        "L_v": L_v,
        "ε_v": _strain(train.valve, f"v{mark}", case, sheet),
        "L_b": sheet.take_nominal(f"L_b{mark}", box.block_length),
        "ε_b": _strain(sheet.follow(box.mounted_on), f"b{mark}", case, sheet),
        "L_d": sheet.take_nominal(f"L_d{mark}", box.datum_length),
        "ε_d": _strain(box, f"d{mark}", case, sheet),
    }


def growth_since_drawn(part: Component, index: str, case: LoadCase, sheet: Sheet) -> Ratio:
    """Growth of a part in a load case since it was drawn, at 20 °C; on the sheet with its temperature and expansion."""
    T = sheet.take(f"T_{index}", case.temperature_of(part))
    alpha = sheet.look_up(f"α_{index}", sheet.material_of(part).expansion, of=part, at=T)
    return sheet.work(f"ε_{index}", strain_since, alpha=alpha, T=T, **_DRAWN)


def _strain(part: Component, index: str, case: LoadCase, sheet: Sheet) -> Ratio:
    T = nominal_temperature(f"T_{index}", case.temperature_of(part), sheet)
    metal = sheet.material_of(part)
    alpha = sheet.look_up(f"α_{index}", expansion_as_listed, of=part, metal=metal, at=T)
    return sheet.work(f"ε_{index}", strain_since, alpha=alpha, T=T, **_DRAWN)
