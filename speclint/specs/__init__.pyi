from .block_bores import (
    Bore as Bore,
    RelievedLength as RelievedLength,
    SeatBore as SeatBore,
)
from .block_ends import (
    CylinderEnd as CylinderEnd,
    Fitting as Fitting,
)
from .block_openings import (
    BlockOpening as BlockOpening,
    BlockPort as BlockPort,
    Closable as Closable,
    CutOpening as CutOpening,
    ShellOpening as ShellOpening,
)
from .block_pads import (
    Pad as Pad,
    PadWeb as PadWeb,
)
from .block_walls import (
    Division as Division,
)
from .borne import (
    Borne as Borne,
    LongStuds as LongStuds,
)
from .by_word import (
    class_of as class_of,
)
from .carried import (
    Carried as Carried,
    CarriedForce as CarriedForce,
    CarriedPlace as CarriedPlace,
)
from .catalogue import (
    Catalogue as Catalogue,
)
from .component import (
    Component as Component,
)
from .deciding_words import (
    deciding_words as deciding_words,
)
from .dimension import (
    Dimension as Dimension,
)
from .docstrings import (
    meanings as meanings,
    prose as prose,
    summary as summary,
)
from .drawing import (
    Issue as Issue,
    as_filed as as_filed,
    as_item as as_item,
)
from .examples import (
    quantity_of as quantity_of,
    usual_at as usual_at,
)
from .extra_tables import (
    ExtraTable as ExtraTable,
)
from .fields import (
    FOR_REVIEW as FOR_REVIEW,
    LONGEST_ID as LONGEST_ID,
    NOT_STATED as NOT_STATED,
    Allowance as Allowance,
    Angle as Angle,
    Area as Area,
    CarbonEquivalent as CarbonEquivalent,
    Conductivity as Conductivity,
    Density as Density,
    Duration as Duration,
    Factor as Factor,
    Force as Force,
    Fraction as Fraction,
    Hardness as Hardness,
    HeatTransfer as HeatTransfer,
    Inertia as Inertia,
    Length as Length,
    Link as Link,
    LinkTo as LinkTo,
    Mass as Mass,
    MassFlow as MassFlow,
    Moment as Moment,
    NoArea as NoArea,
    NoMass as NoMass,
    NotStated as NotStated,
    OneOrMore as OneOrMore,
    Position as Position,
    Pressure as Pressure,
    Remark as Remark,
    RotationalSpeed as RotationalSpeed,
    SectionModulus as SectionModulus,
    SignedForce as SignedForce,
    Speed as Speed,
    Stated as Stated,
    Stiffness as Stiffness,
    Stress as Stress,
    Temperature as Temperature,
    TemperatureDifference as TemperatureDifference,
    Volume as Volume,
    WastingRate as WastingRate,
    Word as Word,
)
from .fields_read import (
    EVERY_FIELD as EVERY_FIELD,
    FieldRead as FieldRead,
    begin_noting as begin_noting,
    fields_of as fields_of,
    noted_in as noted_in,
)
from .freedom import (
    GIVEN as GIVEN,
    NO_LESS as NO_LESS,
    Given as Given,
    NoLess as NoLess,
    given_keys as given_keys,
    no_less_keys as no_less_keys,
)
from .geometry import (
    AtMost as AtMost,
    Below as Below,
    Conditions as Conditions,
    FitsIn as FitsIn,
    conditions_of as conditions_of,
)
from .hazards import (
    HAZARDS as HAZARDS,
    Hazard as Hazard,
    Hazards as Hazards,
)
from .heat_flow import (
    HeatPath as HeatPath,
    WarmChamber as WarmChamber,
)
from .inclinations import (
    Axis as Axis,
    Inclination as Inclination,
    axis_in_words as axis_in_words,
)
from .key_descriptions import (
    inner_table as inner_table,
    linked_kinds as linked_kinds,
    looked_up_in as looked_up_in,
    own_first as own_first,
    said_of as said_of,
    words_of as words_of,
)
from .kinds.access_plan import (
    AccessPlan as AccessPlan,
    Chamber as Chamber,
    SpannerRoom as SpannerRoom,
    Withdrawal as Withdrawal,
)
from .kinds.assembly import (
    Assembly as Assembly,
    Overhaul as Overhaul,
)
from .kinds.blast_nozzle import (
    BlastNozzle as BlastNozzle,
)
from .kinds.bolted_joint import (
    BoltedJoint as BoltedJoint,
)
from .kinds.bracket import (
    Bracket as Bracket,
    BracketWeld as BracketWeld,
)
from .kinds.cam import (
    Cam as Cam,
)
from .kinds.cam_box import (
    CamBox as CamBox,
)
from .kinds.casting import (
    Casting as Casting,
    Core as Core,
    MachinedFace as MachinedFace,
    Meeting as Meeting,
)
from .kinds.chamber_cover import (
    ChamberCover as ChamberCover,
)
from .kinds.compression_spring import (
    CompressionSpring as CompressionSpring,
)
from .kinds.crosshead import (
    Crosshead as Crosshead,
    RodHold as RodHold,
)
from .kinds.cylinder_block import (
    CylinderBlock as CylinderBlock,
)
from .kinds.cylinder_cover import (
    CylinderCover as CylinderCover,
)
from .kinds.cylinder_liner import (
    CylinderLiner as CylinderLiner,
    LinerPort as LinerPort,
    SealingLand as SealingLand,
)
from .kinds.dimension_chain import (
    ChainLink as ChainLink,
    DimensionChain as DimensionChain,
)
from .kinds.driving_axle import (
    DrivingAxle as DrivingAxle,
    Turning as Turning,
    Wheel as Wheel,
)
from .kinds.duty import (
    CASE_MEANINGS as CASE_MEANINGS,
    CASE_NAMES as CASE_NAMES,
    HOT_CASES as HOT_CASES,
    CaseName as CaseName,
    Duty as Duty,
    Life as Life,
    LoadCase as LoadCase,
)
from .kinds.engine import (
    Boiler as Boiler,
    CarryingAxle as CarryingAxle,
    Crank as Crank,
    Engine as Engine,
    Line as Line,
    Standing as Standing,
)
from .kinds.envelope import (
    Envelope as Envelope,
    GaugePoint as GaugePoint,
    MotionGap as MotionGap,
)
from .kinds.fit import (
    Fit as Fit,
)
from .kinds.frame import (
    Frame as Frame,
)
from .kinds.frame_fastening import (
    DrawnOut as DrawnOut,
    FrameFastening as FrameFastening,
)
from .kinds.gauge_outline import (
    GaugeOutline as GaugeOutline,
)
from .kinds.gland import (
    Gland as Gland,
)
from .kinds.known_fault import (
    Accepted as Accepted,
    ByCalculation as ByCalculation,
    ByTest as ByTest,
    KnownFault as KnownFault,
)
from .kinds.lagging import (
    Lagging as Lagging,
    SheetFixing as SheetFixing,
)
from .kinds.lens_joint import (
    LensJoint as LensJoint,
)
from .kinds.lifting_plan import (
    Crane as Crane,
    Jib as Jib,
    LiftedState as LiftedState,
    LiftingPlan as LiftingPlan,
    LiftingPoint as LiftingPoint,
    Lug as Lug,
    Weight as Weight,
)
from .kinds.locating_face import (
    LocatingFace as LocatingFace,
)
from .kinds.made_part import (
    Certificate as Certificate,
    EntryRecord as EntryRecord,
    ExaminationRecord as ExaminationRecord,
    HeatTreatmentRecord as HeatTreatmentRecord,
    HydraulicTestRecord as HydraulicTestRecord,
    MadePart as MadePart,
    ProcessRecord as ProcessRecord,
    SteamingRecord as SteamingRecord,
    TighteningRecord as TighteningRecord,
    WeldRecord as WeldRecord,
)
from .kinds.partition import (
    Partition as Partition,
)
from .kinds.pin import (
    Pin as Pin,
)
from .kinds.pipe_flange import (
    PipeFlange as PipeFlange,
)
from .kinds.piston import (
    Groove as Groove,
    Piston as Piston,
)
from .kinds.piston_ring import (
    PistonRing as PistonRing,
)
from .kinds.piston_rod import (
    PistonRod as PistonRod,
    RodSection as RodSection,
)
from .kinds.poppet_valve import (
    Beat as Beat,
    PoppetValve as PoppetValve,
)
from .kinds.retaining_ring import (
    RetainingRing as RetainingRing,
)
from .kinds.rocker import (
    Rocker as Rocker,
)
from .kinds.saddle import (
    Saddle as Saddle,
)
from .kinds.shaft import (
    Shaft as Shaft,
    ShaftBearing as ShaftBearing,
    ShaftDrive as ShaftDrive,
    ShaftKey as ShaftKey,
    ShaftKeyway as ShaftKeyway,
)
from .kinds.slide_bar import (
    BarSupport as BarSupport,
    SlideBar as SlideBar,
)
from .kinds.steam_passage import (
    BEYOND as BEYOND,
    PassageFace as PassageFace,
    SteamPassage as SteamPassage,
)
from .kinds.steam_pipe import (
    PipeEnd as PipeEnd,
    SteamPipe as SteamPipe,
)
from .kinds.stuffing_box import (
    StuffingBox as StuffingBox,
)
from .kinds.tappet import (
    Tappet as Tappet,
)
from .kinds.valve_cage import (
    ValveCage as ValveCage,
)
from .kinds.valve_gear import (
    CamSetting as CamSetting,
    DrivePin as DrivePin,
    Fork as Fork,
    Notch as Notch,
    ValveGear as ValveGear,
)
from .kinds.valve_seat import (
    ValveSeat as ValveSeat,
)
from .kinds.valve_spindle import (
    ValveSpindle as ValveSpindle,
)
from .kinds.weldment import (
    Cavity as Cavity,
    FinishedFace as FinishedFace,
    FlatWall as FlatWall,
    Plate as Plate,
    Ribs as Ribs,
    WeldedJoint as WeldedJoint,
    Weldment as Weldment,
)
from .listed_in import (
    MATERIALS as MATERIALS,
    THREADS as THREADS,
    ListedIn as ListedIn,
)
from .listed_words import (
    listed_words as listed_words,
)
from .lubrication import (
    RubbingPair as RubbingPair,
)
from .making import (
    BlockMaking as BlockMaking,
    CastingMaking as CastingMaking,
    FittedMaking as FittedMaking,
    LinerMaking as LinerMaking,
    Making as Making,
    SeatMaking as SeatMaking,
    StepDetail as StepDetail,
    WeldmentMaking as WeldmentMaking,
)
from .measured_sizes import (
    MeasuredDimension as MeasuredDimension,
    MeasuredSize as MeasuredSize,
    MeasuredValue as MeasuredValue,
    MisreadError as MisreadError,
    PlacedValue as PlacedValue,
    QuantityAt as QuantityAt,
    all_sizes_of as all_sizes_of,
    as_range as as_range,
    key_of as key_of,
    measured_size as measured_size,
    measured_value as measured_value,
    quantities_of as quantities_of,
    sizes_of as sizes_of,
)
from .named_fields import (
    names_in as names_in,
)
from .named_in import (
    NamedIn as NamedIn,
)
from .nothing_named import (
    UNDECIDED as UNDECIDED,
    bare_words as bare_words,
    denies as denies,
    names_nothing as names_nothing,
)
from .old_keys import (
    old_keys_in as old_keys_in,
    old_keys_of as old_keys_of,
)
from .restating import (
    could_state as could_state,
    restated as restated,
)
from .reworking import (
    CUT_DOWN as CUT_DOWN,
    OPENED as OPENED,
    Machined as Machined,
    UntilMeasured as UntilMeasured,
)
from .schema import (
    schema_of as schema_of,
    schema_of_all as schema_of_all,
    schema_of_table as schema_of_table,
    schemas_of as schemas_of,
)
from .sizes_made import (
    SizeApart as SizeApart,
    Sizes as Sizes,
    sizes_apart as sizes_apart,
    sizes_made as sizes_made,
)
from .spans import (
    Span as Span,
    refusal as refusal,
)
from .spec import (
    MARK as MARK,
    OF_THE_DRAWING as OF_THE_DRAWING,
    Spec as Spec,
    SpecTable as SpecTable,
    leaves as leaves,
)
from .stated_values import (
    stated_values as stated_values,
)
from .steamings import (
    Steaming as Steaming,
    steamings_of as steamings_of,
)
from .taking_over import (
    AS_FITTED as AS_FITTED,
    DONE_OR_NOT as DONE_OR_NOT,
    MADE_SO as MADE_SO,
    OWN_PLACE as OWN_PLACE,
    SIGNED as SIGNED,
    TAKEN_WHOLE as TAKEN_WHOLE,
    Difference as Difference,
    FieldTaken as FieldTaken,
    Mirroring as Mirroring,
    Mirrors as Mirrors,
    TakenOver as TakenOver,
    fields_taken as fields_taken,
    is_own_place as is_own_place,
    own_places as own_places,
)
from .template import (
    template_of as template_of,
)
from .ties import (
    Tie as Tie,
    WrittenTie as WrittenTie,
)
from .tolerancing import (
    FORMS as FORMS,
    LOCATIONS as LOCATIONS,
    ORIENTATIONS as ORIENTATIONS,
    RUN_OUTS as RUN_OUTS,
    Datum as Datum,
    GeneralTolerance as GeneralTolerance,
    GeometricalTolerance as GeometricalTolerance,
    HolePattern as HolePattern,
)
from .toml_values import (
    Array as Array,
    Leaf as Leaf,
    Table as Table,
    bare as bare,
    opened as opened,
)
from .water import (
    Drain as Drain,
    Floor as Floor,
    Wasting as Wasting,
)
from .wear import (
    BearingWear as BearingWear,
    PinWear as PinWear,
    Regrind as Regrind,
    RingWear as RingWear,
    SpringWear as SpringWear,
    Wear as Wear,
    WearFromNew as WearFromNew,
    WearOfFace as WearOfFace,
)
from .welding import (
    Welding as Welding,
)
from .worked_values import (
    Estimate as Estimate,
    FromEvents as FromEvents,
)
