"""speclint.toml: the settings of a design repository for its checks."""

from collections.abc import Iterator
from pathlib import Path, PurePath
from typing import Annotated, Any, ClassVar, Literal

from pydantic import BeforeValidator, ValidationError

from speclint.errors import Complaint, Location, one_of
from speclint.quantities import Measure, System
from speclint.repository.root_folder import FILE_NAME
from speclint.repository.site_air import site_pressure_faults
from speclint.repository.toml_tables import read_named
from speclint.repository.validation import complaint_of
from speclint.specs import (
    NOT_STATED,
    Fraction,
    Length,
    NotStated,
    Position,
    Pressure,
    Span,
    SpecTable,
    Stated,
    Table,
    Word,
    bare,
)

_SECONDS, _MOST_SECONDS = 60, 3600
_STANDARD_ATMOSPHERE = 101_325.0  # Pa, exact: CGPM 10 (1954), resolution 4

_GRADES = ("observation", "query", "nonconformity", "hold")

Texts = Annotated[
    tuple[str, ...], BeforeValidator(lambda raw: tuple(bare(raw)) if isinstance(raw, list) else bare(raw))
]


#: The settings that a rule may ask for.
SettingName = Literal[
    "stage",
    "pressure codes",
    "railway codes",
    "site pressure",
    "decision",
    "general angles",
    "general geometry",
]

#: The settings that stand in the place of limits which rules declare.
MeasuredSetting = Literal["steepest grade", "cant"]


class Works(SpecTable):
    """Whose repository it is, how far its design has come, and where the engine will run.

    ``exit_at`` is the least grade that makes ``check`` exit with 1. ``site_pressure`` turns gauge into
    absolute pressure; the standard atmosphere is taken where it is not stated, and reports say so. ``altitude`` is the
    height of the site above the sea, which a site pressure below 0.85 bar must have beside it. ``units`` are those in
    which quantities are printed, on sheets and drawings alike; where they are not stated, sheets print each as its
    spec writes it, and drawings are metric.
    """

    name: Word[str] = NOT_STATED
    stage: Word[Literal["draft", "for-review", "released"]] = NOT_STATED
    exit_at: Word[Literal["observation", "query", "nonconformity", "hold"]] = NOT_STATED
    site_pressure: Pressure = NOT_STATED
    altitude: Annotated[Position, Span("1 m", "5200 m")] = NOT_STATED
    units: Word[Literal["metric", "imperial"]] = NOT_STATED


class Families(SpecTable):
    """Which families must be there for a check to count, and which installed ones are left out of it.

    Fields:
        required: without these nothing is checked.
        leave_out: these are not used, and every report says so.
        seconds_per_rule: how long one rule may take on one component before it counts as one that could not be run, in
            seconds of the processor, and five times as long by the clock; 60 where not stated.
    """

    required: Texts = ()
    leave_out: Texts = ()
    seconds_per_rule: Word[int] = NOT_STATED

    @property
    def left_out(self) -> tuple[str, ...]:
        """The families that are left out: one that is required never is."""
        return tuple(sorted(set(self.leave_out) - set(self.required)))


class LocalCodes(SpecTable):
    """The codes that apply at the site: named beside every hold."""

    pressure: Texts = ()
    railway: Texts = ()


class Railway(SpecTable):
    """The line on which the engine runs: it stands in the place of the limits of every rule that counts with it.

    Fields:
        steepest: the steepest grade, such as "0.025" for 1 in 40.
        cant: the greatest height of one rail above the other.
    """

    steepest: Annotated[Fraction, Span("0.0005", "0.3")] = NOT_STATED
    cant: Annotated[Length, Span("10 mm", "250 mm")] = NOT_STATED


class Drawings(SpecTable):
    """The general tolerances of all drawings, for a part that names none of its own.

    Fields:
        general_angles: class of angles, ISO 2768-1; m where it is not stated.
        general_geometry: class of flatness and straightness, ISO 2768-2.
    """

    general_angles: Word[Literal["f", "m", "c", "v"]] = NOT_STATED
    general_geometry: Word[Literal["H", "K", "L"]] = NOT_STATED


class Concessions(SpecTable):
    """How accepted findings are kept.

    Fields:
        file: the register, in the repository; ``register.toml`` where it is not stated.
        signed: the grades whose concessions must carry a signature.
        ending_soon: how many days before its end a concession is listed as ending soon; 30 where not stated.
        longest: how many years after its day a concession may end; 30 where not stated.
    """

    file: Word[str] = NOT_STATED
    signed: Texts = ()
    ending_soon: Word[int] = NOT_STATED
    longest: Word[int] = NOT_STATED


class Signers(SpecTable):
    """``file``: who may sign with which key, as ssh-keygen reads it; ``allowed_signers`` where not stated."""

    file: Word[str] = NOT_STATED


