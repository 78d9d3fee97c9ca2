"""Rules that hold two places of one fact against each other."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"

#: The modules of rules, and the kinds that each is on, apart by spaces; of every kind where none is named.
_MODULES = {
    "access": "access-plan",
    "axles": "engine",
    "barred": "cylinder-liner valve-cage",
    "bars": "slide-bar",
    "blanks": "casting weldment",
    "bolts": "bolted-joint",
    "chain_blocks": "dimension-chain",
    "chains": "dimension-chain fit locating-face",
    "concern": "",
    "cooling": "steam-pipe",
    "covers": "chamber-cover cylinder-cover gland cylinder-block",
    "crank_pins": "driving-axle",
    "cylinders": "cylinder-block cylinder-liner",
    "dividing_walls": "cylinder-block partition weldment",
    "drives": "cylinder-block",
    "duties": "cylinder-block",
    "edges": "bolted-joint",
    "ends": "cam cam-box poppet-valve rocker valve-spindle",
    "engine": "cylinder-block",
    "envelopes": "envelope",
    "fit_parts": "fit",
    "fits": "fit",
    "fittings": "cylinder-block",
    "frames": "cylinder-block frame-fastening",
    "gear": "cam poppet-valve tappet",
    "heating": "cylinder-block weldment",
    "joints": "bolted-joint",
    "laggings": "lagging",
    "lengths": "gland valve-spindle",
    "lids": "chamber-cover cylinder-cover",
    "life": "steam-pipe weldment",
    "lifted_parts": "lifting-plan",
    "lifting": "lifting-plan",
    "liner_ports": "cylinder-liner",
    "liners": "cylinder-liner",
    "masses": "cam-box compression-spring crosshead driving-axle piston piston-rod poppet-valve valve-spindle weldment",
    "metal": "steam-pipe lens-joint piston piston-ring poppet-valve cylinder-block cylinder-cover bolted-joint "
    "chamber-cover",
    "motion": "cylinder-block stuffing-box",
    "nozzle": "blast-nozzle cylinder-block",
    "nuts": "piston-rod valve-spindle",
    "oil": "cylinder-block",
    "openings": "lens-joint steam-pipe",
    "own_block": "access-plan bolted-joint chamber-cover compression-spring cylinder-cover envelope fit partition "
    "piston piston-ring poppet-valve rocker slide-bar stuffing-box tappet valve-cage valve-gear weldment",
    "pads": "cylinder-block frame-fastening locating-face",
    "panels": "weldment",
    "part_duties": "bolted-joint chamber-cover cylinder-cover cylinder-liner gland lens-joint pipe-flange "
    "steam-passage steam-pipe stuffing-box valve-seat weldment",
    "partitions": "partition",
    "passages": "steam-passage",
    "path_blocks": "steam-passage steam-pipe",
    "pins": "pin",
    "pipe_ends": "steam-pipe",
    "pipes": "steam-pipe lens-joint pipe-flange",
    "pistons": "piston piston-ring",
    "plays": "cylinder-block",
    "ports": "poppet-valve",
    "retention": "cylinder-liner poppet-valve valve-seat",
    "ribs": "weldment",
    "rods": "cylinder-block piston-rod",
    "rooms_along": "envelope",
    "seat_bores": "cylinder-block",
    "seats": "cylinder-block poppet-valve valve-seat",
    "shaft_drives": "shaft",
    "springs": "compression-spring",
    "throats": "poppet-valve steam-passage",
    "valve_gears": "valve-gear",
    "vessels": "bolted-joint cylinder-cover gland lens-joint pipe-flange stuffing-box weldment chamber-cover",
    "volumes": "cylinder-block",
    "walls": "cylinder-block weldment",
    "washed": "cylinder-block cylinder-liner partition steam-passage",
    "weights": "cylinder-block",
    "welds": "cylinder-block",
}


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [rules_in(f"speclint_agreement.rules.{name}", *kinds.split()) for name, kinds in _MODULES.items()]
