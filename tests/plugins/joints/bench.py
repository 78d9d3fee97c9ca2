"""A joint of round figures, so that every test can be worked by hand.

Metals: studs, cover and block all of modulus 200 GPa at every temperature and without tolerance; expansion
12.5e-6/K (stud), 12.5e-6/K (cover), 10e-6/K (block), exact; stud proof 600 MPa and tensile 900 MPa; cover and
block proof 240 MPa and tensile 480 MPa, so that their allowable tension is 240/1.5 = 160 MPa.

Studs: 20 of M24 (ISO 724: pitch 3 mm, pitch diameter 22.0514 mm; root 20.3194 mm; stress area 352.50 mm²; core
area 324.27 mm²) on 700 mm, torque 384 N·m with K = 0.16, so that the mean preload is 384/(0.16 × 0.024) = 100 kN.
"""

from __future__ import annotations

from collections.abc import Mapping

from speclint.testing import SETTINGS, DesignFolder

SETTINGS_WITH_METALS = 'materials = ["metals.toml"]\n' + SETTINGS


def _metal(
    name: str, family: str, allowable: str, proof: int, tensile: int, alpha: float, extra: str = ""
) -> str:
    return f"""
[{name}]
title = "{name}, for tests"
family = "{family}"
standard = "none"
allowable = "{allowable}"
[{name}.modulus]
degC = [-20, 500]
value = 200
unit = "GPa"
bound = "exact"
source = "common practice"
[{name}.poisson]
value = 0.3
unit = "1"
bound = "exact"
source = "common practice"
[{name}.expansion]
degC = [-20, 500]
value = {alpha}
unit = "1e-6/K"
bound = "exact"
source = "common practice"
[{name}.proof-stress]
degC = [-20, 500]
value = {proof}
unit = "MPa"
bound = "minimum"
source = "common practice"
[{name}.tensile-strength]
degC = [-20, 500]
value = {tensile}
unit = "MPa"
bound = "minimum"
source = "common practice"
{extra}
"""


_LIMIT = """[test-stud.temperature-limit]
bolting = { value = 300, unit = "°C", bound = "maximum", source = "common practice" }
"""
METALS = (
    _metal("test-stud", "bolting-steel", "bolting-steel", 600, 900, 12.5, _LIMIT)
    + _metal("test-cover", "carbon-steel", "wrought-steel", 240, 480, 12.5)
    + _metal("test-block", "carbon-steel", "wrought-steel", 240, 480, 10.0)
)


def _case(name: str, steam: str, stud: str = "200 °C", cover: str = "200 °C", block: str = "200 °C") -> str:
    return f"""
[cases.{name}]
{steam}
[cases.{name}.temperatures]
bolted-joint = "{stud}"
cylinder-cover = "{cover}"
cylinder-block = "{block}"
pipe-flange = "{cover}"
lens-joint = "{cover}"
gland = "{cover}"
frame-fastening = "{cover}"
"""


