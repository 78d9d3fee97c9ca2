"""Parts that are like another, or the mirror of it: what is taken over, from where, and every clear refusal."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.checking import Assessment
from speclint.quantities import Measure
from speclint.repository import Design
from speclint.specs import CylinderBlock, LiftingPlan, Link, NotStated, Piston, PoppetValve
from speclint.testing import DesignFolder
from tests.tubes import FILES, RACK, Tube, gap, tubes

LIKE = 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\n'


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path, tubes())


def said(assessment: Assessment) -> list[str]:
    return [str(complaint) for complaint in assessment.complaints]


def design_of(folder: DesignFolder) -> Design:
    found = folder.assess()
    assert said(found) == []
    assert found.design is not None
    return found.design


def test_what_is_not_stated_is_taken_over_with_its_file_and_line(shop: DesignFolder) -> None:
    design = design_of(shop.write({**FILES, "second.toml": LIKE + 'bore = "99 mm"\n'}))
    second = design.specs["second"]
    assert isinstance(second, Tube)
    assert isinstance(second.outside, Measure)
    assert (second.outside.where.file, second.outside.where.line) == ("tube.toml", 5)
    assert design.owner(second.outside.where) == "second"
    assert isinstance(second.bore, Measure)
    assert (second.bore.text, second.bore.where.file) == ("99 mm", "second.toml")
    assert second.id == "second"


def test_what_differs_and_what_is_said_twice_is_known(shop: DesignFolder) -> None:
    more = 'bore = "99 mm"\noutside = "105  mm ±0.5"\nhoops = 4\n'
    taken = design_of(shop.write({**FILES, "second.toml": LIKE + more})).specs["second"].taken_over
    assert taken is not None
    assert [(one.where.key, one.here, one.there) for one in taken.differs] == [
        ("bore", '"99 mm"', '"100 mm ±0.5"')
    ]
    assert [where.key for where in taken.said_twice] == ["outside", "hoops"]
    assert (taken.id, taken.mirrored, taken.where.line) == ("tube", False, 2)


def test_a_part_alike_is_checked_as_one_written_out(shop: DesignFolder) -> None:
    written = FILES["tube.toml"].replace('"105 mm ±0.5"', '"104 mm ±0.5"')
    shop.write({**FILES, "second.toml": LIKE + 'outside = "104 mm ±0.5"\n', "third.toml": written})
    found = {
        name: [
            (one.rule.name, one.outcome, one.utilisation, one.governing, one.says.replace(name, "it"))
            for one in shop.assess().checks
            if one.component == name
        ]
        for name in ("second", "third")
    }
    assert found["second"] == found["third"]
    assert len(found["second"]) == 5


def test_what_neither_states_is_missed_where_it_would_be_written(shop: DesignFolder) -> None:
    shop.write({**FILES, "second.toml": LIKE}).replace("tube.toml", "hoops = 4\n", "")
    second = design_of(shop).specs["second"]
    assert isinstance(second, Tube)
    assert second.hoops.where.file == "tube.toml"
    assert second.in_slot.where.key == "in_slot"


@rule(
    "tube.pair",
    title="tubes",
    on=Tube,
    grade=Grade.QUERY,
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def pair(tube: Tube, sheet: Sheet) -> Judgement:
    """The difference between a tube and the other of its rack: both were made, each within its limits."""
    rack = sheet.follow(tube.held_in)
    one, other = sheet.belonging_to(rack, Tube)
    D, H = sheet.take("D", one.outside), sheet.take("H", other.outside)
    return sheet.at_least(sheet.work("g", gap, H=H, D=D), sheet.work("g_0", gap, H=0.1, D=0.1))


def test_two_pieces_of_one_drawing_have_each_its_own_size(tmp_path: Path) -> None:
    """105 mm ± 0.5 on both: the worst difference is 1 mm, not nothing."""
    shop = DesignFolder(tmp_path, tubes(pair)).write({**FILES, "second.toml": LIKE})
    for check in shop.check("tube.pair"):
        assert check.judgement is not None
        assert check.judgement.found is not None
        assert check.judgement.found.value == pytest.approx(-1e-3)


def test_a_remedy_moves_every_part_of_the_drawing(shop: DesignFolder) -> None:
    shop.write({**FILES, "second.toml": LIKE})
    design = design_of(shop)
    second, tube = design.specs["second"], design.specs["tube"]
    assert isinstance(second, Tube)
    assert isinstance(tube, Tube)
    assert set(design.moved(second.bore.where, 1e-3)) >= {second.bore.where, tube.bore.where}
    assert set(design.moved(tube.bore.where, 1e-3)) >= {second.bore.where, tube.bore.where}


@pytest.mark.parametrize(
    ("files", "complaint"),
    [
        (
            {"b.toml": 'kind = "tube"\nlike = "tub"\n'},
            'b.toml:2 like: no spec has this id; read "tub"; write "tube"',
        ),
        (
            {"b.toml": 'kind = "tube"\nlike = "rack"\n'},
            'b.toml:2 like: this leads to a rack (rack.toml), and this is a tube; read "rack"; '
            "write the id of a tube",
        ),
        (
            {"b.toml": 'kind = "tube"\nlike = "tube"\n', "c.toml": 'kind = "tube"\nlike = "b"\n'},
            "c.toml:2 like: b (b.toml) itself takes over from tube, and only a spec that states all can be named; "
            'read "b"; write "tube"',
        ),
        (
            {"b.toml": 'kind = "tube"\nlike = "c"\n', "c.toml": 'kind = "tube"\nmirror_of = "b"\n'},
            "b.toml:2 like: links run in a loop: b (b.toml) → c (c.toml) → b (b.toml); "
            'read "c"; write a spec that states all',
        ),
        (
            {"b.toml": 'kind = "tube"\nlike = "tube"\nmirror_of = "tube"\n'},
            'b.toml:2 like: a spec is like another or the mirror of one, not both; read "tube"; '
            "write one of like and mirror_of",
        ),
        (
            {"b.toml": 'kind = "tube"\nlike = "c"\n', "c.toml": 'kind = "tub"\n'},
            'b.toml:2 like: nothing can be taken over, as c.toml cannot be read; read "c"; '
            "write c.toml so that it can be read",
        ),
        ({"b.toml": 'kind = "tube"\nlike = 3\n'}, "b.toml:2 like: this is not text; read 3; write"),
    ],
)
def test_what_cannot_be_taken_over_is_one_clear_line(
    shop: DesignFolder, files: dict[str, str], complaint: str
) -> None:
    found = shop.write({**FILES, **files}).assess()
    lines = [line for line in said(found) if not line.startswith("c.toml:1 ")]
    assert len(lines) == 1
    assert lines[0].startswith(complaint)
    assert {check.component for check in found.checks} >= {"tube"}


def test_the_rest_of_a_spec_is_looked_at_although_it_takes_over_nothing(shop: DesignFolder) -> None:
    shop.write({**FILES, "b.toml": 'kind = "tube"\nlike = "tub"\nbore = "5,5 mm"\n'})
    assert [line.split(":")[1] for line in said(shop.assess())] == ["2 like", "3 bore"]


def test_a_fault_that_is_taken_over_is_told_once_where_it_stands(shop: DesignFolder) -> None:
    shop.write({**FILES, "b.toml": LIKE}).replace("tube.toml", '"100 mm ±0.5"', '"100 mn"')
    (line,) = said(shop.assess())
    assert line.startswith("tube.toml:4 bore:")


def test_values_are_held_together_after_they_are_taken_over(tmp_path: Path) -> None:
    """A rim of 230 mm is right beside its own seat, and wrong beside the greater one that the other states."""
    valve = 'kind = "poppet-valve"\n[upper_beat]\nseat_diameter = "200 mm"\n'
    like = 'kind = "poppet-valve"\nlike = "valve"\n[upper_beat]\ncontact_width = "{}"\n'
    folder = DesignFolder(tmp_path)
    assert said(folder.write({"valve.toml": valve, "b.toml": like.format("19 mm")}).assess()) == []
    folder.write({"valve.toml": valve.replace("200 mm", "26 mm"), "b.toml": like.format("19 mm")})
    assert said(folder.assess()) == []
    folder.write({"valve.toml": valve.replace('"200 mm"', '"26 mm"'), "b.toml": like.format("26 mm")})
    (line,) = said(folder.assess())
    assert line.startswith("b.toml:4 upper_beat.contact_width")


VALVE = """
kind = "poppet-valve"
cylinder_bore = "main"
lift = "30 mm"
[upper_beat]
seat = "seat"
seat_diameter = "150 mm"
"""


def test_the_place_of_a_part_is_never_taken_over(tmp_path: Path) -> None:
    files = {
        "seat.toml": 'kind = "valve-seat"\n',
        "valve.toml": VALVE,
        "second.toml": 'kind = "poppet-valve"\nlike = "valve"\n',
        "third.toml": 'kind = "poppet-valve"\nlike = "valve"\ncylinder_bore = "main"\n[upper_beat]\nseat = "seat"\n',
    }
    design = design_of(DesignFolder(tmp_path).write(files))
    second, third = design.specs["second"], design.specs["third"]
    assert isinstance(second, PoppetValve)
    assert isinstance(third, PoppetValve)
    assert isinstance(second.upper_beat.seat, NotStated)
    assert second.upper_beat.seat.where.file == "second.toml"
    assert isinstance(second.upper_beat.seat_diameter, Measure)
    assert second.taken_over is not None
    assert [where.key for where in second.taken_over.places] == ["cylinder_bore", "upper_beat.seat"]
    assert isinstance(third.upper_beat.seat, Link)
    assert third.taken_over is not None
    assert third.taken_over.places == ()


def test_a_link_that_tells_no_place_is_taken_over(shop: DesignFolder) -> None:
    design = design_of(shop.write({**FILES, "second.toml": LIKE}))
    second = design.specs["second"]
    assert isinstance(second, Tube)
    assert isinstance(second.duty, Link)
    assert "second" not in {part.id for part in design.linking_to(design.specs["tube"])}


def test_notes_are_joined(shop: DesignFolder) -> None:
    tube = FILES["tube.toml"] + '[notes]\nmill = "A"\nstock = 3\n'
    design = design_of(shop.write({**FILES, "tube.toml": tube, "b.toml": LIKE + '[notes]\nmill = "B"\n'}))
    assert design.specs["b"].notes == {"mill": "B", "stock": 3}
    taken = design.specs["b"].taken_over
    assert taken is not None
    assert taken.notes == "mill B"


BLOCK = """
kind = "cylinder-block"
hand = "left"
[bores.main]
diameter = "500 mm H8"
[ports.front]
of_end = "front"
angle = "30 ° ±1"
width = "200 mm"
[ports.back]
angle = { value = "0 °", from = "measured", note = "by template" }
[pads.front]
at = "400 mm"
"""


def test_a_mirrored_block_takes_its_places_whole_and_its_angles_mirrored(tmp_path: Path) -> None:
    folder = DesignFolder(tmp_path)
    folder.write({"a.toml": BLOCK, "b.toml": 'kind = "cylinder-block"\nmirror_of = "a"\n'})
    right = design_of(folder).specs["b"]
    assert isinstance(right, CylinderBlock)
    assert getattr(right.hand, "value", "") == "right"
    angle, other = right.ports["front"].angle, right.ports["back"].angle
    assert isinstance(angle, Measure)
    assert isinstance(other, Measure)
    assert (angle.text, angle.note, angle.where.line) == ("330 ° ±1", "mirrored from 30 ° ±1", 8)
    assert (other.text, other.provenance, other.note) == ("0 °", "measured", "by template; mirrored from 0 °")
    assert right.pads.keys() == {"front"}
    assert right.bores["main"].diameter.where.file == "a.toml"


def test_a_part_is_like_another_without_being_mirrored(tmp_path: Path) -> None:
    folder = DesignFolder(tmp_path)
    folder.write({"a.toml": BLOCK, "b.toml": 'kind = "cylinder-block"\nlike = "a"\n'})
    second = design_of(folder).specs["b"]
    assert isinstance(second, CylinderBlock)
    assert getattr(second.ports["front"].angle, "text", "") == "30 ° ±1"
    assert getattr(second.hand, "value", "") == "left"


def test_a_mirrored_value_stated_again_differs(tmp_path: Path) -> None:
    folder = DesignFolder(tmp_path)
    more = '[ports.front]\nangle = "330 ° ±1"\n[ports.back]\nangle = "5 °"\n'
    folder.write({"a.toml": BLOCK, "b.toml": f'kind = "cylinder-block"\nmirror_of = "a"\n{more}'})
    taken = design_of(folder).specs["b"].taken_over
    assert taken is not None
    assert [where.key for where in taken.said_twice] == ["ports.front.angle"]
    assert [one.where.key for one in taken.differs] == ["ports.back.angle"]
    assert taken.turned == frozenset({"hand"})


def test_a_lifting_plan_mirrors_across_and_a_spring_keeps_its_helix(tmp_path: Path) -> None:
    folder = DesignFolder(tmp_path)
    plan = 'kind = "lifting-plan"\n[points.a]\nx = "1 m"\ny = "300 mm"\n[points.a.lug]\nplane = "20 °"\n'
    spring = 'kind = "compression-spring"\nhand = "left"\n'
    folder.write(
        {
            "plan.toml": plan,
            "spring.toml": spring,
            "b.toml": 'kind = "lifting-plan"\nmirror_of = "plan"\n',
            "c.toml": 'kind = "compression-spring"\nmirror_of = "spring"\n',
        }
    )
    design = design_of(folder)
    other = design.specs["b"]
    assert isinstance(other, LiftingPlan)
    point = other.points["a"]
    assert [getattr(one, "text", "") for one in (point.x, point.y, point.lug.plane)] == [
        "1 m",
        "-300 mm",
        "-20 °",
    ]
    assert getattr(getattr(design.specs["c"], "hand", None), "value", "") == "left"


EACH = """
kind = "piston"
id = "piston-{each}"
each = ["left", "right"]
title = "Piston, {each}"
runs_in = "liner-{each}"
diameter = "480 mm"
"""
LINERS = 'kind = "cylinder-liner"\nid = "liner-{each}"\neach = ["left", "right"]\nbore = "482 mm"\n'


def test_one_file_states_a_part_for_each_name(tmp_path: Path) -> None:
    folder = DesignFolder(tmp_path).write({"pistons.toml": EACH, "liners.toml": LINERS})
    design = design_of(folder)
    assert set(design.specs) == {"piston-left", "piston-right", "liner-left", "liner-right"}
    for hand in ("left", "right"):
        piston = design.specs[f"piston-{hand}"]
        assert isinstance(piston, Piston)
        assert getattr(piston.title, "value", "") == f"Piston, {hand}"
        assert isinstance(piston.runs_in, Link)
        assert piston.runs_in.id == f"liner-{hand}"
        assert piston.diameter.where.line == 7
        assert design.owner(piston.diameter.where) == piston.id
        assert design.files[piston.id] == "pistons.toml"


def test_a_part_may_be_like_one_of_several(tmp_path: Path) -> None:
    like = 'kind = "piston"\nlike = "piston-left"\nid = "middle"\nrun_in = 1\n'.replace("run_in = 1\n", "")
    design = design_of(DesignFolder(tmp_path).write({"p.toml": EACH, "l.toml": LINERS, "m.toml": like}))
    middle = design.specs["middle"]
    assert isinstance(middle, Piston)
    assert getattr(middle.diameter, "text", "") == "480 mm"


@pytest.mark.parametrize(
    ("change", "complaint"),
    [
        (('["left", "right"]', "[]"), "p.toml:4 each: each lists the names of the parts"),
        (('["left", "right"]', '"left"'), "p.toml:4 each: each lists the names of the parts"),
        (('["left", "right"]', '["left", "left"]'), "p.toml:4 each[1]: each lists this name twice"),
        (('["left", "right"]', '["left", ""]'), "p.toml:4 each[1]: a name in each is a text"),
        (('["left", "right"]', '["left", 3]'), "p.toml:4 each[1]: a name in each is a text"),
        (
            ("piston-{each}", "piston"),
            "p.toml:3 id: the file states several parts, and an id without {each} would be that of all",
        ),
    ],
)
def test_a_list_of_names_that_cannot_be_used(tmp_path: Path, change: tuple[str, str], complaint: str) -> None:
    folder = DesignFolder(tmp_path).write({"p.toml": EACH.replace(*change), "l.toml": LINERS})
    (line,) = said(folder.assess())
    assert line.startswith(complaint)


def test_a_name_that_stands_for_nothing(tmp_path: Path) -> None:
    folder = DesignFolder(tmp_path).write({"p.toml": 'kind = "piston"\ntitle = "Piston {each}"\n'})
    (line,) = said(folder.assess())
    assert line.startswith("p.toml:2 title: {each} stands for nothing here")


def test_a_name_that_stands_for_nothing_in_a_list_of_a_table(tmp_path: Path) -> None:
    text = 'kind = "piston"\n[notes]\nseen_on = ["left", "the {side} one"]\n'
    (line,) = said(DesignFolder(tmp_path).write({"p.toml": text}).assess())
    assert "{side} stands for nothing here" in line
    assert 'read "the {side} one"' in line


def test_an_id_left_out_is_the_name_of_the_file(tmp_path: Path) -> None:
    text = EACH.replace('id = "piston-{each}"\n', "")
    folder = DesignFolder(tmp_path).write({"piston-{each}.toml": text, "l.toml": LINERS})
    assert {"piston-left", "piston-right"} <= set(design_of(folder).specs)


def test_a_fault_of_a_file_for_each_is_told_once(tmp_path: Path) -> None:
    folder = DesignFolder(tmp_path).write({"p.toml": EACH + 'lenght = "3 mm"\n', "l.toml": LINERS})
    (line,) = said(folder.assess())
    assert line.startswith("p.toml:8 lenght:")


def test_names_stand_in_keys_too(tmp_path: Path) -> None:
    plan = 'kind = "access-plan"\nid = "plan-{each}"\neach = ["left"]\n[spanners."studs-{each}"]\nto_wall = "9 mm"\n'
    plans = design_of(DesignFolder(tmp_path).write({"p.toml": plan})).specs
    assert list(getattr(plans["plan-left"], "spanners", ())) == ["studs-left"]


RACKS = RACK.replace(
    'hole = "106 mm +0.1/0"', 'id = "rack-{each}"\neach = ["a", "b"]\nhole = "106 mm +0.1/0"'
)


def test_paths_choose_all_the_parts_of_a_file(shop: DesignFolder) -> None:
    tubes_of = FILES["tube.toml"].replace(
        'held_in = "rack"', 'id = "t-{each}"\neach = ["a", "b"]\nheld_in = "rack-{each}"'
    )
    shop.write({"duty.toml": FILES["duty.toml"], "tube.toml": tubes_of, "rack.toml": RACKS})
    assert {check.component for check in shop.assess("tube.toml").checks} == {"t-a", "t-b"}


def test_two_keys_that_become_one_are_told(tmp_path: Path) -> None:
    plan = 'kind = "access-plan"\nid = "plan-{each}"\neach = ["left"]\n'
    rooms = '[spanners."studs-{each}"]\nto_wall = "9 mm"\n[spanners.studs-left]\nto_wall = "8 mm"\n'
    (line,) = said(DesignFolder(tmp_path).write({"p.toml": plan + rooms}).assess())
    assert line.startswith("p.toml:4 spanners.studs-{each}: this key becomes")


def test_who_links_to_a_part_of_a_faulty_file_is_not_told(tmp_path: Path) -> None:
    faulty = LINERS.replace('["left", "right"]', '["left", "right", ""]')
    (line,) = said(DesignFolder(tmp_path).write({"p.toml": EACH, "l.toml": faulty}).assess())
    assert line.startswith("l.toml:3 each[2]: a name in each is a text")
