"""The words, codes and standards by which a drawing names an examination; titles of standards from memory."""

from __future__ import annotations

import pytest

from speclint_release.inputs import finds_cracks, methods_named, names_no_method

#: EN ISO 9712 gives the codes; each standard stands with what its title says it examines.
NAMED = {
    "ultrasound": (
        *("UT of the welds", "PAUT", "TOFD", "ultrasonic, all butts", "phased array"),
        *("plate to EN 10160", "forging to EN 10228-3", "forging to EN 10228-4", "bar to EN 10308"),
        *("casting to EN 12680-1", "welds to EN ISO 17640"),
        *("forging to ASTM A388", "plate to ASTM A435", "plate to ASTM A578"),
    ),
    "radiographs": (
        *("RT, 100 %", "radiographed", "radioscopy", "X-ray", "xray", "gamma ray", "filmed"),
        *("casting to EN 12681-1", "welds to EN ISO 17636-1"),
    ),
    "magnetic particle": (
        *("MT", "MPI of fillets", "MPT", "magnetic particle", "Magnaflux"),
        *("casting to EN 1369", "EN ISO 9934-1", "forging to EN 10228-1", "welds to EN ISO 17638"),
        *("ASTM E709", "ASTM E1444"),
    ),
    "penetrant": (
        *("PT", "DPI", "FPI", "LPI", "dye penetrant", "oil and chalk", "oil and whiting"),
        *("casting to EN 1371-1", "EN ISO 3452-1", "forging to EN 10228-2", "ASTM E165", "ASTM E1417"),
    ),
    "eddy current": ("ET of the tubes", "eddy current", "welds to EN ISO 17643"),
}
#: What is looked at, loaded, measured or heard, and finds no crack before it is open.
WITHOUT_CRACKS = (
    *("visual", "borescope", "endoscope", "leak test", "hydraulic test", "hydrostatic test", "pressure test"),
    *(
        "steam test",
        "proof load",
        "load test",
        "acoustic emission",
        "thermography",
        "hardness",
        "gauged",
        "gaged",
    ),
    *("faces blued", "blue to the seat", "bluing", "hammer test", "sounded", "VT", "LT", "EN ISO 17637"),
)


@pytest.mark.parametrize(
    ("method", "text"), [(method, one) for method, some in NAMED.items() for one in some]
)
def test_a_method_that_finds_cracks_is_known(method: str, text: str) -> None:
    assert methods_named(text) == [method]
    assert finds_cracks(text)
    assert not names_no_method(text)


@pytest.mark.parametrize("text", WITHOUT_CRACKS)
def test_a_method_that_finds_none_is_an_examination_still(text: str) -> None:
    assert not finds_cracks(text)
    assert not names_no_method(text)


@pytest.mark.parametrize(
    "text",
    [
        *("looked over", "by eye", "as usual", "pt", "mt", "welds to EN ISO 17641", "forging to EN 10228-5"),
        *("no radiography", "not radiographed", "none by ultrasound", "without ultrasound"),
        *(
            "radiography not required",
            "magnetic particle testing not needed",
            "ultrasound examination waived",
        ),
    ],
)
def test_other_words_name_no_method(text: str) -> None:
    """A code is in capitals, a number that of a standard held, and what is denied is not asked for."""
    assert names_no_method(text)
