"""A new design repository: settings, a duty, the first specs as blanks, a hook for git and what CI runs."""

from __future__ import annotations

import json
import os
import shlex
import textwrap
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from string import Template

from msgspec import Struct

from speclint.commands.first_design import first_design
from speclint.commands.new_files import write_new
from speclint.errors import SettingsError
from speclint.families import Loaded
from speclint.repository import FILE_NAME
from speclint.specs import CASE_MEANINGS

_TEMPLATE = Path(__file__).parent / "repository_template"
_HOOKS, _HOOK, _SCRIPT = "hooks", "hooks/pre-commit", "ci/check-change.sh"
_WIDTH = 100
_DUTY = "duties/main-line.toml"
#: An example of a metal temperature in each load case: common practice, of a cylinder block with full superheat.
_EXAMPLES = {
    "cold": "20 °C",
    "warming": "60..90 °C",
    "starting": "180..220 °C",
    "running": "250..270 °C",
    "drifting": "230..260 °C",
    "standing-hot": "180..200 °C",
    "cooling": "140..160 °C",
    "test": "15..25 °C",
    "water": "120..180 °C",
}
#: Where the metal of a kind is far from that of a block: live steam washes a valve, and a spring stands outside.
_FAR_FROM_BLOCK = {
    "poppet-valve": {
        "warming": "130..145 °C",
        "starting": "260..290 °C",
        "running": "340..370 °C",
        "drifting": "280..330 °C",
        "water": "150..250 °C",
    },
    "compression-spring": {
        "warming": "30..50 °C",
        "starting": "60..80 °C",
        "running": "80..110 °C",
        "drifting": "80..110 °C",
        "standing-hot": "80..100 °C",
        "cooling": "50..70 °C",
        "water": "50..80 °C",
    },
}
#: Kinds that have no temperature of their own: what belongs to an engine, and not to a part of it.
_WITHOUT = ("engine",)


class NewReviewer(Struct, frozen=True):
    """Who may accept holds: the name, the role in the works, "" where it was not said, and the families."""

    name: str
    role: str = ""
    families: Sequence[str] = ()


class Answers(Struct, frozen=True):
    """What was said of a new design."""

    works: str
    stage: str = "draft"
    pressure_codes: Sequence[str] = ()
    railway_codes: Sequence[str] = ()
    reviewers: Sequence[NewReviewer] = ()
    units: str = "metric"
    cylinders: int = 2
    layout: str = "separate"


class Begun(Struct, frozen=True):
    """A repository just written: its files, the top of the git repository that it is in, and what turns the hook on."""

    files: tuple[Path, ...]
    in_git: bool
    turns_on: str


def begin(folder: Path, answers: Answers, loaded: Loaded) -> Begun:
    """Write a new design repository into a folder. Nothing that is there is touched.

    :raises SettingsError: for answers that cannot be used, a folder that lies in a design repository, and files that
        are there already. Nothing is written then.
    :raises OutputError: where they cannot be written: none of them is left then.
    """
    refuse_nested(folder)
    top = _top_of_git(folder)
    under = _relative(folder, top or folder)
    blanks = first_design(answers.cylinders, answers.layout)
    usable = [one for one in blanks if one.kind in loaded.kinds]
    texts = {
        FILE_NAME: settings_text(answers, [one.name for one in loaded.families]),
        _DUTY: duty_text(one.kind for one in usable),
        **{one.file: one.text(loaded.kinds[one.kind]) for one in usable},
        _HOOK: _filled("pre-commit.txt", hooks=_joined(under, _HOOKS), folder=_quoted(under)),
        _SCRIPT: _filled("check-change.sh.txt", script=_joined(under, _SCRIPT), folder=_quoted(under)),
    }
    files = {folder / place: text for place, text in texts.items()}
    write_new(files, runnable=(folder / _HOOK, folder / _SCRIPT))
    start = top or folder
    there = "" if start.resolve() == Path.cwd() else f"-C {shlex.quote(str(_from_here(start)))} "
    turns_on = f"git {there}config core.hooksPath {_joined(under, _HOOKS)}"
    return Begun(tuple(files), top is not None, turns_on)


