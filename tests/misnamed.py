"""Every name of a place that a spec of the example states, misspelt: no rule that reads it may break off.

What has no place of that name is a complaint when it is read, or a check comes out otherwise and says what is wanting.
``python -m tests.misnamed`` tries all of them and lists those that break a rule off or that change no check; the test
tries one of each key.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from functools import cached_property

from speclint.checking import Check, check
from speclint.checking.worst_corner import Effort
from speclint.errors import replace
from speclint.repository import Design
from speclint.rules import Context
from speclint.specs import Component, Spec, Stated, names_in
from tests.example import assessed
from tests.unit_slips import Bench, Slip

WRONG = "misspelt"
_ONE_CORNER = Effort(boxes=0, corners=1)


class Misnamer:
    """The example, with what each check of it opened and how it came out."""

    def __init__(self) -> None:
        self.bench = Bench()
        self._opening: dict[tuple[str, str, str], list[Check]] = defaultdict(list)
        self._own: dict[str, list[Check]] = defaultdict(list)
        for one in assessed().checks:
            if not one.rule.reviews:
                self._own[one.component].append(one)
                for place in one.consulted.opened:
                    self._opening[place].append(one)

    @cached_property
    def slips(self) -> dict[Slip, str]:
        """Every name that a spec states in its own file, misspelt, with its key as the kind declares it."""
        return dict(self._slips())

    def _slips(self) -> Iterator[tuple[Slip, str]]:
        design = self.bench.design
        for name, spec in sorted(design.specs.items()):
            for key, value in spec.at_keys():
                declared = _declared(spec, key)
                if declared and isinstance(value, Stated) and value.where.file == design.files[name]:
                    yield (
                        Slip(name, value.where.line, key, str(value.value), WRONG),
                        f"{spec.kind}: {declared}",
                    )

    def faults(self, slip: Slip) -> list[str]:
        """What goes wrong with a misspelt name: rules that break off, or checks that all come out as before."""
        spec = self.bench.read_from(self._misspelt(slip), slip.spec)
        if spec is None:
            return []
        design = replace(self.bench.design, specs={**self.bench.design.specs, slip.spec: spec})
        context = self.bench.context_of(design)
        place = (design.files[slip.spec], slip.spec, slip.key)
        before = self._opening.get(place) or self._own[slip.spec]
        after = [_again(one, design, context) for one in before]
        broken = [one for one in after if one.could_not_run]
        if not broken and all(_as_before(was, now) for was, now in zip(before, after, strict=True)):
            return [f"{slip}: all {len(before)} checks come out as before"]
        return [f"{slip}: {one.rule.name} on {one.component}: {one.could_not_run}" for one in broken]

    def _misspelt(self, slip: Slip) -> list[str]:
        """The lines of a file with a name in it misspelt; of parts that one file states, that of each."""
        lines, key = self.bench.lines_of(slip.spec), slip.key.rpartition(".")[2]
        line, times = re.subn(rf'\b{key}( *= *)"[^"]+"', rf'{key}\1"{slip.wrong}"', lines[slip.where - 1])
        assert times == 1, f"{slip}: line {slip.where} of its file does not state it once"
        lines[slip.where - 1] = line
        return lines


def _again(one: Check, design: Design, context: Context) -> Check:
    """A check, made at one corner of another design."""
    part = design.specs[one.component]
    assert isinstance(part, Component)
    return check(one.rule, part, context, effort=_ONE_CORNER)


def _as_before(was: Check, now: Check) -> bool:
    """Whether a check tells no more than before: at one corner it may find less."""
    stands = ("finding", "not assessed")
    if now.outcome not in stands:
        return True
    said = {was.says, *was.missing, *(judged.says for judged in was.failing)}
    return was.outcome == now.outcome and said >= {*now.missing, *(judged.says for judged in now.failing)}


def _declared(spec: Spec, key: str) -> str:
    """The key as the kind of a spec declares it, where it holds the name of a place."""
    steps = tuple(key.split("."))
    for path, _ in names_in(type(spec)):
        if len(path) == len(steps) and all(one in ("*", step) for one, step in zip(path, steps, strict=True)):
            return ".".join(path)
    return ""


def main() -> int:
    misnamer = Misnamer()
    number = 0
    for slip in misnamer.slips:
        for fault in misnamer.faults(slip):
            number += 1
            print(fault, flush=True)
    print(f"{len(misnamer.slips)} names misspelt, {number} faults")
    return int(number > 0)


if __name__ == "__main__":
    raise SystemExit(main())
