"""A part as it was made: one piece of metal with its serial number, measured sizes, certificate and tests."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import (
    FOR_REVIEW,
    NOT_STATED,
    Angle,
    CarbonEquivalent,
    Duration,
    Force,
    Fraction,
    Hardness,
    LinkTo,
    Moment,
    Pressure,
    Stress,
    Temperature,
    Word,
)
from speclint.specs.geometry import AtMost, Conditions
from speclint.specs.kinds.duty import CaseName
from speclint.specs.listed_in import MATERIALS
from speclint.specs.measured_sizes import MeasuredDimension
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE

#: How an examination, a test or a step came out.
Result = Literal["passed", "failed"]
#: Elements of an analysis by their chemical symbols: those by which steels, irons and bronzes are ordered.
Element = Literal[
    "C",
    "Si",
    "Mn",
    "P",
    "S",
    "Cr",
    "Mo",
    "V",
    "Ni",
    "Cu",
    "Nb",
    "Ti",
    "Al",
    "N",
    "B",
    "Sn",
    "Pb",
    "Zn",
    "Fe",
    "Mg",
]


class Certificate(SpecTable):
    """The inspection document of the metal, EN 10204, and what it certifies.

    Fields:
        type: of the document: 2.1, 2.2, 3.1 or 3.2
        number: of the document
        by: who issued it
        date: the day on which it was issued, as 2027-05-31
        material: the metal that it certifies, by the name that specs use
        heat: number of the heat or cast
        proof_stress: as measured: yield or 0.2 % proof stress at room temperature
        tensile_strength: as measured at room temperature
        elongation: at fracture, as measured
        hardness: as measured
        analysis: mass fraction of each element by its symbol: C = "0.18 %"
        analysed: what was analysed: the cast in the ladle, or the product
        carbon_equivalent: of the International Institute of Welding, as the document states it
    """

    geometry: ClassVar[Conditions] = (AtMost("proof_stress", "tensile_strength"),)

    type: Word[Literal["2.1", "2.2", "3.1", "3.2"]] = NOT_STATED
    number: Word[str] = NOT_STATED
    by: Word[str] = NOT_STATED
    date: Word[str] = NOT_STATED
    material: Annotated[Word[str], MATERIALS] = NOT_STATED
    heat: Word[str] = NOT_STATED
    proof_stress: Stress = NOT_STATED
    tensile_strength: Stress = NOT_STATED
    elongation: Fraction = NOT_STATED
    hardness: Hardness = NOT_STATED
    analysis: dict[Element, Fraction] = {}
    analysed: Word[Literal["cast", "product"]] = NOT_STATED
    carbon_equivalent: CarbonEquivalent = NOT_STATED


class ProcessRecord(SpecTable):
    """What the record of every process states.

    Fields:
        record: number of the record
        date: the day, as 2027-05-31
        by: who did it, or answers for it
        result: how it came out
    """

    record: Word[str] = NOT_STATED
    date: Word[str] = NOT_STATED
    by: Word[str] = NOT_STATED
    result: Word[Result] = NOT_STATED


class WeldRecord(ProcessRecord):
    """A weld, or welds made alike.

    Fields:
        procedure: number of the qualified welding procedure
        welder: mark or name of the qualified welder
    """

    procedure: Word[str] = NOT_STATED
    welder: Word[str] = NOT_STATED


class HeatTreatmentRecord(ProcessRecord):
    """A heat treatment.

    Fields:
        treatment: what it was, such as "stress relieve"
        chart: number of the furnace chart
        temperature: at which the metal was held
        held: how long
    """

    treatment: Word[str] = NOT_STATED
    chart: Word[str] = NOT_STATED
    temperature: Temperature = NOT_STATED
    held: Duration = NOT_STATED


class ExaminationRecord(ProcessRecord):
    """An examination, such as of welds by ultrasound.

    Fields:
        method: how, and by which standard
        extent: of what, and how much of it
    """

    method: Word[str] = NOT_STATED
    extent: Word[str] = NOT_STATED


class EntryRecord(ProcessRecord):
    """How the part went into its bore, or another into it.

    Fields:
        force: the greatest that pressing took
        temperature: of the heated part when it went in
        cold_temperature: of the cooled part when it went in
    """

    force: Force = NOT_STATED
    temperature: Temperature = NOT_STATED
    cold_temperature: Temperature = NOT_STATED


class TighteningRecord(ProcessRecord):
    """How nuts were tightened; what differs from nut to nut is written with its limits.

    Fields:
        torque: on the nuts
        angle: by which the nuts were turned after that
        preload: in a stud, where it was measured
        tool: number of the wrench or tensioner
    """

    torque: Moment = NOT_STATED
    angle: Angle = NOT_STATED
    preload: Force = NOT_STATED
    tool: Word[str] = NOT_STATED


class HydraulicTestRecord(ProcessRecord):
    """A hydraulic test.

    Fields:
        pressure: the least that stood during the test
        held: how long
        gauge: number of the gauge
        witnessed_by: who witnessed it
    """

    pressure: Pressure = NOT_STATED
    held: Duration = NOT_STATED
    gauge: Word[str] = NOT_STATED
    witnessed_by: Word[str] = NOT_STATED


class SteamingRecord(SpecTable):
    """What was measured of the part, or of the steam at it, when the engine was in steam.

    Fields:
        case: the load case of the duty that the engine was in
        quantity: key of the load case, such as "live_temperature"
        dimension: key of the spec, where a size of the part was measured in steam, such as a clearance or lost motion;
            the metal temperature of the part where both are left out
        value: as read, with its unit
        uncertainty: the expanded uncertainty of the value, coverage factor 2, as recorded
        instrument: by its name and number
        date: the day, as 2027-05-31
        by: who measured
    """

    case: Word[CaseName] = NOT_STATED
    quantity: Word[str] = NOT_STATED
    dimension: Word[str] = NOT_STATED
    value: Word[str] = NOT_STATED
    uncertainty: Word[str] = NOT_STATED
    instrument: Word[str] = NOT_STATED
    date: Word[str] = NOT_STATED
    by: Word[str] = NOT_STATED


class MadePart(Component):
    """A part as it was made: what was measured on it, and the records of its metal and of its making.

    It is judged beside its drawing, never in its place: an ordinary check takes every size from the drawing.

    Fields:
        of: the spec that it was made to
        serial: its serial number
        made_to: revision of the drawing that it was made to
        maker: the works that made it
        fitted: whether it stands in the place of its spec; where several were made to one spec, one is fitted
        measured: what was measured, each by the key of the spec, or by a name with its dimension
        certificate: of its metal
        welds: by name
        heat_treatments: by name
        examinations: by name
        entries: how it went into its bore, by name
        tightenings: by name
        hydraulic_tests: by name
        steamings: what was measured in steam, by name
    """

    kind: ClassVar[str] = "made-part"
    called: ClassVar[str] = "made part"
    of_metal: ClassVar[bool] = False

    of: Annotated[LinkTo[Component], OWN_PLACE, FOR_REVIEW] = NOT_STATED
    serial: Annotated[Word[str], OWN_PLACE] = NOT_STATED
    made_to: Word[str] = NOT_STATED
    maker: Word[str] = NOT_STATED
    fitted: Word[bool] = NOT_STATED
    measured: dict[str, MeasuredDimension] = {}
    certificate: Certificate = Certificate.unstated()
    welds: dict[str, WeldRecord] = {}
    heat_treatments: dict[str, HeatTreatmentRecord] = {}
    examinations: dict[str, ExaminationRecord] = {}
    entries: dict[str, EntryRecord] = {}
    tightenings: dict[str, TighteningRecord] = {}
    hydraulic_tests: dict[str, HydraulicTestRecord] = {}
    steamings: dict[str, SteamingRecord] = {}
