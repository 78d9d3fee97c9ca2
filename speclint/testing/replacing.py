"""For tests that replace a function of a family, as a rule or a formula calls it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from speclint.rules import twins_put_away


@contextmanager
def functions_replaced() -> Iterator[None]:
    """A part of a test in which functions that rules and formulae call are replaced by others.

    A rule is run on copies of its functions, which are made once and kept, with all that they call. Inside of this they
    are made anew, so that a function in the place of another counts; what was made inside goes with it, so that no
    test that follows meets it. Replace the function inside, or before, and put it back before the end or after.
    """
    with twins_put_away():
        yield
