"""One check made again and again while its design is changed in memory: what the properties of rules are tried on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from pathlib import Path

from speclint.checking import Check, Inputs, check, check_component, context_of
from speclint.errors import DesignError
from speclint.families import Loaded, RuleExample
from speclint.repository import FILE_NAME, Change, DraftedDesign, is_toml, scratch_folder
from speclint.rules import Context, Rule, read_limits
from speclint.specs import Component
from speclint.testing.declared_properties import Declared, declared_properties
from speclint.testing.design import SETTINGS, DesignFolder
from speclint.testing.families import installed_families

#: Concessions and readings of drawings are asked of one day, so that no result hangs on the day of the run.
DAY = date(2026, 1, 15)


class TrialBench:
    """The rules of some families, and checks of designs that are changed in memory.

    ``root`` is the design repository on which examples of rules rest; those that are alone need none.
    """

    def __init__(self, loaded: Loaded | None = None, root: Path | None = None) -> None:
        self.loaded = loaded or installed_families()
        self.rules = {rule.name: rule for rule in self.loaded.rules}
        self._root = root
        self._before: tuple[RuleExample, DraftedDesign] | None = None

    @cached_property
    def design(self) -> DraftedDesign:
        """The design of the repository, read once.

        :raises DesignError: where it draws a complaint, or no repository was given.
        """
        if self._root is None:
            raise DesignError("the bench was given no design repository")
        return DraftedDesign.opened(self._root, self.loaded.kinds)

    @cached_property
    def declared(self) -> Mapping[str, Declared]:
        """What the families declare of how their rules must go, by the name of the rule.

        :raises FamilyError: where a file of it cannot be read.
        """
        return declared_properties(self.loaded.families)

    @cached_property
    def _at_rest(self) -> Context:
        """What the checks of the repository consult, unchanged."""
        return self.context(self.design)

    def alone(self, given: Sequence[Change]) -> DraftedDesign:
        """A design of some whole specs, and of files such as the settings and materials, and of nothing else.

        :raises DesignError: where it draws a complaint.
        """
        files = {FILE_NAME: SETTINGS}
        for one in given:
            files[one.component if is_toml(one.component) else f"{one.component}.toml"] = str(one.value)
        with scratch_folder() as root:
            for name, text in files.items():
                (root / name).write_text(text, encoding="utf-8", newline="\n")
            return DraftedDesign.opened(root, self.loaded.kinds)

    def context(self, drafted: DraftedDesign) -> Context:
        """What checks of a design consult.

        :raises DesignError: where a limit that its settings state cannot be used.
        """
        design = drafted.design
        limits, refused = (
            read_limits(design.settings, self.loaded.rules) if design.settings.limits else ({}, [])
        )
        if refused:
            raise DesignError(str(refused[0]))
        inputs = Inputs(design, limits, drafted.materials, drafted.register, DAY)
        context = context_of(inputs, self.loaded)
        context.shared = False  # of parts alike only some corners would be run
        context.outcomes = {}
        return context

    def before(self, one: RuleExample) -> DraftedDesign:
        """The design of an example that holds; that of the last is kept, since it is asked for again.

        :raises DesignError: where it cannot be read.
        """
        if self._before is None or self._before[0] is not one:
            made = self.alone(one.given) if one.alone else self.design.changed(one.given)
            self._before = one, made
        return self._before[1]

    def checks(self, one: RuleExample) -> tuple[Check, Check]:
        """The check of an example: as it holds, and as its changes break it."""
        holds, broken = self.trials(one)
        return holds.done, broken.done

    def trials(self, one: RuleExample) -> tuple[Trial, Trial]:
        """The check of an example to be tried: as it holds, and as its changes break it.

        :raises DesignError: where a design of it cannot be read.
        """
        start = self.before(one)
        broken = start.changed(one.changes)
        return self.trial(one.rule, one.component, start), self.trial(one.rule, one.component, broken)

    def trial(self, rule: str, component: str, design: DraftedDesign | None = None) -> Trial:
        """The check of a rule, given by its name, to be tried on a component of a design.

        :raises DesignError: where there is no such rule or component.
        """
        if rule not in self.rules:
            raise DesignError(f"no rule is called {rule}")
        drafted = design or self.design
        return Trial(self, drafted, self.made(self.rules[rule], component, drafted))

    def made(self, rule: Rule, component: str, drafted: DraftedDesign) -> Check:
        """One check; of a rule that reviews the others of its component, after them.

        :raises DesignError: where the component is not there.
        """
        part = drafted.design.specs.get(component)
        if not isinstance(part, Component):
            raise DesignError(f"no component is called {component}")
        at_rest = self._root is not None and drafted is self.design
        context = self._at_rest if at_rest else self.context(drafted)
        if not rule.reviews:
            return check(rule, part, context)
        done = check_component(part, self.loaded.rules_for({part.kind}), context)
        return next(found for found in done if found.rule.name == rule.name)


@dataclass(frozen=True)
class Trial:
    """One check of a design, and the same check once the design is changed."""

    bench: TrialBench
    design: DraftedDesign
    done: Check

    @property
    def rule(self) -> Rule:
        """The rule that is tried."""
        return self.done.rule

    @property
    def name(self) -> str:
        """The rule and the component, as a fault names them."""
        return f"{self.rule.name} on {self.done.component}, which is {self.done.outcome}"

    def with_changes(self, changes: Sequence[Change]) -> Check | None:
        """The check with some changes; None where the design cannot be read with them."""
        try:
            return self.of(self.design.changed(changes))
        except DesignError:
            return None

    def of(self, design: DraftedDesign) -> Check:
        """The check of another design.

        :raises DesignError: where its component is not there.
        """
        return self.bench.made(self.rule, self.done.component, design)


def trial_of(folder: DesignFolder, rule: str, component: str = "") -> Trial:
    """The check of a rule, to be tried on the design of a folder: of a component, where there are several.

    :raises AssertionError: where there is no such rule, or not the one check.
    :raises DesignError: where the design draws a complaint.
    """
    done = folder.only(rule, component)
    return TrialBench(folder.loaded, folder.root).trial(rule, done.component)
