"""Words of how much was examined: which take some away, which are known; by what they mean in the trade."""

from __future__ import annotations

import pytest

from speclint_release.inputs.examinations import worded
from speclint_release.inputs.known_words import Words, understood
from speclint_release.inputs.outcomes import as_examined


def read(text: str, beside: str = "") -> Words:
    """The words of a text, each method a number in marks."""
    return understood(*("; ".join(words for _, words in worded(one)) for one in (text, beside)))


#: Said of all of it, or of nothing that could be less.
PLAIN = (
    *(
        "all pressure-retaining welds",
        "all butt welds with 10 % overlap of the films",
        "all joints, acceptance level 2, recording level 50 % of DAC",
        "all joints 24 h after welding, repeated 48 h after stress relief",
        "all fillets, type II",
    ),
    *(
        "UT",
        "the whole part",
        "all welds",
        "every butt weld",
        "100 % of the welds",
        "full length of all joints",
        "all welds over their full length",
        "all of the rod and its thread",
        "the whole rod with its threads",
    ),
    *(
        "all 8 butt welds",
        "5 of 5 welds",
        "every one of them",
        "all over",
        "RT of the three welds",
        "both seams",
    ),
    *("UT of all welds, no indications", "all welds, without recordable indications found", "free of cracks"),
    *("all welds without exception", "all welds, none left out", "no exceptions", "no weld missed"),
    *("RT to EN ISO 17636-1, class B", "MT to ASTM E709, procedure NDT-07 rev B", "to drawing CN-P-12"),
    *("see report NDT-0610", "report of 2026-05-20", "sheet 1 of 3", "UT to EN ISO 17640, level B"),
    *("every joint, scanned at 20 % DAC", "all welds, sensitivity of films 2 %", "RT better than 2 %"),
    *("UT, 4 MHz, 45 ° probe", "RT, Ir-192", "X-ray 200 kV", "all, taper 1 in 10", "not less than 100 %"),
    *("full penetration welds", "heat-affected zones", "no spot checks", "instead of spot films, all"),
    *(
        "two films of each weld",
        "in two directions",
        "UT after the test",
        "MT before hydraulic test",
        "RT nos 1 to 8",
    ),
    *("all joints in the presence of the inspector", "witnessed by the surveyor", "RT 1-16 of all welds"),
    *("from both sides", "inside and outside", "longitudinal and circumferential seams"),
    *(
        "all circumferential and longitudinal seams",
        "probes as agreed",
        "sensitivity 2 %",
        "alle Schweißnähte",
    ),
    *("further ones as the surveyor picks", "extra films", "UT of all, angle 70 °"),
    *(
        "MT, fluorescent, wet",
        "one weld in ten",
        "a tenth of the seams",
        "every other seam",
        "3/5 of the welds",
    ),
    *("half of the welds", "25 % of the length", "200 mm of each metre", "the rest", "ganze Naht"),
    *(
        "all round, both faces",
        "from both ends",
        "root and cap of each weld",
        "all, after repair",
        "before fitting",
    ),
    *(
        "MT, longitudinal and circular magnetisation",
        "RT, double wall, single image",
        "UT, straight beam",
        "all 24 off",
    ),
    *(
        "all machined surfaces",
        "every ground face",
        "MT by AC yoke",
        "UT, scanned, quality class 3",
        "weld repaired",
    ),
    *("90 % of the volume", "10 % of the surface", "prior to turning", "following grinding"),
    *("in the rough; when ground", "before and after turning", "after final machining", "as welded"),
    *(
        "RT per ASME Section V Article 2",
        "RT to ASME VIII Div 1 UW-51",
        "EN ISO 5817 B",
        "RT per B31.1 para 136.4.5",
    ),
    *(
        "RT, DWDI, 2 exposures 90 deg apart",
        "RT, SWSI, panoramic exposure",
        "RT, density 2.3 to 3.0, wire IQI",
    ),
    *("PT, red dye, dwell 15 min, water washable", "solvent removable, 20 min dwell", "all welds of 12.3.26"),
    *(
        "shop and site welds",
        "RT, density as film",
        "all, acc. to EN ISO 5817 B",
        "MT, OK",
        "nach EN ISO 17640",
        "one film in four",
        "testing group 3a",
    ),
)


