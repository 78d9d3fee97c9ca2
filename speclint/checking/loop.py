"""One run: from paths to everything that the rules find."""

from __future__ import annotations

from collections.abc import Callable, Collection, Hashable, Iterable, Iterator, Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.checking.assessment import Assessment
from speclint.checking.check_result import Check
from speclint.checking.family_names import misspelt_families
from speclint.checking.inputs import Inputs, context_of
from speclint.checking.outcomes import remember
from speclint.errors import SettingsError, one_of, replace
from speclint.families import Guard, Loaded, require
from speclint.repository import Basis, Design, Source, open_repository
from speclint.rules import Context, Rule, read_limits

if TYPE_CHECKING:
    from speclint.checking.kept_folder import KeptFolder
    from speclint.checking.kept_results import KeptResults
    from speclint.checking.processes import Processes
    from speclint.repository import Remembered


class Touched(Struct, frozen=True):
    """Components that a change of some specs touches: those that it surely does, and those that it may."""

    surely: frozenset[str]
    perhaps: frozenset[str]
    changed: frozenset[str]


def assess(
    paths: Sequence[Path],
    loaded: Loaded,
    rules: Iterable[Rule] | None = None,
    basis: Basis | None = None,
    processes: Processes | None = None,
    only: Callable[[Design, Loaded], Collection[str] | Touched] | None = None,
    kept: KeptFolder | None = None,
    drawing_files: Source | None = None,
) -> Assessment:
    """Check the specs at some paths of one design repository, on its own design basis or on the one given.

    ``processes`` share the work; ``only`` chooses the components to check, where not all are. Where all rules are run,
    checks that ``kept`` holds of earlier runs, and that still hold, are taken from it. ``drawing_files`` is where
    files of drawings are read, if not here.

    :raises DesignError: for paths that are not of one repository.
    :raises FamilyError: when a family that the settings require is absent, or one that they do not leave out cannot be
        used.
    """
    code = _code_kept_for(kept, loaded)
    shelf = kept if code else None
    remembered = _remembered(shelf, code) if shelf is not None else None
    loaded = _with_rules_kept(loaded, shelf, code) if shelf is not None else loaded
    with Guard("that adds a kind"):  # a kind may have code of its own, which reads what a spec says
        opened = open_repository(
            paths, loaded.kinds, basis, tuple(loaded.materials), remembered, drawing_files
        )
    settings, design = opened.settings, opened.design
    if settings is None:
        return Assessment(opened.root, loaded, None, None, (), opened.complaints)
    loaded = loaded.without(settings.families.left_out)
    require(loaded, settings.families.required)
    limits, refused = read_limits(settings, loaded.rules) if settings.limits else ({}, [])
    inputs = Inputs(design, limits, opened.materials, opened.register, date.today())
    results = _kept_results(shelf, inputs, loaded, code) if rules is None and shelf is not None else None
    inputs = _of_those_asked(inputs, only, loaded, results)
    chosen = _concerned(loaded, inputs.design) if rules is None else _kept(rules, loaded)
    context = context_of(inputs, loaded)
    context.outcomes = {} if rules is None else None
    if results is not None:
        results.of_rules(chosen)
    checks = tuple(_checks(inputs, chosen, context, processes, results))
    return Assessment(
        opened.root,
        loaded,
        settings,
        inputs.design,
        checks,
        (*misspelt_families(settings, loaded), *refused, *opened.complaints),
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
    parts = context.design.part_names()
    found = {part: checks for part in parts if results and (checks := results.checks_of(part)) is not None}
    left = [part for part in parts if part not in found]
    made = _made(left, inputs, rules, context, processes) if left else []
    for part, checks in zip(left, made, strict=True):
        found[part] = checks
        if results is not None:
            results.keep_checks(part, checks)
    if results is not None:
        results.tidy()
    for part in parts:
        remember(part, found[part], context)
        yield from found[part]


def _made(
    parts: Sequence[str],
    inputs: Inputs,
    rules: Sequence[Rule],
    context: Context,
    processes: Processes | None,
) -> list[list[Check]]:
    if processes is not None:
        return processes.check(rules, context, inputs, parts)
    from speclint.checking.rule_run import check_named  # only where something is left to be made

    return [check_named(part, rules, context) for part in parts]


def _of_those_asked(
    inputs: Inputs,
    only: Callable[[Design, Loaded], Collection[str] | Touched] | None,
    loaded: Loaded,
    results: KeptResults | None,
) -> Inputs:
    """The same with no component selected but those that are asked for, where not all are."""
    if only is None:
        return inputs
    design = inputs.design
    asked = _chosen(only(design, loaded), results)
    return replace(inputs, design=replace(design, selected=design.selected & asked))


def _chosen(asked: Collection[str] | Touched, results: KeptResults | None) -> frozenset[str]:
    """The components asked for, without those whose kept checks consulted nothing that has changed."""
    if not isinstance(asked, Touched):
        return frozenset(asked)
    looked_at = {name: results.consulted_by(name) if results else None for name in asked.perhaps}
    touched = (name for name, some in looked_at.items() if some is None or not some.isdisjoint(asked.changed))
    return asked.surely | frozenset(touched)


def _code_kept_for(folder: KeptFolder | None, loaded: Loaded) -> str:
    """A digest of the code by which results can be kept; "" where nothing can be."""
    if folder is None or folder.why_not:
        return ""
    from speclint.checking.code_digest import code_of  # only where something is kept, as below

    try:
        return code_of(loaded, folder)
    except LookupError:  # nobody can tell whether a family made in memory is still the same
        return ""


def _kept_results(folder: KeptFolder, inputs: Inputs, loaded: Loaded, code: str) -> KeptResults:
    from speclint.checking.kept_results import KeptResults

    return KeptResults(folder, inputs, loaded, code)


def _with_rules_kept(loaded: Loaded, folder: KeptFolder, code: str) -> Loaded:
    from speclint.checking.kept_rules import KeptRules

    return replace(loaded, recollection=KeptRules(folder, code))


def _remembered(folder: KeptFolder, code: str) -> Remembered | None:
    """Where the index of the specs is kept between runs."""
    from speclint.repository import Remembered

    return Remembered(folder, code)


def _concerned(loaded: Loaded, design: Design) -> tuple[Rule, ...]:
    return loaded.rules_for({design.index.entries[name].kind for name in design.part_names()})


def _kept(rules: Iterable[Rule], loaded: Loaded) -> tuple[Rule, ...]:
    return tuple(rule for rule in rules if rule.family not in loaded.left_out)


def find_remedies(
    assessment: Assessment, processes: Processes, shown: Collection[Check] | None = None
) -> None:
    """Find what would clear each finding, with the work shared out; those that are kept and still hold are taken.

    ``shown`` are the findings whose remedies a report shows, where not all.
    """
    sought = [one for one in (assessment.checks if shown is None else shown) if one.outcome == "finding"]
    if assessment.context is None or not sought:
        return
    from speclint.checking.spoiling import Spoiling, brief, of_part_alike  # only where remedies are sought

    spoiling, kept = Spoiling(assessment.checks), assessment.kept
    left: dict[Hashable, list[tuple[Check, list[Check]]]] = {}
    for found in sought:
        could_spoil = spoiling.by(found)
        spoiled = [one for one, _ in could_spoil]
        known = kept.remedies_of(found, spoiled) if kept is not None else None
        if known is None:
            briefs = [brief(one, places) for one, places in could_spoil]
            left.setdefault(spoiling.alike(found), []).append((found, briefs))
        else:
            assessment.keep({found.order: known})
    if not left:
        return
    firsts = [group[0] for group in left.values()]
    done = processes.remedies(firsts, assessment.checks, assessment.context)
    for group, (came_to, consulted) in zip(left.values(), done, strict=True):
        for found, spoiled in group:
            own = of_part_alike(came_to, found)
            assessment.keep({found.order: own})
            if kept is not None:
                kept.keep_remedies(found, spoiled, own, consulted)


def rules_asked_for(loaded: Loaded, families: Sequence[str], rules: Sequence[str]) -> tuple[Rule, ...] | None:
    """The rules of some families, or of some names; None, which stands for all, where neither is given.

    :raises SettingsError: for a family or a rule that is not loaded.
    """
    return chosen_rules(loaded, families, rules) if families or rules else None


def chosen_rules(loaded: Loaded, families: Sequence[str], rules: Sequence[str]) -> tuple[Rule, ...]:
    """The rules of some families, or of some names; all where neither is given.

    :raises SettingsError: for a family or a rule that is not loaded.
    """
    known = {family.name for family in loaded.families}
    for name in families:
        if name in loaded.left_out:
            raise SettingsError(f"the family {name} is left out by speclint.toml")
        if name not in known:
            raise SettingsError(f"no family is called {name}; write {one_of(name, known)}")
    by_name = {rule.name: rule for rule in loaded.rules}
    for name in rules:
        if name not in by_name:
            left_out = " and ".join(one for one in loaded.left_out if one not in loaded.absent)
            while_out = f" while speclint.toml leaves out the family {left_out}" if left_out else ""
            raise SettingsError(f"no rule is called {name}{while_out}; write {one_of(name, by_name)}")
    return tuple(
        rule
        for rule in loaded.rules
        if (not families or rule.family in families) and (not rules or rule.name in rules)
    )
