"""Weldments: each wall welded, each plate used, cavities sought, each division of the block a wall of it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.specs import CylinderBlock, Division, Partition, SteamPassage, Weldment
from speclint_wholeness.inputs import entries


def _welded(weldment: Weldment, sheet: Sheet) -> Iterator[ToFill]:
    """The welds of each wall, the walls and welds of each plate, and whether closed cavities were looked for."""
    for table in ("plates", "walls", "joints"):
        yield from entries(weldment, table, sheet)
    walls = {name: sheet.said(f"plate of wall {name}", wall.plate) for name, wall in weldment.walls.items()}
    welds = {
        name: (
            sheet.said(f"wall of weld {name}", weld.wall),
            sheet.said(f"plate of weld {name}", weld.plate),
        )
        for name, weld in weldment.joints.items()
    }
    for name, wall in weldment.walls.items():
        found = tuple(f"weld {weld}" for weld, (of, _) in welds.items() if of == name)
        yield ToFill(f"wall {name}", "welded joint", found, most=0, where=wall.where)
    for name, plate in weldment.plates.items():
        used = (
            *(f"wall {wall}" for wall, of in walls.items() if of == name),
            *(f"weld {weld}" for weld, (_, of) in welds.items() if of == name),
        )
        yield ToFill(f"plate {name}", "wall or welded joint", used, most=0, where=plate.where)
    sought = sheet.said("cavities sought", weldment.cavities_sought)
    yield ToFill(weldment.id, "search for closed cavities", ("made",) if sought else (), where=weldment.where)


def _walls(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each flat division of a fabricated block the wall of its weldment; a wall stands for one division."""
    weldments = sheet.fillers(block, Weldment, by="makes")
    if len(weldments) != 1:
        return
    drawn: dict[str, list[str]] = {}
    for name, division in block.divisions.items():
        if sheet.is_stated(f"ring of division {name}", division.ring_diameter):
            continue
        wall = sheet.said(f"wall of division {name}", division.wall) or _by_plate(
            division, weldments[0], sheet
        )
        other = sheet.said(f"other wall of division {name}", division.other_wall)
        for one in filter(None, (wall, other)):
            drawn.setdefault(one, []).append(name)
        if not wall:
            yield ToFill(f"division {name}", "wall of the weldment", where=division.where)
    for wall, names in drawn.items():
        found = tuple(f"division {name}" for name in names)
        yield ToFill(f"wall {wall} of {weldments[0].id}", "division", found, where=block.where)


def _by_plate(division: Division, weldment: Weldment, sheet: Sheet) -> str:
    """The wall of the plate that a division names, where it is the only one between the same two fluids."""
    plate = sheet.said("plate of the division", division.plate)
    sides = {sheet.said("one side", division.one_side), sheet.said("other side", division.other_side)}
    found = [
        name
        for name, wall in weldment.walls.items()
        if plate
        and sheet.said(f"plate of wall {name}", wall.plate) == plate
        and {
            sheet.said(f"one side of {name}", wall.one_side),
            sheet.said(f"other side of {name}", wall.other_side),
        }
        == sides
    ]
    return found[0] if len(found) == 1 else ""


def _stands_between(wall: Partition, block: CylinderBlock, sheet: Sheet) -> bool:
    """Whether both passages of a partition are of the block and carry their steam, as far as that is stated."""
    for side, link, steam in (
        ("live side", wall.live_side, "live steam"),
        ("exhaust side", wall.exhaust_side, "exhaust steam"),
    ):
        if not sheet.is_stated(f"{side} of {wall.id}", link):
            continue
        passage = sheet.follow(link)
        if _steam_of(passage, sheet) not in ("", steam):
            return False
        stated = sheet.is_stated(f"block of {passage.id}", passage.in_block)
        if stated and sheet.follow(passage.in_block).id != block.id:
            return False
    return True


def _steam_of(passage: SteamPassage, sheet: Sheet) -> str:
    """The steam in a passage: by its valve, else as it says; "" where neither tells."""
    if sheet.is_stated(f"valve of {passage.id}", passage.valve):
        valve = sheet.follow(passage.valve)
        if serves := sheet.said(f"what {valve.id} serves", valve.serves):
            return "live steam" if serves == "inlet" else "exhaust steam"
    return sheet.said(f"what {passage.id} carries", passage.carries) or ""


def _partitions(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """Where live stands against exhaust in a division, the partition between passages of the block."""
    both = {"live steam", "exhaust steam"}
    facing = [
        name
        for name, one in block.divisions.items()
        if {
            sheet.said(f"one side of {name}", one.one_side),
            sheet.said(f"other side of {name}", one.other_side),
        }
        == both
    ]
    if facing:
        found = {
            wall.id: wall
            for passage in sheet.fillers(block, SteamPassage, by="in_block")
            for wall in sheet.fillers(passage, Partition, by=("live_side", "exhaust_side"))
            if _stands_between(wall, block, sheet)
        }
        named = ", ".join(f"division {name}" for name in facing)
        yield ToFill(named, Partition.called, tuple(found.values()), len(facing), 0, where=block.where)


welded: Rule = filled_once(
    "weldment.walls-joined",
    title="Each wall of a weldment is welded, each plate is part of a wall or a weld, and cavities were looked for",
    on=Weldment,
    places=_welded,
    row=530,
    gravity="hold",
    why="a wall without a weld that is stated is held by one that nobody checked",
    leaves_out="whether every edge of a wall is welded: one weld may stand for all of them",
    edition=2,
)

drawn_once: Rule = filled_once(
    "division.of-one-wall",
    title="Each flat division of a fabricated block is one wall of its weldment, and no wall stands for two",
    on=CylinderBlock,
    places=_walls,
    row=540,
    gravity="hold",
    why="a division without its wall holds back live steam by metal that nobody drew",
    leaves_out="divisions round a bore; cast blocks",
    edition=3,
)

partitions: Rule = filled_once(
    "wall.partition-drawn",
    title="Where live steam stands against exhaust steam in a block, a partition between two such passages of it says "
    "how heat goes through",
    on=CylinderBlock,
    places=_partitions,
    row=550,
    gravity="part",
    why="heat that goes from live to exhaust steam is lost without work",
    leaves_out="which partition belongs to which division",
    edition=2,
)

RULES = (drawn_once, partitions, welded)
