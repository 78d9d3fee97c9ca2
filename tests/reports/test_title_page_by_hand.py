"""The title page of a review: design, drawings with their parts, files and issues, as specs and settings state them."""

from __future__ import annotations

import datetime as dt
from types import SimpleNamespace

import pytest

from speclint.checking import Assessment, Processes, assess
from speclint.errors import replace
from speclint.reports.pack import title_page as module
from speclint.reports.pack.title_page import Drawing, files_read, title_page, works_of
from speclint.testing import DesignFolder

DAY = dt.date(2026, 3, 5)
DRAWN = 'drawing = "{}"\nrevision = "{}"\n'


def read(workshop: DesignFolder, files: dict[str, str], settings: str = "") -> Assessment:
    named = {f"{name}.toml": f'id = "{name}"\n{text}' for name, text in files.items()}
    workshop.write(named, settings=settings)
    return assess([workshop.root], workshop.loaded, [], processes=Processes(0))


def drawings(workshop: DesignFolder, **files: str) -> list[Drawing]:
    return list(title_page(read(workshop, files), None, DAY).drawings)


def fact(of: Assessment, name: str) -> str:
    return dict(title_page(of, None, DAY).facts)[name]


def test_the_design_is_that_of_its_engines_or_of_its_folder(workshop: DesignFolder) -> None:
    pipe = 'kind = "steam-pipe"\ntitle = "the main pipe"\n'
    of = read(workshop, {"pipe": pipe})
    assert fact(of, "design") == works_of(of) == workshop.root.name
    engines = {"late": 'kind = "engine"\n', "early": 'kind = "engine"\ntitle = "the express"\n'}
    of = read(workshop, {"pipe": pipe, **engines}, '[works]\nname = "Tube works"\n')
    assert fact(of, "design") == "the express; late"
    assert works_of(of) == "Tube works"


def test_what_could_not_be_read_is_not_told(workshop: DesignFolder) -> None:
    of = read(workshop, {"pipe": 'kind = "steam-pipe"\n'}, '[works]\nname = "Tube works"\nstage = "draft"\n')
    assert fact(of, "stage") == "draft"
    lost = replace(of, settings=None, design=None)
    assert fact(lost, "stage") == "settings could not be read"
    assert works_of(lost) == workshop.root.name
    page = title_page(lost, None, DAY)
    assert (page.drawings, page.unnumbered) == ((), ())
    unread = replace(of, design=replace(of.design, specs={}))  # type: ignore[type-var]  # there is one
    page = title_page(unread, None, DAY)
    assert (page.drawings, page.unnumbered) == ((), ())


def test_a_drawing_has_all_its_parts_and_their_title_where_it_is_one(workshop: DesignFolder) -> None:
    """By number and revision; a title that one of the parts has alone is not that of the drawing."""
    pipe, nozzle = 'kind = "steam-pipe"\n', 'kind = "blast-nozzle"\n'
    found = drawings(
        workshop,
        a=nozzle + DRAWN.format("T-2", "B") + 'title = "nozzle and pipe"\n',
        b=pipe + DRAWN.format("T-2", "B") + 'title = "nozzle and pipe"\n',
        c=pipe + DRAWN.format("T-2", "A") + 'title = "one"\n',
        d=pipe + DRAWN.format("T-2", "A") + 'title = "two"\n',
        e=pipe + DRAWN.format("T-1", "A") + 'prepared_by = "N. Ashe"\nchecked_by = "J. Brand"\n',
        f=pipe,
        g='kind = "duty"\n' + DRAWN.format("T-3", "A"),
    )
    assert found == [
        Drawing("T-1", "A", ("steam pipe",), ("e",), "N. Ashe", "J. Brand"),
        Drawing("T-2", "A", ("steam pipe",), ("c", "d"), "", ""),
        Drawing("T-2", "B", ("blast nozzle", "steam pipe"), ("a", "b"), "", "", "nozzle and pipe"),
        Drawing("T-3", "A", ("duty",), ("g",), "", ""),
    ]


def test_parts_that_state_no_drawing_are_named(workshop: DesignFolder) -> None:
    of = read(
        workshop,
        {"b": 'kind = "steam-pipe"\n', "a": 'kind = "steam-pipe"\ndrawing = "T-1"\n', "c": 'kind = "duty"\n'},
    )
    page = title_page(of, None, DAY)
    assert page.unnumbered == ("b", "c")
    assert [one.number for one in page.drawings] == ["T-1"]


def test_an_issue_says_to_whom_which_revision_and_when(workshop: DesignFolder) -> None:
    issued = '[[issued]]\nto = "the foundry"\non = 2026-02-03\nrevision = "A"\n[[issued]]\n'
    (found,) = drawings(workshop, a='kind = "steam-pipe"\n' + DRAWN.format("T-1", "B") + issued)
    assert found.issued == (
        "the foundry: A, 2026-02-03",
        "nobody named: no revision stated, no day stated",
    )


def test_a_file_of_a_drawing_is_told_with_how_it_stands(
    workshop: DesignFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    workshop.write({"one.svg": "<svg/>", "two.svg": "<svg/>"})
    part = 'kind = "steam-pipe"\n' + DRAWN.format("T-1", "B")
    files = {name: f'{part}drawing_file = "{name}.svg"\n' for name in ("one", "two")}
    stand = SimpleNamespace(component="two", briefly="as it was read")
    monkeypatch.setattr(module, "drawings_checked", lambda _: (stand,))
    (found,) = drawings(workshop, **files, three=part)
    assert found.files == ("one.svg", "two.svg: as it was read")


def test_a_check_rests_on_materials_of_the_works(workshop: DesignFolder) -> None:
    workshop.write({"metals.toml": ""})
    of = read(workshop, {"pipe": 'kind = "steam-pipe"\n'}, 'materials = ["metals.toml"]\n')
    assert {"metals.toml", "pipe.toml", "speclint.toml"} <= files_read(of)
