"""Words on the command line."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from tests.mutation import cells, kinds, noticed as noticing, scopes
from tests.mutation.accepted import counted, stale
from tests.mutation.drawing import drawn, drawn_evenly
from tests.mutation.kept import Kept, usual_folder
from tests.mutation.mutants import Mutant, package_of
from tests.mutation.scoring import Score, Trial
from tests.mutation.survey import surveyed
from tests.mutation.trials import preload

#: Below this share of mutants killed, of any package or of all, the run fails.
LEAST = 0.95
TABLES = (
    "speclint/handbook/data/**/*.csv",
    "speclint/handbook/data/**/*.toml",
    "speclint/quantities/data/*.csv",
)


def main() -> int:
    """Report each package's score and survivors; returns 1 where too many survive, or an accepted one is gone."""
    asked = _arguments()
    root: Path = asked.root.resolve()
    sys.path[:0] = [str(root), str(root / "plugins")]
    files = _files(root, asked)
    of_files = {file: _mutants(root, file) for file in files}
    every = [mutant for mutants in of_files.values() for mutant in mutants]
    gone = stale(root, files, every)
    for entry in gone:
        print(f"accepted.toml lists what is no longer there: {entry}")
    groups: dict[str, list[Mutant]] = {}
    for mutant in every:
        groups.setdefault(mutant.file if asked.tables else mutant.package or mutant.file, []).append(mutant)
    total = _tried(root, asked, groups)
    print(total)
    return int(bool(gone) or total.share < LEAST or asked.fails)


def _tried(root: Path, asked: argparse.Namespace, groups: dict[str, list[Mutant]]) -> Score:
    """Each package's mutants, those of the core before those of the families."""
    total, asked.fails = Score("in total"), False
    left = {name: counted(root, mutants) for name, mutants in groups.items()}
    chosen = _chosen(left, asked)
    noticed: dict[Mutant, str] = {}
    if asked.noticed:
        every = [mutant for mutants in chosen.values() for mutant in mutants]
        missed = set(noticing.missed(root, every))
        total.mutants += len(every) - len(missed)
        chosen = {name: [each for each in mutants if each in missed] for name, mutants in chosen.items()}
    for name in sorted(chosen, key=lambda name: (name.startswith("plugins"), name)):
        if not chosen[name]:
            continue
        score = Score(name, len(chosen[name]), len(groups[name]) - len(left[name]))
        trial = _trial(root, name, asked)
        score.survivors += trial.survivors(chosen[name])
        noticed |= trial.noticed
        print(score, *(f"      {survivor}" for survivor in score.survivors), sep="\n", flush=True)
        asked.fails |= score.share < LEAST and asked.sample is None
        total.add(score)
    if asked.write:
        noticing.write(root, noticed)
    return total


def _trial(root: Path, name: str, asked: argparse.Namespace) -> Trial:
    package = package_of(name) if asked.tables else name
    tests = asked.tests or scopes.tests(root, package)
    modules = asked.modules or scopes.modules(root, package)
    kept = Kept(asked.keep or usual_folder())
    example = scopes.reads_example(package) and not asked.tests
    known = surveyed(root, modules, tests, kept, example)
    preload(known.libraries)
    return Trial(root, tests, known, kept, asked.cap, asked.patience, asked.each_told, example)


def _arguments() -> argparse.Namespace:
    words = argparse.ArgumentParser(prog="python -m tests.mutation", description=__doc__)
    words.add_argument("places", nargs="*", help="packages, modules or tables; all packages unless given")
    words.add_argument("--tables", action="store_true", help="corrupt cells of tables in place of code")
    words.add_argument(
        "--sample", type=int, help="only so many mutants in all, drawn evenly over the packages"
    )
    words.add_argument(
        "--noticed", action="store_true", help="first try on each the test that is listed as noticing it"
    )
    words.add_argument("--write", action="store_true", help="list for each the test that notices it")
    words.add_argument("--each", type=int, help="only so many mutants of each package, or of each table")
    words.add_argument("--seed", type=int, default=26, help="of that draw")
    words.add_argument(
        "--cap", type=float, default=scopes.CAP, help="seconds of tests that are tried on one mutant"
    )
    words.add_argument(
        "--patience", type=float, default=20.0, help="seconds beyond five times the usual until it is endless"
    )
    words.add_argument(
        "--told", dest="each_told", action="store_true", help="tell of each mutant as it is tried"
    )
    words.add_argument("--tests", nargs="+", help="files of tests in place of the package's own")
    words.add_argument("--modules", nargs="+", help="modules that these tests may touch")
    words.add_argument("--keep", type=Path, help="folder of what was found before, in place of the user's")
    words.add_argument("--root", type=Path, default=Path(), help="folder that holds all of these")
    return words.parse_args()


def _files(root: Path, asked: argparse.Namespace) -> list[str]:
    """The files that are asked for, those of packages one by one."""
    if asked.tables and not asked.places:
        return sorted({path.relative_to(root).as_posix() for at in TABLES for path in root.glob(at)})
    found: list[str] = []
    for place in asked.places or scopes.packages(root):
        name = place.rstrip("/")
        if not (root / name).exists():
            sys.exit(f"there is no {name} below {root}")
        found += scopes.modules(root, name) if (root / name).is_dir() else [name]
    return found


def _mutants(root: Path, file: str) -> Sequence[Mutant]:
    return kinds.mutants(root, file) if file.endswith(".py") else cells.mutants(root, file)


def _chosen(groups: dict[str, list[Mutant]], asked: argparse.Namespace) -> dict[str, list[Mutant]]:
    if asked.sample is not None:
        kept = set(drawn_evenly(groups, asked.sample, asked.seed))
        return {name: [mutant for mutant in mutants if mutant in kept] for name, mutants in groups.items()}
    if asked.each is not None:
        return {name: drawn(mutants, asked.each, asked.seed) for name, mutants in groups.items()}
    return groups


if __name__ == "__main__":
    sys.exit(main())
