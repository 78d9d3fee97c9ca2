"""The reviewer of the settings whom a name means."""

from __future__ import annotations

import unicodedata

from speclint.repository import Reviewer, Settings


def reviewer_called(name: str, settings: Settings) -> Reviewer | None:
    """A reviewer of the settings by name; case, dots and spaces do not matter."""
    return next(
        (one for called, one in settings.reviewers.items() if _letters(called) == _letters(name)), None
    )


def _letters(name: str) -> str:
    plain = unicodedata.normalize("NFKC", name).casefold()
    return "".join(letter for letter in plain if letter.isalnum())
