"""Write of each rule an example that holds and a change that breaks it, into ``data/examples.toml`` of its family.

An example that still holds and is still broken by its change is kept, with what its checks say now; for the others the
example is searched. What is stated by hand in ``tests/rule_examples/by_hand`` goes before what was found.
"""

from __future__ import annotations

import argparse
import sys
from collections import defaultdict
from functools import cache

from speclint.errors import DesignError
from speclint.families import RuleExample, rule_examples
from speclint.rules import Rule
from tests.example import assessed
from tests.rule_examples.designs import Bench
from tests.rule_examples.search import Candidate, candidates, example_of, found
from tests.rule_examples.writing import by_hand, file_of, written


@cache
def _candidates() -> dict[str, list[Candidate]]:
    return candidates(assessed().checks)


def _example(
    bench: Bench, rule: Rule, known: RuleExample | None, hand: RuleExample | None, *, search: bool
) -> RuleExample | None:
    for one in (hand, known):
        try:
            made = example_of(bench, one) if one else None
        except DesignError as problem:
            print(f"{rule.name}: {problem}", file=sys.stderr)
            made = None
        if made is None and one is not None:
            print(
                f"{rule.name}: {'by hand' if one is hand else 'as known'} it is no example", file=sys.stderr
            )
        if made is not None:
            return made
    return found(bench, rule.name, _candidates().get(rule.name, [])) if search else None


def main() -> int:
    """Write the files; returns 1 where a rule has no example."""
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument(
        "--afresh", action="store_true", help="search every example anew but those stated by hand"
    )
    reader.add_argument(
        "--rule", default="", help="only the example of one rule; the others stay as they are"
    )
    reader.add_argument(
        "--no-search", action="store_true", help="only what is known and stated by hand, proved anew"
    )
    given = reader.parse_args()
    bench, hand = Bench(), by_hand()
    known = rule_examples(bench.loaded.families)
    of_family: dict[str, list[RuleExample]] = defaultdict(list)
    wanting = []
    for rule in bench.loaded.rules:
        if given.rule not in ("", rule.name):
            made = known.get(rule.name)
        else:
            before = None if given.afresh else known.get(rule.name)
            made = _example(bench, rule, before, hand.get(rule.name), search=not given.no_search)
        if made is None:
            wanting.append(rule.name)
        else:
            of_family[rule.family].append(made)
    for family, examples in of_family.items():
        file_of(family).parent.mkdir(exist_ok=True)
        file_of(family).write_text(written(examples), encoding="utf-8", newline="\n")
    print(f"{sum(map(len, of_family.values()))} examples; without one: {', '.join(wanting) or 'none'}")
    return int(bool(wanting))


if __name__ == "__main__":
    raise SystemExit(main())
