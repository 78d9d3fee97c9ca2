"""Plans of access and lifting, lagging, oil and the release where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, changed, changed_files
from tests.plugins.agreement import (
    test_access_parts as access_parts,
    test_chain_blocks as chain_blocks,
    test_chains as chains,
    test_concern as concern,
    test_envelopes as envelopes,
    test_fit_parts as fit_parts,
    test_lifting as lifting,
    test_own_block as own_block,
    test_weights as weights,
)
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.agreement.test_access import FILES as ACCESS
from tests.plugins.agreement.test_envelopes import FILES as ROOM
from tests.plugins.agreement.test_laggings import FILES as LAGGED
from tests.plugins.agreement.test_lifted_parts import FILES as LIFTED
from tests.plugins.agreement.test_oil import FILES as OILED
from tests.plugins.agreement.test_vessels import FILES as VESSEL
from tests.plugins.fits import bench as fit_bench
from tests.plugins.known_metals import METALS, WITH_METALS

#: Flat lagging on a cover, without the pipe, whose metal is of a table of its own.
_FLAT = {name: LAGGED[name] for name in ("duty.toml", "cover.toml", "flat.toml")}
_PARTS = access_parts.FILES
#: A seat in its seat bore, with the sizes of both.
_FIT = {
    **{f"{name}.toml": f"{text}\n" for name, text in fit_parts.PARTS.items() if name in ("block", "seat")},
    "fit.toml": 'kind = "fit"\nhole.of = "block"\nhole.dimension = "seat_bores.inlet.diameter"\n'
    'shaft.of = "seat"\nshaft.dimension = "outside_diameter"',
}
#: A chain over the place of a cut-out, which it states beside its key.
_CHAINED = {
    "block.toml": chains.BLOCK,
    "face.toml": f'{chains.FACE}at = "623 mm"\n',
    "chain.toml": changed(chains.CHAIN, ('dimension = "at"\n', 'dimension = "at"\nsize = "623 mm"\n')),
}
_AT_PAD = {"block.toml": chains.BLOCK, "face.toml": f'{chains.FACE}at = "620 mm"\n'}
_PRESSED = changed_files(fit_bench.FILES, *chains.PRESSED)
#: The weldment of 1500 kg, and a liner that is of 462.3 kg by its sizes.
_LIFTED = {
    "speclint.toml": WITH_METALS,
    "metals.toml": METALS,
    "block.toml": 'kind = "cylinder-block"\n',
    "liner.toml": lifting.LINER,
    "weldment.toml": lifting.WELDMENT.format(mass="1500 kg"),
    "plan.toml": 'kind = "lifting-plan"\nlifts = "block"\n[weights.block]\nof = "weldment"\nmass = "1500 kg"\n'
    '[weights.liner]\nof = "liner"\nmass = "460 kg"\n',
}

_TESTED = 'test_pressure = "30 bar gauge"\n'
ROWS: list[Row] = [
    *rows(
        "access.chambers-of-block",
        "plan",
        ACCESS,
        (SILENT, ("plan.toml", "chambers_complete = true\n")),
        (SILENT, ("chest.toml", 'place = "chest"\n')),  # a passage of no place is no chamber
        (SILENT, ("chest.toml", 'in_block = "block"\n')),
        (ASKED, ("plan.toml", 'serves = "block"\n')),
    ),
    *rows(
        "access.of-its-joints",
        "plan",
        ACCESS,
        (FINE, ("plan.toml", 'across_flats = "36 mm"\n')),
        (FINE, ("studs.toml", 'nut.across_flats = "36 mm"\n')),
        (FINE, ("plan.toml", '[withdrawals.studs]\nsize = "118 mm"\n')),
        (FINE, ("plan.toml", 'size = "118 mm"\n')),
        (FINE, ("plan.toml", 'size = "926 mm"\n')),
        (ASKED, ("plan.toml", 'serves = "block"\n')),
    ),
    *rows(
        "lagging.of-its-part",
        "flat",
        _FLAT,
        (FINE, ("flat.toml", 'height = "0.7 m"\n')),
        (FINE, ("flat.toml", 'area = "0.4 m²"\n')),
        (ASKED, ("flat.toml", 'form = "flat"\n')),
        (ASKED, ("flat.toml", 'covers = "cover"\n')),
        (ASKED, ("cover.toml", 'outside_diameter = "750 mm"\n')),
    ),
    *rows(
        "lifting.parts-of-its-block",
        "plan",
        LIFTED,
        (SILENT, ("plan.toml", 'lifts = "one"\n')),
        (FINE, ("weldment.toml", 'makes = "one"')),
        (FINE, ("liner.toml", 'housed_in = "one"')),
        (FINE, ("cover.toml", 'closes = "one"')),
        (FINE, ("box.toml", 'mounted_on = "one"')),
    ),
    *rows(
        "lubrication.one-feed",
        "block",
        OILED,
        (FINE, ("ring.toml", 'lubrication.lubricant = "cylinder oil"\n')),
        (FINE, ("ring.toml", 'lubrication.viscosity_class = "ISO VG 1000"\n')),
        (ASKED, ("liner.toml", 'lubrication.lubricant = "cylinder oil"\n')),
        (ASKED, ("liner.toml", 'lubrication.viscosity_class = "ISO VG 1000"\n')),
        (FINE, ("spindle.toml", 'lubrication.feed = "mechanical lubricator, feed 3"\n')),
        (FINE, ("ring.toml", 'runs_in = "liner"\n')),
    ),
    *rows(
        "release.one-vessel",
        "cover",
        VESSEL,
        (SILENT, ("cover.toml", 'design_pressure = "17 bar gauge"\n')),
        (SILENT, ("block.toml", 'design_pressure = "17 bar gauge"\n')),
        (SILENT, ("cover.toml", 'closes = "block"\n')),
    ),
    *rows(
        "release.one-vessel",
        "weldment",
        VESSEL,
        (FINE, ("weldment.toml", 'design_pressure = "17 bar gauge"\n')),
        (FINE, ("weldment.toml", 'design_temperature = "400 °C"\n')),
        (FINE, ("block.toml", 'design_temperature = "400 °C"\n')),
        (SILENT, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "release.one-vessel",
        "weldment",
        {**VESSEL, **{file: VESSEL[file] + _TESTED for file in ("block.toml", "weldment.toml")}},
        (FINE, ("weldment.toml", _TESTED)),
        (FINE, ("block.toml", _TESTED)),
        (FINE, ("weldment.toml", 'design_pressure = "17 bar gauge"\ndesign_temperature = "400 °C"\n')),
    ),
    *rows(
        "access.of-its-parts",
        "plan",
        _PARTS,
        (FINE, ("plan.toml", 'valve = { size = "82 mm", engagement = "5 mm" }\n')),
        (FINE, ("seat.toml", 'length = "48 mm"\n')),
        (ASKED, ("valve.toml", 'height = "82 mm"\n')),
        (FINE, ("piston.toml", 'length = "150 mm"\n')),
        (FINE, ("rod.toml", 'diameter = "90 mm"\n')),
        (ASKED, ("rod.toml", 'free_length = "1450 mm"\n')),
        (FINE, ("spindle.toml", 'guide_length = "100 mm"\n')),
        (ASKED, ("spring.toml", 'free_length = "215 mm"\n')),
        (ASKED, ("plan.toml", 'serves = "block"\n')),
        (SILENT, ("plan.toml", _PARTS["plan.toml"].partition("[withdrawals]\n")[2])),
    ),
    *rows(
        "envelope.points-of-parts",
        "envelope",
        ROOM,
        (ASKED, ("envelope.toml", 'from_centre = "1300 mm"\n')),
        (FINE, ("envelope.toml", 'of = "box"\n')),
        (ASKED, ("box.toml", 'stands_out = "420 mm"\n')),
        (ASKED, ("envelope.toml", 'around = "block"\n')),
        (ASKED, ("envelope.toml", 'frame_from_centre = "530 mm"\n')),
    ),
    *rows(
        "envelope.along-by-rods",
        "envelope",
        envelopes.ALONG,
        (SILENT, ("envelope.toml", 'along = "3.86 m"\n')),
        (SILENT, ("envelope.toml", 'of = "back"\n')),
        (FINE, ("envelope.toml", 'rigid_wheelbase = "3.7 m"\n')),
        (SILENT, ("engine.toml", 'connecting_rod_length = "1.9 m"\n')),
        (SILENT, ("engine.toml", 'block = "block"\n')),
        (SILENT, ("block.toml", 'rod_length = "1.45 m"\n')),
        (SILENT, ("axle-third.toml", 'driven_by = ["left"]\n')),
        (ASKED, ("axle-third.toml", 'at = "1.85 m"\n')),
    ),
    *rows(
        "envelope.gap-by-chain",
        "envelope",
        ROOM,
        (SILENT, ("envelope.toml", 'size = "32 mm ±1"\n')),
        (ASKED, ("envelope.toml", 'chain = "chain"\n')),
        (SILENT, ("envelope.toml", 'to = "crosshead"\nchain = "chain"\n')),
        (ASKED, ("chain.toml", 'size = "322 mm"\n')),
        (ASKED, ("crosshead.toml", 'front_from_pin = "290 mm"\n')),
    ),
    *rows(
        "envelope.frame-of-engine",
        "envelope",
        {**ROOM, "engine.toml": envelopes.ENGINE},
        (FINE, ("envelope.toml", 'frame_from_centre = "530 mm"\n')),
        (FINE, ("envelope.toml", 'cylinders = "outside"\n')),
        (SILENT, ("envelope.toml", 'frame_from_centre = "530 mm"\ncylinders = "outside"\n')),
        (FINE, ("engine.toml", 'axis_from_centre = "880 mm"\n')),
        (SILENT, ("engine.toml", 'frame_from_centre = "530 mm"\n')),
        (SILENT, ("engine.toml", 'block = "block"\n')),
        (ASKED, ("envelope.toml", 'around = "block"\n')),
    ),
    *rows(
        "envelope.frame-of-engine",
        "envelope",
        envelopes.AXLED,
        (FINE, ("envelope.toml", 'rigid_wheelbase = "3.7 m"\n')),
        (ASKED, ("axle-third.toml", 'at = "1.85 m"\n')),
        (FINE, ("axle-third.toml", 'engine = "engine"\n')),
        (ASKED, ("engine.toml", 'at = "-2.4 m"\n')),
    ),
    *rows(
        "block.weight-by-plan",
        "block",
        weights.FILES,
        (SILENT, ("block.toml", 'weight_at = "268.5 mm"\n')),
        (SILENT, ("block.toml", 'seat_at = "711 mm"\n')),
        (SILENT, ("liner.toml", 'housed_in = "block"\n')),
        (SILENT, ("liner.toml", 'length = "900 mm"\n')),
        (SILENT, ("liner.toml", 'thickness = "25 mm"\n')),
        (SILENT, ("plan.toml", 'lifts = "block"\n')),
        (SILENT, ("plan.toml", 'of = "liner"\n')),
        (ASKED, ("plan.toml", 'mass = "450 kg"\nx = "350 mm"\n')),
        (ASKED, ("plan.toml", 'of = "weldment"\n')),
    ),
    *rows(
        "fit.sizes-of-its-parts",
        "fit",
        _FIT,
        (SILENT, ("fit.toml", 'hole.of = "block"\n')),
        (SILENT, ("fit.toml", 'hole.dimension = "seat_bores.inlet.diameter"\n')),
        (SILENT, ("fit.toml", 'shaft.of = "seat"\n')),
        (SILENT, ("fit.toml", 'shaft.dimension = "outside_diameter"')),
        (SILENT, ("seat.toml", 'pressed_into = "block"\n')),
        (SILENT, ("seat.toml", 'in_bore = "inlet"\n')),
    ),
    *rows(
        "chain.sizes-by-key",
        "chain",
        _CHAINED,
        (SILENT, ("chain.toml", 'size = "623 mm"\n')),
        (SILENT, ("chain.toml", 'dimension = "at"\n')),
        (SILENT, ("chain.toml", 'of = "face"\ndimension = "at"\n')),
        (ASKED, ("face.toml", 'at = "623 mm"\n')),
    ),
    *rows(
        "chain.asks-what-is-drawn",
        "chain",
        _CHAINED,
        (FINE, ("chain.toml", 'least = "2.4 mm"\n')),
        (FINE, ("chain.toml", 'greatest = "3.6 mm"\n')),
        (SILENT, ("chain.toml", 'least = "2.4 mm"\ngreatest = "3.6 mm"\n')),
        (SILENT, ("chain.toml", 'closes = { of = "face", dimension = "room" }\n')),
        (ASKED, ("face.toml", 'room = "2.4..3.6 mm"\n')),
    ),
    *rows(
        "chain.parts-of-one-block",
        "chain",
        chain_blocks.FILES,
        (FINE, ("chain.toml", 'of = "one"\n')),
        (FINE, ("chain.toml", 'of = "gland"\n')),
        (SILENT, ("chain.toml", 'of = "one"\n'), ("chain.toml", 'of = "gland"\n')),
        (FINE, ("box.toml", '\nin_cover = "cover"')),
    ),
    *rows(
        "face.at-its-pad",
        "face",
        _AT_PAD,
        (SILENT, ("face.toml", 'at = "620 mm"\n')),
        (SILENT, ("face.toml", 'pad = "front"\n')),
        (SILENT, ("face.toml", 'locks = "block"\n')),
        (SILENT, ("block.toml", 'at = "620 mm"\n')),
    ),
    *rows(
        "part.of-one-block",
        "tappet",
        own_block.FILES,
        (SILENT, ("tappet.toml", '\ncarried_in = "box"')),
        (SILENT, ("tappet.toml", '\nworks = "rocker"')),
        (SILENT, ("box.toml", '\nmounted_on = "one"')),
    ),
    *rows(
        "release.pressure-by-place",
        "cover",
        {"cover.toml": f"{concern.COVER}pressure_part = true\n"},
        (SILENT, ("cover.toml", "pressure_part = true\n")),
    ),
    *rows(
        "release.safety-by-kind",
        "cover",
        {"cover.toml": f"{concern.COVER}safety_part = true\n"},
        (SILENT, ("cover.toml", "safety_part = true\n")),
    ),
    *rows(
        "fit.says-once",
        "fit",
        _PRESSED,
        (FINE, ("fit.toml", 'friction = "0.10..0.14"\n')),
        (FINE, ("seat.toml", 'friction = "0.10..0.14"\n')),
        (FINE, ("fit.toml", 'axial_load = "1 kN"\n')),
        (FINE, ("seat.toml", 'sticking_drag = "1 kN"\n')),
        (FINE, ("fit.toml", 'hole_roughness = "3.2 µm"\n')),
        (FINE, ("seat.toml", '\nroughness = "3.2 µm"')),
        (FINE, ("block.toml", 'roughness = "3.2 µm"\n')),
        (SILENT, ("fit.toml", 'shaft = { of = "seat", dimension = "outside_diameter" }\n')),
        (ASKED, ("seat.toml", 'in_bore = "inlet"\n')),
        (ASKED, ("seat.toml", 'pressed_into = "block"\n')),
    ),
    *rows(
        "lifting.mass-complete",
        "plan",
        _LIFTED,
        (FINE, ("plan.toml", 'mass = "1500 kg"\n')),
        (FINE, ("plan.toml", 'mass = "460 kg"\n')),
        (FINE, ("plan.toml", 'of = "liner"\n')),
        (FINE, ("weldment.toml", 'mass = "1500 kg"\n')),
        (
            SILENT,
            ("plan.toml", 'of = "liner"\n'),
            ("liner.toml", 'material = "known-iron"\n'),
            ("weldment.toml", 'mass = "1500 kg"\n'),
        ),
        (ASKED, ("plan.toml", 'lifts = "block"\n')),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
