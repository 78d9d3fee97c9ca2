"""Names of places: told with the nearest one where their table has them not, silent where nothing can be said."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Annotated, Any, get_args, get_origin

import pytest

from speclint.repository.unknown_names import _slips
from speclint.specs import Component, NamedIn, SpecTable, names_in
from speclint.specs.key_descriptions import inner_table
from speclint.testing import DesignFolder, installed_families

BLOCK = """
kind = "cylinder-block"
[bores.left]
plate = "barrel"
[bores.right]
[ends.front]
of_bore = "left"
"""
LINER = 'kind = "cylinder-liner"\nhoused_in = "block"\n'
WELDMENT = 'kind = "weldment"\nmakes = "block"\n[plates.barrel]\n[joints.seam]\nplate = "barrel"\n'
PLAN = 'kind = "access-plan"\nweldment = "weldment"\n[chambers.chest]\n'
VALVE = 'kind = "poppet-valve"\ncylinder_bore = "left"\n[upper_beat]\nseat = "seat"\n'
SEAT = 'kind = "valve-seat"\npressed_into = "block"\n'
FILES = {
    "block.toml": BLOCK,
    "liner.toml": LINER + 'in_bore = "left"\n',
    "weldment.toml": WELDMENT,
    "plan.toml": PLAN + '[welds.seam]\nseen_through = "chest"\n[seats.seat]\n',
    "valve.toml": VALVE,
    "seat.toml": SEAT,
}


def said(folder: Path, **changed: str) -> list[str]:
    files = FILES | {f"{name}.toml": text for name, text in changed.items()}
    design = DesignFolder(folder).write(files).assess().design
    assert design is not None
    return [str(one) for one in design.complaints]


@pytest.mark.parametrize(
    "changed",
    [
        {},
        {"plan": PLAN + '[welds.seam]\nseen_through = "outside"\n'},
        {"liner": 'kind = "cylinder-liner"\nin_bore = "middle"\n'},  # of no block
        {"block": 'kind = "cylinder-block"\n'},  # whose bores are not stated so far
        {"weldment": 'kind = "weldment"\n[plates.shell]\n', "plan": PLAN},  # of no block
        {"seat": 'kind = "valve-seat"\n'},  # the link on the way to the bores is not stated
    ],
)
def test_a_name_that_is_there_or_cannot_be_looked_up_passes(tmp_path: Path, changed: dict[str, str]) -> None:
    assert said(tmp_path, **changed) == []


def test_each_name_of_a_list_is_looked_up(tmp_path: Path) -> None:
    engine = 'kind = "engine"\n[cranks.left]\nblock = "block"\n[cranks.right]\nblock = "block"\n'
    axle = 'kind = "driving-axle"\nengine = "engine"\ndriven_by = ["left", "rihgt"]\n'
    assert said(tmp_path, engine=engine, axle=axle.replace("rihgt", "right")) == []
    (line,) = said(tmp_path, engine=engine, axle=axle)
    assert "axle.toml:3 driven_by" in line
    assert line.endswith('read "rihgt"; write "right"')


@pytest.mark.parametrize(
    ("changed", "line"),
    [
        (
            {"liner": LINER + 'in_bore = "lefft"\n'},
            "liner.toml:3 in_bore: the bores of block (block.toml) do not have this name; "
            'read "lefft"; write "left"',
        ),
        (
            {"block": BLOCK.replace('of_bore = "left"', 'of_bore = "middle"')},
            "block.toml:7 ends.front.of_bore: the bores of this spec do not have this name; "
            'read "middle"; write one of "left", "right"',
        ),
        (
            {"block": BLOCK.replace('"barrel"', '"barel"')},
            "block.toml:4 bores.left.plate: the plates of weldment (weldment.toml) do not have this name; "
            'read "barel"; write "barrel"',
        ),
        (
            {"valve": VALVE.replace('"left"', '"middle"')},
            "valve.toml:2 cylinder_bore: the bores of block (block.toml) do not have this name; "
            'read "middle"; write one of "left", "right"',
        ),
        (
            {"plan": PLAN + "[welds.seem]\n"},
            "plan.toml:4 welds.seem: the joints of weldment (weldment.toml) do not have this name; "
            'read "seem"; write "seam"',
        ),
        (
            {"plan": PLAN + '[welds.seam]\nseen_through = "dome"\n'},
            "plan.toml:5 welds.seam.seen_through: the chambers of this spec do not have this name; "
            'read "dome"; write one of "chest", "outside"',
        ),
        (
            {"engine": 'kind = "engine"\n[cranks.one]\nblock = "block"\nbore = "middle"\n'},
            "engine.toml:4 cranks.one.bore: the bores of block (block.toml) do not have this name; "
            'read "middle"; write one of "left", "right"',
        ),
        (
            {"joint": 'kind = "bolted-joint"\nscrewed_into = "block"\n[tapped]\nplate = "barel"\n'},
            "joint.toml:4 tapped.plate: the plates of weldment (weldment.toml) do not have this name; "
            'read "barel"; write "barrel"',
        ),
        (
            {"room": 'kind = "envelope"\naround = "block"\n[points.cock]\ncock_of = "font"\n'},
            "room.toml:4 points.cock.cock_of: the ends of block (block.toml) do not have this name; "
            'read "font"; write "front"',
        ),
        (
            {
                "weldment": WELDMENT + "[walls.live]\n[cavities.between]\n",
                "live": 'kind = "steam-passage"\nin_block = "block"\n',
                "wall": 'kind = "partition"\nlive_side = "live"\nwall = "live"\ncavity = "betwen"\n',
            },
            "wall.toml:4 cavity: the cavities of weldment (weldment.toml) do not have this name; "
            'read "betwen"; write "between"',
        ),
        (
            {"plan": PLAN + "[seats.seats]\n"},
            'plan.toml:4 seats.seats: no valve-seat has this id; read "seats"; write "seat"',
        ),
    ],
)
def test_a_name_that_is_not_there_is_told_with_the_nearest(
    tmp_path: Path, changed: dict[str, str], line: str
) -> None:
    assert said(tmp_path, **changed) == [line]


def test_the_id_of_a_spec_that_cannot_be_read_is_known(tmp_path: Path) -> None:
    unread = said(
        tmp_path,
        seat='kind = "valve-seat"\nwrong = 1\n',
        other=SEAT,
        valve='kind = "poppet-valve"\n',
    )
    assert len(unread) == 1
    assert unread[0].startswith("seat.toml:2 wrong:")


KINDS = installed_families().kinds


def marks() -> Iterator[Any]:
    for kind in sorted(KINDS):
        for path, mark in names_in(KINDS[kind]):
            yield pytest.param(kind, path, mark, id=f"{kind} {'.'.join(path)}")


@pytest.mark.parametrize(("kind", "path", "mark"), [*marks()])
def test_the_table_that_a_field_names_is_there(kind: str, path: tuple[str, ...], mark: NamedIn) -> None:
    """A misspelt table would look up nothing."""
    if mark.ids_of:
        assert set(mark.ids_of) <= {*KINDS, Component.kind}
        return
    model: Any = KINDS[mark.of or kind]
    if mark.of:
        assert mark.by in model.model_fields
        assert linked(model, mark.by) == (ending(kind, mark.through),)
    if mark.table.startswith("."):
        for key in (one for one in path[:-1] if one != "*"):
            model, _ = inner_table(model.model_fields[key].annotation)
    *way, last = mark.table.lstrip(".").split(".")
    for key in way:
        kinds = linked(model, key)
        if kinds == ("component",):  # of any kind: those that have the table are meant
            model = next(one for one in KINDS.values() if last in one.model_fields and is_by_name(one, last))
        else:
            model = KINDS[kinds[0]] if kinds else model.model_fields[key].annotation
    assert is_by_name(model, last)


def within(annotation: Any) -> Iterator[Any]:
    """The marks that stand within the annotation of a field, and not at the field itself."""
    for inner in get_args(annotation):
        yield from (mark for mark in getattr(inner, "__metadata__", ()) if isinstance(mark, NamedIn))
        yield from within(inner)


def tables(model: type[SpecTable]) -> Iterator[type[SpecTable]]:
    """A table and those within it."""
    yield model
    for field in model.model_fields.values():
        inner, _ = inner_table(field.annotation)
        if inner is not None:
            yield from tables(inner)


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_a_mark_stands_at_its_field_where_it_is_read(kind: str) -> None:
    """Of the items of a list it would be read by nobody."""
    for table in tables(KINDS[kind]):
        for name, field in table.model_fields.items():
            assert [*within(field.annotation)] == [], (table, name)


@pytest.mark.parametrize(
    ("annotation", "marks"),
    [
        (tuple[Annotated[str, NamedIn("engine.cranks")], ...], 1),
        (dict[str, tuple[Annotated[str, NamedIn(".joints")], ...]], 1),
        (tuple[str, ...], 0),
    ],
)
def test_a_mark_that_nobody_reads_is_found(annotation: Any, marks: int) -> None:
    assert len([*within(annotation)]) == marks


def is_by_name(model: type[SpecTable], key: str) -> bool:
    """Whether a field holds tables by name."""
    return get_origin(model.model_fields[key].annotation) is dict


def ending(kind: str, links: str) -> str:
    """The kind that links lead to; a component of any kind is the block, which has the tables."""
    for key in links.split(".") if links else ():
        kinds = linked(KINDS[kind], key)
        kind = "cylinder-block" if kinds == ("component",) else kinds[0]
    return kind


def linked(model: type[SpecTable], key: str) -> tuple[str, ...]:
    """The kinds that a field may link to."""
    links = (one for one in get_args(model.model_fields[key].annotation) if get_args(one))
    return tuple(kind.kind for one in links for kind in get_args(one))


@pytest.mark.parametrize(
    ("name", "slips", "none"),
    [
        ("ab", {"b", "a", "ba", "abc", "cab", "acb", "abz"}, {"ab-", "aab-", "abs", "", "xy"}),
        ("as", {"s", "sa", "sas", "ass", "asb"}, {"a"}),  # of a plural the end is no slip
        ("a1", {"1", "ba1", "ab1", "a1b"}, {"1a", "a"}),  # only letters are left out and changed over
    ],
)
def test_what_a_name_may_be_a_slip_of(name: str, slips: set[str], none: set[str]) -> None:
    """A letter left out, put in, or two changed over. "ass" from "as" is a letter put in within."""
    found = set(_slips(name))
    assert slips - found == set()
    assert none & found == set()


DUTY = 'kind = "duty"\n[cases.running.temperatures]\n{} = "200 °C"\n'


@pytest.mark.parametrize(
    ("name", "write"),
    [
        ("blok", '"block"'),
        ("blcok", '"block"'),
        ("blocks", None),
        ("block", None),
        ("room", None),
        ("linerr", '"liner"'),
        ("piston-rings", None),  # of a kind that no part is of so far
        ("piston-rin", '"piston-ring"'),
    ],
)
def test_a_temperature_of_a_part_that_is_mistyped_is_told(
    tmp_path: Path, name: str, write: str | None
) -> None:
    told = (
        f"duty.toml:3 cases.running.temperatures.{name}: no part and no kind has this name, "
        f'which differs from one by a letter; read "{name}"; write {write}'
    )
    assert said(tmp_path, duty=DUTY.format(name)) == ([] if write is None else [told])


def test_a_word_that_may_stand_beside_the_names_is_taken_and_any_other_told_with_them(tmp_path: Path) -> None:
    """A plan lists the chambers, and "outside" beside them."""
    many = PLAN + '[chambers.dome]\n[welds.seam]\nseen_through = "zzzz"\n'
    (line,) = said(tmp_path, plan=many)
    assert line.endswith('read "zzzz"; write one of "chest", "dome", "outside"')


def test_names_of_a_part_of_several_blocks_are_those_of_each(tmp_path: Path) -> None:
    """Two weldments make the block: a plate of either is one, and both are named where it is of neither."""
    second = 'kind = "weldment"\nmakes = "block"\n[plates.shell]\n'
    assert said(tmp_path, second=second, block=BLOCK.replace('"barrel"', '"shell"')) == []
    (line,) = said(tmp_path, second=second, block=BLOCK.replace('"barrel"', '"zzzz"'))
    assert "the plates of second (second.toml) and weldment (weldment.toml) do not have this name" in line
    assert line.endswith('write one of "barrel", "shell"')
