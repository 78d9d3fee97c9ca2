"""The library of materials: every entry, every property, every range from both sides."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.materials import Material, material, names
from speclint.handbook.materials.properties import FAMILIES, LOADINGS, PROPERTIES, USES
from speclint.handbook.materials.tables import Table
from speclint.handbook.tables.reading import Reading

ROOM = 293.15
ASKED_FOR = [
    *("grey-iron-200", "grey-iron-250", "grey-iron-300", "phosphoric-cylinder-iron"),
    *("plate-P265GH", "plate-P355GH", "plate-P355NH", "structural-S275", "structural-S355"),
    *("cast-steel-GP240GH", "forging-C45", "forging-42CrMo4", "bolting-5.6", "bolting-8.8", "bolting-10.9"),
    *("bolting-25CrMo4", "bolting-42CrMo4", "bolting-B7", "bolting-period-carbon"),
    *("wire-patented-SH", "wire-patented-DH", "wire-oil-tempered-VDSiCr", "wire-oil-tempered-VDCrV"),
    *("wire-oil-tempered-FDSiCr", "wire-stainless-1.4310"),
    *("stainless-1.4021", "stainless-1.4057", "stainless-1.4028", "gunmetal-CC491K"),
]


def ask(one: Material, key: str, at: float | None, size: float | None) -> Reading:
    """Put the question of a property through the public method that answers it."""
    head, _, part = key.partition(" ")
    kind = PROPERTIES[head]
    method: Callable[..., Reading] = getattr(one, METHODS.get(head, head.replace("-", "_")))
    if kind.split:
        return method(part, size) if kind.size else method(part)
    if kind.by_temperature and kind.size:
        return method(at, size)
    if kind.by_temperature:
        return method(at)
    return method(size) if kind.size else method()


METHODS = {"proof-stress-1-percent": "one_percent_proof_stress"}


def every_table() -> Iterator[tuple[str, str, int]]:
    """Material, key and number of every table of the library."""
    for name in names():
        for key, tables in material(name).tables.items():
            for number in range(len(tables)):
                yield name, key, number


EVERY = list(every_table())


def of_every_table(test: Callable[[Any, str, str, int], None]) -> Callable[[Any, str], None]:
    """One test for each material, of all its tables: as many tests as tables would take longer than the tables do."""

    def whole(self: Any, name: str) -> None:
        for one, key, number in EVERY:
            if one == name:
                test(self, name, key, number)

    whole.__name__, whole.__doc__ = test.__name__, test.__doc__
    return whole


def edges_of(table: Table) -> list[tuple[float | None, float | None]]:
    """Each corner of a table: temperature and size."""
    temperatures = [table.temperatures[0], table.temperatures[-1]] if table.temperatures else [None]
    sizes = [table.edges[0], table.edges[-1]] if table.edges else [None]
    return [(at, size) for at in temperatures for size in sizes]


class TestLibrary:
    @pytest.mark.parametrize("name", ASKED_FOR)
    def test_holds_what_the_trade_asks_for(self, name: str) -> None:
        assert material(name).name == name

    def test_holds_forty_materials_or_more(self) -> None:
        assert len(names()) >= 40
        assert list(names()) == sorted(set(names()))

    @pytest.mark.parametrize("name", names())
    def test_heads_every_entry(self, name: str) -> None:
        one = material(name)
        assert one.title
        assert one.standard
        assert one.family in FAMILIES
        assert one.tables

    def test_offers_the_nearest_names(self) -> None:
        with pytest.raises(NotKnown, match="grey-iron-250"):
            material("gray-iron-250")

    def test_reads_a_material_once(self) -> None:
        assert material("grey-iron-250") is material("grey-iron-250")

    @pytest.mark.parametrize("name", names())
    def test_states_what_every_engineer_asks_first(self, name: str) -> None:
        one = material(name)
        for key in ("modulus", "expansion", "density"):
            assert one.holds(key), key
        assert any(one.holds(f"temperature-limit {use}") for use in USES)


class TestEveryProperty:
    @pytest.mark.parametrize("name", names())
    @of_every_table
    def test_answers_at_its_corners_with_a_source(self, name: str, key: str, number: int) -> None:
        one = material(name)
        table = one.tables[key][number]
        assert table.source.work
        for at, size in edges_of(table):
            reading = ask(one, key, at, size)
            assert reading.low <= reading.nominal <= reading.high
            assert reading.unit == PROPERTIES[key.partition(" ")[0]].unit
            assert reading.source.work
            assert name in reading.what

    @pytest.mark.parametrize("name", names())
    @of_every_table
    def test_is_not_extended_beyond_its_temperatures(self, name: str, key: str, number: int) -> None:
        one = material(name)
        tables = [table for table in one.tables[key] if table.temperatures]
        if not tables:
            assert number == 0, "several tables without temperature"
            return
        coldest = min(table.temperatures[0] for table in tables)
        hottest = max(table.temperatures[-1] for table in tables)
        ask(one, key, coldest, None)
        ask(one, key, hottest, None)
        for beyond in (coldest - 0.01, hottest + 0.01):
            with pytest.raises(OutOfRange, match="°C"):
                ask(one, key, beyond, None)

    @pytest.mark.parametrize("name", names())
    @of_every_table
    def test_is_not_extended_beyond_its_sizes(self, name: str, key: str, number: int) -> None:
        one = material(name)
        table = one.tables[key][number]
        if not table.edges:
            return
        at = table.temperatures[-1] if table.temperatures else None
        ask(one, key, at, table.edges[0])
        ask(one, key, at, table.edges[-1])
        refused = [table.edges[-1] + 1e-5] + ([table.edges[0] - 1e-5] if table.edges[0] > 0 else [])
        for beyond in refused:
            with pytest.raises(OutOfRange, match="mm"):
                ask(one, key, at, beyond)

    @pytest.mark.parametrize("name", names())
    def test_has_no_gap_between_the_tables_of_a_property(self, name: str) -> None:
        for key, tables in material(name).tables.items():
            ranges = sorted((t.temperatures[0], t.temperatures[-1]) for t in tables if t.temperatures)
            for (_, end), (start, _) in pairwise(ranges):
                assert start <= end + 1.2, key  # 70 °F meets 20 °C within 1.2 K


class TestPhysics:
    """What no metal of an engine escapes, whatever the table says."""

    @pytest.mark.parametrize("name", names())
    def test_proof_stress_falls_with_temperature(self, name: str) -> None:
        for key in ("proof-stress", "proof-stress-1-percent", "tensile-strength"):
            for table in material(name).tables.get(key, ()):
                for row in table.rows:
                    lows = [figure.low for figure in row]
                    assert lows == sorted(lows, reverse=True), key

    @pytest.mark.parametrize("name", names())
    def test_strength_falls_with_size(self, name: str) -> None:
        for key in ("proof-stress", "tensile-strength", "wire-strength"):
            if material(name).family == "bolting-steel":
                continue  # ISO 898-1 asks more of 8.8 above M16
            for table in material(name).tables.get(key, ()):
                lows = [row[0].low for row in table.rows]
                assert lows == sorted(lows, reverse=True), key

    @pytest.mark.parametrize("name", names())
    def test_modulus_falls_with_temperature(self, name: str) -> None:
        for key in ("modulus", "shear-modulus"):
            for table in material(name).tables.get(key, ()):
                nominal = [figure.nominal for figure in table.rows[0]]
                assert nominal == sorted(nominal, reverse=True), key

    @pytest.mark.parametrize("name", names())
    def test_mean_expansion_rises_with_temperature(self, name: str) -> None:
        for table in material(name).tables["expansion"]:
            nominal = [figure.nominal for figure in table.rows[0]]
            assert nominal == sorted(nominal)

    @pytest.mark.parametrize("name", names())
    def test_expansion_has_the_tolerance_of_the_trade_or_more(self, name: str) -> None:
        for table in material(name).tables["expansion"]:
            for figure in table.rows[0]:
                assert figure.high - figure.nominal >= 0.3e-6 * 0.99
                assert figure.nominal - figure.low >= 0.3e-6 * 0.99

    @pytest.mark.parametrize("name", names())
    def test_proof_stress_stays_below_tensile_strength(self, name: str) -> None:
        one = material(name)
        if not one.holds("proof-stress"):
            return
        edges = one.tables["tensile-strength"][0].edges or (0.0, 0.020)
        for size in [(a + b) / 2 for a, b in pairwise(edges)]:
            if one.tables["proof-stress"][0].holds_size(size):
                assert one.proof_stress(ROOM, size).low < one.tensile_strength(ROOM, size).low

    @pytest.mark.parametrize("name", names())
    def test_composition_is_a_share_of_the_whole(self, name: str) -> None:
        one = material(name)
        low = sum(one.composition(element).low for element in one.elements())
        assert low <= 1.0
        for element in one.elements():
            assert 0.0 <= one.composition(element).low < one.composition(element).high <= 1.0


class TestTranscription:
    """Tables written by hand: what one slip of a digit would break."""

    @pytest.mark.parametrize("name", names())
    def test_hot_proof_stress_runs_smoothly(self, name: str) -> None:
        """No figure lies 6 % off the line between its neighbours: a slip of a tenth shows."""
        for key in ("proof-stress", "proof-stress-1-percent"):
            for table in material(name).tables.get(key, ()):
                # a room figure, or one at 50 °C, may stand flat; a row of one figure does so throughout
                points = [t for t in table.temperatures if t > ROOM + 35]
                for row in [row for row in table.rows if len(row) > 1]:
                    lows = [row[table.temperatures.index(t)].low for t in points]
                    for k in range(1, len(points) - 1):
                        share = (points[k] - points[k - 1]) / (points[k + 1] - points[k - 1])
                        line = lows[k - 1] + share * (lows[k + 1] - lows[k - 1])
                        assert lows[k] == pytest.approx(line, rel=0.06), points[k] - 273.15

    @pytest.mark.parametrize("name", [one for one in names() if material(one).holds("wire-strength")])
    def test_the_most_of_a_wire_follows_its_least(self, name: str) -> None:
        (table,) = material(name).tables["wire-strength"]
        highs = [row[0].high for row in table.rows]
        assert highs == sorted(highs, reverse=True)
        for (figure,) in table.rows:
            assert 1.04 <= figure.high / figure.low <= 1.25

    @pytest.mark.parametrize(
        "name", [one for one in names() if material(one).holds("fatigue-strength torsion")]
    )
    def test_fatigue_strength_is_its_share_of_the_tensile(self, name: str) -> None:
        """DIN 743-3: 0.5, 0.4 and 0.3 of the tensile strength in bending, tension and torsion."""
        one = material(name)
        for edge in one.tables["tensile-strength"][0].edges[1:]:
            tensile = one.tensile_strength(ROOM, edge).low
            for loading, share in zip(LOADINGS, (0.5, 0.4, 0.3), strict=True):
                assert one.fatigue_strength(loading, edge).nominal == pytest.approx(share * tensile, rel=0.01)

    @pytest.mark.parametrize(
        ("name", "like", "hot"),
        [
            ("forging-C45", "bolting-C35E", 573.15),
            ("forging-C45-normalized", "bolting-C35E", 573.15),
            ("forging-42CrMo4", "bolting-42CrMo4", 573.15),
            ("forging-34CrNiMo6", "bolting-42CrMo4", 673.15),
            ("stainless-1.4028", "stainless-1.4021", 673.15),
        ],
    )
    def test_forgings_keep_the_share_of_the_steel_they_follow(self, name: str, like: str, hot: float) -> None:
        kept = material(like).proof_stress(hot, 0.020).low / material(like).proof_stress(ROOM, 0.020).low
        one = material(name)
        for edge in one.tables["proof-stress"][0].edges[1:]:
            share = one.proof_stress(hot, edge).low / one.proof_stress(ROOM, edge).low
            assert share == pytest.approx(kept, rel=0.01)


class TestGreyIron:
    def test_strength_is_that_of_the_wall(self) -> None:
        """EN 1561: EN-GJL-250 in a wall over 20 up to 40 mm is expected to have 195 MPa."""
        iron = material("grey-iron-250")
        assert iron.tensile_strength(ROOM, 0.020).low == pytest.approx(225e6)
        assert iron.tensile_strength(ROOM, 0.0201).low == pytest.approx(195e6)
        assert iron.tensile_strength(ROOM, 0.040).low == pytest.approx(195e6)
        assert iron.tensile_strength(ROOM, 0.0401).low == pytest.approx(170e6)

    def test_without_a_wall_the_least_stands(self) -> None:
        reading = material("grey-iron-250").tensile_strength(ROOM)
        assert (reading.low, reading.nominal) == pytest.approx((155e6, 155e6))
        assert reading.high == pytest.approx(250e6)

    @pytest.mark.parametrize("name", [one for one in names() if material(one).family == "grey-iron"])
    def test_has_no_yield(self, name: str) -> None:
        with pytest.raises(NotKnown, match="proof stress"):
            material(name).proof_stress(ROOM)

    def test_expansion_below_20_degrees_is_its_own_figure(self) -> None:
        iron = material("grey-iron-250")
        assert iron.expansion(273.15 - 50).nominal == pytest.approx(10.0e-6)
        assert iron.expansion(273.15 + 200).nominal == pytest.approx(11.7e-6)
        assert iron.expansion(273.15 + 400).nominal == pytest.approx(13.0e-6)
        assert iron.expansion(273.15 + 300).nominal == pytest.approx(12.35e-6)  # half way

    def test_pressure_limit_rises_only_when_stress_relieved(self) -> None:
        for name in ("grey-iron-200", "grey-iron-250", "grey-iron-300", "phosphoric-cylinder-iron"):
            assert material(name).temperature_limit("pressure-part").nominal == pytest.approx(503.15)
        relieved = material("grey-iron-300-stress-relieved")
        assert relieved.temperature_limit("pressure-part").nominal == pytest.approx(618.15)
        assert relieved.temperature_limit("running-part").nominal == pytest.approx(673.15)


class TestAllowable:
    @pytest.mark.parametrize("name", [n for n in names() if material(n).allowable])
    def test_is_less_than_any_strength(self, name: str) -> None:
        one = material(name)
        allowable = one.allowable_tension(ROOM)
        assert 0 < allowable.low <= allowable.nominal < one.tensile_strength(ROOM).low
        if one.holds("proof-stress"):
            assert allowable.nominal < one.proof_stress(ROOM).low

    def test_of_plate_is_governed_by_proof_stress_when_hot(self) -> None:
        """P265GH over 16 up to 40 mm: 166/1.5 = 110.67 MPa at 300 °C, 410/2.4 = 170.83 at 20 °C (255/1.5 = 170)."""
        plate = material("plate-P265GH")
        assert plate.allowable_tension(573.15, 0.030).nominal == pytest.approx(110.667e6, rel=1e-4)
        assert plate.allowable_tension(ROOM, 0.030).nominal == pytest.approx(170e6)

    def test_of_grey_iron_is_a_tenth_at_the_wall(self) -> None:
        assert material("grey-iron-250").allowable_tension(ROOM, 0.030).nominal == pytest.approx(19.5e6)

    def test_of_a_stud_steel_is_the_figure_of_its_code(self) -> None:
        """SA-193 B7: 25 ksi = 172.4 MPa to 700 °F."""
        assert material("bolting-B7").allowable_tension(600.0, 0.024).nominal == pytest.approx(
            172.37e6, rel=1e-4
        )

    def test_stops_where_creep_begins(self) -> None:
        plate = material("plate-P265GH")
        limit = plate.time_dependent_from().nominal
        plate.allowable_tension(limit, 0.020)
        with pytest.raises(OutOfRange, match="creep"):
            plate.allowable_tension(limit + 0.01, 0.020)

    def test_is_not_known_where_no_code_speaks(self) -> None:
        with pytest.raises(NotKnown, match="no rule for pressure parts"):
            material("forging-C45").allowable_tension(ROOM)

    @given(at=st.floats(300.0, 650.0), wall=st.floats(0.001, 0.25))
    def test_never_rises_with_temperature(self, at: float, wall: float) -> None:
        plate = material("plate-P355GH")
        cooler = plate.allowable_tension(at - 5, wall).nominal
        assert plate.allowable_tension(at, wall).nominal <= cooler


class TestReadings:
    def test_say_what_was_read(self) -> None:
        reading = material("plate-P265GH").proof_stress(573.15, 0.020)
        assert reading.what == ("yield or 0.2 % proof stress of plate-P265GH at 300 °C, thickness 20 mm")
        assert "EN 10028-2" in str(reading.source)

    def test_out_of_range_names_the_range(self) -> None:
        with pytest.raises(OutOfRange, match=r"-50 to 150 °C"):
            material("bolting-8.8").proof_stress(453.15)
        with pytest.raises(OutOfRange, match=r"0.28 to 20 mm of wire diameter"):
            material("wire-patented-SH").wire_strength(0.025)

    def test_shear_modulus_follows_from_modulus_and_poisson(self) -> None:
        """E = 29.5e6 psi = 203.4 GPa, ν = 0.3: G = 203.4/2.6 = 78.2 GPa."""
        reading = material("plate-P265GH").shear_modulus(ROOM)
        assert reading.nominal == pytest.approx(78.2e9, rel=1e-3)
        assert reading.low < reading.nominal < reading.high

    def test_a_use_or_a_loading_must_be_one_that_exists(self) -> None:
        with pytest.raises(ValueError, match="pressure-part"):
            material("plate-P265GH").temperature_limit("boiler")
        with pytest.raises(ValueError, match="bending"):
            material("grey-iron-250").fatigue_strength("shock")
        assert LOADINGS[0] == "bending"

    def test_a_property_not_held_is_not_known(self) -> None:
        with pytest.raises(NotKnown, match="plate-P265GH"):
            material("plate-P265GH").wire_strength(0.004)

    @given(at=st.floats(253.15, 653.15))
    def test_interpolation_stays_between_its_neighbours(self, at: float) -> None:
        plate = material("plate-P265GH")
        table = plate.tables["proof-stress"][0]
        below = [f.nominal for t, f in zip(table.temperatures, table.rows[0], strict=True) if t <= at]
        above = [f.nominal for t, f in zip(table.temperatures, table.rows[0], strict=True) if t >= at]
        assert min(above[0], below[-1]) <= plate.proof_stress(at, 0.010).nominal <= max(above[0], below[-1])
