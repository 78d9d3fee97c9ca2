"""Words of how much was examined, and when: which take some away, which are known; by what they mean in the trade."""

from __future__ import annotations

import pytest

from speclint_release.inputs.examinations import worded
from speclint_release.inputs.known_words import Words, understood
from speclint_release.inputs.outcomes import as_examined
from speclint_release.inputs.recorded_extents import (
    Recorded,
    not_shown,
    not_understood,
    out_of_stage,
    recorded,
    too_little,
)
from speclint_release.inputs.stages import stages


def read(text: str, beside: str = "") -> Words:
    """The words of a text, each method a number in marks."""
    return understood(*("; ".join(words for _, words in worded(one)) for one in (text, beside)))


def words_in_doubt(asked: str, made: list[Recorded]) -> list[str]:
    """The words of the records in doubt that are not understood, and those that may leave some out."""
    told = (word for one in not_understood(asked, made) for word in (*one.strange, *one.may_leave_out))
    return list(dict.fromkeys(told))


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
    ("text", "found"),
    [
        ("in the rough", [(True, "machining")]),
        ("as forged", [(True, "machining")]),
        ("before welding", [(True, "welding")]),
        ("prior to turning", [(True, "machining")]),
        ("following turning", [(False, "machining")]),
        ("after stress relief", [(False, "heat treatment")]),
        ("after PWHT", [(False, "heat treatment")]),
        ("when hardened", [(False, "heat treatment")]),
        ("after rough turning", [(False, "rough machining")]),
        ("when bored", [(False, "machining")]),
        ("once it is ground", [(False, "grinding")]),
        ("as finished", [(False, "finishing")]),
        ("when finish turned", [(False, "finishing")]),
        ("after turning and grinding", [(False, "grinding")]),
        ("before turning or grinding", [(True, "machining")]),
        ("before and after turning", [(True, "machining"), (False, "machining")]),
        ("turned bore", []),
        ("when cold", []),
        ("rough turned", [(False, "rough machining")]),
        ("in the rough-machined condition", [(False, "rough machining")]),
        ("vorgedreht", [(False, "rough machining")]),
        ("machined", [(False, "machining")]),
        ("machined all over", [(False, "machining")]),
        ("in the machined state", [(False, "machining")]),
        ("bearbeitet", [(False, "machining")]),
        ("finish machined", [(False, "finishing")]),
        ("finish-turned", [(False, "finishing")]),
        ("finish ground", [(False, "finishing")]),
        ("finished", [(False, "finishing")]),
        ("finished machined", [(False, "finishing")]),
        ("fertig bearbeitet", [(False, "finishing")]),
        ("ground", [(False, "grinding")]),
        ("geschliffen", [(False, "grinding")]),
        ("on completion of machining", [(False, "machining")]),
        ("after finish grinding", [(False, "finishing")]),
        ("in black condition", [(True, "machining")]),
        ("im Schmiedezustand", [(True, "machining")]),
        ("machined faces", []),
        ("finish machined faces", []),
        ("finished after 3 h", []),
    ],
)
def test_a_stage_by_its_words(text: str, found: list[tuple[bool, str]]) -> None:
    """Of several steps together the last is the one that it comes after, and the first that it comes before."""
    order = ("welding", "heat treatment", "rough machining", "machining", "grinding", "finishing")
    assert [(one.before, order[one.step]) for one in stages(text)] == found


@pytest.mark.parametrize(
    ("asked", "made", "ends"),
    [
        ("after turning", "after turning", "shown"),
        ("after turning", "when ground", "shown"),
        ("after turning", "", "shown"),
        ("after turning", "before turning", "wrong"),
        ("after turning", "in the rough", "wrong"),
        ("after turning", "before welding", "wrong"),
        ("after turning", "before grinding", "unclear"),
        ("after turning", "after stress relief", "unclear"),
        ("before turning", "before welding", "shown"),
        ("before turning", "in the rough", "shown"),
        ("before turning", "after rough turning", "shown"),
        ("before turning", "after turning", "wrong"),
        ("before turning", "before grinding", "unclear"),
        ("before turning", "rough turned", "shown"),
        ("before turning", "finish turned", "wrong"),
        ("after turning", "finish machined", "shown"),
        ("after turning", "rough turned", "unclear"),
        ("before and after turning", "after turning", "wrong"),
        ("", "before turning", "shown"),
    ],
)
def test_a_record_at_the_stage_that_is_asked_for(asked: str, made: str, ends: str) -> None:
    """What is before an earlier step is before a later one, and what is after a later step is after an earlier one."""
    wrong, unclear = out_of_stage(f"MT {asked}", recorded(f"MT {asked}", [(f"MT {made}", "all")]))
    assert (bool(wrong), bool(unclear)) == (ends == "wrong", ends == "unclear")


