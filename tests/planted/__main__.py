"""Try the planted parts of families, or of rules: what is otherwise than it was worked by hand, and what is wanting."""

from __future__ import annotations

import argparse

from tests.planted.reading import families, planted
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
    bench, wrong = Bench(), 0
    for family in given.families:
        own = [one for one in planted(family) if one.rule.startswith(given.rule)]
        for one in own:
            faults = list(faults_of(bench, one))
            wrong += bool(faults)
            for fault in faults:
                print(fault)
            if given.told and not faults:
                print(f"{one.name}: {made(bench, one).says}")
        without = sorted(
            rule.name
            for rule in bench.loaded.rules
            if rule.family == family and rule.name not in {one.rule for one in own}
        )
        print(f"{family}: {len(own)} planted parts; no part for: {', '.join(without) or 'none'}")
    return int(bool(wrong))


if __name__ == "__main__":
    raise SystemExit(main())