def _from_here(folder: Path) -> Path:
    """A folder as it is named from the present one, where it lies below."""
    place, here = folder.resolve(), Path.cwd()
    return place.relative_to(here) if place.is_relative_to(here) else place


def refuse_nested(folder: Path) -> None:
    """A repository in another would hide its files from that one.

    :raises SettingsError: where the folder, or one above it, has settings; or is no folder.
    """
    if os.path.lexists(folder) and not folder.is_dir():
        raise SettingsError(f"{folder}: this is no folder")
    place = folder.resolve()
    for above in (place, *place.parents):
        if os.path.lexists(above / FILE_NAME):
            raise SettingsError(f"{above / FILE_NAME} is there already; nothing was written")


def _top_of_git(folder: Path) -> Path | None:
    """The folder at the top of the git repository that a folder lies in; None where it is in none."""
    place = folder.resolve()
    return next((one for one in (place, *place.parents) if os.path.lexists(one / ".git")), None)


def _relative(folder: Path, top: Path) -> str:
    """A folder from the top, with forward slashes as a shell has them; "." for the top itself."""
    return folder.resolve().relative_to(top.resolve()).as_posix()


def _joined(under: str, place: str) -> str:
    return shlex.quote(place if under == "." else f"{under}/{place}")


def _quoted(under: str) -> str:
    return shlex.quote(under)


def _filled(name: str, **words: str) -> str:
    return Template((_TEMPLATE / name).read_text(encoding="utf-8")).substitute(words)


def duty_text(kinds: Iterable[str]) -> str:
    """The duty with all load cases explained, and a metal temperature to be filled in for each of some kinds."""
    named = sorted(set(kinds) - set(_WITHOUT))
    lines = {
        case.replace("-", "_"): "\n".join(
            f'#{kind} = "{_FAR_FROM_BLOCK.get(kind, {}).get(case, example)}"' for kind in named
        )
        for case, example in _EXAMPLES.items()
    }
    means = {
        f"means_{case.replace('-', '_')}": _remark(f"{case}: {said}.") for case, said in CASE_MEANINGS.items()
    }
    return _filled("main-line.toml.txt", **lines, **means)


def _remark(text: str) -> str:
    return "\n".join(f"# {line}" for line in textwrap.wrap(text, _WIDTH))


def settings_text(answers: Answers, families: Iterable[str]) -> str:
    """speclint.toml with every key explained.

    :raises SettingsError: for a reviewer of a family that is not loaded.
    """
    known = sorted(families)
    reviewers = "\n".join(_reviewers(answers.reviewers, known))
    return _filled(
        "speclint.toml.txt",
        works=_text(answers.works),
        stage=_text(answers.stage),
        units=_text(answers.units),
        pressure=_texts(answers.pressure_codes),
        railway=_texts(answers.railway_codes),
        families=_remark(", ".join(known)),
        reviewers=reviewers,
    )


def fault_of_reviewer(one: NewReviewer, before: Iterable[NewReviewer], known: Sequence[str]) -> str:
    """What is wrong with a reviewer, beside those named before; "" where nothing is."""
    from speclint.errors import one_of

    if not one.name or not one.families:
        wanting = "families" if one.name else "name"
        return (
            f'a reviewer has no {wanting}: write "M. Coyle, chief draughtsman: liners, joints"; '
            "the role may be left out"
        )
    if any(other.name == one.name for other in before):
        return f"reviewer {one.name} is named twice: write all families in one"
    for family in one.families:
        if family not in known:
            return f"reviewer {one.name}: no family is called {family}; write {one_of(family, known)}"
    return ""


def _reviewers(reviewers: Sequence[NewReviewer], known: Sequence[str]) -> Iterator[str]:
    if not reviewers:
        yield '#[reviewers."J. Ostler"]\n#competent_for = ["liners"]\n#role = "chief draughtsman"'
    for number, one in enumerate(reviewers):
        if fault := fault_of_reviewer(one, reviewers[:number], known):
            raise SettingsError(fault)
        role = f"role = {_text(one.role)}" if one.role else '#role = "chief draughtsman"'
        yield f"[reviewers.{_text(one.name)}]\ncompetent_for = {_texts(one.families)}\n{role}\n"


def _text(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


def _texts(texts: Sequence[str]) -> str:
    return json.dumps(list(texts), ensure_ascii=False)
