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


#: Each figure: its name, what it shows, and what makes it.
_FIGURES = (
    (
        "valve-charts",
        "lift and open area over the crank angle, with what the piston asks for",
        "valve_chart.valve_charts",
    ),
    (
        "indicator-cards",
        "indicator diagrams of both ends over the theoretical ones",
        "indicator_card.indicator_cards",
    ),
    ("event-circles", "events round the circle of the crank, both directions", "event_circle.event_circles"),
    (
        "spring-forces",
        "acceleration of a valve and load of its springs over the cam",
        "spring_forces.spring_forces",
    ),
    (
        "notch-efforts",
        "tractive effort and steam of each notch over the speed",
        "notch_efforts.notch_efforts",
    ),
    ("turning-moments", "turning moment over a revolution at standstill", "turning_moments.turning_moments"),
)


@family
def speclint_drawings() -> Sequence[FigureMaker]:
    """From the valves to the pull of the engine; each is imported when it draws."""
    return tuple(
        FigureMaker(name, shows, _drawn(place), in_chosen_units=True) for name, shows, place in _FIGURES
    )


def _drawn(place: str) -> Callable[[Assessment], Iterable[object]]:
    def make(assessment: Assessment) -> Iterable[object]:
        module, _, name = place.partition(".")
        maker: Callable[[Assessment], Iterable[object]] = getattr(
            import_module(f"speclint_events.figures.{module}"), name
        )
        return maker(assessment)

    return make
