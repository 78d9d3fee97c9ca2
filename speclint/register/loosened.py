"""What a change does to words that decide by what a part is judged, and to the safety checks themselves.

It is listed for a reviewer, who alone can say whether it is right.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from speclint.checking import Check, values_changed
from speclint.register.withdrawals import is_safety_check
from speclint.repository import Design
from speclint.rules import Grade
from speclint.specs import deciding_words

_FROM = " from"  # ends the key of a provenance; a quantity that states none is from the drawing


def changed_words(before: Design, now: Design) -> Iterator[str]:
    """The deciding words of each spec that the change alters, as they were and as they are."""
    for name in sorted(before.specs.keys() & now.specs.keys()):
        was, is_now = deciding_words(before.specs[name]), deciding_words(now.specs[name])
        for key in sorted({**was, **is_now}):
            if was.get(key) != is_now.get(key):
                yield f"{name} {key} was {_stated(was, key)}, is {_stated(is_now, key)}"


def _stated(words: Mapping[str, str], key: str) -> str:
    return words.get(key, "drawing" if key.endswith(_FROM) else "not stated")


def changed_checks(before: Iterable[Check], now: Iterable[Check]) -> Iterator[str]:
    """The safety checks that no longer apply, or whose finding is less grave, and what differs."""
    made = {check.order: check for check in now}
    for was in before:
        found = made.get(was.order)
        if found is not None and is_safety_check(was) and (said := _less(was, found)):
            still = {name: value for name, value in was.rests_on.items() if name in found.rests_on}
            differs = "; ".join(values_changed(still, found.rests_on))
            yield f"{was.component} {was.rule.name} {said}: {differs or 'no value that it took differs'}"


def _less(was: Check, found: Check) -> str:
    if found.outcome == "not applicable":
        return "no longer applies"
    if was.grade is Grade.HOLD and found.outcome == "finding" and found.grade is not Grade.HOLD:
        return f"was a hold and is a {found.grade.word if found.grade else 'finding'}"
    return ""
