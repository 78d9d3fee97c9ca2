"""``python -m tests.fuzzing SECONDS SEED``: mutants for so many seconds; ends with 1 when anything was found."""

from __future__ import annotations

import argparse
import random
import time
from collections.abc import Iterator
from pathlib import Path

from tests.fuzzing.bench import Bench
from tests.fuzzing.designs import SmallDesign, small_designs
from tests.fuzzing.mutations import mutate
from tests.fuzzing.trial import COMMANDS

_MUTANTS_OF_ONE = 20
_ONE_IN = 5  # mutants are given to another command too, which checks the whole folder


def mutants(seed: int) -> Iterator[tuple[int, SmallDesign, dict[str, bytes], str, str]]:
    """Number, design, files, file changed and how, without end; what is drawn depends on the seed alone."""
    chance = random.Random(seed)
    designs = small_designs()
    number = 0
    while True:
        design = chance.choice(designs)
        for _ in range(_MUTANTS_OF_ONE):
            file = chance.choice((design.checked, design.checked, chance.choice(sorted(design.files))))
            text, how = mutate(design.files[file], chance)
            number += 1
            yield number, design, {**design.files, file: text}, file, how


def main() -> int:
    reader = argparse.ArgumentParser(prog="python -m tests.fuzzing", description=__doc__)
    reader.add_argument("seconds", type=float)
    reader.add_argument("seed", type=int)
    reader.add_argument(
        "--keep", type=Path, help="a folder for the files of mutants that were received wrongly"
    )
    given = reader.parse_args()
    bench, found, tried = Bench(), 0, 0
    ends = time.monotonic() + given.seconds
    known: SmallDesign | None = None
    for number, design, files, file, how in mutants(given.seed):
        if time.monotonic() >= ends:
            break
        if design is not known or bench.fresh:
            bench.try_out(design.files, design.checked, (), "")
            known = design
        tried = number
        command = COMMANDS[number // _ONE_IN % len(COMMANDS)] if number % _ONE_IN == 0 else ()
        for fault in bench.try_out(files, design.checked, command, file):
            found += 1
            print(
                f"mutant {number}, {file} ({how}), {' '.join(command) or 'assessed'}:\n{fault}\n", flush=True
            )
            if given.keep:
                _keep(given.keep / str(number), files)
    bench.end()
    print(f"seed {given.seed}: {tried} mutants in {given.seconds:g} s, {found} faults")
    return int(found > 0)


def _keep(folder: Path, files: dict[str, bytes]) -> None:
    for name, text in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(text)


if __name__ == "__main__":
    raise SystemExit(main())
