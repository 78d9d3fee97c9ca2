"""speclint.toml: what a design repository asks of its checks."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Any, ClassVar, Literal

from pydantic import BeforeValidator, ValidationError

from speclint.complaints import Complaint
from speclint.loading import complaint_of, read_toml
from speclint.quantities import Measure
from speclint.specs.component import SpecTable
from speclint.specs.words import NOT_STATED, NotStated, Pressure, Table, Word, bare
from speclint.where import Where

FILE_NAME = "speclint.toml"
_STANDARD_ATMOSPHERE = 101_325.0  # Pa, exact: CGPM 10 (1954), resolution 4

Texts = Annotated[
    tuple[str, ...], BeforeValidator(lambda raw: tuple(bare(raw)) if isinstance(raw, list) else bare(raw))
]


class Works(SpecTable):
    """Whose repository it is, how far its design has come, and where the engine will run.

    ``exit_at`` is the least grade that makes ``check`` exit with 1. ``site_pressure`` turns gauge into
    absolute pressure; the standard atmosphere is taken where it is not stated, and reports say so.
    """

    name: Word[str] = NOT_STATED
    stage: Word[Literal["draft", "for-review", "released"]] = NOT_STATED
    exit_at: Word[Literal["observation", "query", "nonconformity", "hold"]] = NOT_STATED
    site_pressure: Pressure = NOT_STATED


class Families(SpecTable):
    """Which families must be there for a check to count."""

    required: Texts = ()


class LocalCodes(SpecTable):
    """The codes that bind at the place: named beside every hold."""

    pressure: Texts = ()
    railway: Texts = ()


class Settings(SpecTable):
    """All of speclint.toml. ``limits`` is read against the rules that declare them (:mod:`speclint.limits`)."""

    kind: ClassVar[str] = "settings"

    works: Works = Works()
    families: Families = Families()
    local_codes: LocalCodes = LocalCodes()
    materials: Texts = ()
    leave_out: Texts = ()
    limits: dict[str, dict[str, Any]] = {}

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
    def exit_at(self) -> str:
        """The least grade that makes ``check`` exit with 1; ``nonconformity`` where it is not stated."""
        return "nonconformity" if isinstance(self.works.exit_at, NotStated) else self.works.exit_at.value


def load_settings(root: Path) -> tuple[Settings | None, tuple[Complaint, ...]]:
    """Read the settings of a repository; None with complaints when they cannot be used."""
    table = read_toml(root / FILE_NAME, FILE_NAME)
    if isinstance(table, Complaint):
        return None, (table,)
    content = Table(table, Where(FILE_NAME, 1))
    try:
        settings = Settings.model_validate(content)
    except ValidationError as problem:
        errors = problem.errors(include_url=False)
        found = [complaint_of(error, Settings, content, FILE_NAME) for error in errors]
        return None, tuple(sorted(found, key=lambda complaint: complaint.order))
    return settings, _impossible(settings)


def _impossible(settings: Settings) -> tuple[Complaint, ...]:
    stated = settings.works.site_pressure
    if isinstance(stated, Measure) and stated.datum != "absolute":
        write = '"1.01325 bar absolute"'
        return (Complaint(stated.where, "the site pressure counts from nothing", f'"{stated.text}"', write),)
    return ()
