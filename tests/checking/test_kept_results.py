"""Results of earlier runs: found again where nothing that they consulted has changed, and never otherwise."""

from __future__ import annotations

import datetime as dt
import os
import pickle
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import given, settings, strategies as st

from speclint.checking import Assessment, KeptFolder, Processes, assess, find_remedies
from speclint.checking.kept_results import KeptResults
from speclint.checking.packing import packed, unpacked
from speclint.register import judge
from speclint.reports import gate_data, gate_page, json_report
from speclint.rules import Consulted
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.own_limits import own_limit

#: Four tubes in two racks; the third has no duty of its own and finds none by its rack.
FILES = {
    "duty.toml": tubes.DUTY,
    "rack.toml": tubes.RACK,
    "other-rack.toml": tubes.RACK.replace("106", "107"),
    "tube.toml": tubes.TUBE,
    "second.toml": tubes.TUBE.replace("100 mm", "99 mm"),
    "third.toml": tubes.TUBE.replace('duty = "duty"\n', ""),
    "fourth.toml": tubes.TUBE.replace('"rack"', '"other-rack"'),
}
#: What somebody may do to a spec at a desk.
EDITS: dict[str, Callable[[str], str]] = {
    "a wider bore": lambda text: text.replace("100 mm", "101 mm"),
    "more pressure": lambda text: text.replace("bar gauge", "bar absolute"),
    "another hole": lambda text: text.replace("106", "105.2"),
    "another rack": lambda text: text.replace('"rack"', '"other-rack"'),
    "no duty": lambda text: text.replace('duty = "duty"\n', ""),
    "a title": lambda text: 'title = "Tube"\n' + text,
    "a title changed": lambda text: text.replace('"Tube"', '"Tubes"'),
    "a line more": lambda text: "# drawn again\n" + text,
    "what cannot be read": lambda text: text + "bore = \n",
    "as it was": lambda _: "",
    "taken away": lambda _: "-",
}


@pytest.fixture(autouse=True, scope="module")
def _of_this_test() -> Iterator[None]:
    """The family of tubes is made in memory: its name stands for its code."""
    with pytest.MonkeyPatch.context() as patch:
        tubes.code_known(patch)
        yield


def run(shop: DesignFolder, kept: KeptFolder | None = None) -> Assessment:
    """One run as the command makes it, with remedies."""
    with Processes(0) as processes:
        found = assess([shop.root], shop.loaded, kept=kept, processes=processes)
        find_remedies(found, processes)
    return found


def told(assessment: Assessment) -> tuple[object, ...]:
    """Everything that reports can tell of a run."""
    remedies = [[str(one) for one in assessment.remedies(check)] for check in assessment.checks]
    steps = [(check.steps, check.rests_on, check.consulted) for check in assessment.checks]
    proofs = [  # but for how many boxes it took: that hangs on what was checked before
        {case: (proof.method, proof.inside, proof.why) for case, proof in check.proofs.items()}
        for check in assessment.checks
    ]
    return json_report.write(assessment), remedies, steps, proofs


def taken(shop: DesignFolder, kept: KeptFolder, monkeypatch: pytest.MonkeyPatch) -> set[str]:
    """The components whose checks one run takes from what is kept."""
    found: set[str] = set()
    plain = KeptResults.checks_of

    def watched(self: KeptResults, part: str) -> object:
        checks = plain(self, part)
        found.update({part} if checks is not None else ())
        return checks

    monkeypatch.setattr(KeptResults, "checks_of", watched)
    run(shop, kept)
    return found


@pytest.fixture
def shop(workshop: DesignFolder) -> DesignFolder:
    return DesignFolder(workshop.root, tubes.tubes()).write(FILES)


@pytest.fixture
def kept(tmp_path_factory: pytest.TempPathFactory) -> KeptFolder:
    return KeptFolder(tmp_path_factory.mktemp("kept"))


ALL = {"rack", "other-rack", "tube", "second", "third", "fourth"}


