"""What a name looks like to a reader, so that a name that only looks different from another is known for the same."""

from __future__ import annotations

import unicodedata

#: Letters of other scripts that look like Latin ones (U+03xx Greek, the others Cyrillic), and digits that pass for
#: letters: after Unicode Technical Standard 39, confusables.txt, from memory, as far as names need it.
_PASS_FOR = {
    "A": "\u0410\u0391",
    "B": "\u0412\u0392",
    "C": "\u0421\u03f9",
    "E": "\u0415\u0395",
    "H": "\u041d\u0397",
    "I": "\u0406\u0399\u04c0",
    "J": "\u0408",
    "K": "\u041a\u039a",
    "M": "\u041c\u039c",
    "N": "\u039d",
    "O": "\u041e\u039f0",
    "P": "\u0420\u03a1",
    "S": "\u0405",
    "T": "\u0422\u03a4",
    "X": "\u0425\u03a7",
    "Y": "\u0423\u04ae\u03a5",
    "Z": "\u0396",
    "a": "\u0430\u03b1",
    "c": "\u0441\u03f2",
    "d": "\u0501",
    "e": "\u0435",
    "h": "\u04bb",
    "i": "\u0456\u03b9\u01311l|",
    "j": "\u0458",
    "k": "\u03ba",
    "o": "\u043e\u03bf\u03c3",
    "p": "\u0440\u03c1",
    "q": "\u051b",
    "s": "\u0455",
    "u": "\u03c5",
    "v": "\u03bd",
    "w": "\u051d",
    "x": "\u0445",
    "y": "\u0443\u03b3",
}
_LATIN = {ord(sign): latin for latin, signs in _PASS_FOR.items() for sign in signs}


def look(text: str) -> str:
    r"""A text as the eye takes it: without case, accents and marks that are not seen, in Latin letters.

    >>> look("M. C\u043eyle") == look("m. coyle")  # U+043E is the Cyrillic o
    True
    >>> look("Müller") == look("MULLER")
    True
    """
    plain = unicodedata.normalize("NFKD", text).translate(_LATIN).casefold()
    seen = (sign for sign in plain if unicodedata.category(sign) not in ("Mn", "Me", "Cf", "Cc"))
    return "".join(seen).translate(_LATIN)
