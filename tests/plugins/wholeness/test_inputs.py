"""Places that are closed on purpose, tables that state nothing, and studs in a part that their cover does not close."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

PLUGGED = {
    "block": 'kind = "cylinder-block"\n[openings.relief]\nblanked = true\nblanked_by = "plug"\n'
    '[notes]\nrelief = "no third valve"',
    "plug": 'kind = "retaining-ring"',
}
#: Another place of the block that says it is closed by the same plug, in each table of such places.
TOO = '[{0}.second]\nblanked = true\nblanked_by = "plug"\n[notes]'
COVER = 'kind = "{0}-cover"\ncloses = "other"'
PIPE = 'kind = "steam-pipe"\n[ends_at]\npart = "block"\nopening = "relief"'


@pytest.mark.parametrize(
    ("old", "new", "plug", "says"),
    [
        ("", "", PLUGGED["plug"], ""),
        ('blanked_by = "plug"\n', "", PLUGGED["plug"], "opening relief wants a plug or cover: none is there"),
        # that nothing closes it is said first, also where no reason is given
        (
            'blanked_by = "plug"\n[notes]\nrelief = "no third valve"',
            "",
            PLUGGED["plug"],
            "opening relief wants a plug or cover: none is there",
        ),
        (
            '[notes]\nrelief = "no third valve"',
            "",
            PLUGGED["plug"],
            "opening relief: it is blanked, and [notes] gives no reason under relief",
        ),
        (
            "blanked = true",
            "blanked = false",
            PLUGGED["plug"],
            "opening relief wants a steam pipe: none is there",
        ),
        ("blanked = true\n", "", PLUGGED["plug"], "opening relief wants a steam pipe: none is there"),
        ("", "", COVER.format("chamber"), "opening relief: plug closes other"),
        ("", "", COVER.format("cylinder"), "opening relief: plug closes other"),
        ("", "", 'kind = "chamber-cover"', ""),
        *(
            (
                "[notes]",
                TOO.format(table),
                PLUGGED["plug"],
                f"opening relief: plug closes {table}.second of block too",
            )
            for table in ("ports", "seat_bores", "openings", "pads")
        ),
        # a place that no plug closes, and one that another plug does
        ("[notes]", "[pads.second]\n[notes]", PLUGGED["plug"], ""),
        ("[notes]", TOO.format("pads").replace('"plug"', '"other"'), PLUGGED["plug"], ""),
    ],
)
def test_an_opening_is_closed_by_a_plug_of_its_own(
    workshop: DesignFolder, old: str, new: str, plug: str, says: str
) -> None:
    block = PLUGGED["block"].replace(old, new) if old else PLUGGED["block"]
    parts = {"block": block, "plug": plug, "other": 'kind = "cylinder-block"'}
    assert told(workshop, parts, "opening.closed-once", "block") == says


@pytest.mark.parametrize("stage", ["draft", "for-review"])
@pytest.mark.parametrize("plug", ['blanked_by = "plug"\n', ""])
def test_what_is_in_a_closed_place_is_told_at_every_stage(
    workshop: DesignFolder, stage: str, plug: str
) -> None:
    """Also before the plug is drawn: the pipe is there, and the block says that none is to be."""
    block = PLUGGED["block"].replace('blanked_by = "plug"\n', plug)
    parts = {**PLUGGED, "block": block, "pipe": PIPE}
    said = told(workshop, parts, "opening.closed-once", "block", stage)
    assert said == "opening relief: it is blanked, and pipe is in it"


def test_a_plug_closes_a_place_of_one_block(workshop: DesignFolder) -> None:
    """Both blocks are told, each of the other; two plugs are none too many."""
    parts = {**PLUGGED, "second": PLUGGED["block"], "other": PLUGGED["plug"]}
    rule = "opening.closed-once"
    for block, other in (("block", "second"), ("second", "block")):
        says = f"opening relief: plug closes openings.relief of {other} too"
        assert told(workshop, parts, rule, block) == says
    parts["second"] = parts["second"].replace('"plug"', '"other"')
    assert told(workshop, parts, rule, "block") == told(workshop, parts, rule, "second") == ""


def test_a_closed_place_with_nothing_in_it_waits_in_a_draft_for_its_plug(workshop: DesignFolder) -> None:
    parts = {"block": PLUGGED["block"].replace('blanked_by = "plug"\n', "")}
    found = told(workshop, parts, "opening.closed-once", "block", "draft")
    assert found == "not applicable: a draft: 1 still to be drawn, listed under block"


def test_a_port_of_the_liner_stands_in_a_closed_port(workshop: DesignFolder) -> None:
    block = 'kind = "cylinder-block"\n[ports.front]\nblanked = true\nblanked_by = "plug"\n[notes]\nfront = "closed"'
    liner = 'kind = "cylinder-liner"\nhoused_in = "block"\n[ports.front]\nmatches = "front"'
    found = told(workshop, {**PLUGGED, "block": block, "liner": liner}, "port.one-opening", "block")
    assert found == "port front: it is blanked, and port front of liner (liner.toml) is in it"


@pytest.mark.parametrize(
    ("kind", "rule", "says"),
    [
        ("cylinder-block", "bore.one-liner", "part wants a statement of its bores: none is there"),
        ("cylinder-block", "end.has-ports", "part wants a statement of its ends: none is there"),
        ("cylinder-block", "pad.one-cut-out", "part wants a statement of its pads: none is there"),
        ("cylinder-block", "seat-bore.one-seat", "part wants a statement of its seat bores: none is there"),
        ("piston", "groove.one-ring", "part wants a statement of its grooves: none is there"),
    ],
)
def test_a_table_that_states_nothing_is_a_gap(
    workshop: DesignFolder, kind: str, rule: str, says: str
) -> None:
    assert told(workshop, {"part": f'kind = "{kind}"'}, rule, "part") == says


HELD = {
    "block": 'kind = "cylinder-block"',
    "other": 'kind = "cylinder-block"',
    "cover": 'kind = "chamber-cover"\ncloses = "block"',
}


@pytest.mark.parametrize(
    ("cover", "link", "says"),
    [
        (HELD["cover"], 'screwed_into = "block"', ""),
        (HELD["cover"], 'bolted_to = "block"', ""),
        (HELD["cover"], "", ""),
        (
            HELD["cover"],
            'screwed_into = "other"',
            "cover: studs is screwed into other, not screwed into block",
        ),
        (HELD["cover"], 'bolted_to = "other"', "cover: studs is bolted to other, not bolted to block"),
        ('kind = "chamber-cover"', 'screwed_into = "other"', ""),  # which block it closes is not said
    ],
)
def test_studs_go_into_the_part_that_the_cover_closes(
    workshop: DesignFolder, cover: str, link: str, says: str
) -> None:
    studs = f'kind = "bolted-joint"\nholds = "cover"\n{link}'
    parts = {**HELD, "cover": cover, "studs": studs}
    assert told(workshop, parts, "cover.one-joint", "cover") == says
