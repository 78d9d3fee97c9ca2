"""What a family hands over to be called later, reports and drawings: guarded, each failure one line."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from speclint import FigureMaker, ReportWriter
from speclint.errors import FamilyError
from speclint.families import load_families
from speclint.families.brought import guarded
from speclint.reports import Figure, hooks, review_page
from speclint.testing import DesignFolder
from tests.families.test_refusing import gives, point
from tests.tubes import FILES, entry_point


def test_a_report_of_a_family_is_what_it_wrote(tmp_path: Path) -> None:
    loaded = load_families([point("own", speclint_reports=gives(ReportWriter("own", "", lambda _: "mine")))])
    assessment = DesignFolder(tmp_path, loaded).write({}).assess()
    assert loaded.writers["own"].write(assessment) == "mine"


def test_the_reports_of_speclint_itself_are_not_guarded() -> None:
    """What they raise is a fault of speclint, and is not told as that of a family."""
    writer = ReportWriter("own", "", str)
    assert guarded("speclint", writer) is writer
    assert guarded("tubes", writer) is not writer


def test_what_a_family_does_not_say_of_its_reports_and_figures() -> None:
    """A report shows no remedies, and a figure is drawn in the units that it names itself."""
    assert not ReportWriter("own", "", str).remedies
    assert not FigureMaker("own", "", lambda _: ()).in_chosen_units


def test_a_report_that_fails_is_told_in_one_line(tmp_path: Path) -> None:
    def fails(_assessment: object) -> str:
        raise OSError("no ink")

    writers = (ReportWriter("fails", "", fails), ReportWriter("empty", "", lambda _: None))  # type: ignore[arg-type, return-value]
    loaded = load_families([entry_point("tubes"), point("own", speclint_reports=gives(*writers))])
    assessment = DesignFolder(tmp_path, loaded).write(FILES).assess()
    with pytest.raises(FamilyError, match="family own: the report fails raised OSError: no ink"):
        loaded.writers["fails"].write(assessment)
    with pytest.raises(FamilyError, match="family own: the report empty returned nothing, not text"):
        loaded.writers["empty"].write(assessment)


@pytest.mark.parametrize(
    ("make", "said"),
    [
        (lambda _: 1 / 0, "family own: the drawing mine raised ZeroDivisionError: division by zero"),
        (lambda _: ["a line"], "family own: the drawing mine is a str, not a Figure"),
        (lambda _: 3, "family own: the drawing mine raised TypeError: "),
        (
            lambda _: [Figure("utilisations", "", "h", "s", "<svg/>")],
            "family own: a figure utilisations is drawn by speclint already",
        ),
    ],
)
def test_a_drawing_that_fails_is_told_in_one_line(
    tmp_path: Path, make: Callable[[Any], Any], said: str
) -> None:
    own = point("own", speclint_drawings=gives(FigureMaker("mine", "", make)))
    loaded = load_families([entry_point("tubes"), own], built_in=hooks)
    assessment = DesignFolder(tmp_path, loaded).write(FILES).assess()
    with pytest.raises(FamilyError) as refused:
        review_page(assessment)
    assert said in str(refused.value)


def test_drawings_come_after_the_core_s_own_in_the_order_of_families() -> None:
    late = point("zebra", speclint_drawings=gives(FigureMaker("stripes", "", lambda _: ())))
    early = point("ant", speclint_drawings=gives(FigureMaker("hills", "", lambda _: ())))
    drawn = [(name, maker.name) for name, maker in load_families([late, early], built_in=hooks).drawings]
    assert drawn[0] == ("speclint", "overview")
    assert drawn[-2:] == [("ant", "hills"), ("zebra", "stripes")]