_SHOP = {"stud": "20 °C", "cover": "20 °C", "block": "20 °C"}
_STEAM = (
    'live_pressure = "16 bar gauge"\nexhaust_pressure = "0.5 bar gauge"\n'
    'live_temperature = "300 °C"\nexhaust_temperature = "150 °C"'
)
DUTY = 'kind = "duty"\nid = "duty"\n' + "".join(
    (
        _case("warming", 'live_pressure = "3 bar gauge"\nexhaust_pressure = "0 bar gauge"'),
        _case("starting", _STEAM),
        _case("running", _STEAM),
        _case("drifting", _STEAM),
        _case("standing-hot", ""),
        _case("cooling", 'live_pressure = "0 bar gauge"\nexhaust_pressure = "0 bar gauge"'),
        _case("test", 'cylinder_pressure = "16 bar gauge"\nlive_pressure = "16 bar gauge"', **_SHOP),
        _case("water", 'cylinder_pressure = "16 bar gauge"\nlive_pressure = "16 bar gauge"'),
    )
)
BLOCK = 'kind = "cylinder-block"\nid = "block"\nmaterial = "test-block"\nduty = "duty"\n'
COVER = """
kind = "cylinder-cover"
id = "cover"
material = "test-cover"
closes = "block"
bore = "500 mm"
end = "front"
form = "flat"
thickness = "60 mm"
flange_thickness = "50 mm"
as_made = "65 mm"
outside_diameter = "760 mm"
central_hole = "0 mm"
weld_efficiency = "1"
"""
STUDS = """
kind = "bolted-joint"
id = "studs"
material = "test-stud"
holds = "cover"
screwed_into = "block"
fastener = "stud"
thread = "M24"
thread_made = "cut"
count = 20
circle = "700 mm"
grip = "50 mm"
set_in = "8.8 mm"
shank = "24 mm"
shank_length = "30 mm"
hole = "26 mm"
edge_distance = "30 mm"
roughness = "6.3 µm"
faces = 2
carries_shear = false
relaxation = "10 %"
seal = "gasket"
pressure = "cylinder"
over_track = false
[gasket]
name = "graphite sheet on tanged steel 1.5 mm"
form = "flat"
outside = "636 mm"
inside = "604 mm"
thickness = "1.2 mm"
modulus = "1.5 GPa"
[tightening]
method = "torque wrench"
torque = "384 N·m"
torque_coefficient = "0.16"
lubrication = "graphite paste"
temperature = "20 °C"
[tapped]
thread = "M24"
engagement = "36 mm"
depth = "56 mm"
run_out = "9 mm"
opens_into = "nothing"
sealed = "none"
[nut]
thread = "M24"
material = "test-stud"
engagement = "24 mm"
across_flats = "36 mm"
face = "36 mm"
locking = "lock plate"
could_fall_into = "nothing"
"""
GROUND = """
[ground_face]
outside = "640 mm"
inside = "600 mm"
"""
FILES: Mapping[str, str] = {
    "metals.toml": METALS,
    "duty.toml": DUTY,
    "block.toml": BLOCK,
    "cover.toml": COVER,
    "studs.toml": STUDS,
}


def bench(workshop: DesignFolder, *changes: tuple[str, str, str]) -> DesignFolder:
    """The joint with some passages replaced, each given as (file, old, new)."""
    workshop.write(
        FILES, settings=SETTINGS_WITH_METALS.replace("materials", 'leave_out = ["metals.toml"]\nmaterials')
    )
    for file, old, new in changes:
        workshop.replace(f"{file}.toml", old, new)
    return workshop


def used(workshop: DesignFolder, rule: str, component: str = "studs") -> float:
    """Utilisation of a rule on one component, which must have been judged."""
    check = workshop.only(rule, component)
    assert check.utilisation is not None, f"{check.outcome}: {check.says}"
    return check.utilisation


def in_every_case(workshop: DesignFolder, old: str, new: str) -> DesignFolder:
    """Change a passage wherever the duty has it."""
    path = workshop.root / "duty.toml"
    text = path.read_text(encoding="utf-8")
    assert old in text, f"{old!r} is not in the duty"
    path.write_text(text.replace(old, new), encoding="utf-8", newline="\n")
    return workshop


def without(workshop: DesignFolder, file: str, line: str) -> DesignFolder:
    """Leave out a whole line."""
    return bench(workshop, (file, f"{line}\n", ""))


def figure_of(workshop: DesignFolder, metal: str, key: str, figures: str) -> DesignFolder:
    """Give one property of one metal other figures: the lines of ``degC`` and ``value``."""
    path = workshop.root / "metals.toml"
    text = path.read_text(encoding="utf-8")
    before, heading, after = text.partition(f"[{metal}.{key}]\n")
    assert heading, f"no {key} of {metal}"
    rest = after.split("\n", 2)[2]
    path.write_text(f"{before}{heading}{figures}\n{rest}", encoding="utf-8", newline="\n")
    return workshop
