"""How a file of a design is made wrong: bytes, keys, units, links, numbers, nesting."""

from __future__ import annotations

import random
import re
from collections.abc import Callable

_VALUE = re.compile(rb'^[ \t]*([A-Za-z0-9_."-]+)[ \t]*=[ \t]*(.+)$', re.MULTILINE)
_QUANTITY = re.compile(rb'"([0-9][^"\n]*)"')
_NUMBER = re.compile(rb"[0-9]+(?:\.[0-9]+)?")
_WORD = re.compile(rb'"([a-z][a-z0-9-]*)"')
_UNITS = [
    "m",
    "mm",
    "µm",
    "in",
    "thou",
    "ft",
    "km",
    "cm",
    "kg",
    "g",
    "t",
    "lb",
    "N",
    "kN",
    "MN",
    "lbf",
    "bar",
    "psi",
    "MPa",
    "Pa",
    "GPa",
    "°C",
    "°F",
    "K",
    "%",
    "%%",
    "HB",
    "rev/min",
    "rad/s",
    "m/s",
    "mph",
    "N·m",
    "N/mm",
    "kg/s",
    "s",
    "h",
    "°",
    "rad",
    "m²",
    "mm²",
    "m³",
    "l",
    "W/(m·K)",
    "m**9**9",
    "m²²²²",
    "parsec",
    "furlong",
    "banana",
    "H8",
    "s6",
]
_NUMBERS = [
    "0",
    "-1",
    "-0",
    "1e400",
    "1e-400",
    "1e30",
    "1e-30",
    "1e15",
    "99999999999999999999",
    "0.0000001",
    "1e10000000",
    "nan",
    "inf",
    "-inf",
    "1/0",
    "1/3",
    "3",
    "7/8",
    "٣",
    "1.5.2",
    "0x10",
    "1_000",
    "+5",
    "1e5",
    "1000000",
    "20..10",
    "5..5",
    "5±6",
    "5±0.1",
]
_BYTES = (
    b"\x00",
    b"\xff",
    b"\xef\xbb\xbf",
    "\u202e".encode(),
    b"\r",
    b"\n",
    b'"',
    b"[",
    b"]",
    b"=",
    b"#",
    b"\\",
    b"'",
)
_TEXTS = (
    b'""',
    b'" "',
    b"true",
    b"[]",
    b"{}",
    b"0",
    b"-5",
    b"1e400",
    b"2026-02-30",
    b"2027-01-01",
    b"9999-12-31",
)

Mutation = Callable[[bytes, random.Random], bytes]


def mutate(text: bytes, chance: random.Random) -> tuple[bytes, str]:
    """One to three mutations of a text, and their names."""
    names = []
    for _ in range(chance.choice((1, 1, 1, 2, 3))):
        mutation = chance.choice(MUTATIONS)
        text = mutation(text, chance)
        names.append(mutation.__name__.strip("_"))
    return text, " ".join(names)


def _bytes(text: bytes, chance: random.Random) -> bytes:
    at = chance.randrange(len(text) + 1)
    how = chance.randrange(4)
    if how == 0:
        return text[:at] + chance.choice(_BYTES) + text[at:]
    if how == 1:
        return text[:at] + text[at + chance.choice((1, 3, 50)) :]
    if how == 2:
        return text[:at] + bytes([chance.randrange(256)]) + text[at + 1 :]
    return text[:at]


def _lines(text: bytes, chance: random.Random) -> bytes:
    lines = text.split(b"\n")
    one, other = chance.randrange(len(lines)), chance.randrange(len(lines))
    how = chance.randrange(3)
    if how == 0:
        del lines[one]
    elif how == 1:
        lines.insert(other, lines[one])
    else:
        lines[one], lines[other] = lines[other], lines[one]
    return b"\n".join(lines)


def _replaced(
    text: bytes, pattern: re.Pattern[bytes], group: int, new: Callable[[bytes], bytes], chance: random.Random
) -> bytes:
    found = list(pattern.finditer(text))
    if not found:
        return text
    one = chance.choice(found)
    return text[: one.start(group)] + new(one[group]) + text[one.end(group) :]


def _keys(text: bytes, chance: random.Random) -> bytes:
    others = [found[1] for found in _VALUE.finditer(text)] or [b"a"]

    def wrong(key: bytes) -> bytes:
        at = chance.randrange(len(key))
        dotted = b".".join([b"a"] * chance.choice((3, 30, 400)))
        return chance.choice(
            (chance.choice(others), key[:at] + key[at + 1 :] or b"x", key + b"." + dotted, b"x" * 400)
        )

    return _replaced(text, _VALUE, 1, wrong, chance)


def _values(text: bytes, chance: random.Random) -> bytes:
    others = [found[2] for found in _VALUE.finditer(text)] or [b"1"]
    return _replaced(text, _VALUE, 2, lambda _: chance.choice((*_TEXTS, *others)), chance)


def _units(text: bytes, chance: random.Random) -> bytes:
    def wrong(quantity: bytes) -> bytes:
        number, _, unit = quantity.partition(b" ")
        other = chance.choice(_UNITS).encode()
        return chance.choice(
            (number + b" " + other, number, quantity + b" " + other, number + b" " + unit + unit)
        )

    return _replaced(text, _QUANTITY, 1, wrong, chance)


def _numbers(text: bytes, chance: random.Random) -> bytes:
    def wrong(number: bytes) -> bytes:
        scaled = float(number) * chance.choice((1000, 25.4, 1e-3, 1 / 25.4, 10, 0.1, 2, 0.5, 1.01, 1e6, 1e-6))
        return chance.choice(
            (
                f"{scaled:.12g}".encode(),
                chance.choice(_NUMBERS).encode(),
                number * chance.choice((2, 30, 5000)),
            )
        )

    return _replaced(text, _NUMBER, 0, wrong, chance)


def _links(text: bytes, chance: random.Random) -> bytes:
    words = [found[1] for found in _WORD.finditer(text)] or [b"x"]
    return _replaced(
        text,
        _WORD,
        1,
        lambda _: chance.choice((chance.choice(words), b"nothing", b"a" * 5000, b"../x")),
        chance,
    )


def _nesting(text: bytes, chance: random.Random) -> bytes:
    deep = chance.choice((1, 2, 19, 25, 400))

    def wrapped(value: bytes) -> bytes:
        return chance.choice(
            (
                b"[" * deep + value + b"]" * deep,
                b"{ a = " * deep + value + b" }" * deep,
                b"{ value = " + value + b', from = "measured" }',
                b"[" + b", ".join([value] * chance.choice((2, 300, 20_000))) + b"]",
            )
        )

    return _replaced(text, _VALUE, 2, wrapped, chance)


def _tables(text: bytes, chance: random.Random) -> bytes:
    many = chance.choice((1, 3, 200, 15_000))
    name = chance.choice((b"notes", b"x", b"ports", b"cases", b"concession", b"limits", b"temperatures"))
    each = chance.choice((b"[%s.t%d]\n", b"[[%s]]\n#%d\n", b"%s.t%d = 1\n"))
    return text + b"\n" + b"".join(each % (name, number) for number in range(many))


MUTATIONS: tuple[Mutation, ...] = (
    _bytes,
    _lines,
    _keys,
    _values,
    _units,
    _numbers,
    _numbers,
    _links,
    _nesting,
    _tables,
)
