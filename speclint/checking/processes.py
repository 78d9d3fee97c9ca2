"""The checks of a large design shared out to helper processes.

Each helper is an interpreter of its own. It is given the design as it was read, so that all work on the
same data; it loads the same families, and returns its results with each rule by its name. The caller works too, and
waits for no helper that is not ready. Where a helper is lost, the component it was at is checked again rule by rule,
each in a helper, so that the rule at fault is known and never runs in this process.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from threading import active_count
from types import TracebackType
from typing import TYPE_CHECKING, Any, Literal, Self, TypeVar

from msgspec import Struct

from speclint.checking.check_result import Check
from speclint.checking.processors import usable_processors
from speclint.checking.remedy import Sought
from speclint.checking.time_limit import GRACE, end_watch
from speclint.errors import FamilyError, replace
from speclint.rules import Consulted, Context, Rule
from speclint.specs import Component

if TYPE_CHECKING:  # else imported where helpers are started: a short check has none
    from speclint.checking.helper import Helper, Said
    from speclint.checking.helper_process import Beginning
    from speclint.checking.shared_work import Lost, TendedHelper

#: This many components take one processor some seconds; fewer are done before a helper has started.
_ENOUGH = 24
#: Remedies of this many findings take as long: each is sought by many runs of its rule.
_ENOUGH_FINDINGS = 8
#: More helpers than this cost more memory than they save time.
_MOST = 15

W = TypeVar("W")
R = TypeVar("R")


class Processes:
    """Helpers for one run; to be used in a ``with`` statement. None are started where there is little work."""

    def __init__(
        self,
        helpers: int | None = None,
        enough: int = _ENOUGH,
        start: Literal["new", "copy"] | None = None,
        on_part: Callable[[int, int], None] = lambda _done, _whole: None,
    ) -> None:
        """``on_part`` is told how many pieces of the work at hand are done, and of how many."""
        self._start, self._on_part = start, on_part
        self._wanted = min(usable_processors() - 1, _MOST) if helpers is None else helpers
        self._enough = enough
        self._helpers: list[TendedHelper] = []
        self._rules: dict[str, Rule] = {}
        self._beginning: object = None
        self._not_begun: tuple[Context, object] | None = None
        self._seconds = 0
        self._spare: TendedHelper | None = None
        self._copies: list[Helper] = []

    def __enter__(self) -> Self:
        return self

    def __exit__(self, _: type[BaseException] | None, __: object, ___: TracebackType | None) -> None:
        self._end_helpers()
        for copy in self._copies:
            copy.end()
            copy.forget()

    def _end_helpers(self) -> None:
        for helper in (*self._helpers, *([self._spare] if self._spare else [])):
            helper.end()
        self._helpers, self._spare = [], None

    def check(
        self, rules: Sequence[Rule], context: Context, given: object, parts: Sequence[str]
    ) -> list[list[Check]]:
        """Every check of each of some components, in their order.

        ``given`` is the data from which a helper makes the same context.
        """
        from speclint.checking.rule_run import check_named  # only where checks are made, as below

        self._end_helpers()  # those of an earlier run have its rules and its design
        self._rules = {rule.name: rule for rule in rules}
        self._seconds = context.design.settings.seconds_per_rule
        self._not_begun = (context, given)
        if len(parts) >= self._enough:
            self._begin_once()
        return self._divide(
            lambda: self._transport("checked"),
            lambda part: check_named(part, rules, context),
            parts,
            lambda part: self._one_by_one(part, context),
        )

    def remedies(
        self, tasks: Sequence[tuple[Check, list[Check]]], checks: Sequence[Check], context: Context
    ) -> list[tuple[Sought, Consulted]]:
        """What would clear some findings, each given with the checks that it could spoil, and what was consulted."""
        from speclint.checking.remedy_search import solved  # only where remedies are sought

        if len(tasks) >= min(self._enough, _ENOUGH_FINDINGS):  # none help yet where all checks were kept
            self._begin_once()
        of_findings = {found.component for found, _ in tasks}
        own: dict[str, list[Check]] = {name: [] for name in of_findings}
        for one in checks:
            if one.component in of_findings:
                own[one.component].append(replace(one, steps=()))
        whole = [(found, spoiled, own[found.component]) for found, spoiled in tasks]
        return self._divide(
            lambda: self._transport("remedied"), lambda task: solved(task[0], task[1], context), whole
        )

    def spread(self, work: Callable[[W], R], items: Sequence[W]) -> list[R]:
        """The result of a module-level function for each item, where neither contains a rule."""
        return self._divide(lambda: Transport(work, _unchanged, _unchanged), work, items)

    def meanwhile(self, work: Callable[[], R]) -> Callable[[], R]:
        """Begin a piece of work in a copy of this process, where it is safe to make one and a processor is free.

        The function returned gives the result; where there is no copy, or it was lost, it does the work itself.
        """
        if self._helpers or self._wanted < 1:
            return work
        end_watch()  # as before helpers begin
        if (self._start or _way_to_start()) != "copy":
            return work
        from speclint.checking.helper import copy_at_work

        try:
            copy = copy_at_work(work, self._copies)
        except OSError:  # no room for another process
            return work
        self._copies.append(copy)
        return lambda: _result_of(copy, work)

    def wait_until_ready(self) -> int:
        """Wait until every helper is ready or lost; how many are ready."""
        return sum(helper.becomes_ready() for helper in self._helpers)

    def _transport(self, work: Literal["checked", "remedied", "checked_by"]) -> Transport:
        from speclint.checking import helper_process
        from speclint.checking.packing import packed

        remote = getattr(helper_process, work)
        return Transport(remote, packed, lambda done: helper_process.unpacked(done, self._rules))

    def _divide(
        self,
        make_transport: Callable[[], Transport],
        local: Callable[[W], R],
        items: Sequence[W],
        lost: Callable[[W], R] | None = None,
    ) -> list[R]:
        """Let the helpers work from the first item on, and work from the last one back until all are done.

        ``lost`` does a piece with which a helper was lost; where it is not given, the piece is done here.
        """
        if not self._helpers:
            return list(self._counted(local, items))
        from speclint.checking.shared_work import Lost, SharedWork

        transport = make_transport()
        work = SharedWork(transport.remote, transport.pack, items)
        for helper in self._helpers:
            helper.serve(work)
        own: dict[int, R] = {}
        while True:
            while (index := work.take_last()) is not None:
                own[index] = local(items[index])
                self._on_part(len(own) + len(work.results), len(items))
            if not work.wait(self._helpers, self._patience):
                break
        self._on_part(len(items), len(items))
        for index, said in work.results.items():
            if isinstance(said, Lost):
                own[index] = lost(items[index]) if lost else local(items[index])
            else:
                own[index] = transport.unpack(_of(said))
        return [own[index] for index in range(len(items))]

    def _counted(self, local: Callable[[W], R], items: Sequence[W]) -> Iterator[R]:
        for done, item in enumerate(items, 1):
            yield local(item)
            self._on_part(done, len(items))

    @property
    def _patience(self) -> float:
        """After how many seconds a helper that says nothing is given up: it stops a rule of its own accord before."""
        return self._seconds + 2 * GRACE

    def _begin_once(self) -> None:
        """Start the helpers for the design at hand, unless they are started."""
        if self._wanted > 0 and self._not_begun is not None:
            self._begin(*self._not_begun)
            self._not_begun = None

    def _begin(self, context: Context, given: object) -> None:
        """Start the helpers; where the system has no room for more, those that there are do."""
        from speclint.checking.shared_work import TendedHelper

        end_watch()  # a thread, and a copy is made only of a process that has no other
        self._beginning = self._told(context, given)
        started: list[Helper] = []
        with suppress(OSError):  # then those that there are and the caller do the work
            for _ in range(self._wanted):
                started.append(_helper(self._start or _way_to_start(), [*started, *self._copies]))
        self._helpers = [TendedHelper(helper, self._beginning) for helper in started]

    def _told(self, context: Context, given: object) -> Beginning:
        """What whoever helps is told before it begins."""
        import pickle

        from speclint.checking.helper_process import Beginning

        left_out = context.design.settings.families.left_out
        all_rules = context.outcomes is not None
        return Beginning(pickle.dumps(given), tuple(self._rules), all_rules, left_out)

    def _one_by_one(self, name: str, context: Context) -> list[Check]:
        """The checks of a component, each made by one rule alone in a helper; those that review the others last."""
        part = context.design.specs[name]
        assert isinstance(part, Component)
        concerned = [rule for rule in self._rules.values() if isinstance(part, rule.on)]
        checks: list[Check] = []
        for rule in sorted(concerned, key=lambda one: one.reviews):
            before = [replace(one, steps=()) for one in checks] if rule.reviews else []
            checks.append(self._alone(rule, part, before))
        return sorted(checks, key=lambda one: one.order)

    def _alone(self, rule: Rule, part: Component, before: Sequence[Check]) -> Check:
        """One check made in a helper; where that is lost too, the rule could not be run."""
        from speclint.checking.conclusion import could_not_run
        from speclint.checking.shared_work import Lost, SharedWork, TendedHelper

        way = self._transport("checked_by")
        work = SharedWork(way.remote, way.pack, [(part.id, rule.name, before)])
        if self._spare is None:
            try:
                self._spare = TendedHelper(_helper(self._start or "new", ()), self._beginning)
            except OSError as problem:
                return could_not_run(rule, part, f"no process can be started to run it in: {problem}")
        self._spare.do(work, self._patience)
        said = work.results.get(0)
        if said is not None and not isinstance(said, Lost):
            found: Check = way.unpack(_of(said))
            return found
        self._spare.end()
        self._spare = None
        return could_not_run(rule, part, _why_lost(said, self._seconds))


def _why_lost(lost: Lost | None, seconds: int) -> str:
    if lost is None:
        return "the process to run it in did not begin"
    from speclint.checking.one_corner import late

    return late(seconds) if lost.after >= seconds else "it ended the process that it ran in"


def _helper(way: Literal["new", "copy"], others: Sequence[Helper]) -> Helper:
    from speclint.checking.helper import copy_of_this, new_interpreter
    from speclint.checking.helper_process import serve

    if way == "new":
        return new_interpreter()
    return copy_of_this(serve, others)


def _way_to_start() -> Literal["new", "copy"]:
    """A new interpreter, which every system can start; a copy of this one where that is safe, as it has all loaded."""
    return "copy" if sys.platform == "linux" and active_count() == 1 else "new"


class Transport(Struct, frozen=True):
    """How work is done in a helper: the function, and how work and result are packed."""

    remote: Callable[[Any], Any]
    pack: Callable[[Any], Any]
    unpack: Callable[[Any], Any]


def _unchanged(item: Any) -> Any:
    return item


def _result_of(copy: Helper, work: Callable[[], R]) -> R:
    from speclint.checking.helper import HelperLost

    try:
        said = copy.hear()
    except HelperLost:
        return work()
    result: R = _of(said)
    return result


def _of(said: Said) -> Any:
    """The result that a helper says.

    :raises FamilyError: where the work ended in one; RuntimeError for another error, a defect of speclint.
    """
    if said[0] == "done":
        return said[1]
    raise said[1] if isinstance(said[1], FamilyError) else RuntimeError(f"in a helper process: {said[1]}")
