"""The steam path as the sheets have it: its places in order, with area, speed and greatest speed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from speclint.checking import Assessment, Check
from speclint.reports.pack.figures import followed, known_of, word
from speclint.reports.pack.printed import Quantity, judged, of_step
from speclint.rules import Step
from speclint.specs import (
    BlastNozzle,
    CylinderBlock,
    PoppetValve,
    SeatBore,
    Spec,
    SteamPassage,
    SteamPipe,
    ValveSeat,
)

Stage = SteamPassage | SteamPipe


class Station(Struct, frozen=True):
    """One place of the path [m², m/s, Pa]. None where the sheets do not calculate a value."""

    what: str
    component: str
    area: Quantity
    speed: Quantity | None = None
    limit: Quantity | None = None
    check: Check | None = None
    live: bool = False
    mach: Quantity | None = None
    lost: Quantity | None = None

    @property
    def over(self) -> bool:
        """Whether the check is a finding, and the steam faster there than its limit."""
        found = self.check is not None and self.check.outcome == "finding"
        return (
            found
            and self.speed is not None
            and self.limit is not None
            and self.speed.value > self.limit.value
        )


def paths_of(assessment: Assessment) -> Iterator[tuple[str, tuple[Station, ...]]]:
    """Each steam path with the component at which its live part ends, or its whole where it has but one part."""
    known = {one.id: one for one in _all_stages(assessment)}
    ends = [end for check in assessment.checks for end in _End.all_of(check, known)]
    paths = [(end, tuple(end.stations(assessment))) for end in ends]
    live = [(end, stations) for end, stations in paths if stations[0].live]
    exhaust = [(end, stations) for end, stations in paths if not stations[0].live]
    joined = set()
    for end, stations in live:
        middle = tuple(_through(assessment, end.stages(assessment)[-1], inlet=True))
        onward = next((one for one in exhaust if middle and _same_block(assessment, end, one[0])), None)
        if onward is None:
            yield end.check.component, (*stations, *middle)
            continue
        joined.add(onward[0].check.component)
        out = _out_of(assessment, end.stages(assessment)[-1], onward[0].stages(assessment)[0])
        yield end.check.component, (*stations, *middle, *out, *onward[1], *_nozzle(assessment, onward[0]))
    for end, stations in exhaust:
        if end.check.component in joined:
            continue
        out = tuple(_through(assessment, end.stages(assessment)[0], inlet=False))
        name = end.check.component if end.first else stations[0].component
        yield name, (*out, *stations, *_nozzle(assessment, end))


class _End(Struct, frozen=True):
    """The check at which a path is judged, and the speeds through sections that its sheet works along it.

    Several paths may end at one part, as those of the cylinders do at a nozzle; ``first`` is true of one of them.
    """

    check: Check
    speeds: tuple[tuple[int, Step], ...]
    known: Mapping[str, Stage]
    first: bool

    @classmethod
    def all_of(cls, check: Check, known: Mapping[str, Stage]) -> Iterator[_End]:
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
                yield cls(check, tuple(speeds), known, first)
                first, speeds = False, []
        if speeds:
            yield cls(check, tuple(speeds), known, first)

    def stages(self, assessment: Assessment) -> list[Stage]:
        """The stages, in the order of the steam: each the last whose sizes were taken before its speed."""
        return [self._stage(assessment, place) for place, _ in self.speeds]

    def _stage(self, assessment: Assessment, place: int) -> Stage:
        design = assessment.design
        assert design is not None  # as there is a check of a part
        owners = (design.owner(step.where) for step in reversed(self.check.steps[:place]))
        return next(self.known[owner] for owner in owners if owner in self.known)

    def stations(self, assessment: Assessment) -> Iterator[Station]:
        """The stages as stations."""
        stages = self.stages(assessment)
        for stage, (place, _) in zip(stages, self.speeds, strict=True):
            yield Station(
                word(stage.place) if isinstance(stage, SteamPassage) else "pipe",
                stage.id,
                of_step(self.check, place, "A"),
                of_step(self.check, place),
                _limit(self.check),
                self.check,
                word(stages[0].carries) == "live steam",
                self._next(place, {"v", "w"}),
                self._next(place, {"p", "Δp"}, "Δp"),
            )

    def _next(self, place: int, names: set[str], name: str = "") -> Quantity | None:
        """The next step from a place on into whose equation these were put: its value, or one of them."""
        further = range(place, len(self.check.steps))
        found = next((at for at in further if set(_filled(self.check.steps[at])) == names), None)
        return None if found is None else of_step(self.check, found, name)


def _all_stages(assessment: Assessment) -> Iterator[Stage]:
    yield from known_of(assessment, SteamPassage)
    yield from known_of(assessment, SteamPipe)


def _filled(step: Step) -> dict[str, float]:
    return {name: value for name, value, _ in step.filled}


def _is_mean_speed(step: Step) -> bool:
    """Whether a step works a speed from a flow of mass through an area."""
    units = {unit for *_, unit in step.filled}
    return step.kind == "worked" and step.unit == "m/s" and {"kg/s", "kg/m³", "m²"} <= units


def _limit(check: Check) -> Quantity | None:
    """The greatest speed that a sheet holds against; what it only reports is none."""
    found = [
        at
        for at, step in enumerate(check.steps)
        if step.kind == "limit" and step.unit == "m/s" and "reported" not in step.name
    ]
    return of_step(check, found[0]) if found else None


def _same_block(assessment: Assessment, live: _End, exhaust: _End) -> bool:
    ends = (live.stages(assessment)[-1], exhaust.stages(assessment)[0])
    blocks = [followed(assessment, one.in_block) for one in ends if isinstance(one, SteamPassage)]
    return len(blocks) == 2 and blocks[0] is not None and blocks[0] is blocks[1]


def _out_of(assessment: Assessment, inlet: Spec, outlet: Spec) -> tuple[Station, ...]:
    """From the cylinder by the exhaust valve of the end that an inlet feeds, else by that which the outlet follows."""
    valve = followed(assessment, inlet.valve) if isinstance(inlet, SteamPassage) else None
    if isinstance(valve, PoppetValve):
        end = _end_of(assessment, valve)
        for other in known_of(assessment, PoppetValve):
            if word(other.serves) == "exhaust" and end and _end_of(assessment, other) == end:
                return tuple(_at_valve(assessment, other, inlet=False))
    return tuple(_through(assessment, outlet, inlet=False))


def _end_of(assessment: Assessment, valve: PoppetValve) -> tuple[str, str] | None:
    """The block and the end of it at which the seat of a valve is."""
    found = _seat_bore(assessment, valve)
    return (found[0].id, word(found[1].end)) if found is not None and word(found[1].end) else None


def _seat_bore(assessment: Assessment, valve: PoppetValve) -> tuple[CylinderBlock, SeatBore] | None:
    seat = followed(assessment, valve.upper_beat.seat)
    block = followed(assessment, seat.pressed_into) if isinstance(seat, ValveSeat) else None
    if not isinstance(seat, ValveSeat) or not isinstance(block, CylinderBlock):
        return None
    housing = block.seat_bores.get(word(seat.in_bore))
    return None if housing is None else (block, housing)


def _through(assessment: Assessment, stage: Spec, *, inlet: bool) -> Iterator[Station]:
    """Valve, port and cylinder that a path leads to, or comes from: those that the valve's own sheet works."""
    valve = followed(assessment, stage.valve) if isinstance(stage, SteamPassage) else None
    if isinstance(valve, PoppetValve):
        yield from _at_valve(assessment, valve, inlet=inlet)


