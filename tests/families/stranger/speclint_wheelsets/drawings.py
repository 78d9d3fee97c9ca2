"""An axle from the side: its body between the seats of its wheels, to one scale."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Assessment
from speclint.reports import Figure, Paper, millimetres, niced, said, specs_of
from speclint.specs import Shaft
from speclint_wheelsets.kinds import Seats

_WIDE, _HIGH, _MIDDLE = 600.0, 200.0, 90.0
_BODY = 260.0  # units between the seats: no spec states that length


def axle_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each shaft whose seats are stated."""
    for shaft in specs_of(assessment, Shaft):
        seats = shaft.table_of(Seats)
        body = millimetres(shaft.diameter)
        seat, long = millimetres(seats.seat), millimetres(seats.seat_length)
        if body and seat and long:
            yield _figure(shaft, seats, (body, seat, long))


def _figure(shaft: Shaft, seats: Seats, sizes: tuple[float, float, float]) -> Figure:
    body, seat, long = sizes
    scale = min(120.0 / max(body, seat), 140.0 / long)
    paper = Paper(
        f"axle-{shaft.id}", f"Axle {shaft.id}", f"body {body:g} mm, seats {seat:g} mm", _WIDE, _HIGH
    )
    left = (_WIDE - _BODY) / 2
    paper.box((left, _MIDDLE - body * scale / 2), _BODY, body * scale)
    for x in (left - long * scale, left + _BODY):
        paper.box((x, _MIDDLE - seat * scale / 2), long * scale, seat * scale)
    paper.scale_bar((20, _HIGH - 16), scale, niced(100 / scale))
    return Figure(
        paper.name,
        shaft.id,
        f"{shaft.id}: the axle and its seats",
        "Diameters and lengths of the seats to one scale; no spec states the length between them.",
        paper.markup(),
        (("seat", said(seats.seat)), ("length of a seat", said(seats.seat_length))),
        ("what", "size"),
    )
