"""One run: from paths to everything that was found. Reports read it; nothing here prints."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from functools import cache, partial
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.checking.check_result import Check
from speclint.checking.remedy import Remedy, remedies
from speclint.checking.rule_run import check_component
from speclint.errors import Complaint, DesignError, SettingsError, Where, one_of
from speclint.families import Loaded, require
from speclint.repository import FILE_NAME, Design, Settings, find_root, load_design, load_settings
from speclint.rules import Context, Grade, Rule, read_limits

if TYPE_CHECKING:
    from speclint.checking.processes import Hands
    from speclint.handbook.materials import Material
    from speclint.quantities import Measure
    from speclint.repository import Register


@dataclass(frozen=True)
class Assessment:
    """Everything that one run found out.

    ``design`` and ``settings`` are None when the settings could not be read: then nothing was checked.
    ``register`` is None where the repository has none.
    """

    root: Path
    loaded: Loaded
    settings: Settings | None
    design: Design | None
    checks: tuple[Check, ...]
    complaints: tuple[Complaint, ...]
    context: Context | None = None
    register: Register | None = None
    _remedies: dict[tuple[str, str], list[Remedy]] = field(default_factory=dict, repr=False, compare=False)

    def remedies(self, check: Check) -> list[Remedy]:
        """What would clear a finding; worked out when first asked for, where it has not been found already."""
        if check.order not in self._remedies:
            found = remedies(check, self.checks, self.context) if self.context else []
            self._remedies[check.order] = found
        return self._remedies[check.order]

    def find_remedies(self, hands: Hands) -> None:
        """Find what would clear each finding, with the help of many hands."""
        if self.context is not None:
            findings = [one for one in self.checks if one.outcome == "finding"]
            self._remedies.update(hands.remedies(findings, self.checks, self.context))

    @property
    def changed_limits(self) -> tuple[str, ...]:
        """The limits that the repository sets for itself, in words."""
        limits = self.context.limits if self.context else {}
        return tuple(f"{rule} {name} = {measure.text}" for (rule, name), measure in sorted(limits.items()))

    @property
    def exit_at(self) -> Grade:
        """The least grade that stands in the way."""
        word = self.settings.exit_at if self.settings else Grade.NONCONFORMITY.word
        return Grade[word.upper()]

    @property
    def exit_code(self) -> int:
        """0 nothing in the way, 1 findings, 2 something unreadable, 3 a rule that could not be run."""
        if any(check.could_not_run for check in self.checks):
            return 3
        if self.complaints:
            return 2
        in_the_way = (check.stands_in_the_way for check in self.checks)
        return int(any(grade is not None and grade >= self.exit_at for grade in in_the_way))

    def counted(self) -> dict[str, int]:
        """How many checks came out each way."""
        outcomes = Counter(check.outcome for check in self.checks)
        return {word: outcomes[word] for word in ("conforms", "finding", "not assessed", "not applicable")}

    def graded(self) -> dict[str, int]:
        """How many findings of each grade, the gravest first."""
        grades = Counter(check.grade for check in self.checks if check.outcome == "finding")
        return {grade.word: grades[grade] for grade in sorted(Grade, reverse=True)}


def assess(
    paths: Sequence[Path],
    loaded: Loaded,
    rules: Iterable[Rule] | None = None,
    settings: Settings | None = None,
    hands: Hands | None = None,
    only: str = "",
) -> Assessment:
    """Check the specs that lie at some paths of one design repository, under its own settings or those given.

    ``hands`` spread the work over processes; ``only`` is the one component to check, where not all are.

    :raises DesignError: for paths that are not of one repository.
    :raises FamilyError: when a family that the settings require is absent.
    """
    root = find_root(paths)
    settings, complaints = load_settings(root) if settings is None else (settings, ())
    if settings is None:
        design = load_design(root, paths, Settings(), loaded.kinds)
        return Assessment(root, loaded, None, None, (), (*complaints, *design.complaints))
    require(loaded, settings.families.required)
    design = load_design(root, paths, settings, loaded.kinds)
    if only:
        design = replace(design, selected=design.selected & {only})
    chosen = loaded.rules_for({part.kind for part in design.parts()}) if rules is None else tuple(rules)
    limits, refused = read_limits(settings, loaded.rules) if settings.limits else ({}, [])
    own, unread = own_materials(root, settings)
    register = _register_of(design)
    given = Given(design, limits, own, register, date.today())
    context = context_of(given, loaded)
    context.outcomes = {} if rules is None else None
    unsound = register.complaints if register else ()
    found = (*complaints, *refused, *unread, *design.complaints, *unsound)
    if hands is None:
        checks = [one for part in design.parts() for one in check_component(part, chosen, context)]
    else:
        checks = hands.check(chosen, context, given)
    return Assessment(root, loaded, settings, design, tuple(checks), found, context, register)


@dataclass(frozen=True)
class Given:
    """All that the context of a run is made of, besides the families."""

    design: Design
    limits: Mapping[tuple[str, str], Measure]
    own_materials: Mapping[str, Material]
    register: Register | None
    today: date


def context_of(given: Given, loaded: Loaded) -> Context:
    """What the sheets of a run may consult."""
    materials = {**loaded.materials, **given.own_materials}
    context = Context(given.design, cache(partial(find_material, materials)), given.limits)
    if given.register is not None:
        from speclint.register import watch

        watch(context, loaded, given.register, given.today)
    return context


def _register_of(design: Design) -> Register | None:
    """The register, where there is one, for the rules that ask after concessions."""
    if not (design.root / design.settings.register_file).exists():
        return None
    from speclint.repository import read_register

    return read_register(design.root, design.settings)


def own_materials(root: Path, settings: Settings) -> tuple[dict[str, Material], list[Complaint]]:
    """The materials that the repository adds, from the files its settings name."""
    found: dict[str, Material] = {}
    complaints: list[Complaint] = []
    for file in settings.materials:
        from speclint.handbook.materials import MaterialsError, read_materials

        path = root / file
        if not path.resolve().is_relative_to(root):
            complaints.append(
                Complaint(Where(FILE_NAME, 0, "materials"), "lies outside the repository", f'"{file}"')
            )
            continue
        try:
            found.update({one.name: one for one in read_materials(path.read_text(encoding="utf-8"), file)})
        except MaterialsError as problem:
            complaints += problem.complaints
        except (OSError, UnicodeDecodeError) as problem:
            complaints.append(Complaint(Where(file), f"the file of materials cannot be read: {problem}"))
    return found, complaints


def find_material(own: dict[str, Material], name: str) -> Material:
    """A material of the repository or a family, or else of the handbook.

    :raises NotKnown: when neither has it.
    """
    if name in own:
        return own[name]
    from speclint.handbook.materials import material

    return material(name)


def chosen_rules(loaded: Loaded, families: Sequence[str], rules: Sequence[str]) -> tuple[Rule, ...]:
    """The rules of some families, or of some names; all where neither is given.

    :raises SettingsError: for a family or a rule that is not loaded.
    """
    known = {family.name for family in loaded.families}
    for name in families:
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


def of_component(assessment: Assessment, name: str) -> Assessment:
    """The part of an assessment that concerns one component.

    :raises DesignError: when the repository has no such component.
    """
    known = assessment.design.files if assessment.design else {}
    if name not in known:
        raise DesignError(f"no component is called {name}; {one_of(name, known)}")
    complaints = tuple(one for one in assessment.complaints if one.where.file in (known[name], FILE_NAME))
    checks = tuple(check for check in assessment.checks if check.component == name)
    return replace(assessment, checks=checks, complaints=complaints)
