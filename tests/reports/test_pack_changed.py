"""The section of the pack on what changed since another state of the design, each number worked by hand.

The mean hoop stress of the tube is p d/(D − d) at the worst corner: at 45 bar 4.5 MPa × 100.5/(104.5 − 100.5) is 113.06
MPa of 100 MPa, at 30 bar 75.4 MPa.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.commands import main
from speclint.families import loading
from speclint.reports import hooks
from speclint.testing import DesignFolder
from tests import tubes
from tests.register.office import git
from tests.reports.test_pack_document import section, words
from tests.tubes import FILES

pytestmark = pytest.mark.usefixtures("changed")


@pytest.fixture
def changed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A repository with the tube at 30 bar committed and at 45 bar in the work tree, and its rack called otherwise."""
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    monkeypatch.chdir(tmp_path)
    made = DesignFolder(tmp_path, loading.load_families(built_in=hooks)).write(FILES)
    git(tmp_path, "init", "--quiet", "--initial-branch=main")
    git(tmp_path, "add", "--all")
    git(tmp_path, "commit", "--quiet", "--message=first")
    made.replace("tube.toml", "30 bar", "45 bar").replace("tube.toml", '"rack"', '"stand"')
    (tmp_path / "rack.toml").rename(tmp_path / "stand.toml")


def pack(*options: str) -> str:
    main(["review", "--to", "review", *options])
    return Path("review/review.html").read_text(encoding="utf-8")


def test_the_pack_says_what_changed_since_a_revision() -> None:
    page = pack("--against", "HEAD")
    said = words(section(page, "changed"))
    assert said.startswith("What changed since HEAD Specs: 1 renamed, 1 changed.")
    assert "Findings: 1 new, 0 cleared state finding new hold: tube, tube.stress: " in said
    assert "renamed stand id rack stand" in said
    assert "changed tube pressure 30 bar gauge 45 bar gauge" in said
    assert "0.75 1.13 +0.38 tube, tube.stress (was conforms, is hold)" in said
    assert "Concessions" not in said
    assert '<a href="#changed">What changed</a>' in page
    assert words(section(page, "findings")) == "Other findings None: every finding is a hold."
    assert page.index("id=findings") < page.index("id=changed") < page.index("id=actions")


def test_a_pack_with_nothing_to_compare_has_no_such_section() -> None:
    assert "id=changed" not in pack()


def test_where_nothing_differs_the_pack_says_so_in_a_sentence() -> None:
    page = pack("--against", ".")
    said = words(section(page, "changed"))
    assert "No spec differs." in said
    assert "Findings: 0 new, 0 cleared." in said
    assert "came out otherwise." in said
    assert "<table" not in section(page, "changed")


def test_several_folders_are_refused_as_it_is_not_said_which_is_compared(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["review", "tube.toml", "stand.toml", "--to", "review", "--against", "HEAD"]) == 2
    assert "--against holds one design against another: name one folder" in capsys.readouterr().err
    assert not Path("review").exists()
