"""Every hook a family may implement. Hooks declare; the core acts.

A family is a module under the entry-point group ``speclint``. Each hook is called once and returns data; it
may leave out hooks it has no use for. Implementations are marked with :data:`speclint.family`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import pluggy

if TYPE_CHECKING:
    from speclint.families.figure_maker import FigureMaker
    from speclint.families.report_writer import ReportWriter
    from speclint.handbook.materials import Material
    from speclint.rules import Rule, RulesIn
    from speclint.specs import ExtraTable, Spec

GROUP = "speclint"
PREFIX = "speclint_"

hookspec = pluggy.HookspecMarker(GROUP)
family = pluggy.HookimplMarker(GROUP)


@hookspec
def speclint_kinds() -> Sequence[type[Spec]]:  # type: ignore[empty-body]
    """Kinds of component that the family adds: subclasses of ``Component`` with ``kind`` and ``called``."""


@hookspec
def speclint_tables() -> Sequence[ExtraTable]:  # type: ignore[empty-body]
    """Tables that the family adds to kinds which are not its own; a spec has one, under the name of the family."""


@hookspec
def speclint_rules() -> Sequence[Rule | RulesIn]:  # type: ignore[empty-body]
    """Rules that the family applies: made with ``@speclint.rule``, or ``speclint.rules_in`` a module of its own."""


@hookspec
def speclint_materials() -> Sequence[Material]:  # type: ignore[empty-body]
    """Materials that the family adds to the handbook's, each property with its source."""


@hookspec
def speclint_reports() -> Sequence[ReportWriter]:  # type: ignore[empty-body]
    """Report writers, chosen on the command line with ``--as NAME``."""


@hookspec
def speclint_drawings() -> Sequence[FigureMaker]:  # type: ignore[empty-body]
    """Makers of figures for the review pack, drawn after those of speclint itself, in the order of the families."""
