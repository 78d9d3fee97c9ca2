"""The sizes and threads that the title of a part promises in numbers."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from typing import NamedTuple

from speclint import NotKnown
from speclint.handbook.threads import thread

#: How titles call a size, and the key of a spec that states it. Longer words come first.
_KEYS = {
    "flange thickness": "flange_thickness",
    "outside diameter": "outside_diameter",
    "inside diameter": "inside_diameter",
    "spigot diameter": "spigot_diameter",
    "mean diameter": "mean_diameter",
    "seat diameter": "seat_diameter",
    "stem diameter": "stem_diameter",
    "pitch circle": "circle",
    "free length": "free_length",
    "bolt circle": "circle",
    "thickness": "thickness",
    "diameter": "diameter",
    "dia": "diameter",
    "length": "length",
    "height": "height",
    "circle": "circle",
    "stroke": "stroke",
    "depth": "depth",
    "width": "width",
    "thick": "thickness",
    "wall": "wall",
    "wire": "wire",
    "bore": "bore",
    "lift": "lift",
    "long": "length",
    "wide": "width",
    "high": "height",
    "deep": "depth",
}
#: Words that mean one size alone, whatever stands before them; "rim diameter" is no "diameter".
_ALONE = frozenset(one for one in _KEYS if " " in one) | {"wall", "wire"}
_UNITS = {"mm": 1e-3, "cm": 1e-2, "m": 1.0, "in": 0.0254, "inch": 0.0254, "inches": 0.0254, '"': 0.0254}
_WORDS = "|".join(one.replace(" ", r"[ -]") for one in _KEYS)
_NUMBER = r'(?P<number>\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?)[ -]?(?P<unit>mm|cm|m|inches|inch|in|")(?![\w²³/^·])'
_BEFORE = re.compile(rf"(?P<before>.*?)\b(?P<word>{_WORDS})\.?(?: of| is| =|:)? {_NUMBER}", re.IGNORECASE)
_AFTER = re.compile(rf"(?<![\d./×x]){_NUMBER}[ -](?P<word>{_WORDS})\b", re.IGNORECASE)
#: What a word for a size may follow.
_OPENS = re.compile(
    r'(?:^|\b(?:a|an|and|by|in|is|of|the|with)|\d ?(?:mm|cm|m|in|inch|inches|"))\s*$', re.IGNORECASE
)
#: Words after which a clause speaks of a neighbour.
_NEIGHBOUR = re.compile(r"\b(?:for|suits?|beside|under|over|behind|against|fits?)\b", re.IGNORECASE)
_THREAD = re.compile(
    r"(?<![\w.-])M(?P<size>\d+(?:[.,]\d+)?)(?:\s?[x×]\s?(?P<second>\d+(?:[.,]\d+)?))?(?![\w-])"
)
#: A greater number after a thread is the length of the bolt, and no pitch: ISO 261, general plan (from memory).
_GREATEST_PITCH = 8.0
#: A tube by its outside diameter and its wall, in millimetres or inches, perhaps with its length.
_TUBE = re.compile(
    r"(?<![\w.,-])(?<!\bM )(?<!\bDN )(?:[Øø⌀∅] ?|OD )?(?P<outside>\d+(?:[.,]\d+)?) ?(?:mm)? ?[x×]"
    r' ?(?P<wall>\d+(?:[.,]\d+)?)(?: ?(?:mm)? ?[x×] ?(?P<length>\d+(?:[.,]\d+)?))? ?(?P<unit>mm|inch|in|")?'
    r"(?![\w°]|[.,]\d| ?[x×°]| off\b)"
)
#: The least tube, mm: what is less is a number of pieces.
_LEAST_TUBE = 10.0


class Promised(NamedTuple):
    """A size in a title: the key of a spec for it, the words, and how much they say, m."""

    key: str
    words: str
    size: float


def promised_sizes(title: str) -> Iterator[Promised]:
    """Every size in a title that stands beside a word for it, where its clause speaks of no neighbour.

    >>> [(one.key, one.words, one.size) for one in promised_sizes("Inlet valve, wall 12 mm, 0.5 m long")]
    [('wall', 'wall 12 mm', 0.012), ('length', '0.5 m long', 0.5)]
    >>> [(one.key, one.size) for one in promised_sizes("Piston rod, dia. 95 mm, 90 mm dia")]
    [('diameter', 0.095), ('diameter', 0.09)]
    >>> list(promised_sizes("Cover for a liner of 500 mm bore, rim diameter 480 mm, 1.5 mm² section, CN-12"))
    []
    """
    for clause in re.split(r"[,;()]|(?<!\b[Dd]ia)\. ", title):
        if _NEIGHBOUR.search(clause):
            continue
        for found in (*_after_their_word(clause), *_AFTER.finditer(clause)):
            words = re.sub(r"[ -]", " ", found["word"].casefold())
            start = found.start("word") if found.start("word") < found.start("number") else found.start()
            yield Promised(_KEYS[words], clause[start : found.end()].strip(), _metres(found))


def promised_tube(title: str) -> Iterator[Promised]:
    """Outside diameter and wall where a title names a tube by them, and its clause speaks of no neighbour.

    >>> [(one.key, one.size) for one in promised_tube("Pipe Ø168.3 × 5.6")]
    [('outside_diameter', 0.1683), ('wall', 0.0056)]
    >>> [one.size for one in promised_tube("Pipe 168,3 x 5,6 x 1200 mm, 2 x 45°, M36 x 3")]
    [0.1683, 0.0056]
    """
    for clause in re.split(r"(?<!\d),|,(?!\d)|[;()]|\. ", title):
        if _NEIGHBOUR.search(clause):
            continue
        for found in _TUBE.finditer(clause):
            outside, wall = _figure(found["outside"]), _figure(found["wall"])
            is_tube = outside >= _LEAST_TUBE or found["unit"] not in (None, "mm")
            if is_tube and 2 * wall < outside and (not found["length"] or _figure(found["length"]) > outside):
                per = _UNITS[found["unit"] or "mm"]
                for key, size in (("outside_diameter", outside), ("wall", wall)):
                    yield Promised(key, found.group().strip(), size * per)


def _figure(number: str) -> float:
    return float(number.replace(",", "."))


def _after_their_word(clause: str) -> Iterator[re.Match[str]]:
    """Numbers that follow a word for a size, which stands at the beginning or after a word that opens it."""
    at = 0
    while found := _BEFORE.match(clause, at):
        word = re.sub(r"[ -]", " ", found["word"].casefold())
        if word in _ALONE or _OPENS.search(clause[: found.start("word")]):
            yield found
        at = found.end("word")


def _metres(found: re.Match[str]) -> float:
    """The number of a match with its unit, m.

    >>> round(_metres(_AFTER.search("1 3/4 in bore")), 6)
    0.04445
    """
    parts = [one.split("/") for one in found["number"].split()]
    value = sum(float(one[0]) / float(one[1] if one[1:] else 1) for one in parts)
    return value * _UNITS[found["unit"].casefold()]


def threads_in(text: str) -> list[tuple[str, str]]:
    """The metric threads in a text: of each its size and its pitch, "" where it states none.

    >>> threads_in("Studs M24x2 with nuts M24, bolts M30 x 110, drawing CN-M12")
    [('24', '2'), ('24', ''), ('30', '')]
    >>> threads_in("M36 x 3, M20x1,5")
    [('36', '3'), ('20', '1.5')]
    """
    return [
        (
            f"{_figure(one['size']):g}",
            f"{_figure(second):g}" if second and _figure(second) <= _GREATEST_PITCH else "",
        )
        for one in _THREAD.finditer(text)
        for second in (one["second"],)
    ]


def is_of_pitch(size: str, pitch: str, asked: str) -> bool:
    """Whether a metric thread is of a pitch, mm: where it states none, by the coarse one of ISO 261, if that lists one.

    >>> [is_of_pitch("36", "", asked) for asked in ("4", "3")], is_of_pitch("36", "3", "3"), is_of_pitch("35", "", "4")
    ([True, False], True, False)
    """
    if pitch:
        return pitch == asked
    try:
        return math.isclose(thread(f"M{size}").pitch, float(asked) * _UNITS["mm"])
    except NotKnown:
        return False
