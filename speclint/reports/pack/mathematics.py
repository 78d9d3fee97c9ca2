"""Formulae as MathML, which every browser sets without help: by latex2mathml from the equations' own notation."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from html import escape
from xml.etree import ElementTree

from speclint.quantities import as_written, sides
from speclint.reports.pack.notation import latex
from speclint.reports.printable import visible
from speclint.rules import Step

_SPACE = "http://www.w3.org/1998/Math/MathML"
_ROW, _IDENTIFIER = f"{{{_SPACE}}}mrow", f"{{{_SPACE}}}mi"
_OPERATOR = f"{{{_SPACE}}}mo"
_BRACKETS = ("(", ")", "[", "]")  # MathML Core's dictionary of operators has them as fences that stretch
#: Letters to a line between the margins of A4 paper, in a column, and how wide signs and indices are against a letter.
_LINE = 80.0
_COLUMN = 24.0  # letters that the column of values holds
_SIGN = 1.2
_SCRIPT = 0.75
_LEAVES = frozenset({"mi", "mn", "mo", "mtext", "mspace"})
_TAG = re.compile("<[^>]*>")
#: Stands for a value until the values of a sheet are put in; letters that no equation has.
_HOLE = re.compile("\ue000([0-9]+)\ue001")


#: A whole equation or symbol; or the right-hand side of an equation with the names that values replace.
Piece = str | tuple[str, tuple[str, ...]]
_known: dict[Piece, str] = {}


def equation(text: str) -> str:
    """An equation as MathML; plain text where the notation cannot be read or a line would not hold it."""
    return _set(visible(text))


@cache
def wide_equation(text: str) -> str:
    """The same for a place that scrolls sideways, however wide it gets; plain text where it cannot be read."""
    try:
        return _mathml(latex(visible(text)))
    except (ValueError, RecursionError):
        return f"<span class=plain>{escape(visible(text))}</span>"


@cache
def symbol(text: str) -> str:
    """A symbol with its equals sign; as plain text, which wraps, where the column of values would not hold it."""
    page = _set(visible(f"{text} ="))
    return page if _fits(page, _COLUMN) else f"<span class=plain>{escape(visible(text))} =</span>"


def filled(text: str, values: Mapping[str, str]) -> str:
    """The right-hand side of an equation with values in place of its symbols, as MathML.

    "" where a line would not hold it: MathML does not wrap.
    """
    right = _right(visible(text))
    names = tuple(values)
    shown = [escape(visible(value)) for value in values.values()]
    page = _HOLE.sub(lambda found: _value(shown[int(found[1])]), _template(right, names))
    return page if _fits(page) else ""


def _fits(page: str, room: float = _LINE) -> bool:
    if not page.startswith("<math") or _letters_at_most(page) <= room:
        return True
    return _letters(ElementTree.fromstring(page)) <= room


def _letters_at_most(page: str) -> float:
    """How wide it would be with nothing above or below anything else: quick to tell, and mostly enough."""
    signs = page.count("<mo") + page.count("<mfrac") + page.count("<msqrt")
    return len(_TAG.sub("", page)) + _SIGN * signs


def _letters(node: ElementTree.Element) -> float:
    """About how many letters wide a piece of MathML is: a fraction is as wide as its wider half."""
    if node.tag in _LEAVES:
        return len(node.text or "") + (_SIGN if node.tag == "mo" else 0.0)
    widths = [_letters(child) for child in node]
    if node.tag == "mfrac":
        return max(widths) + _SIGN
    if node.tag in ("msub", "msup", "msubsup"):
        return widths[0] + _SCRIPT * max(widths[1:])
    return sum(widths) + (_SIGN if node.tag == "msqrt" else 0.0)


def _value(shown: str) -> str:
    return f"({shown})" if shown.startswith("−") else shown


def _set(text: str) -> str:
    if text not in _known:
        _known[text] = _whole(text)
    return _known[text]


def _template(right: str, names: tuple[str, ...]) -> str:
    """The right-hand side with a hole for each value, converted once for all sheets that use the formula."""
    key = (right, names)
    if key not in _known:
        _known[key] = _with_holes(right, names)
    return _known[key]


def pieces(steps: Iterable[Step]) -> list[Piece]:
    """What the sheets of some steps will have to be set, each once."""
    found: dict[Piece, None] = {}
    for step in steps:
        if step.symbol:
            found[visible(f"{step.symbol} =")] = None
        if step.kind == "worked":
            whole = visible(step.expression)
            found[whole] = found[_right(whole), tuple(name for name, _, _ in step.filled)] = None
    return list(found)


def typeset(wanted: Sequence[Piece]) -> list[tuple[Piece, str]]:
    """Some pieces, set: for :func:`learn`, in this process or another."""
    return [(one, _set(one) if isinstance(one, str) else _template(*one)) for one in wanted]


def known() -> Mapping[Piece, str]:
    """All that is set so far in this process, by piece."""
    return _known


def learn(found: Iterable[tuple[Piece, str]]) -> None:
    """Know pieces that were set elsewhere."""
    _known.update(found)


def _whole(text: str) -> str:
    plain = f"<span class=plain>{escape(text)}</span>"
    try:
        page = _mathml(latex(text))
    except (ValueError, RecursionError):
        return plain
    return page if _fits(page) else plain


def _with_holes(right: str, names: tuple[str, ...]) -> str:
    numbers = {as_written(name): number for number, name in enumerate(names)}

    def hole(symbol: str) -> str:
        return rf"\text{{{chr(0xE000)}{numbers[symbol]}{chr(0xE001)}}}" if symbol in numbers else ""

    try:
        return _mathml(f"= {latex(right, hole)}")
    except (ValueError, RecursionError):
        return f"<span class=plain>= {escape(right)}</span>"


def _right(equation: str) -> str:
    return sides(equation)[1]


def _mathml(source: str) -> str:
    """MathML without what the browser does not need: names of the namespace, rows of one, blank attributes."""
    from latex2mathml.converter import convert

    root = ElementTree.fromstring(convert(source))
    _tidy(root)
    if [child.tag for child in root] == [_ROW]:
        root[:] = list(root[0])
    text = ElementTree.tostring(root, encoding="unicode")
    text = text.replace(f' xmlns:ns0="{_SPACE}"', "").replace("ns0:", "").replace(' display="inline"', "")
    return re.sub(r"\s+/>", "/>", text)


def _tidy(node: ElementTree.Element) -> None:
    if node.tag == _OPERATOR and node.text in _BRACKETS:
        node.attrib.clear()
    for index, child in enumerate(list(node)):
        _tidy(child)
        if child.tag != _ROW:
            continue
        if len(child) == 1:
            node[index] = child[0]
        elif len(child) > 1 and all(_is_upright(one) for one in child):
            node[index] = _name("".join(one.text or "" for one in child))


def _is_upright(node: ElementTree.Element) -> bool:
    return node.tag == _IDENTIFIER and node.attrib == {"mathvariant": "normal"}


def _name(text: str) -> ElementTree.Element:
    """A name of several letters, which MathML Core sets upright of itself."""
    name = ElementTree.Element(_IDENTIFIER)
    name.text = text
    return name