def test_one_of_several_records_is_of_the_stage() -> None:
    asked = "MT before and after turning"
    both = [("MT before turning", ""), ("MT after turning", "")]
    assert out_of_stage(asked, recorded(asked, both)) == ([], [])
    assert out_of_stage(asked, recorded(asked, [*both[:1], ("MT", "")])) == ([], [])
    ((said,), _) = out_of_stage(asked, recorded(asked, both[:1]))
    assert said == "magnetic particle before turning, after turning is asked for"


def test_the_stage_of_one_method_is_not_that_of_another() -> None:
    asked = "UT in the rough, MT when ground"
    assert out_of_stage(asked, recorded(asked, [("UT in the rough, MT when ground", "")])) == ([], [])
    wrong, _ = out_of_stage(asked, recorded(asked, [("UT when ground, MT in the rough", "")]))
    assert len(wrong) == 2


@pytest.mark.parametrize(
    ("asked", "records", "left"),
    [
        ("PT of faces and fillets", [("PT", "faces")], ["fillet by penetrant"]),
        ("PT of faces and fillets", [("PT", "faces"), ("PT", "fillets")], []),
        ("PT of faces and fillets", [("PT", "faces and fillets")], []),
        ("PT of faces and fillets", [("PT", "the whole part")], []),
        ("PT of faces and fillets", [("PT of the faces", "all over")], []),
        ("PT of faces and fillets", [("PT", "")], []),
        ("PT of faces and fillets", [("PT", "faces"), ("PT", "")], []),
        ("PT", [("PT", "faces")], []),
        ("RT of butts, MT of fillets", [("RT and MT", "butts")], ["fillet by magnetic particle"]),
        ("RT of butts", [("RT of fillets", "the whole part")], ["butt by radiographs"]),
        ("RT or UT of butts and fillets", [("UT", "butts"), ("RT", "butts and fillets")], []),
    ],
)
def test_places_that_no_record_names(asked: str, records: list[tuple[str, str]], left: list[str]) -> None:
    assert not_shown(asked, recorded(asked, records)) == left


@pytest.mark.parametrize(
    ("asked", "records", "doubtful"),
    [
        ("MT", [("MT", "crown")], ["crown"]),
        ("MT", [("MT", "crown"), ("MT", "all")], []),
        ("MT", [("MT", "where accessible")], ["where accessible"]),
        ("MT", [("MT", "front half"), ("MT", "back half")], ["front", "front half", "back", "back half"]),
        ("MT", [("MT", "?")], ["?"]),
        ("MT", [("all welds by MT but weld 3", "")], ["but"]),
        ("MT, all but the hub", [("MT, all but the hub", "")], ["but"]),
        ("MT", [("UT", "crown")], []),
        ("MT", [("MT", "UT of the crown")], []),
        ("MT", [("MT", "whole piston")], []),
        ("MT", [("MT", "welds 1 to 3")], []),
        ("MT", [("MT, 4 repaired and re-tested by MT", "all")], []),
        ("MT", [("MT", "all, two indications under 1.5 mm, accepted")], []),
        ("MT", [("MT", "all, two cracks under 1.5 mm, accepted")], ["two", "cracks", "under", "1.5 mm"]),
        ("MT", [("MT", "all, 2 indications")], ["2", "indications"]),
        ("MT", [("MT to be done after turning", "")], ["to be done"]),
        ("MT", [("MT to be done", ""), ("MT", "all")], []),
    ],
)
def test_records_that_are_not_understood(
    asked: str, records: list[tuple[str, str]], doubtful: list[str]
) -> None:
    """Two halves may be the whole: that is not told as a part, but no record says that they are."""
    made = recorded(asked, records, "piston")
    assert words_in_doubt(asked, made) == doubtful
    assert too_little(asked, made) == []