@pytest.mark.parametrize("text", PLAIN)
def test_each_word_is_known_and_none_takes_any_away(text: str) -> None:
    assert not any(read(text))


#: Said of less, or that it was not done.
LESS = (
    *("not possible", "was not accessible", "never examined", "not fully done", "inaccessible", "unexamined"),
    *(
        "impossible",
        "not got at",
        "nicht reachable",
        "only the butts",
        "just the welds",
        "partial",
        "partially",
    ),
    *(
        "partly",
        "in part",
        "a portion",
        "the front half",
        "halves",
        "mostly",
        "mainly",
        "at most all",
        "up to all",
    ),
    *(
        "some",
        "few",
        "several",
        "most",
        "majority",
        "nearly",
        "almost",
        "left out",
        "omitted",
        "missed",
        "skipped",
    ),
    *(
        "part",
        "a part",
        "part of it",
        "parts of the welds",
        "0 %",
        "0.0 per cent",
        "all except two",
        "other than",
    ),
    *(
        "three of them",
        "2 of the welds",
        "one of these",
        "spot",
        "random samples",
        "butt weld 1 only",
        "first weld",
    ),
)


@pytest.mark.parametrize("text", LESS)
def test_words_that_surely_take_some_away(text: str) -> None:
    assert read(text).less == [text.casefold()]


@pytest.mark.parametrize(
    "text",
    [
        *(
            "the part",
            "the whole part",
            "entire part",
            "this part",
            "each part",
            "every part",
            "the full part",
        ),
        *("complete part", "part 3", "partial penetration welds", "all of them", "each of the welds", "10 %"),
    ],
)
def test_words_that_take_none_away(text: str) -> None:
    assert read(text).less == []


@pytest.mark.parametrize(
    "text", ["where accessible", "as agreed", "at the surveyor's choice", "as far as possible"]
)
def test_words_that_may_take_some_away(text: str) -> None:
    assert read(text) == Words([], [text], [], [])


@pytest.mark.parametrize(
    ("text", "strange"),
    [
        ("at crossings", ["crossings"]),
        ("upper side", ["upper", "side"]),
        ("over 200 mm", ["200 mm"]),
        ("waived", ["waived"]),
        ("150 %", ["150 %"]),
        ("not by night", ["not", "night"]),
        ("none", ["none"]),
        ("if cold, where thin", ["if", "cold", "where", "thin"]),
        ("welder's end", ["welder's", "end"]),
        ("12.5 mm and 0,8 mm deep", ["12.5 mm", "0,8 mm", "deep"]),
        ("at 3.7 bar", ["3.7 bar"]),
        ("crown-3a; K7/2", ["crown-3a", "K7/2"]),
        ("butt-weld and full-length", []),
        ("8 butt welds", ["8 butt welds"]),
        ("a weld", ["a weld"]),
        ("24 off", ["24 off"]),
        ("one weld in ten, the whole length", ["one weld in ten; the whole length"]),
        ("all joints, 10 % of each", ["10 %"]),
    ],
)
def test_words_that_are_not_known(text: str, strange: list[str]) -> None:
    assert understood(text.replace(", ", "; ")).strange == strange


def test_welds_by_their_numbers_may_be_all_there_are() -> None:
    assert understood("welds 1 to 3") == Words([], [], [], ["welds 1 to 3"])
    assert understood("butt welds 1, 2 and 4; all") == Words([], [], [], ["butt welds 1", "2 and 4"])
    assert understood("W1 to W4").numbered == ["w1 to w4"]
    assert understood("welds 1 through 6").numbered == ["welds 1 through 6"]
    assert understood("welds 1; 2; 5 and 6: all") == Words([], [], [], ["welds 1", "2", "5 and 6"])
    assert understood("welds 1 to 4; 2 mm").strange == ["2 mm"]


