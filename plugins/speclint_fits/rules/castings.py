"""Machining allowance of cast faces."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from speclint import Grade, Judgement, NotKnown, Rule, Sheet, rule
from speclint.specs import Casting, MachinedFace
from speclint_fits.formulae.castings import (
    allowance_on_both_sides,
    allowance_on_one_side,
    as_cast,
    larger_dimension,
)
from speclint_fits.formulae.tables import (
    GRADES,
    casting_tolerance,
    required_allowance,
    usual_grades,
    usual_tolerance_grades,
)
from speclint_fits.sources import ISO_8062_3, ISO_8062_3_ALLOWANCES, ISO_8062_3_TOLERANCES

_Grade = TypeVar("_Grade", str, int)


@rule(
    "fit.machining-allowance",
    title="The allowance on every machined face is at least the required machining allowance plus its share "
    "of the casting tolerance",
    wrong="allowance on face {item} {found}, {limit} wanted",
    on=Casting,
    grade=Grade.NONCONFORMITY,
    cites=[
        ISO_8062_3_ALLOWANCES,
        ISO_8062_3_TOLERANCES,
    ],
    why="A face that does not clean up is found on the boring mill, when the casting has already been paid "
    "for.",
    leaves_out="distortion, draft and mismatch beyond the tolerance; that a bore is cast smaller than it is "
    "finished: its tolerance is that of the larger size",
    against=(),
    edition=3,
)
def machining_allowance(casting: Casting, sheet: Sheet) -> Judgement:
    """Allowance ≥ RMA + DCT/2 on a face whose opposite stays cast, + DCT/4 on each of two machined faces.

    DCT is that of the size as cast: the finished dimension with the allowances on it.
    """
    if not casting.faces:
        raise sheet.not_assessed("no machined face is stated", casting.where)
    grade = sheet.read("grade of allowance", casting.allowance_grade)
    largest = _largest(casting, sheet)
    required = sheet.look_up("A", required_allowance, grade=grade, largest=largest)
    return sheet.each(casting.faces.items(), lambda item: _face(*item, casting, required, sheet))


def _largest(casting: Casting, sheet: Sheet) -> float:
    """The largest overall dimension: as stated, and never less than that of a face."""
    largest = sheet.take_nominal("l", casting.largest_dimension)
    for name, face in casting.faces.items():
        size = sheet.take_nominal(f"L {name}", face.dimension)
        largest = sheet.work("l_max", larger_dimension, l=largest, L=size)
    return largest


def _face(name: str, face: MachinedFace, casting: Casting, required: float, sheet: Sheet) -> Judgement:
    size = sheet.take_nominal(f"L {name}", face.dimension)
    grade = sheet.count("DCTG", casting.tolerance_grade)
    both = sheet.read(f"{name} machined on both sides", face.both_sides)
    allowance = sheet.take(f"a_0 {name}", face.allowance)
    raw = sheet.work(f"S {name}", as_cast, L=size, a=allowance, n=2 if both else 1)
    tolerance = sheet.look_up(f"C {name}", casting_tolerance, grade=grade, size=raw)
    formula = allowance_on_both_sides if both else allowance_on_one_side
    wanted = sheet.work(f"a {name}", formula, A=required, C=tolerance)
    return sheet.at_least(sheet.take(f"a_0 {name}", face.allowance), wanted)


@rule(
    "casting.allowance-grade",
    title="The grade of machining allowance is no finer than the finest usual for the process and the "
    "material",
    on=Casting,
    grade=Grade.OBSERVATION,
    cites=[ISO_8062_3.at("Annex B, grades usual for a process; of steel as reproduced in SFSA Supplement 3")],
    why="A grade finer than the foundry can hold leaves faces that do not clean up.",
    leaves_out="what an individual foundry has proved that it can hold",
    against=(),
)
def allowance_grade(casting: Casting, sheet: Sheet) -> Judgement:
    """The stated grade is no finer than the finest usual for process and material."""
    process = sheet.read("process", casting.process)
    grade = sheet.read("grade of allowance", casting.allowance_grade)
    family = sheet.material_of(casting).family
    finest, coarsest = _usual(usual_grades, process, family, sheet)
    holds = GRADES.index(grade) >= GRADES.index(finest)
    return sheet.states(holds, f"grade {grade}; usual for {family}, {process}: {finest} to {coarsest}")


@rule(
    "casting.tolerance-grade",
    title="The grade of tolerance of a casting is no finer than the finest usual for the process and the material",
    on=Casting,
    grade=Grade.OBSERVATION,
    cites=[ISO_8062_3.at("Annex A, grades usual for a process in a long series")],
    why="The allowance on a face is reckoned by this tolerance: of one that no foundry holds too little metal is left.",
    leaves_out="what an individual foundry has proved that it can hold; that a single casting moulded by hand is "
    "usually coarser by two grades, and small sizes finer",
    against=(),
)
def tolerance_grade(casting: Casting, sheet: Sheet) -> Judgement:
    """The stated grade is no finer than the finest usual for process and material."""
    process = sheet.read("process", casting.process)
    grade = sheet.read("grade of tolerance", casting.tolerance_grade)
    family = sheet.material_of(casting).family
    finest, coarsest = _usual(usual_tolerance_grades, process, family, sheet)
    says = f"DCTG {grade}; usual for {family}, {process}: {finest} to {coarsest}"
    return sheet.states(grade >= finest, says)


def _usual(
    grades: Callable[[str, str], tuple[_Grade, _Grade]], process: str, family: str, sheet: Sheet
) -> tuple[_Grade, _Grade]:
    try:
        return grades(process, family)
    except NotKnown as problem:
        raise sheet.not_covered(str(problem)) from problem


RULES: tuple[Rule, ...] = (machining_allowance, allowance_grade, tolerance_grade)
