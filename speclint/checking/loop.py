"""One run: from paths to everything that the rules find."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.checking.assessment import Assessment
from speclint.checking.inputs import Inputs, context_of
from speclint.checking.rule_run import check_component
from speclint.errors import SettingsError, one_of
from speclint.families import Guard, Loaded, require
from speclint.repository import Basis, Design, open_repository
from speclint.rules import Rule, read_limits

if TYPE_CHECKING:
    from speclint.checking.processes import Processes


def assess(
    paths: Sequence[Path],
    loaded: Loaded,
    rules: Iterable[Rule] | None = None,
    basis: Basis | None = None,
    processes: Processes | None = None,
    only: Collection[str] | None = None,
) -> Assessment:
    """Check the specs at some paths of one design repository, on its own design basis or on the one given.

    ``processes`` share the work; ``only`` are the components to check, where not all are.

    :raises DesignError: for paths that are not of one repository.
    :raises FamilyError: when a family that the settings require is absent, or one that they do not leave out cannot be
        used.
    """
    with Guard("that adds a kind"):  # a kind may have code of its own, which reads what a spec says
        opened = open_repository(paths, loaded.kinds, basis, tuple(loaded.materials))
    settings, design = opened.settings, opened.design
    if settings is None:
        return Assessment(opened.root, loaded, None, None, (), opened.complaints)
    loaded = loaded.without(settings.families.left_out)
    require(loaded, settings.families.required)
    if only is not None:
        design = replace(design, selected=design.selected & frozenset(only))
    chosen = _concerned(loaded, design) if rules is None else _kept(rules, loaded)
    limits, refused = read_limits(settings, loaded.rules) if settings.limits else ({}, [])
    inputs = Inputs(design, limits, opened.materials, opened.register, date.today())
    context = context_of(inputs, loaded)
    context.outcomes = {} if rules is None else None
    if processes is None:
        checks = [one for part in design.parts() for one in check_component(part, chosen, context)]
    else:
        checks = processes.check(chosen, context, inputs)
    complaints = (*refused, *opened.complaints)
    return Assessment(
        opened.root,
        loaded,
        settings,
        design,
        tuple(checks),
        complaints,
        context,
        opened.register,
        Basis(settings, opened.materials, opened.design),
    )


def _concerned(loaded: Loaded, design: Design) -> tuple[Rule, ...]:
    return loaded.rules_for({part.kind for part in design.parts()})


def _kept(rules: Iterable[Rule], loaded: Loaded) -> tuple[Rule, ...]:
    return tuple(rule for rule in rules if rule.family not in loaded.left_out)


def find_remedies(assessment: Assessment, processes: Processes) -> None:
    """Find what would clear each finding, with the work shared out."""
    if assessment.context is not None:
        findings = [one for one in assessment.checks if one.outcome == "finding"]
        assessment.keep(processes.remedies(findings, assessment.checks, assessment.context))


def chosen_rules(loaded: Loaded, families: Sequence[str], rules: Sequence[str]) -> tuple[Rule, ...]:
    """The rules of some families, or of some names; all where neither is given.

    :raises SettingsError: for a family or a rule that is not loaded.
    """
    known = {family.name for family in loaded.families}
    for name in families:
        if name in loaded.left_out:
            raise SettingsError(f"the family {name} is left out by speclint.toml")
        if name not in known:
            raise SettingsError(f"no family is called {name}; {one_of(name, known)}")
    by_name = {rule.name: rule for rule in loaded.rules}
    for name in rules:
        if name not in by_name:
            raise SettingsError(f"no rule is called {name}; {one_of(name, by_name)}")
    return tuple(
        rule
        for rule in loaded.rules
        if (not families or rule.family in families) and (not rules or rule.name in rules)
    )
