"""How much of the welds the words of an examination ask for; the share is worked by hand from the words."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from speclint_release.inputs.extents import extents, says_all, share_of
from speclint_release.inputs.recorded_extents import not_shown, recorded, too_little

RULE = "weldment.extent-by-words"
HOLD, FINE, SILENT = ("finding", Grade.HOLD), ("conforms", None), ("not applicable", None)
QUERY = ("finding", Grade.QUERY)
WELDMENT = """
kind = "weldment"
id = "weldment"
examination = "{words}"
[joints.corner]
examined = "{examined}"
[joints.bracket]
weld = "fillet"
"""


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path)


def outcome(design: DesignFolder, words: str, examined: str = "100 %") -> tuple[str, Grade | None]:
    check = design.write({"weldment.toml": WELDMENT.format(words=words, examined=examined)}).only(RULE)
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("words", "share"),
    [
        *(
            ("one joint in ten", 0.1),
            ("1 in 10", 0.1),
            ("One weld in every five", 0.2),
            ("two out of four", 0.5),
        ),
        *(("one butt weld in twenty", 0.05), ("every tenth weld", 0.1), ("every other seam", 0.5)),
        *(("every 4th weld", 0.25), ("a tenth of the seams", 0.1), ("one third of them", 1 / 3)),
        *(("a quarter of all joints", 0.25), ("one-tenth part of the length", 0.1), ("half the joints", 0.5)),
        *(
            ("half of the welds", 0.5),
            ("10 %", 0.1),
            ("10% of welds", 0.1),
            ("25 per cent of all butts", 0.25),
        ),
        *(("2.5 % of the length", 0.025), ("12 % examined", 0.12), ("10 % of every seam", 0.1)),
        *(("3 of 5 welds", 0.6), ("welds: 3 of 5", 0.6), ("three of the five butt welds", 0.6)),
        *(("one ⟨0⟩ in four", 0.25), ("1 ⟨0⟩ in every 5", 0.2), ("2,5 % of the length", 0.025)),
        *(
            ("testing group 3a", 0.25),
            ("testing group 3", 0.25),
            ("Testing group 3b", 0.1),
            ("Prüfgruppe 3b", 0.1),
        ),
        *(("10 % der Nähte", 0.1), ("25 % aller Stumpfnähte", 0.25)),
        *(("3/5 of the welds", 0.6), ("6 welds of 8", 0.75), ("4 of its 5 seams", 0.8)),
        *(("20 % of the whole length", 0.2), ("one in ten of all joints; 5 % of fillets", 0.1)),
    ],
)
def test_words_that_limit_by_a_number(words: str, share: float) -> None:
    assert share_of(words) == pytest.approx(share)


@pytest.mark.parametrize(
    "words",
    [
        *(
            "spot",
            "spot checks",
            "by random sampling",
            "at random",
            "samples",
            "a sample of welds",
            "sampled welds",
        ),
        *("a few joints", "some of the welds"),
        *("partly", "partly examined", "partial examination", "partially tested"),
        *(
            "butt weld 1 only",
            "seams 1 and 3 only",
            "only weld 2",
            "first and last weld",
            "the first two welds",
        ),
        *(
            "testing group 2a",
            "testing group 4",
            "Stichproben",
            "1 ⟨0⟩ per seam",
            "one ⟨0⟩ of each weld",
            "a spot film for every seam",
            "single shot each weld",
            "one ⟨0⟩ every 2 m of seam",
            "1 exposure per 50 ft",
            "three ⟨0⟩ in every 10 m",
            "last butt weld",
            "several welds",
            "selected joints",
            "some welds as agreed",
            "some of the butt welds",
        ),
    ],
)
def test_words_that_limit_by_no_number(words: str) -> None:
    assert share_of(words) is None


@pytest.mark.parametrize(
    "words",
    [
        *(
            "",
            "all",
            "100 %",
            "every weld",
            "every one of them",
            "the whole part",
            "full length",
            "entire seam",
        ),
        *("fully", "each weld", "butt welds", "100 per cent of the length"),
        *("all of them, taper 1 in 10", "taper 1 in 10", "taper of 1 in 50", "slope 1 in 5"),
        *("one film in two directions", "one seam in 3 passes", "1 in 10 mm", "2 in one", "1 in 0"),
        *("every second year", "every tenth overhaul", "a third party", "a tenth of a millimetre"),
        *("a tenth of the wall", "a third of the thickness", "half the wall", "half of the depth"),
        *("sensitivity 2 %", "sensitivity of 2 %", "better than 2 %", "at 20 % DAC", "to 10 % of the weld"),
        *("within 5 %", "20 % DAC", "5 % of wall", "110 % of joints", "±5 % of length"),
        *(
            "spot-faced seats",
            "spot welds",
            "spot drilled",
            "focal spot 2 mm",
            "hot spot",
            "randomly oriented",
        ),
        *("test sample", "sample plate", "sample coupon", "sample of the metal", "partial penetration welds"),
        *(
            "partly machined",
            "no spot checks",
            "not by sampling",
            "without random choice",
            "full penetration",
        ),
        *("instead of spot checks, all",),
        *("5 of 5 welds", "8/8 welds", "sheet 1 of 3", "one of 2 mm", "first weld run", "butt welds only"),
        *("EN 12345/2 welds", "the last pass", "welds 1 to 8", "testing group 1a", "group 3a"),
        *("two ⟨0⟩ of each weld", "4 ⟨0⟩ per weld", "every one of the seams"),
    ],
)
def test_words_that_do_not_surely_limit(words: str) -> None:
    assert share_of(words) == 1


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("UT (spot)", [("ultrasound", None)]),
        ("UT to EN ISO 17640,10 % of welds", [("ultrasound", 0.1)]),
        ("UT of 2,5 % of welds", [("ultrasound", 0.025)]),
        ("UT of 12,5 % of welds", [("ultrasound", 0.125)]),
        ("UT of A388,50 % of welds", [("ultrasound", 0.5)]),
        ("UT, one joint in ten", [("ultrasound", 0.1)]),
        ("one joint in ten, by ultrasound", [("ultrasound", 0.1)]),
        ("UT 100 %, RT 10 %", [("ultrasound", 1.0), ("radiographs", 0.1)]),
        ("butt welds looked over and a tenth of them radiographed", [("radiographs", 0.1)]),
        ("one weld in ten by ultrasound and film", [("ultrasound", 0.1), ("radiographs", 0.1)]),
        ("UT and 10 % of welds by RT", [("ultrasound", 1.0), ("radiographs", 0.1)]),
        ("UT of all; one in ten by RT not required; MT", [("ultrasound", 1.0), ("magnetic particle", 1.0)]),
        ("looked over, one in ten", []),
        ("to be agreed: UT, one in ten", []),
        ("all joints by UT, as the inspector picks them", [("ultrasound", None)]),
        ("UT at the inspector's choice", [("ultrasound", None)]),
        ("UT of joints chosen by the surveyor", [("ultrasound", None)]),
        ("UT of all joints, probes as agreed", [("ultrasound", 1.0)]),
        ("UT of all joints, further ones as the inspector picks", [("ultrasound", 1.0)]),
        ("UT of all joints to a procedure as agreed", []),
    ],
)
def test_each_method_has_its_own_extent(text: str, found: list[tuple[str, float | None]]) -> None:
    assert [(one.methods[0], one.share) for one in extents(text)] == found


@pytest.mark.parametrize(
    ("asked", "records", "short"),
    [
        ("RT of all butts", [("film", "one weld in ten")], ["radiographs of 10%"]),
        ("RT of butts", [("film", "10 %")], ["radiographs of 10%"]),
        ("RT of butts", [("film, one weld in ten", "")], ["radiographs of 10%"]),
        ("RT of butts", [("film of half the welds", "20 % of the welds")], ["radiographs of 20%"]),
        ("RT of butts", [("film", "spot checks")], ["radiographs of samples or a part: spot checks"]),
        ("RT of butts", [("film", "RT 10 %, MT all")], ["radiographs of 10%"]),
        ("RT of butts", [("film", "MT 10 %, RT all")], []),
        ("RT of butts", [("film", "MT 10 %")], []),
        ("RT of butts, MT of fillets", [("RT", "all"), ("MT", "1 in 4")], ["magnetic particle of 25%"]),
        ("RT of butts", [("film", "50 %"), ("RT", "50 %")], []),
        ("RT of butts", [("film", "50 %"), ("RT", "48.9 % of welds")], ["radiographs of 98.9%"]),
        ("RT of butts", [("film", "99 %")], []),
        ("RT of butts", [("film", "98 %")], ["radiographs of 98%"]),
        ("RT of butts", [("film", "98.99 %")], ["radiographs of 98.99%"]),
        ("RT of butts", [("film", "the whole part")], []),
        ("RT of butts", [("film", "first weld")], ["radiographs of samples or a part: first weld"]),
        ("RT of butts", [("film", "first weld"), ("film", "last weld")], []),
        ("RT of butts", [("film", "3 of 5 welds")], ["radiographs of 60%"]),
        ("RT of butts", [("UT", "10 %")], []),
        ("UT or RT of butts", [("RT", "10 %"), ("UT", "all")], []),
        ("UT or RT of butts", [("RT", "10 %"), ("UT", "20 %")], ["ultrasound of 20%"]),
        ("one stud in ten by MT", [("MT", "every tenth")], []),
        ("one stud in ten by MT", [("MT", "one stud in twenty")], ["magnetic particle of 5%"]),
        ("one stud in ten by MT", [("MT", "samples")], []),
        ("spot RT", [("RT", "one in fifty")], []),
        ("RT of butts", [("RT", "RT-3")], ["radiographs of samples or a part: spot"]),
        ("RT of butts", [("RT", "report RT-3")], []),
        ("RT of butts", [("RT-3", "butts")], []),
        ("looked over", [("MT", "10 %")], []),
    ],
)
def test_records_that_cover_less_than_is_asked(
    asked: str, records: list[tuple[str, str]], short: list[str]
) -> None:
    assert too_little(asked, recorded(asked, records)) == short


@pytest.mark.parametrize(
    "words",
    [
        *(
            "all",
            "100 %",
            "every weld",
            "every one",
            "each weld",
            "both welds",
            "5 of 5 welds",
            "the whole part",
        ),
        *("complete", "full length", "throughout", "99.5 % of them; all"),
    ],
)
def test_words_that_say_that_it_is_all(words: str) -> None:
    assert says_all(words)


@pytest.mark.parametrize(
    "words",
    [
        "",
        "butt welds",
        "welds 1 to 3",
        "3 of 5 welds",
        "10 % of each weld",
        "spot films of each one",
        "as agreed",
    ],
)
def test_words_that_do_not_say_that_it_is_all(words: str) -> None:
    assert not says_all(words)


@pytest.mark.parametrize(
    "asked", ["butt welds radiographed, all of them", "every butt weld by RT", "RT 100 %"]
)
@pytest.mark.parametrize(
    "extents_on_record",
    [
        *([""], ["welds 1 to 3"], ["as agreed"], ["all welds where accessible"], ["all accessible welds"]),
        *(["all but weld 3"], ["all, as the inspector picks"], ["the rest"], ["50 %", "48.9 % of the welds"]),
    ],
)
def test_all_is_asked_for_and_no_record_says_that_it_was_all(
    asked: str, extents_on_record: list[str]
) -> None:
    made = recorded(asked, [("film", one) for one in extents_on_record])
    assert not_shown(asked, made) == ["that all was examined, by radiographs"]


@pytest.mark.parametrize(
    ("asked", "records"),
    [
        ("RT of all butts", [("RT", "every one")]),
        ("RT of all butts", [("all butts by film", "")]),
        ("RT of all butts", [("RT", "welds 1 to 3"), ("RT", "the rest")]),
        ("RT of all butts", [("RT", "50 %"), ("RT", "49 %")]),
        ("RT of all butts", [("RT", "front"), ("RT", "all of them")]),
        ("RT of all butts", []),
        ("RT of all butts", [("UT", "welds 1 to 3")]),
        ("RT of butts", [("RT", "welds 1 to 3")]),
        ("RT of all accessible butts", [("RT", "")]),
        ("RT of one butt in ten", [("RT", "")]),
        ("UT or RT of all butts", [("UT", "welds 1 to 3"), ("RT", "all")]),
        ("none", [("RT", "")]),
    ],
)
def test_all_is_shown_or_not_asked_for_in_words(asked: str, records: list[tuple[str, str]]) -> None:
    assert not_shown(asked, recorded(asked, records)) == []


def test_all_by_either_of_two_methods() -> None:
    made = recorded("UT or RT of all butts", [("UT", "weld 1"), ("RT", "")])
    assert not_shown("UT or RT of all butts", made) == ["that all was examined, by ultrasound or radiographs"]


@pytest.mark.parametrize(
    ("words", "examined", "ends"),
    [
        ("one joint in ten by ultrasound", "100 %", HOLD),
        ("one joint in ten by ultrasound", "11 %", FINE),
        ("one joint in ten by ultrasound", "11.1 %", HOLD),
        ("all joints by ultrasound", "100 %", FINE),
        ("joints by spot RT", "51 %", FINE),
        ("1 film per seam", "51.1 %", HOLD),
        ("1 film per seam", "51 %", FINE),
        ("RT, one film per seam", "51.1 %", HOLD),
        ("RT, 2 films per seam", "51.1 %", QUERY),
        ("RT, 2 films per seam", "1 %", FINE),
        ("RT 100 %, 2 films per seam", "100 %", FINE),
        ("RT, 2 films of every seam, full length", "100 %", FINE),
        ("RT of 1 film at each end of every seam", "100 %", QUERY),
        ("one film in four", "26 %", FINE),
        ("one film in four", "26.1 %", HOLD),
        ("testing group 3a, RT", "26 %", FINE),
        ("testing group 3a, RT", "26.1 %", HOLD),
        ("testing group 3b, RT", "11 %", FINE),
        ("testing group 3b, RT", "11.1 %", HOLD),
        ("testing group 3a, all butts by RT", "100 %", QUERY),
        ("testing group 1a, RT", "100 %", FINE),
        ("full RT per ASME VIII Div 1 UW-11(a)", "100 %", FINE),
        ("spot RT per UW-11(b)", "100 %", HOLD),
        ("spot RT per UW-11(b)", "51 %", FINE),
        ("RT per UW-11 (b)", "51 %", FINE),
        ("RT per UW-11 (b)", "51.1 %", HOLD),
        ("RT to UW-52", "51.1 %", HOLD),
        ("RT to UW-51", "100 %", FINE),
        ("RT per UW-11(a)(5)(b)", "100 %", QUERY),
        ("RT-1", "100 %", FINE),
        ("RT-2", "100 %", QUERY),
        ("RT-2", "1 %", FINE),
        ("RT-3", "51 %", FINE),
        ("RT-3", "51.1 %", HOLD),
        ("RT-3 of the butt joints", "51.1 %", HOLD),
        ("RT-4", "100 %", QUERY),
        ("RT to procedure RT-3", "100 %", FINE),
        ("RT by an RT-2 operator", "100 %", FINE),
        ("RT, 2 exposures per seam", "51.1 %", QUERY),
        ("RT, 2 exposures per seam", "1 %", FINE),
        ("RT, 2 exposures each", "100 %", QUERY),
        ("RT, two shots of each joint", "100 %", QUERY),
        ("RT, 3 exposures", "100 %", QUERY),
        ("RT, 2 films", "100 %", QUERY),
        ("RT of all butt joints, 2 films", "100 %", FINE),
        ("RT 100 %, 2 exposures per seam", "100 %", FINE),
        ("RT, DWDI, 2 exposures per joint, 90° apart", "100 %", FINE),
        ("RT of all category A joints", "100 %", QUERY),
        ("all category A and B joints radiographed", "100 %", QUERY),
        ("100 % RT of category A", "100 %", QUERY),
        ("RT of category A, B, C and D joints", "100 %", FINE),
        ("RT of category A to D joints", "100 %", FINE),
        ("spot RT of category A to D joints", "51.1 %", HOLD),
        ("RT, PD 5500 category 2", "100 %", QUERY),
        ("RT of class 2 joints", "100 %", QUERY),
        ("UT class 2 welds", "100 %", QUERY),
        ("RT of joints of class 1", "100 %", QUERY),
        ("RT of all type 1 welds", "100 %", QUERY),
        ("RT of sheet 2 welds", "100 %", QUERY),
        ("RT class B butt welds", "100 %", FINE),
        ("all butt welds by RT to class B", "100 %", FINE),
        ("all butt welds, quality level B, by RT", "100 %", FINE),
        ("RT, testing group 2", "51.1 %", HOLD),
        ("RT testing group 2", "51.1 %", HOLD),
        ("RT testing group 1", "100 %", FINE),
        ("RT group 3b", "100 %", QUERY),
        ("RT to ASME V, Art. 2", "100 %", FINE),
        ("RT to ASME Sec. V Art. 2", "100 %", FINE),
        ("RT to art. 2", "100 %", FINE),
        ("RT of art. 2", "100 %", QUERY),
        ("RT of repaired joints", "51.1 %", HOLD),
        ("RT of one end of each seam", "100 %", QUERY),
        ("RT at each end", "100 %", QUERY),
        ("RT at both ends of each seam", "100 %", QUERY),
        ("RT over a length of each seam", "100 %", QUERY),
        ("UT of all seams from both sides", "100 %", FINE),
        ("RT, see note 3", "100 %", QUERY),
        ("RT per table 2", "100 %", QUERY),
        ("RT of every joint, see note 3", "100 %", FINE),
        ("joints by spot RT", "51.1 %", HOLD),
        ("UT of 40 % of the joints, RT of 10 % of the joints", "51 %", FINE),
        ("UT of 40 % of the joints, RT of 10 % of the joints", "51.1 %", HOLD),
        ("UT of all joints, RT of 10 %", "100 %", FINE),
        ("UT of 10 % of the joints, MT of all", "100 %", HOLD),
        ("joints by UT, as the inspector picks them", "51 %", FINE),
        ("joints by UT, as the inspector picks them", "51.1 %", HOLD),
        ("all joints by UT at the inspector's choice", "100 %", HOLD),
        ("all joints by UT where accessible", "51 %", FINE),
        ("all joints by UT where accessible", "51.1 %", QUERY),
        ("all accessible joints by UT", "100 %", QUERY),
        ("one accessible joint in ten by UT", "100 %", HOLD),
        ("one toe in ten by MT", "100 %", QUERY),
        ("UT of joints as agreed, toes by MT", "100 %", QUERY),
        ("joints by volumetric test, toes by MT", "100 %", FINE),
        ("one joint in ten volumetrically, toes by MT", "11 %", FINE),
        ("one joint in ten volumetrically, toes by MT", "11.1 %", HOLD),
        ("volumetric examination of 10 % of the joints", "11.1 %", HOLD),
        ("joints to NDT plan 7, toes by MT", "100 %", SILENT),
        ("NDT, 10 %", "11 %", FINE),
        ("NDT, 10 %", "11.1 %", HOLD),
        ("NDE of one joint in ten, toes by MT", "11.1 %", HOLD),
        ("ZfP zu 10 %", "11.1 %", HOLD),
        ("NDT of all joints", "100 %", SILENT),
        ("NDT", "100 %", SILENT),
        ("RT min. 10 %", "11 %", FINE),
        ("RT min. 10 %", "11.1 %", HOLD),
        ("RT, jede zehnte Naht", "11 %", FINE),
        ("RT, jede zehnte Naht", "11.1 %", HOLD),
        ("RT nach Wahl des Prüfers", "52 %", HOLD),
        ("RT, 300 mm per seam", "52 %", HOLD),
        ("UT von 3 von 12 Nähten", "26 %", FINE),
        ("UT von 3 von 12 Nähten", "26.1 %", HOLD),
        ("none", "100 %", SILENT),
        ("UT, to be agreed", "100 %", SILENT),
        ("joints by ultrasound at crossings only", "51 %", QUERY),
        ("joints by ultrasound at crossings only", "51.1 %", HOLD),
        ("butt joints only by ultrasound", "51 %", FINE),
        ("joints by ultrasound, partial", "51.1 %", HOLD),
        ("joints by ultrasound over 200 mm of each metre", "21 %", FINE),
        ("joints by ultrasound over 200 mm of each metre", "21.1 %", HOLD),
        ("ultrasound of all joints not possible", "100 %", HOLD),
        ("all joints by ultrasound except the nozzle", "100 %", QUERY),
        ("joints by ultrasound, upper side", "2 %", QUERY),
        ("joints by ultrasound, upper side", "1 %", FINE),
        ("RT of two seams", "100 %", QUERY),
        ("welds 1 to 3 by RT", "100 %", QUERY),
        ("40 % of joints at crossings by RT, 10 % of joints by UT", "11 %", FINE),
        ("40 % of joints at crossings by RT, 10 % of joints by UT", "11.1 %", QUERY),
        ("40 % of joints at crossings by RT, 10 % of joints by UT", "51.1 %", HOLD),
        ("seams by film at crossings, all joints by UT, toes of the rim by MT", "100 %", FINE),
    ],
)
def test_the_words_of_a_weldment_against_its_joints(
    design: DesignFolder, words: str, examined: str, ends: tuple[str, Grade | None]
) -> None:
    """1 % more than the words, and half for samples."""
    assert outcome(design, words, examined) == ends


@pytest.mark.parametrize(
    ("on_pressure", "outcome"),
    [
        ("", "not applicable"),
        ("on_pressure = false", "not applicable"),
        ("on_pressure = true", "not assessed"),
    ],
)
def test_a_weldment_without_words_has_no_joint_on_pressure(
    design: DesignFolder, on_pressure: str, outcome: str
) -> None:
    text = WELDMENT.format(words="", examined="100 %").replace('examination = ""\n', "")
    check = design.write({"weldment.toml": f"{text}{on_pressure}\n"}).only(RULE)
    assert check.outcome == outcome
    if outcome == "not assessed":
        assert "bracket holds pressure, and examination is not stated" in check.says


def test_words_that_are_not_understood_are_named(design: DesignFolder) -> None:
    text = WELDMENT.format(words="joints by ultrasound, upper side", examined="100 %")
    says = design.write({"weldment.toml": text}).only(RULE).says
    assert 'upper side" the words "upper" and "side" are not understood. Write all, every weld,' in says


def test_shares_are_said_to_their_last_figure(design: DesignFolder) -> None:
    text = WELDMENT.format(words="98.5 % of the welds by UT", examined="99.75 %")
    says = design.write({"weldment.toml": text}).only(RULE).says
    assert says.startswith('corner: examined over 99.75%, and the words "98.5 %')
    assert says.endswith("ask for 98.5% at most")


def test_films_are_named_as_not_understood(design: DesignFolder) -> None:
    text = WELDMENT.format(words="RT, 3 films per seam", examined="100 %")
    assert (
        'the word "3 films per seam" is not understood'
        in design.write({"weldment.toml": text}).only(RULE).says
    )


def test_a_joint_that_states_no_extent_is_told_by_another_rule(design: DesignFolder) -> None:
    text = WELDMENT.format(words="one joint in ten by UT", examined="1").replace('examined = "1"\n', "")
    assert design.write({"weldment.toml": text}).only(RULE).outcome == "conforms"


@pytest.mark.parametrize(
    ("word", "number"),
    [
        *(
            ("two", 2),
            ("three", 3),
            ("four", 4),
            ("five", 5),
            ("six", 6),
            ("seven", 7),
            ("eight", 8),
            ("nine", 9),
        ),
        *(("ten", 10), ("twelve", 12), ("fifteen", 15), ("twenty", 20), ("fifty", 50), ("a hundred", 100)),
    ],
)
def test_each_number_in_words(word: str, number: int) -> None:
    assert share_of(f"one weld in {word}") == pytest.approx(1 / number)


@pytest.mark.parametrize(
    ("word", "number"),
    [
        *(
            ("third", 3),
            ("fourth", 4),
            ("quarter", 4),
            ("fifth", 5),
            ("sixth", 6),
            ("seventh", 7),
            ("eighth", 8),
        ),
        *(("ninth", 9), ("tenth", 10), ("twelfth", 12), ("twentieth", 20), ("hundredth", 100)),
    ],
)
def test_each_part_in_words(word: str, number: int) -> None:
    assert share_of(f"a {word} of the welds") == pytest.approx(1 / number)
