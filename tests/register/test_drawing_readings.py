"""Readings of drawings: how they are entered, what is refused, how they stand, what gate and commit make of them."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from speclint.checking import Assessment, KeptFolder, Processes, assess
from speclint.checking.kept_results import KeptResults
from speclint.errors import DesignError
from speclint.register import Decision, Reader, assess_staged, enter_reading, judge, stand_of
from speclint.register.comparison import before_at
from speclint.register.signing import _entry_called
from speclint.reports import gate_data, gate_page, register_data, review_page
from speclint.reports.pack.title_page import title_page
from speclint.reports.phrases import drawings_said
from speclint.repository import Settings, read_register
from speclint.testing import DesignFolder, load_family
from tests.plugins.release.part import COVER, files, settings
from tests.register.office import git

TODAY = dt.date.today()
NAMED = 'drawing_file = "cover.svg"\n'
REVIEWER = '[reviewers."M. Coyle"]\nrole = "chief draughtsman"\n'
READ = "release.drawing-read"


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    """A cover with the file of its drawing, another like it, and a ring without."""
    root = tmp_path / "design ä"
    root.mkdir()
    return write(DesignFolder(root, load_family("speclint_release")))


def write(shop: DesignFolder, stage: str = "for-review", more: str = "") -> DesignFolder:
    twin = 'kind = "cylinder-cover"\nid = "twin"\nlike = "cover"\nprepared_by = "A. Render"\nchecked_by = "M. Coyle"\n'
    added = {**files(add=NAMED), "twin.toml": twin, "cover.svg": "<svg/>"}
    return shop.write(added, settings=settings(stage) + more)


def enter(shop: DesignFolder, *components: str, by: str = "M. Coyle", day: dt.date = TODAY) -> list[str]:
    """The numbers of the entries."""
    made, _ = enter_reading(components or ["cover"], Reader(by), shop.root, shop.loaded, day)
    return [one.number for one in made]


def states(shop: DesignFolder) -> dict[str, str]:
    """How each reading stands for each part."""
    return {
        f"{one.reading.number} {one.part}": one.state for one in stand_of(shop.root, shop.loaded, TODAY)[2]
    }


def decide(shop: DesignFolder, against: str | None = None) -> Decision:
    return judge([shop.root], lambda: shop.loaded, TODAY, against, workers=lambda: Processes(0))


def not_read(decision: Decision) -> list[str]:
    """The reasons of the gate that are about drawings, up to what to do."""
    return [one.says.partition(";")[0] for one in decision.reasons if one.says.startswith("drawing not read")]


# Entering


def test_a_reading_is_entered_for_the_part_and_those_alike(shop: DesignFolder) -> None:
    assert enter(write(shop, more=REVIEWER)) == ["R-001"]
    (entry,) = read_register(shop.root, Settings()).readings
    assert (entry.parts, entry.file, entry.revision) == (("cover", "twin"), "cover.svg", "A")
    assert (entry.read_by, entry.role, entry.date) == ("M. Coyle", "chief draughtsman", TODAY)
    assert states(shop) == {"R-001 cover": "valid", "R-001 twin": "valid"}
    assert (
        _entry_called("R-001", read_register(shop.root, Settings())) == entry
    )  # as whoever signs it names it


@pytest.mark.parametrize(
    ("change", "component", "said"),
    [
        (("", ""), "covr", 'no component is called covr; write "cover"'),
        (("", ""), "duty", "duty is of the kind duty, which is no component"),
        (("", ""), "ring", 'ring names no file of its drawing; drawing_file = "…" in ring.toml names one'),
        (("cover.svg", "gone.svg"), "cover", "cover: the file gone.svg is not there"),
        (("cover.svg", "duty"), "cover", "cover: the file duty is a folder"),
    ],
)
def test_what_cannot_be_read_is_refused_in_one_line_and_nothing_is_entered(
    shop: DesignFolder, change: tuple[str, str], component: str, said: str
) -> None:
    (shop.root / "duty").mkdir()
    if change[0]:
        shop.replace("cover.toml", *change)
    with pytest.raises(DesignError) as refused:
        enter(shop, "twin" if component not in ("cover", "twin") else component, component)
    assert said in str(refused.value)
    assert "\n" not in str(refused.value)
    assert not (shop.root / "register.toml").exists()


@pytest.mark.parametrize("by", ["B. Thorne", " "])
def test_whom_the_settings_do_not_name_is_refused(shop: DesignFolder, by: str) -> None:
    write(shop, more=REVIEWER)
    with pytest.raises(
        DesignError, match="not a reviewer in speclint.toml" if by.strip() else "states who read"
    ):
        enter(shop, by=by)
    assert enter(shop, by="m coyle") == ["R-001"]


def test_a_role_that_names_nothing_is_refused(shop: DesignFolder) -> None:
    """It would be written into a register that is then refused."""
    with pytest.raises(DesignError, match='in what role, or leaves it out; read "n/a"'):
        enter_reading(["cover"], Reader("M. Coyle", "n/a"), shop.root, shop.loaded, TODAY)
    assert not (shop.root / "register.toml").exists()


def test_what_is_read_as_it_is_is_not_entered_twice(shop: DesignFolder) -> None:
    enter(shop)
    with pytest.raises(DesignError, match="cover is read as it is"):
        enter(shop)


def test_concessions_and_remarks_of_the_file_stay_as_they_are(shop: DesignFolder) -> None:
    before = "# ours\r\n"
    (shop.root / "register.toml").write_bytes(before.encode())
    enter(shop)
    text = (shop.root / "register.toml").read_bytes().decode()
    assert text.startswith(before)
    assert "[[reading]]\r\n" in text


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('read_by = "M. Coyle"\n', "", "reading R-001 does not state its read_by"),
        ('file = "cover.svg"', 'file = " "', "file: the text is empty"),
        ('sha256 = "', 'sha256 = "x', "the sha256 of reading R-001 is no digest"),
        ('file = "cover.svg"', 'path = "cover.svg"', '"path" is no key of'),
    ],
)
def test_an_entry_that_cannot_be_read_is_told(shop: DesignFolder, old: str, new: str, said: str) -> None:
    enter(shop)
    shop.replace("register.toml", old, new)
    found = read_register(shop.root, Settings())
    assert found.readings == ()
    assert said in str(found.complaints[0])


# How they stand


CHANGES: dict[str, tuple[Callable[[DesignFolder], object], str]] = {
    "changed": (lambda shop: shop.write({"cover.svg": "<svg />"}, settings=settings()), "changed"),
    "gone": (lambda shop: (shop.root / "cover.svg").unlink(), "cannot be read"),
    "revision": (
        lambda shop: shop.replace("cover.toml", 'revision = "A"', 'revision = "B"'),
        "other revision",
    ),
    "no file": (lambda shop: shop.replace("cover.toml", NAMED, ""), "unmatched"),
    "other file": (lambda shop: shop.replace("cover.toml", "cover.svg", "new.svg"), "unmatched"),
    "no part": (
        lambda shop: shop.replace("register.toml", 'component = "cover"', 'component = "cove"'),
        "unmatched",
    ),
    "signed": (
        lambda shop: write(shop, more='[concessions]\nsigned = ["nonconformity"]\n'),
        "not signed",
    ),
    "not named": (lambda shop: write(shop, more=REVIEWER.replace("Coyle", "Miller")), "not accepted"),
    "nothing": (lambda shop: shop, "valid"),
}


@pytest.mark.parametrize("name", CHANGES)
def test_a_reading_that_no_longer_counts_is_told(shop: DesignFolder, name: str) -> None:
    enter(shop)
    change, state = CHANGES[name]
    change(shop)
    register, stand, read = stand_of(shop.root, shop.loaded, TODAY)
    assert read[0].state == state
    data = register_data(register, stand, read)
    assert data["readings"][0]["state"] == state
    assert data["exit"] == (0 if state == "valid" else 1)
    assert bool(read[0].reasons) is (state != "valid")


def test_a_later_reading_replaces_the_one_before(shop: DesignFolder) -> None:
    enter(shop)
    shop.write({"cover.svg": "<svg />"}, settings=settings())
    assert enter(shop) == ["R-002"]
    assert states(shop) == {
        "R-001 cover": "replaced",
        "R-001 twin": "replaced",
        "R-002 cover": "valid",
        "R-002 twin": "valid",
    }


# The gate


def test_the_gate_wants_every_drawing_read_once_the_design_is_released(shop: DesignFolder) -> None:
    assert not_read(decide(write(shop))) == []
    found = decide(write(shop, "released"))
    assert not_read(found) == [
        f"drawing not read: {name}: cover.svg was never read against this spec" for name in ("cover", "twin")
    ]
    enter(shop)
    assert not_read(decide(shop)) == []
    shop.write({"cover.svg": "<svg />"}, settings=settings("released"))
    found = decide(shop)
    assert len(not_read(found)) == 2
    said = "1 drawing changed since it was read: cover.svg."
    assert found.assessment is not None
    assert drawings_said(found.assessment) == said
    page = " ".join(
        "".join(part if isinstance(part, str) else part[0] for part in line)
        for line in gate_page(found, 200).lines
    )
    assert said in page
    assert "READINGS OF DRAWINGS WITHOUT EFFECT" in page
    assert [one["state"] for one in gate_data(found)["readings_ended"]] == ["changed", "changed"]


def test_a_reading_that_does_not_count_withholds_too(shop: DesignFolder) -> None:
    enter(write(shop, "released"))
    write(shop, "released", REVIEWER.replace("Coyle", "Miller"))
    found = decide(shop)
    assert not_read(found) == [f"drawing not read: {name}: cover.svg" for name in ("cover", "twin")]
    assert "not accepted" in found.reasons[-1].details[0]


# As git has them


def committed(shop: DesignFolder) -> DesignFolder:
    if not (shop.root / ".git").exists():
        git(shop.root, "init", "--quiet", "--initial-branch=main")
    git(shop.root, "add", ".")
    git(shop.root, "commit", "--quiet", "--allow-empty", "-m", "as it was")
    return shop


def staged(shop: DesignFolder) -> dict[str, str]:
    """How the checks of drawings come out of what is staged, by component."""
    found = assess_staged([shop.root], shop.loaded, TODAY, workers=lambda: Processes(0)).assessment
    return {one.component: one.outcome for one in found.checks if one.rule.name == READ}


def test_a_drawing_is_checked_as_it_is_staged(shop: DesignFolder) -> None:
    enter(shop)
    committed(shop)
    assert staged(shop) == {}
    (shop.root / "cover.svg").write_text("<svg />", encoding="utf-8")
    assert staged(shop) == {}
    git(shop.root, "add", ".")
    assert staged(shop) == {"cover": "finding", "twin": "finding"}
    (shop.root / "cover.svg").write_text("<svg/>", encoding="utf-8")
    assert staged(shop) == {"cover": "finding", "twin": "finding"}
    git(shop.root, "add", ".")
    assert staged(shop) == {}


def test_a_reading_that_is_staged_or_taken_away_has_its_parts_checked(shop: DesignFolder) -> None:
    committed(shop)
    enter(shop)
    git(shop.root, "add", ".")
    assert staged(shop) == {"cover": "conforms", "twin": "conforms"}
    committed(shop)
    git(shop.root, "rm", "--quiet", "register.toml")
    assert staged(shop) == {"cover": "finding", "twin": "finding"}


def test_a_change_since_a_revision_tells_the_drawing_that_changed(shop: DesignFolder, tmp_path: Path) -> None:
    enter(shop)
    committed(shop)
    shop.write({"cover.svg": "<svg />"}, settings=settings())
    place = tmp_path / "before"
    before = before_at([shop.root], "HEAD", shop.loaded, place, lambda: Processes(0))
    changes = before.changes(assess([shop.root], shop.loaded))
    assert changes is not None
    assert {(one.component, one.rule.name) for one in changes.new} == {("cover", READ), ("twin", READ)}
    assert not (place / "cover.svg").exists()  # the file is read from git alone


def test_the_gate_judges_the_files_of_the_change(shop: DesignFolder) -> None:
    enter(write(shop, "released"))
    committed(shop)
    assert not_read(decide(shop, "HEAD")) == []
    shop.write({"cover.svg": "<svg />"}, settings=settings("released"))
    assert len(not_read(decide(shop, "HEAD"))) == 2


# Kept results and reports


def anew(shop: DesignFolder, kept: KeptFolder, monkeypatch: pytest.MonkeyPatch) -> set[str]:
    """The components whose checks a run makes anew, which are then kept."""
    made: set[str] = set()
    plain = KeptResults.keep_checks

    def watched(self: KeptResults, component: str, checks: object) -> None:
        made.add(component)
        plain(self, component, checks)  # type: ignore[arg-type]

    with monkeypatch.context() as patch:
        patch.setattr(KeptResults, "keep_checks", watched)
        assess([shop.root], shop.loaded, kept=kept)
    return made


def test_kept_results_notice_one_byte_of_a_drawing_and_a_reading(
    shop: DesignFolder, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    rings = {f"{name}.toml": files()["ring.toml"].replace('"ring"', f'"{name}"') for name in ("a", "b")}
    shop.write(
        {**rings, "a.svg": "a", "a.toml": rings["a.toml"] + 'drawing_file = "a.svg"\n'}, settings=settings()
    )
    kept = KeptFolder(tmp_path / "kept")
    assert anew(shop, kept, monkeypatch) == {"cover", "twin", "ring", "a", "b"}
    assert anew(shop, kept, monkeypatch) == set()
    (shop.root / "a.svg").write_text("b", encoding="utf-8")
    assert anew(shop, kept, monkeypatch) == {"a"}
    enter(shop, "a")
    assert anew(shop, kept, monkeypatch) == {"a"}
    enter(shop, "cover")
    assert anew(shop, kept, monkeypatch) == {"cover", "twin"}
    assert drawings_said(assess([shop.root], shop.loaded, kept=kept)) == ""


def test_no_file_is_read_that_no_rule_asks_for(shop: DesignFolder) -> None:
    only = [one for one in shop.loaded.rules if one.name == "release.identity"]
    found: Assessment = assess([shop.root], shop.loaded, only)
    assert found.design is not None
    assert drawings_said(found) == ""
    (shop.root / "cover.svg").unlink()
    assert found.design.drawing_files.state("cover.svg").fault == "is not there"  # so it was not read before


def test_the_list_of_drawings_has_files_readings_and_issues(shop: DesignFolder) -> None:
    enter(shop)
    issue = '[[issued]]\nto = "shop"\non = 2026-01-02\nrevision = "-"\n'
    shop.write({"cover.toml": COVER + NAMED + issue}, settings=settings())
    found = assess([shop.root], shop.loaded)
    listed = {one.number: one for one in title_page(found, None, TODAY).drawings}["X-101"]
    assert (listed.title, listed.parts) == ("Front cover", ("cover", "twin"))
    assert listed.files == (f"cover.svg: read by M. Coyle, {TODAY}",)
    assert listed.issued == ("shop: -, 2026-01-02",)
    page = review_page(found)
    assert f"<td>cover.svg: read by M. Coyle, {TODAY}<td>shop: -, 2026-01-02" in page
