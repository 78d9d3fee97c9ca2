"""The tables of speclint.toml, each with what may be set in it."""

from typing import Annotated, Literal

from pydantic import BeforeValidator

from speclint.specs import (
    NOT_STATED,
    Fraction,
    Length,
    Position,
    Pressure,
    Span,
    SpecTable,
    Word,
    bare,
)

Texts = Annotated[
    tuple[str, ...], BeforeValidator(lambda raw: tuple(bare(raw)) if isinstance(raw, list) else bare(raw))
]


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
