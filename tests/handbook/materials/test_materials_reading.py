"""A repository's own materials: read in the shipped format, refused with place and remedy."""

from __future__ import annotations

import pytest

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.materials import Material, MaterialsError, material, read_materials
from speclint.handbook.materials.library import _index, _reader, _shipped_group

HEAD = """
[sources]
CERT = { work = "founder's certificate 1207", edition = "2026" }
["liner-iron.2"]
title = "liner iron of the second melt"
family = "grey-iron"
standard = "works specification 12"
"""
DENSITY = '"liner-iron.2".density'


def read(body: str, head: str = HEAD) -> Material:
    """The one material of a file."""
    (found,) = read_materials(head + body, "materials.toml")
    return found


def refusals(body: str, head: str = HEAD) -> str:
    """The complaints about a file, one a line."""
    with pytest.raises(MaterialsError) as caught:
        read_materials(head + body, "materials.toml")
    assert caught.value.problems
    assert str(caught.value) == "\n".join(caught.value.problems)
    return str(caught.value)


class TestOwnMaterials:
    def test_reads_figures_into_si_with_their_source(self) -> None:
        iron = read(
            'density = { value = 7150, unit = "kg/m³", tolerance = 50, source = "CERT", place = "line 3" }'
        )
        reading = iron.density()
        assert (reading.low, reading.nominal, reading.high) == (7100.0, 7150.0, 7200.0)
        assert str(reading.source) == "founder's certificate 1207, 2026, line 3"
        assert iron.name == "liner-iron.2"

    def test_carries_a_note_to_the_reading(self) -> None:
        iron = read(
            'density = { value = 7, unit = "kg/m3", bound = "exact", source = "CERT", note = "one bar" }'
        )
        assert iron.density().source.place == "one bar"

    def test_takes_the_rest_from_a_built_in_material(self) -> None:
        """What the entry states itself stands; what it does not is that of the material it is like."""
        body = """
like = "grey-iron-250"
hardness = { value = 215, low = 205, high = 225, unit = "HB", source = "CERT" }
"""
        iron = read(body)
        assert iron.hardness().high == 225.0
        assert iron.modulus(293.15).nominal == material("grey-iron-250").modulus(293.15).nominal

    def test_takes_the_first_named_likeness_foremost(self) -> None:
        both = read('like = ["grey-iron-300", "plate-P265GH"]')
        assert both.density() == read('like = "grey-iron-300"').density()
        assert both.proof_stress(293.15) == read('like = "plate-P265GH"').proof_stress(293.15)

    def test_takes_shared_groups_of_its_own_file(self) -> None:
        body = """
like = "ours"
[common.ours]
density = { value = 7.1e3, unit = "kg/m3", bound = "exact", source = "CERT" }
"""
        assert read(body).density().nominal == 7100.0

    def test_reads_several_tables_of_a_property_in_their_order(self) -> None:
        body = """
[["liner-iron.2".expansion]]
degC = [20, 400]
value = [10.5, 13.0]
unit = "1e-6/K"
tolerance = 0.2
source = "CERT"
[["liner-iron.2".expansion]]
degF = [-148, 68]
value = 5.0
unit = "1e-6/°F"
tolerance_percent = 4
source = { work = "common handbook", place = "p. 9", memory = true }
"""
        iron = read(body)
        assert iron.expansion(293.15).nominal == pytest.approx(10.5e-6)
        cold = iron.expansion(273.15)
        assert cold.nominal == pytest.approx(9.0e-6)
        assert cold.high == pytest.approx(9.36e-6)
        assert cold.source.memory
        assert cold.source.place == "p. 9"
        with pytest.raises(OutOfRange, match="-100 to 400 °C"):
            iron.expansion(273.15 - 101)

    def test_reads_bands_of_size_from_both_sides(self) -> None:
        body = """
[ "liner-iron.2".tensile-strength ]
degC = [20, 300]
over_mm = 5
rows = [[10, 250, 240], [20, 225]]
unit = "MPa"
bound = "minimum"
source = "CERT"
"""
        iron = read(body)
        assert iron.tensile_strength(293.15, 0.005).nominal == pytest.approx(250e6)
        assert iron.tensile_strength(433.15, 0.010).nominal == pytest.approx(245e6)  # half way to 300 °C
        assert iron.tensile_strength(433.15, 0.0100001).nominal == pytest.approx(225e6)
        for beyond in (0.0049, 0.0201):
            with pytest.raises(OutOfRange, match="5 to 20 mm"):
                iron.tensile_strength(293.15, beyond)

    def test_a_specified_least_may_have_a_most(self) -> None:
        body = """
[ "liner-iron.2".tensile-strength ]
degC = [20, 50]
value = 410
high = 530
bound = "minimum"
unit = "MPa"
source = "common practice"
"""
        reading = read(body).tensile_strength(300.0)
        assert (reading.low, reading.nominal, reading.high) == (410e6, 410e6, 530e6)
        assert reading.source.common_practice

    def test_names_a_rule_of_allowables(self) -> None:
        iron = read('allowable = "grey-iron"\nlike = "grey-iron-250"')
        assert iron.allowable_tension(293.15, 0.03).nominal == pytest.approx(19.5e6)
        with pytest.raises(NotKnown, match="no rule"):
            read('like = "grey-iron-250"').allowable_tension(293.15, 0.03)


