"""The words, codes and standards by which a drawing names an examination; titles of standards from memory."""

from __future__ import annotations

import pytest

from speclint_release.inputs.clauses import names_nobody
from speclint_release.inputs.examinations import (
    finds_cracks,
    methods_missing,
    methods_named,
    names_no_method,
    no_examination,
    only_tests,
)
from speclint_release.inputs.treatments import is_of_a_part, may_relieve, treatments_missing

#: EN ISO 9712 gives the codes; each standard stands with what its title says it examines.
NAMED = {
    "ultrasound": (
        *("UT of the welds", "PAUT", "TOFD", "ultrasonic, all butts", "phased array", "U.T. of the bar"),
        *("ultra-sonic test", "Ultraschallprüfung"),
        *("plate to EN 10160", "forging to EN 10228-3", "forging to EN 10228-4", "bar to EN 10308"),
        *("casting to EN 12680-1", "welds to EN ISO 17640"),
        *("forging to ASTM A388", "plate to ASTM A435", "plate to ASTM A578"),
    ),
    "radiographs": (
        *("RT, 100 %", "radiographed", "radioscopy", "X-ray", "xray", "gamma ray", "filmed"),
        *("gamma-ray, Ir-192", "Röntgenprüfung 100 %", "Durchstrahlung", "one film for each butt"),
        *("casting to EN 12681-1", "welds to EN ISO 17636-1"),
    ),
    "magnetic particle": (
        *("MT", "MPI of fillets", "MPT", "magnetic particle", "Magnaflux", "mag. particle", "MAG PARTICLE"),
        *("magnetic ink", "Magnetpulverprüfung"),
        *("casting to EN 1369", "EN ISO 9934-1", "forging to EN 10228-1", "welds to EN ISO 17638"),
        *("ASTM E709", "ASTM E1444"),
    ),
    "penetrant": (
        *("PT", "DPI", "FPI", "LPI", "dye penetrant", "oil and chalk", "oil and whiting"),
        *("dye check", "dye-pen", "dye test", "red dye", "Farbeindringprüfung"),
        *("casting to EN 1371-1", "EN ISO 3452-1", "forging to EN 10228-2", "ASTM E165", "ASTM E1417"),
    ),
    "eddy current": ("ET of the tubes", "eddy current", "welds to EN ISO 17643", "Wirbelstromprüfung"),
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
    *(
        "faces blued",
        "blue to the seat",
        "bluing",
        "hammer test",
        "sounded",
        "VT",
        "LT",
        "EN ISO 17637",
        "Sichtprüfung",
    ),
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


#: Written where no examination is wanted: each names a method, and denies it before its name or behind it.
DENIED = (
    *("no MT", "no need for MT", "no requirement for MT", "never UT", "not by ultrasound", "without any UT"),
    *(
        "not subject to MT",
        "not tested by UT",
        "unexamined by ultrasound",
        "exempt from MT",
        "excused ultrasound",
    ),
    *("neither UT nor MT", "no RT or UT", "optional MT", "0 % MT", "keine Ultraschallprüfung", "ohne MT"),
    *(
        "UT waived",
        "ultrasound omitted, bar tested already",
        "MPI deleted at revision B",
        "X-ray unnecessary: seamless",
    ),
    *("MT exempt by EN 10228-1", "PT excluded", "MT may be left out", "MT need not be done", "MT cancelled"),
    *(
        "UT: none",
        "MT: -",
        "MT n/a",
        "MT 0 %",
        "RT 0%",
        "mag. particle: no",
        "UT (not applicable)",
        "UT, not required",
    ),
    *(
        "MT is no longer required",
        "MT isn't required",
        "MT is not to be done",
        "UT not carried out",
        "MT entfällt",
    ),
    *("UT or RT not required", "UT and MT not required", "MT to EN ISO 9934-1 not required"),
    *("ultrasonic test dispensed with", "MT replaced by a look", "MT instead of which it is looked at"),
)
#: Written where somebody still has to decide, or to ask.
OPEN = (
    *("UT tbd", "UT, to be agreed", "to be agreed: UT or MT", "method to be agreed (UT or MT)", "MT pending"),
    *(
        "MT will be decided later",
        "UT to follow",
        "MT optional",
        "MT on request",
        "MT at the customer's request",
    ),
    *(
        "MT if required",
        "UT, where necessary",
        "as required MT",
        "UT when specified by the purchaser",
        "RT by agreement",
    ),
    *(
        "magnetic particle where the inspector asks",
        "MT if a crack is suspected",
        "MT only if the first fails",
    ),
    *(
        "MT should it show a flaw",
        "if indications are found, UT",
        "MT where the eye shows a crack",
        "UT in case of doubt",
    ),
)
#: Words and numbers like those of a method, of which none is one.
OTHER = (
    *(
        "ultrasonic wall thickness",
        "ultrasonically cleaned",
        "X-ray fluorescence",
        "non-magnetic steel",
        "oil film",
    ),
    *("on a magnetic chuck", "drawing 3452", "see CN-C-1371", "CN-MT-7", "tensile test at RT"),
)


@pytest.mark.parametrize("text", [*DENIED, *OPEN, *OTHER])
def test_a_method_that_is_denied_or_left_open_is_not_asked_for(text: str) -> None:
    assert methods_named(text) == []


@pytest.mark.parametrize(
    ("text", "methods"),
    [
        ("ultrasound; magnetic particle not required", ["ultrasound"]),
        ("UT of the bar and MT not required", ["ultrasound"]),
        ("UT (MT omitted: no yoke at hand)", ["ultrasound"]),
        ("PT instead of MT", ["penetrant"]),
        ("MT replaced by PT", ["penetrant"]),
        ("UT 100 %; if indications are found, RT", ["ultrasound"]),
        ("no PT but MT", ["magnetic particle"]),
        ("no weld without RT", ["radiographs"]),
        ("UT, not by straight beam only", ["ultrasound"]),
        ("MT 100 %, not less than 24 h after grinding", ["magnetic particle"]),
        ("MT, no indication over 1 mm, none waived", ["magnetic particle"]),
        ("MT; if indications are found, ground out and tested again", ["magnetic particle"]),
        ("MT as required by EN 10228-1", ["magnetic particle"]),
        ("MT as necessary to cover all fillets", ["magnetic particle"]),
        ("UT where shown on the drawing", ["ultrasound"]),
        ("MT, current 0.5 kA; reports to follow within 14 days", ["magnetic particle"]),
        ("RT 10 %, 100 % of repairs", ["radiographs"]),
        ("MT required", ["magnetic particle"]),
        ("MT, prods not allowed", ["magnetic particle"]),
        ("EN ISO 9934-1, not EN ISO 3452-1", ["magnetic particle"]),
    ],
)
def test_what_is_said_of_one_method_is_not_said_of_the_others(text: str, methods: list[str]) -> None:
    assert methods_named(text) == methods


@pytest.mark.parametrize(
    ("text", "none"),
    [
        *[
            (one, True)
            for one in ("none required", "not required", "no NDT", "no examination needed", "see drawing")
        ],
        *[
            (one, True)
            for one in ("UT and MT not required", "MT if required", "no UT, no MT", "to be agreed: UT")
        ],
        *[
            (one, False)
            for one in ("looked over; UT not required", "UT; MT not required", "looked over", "visual")
        ],
    ],
)
def test_what_denies_all_asks_for_no_record(text: str, none: bool) -> None:
    assert no_examination(text) is none


@pytest.mark.parametrize(
    ("text", "only"),
    [
        *[
            (one, True)
            for one in ("hydraulic test", "leak test with soap", "hardness of the welds", "proof load")
        ],
        *[
            (one, False)
            for one in ("hydraulic test, visual", "faces blued", "RT and hardness", "looked over")
        ],
    ],
)
def test_a_test_by_a_load_or_a_figure_examines_nothing(text: str, only: bool) -> None:
    assert only_tests(text) is only


@pytest.mark.parametrize(
    ("asked", "recorded", "missing"),
    [
        ("UT in the rough, MT when ground", "UT, MT to follow", ["magnetic particle"]),
        ("UT in the rough, MT when ground", "MT; UT not done", ["ultrasound"]),
        ("UT in the rough, MT when ground", "ultrasonic thickness, MT", ["ultrasound"]),
        ("UT in the rough, MT when ground", "UT + MT", []),
        ("UT + MT", "UT", ["magnetic particle"]),
        ("RT or UT, and MT", "UT", ["magnetic particle"]),
        ("PT instead of MT", "MT", ["penetrant"]),
        ("UT; if indications are found, RT", "UT", []),
    ],
)
def test_a_record_is_read_as_the_drawing_is(asked: str, recorded: str, missing: list[str]) -> None:
    assert methods_missing(asked, [recorded]) == missing


@pytest.mark.parametrize(
    ("asked", "recorded", "missing"),
    [
        *[
            ("stress relieve", one, False)
            for one in ("PWHT 580 °C", "SR", "stress-relieved", "annealed", "N, then SR")
        ],
        *[
            ("stress relieve", one, True)
            for one in ("stress relief waived", "no stress relief: preheat", "baked")
        ],
        *[
            ("stress relieve", one, True)
            for one in ("vibratory stress relief", "solution annealed", "held at 580 °C")
        ],
        *[("temper", one, False) for one in ("Q&T", "+QT", "quenched and tempered", "hardened, tempered")],
        *[("temper", one, True) for one in ("hardened at that temperature", "not tempered", "normalised")],
        *[("harden", one, False) for one in ("Q+T", "quenched", "induction hardened", "carburized")],
        *[("nitride", one, False) for one in ("gas nitriding", "nitrocarburised")],
        *[("nitride", one, True) for one in ("tempered", "nitrided? no", "not nitrided")],
        *[
            ("case harden", one, False)
            for one in ("carburising and quenching", "case-hardened", "carbonitrided")
        ],
        *[("case harden", one, True) for one in ("flame hardened", "hardened")],
        *[("induction harden", one, False) for one in ("induction hardening", "hardened by induction")],
        *[("induction harden", one, True) for one in ("flame hardened", "no induction hardening")],
    ],
)
def test_a_heat_treatment_is_what_its_record_says(asked: str, recorded: str, missing: bool) -> None:
    """Case and induction hardening harden; whatever is annealed is relieved of stress: common practice."""
    assert treatments_missing([asked], [recorded]) == ([asked] if missing else [])


@pytest.mark.parametrize(
    ("text", "may"), [("", True), ("baked", True), ("annealed", True), ("SR", True), ("tempered", False)]
)
def test_a_treatment_that_says_nothing_else_may_relieve(text: str, may: bool) -> None:
    assert may_relieve(text) is may


@pytest.mark.parametrize(
    ("text", "nobody"),
    [
        *[
            (one, True)
            for one in ("not required", "no body", "none yet qualified", "nobody", "whoever the code names")
        ],
        *[
            (one, True)
            for one in ("to follow", "open", "waived", "yes", "as required", "see contract", "keine")
        ],
        *[
            (one, True)
            for one in ("a notified body to be chosen", "pending", "TBC by the owner", "any welder on shift")
        ],
        *[
            (one, True)
            for one in ("local code", "the competent body", "an authorised inspector", "the procedure")
        ],
        *[
            (one, False)
            for one in ("No. 3 district office", "No 3 district office", "W. Open, surveyor", "WPS-12")
        ],
        *[
            (one, False)
            for one in ("Notified body 0000", "the inspecting engineer of the railway", "Nottage and Sons")
        ],
        *[
            (one, False)
            for one in ("W. Dunn, mark 7", "A. S. Noon, chartered engineer", "the local code office")
        ],
    ],
)
def test_a_text_that_names_nobody(text: str, nobody: bool) -> None:
    assert names_nobody(text) is nobody


@pytest.mark.parametrize(
    "said",
    [
        "stress relieve, the saddle only",
        "stress relief, only the front end",
        "stress relief, half of the block",
        "stress relieve, barrel seams",
        "stress relieve partly",
        "stress relief interrupted",
        "nur der Sattel spannungsarmgeglüht",
    ],
)
def test_a_heat_treatment_of_a_part_or_broken_off_is_none_of_the_whole(said: str) -> None:
    assert is_of_a_part(said, "cylinder block")


@pytest.mark.parametrize(
    "said",
    [
        "stress relief in a furnace, 600 °C, 2 h",
        "stress relieved, only after all welding",
        "not only the welds: the whole, stress relieved",
        "stress relief, interrupted by a power cut and repeated",
        "normalized and tempered, uninterrupted",
        "stress relief, whole cylinder block",
    ],
)
def test_a_heat_treatment_of_the_whole_is_taken_as_one(said: str) -> None:
    assert not is_of_a_part(said, "cylinder block")


@pytest.mark.parametrize("said", ["stress relieving by vibration", "vibratory stress relief"])
def test_vibration_relieves_as_no_furnace_does(said: str) -> None:
    assert treatments_missing(["stress relieve"], [said]) == ["stress relieve"]