def _at_valve(assessment: Assessment, valve: PoppetValve, *, inlet: bool) -> Iterator[Station]:
    for check in assessment.checks:
        if check.component != valve.id or (held := judged(check)) is None:
            continue
        places = [at for at, step in enumerate(check.steps) if _follows_piston(step)]
        speed = next((at for at in reversed(places) if check.steps[at].value == held[0].value), None)
        if speed is not None:
            stations = list(_stations(assessment, valve, check, speed, live=inlet))
            yield from stations if inlet else reversed(stations[:-1])
            return


def _follows_piston(step: Step) -> bool:
    """Whether a step works the speed of steam that follows the piston through an area."""
    filled = _filled(step)
    return step.kind == "worked" and step.unit == "m/s" and {"A_p", "c", "A"} == set(filled)


def _stations(
    assessment: Assessment, valve: PoppetValve, check: Check, speed: int, *, live: bool
) -> Iterator[Station]:
    narrowest = of_step(check, speed, "A")
    areas = next((at for at, one in enumerate(check.steps) if {"A_v", "A_port"} == set(_filled(one))), None)
    side = word(valve.serves)
    for what, name in ((f"{side} valve", "A_v"), ("port", "A_port")):
        area = narrowest if areas is None else of_step(check, areas, name)
        narrow = area.value == narrowest.value
        yield Station(
            what,
            valve.id,
            area,
            of_step(check, speed) if narrow else None,
            _limit(check) if narrow else None,
            check,
            live,
        )
    piston, its_speed = of_step(check, speed, "A_p"), of_step(check, speed, "c")
    yield Station("cylinder", _bore_of(assessment, valve), piston, its_speed, None, check, live)


def _bore_of(assessment: Assessment, valve: PoppetValve) -> str:
    """The bore that a valve serves, in words: by the end at which its seat is, else as it states."""
    found = _seat_bore(assessment, valve)
    end = found[0].ends.get(word(found[1].end)) if found is not None else None
    if end is not None and word(end.of_bore):
        return f"bore {word(end.of_bore)}"
    return f"bore {word(valve.cylinder_bore)}"


def _is_speed_of_jet(step: Step) -> bool:
    """Whether a step works the speed at which a flow of mass leaves an opening."""
    return step.unit == "m/s" and {"m", "C", "A", "h", "p_2"} == set(_filled(step))


def _nozzle(assessment: Assessment, end: _End) -> Iterator[Station]:
    """The nozzle, with the speed of its jet: of the steam of all cylinders through its openings."""
    for nozzle in known_of(assessment, BlastNozzle):
        checks = [check for check in assessment.checks if check.component == nozzle.id == end.check.component]
        steps = [
            (check, at, step)
            for check in checks
            for at, step in enumerate(check.steps)
            if step.kind == "worked"
        ]
        openings = [one for one in steps if one[2].unit == "m²" and {"z", "d"} == set(_filled(one[2]))]
        jets = [one for one in steps if _is_speed_of_jet(one[2])]
        if openings:
            area = of_step(*openings[0][:2])
            speed, check = (of_step(*jets[0][:2]), jets[0][0]) if jets else (None, None)
            yield Station("nozzle", nozzle.id, area, speed, None, check)
