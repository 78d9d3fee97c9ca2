"""Rules of valve events and of the steam in the cylinder, and their drawings."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from importlib import import_module

from speclint import Assessment, FigureMaker, RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [rules_in("speclint_events.rules", "valve-gear")]


@family
def speclint_drawings() -> Sequence[FigureMaker]:
    """From the valves to the pull of the engine; each is imported when it draws."""
    return (
        FigureMaker(
            "valve-charts",
            "lift and open area over the crank angle, with what the piston asks for",
            _drawn("valve_chart.valve_charts"),
        ),
        FigureMaker(
            "indicator-cards",
            "indicator diagrams of both ends over the theoretical ones",
            _drawn("indicator_card.indicator_cards"),
        ),
        FigureMaker(
            "event-circles",
            "events round the circle of the crank, both directions",
            _drawn("event_circle.event_circles"),
        ),
        FigureMaker(
            "spring-forces",
            "acceleration of a valve and load of its springs over the cam",
            _drawn("spring_forces.spring_forces"),
        ),
        FigureMaker(
            "notch-efforts",
            "tractive effort and steam of each notch over the speed",
            _drawn("notch_efforts.notch_efforts"),
        ),
        FigureMaker(
            "turning-moments",
            "turning moment over a revolution at standstill",
            _drawn("turning_moments.turning_moments"),
        ),
    )


def _drawn(place: str) -> Callable[[Assessment], Iterable[object]]:
    def make(assessment: Assessment) -> Iterable[object]:
        module, _, name = place.partition(".")
        maker: Callable[[Assessment], Iterable[object]] = getattr(
            import_module(f"speclint_events.figures.{module}"), name
        )
        return maker(assessment)

    return make
