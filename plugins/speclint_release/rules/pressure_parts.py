"""The record of a pressure part: what it is designed for, and how it is proved."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, Any

from speclint import (
    COMMON_PRACTICE,
    Grade,
    Judgement,
    Limit,
    Sheet,
    facts,  # what it works of joints, pipes and exhausts is imported where there are any
    rule,
)
from speclint.equations import Kelvins
from speclint.facts import holds_pressure
from speclint.specs import BoltedJoint, Component, SteamPipe
from speclint_release.formulae.records import least_test_pressure, temperature_margin
from speclint_release.inputs.clauses import names_nobody
from speclint_release.inputs.documents import BY_NO_TEST, OF_THE_METAL
from speclint_release.inputs.examinations import names_no_method, only_tests
from speclint_release.inputs.vessels import linked_parts, of_vessel
from speclint_release.sources import B31_1, DOCUMENTS, EN_13445_5, TEST_FACTOR

if TYPE_CHECKING:
    from speclint.specs import LoadCase

#: What may be stated once for a vessel and all its parts.
_OF_THE_VESSEL = ("design_pressure", "design_temperature", "test_pressure", "competent_body")


@rule(
    "release.pressure-part",
    title="A pressure part states its examination, its competent body and a 3.1 or 3.2 document, is tested to 1.43 "
    "times its design pressure, and is designed for its pressure, steam, and metal with 20 K to spare",
    on=Component,
    cases=("starting", "running"),
    grade=Grade.HOLD,
    cites=[
        B31_1.at("101.2.4 and 101.3.2, design pressure and metal temperature"),
        DOCUMENTS,
        EN_13445_5.at("clauses 6 and 10"),
        COMMON_PRACTICE,
    ],
    why="whoever examines, tests or repairs it in thirty years has only this record",
    edition=8,
    leaves_out="water trapped in the cylinder; an examination of studs and bolts, of which codes ask for none; whether "
    "test and examination are sufficient, as a visual one of a weld is not: the local code and the competent person or "
    "body that it names decide",
    against=(),
    limits=[
        Limit(
            "swing",
            "20 K",
            "temperature difference",
            COMMON_PRACTICE,
            "least margin of the design temperature over the metal for variation of the superheat",
        ),
        Limit(
            "test_factor",
            "1.43",
            "ratio",
            TEST_FACTOR,
            "least test pressure over design pressure",
        ),
    ],
)
def pressure_part(component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
    """Lists what is missing; then judges design pressure against the highest in service, and design temperature.

    Design figures, test and competent body may stand on the part that this one closes, holds, belongs to or
    becomes: the vessel that is tested with it. Steam hotter than the design temperature is a finding even where
    the metal is stated to be cooler. Where the duty gives no metal temperature, that of the steam is taken.
    """
    if not holds_pressure(component, sheet):
        raise sheet.not_applicable("it holds no pressure")
    found = {name: of_vessel(component, name, sheet) for name in _OF_THE_VESSEL}
    found["inspection_document"] = component.inspection_document
    if not isinstance(component, BoltedJoint):  # codes ask for no examination of finished studs
        found["examination"] = component.examination
    missing = [(name, value.where) for name, value in found.items() if not sheet.is_stated(name, value)]
    if missing:
        names = ", ".join(name for name, _ in missing)
        return sheet.states(False, f"not stated: {names}", where=missing[0][1])
    for name, says in _empty_words(found, sheet):
        return sheet.states(False, says, where=found[name].where)
    design = sheet.take("p_d", found["design_pressure"])
    wanted = sheet.work("p_w", least_test_pressure, k=sheet.limit("test_factor", "k"), p_d=design)
    T_d = sheet.take("T_d", found["design_temperature"])
    exhaust = _holds_exhaust(component, sheet)
    steam = sheet.take("T_s", case.exhaust_temperature if exhaust else case.live_temperature)
    margin = sheet.work("ΔT", temperature_margin, T_d=T_d, T=_metal(component, case, steam, sheet))
    pressure = (
        facts.greatest_exhaust_pressure(component, case, sheet, "p")
        if exhaust
        else sheet.take("p", case.safety_valve_pressure)
    )
    tested, hottest = found["test_pressure"].where, found["design_temperature"].where
    return sheet.worst(
        sheet.at_least(design, pressure).else_says("designed for {found}, the duty has {limit}"),
        sheet.at_least(sheet.take("p_t", found["test_pressure"]), wanted)
        .else_says("tested at {found}, {limit} required")
        .pointing_at(tested),
        sheet.no_hotter(steam, T_d).else_says("steam at {found}, designed for {limit}").pointing_at(hottest),
        sheet.at_least(margin, sheet.limit("swing", "ΔT_s"))
        .else_says("design temperature over that of the metal: {found}, {limit} wanted")
        .pointing_at(hottest),
    )


def _empty_words(found: Mapping[str, Any], sheet: Sheet) -> Iterator[tuple[str, str]]:
    """What is stated in words that do not say it, each with what is wrong."""
    body = sheet.read("competent body", found["competent_body"])
    if names_nobody(body):
        yield "competent_body", f'competent body "{body}" names nobody'
    how = sheet.read("examination", found["examination"]) if "examination" in found else ""
    if "examination" in found and names_no_method(how):
        yield "examination", f'examination "{how}" does not say how it is examined'
    if only_tests(how):
        yield "examination", f'examination "{how}" is a test, at which nobody examines it'
    document = sheet.read("inspection document", found["inspection_document"])
    if document not in OF_THE_METAL:
        yield "inspection_document", BY_NO_TEST.format(document)


def _holds_exhaust(component: Component, sheet: Sheet) -> bool:
    """Whether the part, or the pipe that it is on, holds exhaust steam and no live steam."""
    for part in linked_parts(component, sheet):
        if isinstance(part, BoltedJoint):
            return facts.pressure_held(part, sheet) == "exhaust"
        if isinstance(part, SteamPipe):
            return bool(facts.steam_carried(part, sheet).value == "exhaust steam")
    return False


def _metal(component: Component, case: LoadCase, steam: Kelvins, sheet: Sheet) -> Kelvins:
    metal = case.temperature_of(component)
    return sheet.take("T", metal) if sheet.is_stated("metal temperature", metal) else steam


RULES = (pressure_part,)