def test_a_second_run_takes_everything(
    shop: DesignFolder, kept: KeptFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = run(shop, kept)
    assert taken(shop, kept, monkeypatch) == ALL
    assert told(run(shop, kept)) == told(first) == told(run(shop))


@pytest.mark.parametrize(
    ("file", "edit", "anew"),
    [
        ("tube.toml", "a wider bore", {"tube"}),  # its rack does not look at the tube's sizes
        (
            "rack.toml",
            "another hole",
            {"rack", "tube", "second", "third"},
        ),  # the tubes in it look at its hole
        ("other-rack.toml", "a line more", {"other-rack", "fourth"}),  # findings name lines
        ("duty.toml", "more pressure", {"tube", "second", "fourth"}),
        ("rack.toml", "a title", {"rack", "tube", "second", "third"}),  # it moves every line by one
        ("tube.toml", "taken away", {"tube"}),
    ],
)
def test_what_consulted_a_change_is_made_anew(
    shop: DesignFolder,
    kept: KeptFolder,
    monkeypatch: pytest.MonkeyPatch,
    file: str,
    edit: str,
    anew: set[str],
) -> None:
    run(shop, kept)
    text = EDITS[edit](FILES[file])
    if text == "-":
        (shop.root / file).unlink()
    else:
        shop.write({file: text})
    assert taken(shop, kept, monkeypatch) == ALL - anew
    assert told(run(shop, kept)) == told(run(shop))


@pytest.mark.parametrize(
    "change",
    [SETTINGS.replace("1.01325", "0.95"), SETTINGS + own_limit("tube.stress", "tubes", allowable="90 MPa")],
)
def test_another_setting_makes_everything_anew(
    shop: DesignFolder, kept: KeptFolder, monkeypatch: pytest.MonkeyPatch, change: str
) -> None:
    run(shop, kept)
    shop.write({}, settings=change)
    assert taken(shop, kept, monkeypatch) == set()


def test_a_word_of_the_drawing_changes_only_what_reads_it(
    shop: DesignFolder, kept: KeptFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    shop.write({"rack.toml": 'title = "Rack"\n' + tubes.RACK})
    run(shop, kept)
    shop.replace("rack.toml", '"Rack"', '"Another"')
    assert taken(shop, kept, monkeypatch) == ALL  # no rule of the tubes reads a title


@pytest.mark.long
@settings(max_examples=15)
@given(st.lists(st.tuples(st.sampled_from(sorted(FILES)), st.sampled_from(sorted(EDITS))), max_size=6))
def test_kept_or_made_anew_a_run_is_the_same_to_the_byte(
    tmp_path_factory: pytest.TempPathFactory, edits: list[tuple[str, str]]
) -> None:
    folder = tmp_path_factory.mktemp("edited")
    shop = DesignFolder(folder, tubes.tubes()).write(FILES)
    kept = KeptFolder(tmp_path_factory.mktemp("kept"))
    run(shop, kept)
    for file, edit in edits:
        place = shop.root / file
        text = (
            EDITS[edit](place.read_text(encoding="utf-8") if place.exists() else FILES[file]) or FILES[file]
        )
        if text == "-":
            place.unlink(missing_ok=True)
        else:
            shop.write({file: text})
        assert told(run(shop, kept)) == told(run(shop))


def test_a_damaged_file_is_made_anew(
    shop: DesignFolder, kept: KeptFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole = told(run(shop, kept))
    for number, file in enumerate(sorted(Path(kept._folder).iterdir())):
        content = file.read_bytes()
        file.write_bytes([content[:-3], b"", content[:50] + b"x" + content[51:], b"text"][number % 4])
    assert told(run(shop, kept)) == whole
    assert taken(shop, kept, monkeypatch) == ALL


def test_nothing_but_data_is_made_from_a_file(kept: KeptFolder) -> None:
    class Harm:
        def __reduce__(self) -> tuple[object, ...]:
            return os.system, ("exit 1",)

    for harmful in (pickle.dumps(Harm()), pickle.dumps(os.getcwd), pickle.dumps(Path("x"))):
        kept.write("one", harmful)
        body = kept.read("one")
        assert body == harmful
        assert unpacked(body, {}) is None
    assert unpacked(packed((1, "two", Consulted())), {}) == (1, "two", Consulted())


@pytest.mark.skipif(not hasattr(os, "geteuid"), reason="this system has no such owners of files")
def test_a_folder_that_others_may_write_to_is_not_used(tmp_path: Path) -> None:
    folder = tmp_path / "shared"
    KeptFolder(folder).write("one", b"content")
    folder.chmod(0o777)
    shared = KeptFolder(folder)
    assert "others may write" in shared.why_not
    assert shared.read("one") is None
    shared.write("two", b"content")
    assert {one.name for one in folder.iterdir()} == {"one"}


def test_the_folder_holds_no_more_than_it_may(tmp_path: Path) -> None:
    folder = KeptFolder(tmp_path / "kept", most=1000)
    for number in range(4):
        folder.write(f"file-{number}", bytes(300))
        os.utime(tmp_path / "kept" / f"file-{number}", (number, number))
    assert folder.read("file-0") == bytes(300)  # used last
    folder.tidy()
    assert {one.name for one in (tmp_path / "kept").iterdir()} == {"file-0", "file-3"}


def test_what_could_not_be_run_is_not_kept(
    shop: DesignFolder, kept: KeptFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    shop.write({"speclint.toml": SETTINGS})
    monkeypatch.setattr(tubes, "mean_hoop_stress", None)
    failed = {one.component for one in run(shop, kept).checks if one.could_not_run}
    assert failed
    assert taken(shop, kept, monkeypatch) == ALL - failed


def test_a_part_alike_is_checked_again_when_the_other_changes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is taken over is a part's own: another bore of the one is another of both, and of no third."""
    like = 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\n'
    kept = KeptFolder(tmp_path / "kept")
    shop = DesignFolder(tmp_path / "design", tubes.tubes()).write({**FILES, "fifth.toml": like})
    run(shop, kept)
    assert taken(shop, kept, monkeypatch) >= {"tube", "fifth", "second"}
    shop.replace("tube.toml", "100 mm", "101 mm")
    again = taken(shop, kept, monkeypatch)
    assert "second" in again
    assert not {"tube", "fifth"} & again


def test_a_shared_check_consults_what_it_would_by_itself(tmp_path: Path) -> None:
    """The second tube is run at the corners that govern the first alone, and yet rests on all that it may ask."""
    like = 'kind = "tube"\nlike = "tube"\nheld_in = "other-rack"\n'
    shop = DesignFolder(tmp_path, tubes.tubes()).write({**FILES, "tube-like.toml": like})
    together = [check for check in shop.assess().checks if check.component == "tube-like"]
    alone = shop.assess("tube-like.toml").checks
    assert [check.consulted for check in together] == [check.consulted for check in alone]
    assert any("other-rack" in check.consulted.specs for check in alone)


def test_the_gate_takes_kept_checks_only_when_it_is_given_them(
    shop: DesignFolder, kept: KeptFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    taken_now: list[object] = []
    plain = KeptResults.checks_of

    def watched(self: KeptResults, part: str) -> object:
        taken_now.append(checks := plain(self, part))
        return checks

    monkeypatch.setattr(KeptResults, "checks_of", watched)
    run(shop, kept)
    taken_now.clear()
    afresh = judge([shop.root], lambda: shop.loaded, dt.date.today())
    assert taken_now == []
    again = judge([shop.root], lambda: shop.loaded, dt.date.today(), kept=kept)
    assert taken_now
    assert None not in taken_now
    assert gate_data(again) == gate_data(afresh)
    said = [gate_page(one, 100).text() for one in (afresh, again)]
    assert ["earlier runs are used" in one for one in said] == [False, True]


@pytest.mark.parametrize("edit", sorted(EDITS))
def test_a_spec_that_a_check_did_not_consult_may_say_anything(shop: DesignFolder, edit: str) -> None:
    before = {check.order: check for check in run(shop).checks}
    untouched = 0
    for file, text in FILES.items():
        name = file.removesuffix(".toml")
        changed = EDITS[edit](text) or text
        if changed == "-":
            (shop.root / file).unlink()
        else:
            shop.write({file: changed})
        after = {check.order: check for check in run(shop).checks}
        for order, check in before.items():
            if name not in check.consulted.ids and not check.consulted.asked:
                assert json_report.check_as_data(after[order]) == json_report.check_as_data(check)
                assert after[order].fingerprint == check.fingerprint
                untouched += 1
        shop.write({file: text})
    assert untouched
