"""Names of people: whether two can be one person's, whom a text names, and whether it bears a name."""

from __future__ import annotations

import re

from speclint.repository import look
from speclint.specs import UNDECIDED

_BETWEEN_WORDS = re.compile(r"[^\w]+|_")
_INITIAL = re.compile(r"\b\w\.")
_BETWEEN_PEOPLE = re.compile(r"\s+and\s+|[&+/;]")
_BETWEEN_PIECES = re.compile(r"[,()\[\]]")
_FIGURES = re.compile(r"\d+")


def _seen(words: str) -> frozenset[str]:
    """Words as they are compared."""
    return frozenset(look(word) for word in words.split())


#: Words for who designed, made or looked at a part, which name nobody.
_ROLES = _seen(
    "somebody someone anybody anyone self myself himself herself itself themselves ourselves us we house inhouse "
    "internal works workshop shop office department staff team maker manufacturer foundry designer draughtsman "
    "draftsman checker preparer tester welder examiner witness fitter foreman above before usual same required needed "
    "witnessed examined manufacturers makers hersteller herstellers herstellerwerk werk werks werksabnahme fabricant "
    "constructeur usine prüfer zeichner konstrukteur konstruktion bearbeiter schweißer zeuge "
    "checked prepared drawn designed approved signed signature initials ditto idem pending various several name author "
    "computer software cad yes ok okay geprüft gezeichnet bearbeitet erstellt unterschrift selbst derselbe unbekannt "
    "niemand illegible awaited entfällt folgt blank body person contractor contractors subcontractor "
    "supplier suppliers customer client consultant consultants builder builders"
)
#: Words that stand beside those and name nobody either.
_BESIDE_ROLES = _seen(
    "the a an our own as by in of to at no not who is was and s des der du de drawing design welding test testing "
    "quality inspector inspection inspectors engineer engineers surveyor qualitatsstelle abnahme controle chief senior "
    "junior assistant head principal lead section group leader manager competent local other another else it"
)
#: Words for an occupation or a part of an office: by themselves they say which work is meant, and not whose.
_OCCUPATIONS = _seen(
    "engineer engineers engineering inspector inspectors surveyor leader manager officer section group dept division "
    "bureau konstruktionsbüro leiter abteilung gruppe technician calculation analyst ndt"
)
#: Words that stand beside those.
_OF_WORK = _seen(
    "cylinder cylinders boiler valve valves frame frames motion gear mechanical stress level grade class mark no "
    "number inspecting civil structural locomotive und"
)
#: What stands in the place of a name, its words joined: a cross, "N. N.", a name that stands for any, or a body or an
#: inspector without saying which.
_NO_NAME = _seen(
    "nn x xx xxx xxxx another aother anothername johndoe janedoe joebloggs maxmustermann mustermann ka tofollow "
    "jdoe jbloggs erikamustermann emustermann mmustermann yourname namehere testuser thirdparty athirdparty "
    "notifiedbody thenotifiedbody anotifiedbody inspector theinspector aninspector authorisedperson authorizedperson "
    "seedrawing seeabove asprepared bycalculation localcode thelocalcode aslocalcode bylocalcode tbdecided tbadvised "
    "tbconfirmed tbagreed"
)
#: Words for a body or an inspector outside of the works, and those that say of what kind: together they name nobody
#: where one is meant that is not known yet.
_BODIES = _seen("body company insurer insurers party person")
_ANY = _seen("a an any some independent external outside")
_OF_BODIES = _seen(
    "the of by for our their its and or boiler steam pressure vessel insurance inspecting inspection inspector "
    "inspectors approved notified authorised authorized recognised recognized accredited competent third certifying "
    "engineer engineers surveyor examiner"
)
_CROSSES = _seen("x xx xxx xxxx nn")
_STILL_TO = re.compile(r"\?|\bto (?:be|check|confirm|follow|sign)\b", re.I)
#: Family names of one letter, such as the Korean O and the Swedish Ö; other letters are marks or initials.
_ONE_LETTER = frozenset("EIOUYÅÖØ")
_TITLES = _seen("mr mrs ms miss dr prof professor sir dipl ing ir eng ceng pe")


def may_be_one_person(one: str, other: str) -> bool:
    """Whether two names can be those of one person, or one of them names several people of whom the other is one.

    Letters are compared as the eye takes them (:func:`speclint.repository.look`); the order of the words does not
    matter, and an initial stands for every name that begins with it. Where it errs, it takes two people for one.

    >>> may_be_one_person("M. Coyle", "Coyle, Mary")
    True
    >>> may_be_one_person("M. Coyle", "A. Render and m coyle")
    True
    >>> may_be_one_person("M. Coyle", "B. Thorne")
    False
    """
    ours, theirs = _words(one), _words(other)
    if not ours or not theirs:
        return False
    return "".join(ours) == "".join(theirs) or _all_among(ours, theirs) or _all_among(theirs, ours)


def people_named(text: str) -> list[str]:
    """The people whom a text names, each as it is written; a comma parts them where each has two words or more.

    What follows a comma, or stands in brackets, and is no person, such as an occupation or a mark, is left out.

    >>> people_named("A. Render, section leader"), people_named("W. Dunn (mark 7)")
    (['A. Render'], ['W. Dunn'])
    >>> people_named("M. Coyle and B. Thorne"), people_named("M. Coyle, B. Thorne"), people_named("Coyle, Mary")
    (['M. Coyle', 'B. Thorne'], ['M. Coyle', 'B. Thorne'], ['Coyle, Mary'])
    """
    found: list[str] = []
    for one in _BETWEEN_PEOPLE.split(text):
        first, *rest = _BETWEEN_PIECES.split(one)
        others = [piece for piece in rest if piece.strip() and not names_no_person(piece)]
        apart = all(len(_words(piece)) > 1 for piece in (first, *others))
        found += [first, *others] if apart else [one]
    return [one.strip() for one in found if one.strip()]


