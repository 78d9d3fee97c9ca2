"""How much of a part the records of its examinations show, by what their words mean in the trade."""

from __future__ import annotations

import pytest

from speclint_release.inputs.recorded_extents import Recorded, not_shown, not_understood, recorded, too_little


def words_in_doubt(asked: str, made: list[Recorded]) -> list[str]:
    """The words of the records in doubt that are not understood, and those that may leave some out."""
    told = (word for one in not_understood(asked, made) for word in (*one.strange, *one.may_leave_out))
    return list(dict.fromkeys(told))


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
