"""How much of a part was examined by its records, and when, against what its drawing asks for."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from speclint.specs import names_nothing
from speclint_release.inputs.choices import excepts_some, leaves_out_unreached, leaves_to_choice
from speclint_release.inputs.examinations import ANY_METHOD, worded
from speclint_release.inputs.extents import extents, in_per_cent, names_some, says_all, share_of
from speclint_release.inputs.known_words import Words, understood
from speclint_release.inputs.marks import marks_in_words
from speclint_release.inputs.outcomes import as_examined
from speclint_release.inputs.stages import shown_at, stages
from speclint_release.inputs.translations import in_plain_english

#: Words for what other records leave.
_REMAINDER = re.compile(r"(?i)\b(?:the rest|remain(?:der|ing)|others?)\b")
#: What of a part is examined, where a drawing names it and a record names another.
_PLACE = re.compile(
    r"(?i)\b(butt|fillet|toe|stud|bolt|edge|face|bore|journal|seat|rim|hub|collar|thread)s?\b"
)
#: What is still to do.
_NOT_YET = re.compile(
    r"(?i)\bto be (?:done|made|carried out|examined|tested|taken|completed)\b|\b(?:outstanding|awaited)\b|\bnot yet\b"
)
#: The whole of a weld, and not every weld.
_OF_EACH = re.compile(
    r"(?i)\b(?:full|whole|entire|complete) (?:length|circumference|thickness|depth|volume|width|section)s?\b"
    r"|\bboth (?:sides|faces|ends|edges)\b|\b(?:each|every|all|both) (?:⟨\d*⟩|films?\b|exposures?\b|shots?\b)"
)
_WHOLLY = 1.0
#: What two shares that are written otherwise may differ by, as one third and 33 %.
_ROUNDED = 0.01


class Recorded(NamedTuple):
    """What a record says of some methods: the share, None for samples, all its words, and what these take away.

    ``beside`` are those of its words that stand beside the methods themselves, without the extent; ``said`` is what the
    record says of method and extent, as it stands there.
    """

    methods: list[str]
    share: float | None
    words: str
    read: Words
    beside: str
    said: str = ""

    @property
    def is_plain(self) -> bool:
        """Whether every word is understood and none takes some away."""
        return not (self.strange or self.may_leave_out)

    @property
    def strange(self) -> list[str]:
        """Its words that are not understood, each once."""
        return list(dict.fromkeys(self.read.strange))

    @property
    def may_leave_out(self) -> list[str]:
        """Its words that take some away, or may, each once."""
        return list(dict.fromkeys((*self.read.perhaps, *self.read.less)))


def recorded(asked: str, records: Iterable[tuple[str, str]], called: str = "") -> list[Recorded]:
    """What records, each a method and an extent, say beside the words of the drawing and what the part is called."""
    of_pipe = "girth; circumferential" if "pipe" in called else ""
    drawn = "; ".join((*(words for _, words in worded(asked)), called, of_pipe))
    excepted = excepts_some(asked)
    by_any = any(ANY_METHOD in methods for methods, _ in worded(asked))
    found = []
    for method, extent in records:
        read = _of_record(_told(method), _told(marks_in_words(extent)), drawn, excepted=excepted)
        for one in read:
            methods = [*one.methods, ANY_METHOD] if by_any else one.methods
            found.append(one._replace(methods=methods, said=", ".join(filter(None, (method, extent)))))
    return found


def _told(text: str) -> str:
    """A text of a record without its outcome, in plain English; one that is a word for nothing as it stands."""
    return text if names_nothing(text) else in_plain_english(as_examined(text))


def too_little(asked: str, made: Sequence[Recorded]) -> list[str]:
    """What records surely cover less of than a text asks for: "radiographs of 10%".

    A record without an extent, or with one that no words limit, counts as of all.

    >>> asked = "butt welds radiographed, all of them"
    >>> too_little(asked, recorded(asked, [("film", "one weld in ten")]))
    ['radiographs of 10%']
    >>> too_little(asked, recorded(asked, [("butt welds radiographed, three of them", "the whole part")]))
    ['radiographs of samples or a part: three of them']
    >>> each = "radiographs of butt welds and magnetic particle on fillets"
    >>> too_little("all butt welds radiographed", recorded("", [(each, "butt welds 10 %, fillets 100 %")]))
    ['radiographs of 10%']
    >>> too_little("UT of the seams", recorded("UT of the seams", [("UT", "50 %"), ("UT", "the other 50 %")]))
    []
    """
    short = []
    for methods, share, _ in extents(asked):
        covered = {
            name: _covered(name, made, share) for name in methods if any(name in one.methods for one in made)
        }
        if share is not None and covered and max(covered.values()) + _ROUNDED < share:
            best = max(covered, key=lambda name: covered[name])
            short.append(f"{best} of {in_per_cent(covered[best])}" if covered[best] else _in_part(best, made))
    return short


def _in_part(name: str, made: Iterable[Recorded]) -> str:
    less = [clause for one in made if name in one.methods for clause in one.read.less]
    return f"{name} of samples or a part{': ' if less else ''}{', '.join(dict.fromkeys(less))}"


def not_shown(asked: str, made: Sequence[Recorded]) -> list[str]:
    """What a text asks for in so many words and no record says: that all was examined, and each place that it names.

    >>> made = recorded("", [("RT", "")])
    >>> not_shown("all butt welds by RT", made), not_shown("butts by RT", made)
    (['that all was examined, by radiographs'], [])
    >>> not_shown("all butts by RT", recorded("", [("RT", "welds 1 to 3")]))
    ['that all was examined, by radiographs']
    >>> not_shown("faces and fillets by PT", recorded("", [("PT", "faces")]))
    ['fillet by penetrant']
    >>> swapped = [("radiographs of all fillets, magnetic particle on butt welds", "the whole part")]
    >>> not_shown("all butt welds radiographed, fillets by magnetic particle", recorded("", swapped))
    ['butt by radiographs', 'fillet by magnetic particle']
    """
    missing = []
    for methods, share, words in extents(asked):
        of_each = [[one for one in made if name in one.methods] for name in methods]
        if not any(of_each):
            continue
        by = " or ".join(methods)
        if share == _WHOLLY and _is_of_all(words) and not any(_shows_all(of_one) for of_one in of_each):
            missing.append(f"that all was examined, by {by}")
        left = min((_places_left(words, of_one) for of_one in of_each if of_one), key=len)
        missing += [f"{place} by {by}" for place in left]
    return missing


def _places_left(asked: str, made: Sequence[Recorded]) -> list[str]:
    """The places that a text names and no record does, where each record names others."""
    named, wanted = [_places(one.words) for one in made], _places(asked)
    of_others = (_places(one.beside) and not _places(one.beside) & wanted.keys() for one in made)
    general = (_is_general(one.words) for one in made)
    if not all(named) or any(one and not other for one, other in zip(general, of_others, strict=True)):
        return []
    return [one for one in wanted if not any(one in names for names in named)]


def _places(words: str) -> dict[str, None]:
    """The places that some words name, in their order."""
    return dict.fromkeys(map(str.lower, _PLACE.findall(words)))


def _is_general(words: str) -> bool:
    """Whether a clause says that all was examined and names no place: the whole part."""
    return any(says_all(one) and not _PLACE.search(one) for one in words.split(";"))


def out_of_stage(asked: str, made: Sequence[Recorded]) -> tuple[list[str], list[str]]:
    """What was examined at another stage than a text asks for: surely, and as far as the words tell.

    >>> asked = "MT after turning"
    >>> out_of_stage(asked, recorded(asked, [("MT before turning", "the whole part")]))
    (['magnetic particle before turning, after turning is asked for'], [])
    >>> [out_of_stage(asked, recorded(asked, [(one, "")])) for one in ("MT when ground", "MT")]
    [([], []), ([], [])]
    """
    wrong: list[str] = []
    unclear: list[str] = []
    for methods, _, words in extents(asked):
        of_methods = [stages(one.words) for one in made if set(one.methods) & set(methods)]
        if not of_methods or not all(of_methods):
            continue
        known = [one for of_one in of_methods for one in of_one]
        for stage in stages(words):
            shown = shown_at(stage, known)
            if shown is not True:
                said = " and ".join(dict.fromkeys(one.words for one in known))
                says = f"{' or '.join(methods)} {said}, {stage.words} is asked for"
                (unclear if shown is None else wrong).append(says)
    return wrong, unclear


def not_understood(asked: str, made: Sequence[Recorded]) -> list[Recorded]:
    """The records, of each method that a text asks for, of which no word is plain: what was left out nobody can tell.

    >>> [found] = not_understood("MT of the rim", recorded("MT of the rim", [("MT", "the rim, at the crossings")]))
    >>> found.said, found.strange
    ('MT, the rim, at the crossings', ['crossings'])
    >>> not_understood("MT of the rim", recorded("MT of the rim", [("MT", "where accessible"), ("MT", "rim")]))
    []
    """
    doubtful: list[Recorded] = []
    for methods, _, _ in extents(asked):
        of_methods = [one for one in made if set(one.methods) & set(methods)]
        if not any(one.is_plain for one in of_methods):
            doubtful += [one for one in of_methods if one not in doubtful]
    return doubtful


def _shows_all(records: Sequence[Recorded]) -> bool:
    """Whether a record of one method says that all was examined, or the shares of several make up all.

    So do words for the rest, beside another record.
    """
    if any(_is_of_all(_OF_EACH.sub("", one.words) if one.read.numbered else one.words) for one in records):
        return True
    if len(records) > 1 and any(_REMAINDER.search(one.words) for one in records):
        return True
    shares = [one.share for one in records if one.share is not None and one.share < _WHOLLY]
    return sum(shares) + _ROUNDED >= _WHOLLY


def _is_of_all(words: str) -> bool:
    takes_some_away = excepts_some(words) or leaves_out_unreached(words) or leaves_to_choice([words])
    return says_all(words) and not takes_some_away


def _of_record(method: str, extent: str, drawn: str, *, excepted: bool) -> Iterator[Recorded]:
    """The methods of a record, each with the least share that its method and its extent let it have, and the words."""
    named, parts = extents(extent), extents(method)
    cut = excepts_some(method) and not any(
        excepts_some(one.words) for one in parts
    )  # by "but", between clauses
    for methods, _, words in parts:
        own = [one.words for one in named if set(one.methods) & set(methods)]
        of_extent = own[0] if own else "" if named else _of_places(words, extent)
        all_words = f"{words}; {of_extent}"
        read = understood(all_words, drawn)
        if of_extent and not re.search(r"\w", of_extent):
            read.strange.append(of_extent)
        if re.search(r"(?i)\bbut\b", method):  # parts clauses, and so stands in none
            read.strange.append("but")
        read.strange.extend(_NOT_YET.findall(all_words))
        if cut and not excepted:
            read.less.append(method)
        shares = [share_of(words), share_of(of_extent)]
        least = None if None in shares or read.less else min(one for one in shares if one is not None)
        yield Recorded(methods, least, all_words, read, words)


def _of_places(beside: str, extent: str) -> str:
    """What of an extent is of the places that stand beside a method; all of it where it parts none by them.

    A clause that names no place is of those named before it, and of all where none is.

    >>> _of_places("of butt welds", "all butt welds, front half, fillets"), _of_places("of fillets", "half, fillets")
    ('all butt welds; front half', 'half; fillets')
    >>> _of_places("of butt welds", "butt welds 10 %, fillets 100 %"), _of_places("of butt welds", "the whole part")
    ('butt welds 10 %', 'the whole part')
    """
    places = _places(beside).keys()
    of_places, named = [], places
    for clause in (one.strip() for one in re.split(r"[,;]", extent)):
        named = _places(clause).keys() or named
        if places & named:
            of_places.append(clause)
    return "; ".join(of_places) or extent


def _covered(name: str, made: Iterable[Recorded], wanted: float | None) -> float:
    """The share that all records of a method cover together; samples are enough where no more than a part is asked.

    Records of some welds each, by their names, may be of all together, and so may records of a part each.
    """
    of_name = [one for one in made if name in one.methods]
    shares = [one.share for one in of_name]
    if wanted is not None and wanted < _WHOLLY and None in shares:
        return wanted
    if len(of_name) > 1 and any(names_some(one.words) or one.read.less for one in of_name):
        return _WHOLLY
    return sum(share or 0.0 for share in shares)