def names_another(some: str, than: str) -> bool:
    """Whether a text names somebody who can be none of those that another text names; a role alone names nobody.

    An office outside of the works is somebody, such as "the inspecting engineer": :func:`names_another_person` asks for
    a person.

    >>> names_another("M. Coyle and B. Thorne", than="Coyle, Mary"), names_another("Mary Coyle", than="M. Coyle")
    (True, False)
    >>> names_another("M. Coyle and himself", than="Coyle, Mary")
    False
    """
    if names_only_a_role(some):
        return False
    return any(not (names_only_a_role(one) or may_be_one_person(one, than)) for one in people_named(some))


def names_another_person(some: str, than: str) -> bool:
    """Whether a text names a person who can be none of those that another text names.

    >>> [names_another_person(one, than="A. Render") for one in ("A. Render, section leader", "chief draughtsman")]
    [False, False]
    >>> names_another_person("A. Render and the section leader", than="A. Render"), names_another_person("J. Li", "O")
    (False, True)
    """
    if names_no_person(some):
        return False
    return any(not (names_no_person(one) or may_be_one_person(one, than)) for one in people_named(some))


def names_only_a_role(text: str) -> bool:
    """Whether a text says nothing but which of the works' own people is meant, or that nobody is.

    A single letter that is no family name, figures, a cross, and a name that stands for any or is still to be decided
    name nobody; two initials may.

    >>> [names_only_a_role(one) for one in ("the tester", "as above", "in-house", "not required", "somebody")]
    [True, True, True, True, True]
    >>> [names_only_a_role(one) for one in ("the inspecting engineer", "works inspector M. Coyle", "A. Foreman")]
    [False, False, False]
    >>> [names_only_a_role(one) for one in ("x", "17", "xxx", "N. N.", "J.O.", "Li", "O")]
    [True, True, True, True, False, False, False]
    >>> [names_only_a_role(one) for one in ("A. N. Other", "M. Coyle (tbc)", "M. Coyle?", "T. B. Cole")]
    [True, True, True, False]
    >>> [names_only_a_role(one) for one in ("the boiler inspector", "an inspecting engineer", "Mr. X", "Mr. Li")]
    [False, True, True, False]
    >>> [names_only_a_role(one) for one in ("J. Doe", "the notified body", "notified body 0036", "T. Inspector")]
    [True, True, False, False]
    """
    words = _words(text)
    together = "".join(words)
    if text.strip() in _ONE_LETTER:
        return False
    if words and (sum(letter.isalpha() for letter in text) < 2 or together in _NO_NAME):
        return True
    if "".join(word for word in words if word not in _TITLES) in _CROSSES:
        return True
    if not UNDECIDED.isdisjoint(words) or _STILL_TO.search(text):
        return True
    if _INITIAL.search(text):
        return False
    if _is_any_body(words):
        return True
    return not _ROLES.isdisjoint(words) and _ROLES.union(_BESIDE_ROLES).issuperset(words)


def _is_any_body(words: list[str]) -> bool:
    """Whether words say of which kind a body or an inspector is, and not which; "the boiler inspector" is one."""
    some = _BODIES | _ANY
    return not some.isdisjoint(words) and some.union(_OF_BODIES).issuperset(words)


def names_no_person(text: str) -> bool:
    """Whether a text names no person: what names only a role, and an occupation or a part of an office by itself.

    >>> [names_no_person(one) for one in ("chief draughtsman", "Drawing office, CN", "level 2 examiner", "mark 7")]
    [True, True, True, True]
    >>> [names_no_person(one) for one in ("J. Li", "Ness Test House", "K. Leader", "Ed Blank")]
    [False, False, False, False]
    """
    if names_only_a_role(text):
        return True
    words = _words(_FIGURES.sub(" ", text))
    if _INITIAL.search(text):
        return False
    if {"drawing", "office"} <= set(words):
        return True
    work = _ROLES | _OCCUPATIONS | _TITLES
    said = bool(_FIGURES.search(text)) or not work.isdisjoint(words)
    return said and (work | _BESIDE_ROLES | _OF_WORK).issuperset(words)


def is_named_in(person: str, text: str) -> bool:
    """Whether a text bears the name of a person: each word of the name, first names written out or as an initial.

    Where both have initials, and none of the person's begins a word of the text, another of the same surname is meant.

    >>> is_named_in("M. Coyle", "Mary Coyle, inspecting engineer"), is_named_in("B. Thorne", "Bureau of inspection")
    (True, False)
    >>> is_named_in("Dr Mary Coyle", "M. Coyle, inspector"), is_named_in("M. Coyle", "P. Coyle, inspector")
    (True, False)
    """
    theirs = _words(text)
    own = [word for word in _words(person) if word not in _TITLES]
    whole = [word for word in own if len(word) > 1]
    if not any(word in theirs for word in whole):
        return False
    return all(word in theirs or word[0] in theirs for word in whole) and not _other_initials(own, theirs)


def _other_initials(own: list[str], theirs: list[str]) -> bool:
    initials = {word for word in own if len(word) == 1}
    if not initials or not any(len(word) == 1 for word in theirs):
        return False
    return not any(word[0] in initials for word in theirs if word not in own or word in initials)


def _all_among(some: list[str], others: list[str]) -> bool:
    return all(any(_same_word(word, other) for other in others) for word in some)


def _same_word(one: str, other: str) -> bool:
    if 1 in (len(one), len(other)):
        return one[0] == other[0]
    return one == other


def _words(name: str) -> list[str]:
    return [word for word in _BETWEEN_WORDS.split(look(name)) if word]
