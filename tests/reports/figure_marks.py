"""The marks and the words of a drawing, and the cells of the table beside it."""

from __future__ import annotations

from xml.etree import ElementTree

from speclint.reports.pack.figures import Figure


def inked(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    """The marks of a drawing with a tag and an ink."""
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(tag) and ink in (one.get("class") or "").split()]


def number(mark: ElementTree.Element, name: str) -> float:
    return float(mark.get(name, "nan"))


def texts(figure: Figure) -> list[str]:
    root = ElementTree.fromstring(figure.drawing)
    return [one.text or "" for one in root.iter() if one.tag.endswith("}text")]


def size_of(figure: Figure, what: str) -> str:
    (found,) = (row[-1] for row in figure.rows if row[-2] == what)
    return found


def scale_of(figure: Figure, millimetres: str) -> float:
    """Units to the millimetre by the first scale bar, whose length stands beside it."""
    assert f"{millimetres} mm" in texts(figure)
    bars = inked(figure, "rect", "solid")[:3]
    assert len(bars) == 3
    return 5 * number(bars[0], "width") / float(millimetres)


def size_of_row(figure: Figure, what: str) -> tuple[str, ...]:
    return next(row[1:] for row in figure.rows if row[0] == what)
