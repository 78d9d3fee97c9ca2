"""What stands for the class of a kind answers as the class does, and imports it only for its fields."""

from __future__ import annotations

import pickle
import subprocess
import sys
from typing import Any, cast

import pytest

from speclint import specs
from speclint.specs import Cam, Catalogue, Component, Pin, Rocker, class_of
from speclint.specs.by_word import kind_by_word
from tests.each import each

#: Each class, and what stands for it.
KINDS = [(kind, cast(Any, getattr(specs, kind.__name__))) for kind in Catalogue().values()]


@each(KINDS, lambda pair: pair[0].kind)
def test_it_answers_as_the_class_does(pair: tuple[Any, Any]) -> None:
    """Of which kinds it is, what it is called and where it is, and which specs and classes are of it."""
    kind, named = pair
    assert (named.kind, named.words(), named.called) == (kind.kind, kind.words(), kind.called)
    assert named.is_one_of((kind.kind,))
    assert named.is_one_of(("component",)) == issubclass(kind, Component)
    assert (named.__module__, named.__qualname__) == (kind.__module__, kind.__qualname__)
    assert [issubclass(one, named) for one, _ in KINDS] == [issubclass(one, kind) for one, _ in KINDS]
    assert isinstance(kind.model_construct(id="a"), named)
    assert not isinstance(Component.model_construct(id="a"), named)
    assert not isinstance("a cam", named)


def test_a_kind_built_on_another_is_of_that_kind() -> None:
    class LongCam(Cam):
        """A cam of a family's own."""

        kind = "long-cam"

    cam: Any = LongCam.model_construct(id="a")
    assert not isinstance(cam, (Pin, Rocker))
    assert isinstance(cam, Pin | Cam)


def test_it_is_one_object_wherever_it_goes() -> None:
    assert getattr(specs, "Cam") is Cam  # noqa: B009 - asked of the package again
    assert pickle.loads(pickle.dumps(Cam)) is Cam


def test_it_is_the_class_where_it_is_called_or_built_upon() -> None:
    whole = class_of(Cam)
    assert type(Cam(id="a")) is whole is Catalogue()["cam"]
    assert class_of(whole) is whole

    class WideCam(Cam):
        """A cam of a family's own, with what it takes over."""

        kind = "wide-cam"

        @classmethod
        def words(cls) -> tuple[str, ...]:
            return ("wide", *super().words())

    assert issubclass(WideCam, whole)
    assert WideCam.words()[:3] == ("wide", "wide-cam", "cam")
    assert "lift" in WideCam.model_fields
    assert isinstance(WideCam.model_construct(id="a"), Cam)


def test_families_that_ask_by_word_still_do() -> None:
    assert specs.by_word.Cam is Cam
    with pytest.raises(AttributeError, match="no kind of spec is called Beat"):
        specs.by_word.Beat  # noqa: B018 - asked for alone


def test_what_is_no_kind_is_told_as_such() -> None:
    with pytest.raises(AttributeError, match="no kind of spec is called Beat"):
        kind_by_word("Beat")


def test_a_rule_on_it_imports_no_class() -> None:
    """The fields of the kind are read where something asks for them, and not before."""
    program = (
        "import sys\n"
        "from speclint import COMMON_PRACTICE, Grade, rule\n"
        "from speclint.families.soundness import faults_of_rule\n"
        "from speclint.specs import Cam\n"
        "@rule('cam.tried', title='a', on=Cam, grade=Grade.QUERY, cites=[COMMON_PRACTICE], why='b',"
        " leaves_out='c')\n"
        "def tried(cam, sheet):\n"
        "    'Nothing.'\n"
        "assert not list(faults_of_rule(tried))\n"
        "print('speclint.specs.kinds.cam' in sys.modules, 'lift' in Cam.model_fields)\n"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["False", "True"]
