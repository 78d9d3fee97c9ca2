"""A design in which every rule of hold grade finds all that it promises to read."""

from __future__ import annotations

from speclint.testing import DesignFolder
from tests.plugins.events.worked_engine import of_running, worked_engine
from tests.plugins.known_metals import WITH_METALS

_TYPED = (
    'cut_off = "20 %"\nsteam_flow = "0.62 kg/s"\ncylinder_pressure = "16.2 bar absolute"\n'
    'least_cylinder_pressure = "1.35 bar absolute"\nwall_coefficient = "600 W/(m²·K)"\n'
    'cylinder_temperature = "200 °C"\nadmission_temperature = "250 °C"\nrelease_temperature = "140 °C"\n'
    'exhaust_dryness = "1"'
)


def promised_design(folder: DesignFolder) -> DesignFolder:
    """The engine of the worked cases with all of its steam stated, heat to its walls, and an inlet open in mid gear."""
    surfaces = [
        ("block.toml", f'side = "{side}"\n', f'side = "{side}"\nclearance_surface = "0.9 m²"\n')
        for side in ("front", "back")
    ]
    opened = (
        "gear.toml",
        'direction = "mid"\n',
        'direction = "mid"\n[notches.mid.inlet_front]\ncam = "cam-inlet-front-20"\nfoot = "-10.5 °"\n',
    )
    typed = 'exhaust_temperature = { from = "events" }\nrotational_speed = "180 rev/min"'
    exhaust = ("duty.toml", typed, typed.replace('{ from = "events" }', '"114 °C"'))
    files = worked_engine(of_running(_TYPED), exhaust, opened, *surfaces)
    return folder.write(files, settings=WITH_METALS)
