"""One test for many things alike: quicker than a test for each, and every thing that fails is named."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

Thing = TypeVar("Thing")


def each(
    things: Iterable[Thing], name: Callable[[Thing], str] = str
) -> Callable[[Callable[[Thing], None]], Callable[[], None]]:
    """Make a test of one thing into a test of all of them, which fails with every thing of which it does not hold."""
    tried = list(things)

    def of_all(test: Callable[[Thing], None]) -> Callable[[], None]:
        def together() -> None:
            assert tried, "nothing to try"
            failed = []
            for thing in tried:
                try:
                    test(thing)
                except Exception as error:  # the others are tried all the same
                    failed.append(f"{name(thing)}: {type(error).__name__}: {error}")
            assert not failed, "\n".join(failed)

        together.__name__, together.__doc__, together.__module__ = (
            test.__name__,
            test.__doc__,
            test.__module__,
        )
        return together

    return of_all
