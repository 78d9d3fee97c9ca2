"""German words and abbreviations for how much is examined, in plain English, by common practice."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import cache

_NUMBERS = {
    "ein(?:e[mnrs]?)?": "one",
    "zwei": "two",
    "drei": "three",
    "vier": "four",
    "f(?:ü|ue)nf": "five",
    "sechs": "six",
    "sieben": "seven",
    "acht": "eight",
    "neun": "nine",
    "zehn": "ten",
}
_ORDINALS = {
    "zweite": "second",
    "dritte": "third",
    "vierte": "fourth",
    "f(?:ü|ue)nfte": "fifth",
    "sechste": "sixth",
    "siebte": "seventh",
    "achte": "eighth",
    "neunte": "ninth",
    "zehnte": "tenth",
    "zwanzigste": "twentieth",
}
_PARTS = {
    "Drittel": "third",
    "Viertel": "quarter",
    "F(?:ü|ue)nftel": "fifth",
    "Sechstel": "sixth",
    "Achtel": "eighth",
    "Zehntel": "tenth",
    "Zwanzigstel": "twentieth",
}
_SEAM = r"(?:[A-Za-zäöüß]+)?n(?:a|ä|ae)ht(?:en?)?\b"
_OF = r"(?: (?:der|des|von|aller))?"
_COUNT = rf"{'|'.join(_NUMBERS)}|\d+"
#: So many of so many.
_SO_MANY = rf"(?i)(?<!\w)(?P<n>{_COUNT}) (?:St(?:ü|ue)ck )?von (?:den )?(?P<of>{_COUNT})(?!\w)"
#: Shares of a whole, and every so many of them.
_EVERY_NUMBER = rf"jede[rsn]? (\d+)\.(?= (?:{_SEAM}|Teil|St(?:ü|ue)ck|Schraube|Bolzen))"
_EVERY = rf"jede[rsn]? (?P<word>{'|'.join(_ORDINALS)})[nrs]?"
_HALF = rf"(?:die |zur )?H(?:ä|ae)lfte{_OF}"
_SHARE = rf"(?P<count>{'|'.join(_NUMBERS)}) (?P<word>{'|'.join(_PARTS)}){_OF}"
#: Each pattern, and what stands in its place; those of several words come first.
_PHRASES: tuple[tuple[str, str], ...] = (
    (r"(?:so ?weit|wo|falls) (?:es )?(?:zug(?:ä|ae)nglich|m(?:ö|oe)glich)", "where accessible"),
    (r"(?:mit )?Ausnahme (?:der|des|von)|bis auf (?:die|das|den)|au(?:ß|ss)er(?! dem)|ausgenommen", "except"),
    (r"teilweise|zum Teil", "partly"),
    (r"nur|lediglich", "only"),
    (r"halbe[nrs]? (?:L(?:ä|ae)nge|Umfang)", "half the length"),
    (r"(\d+) ?v\. ?H\.", r"\1 %"),
    (r"(?:gesamte|ganze|volle|komplette)[mnrs]?(?= )", "whole"),
    (r"vollst(?:ä|ae)ndig\w*|komplett", "complete"),
    (r"allseitig|rundum|umlaufend|ringsum", "all round"),
    (r"(?:Pr(?:ü|ue)f)umfang:?", "extent"),
    (r"(?:beidseitig|von beiden Seiten)", "from both sides"),
    (r"Oberfl(?:ä|ae)chen?|Fl(?:ä|ae)chen?", "surface"),
    (r"(?:Naht)?L(?:ä|ae)nge", "length"),
    (r"Umfang(?:s|es)?", "circumference"),
    (r"Stumpfn(?:a|ä|ae)ht(?:e|en)?", "butt welds"),
    (r"Kehln(?:a|ä|ae)ht(?:e|en)?", "fillet welds"),
    (r"L(?:ä|ae)ngsn(?:a|ä|ae)ht(?:e|en)?", "longitudinal welds"),
    (r"Rundn(?:a|ä|ae)ht(?:e|en)?", "circumferential welds"),
    (r"Schwei(?:ß|ss)n(?:a|ä|ae)ht(?:e|en)?|N(?:a|ä|ae)ht(?:e|en)?", "welds"),
    (r"einschl(?:ie(?:ß|ss)lich|\.)?|inkl(?:usive|\.)?", "including"),
    (r"inc(?:l?\.|l)", "including"),
    (r"exc(?:l\.|l)", "excluding"),
    (r"(?<=\d )in\.(?= )", "in"),
    (r"nach (?:Wahl|Ermessen|Angabe|Ma(?:ß|ss)gabe) (?:des|der) \w+", "at the choice of the inspector"),
    (r"nach (?:Vereinbarung|Absprache)", "as agreed"),
    (r"ggf\.|gegebenenfalls|bei Bedarf|falls erforderlich|wenn n(?:ö|oe)tig", "if required"),
    (r"w/o|minus|less(?= the\b)", "excluding"),
    (r"(\d+) ?(?:pct\.?|p\. ?c\.)", r"\1 %"),
    (r"(\d+) ?(?:%|per ?cent)? ?(?:to|bis|–) ?(\d+)(?= ?(?:%|per ?cent))", r"\1-\2"),
    (
        r"(?:min(?:imum|\.)?|at least|mind(?:estens|\.)|approx(?:imately|\.)?|circa|ca\.|about|zu)"
        r"(?= \d+(?:[.,]\d+)? ?%)",
        "",
    ),
    (r"(\d+ ?%) (?:min(?:imum|\.)?|mindestens|coverage)", r"\1"),
    (r"(?:coverage|quota|scope)(?= (?:of )?\d)", "extent"),
    (r'(\d+) ?["”″]', r"\1 in"),
    (r"(?<!scale )1 ?: ?(\d+)", r"1 in \1"),
)


def in_plain_english(text: str) -> str:
    """A text with German words for how much is examined, and abbreviations, in plain English.

    >>> in_plain_english("jede zehnte Naht, jede 5. Stumpfnaht"), in_plain_english("3 von 12 Nähten")
    ('every tenth welds, every 5th butt welds', '3 of 12 welds')
    >>> in_plain_english("gesamte Oberfläche außer Bohrung"), in_plain_english("Prüfumfang: 10 v.H.")
    ('whole surface except Bohrung', 'extent 10 %')
    >>> in_plain_english("zwei Drittel der Nähte"), in_plain_english("incl. hub fillets, excl. bore")
    ('two thirds of the welds', 'including hub fillets, excluding bore')
    """
    text = re.sub(_SO_MANY, lambda found: f"{_number(found['n'])} of {_number(found['of'])}", text)
    for pattern, said in _patterns():
        text = pattern.sub(said, text)
    return text


#: What stands in the place of a pattern.
_Said = str | Callable[[re.Match[str]], str]


@cache
def _patterns() -> tuple[tuple[re.Pattern[str], _Said], ...]:
    """The phrases compiled, once the first text is read: many runs read none."""
    phrases: tuple[tuple[str, _Said], ...] = (
        (_EVERY_NUMBER, r"every \1th"),
        (_EVERY, lambda found: f"every {_said(_ORDINALS, found['word'])}"),
        (_HALF, "half of the"),
        (_SHARE, _share),
        *_PHRASES,
    )
    return tuple((re.compile(rf"(?i)(?<![\w-])(?:{words})(?!\w)"), said) for words, said in phrases)


def _share(found: re.Match[str]) -> str:
    count, part = _number(found["count"]), _said(_PARTS, found["word"])
    return f"a {part} of the" if count == "one" else f"{count} {part}s of the"


def _number(word: str) -> str:
    return _said(_NUMBERS, word)


def _said(words: Mapping[str, str], word: str) -> str:
    """What stands for a German word, by the pattern of it; the word itself where none is of it."""
    return next((said for one, said in words.items() if re.fullmatch(one, word, re.I)), word)
