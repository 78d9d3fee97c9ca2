"""A small family whose kinds say what they can suffer and whose rules say what they guard against: drums with lids."""

from __future__ import annotations

from typing import Annotated, Any, ClassVar, Literal

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.families import Loaded, load_families
from speclint.specs import NOT_STATED, OWN_PLACE, Component, Hazards, Length, LinkTo, Word
from speclint.testing import made_family


class Lid(Component):
    """The lid of a drum."""

    kind: ClassVar[str] = "lid"
    called: ClassVar[str] = "lid"
    hazards: ClassVar[Hazards] = ("leak", "fall")

    face: Length = NOT_STATED


class Drum(Component):
    """A drum under pressure."""

    kind: ClassVar[str] = "drum"
    called: ClassVar[str] = "drum"
    hazards: ClassVar[Hazards] = ("burst", "leak", "wear")

    wall: Length = NOT_STATED
    lining: Word[Literal["lead", "none"]] = NOT_STATED
    closed_by: Annotated[LinkTo[Lid], OWN_PLACE] = NOT_STATED


class Strap(Component):
    """A strap that holds a lid and goes round a drum."""

    kind: ClassVar[str] = "strap"
    called: ClassVar[str] = "strap"
    hazards: ClassVar[Hazards] = ()

    holds: Annotated[LinkTo[Lid], OWN_PLACE] = NOT_STATED
    beside: Annotated[LinkTo[Lid], OWN_PLACE] = NOT_STATED
    kept: Word[bool] = NOT_STATED


class Foot(Component):
    """A foot of a drum, whose kind does not say what it can suffer."""

    kind: ClassVar[str] = "foot"
    called: ClassVar[str] = "foot"


class Label(Component):
    """What is written on a drum: no piece of metal."""

    kind: ClassVar[str] = "label"
    called: ClassVar[str] = "label"
    of_metal: ClassVar[bool] = False


_COMMON: dict[str, Any] = {"grade": Grade.NONCONFORMITY, "cites": [COMMON_PRACTICE], "why": "for tests"}


@rule(
    "drum.wall",
    title="the wall of a drum is thick enough",
    on=Drum,
    limits=[Limit("wall", "5 mm", "length", COMMON_PRACTICE, "least wall")],
    leaves_out="Corrosion; the local code decides",
    against=("burst",),
    **_COMMON,
)
def wall(drum: Drum, sheet: Sheet) -> Judgement:
    """A limit, for walls that are thin."""
    t = sheet.take("t", drum.wall)
    if t > 0.1:
        raise sheet.not_covered("a wall of more than 100 mm is not thin")
    return sheet.at_least(t, sheet.limit("wall"))


@rule(
    "drum.lining",
    title="a lined drum is lined with lead",
    on=Drum,
    leaves_out="how the lining is laid; the local code decides.",
    against=("leak",),
    **_COMMON,
)
def lining(drum: Drum, sheet: Sheet) -> Judgement:
    """Not applicable where there is none."""
    lined = sheet.read("lining", drum.lining)
    if lined == "none":
        raise sheet.not_applicable("the drum has no lining")
    return sheet.states(lined == "lead", "lined with lead")


@rule(
    "drum.lid-bears",
    title="the lid of a drum bears",
    on=Drum,
    limits=[Limit("face", "10 mm", "length", COMMON_PRACTICE, "least face")],
    leaves_out="nothing else",
    against=(),
    against_on={"lid": ("leak",)},
    **_COMMON,
)
def lid_bears(drum: Drum, sheet: Sheet) -> Judgement:
    """A rule of the drum that looks at its lid."""
    return sheet.at_least(sheet.take("b", sheet.follow(drum.closed_by).face), sheet.limit("face"))


@rule(
    "strap.kept",
    title="a strap is kept",
    on=Strap,
    leaves_out="nothing else",
    against=(),
    against_on={"lid": ("fall",)},
    reached_by="holds",
    **_COMMON,
)
def kept(strap: Strap, sheet: Sheet) -> Judgement:
    """A rule of the strap against the fall of the lid that it holds, which it need not read."""
    return sheet.states(sheet.read("kept", strap.kept), "the strap is kept")


@rule("drum.named", title="a drum is named", on=Drum, leaves_out="nothing else", **_COMMON)
def named(drum: Drum, sheet: Sheet) -> Judgement:
    """A rule that does not say what it guards against."""
    return sheet.states(sheet.is_stated("title", drum.title), "it has a title")


RULES = (wall, lining, lid_bears, kept)

DRUM = 'kind = "drum"\nwall = "6 mm"\nlining = "lead"\nclosed_by = "lid"\n'
FILES = {
    "drum.toml": DRUM,
    "lid.toml": 'kind = "lid"\nface = "12 mm"\n',
    "strap.toml": 'kind = "strap"\nholds = "lid"\nkept = true\n',
}


def drums(*rules: Rule) -> Loaded:
    """The family of drums alone, with some rules or all that say what they guard against."""
    kinds = (Drum, Lid, Strap, Foot, Label)
    return load_families([made_family("drums", kinds, rules or RULES)])
