"""One run: from paths to everything that the rules find."""

from __future__ import annotations

from collections.abc import Callable, Collection, Hashable, Iterable, Iterator, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.checking.assessment import Assessment
from speclint.checking.check_result import Check
from speclint.checking.inputs import Inputs, context_of
from speclint.checking.remedy_search import Spoiling, of_part_alike
from speclint.checking.rule_run import check_component, remember
from speclint.errors import SettingsError, one_of
from speclint.families import Guard, Loaded, require
from speclint.repository import Basis, Design, open_repository
from speclint.rules import Context, Rule, read_limits

if TYPE_CHECKING:
    from speclint.checking.kept_folder import KeptFolder
    from speclint.checking.kept_results import KeptResults
    from speclint.checking.processes import Processes


#: Fewer components than this are checked sooner than what is kept of them is found.
_ENOUGH = 4


def assess(
    paths: Sequence[Path],
    loaded: Loaded,
    rules: Iterable[Rule] | None = None,
    basis: Basis | None = None,
    processes: Processes | None = None,
    only: Callable[[Design, Loaded], Collection[str]] | None = None,
    kept: KeptFolder | None = None,
) -> Assessment:
    """Check the specs at some paths of one design repository, on its own design basis or on the one given.

    ``processes`` share the work; ``only`` chooses the components to check, where not all are. Where all rules are run,
    checks that ``kept`` holds of earlier runs, and that still hold, are taken from it.

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
        design = replace(design, selected=design.selected & frozenset(only(design, loaded)))
    chosen = _concerned(loaded, design) if rules is None else _kept(rules, loaded)
    limits, refused = read_limits(settings, loaded.rules) if settings.limits else ({}, [])
    inputs = Inputs(design, limits, opened.materials, opened.register, date.today())
    context = context_of(inputs, loaded)
    context.outcomes = {} if rules is None else None
    results = None
    if kept is not None and rules is None and len(list(design.parts())) >= _ENOUGH:
        results = _kept_results(kept, inputs, loaded, chosen)
    checks = list(_checks(inputs, chosen, context, processes, results))
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
        kept=results,
    )


def _checks(
    inputs: Inputs,
    rules: Sequence[Rule],
    context: Context,
    processes: Processes | None,
    results: KeptResults | None,
) -> Iterator[Check]:
    """Every check of the selected components, in the order of their names: those that are kept, and the others made."""
    parts = list(context.design.parts())
    found = {part.id: checks for part in parts if results and (checks := results.checks_of(part)) is not None}
    left = [part for part in parts if part.id not in found]
    if processes is None:
        made = [check_component(part, rules, context) for part in left]
    else:
        made = processes.check(rules, context, inputs, [part.id for part in left])
    for part, checks in zip(left, made, strict=True):
        found[part.id] = checks
        if results is not None:
            results.keep_checks(part, checks)
    if results is not None:
        results.tidy()
    for part in parts:
        remember(part.id, found[part.id], context)
        yield from found[part.id]


def _kept_results(
    folder: KeptFolder, inputs: Inputs, loaded: Loaded, rules: Iterable[Rule]
) -> KeptResults | None:
    from speclint.checking.kept_results import KeptResults  # only where results are kept

    try:
        return KeptResults(folder, inputs, loaded, rules)
    except LookupError:  # nobody can tell whether a family made in memory is still the same
        return None


def _concerned(loaded: Loaded, design: Design) -> tuple[Rule, ...]:
    return loaded.rules_for({part.kind for part in design.parts()})


def _kept(rules: Iterable[Rule], loaded: Loaded) -> tuple[Rule, ...]:
    return tuple(rule for rule in rules if rule.family not in loaded.left_out)


def find_remedies(assessment: Assessment, processes: Processes) -> None:
    """Find what would clear each finding, with the work shared out; those that are kept and still hold are taken."""
    if assessment.context is None:
        return
    spoiling, kept = Spoiling(assessment.checks), assessment.kept
    left: dict[Hashable, list[tuple[Check, list[Check]]]] = {}
    for found in assessment.checks:
        if found.outcome == "finding":
            spoiled = spoiling.by(found)
            remedies = kept.remedies_of(found, spoiled) if kept is not None else None
            if remedies is None:
                left.setdefault(spoiling.alike(found), []).append((found, spoiled))
            else:
                assessment.keep({found.order: remedies})
    firsts = [group[0] for group in left.values()]
    done = processes.remedies(firsts, assessment.checks, assessment.context)
    for group, (remedies, consulted) in zip(left.values(), done, strict=True):
        for found, spoiled in group:
            own = [of_part_alike(one, found) for one in remedies]
            assessment.keep({found.order: own})
            if kept is not None:
                kept.keep_remedies(found, spoiled, own, consulted)


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
