"""The words of the commands about concessions: concede, sign, register, gate. One call each, as in the others."""

from __future__ import annotations

import argparse
import datetime as dt
from pathlib import Path
from typing import Any

from speclint.commands.output import show, write_data

_FOLDER: dict[str, Any] = {"dest": "folder", "type": Path, "default": Path(), "metavar": "FOLDER"}


def add_register_commands(commands: Any) -> None:
    """Add the commands to those of the command line."""
    _concede_words(_command(commands, "concede", "enter a concession in the register"))
    _sign_words(_command(commands, "sign", "sign an entry of the register"))
    _register_words(_command(commands, "register", "the concessions, and how each stands"))
    _gate_words(_command(commands, "gate", "may this be released? withheld unless all is in order"))


def _command(commands: Any, name: str, says: str) -> argparse.ArgumentParser:
    parser: argparse.ArgumentParser = commands.add_parser(name, help=says, allow_abbrev=False)
    return parser


def day(text: str) -> dt.date:
    """A date on the command line; argparse tells a wrong one in one line."""
    try:
        return dt.date.fromisoformat(text)
    except ValueError as problem:
        raise argparse.ArgumentTypeError(f"{text} is no date; write it as 2027-05-31") from problem


def _concede_words(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("component", help="the id of the component with the finding")
    parser.add_argument("rule", help="the rule that found it")
    parser.add_argument("--by", required=True, metavar="NAME", help="who accepts the finding")
    parser.add_argument("--grounds", required=True, metavar="TEXT", help="why it can be accepted")
    parser.add_argument("--until", required=True, type=day, metavar="DATE", help="its last day: 2027-05-31")
    parser.add_argument(
        "--role", default="", metavar="TEXT", help="in what role; that of speclint.toml where not given"
    )
    parser.add_argument("--reference", default="", metavar="TEXT", help="a report, a drawing, a minute")
    parser.add_argument("--key", type=Path, metavar="FILE", help="sign with this SSH key")
    parser.add_argument("--in", **_FOLDER, help="the repository")
    parser.set_defaults(command=_concede)


def _sign_words(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("number", help="the number of the entry: C-001")
    parser.add_argument("--key", required=True, type=Path, metavar="FILE", help="the SSH key to sign with")
    parser.add_argument("--in", **_FOLDER, help="the repository")
    parser.set_defaults(command=_sign)


def _register_words(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--in", **_FOLDER, help="the repository")
    parser.add_argument("--as", dest="form", choices=["json"], help="as data")
    parser.set_defaults(command=_register)


def _gate_words(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "paths", nargs="*", type=Path, default=[Path()], metavar="PATH", help="specs or folders"
    )
    parser.add_argument(
        "--against", metavar="REV", help="take settings, reviewers and signers from this git revision"
    )
    parser.add_argument("--as", dest="form", choices=["json"], help="as data")
    parser.add_argument("--to", type=Path, metavar="FILE", help="write the decision to a file")
    parser.set_defaults(command=_gate)


def _concede(options: argparse.Namespace) -> int:
    from speclint.commands.loading import loaded_families
    from speclint.register import Acceptance, concede
    from speclint.reports import slip

    acceptance = Acceptance(
        component=options.component,
        rule=options.rule,
        accepted_by=options.by,
        grounds=options.grounds,
        until=options.until,
        role=options.role,
        reference=options.reference,
    )
    made, file = concede(acceptance, options.folder, loaded_families(), dt.date.today(), options.key)
    show(lambda width: slip(made, file, "entered", width))
    return 0


def _sign(options: argparse.Namespace) -> int:
    from speclint.commands.loading import loaded_families
    from speclint.register import sign_entry
    from speclint.reports import slip

    signed, file = sign_entry(options.number, options.folder, loaded_families(), dt.date.today(), options.key)
    show(lambda width: slip(signed, file, "signed", width))
    return 0


def _register(options: argparse.Namespace) -> int:
    from speclint.commands.loading import loaded_families
    from speclint.register import stand_of
    from speclint.reports import exit_code, register_data, register_page

    register, stand = stand_of(options.folder, loaded_families(), dt.date.today())
    if options.form == "json":
        write_data(register_data(register, stand))
    else:
        show(lambda width: register_page(register, stand, width))
    return exit_code(register, stand)


def _gate(options: argparse.Namespace) -> int:
    from speclint.commands.loading import loaded_families
    from speclint.register import judge
    from speclint.reports import gate_data, gate_page

    decision = judge(options.paths, loaded_families, dt.date.today(), options.against)
    if options.form == "json":
        write_data(gate_data(decision), options.to)
    else:
        show(lambda width: gate_page(decision, width), options.to)
    return decision.exit_code
