"""A weldment: its plates, flat walls, welds, closed cavities, heat treatment and finished faces."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.block_openings import ShellOpening
from speclint.specs.block_walls import Side
from speclint.specs.component import Component
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    CarbonEquivalent,
    Duration,
    Fraction,
    Length,
    LinkTo,
    Mass,
    Stress,
    Temperature,
    TemperatureDifference,
    Word,
)
from speclint.specs.freedom import GIVEN, NO_LESS
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import CylinderBlock, SteamPassage
from speclint.specs.listed_in import MATERIALS
from speclint.specs.making import WeldmentMaking
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import MADE_SO, OWN_PLACE


class Plate(SpecTable):
    """A plate of the weldment.

    Fields:
        material: grade
        thickness: by the drawing
        rolled_thickness: as rolled, before any machining
        serves_as: flat wall, curved shell, or flange or pad; what a flat wall bounds stands under walls
        inside_diameter: of a round shell that no bore of the block names
        meets_steam: whether steam or its water touches it
        corrosion_allowance: allowance for corrosion
        carbon_equivalent: on its inspection document, by the formula of the International Institute of Welding
        z_quality: through-thickness quality by EN 10164
    """

    geometry: ClassVar[Conditions] = (
        AtMost("thickness", "rolled_thickness"),
        Below("corrosion_allowance", "thickness"),
    )

    material: Annotated[Word[str], MATERIALS] = NOT_STATED
    thickness: Annotated[Length, Span("3 mm", "150 mm")] = NOT_STATED
    rolled_thickness: Annotated[Length, Span("3 mm", "160 mm")] = NOT_STATED
    serves_as: Word[Literal["flat wall", "shell", "flange"]] = NOT_STATED
    inside_diameter: Annotated[Length, Span("50 mm", "3 m")] = NOT_STATED
    meets_steam: Word[bool] = NOT_STATED
    corrosion_allowance: Annotated[Allowance, Span("0.1 mm", "25 mm"), NO_LESS] = NOT_STATED
    carbon_equivalent: Annotated[CarbonEquivalent, GIVEN] = NOT_STATED
    z_quality: Annotated[Word[Literal["none", "Z15", "Z25", "Z35"]], MADE_SO] = NOT_STATED


class Ribs(SpecTable):
    """Ribs that stiffen a flat wall.

    Fields:
        spacing: from rib to rib
        span: length of a rib between its supports
        depth: height of a rib above the wall
        thickness: of a rib
        ends: how the ends of a rib are held
    """

    geometry: ClassVar[Conditions] = (Below("thickness", "spacing"),)

    spacing: Annotated[Length, Span("15 mm", "2 m")] = NOT_STATED
    span: Annotated[Length, Span("20 mm", "3 m")] = NOT_STATED
    depth: Annotated[Length, Span("5 mm", "600 mm")] = NOT_STATED
    thickness: Annotated[Length, Span("3 mm", "120 mm")] = NOT_STATED
    ends: Word[Literal["clamped", "supported"]] = NOT_STATED


class FlatWall(SpecTable):
    """A flat wall of a chest or a passage; between ribs, one panel of it.

    Fields:
        plate: name of its plate
        short: shorter side between its supports
        long: longer side
        edges: how its edges are held; clamped only where an equal panel or a stiff wall continues beyond them
        one_passage: the passage on the one side, which says what is in it; left out for a cylinder or the atmosphere
        other_passage: the passage on the other side
        one_side: the fluid on one side; leave out where a passage is named
        other_side: the fluid on the other side; leave out where a passage is named
        one_depth: depth of the space on the one side, square to the wall; left out for the atmosphere
        other_depth: depth of the space on the other side
        bridges: how many webs join it to the wall opposite, across the passage that it names, and part it into panels
        ribbed: whether ribs stiffen it
        ribs: the ribs
    """

    geometry: ClassVar[Conditions] = (AtMost("short", "long"),)

    plate: Annotated[Word[str], NamedIn("plates")] = NOT_STATED
    short: Annotated[Length, Span("15 mm", "2 m")] = NOT_STATED
    long: Annotated[Length, Span("20 mm", "3 m")] = NOT_STATED
    edges: Word[Literal["clamped", "supported"]] = NOT_STATED
    one_passage: Annotated[LinkTo[SteamPassage], OWN_PLACE] = NOT_STATED
    other_passage: Annotated[LinkTo[SteamPassage], OWN_PLACE] = NOT_STATED
    one_side: Word[Side] = NOT_STATED
    other_side: Word[Side] = NOT_STATED
    one_depth: Annotated[Length, Span("10 mm", "2 m")] = NOT_STATED
    other_depth: Annotated[Length, Span("10 mm", "2 m")] = NOT_STATED
    bridges: Word[int] = NOT_STATED
    ribbed: Word[bool] = NOT_STATED
    ribs: Ribs = Ribs.unstated()


class WeldedJoint(SpecTable):
    """A welded joint.

    Fields:
        plate: name of the plate that is loaded through its thickness, or of the thinner plate of a butt joint
        plates_joined: names of the plates on both sides
        filler: filler metal, by its standard
        taper: slope to which the thicker plate is drawn down, rise over length: "0.25" is 1 in 4
        offset: of the middle of one plate from that of the other
        shape: how the plates meet
        weld: type and penetration of the weld
        throat: effective throat of the weld on one side; of one that goes through, how deep it is laid from that side
        from_both_sides: whether it is welded from both sides; left out, it is laid from one, through the whole plate
        ground_flush: whether its cap and its root are ground flush with the plates; left out, they are as welded
        on_pressure: whether it holds pressure
        sequence: whether the weld sequence is specified so as to keep shrinkage low
        restraint: restraint of its shrinkage by the surrounding parts
        wall: name of the flat wall to which it belongs
        opening: that whose branch it joins to the plate, as the weldment or its block calls it
        stress_range: nominal stress range of every stroke, where it is calculated elsewhere
        detail_category: fatigue strength at two million cycles, by EN 1993-1-9
        procedure: qualification of the procedure by ISO 15614-1
        welder: qualification of the welder by ISO 9606-1
        quality: level by ISO 5817
        examined: share of its length that is radiographed or tested by ultrasound
        joint_factor: used in the design of the walls
    """

    plate: Annotated[Word[str], NamedIn("plates")] = NOT_STATED
    plates_joined: tuple[Word[str], ...] = ()
    filler: Word[str] = NOT_STATED
    taper: Fraction = NOT_STATED
    offset: Annotated[Allowance, Span("0.05 mm", "100 mm")] = NOT_STATED
    shape: Word[Literal["butt", "tee", "cruciform", "corner", "lap"]] = NOT_STATED
    weld: Word[Literal["full penetration", "partial penetration", "fillet", "single-run fillet"]] = NOT_STATED
    throat: Annotated[Length, Span("1.5 mm", "100 mm")] = NOT_STATED
    from_both_sides: Word[bool] = NOT_STATED
    ground_flush: Word[bool] = NOT_STATED
    on_pressure: Word[bool] = NOT_STATED
    sequence: Word[bool] = NOT_STATED
    restraint: Word[Literal["low", "medium", "high"]] = NOT_STATED
    wall: Annotated[Word[str], NamedIn("walls")] = NOT_STATED
    opening: Word[str] = NOT_STATED
    stress_range: Annotated[Stress, GIVEN] = NOT_STATED
    detail_category: Stress = NOT_STATED
    procedure: Word[str] = NOT_STATED
    welder: Word[str] = NOT_STATED
    quality: Word[Literal["B", "C", "D"]] = NOT_STATED
    examined: Annotated[Fraction, Span("0.1 %", "100 %")] = NOT_STATED
    joint_factor: Fraction = NOT_STATED


class Cavity(SpecTable):
    """A cavity closed in by plates.

    Fields:
        width: between two walls that close it in
        vented_for_treatment: whether its air can escape during heat treatment
        vented_in_service: whether leaked steam and water can escape in service
    """

    width: Annotated[Length, Span("1 mm", "1 m")] = NOT_STATED
    vented_for_treatment: Word[bool] = NOT_STATED
    vented_in_service: Word[bool] = NOT_STATED


class Treatment(SpecTable):
    """The stress relief after welding.

    Fields:
        temperature: at which it is held
        time: for which it is held
        before_finishing: whether finish machining follows it
    """

    temperature: Annotated[Temperature, MADE_SO] = NOT_STATED
    time: Annotated[Duration, MADE_SO] = NOT_STATED
    before_finishing: Word[bool] = NOT_STATED


class FinishedFace(SpecTable):
    """A face machined after welding.

    Fields:
        dimension: that determines its position
        of_key: the key under which the finished part states that dimension, such as "bores.main.diameter"
        allowance: machining allowance on it until the weldment is stress relieved
    """

    dimension: Annotated[Length, Span("30 mm", "8 m")] = NOT_STATED
    of_key: Word[str] = NOT_STATED
    allowance: Annotated[Allowance, Span("0.4 mm", "40 mm")] = NOT_STATED


class Weldment(Component):
    """A weldment, and how it is made.

    Fields:
        makes: the component that it becomes
        mass: as welded, by its plates or on the scales
        plates: by name
        walls: flat walls, by name
        joints: welded joints, by name
        openings: openings cut in its plates that stand under no opening of the block, by name
        cavities: closed cavities, by name
        cavities_sought: whether the drawing was searched for closed cavities
        cavities_record: the report of that search, which must be stated where it found none
        treatment: the stress relief after welding
        faces: finished faces, by name
        tolerance_class: general tolerance by ISO 13920
        life_distance: distance that the engine runs in its life
        starts: number of times that steam is raised in its life
        least_temperature: of its metal in service
        test_water: temperature of the water of the hydraulic test
        warming_rise: temperature rise of its steam side allowed in the warming time
        warming_time: the time for that
        making: the steps in which it is made
    """

    kind: ClassVar[str] = "weldment"
    called: ClassVar[str] = "weldment"
    of_metal: ClassVar[bool] = False
    hazards: ClassVar[Hazards] = ("burst", "break under load", "break in fatigue", "corrode")

    old_keys: ClassVar[Mapping[str, str]] = {
        "life_distance": "life.distance in the duty",
        "starts": "life.starts in the duty",
    }

    makes: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    mass: Mass = NOT_STATED
    plates: dict[str, Plate] = {}
    walls: dict[str, FlatWall] = {}
    joints: dict[str, WeldedJoint] = {}
    openings: dict[str, ShellOpening] = {}
    cavities: dict[str, Cavity] = {}
    cavities_sought: Word[bool] = NOT_STATED
    cavities_record: Word[str] = NOT_STATED
    treatment: Treatment = Treatment.unstated()
    faces: dict[str, FinishedFace] = {}
    tolerance_class: Word[Literal["A", "B", "C", "D"]] = NOT_STATED
    life_distance: Annotated[Length, Span("1e5 km", "1e7 km")] = NOT_STATED
    starts: Word[int] = NOT_STATED
    least_temperature: Temperature = NOT_STATED
    test_water: Temperature = NOT_STATED
    warming_rise: TemperatureDifference = NOT_STATED
    warming_time: Duration = NOT_STATED
    making: WeldmentMaking = WeldmentMaking.unstated()
