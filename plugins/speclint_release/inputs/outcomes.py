"""What the record of an examination says of how it came out, beside how much was examined: it limits nothing."""

from __future__ import annotations

import re

from speclint_release.inputs.extents import COUNT

_SOME = rf"(?:{COUNT}|an?|all|both|some|several|a few)"
_PLACES = (
    r"(?:welds?|joints?|seams?|butts?|fillets?|places?|areas?|spots?|films?|defects?|indications?|pores?"
    r"|lengths?)"
)
_METHOD = (
    r"(?:UT|RT|MT|PT|MPI|DPI|ultrasound|films?|radiograph\w*|magnetic particle|(?:dye )?penetrant"
    r"|the same method)"
)
_GOOD = (
    r"(?:clear|good|o\.?k\.?|sound|accept(?:ed|able)|satisfactory|passed|in order"
    r"|within (?:the )?(?:limits?|tolerances?))"
)
#: So many places that were repaired; not the examination of what was repaired.
_REPAIRED = (
    rf"(?:(?<!weld )(?<!joint )(?<!seam )(?<!no )(?<!no\. ){_SOME} "
    rf"(?:(?:of|off|out of) (?:the |its )?(?:{COUNT} )?)?(?:[a-z]+ )?(?:{_PLACES} )?)?"
    r"(?:defects? (?:at|in) (?:welds? )?W?\d+(?:(?:,| and|-) ?W?\d+)* )?(?:was |were )?(?:weld )?"
    r"(?:repaired|(?:ground|gouged|dressed|cut) out|re-?welded|made good)(?: (?:once|twice|and re-?welded))?"
    rf"(?! {_PLACES})|(?<!of )(?<!on ){COUNT} repairs?"
)
#: That these were examined once more.
_AGAIN = (
    r"(?:and |then )*(?:all |both |each )?re-?(?:radiograph|x-?ray|shot|test|examin|inspect|check|scan|UT|RT|MT|PT)\w*"
    rf"(?: (?:by|with) {_METHOD})?(?: (?:after|following) (?:the )?repairs?)?"
)
#: Flaws that were found and are no cracks, each of a size or with a word that it is accepted.
_SIZE = (
    r"(?:(?:under|below|less than|up to|max\.?|maximum|not exceeding|of|<|≤) ?)?\d+(?:[.,]\d+)? ?mm"
    r"(?: (?:long|deep|wide|dia\w*\.?|each|max\.?))*"
)
_ACCEPTED = (
    rf"(?:all |both |each )?(?:{_GOOD}|permissible|non-?relevant|within (?:class|level|group) \w+"
    r"|below (?:the )?(?:record|report|accept|evaluat|reject)\w* (?:level|limit))"
)
_FLAW = (
    r"(?:indications?|pores?|porosity|slag(?: (?:lines?|inclusions?))?|inclusions?|undercuts?|imperfections?)"
)
_FOUND = (
    rf"(?:(?:{_SOME}|minor|small|isolated|scattered|few|slight|single|rounded|linear) )?(?:[a-z]+ ){{0,2}}?{_FLAW}"
    rf"(?: {_SIZE})?(?: (?:in|at) (?:weld ?|W)\d+)?(?:(?<=mm)|(?<=long)|(?<=each)|,? {_ACCEPTED})"
)
_CLEAR = (
    rf"(?:some|several|a few|minor|slight|{COUNT}) (?:[a-z]+ ){{0,3}}(?:dressed|removed|blended|cleaned)"
    r"(?: off| out| smooth| up)?|none (?:was |were )?reject(?:ed|able)|nil(?=$|[;,.)])|root accepted"
    rf"|all (?:were |was |found )*{_GOOD}|nothing (?:found|to report)|(?:found|results?:?) {_GOOD}"
    r"|(?:full|complete|detailed)(?:y|ly)? (?:reports?|records?|details|accept\w+|satisf\w+)(?: attached)?"
    r"|ohne (?:befund|anzeigen|beanstandung(?:en)?)|o\. ?b\.|i\. ?o\.|in ordnung|(?:anzeigen|riss|fehler)frei"
    r"|keine (?:\w+pflichtigen |unzulässigen |relevanten )?(?:anzeigen|risse|fehler|befunde)"
)
_OUTCOME = re.compile(
    "|".join(rf"(?<![\w-])(?:{one})(?!\w)" for one in (_FOUND, _REPAIRED, _AGAIN, _CLEAR)), re.I
)


def as_examined(text: str) -> str:
    """A text of a record without what it says of flaws that were accepted, of repairs, and of the outcome.

    >>> as_examined("all butt welds, 4 repaired and re-radiographed"), as_examined("RT, two indications under 1.5 mm")
    ('all butt welds,  ', 'RT, ')
    >>> as_examined("welds 1 to 3, all clear"), as_examined("of 2 repaired welds"), as_examined("two cracks, accepted")
    ('welds 1 to 3, ', 'of 2 repaired welds', 'two cracks, accepted')
    """
    return _OUTCOME.sub("", text)
