"""How the drawing of a component stands: its file as it is now, and its last reading."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from typing import Literal

from msgspec import Struct

from speclint.repository.design import Design
from speclint.repository.drawing_reading import DrawingReading, latest_reading
from speclint.specs import Component, Stated

DrawingWord = Literal["read", "changed", "other revision", "never read", "cannot be read", "read in future"]
_DIGITS = 12  # of a digest, as it is shown: enough to tell two files apart


class DrawingState(Struct, frozen=True):
    """The drawing of one component that names a file of it.

    ``reading`` is the last of this file for this component, None where it was never read for it; ``other`` is the last
    of another file. ``sha256`` is the digest of the file as it is, "" where ``fault`` says why it has none.
    ``revision`` is what the spec states, "" where it states none.
    """

    component: str
    file: str
    revision: str
    sha256: str
    fault: str
    reading: DrawingReading | None
    other: DrawingReading | None
    today: dt.date

    @property
    def word(self) -> DrawingWord:
        """How it stands, in a word: only ``read`` is in order."""
        if self.fault:
            return "cannot be read"
        if self.reading is None:
            return "never read"
        if self.reading.date > self.today:
            return "read in future"
        if self.reading.sha256 != self.sha256:
            return "changed"
        return "read" if self.reading.revision == self.revision else "other revision"

    @property
    def says(self) -> str:
        """The same in a sentence, with what to do."""
        if self.fault:
            return f"the file {self.file} {self.fault}"
        if self.reading is None:
            return f"{self.file} was never read against this spec{self._other_file()}{self._to_do()}"
        by = f"{self.reading.read_by} read it on {self.reading.date} ({self.reading.number})"
        if self.word == "read in future":
            return f"{self.file}: {by}, which is in the future{self._to_do()}"
        if self.word == "changed":
            was, now = self.reading.sha256[:_DIGITS], self.sha256[:_DIGITS]
            return f"{self.file} changed after {by}: its digest was {was}, is {now}{self._to_do()}"
        if self.word == "other revision":
            was_at, is_at = _at(self.reading.revision), _at(self.revision)
            return f"{self.file}: {by} {was_at}, and the spec is {is_at}{self._to_do()}"
        return f"{self.file}: {by} {_at(self.revision)}, digest {self.sha256[:_DIGITS]}"

    @property
    def briefly(self) -> str:
        """How it stands, for a list of drawings."""
        if self.fault or self.reading is None:
            return self.fault or "never read"
        by = f"{self.reading.read_by}, {self.reading.date}"
        return {
            "changed": f"changed since it was read by {by}",
            "other revision": f"read {_at(self.reading.revision)} by {by}",
            "read in future": f"to be read by {by}",
        }.get(self.word, f"read by {by}")

    @property
    def rests_on(self) -> tuple[str, ...]:
        """All that it hangs on, as text: it is the same while nothing of that changes."""
        last = (self.reading, self.other)
        return (self.file, self.revision, self.sha256, self.fault, self.word, *map(repr, last))

    def _other_file(self) -> str:
        return f" ({self.other.number} is of {self.other.file})" if self.other else ""

    def _to_do(self) -> str:
        return f"; read it against the spec, then: speclint read {self.component} --by NAME"


def _at(revision: str) -> str:
    return f"at revision {revision}" if revision else "without a revision"


def drawing_state(
    component: Component, design: Design, readings: Iterable[DrawingReading], today: dt.date
) -> DrawingState | None:
    """How the drawing of a component stands on a day; None where no file of it is named. Reads the file."""
    if not isinstance(component.drawing_file, Stated):
        return None
    file = component.drawing_file.value
    found, every = design.drawing_files.state(file), tuple(readings)
    return DrawingState(
        component.id,
        file,
        component.revision.value if isinstance(component.revision, Stated) else "",
        found.sha256,
        found.fault,
        latest_reading(every, component.id, file),
        latest_reading(every, component.id),
        today,
    )
