"""An entry of the register on a page: its state with the reasons, and what it says, each under a word."""

from __future__ import annotations

from collections.abc import Iterable

from speclint.reports.page import Emphasis, Page

#: Columns of the words on the left.
COLUMN = 15


def state_on(page: Page, state: str, ink: Emphasis, named: str, reasons: Iterable[str]) -> None:
    """The state of an entry in capitals, which one it is, and why it stands so."""
    page.line("  ", (state.upper(), ink), f"  {named}")
    for index, reason in enumerate(reasons):
        page.entry("why" if index == 0 else "and", reason, indent=4, column=COLUMN, emphasis="strong")


def entry_on(page: Page, said: Iterable[tuple[str, str]]) -> None:
    """What an entry says, but for what is empty."""
    for label, text in said:
        if text:
            page.entry(label, text, indent=4, column=COLUMN)
