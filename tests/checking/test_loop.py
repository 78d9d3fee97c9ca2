"""One run from paths to checks: which components are checked, by which rules, and what is taken from earlier runs."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from speclint.checking import Assessment, KeptFolder, Processes, assess, find_remedies, loop
from speclint.checking.inputs import Inputs, context_of
from speclint.checking.kept_results import KeptResults
from speclint.checking.loop import Touched, _chosen
from speclint.errors import DesignError, FamilyError, NotKnown, replace
from speclint.repository import Register, open_repository
from speclint.rules import OtherCheck
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.repository.test_register_file import ACCEPTED
from tests.tubes import FILES, TUBE

MORE = {
    **FILES,
    "second.toml": TUBE.replace("100 mm", "99 mm"),
    "third.toml": TUBE.replace("100 mm", "98 mm"),
    "other.toml": tubes.RACK,
}


@pytest.fixture(autouse=True, scope="module")
def _of_this_test() -> Iterator[None]:
    """The family of tubes is made in memory: its name stands for its code."""
    with pytest.MonkeyPatch.context() as patch:
        tubes.code_known(patch)
        yield


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    folder = tmp_path / "design"
    folder.mkdir()
    return DesignFolder(folder, tubes.tubes()).write(MORE)


def parts(found: Assessment) -> set[str]:
    return {one.component for one in found.checks}


def test_only_some_components_are_checked_where_that_is_asked(shop: DesignFolder) -> None:
    found = assess([shop.root], shop.loaded, only=lambda *_: {"second", "rack", "nobody"})
    assert parts(found) == {"second"}
    assert found.design is not None
    assert found.design.selected == {"second", "rack"}
    within = assess([shop.root / "third.toml"], shop.loaded, only=lambda *_: {"second", "third"})
    assert parts(within) == {"third"}


def test_what_a_change_may_touch_is_checked_unless_what_is_kept_says_that_it_consulted_nothing_of_it(
    shop: DesignFolder, tmp_path: Path
) -> None:
    """No tube looks at another: of a change of the third one the second is not checked again, of one of the rack it
    is."""
    kept = KeptFolder(tmp_path / "kept")
    touched = Touched(frozenset({"third"}), frozenset({"second", "tube"}), frozenset({"third"}))
    assert parts(assess([shop.root], shop.loaded, only=lambda *_: touched, kept=kept)) == {
        "second",
        "third",
        "tube",
    }
    assess([shop.root], shop.loaded, kept=kept)
    assert parts(assess([shop.root], shop.loaded, only=lambda *_: touched, kept=kept)) == {"third"}
    by_rack = replace(touched, changed=frozenset({"rack"}))
    assert parts(assess([shop.root], shop.loaded, only=lambda *_: by_rack, kept=kept)) == {
        "second",
        "third",
        "tube",
    }
    assert _chosen(["a", "b"], None) == {"a", "b"}
    assert _chosen(touched, None) == {"third", "second", "tube"}


def taken(shop: DesignFolder, kept: KeptFolder, patch: pytest.MonkeyPatch, **more: object) -> int:
    """How many components are looked for among what is kept."""
    asked: list[str] = []
    plain = KeptResults.checks_of

    def told(self: KeptResults, part: str) -> object:
        asked.append(part)
        return plain(self, part)

    patch.setattr(KeptResults, "checks_of", told)
    assess([shop.root], shop.loaded, kept=kept, **more)  # type: ignore[arg-type]
    return len(asked)


def test_results_are_kept_where_all_rules_are_run_of_however_few_components(
    shop: DesignFolder, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    kept = KeptFolder(tmp_path / "kept")
    assert taken(shop, kept, monkeypatch) == 5
    assert taken(shop, kept, monkeypatch, rules=tubes.RULES) == 0
    (shop.root / "third.toml").unlink()
    assert taken(shop, kept, monkeypatch) == 4
    for name in ("second", "other", "tube"):
        (shop.root / f"{name}.toml").unlink()
    assert taken(shop, kept, monkeypatch) == 1


def test_some_rules_keep_no_outcomes_for_those_that_review(shop: DesignFolder) -> None:
    whole, some = shop.assess(), assess([shop.root], shop.loaded, [tubes.stress])
    assert whole.context is not None
    assert some.context is not None
    assert whole.context.outcomes is not None
    assert set(whole.context.outcomes) == {"tube", "second", "third", "rack", "other"}
    assert some.context.outcomes is None
    assert {one.rule.name for one in some.checks} == {"tube.stress"}


def test_a_family_that_is_left_out_is_not_run_even_where_its_rules_are_given(shop: DesignFolder) -> None:
    (shop.root / "speclint.toml").write_text(
        SETTINGS + '[families]\nleave_out = ["tubes"]\n', encoding="utf-8"
    )
    rules = [replace(one, family="tubes") for one in tubes.RULES]
    assert assess([shop.root], shop.loaded, rules).checks == ()
    (shop.root / "speclint.toml").write_text(
        SETTINGS + '[families]\nrequired = ["boilers"]\n', encoding="utf-8"
    )
    with pytest.raises(FamilyError, match="boilers"):
        shop.assess()


def test_settings_that_cannot_be_read_leave_nothing_to_check(shop: DesignFolder) -> None:
    found = shop.write({}, settings="[works").assess()
    assert (found.settings, found.design, found.checks) == (None, None, ())
    assert len(found.complaints) == 1
    find_remedies(found, Processes(0))
    assert found.register == Register("")


def test_complaints_about_limits_stand_before_those_about_specs(shop: DesignFolder) -> None:
    shop.write({"bad.toml": TUBE + "x = 1\n"}, settings=SETTINGS + '[limits."tube.none"]\nx = "1 mm"\n')
    assert [one.where.file for one in shop.assess().complaints] == ["speclint.toml", "bad.toml"]


def test_a_path_without_a_repository_is_refused(tmp_path: Path) -> None:
    with pytest.raises(DesignError):
        assess([tmp_path], tubes.tubes())


def test_the_materials_of_the_repository_go_before_those_of_the_handbook(shop: DesignFolder) -> None:
    design = shop.assess().design
    assert design is not None
    own = object()
    inputs = Inputs(design, {}, {"grey-iron-250": own}, Register(""), dt.date(2026, 3, 1))  # type: ignore[dict-item]
    context = context_of(inputs, shop.loaded)
    assert context.material("grey-iron-250") is own
    assert context.material("grey-iron-300").name == "grey-iron-300"
    with pytest.raises(NotKnown):
        context.material("no-iron")


def test_the_check_of_another_part_is_made_once_and_says_why_there_is_none(shop: DesignFolder) -> None:
    design = shop.assess().design
    assert design is not None
    context = context_of(Inputs(design, {}, {}, Register(""), dt.date(2026, 3, 1)), shop.loaded)
    found = context.other_check("tube", "tube.stress")
    assert isinstance(found, OtherCheck)
    assert (found.rule, found.part, found.outcome) == ("tube.stress", "tube", "conforms")
    assert found.used == pytest.approx(0.75375)
    assert found.says.startswith("mean hoop stress")
    assert list(context.worked) == [("other check", "tube", "tube.stress")]
    none = context.other_check("tube", "tube.none")
    assert isinstance(none, str)
    assert "tube.none" in none


def test_concessions_are_watched_where_there_are_some(shop: DesignFolder) -> None:
    found = shop.assess()
    assert found.design is not None
    part = next(found.design.parts())
    register = Register("", (replace(ACCEPTED, component=part.id),))
    asked = tubes.ends
    with_some = context_of(Inputs(found.design, {}, {}, register, dt.date(2026, 3, 1)), shop.loaded)
    assert with_some.concessions(part, asked) == ()  # there is no such finding to be accepted
    shop.replace("tube.toml", "30 bar", "45 bar")
    design = shop.assess().design
    assert design is not None
    tube = next(one for one in design.parts() if one.id == "tube")
    register = Register("", (ACCEPTED,))
    context = context_of(Inputs(design, {}, {}, register, dt.date(2026, 3, 1)), shop.loaded)
    ((number, why),) = context.concessions(tube, asked)
    assert number == "C-1"
    assert why
    plain = context_of(Inputs(design, {}, {}, Register(""), dt.date(2026, 3, 1)), shop.loaded)
    assert plain.concessions(tube, asked) == ()


def test_where_results_are_kept_the_index_of_the_specs_is_kept_with_them(
    shop: DesignFolder, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    given: list[object] = []

    def opened(*one: object) -> object:
        given.append(one[4])
        return open_repository(*one)  # type: ignore[arg-type]

    monkeypatch.setattr(loop, "open_repository", opened)
    (tmp_path / "file").write_text("x", encoding="utf-8")
    folder, unusable = KeptFolder(tmp_path / "kept"), KeptFolder(tmp_path / "file" / "kept")
    for kept in (None, folder, unusable):
        assess([shop.root], shop.loaded, kept=kept)
    assert [one is None for one in given] == [True, False, True]


def test_what_is_kept_beyond_its_room_is_removed_at_the_end_of_a_run(
    shop: DesignFolder, tmp_path: Path
) -> None:
    place = tmp_path / "kept"
    for most, left, pressure in ((10**9, True, "30 bar"), (1, False, "31 bar")):
        shop.write({"tube.toml": TUBE.replace("30 bar", pressure)})
        assess([shop.root], shop.loaded, kept=KeptFolder(place, most))
        assert any(place.iterdir()) is left


def test_remedies_that_are_kept_are_not_sought_again(
    shop: DesignFolder, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The tubes of 45 bar; a second run finds what the first kept, and with another rack it is sought again."""
    shop.write({"tube.toml": TUBE.replace("30 bar", "45 bar")})
    kept = KeptFolder(tmp_path / "kept")
    sought: list[int] = []

    def remedied() -> list[list[str]]:
        with Processes(0) as processes:
            whole = processes.remedies

            def remedies(tasks: Any, *more: Any) -> Any:
                sought.append(len(tasks))
                return whole(tasks, *more)

            monkeypatch.setattr(processes, "remedies", remedies)
            found = assess([shop.root], shop.loaded, kept=kept, processes=processes)
            find_remedies(found, processes)
        return [[str(one) for one in found.remedies(check)] for check in found.checks]

    first = remedied()
    assert any(first)
    assert [number > 0 for number in sought] == [True]
    assert remedied() == first
    assert len(sought) == 1, "nothing was left to be sought"
    shop.replace("rack.toml", "106", "107")
    assert any(remedied())
    assert [number > 0 for number in sought] == [True, True]
