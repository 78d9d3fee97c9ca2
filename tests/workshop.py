"""A design repository made for one test: write files, run the assessment, look at the checks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

from speclint.checking import Assessment, Check, assess
from speclint.families import Loaded, load_families

SETTINGS = """
[works]
stage = "draft"
site_pressure = "1.01325 bar absolute"
[local_codes]
pressure = ["the invented pressure code"]
railway = ["the invented railway code"]
"""


@cache
def installed_families() -> Loaded:
    """Every installed family, loaded once for all tests."""
    return load_families()


@dataclass
class Workshop:
    """A temporary repository. ``families`` are those installed unless a test brings its own."""

    root: Path
    loaded: Loaded = field(default_factory=installed_families)

    def write(self, files: Mapping[str, str], *, settings: str = SETTINGS) -> Workshop:
        """Write files by name, and speclint.toml beside them; an existing file is replaced."""
        for name, text in {"speclint.toml": settings, **files}.items():
            path = self.root / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="\n")
        return self

    def replace(self, file: str, old: str, new: str) -> Workshop:
        """Change one passage of a file, which must stand there exactly once."""
        path = self.root / file
        text = path.read_text(encoding="utf-8")
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {file}"
        path.write_text(text.replace(old, new), encoding="utf-8", newline="\n")
        return self

    def assess(self, *paths: str) -> Assessment:
        """Assess the whole repository, or some paths in it."""
        return assess([self.root / path for path in paths] or [self.root], self.loaded)

    def check(self, rule: str, *, readable: bool = True) -> list[Check]:
        """The checks of one rule; unreadable specs fail the test unless ``readable`` is false."""
        chosen = [one for one in self.loaded.rules if one.name == rule]
        assert chosen, f"no rule is called {rule}"
        assessment = assess([self.root], self.loaded, None if chosen[0].reviews else chosen)
        assert not readable or not assessment.complaints, [str(one) for one in assessment.complaints]
        return [check for check in assessment.checks if check.rule.name == rule]

    def only(self, rule: str, component: str = "", *, readable: bool = True) -> Check:
        """The one check of a rule, of a component where there are several."""
        found = [one for one in self.check(rule, readable=readable) if component in ("", one.component)]
        assert len(found) == 1, f"{len(found)} checks of {rule} on {component or 'all'}"
        return found[0]
