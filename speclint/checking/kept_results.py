"""Checks of earlier runs that still hold: nothing that they asked of the design, nor what judges it, has changed.

A result is kept by component, with a digest of all that its checks consulted at every corner: of the specs, of the
words of a drawing that were read, of the files of drawings with their readings, and of which parts link to which. It is
found again where each is the same, and where the settings, the materials, the concessions of the register, the day and
all code are the same too.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any

from msgspec import Struct, field

from speclint.checking.check_result import Check
from speclint.checking.inputs import Inputs
from speclint.checking.kept_folder import KeptFolder
from speclint.checking.packing import packed, unpacked
from speclint.checking.remedy import Sought
from speclint.errors import replace
from speclint.families import Loaded
from speclint.repository import Design, State, digest, drawing_state
from speclint.rules import Consulted, Rule
from speclint.specs import Component

#: What a result consulted, each with its digest, or with the parts that link to one.
Trace = tuple[tuple[object, ...], ...]


class KeptResults:
    """What is kept for one run: by its design, by what judges it, and by the code that does."""

    def __init__(self, folder: KeptFolder, inputs: Inputs, loaded: Loaded, code: str) -> None:
        self._folder, self._state = folder, _State(inputs)
        self._rules: dict[str, Rule] = {}
        self._states: dict[tuple[tuple[str, str], str], str] = {}
        self._code = code
        self._ground = _ground(inputs, loaded, code)

    def of_rules(self, rules: Iterable[Rule]) -> None:
        """Take the rules, which are needed before any check is taken or kept."""
        self._rules = {rule.name: rule for rule in rules}

    def consulted_by(self, component: str) -> frozenset[str] | None:
        """The specs that the checks of a component consulted, where they are kept and still hold."""
        found = self._kept(self._name_of(component))
        return (
            None
            if found is None
            else frozenset(str(names[0]) for sort, *names, _ in found[0] if sort != "asked")
        )

    def checks_of(self, component: str) -> list[Check] | None:
        """The checks of a component, where they are kept and still hold."""
        return self._found(self._name_of(component))

    def keep_checks(self, component: str, checks: Sequence[Check]) -> None:
        """Keep the checks of a component; none where a rule could not be run, since another time it may."""
        if not any(one.could_not_run for one in checks):
            self._keep(self._name_of(component), checks, _together(one.consulted for one in checks))

    def remedies_of(self, found: Check, could_spoil: Sequence[Check]) -> Sought | None:
        """What the search for remedies of a finding came to, where that is kept and still holds."""
        known = self._found(self._name_of_finding(found, could_spoil))
        return known[0] if known else None

    def keep_remedies(
        self, found: Check, could_spoil: Sequence[Check], sought: Sought, consulted: Consulted
    ) -> None:
        """Keep what the search for remedies of a finding came to, with all that was consulted for it."""
        name = self._name_of_finding(found, could_spoil)
        self._keep(name, [sought], _together([found.consulted, consulted]))

    def again_of(self, one: Check, instead: str) -> Check | None:
        """A check made again with other values ``instead``, by their digest; where it is kept and still holds."""
        found = self._found(digest(self._ground, "again", *one.order, instead))
        return found[0] if found else None

    def keep_again(self, one: Check, found: Check, instead: str) -> None:
        """Keep how a check came out with other values; not where it could not be run."""
        if not found.could_not_run:
            self._keep(digest(self._ground, "again", *one.order, instead), [found], found.consulted)

    def stated_in(self, names: Iterable[str]) -> str:
        """A digest of all that some specs state."""
        return digest([(name, self._state.spec(name)) for name in names])

    def of_code(self, called: str) -> bytes | None:
        """What a report kept that rests on nothing but the code; None where this code has kept none."""
        return self._folder.read(digest(self._code, "of code", called))

    def keep_of_code(self, called: str, body: bytes) -> None:
        """Keep what rests on nothing but the code."""
        self._folder.write(digest(self._code, "of code", called), body)

    def tidy(self) -> None:
        """Let the folder not grow without end."""
        self._folder.tidy()

    def _name_of(self, component: str) -> str:
        return digest(self._ground, "checks", component, self._state.spec(component))

    def _name_of_finding(self, found: Check, could_spoil: Sequence[Check]) -> str:
        others = [self._state_of(one) for one in could_spoil]
        return digest(self._ground, "remedies", *found.order, found.fingerprint, found.says, others)

    def _state_of(self, one: Check) -> str:
        """A digest of what remedies hold a check against."""
        key = one.order, one.fingerprint
        if key not in self._states:
            corners = sorted(map(repr, one.corners.items()))
            self._states[key] = digest(*one.order, one.fingerprint, corners)
        return self._states[key]

    def _found(self, name: str) -> list[Any] | None:
        kept = self._kept(name)
        found = unpacked(kept[1], self._rules) if kept is not None else None
        return found if isinstance(found, list) else None

    def _kept(self, name: str) -> tuple[Trace, bytes] | None:
        """What was consulted for a result, and the result as it is kept; None where it does not hold."""
        body = self._folder.read(name)
        kept = unpacked(body, self._rules) if body is not None else None
        if not isinstance(kept, tuple) or len(kept) != 2 or not self._state.is_as(kept[0]):
            return None
        return kept

    def _keep(self, name: str, result: Sequence[object], consulted: Consulted) -> None:
        trace = self._state.trace(consulted)
        self._folder.write(name, packed((trace, packed(list(result)))))


class _State(Struct):
    """A design as it is now, asked for digests of its parts."""

    inputs: Inputs
    _states: dict[str, State | None] = field(default_factory=dict)

    @property
    def design(self) -> Design:
        """The design."""
        return self.inputs.design

    def spec(self, name: str) -> str:
        """The digest of a spec but for the words of its drawing; another where none was read.

        Which files could not be read stands in what every result rests on.
        """
        state = self._of(name)
        return state.part if state is not None else "not read"

    def word(self, name: str, key: str) -> str:
        """The digest of one word of the drawing."""
        state = self._of(name)
        return state.words[key] if state is not None else digest(None)

    def _of(self, name: str) -> State | None:
        if name not in self._states:
            self._states[name] = self.design.state_of(name)
        return self._states[name]

    def linked(self, name: str, kind: str) -> tuple[str, ...]:
        """The components of a kind that link to a spec."""
        index = self.design.index
        return tuple(part for part in index.linking_to(name) if kind in index.entries[part].classes)

    def asked(self, sort: str, word: str) -> tuple[str, ...]:
        """What answers a question put to the whole repository, such as ids."""
        if sort == "alike":
            return self.design.names_alike(word)
        if sort == "drawing file":
            return self._drawing_of(word)
        if sort in ("number", "heat"):
            return self.design.index.certified(sort, word)
        if sort == "called":
            return self.design.index.called(word)
        return self.design.index.of_drawing(word) if sort == "drawing" else self.design.index.left_over()

    def _drawing_of(self, name: str) -> tuple[str, ...]:
        """How the file of the drawing of a component stands against its readings."""
        part = self.design.specs.get(name)
        if not isinstance(part, Component):
            return ()
        found = drawing_state(part, self.design, self.inputs.register.readings, self.inputs.today)
        return found.rests_on if found else ()

    def trace(self, consulted: Consulted) -> Trace:
        """What was consulted, as it is now."""
        return (
            *(("spec", name, self.spec(name)) for name in sorted(consulted.specs)),
            *(("word", name, key, self.word(name, key)) for name, key in sorted(consulted.words)),
            *(("linked", name, kind, self.linked(name, kind)) for name, kind in sorted(consulted.linked)),
            *(("asked", sort, word, self.asked(sort, word)) for sort, word in sorted(consulted.asked)),
        )

    def is_as(self, trace: Trace) -> bool:
        """Whether all that was consulted is as it was."""
        now: Mapping[object, Callable[..., object]] = {
            "spec": self.spec,
            "word": self.word,
            "linked": self.linked,
            "asked": self.asked,
        }
        return all(now[sort](*names) == was for sort, *names, was in trace)


def _together(consulted: Iterable[Consulted]) -> Consulted:
    whole = Consulted()
    for one in consulted:
        whole.add(one)
    return whole


def _ground(inputs: Inputs, loaded: Loaded, code: str) -> str:
    """A digest of what every result rests on, whatever it consults."""
    design = inputs.design
    return digest(
        code,
        loaded.left_out,
        inputs.today,
        design.settings,
        list(_limits(inputs)),
        inputs.own_materials,
        replace(inputs.register, readings=()),  # of which each check asks for those of its part
        sorted((place.file, place.line, place.key) for place in design.cut),
        [one.told for one in design.unread],
    )


def _limits(inputs: Inputs) -> Iterator[tuple[object, ...]]:
    for (rule, name), limit in sorted(inputs.limits.items()):
        yield rule, name, limit
