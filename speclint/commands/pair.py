"""which measured part goes with which measured mate, and the finish size of the last part to be machined"""

from __future__ import annotations

import argparse
from pathlib import Path

from speclint.commands.loading import families_for, kept_folder, refuse_unknown_kind
from speclint.commands.options import FOLDER, add_afresh, add_schema
from speclint.commands.output import show, write, write_data
from speclint.commands.progress import progress
from speclint.errors import QuantityError, SettingsError

EXAMPLE = "speclint pair cylinder-liner cylinder-block --rule liner.fit-hot --in example_specs"


def add_options(parser: argparse.ArgumentParser) -> None:
    """The parts to be paired, how closely the last is machined, and how the result is written."""
    parser.add_argument("parts", metavar="KIND", help="the kind of the parts that are placed")
    parser.add_argument("mates", metavar="MATES", help="the kind of the parts that they go with")
    parser.add_argument("--in", **FOLDER)
    parser.add_argument(
        "--within",
        metavar="SIZE",
        help='how closely the last part is machined, either way, such as "5 µm"; '
        "an eighth of the width of its drawn limits where not given",
    )
    parser.add_argument(
        "--family", action="append", default=[], metavar="NAME", help="judge by this family's rules alone"
    )
    parser.add_argument(
        "--rule", action="append", default=[], metavar="RULE", help="judge by this rule alone"
    )
    parser.add_argument("--as", dest="form", choices=("markdown", "json"), help="as Markdown or JSON")
    parser.add_argument("--to", type=Path, metavar="FILE", help="write the result to a file")
    add_afresh(parser)
    add_schema(parser)


def run(options: argparse.Namespace) -> int:
    """Judge every pair, choose, and print; returns the exit code."""
    from speclint.checking import Processes, assess, rules_asked_for
    from speclint.made import bench_of, finish_sizes, pair, require_solver
    from speclint.reports import pairs_data, pairs_exit_code, pairs_markdown, pairs_page
    from speclint.repository import find_root

    if options.schema:
        from speclint.reports import published_schema

        write(published_schema("speclint.pairs/1"), options.to)
        return 0
    require_solver()
    root = find_root([options.folder])
    loaded = families_for([root])
    within = _within(options.within)
    for word in (options.parts, options.mates):
        refuse_unknown_kind(word, loaded.kinds)
    rules = rules_asked_for(loaded, options.family, options.rule)
    kept = kept_folder(options.afresh)
    with progress("checking the drawings") as shown, Processes(on_part=shown.part) as processes:
        drawn = assess([root], loaded, rules, processes=processes, kept=kept)
        if drawn.design is None:
            raise SettingsError("; ".join(str(one) for one in drawn.complaints))
        bench = bench_of(drawn)
        paired = pair(bench, options.parts, options.mates, lambda name: shown(f"placing {name}"))
        shown("seeking finish sizes")
        finishes = finish_sizes(bench, paired, within)
    by = ", ".join((*options.family, *options.rule))
    if options.form == "json":
        write_data(pairs_data(drawn, paired, finishes, by), options.to)
    elif options.form == "markdown":
        write(pairs_markdown(drawn, paired, finishes, by), options.to)
    else:
        show(lambda width: pairs_page(drawn, paired, finishes, width, by), options.to)
    return pairs_exit_code(drawn, paired)


def _within(text: str | None) -> float | None:
    from speclint.quantities import read

    if text is None:
        return None
    try:
        return read(text, "length").nominal
    except QuantityError as problem:
        raise SettingsError(f"--within {text}: {problem}; write {problem.instead}") from problem
