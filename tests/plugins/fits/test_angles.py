"""How valves and what stands on their axes are inclined; ISO 2768-1, class m: 20′ for a leg of 50 to 120 mm."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.facts import sense_of_weight, share_across
from speclint.specs import axis_in_words
from speclint.testing import DesignFolder, expect_not_applicable, expect_not_assessed, on_sheet
from speclint_fits.formulae.tables import angle_between, general_angle
from tests.plugins.fits.bench import METALS, WITH_METALS
from tests.plugins.valves.gear import BLOCK, SEAT, VALVE, duty

RULE = "geometry.angle-agrees"
_LID = 'kind = "chamber-cover"\nid = "lid"\ncloses = "block"\nover = "valve"\n'


def _write(folder: DesignFolder, opens: str, bore: str, lid: str, extra: str = "") -> DesignFolder:
    block = BLOCK.replace(
        "[seat_bores.upper]\n", "[seat_bores.upper]\n" + (f'inclined = "{bore}"\n' if bore else "")
    )
    valve = VALVE.replace('opens = "upwards"\n', f'opens = "{opens}"\n{extra}')
    cover = _LID + (f'inclined = "{lid}"\n' if lid else "")
    files = {
        "metals.toml": METALS,
        "block.toml": block,
        "valve.toml": valve,
        "seat.toml": SEAT,
        "lid.toml": cover,
        "duty.toml": duty(),
    }
    return folder.write(files, settings=WITH_METALS)


OUT = "35 ° from upright, outwards"


@pytest.mark.parametrize(
    ("lid", "outcome"),
    [
        (OUT, "conforms"),
        ("35.33 ° from upright, outwards", "conforms"),
        ("35.34 ° from upright, outwards", "finding"),
        ("35 ° from upright, inwards", "finding"),
        ("35 ° from upright, forward", "finding"),
        ("upwards", "finding"),
    ],
)
def test_all_on_one_axis_from_both_sides(workshop: DesignFolder, lid: str, outcome: str) -> None:
    """A valve 120 mm high: 20′ = 0.3333° either way; the other side is 70° away."""
    assert _write(workshop, OUT, OUT, lid).only(RULE, "valve").outcome == outcome


@pytest.mark.parametrize(
    ("grade", "lid", "outcome"),
    [("c", "35.49 °", "conforms"), ("c", "35.51 °", "finding"), ("v", "35.99 °", "conforms")],
)
def test_the_class_of_all_drawings(workshop: DesignFolder, grade: str, lid: str, outcome: str) -> None:
    """ISO 2768-1 for a leg of 50 to 120 mm: c 30′, v 1°."""
    _write(workshop, OUT, OUT, f"{lid} from upright, outwards")
    settings = WITH_METALS + f'[drawings]\ngeneral_angles = "{grade}"\n'
    assert workshop.write({}, settings=settings).only(RULE, "valve").outcome == outcome


def test_a_tolerance_of_its_own(workshop: DesignFolder) -> None:
    lid = "35.4 ° from upright, outwards"
    check = _write(workshop, OUT, OUT, lid, 'inclined_within = "0.5 °"\n').only(RULE, "valve")
    assert check.outcome == "conforms"
    assert math.degrees(on_sheet(check, "Δ of lid")) == pytest.approx(0.4)
    assert any(step.name == "how lid stands" for step in check.steps)


def test_an_inclined_valve_wants_all_to_say_so(workshop: DesignFolder) -> None:
    expect_not_assessed(_write(workshop, OUT, OUT, "").only(RULE, "valve"), "is not stated by lid")
    expect_not_assessed(_write(workshop, OUT, "", "").only(RULE, "valve"), "is not stated by")
    expect_not_applicable(_write(workshop, "upwards", "", "").only(RULE, "valve"), "square to the block")


def test_an_upright_valve_over_an_inclined_bore(workshop: DesignFolder) -> None:
    assert _write(workshop, "upwards", OUT, "").only(RULE, "valve").outcome == "finding"


@pytest.mark.parametrize(
    "text", ["35 degrees outwards", "35 ° outwards", "181 ° from upright, back", "aslant"]
)
def test_words_that_say_no_axis_are_refused_in_one_line(workshop: DesignFolder, text: str) -> None:
    (complaint,) = _write(workshop, text, "", "").assess().complaints
    assert "this does not say how an axis stands" in str(complaint)
    assert "35 ° from upright, outwards" in str(complaint)


def test_the_table_and_the_words() -> None:
    """60′ to 10 mm, 30′ to 50, 20′ to 120, 10′ to 400; at 60° half of the weight shuts, 0.866 lies across."""
    minutes = [round(math.degrees(general_angle("m", leg).nominal) * 60) for leg in (0.01, 0.05, 0.12, 0.4)]
    assert minutes == [60, 30, 20, 10]
    assert sense_of_weight("60 ° from upright, back").nominal == pytest.approx(0.5)
    assert share_across("60 ° from upright, back").nominal == pytest.approx(0.8660, abs=1e-4)
    assert [sense_of_weight(word).nominal for word in ("upwards", "sideways", "downwards")] == [1, 0, -1]
    assert math.degrees(angle_between(OUT, "35 ° from upright, inwards").nominal) == pytest.approx(70)


@given(st.integers(0, 180), st.integers(0, 180), st.sampled_from(["outwards", "inwards", "forward", "back"]))
def test_axes_to_one_side_are_as_far_apart_as_their_angles(one: int, other: int, side: str) -> None:
    first, second = (axis_in_words(f"{angle} ° from upright, {side}") for angle in (one, other))
    assert first is not None
    assert second is not None
    assert math.degrees(first.from_axis(second)) == pytest.approx(abs(one - other), abs=1e-5)
    assert first.from_axis(second) == second.from_axis(first)


@pytest.mark.parametrize("opens", ["upwards", "downwards", "sideways"])
def test_a_valve_that_stands_square_with_all_on_its_axis_is_not_asked(
    workshop: DesignFolder, opens: str
) -> None:
    expect_not_applicable(_write(workshop, opens, "", "").only(RULE, "valve"), "square to the block")


@pytest.mark.parametrize(("lid", "outcome"), [("upwards", "conforms"), (OUT, "finding")])
def test_what_is_not_said_to_be_inclined_stands_as_the_block_does(
    workshop: DesignFolder, lid: str, outcome: str
) -> None:
    """An upright valve: the bore says nothing, the lid what it is."""
    assert _write(workshop, "upwards", "", lid).only(RULE, "valve").outcome == outcome
