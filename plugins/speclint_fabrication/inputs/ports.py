"""Ports cut through the barrel of a bore: those of one end stand side by side round it."""

from __future__ import annotations

from dataclasses import dataclass

from speclint import Sheet
from speclint.equations import Metres
from speclint.facts import bore_named
from speclint.specs import BlockPort, CylinderBlock, LoadCase, NotStated, Plate
from speclint_fabrication.formulae.openings import barrel_beside_port
from speclint_fabrication.inputs.openings import Shell, allowed_in, welded
from speclint_fabrication.inputs.plates import wall_left
from speclint_fabrication.inputs.pressures import greatest_on

_SIDES = ["cylinder"]


@dataclass(frozen=True, slots=True)
class Barrel:
    """The ports of one end of a bore, and the plate of the barrel through which they are cut."""

    name: str
    bore: str
    of_plate: str
    plate: Plate
    block: CylinderBlock
    ports: tuple[tuple[str, BlockPort], ...]

    def shell(self, case: LoadCase, sheet: Sheet) -> Shell:
        """The barrel in a load case."""
        return Shell(
            r=sheet.take(f"D of {self.bore}", self.block.bores[self.bore].diameter) / 2,
            e=wall_left(self.of_plate, self.plate, _SIDES, sheet),
            c=sheet.take(f"c of {self.of_plate}", self.plate.corrosion_allowance),
            P=greatest_on("cylinder", case, self.block, sheet),
            f=allowed_in(self.of_plate, self.plate, _SIDES, self.block, case, sheet),
        )

    def beside(self, name: str, port: BlockPort, a: Metres, sheet: Sheet) -> Metres:
        """Length of barrel from the edge of a port to the nearer end of its bore [m]."""
        x = sheet.take(f"x of {name}", port.from_seat)
        near = sheet.work(f"l_1 of {name}", barrel_beside_port, x_1=x, x_2=0.0, a=a)
        far = sheet.take(f"L of {self.bore}", self.block.bores[self.bore].length)
        return min(near, sheet.work(f"l_2 of {name}", barrel_beside_port, x_1=x, x_2=far, a=a))

    def places(self, sheet: Sheet) -> list[tuple[Metres, Metres]]:
        """Middle along the axis and height of each port [m]."""
        return [
            (sheet.take(f"x of {name}", port.from_seat), sheet.take(f"a of {name}", port.height))
            for name, port in self.ports
        ]


def barrels_of(block: CylinderBlock, sheet: Sheet) -> list[Barrel]:
    """The ports of a block by the end that they open into."""
    if not block.ports:
        return []
    weldment = welded(block, sheet)
    by_end: dict[str, list[tuple[str, BlockPort]]] = {}
    for name, port in block.ports.items():
        by_end.setdefault(sheet.read(f"end of {name}", port.of_end), []).append((name, port))
    found = []
    for end, ports in by_end.items():
        bore = _bore_of_end(end, block, sheet)
        plate_name = bore_named(block, bore, sheet).plate
        plate = sheet.entry(weldment.plates, plate_name, f"plates of {weldment.id}")
        of_plate = sheet.read(f"plate of {bore}", plate_name)
        if sheet.read(f"{of_plate} serves as", plate.serves_as) == "flat wall":
            said = f"the barrel of bore {bore} is said to be cut from {of_plate}, which is a flat wall"
            raise sheet.not_assessed(said, plate_name.where)
        found.append(Barrel(", ".join(name for name, _ in ports), bore, of_plate, plate, block, tuple(ports)))
    return found


def _bore_of_end(end: str, block: CylinderBlock, sheet: Sheet) -> str:
    """The bore of an end; the only one of the block where the end names none."""
    named = block.ends[end].of_bore if end in block.ends else None
    if (named is None or isinstance(named, NotStated)) and len(block.bores) == 1:
        return next(iter(block.bores))
    if named is None:
        raise sheet.not_assessed(f"{block.id} states no end {end}", block.where)
    bore = sheet.read(f"bore of {end}", named)
    sheet.entry(block.bores, named, f"bores of {block.id}")
    return bore
