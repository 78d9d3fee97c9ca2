"""Words by which a drawing names nothing: a mark, a word for none, what is closed, or what is still to be decided."""

from __future__ import annotations

#: Short words by which anything is still to be decided.
UNDECIDED = frozenset({"tba", "tbc", "tbd"})
_NOTHING = UNDECIDED | frozenset(
    {"", "none", "nil", "no", "nothing", "nobody", "no one", "na", "not applicable", "not known", "unknown"}
    | {"not recorded", "not on record", "not stated", "not noted"}
    | {"not decided", "not yet decided", "not yet", "later"}
    | {f"{word} {what}" for word in ("none", "not") for what in ("fitted", "provided")}
    | {
        "none yet",
        "no feed",
        "no drain",
        "omitted",
        "left out",
        "plugged",
        "blanked",
        "blanked off",
        "capped",
    }
)
#: Words by which a text denies what it names.
_DENYING = frozenset(
    ("no", "not", "none", "never", "neither", "nor", "without", "omitted", "plugged", "blanked", "capped")
)


def bare_words(text: str) -> str:
    """The words of a text in small letters, apart by single spaces, without marks: "n/a" is "na".

    >>> bare_words("Not  required."), bare_words("—")
    ('not required', '')
    """
    letters = (one for one in text.lower() if one.isalnum() or one.isspace())
    return " ".join("".join(letters).split())


def names_nothing(text: str) -> bool:
    """Whether a text that is to name a thing, a person or a document names none.

    >>> [names_nothing(one) for one in ("none", "-", "N/A", "To be decided", "feed 3", "no. 4 feed")]
    [True, True, True, True, False, False]
    """
    words = bare_words(text)
    return words in _NOTHING or words.startswith("to be ")


def denies(text: str) -> bool:
    """Whether a text says of what it names that it is not there, or not so; "no. 3" is a number.

    >>> [denies(one) for one in ("feed 3, no divider", "not forwards", "feed no. 3", "by a divider")]
    [True, True, False, False]
    """
    words = bare_words(text).split()
    return any(
        one in _DENYING and not (one == "no" and after[:1].isdigit())
        for one, after in zip(words, [*words[1:], ""], strict=True)
    )
