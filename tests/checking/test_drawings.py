"""Which drawings a run looked at: of the parts that name a file, and of these those of which a rule asked."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from speclint.checking.drawings import drawings_checked, drawings_named
from speclint.rules import Consulted
from speclint.specs import Component


def assessment(*asked: tuple[str, str], **more: Any) -> Any:
    """Four parts: the drawing of one has no file, that of another cannot be told, and one is no component."""
    files = {"bare": None, "cover": "cover.pdf", "duty": "duty.pdf", "liner": "liner.pdf", "lost": "lost.pdf"}
    specs: dict[str, Any] = {name: Component(id=name) for name in files}
    specs["duty"] = object()

    def drawing(part: Component) -> Any:
        return None if part.id == "lost" else SimpleNamespace(component=part.id)

    design = SimpleNamespace(
        part_names=lambda: list(files),
        specs=specs,
        index=SimpleNamespace(
            entries={name: SimpleNamespace(drawing_file=file) for name, file in files.items()}
        ),
    )
    checks = [SimpleNamespace(consulted=Consulted(asked={one})) for one in asked]
    made = {"design": design, "context": SimpleNamespace(drawing=drawing), "checks": checks, **more}
    return SimpleNamespace(**made)


def test_the_drawings_that_name_a_file_are_told_in_the_order_of_their_parts() -> None:
    assert [one.component for one in drawings_named(assessment())] == ["cover", "liner"]


def test_where_nothing_was_read_there_is_none() -> None:
    assert list(drawings_named(assessment(design=None))) == []
    assert list(drawings_named(assessment(context=None))) == []


def test_no_file_is_read_of_which_no_rule_asked() -> None:
    read: list[str] = []

    def drawing(part: Component) -> Any:
        read.append(part.id)

    assert drawings_checked(assessment(("drawing", "liner"), context=SimpleNamespace(drawing=drawing))) == ()
    assert read == []
    found = drawings_checked(assessment(("drawing file", "liner"), ("alike", "cover")))
    assert [one.component for one in found] == ["liner"]