class Made(SpecTable):
    """How parts as made are judged.

    Fields:
        decision: how a measured value is held against its limits, ISO 14253-1; "guard band of U" where not stated: it
            proves conformity inside the limits by at least the expanded uncertainty U, and the opposite outside by
            more than U. "guard band for 95 %" takes 1.65 standard uncertainties, as the edition of 2017;
            "simple acceptance" takes none, as ISO/TR 14253-6.
        certificate_strengths: whether the strengths of the certificate of its metal stand in the place of the least
            ones of the standard; they do not where this is not stated.
        mappings: the files, in the repository, that say how the tables of each shop are read.
        gauge_share: how much of a tolerance the uncertainty of a gauge may take: a tenth where not stated, and a fifth
            at the most; common practice.
    """

    decision: Word[Literal["guard band of U", "guard band for 95 %", "simple acceptance"]] = NOT_STATED
    certificate_strengths: Word[bool] = NOT_STATED
    mappings: Texts = ()
    gauge_share: Fraction = NOT_STATED


class Tables(SpecTable):
    """How tables of parts are read.

    Fields:
        mappings: the files, in the repository, that say which key each column of such a table holds.
    """

    mappings: Texts = ()


class Reviewer(SpecTable):
    """Who may concede a hold, under a name of their own.

    Fields:
        competent_for: the families whose holds this person may concede.
        role: the position of this person.
        signs_as: the name under which the file of signers has this person's key.
    """

    competent_for: Texts = ()
    role: Word[str] = NOT_STATED
    signs_as: Word[str] = NOT_STATED


class Settings(SpecTable):
    """All of speclint.toml.

    Fields:
        materials: files of the repository that state materials of its own.
        leave_out: patterns of names of TOML files that are no specs.
        limits: limits of common practice that the works sets for itself, by rule and name; read against the rules. One
            of a rule of hold grade is a table of value, grounds and accepted_by, a competent reviewer.
        reviewers: who may concede holds, by name.
    """

    kind: ClassVar[str] = "settings"

    works: Works = Works.unstated()
    families: Families = Families.unstated()
    local_codes: LocalCodes = LocalCodes.unstated()
    railway: Railway = Railway.unstated()
    drawings: Drawings = Drawings.unstated()
    materials: Texts = ()
    leave_out: Texts = ()
    limits: dict[str, dict[str, Any]] = {}
    concessions: Concessions = Concessions.unstated()
    signers: Signers = Signers.unstated()
    reviewers: dict[str, Reviewer] = {}
    made: Made = Made.unstated()
    tables: Tables = Tables.unstated()

    def said(self, name: SettingName) -> str:
        """A setting that a rule may ask for, as text; "" where it is not set."""
        values = {
            "stage": self.stage,
            "pressure codes": ", ".join(self.local_codes.pressure),
            "railway codes": ", ".join(self.local_codes.railway),
            "site pressure": repr(self.site_pressure),
            "decision": self.decision,
            "general angles": self.general_angles,
            "general geometry": self.general_geometry,
        }
        return values[name]

    def measured(self, name: MeasuredSetting) -> Measure | None:
        """The setting that stands in the place of a limit; None where it is not stated."""
        stated = {"steepest grade": self.railway.steepest, "cant": self.railway.cant}[name]
        return stated if isinstance(stated, Measure) else None

    @property
    def general_angles(self) -> str:
        """The class of angles, ISO 2768-1; ``m``, common practice, where it is not stated."""
        stated = self.drawings.general_angles
        return "m" if isinstance(stated, NotStated) else stated.value

    @property
    def general_geometry(self) -> str:
        """The class of flatness, ISO 2768-2, of all drawings; "" where none is stated."""
        stated = self.drawings.general_geometry
        return "" if isinstance(stated, NotStated) else stated.value

    @property
    def site_pressure(self) -> float:
        """Absolute pressure of the atmosphere at the site, Pa."""
        stated = self.works.site_pressure
        return stated.nominal if isinstance(stated, Measure) else _STANDARD_ATMOSPHERE

    @property
    def stage(self) -> str:
        """How far the design has come; ``draft`` where it is not stated."""
        return "draft" if isinstance(self.works.stage, NotStated) else self.works.stage.value

    @property
    def units(self) -> System:
        """The units in which quantities are printed; as each spec writes them where none are stated."""
        stated = self.works.units
        return "as written" if isinstance(stated, NotStated) else stated.value

    @property
    def exit_at(self) -> str:
        """The least grade that makes ``check`` exit with 1; ``nonconformity`` where it is not stated."""
        return "nonconformity" if isinstance(self.works.exit_at, NotStated) else self.works.exit_at.value

    @property
    def register_file(self) -> str:
        """The file of the register; ``register.toml`` where it is not stated."""
        stated = self.concessions.file
        return "register.toml" if isinstance(stated, NotStated) else stated.value

    @property
    def signers_file(self) -> str:
        """The file of signers; ``allowed_signers`` where it is not stated."""
        return "allowed_signers" if isinstance(self.signers.file, NotStated) else self.signers.file.value

    @property
    def seconds_per_rule(self) -> int:
        """How long one rule may take on one component, s; 60 where not stated: a thousand times what one needs."""
        stated = self.families.seconds_per_rule
        return _SECONDS if isinstance(stated, NotStated) else stated.value

    @property
    def decision(self) -> str:
        """How a measured value is held against its limits; "guard band of U" where it is not stated."""
        return "guard band of U" if isinstance(self.made.decision, NotStated) else self.made.decision.value

    @property
    def certificate_strengths(self) -> bool:
        """Whether certified strengths of a made part stand in the place of the least ones of the standard."""
        stated = self.made.certificate_strengths
        return isinstance(stated, Stated) and stated.value

    @property
    def gauge_share(self) -> float:
        """How much of a tolerance the uncertainty of a gauge may take; a tenth, common practice, where not stated."""
        from speclint.handbook.inspection import USUAL_SHARE  # only where parts are inspected

        stated = self.made.gauge_share
        return stated.nominal if isinstance(stated, Measure) else USUAL_SHARE

    @property
    def ending_soon(self) -> int:
        """Days before its end from which a concession is ending soon; 30, common practice, where not stated."""
        stated = self.concessions.ending_soon
        return 30 if isinstance(stated, NotStated) else stated.value

    @property
    def longest_concession(self) -> int:
        """Years for which a concession may run; 30, about the life of an engine, common practice, where not stated."""
        stated = self.concessions.longest
        return 30 if isinstance(stated, NotStated) else stated.value


