"""Try the planted parts of families, or of rules: what is otherwise than it was worked by hand, and what is wanting."""

from __future__ import annotations

import argparse
import sys

from tests.planted.reading import NotReadable, families, planted
from tests.planted.trying import faults_of, made
from tests.rule_examples.designs import Bench


def main() -> int:
    """Print what each planted part comes to; returns 1 where one is otherwise than worked."""
    reader = argparse.ArgumentParser(prog="python -m tests.planted", description=__doc__)
    reader.add_argument(
        "families", nargs="*", default=families(), help="families; all that have planted parts"
    )
    reader.add_argument("--rule", default="", help="only rules whose names begin so")
    reader.add_argument("--told", action="store_true", help="print what each check says, too")
    given = reader.parse_args()
    bench = Bench()
    try:
        wrong = [
            family for family in given.families if not _tried(bench, family, given.rule, told=given.told)
        ]
    except NotReadable as problem:
        sys.exit(str(problem))
    return int(bool(wrong))


def _tried(bench: Bench, family: str, begins: str, *, told: bool) -> bool:
    """Whether every planted part of a family comes to what was worked; what does not is printed."""
    own = [one for one in planted(family) if one.rule.startswith(begins)]
    wrong = False
    for one in own:
        faults = list(faults_of(bench, one))
        wrong |= bool(faults)
        print(*faults, sep="\n", end="\n" if faults else "")
        if told and not faults:
            print(f"{one.name}: {made(bench, one).says}")
    named = {one.rule for one in own}
    rules = (
        rule.name for rule in bench.loaded.rules if rule.family == family and rule.name.startswith(begins)
    )
    print(f"{family}: {len(own)} planted parts; no part for: {', '.join(sorted({*rules} - named)) or 'none'}")
    return not wrong


if __name__ == "__main__":
    raise SystemExit(main())
