"""A kind that is built on another is that kind too: for rules, links, tables by kind and temperatures in a duty."""

from __future__ import annotations

import re
import shutil
from importlib.metadata import EntryPoint
from pathlib import Path

import pytest

from speclint.checking import Check, assess
from speclint.families import Loaded, load_families
from speclint.families.loading import installed
from speclint.repository import Design
from speclint.specs import Spec
from speclint.testing import DesignFolder, installed_families, made_family
from tests.each import each
from tests.example import EXAMPLE, assessed, is_of_one
from tests.tubes import DUTY, TUBE, Rack, Tube, entry_point

PLUGINS = Path(__file__).parents[2] / "plugins"


def built_on(kind: type[Spec]) -> type[Spec]:
    """A kind of another word that adds nothing."""
    return type(
        f"Own{kind.__name__}",
        (kind,),
        {
            "kind": f"own-{kind.kind}",
            "called": kind.called,
            "__doc__": kind.__doc__,
            "__module__": kind.__module__,
        },
    )


def with_own_kinds(points: list[EntryPoint], kinds: list[type[Spec]]) -> Loaded:
    """Some families, and one that builds a kind of its own on each of some kinds."""
    own = [built_on(kind) for kind in kinds]
    return load_families([*points, made_family("own", own)])


def test_its_words_are_its_own_and_those_below_it_the_nearest_first() -> None:
    own = built_on(Tube)
    assert own.words() == ("own-tube", "tube", "component")
    assert own.is_one_of(["tube"])
    assert not own.is_one_of(["rack"])
    assert own.by_kind({"tube": 1, "component": 2}) == 1
    assert own.by_kind({"own-tube": 0, "tube": 1}) == 0
    with pytest.raises(LookupError, match="no own-tube"):
        own.by_kind({"rack": 1})


def test_rules_that_wait_for_a_kind_come_for_one_built_on_it(tmp_path: Path) -> None:
    loaded = with_own_kinds([entry_point("tubes")], [Tube, Rack])
    shop = DesignFolder(tmp_path, loaded).write(
        {
            "duty.toml": DUTY,
            "rack.toml": 'kind = "own-rack"\nhole = "106 mm"\n',
            "tube.toml": TUBE.replace('"tube"', '"own-tube"'),
        }
    )
    # by hand: 3 MPa (100.5 mm)/(104.5 mm − 100.5 mm) = 75.375 MPa of 100 MPa
    assert shop.only("tube.stress").utilisation == pytest.approx(0.75375)


def test_a_temperature_by_kind_is_that_of_kinds_built_on_it(tmp_path: Path) -> None:
    duty = 'kind = "duty"\n[cases.running.temperatures]\ntube = "80 °C"\n'
    loaded = with_own_kinds([entry_point("tubes")], [Tube])
    shop = DesignFolder(tmp_path, loaded).write(
        {"duty.toml": duty, "one.toml": 'kind = "own-tube"', "rack.toml": 'kind = "rack"'}
    )
    design = shop.assess().design
    assert design is not None
    case = design.specs["duty"].cases["running"]  # type: ignore[attr-defined]
    assert case.temperature_of(design.specs["one"]).nominal == pytest.approx(353.15)
    assert not hasattr(case.temperature_of(design.specs["rack"]), "nominal")


@pytest.mark.long
def test_an_engine_of_kinds_built_on_the_core_s_own_is_checked_alike(tmp_path: Path) -> None:
    """Every spec of example_specs but the duties, of a kind built on its own: each check of parts of one cylinder.

    Whatever they are linked to is of such a kind too.
    """
    kinds = [kind for word, kind in installed_families().kinds.items() if word != "duty"]
    copy = tmp_path / "engine"
    shutil.copytree(EXAMPLE, copy)
    for file in copy.rglob("*.toml"):
        text = file.read_text(encoding="utf-8")
        text = re.sub(r'^kind = "(?!duty")', 'kind = "own-', text, count=1, flags=re.MULTILINE)
        file.write_text(text, encoding="utf-8", newline="\n")
    folders = [copy / name for name in ("covers", "liners", "pipes", "seats", "springs", "tappets")]
    alike = assess(folders, with_own_kinds(installed(), kinds), only=_of_one_cylinder)
    assert alike.complaints == ()
    assert alike.design is not None
    plain = [check for check in assessed().checks if check.component in alike.design.selected]
    assert len(plain) > 500
    assert [_result(check) for check in alike.checks] == [_result(check) for check in plain]


def _of_one_cylinder(design: Design, _: object) -> set[str]:
    return set(filter(is_of_one, design.selected))


def _result(check: Check) -> tuple[object, ...]:
    """How a check came out, in words that a kind built on another shares with it."""
    says = check.says.replace("own-", "")
    return check.order, check.outcome, check.grade, says, check.utilisation, check.governing, check.missing


@each(sorted(PLUGINS.rglob("*.py")), lambda path: path.stem)
def test_no_family_asks_for_the_word_of_a_kind_itself(path: Path) -> None:
    """``is_one_of`` and ``by_kind`` know what a kind is built on; its bare word does not."""
    asked = re.findall(
        r"\b(?:component|part|spec)\.kind (?:==|!=|in|not in)|\[\w+\.kind\]", path.read_text("utf-8")
    )
    assert asked == []
