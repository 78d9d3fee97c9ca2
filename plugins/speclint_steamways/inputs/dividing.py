"""Walls between live and exhaust steam, as the faces of an exhaust passage and the partitions beside it name them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from speclint import Sheet
from speclint.equations import Kelvins, Metres, SquareMetreKelvinsPerWatt, SquareMetres, WattsPerMetreKelvin
from speclint.facts import build_of, panels_of_partition, partitions_in, steam_in, weldment_of
from speclint.handbook.heat import plane_wall_resistance
from speclint.handbook.materials import Material
from speclint.handbook.members import tube_wall
from speclint.specs import (
    BEYOND,
    Component,
    CylinderLiner,
    NotStated,
    Partition,
    PassageFace,
    SteamPassage,
    ValveSeat,
)
from speclint_steamways.formulae.heat import (
    area_of_share,
    double_wall_resistance,
    midway,
    surface_of_passage,
)
from speclint_steamways.inputs.gaps import gap_across

#: Families of metals that crack where live and exhaust steam meet.
IRON = ("grey-iron", "ductile-iron", "chilled-iron", "austenitic-iron")


class Divider(NamedTuple):
    """One wall between live and exhaust steam: a face of the exhaust passage, a partition, or both."""

    name: str
    live: SteamPassage
    exhaust: SteamPassage
    face: PassageFace | None
    partition: Partition | None


class Metal(NamedTuple):
    """The metal of one wall: the component that it belongs to, its material, its least thickness."""

    of: Component
    material: Material
    t: Metres


def ask_faces(passage: SteamPassage, sheet: Sheet) -> None:
    """End the rule where a passage does not say what lies beyond its walls."""
    if not passage.faces:
        sheet.read("faces", NotStated(passage.where.at("faces")))


def passage_beyond(name: str, face: PassageFace, passage: SteamPassage, sheet: Sheet) -> SteamPassage | None:
    """The passage of steam beyond a face; None where it is air, the cylinder or other metal."""
    to = sheet.read(f"beyond {name}", face.to)
    if to in BEYOND:
        return None
    block = sheet.follow(passage.in_block)
    for other in sheet.belonging_to(block, SteamPassage):
        if other.id == to:
            return other
    raise sheet.not_assessed(f"{to} is no passage of {block.id}", face.to.where)


def is_live(passage: SteamPassage, sheet: Sheet) -> bool:
    """Whether a passage carries live steam."""
    live: bool = steam_in(passage, sheet).value == "live steam"
    return live


def partition_of(face: PassageFace, passage: SteamPassage, sheet: Sheet) -> Partition | None:
    """The partition that a face names as its wall; None where it names another wall."""
    name = sheet.read("wall", face.wall)
    block = sheet.follow(passage.in_block)
    return next((one for one in partitions_in(block, sheet) if one.id == name), None)


def partitions_beside(passage: SteamPassage, sheet: Sheet) -> tuple[Partition, ...]:
    """The partitions whose exhaust side is a passage."""
    return tuple(
        one
        for one in sheet.belonging_to(passage, Partition)
        if sheet.is_stated(f"exhaust side of {one.id}", one.exhaust_side)
        and sheet.follow(one.exhaust_side).id == passage.id
    )


def dividers_of(passage: SteamPassage, sheet: Sheet) -> Iterator[Divider]:
    """The walls between an exhaust passage and live steam: by its faces, and partitions that no face names."""
    named = set[str]()
    for name, face in passage.faces.items():
        beyond = passage_beyond(name, face, passage, sheet)
        if beyond is None or not is_live(beyond, sheet):
            continue
        stated = sheet.is_stated(f"wall of {name}", face.wall)
        partition = partition_of(face, passage, sheet) if stated else None
        if partition is not None:
            named.add(partition.id)
        yield Divider(name, beyond, passage, face, partition)
    for partition in partitions_beside(passage, sheet):
        if partition.id not in named:
            yield Divider(partition.id, sheet.follow(partition.live_side), passage, None, partition)


def surface_of(passage: SteamPassage, sheet: Sheet) -> SquareMetres:
    """The whole surface of a passage: its perimeter along its length, and its ends."""
    i = passage.id
    P, L = sheet.take(f"P_{i}", passage.perimeter), sheet.take(f"L_{i}", passage.length)
    return sheet.work(f"A_{i}", surface_of_passage, P=P, L=L, A_e=sheet.take(f"A_e{i}", passage.end_area))


def area_of_face(name: str, face: PassageFace, passage: SteamPassage, sheet: Sheet) -> SquareMetres:
    """The area of a face: its share of the surface of its passage, or as stated."""
    symbol = f"A_{passage.id} {name}"
    if sheet.is_stated(f"share of {name}", face.share):
        share = sheet.take(f"x_{name}", face.share)
        return sheet.work(symbol, area_of_share, x=share, A=surface_of(passage, sheet))
    return sheet.take(symbol, face.area)


def area_of(divider: Divider, sheet: Sheet) -> SquareMetres:
    """The area of a wall: that of the face, or of the partition that no face names."""
    if divider.face is not None:
        return area_of_face(divider.name, divider.face, divider.exhaust, sheet)
    assert divider.partition is not None  # one of both names a divider
    return sheet.take(f"A_{divider.name}", divider.partition.area)


def metal_of(divider: Divider, sheet: Sheet) -> Metal:
    """The metal of a wall, at its thinnest.

    :raises NotAssessed: where the name of the wall leads to none that is drawn.
    """
    if divider.partition is not None:
        thin = min(sheet.take("t", one.thickness) for one in panels_of_partition(divider.partition, sheet))
        return Metal(divider.partition, sheet.material_of(divider.partition), thin)
    assert divider.face is not None  # as above
    name = sheet.read(f"wall of {divider.name}", divider.face.wall)
    block = sheet.follow(divider.exhaust.in_block)
    rings: list[ValveSeat | CylinderLiner] = [
        *sheet.belonging_to(block, ValveSeat),
        *sheet.belonging_to(block, CylinderLiner),
    ]
    for ring in rings:
        if ring.id == name:
            D, d = sheet.take(f"D_{name}", ring.outside_diameter), sheet.take(f"d_{name}", ring.bore)
            return Metal(ring, sheet.material_of(ring), sheet.work("t", tube_wall, D=D, d=d))
    weldment = weldment_of(block, sheet)
    if weldment is None or name not in weldment.walls:
        said = f"{name} is no flat wall of the weldment of {block.id}, and no partition, seat or liner there"
        raise sheet.not_assessed(said, divider.face.wall.where)
    wall = weldment.walls[name]
    plate = sheet.entry(weldment.plates, wall.plate, f"plates of {weldment.id}")
    metal = sheet.material_named(f"plate of {name}", plate.material)
    return Metal(block, metal, sheet.take("t", plate.thickness))


def is_single(divider: Divider, sheet: Sheet) -> bool:
    """Whether one wall alone stands between both, by what is drawn there."""
    return divider.partition is None or build_of(divider.partition, sheet) == "single wall"


def conductivity_of(metal: Metal, at: Kelvins, sheet: Sheet) -> WattsPerMetreKelvin:
    """Conductivity of the metal of a wall."""
    return sheet.look_up("λ", metal.material.conductivity, of=metal.of, at=at)


def resistance_of(divider: Divider, T_1: Kelvins, T_2: Kelvins, sheet: Sheet) -> SquareMetreKelvinsPerWatt:
    """Resistance of a wall midway between both streams: one layer, or two with what stands between them."""
    metal = metal_of(divider, sheet)
    at = sheet.work("T_w", midway, T_1=T_1, T_2=T_2)
    λ = conductivity_of(metal, at, sheet)
    if is_single(divider, sheet):
        return sheet.work(f"R_{divider.name}", plane_wall_resistance, t=metal.t, λ=λ)
    assert divider.partition is not None  # only a partition has two walls
    R_g = gap_across(divider.partition, T_1, T_2, λ, sheet)
    return sheet.work(f"R_{divider.name}", double_wall_resistance, t=metal.t, λ=λ, R_g=R_g)
