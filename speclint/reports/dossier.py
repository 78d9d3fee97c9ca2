"""The record for whoever certifies the engine, in words, as Markdown and as data.

Of each pressure part and safety part: which piece was made, to which revision, with which certificate, welds, heat
treatments, examinations and tests; which departures were conceded by whom; which sheets its safety rests on; what is
open.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from msgspec import Struct

from speclint.checking import Assessment, Check
from speclint.made import DimensionMade, PartInDossier, PieceMade, dossier
from speclint.quantities import Measure
from speclint.reports.accepted import Standings, standings_of
from speclint.reports.finding_lines import called
from speclint.reports.markdown_text import marked
from speclint.reports.phrases import CAUTIONS, NO_CODES, count, share_used
from speclint.specs import MadePart, NotStated, SpecTable, Stated

SCHEMA = "speclint.dossier/1"
#: The tables of records in the order of the making, each by what it is called.
_RECORDS = {
    "welds": "weld",
    "heat_treatments": "heat treatment",
    "examinations": "examination",
    "entries": "entry into its bore",
    "tightenings": "tightening",
    "hydraulic_tests": "hydraulic test",
    "steamings": "measured in steam",
}
NO_PIECE = "no part as made is on record"


class DossierPart(Struct, frozen=True):
    """A part of the record in words: each heading with its lines, in order."""

    name: str
    title: str
    why: str
    pieces: int
    sections: tuple[tuple[str, tuple[str, ...]], ...]

    @property
    def open(self) -> int:
        """How much is open."""
        return self._lines(OPEN)

    @property
    def conceded(self) -> int:
        """How many departures were conceded."""
        return self._lines(CONCEDED)

    def _lines(self, named: str) -> int:
        return next((len(lines) for heading, lines in self.sections if heading == named), 0)


PIECES, CONCEDED, SHEETS, OPEN = "Made", "Departures conceded", "Sheets", "Open"


class DossierSaid(Struct, frozen=True):
    """The whole record in words."""

    works: str
    codes: tuple[str, ...]
    parts: tuple[DossierPart, ...]
    not_read: tuple[str, ...]
    cautions: tuple[str, ...]
    said: str


def dossier_said(drawn: Assessment, conceded: Standings | None = None) -> DossierSaid:
    """The record in words; ``conceded`` are the concessions where they are known already."""
    standing = standings_of(drawn) if conceded is None else conceded
    parts = tuple(_part(drawn, one, standing) for one in dossier(drawn)) if drawn.design else ()
    settings = drawn.settings
    codes = settings.local_codes if settings is not None else None
    named = (*codes.pressure, *codes.railway) if codes is not None else ()
    return DossierSaid(
        _works(drawn),
        named or (NO_CODES,),
        parts,
        tuple(str(one) for one in drawn.complaints),
        CAUTIONS,
        _counted(parts),
    )


def _works(drawn: Assessment) -> str:
    name = drawn.settings.works.name if drawn.settings is not None else None
    return str(name.value) if isinstance(name, Stated) else "a works that is not named"


def _counted(parts: Iterable[DossierPart]) -> str:
    some = list(parts)
    without = sum(not one.pieces for one in some)
    still = sum(bool(one.open) for one in some)
    are = "holds pressure or is a safety part" if len(some) == 1 else "hold pressure or are safety parts"
    return (
        f"Of {count(len(some), 'part')} that {are}, {without} {'is' if without == 1 else 'are'} without a part as made "
        f"on record, and {still} {'has' if still == 1 else 'have'} something open."
    )


def _part(drawn: Assessment, one: PartInDossier, standing: Standings) -> DossierPart:
    sections = {
        PIECES: [line for piece in one.pieces for line in _piece(piece)] or [NO_PIECE],
        CONCEDED: list(_conceded(one, standing)),
        SHEETS: [_sheet(check) for check in one.sheets],
        OPEN: list(_open(one, standing)),
    }
    lines = tuple((heading, tuple(some)) for heading, some in sections.items() if some)
    return DossierPart(one.part.id, called(drawn, one.part.id), ", ".join(one.why), len(one.pieces), lines)


def _piece(piece: PieceMade) -> Iterator[str]:
    made = piece.made
    old = ", an old revision" if piece.old_revision else ""
    yield (
        f"{made.id}: serial number {_word(made.serial)}, made to revision {_word(made.made_to)}{old}, by "
        f"{_word(made.maker)}; {'fitted' if piece.fitted else 'not said to be fitted'}"
    )
    document = made.certificate
    yield (
        f"certificate EN 10204 type {_word(document.type)}, number {_word(document.number)}, heat "
        f"{_word(document.heat)}, {_word(document.material)}, by {_word(document.by)}, {_word(document.date)}"
    )
    for table, what in _RECORDS.items():
        for name, record in getattr(made, table).items():
            yield f"{what} {name}: {', '.join(_stated(record)) or 'nothing is stated'}"
    yield from (f"departure: {_departure(one)}" for one in piece.departures)


def _departure(one: DimensionMade) -> str:
    drawn = one.drawn.text if one.drawn is not None else "not stated"
    return (
        f"{one.key} measured {one.size.band(0.0).text}, U = {one.size.written}, drawn {drawn}: {one.verdict}"
    )


def _stated(record: SpecTable) -> Iterator[str]:
    for key, value in record:
        if isinstance(value, Stated | Measure):
            said = value.text if isinstance(value, Measure) else str(value.value)
            yield f"{key.replace('_', ' ')} {said}"


def _word(value: Stated[Any] | NotStated) -> str:
    return "not stated" if isinstance(value, NotStated) else str(value.value)


def _orders(one: PartInDossier) -> set[str]:
    return {one.part.id, *(piece.made.id for piece in one.pieces)}


def _conceded(one: PartInDossier, standing: Standings) -> Iterator[str]:
    names = _orders(one)
    for (component, rule), found in sorted(standing.items()):
        if component in names:
            entry = found.concession
            yield (
                f"{entry.number}: {rule} on {component} ({entry.grade}), by {entry.accepted_by}, {entry.role}, "
                f"{entry.date} until {entry.until}: {found.state}; {entry.grounds}"
            )


def _sheet(check: Check) -> str:
    used = "" if check.utilisation is None else f", uses {share_used(check.utilisation)} of its limit"
    return f"{check.rule.name}, edition {check.rule.edition}: {check.outcome}{used}; fingerprint {check.fingerprint}"


def _open(one: PartInDossier, standing: Standings) -> Iterator[str]:
    """What is in the way without a concession that holds, and the pieces that are not there."""
    if not one.pieces:
        yield NO_PIECE
    if len(one.pieces) > 1:
        yield f"{len(one.pieces)} parts as made, and not one of them is said to be fitted"
    for check in (*one.open, *(check for piece in one.pieces for check in piece.checks)):
        found = standing.get(check.order)
        grade = check.stands_in_the_way
        if grade is not None and not (found is not None and found.holds):
            yield f"{check.rule.name} on {check.component} ({grade.word}): {check.actual}"


def dossier_markdown(drawn: Assessment) -> str:
    """The record as Markdown, a heading for each part."""
    found = dossier_said(drawn)
    lines = [f"# {marked(HEADING)}: {marked(found.works)}", "", marked(found.said), ""]
    lines += [f"- {marked(one)}" for one in (*found.codes, *found.not_read)] + [""]
    for part in found.parts:
        lines += [f"## {marked(part.title)}", "", f"{marked(part.why)}.", ""]
        for heading, some in part.sections:
            lines += [f"### {heading}", "", *(f"- {marked(line)}" for line in some), ""]
    lines += [f"*{marked(caution)}*\n" for caution in found.cautions]
    return "\n".join(lines).rstrip() + "\n"


HEADING = "Record for certification"


def dossier_data(drawn: Assessment) -> dict[str, Any]:
    """The same as plain data, schema ``speclint.dossier/1``."""
    standing = standings_of(drawn)
    return {
        "schema": SCHEMA,
        "parts": [_data(one, standing) for one in dossier(drawn)] if drawn.design else [],
        "not_read": [str(one) for one in drawn.complaints],
        "exit": dossier_exit_code(drawn),
    }


def dossier_exit_code(drawn: Assessment) -> int:
    """0 where nothing is open, 1 where something is or there is no such part, 2 where something could not be read."""
    if any(one.could_not_run for one in drawn.checks):
        return 3
    if drawn.complaints or drawn.design is None:
        return 2
    found, standing = dossier(drawn), standings_of(drawn)
    return int(not found or any(next(_open(one, standing), "") for one in found))


def _data(one: PartInDossier, standing: Standings) -> dict[str, Any]:
    return {
        "part": one.part.id,
        "why": list(one.why),
        "revision": None if isinstance(one.part.revision, NotStated) else one.part.revision.value,
        "pieces": [_piece_data(piece) for piece in one.pieces],
        "conceded": [
            {
                "number": found.concession.number,
                "component": component,
                "rule": rule,
                "by": found.concession.accepted_by,
                "until": found.concession.until.isoformat(),
                "state": found.state,
            }
            for (component, rule), found in sorted(standing.items())
            if component in _orders(one)
        ],
        "sheets": [
            {"rule": check.rule.name, "outcome": check.outcome, "fingerprint": check.fingerprint}
            for check in one.sheets
        ],
        "open": list(_open(one, standing)),
    }


def _piece_data(piece: PieceMade) -> dict[str, Any]:
    made: MadePart = piece.made
    return {
        "part": made.id,
        "serial": _or_none(made.serial),
        "made_to": _or_none(made.made_to),
        "old_revision": piece.old_revision,
        "fitted": piece.fitted,
        "certificate": {
            "type": _or_none(made.certificate.type),
            "number": _or_none(made.certificate.number),
            "heat": _or_none(made.certificate.heat),
        },
        "records": [
            {"of": table, "name": name, "states": list(_stated(record))}
            for table in _RECORDS
            for name, record in getattr(made, table).items()
        ],
        "departures": [_departure(one) for one in piece.departures],
    }


def _or_none(value: Stated[Any] | NotStated) -> str | None:
    return None if isinstance(value, NotStated) else str(value.value)
