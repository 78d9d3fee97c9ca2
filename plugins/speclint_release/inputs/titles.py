"""What the title of a part says of its place: side, end, level, steam; and what else it calls a part by."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from speclint.specs import as_filed

#: Words of which a part is one, each with those that mean it, English and German, by common practice.
_PLACES: tuple[dict[str, str], ...] = (
    {
        "left": r"left|l\.? ?h\.?s?|l/h|near[- ]?side|(?<=, )links(?=,|$)",
        "right": r"right|r\.? ?h\.?s?|r/h|off[- ]?side|rechts",
        "middle": r"middle|cent(?:re|er)|mitte",
    },
    {
        "front": r"front|leading|head[- ]end|vorne?",
        "back": r"back|rear|trailing|crank[- ]end|hinten",
    },
    {"upper": r"upper|top|oben", "lower": r"lower|bottom|unten"},
    {"inlet": r"inlet|admission|einlass", "exhaust": r"exhaust|auslass"},
    {"inner": r"inner|inside", "outer": r"outer|outside"},
    {
        "high-pressure": r"h\.? ?p\.?|high[- ]pressure",
        "low-pressure": r"l\.? ?p\.?|low[- ]pressure",
    },
)
_READ = tuple(
    re.compile(
        "(?i)"
        + "|".join(rf"(?P<{name.replace('-', '_')}>(?<!\w)(?:{words})(?!\w))" for name, words in of.items())
    )
    for of in _PLACES
)
#: A side by its letter alone, in brackets or as a piece of the title: "Piston (L)", "Piston, R".
_BY_LETTER = re.compile(r"(?<=[(\[])(?P<letter>[LR])(?=[)\]])|(?:^|, )(?P<alone>[LR])(?=\.?(?:,|$))")
_OF_LETTER = {"L": "left", "R": "right"}
_SIDE = r"(?:left|right|[lr]\.? ?h\.?|middle|centre|center)(?:[- ]hand(?:ed)?)?"
#: A side that is not that of the part: of a thread, or of another part whose hand or mirror it is.
_OF_ANOTHER = re.compile(
    rf"(?i)\b{_SIDE} (?:thread|screw|helix|wound|coil|spiral)\w*"
    rf"|\b(?:to|of) the (?:opposite |other )?hand (?:of|to) (?:the )?{_SIDE}"
    rf"|\b(?:opposite|handed|mirror\w*)(?: hand| image)? (?:of|to|from) (?:the )?{_SIDE}"
)
#: What a record adds to the name of a part.
_OF_RECORD = re.compile(
    r"(?i)\bas[- ](?:made|built|tightened|fitted|finished|machined|cast|forged|delivered|received|supplied|bought)\b"
    r"|\b(?:spare|new|record(?: of)?|(?:first|second|third|fourth) (?:casting|forging|piece|set|off))\b"
    r"|\b(?:serial|s/n|heat|cast)(?: ?(?:nos?\.?|number))? ?[\w./-]*\d[\w./-]*"
)
#: A code with figures in it, such as the number of a drawing or the id of a spec; what it stands behind, where that
#: says that the part is another.
_CODE = re.compile(
    r"(?i)(?P<before>(?:\b(?:for|of|in|on|with|into|under|replac\w+|supersed\w+|instead of|in place of|ex|former\w*"
    r"|like|not|serial|heat|cast|no\.?|nos\.?) (?:the )?(?:drawing |drg\.? |dwg\.? )?)?)"
    r"(?P<code>[^\W_]+(?:[-./_][^\W_]+)+)"
)


def places_in(title: str) -> list[dict[str, str]]:
    """The words of a title for places of which a part is at one: for each sort what they mean, and as written.

    >>> places_in("Piston R.H., front")[0], places_in("Piston R.H., front")[1], places_in("Piston with LH thread")[0]
    ({'right': 'R.H.'}, {'front': 'front'}, {})
    >>> places_in("Piston (L)")[0], places_in("Valve on the driver's side, near side")[0]
    ({'left': 'L'}, {'left': 'near side'})
    """
    plain = _OF_ANOTHER.sub(" ", title)
    found = [
        {str(one.lastgroup).replace("_", "-"): one.group().strip() for one in pattern.finditer(plain)}
        for pattern in _READ
    ]
    for one in _BY_LETTER.finditer(plain):
        letter = one["letter"] or one["alone"]
        found[0].setdefault(_OF_LETTER[letter], letter)
    return found


def other_places(own: str, theirs: str, hand: str | None) -> Iterator[tuple[str, str]]:
    """The words of two titles for places of which a part is at one, where they have none in common.

    ``hand`` is the side of the second, which counts where its title says none.
    """
    sides, *others = zip(places_in(own), places_in(theirs), strict=True)
    if hand is not None and not sides[1]:
        sides = (sides[0], {hand: hand})
    for here, there in (sides, *others):
        if here and there and not here.keys() & there.keys():
            yield _written(here), _written(there)


def _written(places: dict[str, str]) -> str:
    return " and ".join(
        name if word.casefold() == name else f"{word} ({name})" for name, word in sorted(places.items())
    )


def names_called(title: str) -> list[str]:
    """The name of a part in the title of its record, with its figures and without them.

    >>> names_called("Cylinder liner 2, left, as made"), names_called("Piston, spare")
    (['Cylinder liner 2, left,', 'Cylinder liner  left,'], ['Piston,'])
    """
    name = _OF_RECORD.sub("", title).strip()
    return [one for one in dict.fromkeys((name, re.sub(r"\S*\d\S*", "", name))) if re.search(r"\w", one)]


def codes_called(title: str) -> list[str]:
    """The numbers of drawings, and ids, by which the title of a record may call the part itself.

    >>> codes_called("Block to CN-C-1204, for rod-left, replaces CN-C-1203")
    ['CN-C-1204']
    """
    return [one["code"] for one in _CODE.finditer(title) if not one["before"]]


def is_number(code: str, number: str) -> bool:
    """Whether a code is the number of a drawing, with what may stand behind it: a sheet, or a revision.

    >>> [is_number(one, "CN-C-120") for one in ("cn-c-120", "CN-C-120-2", "CN-C-120C", "CN-C-1203", "CN-C-12")]
    [True, True, True, False, False]
    """
    plain, own = as_filed(code), as_filed(number)
    return plain.startswith(own) and not plain[len(own) : len(own) + 1].isdigit()


def is_of_series(code: str, number: str, others: Sequence[str]) -> bool:
    """Whether a code is written as the number of a drawing is, and is another: letters alike, as many figures.

    It is none of ``others``, such as the serial number of the part.

    >>> [is_of_series(one, "CN-C-1203", ["CN-C-1111"]) for one in ("CN-C-1299", "CN-C-1203", "CN-C-12", "CN-C-1111")]
    [True, False, False, False]
    >>> is_of_series("12-34", "12-35", []), is_of_series("cn/c/1299", "CN-C-1203", [])
    (False, True)
    """
    plain, own = as_filed(code), as_filed(number)
    if plain == own or not re.search(r"[a-z]", own) or plain in map(as_filed, others):
        return False
    return re.sub(r"\d", "0", plain) == re.sub(r"\d", "0", own)