@pytest.mark.parametrize(
    ("method", "extent", "says"),
    [
        ("MT", "repaired areas", "repaired areas"),
        ("MT of 2 repaired welds", "", "of 2 repaired welds"),
        ("MT of repairs", "", "of repairs"),
        ("MT", "Stichproben", "stichproben"),
        ("MT", "the front half; the back was not accessible", "the front half, the back was not accessible"),
        ("MT of all of it not possible", "the whole part", "of all of it not possible"),
        ("MT, three of them", "the whole part", "three of them"),
        ("MT, all other than the hub", "", "all other than the hub"),
        ("MT of all but the hub", "", "MT of all but the hub"),
        ("MT", "faces only", "faces only"),
    ],
)
def test_a_record_of_a_part_says_which_words_say_so(method: str, extent: str, says: str) -> None:
    made = recorded("MT", [(method, extent)])
    assert too_little("MT", made) == [f"magnetic particle of samples or a part: {says}"]


@pytest.mark.parametrize(
    ("extent", "short"),
    [
        ("200 mm of each metre", ["magnetic particle of 20%"]),
        ("20 cm in every m", ["magnetic particle of 20%"]),
        ("over 250 mm per 1 metre", ["magnetic particle of 25%"]),
        ("4 in. of each foot", ["magnetic particle of 33.33%"]),
        ("4 in of each foot", ["magnetic particle of 33.33%"]),
        ("9 inches of every 36 inches", ["magnetic particle of 25%"]),
        ("995 mm of each metre", []),
        ("985 mm of each metre", ["magnetic particle of 98.5%"]),
        ("5 mm of 20 mm wall", []),
        ("5 mm of 0 mm", []),
    ],
)
def test_so_much_of_each_length(extent: str, short: list[str]) -> None:
    """Shares by hand: 200 of 1000 mm, 4 of 12 in, 9 of 36 in; up to one in a hundred is lost in rounding."""
    assert too_little("MT", recorded("MT", [("MT", extent)])) == short


EACH = "radiographs of butt welds and magnetic particle on fillets"


@pytest.mark.parametrize(
    ("extent", "short"),
    [
        ("butt welds 10 %, fillets 100 %", ["radiographs of 10%"]),
        ("butt welds 100 %; fillets 10 %", ["magnetic particle of 10%"]),
        ("butt welds 100 %, fillets 100 %", []),
        ("the whole part", []),
        ("10 %", ["radiographs of 10%", "magnetic particle of 10%"]),
    ],
)
def test_an_extent_of_each_sort_of_weld_is_that_of_its_method(extent: str, short: list[str]) -> None:
    asked = "all butt welds radiographed, fillets by magnetic particle"
    assert too_little(asked, recorded(asked, [(EACH, extent)])) == short


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


def test_what_was_examined_again_is_not_all() -> None:
    asked = "RT of butts"
    assert too_little(asked, recorded(asked, [("RT 10 %, 2 repaired and re-radiographed", "")])) == [
        "radiographs of 10%"
    ]


@pytest.mark.parametrize(
    ("extent", "shown"),
    [
        ("welds 1 to 3, from both sides", False),
        ("welds 1 to 3, full length", False),
        ("welds 1 to 3, each film of class B", False),
        ("welds 1 to 3, all clear", False),
        ("welds 1 through 3", False),
        ("welds 1 to 3, 100 %", True),
        ("welds 1 to 3, all", True),
        ("full length", True),
    ],
)
def test_the_whole_of_some_welds_is_not_every_weld(extent: str, shown: bool) -> None:
    """Of how many there are no drawing tells: what is said to be all is taken for it."""
    asked = "RT of all butts"
    assert not_shown(asked, recorded(asked, [("RT", extent)])) == (
        [] if shown else ["that all was examined, by radiographs"]
    )


