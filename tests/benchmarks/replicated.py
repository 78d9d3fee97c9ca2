"""Makes a repository of several copies of the frozen example, with the ids and drawing numbers of each renamed."""

from __future__ import annotations

import re
from pathlib import Path

import tomli

EXAMPLE = Path(__file__).parent / "example"
_NO_SPECS = frozenset({"speclint.toml", "register.toml"})
_DRAWING = re.compile(r'^(drawing = ")([^"]+)"', re.MULTILINE)


def replicate(folder: Path, copies: int) -> int:
    """Write so many copies below a folder, which become one repository; returns the number of files of specs."""
    texts = {
        file.relative_to(EXAMPLE): file.read_text(encoding="utf-8")
        for file in sorted(EXAMPLE.rglob("*.toml"))
        if file.name not in _NO_SPECS
    }
    named = re.compile(rf"(?<![\w-])({'|'.join(sorted(_ids(texts), key=len, reverse=True))})(?![\w-])")
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "speclint.toml").write_bytes((EXAMPLE / "speclint.toml").read_bytes())
    for number in range(copies):
        for file, text in texts.items():
            place = folder / f"copy-{number}" / file
            place.parent.mkdir(parents=True, exist_ok=True)
            renamed = _DRAWING.sub(rf'\1\2-{number}"', named.sub(rf"\1-{number}", text))
            if "id" not in tomli.loads(text):  # its id is then the name of the file
                place = place.with_stem(f"{place.stem}-{number}")
            place.write_text(renamed, encoding="utf-8")
    return copies * len(texts)


def _ids(texts: dict[Path, str]) -> set[str]:
    """The ids of all specs, with those of a file that states several parts."""
    found: set[str] = set()
    for file, text in texts.items():
        content = tomli.loads(text)
        name = str(content.get("id", file.stem))
        found |= {name.replace("{each}", one) for one in content.get("each", [""])}
    return found
