"""A key that turns what is on a shaft, or the shaft: its height, where it bears, where it lies, and what is judged."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Judgement, Limit, Sheet
from speclint.facts import keyways_of_no_size
from speclint.specs import Shaft
from speclint_valves.formulae.holding import pressure_of_key, shear_of_key
from speclint_valves.formulae.keys import height_in_hub
from speclint_valves.formulae.room import before_place, beyond_place, place_of_other_arm
from speclint_valves.inputs.key_sections import section_of
from speclint_valves.inputs.keys import DEPTH_LIMITS, deep_in_shaft, height_of_key, room_over_it

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from speclint.equations import Metres, NewtonMetres
    from speclint.specs import Position, ShaftKey

    Judge = Callable[[NewtonMetres, Sheet], Judgement]

KEY_LIMITS = (
    Limit("shear", "60 MPa", "stress", COMMON_PRACTICE, "greatest shear of a key, reversing"),
    Limit("pressure", "100 MPa", "stress", COMMON_PRACTICE, "greatest pressure beside a key, reversing"),
    *DEPTH_LIMITS,
)


@dataclass(frozen=True, slots=True)
class DrivingKey:
    """A key, the shaft in whose keyway it lies, its place along that, and what holds it, as a sentence calls it."""

    key: ShaftKey
    shaft: Shaft
    at: Position
    of: str

    def judged(self, T: NewtonMetres, sheet: Sheet, *also: Judge) -> Judgement:
        """Whether the key bears a torque, is deep enough in both keyways, and lies in one of its shaft; and more."""
        if wrong := self._nowhere(sheet):
            return sheet.states(False, wrong, where=self.shaft.where)
        judges: list[Judge] = [self._bears, self._deep, self._in_keyway, *also]
        if sheet.is_stated("height of the key", self.key.height):
            judges.append(self._section)
        return sheet.each(judges, lambda judge: judge(T, sheet))

    def held_without(self, how: str, sheet: Sheet) -> Judgement | None:
        """What is wrong with a part that is held without a key; None where a key holds it.

        No key of it is stated, nor is a keyway cut beneath what is forged on. Ends the rule where neither is.
        """
        if how == "key":
            return None
        of_one_piece = how == "forged on"
        said = f"{self.of} is said to be " + ("forged on its shaft" if of_one_piece else f"held by {how}")
        sizes = {"length": self.key.length, "height": self.key.height, "hub depth": self.key.hub_depth}
        for name, size in sizes.items():
            if sheet.is_stated(f"{name} of the key", size):
                says = f"{said}, and a key that holds it is stated by its {name}"
                return sheet.states(False, says, where=size.where)
        if not of_one_piece:
            raise sheet.not_covered(
                f"{self.of} is held by {how}, which no rule works: the torque it holds is to be shown"
            )
        if sheet.is_stated(f"place of {self.of}", self.at):
            for name, *_ in self._beneath(sheet.take("a", self.at), sheet):
                says = f"{said}, and keyway {name} of {self.shaft.id} is cut beneath it"
                return sheet.states(False, says, where=self.at.where)
        raise sheet.not_applicable(f"{self.of} is of one piece with its shaft")

    def _nowhere(self, sheet: Sheet) -> str:
        """What is wrong with a shaft that has no keyway for it; "" where nothing is."""
        if sheet.take("b", self.shaft.keyway_width) > 0 and sheet.take("t_1", self.shaft.keyway_depth) > 0:
            return ""
        return keyways_of_no_size(self.shaft, sheet) or (
            f"{self.of} is held by a key, and the keyway of {self.shaft.id} is stated as 0"
        )

    def _height(self, sheet: Sheet) -> Metres:
        return height_of_key(self.key.height, self.shaft.keyway_width, "b_n", sheet)

    def _bears(self, T: NewtonMetres, sheet: Sheet) -> Judgement:
        """Shear, and pressure on the least side: in the shaft, in the hub, or what stands out of the shaft."""
        d, b = sheet.take("d", self.shaft.diameter), sheet.take("b", self.shaft.keyway_width)
        t_1, t_2 = sheet.take("t_1", self.shaft.keyway_depth), sheet.take("t_2", self.key.hub_depth)
        L = sheet.take("L_k", self.key.length)
        stands_out = sheet.work("h_b", height_in_hub, h=self._height(sheet), t_1=t_1)
        τ = sheet.work("τ", shear_of_key, T=T, d=d, b=b, L=L)
        p = sheet.work("p", pressure_of_key, T=T, d=d, h=min(t_1, t_2, stands_out), L=L)
        return sheet.worst(
            sheet.at_most(τ, sheet.limit("shear")).else_says(
                f"key of {self.of} sheared with {{found}}, {{limit}} allowed"
            ),
            sheet.at_most(p, sheet.limit("pressure")).else_says(
                f"key of {self.of} bears with {{found}}, {{limit}} allowed"
            ),
        )

    def _deep(self, _T: NewtonMetres, sheet: Sheet) -> Judgement:
        h, t_1 = self._height(sheet), sheet.take("t_1", self.shaft.keyway_depth)
        return sheet.worst(
            deep_in_shaft(h, t_1, self.of, sheet),
            *room_over_it(h, t_1, sheet.take("t_2", self.key.hub_depth), self.of, sheet),
        )

    def _section(self, _T: NewtonMetres, sheet: Sheet) -> Judgement:
        return section_of(self.shaft.keyway_width, self.key.height, sheet)

    def _in_keyway(self, _T: NewtonMetres, sheet: Sheet) -> Judgement:
        """Along the shaft, with its middle where that of the part is that it holds."""
        return self._lies_at((sheet.take("a", self.at),), sheet)

    def _lies_at(self, places: Sequence[Metres], sheet: Sheet) -> Judgement:
        """Whether the key lies in a keyway with its middle at one of some places: at that where it fits best."""
        L = sheet.take("L_k", self.key.length)
        if not self.shaft.keyways:
            raise sheet.not_assessed(
                f"{self.shaft.id} states no keyway along it: write each, as in "
                '[keyways] drive = { begins = "370 mm", ends = "430 mm" }',
                self.shaft.where,
            )
        cut = [(a, keyway) for a in places for _, *keyway in self._beneath(a, sheet)]
        if not cut:
            says = f"the key of {self.of} stands over no keyway of {self.shaft.id}"
            return sheet.states(False, says, where=self.at.where)
        a, (begins, ends) = min(cut, key=lambda one: max(one[1][0] - one[0], one[0] - one[1][1]))
        return sheet.worst(
            sheet.at_least(sheet.work("k_b", before_place, a=a, b=L), begins).else_says(
                f"key of {self.of} begins at {{found}}, its keyway at {{limit}}"
            ),
            sheet.at_most(sheet.work("k_e", beyond_place, a=a, b=L), ends).else_says(
                f"key of {self.of} ends at {{found}}, its keyway at {{limit}}"
            ),
        )

    def _beneath(self, a: Metres, sheet: Sheet) -> Iterator[tuple[str, Metres, Metres]]:
        """The keyways of the shaft that are cut at a place along it: each with its name, where it begins and ends."""
        for name, keyway in self.shaft.keyways.items():
            begins, ends = sheet.take(f"k_1 {name}", keyway.begins), sheet.take(f"k_2 {name}", keyway.ends)
            if begins <= a <= ends:
                yield name, begins, ends


@dataclass(frozen=True, slots=True)
class OtherArm(DrivingKey):
    """The key of the arm that stands apart from one whose place is stated: on either side of that."""

    distance: Position

    def lies(self, _T: NewtonMetres, sheet: Sheet) -> Judgement:
        """Whether it lies in a keyway on one of both sides."""
        a, D = sheet.take("a", self.at), sheet.take("D", self.distance)
        return self._lies_at([sheet.work("a_t", place_of_other_arm, a=a, j=j, D=D) for j in (1, -1)], sheet)
