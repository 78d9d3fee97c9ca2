"""speclint.toml: the settings of a design repository for its checks."""

from collections.abc import Iterator
from pathlib import Path, PurePath
from typing import Any, ClassVar, Literal

from pydantic import ValidationError

from speclint.errors import Complaint, Location, one_of
from speclint.quantities import Measure, System
from speclint.repository.root_folder import FILE_NAME
from speclint.repository.settings_tables import (
    Concessions,
    Drawings,
    Families,
    LocalCodes,
    Made,
    Railway,
    Reviewer,
    Signers,
    Tables,
    Texts,
    Works,
)
from speclint.repository.site_air import site_pressure_faults
from speclint.repository.toml_tables import read_named
from speclint.repository.validation import complaint_of
from speclint.specs import NotStated, SpecTable, Stated, Table

_SECONDS, _MOST_SECONDS = 60, 3600
_STANDARD_ATMOSPHERE = 101_325.0  # Pa, exact: CGPM 10 (1954), resolution 4

_GRADES = ("observation", "query", "nonconformity", "hold")

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
