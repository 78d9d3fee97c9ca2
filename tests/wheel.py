"""What the wheel alone does in a fresh environment: ``python -m tests.wheel WHEEL SCRIPTS`` (``.ci/wheel`` makes both).

Every program that is run is one of the environment's scripts, from a folder of its own; this module only looks at what
they print and write. The wheel is installed with its extras for the pack and for editors.
"""

from __future__ import annotations

import argparse
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import zipfile
from collections.abc import Collection, Iterator
from pathlib import Path

import tomli

from tests.editing.client import start

TOP = Path(__file__).parents[1]
#: Where the packages of the wheel stand in the repository.
_PLACES = ("speclint/", "plugins/")
_SHOWN = 2000  # letters of what a program printed, where it went wrong
_PIPES = "example_specs/pipes"
_COMMIT = ("-c", "user.name=tests", "-c", "user.email=tests@localhost", "commit", "--quiet", "-m")


class Installed:
    """An environment in which the wheel is installed, and a folder to work in."""

    def __init__(self, scripts: Path, folder: Path) -> None:
        self.scripts, self.folder = scripts, folder
        hidden = ("PYTHONPATH", "PYTHONHOME", "VIRTUAL_ENV")
        self.environment = {name: value for name, value in os.environ.items() if name not in hidden}
        self.environment["XDG_CACHE_HOME"] = str(folder / "cache")

    def says(self, *words: str, exits: int = 0, of: Path | None = None) -> str:
        """What speclint prints, from a folder; it must end as expected."""
        done = subprocess.run(
            [str(self.scripts / "speclint"), *words],
            cwd=of or self.folder,
            env=self.environment,
            capture_output=True,
            encoding="utf-8",
            check=False,
        )
        said = f"{done.stdout[-_SHOWN:]}\n{done.stderr[-_SHOWN:]}"
        assert done.returncode == exits, (
            f"{' '.join(words)} exits with {done.returncode}, not {exits}: {said}"
        )
        return done.stdout


def tracked() -> list[str]:
    """The files of the packages under version control, by their names in the wheel."""
    listed = subprocess.run(
        ["git", "ls-files", *_PLACES], cwd=TOP, capture_output=True, encoding="utf-8", check=True
    )
    return [name.removeprefix("plugins/") for name in listed.stdout.splitlines()]


def misfits(inside: Collection[str], wanted: Collection[str]) -> Iterator[str]:
    """The files that a wheel lacks, or has beyond those wanted and its own metadata."""
    own = {name for name in inside if not name.split("/")[0].endswith(".dist-info")}
    yield from (f"the wheel lacks {name}" for name in sorted(set(wanted) - own))
    yield from (
        f"the wheel has {name}, which is not under version control" for name in sorted(own - set(wanted))
    )


def declared() -> set[str]:
    """The families that the project declares."""
    project = tomli.loads((TOP / "pyproject.toml").read_text(encoding="utf-8"))
    return set(project["project"]["entry-points"]["speclint"])


def files(wheel: Path) -> None:
    """Every module, data file and template, and nothing else."""
    with zipfile.ZipFile(wheel) as opened:
        faults = list(misfits(opened.namelist(), tracked()))
    assert not faults, "\n".join(faults)


def families(installed: Installed) -> None:
    """Exactly the declared families load, and each brings a rule."""
    rules = json.loads(installed.says("rules", "--as", "json"))
    assert {one["family"] for one in rules} == declared()
    printed = installed.says("families")
    assert all(re.search(rf"\b{name}\b", printed) for name in declared()), printed


def checks(installed: Installed) -> None:
    """Parts of the example are checked, one sheet is a page, and the schema of the data is printed."""
    schema = json.loads(installed.says("check", "--schema"))
    assert schema["title"], schema
    found = json.loads(installed.says("check", str(TOP / _PIPES), "--as", "json", exits=1))
    assert set(schema["required"]) <= set(found)
    assert len(found["families"]) == len(declared())
    assert len(found["checks"]) > 10, found["summary"]
    one = next(one for one in found["checks"] if one["outcome"] == "finding")
    words = ("sheet", one["component"], one["rule"], "--in", str(TOP / "example_specs"), "--as", "html")
    page = installed.says(*words, exits=1)
    assert page.startswith("<!doctype html>"), page[:100]
    assert one["rule"] in page


def design(installed: Installed) -> Path:
    """A design repository that is begun, with its first commit."""
    root = installed.folder / "design"
    installed.says("begin", str(root), "--works", "Corrow and Ness Railway", "--cylinders", "2")
    for words in (("init", "--quiet"), ("add", "--all"), (*_COMMIT, "Begin")):
        subprocess.run(["git", *words], cwd=root, check=True)
    return root


def gate(installed: Installed, root: Path) -> None:
    """A design that is only begun is withheld, and the reason is data."""
    decision = json.loads(installed.says("gate", "--against", "HEAD", "--as", "json", exits=1, of=root))
    assert decision["released"] is False
    assert decision["still_to_be_drawn"], list(decision)


def pack(installed: Installed, root: Path) -> None:
    """The review pack is a page, with its drawings' styles and scripts in it."""
    installed.says("review", "--to", "pack", exits=1, of=root)
    page = (root / "pack" / "review.html").read_text(encoding="utf-8")
    assert page.startswith("<!doctype html>"), page[:100]
    assert "<style" in page
    assert "<script" in page


def reference(installed: Installed) -> None:
    """The reference has a page of each family with its rules, and those of tables and of the guide."""
    installed.says("reference", "--to", "pages")
    pages = installed.folder / "pages"
    for one in json.loads(installed.says("rules", "--as", "json")):
        page = (pages / "rules" / f"{one['family']}.html").read_text(encoding="utf-8")
        assert f'<h2 id="{one["rule"]}">' in page, one["rule"]
    assert len(list((pages / "tables").glob("*.html"))) > 50
    assert len(list((pages / "guide").glob("*.html"))) > 4


def server(installed: Installed, root: Path) -> None:
    """The server answers an editor: findings of an opened spec, and a complaint once a value is none."""
    client = start(root, installed.environment, [str(installed.scripts / "speclint")])
    try:
        text = (root / "liners" / "liner.toml").read_text(encoding="utf-8")
        assert client.open("liners/liner.toml", text), "no finding of a liner that is only begun"
        line = len(text.splitlines())
        client.type("liners/liner.toml", 2, line, 0, 0, 'bore = "banana"\n')
        marks = client.settled("liners/liner.toml")
        assert any("banana" in one["message"] for one in marks), marks
        assert client.end() == 0
    finally:
        client.close()


def main() -> int:
    """Look at it all; the first thing that is wrong ends it."""
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("wheel", type=Path, help="the wheel")
    reader.add_argument("scripts", type=Path, help="the folder of scripts of the environment in which it is")
    given = reader.parse_args()
    folder = Path(tempfile.mkdtemp())
    installed = Installed(given.scripts.resolve(), folder)
    try:
        files(given.wheel)
        families(installed)
        checks(installed)
        root = design(installed)
        gate(installed, root)
        pack(installed, root)
        reference(installed)
        server(installed, root)
    finally:
        shutil.rmtree(folder)
    print(f"the wheel works on its own: {len(declared())} families, {len(tracked())} files")
    return 0


if __name__ == "__main__":
    sys.exit(main())
