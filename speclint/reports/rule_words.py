"""What a rule says of itself, in words: on what it is, how grave it is, against what it guards."""

from __future__ import annotations

from speclint.rules import Rule
from speclint.specs import Component


def kinds_in_words(rule: Rule) -> list[str]:
    """The kinds of component that it is on."""
    return ["every component" if kind is Component else kind.kind for kind in rule.on]


def grades_in_words(rule: Rule) -> str:
    """The grade of a usual finding, and the highest where that is another."""
    return rule.grade.word if rule.gravest is rule.grade else f"{rule.grade.word}, or {rule.gravest.word}"


def hazards_in_words(rule: Rule) -> str:
    """The hazards that it guards against, on the part that is checked and on others."""
    if rule.against is None:
        return "it does not say which hazard it guards against"
    said = [", ".join(rule.against)] if rule.against else []
    said += [f"{', '.join(hazards)} of the {word}" for word, hazards in rule.against_on.items()]
    return "; ".join(said) or "no hazard by itself"
