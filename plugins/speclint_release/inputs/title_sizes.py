"""The sizes and threads that the title of a part promises in numbers."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from typing import NamedTuple

from speclint import NotKnown

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
    "dia bore": "bore",
    "bore dia": "bore",
    "seat dia": "seat_diameter",
    "stem dia": "stem_diameter",
    "spigot dia": "spigot_diameter",
    "mean dia": "mean_diameter",
    "wire dia": "wire",
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
#: Words beside which a number without a unit is in mm, and those behind one alone.
_IN_MM = frozenset(one for one in _KEYS if "dia" in one)
_IN_MM_BEHIND = _IN_MM | {"bore", "wall", "thick", "long"}
#: How drawings write the words: signs, abbreviations and German, by common practice.
_WRITTEN = (
    (r"(?i)(?<=\d)(?P<unit> ?mm)? ?[Øø⌀∅](?! ?\d)", r"\g<unit> dia"),
    (r"[Øø⌀∅] ?(?=\d)", "dia "),
    (r"(?i)\b(?:dia|diam|durchm|durchmesser)\b\.?", "dia"),
    (r"\bO\. ?D\.|\bo\.d\.|\bO/?D\b|(?i:\bau(?:ß|ss)endurchmesser\b)", "outside diameter"),
    (r"\bI\. ?D\.|\bi\.d\.|\bI/?D\b|(?i:\binnendurchmesser\b)", "inside diameter"),
    (r"\bW\. ?T\.|\bW/?T\b|(?i:\bwand(?:dicke|st(?:ä|ae)rke)\b)", "wall"),
    (r"(?i)\b(?:thk|dick)\b\.?", "thick"),
    (r"(?i)\b(?:lg|lang)\b\.?", "long"),
    (r"(?i)\bbohrung\b", "bore"),
    (r"(?i)\bl(?:ä|ae)nge\b", "length"),
    (r"(?<=\d),(?=\d{1,2}(?!\d))", "."),
    (r"[”″]", '"'),
)
_UNITS = {"mm": 1e-3, "cm": 1e-2, "m": 1.0, "in": 0.0254, "inch": 0.0254, "inches": 0.0254, '"': 0.0254}
_INCHES = frozenset(unit for unit, metres in _UNITS.items() if metres == _UNITS["in"])
_WORDS = "|".join(one.replace(" ", r"[ -]") for one in _KEYS)
_NUMBER = (
    r"(?P<number>\d+[ -]\d+/\d+|\d+/\d+|\d+(?:\.\d+)?)"
    r'(?:[ -]?(?P<unit>mm|cm|m|inches|inch|in|")(?![\w²³/^·])|(?![\w./"-]))'
)
_BEFORE = rf"(?i)(?P<before>.*?)\b(?P<word>{_WORDS})\.?(?: of| is| =|:)? {_NUMBER}"
_AFTER = rf"(?i)(?<![\d./×x])(?<!no )(?<!no\. ){_NUMBER}[ -](?P<word>{_WORDS})\b"
#: What a word for a size may follow.
_OPENS = r'(?i)(?:^|\b(?:a|an|and|by|in|is|of|the|with)|\d ?(?:mm|cm|m|in|inch|inches|"))\s*$'
#: What a sign or an abbreviation for a diameter is not of the part behind.
_OF_A_FEATURE = (
    r"(?i)\b(?:rim|seat|hub|stem|spigot|collar|holes?|pitch|circle|head|boss|flange|neck|groove|shoulder|journal|thread|slot"
    r"|drilled|coils?|beat|port|throat|root|core|pad|nut)\s*$"
)
#: Words after which a clause speaks of a neighbour.
_NEIGHBOUR = r"(?i)\b(?:for|suits?|beside|under|over|behind|against|fits?)\b"
_THREAD = (
    r"(?<![\w.-])M(?: (?=\d+(?:[.,]\d+)?\s?[x×]))?(?P<size>\d+(?:[.,]\d+)?)"
    r"(?:\s?[x×]\s?(?P<second>\d+(?:[.,]\d+)?)|(?:[’']?s))?(?![\w-])"
)
#: A blank within a thread without a pitch, which a word for what has a thread shows to be one.
_SPACED = r"\b(?P<word>(?i:studs?|bolts?|screws?|nuts?|thread(?:s|ed)?|gewinde|schrauben?|muttern?)) M (?=\d)"
#: A greater number after a thread is the length of the bolt, and no pitch: ISO 261, general plan (from memory).
_GREATEST_PITCH = 8.0
#: A tube by its outside diameter and its wall, in millimetres or inches, perhaps with its length.
_TUBE = (
    r"(?<![\w.,-])(?<!\bM )(?<!\bDN )(?:[Øø⌀∅] ?|OD )?(?P<outside>\d+(?:[.,]\d+)?) ?(?:mm)?"
    r"(?: ?(?:[Øø⌀∅]|dia(?:meter|\.)?|diam\.?|O\.? ?D\.?|o\.?d\.?|outside diameter))? ?[x×]"
    r' ?(?P<wall>\d+(?:[.,]\d+)?)(?: ?(?:mm)? ?[x×] ?(?P<length>\d+(?:[.,]\d+)?))? ?(?P<unit>mm|inch|in|")?'
    r"(?![\w°]|[.,]\d| ?[x×°]| off\b)"
)
#: The least tube, mm: what is less is a number of pieces.
_LEAST_TUBE = 10.0


#: Titles name sizes in inches to sixteenths, and in mm to round tens: half of one of these may be lost, m.
_HALF_A_SIXTEENTH, _HALF_OF_TEN = _UNITS["in"] / 32, 5e-3


class Promised(NamedTuple):
    """A size in a title: the key of a spec for it, the words, how much they say, and what rounding may lose, m.

    ``exact`` is half of the last figure of a number of mm. ``rounded`` may be lost of a round number, or one in
    another unit.
    """

    key: str
    words: str
    size: float
    exact: float
    rounded: float

    def lost(self, share: float) -> float:
        """The most that its rounding lost, where that of a round number is no more than a share of it, m."""
        return max(self.exact, min(self.rounded, share * self.size))


def promised_sizes(title: str) -> Iterator[Promised]:
    """Every size in a title that stands beside a word for it, where its clause speaks of no neighbour.

    >>> [(one.key, one.words, one.size) for one in promised_sizes("Inlet valve, wall 12 mm, 0.5 m long")]
    [('wall', 'wall 12 mm', 0.012), ('length', '0.5 m long', 0.5)]
    >>> [(one.key, one.size) for one in promised_sizes("Piston rod, dia. 95 mm, 90 mm dia")]
    [('diameter', 0.095), ('diameter', 0.09)]
    >>> list(promised_sizes("Cover for a liner of 500 mm bore, rim diameter 480 mm, 1.5 mm² section, CN-12"))
    []
    """
    if not _has_figures(title):
        return
    for words, said in _WRITTEN:
        title = re.sub(words, said, title)
    for clause in re.split(r"[,;()]|(?<!\b[Nn]o)\. ", title):
        if re.search(_NEIGHBOUR, clause):
            continue
        for found in (*_after_their_word(clause), *re.finditer(_AFTER, clause)):
            words = re.sub(r"[ -]", " ", found["word"].casefold())
            behind = found.start("number") < found.start("word")
            if not found["unit"] and not _is_in_mm(words, found["number"], behind=behind):
                continue
            start = found.start() if behind else found.start("word")
            exact, rounded = _rounding(found["number"], found["unit"] or "mm")
            yield Promised(_KEYS[words], clause[start : found.end()].strip(), _metres(found), exact, rounded)


def promised_tube(title: str) -> Iterator[Promised]:
    """Outside diameter and wall where a title names a tube by them, and its clause speaks of no neighbour.

    >>> [(one.key, one.size) for one in promised_tube("Pipe Ø168.3 × 5.6")]
    [('outside_diameter', 0.1683), ('wall', 0.0056)]
    >>> [one.size for one in promised_tube("Pipe 168,3 x 5,6 x 1200 mm, 2 x 45°, M36 x 3")]
    [0.1683, 0.0056]
    """
    if not _has_figures(title):
        return
    for clause in re.split(r"(?<!\d),|,(?!\d)|[;()]|(?<!\bdia)(?<!\bdiam)(?<!\bO\.D)(?<!\bo\.d)\. ", title):
        if re.search(_NEIGHBOUR, clause):
            continue
        for found in re.finditer(_TUBE, clause):
            outside, wall = _figure(found["outside"]), _figure(found["wall"])
            is_tube = outside >= _LEAST_TUBE or found["unit"] not in (None, "mm")
            if is_tube and 2 * wall < outside and (not found["length"] or _figure(found["length"]) > outside):
                per = _UNITS[found["unit"] or "mm"]
                for key, size in (("outside_diameter", outside), ("wall", wall)):
                    number = found[key.removesuffix("_diameter")].replace(",", ".")
                    lost = _rounding(number, found["unit"] or "mm")
                    yield Promised(key, found.group().strip(), size * per, *lost)


def _has_figures(text: str) -> bool:
    """Whether a text has any figure: most titles have none, and no pattern is compiled for those."""
    return any(map(str.isdecimal, text))


def _is_in_mm(word: str, number: str, *, behind: bool) -> bool:
    """Whether a number without a unit beside a word for a size is in mm: not the number of a wall, or a few of them."""
    if word not in (_IN_MM_BEHIND if behind else _IN_MM) or "/" in number:
        return False
    return "." in number or float(number) >= _LEAST_TUBE


def _rounding(number: str, unit: str) -> tuple[float, float]:
    """Half of the last figure of a number of mm, and what may be lost of a round number or in another unit, m.

    >>> [_rounding(*one) for one in (("168.3", "mm"), ("505", "mm"), ("510", "mm"))]
    [(5e-05, 0.0), (0.0005, 0.0), (0.0005, 0.005)]
    >>> [_rounding(*one) for one in (("0.5", "m"), ("19 1/4", "in"), ("50", "cm"))]
    [(0.0, 0.05), (0.0, 0.00079375), (0.0, 0.005)]
    """
    half = 0.5 * float(f"1e-{len(number.partition('.')[2])}") * _UNITS[unit.casefold()]
    if unit.casefold() in _INCHES:
        return 0.0, _HALF_A_SIXTEENTH
    if unit.casefold() != "mm":
        return 0.0, half
    return half, _HALF_OF_TEN if number.endswith("0") and "." not in number else 0.0


def _figure(number: str) -> float:
    return float(number.replace(",", "."))


def _after_their_word(clause: str) -> Iterator[re.Match[str]]:
    """Numbers that follow a word for a size, which stands at the beginning or after a word that opens it."""
    at, pattern = 0, re.compile(_BEFORE)
    while found := pattern.match(clause, at):
        word = re.sub(r"[ -]", " ", found["word"].casefold())
        before = clause[: found.start("word")]
        of_the_part = word == "dia" and not re.search(_OF_A_FEATURE, before)
        if word in _ALONE or of_the_part or re.search(_OPENS, before):
            yield found
        at = found.end("word")


def _metres(found: re.Match[str]) -> float:
    """The number of a match with its unit, m.

    >>> round(_metres(re.search(_AFTER, "1 3/4 in bore")), 6)
    0.04445
    """
    parts = [one.split("/") for one in re.split("[ -]", found["number"])]
    value = sum(float(one[0]) / float(one[1] if one[1:] else 1) for one in parts)
    return value * _UNITS[(found["unit"] or "mm").casefold()]


def threads_in(text: str) -> list[tuple[str, str]]:
    """The metric threads in a text: of each its size and its pitch, "" where it states none.

    >>> threads_in("Studs M24x2 with nuts M24, bolts M30 x 110, drawing CN-M12")
    [('24', '2'), ('24', ''), ('30', '')]
    >>> threads_in("M36 x 3, M20x1,5, M 80 x 3, studs M 24, mark M 12")
    [('36', '3'), ('20', '1.5'), ('80', '3'), ('24', '')]
    """
    if not _has_figures(text):
        return []
    return [
        (
            f"{_figure(one['size']):g}",
            f"{_figure(second):g}" if second and _figure(second) <= _GREATEST_PITCH else "",
        )
        for one in re.finditer(_THREAD, re.sub(_SPACED, r"\g<word> M", text))
        for second in (one["second"],)
    ]


def is_of_pitch(size: str, pitch: str, asked: str) -> bool:
    """Whether a metric thread is of a pitch, mm: where it states none, by the coarse one of ISO 261, if that lists one.

    >>> [is_of_pitch("36", "", asked) for asked in ("4", "3")], is_of_pitch("36", "3", "3"), is_of_pitch("35", "", "4")
    ([True, False], True, False)
    """
    if pitch:
        return pitch == asked
    from speclint.handbook.threads import thread  # only of a title that names a thread

    try:
        return math.isclose(thread(f"M{size}").pitch, float(asked) * _UNITS["mm"])
    except NotKnown:
        return False
