"""A design repository made from text for one test: write files, assess them, look at the checks.

>>> changed('bore = "20 mm"', ("20 mm", "11 mm"))
'bore = "11 mm"'
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from speclint.checking import Assessment, Check, assess
from speclint.families import Loaded
from speclint.testing.families import installed_families

#: The settings that a design has where a test writes no others: a draft, at standard pressure, local codes named.
SETTINGS = """
[works]
stage = "draft"
site_pressure = "1.01325 bar absolute"
[local_codes]
pressure = ["the invented pressure code"]
railway = ["the invented railway code"]
"""


@dataclass
class DesignFolder:
    """A design repository in a folder of a test's own, checked by the families in ``loaded``.

    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     design = DesignFolder(Path(folder)).write({"ring.toml": 'kind = "piston-ring"'})
    ...     design.assess().design.specs["ring"].called
    'piston ring'
    """

    root: Path
    loaded: Loaded = field(default_factory=installed_families)

    def write(self, files: Mapping[str, str], *, settings: str = SETTINGS) -> DesignFolder:
        """Write files by name, and speclint.toml beside them; an existing file is replaced."""
        texts = {self.root / name: text for name, text in {"speclint.toml": settings, **files}.items()}
        for folder in {path.parent for path in texts}:
            folder.mkdir(parents=True, exist_ok=True)
        for path, text in texts.items():
            path.write_bytes(text.encode("utf-8"))
        return self

    def replace(self, file: str, old: str, new: str) -> DesignFolder:
        """Change one passage of a file, which must stand there exactly once."""
        path = self.root / file
        text = changed(path.read_text(encoding="utf-8"), (old, new), of=file)
        path.write_text(text, encoding="utf-8", newline="\n")
        return self

    def assess(self, *paths: str) -> Assessment:
        """Assess the whole repository, or some paths in it."""
        return assess([self.root / path for path in paths] or [self.root], self.loaded)

    def check(self, rule: str, *, readable: bool = True, runs: bool = True) -> list[Check]:
        """The checks of one rule; specs that cannot be read fail the test unless ``readable`` is false.

        So does a rule that could not be run, whose outcome would else pass for a finding, unless ``runs`` is false.
        """
        chosen = [one for one in self.loaded.rules if one.name == rule]
        if not chosen:
            raise AssertionError(f"no rule is called {rule}")
        assessment = assess([self.root], self.loaded, None if chosen[0].reviews else chosen)
        if readable and assessment.complaints:
            raise AssertionError("\n".join(str(one) for one in assessment.complaints))
        found = [check for check in assessment.checks if check.rule.name == rule]
        broken = [f"{one.component}: {one.could_not_run}" for one in found if one.could_not_run]
        if runs and broken:
            raise AssertionError(f"{rule} could not be run on {', '.join(broken)}")
        return found

    def only(self, rule: str, component: str = "", *, readable: bool = True, runs: bool = True) -> Check:
        """The one check of a rule, of a component where there are several."""
        found = self.check(rule, readable=readable, runs=runs)
        checks = [one for one in found if component in ("", one.component)]
        if len(checks) != 1:
            raise AssertionError(f"{len(checks)} checks of {rule} on {component or 'all'}")
        return checks[0]


def changed(text: str, *changes: tuple[str, str], add: str = "", of: str = "the text") -> str:
    """A text with some passages replaced, each of which must stand there exactly once, and more at its end.

    :raises AssertionError: where a passage stands there never or several times; ``of`` says in what.
    """
    for old, new in changes:
        if text.count(old) != 1:
            raise AssertionError(f"{old!r} stands {text.count(old)} times in {of}")
        text = text.replace(old, new)
    return text + add


def changed_files(
    files: Mapping[str, str], *changes: tuple[str, str, str], everywhere: bool = False
) -> dict[str, str]:
    """Files with some passages replaced, each given as file, old and new.

    :raises AssertionError: where a passage does not stand exactly once in its file; with ``everywhere`` it is replaced
        wherever it stands, and must stand there at all.
    """
    found = dict(files)
    for file, old, new in changes:
        if everywhere and old in found[file]:
            found[file] = found[file].replace(old, new)
        else:
            found[file] = changed(found[file], (old, new), of=file)
    return found


def without_key(text: str, key: str) -> str:
    """A spec without the one line that states a key.

    >>> without_key('kind = "rack"\\nhole = "106 mm"\\n', "hole")
    'kind = "rack"\\n'
    """
    lines = [line for line in text.splitlines() if line.startswith(f"{key} =")]
    if len(lines) != 1:
        raise AssertionError(f"{key} is stated {len(lines)} times")
    return changed(text, (f"{lines[0]}\n", ""))
