"""What a rule of hold grade promises to read, and what sheets took: in the example, and in designs made for a rule.

``python -m tests.omission`` leaves each of it out in turn.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from speclint.checking import Assessment
from speclint.testing import DesignFolder, changed, installed_families
from speclint.testing.taken_values import general_key, taken_by
from tests.contracts.omissions import hold_rules
from tests.contracts.promises import Promise, names_a_key, promised
from tests.example import assessed
from tests.plugins.assembly.bench import write
from tests.plugins.clearances.test_withdrawing import swung
from tests.plugins.events.promised import promised_design
from tests.plugins.fabrication.test_pieces import everything
from tests.plugins.fabrication.test_unlike_plates import two_steels
from tests.plugins.fits import frames
from tests.plugins.joints import brackets
from tests.plugins.joints.test_tightness import ground
from tests.plugins.liners.bench import bench
from tests.plugins.motion import train
from tests.plugins.release import made as made_parts, part
from tests.plugins.steamways import way, wet
from tests.plugins.valves.test_regrinding import capped
from tests.plugins.wholeness import engine

RULES = {rule.name: rule for rule in hold_rules()}


def _reviewed(workshop: DesignFolder) -> DesignFolder:
    return workshop.write(part.files(), settings=part.settings())


def _wet(workshop: DesignFolder) -> DesignFolder:
    """A block with its drains; each chamber says what metal it drains."""
    made = wet.files("chest", ("low_point = true", 'low_point = true\nwater_of = "1800 kg"'))
    made["block.toml"] = made["block.toml"].replace("clearance =", 'water_of = "200 kg"\nclearance =')
    return workshop.write(made)


def _locked(workshop: DesignFolder) -> DesignFolder:
    """A block that two pads lock, in cut-outs whose stiffness is stated."""
    made = frames.files()
    for name in ("back", "front"):
        made[f"face-{name}.toml"] += 'slot_stiffness = "7.5e6 N/mm"\n'
    return workshop.write(made)


def _swung(workshop: DesignFolder) -> DesignFolder:
    """A seat that swings as it is drawn out."""
    return workshop.write(swung(more='across = "80 mm"\n'))


def _capped(workshop: DesignFolder) -> DesignFolder:
    """A spindle with a nitrided cap."""
    return workshop.write(capped('hardening = "nitrided", hardened_depth = "2.5 mm"'))


def _carrying(workshop: DesignFolder) -> DesignFolder:
    """A bracket with a slide bar and a lubricator."""
    return workshop.write(brackets.loaded(), settings=brackets.settings())


def _unlined(workshop: DesignFolder) -> DesignFolder:
    """An engine whose ring bears on the block itself."""
    made = engine.files()
    made["block.toml"] = changed(made["block.toml"], ("[bores.main]", "[bores.main]\nlined = false"))
    made["ring.toml"] = changed(made["ring.toml"], ('runs_in = "liner"', 'bears_on = "block"'))
    return workshop.write({name: made[name] for name in ("duty.toml", "block.toml", "ring.toml")})


def _cast(workshop: DesignFolder) -> DesignFolder:
    """A block of one metal that is not lined, and states its walls as it was made."""
    made = bench(("block.toml", "[bores.main]", '[bores.main]\nlined = false\nlast_bore = "566 mm"'))
    return workshop.write({name: made[name] for name in ("duty.toml", "block.toml")})


def _motion_stated(workshop: DesignFolder) -> DesignFolder:
    """A block that states its motion and the faces of its covers, geared to its wheels."""
    made = bench(
        ("block.toml", 'face_from_seat = "35 mm"\n', ""),
        ("block.toml", 'face_from_seat = "860 mm"\n', ""),
        ("duty.toml", 'rotational_speed = "300 rev/min"', 'track_speed = "95 km/h"'),
    )
    made["engine.toml"] = 'kind = "engine"\nid = "engine"\ngear_ratio = "2"\n[cranks.only]\nblock = "block"\n'
    return workshop.write(made)


def _train(workshop: DesignFolder) -> DesignFolder:
    """A piston and its rod without a valve gear, whose steam is full up to the cut-off."""
    return workshop.write(train.files())


def _bench(workshop: DesignFolder) -> DesignFolder:
    """A block that states its dividing wall and that its ends have drain cocks."""
    return workshop.write(bench())


def _ways(workshop: DesignFolder) -> DesignFolder:
    """Steam passages that are said to be drained."""
    return workshop.write(way.files())


def _recorded(workshop: DesignFolder) -> DesignFolder:
    """Parts as made, each with all that its spec asks for."""
    return workshop.write(made_parts.recorded(), settings=part.settings("released"))


#: What the example states in another way: each rule is run here too.
BESIDE_THE_EXAMPLE: Mapping[str, Callable[[DesignFolder], DesignFolder]] = {
    "bore.one-liner": _unlined,
    "cylinder.between-bores": _bench,
    "cylinder.end-clearance": _motion_stated,
    "cylinder.test-pressure": _cast,
    "cylinder.water-relief": _bench,
    "fitting.goes-in": write,
    "piston.fastening": _train,
    "rod.buckling": _train,
    "rod.tension": _train,
    "room.withdrawn-in-frames": _swung,
    "steamway.drains": _ways,
    "wear.seats-reground": _capped,
}
#: Rules that the example gives no part to: ground faces, a gear, a design that is no draft, a block with drains.
OF_ITS_OWN: Mapping[str, Callable[[DesignFolder], DesignFolder]] = {
    "bracket.welds-hold": _carrying,
    "joint.bolt-fatigue": _carrying,
    "joint.does-not-part": _carrying,
    "joint.does-not-slip": _carrying,
    "joint.purpose-by-place": _carrying,
    "opening.apart": everything,
    "opening.in-flat-wall": everything,
    "opening.metal-replaced": everything,
    "opening.port-a-part": everything,
    "weld.two-metals": two_steels,
    "frame.grip-kept": _locked,
    "frame.locked-force": _locked,
    "frame.scheme-of-pads": _locked,
    "water.drain-passes-it": _wet,
    "water.lies-on-the-grade": _wet,
    "events.compression-peak": promised_design,
    "events.duty-agrees": promised_design,
    "events.mid-gear": promised_design,
    "events.no-overlap": promised_design,
    "events.opens": promised_design,
    "joint.face-pressure": ground,
    "release.independent-check": _reviewed,
    "made.certificate": _recorded,
    "made.examined": _recorded,
    "made.hydraulic-test": _recorded,
    "made.tightening": _recorded,
}


@cache
def _assessed_of(make: Callable[[DesignFolder], DesignFolder]) -> Assessment:
    """What every check says of a design, once for all rules that are tried on it."""
    with TemporaryDirectory() as name:
        return make(DesignFolder(Path(name))).assess()


def kept(rule: str, assessment: Assessment) -> set[str]:
    """The keys that a rule took, in general, where they were stated."""
    assert assessment.design is not None
    return {
        one.general
        for check in assessment.checks
        if check.rule.name == rule
        for one in taken_by(check, assessment.design)
        if one.stated
    }


def test_every_rule_of_hold_grade_says_what_it_rests_on() -> None:
    assert sorted(promised()) == sorted(RULES)


@pytest.mark.parametrize("rule", sorted(RULES))
def test_what_is_promised_is_taken(rule: str) -> None:
    """A key that no sheet of the rule takes is promised and not read."""
    made = OF_ITS_OWN.get(rule)
    taken = kept(rule, assessed() if made is None else _assessed_of(made))
    if rule in BESIDE_THE_EXAMPLE:
        taken |= kept(rule, _assessed_of(BESIDE_THE_EXAMPLE[rule]))
    broken = [
        key for key in promised()[rule].rests_on if not any(Promise((key,)).includes(one) for one in taken)
    ]
    assert not broken, f"{rule} promises to read what no sheet took: {broken}"


@pytest.mark.parametrize("rule", [name for name in RULES if promised()[name].open])
def test_what_is_open_has_a_reason(rule: str) -> None:
    assert all(len(reason.split()) >= 4 for reason in promised()[rule].open.values())


@pytest.mark.parametrize("rule", [name for name in RULES if promised()[name].open])
def test_what_is_open_names_a_key_that_its_kind_has(rule: str) -> None:
    kinds = installed_families().kinds
    assert not [row for row in promised()[rule].open if not names_a_key(row, kinds)]


@pytest.mark.parametrize(
    ("row", "known"),
    [
        ("bracket.welds removed", True),
        ("weldment.walls.*.one_side set to *", True),
        ("slide-bar.supports* removed", True),
        ("bracket.weld removed", False),
        ("weldment.walls.*.one_sides set to *", False),
        ("brackets.welds removed", False),
    ],
)
def test_a_row_of_a_key_that_was_renamed_is_found(row: str, known: bool) -> None:
    assert names_a_key(row, installed_families().kinds) is known


def test_a_promise_that_is_not_kept_is_found() -> None:
    """No sheet of a cover takes the title of its block, nor the pressure of a case that the example does not state."""
    taken = kept("cover.thickness", assessed())
    assert "cylinder-block.ends.*.relief_set" in taken
    assert not any(Promise(("cylinder-block.title",)).includes(one) for one in taken)
    assert not any(Promise(("duty.cases.*.least_cylinder_pressure",)).includes(one) for one in taken)


@pytest.mark.parametrize(
    ("kind", "key", "wanted"),
    [
        ("cylinder-block", "ends.front.relief_set", "ends.*.relief_set"),
        ("cylinder-block", "bores.main.relieved.groove.starts", "bores.*.relieved.*.starts"),
        ("duty", "cases.running.temperatures.piston-rod", "cases.*.temperatures.*"),
        ("gauge-outline", "corners[3].height", "corners[].height"),
        ("bolted-joint", "gasket.form", "gasket.form"),
    ],
)
def test_a_key_in_general_has_no_names_of_its_own(kind: str, key: str, wanted: str) -> None:
    assert general_key(installed_families().kinds[kind], key) == wanted
