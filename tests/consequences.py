"""What ``speclint affects`` lists for a bore of the example, held against a check of the whole design with it changed.

``python -m tests.consequences`` changes each value of ``CHANGES`` in a copy of the example, makes every check of both
anew, and fails where a check that came out otherwise, or rests on other values, is missing from the list.
"""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from speclint.checking import Assessment, Processes, assess, consequences
from speclint.testing import installed_families
from tests.example import EXAMPLE

#: The file of each value, its line as the example has it, and the line that it is changed to.
CHANGES = {
    ("liner-left", "bore"): ("liners/liner.toml", 'bore = "500 mm H8"', 'bore = "500.4 mm H8"'),
    ("block-left", "bores.main.diameter"): (
        "blocks/block.toml",
        '[bores.main]\ndiameter = "578 mm H7"',
        '[bores.main]\ndiameter = "578.02 mm H7"',
    ),
}


def results(assessment: Assessment) -> dict[tuple[str, str], tuple[object, ...]]:
    """How each check came out, and what it rests on."""
    return {
        (one.component, one.rule.name): (one.outcome, one.says, one.utilisation, one.fingerprint)
        for one in assessment.checks
    }


def checked(folder: Path) -> Assessment:
    """Every check of a design, made anew."""
    with Processes() as processes:
        return assess([folder], installed_families(), processes=processes)


def main() -> int:
    before = checked(EXAMPLE)
    was, missing = results(before), 0
    for (component, key), (file, old, new) in CHANGES.items():
        with tempfile.TemporaryDirectory() as name:
            folder = Path(name) / "design"
            shutil.copytree(EXAMPLE, folder)
            text = (folder / file).read_text(encoding="utf-8")
            assert text.count(old) == 1, f"{file} has {old!r} {text.count(old)} times"
            (folder / file).write_text(text.replace(old, new), encoding="utf-8")
            now = results(checked(folder))
        changed = {at for at in was | now if was.get(at) != now.get(at)}
        listed = {(one.component, one.rule.name) for one in consequences(before, component, key).checks}
        print(
            f"{component}.{key}: {len(changed)} checks changed, {len(listed)} of {len(was)} listed",
            flush=True,
        )
        for part, rule in sorted(changed - listed):
            missing += 1
            print(f"changed, and not listed: {rule} on {part}")
    return int(missing > 0)


if __name__ == "__main__":
    raise SystemExit(main())
