"""What the docstring of a formula says, taken apart: its first line, each symbol, its range, and the rest.

Symbols are written in one of two ways: as in "``d``, ``D`` bore and outside [m]; ``e`` offset [m]", or as in
"d: diameter, m. p: pressure, Pa." Whatever is written otherwise stays among the rest, and none of it is lost.
"""

from __future__ import annotations

import ast
import inspect
import re
from collections.abc import Callable, Collection, Iterator, Mapping
from types import CodeType
from typing import Any

from msgspec import Struct

from speclint.equations import described
from speclint.quantities import as_written

_JOIN = re.compile(r"(?:,|and|or|\s)*")
_QUOTED = re.compile(r"``(\w+)``")
_LISTED = re.compile(r"(?:(?<=^Parameters: )|(?<=; )|(?<=, ))(\w+)(?=,? )")
_HEADS = re.compile(r"(?:^|(?<=[.;] ))(\w+(?:(?:, | and )\w+)*):")
_BEGINS = re.compile(r"(?:^|[,;.:(]|\band|\bor) ?$")
_UNIT = re.compile(r"\s*\[[^\]]*\]")
_SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[A-Z`(])")
_ENDS = re.compile(r"\b(?:Returns?:?|Raises?|Valid)\s|(?<=[.])\s+(?=[A-Z][a-z])")
_OTHERS = re.compile(r"``(\w+)``|:func:`(\w+)`")
_CODE = re.compile(r"``([^`]+)``|:func:`([^`]+)`|``([^`]+)``\(\)")
_NOTHING = re.compile(r"\b0(?:\.0)? \* \w+|\b\w+ \* 0(?:\.0)?\b")
_OUTSIDE = "There is no result"
_BESIDE = re.compile(r"Raises OutOfRange(?: outside| otherwise)?[.]?")
_DEEP = 3  # a formula whose arguments are those of another, which are those of a third


class Symbol(Struct, frozen=True):
    """Some symbols of an equation with one SI unit and one meaning; "" where the docstring gives none by itself."""

    names: tuple[str, ...]
    unit: str
    means: str


class FormulaText(Struct, frozen=True):
    """What a formula says of itself."""

    summary: str
    symbols: tuple[Symbol, ...]
    result: str
    ranges: tuple[str, ...]
    rest: str
    example: str


def text_of(formula: Callable[..., Any]) -> FormulaText:
    """The docstring of a formula, taken apart."""
    about = described(formula)
    summary, paragraphs, example = _parts(formula)
    names = [*about.units, *about.other_arguments]
    meanings = _meanings_with_others(formula, names, _DEEP)
    result, ranges, rest = "", [], []
    whole = set(names) <= set(meanings)
    for paragraph in paragraphs:
        for sentence in _SENTENCE.split(_without_symbols(paragraph, names) if whole else paragraph):
            if sentence.startswith("Returns"):
                result = sentence.removeprefix("Returns").removeprefix(":").strip(" .")
            elif sentence.startswith(("Raises", "Valid")):
                ranges.append(_range(sentence))
            elif sentence.strip():
                rest.append(plain(sentence))
    ranges = ranges or [f"{_OUTSIDE} unless {one}." for one in _required(formula)]
    symbols = tuple(_symbols(names, about.units, meanings))
    return FormulaText(plain(summary), symbols, plain(result), tuple(ranges), " ".join(rest), example)


def _range(sentence: str) -> str:
    """The sentence on the range of a formula, in words of its own."""
    if _BESIDE.fullmatch(sentence):
        return "The range of each symbol stands beside it; outside of it there is no result."
    return plain(sentence).replace("Raises OutOfRange", _OUTSIDE)


def _parts(formula: Callable[..., Any]) -> tuple[str, list[str], str]:
    """The first paragraph, the others without the equation, and the example that is run."""
    prose, example = [], []
    for block in (inspect.getdoc(formula) or "").split("\n\n"):
        lines = block.splitlines()
        at = next((n for n, line in enumerate(lines) if line.startswith(">>>")), len(lines))
        prose.append(" ".join(" ".join(lines[:at]).split()))
        example += lines[at:]
    equation = " ".join(described(formula).equation.split())
    summary, *others = [one for one in prose if one] or [""]
    return summary, [one for one in others if one != equation], "\n".join(example)


