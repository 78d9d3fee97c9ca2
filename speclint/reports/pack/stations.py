"""The steam path as the sheets have it: its places in order, with area, speed and greatest speed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from speclint.checking import Assessment, Check
from speclint.reports.pack.figures import followed, known_of, word
from speclint.rules import Step
from speclint.specs import (
    BlastNozzle,
    CylinderBlock,
    PoppetValve,
    Spec,
    SteamPassage,
    SteamPipe,
    ValveSeat,
)

Stage = SteamPassage | SteamPipe


@dataclass(frozen=True, slots=True)
class Station:
    """One place of the path [m², m/s, Pa]. None where the sheets do not calculate a value."""

    what: str
    component: str
    area: float
    speed: float | None = None
    limit: float | None = None
    check: Check | None = None
    live: bool = False
    mach: float | None = None
    lost: float | None = None

    @property
    def over(self) -> bool:
        """Whether the check is a finding, and the steam faster there than its limit."""
        found = self.check is not None and self.check.outcome == "finding"
        return found and self.speed is not None and self.limit is not None and self.speed > self.limit


def paths_of(assessment: Assessment) -> Iterator[tuple[str, tuple[Station, ...]]]:
    """Each steam path with the component at which its live part ends, or its whole where it has but one part."""
    ends = [end for check in assessment.checks for end in _End.all_of(check)]
    paths = [(end, tuple(end.stations(assessment))) for end in ends]
    live = [(end, stations) for end, stations in paths if stations and stations[0].live]
    exhaust = [(end, stations) for end, stations in paths if stations and not stations[0].live]
    joined = set()
    for end, stations in live:
        middle = tuple(_through(assessment, end.stages(assessment)[-1], inlet=True))
        onward = next((one for one in exhaust if middle and _same_block(assessment, end, one[0])), None)
        if onward is None:
            yield end.check.component, (*stations, *middle)
            continue
        joined.add(onward[0].check.component)
        out = _through(assessment, onward[0].stages(assessment)[0], inlet=False)
        yield end.check.component, (*stations, *middle, *out, *onward[1], *_nozzle(assessment, onward[0]))
    for end, stations in exhaust:
        if end.check.component in joined:
            continue
        out = _through(assessment, end.stages(assessment)[0], inlet=False)
        name = end.check.component if end.first else stations[0].component
        yield name, (*out, *stations, *_nozzle(assessment, end))


@dataclass(frozen=True, slots=True)
class _End:
    """The check at which a path is judged, and the speeds through sections that its sheet works along it.

    Several paths may end at one part, as those of the cylinders do at a nozzle; ``first`` is true of one of them.
    """

    check: Check
    speeds: tuple[tuple[int, Step], ...]
    first: bool = True

    @classmethod
    def all_of(cls, check: Check) -> Iterator[_End]:
        """What a check says of each path; none of one that judges no greatest speed of stages.

        The limits follow the last stage of each path.
        """
        if _limit(check) is None:
            return
        first, speeds = True, []
        for place, step in enumerate(check.steps):
            if _is_mean_speed(step):
                speeds.append((place, step))
            elif step.kind == "limit" and speeds:
                yield cls(check, tuple(speeds), first)
                first, speeds = False, []
        if speeds:
            yield cls(check, tuple(speeds), first)

    def stages(self, assessment: Assessment) -> list[Stage]:
        """The stages, in the order of the steam: each the last whose sizes were taken before its speed."""
        return [self._stage(assessment, place) for place, _ in self.speeds]

    def _stage(self, assessment: Assessment, place: int) -> Stage:
        design = assessment.design
        assert design is not None  # as there is a check of a part
        stages = {one.id: one for one in _all_stages(assessment)}
        owners = (design.owner(step.where) for step in reversed(self.check.steps[:place]))
        return next(stages[owner] for owner in owners if owner in stages)

    def stations(self, assessment: Assessment) -> Iterator[Station]:
        """The stages as stations."""
        stages = self.stages(assessment)
        for stage, (place, step) in zip(stages, self.speeds, strict=True):
            further = self.check.steps[place:]
            yield Station(
                word(stage.place) if isinstance(stage, SteamPassage) else "pipe",
                stage.id,
                _filled(step)["A"],
                float(step.value),
                _limit(self.check),
                self.check,
                word(stages[0].carries) == "live steam",
                next((float(one.value) for one in further if {"v", "w"} == set(_filled(one))), None),
                next((_filled(one)["Δp"] for one in further if {"p", "Δp"} == set(_filled(one))), None),
            )


def _all_stages(assessment: Assessment) -> Iterator[Stage]:
    yield from known_of(assessment, SteamPassage)
    yield from known_of(assessment, SteamPipe)


def _filled(step: Step) -> dict[str, float]:
    return {name: value for name, value, _ in step.filled}


def _is_mean_speed(step: Step) -> bool:
    """Whether a step works a speed from a flow of mass through an area."""
    units = {unit for *_, unit in step.filled}
    return step.kind == "worked" and step.unit == "m/s" and {"kg/s", "kg/m³", "m²"} <= units


def _limit(check: Check) -> float | None:
    """The greatest speed that a sheet holds against; what it only reports is none."""
    found = [
        step.value
        for step in check.steps
        if step.kind == "limit" and step.unit == "m/s" and "reported" not in step.name
    ]
    return float(found[0]) if found else None


def _same_block(assessment: Assessment, live: _End, exhaust: _End) -> bool:
    ends = (live.stages(assessment)[-1], exhaust.stages(assessment)[0])
    blocks = [followed(assessment, one.in_block) for one in ends if isinstance(one, SteamPassage)]
    return len(blocks) == 2 and blocks[0] is not None and blocks[0] is blocks[1]


def _through(assessment: Assessment, stage: Spec, *, inlet: bool) -> Iterator[Station]:
    """Valve, port and cylinder that a path leads to, or comes from: those that the valve's own sheet works."""
    valve = followed(assessment, stage.valve) if isinstance(stage, SteamPassage) else None
    if not isinstance(valve, PoppetValve):
        return
    for check in assessment.checks:
        found = [step for step in check.steps if _follows_piston(step)] if check.component == valve.id else []
        judged = check.judgement.found if check.judgement else None
        speed = next((step for step in reversed(found) if judged and step.value == judged.value), None)
        if speed is not None:
            stations = list(_stations(assessment, valve, check, speed, live=inlet))
            yield from stations if inlet else reversed(stations[:-1])
            return


