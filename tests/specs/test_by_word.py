"""What stands for the class of a kind answers as the class does, and imports it only for its fields."""

from __future__ import annotations

import pickle
import subprocess
import sys
from typing import Any, cast

import pytest

from speclint.specs import Cam, Catalogue, Component, by_word
from tests.each import each

#: Each class, and what stands for it.
KINDS = [(kind, cast(Any, getattr(by_word, kind.__name__))) for kind in Catalogue().values()]


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
    assert not isinstance(cam, (by_word.Pin, by_word.Rocker))
    assert isinstance(cam, by_word.Pin | by_word.Cam)


def test_it_is_one_object_wherever_it_goes() -> None:
    assert by_word.Cam is by_word.Cam
    assert pickle.loads(pickle.dumps(by_word.Cam)) is by_word.Cam


def test_what_it_cannot_do_is_refused_or_left_to_the_class() -> None:
    assert type(by_word.Cam(id="a")) is Cam
    with pytest.raises(TypeError, match="is to be built on a class"):
        type("LongCam", (by_word.Cam,), {})
    with pytest.raises(AttributeError, match="no kind of spec is called Beat"):
        getattr(by_word, "Beat")  # noqa: B009 - for the checker of types there is one


def test_a_rule_on_it_imports_no_class() -> None:
    """The fields of the kind are read where something asks for them, and not before."""
    program = (
        "import sys\n"
        "from speclint import COMMON_PRACTICE, Grade, rule\n"
        "from speclint.families.soundness import faults_of_rule\n"
        "from speclint.specs import by_word\n"
        "@rule('cam.tried', title='a', on=by_word.Cam, grade=Grade.QUERY, cites=[COMMON_PRACTICE], why='b',"
        " leaves_out='c')\n"
        "def tried(cam, sheet):\n"
        "    'Nothing.'\n"
        "assert not list(faults_of_rule(tried))\n"
        "print('speclint.specs.kinds.cam' in sys.modules, 'lift' in by_word.Cam.model_fields)\n"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["False", "True"]
