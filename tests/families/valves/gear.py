"""Specs of a valve gear for tests: a block of steel plate with one seat bore, an iron seat, and the duty.

The handbook gives for P265GH: R_p 185 MPa, E 203.452 GPa ± 3 %, ν 0.30 ± 0.01 at 20 °C, mean expansion
12.46e-6/K ± 0.3 to 160 °C; for grey iron 250: compressive strength 840 MPa ± 10 %, E 103 to 118 GPa, ν 0.26 ± 0.02
at 20 °C, mean expansion 11.433e-6/K ± 0.3 to 160 °C.
"""

from __future__ import annotations

from speclint.checks import Check

BLOCK = """
kind = "cylinder-block"
id = "block"
material = "plate-P265GH"
duty = "duty"
[seat_bores.upper]
diameter = "200 mm"
depth = "30 mm"
wall = "40 mm"
chamber = "live steam"
"""

SEAT = """
kind = "valve-seat"
id = "seat"
material = "grey-iron-250"
pressed_into = "block"
in_bore = "upper"
outside_diameter = "200.2 mm"
bore = "170 mm"
length = "30 mm"
entering = "block heated and ring chilled"
block_heated_to = "120 °C"
chilled_to = "-78 °C"
friction = "0.1"
entered_from = "chamber"
sticking_drag = "500 N"
retention = "none"
"""

PRESSURES = {
    "cold": "",
    "warming": 'live_pressure = "3 bar gauge"\nexhaust_pressure = "0.2 bar gauge"',
    "starting": 'live_pressure = "16 bar gauge"\nexhaust_pressure = "0.3 bar gauge"',
    "running": 'live_pressure = "15.2 bar gauge"\nexhaust_pressure = "0.35 bar gauge"\nlive_temperature = "390 °C"\n'
    'exhaust_temperature = "170 °C"\nrotational_speed = "360 rev/min"',
    "drifting": 'live_pressure = "0.1 bar gauge"\nexhaust_pressure = "0.05 bar gauge"\n'
    'cylinder_pressure = "2.5 bar gauge"\nrotational_speed = "360 rev/min"',
    "standing-hot": 'live_pressure = "0 bar gauge"\nexhaust_pressure = "0 bar gauge"',
    "cooling": 'live_pressure = "0 bar gauge"\nexhaust_pressure = "0 bar gauge"',
    "water": 'live_pressure = "16 bar gauge"\nexhaust_pressure = "0.3 bar gauge"\ncylinder_pressure = "18 bar gauge"',
}


def duty(default: str = "20 °C", **of_case: str) -> str:
    """A duty with the metal of every part at one temperature, or at others in the cases named (_ for -)."""
    text = 'kind = "duty"\nid = "duty"\n'
    for name, pressures in PRESSURES.items():
        metal = of_case.get(name.replace("-", "_"), default)
        block, _, rest = metal.partition("; ")
        kinds = (
            "poppet-valve",
            "valve-seat",
            "valve-spindle",
            "compression-spring",
            "tappet",
            "cam-box",
            "rocker",
        )
        lines = "".join(f'{kind} = "{rest or block}"\n' for kind in kinds)
        text += (
            f'[cases.{name}]\n{pressures}\n[cases.{name}.temperatures]\ncylinder-block = "{block}"\n{lines}'
        )
    return text


def changed(text: str, *changes: tuple[str, str], add: str = "") -> str:
    """A spec with some passages changed, each of which must stand there once."""
    for old, new in changes:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    return text + add


def seat_files(*changes: tuple[str, str], block: str = BLOCK, duty_text: str = "") -> dict[str, str]:
    """The files of a seat in its block."""
    return {
        "block.toml": block,
        "seat.toml": changed(SEAT, *changes),
        "duty.toml": duty_text or duty(),
    }


def found(check: Check) -> float:
    """The value that was judged."""
    assert check.judgement is not None
    assert check.judgement.found is not None
    return check.judgement.found.value
