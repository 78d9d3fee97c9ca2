"""A change that is judged on two design bases: withheld where either withholds, with what differs between them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.checking import values_changed
from speclint.errors import replace

if TYPE_CHECKING:
    from speclint.register.gate import Decision, Reason


def withheld_by_either(old: Decision, new: Decision, against: str) -> Decision:
    """Withheld where either withholds; of reasons that only one gives it is said which, and what differs."""
    there, here = ({_about(one) for one in decision.reasons} for decision in (new, old))
    reasons = [
        one if _about(one) in there else _with_difference(one, old, new, "on the change's own design basis")
        for one in old.reasons
    ]
    for one in new.reasons:
        if _about(one) not in here:
            told = _with_difference(one, old, new, f"on the design basis at {against}")
            reasons.append(replace(told, says=f"on the change's own design basis: {one.says}"))
    return replace(old, reasons=tuple(reasons))


def _about(reason: Reason) -> tuple[str, str] | str:
    """What a reason is about: two judgements of one design say the same of it with different numbers."""
    return reason.subject or reason.says


def _with_difference(reason: Reason, old: Decision, new: Decision, elsewhere: str) -> Reason:
    """A reason of one judgement, with what the other, ``elsewhere``, takes for its check in place of these values."""
    said = "; ".join(_differences(reason, old, new))
    return (
        replace(reason, details=(*reason.details, f"not so {elsewhere}; what differs: {said}"))
        if said
        else reason
    )


def _differences(reason: Reason, old: Decision, new: Decision) -> Iterator[str]:
    if reason.hold is None:
        return
    was, now = (
        next((one for one in decision.assessment.checks if one.order == reason.hold.order), None)
        if decision.assessment
        else None
        for decision in (old, new)
    )
    if was is None or now is None:
        yield "it is not checked there"
    else:
        yield from values_changed(was.rests_on, now.rests_on)