class TestRefusals:
    @pytest.mark.parametrize(
        ("table", "said"),
        [
            ('value = 7200, unit = "kg/m3", tolerance = 50', "no source is stated; write source ="),
            ('value = 7200, unit = "kg/m3", tolerance = 50, source = ""', "no source is stated"),
            (
                'value = 7200, unit = "kg/m3", tolerance = 50, source = "CERTT"',
                'not in [sources]; write "CERT"',
            ),
            ('value = 7200, unit = "kg/m3", tolerance = 50, source = 3', "source 3 is not in [sources]"),
            ('value = 7200, unit = "kg/m3", tolerance = 50, source = { edition = "2" }', "without its work"),
            (
                'value = 7200, unit = "kg/m3", tolerance = 5, source = { work = "a", page = "2" }',
                '"page" is no part',
            ),
            (
                'value = 7200, unit = "kg/m3", tolerance = 5, source = { work = "a", memory = 1 }',
                "neither true",
            ),
            ('value = 7200, unit = "kg/m3", tolerance = 50, source = "CERT", place = 3', "place is text"),
            ('value = 7200, tolerance = 50, source = "CERT"', 'no unit is stated; write unit = "kg/m³"'),
            ('value = 7200, unit = "g", tolerance = 50, source = "CERT"', "unit 'g' is none of density"),
            ('unit = "kg/m3", tolerance = 50, source = "CERT"', "stated once; write value, or rows"),
            (
                'value = 1, rows = [[1, 2]], unit = "kg/m3", tolerance = 5, source = "CERT"',
                "figures are stated once",
            ),
            ('value = 7200, unit = "kg/m3", source = "CERT"', "no spread of the figures is stated"),
            (
                'value = 7200, unit = "kg/m3", tolerance = 5, bound = "exact", source = "CERT"',
                "spread of the figures",
            ),
            ('value = "7200", unit = "kg/m3", tolerance = 50, source = "CERT"', "value holds '7200'"),
            ('value = nan, unit = "kg/m3", tolerance = 50, source = "CERT"', "not a finite number"),
            ('value = true, unit = "kg/m3", tolerance = 50, source = "CERT"', "value holds True"),
            (
                'value = [1, 2], unit = "kg/m3", tolerance = 50, source = "CERT"',
                "2 figures for 0 temperatures",
            ),
            ('value = 7200, unit = "kg/m3", tolerance = -5, source = "CERT"', "do not rise in this order"),
            ('value = 7200, unit = "kg/m3", tolerance = [1, 2], source = "CERT"', "tolerance is one number"),
            ('value = 7200, unit = "kg/m3", low = 7100, source = "CERT"', "low stands alone"),
            ('value = 7, unit = "kg/m3", low = 8, high = 9, source = "CERT"', "do not rise in this order"),
            (
                'value = 7, unit = "kg/m3", low = [6, 7], high = 9, source = "CERT"',
                "low has 2 figures, value 1",
            ),
            ('value = 7200, unit = "kg/m3", bound = "mininum", source = "CERT"', 'write "minimum"'),
            ('value = 7, high = 8, unit = "kg/m3", bound = "exact", source = "CERT"', "high beside bound"),
            (
                'value = 7200, degC = [1, 2], unit = "kg/m3", bound = "exact", source = "CERT"',
                "not stated by temperature",
            ),
            (
                'over_mm = 0, rows = [[9, 7]], unit = "kg/m3", bound = "exact", source = "CERT"',
                "no bands of size",
            ),
            ('value = 7200, unit = "kg/m3", tolerence = 5, source = "CERT"', 'write "tolerance"'),
            ('value = 7200, unit = "kg/m3", tolerance = 50, source = "CERT", note = 3', "note is text"),
        ],
    )
    def test_of_a_figure(self, table: str, said: str) -> None:
        told = refusals(f"density = {{ {table} }}")
        assert said in told
        assert told.startswith(f"materials.toml:8 {DENSITY}")

    @pytest.mark.parametrize(
        ("table", "said"),
        [
            ("value = 250", "range of temperature is stated once"),
            ("value = 250, degC = [20, 300], degF = [20, 300]", "range of temperature is stated once"),
            ("value = 250, degC = [20]", "degC is no range"),
            ("value = 250, degC = 20", "degC is no range"),
            ("value = [250, 240], degC = [300, 20]", "degC must rise"),
            ("value = [250, 240, 230], degC = [20, 300]", "3 figures for 2 temperatures"),
            ("rows = [[10, 250]], degC = [20, 300]", "write over_mm = 0"),
            ("over_mm = -1, rows = [[10, 250]], degC = [20, 300]", "over_mm is negative"),
            ("over_mm = 10, rows = [[10, 250]], degC = [20, 300]", "must rise"),
            ("over_mm = 0, rows = [[10, 250], [5, 240]], degC = [20, 300]", "must rise"),
            ("over_mm = 0, rows = [[10]], degC = [20, 300]", "a row of rows has no figure"),
            ("over_mm = 0, rows = [10, 250], degC = [20, 300]", "rows is a list of rows"),
            ("over_mm = 0, rows = [], degC = [20, 300]", "rows is a list of rows"),
            (
                "over_mm = 0, range_rows = [[10, 250, 300]], degC = [20, 300]",
                "range_rows state least and most",
            ),
        ],
    )
    def test_of_a_curve(self, table: str, said: str) -> None:
        body = f'tensile-strength = {{ {table}, unit = "MPa", bound = "minimum", source = "CERT" }}'
        assert said in refusals(body)

    def test_of_a_row_of_a_range(self) -> None:
        body = 'wire-strength = { over_mm = 1, range_rows = [[2, 1000]], unit = "MPa", source = "CERT" }'
        assert "[up to mm, least, most]" in refusals(body)

    @pytest.mark.parametrize(
        ("body", "said"),
        [
            (
                "hardnes = 3",
                'materials.toml:8 "liner-iron.2".hardnes: "hardnes" is no property; write "hardness"',
            ),
            ("hardness = 200", "Brinell hardness is a table"),
            ("temperature-limit = 300", 'write ["liner-iron.2".temperature-limit.pressure-part]'),
            ("temperature-limit = { boiler = 3 }", '"boiler" is not known here'),
            ("composition = 3", "composition is a table"),
            ('composition = { unit = "%", source = "CERT", C = 3.2 }', "write C = [least, most]"),
            ('composition = { unit = "%", source = "CERT", C = [3.2] }', "write C = [least, most]"),
            ('composition = { unit = "%", source = "CERT", C = [3.0, "3.2"] }', "write C = [least, most]"),
            ('composition = { unit = "%", source = "CERT", C = [3.0, true] }', "write C = [least, most]"),
            ('composition = { unit = "%", C = [3.0, 3.2] }', "no source is stated"),
            ('like = "grey-iron-25O"', "nearest are grey-iron-250"),
            ("like = 3", "like is a name or a list of names"),
            ('allowable = "grey"', 'write "grey-iron"'),
        ],
    )
    def test_of_an_entry(self, body: str, said: str) -> None:
        assert said in refusals(body)

    @pytest.mark.parametrize(
        ("text", "said"),
        [
            ("[iron]\n", "iron.title: title is not stated; write title ="),
            ('[iron]\ntitle = 3\nfamily = "grey-iron"\nstandard = "x"', ":2 iron.title: title is not text"),
            ('[iron]\ntitle = "a"\nfamily = "grey-irn"\nstandard = "x"', 'write "grey-iron"'),
            ("iron = 3", "a material is a table; write [iron]"),
            ("sources = 3", "sources is a table"),
            ("common = 3", "common is a table"),
            ("[common]\nours = 3", "a group is a table"),
            ("[sources]\nA = 3", "sources.A: a source is a table"),
            ('[common.a]\nlike = "b"\n[common.b]\nlike = "a"', "is like itself"),
            ("[common.a]\nhardnes = 3", '"hardnes" is no property'),
            ("[iron\n", "this is not TOML"),
        ],
    )
    def test_of_a_file(self, text: str, said: str) -> None:
        assert said in refusals(text, head="")

    def test_report_every_problem_at_once_in_the_order_of_the_file(self) -> None:
        body = """
density = { value = 7200 }
hardnes = 3
modulus = { value = 100, unit = "GPa", degC = [20, 300], tolerance = 5 }
"""
        with pytest.raises(MaterialsError) as caught:
            read_materials(HEAD + body, "materials.toml")
        lines = [complaint.where.line for complaint in caught.value.complaints]
        assert lines == [9, 9, 10, 11]


class TestShippedFiles:
    def test_index_names_every_entry_and_no_other(self) -> None:
        listed: dict[str, set[str]] = {}
        for name, file in _index().items():
            listed.setdefault(file, set()).add(name)
        for file, named in listed.items():
            assert named == set(_reader(file).names), file

    def test_every_shipped_file_is_listed(self) -> None:
        from importlib.resources import files

        folder = files("speclint.handbook") / "data" / "materials"
        shipped = {one.name for one in folder.iterdir() if one.name.endswith(".toml")}
        assert shipped == {*_index().values(), "index.toml", "common.toml"}

    def test_no_source_is_listed_and_left_unused(self) -> None:
        from importlib.resources import files

        for file in {*_index().values(), "common.toml"}:
            text = (files("speclint.handbook") / "data" / "materials" / file).read_text(encoding="utf-8")
            for key in _reader(file).raw.get("sources", {}):
                assert f'source = "{key}"' in text, f"{file}: {key}"

    def test_every_shared_group_is_sound(self) -> None:
        groups = _reader("common.toml").groups
        assert groups
        for group in groups:
            assert _shipped_group(group)