def load_settings(root: Path) -> tuple[Settings | None, tuple[Complaint, ...]]:
    """Read the settings of a repository; None with complaints when they cannot be used."""
    table = read_named(root, FILE_NAME)
    if isinstance(table, Complaint):
        return None, (table,)
    content = Table(table, Location(FILE_NAME, 1))
    try:
        settings = Settings.model_validate(content)
    except ValidationError as problem:
        errors = problem.errors()
        found = [complaint_of(error, Settings, content, FILE_NAME) for error in errors]
        return None, tuple(sorted(found, key=lambda complaint: complaint.order))
    return settings, _impossible(settings)


def _impossible(settings: Settings) -> tuple[Complaint, ...]:
    return tuple(sorted(_faults(settings), key=lambda complaint: complaint.order))


def _faults(settings: Settings) -> Iterator[Complaint]:
    yield from site_pressure_faults(settings.works.site_pressure, settings.works.altitude)
    where = Location(FILE_NAME, settings.concessions.where.line, "concessions.signed")
    for word in settings.concessions.signed:
        if word not in _GRADES:
            yield Complaint(where, "this is not a grade", f'"{word}"', one_of(word, _GRADES))
    where = Location(FILE_NAME, settings.families.where.line, "families.leave_out")
    for name in sorted(set(settings.families.leave_out) & set(settings.families.required)):
        write = f'"{name}" in only one of required and leave_out'
        yield Complaint(where, "a family that is required cannot be left out", f'"{name}"', write)
    seconds = settings.families.seconds_per_rule
    if isinstance(seconds, Stated) and not 1 <= seconds.value <= _MOST_SECONDS:
        yield Complaint(
            seconds.where, "a rule is given from 1 to 3600 seconds", str(seconds.value), str(_SECONDS)
        )
    yield from _gauge_share_faults(settings)
    for own, write in ((settings.railway.steepest, '"0.025"'), (settings.railway.cant, '"120 mm"')):
        if isinstance(own, Measure) and not own.exact:
            yield Complaint(own.where, "a setting has no tolerance of its own", f'"{own.text}"', write)
    for file in (settings.concessions.file, settings.signers.file):
        if isinstance(file, Stated) and not inside(file.value):
            yield Complaint(file.where, "this lies outside the repository", f'"{file.value}"', "a file in it")


def _gauge_share_faults(settings: Settings) -> Iterator[Complaint]:
    share = settings.made.gauge_share
    if isinstance(share, Measure):
        from speclint.handbook.inspection import GREATEST_SHARE

        if not 0 < share.nominal <= GREATEST_SHARE or not share.exact:
            said = "a gauge may take up to a fifth of the tolerance, or it decides too little"
            yield Complaint(share.where, said, f'"{share.text}"', '"10 %", and "20 %" at the most')


def inside(file: str) -> bool:
    """Whether the name of a file, as the settings write it, stays within the repository."""
    path = PurePath(file)
    return not path.is_absolute() and not path.drive and ".." not in path.parts
