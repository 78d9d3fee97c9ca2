"""Examinations on record that failed, and that a repair and a later examination of the same settle."""

from __future__ import annotations

import datetime as dt
import re
from typing import NamedTuple

from speclint import Sheet
from speclint.specs import MadePart, ProcessRecord
from speclint_release.inputs.examinations import methods_named, worded
from speclint_release.inputs.extents import says_all

#: Words for a repair, save where they say that there was none, or none yet.
_REPAIR = re.compile(
    r"(?i)(?<!\bno )(?<!\bnot )(?<!\bwithout )(?<!\bbefore )(?<!\bto be )\b(?:repair\w*|re-?weld\w*|made good"
    r"|(?:ground|gouged|cut|dressed) out|ausgebessert\w*|ausbesserung\w*|nachgeschweißt|repariert\w*|reparatur\w*)\b"
)
#: Words of an extent that name no place.
_OF_ANY = re.compile(r"an?|all|and|at|by|each|every|in|nos?|of|on|part|the|to|whole|en|iso|din|astm|bs")
_METHOD = re.compile(r"⟨\d*⟩(?:-\d+)*")
_RANGE = re.compile(r"(?P<first>\d+)(?: ?(?:to|through|bis|-|–) ?W?(?P<last>\d+))?", re.IGNORECASE)
#: The most welds of a range that are taken for one.
_MOST = 500


class Examined(NamedTuple):
    """An examination on record: its name, its day, its methods, and of what it was."""

    name: str
    day: dt.date
    methods: frozenset[str]
    extent: str

    @property
    def of_a_repair(self) -> bool:
        """Whether its words say that it is of what was repaired."""
        return _REPAIR.search(self.extent) is not None

    @property
    def _is_general(self) -> bool:
        return not self.extent or says_all(self.extent)

    def settles(self, failed: Examined) -> bool:
        """Whether it was made on a later day by the same methods, and of all or of the repair of what failed."""
        if self.day <= failed.day or not failed.methods or not failed.methods <= self.methods:
            return False
        if self._is_general or (self.of_a_repair and failed._is_general):
            return True
        ours, theirs = _places(self.extent), _places(failed.extent)
        numbers, failing = _numbers(self.extent), _numbers(failed.extent)
        if self.of_a_repair:
            return bool(ours & theirs) and (not numbers or not failing or bool(numbers & failing))
        return bool(theirs or failing) and theirs <= ours and (failing <= numbers or not numbers)


def _places(extent: str) -> set[str]:
    """The words of an extent that name places, in the singular.

    >>> sorted(_places("all repaired butt welds of the front")), _places("welds 1 to 3") == {"weld"}
    (['butt', 'front', 'weld'], True)
    """
    words = re.findall(r"[^\W\d_]+", _REPAIR.sub(" ", extent.casefold()))
    return {one.removesuffix("s") for one in words if not _OF_ANY.fullmatch(one)}


def _numbers(extent: str) -> set[int]:
    """The numbers of welds in an extent.

    >>> _numbers("welds 1 to 3 and 7") == {1, 2, 3, 7}, _numbers("all")
    (True, set())
    """
    found: set[int] = set()
    for one in _RANGE.finditer(extent):
        first = int(one["first"])
        found.update(range(first, min(int(one["last"] or first), first + _MOST) + 1))
    return found


def made_good(made: MadePart, sheet: Sheet) -> dict[str, str]:
    """The examinations that failed and are settled, each with how.

    The repair is a weld between the two days that is called one, or stands in the words of the later examination.
    """
    passed = _examined(made, "passed", sheet)
    welds = [
        (name, day)
        for name, one in made.welds.items()
        if _REPAIR.search(name.replace("_", " ")) and (day := _day_if(name, one, "passed", sheet))
    ]
    settled = {}
    for failed in _examined(made, "failed", sheet):
        for one in passed:
            repairs = [f"weld {name}" for name, day in welds if failed.day <= day <= one.day]
            if one.settles(failed) and (repairs or one.of_a_repair):
                how = " and ".join(repairs) or "repaired"
                settled[failed.name] = f"{failed.name} failed, {how}, then {one.name} passed"
    return settled


def _examined(made: MadePart, result: str, sheet: Sheet) -> list[Examined]:
    """The examinations of a result that have a day."""
    found = []
    for name, one in made.examinations.items():
        if day := _day_if(name, one, result, sheet):
            method = sheet.said(f"method of {name}", one.method) or name
            extent = sheet.said(f"extent of {name}", one.extent) or ""
            beside = (_METHOD.sub("", words).strip() for _, words in worded(method))
            of = "; ".join(filter(None, (*beside, extent)))
            found.append(Examined(name, day, frozenset(methods_named(method)), of))
    return found


def _day_if(name: str, record: ProcessRecord, result: str, sheet: Sheet) -> dt.date | None:
    """The day of a record of a result; None where it is of another, or has no day that can be read."""
    if sheet.said(f"result of {name}", record.result) != result:
        return None
    try:
        return dt.date.fromisoformat(sheet.said(f"day of {name}", record.date) or "")
    except ValueError:
        return None
