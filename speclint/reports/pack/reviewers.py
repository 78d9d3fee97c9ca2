"""Who signs: the reviewers that the settings name, with the holds of the families for which each is competent."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from speclint.checking import Assessment
from speclint.specs import Stated


class Signatory(Struct, frozen=True):
    """A reviewer of the settings, and the labels of the holds on which this person may decide."""

    name: str
    role: str
    competent_for: tuple[str, ...]
    holds: tuple[str, ...]


def signatories(assessment: Assessment, holds: Mapping[str, str]) -> tuple[Signatory, ...]:
    """The reviewers in the order of the settings; ``holds`` gives the family of each hold by its label."""
    named = assessment.settings.reviewers if assessment.settings else {}
    return tuple(
        Signatory(
            name,
            str(one.role.value) if isinstance(one.role, Stated) else "",
            one.competent_for,
            tuple(label for label, family in holds.items() if family in one.competent_for),
        )
        for name, one in named.items()
    )


def nobody_for(signed: tuple[Signatory, ...], holds: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    """The families with holds for which no reviewer is competent, each with the labels of these holds."""
    covered = {family for one in signed for family in one.competent_for}
    left: dict[str, list[str]] = {}
    for label, family in holds.items():
        if family not in covered:
            left.setdefault(family, []).append(label)
    return tuple((family, ", ".join(labels)) for family, labels in sorted(left.items()))
