"""The plates: through-thickness loading, toughness and corrosion allowance."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres, Ratio
from speclint.handbook.fits import share_of_size
from speclint.specs import Plate, WeldedJoint, Weldment
from speclint_fabrication.formulae.plates import quality_asked
from speclint_fabrication.formulae.tables import through_thickness
from speclint_fabrication.inputs.joined import plate_standing, share_of_a_side
from speclint_fabrication.inputs.meeting_steam import meets_steam
from speclint_fabrication.inputs.plates import metal_of, plate_named
from speclint_fabrication.sources import DUCTILE_STEEL, EN_1993_1_10, EN_13445_2, Z_CLASSES


@rule(
    "block.through-thickness",
    title="The through-thickness quality required by each welded joint does not exceed that of its plate",
    wrong="plate at {item} is of Z quality {limit}, {found} required",
    on=Weldment,
    grade=Grade.NONCONFORMITY,
    cites=[EN_1993_1_10.at("3.2, Table 3.2"), Z_CLASSES],
    why="A rolled plate is layered: shrinkage of a heavy weld on its face can tear the plate beneath it, "
    "out of sight (lamellar tearing).",
    leaves_out="ultrasonic testing of the plate before welding, which is the other safeguard",
    against=("break under load",),
    against_on={"cylinder-block": ("break under load",)},
    reached_by="makes",
    edition=3,
    limits=[
        Limit(
            "preheat",
            "100 °C",
            "temperature",
            EN_1993_1_10.at("Table 3.2"),
            "least preheat that lowers the requirement",
        )
    ],
)
def through(weldment: Weldment, sheet: Sheet) -> Judgement:
    """Z points of throat, shape, thickness, restraint and preheat against what the plate's quality covers.

    A weld that goes through has at least the whole plate that it joins for a throat, from both sides half of it,
    whatever is stated.
    """
    shapes = {name: sheet.read(f"shape of {name}", joint.shape) for name, joint in weldment.joints.items()}
    pulled = [name for name, shape in shapes.items() if shape in ("tee", "cruciform", "corner")]
    if not pulled:
        raise sheet.not_applicable("no plate is loaded through its thickness")
    preheat = _preheat(weldment, sheet)
    return sheet.each(pulled, lambda name: _pulled(name, weldment, shapes[name], preheat, sheet))


def _preheat(weldment: Weldment, sheet: Sheet) -> Ratio:
    warm = sheet.take("T_p", weldment.welding.preheat) >= sheet.limit("preheat")
    return sheet.look_up("Z_e", through_thickness, criterion="preheat", case=_PREHEAT[warm])


_PREHEAT = {True: "100 °C and above", False: "below 100 °C"}


def _pulled(name: str, weldment: Weldment, shape: str, preheat: Ratio, sheet: Sheet) -> Judgement:
    joint = weldment.joints[name]
    plate = plate_named(weldment, joint.plate, sheet)
    thickness, throat = sheet.take(f"t of {name}", plate.thickness), _throat(name, joint, weldment, sheet)
    asked = sheet.work(
        f"Z of {name}",
        quality_asked,
        Z_a=sheet.look_up(f"Z_a of {name}", through_thickness, criterion="throat", size=throat),
        Z_b=sheet.look_up(
            f"Z_b of {name}", through_thickness, criterion="shape", case=_case(name, joint, shape, sheet)
        ),
        Z_c=sheet.look_up(f"Z_c of {name}", through_thickness, criterion="thickness", size=thickness),
        Z_d=sheet.look_up(
            f"Z_d of {name}",
            through_thickness,
            criterion="restraint",
            case=sheet.read(f"restraint of {name}", joint.restraint),
        ),
        Z_e=preheat,
    )
    quality = sheet.read(f"quality of the plate of {name}", plate.z_quality)
    return sheet.at_most(
        asked, sheet.look_up(f"Z_q of {name}", through_thickness, criterion="quality", case=quality)
    )


def _throat(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> Metres:
    """The throat on one side: where the weld goes through, no less than the plate that stands on the other.

    From both sides half of that plate is enough.
    """
    stated = sheet.take(f"a of {name}", joint.throat)
    standing = plate_standing(name, joint, weldment, sheet)
    if standing is None or sheet.read(f"weld of {name}", joint.weld) != "full penetration":
        return stated
    t, k = sheet.take(f"t_s of {name}", standing.thickness), share_of_a_side(name, joint, sheet)
    return max(stated, sheet.work(f"a_t of {name}", share_of_size, k=k, t=t))


def _case(name: str, joint: WeldedJoint, shape: str, sheet: Sheet) -> str:
    """What the table calls a joint."""
    weld = sheet.read(f"weld of {name}", joint.weld)
    if weld == "single-run fillet":
        return weld
    if shape == "corner":
        return "corner"
    if weld == "fillet":
        return "fillet"
    return "in sequence" if sheet.read(f"sequence of {name}", joint.sequence) else "out of sequence"


@rule(
    "block.toughness",
    title="The impact energy of every plate is at least its limit at the lowest temperature and at the "
    "hydraulic test, and the test water is warm enough for the limit",
    on=Weldment,
    grade=Grade.NONCONFORMITY,
    cites=[DUCTILE_STEEL, EN_13445_2.at("Annex B, impact energy of 27 J"), COMMON_PRACTICE],
    why="Steel that is tough in summer can fracture brittly in winter, above all under a hydraulic test in "
    "a cold shop.",
    leaves_out="thick plates without stress relief, which need more; toughness of the weld metal",
    against=("break under load",),
    against_on={"cylinder-block": ("break under load",)},
    reached_by="makes",
    limits=[
        Limit("energy", "27 J", "energy", DUCTILE_STEEL, "least impact energy"),
        Limit(
            "test_water",
            "7 °C",
            "temperature",
            COMMON_PRACTICE,
            "least temperature of the water in a hydraulic test",
        ),
    ],
)
def toughness(weldment: Weldment, sheet: Sheet) -> Judgement:
    """Impact energy of each grade at both temperatures, and temperature of the test water."""
    if not weldment.plates:
        raise sheet.not_assessed("no plate is stated", weldment.where)
    coldest, water = sheet.take("T_c", weldment.least_temperature), sheet.take("T_w", weldment.test_water)
    warm = sheet.at_least(water, sheet.limit("test_water")).else_says("test water at {found}, {limit} wanted")

    def judge(item: tuple[str, Plate]) -> Judgement:
        name, plate = item
        metal = metal_of(name, plate, sheet)
        energies = [sheet.look_up(f"KV of {name}", metal.impact_energy, at=at) for at in (coldest, water)]
        return sheet.worst(
            *(
                sheet.at_least(one, sheet.limit("energy", "KV_0")).else_says(
                    "plate {item} takes {found} in the impact test, {limit} wanted"
                )
                for one in energies
            )
        )

    return sheet.worst(warm, sheet.each(weldment.plates.items(), judge))


@rule(
    "block.corrosion-allowance",
    title="The corrosion allowance of every plate that meets steam is at least its limit",
    wrong="plate {item} has {found} for corrosion, {limit} wanted",
    on=Weldment,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="Wet steam, and water left in an engine that stands, corrode steel, most of all where nobody can "
    "inspect it.",
    leaves_out="pitting, and erosion by wet steam at bends and throats",
    against=("corrode",),
    against_on={"cylinder-block": ("corrode",)},
    reached_by="makes",
    edition=3,
    limits=[Limit("allowance", "1 mm", "length", COMMON_PRACTICE, "least corrosion allowance")],
)
def corrosion_allowance(weldment: Weldment, sheet: Sheet) -> Judgement:
    """Allowance ≥ 1 mm on each plate that meets steam; the strength of walls is worked without it."""
    if not weldment.plates:
        raise sheet.not_assessed("no plate is stated", weldment.where)

    def judge(item: tuple[str, Plate]) -> Judgement:
        name, plate = item
        if not meets_steam(name, plate, weldment, sheet):
            raise sheet.not_applicable("no plate meets steam")
        return sheet.at_least(sheet.take(f"c of {name}", plate.corrosion_allowance), sheet.limit("allowance"))

    return sheet.each(weldment.plates.items(), judge)


RULES: tuple[Rule, ...] = (through, toughness, corrosion_allowance)
