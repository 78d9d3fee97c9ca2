"""A slide-bar bracket on a block, as worked by hand, in steel of round figures.

Piston 500 mm at 16.6 bar: 326 kN × tan(arcsin(330/1900)) = 57.5 kN at an arm of 300 mm, 17.25 kN·m.
"""

from __future__ import annotations

from speclint.testing import SETTINGS, DesignFolder, changed
from tests.plugins.known_metals import METALS, WITH_METALS

__all__ = ["SETTINGS", "files", "settings"]
#: Rules of joints that hold no steam, and of brackets.
PURPOSE, SLIP, PART, PRY = (
    "joint.purpose-by-place",
    "joint.does-not-slip",
    "joint.does-not-part",
    "joint.prying",
)
FATIGUE, LOCK, AIR = "joint.bolt-fatigue", "joint.lock-suits", "joint.air-tight"
WELDS, STIFF = "bracket.welds-hold", "bracket.stiff-enough"
_CASES = ("starting", "running", "water", "standing-hot")
DUTY = 'kind = "duty"\nid = "duty"\n' + "".join(
    f'[cases.{name}]\nlive_pressure = "16.6 bar gauge"\nsafety_valve_pressure = "16.6 bar gauge"\n'
    'track_speed = "32 m/s"\n'
    f"[cases.{name}.temperatures]\n"
    + "".join(
        f'{kind} = "{"20 °C" if name != "standing-hot" else "60 °C"}"\n'
        for kind in ("bracket", "bolted-joint", "cylinder-block", "saddle")
    )
    for name in _CASES
)
BLOCK = """
kind = "cylinder-block"
id = "block"
material = "known-steel"
duty = "duty"
[bores.main]
diameter = "560 mm"
[ends.front]
of_bore = "main"
relief_set = "1 bar gauge"
[drive]
stroke = "660 mm"
connecting_rod_length = "1900 mm"
least_wheel_diameter = "1675 mm"
"""
LINER = 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\nin_bore = "main"\nbore = "500 mm"\n'
PISTON = 'kind = "piston"\nid = "piston"\nruns_in = "liner"\n'
ROD = 'kind = "piston-rod"\nid = "rod"\ncarries = "piston"\n'
CROSSHEAD = 'kind = "crosshead"\nid = "crosshead"\non_rod = "rod"\n'
BAR = 'kind = "slide-bar"\nid = "bar"\nguides = "crosshead"\nspan = "1300 mm"\n[supports.back]\npart = "bracket"\n'
BRACKET = """
kind = "bracket"
id = "bracket"
material = "known-steel"
on = "block"
stands = "upright"
thickness = "25 mm"
depth = "500 mm"
arm = "300 mm"
stiffness = "100000 N/mm"
[welds.root]
weld = "full penetration"
throat = "40 mm"
length = "400 mm"
count = 1
detail_category = "112 MPa"
shear_category = "100 MPa"
"""
JOINT = """
kind = "bolted-joint"
id = "joint"
material = "known-steel"
holds = "bracket"
bolted_to = "block"
fastener = "bolt"
purpose = "structural"
shear_taken_by = "friction"
friction = "0.12"
thread = "M24"
thread_made = "rolled before treatment"
count = 12
rows = ["50 mm", "130 mm", "210 mm", "290 mm", "370 mm", "450 mm"]
per_row = 2
row_width = "120 mm"
edge = "40 mm"
web_distance = "35 mm"
flange_width = "100 mm"
grip = "25 mm"
far_grip = "40 mm"
shank = "24 mm"
shank_length = "40 mm"
hole = "26 mm"
roughness = "6 µm"
faces = 1
carries_shear = true
relaxation = "0 %"
[tightening]
method = "torque wrench"
torque = "500 N·m"
torque_coefficient = "0.16"
lubrication = "oil"
temperature = "20 °C"
[nut]
face = "36 mm"
engagement = "22 mm"
locking = "wedge washers"
could_fall_into = "track"
"""
TEXTS = {
    "duty": DUTY,
    "block": BLOCK,
    "liner": LINER,
    "piston": PISTON,
    "rod": ROD,
    "crosshead": CROSSHEAD,
    "bar": BAR,
    "bracket": BRACKET,
    "joint": JOINT,
}
#: A lubricator in the place of the slide bar.
LUBRICATOR = """
[carries.lubricator]
mass = "25 kg"
at = { x = "0 mm", y = "0 mm", z = "200 mm" }
"""


#: A push from the side.
PUSH = '[carries.push]\nforce.x = "{force}"\nat = {{ x = "0 mm", y = "{y}", z = "{z}" }}\n'
#: Two fillets of 8 × 300 on both sides of a plate of 40 mm.
FILLETS = (
    ('weld = "full penetration"', 'weld = "fillet"'),
    ('throat = "40 mm"', 'throat = "8 mm"'),
    ('length = "400 mm"', 'length = "300 mm"'),
    ("count = 1", 'count = 2\napart = "48 mm"'),
    ('"112 MPa"', '"36 MPa"'),
)


def pushed(force: str, *changes: tuple[str, str], y: str = "0 mm", z: str = "300 mm") -> dict[str, str]:
    """A bracket that is pushed from the side, and carries nothing else."""
    made = {f"{name}.toml": text for name, text in TEXTS.items() if name != "bar"}
    text = changed(BRACKET, *changes)
    return {**made, "bracket.toml": text + PUSH.format(force=force, y=y, z=z), "metals.toml": METALS}


def settings() -> str:
    """Settings of the design."""
    return WITH_METALS


def files(*changes: tuple[str, str], part: str = "joint", bar: bool = True, **texts: str) -> dict[str, str]:
    """All specs, some passages of one of them changed; without the bar with a lubricator on the bracket."""
    made = {**TEXTS, **texts}
    if not bar:
        del made["bar"]
        made["bracket"] = texts.get("bracket", BRACKET) + LUBRICATOR
    for old, new in changes:
        assert old in made[part], old
        made[part] = made[part].replace(old, new)
    return {**{f"{name}.toml": text for name, text in made.items()}, "metals.toml": METALS}


def loaded() -> dict[str, str]:
    """A bracket with a slide bar and a lubricator, and its joint."""
    return files(bracket=BRACKET + LUBRICATOR)


def built(
    workshop: DesignFolder, *changes: tuple[str, str], part: str = "joint", bar: bool = True
) -> DesignFolder:
    """The design of ``files``, in a folder."""
    return workshop.write(files(*changes, part=part, bar=bar), settings=settings())


#: The lid of a smokebox on its saddle, in the place of the bracket.
LID = (
    ('holds = "bracket"', 'holds = "saddle"'),
    ('purpose = "structural"', 'purpose = "air-tight"'),
    ('grip = "25 mm"', 'grip = "8 mm"'),
    (
        "[tightening]",
        'pitch = "150 mm"\nstrip_width = "40 mm"\nlength = "1500 mm"\nvacuum = "15 mbar gauge"\n'
        'gas_flow = "5 kg/s"\n[packing]\nwidth = "10 mm"\npressure = "2 MPa"\nrecovery = "0.3 mm"\n[tightening]',
    ),
)

SADDLE = 'kind = "saddle"\nid = "saddle"\non = "block"\nmaterial = "known-steel"\nthickness = "12 mm"\n'

#: What hangs on the bolts themselves, with nothing of it at the part that they hold.
OWN = (
    ('holds = "bracket"', 'holds = "saddle"'),
    ('grip = "25 mm"', 'grip = "12 mm"'),
    ("[tightening]", 'stands = "upright"\n' + LUBRICATOR.lstrip() + "[tightening]"),
)