def test_what_is_excepted_of_one_method_is_not_of_another() -> None:
    asked = "RT of butts, MT of fillets"
    made = recorded(asked, [("RT of all butts except the last, MT of fillets", "")])
    assert too_little(asked, made) == ["radiographs of samples or a part: of all butts except the last"]


def test_all_welds_of_a_pipe_are_girth_welds() -> None:
    for called, doubtful in (("steam pipe", []), ("cylinder block", ["girth"])):
        made = recorded("RT of all butts", [("RT", "all girth welds")], called)
        assert words_in_doubt("RT of all butts", made) == doubtful


@pytest.mark.parametrize(
    "extent",
    [
        "entire ground surface",
        "the whole machined surface",
        "hub fillets included",
        "whole part, hub fillets and keyway included",
        "all, including the keyway",
        "all, incl. the keyway",
        "25 mm of plate on each side",
        "welds and 25 mm of parent metal on both sides",
        "welds plus 10 mm each side",
        "welds and 1 in. of plate either side of the weld",
        "scanning from one side",
        "all welds, scanned from the outside",
        "each pass",
        "every layer",
        "root and final runs",
        "root pass and cap",
        "all, end to end",
        "all round, 360°",
        "all, 45° and 70° probes",
        "two exposures 90° apart",
        "100 pct",
        "100 p.c.",
        "gesamte Oberfläche",
        "ganze Nahtlänge",
        "vollständig",
        "alle Flächen",
        "Prüfumfang: 100 %",
        "zu 100 %",
        "100 v.H.",
        "allseitig",
    ],
)
def test_ordinary_words_that_leave_nothing_out(extent: str) -> None:
    """As shops in England, Germany and America write them: what is added, how it was done, and all of it."""
    made = recorded("MT", [("MT", extent)])
    assert too_little("MT", made) == []
    assert words_in_doubt("MT", made) == []


@pytest.mark.parametrize(
    ("extent", "doubtful"),
    [
        ("one end", ["end"]),
        ("both ends", ["ends"]),
        ("at both ends", ["at both ends"]),
        ("at each end", ["at each end"]),
        ("all, 180°", ["180°"]),
        ("90° of the circumference", ["90°"]),
        ("nil", ["nil"]),
        ("none", ["none"]),
        ("-", ["-"]),
        ("hub fillets not included", ["hub", "not", "included"]),
        ("without the rim, hub included", ["without", "rim"]),
        ("300 mm at each end", ["at each end", "300 mm"]),
        ("one side of each web", ["side", "web"]),
        ("10 mm on one side", ["10 mm", "side"]),
        ("ohne Bohrung", ["ohne", "Bohrung"]),
        ("soweit zugänglich", ["where accessible"]),
        ("wo möglich", ["where accessible"]),
    ],
)
def test_ordinary_words_that_may_leave_some_out(extent: str, doubtful: list[str]) -> None:
    made = recorded("MT", [("MT", extent)])
    assert too_little("MT", made) == []
    assert words_in_doubt("MT", made)[: len(doubtful)] == doubtful


