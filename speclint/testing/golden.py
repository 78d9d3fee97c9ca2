"""Golden results: what every check of a design came to, kept in a file; a number moves only with the rule's edition.

What a check rests on is kept beside its result as a digest of the words and values that reports show. Where those are
the same and the result is not, the rule itself has changed: its edition must be raised, since concessions lapse by it.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from math import isfinite
from pathlib import Path
from typing import Any

from speclint.checking import Assessment, Check

#: Two results that differ by less than this share are one: machines round differently.
SAME = 1e-6
_DIGITS = 9


def expect_golden(assessment: Assessment, file: Path) -> None:
    """The results of an assessment are those of the file.

    :raises AssertionError: naming each check that came out otherwise, and whether its rule's edition must be raised
        or the file only be written anew.
    """
    if not file.exists():
        raise AssertionError(f"there is no {file.name}: write it with write_golden, and read it")
    known, now = _read(file), _results(assessment)
    faults = [
        fault for name in sorted(known | now) if (fault := _moved(name, known.get(name), now.get(name)))
    ]
    if faults:
        raise AssertionError("\n".join(faults))


def write_golden(assessment: Assessment, file: Path) -> None:
    """Write the results of an assessment into the file; to be read before it is committed.

    :raises AssertionError: where a result moved while what it rests on is the same and the edition was not raised.
        Nothing is written then.
    """
    known, now = (_read(file) if file.exists() else {}), _results(assessment)
    faults = [
        _moved(name, known[name], now[name])
        for name in sorted(known.keys() & now)
        if _must_raise(known[name], now[name])
    ]
    if faults:
        raise AssertionError("\n".join(faults))
    lines = ",\n".join(f"{json.dumps(name)}: {json.dumps(now[name], ensure_ascii=False)}" for name in now)
    file.write_text(f"{{\n{lines}\n}}\n", encoding="utf-8", newline="\n")


def _read(file: Path) -> dict[str, dict[str, Any]]:
    found: dict[str, dict[str, Any]] = json.loads(file.read_text(encoding="utf-8"))
    return found


def _results(assessment: Assessment) -> dict[str, dict[str, Any]]:
    return {f"{check.component} {check.rule.name}": _result(check) for check in assessment.checks}


def _result(check: Check) -> dict[str, Any]:
    judged = check.judgement.found if check.judgement else None
    return {
        "edition": check.rule.edition,
        "outcome": check.outcome,
        "grade": check.grade.word if check.grade else None,
        "used": _rounded(check.utilisation),
        "found": _rounded(judged.value if judged else None),
        "rests_on": _digest(check.rests_on),
    }


def _rounded(value: float | None) -> float | str | None:
    """Nine digits of a number; where no margin is left the number is infinite, which JSON has no number for."""
    if value is None:
        return None
    return float(f"{value:.{_DIGITS}g}") if isfinite(value) else str(value)


def _digest(basis: Mapping[str, str]) -> str:
    text = "\0".join(f"{name}={basis[name]}" for name in sorted(basis))
    return hashlib.sha256(text.encode("utf-8")).hexdigest()[:12]


def _moved(name: str, known: Mapping[str, Any] | None, now: Mapping[str, Any] | None) -> str:
    """What is to be said of a check whose result is not the known one; "" where it is."""
    if known is None:
        return f"{name}: a new check; write the file anew"
    if now is None:
        return f"{name}: no longer checked; write the file anew"
    if _must_raise(known, now):
        return f"{name}: {_shown(known)} became {_shown(now)}: raise the edition of the rule, now {now['edition']}"
    if not _same(known, now) or any(known[key] != now[key] for key in ("edition", "rests_on")):
        return f"{name}: {_shown(known)} became {_shown(now)} or rests on other values; write the file anew"
    return ""


def _must_raise(known: Mapping[str, Any], now: Mapping[str, Any]) -> bool:
    same_ground = known["rests_on"] == now["rests_on"]
    return same_ground and now["edition"] <= known["edition"] and not _same(known, now)


def _same(known: Mapping[str, Any], now: Mapping[str, Any]) -> bool:
    words = all(known[key] == now[key] for key in ("outcome", "grade"))
    return words and all(_near(known[key], now[key]) for key in ("used", "found"))


def _near(one: float | str | None, other: float | str | None) -> bool:
    if not isinstance(one, float | int) or not isinstance(other, float | int):
        return one == other
    return abs(one - other) <= SAME * max(abs(one), abs(other))


def _shown(result: Mapping[str, Any]) -> str:
    used = "" if result["used"] is None else f" at {float(result['used']):.6g} of the limit"
    return f"{result['outcome']}{used}"
