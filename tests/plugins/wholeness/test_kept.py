"""What rules of places asked, kept between runs: that nothing was there is on record, and a part put there is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.checking import Assessment, KeptFolder, assess
from speclint.families import Loaded
from speclint.testing import DesignFolder, installed_families

ENGINE = 'kind = "engine"\n[cranks.one]\nblock = "block"\n'
PISTON = 'kind = "piston"\nruns_in = "liner"\ndrawing = "D-1"\n'
FILES = {
    "engine.toml": ENGINE,
    "block.toml": 'kind = "cylinder-block"\nduty = "duty"\n[bores.main]\n',
    "duty.toml": 'kind = "duty"\n[cases.running]\n',
    "liner.toml": 'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "main"\n',
    "piston.toml": PISTON,
    "ring.toml": 'kind = "piston-ring"\nruns_in = "liner"\n',
}
#: Each file is written anew, or is there no longer (None), one after the other.
EDITS: tuple[tuple[str, str | None], ...] = (
    ("second.toml", PISTON),  # twice in one bore, and on one number
    ("second.toml", PISTON.replace("D-1", "D-2")),
    ("second.toml", None),
    ("liner.toml", 'kind = "cylinder-liner"\n'),  # piston and ring belong to nothing
    ("liner.toml", FILES["liner.toml"]),
    ("other.toml", 'kind = "duty"\n'),  # nothing uses it
    ("other.toml", None),
    ("duty.toml", 'kind = "duty"\n[cases.running]\n[cases.test]\n'),
    ("engine.toml", None),
)


@pytest.fixture(scope="module")
def places_alone() -> Loaded:
    loaded = installed_families()
    return loaded.without(tuple(one.name for one in loaded.families if one.name != "wholeness"))


def told(assessment: Assessment) -> list[tuple[object, ...]]:
    return [
        (*one.order, one.outcome, one.grade, one.says, one.fingerprint, one.places)
        for one in assessment.checks
    ]


def test_kept_checks_are_those_of_a_run_afresh(
    tmp_path: Path, tmp_path_factory: pytest.TempPathFactory, places_alone: Loaded
) -> None:
    kept = KeptFolder(tmp_path_factory.mktemp("kept"))
    design = DesignFolder(tmp_path, places_alone).write(FILES)
    before = told(assess([design.root], places_alone, kept=kept))
    for file, text in EDITS:
        if text is None:
            (tmp_path / file).unlink()
        else:
            (tmp_path / file).write_text(text, encoding="utf-8")
        now = told(assess([design.root], places_alone, kept=kept))
        assert now == told(assess([design.root], places_alone)), file
        assert now != before, file
        before = now
