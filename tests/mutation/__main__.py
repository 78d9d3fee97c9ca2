"""Words on the command line."""

from __future__ import annotations

import argparse
import random
import sys
from pathlib import Path

from tests.mutation import cells, literals
from tests.mutation.mutants import Mutant
from tests.mutation.scoring import Score, scored
from tests.mutation.trials import baseline, preload

#: Below this share of mutants killed, of any file or of all, the run fails.
LEAST = 0.95
MODULES = ("speclint/handbook/**/*.py", "speclint/quantities/tolerance_classes.py")
TABLES = (
    "speclint/handbook/data/**/*.csv",
    "speclint/handbook/data/**/*.toml",
    "speclint/quantities/data/*.csv",
)
TESTS = (
    "tests/handbook",
    "tests/published",
    "tests/quantities/test_tolerance_classes.py",
    "speclint/handbook",
)


def main() -> int:
    """Report each file's score and survivors; returns 1 where too many survive."""
    asked = _arguments()
    root: Path = asked.root.resolve()
    sys.path.insert(0, str(root))
    files = asked.files or _files(root, TABLES if asked.tables else MODULES)
    known = baseline(root, _files(root, asked.modules), asked.tests)
    preload(known.libraries)
    total = Score("in total")
    fails = False
    for file in files:
        score = scored(root, file, _chosen(_mutants(root, file), asked.sample, asked.seed), known)
        print(score, *(f"      {survivor}" for survivor in score.survivors), sep="\n", flush=True)
        total.mutants += score.mutants
        total.exempt += score.exempt
        total.survivors += score.survivors
        fails |= score.share < LEAST
    print(total)
    return int(fails or total.share < LEAST)


def _arguments() -> argparse.Namespace:
    words = argparse.ArgumentParser(prog="python -m tests.mutation", description=__doc__)
    words.add_argument("files", nargs="*", help="modules or tables; all of the handbook unless given")
    words.add_argument(
        "--tables", action="store_true", help="corrupt cells of tables in place of literals of modules"
    )
    words.add_argument("--sample", type=int, help="only so many mutants of each file, drawn at random")
    words.add_argument("--seed", type=int, default=1, help="of that draw")
    words.add_argument(
        "--tests", nargs="+", default=TESTS, help="files and folders of tests in place of the handbook's"
    )
    words.add_argument(
        "--modules", nargs="+", default=MODULES, help="patterns of the modules that tests may touch"
    )
    words.add_argument("--root", type=Path, default=Path(), help="folder that holds all of these")
    return words.parse_args()


def _files(root: Path, patterns: tuple[str, ...]) -> list[str]:
    return sorted({path.relative_to(root).as_posix() for pattern in patterns for path in root.glob(pattern)})


def _mutants(root: Path, file: str) -> list[Mutant]:
    return literals.mutants(root, file) if file.endswith(".py") else cells.mutants(root, file)


def _chosen(mutants: list[Mutant], sample: int | None, seed: int) -> list[Mutant]:
    if sample is None or sample >= len(mutants):
        return mutants
    return sorted(random.Random(seed).sample(mutants, sample), key=lambda mutant: mutant.order)


if __name__ == "__main__":
    sys.exit(main())
