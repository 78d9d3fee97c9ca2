"""Whether the pressure of the air that the settings state can be that of a railway."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.errors import Complaint
from speclint.quantities import Measure
from speclint.specs import NotStated

#: By what share the barometer moves to either side of the standard atmosphere; common practice.
_WEATHER = 0.05
#: Pa: of the standard atmosphere at 1000 m, less by the weather; what is lower asks for the height. Common practice.
_LEAST_WITHOUT_HEIGHT = 85_000.0
#: Pa: of the standard atmosphere 400 m below the sea, more by the weather; common practice.
_GREATEST = 110_000.0


def site_pressure_faults(stated: Measure | NotStated, altitude: Measure | NotStated) -> Iterator[Complaint]:
    """What is wrong with the pressure of the air at the site, held against its height above the sea."""
    if not isinstance(stated, Measure):
        return
    if stated.datum != "absolute":
        write = '"1.01325 bar absolute"'
        yield Complaint(stated.where, "the site pressure is an absolute pressure", f'"{stated.text}"', write)
    elif isinstance(altitude, Measure):
        yield from _not_of_its_height(stated, altitude)
    elif stated.high > _GREATEST:
        said = "air of more than 1.1 bar lies round no railway"
        yield Complaint(stated.where, said, f'"{stated.text}"', '"1.01325 bar absolute"')
    elif stated.low < _LEAST_WITHOUT_HEIGHT:
        said = "air of less than 0.85 bar is that of a line more than 1000 m above the sea, and no altitude is stated"
        write = 'the altitude of the site beside it, as altitude = "1500 m", or the pressure that is meant'
        yield Complaint(stated.where, said, f'"{stated.text}"', write)


def _not_of_its_height(stated: Measure, altitude: Measure) -> Iterator[Complaint]:
    from speclint.handbook.heat import standard_air_pressure  # only where a height is stated

    high, low = (standard_air_pressure(h=height) for height in (altitude.low, altitude.high))
    if stated.low < low * (1 - _WEATHER) or stated.high > high * (1 + _WEATHER):
        middle = standard_air_pressure(h=altitude.nominal)
        said = f"the standard atmosphere has {middle / 1e5:.3g} bar at {altitude.text}, and the weather moves it by 5 %"
        write = f'"{middle / 1e5:.3g} bar absolute", or another altitude'
        yield Complaint(stated.where, said, f'"{stated.text}"', write)