@pytest.mark.parametrize(
    ("text", "beside", "found"),
    [
        ("MT of the rim", "rim by MT", Words([], [], [], [])),
        ("MT of the hub", "rim by MT", Words([], [], ["hub"], [])),
        ("MT of the rim only", "rim only by MT", Words(["of the rim only"], [], [], [])),
        ("MT, rim only", "rim only, by MT", Words([], [], [], [])),
        ("MT of category A joints", "all category A joints by MT", Words([], [], [], [])),
        ("MT of category B joints", "category A joints by MT", Words([], [], ["category B joints"], [])),
        ("MT of welds of sheet 2", "all welds by MT", Words([], [], ["welds of sheet 2"], [])),
        ("MT of studs of class 8.8", "studs by MT", Words([], [], [], [])),
        ("MT at each end", "both ends by MT", Words([], [], [], [])),
        ("MT at each end", "MT of the rod", Words([], [], ["at each end"], [])),
        ("MT at both ends", "MT of the rod", Words([], [], ["at both ends"], [])),
        ("MT, not the rim", "no MT where the rim is thin", Words([], [], ["not"], [])),
    ],
)
def test_the_words_of_the_drawing_are_known(text: str, beside: str, found: Words) -> None:
    """A clause word for word as the drawing has it; elsewhere its words, save those that deny or limit."""
    assert read(text, beside) == found


@pytest.mark.parametrize(
    "words",
    [
        "liquid ⟨0⟩, acceptance level 2",
        "⟨0⟩ by level 2 personnel",
        "operator to ISO 9712",
        "⟨0⟩, AC yoke, two directions",
        "⟨0⟩, 3 exposures each",
        "black ink on white contrast paint",
        "100 pct",
        "⟨0⟩ of all tees and butts",
        "phased-array ⟨0⟩",
        "to ITP CN-Q-12 rev B",
    ],
)
def test_words_that_shops_write_are_understood(words: str) -> None:
    assert not any(understood(words))


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("all, 4 repaired", "all,"),
        ("all, 4 of 36 welds repaired and re-radiographed", "all,"),
        ("all, one repair, re-shot after repair, clear", "all, , , clear"),
        ("defects at W12 and W17 cut out and re-welded, re-tested", ","),
        ("weld 7 ground out", "weld 7"),
        ("of 4 repaired welds", "of 4 repaired welds"),
        ("of two repairs", "of two repairs"),
        ("all, isolated porosity, acceptable to class B", "all,  to class B"),
        ("root undercut 0.3 mm in weld 2, accepted", ""),
        ("one slag line 3 mm long", ""),
        ("slag inclusions below recording level", ""),
        ("porosity", "porosity"),
        ("two cracks 2 mm long, accepted", "two cracks 2 mm long, accepted"),
        ("welds 1 to 3, all clear", "welds 1 to 3,"),
        ("welds 1 to 3, all were accepted", "welds 1 to 3,"),
        ("see full report", "see"),
        ("results: satisfactory", ""),
        ("100 %, ohne Befund", "100 %,"),
        ("keine unzulässigen Anzeigen", ""),
        ("rest of it", "rest of it"),
        ("all, some minor spatter dressed off", "all,"),
        ("5 of 48 studs, none rejected", "5 of 48 studs,"),
        ("100 %, nil", "100 %,"),
        ("nil access", "nil access"),
        ("all, root accepted", "all,"),
        ("pre-tested", "pre-tested"),
    ],
)
def test_what_is_said_of_the_outcome_is_no_extent(text: str, left: str) -> None:
    assert as_examined(text).strip() == left


@pytest.mark.parametrize(
    ("text", "less", "strange"),
    [
        ("the rim and its bolts", False, True),
        ("all of the rod and its thread partly", True, True),
        ("all of the rod but not its thread", False, True),
        ("thread and its runout", False, True),
        ("MT, its thread", False, True),
    ],
)
def test_what_a_part_has_besides_takes_nothing_away_and_adds_no_whole(
    text: str, less: bool, strange: bool
) -> None:
    found = read(text)
    assert (bool(found.less), bool(found.strange)) == (less, strange)