def _meanings_with_others(formula: Callable[..., Any], names: Collection[str], deep: int) -> dict[str, str]:
    """The meaning of each argument; where a formula says that its arguments are those of another, from there."""
    _, paragraphs, _ = _parts(formula)
    found: dict[str, str] = {}
    for paragraph in paragraphs:
        found |= dict(_meanings(paragraph, names))
    if deep and set(names) - set(found):
        for one in _OTHERS.finditer(" ".join(paragraphs)):
            other = vars(inspect.getmodule(formula)).get(one[1] or one[2])
            if other is not None and hasattr(other, "described"):
                found = _meanings_with_others(other, names, deep - 1) | found
    return found


def _meanings(paragraph: str, names: Collection[str]) -> Iterator[tuple[str, str]]:
    """Each argument of which a paragraph gives the meaning, with that."""
    marks = _marks(paragraph, names)
    waiting: list[str] = []
    for number, (name, _, end) in enumerate(marks):
        following = marks[number + 1][1] if number + 1 < len(marks) else len(paragraph)
        says = paragraph[end:following]
        waiting.append(name)
        if _JOIN.fullmatch(says):
            continue
        means = _meaning(says)
        yield from ((one, means) for one in waiting if means)
        waiting = []


def _meaning(says: str) -> str:
    """What stands after a symbol, up to the sentence that is of something else, without its unit."""
    ended = _ENDS.split(says.strip(), maxsplit=1)[0]
    bare = _UNIT.sub("", ended).strip(" ,;.:")
    return plain(re.sub(r",? (?:and|or)$", "", bare))


def _marks(paragraph: str, names: Collection[str]) -> list[tuple[str, int, int]]:
    """Where the arguments are named that a paragraph explains: each with the ends of its name."""
    quoted = [one for one in _QUOTED.finditer(paragraph) if one[1] in names]
    found = [one for one in quoted if _BEGINS.search(paragraph[max(one.start() - 5, 0) : one.start()])]
    if not found and paragraph.startswith("Parameters: "):
        found = [one for one in _LISTED.finditer(paragraph) if one[1] in names]
    if found:
        return [(one[1], one.start(), one.end()) for one in found]
    heads = [(one, re.split(", | and ", one[1])) for one in _HEADS.finditer(paragraph)]
    return [
        (inner, one.start(), one.end())
        for one, together in heads
        if set(together) <= set(names)
        for inner in together
    ]


def _without_symbols(paragraph: str, names: Collection[str]) -> str:
    """A paragraph without the meanings of symbols at its beginning."""
    marks = _marks(paragraph, names)
    if not marks or marks[0][1] > len("Parameters: "):
        return paragraph
    last = marks[-1][2]
    ended = _ENDS.search(paragraph, last)
    return paragraph[ended.start() :].strip() if ended else ""


def _symbols(
    names: Collection[str], units: Mapping[str, str], meanings: Mapping[str, str]
) -> Iterator[Symbol]:
    """The symbols in the order of the arguments; those of one unit and one meaning side by side."""
    grouped: dict[tuple[str, str, str], list[str]] = {}
    for name in names:
        means, unit = meanings.get(name, ""), units.get(name, "")
        grouped.setdefault((means, unit, "" if means else name), []).append(as_written(name))
    for (means, unit, _), together in grouped.items():
        yield Symbol(tuple(together), unit, means.removesuffix(f", {unit}") if unit else means)


def plain(text: str) -> str:
    """Words of a docstring without its marks."""
    return " ".join(_CODE.sub(lambda one: next(filter(None, one.groups())), text).split())


def _required(formula: Callable[..., Any]) -> Iterator[str]:
    """The conditions that the code of a formula requires, where its docstring has no sentence on its range."""
    code: CodeType = formula.__code__
    if "require" not in code.co_names:
        return
    for node in ast.walk(ast.parse(inspect.cleandoc(inspect.getsource(formula)))):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "require":
            yield _NOTHING.sub("0", ast.unparse(node.args[0])).replace("<=", "≤").replace(">=", "≥")
