"""The record of a part as made: revision, certificate, strengths, carbon equivalent, sizes and tests."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from typing import Any

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import holds_pressure, own_steps
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.inspection import (
    DECISIONS,
    ISO_14253_1,
    ISO_TR_14253_6,
    Decision,
    conformity,
    guard_band,
)
from speclint.handbook.materials import carbon_equivalent
from speclint.handbook.tables import Reading
from speclint.specs import (
    BoltedJoint,
    Component,
    HydraulicTestRecord,
    MadePart,
    MeasuredSize,
    NotStated,
    QuantityAt,
    Stated,
    TighteningRecord,
    sizes_of,
)
from speclint_release.formulae.records import most_preload, most_torque, most_turn
from speclint_release.inputs import (
    AFTER_WELDING,
    is_welded,
    methods_missing,
    no_examination,
    treatments_missing,
)
from speclint_release.sources import DOCUMENTS, EN_1011_2, EN_13445_5

#: Types of EN 10204 from that which tells least to that which tells most.
_TYPES = ("2.1", "2.2", "3.1", "3.2")
#: Elements of the carbon equivalent: all of them must be known.
_ELEMENTS = ("C", "Mn", "Cr", "Mo", "V", "Ni", "Cu")
#: Steps after which the furnace chart is kept.
_TREATMENTS = ("stress relieve", "normalize", "harden", "temper")
#: Kinds that state the steps of their making.
_WITH_STEPS = ("cylinder-block", "weldment", "casting", "cylinder-liner", "valve-seat")


@rule(
    "made.identified",
    title="A part as made states its serial number, which no other of its spec has, the revision that it was made to "
    "and its maker",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a record that cannot be told to belong to one piece of metal proves nothing of any",
    leaves_out="whether the number stands on the part",
    against=(),
    edition=3,
)
def identified(made: MadePart, sheet: Sheet) -> Judgement:
    """Lists what is missing, and the other parts of the same spec that have this number."""
    stated = {"serial": made.serial, "made_to": made.made_to, "maker": made.maker}
    missing = [name for name, value in stated.items() if not sheet.is_stated(name, value)]
    if missing:
        return sheet.states(False, f"not stated: {', '.join(missing)}", where=stated[missing[0]].where)
    number = sheet.read("serial", made.serial)
    alike = [
        one.id
        for one in sheet.belonging_to(sheet.follow(made.of), MadePart)
        if one.id != made.id
        and sheet.is_stated("serial", one.serial)
        and _as_stamped(sheet.read("serial", one.serial)) == _as_stamped(number)
    ]
    if alike:
        says = f"serial number {number} is that of {' and '.join(alike)} too"
        return sheet.states(False, says, where=made.serial.where)
    return sheet.states(True, "serial number, revision and maker are stated")


def _as_stamped(number: str) -> str:
    """A serial number as it is stamped: its letters large, without spaces."""
    return "".join(number.split()).upper()


@rule(
    "made.revision",
    title="A part was made to the revision of the drawing that its spec states",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a part made to an old revision lacks the change for which the drawing was altered",
    leaves_out="what the change was: a part that the change does not concern may be conceded",
    against=(),
)
def revision(made: MadePart, sheet: Sheet) -> Judgement:
    """Both as they are written."""
    to = sheet.read("made to", made.made_to)
    now = sheet.read("revision", sheet.follow(made.of).revision)
    said = f"made to revision {to}"
    return sheet.states(
        to == now,
        said if to == now else f"{said}, the drawing is at {now}",
        where=made.made_to.where,
    )


@rule(
    "made.certificate",
    title="The metal of a part has an inspection document of at least the type that its spec asks for, of its heat and "
    "of the material ordered",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[DOCUMENTS],
    why="a document of a lower type tells of other metal, and one without a heat of none in particular",
    leaves_out="whether the document is genuine, and whether it is of this piece: the competent person or body that "
    "the local code names compares its marks",
    against=(),
    edition=2,
)
def certificate(made: MadePart, sheet: Sheet) -> Judgement:
    """A hold where the part holds pressure; what is missing is listed."""
    drawn = sheet.follow(made.of)
    if not sheet.is_stated("inspection document", drawn.inspection_document):
        raise sheet.not_applicable("its spec asks for no inspection document")
    asked = sheet.read("inspection document", drawn.inspection_document)
    wrong = "; ".join(_wrong_in_certificate(made, drawn, asked, sheet))
    grade = Grade.HOLD if holds_pressure(drawn, sheet) else Grade.NONCONFORMITY
    said = wrong or f"inspection document of at least type {asked}, with its heat"
    return sheet.states(not wrong, said, where=made.certificate.where).graded(grade)


def _wrong_in_certificate(made: MadePart, drawn: Component, asked: str, sheet: Sheet) -> Iterator[str]:
    document = made.certificate
    if not sheet.is_stated("type", document.type):
        yield f"no inspection document, {asked} is asked for"
        return
    kind = sheet.read("type", document.type)
    if _TYPES.index(kind) < _TYPES.index(asked):
        yield f"inspection document {kind}, {asked} is asked for"
    if not sheet.is_stated("heat", document.heat):
        yield "it names no heat"
    if not sheet.is_stated("material", drawn.material):
        return
    ordered = sheet.read("material", drawn.material)
    if not sheet.is_stated("material", document.material):
        yield f"it names no material, {ordered} is asked for"
    elif (named := sheet.read("material", document.material)) != ordered:
        yield f"it certifies {named}, {ordered} is asked for"


@rule(
    "made.strength",
    title="The strengths that the certificate of a part states are at least those of the standard of its material",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[DOCUMENTS],
    why="every rule of strength rests on the least figures of the standard",
    leaves_out="cast iron, of which a bar cast beside the part tells little of its walls; strength hot; that the "
    "standard asks for more of thin metal: the least over all thicknesses is asked for; whether the test piece was "
    "taken as the standard asks",
    against=(),
)
def strength(made: MadePart, sheet: Sheet) -> Judgement:
    """Proof stress and tensile strength at room temperature, whatever the thickness: the least of the standard."""
    drawn, document = sheet.follow(made.of), made.certificate
    stated = [
        (symbol, value, name)
        for symbol, value, name in (
            ("R_p", document.proof_stress, "proof_stress"),
            ("R_m", document.tensile_strength, "tensile_strength"),
        )
        if sheet.is_stated(name, value)
    ]
    if not stated:
        raise sheet.not_applicable("its certificate states no strength")
    material = sheet.material_of(drawn)
    if "iron" in material.family:
        raise sheet.not_applicable("a bar cast beside a part of iron tells little of its walls")
    return sheet.worst(
        *(
            sheet.at_least(
                sheet.take(symbol, value),
                sheet.look_up(
                    f"{symbol}_min", _least_of(getattr(material, name)), of=drawn, at=DRAWING_TEMPERATURE
                ),
            ).else_says(f"{name.replace('_', ' ')} certified at {{found}}, {{limit}} is the least")
            for symbol, value, name in stated
        )
    )


def _least_of(question: Callable[..., Reading]) -> Callable[..., Reading]:
    """A question to a material, answered by the least that its standard allows alone."""

    def asked(**at: Any) -> Reading:
        found = question(**at)
        return replace(found, nominal=found.low, high=found.low)

    asked.__name__ = f"least {question.__name__}"
    return asked


@rule(
    "made.carbon-equivalent",
    title="The carbon equivalent that a certificate states is that of its analysis, to 0.02 %",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[EN_1011_2.at("C.2.1, method A"), COMMON_PRACTICE],
    why="the welder preheats by it: a wrong one cracks the weld",
    leaves_out="whether the analysis is right; irons, which are not welded by it",
    limits=[
        Limit("rounding", "0.02 %", "ratio", COMMON_PRACTICE, "what rounding of the elements may leave"),
    ],
    against=(),
)
def carbon(made: MadePart, sheet: Sheet) -> Judgement:
    """By the formula of the International Institute of Welding; an element that is not stated is not taken as none."""
    document = made.certificate
    if not sheet.is_stated("carbon equivalent", document.carbon_equivalent):
        raise sheet.not_applicable("its certificate states no carbon equivalent")
    missing = [one for one in _ELEMENTS if one not in document.analysis]
    if missing:
        raise sheet.not_assessed(f"the analysis does not state {', '.join(missing)}", document.where)
    parts = {one: sheet.take(one, document.analysis[one]) for one in _ELEMENTS}  # type: ignore[index]
    worked = sheet.work("CE", carbon_equivalent, **parts)
    stated = sheet.take("CE_s", document.carbon_equivalent)
    return sheet.equals(worked, stated, sheet.limit("rounding", "ΔCE")).else_says(
        "carbon equivalent {found} by the analysis, {limit} stated"
    )


@rule(
    "made.hardness",
    title="The hardness that the certificate of a part states lies within the limits of its spec",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[DOCUMENTS, COMMON_PRACTICE],
    why="wear of a pair is reckoned from the hardness of both",
    leaves_out="where on the part it was measured, and how far the hardness differs over it",
    against=(),
)
def hardness(made: MadePart, sheet: Sheet) -> Judgement:
    """Of kinds that state a hardness."""
    asked = getattr(sheet.follow(made.of), "hardness", None)
    if asked is None or not sheet.is_stated("hardness asked for", asked):
        raise sheet.not_applicable("its spec asks for no hardness")
    if not sheet.is_stated("hardness certified", made.certificate.hardness):
        raise sheet.not_applicable("its certificate states no hardness")
    low, high = sheet.take_limits("HB_s", asked, "hardness asked for")
    least, greatest = sheet.take_limits("HB", made.certificate.hardness, "hardness certified")
    return sheet.worst(
        sheet.at_least(least, low).else_says("hardness {found} certified, from {limit} asked for"),
        sheet.at_most(greatest, high).else_says("hardness {found} certified, to {limit} asked for"),
    )


@rule(
    "made.within-limits",
    title="Every measured size of a part is proved to lie within the limits of its drawing",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_14253_1.at("decision rules"), ISO_TR_14253_6.at("simple acceptance")],
    why="a size that is out was not what the calculation took, and one that is not proved may be out",
    leaves_out="what the departure does: speclint check --made runs the rules with what was measured; sizes that were "
    "not measured, and form",
    against=(),
)
def within_limits(made: MadePart, sheet: Sheet) -> Judgement:
    """A size that is neither proved in nor proved out is a query; one proved out may be conceded."""
    drawn = sheet.follow(made.of)
    word = sheet.setting("decision")
    decision = next(one for one in DECISIONS if one == word)
    toleranced = [
        (size, at)
        for size, at in sizes_of(made.measured, drawn)
        if sheet.is_stated(at.key, at.drawn) and sheet.tolerance(f"T {at.key}", at.drawn) > 0
    ]
    if not toleranced:
        raise sheet.not_applicable("nothing was measured that the drawing gives limits")
    return sheet.each(toleranced, lambda item: _proved(*item, decision, sheet))


def _proved(size: MeasuredSize, at: QuantityAt, decision: Decision, sheet: Sheet) -> Judgement:
    if size.uncertainty is None:
        raise sheet.not_assessed(f"no uncertainty is recorded for {at.key}", size.where)
    guard = guard_band(size.uncertainty, decision)
    low, high = sheet.take_limits(f"{at.key} drawn", at.drawn, f"{at.key} as drawn")
    least, greatest = sheet.take_limits(
        f"{at.key} made", size.band(guard), f"{at.key} as made, with guard band"
    )
    verdict = conformity(size.least, size.greatest, low, high, guard)
    grade = Grade.NONCONFORMITY if verdict == "out" else Grade.QUERY
    word = "is out" if verdict == "out" else "is not proved in"
    return (
        sheet.worst(
            sheet.at_least(least, low).else_says(f"{at.key} {word}: down to {{found}}, from {{limit}} drawn"),
            sheet.at_most(greatest, high).else_says(f"{at.key} {word}: up to {{found}}, to {{limit}} drawn"),
        )
        .graded(grade)
        .pointing_at(size.where)
    )


@rule(
    "made.hydraulic-test",
    title="A part whose spec asks for a hydraulic test passed one, at no less than the test pressure and held for long "
    "enough, on a later day than any that fell short",
    on=MadePart,
    grade=Grade.HOLD,
    gravest=Grade.HOLD,
    cites=[EN_13445_5.at("10.2.3, hydrostatic test")],
    why="a flaw that the test would have opened in cold water opens in service in steam",
    leaves_out="how the test was made and who witnessed it: the competent person or body that the local code names "
    "decides; a part tested with the vessel that it belongs to",
    limits=[
        Limit(
            "held",
            "30 min",
            "time",
            EN_13445_5.at("10.2.3, hydrostatic test"),
            "least time for which the test pressure stands",
        ),
    ],
    against=(),
    edition=3,
)
def hydraulic_test(made: MadePart, sheet: Sheet) -> Judgement:
    """Of several tests one that holds is enough, if it is later than each that failed, was too low or too short.

    Where no record is there yet that is a query, until the drawings are released.
    """
    drawn = sheet.follow(made.of)
    if not sheet.is_stated("test pressure", drawn.test_pressure):
        raise sheet.not_applicable("its spec asks for no hydraulic test of its own")
    if not made.hydraulic_tests:
        return _no_record("no hydraulic test is on record", made, Grade.HOLD, sheet)
    wanted = sheet.take("p_t", drawn.test_pressure)
    judged = [
        (_day(f"day of {name}", one.date, sheet), _tested(name, one, wanted, sheet))
        for name, one in made.hydraulic_tests.items()
    ]
    enough = max((day or dt.date.min for day, one in judged if one.holds), default=dt.date.min)
    short = [one for day, one in judged if not one.holds and (day or dt.date.max) >= enough]
    return short[0] if short else next(one for _, one in judged if one.holds)


def _day(name: str, value: Stated[str] | NotStated, sheet: Sheet) -> dt.date | None:
    """A day as recorded; None where none is, or what stands there is no day."""
    if not sheet.is_stated(name, value):
        return None
    try:
        return dt.date.fromisoformat(sheet.read(name, value))
    except ValueError:
        return None


def _tested(name: str, record: HydraulicTestRecord, wanted: float, sheet: Sheet) -> Judgement:
    result = sheet.read(f"result of {name}", record.result)
    if result != "passed":
        return sheet.states(False, f"{name}: {result}", where=record.where)
    if not sheet.is_stated("time held", record.held):
        return sheet.states(
            False, f"{name}: the time for which it was held is not on record", where=record.where
        )
    return sheet.worst(
        sheet.at_least(sheet.take("p", record.pressure), wanted).else_says(
            f"{name}: tested at {{found}}, {{limit}} asked for"
        ),
        sheet.at_least(sheet.take("t", record.held), sheet.limit("held", "t_n")).else_says(
            f"{name}: held for {{found}}, {{limit}} asked for"
        ),
    )


@rule(
    "made.tightening",
    title="The nuts of a joint were tightened to what its spec asks, no less and no more, and that is on record",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="a nut that nobody recorded is a nut that somebody may have forgotten; one tightened too far yields its stud",
    leaves_out="whether the wrench was right, and the order in which the nuts were tightened: a competent person, and "
    "the local code, decide on joints under pressure",
    limits=[
        Limit(
            "over",
            "0.05",
            "ratio",
            COMMON_PRACTICE,
            "share by which a figure without tolerance may be passed",
        ),
    ],
    against=(),
    edition=3,
)
def tightening(made: MadePart, sheet: Sheet) -> Judgement:
    """Torque, angle and preload, each as far as the spec states it; a hold on a joint under pressure."""
    drawn = sheet.follow(made.of)
    if not isinstance(drawn, BoltedJoint):
        raise sheet.not_applicable("it is no bolted joint")
    grade = Grade.HOLD if holds_pressure(drawn, sheet) else Grade.NONCONFORMITY
    if not made.tightenings:
        return _no_record("no tightening is on record", made, grade, sheet)
    return sheet.each(made.tightenings.items(), lambda item: _tightened(*item, drawn, sheet)).graded(grade)


def _tightened(name: str, record: TighteningRecord, drawn: BoltedJoint, sheet: Sheet) -> Judgement:
    stated = sheet.is_stated(f"result of {name}", record.result)
    if stated and sheet.read(f"result of {name}", record.result) == "failed":
        return sheet.states(False, f"{name}: failed", where=record.where)
    asked = drawn.tightening
    judged = []
    for symbol, what, wanted, found, most_of in (
        ("M", "torque", asked.torque, record.torque, most_torque),
        ("θ", "angle", asked.angle, record.angle, most_turn),
        ("F", "preload", asked.preload, record.preload, most_preload),
    ):
        if not sheet.is_stated(f"{what} asked for", wanted):
            continue
        least, most = sheet.take_limits(f"{symbol}_s", wanted, f"{what} asked for")
        lowest, highest = sheet.take_limits(symbol, found, f"{what} recorded")
        judged.append(
            sheet.at_least(lowest, least).else_says(f"{name}: {what} {{found}}, {{limit}} asked for")
        )
        if most == least:  # no wrench stops on a figure: without a tolerance a share above it is allowed
            more = {"k": sheet.limit("over", "k"), f"{symbol}_s": most}
            most = sheet.work(f"{symbol}_m", most_of, **more)
        judged.append(sheet.at_most(highest, most).else_says(f"{name}: {what} {{found}}, {{limit}} at most"))
    if not judged:
        return sheet.states(True, f"{name}: its spec asks for no figure")
    return sheet.worst(*judged)


@rule(
    "made.examined",
    title="The examination and the heat treatments that the spec of a part asks for are on record, and its welds are",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[EN_13445_5.at("clause 6, inspection during fabrication"), COMMON_PRACTICE],
    why="what is not on record cannot be told from what was not done",
    leaves_out="whether procedure and welder were qualified for the joint, and whether the examination covered what it "
    "should: the competent person or body that the local code names decides",
    against=(),
    edition=4,
)
def examined(made: MadePart, sheet: Sheet) -> Judgement:
    """What is missing is listed; an examination, a weld or a heat treatment that failed is a hold."""
    drawn = sheet.follow(made.of)
    failed = list(_failed(made, sheet))
    if failed:
        return sheet.states(False, f"failed: {', '.join(failed)}", where=made.where).graded(Grade.HOLD)
    asked = list(_records_asked(made, drawn, sheet))
    if not asked:
        raise sheet.not_applicable("its spec asks for no examination, no weld and no heat treatment")
    missing = [what for what, there in asked if not there]
    if missing:
        return _no_record(f"not on record: {', '.join(missing)}", made, Grade.NONCONFORMITY, sheet)
    return sheet.states(True, f"on record: {', '.join(what for what, _ in asked)}")


def _failed(made: MadePart, sheet: Sheet) -> Iterator[str]:
    """The examinations, welds, heat treatments and entries whose result is that they failed."""
    for records in (made.examinations, made.welds, made.heat_treatments, made.entries):
        for name, one in records.items():
            stated = sheet.is_stated(f"result of {name}", one.result)
            if stated and sheet.read(f"result of {name}", one.result) == "failed":
                yield name


def _records_asked(made: MadePart, drawn: Component, sheet: Sheet) -> Iterator[tuple[str, bool]]:
    """Each record that the spec asks for, and whether it is there."""
    if sheet.is_stated("examination", drawn.examination):
        how = sheet.read("examination", drawn.examination)
        if not no_examination(how):
            passed = [one for name, one in made.examinations.items() if sheet.is_stated(name, one.result)]
            said = _texts("method", [one.method for one in passed], sheet)
            missing = methods_missing(how, said) if said else []
            by = f", by {' and '.join(missing)}" if missing else ""
            yield f"examination ({how}){by}", bool(passed) and not missing
    if is_welded(drawn, sheet):
        known = [
            sheet.is_stated(f"procedure of {name}", one.procedure)
            and sheet.is_stated(f"welder of {name}", one.welder)
            for name, one in made.welds.items()
        ]
        yield "welds, each with its procedure and its welder", bool(known) and all(known)
    if treatments := list(_treatments_asked(drawn, sheet)):
        records = made.heat_treatments
        charts = [sheet.is_stated(f"chart of {name}", one.chart) for name, one in records.items()]
        said = _texts("treatment", [one.treatment for one in records.values()], sheet)
        left = treatments_missing(treatments, [*said, *[""] * (len(records) - len(said))])
        yield f"{(left or treatments)[0]}, with its chart", bool(charts) and all(charts) and not left


def _treatments_asked(drawn: Component, sheet: Sheet) -> Iterator[str]:
    """The heat treatments among the steps of the making, and that which the spec says follows its welding."""
    if drawn.is_one_of(_WITH_STEPS):
        for one in own_steps(drawn, sheet):  # type: ignore[arg-type]
            if one.word in _TREATMENTS:
                yield one.word
    if sheet.is_stated("heat treatment", drawn.welding.heat_treatment):
        yield from AFTER_WELDING.get(sheet.read("heat treatment", drawn.welding.heat_treatment), ())


def _texts(what: str, words: Iterable[Stated[str] | NotStated], sheet: Sheet) -> list[str]:
    return [sheet.read(what, word) for word in words if sheet.is_stated(what, word)]


def _no_record(said: str, made: MadePart, grade: Grade, sheet: Sheet) -> Judgement:
    """What is still to be recorded: a query, until the drawings are released."""
    released = sheet.setting("stage") == "released"
    return sheet.states(False, said, where=made.where).graded(grade if released else Grade.QUERY)


RULES = (
    identified,
    revision,
    certificate,
    strength,
    hardness,
    carbon,
    within_limits,
    hydraulic_test,
    tightening,
    examined,
)