def _follows_piston(step: Step) -> bool:
    """Whether a step works the speed of steam that follows the piston through an area."""
    filled = _filled(step)
    return step.kind == "worked" and step.unit == "m/s" and {"A_p", "c", "A"} == set(filled)


def _stations(
    assessment: Assessment, valve: PoppetValve, check: Check, speed: Step, *, live: bool
) -> Iterator[Station]:
    filled = _filled(speed)
    areas = next((_filled(one) for one in check.steps if {"A_v", "A_port"} == set(_filled(one))), {})
    side = word(valve.serves)
    for what, name in ((f"{side} valve", "A_v"), ("port", "A_port")):
        area = areas.get(name, filled["A"])
        narrow = area == filled["A"]
        yield Station(
            what,
            valve.id,
            area,
            float(speed.value) if narrow else None,
            _limit(check) if narrow else None,
            check,
            live,
        )
    yield Station("cylinder", _bore_of(assessment, valve), filled["A_p"], filled["c"], None, check, live)


def _bore_of(assessment: Assessment, valve: PoppetValve) -> str:
    """The bore that a valve serves, in words: by the end at which its seat is, else as it states."""
    seat = followed(assessment, valve.upper_beat.seat)
    block = followed(assessment, seat.pressed_into) if isinstance(seat, ValveSeat) else None
    if isinstance(seat, ValveSeat) and isinstance(block, CylinderBlock):
        housing = block.seat_bores.get(word(seat.in_bore))
        end = block.ends.get(word(housing.end)) if housing is not None else None
        if end is not None and word(end.of_bore):
            return f"bore {word(end.of_bore)}"
    return f"bore {word(valve.cylinder_bore)}"


def _is_speed_of_jet(step: Step) -> bool:
    """Whether a step works the speed at which a flow of mass leaves an opening."""
    return step.unit == "m/s" and {"m", "C", "A", "h", "p_2"} == set(_filled(step))


def _nozzle(assessment: Assessment, end: _End) -> Iterator[Station]:
    """The nozzle, with the speed of its jet."""
    for nozzle in known_of(assessment, BlastNozzle):
        checks = [check for check in assessment.checks if check.component == nozzle.id == end.check.component]
        steps = [(check, step) for check in checks for step in check.steps if step.kind == "worked"]
        openings = [step for _, step in steps if step.unit == "m²" and {"z", "d"} == set(_filled(step))]
        jets = [(check, step) for check, step in steps if _is_speed_of_jet(step)]
        if openings:
            check, jet = jets[0] if jets else (None, None)
            speed = float(jet.value) if jet is not None else None
            yield Station("nozzle", nozzle.id, float(openings[0].value), speed, None, check)
