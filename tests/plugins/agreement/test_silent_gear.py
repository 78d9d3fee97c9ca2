"""The gear of a valve, from cam and spring to the notches, where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, changed
from tests.plugins.agreement import (
    test_gear as gear,
    test_shaft_drives,
    test_valve_gears as valve_gears,
)
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.agreement.test_ends import of_one_end
from tests.plugins.agreement.test_gear import trained
from tests.plugins.events.gear import files as gear_files
from tests.plugins.known_metals import WITH_METALS
from tests.plugins.springs.test_room import nest

#: 200 + 180 − 379.6 mm leave the clearance of 0.4 mm, and no screw sets it.
_CLOSED = {
    **trained(),
    "tappet.toml": changed(trained()["tappet.toml"], *gear.CLOSING),
    "spindle.toml": changed(
        trained()["spindle.toml"], ('heated_length = "400 mm"', 'heated_length = "379.6 mm"')
    ),
}
_GUIDED = {
    **trained(),
    "spring.toml": changed(
        trained()["spring.toml"], ('wire = "8 mm"\n', 'wire = "8 mm"\nguide_pin = "22 mm"\n')
    ),
}
_WIRE = {"spring.toml": 'kind = "compression-spring"\nmaterial = "wire-patented-SH"\nwire_grade = "SH"'}
#: Cams 149.5° apart on their shaft and in their notch.
_GEARED = {
    **gear_files(*valve_gears.placed(inlet="20", exhaust="169.5")),
    "shaft.toml": 'kind = "shaft"\n',
    "speclint.toml": WITH_METALS,
}
_INLET, _EXHAUST = f"{valve_gears.INLET}.toml", f"{valve_gears.EXHAUST}.toml"

ROWS: list[Row] = [
    *rows(
        "shaft.driven-as-its-gear",
        "shaft",
        test_shaft_drives.FILES,
        (SILENT, ("shaft.toml", 'by = "cranks and rods", ')),
        (SILENT, ("shaft.toml", ', radius = "200 mm"')),
        (SILENT, ("cam.toml", 'turns_on = "shaft"\n')),
        (SILENT, ("gear.toml", 'inlet_front = { cam = "cam" }\n')),
        (FINE, ("gear.toml", 'coupling = { clearance = "0.15 mm", ratio = "1", arm = "150 mm" }\n')),
        (FINE, ("gear.toml", ', arm = "150 mm"')),
        (FINE, ("other.toml", 'turns_on = "second"\n')),
    ),
    *rows(
        "cam.bore-of-shaft",
        "cam",
        of_one_end(),
        (SILENT, ("cam.toml", 'turns_on = "shaft"\n')),
        (SILENT, ("cam.toml", 'bore = "60 mm H7"\n')),
        (SILENT, ("shaft.toml", 'diameter = "60 mm"\n')),
    ),
    *rows(
        "cam.one-base-circle",
        "cam",
        gear.two_tracks(),
        (FINE,),
        (SILENT, ("cam.toml", 'lifts = "tappet"\n')),
        (SILENT, ("other.toml", 'lifts = "tappet"\n')),
        (SILENT, ("cam.toml", 'base_radius = "60 mm"\n')),
        (ASKED, ("other.toml", 'base_radius = "60 mm"\n')),
        (SILENT, ("other.toml", 'track = "20"\n'), ("cam.toml", 'track = "65"\n')),
    ),
    *rows(
        "cam.under-its-tappet",
        "cam",
        of_one_end(),
        (SILENT, ("cam.toml", 'lifts = "tappet"\n')),
        (SILENT, ("cam.toml", 'width = "25 mm"\n')),
        (SILENT, ("tappet.toml", 'face_width = "30 mm"\n')),
    ),
    *rows(
        "cambox.valves-of-its-end",
        "box",
        of_one_end(),
        (SILENT, ("box.toml", 'mounted_on = "block"\n')),
        (SILENT, ("box.toml", 'of_end = "front"\n')),
        (SILENT, ("box.toml", "tappets = 1\n")),
    ),
    *rows(
        "spring.nest-agrees",
        "inner",
        nest(),
        (SILENT, ("inner.toml", 'closes = "valve"\n')),
        (SILENT, ("spring.toml", 'closes = "valve"\n')),
        (SILENT, ("inner.toml", 'nested_in = "spring"\n')),
    ),
    *rows(
        "gear.one-box",
        "rocker",
        of_one_end(),
        (SILENT, ("rocker.toml", 'carried_in = "box"\n')),
        (SILENT, ("tappet.toml", 'carried_in = "box"\n')),
        (SILENT, ("tappet.toml", 'works = "rocker"\n')),
    ),
    *rows(
        "valve.cam-gives-lift",
        "valve",
        trained(),
        (FINE, ("valve.toml", '\nlift = "20 mm"')),
        (FINE, ("valve.toml", 'lift_stop = "21 mm"\n')),
        (FINE, ("valve.toml", 'overtravel = "0.6 mm"\n')),
        (SILENT, ("valve.toml", '\nlift = "20 mm"'), ("valve.toml", 'lift_stop = "21 mm"\n')),
        (FINE, ("tappet.toml", 'clearance = "0.4 mm"\n')),  # the stop takes what comes without any
        (SILENT, ("tappet.toml", 'works = "spindle"\n')),
        (SILENT, ("cam.toml", 'lifts = "tappet"\n')),
    ),
    *rows(
        "tappet.lengths-close",
        "tappet",
        _CLOSED,
        (SILENT, ("tappet.toml", 'clearance = "0.4 mm"\n')),
        (SILENT, ("tappet.toml", 'works = "spindle"\n')),
        (SILENT, ("spindle.toml", 'heated_length = "379.6 mm"\n')),
        (SILENT, ("box.toml", 'datum_length = "180 mm"\n')),
        (SILENT, ("box.toml", 'block_length = "200 mm"\n')),
    ),
    *rows(
        "spring.works-the-lift",
        "spring",
        trained(),
        (SILENT, ("spring.toml", 'open_length = "96 mm"\n')),
        (SILENT, ("spring.toml", 'shut_length = "116 mm"\n')),
        (SILENT, ("spring.toml", 'closes = "valve"\n')),
        (SILENT, ("valve.toml", '\nlift = "20 mm"')),
    ),
    *rows(
        "spring.in-its-housing",
        "spring",
        _GUIDED,
        (SILENT, ("spring.toml", 'guide_pin = "22 mm"\n')),
        (SILENT, ("spring.toml", 'closes = "valve"\n')),
        (SILENT, ("spindle.toml", 'moves = "valve"\n')),
        (SILENT, ("spindle.toml", '\ndiameter = "22 mm"')),
    ),
    *rows(
        "spring.grade-of-its-wire",
        "spring",
        _WIRE,
        (SILENT, ("spring.toml", 'material = "wire-patented-SH"\n')),
        (SILENT, ("spring.toml", 'wire_grade = "SH"')),
    ),
    *rows(
        "gear.cams-of-its-valves",
        "gear",
        _GEARED,
        (FINE, ("valve-inlet-front.toml", 'serves = "inlet"\n')),
        (ASKED, ("gear.toml", 'in_block = "block"\n')),
        (ASKED, ("cam-inlet-front-65.toml", 'lifts = "tappet-inlet-front"\n')),
    ),
    *rows(
        "gear.cylinders-of-engine",
        "gear",
        _GEARED,
        (SILENT, ("gear.toml", "cylinders = 3\n")),
        (SILENT, ("engine.toml", 'block = "block"\n')),
        (ASKED, ("gear.toml", 'in_block = "block"\n')),
    ),
    *rows(
        "gear.feet-by-place",
        "gear",
        _GEARED,
        (SILENT, (_INLET, 'phase = "20 °"\n')),
        (SILENT, (_INLET, 'turns_on = "shaft"\n')),
        (SILENT, (_EXHAUST, 'phase = "169.5 °"\n')),
        (SILENT, (_EXHAUST, 'turns_on = "shaft"\n')),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
