"""Heat that metal leads out of the block into pads and frames."""

from __future__ import annotations

from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Kelvins, KelvinsPerWatt, WattsPerMetreKelvin
from speclint.handbook.heat import INCROPERA, tied_temperature
from speclint.handbook.tables import Reading
from speclint.specs import Component, CylinderBlock, LoadCase, LocatingFace, Pad
from speclint_steamways.formulae.conducted import (
    between,
    cooler_by,
    in_series,
    path_resistance,
    surface_resistance,
)
from speclint_steamways.formulae.plate_fins import fin_argument, plate_spreading_resistance, round_foot


class _Band(NamedTuple):
    """Least and greatest temperature of a place, as worked."""

    low: Kelvins
    high: Kelvins


class _Way(NamedTuple):
    """Resistance from the hot wall to the pad, through the joint, and from the frame to the air."""

    path: KelvinsPerWatt
    joint: KelvinsPerWatt
    frame: KelvinsPerWatt


@rule(
    "heat.pad-temperature",
    title="The stated temperatures of a pad and of the frame beside it lie within 25 K of what the path of heat from "
    "the block gives; one below that is a nonconformity",
    on=LocatingFace,
    cases=("running", "standing-hot"),
    grade=Grade.NONCONFORMITY,
    cites=[INCROPERA.at("section 3.6, annular fins"), FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Interference, growth and friction of a pad are reckoned from its temperature; one that is hotter grows more.",
    leaves_out="warming and cooling, edges, ribs and holes of the frame, and heat from the neighbouring pad; a pad "
    "that states no temperature is taken as hot as the block",
    against=(),
    limits=[
        Limit(
            "within",
            "25 K",
            "temperature difference",
            COMMON_PRACTICE,
            "by which a stated temperature may lie outside of the worked band",
        ),
        Limit(
            "least_contact",
            "1500 W/(m²·K)",
            "heat transfer",
            COMMON_PRACTICE,
            "least coefficient of bolted dry faces",
        ),
        Limit(
            "most_contact",
            "6000 W/(m²·K)",
            "heat transfer",
            COMMON_PRACTICE,
            "greatest coefficient of bolted dry faces",
        ),
        Limit(
            "still_air",
            "10 W/(m²·K)",
            "heat transfer",
            COMMON_PRACTICE,
            "film on the faces of a frame that stands",
        ),
        Limit(
            "moving_air",
            "40 W/(m²·K)",
            "heat transfer",
            COMMON_PRACTICE,
            "greatest film on the faces of a frame that runs",
        ),
    ],
)
def pad_temperature(face: LocatingFace, case: LoadCase, sheet: Sheet) -> Judgement:
    """Path, joint and frame plate in series between block and air, each at both ends of what it may be."""
    block = sheet.follow(face.locks)
    pad = sheet.entry(block.pads, face.pad, f"pads of {block.id}")
    hot, air = _range("T_b", block, case, sheet), sheet.take_limits("T_a", case.ambient_temperature)
    ways = _ways(face, block, pad, case, sheet)
    pad_band = _Band(
        sheet.work(
            "T_p1",
            between,
            T_a=air[0],
            T_b=hot[0],
            R_1=ways["cold"].path,
            R_2=_beyond(ways["cold"], sheet),
        ),
        sheet.work(
            "T_p2", between, T_a=air[1], T_b=hot[1], R_1=ways["hot"].path, R_2=_beyond(ways["hot"], sheet)
        ),
    )
    # the frame is coldest where the joint resists most, and hottest where it resists least
    first = sheet.work("R_1", in_series, R_1=ways["cold"].path, R_2=ways["hot"].joint)
    last = sheet.work("R_2", in_series, R_1=ways["hot"].path, R_2=ways["cold"].joint)
    frame_band = _Band(
        sheet.work("T_f1", between, T_a=air[0], T_b=hot[0], R_1=first, R_2=ways["cold"].frame),
        sheet.work("T_f2", between, T_a=air[1], T_b=hot[1], R_1=last, R_2=ways["hot"].frame),
    )
    stated = {"frame": (sheet.take_limits("T_f", case.temperature_of(face)), frame_band)}
    if sheet.is_stated("temperature of the pad", face.pad_temperature):
        named = case.temperature_named(sheet.read("temperature of the pad", face.pad_temperature))
        stated["pad"] = (sheet.take_limits("T_p", named), pad_band)
    return sheet.each(stated.items(), lambda item: _in_band(item[1][0], item[1][1], sheet))


def _range(symbol: str, block: CylinderBlock, case: LoadCase, sheet: Sheet) -> tuple[float, float]:
    return sheet.take_limits(symbol, case.temperature_of(block))


def _ways(
    face: LocatingFace, block: CylinderBlock, pad: Pad, case: LoadCase, sheet: Sheet
) -> dict[str, _Way]:
    """The way of heat that leaves the pad coldest, and that which leaves it hottest."""
    at, at_frame = sheet.take("T_b", case.temperature_of(block)), sheet.take("T_f", case.temperature_of(face))
    L, section = sheet.take("L", pad.path.length), sheet.take("A", pad.path.section)
    contact = sheet.take("A_c", pad.path.contact_area)
    r, t = sheet.work("r", round_foot, A=contact), sheet.take("t", face.bearing_depth)
    still = sheet.limit("still_air", "h_1")
    moving = still if case.name == "standing-hot" else sheet.limit("moving_air", "h_2")
    found = {}
    for end, h, h_c in (
        ("cold", moving, sheet.limit("most_contact", "h_c2")),
        ("hot", still, sheet.limit("least_contact", "h_c1")),
    ):
        hot = end == "hot"
        λ_b = _conductivity("λ_b", block, at, sheet, greatest=hot)
        λ = _conductivity("λ_f", face, at_frame, sheet, greatest=not hot)
        R = sheet.work("R_p", path_resistance, L=L, λ=λ_b, A=section)
        x = sheet.work("x", fin_argument, r=r, h=h, λ=λ, t=t)
        joint = sheet.work("R_c", surface_resistance, h=h_c, A=contact)
        found[end] = _Way(R, joint, sheet.work("R_f", plate_spreading_resistance, x=x, λ=λ, t=t))
    return found


def _conductivity(
    symbol: str, part: Component, at: Kelvins, sheet: Sheet, *, greatest: bool
) -> WattsPerMetreKelvin:
    """One end of what the conductivity of a metal may be: the band takes both, so that it is no corner."""
    material = sheet.material_of(part)

    def least_conductivity(at: float) -> Reading:
        read = material.conductivity(at)
        return Reading.exact(f"{read.what}, at its least", read.low, read.unit, read.source)

    def greatest_conductivity(at: float) -> Reading:
        read = material.conductivity(at)
        return Reading.exact(f"{read.what}, at its greatest", read.high, read.unit, read.source)

    return sheet.look_up(symbol, greatest_conductivity if greatest else least_conductivity, of=part, at=at)


def _beyond(way: _Way, sheet: Sheet) -> KelvinsPerWatt:
    return sheet.work("R_2", in_series, R_1=way.joint, R_2=way.frame)


def _in_band(stated: tuple[Kelvins, Kelvins], band: _Band, sheet: Sheet) -> Judgement:
    """Stated limits against a worked band: all of it below is a nonconformity, an end outside a query."""
    within = sheet.limit("within", "ΔT")
    coldest = sheet.work("T_1", cooler_by, T=band.low, ΔT=within)
    hottest = sheet.work("T_2", tied_temperature, T_b=band.high, ΔT=within)
    return sheet.worst(
        sheet.no_hotter(coldest, stated[1]).else_says(
            "{item} is stated at most {limit}, at least {found} is worked"
        ),
        sheet.no_hotter(coldest, stated[0])
        .else_says("{item} is stated from {limit}, at least {found} is worked")
        .graded(Grade.QUERY),
        sheet.no_hotter(stated[1], hottest)
        .else_says("{item} is stated up to {found}, at most {limit} is worked")
        .graded(Grade.QUERY),
    )


RULES: tuple[Rule, ...] = (pad_temperature,)
