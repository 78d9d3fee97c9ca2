"""A design with one value more: what a check asked for and did not find, stated."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.repository import Change
from speclint.testing.statable import words_for, written_elsewhere
from speclint.testing.taken_values import Taken, taken_by
from speclint.testing.trial import Trial

#: Values of the same key elsewhere in the design that are tried.
_ELSEWHERE = 3


def stated_too(trial: Trial) -> Iterator[tuple[Taken, Change]]:
    """Each value that a check asked for and that is not stated, with what could stand there.

    That is every word of its list, else what the same key says elsewhere in the design.
    """
    seen = set[tuple[str, str]]()
    for one in taken_by(trial.done, trial.design.design):
        if one.stated or (one.spec, one.key) in seen or one.spec not in trial.design.design.specs:
            continue
        seen.add((one.spec, one.key))
        words = words_for(trial.design, one.spec, one.key)
        for word in words:
            yield one, Change(one.spec, one.key, {"true": True, "false": False}.get(word, word))
        for value in () if words else written_elsewhere(trial.design)[one.general][:_ELSEWHERE]:
            yield one, Change(one.spec, one.key, value)
