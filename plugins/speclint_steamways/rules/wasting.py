"""Metal under ash and acid: what is left of it when it is renewed."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import MetresPerSecond, Seconds
from speclint.specs import LoadCase, Saddle, SteamPassage, SteamPipe
from speclint_steamways.formulae.water import metal_lost, thickness_left, thickness_of_strength


@rule(
    "water.ash-and-acid",
    edition=2,
    title="Smokebox saddle or floor, the exhaust pipe through it and a chest that lies in ash keep the thickness that "
    "strength needs until they are renewed, wasting by 0.3 mm a year, or 0.5 mm where they are wet",
    on=(Saddle, SteamPassage),
    cases=("standing-hot",),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Wet ash makes acid, and a saddle that is eaten through lets go of the block or draws air into the smokebox.",
    leaves_out="pitting deeper than the mean, and protection by paint or cement",
    against=("corrode",),
    limits=[
        Limit("dry", "0.3 mm/year", "wasting rate", COMMON_PRACTICE, "thickness lost under dry ash"),
        Limit("wet", "0.5 mm/year", "wasting rate", COMMON_PRACTICE, "thickness lost under wet ash"),
        Limit(
            "dry_from", "120 °C", "temperature", COMMON_PRACTICE, "below this, standing, ash counts as wet"
        ),
    ],
)
def ash_and_acid(part: Saddle | SteamPassage, case: LoadCase, sheet: Sheet) -> Judgement:
    """Allowance and thickness against the rate, the greater of the stated one and that of the settings."""
    if isinstance(part, SteamPassage) and not _lies_in_ash(part, sheet):
        raise sheet.not_applicable("it states nothing of ash and acid")
    rate = _rate(part, case, sheet)
    years = sheet.take("y", part.wet.years)
    sheet.read("renewed", part.wet.renewal)
    allowance = sheet.take("a", part.wet.allowance)
    if isinstance(part, SteamPassage):
        return sheet.at_most(sheet.work("Δt", metal_lost, w=rate, y=years), allowance).else_says(
            "wastes by {found} until renewed, {limit} is allowed for"
        )
    t = sheet.take("t", part.thickness)
    left = sheet.work("t_l", thickness_left, t=t, w=rate, y=years)
    drawn = sheet.take_nominal(
        "t_n", part.thickness
    )  # the mill's limits take nothing from what strength needs
    own = sheet.at_least(left, sheet.work("t_s", thickness_of_strength, t=drawn, a=allowance)).else_says(
        "wastes to {found} until renewed, strength requires {limit}"
    )
    pipes = [sheet.follow(link) for link in part.pipes]
    if not pipes:
        return own
    through = sheet.each([(one.id, one) for one in pipes], lambda item: _pipe(item[1], rate, years, sheet))
    return sheet.worst(own, through)


def _lies_in_ash(passage: SteamPassage, sheet: Sheet) -> bool:
    wet = passage.wet
    return any(sheet.is_stated("ash and acid", one) for one in (wet.allowance, wet.rate, wet.years))


def _rate(part: Saddle | SteamPassage, case: LoadCase, sheet: Sheet) -> MetresPerSecond:
    T = sheet.take("T", case.temperature_of(part))
    own = sheet.limit("wet", "w_w") if sheet.limit("dry_from", "T_d") > T else sheet.limit("dry", "w_d")
    if sheet.is_stated("rate", part.wet.rate):
        return max(own, sheet.take("w", part.wet.rate))
    return own


def _pipe(pipe: SteamPipe, rate: MetresPerSecond, years: Seconds, sheet: Sheet) -> Judgement:
    """An exhaust pipe through the floor: its allowance for corrosion."""
    lost = sheet.work("Δt", metal_lost, w=rate, y=years)
    return sheet.at_most(lost, sheet.take("a_p", pipe.corrosion_allowance)).else_says(
        "{item} wastes by {found} until renewed, {limit} is allowed for"
    )


RULES: tuple[Rule, ...] = (ash_and_acid,)
