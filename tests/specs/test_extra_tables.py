"""Tables that families add to kinds, and the kinds with them: copied, sent to another process, and refused."""

from __future__ import annotations

import copy
import pickle

import pytest

from speclint.errors import FamilyError
from speclint.specs import Component, ExtraTable, Shaft, class_of
from speclint.specs.extra_tables import added_to, extended
from speclint.specs.kinds.piston import Piston
from tests.specs.made_up import Foot


def test_the_tables_of_a_kind_are_those_added_to_it_and_to_what_it_is_built_on() -> None:
    tables = {
        "second": [ExtraTable(Component, Foot)],
        "first": [ExtraTable(Shaft, Foot), ExtraTable(Piston, Foot)],
    }
    assert added_to(Shaft, tables) == (("first", Foot), ("second", Foot))
    assert added_to(Component, tables) == (("second", Foot),)


def test_a_kind_with_a_table_is_sent_whole_to_another_process() -> None:
    kind = extended(Shaft, (("wheelsets", Foot),))
    spec = kind(id="shaft", wheelsets=Foot.unstated())  # type: ignore[call-arg]  # the key that was added
    for same in (pickle.loads(pickle.dumps(spec)), copy.deepcopy(spec)):
        assert type(same) is kind
        assert same.id == "shaft"
        assert isinstance(same.table_of(Foot), Foot)
    assert kind.kind == "shaft"
    assert issubclass(kind, Shaft)
    assert extended(Shaft, ()) is class_of(Shaft)


def test_a_kind_without_the_table_says_so() -> None:
    with pytest.raises(LookupError, match="no family adds a table Foot to a shaft"):
        Shaft(id="shaft").table_of(Foot)


@pytest.mark.parametrize("name", ["diameter", "kind", "under"])
def test_a_family_that_bears_the_name_of_a_key_is_refused(name: str) -> None:
    with pytest.raises(FamilyError, match=f'family {name}: a shaft has "{name}" already'):
        extended(Shaft, ((name, Foot),))
