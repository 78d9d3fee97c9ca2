from __future__ import annotations

import pytest

from speclint.errors import FamilyError, QuantityError, SpeclintError
from speclint.errors.exceptions import ReaderLeft

_SIGPIPE = 13  # of POSIX; Windows has none, and the code is the same there


@pytest.mark.parametrize(
    ("kind", "code"), [(SpeclintError, 2), (FamilyError, 3), (ReaderLeft, 128 + _SIGPIPE)]
)
def test_the_exit_codes_are_those_that_the_guide_states(kind: type[SpeclintError], code: int) -> None:
    assert kind.exit_code == code


def test_the_text_of_a_quantity_that_cannot_be_read_is_its_message_alone() -> None:
    problem = QuantityError("5 has no unit", instead="5 mm")
    assert (str(problem), problem.instead) == ("5 has no unit", "5 mm")
