"""What a bad part is: the rule and the part judged, a design, what is drawn instead, and how both come out."""

from __future__ import annotations

from typing import NamedTuple

Files = dict[str, str]
Change = tuple[str, str, str]


class Plant(NamedTuple):
    """A bad part: the rule and the part judged, a design, what is drawn instead, and how both come out."""

    says: str
    rule: str
    part: str
    files: Files
    changes: tuple[Change, ...]
    after: str = "finding"
    before: str = "conforms"