@pytest.mark.parametrize(
    ("extent", "short"),
    [
        ("jede zehnte Naht", "10%"),
        ("jede 5. Schraube", "20%"),
        ("10 v.H.", "10%"),
        ("ein Zehntel der Nähte", "10%"),
        ("zwei Drittel der Nähte", "66.67%"),
        ("die Hälfte der Nähte", "50%"),
        ("3 von 12 Nähten", "25%"),
        ("drei von zehn Nähten", "30%"),
        ("Prüfumfang mind. 10 %", "10%"),
        ("two thirds", "66.67%"),
        ("three-quarters of the welds", "75%"),
        ("2/3 of the length", "66.67%"),
        ("half of circumference", "50%"),
        ("each tenth weld", "10%"),
        ("1:10", "10%"),
        ("min. 10 %", "10%"),
        ("10 % min.", "10%"),
        ("approx. 90 %", "90%"),
        ("90 % coverage", "90%"),
        ("10 to 20 %", "20%"),
        ('6" per 5 ft', "10%"),
        ("teilweise", "samples or a part: partly"),
        ("nur Bohrung", "samples or a part: only bohrung"),
        ("alle Flächen außer Bohrung", "samples or a part: alle surface except bohrung"),
        ("stichprobenweise", "samples or a part: stichprobenweise"),
        ("one per batch", "samples or a part: one per batch"),
        ("one stud from each heat", "samples or a part: one stud from each heat"),
        ("AQL 1.0", "samples or a part: aql 1.0"),
        ("300 mm per weld", "samples or a part: 300 mm per weld"),
        ("300 mm of each weld", "samples or a part: 300 mm of each weld"),
        ("limited", "samples or a part: limited"),
        ("all, excl. the bore", "samples or a part: excluding the bore"),
        ("all, less the bore", "samples or a part: excluding the bore"),
        ("w/o bore", "samples or a part: excluding bore"),
        ("only the hub included", "samples or a part: only the hub included"),
        ("most of the hub included", "samples or a part: most of the hub included"),
    ],
)
def test_ordinary_words_that_leave_some_out(extent: str, short: str) -> None:
    """Shares by hand; of a range the most."""
    assert too_little("MT", recorded("MT", [("MT", extent)])) == [f"magnetic particle of {short}"]


@pytest.mark.parametrize(
    ("asked", "doubtful"), [("UT", []), ("UT from both sides", ["side"]), ("UT, two faces", ["side"])]
)
def test_scanning_from_one_side_is_less_where_the_drawing_asks_for_both(
    asked: str, doubtful: list[str]
) -> None:
    made = recorded(asked, [("UT", "all welds, scanning from one side")])
    assert words_in_doubt(asked, made) == doubtful


@pytest.mark.parametrize(
    ("asked", "record", "short"),
    [
        ("NDT, 10 %", ("UT", "10 %"), []),
        ("NDT, 10 %", ("MT", "5 %"), ["non-destructive testing of 5%"]),
        ("NDE 100 %", ("PT", "one weld in ten"), ["non-destructive testing of 10%"]),
        ("ZfP, 10 %", ("RT", "5 %"), ["non-destructive testing of 5%"]),
        ("zerstörungsfrei geprüft, 10 %", ("RT", "5 %"), ["non-destructive testing of 5%"]),
        ("non-destructive testing of 20 % of the welds", ("NDT", "10 %"), ["non-destructive testing of 10%"]),
        ("non-destructively examined", ("NDT", "10 %"), ["non-destructive testing of 10%"]),
        ("NDT: UT, 10 %", ("UT", "5 %"), ["ultrasound of 5%"]),
        ("NDT: UT, 10 %", ("NDT", "5 %"), []),  # no record of ultrasound at all, which is told as missing
        ("no NDT", ("UT", "5 %"), []),
        ("to NDT plan 7", ("UT", "5 %"), []),
    ],
)
def test_testing_by_no_method_is_by_any(asked: str, record: tuple[str, str], short: list[str]) -> None:
    assert too_little(asked, recorded(asked, [record])) == short


@pytest.mark.parametrize(
    ("extent", "short"),
    [
        ("all butt welds, front half", ["radiographs of samples or a part: front half"]),
        ("fillets, all, butt welds, 10 %", ["radiographs of 10%"]),
        ("butt welds, 10 %, fillets, all", ["radiographs of 10%"]),
        ("butt welds, all, fillets, 10 %", []),
        ("10 %, butt welds", ["radiographs of 10%"]),
    ],
)
def test_what_stands_behind_a_place_is_of_it(extent: str, short: list[str]) -> None:
    asked = "butt welds radiographed, all of them"
    assert too_little(asked, recorded(asked, [(asked, extent)])) == short


def test_two_methods_make_up_what_is_asked_by_any() -> None:
    made = recorded("NDT, all", [("UT", "50 %"), ("MT", "the other 50 %")])
    assert too_little("NDT, all", made) == []
    assert not_shown("NDT of all", recorded("NDT of all", [("UT", "")])) == [
        "that all was examined, by non-destructive testing"
    ]


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
